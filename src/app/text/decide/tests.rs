//! What is said of decisions.

use super::*;
use crate::format::UnitSystem;
use noonday_engine::advice::Reason;
use noonday_engine::advice::failure::failures;
use noonday_engine::advice::sampling::Uncertain;
use noonday_engine::advice::{alternatives, measures};
use noonday_engine::scenario::{Scenario, example};

fn voice() -> Voice {
    Voice::new(&example(), UnitSystem::Metric)
}

#[test]
fn a_mark_that_is_not_reached_is_never_called_safe() {
    for text in [minutes(None), NOT_REACHED.to_owned()] {
        assert!(!text.contains("safe") && !text.contains("never"), "{text}");
    }
    assert!(FAILS_NOTE.contains("it does not mean safe"));
    assert!(FAILS_CAUTION.contains("kills"));
    assert_eq!(minutes(Some(0.0)), "already there");
    // Rounded down: no minute is promised that is not there.
    assert_eq!(minutes(Some(12.9)), "12\u{a0}min");
}

#[test]
fn every_change_mark_input_and_reason_has_a_name_of_its_own() {
    let scenario = Scenario::new(example()).unwrap();
    let voice = voice();
    let mut groups: Vec<Vec<String>> = vec![
        measures(&scenario)
            .iter()
            .map(|measure| measure_name(measure.kind, &voice))
            .collect(),
        Uncertain::ALL
            .map(|input| uncertain_name(input).to_owned())
            .to_vec(),
        Reason::ALL
            .map(|reason| reason_name(reason).to_owned())
            .to_vec(),
        Alternative::ALL
            .map(|one| alternative_name(one).to_owned())
            .to_vec(),
    ];
    let failures = failures(&scenario).unwrap();
    groups.push(
        failures[0]
            .marks
            .iter()
            .map(|one| mark_name(one.mark, &voice))
            .collect(),
    );
    for names in groups {
        let mut sorted = names.clone();
        sorted.sort();
        sorted.dedup();
        assert_eq!(sorted.len(), names.len(), "{names:?}");
    }
}

#[test]
fn differences_carry_their_sign_and_nothing_is_no_difference() {
    let voice = voice();
    assert_eq!(cost_change(512.2, &voice), "+USD\u{a0}512");
    assert_eq!(cost_change(-512.2, &voice), "\u{2212}USD\u{a0}512");
    assert_eq!(cost_change(0.2, &voice), "no cost");
    assert_eq!(too_warm_change(-1.27, &voice), "\u{2212}1.3\u{a0}°C·h");
    assert_eq!(too_warm_change(0.0, &voice), "as before");
    assert_eq!(
        lasts_change(Some(10.0), Some(12.5)),
        "+2\u{a0}h 30\u{a0}min"
    );
    assert_eq!(lasts_change(Some(10.0), None), "for weeks");
    assert_eq!(item(-0.001), "0\u{a0}h");
}

#[test]
fn whether_cooling_is_needed_is_said_of_the_least_that_will_do() {
    let mut document = example();
    document.day.high_c = 40.0;
    let hot = alternatives(&Scenario::new(document.clone()).unwrap()).unwrap();
    assert!(
        needed(&hot).contains("nothing but the cooler") || needed(&hot).contains("do not keep")
    );
    (document.day.high_c, document.day.low_c) = (22.0, 12.0);
    let mild = alternatives(&Scenario::new(document).unwrap()).unwrap();
    assert!(needed(&mild).contains("without"), "{}", needed(&mild));
}
