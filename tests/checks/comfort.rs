//! Comfort, heat index and heat of occupants against published values.

use crate::checks::Check;
use crate::{Row, Table, Worst};
use noonday_engine::comfort::ThermalState;
use noonday_engine::comfort::heat_index::{HeatIndexCategory, heat_index_c};
use noonday_engine::comfort::mean_vote::mean_vote;
use noonday_engine::comfort::occupants::{DogHeatBasis, PersonActivity, dog_heat, person_heat};
use noonday_engine::comfort::standard_temperature::standard_effective_temperature_c;

fn celsius(temperature_f: f64) -> f64 {
    (temperature_f - 32.0) / 1.8
}

fn thermal_state(row: Row<'_>) -> ThermalState {
    ThermalState {
        dry_bulb_c: row.number("Tdb_C"),
        mean_radiant_c: row.number("Tr_C"),
        air_speed_m_s: row.number("v_rel_m_s"),
        relative_humidity: row.number("RH_pct") / 100.0,
        metabolic_rate_met: row.number("met"),
        clothing_clo: row.number("clo"),
    }
}

/// National Weather Service algorithm (Rothfusz, SR 90-23, with both adjustments): `heat_index.csv`.
/// Tolerance: half of the last digit printed.
#[must_use]
pub fn heat_index_follows_the_published_algorithm() -> Vec<Check> {
    const SOURCE: &str = "Rothfusz, National Weather Service SR 90-23 (heat_index.csv)";
    let mut worst = Worst::default();
    for row in Table::read("heat_index.csv").rows() {
        let (temperature_f, percent) = (row.number("T_F"), row.number("RH_pct"));
        let value_c = heat_index_c(celsius(temperature_f), percent / 100.0);
        worst.note(
            value_c - row.number("HI_C"),
            format!("{temperature_f} F {percent} %"),
        );
        let category = match row.text("category") {
            "none" => HeatIndexCategory::None,
            "caution" => HeatIndexCategory::Caution,
            "extreme caution" => HeatIndexCategory::ExtremeCaution,
            "danger" => HeatIndexCategory::Danger,
            "extreme danger" => HeatIndexCategory::ExtremeDanger,
            other => panic!("unknown category {other}"),
        };
        assert_eq!(HeatIndexCategory::of(value_c), category);
    }
    vec![worst.check("heat index, °C", 0.51e-4, SOURCE)]
}

/// The chart of the National Weather Service, rounded to whole °F: `heat_index_nws_chart.csv`. The
/// chart leaves out the adjustment above 85 % relative humidity, so those cells stand apart: the
/// largest known difference there is 2.29 °F. Tolerance elsewhere: 0.75 °F, rounding and the chart's own.
#[must_use]
pub fn heat_index_agrees_with_the_published_chart() -> Vec<Check> {
    const SOURCE: &str = "chart of the National Weather Service (heat_index_nws_chart.csv)";
    let (mut chart, mut humid) = (Worst::default(), Worst::default());
    for row in Table::read("heat_index_nws_chart.csv").rows() {
        let (temperature_f, percent) = (row.number("T_F"), row.number("RH_pct"));
        let value_f = 1.8 * heat_index_c(celsius(temperature_f), percent / 100.0) + 32.0;
        let error_f = value_f - row.number("HI_chart_F");
        let label = format!("{temperature_f} F {percent} %");
        if percent > 85.0 && temperature_f <= 87.0 {
            humid.note(error_f, label);
        } else {
            chart.note(error_f, label);
        }
    }
    vec![
        chart.check("heat index against the chart, °F", 0.75, SOURCE),
        humid.check("heat index against the chart above 85 %, °F", 2.3, SOURCE),
    ]
}

/// Predicted mean vote and percentage dissatisfied, ISO 7730:2005, from an independent
/// implementation: `comfort.csv`. Tolerance: the last digit printed; the table's search for
/// the clothing temperature is the standard's own, as here.
#[must_use]
pub fn mean_vote_follows_the_standard() -> Vec<Check> {
    const SOURCE: &str = "ISO 7730:2005, independent implementation (comfort.csv)";
    let (mut vote, mut dissatisfied) = (Worst::default(), Worst::default());
    for (index, row) in Table::read("comfort.csv").rows().enumerate() {
        let result = mean_vote(&thermal_state(row));
        vote.note(result.predicted_mean_vote - row.number("PMV_iso"), index);
        let percent = 100.0 * result.predicted_dissatisfied_fraction;
        dissatisfied.note(percent - row.number("PPD_iso"), index);
    }
    vec![
        vote.check("predicted mean vote", 1e-4, SOURCE),
        dissatisfied.check("predicted percentage dissatisfied", 1e-4, SOURCE),
    ]
}

/// Standard effective temperature, ASHRAE 55, from an independent implementation: `comfort.csv`.
/// Tolerance: that implementation ends its search at 0.01 K.
#[must_use]
pub fn standard_effective_temperature_follows_the_standard() -> Vec<Check> {
    const SOURCE: &str = "ASHRAE 55, independent implementation (comfort.csv)";
    let mut worst = Worst::default();
    for (index, row) in Table::read("comfort.csv").rows().enumerate() {
        let value_c = standard_effective_temperature_c(&thermal_state(row));
        worst.note(value_c - row.number("SET_C"), index);
    }
    vec![worst.check("standard effective temperature, °C", 2e-3, SOURCE)]
}

/// Heat of people at 24 °C, ASHRAE Fundamentals ch. 18 table 1: `occupants.csv`. Whole watts.
#[must_use]
pub fn people_give_off_the_heat_of_the_handbook() -> Vec<Check> {
    const SOURCE: &str = "ASHRAE Fundamentals ch. 18 table 1 (occupants.csv)";
    let activities = [
        ("asleep, adult male", PersonActivity::Asleep),
        ("seated quiet 1.0 met (theatre)", PersonActivity::Seated),
        ("seated, very light work", PersonActivity::SeatedAtWork),
        ("standing, light work; walking", PersonActivity::Active),
    ];
    let table = Table::read("occupants.csv");
    let mut worst = Worst::default();
    for (name, activity) in activities {
        let row = table
            .rows()
            .find(|row| row.text("activity") == name)
            .unwrap_or_else(|| panic!("no row {name}"));
        let heat = person_heat(activity, 24.0);
        worst.note(heat.sensible_w - row.number("sensible_W"), name);
        worst.note(heat.latent_w - row.number("latent_W"), name);
        // The handbook's note: a fifth less sensible heat at 27 °C, the total the same.
        let warm = person_heat(activity, 27.0);
        worst.note(warm.sensible_w - 0.8 * row.number("sensible_W"), name);
        worst.note(warm.total_w() - row.number("total_W"), name);
    }
    vec![worst.check("heat of a person, W", 1e-9, SOURCE)]
}

/// Heat of dogs by mass: `dog_heat.csv` (Kleiber, NRC 2006 and ASHRAE animal rooms, factors from
/// memory). Tolerance: half of the last digit printed, and what the rounded 3.39 W there is worth.
#[must_use]
pub fn dogs_give_off_heat_by_their_mass() -> Vec<Check> {
    const SOURCE: &str =
        "Kleiber; NRC 2006; ASHRAE animal rooms, factors from memory (dog_heat.csv)";
    let mut worst = Worst::default();
    for row in Table::read("dog_heat.csv").rows() {
        let mass_kg = row.number("mass_kg");
        for (basis, column) in [
            (DogHeatBasis::Resting, "rer70_W"),
            (DogHeatBasis::Inactive, "mer95_W"),
            (DogHeatBasis::Active, "mer130_W"),
            (DogHeatBasis::AnimalRoom, "ATHG_W"),
        ] {
            let total_w = dog_heat(basis, mass_kg, 24.0).total_w();
            worst.note(
                total_w - row.number(column),
                format!("{column} {mass_kg} kg"),
            );
        }
    }
    vec![worst.check("heat of a dog, W", 0.051, SOURCE)]
}
