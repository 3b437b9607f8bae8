//! Random scenarios built on the fields table, for checks of what must hold of every one of them.
//!
//! Every field is drawn by itself: the example's value, the least or the greatest allowed, or anything in between. Rules
//! between fields are then mended rather than left to chance, so that next to no document is refused. A failing scenario
//! shrinks towards the example, field by field.

use noonday_engine::scenario::{
    Field, Kind, Problem, Scenario, ScenarioDocument, example, field, fields, to_link,
};
use noonday_engine::solar::Date;
use proptest::prelude::*;
use proptest::test_runner::{Config, RngSeed};
use std::fmt;

/// Seed of every random check: the same scenarios at each run.
const SEED: u64 = 20_260_621;

/// Codes below this draw the example's value, the least and the greatest value; the rest draw anything in between.
const CODE_EXAMPLE: u8 = 0;
const CODE_LEAST: u8 = 1;
const CODE_GREATEST: u8 = 2;
const CODES: u8 = 12;

/// Gaps kept when two fields are mended, as validation asks for them.
const DAILY_RANGE_K: f64 = 0.5;
const USABLE_SHARE: f64 = 0.05;
const GLASS_SHARE: f64 = 0.9;
const SURGE_RATIO: f64 = 10.0;

/// How one field is drawn: a code and a share of its range.
type Draw = (u8, f64);

/// Random checks of a number of cases, with the project's own seed and no files left behind.
#[must_use]
pub fn config(cases: u32) -> Config {
    Config {
        cases,
        rng_seed: RngSeed::Fixed(SEED),
        failure_persistence: None,
        max_global_rejects: cases / 20,
        ..Config::default()
    }
}

/// A drawn document or scenario, shown by a failing check as its link: short, and it opens in the page.
#[derive(Clone)]
pub struct Drawn<T>(pub T);

impl fmt::Debug for Drawn<ScenarioDocument> {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&to_link(&self.0))
    }
}

impl fmt::Debug for Drawn<Scenario> {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&to_link(self.0.document()))
    }
}

/// Documents with every field drawn, mended but not validated, of at most a number of days.
pub fn documents(most_days: f64) -> impl Strategy<Value = Drawn<ScenarioDocument>> {
    let texts = ("\\PC{0,60}", "\\PC{0,280}", "\\PC{0,3}");
    (draws(), texts).prop_map(move |(draws, (name, note, currency))| {
        let mut document = drawn(&draws, |_| true);
        document.name = name;
        document.note = note;
        document.prices.currency = currency;
        document.day.days = document.day.days.min(most_days);
        mend(&mut document);
        Drawn(document)
    })
}

/// Valid scenarios with every field drawn, of at most a number of days.
pub fn scenarios(most_days: f64) -> impl Strategy<Value = Drawn<Scenario>> {
    documents(most_days).prop_filter_map("refused by validation", |Drawn(document)| {
        Scenario::new(document).ok().map(Drawn)
    })
}

/// Valid scenarios in which the fields whose keys begin with one of the prefixes are drawn and all others are those of a
/// base document.
pub fn scenarios_around(
    base: ScenarioDocument,
    prefixes: &'static [&'static str],
) -> impl Strategy<Value = Drawn<Scenario>> {
    draws().prop_filter_map("refused by validation", move |draws| {
        let chosen = |field: &Field| prefixes.iter().any(|prefix| field.key.starts_with(prefix));
        let mut document = base.clone();
        for (field, draw) in fields().zip(&draws).filter(|(field, _)| chosen(field)) {
            draw_field(field, *draw, &mut document);
        }
        mend(&mut document);
        Scenario::new(document).ok().map(Drawn)
    })
}

/// Switches off everything that draws from the bank beside the cooler.
pub fn switch_loads_off(document: &mut ScenarioDocument) {
    let loads = &mut document.loads;
    for load in [
        &mut loads.fridge,
        &mut loads.lights,
        &mut loads.electronics,
        &mut loads.other,
    ] {
        load.power_w = 0.0;
    }
}

fn draws() -> impl Strategy<Value = Vec<Draw>> {
    prop::collection::vec((0..CODES, 0.0..1.0), fields().count())
}

fn drawn(draws: &[Draw], chosen: impl Fn(&Field) -> bool) -> ScenarioDocument {
    let mut document = example();
    for (field, draw) in fields().zip(draws).filter(|(field, _)| chosen(field)) {
        draw_field(field, *draw, &mut document);
    }
    document
}

fn draw_field(field: &Field, (code, share): Draw, document: &mut ScenarioDocument) {
    if code == CODE_EXAMPLE {
        return;
    }
    match &field.kind {
        Kind::Number(number) => {
            let value = match code {
                CODE_LEAST => number.minimum,
                CODE_GREATEST => number.maximum,
                _ => number.minimum + share * (number.maximum - number.minimum),
            };
            let whole = number.dimension.is_whole();
            (number.write)(document, if whole { value.round() } else { value });
        }
        Kind::Choice(choice) => {
            (choice.write)(document, (share * choice.options.len() as f64) as usize);
        }
        Kind::Switch(switch) => (switch.write)(document, share < 0.5),
        Kind::Date(date) => {
            let days = (share * 150.0 * 365.2425) as i32;
            if let Ok(first) = Date::new(1950, 1, 1) {
                (date.write)(document, first.plus_days(days));
            }
        }
        Kind::Text(_) => {}
    }
}

/// Brings fields that are at odds with each other together by moving one of them, as little as will do.
fn mend(document: &mut ScenarioDocument) {
    let day = &mut document.day;
    day.low_c = day.low_c.min(day.high_c - DAILY_RANGE_K);
    let battery = &mut document.battery;
    battery.least_state_of_charge = battery
        .least_state_of_charge
        .min(battery.most_state_of_charge - USABLE_SHARE);
    let cooler = &mut document.cooler;
    cooler.cut_out_v_per_12_v = cooler.cut_out_v_per_12_v.min(cooler.recovery_v_per_12_v);
    cooler.inverter_surge_w = cooler
        .inverter_surge_w
        .max(cooler.inverter_rated_w)
        .min(SURGE_RATIO * cooler.inverter_rated_w);
    mend_humidity(document);
    mend_glass(document);
    mend_coil(document);
}

/// Keeps the humidity of the warmest hour within the dew points that can be entered.
fn mend_humidity(document: &mut ScenarioDocument) {
    let dew_point = field("day.dew_point_c").and_then(Field::number);
    let Some(dew_point) = dew_point else { return };
    let least = document.relative_humidity_at_high(dew_point.minimum);
    let greatest = document.relative_humidity_at_high(dew_point.maximum);
    let share = &mut document.day.relative_humidity_at_high;
    *share = share.clamp(least, greatest.clamp(least, 1.0));
}

fn mend_glass(document: &mut ScenarioDocument) {
    let (vehicle, glass) = (&document.vehicle, &mut document.glass);
    let end_m2 = GLASS_SHARE * (vehicle.width_m * vehicle.height_m);
    let side_m2 = GLASS_SHARE * (vehicle.length_m * vehicle.height_m);
    let roof_m2 = GLASS_SHARE * (vehicle.length_m * vehicle.width_m);
    for (area_m2, most_m2) in [
        (&mut glass.nose_area_m2, end_m2),
        (&mut glass.rear_area_m2, end_m2),
        (&mut glass.left_area_m2, side_m2),
        (&mut glass.right_area_m2, side_m2),
        (&mut glass.roof_area_m2, roof_m2),
    ] {
        *area_m2 = area_m2.min(most_m2);
    }
    let left = 1.0 - glass.sun_on_floor_share;
    glass.sun_on_furnishings_share = glass.sun_on_furnishings_share.min(left);
}

/// Takes the greatest sensible share that the coil's air flow allows, or gives it more air, where the drawn one is refused.
fn mend_coil(document: &mut ScenarioDocument) {
    for _ in 0..4 {
        let Err(errors) = Scenario::new(document.clone()) else {
            return;
        };
        let cooler = &mut document.cooler;
        for error in errors {
            match error.problem {
                Problem::ImpossibleSensibleShare {
                    greatest: Some(greatest),
                    ..
                } if greatest > 0.5 => cooler.sensible_heat_ratio_rated = greatest - 1e-3,
                Problem::ImpossibleSensibleShare { .. } => {
                    cooler.sensible_heat_ratio_rated = cooler.sensible_heat_ratio_rated.max(0.7);
                    cooler.airflow_m3_s_per_kw = cooler.airflow_m3_s_per_kw.max(0.05);
                }
                _ => return,
            }
        }
    }
}
