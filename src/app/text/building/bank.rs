//! Wording of the bank's limits.

use super::{amps, watts};
use crate::text::{Voice, listed};
use noonday_engine::advice::bank_limits::{BankLimits, Limit, LimitKind};

/// Line that opens to them.
pub const LIMITS: &str = "What the bank allows, and what trips first";
/// Caption of the table.
pub const LIMITS_CAPTION: &str = "Limits, the one nearest to tripping first";
/// Its columns.
pub const LIMITS_HEADS: [&str; 3] = ["Limit", "Asked of it", "Load"];
/// Under it.
pub const LIMITS_NOTE: &str = "Everything that may run at once does so here, at the nominal voltage, whether or not the run ever does. Packs never share quite evenly: the one with the shortest cable and the least resistance gives most. Use packs of one kind and age with equal cables, and take plus and minus from opposite ends of the row.";
/// Caution beside it.
pub const LIMITS_CAUTION: &str = "When a lithium bank’s protection trips, everything goes dark at once, and chargers lose their bank: a DC-DC charger or controller that is not made for that may be destroyed. Lithium cells must not be charged below freezing.";
/// Button: to the packs.
pub const TO_PACKS: &str = "Change packs and limits";

/// Everything at once, in a sentence or two.
pub fn everything(limits: &BankLimits, voice: &Voice) -> String {
    let mut said = format!(
        "At once: {} for the cooler and {} for all else, {} together; a start adds {} for some seconds.",
        amps(limits.cooler_a, voice),
        amps(limits.others_a, voice),
        amps(limits.cooler_a + limits.others_a, voice),
        amps(limits.start_a, voice)
    );
    if limits.packs > 1.0 {
        said += &format!(
            " Each of {} packs gives {} if they share evenly.",
            voice.units.number(limits.packs, 0),
            amps(limits.each_pack_a, voice)
        );
    }
    let sources: Vec<String> = ["panels", "driving", "shore"]
        .into_iter()
        .zip(limits.charging_a)
        .filter(|(_, current_a)| *current_a > 0.0)
        .map(|(name, current_a)| format!("{} from {name}", amps(current_a, voice)))
        .collect();
    if !sources.is_empty() {
        said += &format!(" Charging: {}.", listed(&sources));
    }
    said
}

/// What trips first.
pub fn nearest(limits: &BankLimits, voice: &Voice) -> Option<String> {
    let first = limits.limits.first()?;
    let name = limit_name(first.kind, limits.packs, voice);
    let load = voice.units.percent(first.load().min(99.0));
    Some(if first.trips() {
        format!("Trips: {name}, asked for {load} of what it allows.")
    } else {
        format!("Nothing trips. Nearest to it is {name}, at {load}.")
    })
}

/// Name of a limit in mid-sentence.
pub fn limit_name(kind: LimitKind, packs: f64, voice: &Voice) -> String {
    match kind {
        LimitKind::Continuous => "the bank’s protection, for good".to_owned(),
        LimitKind::ContinuousOnePackLess => format!(
            "the bank’s protection with one of {} packs gone",
            voice.units.number(packs, 0)
        ),
        LimitKind::Peak => "the bank’s protection, at a start".to_owned(),
        LimitKind::Charging => "what the bank takes while charging".to_owned(),
        LimitKind::BusFuse => "the fuse at the bank".to_owned(),
        LimitKind::CutOut => {
            "the cooler’s low-voltage cut-out, at a start on an empty bank".to_owned()
        }
        LimitKind::InverterContinuous => "the inverter, running".to_owned(),
        LimitKind::InverterSurge => "the inverter, at a start".to_owned(),
    }
}

/// Cells of a limit.
pub fn limit_cells(limit: &Limit, voice: &Voice) -> Vec<String> {
    let in_watts = matches!(
        limit.kind,
        LimitKind::InverterContinuous | LimitKind::InverterSurge
    );
    let shown = |value| {
        if in_watts {
            watts(value, voice)
        } else {
            amps(value, voice)
        }
    };
    let verdict = if limit.trips() { "trips" } else { "holds" };
    vec![
        format!("{} of {}", shown(limit.asked), shown(limit.allowed)),
        format!("{}, {verdict}", voice.units.percent(limit.load().min(99.0))),
    ]
}
