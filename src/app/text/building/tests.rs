use super::*;
use noonday_engine::advice::circuits::circuits;
use noonday_engine::advice::job::{WorkStep, job};
use noonday_engine::advice::voltages::feeds;
use noonday_engine::scenario::{ScenarioDocument, example};

fn cells(document: &ScenarioDocument, kind: CircuitKind, units: UnitSystem) -> String {
    let all = circuits(document).unwrap();
    let mut all = all.circuits.iter();
    let circuit = all.find(|circuit| circuit.kind == kind).unwrap();
    circuit_cells(circuit, &Voice::new(document, units))
        .join(", ")
        .replace('\u{a0}', " ")
}

#[test]
fn a_circuit_reads_as_a_sentence_in_the_sizes_of_either_world() {
    let document = example();
    assert_eq!(
        cells(&document, CircuitKind::Cooler, UnitSystem::Us),
        "67 A, 100 A at a start, 1 AWG (50 mm²), fuse 90 A, 0.27 V (2.2 %), 18 W lost"
    );
    assert!(cells(&document, CircuitKind::Cooler, UnitSystem::Metric).contains("50 mm² (1 AWG)"));
}

#[test]
fn where_no_cable_will_do_it_is_said_what_would() {
    let mut document = example();
    document.installation.cooler.length_m = 25.0;
    assert_eq!(
        cells(&document, CircuitKind::Cooler, UnitSystem::Us),
        "67 A, 100 A at a start, no single cable will do, no fuse, it would with 36.98 ft one way at most, with a bank of 24 V, \
         or with 3 equal cables side by side, each with its fuse"
    );
}

#[test]
fn every_circuit_has_its_working_with_numbers_and_source() {
    let mut document = example();
    document.charging.drives = true;
    let all = circuits(&document).unwrap();
    let voice = Voice::new(&document, UnitSystem::Us);
    assert_eq!(all.circuits.len(), 5);
    for circuit in &all.circuits {
        let worked = circuit_working(circuit, &all, &document, &voice);
        assert!(worked.len() >= 4);
        for line in worked {
            assert!(line.numbers.contains(|mark: char| mark.is_ascii_digit()));
            assert!(line.source.ends_with('.'), "{line:?}");
        }
    }
}

#[test]
fn a_hold_begins_in_mid_sentence_and_every_step_ends_one() {
    let mut document = example();
    document.charging.shore_power_w = 1_000.0;
    let steps = job(&document, &circuits(&document).unwrap(), SizeSeries::Metric).steps;
    assert!(steps.contains(&WorkStep::Mains));
    for step in steps {
        let said = work_step(step);
        let lower = said.starts_with(|mark: char| mark.is_lowercase());
        assert_eq!(lower, step.is_hold(), "{said}");
        assert!(said.ends_with('.'));
    }
}

#[test]
fn the_file_holds_every_row_of_the_table_with_plain_numbers() {
    let document = example();
    let voice = Voice::new(&document, UnitSystem::Us);
    let job = job(
        &document,
        &circuits(&document).unwrap(),
        SizeSeries::WireGauge,
    );
    let text = parts_csv(&job, &voice);
    let lines: Vec<&str> = text.split_terminator("\r\n").collect();
    assert_eq!(lines.len(), 1 + part_rows(&job, &voice).len());
    assert_eq!(lines[0], "Part,How much,Price,Currency");
    assert!(lines.contains(&"Bank,600 Ah,3072.00,USD"), "{text}");
    assert!(
        text.contains("\"Cable 1 AWG, Bus to cooler\",26.25 ft,"),
        "{text}"
    );
}

#[test]
fn the_way_it_is_fed_now_is_marked() {
    let document = example();
    let all = feeds(&document).unwrap();
    assert_eq!(feed_name(&all[0]), "12\u{a0}V direct (as it is)");
    assert_eq!(feed_name(&all[4]), "24\u{a0}V inverter");
}
