//! Hand calculations and invariants of the coil.

use super::*;
use crate::air::relative_humidity_from_humidity_ratio;
use crate::cooler::curves::WINDOW_UNIT_WINKLER_2013;

const SEA_LEVEL_PA: f64 = 101_325.0;

fn rating() -> CoolerRating {
    CoolerRating {
        cooling_capacity_rated_w: 2000.0,
        electric_power_rated_w: 800.0,
        airflow_rated_m3_s: 0.1,
        sensible_heat_ratio_rated: 0.75,
        fan_power_w: 40.0,
        entering_dry_bulb_rated_c: 26.67,
        entering_wet_bulb_rated_c: 19.44,
        condenser_air_rated_c: 35.0,
    }
}

fn coil() -> Coil {
    Coil::new(rating(), &WINDOW_UNIT_WINKLER_2013, PartSpeed::FIXED).unwrap()
}

fn air(dry_bulb_c: f64, relative_humidity: f64) -> EnteringAir {
    let saturated = saturation_humidity_ratio(dry_bulb_c, SEA_LEVEL_PA);
    EnteringAir {
        dry_bulb_c,
        humidity_ratio: relative_humidity * saturated,
        pressure_pa: SEA_LEVEL_PA,
    }
}

#[test]
fn rating_point_gives_the_rating() {
    let entering = EnteringAir {
        humidity_ratio: humidity_ratio_from_wet_bulb(26.67, 19.44, SEA_LEVEL_PA),
        ..air(26.67, 0.5)
    };
    let output = coil().operate(&entering, 35.0, 1.0, 1.0);
    assert!((output.total_w - 2000.0).abs() < 1e-3);
    assert!((output.electric_power_w - 800.0).abs() < 1e-3);
    // The line from entering air to surface is straight in temperature and humidity, the bypass
    // factor one of enthalpy: the split comes back to a thousandth.
    assert!((output.sensible_w / output.total_w - 0.75).abs() < 1e-3);
    assert!(!output.extrapolated && !output.frost_limited);
}

#[test]
fn dry_coil_extracts_only_sensible_heat_and_feels_no_humidity() {
    let coil = coil();
    let desert = coil.operate(&air(28.0, 0.15), 42.0, 1.0, 1.0);
    let drier = coil.operate(&air(28.0, 0.05), 42.0, 1.0, 1.0);
    assert!(desert.latent_w.abs() < 1e-9 && desert.condensate_kg_s == 0.0);
    assert!((desert.total_w / drier.total_w - 1.0).abs() < 3e-3);
}

#[test]
fn split_is_continuous_where_the_coil_falls_dry() {
    let coil = coil();
    let mut previous = coil.operate(&air(27.0, 0.1), 38.0, 1.0, 1.0);
    for index in 1..900 {
        let entering = air(27.0, 0.1 + f64::from(index) * 0.001);
        let output = coil.operate(&entering, 38.0, 1.0, 1.0);
        assert!((output.total_w - previous.total_w).abs() < 5.0);
        assert!((output.sensible_w - previous.sensible_w).abs() < 5.0);
        previous = output;
    }
}

#[test]
fn balances_and_saturation_hold_everywhere() {
    let coil = Coil::new(
        rating(),
        &WINDOW_UNIT_WINKLER_2013,
        PartSpeed {
            least_capacity_fraction: 0.3,
            part_speed_efficiency_gain: 1.3,
        },
    )
    .unwrap();
    for dry_bulb in [-10.0, 0.0, 3.0, 12.0, 20.0, 27.0, 35.0, 45.0, 60.0, 70.0] {
        for humidity in [0.0, 0.05, 0.3, 0.6, 0.9, 1.0, 1.1] {
            for condenser_c in [-10.0, 20.0, 35.0, 50.0, 70.0] {
                for (speed, flow) in [(1.0, 1.0), (1.0, 0.2), (0.3, 1.0), (0.05, 1.5), (0.3, 0.4)] {
                    let entering = air(dry_bulb, humidity);
                    let output = coil.operate(&entering, condenser_c, speed, flow);
                    check_output(&entering, &output);
                }
            }
        }
    }
}

fn check_output(entering: &EnteringAir, output: &CoilOutput) {
    let numbers = [
        output.total_w,
        output.sensible_w,
        output.latent_w,
        output.electric_power_w,
        output.supply_dry_bulb_c,
        output.supply_humidity_ratio,
    ];
    assert!(
        numbers.iter().all(|number| number.is_finite()),
        "{output:?}"
    );
    assert!(output.total_w >= 0.0 && output.electric_power_w > 0.0);
    assert!((output.sensible_w + output.latent_w - output.total_w).abs() < 1e-9);
    let latent_by_water_w =
        output.condensate_kg_s * crate::air::vapour_enthalpy_j_per_kg(entering.dry_bulb_c);
    assert!(
        (output.latent_w - latent_by_water_w).abs() < 1e-6 * (1.0 + output.total_w),
        "{entering:?} {output:?}"
    );
    let humidity = relative_humidity_from_humidity_ratio(
        output.supply_dry_bulb_c,
        output.supply_humidity_ratio,
        entering.pressure_pa,
    );
    let entering_humidity = relative_humidity_from_humidity_ratio(
        entering.dry_bulb_c,
        entering.humidity_ratio,
        entering.pressure_pa,
    );
    assert!(
        humidity <= 1.0 + 1e-6 || humidity <= entering_humidity + 1e-6,
        "{output:?}"
    );
}

#[test]
fn less_air_makes_colder_and_drier_supply() {
    let coil = coil();
    let full = coil.operate(&air(26.0, 0.55), 33.0, 1.0, 1.0);
    let less = coil.operate(&air(26.0, 0.55), 33.0, 1.0, 0.7);
    assert!(less.supply_dry_bulb_c < full.supply_dry_bulb_c);
    assert!(less.latent_w > full.latent_w);
}

#[test]
fn iced_coil_is_limited_and_says_so() {
    let output = coil().operate(&air(12.0, 0.9), 25.0, 1.0, 0.3);
    assert!(output.frost_limited);
    assert!(output.supply_dry_bulb_c > 0.0);
}

#[test]
fn part_speed_gain_shows_in_the_coefficient_of_performance() {
    let coil = Coil::new(
        rating(),
        &WINDOW_UNIT_WINKLER_2013,
        PartSpeed {
            least_capacity_fraction: 0.4,
            part_speed_efficiency_gain: 1.3,
        },
    )
    .unwrap();
    let cop = |speed: f64| {
        let flow = flow_fraction_at_speed(speed);
        let output = coil.operate(&air(26.0, 0.5), 35.0, speed, flow);
        output.total_w / output.electric_power_w
    };
    assert!((cop(0.4) / cop(1.0) - 1.3).abs() < 1e-9);
}

#[test]
fn flow_by_speed_meets_its_points_and_continues_below() {
    for (capacity, flow) in FLOW_BY_SPEED {
        assert!((flow_fraction_at_speed(capacity) - flow).abs() < 1e-12);
    }
    assert!((flow_fraction_at_speed(0.26) - 0.34).abs() < 1e-12);
}

#[test]
fn off_does_nothing() {
    let output = coil().operate(&air(30.0, 0.4), 35.0, 0.0, 1.0);
    assert_eq!((output.total_w, output.electric_power_w), (0.0, 0.0));
    assert_eq!(output.supply_dry_bulb_c, 30.0);
}

#[test]
fn refuses_what_no_coil_can_do() {
    let refused = |rating: CoolerRating| {
        Coil::new(rating, &WINDOW_UNIT_WINKLER_2013, PartSpeed::FIXED).unwrap_err()
    };
    assert!(matches!(
        refused(CoolerRating {
            sensible_heat_ratio_rated: 0.95,
            ..rating()
        }),
        CoilError::Bypass(BypassError::OutletSupersaturated { .. })
    ));
    assert!(matches!(
        refused(CoolerRating {
            cooling_capacity_rated_w: f64::NAN,
            ..rating()
        }),
        CoilError::OutOfRange(_)
    ));
}
