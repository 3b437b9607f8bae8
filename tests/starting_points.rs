//! The library of starting points: whatever is picked together can be run, and its numbers agree with what is known outside.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a check that cannot build its scenario has to fail"
)]

use noonday_engine::scenario::starting_points::{LIBRARIES, Library};
use noonday_engine::scenario::{Scenario, ScenarioDocument, example};
use noonday_engine::simulation::{Prepared, Results};
use noonday_tests::Table;

/// A balance closes to rounding; this is a thousandth of what the engine promises.
const RESIDUAL_ALLOWED: f64 = 1e-9;

fn picked(picks: &[(&Library, usize)]) -> Scenario {
    let mut document = example();
    for (library, option) in picks {
        library.pick(*option, &mut document);
    }
    Scenario::new(document).unwrap_or_else(|errors| panic!("{picks:?}: {errors:?}"))
}

fn options(library: &'static Library) -> impl Iterator<Item = usize> {
    1..=library.points.len()
}

fn check(results: &Results, picks: &[(&Library, usize)]) {
    let series = &results.series;
    for values in [
        &series.cabin_c,
        &series.felt_c,
        &series.relative_humidity,
        &series.state_of_charge,
        &series.bank_voltage_v,
        &series.cooler_w,
    ] {
        assert!(values.iter().all(|value| value.is_finite()), "{picks:?}");
    }
    let balance = &results.balance;
    assert!(balance.heat_residual <= RESIDUAL_ALLOWED, "{picks:?}");
    assert!(balance.moisture_residual <= RESIDUAL_ALLOWED, "{picks:?}");
    assert!(balance.electric_residual <= RESIDUAL_ALLOWED, "{picks:?}");
}

/// Every two starting points of different parts, the other parts as in the example.
#[test]
fn every_pair_can_be_run() {
    let mut runs = 0;
    for (index, one) in LIBRARIES.iter().enumerate() {
        for other in &LIBRARIES[index + 1..] {
            for (first, second) in
                options(one).flat_map(|first| options(other).map(move |second| (first, second)))
            {
                let picks = [(one, first), (other, second)];
                let prepared = Prepared::new(&picked(&picks)).unwrap();
                check(&prepared.run_in_steps(1).unwrap(), &picks);
                runs += 1;
            }
        }
    }
    assert!(runs > 1_500, "{runs}");
}

/// One of each part at once, walking through all of them.
#[test]
fn one_of_each_part_at_once_can_be_run() {
    for turn in 0..60 {
        let picks: Vec<(&Library, usize)> = LIBRARIES
            .iter()
            .enumerate()
            .map(|(part, library)| (library, 1 + (turn * (part + 1)) % library.points.len()))
            .collect();
        let prepared = Prepared::new(&picked(&picks)).unwrap();
        check(&prepared.run().unwrap(), &picks);
    }
}

fn all(key: &str) -> Vec<ScenarioDocument> {
    let library = Library::behind(key).unwrap();
    let picked = |option| picked(&[(library, option)]).into_document();
    options(library).map(picked).collect()
}

/// The haze of each climate whose place the table holds is that of its month (Remund et al. 2003, by `linke_turbidity.csv`).
#[test]
fn haze_is_that_of_the_climatology() {
    let table = Table::read("linke_turbidity.csv");
    let mut compared = 0;
    for document in all("starting.place") {
        let month = format!("m{:02}", document.day.date.month());
        for row in table.rows() {
            let here = (row.number("lat") - document.place.latitude_deg).abs() < 0.01
                && (row.number("lon") - document.place.longitude_deg).abs() < 0.01;
            if here {
                assert_eq!(document.day.linke_turbidity, row.number(&month));
                compared += 1;
            }
        }
    }
    assert_eq!(compared, 13);
}

/// Standard time is the sun's own time within two hours everywhere that a climate lies (the zones of the tz database), and air
/// cannot have a dew point above its temperature at the night's end.
#[test]
fn clocks_follow_the_sun_and_dew_points_stay_below_the_night() {
    for document in all("starting.place") {
        let solar_h = document.place.longitude_deg / 15.0;
        assert!((document.place.utc_offset_h - solar_h).abs() <= 2.0);
        assert!(document.day.dew_point_c <= document.day.low_c);
    }
}

/// No body is wider inside than a road vehicle may be outside: 2.6 m in the United States (23 CFR 658.15), 2.55 m in the European
/// Union (Directive 96/53/EC, annex I).
#[test]
fn bodies_fit_the_road() {
    for document in all("starting.vehicle") {
        assert!(document.vehicle.width_m < 2.55);
    }
}

/// The small room unit has the US minimum efficiency: a combined ratio of 11.0 Btu/(W h) below 6000 Btu/h (10 CFR 430.32(b)),
/// with 1 Btu/h = 0.293071 W; its power is rounded to a watt.
#[test]
fn the_small_room_unit_has_the_least_efficiency_on_sale() {
    let small = all("starting.cooler")
        .into_iter()
        .filter(|document| document.cooler.capacity_rated_w < 6_000.0 * 0.293_071)
        .find(|document| document.cooler.inverter_rated_w == 1_500.0)
        .unwrap()
        .cooler;
    let ratio = small.capacity_rated_w / small.electric_power_rated_w / 0.293_071;
    assert!((ratio / 11.0 - 1.0).abs() < 0.5 / 453.0, "{ratio}");
}
