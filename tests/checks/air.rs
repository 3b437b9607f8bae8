//! Psychrometrics against published implementations of the same equations, and against a real-gas
//! library.

use crate::checks::Check;
use crate::{Row, Table, Worst};
use noonday_engine::air;

/// Relative difference of two values.
fn relative(value: f64, expected: f64) -> f64 {
    (value - expected) / expected
}

/// Humidity ratio by the route that the row names as given.
fn humidity_ratio_of(row: Row<'_>) -> f64 {
    let dry_bulb_c = row.number("Tdb_C");
    let pressure_pa = row.number("p_Pa");
    let given = row.number("given_value");
    match row.text("given") {
        "RH" => air::humidity_ratio_from_relative_humidity(dry_bulb_c, given, pressure_pa),
        "Twb" => air::humidity_ratio_from_wet_bulb(dry_bulb_c, given, pressure_pa),
        "Tdp" => air::humidity_ratio_from_dew_point(given, pressure_pa),
        other => panic!("unknown column {other}"),
    }
}

/// Source: PsychroLib 2.5.0, the same equations of ASHRAE Fundamentals 2017 ch. 1. Tolerance 1e-4
/// relative and 0.01 K, or half of the last digit printed (the humidity ratio has seven decimals).
#[must_use]
pub fn agrees_with_the_published_library() -> Vec<Check> {
    const SOURCE: &str = "ASHRAE Fundamentals 2017 ch. 1 in PsychroLib 2.5.0 (psychro.csv)";
    let table = Table::read("psychro.csv");
    let mut ratios = Worst::default();
    let mut temperatures = Worst::default();
    for row in table.rows() {
        let dry_bulb_c = row.number("Tdb_C");
        let pressure_pa = row.number("p_Pa");
        let humidity_ratio = humidity_ratio_of(row);
        let label = |what: &str| format!("{what} at {dry_bulb_c} °C, W {humidity_ratio:.5}");
        let mut ratio = |value: f64, column: &str| {
            ratios.note(relative(value, row.number(column)), label(column));
        };
        ratio(humidity_ratio, "W");
        ratio(
            air::relative_humidity_from_humidity_ratio(dry_bulb_c, humidity_ratio, pressure_pa),
            "RH",
        );
        ratio(
            air::enthalpy_j_per_kg(dry_bulb_c, humidity_ratio),
            "h_J_per_kg",
        );
        ratio(
            air::specific_volume_m3_per_kg(dry_bulb_c, humidity_ratio, pressure_pa),
            "v_m3_per_kg",
        );
        let density = air::density_dry_air_kg_per_m3(dry_bulb_c, humidity_ratio, pressure_pa)
            * (1.0 + humidity_ratio);
        ratio(density, "rho_kg_per_m3");
        ratio(air::saturation_pressure_pa(dry_bulb_c), "pws_Pa");
        ratio(
            air::vapour_pressure_from_humidity_ratio(humidity_ratio, pressure_pa),
            "pw_Pa",
        );
        temperatures.note(
            air::dew_point_c_from_humidity_ratio(humidity_ratio, pressure_pa) - row.number("Tdp_C"),
            label("dew point"),
        );
        temperatures.note(
            air::wet_bulb_c_from_humidity_ratio(dry_bulb_c, humidity_ratio, pressure_pa)
                - row.number("Twb_C"),
            label("wet bulb"),
        );
    }
    vec![
        ratios.check("ratios against PsychroLib", 1e-4, SOURCE),
        temperatures.check("temperatures against PsychroLib, K", 0.01, SOURCE),
    ]
}

/// Source: CoolProp 8.0.0, real-gas mixture (ASHRAE RP-1485). Tolerance 0.1 K and 0.1 %: the
/// ideal-gas mixture of the handbook's equations leaves out the enhancement factor (about 0.4 % of
/// the vapour pressure), which is 0.08 K of dew point.
#[must_use]
pub fn agrees_with_real_gas_properties_within_the_enhancement_factor() -> Vec<Check> {
    const SOURCE: &str =
        "real-gas mixture, ASHRAE RP-1485, in CoolProp 8.0.0 (psychro_crosscheck.csv)";
    let table = Table::read("psychro_crosscheck.csv");
    let mut ratios = Worst::default();
    let mut temperatures = Worst::default();
    for row in table.rows() {
        let dry_bulb_c = row.number("Tdb_C");
        let pressure_pa = row.number("p_Pa");
        let humidity_ratio = row.number("W");
        let label = format!("{dry_bulb_c} °C, W {humidity_ratio}");
        temperatures.note(
            air::wet_bulb_c_from_humidity_ratio(dry_bulb_c, humidity_ratio, pressure_pa)
                - row.number("Twb_coolprop"),
            &label,
        );
        temperatures.note(
            air::dew_point_c_from_humidity_ratio(humidity_ratio, pressure_pa)
                - row.number("Tdp_coolprop"),
            &label,
        );
        ratios.note(
            relative(
                air::enthalpy_j_per_kg(dry_bulb_c, humidity_ratio),
                row.number("h_coolprop_J_kg"),
            ),
            &label,
        );
        ratios.note(
            relative(
                air::specific_volume_m3_per_kg(dry_bulb_c, humidity_ratio, pressure_pa),
                row.number("v_coolprop"),
            ),
            &label,
        );
    }
    vec![
        ratios.check("ratios against CoolProp", 1e-3, SOURCE),
        temperatures.check("temperatures against CoolProp, K", 0.1, SOURCE),
    ]
}

/// Source: PsychroLib 2.5.0, ASHRAE Fundamentals 2017 ch. 1 eq. 3. Tolerance half of the last digit
/// printed.
#[must_use]
pub fn gives_the_standard_atmosphere() -> Vec<Check> {
    const SOURCE: &str =
        "ASHRAE Fundamentals 2017 ch. 1 eq. 3 in PsychroLib 2.5.0 (std_atmosphere.csv)";
    let table = Table::read("std_atmosphere.csv");
    let mut pressures = Worst::default();
    for row in table.rows() {
        let altitude_m = row.number("z_m");
        let pressure_pa = air::standard_atmosphere_pressure_pa(altitude_m);
        pressures.note(pressure_pa - row.number("p_Pa"), altitude_m);
    }
    vec![pressures.check("standard atmosphere, Pa", 0.006, SOURCE)]
}

/// Dry bulbs and pressures over the whole documented range.
fn states() -> impl Iterator<Item = (f64, f64)> {
    (-60..=120).step_by(2).flat_map(|dry_bulb_c| {
        [50e3, 70e3, 85e3, 101_325.0, 120e3].map(|pressure_pa| (f64::from(dry_bulb_c), pressure_pa))
    })
}

/// Each function and its inverse are the same relation: to 1e-6 K and 1e-9 relative over the whole
/// range.
#[must_use]
pub fn inverses_return_what_went_in() -> Vec<Check> {
    const SOURCE: &str = "each function against its own inverse";
    let mut dew_points = Worst::default();
    let mut wet_bulbs = Worst::default();
    let mut saturated = Worst::default();
    let mut dry_bulbs = Worst::default();
    let mut humidities = Worst::default();
    for (dry_bulb_c, pressure_pa) in states() {
        let label = format!("{dry_bulb_c} °C, {pressure_pa} Pa");
        if air::saturation_pressure_pa(dry_bulb_c) < 0.98 * pressure_pa {
            let full = air::saturation_humidity_ratio(dry_bulb_c, pressure_pa);
            dew_points.note(
                air::dew_point_c_from_humidity_ratio(full, pressure_pa) - dry_bulb_c,
                &label,
            );
            let enthalpy = air::enthalpy_j_per_kg(dry_bulb_c, full);
            saturated.note(
                air::saturated_temperature_c_from_enthalpy(enthalpy, pressure_pa) - dry_bulb_c,
                &label,
            );
        }
        for relative_humidity in [0.0, 0.001, 0.1, 0.5, 0.9, 0.999] {
            let humidity_ratio = air::humidity_ratio_from_relative_humidity(
                dry_bulb_c,
                relative_humidity,
                pressure_pa,
            );
            let enthalpy = air::enthalpy_j_per_kg(dry_bulb_c, humidity_ratio);
            dry_bulbs.note(
                air::dry_bulb_c_from_enthalpy(enthalpy, humidity_ratio) - dry_bulb_c,
                &label,
            );
            humidities.note(
                air::humidity_ratio_from_enthalpy(enthalpy, dry_bulb_c) - humidity_ratio,
                &label,
            );
            let wet_bulb_c =
                air::wet_bulb_c_from_humidity_ratio(dry_bulb_c, humidity_ratio, pressure_pa);
            let back = air::humidity_ratio_from_wet_bulb(dry_bulb_c, wet_bulb_c, pressure_pa);
            let step =
                air::humidity_ratio_from_wet_bulb(dry_bulb_c, wet_bulb_c + 1e-6, pressure_pa)
                    - back;
            let step = step.max(1e-12);
            wet_bulbs.note(1e-6 * (back - humidity_ratio) / step, &label);
        }
    }
    vec![
        dew_points.check("dew point inverse, K", 1e-6, SOURCE),
        saturated.check("saturated temperature inverse, K", 1e-6, SOURCE),
        dry_bulbs.check("dry bulb inverse, K", 1e-9, SOURCE),
        humidities.check("humidity ratio inverse", 1e-12, SOURCE),
        wet_bulbs.check("wet bulb inverse, K", 1e-6, SOURCE),
    ]
}
