//! Wording of cable and fuses.

use super::super::working::Worked;
use super::{amps, both_sizes, circuit_name, length, offered, ohms, percent, series, volts, watts};
use crate::format::UnitSystem;
use crate::text::Voice;
use noonday_engine::advice::circuits::{Choice, Circuit, CircuitKind, Circuits, StartVoltage};
use noonday_engine::electrical::circuit::{Fitted, Remedies};
use noonday_engine::electrical::conductor::{bundle_factor, hot_air_factor};
use noonday_engine::scenario::ScenarioDocument;

/// Line that opens to them.
pub const CABLES: &str = "Cable and fuses";
/// Over them.
pub const CABLES_NOTE: &str = "The thinnest cable that carries the current behind its fuse and keeps the drop within what is allowed. Each line opens to its length and its working.";
/// Heads of the columns on a wide screen.
pub const CABLES_HEADS: [&str; 5] = [
    "Circuit",
    "Current",
    "Cable",
    "Fuse or breaker",
    "Lost in the cable",
];
/// Button: to what else a way of cable is described by.
pub const MORE_OF_WAY: &str = "Drop allowed, heat, bundle";
/// Button: the cable found becomes the run's.
pub const USE_IN_RUN: &str = "Let the run reckon with it";
/// Said once it is.
pub const USED_IN_RUN: &str = "The run reckons with the resistance of this cable and the bus’s.";
/// Cautions beside the table.
pub const CABLE_CAUTIONS: [&str; 3] = [
    "A device without the breaking capacity may burst or weld shut, and then nothing stops the current. The maker’s figure for the bank’s short-circuit current goes before the one worked out here; the device has to be rated for direct current at the bank’s voltage.",
    "Fuse every wire that leaves a battery at that battery: within 7 in (18 cm) of it, or 40 in (102 cm) where the wire is sheathed over that length (33 CFR 183.455). A charger between two batteries needs one at each. Disconnect the bank before work, take off rings and watches, cover its terminals.",
    "Crimp with the tool for the lug; a poor crimp is a heater. Local codes decide over this table, and mains wiring belongs to a licensed electrician.",
];

/// Label of the box with a circuit's length.
pub fn length_label(kind: CircuitKind) -> String {
    format!("Length one way, {}", lower_first(circuit_name(kind)))
}

fn lower_first(name: &str) -> String {
    let mut marks = name.chars();
    marks
        .next()
        .map(|first| first.to_lowercase().chain(marks).collect())
        .unwrap_or_default()
}

/// A circuit in a line: current, cable, fuse, loss.
pub fn circuit_cells(circuit: &Circuit, voice: &Voice) -> [String; 4] {
    let need = &circuit.need;
    let mut current = amps(need.running_a, voice);
    if need.surge_a > need.running_a {
        current = format!("{current}, {} at a start", amps(need.surge_a, voice));
    }
    let cable = both_sizes(&circuit.gauge, &circuit.metric, voice);
    match offered(circuit, voice) {
        Choice::Fits(fitted) => [
            current,
            cable,
            format!("fuse {}", amps(fitted.fuse_a, voice)),
            lost(fitted, voice),
        ],
        Choice::Nothing(remedies) => [
            current,
            "no single cable will do".to_owned(),
            "no fuse".to_owned(),
            remedy(circuit, remedies, voice),
        ],
    }
}

fn lost(fitted: &Fitted, voice: &Voice) -> String {
    format!(
        "{} ({}), {} lost",
        volts(fitted.drop_v, voice),
        percent(fitted.drop_share, voice),
        watts(fitted.loss_w, voice)
    )
}

/// What would do instead.
fn remedy(circuit: &Circuit, remedies: &Remedies, voice: &Voice) -> String {
    let shorter = remedies.longest_m.map(|longest_m| {
        format!(
            "with {} one way at most",
            length(floor_cm(longest_m), voice)
        )
    });
    let voltage = remedies.voltage_v.map(|voltage_v| {
        let by = match circuit.kind {
            CircuitKind::Panels => "with panels in series, at",
            _ => "with a bank of",
        };
        format!("{by} {}", volts(voltage_v, voice))
    });
    let runs = remedies
        .parallel_runs
        .map(|runs| format!("with {runs} equal cables side by side, each with its fuse"));
    let ways: Vec<String> = [shorter, voltage, runs].into_iter().flatten().collect();
    match ways.as_slice() {
        [] => "more than the table carries: the load has to be split".to_owned(),
        [only] => format!("it would {only}"),
        [first @ .., last] => format!("it would {}, or {last}", first.join(", ")),
    }
}

/// Rounded down, so that what is shown would do.
fn floor_cm(length_m: f64) -> f64 {
    (100.0 * length_m).floor() / 100.0
}

/// The working of a circuit.
pub fn circuit_working(
    circuit: &Circuit,
    circuits: &Circuits,
    document: &ScenarioDocument,
    voice: &Voice,
) -> Vec<Worked> {
    let mut all = vec![current(circuit, voice)];
    if let Choice::Fits(fitted) = offered(circuit, voice) {
        all.push(allowed(circuit, fitted, voice));
        all.push(fuse(circuit, fitted, voice));
        all.push(drop(circuit, fitted, voice));
    }
    let feeds_cooler = matches!(circuit.kind, CircuitKind::Cooler | CircuitKind::Inverter);
    if let Some(start) = circuits.start(series(voice.units)).filter(|_| feeds_cooler) {
        all.push(arrives(start, document, voice));
    }
    all
}

fn current(circuit: &Circuit, voice: &Voice) -> Worked {
    let need = &circuit.need;
    Worked {
        title: "Current".to_owned(),
        equation: "power / voltage, × what hours on end ask for",
        numbers: format!(
            "{} / {} = {}; × {} = {}",
            watts(circuit.power_w, voice),
            volts(need.voltage_v, voice),
            amps(need.running_a, voice),
            voice.units.number(need.continuous_factor, 2),
            amps(need.continuous_factor * need.running_a, voice)
        ),
        source: match circuit.kind {
            CircuitKind::Panels => {
                "Short-circuit current 1.1 × that at best power (from memory); 1.25 × 1.25 of it, NEC 690.8 (from memory)."
            }
            _ => {
                "Nominal voltage, below what a bank holds, so on the careful side; 1.25 × what flows for three hours or more, NEC 210.20 and 215.3 (from memory). It also covers that a cooler draws more in air hotter than its rating."
            }
        },
    }
}

fn allowed(circuit: &Circuit, fitted: &Fitted, voice: &Voice) -> Worked {
    let need = &circuit.need;
    let factor = |share| voice.units.number(share, 2);
    Worked {
        title: "What the cable may carry".to_owned(),
        equation: "table × heat × bundle",
        numbers: format!(
            "{} × {} × {} = {}",
            amps(fitted.conductor.allowable_a(need.insulation), voice),
            factor(hot_air_factor(need.insulation, need.air_c)),
            factor(bundle_factor(need.bundled_conductors)),
            amps(fitted.allowable_a, voice)
        ),
        source: "33 CFR 183.425, Table 5 (copper, air at 30 °C; a metric size takes the current of the next thinner gauge); heat √((insulation − air)/(insulation − 30 °C)), NEC 310.15(B) (from memory); bundle, the less of ABYC E-11 (from memory) and NEC 310.15(C)(1).",
    }
}

fn fuse(circuit: &Circuit, fitted: &Fitted, voice: &Voice) -> Worked {
    Worked {
        title: "Fuse or breaker".to_owned(),
        equation: "what flows ≤ standard rating ≤ what the cable may carry",
        numbers: format!(
            "{} ≤ {} ≤ {}",
            amps(circuit.need.least_fuse_a(), voice),
            amps(fitted.fuse_a, voice),
            amps(fitted.allowable_a, voice)
        ),
        source: "Ratings of NEC 240.6(A). 33 CFR 183.455 would let it exceed what the cable may carry by half; this does not. That a slow fuse stands twice its rating for the seconds of a start is common practice, no source.",
    }
}

fn drop(circuit: &Circuit, fitted: &Fitted, voice: &Voice) -> Worked {
    let need = &circuit.need;
    let mut numbers = format!(
        "{} × {} = {}, {} of {} where {} are allowed; {} × {} = {} of heat",
        amps(need.running_a, voice),
        ohms(fitted.resistance_ohm, voice),
        volts(fitted.drop_v, voice),
        percent(fitted.drop_share, voice),
        volts(need.voltage_v, voice),
        percent(need.allowed_drop_share, voice),
        amps(need.running_a, voice),
        volts(fitted.drop_v, voice),
        watts(fitted.loss_w, voice)
    );
    if need.surge_a > need.running_a {
        numbers = format!(
            "{numbers}; at a start {} and {}",
            volts(fitted.surge_drop_v, voice),
            watts(fitted.surge_loss_w, voice)
        );
    }
    Worked {
        title: "Drop and loss".to_owned(),
        equation: "current × resistance out and back",
        numbers,
        source: match voice.units {
            UnitSystem::Us => {
                "Resistance of NEC chapter 9, Table 8, at 75 °C (14 to 8 AWG and thinner from memory). Lugs and switches come on top."
            }
            UnitSystem::Metric => {
                "Greatest resistance of IEC 60228 class 5, at 75 °C. Lugs and switches come on top."
            }
        },
    }
}

fn arrives(start: &StartVoltage, document: &ScenarioDocument, voice: &Voice) -> Worked {
    let verdict = if start.arriving_v > start.cut_out_v {
        "above"
    } else {
        "not above"
    };
    Worked {
        title: "What arrives when the cooler starts".to_owned(),
        equation: "bank at rest − (start + all else) × (bank + bus) − start × cable",
        numbers: format!(
            "{} − ({} + {}) × ({} + {}) − {} × {} = {}, {verdict} the cut-out at {}",
            volts(start.bank_open_v, voice),
            amps(start.start_a, voice),
            amps(start.others_a, voice),
            ohms(start.bank_ohm, voice),
            ohms(start.bus_ohm, voice),
            amps(start.start_a, voice),
            ohms(start.cable_ohm, voice),
            volts(start.arriving_v, voice),
            volts(start.cut_out_v, voice)
        ),
        source: if document.battery.chemistry.has_peukert() {
            "Ohm’s law, bank at its lowest charge and 25 °C; a cold or old bank sags more."
        } else {
            "Ohm’s law, bank at its lowest charge and 25 °C; a cold bank sags more. Cut-outs usually wait some seconds, so a short dip may pass."
        },
    }
}

/// Short circuit of the bank, and what its fuse has to break.
pub fn short_circuit(circuits: &Circuits, voice: &Voice) -> String {
    let short = amps(rounded_to_hundreds(circuits.short_circuit_a), voice);
    match circuits.breaking_class_a {
        Some(class_a) => format!(
            "A dead short at this bank would drive about {short}: the device at the bank has to be able to break at least {}.",
            amps(class_a, voice)
        ),
        None => format!(
            "A dead short at this bank would drive about {short}, more than common devices break: ask the bank’s maker, and fuse each battery by itself."
        ),
    }
}

/// A bank's resistance is known no better.
fn rounded_to_hundreds(current_a: f64) -> f64 {
    (current_a / 100.0).round() * 100.0
}

/// The run's resistance against the cable's.
pub fn run_resistance(in_run_ohm: f64, of_cable_ohm: f64, voice: &Voice) -> String {
    format!(
        "The run reckons with {} from bank to cooler; this cable and the bus’s have {}.",
        ohms(in_run_ohm, voice),
        ohms(of_cable_ohm, voice)
    )
}

/// Whether two resistances look the same.
pub fn looks_same(one_ohm: f64, other_ohm: f64, voice: &Voice) -> bool {
    ohms(one_ohm, voice) == ohms(other_ohm, voice)
}
