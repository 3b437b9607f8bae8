//! Psychrometrics: see the checks for what is compared with what.

use noonday_engine::air;
use noonday_tests::checks::{air as checks, assert_all};

#[test]
fn agrees_with_the_published_library() {
    assert_all(&checks::agrees_with_the_published_library());
}

#[test]
fn agrees_with_real_gas_properties_within_the_enhancement_factor() {
    assert_all(&checks::agrees_with_real_gas_properties_within_the_enhancement_factor());
}

#[test]
fn gives_the_standard_atmosphere() {
    assert_all(&checks::gives_the_standard_atmosphere());
}

#[test]
fn inverses_return_what_went_in() {
    assert_all(&checks::inverses_return_what_went_in());
}

/// Dry bulbs and pressures over the whole documented range.
fn states() -> impl Iterator<Item = (f64, f64)> {
    (-60..=120).step_by(2).flat_map(|dry_bulb_c| {
        [50e3, 70e3, 85e3, 101_325.0, 120e3].map(|pressure_pa| (f64::from(dry_bulb_c), pressure_pa))
    })
}

/// Whatever the humidity, from none to far beyond saturation, every answer is a number and in
/// order: dew point no higher than wet bulb, wet bulb no higher than dry bulb.
#[test]
fn stays_finite_and_ordered_for_any_humidity() {
    for (dry_bulb_c, pressure_pa) in states() {
        for humidity_ratio in [-1e-3, 0.0, 1e-12, 1e-6, 1e-3, 0.02, 0.3, 5.0] {
            let dew_point_c = air::dew_point_c_from_humidity_ratio(humidity_ratio, pressure_pa);
            let wet_bulb_c =
                air::wet_bulb_c_from_humidity_ratio(dry_bulb_c, humidity_ratio, pressure_pa);
            let relative_humidity =
                air::relative_humidity_from_humidity_ratio(dry_bulb_c, humidity_ratio, pressure_pa);
            assert!(dew_point_c.is_finite() && (-100.0..130.0).contains(&dew_point_c));
            assert!(relative_humidity.is_finite() && relative_humidity >= 0.0);
            assert!(wet_bulb_c <= dry_bulb_c, "{wet_bulb_c} above {dry_bulb_c}");
            let unsaturated = relative_humidity < 1.0 && dew_point_c > -99.0;
            assert!(
                !unsaturated || wet_bulb_c >= dew_point_c - 1e-5,
                "wet bulb {wet_bulb_c} below dew point {dew_point_c} at {dry_bulb_c} °C"
            );
            assert!(air::saturation_humidity_ratio(dry_bulb_c, pressure_pa).is_finite());
        }
    }
}
