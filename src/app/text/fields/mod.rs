//! The wording of every input: its label, why it matters and what bounds it, keyed by the field's key.

mod cooling;
mod day;
mod glass;
mod installation;
mod need;
mod occupants;
mod power;
mod prices;
mod readings;
mod roof;
mod shell;
mod starting;
mod vehicle;

use noonday_engine::scenario::{Dimension, Field, Kind};

/// What is said of one input.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wording {
    /// Its name, short enough for a phone, understood beside the other inputs of its part.
    pub label: &'static str,
    /// Why it matters, in a sentence or two.
    pub why: &'static str,
    /// What bounds it, a clause that follows the range; empty where the kind of number says it.
    pub bounds: &'static str,
}

/// A row with label, reason and bounds.
const fn say(label: &'static str, why: &'static str, bounds: &'static str) -> Wording {
    Wording { label, why, bounds }
}

/// What is said of an input; the key itself stands in should there be nothing, which a test rules out.
pub fn wording(field: &Field) -> Wording {
    find(field.key).unwrap_or(say(field.key, "", ""))
}

/// Name of an input on its own, away from its part: `Refrigerator: power while on`.
pub fn full_label(field: &Field) -> String {
    let label = wording(field).label;
    match part_title(field.key) {
        Some(part) => format!("{part}: {}", lower_first(label)),
        None => label.to_owned(),
    }
}

/// What bounds a number, from its own wording or from its kind.
pub fn bounds(field: &Field) -> &'static str {
    let own = wording(field).bounds;
    if !own.is_empty() {
        return own;
    }
    match &field.kind {
        Kind::Number(number) => match number.dimension {
            Dimension::HourOfDay => "the hours of one day",
            Dimension::Angle => "the compass",
            _ => "beyond it the calculation has not been checked",
        },
        _ => "",
    }
}

/// Title of the part of a group that an input belongs to, if the group has such parts.
pub fn part_title(key: &str) -> Option<&'static str> {
    const PARTS: [(&str, &str); 26] = [
        ("need.windows.0.", "First window"),
        ("need.windows.1.", "Second window"),
        ("need.windows.2.", "Third window"),
        ("loads.fridge.", "Refrigerator"),
        ("loads.lights.", "Lights"),
        ("loads.electronics.", "Electronics"),
        ("loads.other.", "Anything else"),
        ("installation.cooler.", "Cable to the cooler"),
        ("installation.dc_dc.", "Cable to the DC-DC charger"),
        ("installation.panels.", "Cable from panels to controller"),
        ("installation.controller.", "Cable from controller to bank"),
        ("installation.bus.", "Cable from bank to bus"),
        ("installation.inverter.", "Cable to the inverter"),
        ("roof.unit.", "Unit on the roof"),
        ("roof.fan.", "Roof fan"),
        ("roof.hatches.0.", "First hatch"),
        ("roof.hatches.1.", "Second hatch"),
        ("roof.panel.", "Panels of the plan"),
        ("roof.panels.0.", "Panel 1"),
        ("roof.panels.1.", "Panel 2"),
        ("roof.panels.2.", "Panel 3"),
        ("roof.panels.3.", "Panel 4"),
        ("roof.panels.4.", "Panel 5"),
        ("roof.panels.5.", "Panel 6"),
        ("roof.panels.6.", "Panel 7"),
        ("roof.panels.7.", "Panel 8"),
    ];
    PARTS
        .iter()
        .find(|(start, _)| key.starts_with(start))
        .map(|(_, title)| *title)
}

fn find(key: &str) -> Option<Wording> {
    if let Some(rest) = key.strip_prefix("need.windows.") {
        return need::window(rest.get(2..)?);
    }
    if let Some(rest) = key.strip_prefix("loads.") {
        let (load, quantity) = rest.split_once('.')?;
        return power::load(load, quantity);
    }
    if let Some(rest) = key.strip_prefix("installation.")
        && let Some((_, quantity)) = rest.split_once('.')
    {
        return installation::way(quantity);
    }
    starting::wording(key)
        .or_else(|| vehicle::wording(key))
        .or_else(|| shell::wording(key))
        .or_else(|| glass::wording(key))
        .or_else(|| occupants::wording(key))
        .or_else(|| need::wording(key))
        .or_else(|| day::wording(key))
        .or_else(|| cooling::wording(key))
        .or_else(|| power::wording(key))
        .or_else(|| prices::wording(key))
        .or_else(|| installation::wording(key))
        .or_else(|| roof::wording(key))
        .or_else(|| readings::wording(key))
}

fn lower_first(text: &str) -> String {
    let mut marks = text.chars();
    match marks.next() {
        Some(first) => std::iter::once(first.to_ascii_lowercase())
            .chain(marks)
            .collect(),
        None => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::fields;

    #[test]
    fn every_input_has_a_label_and_a_reason() {
        for field in fields() {
            let found = find(field.key);
            assert!(found.is_some(), "{} has no wording", field.key);
            let found = wording(field);
            assert!(!found.label.is_empty() && found.label.chars().count() <= 44);
            assert!(found.why.ends_with('.'), "{}: {}", field.key, found.why);
            assert!(!found.bounds.ends_with('.'), "{} bounds", field.key);
        }
    }

    #[test]
    fn full_labels_are_unique() {
        let mut labels: Vec<String> = fields().map(full_label).collect();
        let count = labels.len();
        labels.sort();
        labels.dedup();
        assert_eq!(labels.len(), count);
    }
}
