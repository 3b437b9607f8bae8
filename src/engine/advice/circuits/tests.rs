use super::*;
use crate::scenario::{CoolerSupply, Scenario, example, field, fields};

fn found(document: &ScenarioDocument, kind: CircuitKind) -> Circuit {
    let all = circuits(document).unwrap().circuits;
    *all.iter().find(|one| one.kind == kind).unwrap()
}

#[test]
fn currents_follow_from_the_scenario() {
    let mut document = example();
    document.charging.drives = true;
    // By hand: 800 W / 12 V, half as much again at a start; 40 A · 12 V / 0.9 / 12 V; 300 W / 20 V; 288 W / 12 V.
    let cooler = found(&document, CircuitKind::Cooler).need;
    assert!((cooler.running_a - 66.667).abs() < 1e-3 && (cooler.surge_a - 100.0).abs() < 1e-9);
    assert!((found(&document, CircuitKind::DcDc).need.running_a - 44.444).abs() < 1e-3);
    assert!((found(&document, CircuitKind::Panels).need.running_a - 15.0).abs() < 1e-9);
    assert!((found(&document, CircuitKind::Controller).need.running_a - 24.0).abs() < 1e-9);
    // 800 + 45 + 15 + 60 + 25 W.
    assert!((found(&document, CircuitKind::Bus).need.running_a - 78.75).abs() < 1e-9);
}

#[test]
fn an_inverter_is_cabled_for_all_that_it_can_take() {
    let mut document = example();
    document.cooler.supply = CoolerSupply::MainsThroughInverter;
    // By hand: 2 000 + 15 + 2 000 · (0.02 + 0.04) = 2 135 W.
    let inverter = found(&document, CircuitKind::Inverter);
    assert!((inverter.power_w - 2_135.0).abs() < 1e-9);
    // 178 A · 1.25 = 222 A; half of the surge, (4 000 + 15 + 2 000 · (0.04 + 0.16)) W / 12 V / 2 = 184 A, asks for less.
    assert_eq!(inverter.gauge.fitted().unwrap().fuse_a, 225.0);
}

#[test]
fn twice_the_voltage_takes_a_thinner_cable() {
    let mut document = example();
    let at_12 = found(&document, CircuitKind::Cooler);
    document.battery.system_voltage = crate::scenario::SystemVoltage::V24;
    let at_24 = found(&document, CircuitKind::Cooler);
    let area = |one: &Circuit| one.metric.fitted().unwrap().conductor.area_mm2;
    assert!(area(&at_24) < area(&at_12));
}

#[test]
fn what_arrives_at_a_start_adds_up_by_hand() {
    let [gauge, _] = circuits(&example()).unwrap().start.unwrap();
    // 1 AWG over 4 m, out and back: 4.04 mΩ. Lowest charge 10 %: four cells of 3.1991 V.
    assert!((gauge.cable_ohm - 8.0 * 0.000_505_2).abs() < 1e-9);
    assert!((gauge.bank_open_v - 12.7964).abs() < 1e-3);
    let together_a = 145.0 / 12.0 + 100.0;
    let by_hand =
        gauge.bank_open_v - together_a * (0.002 + gauge.bus_ohm) - 100.0 * gauge.cable_ohm;
    assert!((gauge.arriving_v - by_hand).abs() < 1e-9);
    assert!(gauge.arriving_v > gauge.cut_out_v);
}

#[test]
fn a_way_too_long_says_what_would_do() {
    let mut document = example();
    document.installation.cooler.length_m = 20.0;
    let Choice::Nothing(remedies) = found(&document, CircuitKind::Cooler).gauge else {
        panic!("20 m at 12 V and 67 A should be too far");
    };
    // By hand: 0.3 V / (2 · 66.67 A · 0.1995 mΩ/m) = 11.28 m.
    assert!((remedies.longest_m.unwrap() - 11.278).abs() < 0.01);
    assert_eq!(remedies.voltage_v, Some(24.0));
    assert_eq!(remedies.parallel_runs, Some(2));
}

/// At the ends of every range the arithmetic stays finite.
#[test]
fn no_valid_scenario_gives_nonsense() {
    for field in fields() {
        let Some(number) = field.number() else {
            continue;
        };
        for value in [number.minimum, number.maximum] {
            let mut document = example();
            (number.write)(&mut document, value);
            let Ok(scenario) = Scenario::new(document) else {
                continue;
            };
            let all = circuits(scenario.document()).unwrap();
            assert!(all.short_circuit_a.is_finite());
            for one in &all.circuits {
                assert!(one.need.running_a.is_finite() && one.need.running_a > 0.0);
                assert!(one.need.surge_a >= one.need.running_a);
            }
        }
    }
}

#[test]
fn every_circuit_names_its_inputs() {
    for kind in [
        CircuitKind::Bus,
        CircuitKind::Cooler,
        CircuitKind::Inverter,
        CircuitKind::DcDc,
        CircuitKind::Panels,
        CircuitKind::Controller,
    ] {
        for key in [kind.length_key(), kind.drop_key()] {
            assert!(
                field(key).is_some_and(|field| field.number().is_some()),
                "{key}"
            );
        }
    }
}
