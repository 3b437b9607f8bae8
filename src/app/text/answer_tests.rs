//! What the answer says.

use super::*;
use crate::format::UnitSystem;
use noonday_engine::advice::{Cost, HeatReading, Verdict};
use noonday_engine::comfort::heat_index::HeatIndexCategory;
use noonday_engine::scenario::example;
use noonday_engine::simulation::Results;

fn window(worst_felt_c: f64, cause: Option<Cause>) -> WindowVerdict {
    WindowVerdict {
        slot: 0,
        needed_for: NeededFor::Animals,
        from_h: 13.0,
        until_h: 15.0,
        highest_felt_c: 28.0,
        highest_heat_index_c: None,
        met: cause.is_none(),
        missed_h: 1.0,
        degree_hours_k_h: 2.0,
        worst_felt_c,
        worst_at_h: 14.5,
        first_missed_at_h: cause.map(|_| 13.0),
        cause,
        worst_felt_without_cooler_c: 44.0,
        missed_without_cooler_h: 2.0,
        worst_heat: heat(30.0),
        worst_heat_without_cooler: heat(46.0),
    }
}

fn heat(heat_index_c: f64) -> HeatReading {
    HeatReading {
        heat_index_c,
        category: HeatIndexCategory::of(heat_index_c),
        at_h: 14.5,
    }
}

fn advice(headline: Headline, windows: Vec<WindowVerdict>) -> Advice {
    let first_missed = windows.iter().position(|window| !window.met);
    Advice {
        with_cooler: Results {
            series: Series {
                time_h: vec![12.0, 15.0, 29.0],
                felt_c: vec![30.0, 39.0, 20.0],
                ..Series::default()
            },
            ..Results::default()
        },
        without_cooler: Results::default(),
        verdict: Verdict {
            headline,
            windows,
            first_missed,
            bank: BankVerdict {
                lowest_state_of_charge: 0.34,
                lowest_at_h: 29.75,
                end_state_of_charge: 0.4,
                below_reserve_at_h: Some(28.0),
                lasts_h: Some(40.5),
                days_looked: 7,
                plain_division_h: Some(10.0),
                cooler_running_a: 60.0,
            },
        },
        cost: Cost::default(),
        plate: None,
    }
}

fn said(headline: Headline, windows: Vec<WindowVerdict>) -> Answer {
    let voice = Voice::new(&example(), UnitSystem::Metric);
    answer(&advice(headline, windows), &voice)
}

#[test]
fn a_miss_says_whom_when_how_much_and_why() {
    let said = said(Headline::Missed, vec![window(31.4, Some(Cause::Capacity))]);
    assert_eq!(
        said.lead,
        "Too warm for the animals: from 13:00 to 15:00 it should stay below 28\u{a0}°C, but feels like 31\u{a0}°C at 14:30."
    );
    assert!(said.cause.unwrap().contains("flat out"));
    assert_eq!(
        said.bank,
        "The bank is lowest at 05:45 the next day with 34\u{a0}% left; with such days in a row it is used up after 40\u{a0}h."
    );
    assert!(said.without_cooler.unwrap().contains("44\u{a0}°C"));
}

#[test]
fn a_miss_by_the_heat_index_says_so() {
    let damp = WindowVerdict {
        highest_heat_index_c: Some(29.0),
        ..window(27.0, Some(Cause::Capacity))
    };
    let said = said(Headline::Missed, vec![damp]);
    assert!(
        said.lead
            .contains("heat index should stay below 29\u{a0}°C, but reaches 30"),
        "{}",
        said.lead
    );
}

#[test]
fn a_need_that_is_met_names_its_tightest_hours() {
    let said = said(Headline::Met, vec![window(27.0, None)]);
    assert!(
        said.lead
            .contains("27\u{a0}°C felt at most from 13:00 to 15:00")
    );
    assert_eq!(said.cause, None);
}

#[test]
fn other_headlines_have_their_own_sentence() {
    let lead = |headline| said(headline, vec![window(27.0, None)]).lead;
    assert!(lead(Headline::MetWithoutCooler).contains("even without a cooler"));
    assert!(lead(Headline::MetBelowReserve).contains("04:00 the next day"));
    let nothing = said(Headline::NothingAsked, vec![]).lead;
    assert!(nothing.contains("15:00") && nothing.contains("39\u{a0}°C"));
}

#[test]
fn help_names_the_best_change_and_whether_it_is_enough() {
    let voice = Voice::new(&example(), UnitSystem::Metric);
    let effect = |lever, hours, charge, met| LeverEffect {
        lever,
        degree_hours_change_k_h: hours,
        lowest_state_of_charge_change: charge,
        met,
    };
    let effects = [
        effect(Lever::Shade, -3.0, 0.06, true),
        effect(Lever::LargerBank, 0.0, 0.12, true),
    ];
    let missed = help(&effects, Headline::Missed, &voice).unwrap();
    assert!(missed.contains("shade") && missed.contains("cool enough"));
    let met = help(&effects, Headline::Met, &voice).unwrap();
    assert!(
        met.contains("half as much bank again: 12 percentage points"),
        "{met}"
    );
    assert_eq!(help(&effects, Headline::NothingAsked, &voice), None);
    assert_eq!(help(&[], Headline::Missed, &voice), None);
    let vain = [effect(Lever::Shade, 0.0, 0.0, false)];
    assert!(
        help(&vain, Headline::Missed, &voice)
            .unwrap()
            .contains("No single change")
    );
}

#[test]
fn every_cause_and_change_has_its_words() {
    let causes = [
        Cause::NoCooler,
        Cause::NeverSwitchedOn,
        Cause::NotYetCooled,
        Cause::Capacity,
        Cause::SetPoint,
        Cause::BankEmpty,
        Cause::LowVoltage,
        Cause::CurrentLimit,
        Cause::InverterOverload,
        Cause::Humidity,
    ];
    let mut texts: Vec<String> = causes.into_iter().map(cause).collect();
    let count = texts.len();
    texts.sort();
    texts.dedup();
    assert_eq!(texts.len(), count);
}
