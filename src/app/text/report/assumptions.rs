//! What the result rests on: those inputs that matter most with where they come from, and how many others there are of each kind.

use super::super::fields::full_label;
use super::super::{Voice, groups, listed};
use crate::inputs::{is_relevant, shown_value};
use noonday_engine::advice::sampling::{Sampled, Uncertain};
use noonday_engine::scenario::{Basis, Field, ScenarioDocument, example, field, fields};

/// How many are named.
const NAMED: usize = 7;

/// Those that move the result most in general, named after those that were found to move this one.
const USUALLY: [&str; 10] = [
    "day.high_c",
    "cooler.capacity_rated_w",
    "battery.capacity_ah",
    "shell.filled_share",
    "shell.roof_insulation_m",
    "shell.leakage_area_m2",
    "day.dew_point_c",
    "shell.roof_sun_absorptance",
    "cooler.electric_power_rated_w",
    "battery.health_share",
];

fn key_of(input: Uncertain) -> &'static str {
    match input {
        Uncertain::Leakage => "shell.leakage_area_m2",
        Uncertain::FilledShare => "shell.filled_share",
        Uncertain::Paint => "shell.roof_sun_absorptance",
        Uncertain::ForecastHigh => "day.high_c",
        Uncertain::DewPoint => "day.dew_point_c",
        Uncertain::Capacity => "cooler.capacity_rated_w",
        Uncertain::Efficiency => "cooler.electric_power_rated_w",
        Uncertain::Ageing => "battery.health_share",
        Uncertain::OtherLoads => "loads.fridge.power_w",
    }
}

fn named(document: &ScenarioDocument, sampled: Option<&Sampled>) -> Vec<&'static Field> {
    let found = sampled.map_or(&[][..], |sampled| &sampled.influences);
    let mut keys: Vec<&str> = found.iter().map(|one| key_of(one.input)).collect();
    keys.extend(USUALLY);
    let mut named: Vec<&'static Field> = Vec::new();
    for key in keys {
        let already = named.iter().any(|other| other.key == key);
        if let Some(field) = field(key)
            && !already
            && is_relevant(key, document)
            && named.len() < NAMED
        {
            named.push(field);
        }
    }
    named
}

/// Where a value comes from, short enough for a line.
fn source(field: &Field, document: &ScenarioDocument) -> String {
    if !field.same_in(document, &example()) {
        return "entered for this scenario".to_owned();
    }
    match field.basis {
        Basis::Published(source) => source.to_owned(),
        Basis::FromMemory(source) => format!("{source}, from memory"),
        Basis::CommonPractice => "common practice, no source".to_owned(),
        Basis::Example => "the example’s, invented".to_owned(),
    }
}

/// What matters most: name, value, source.
pub fn assumptions(
    document: &ScenarioDocument,
    sampled: Option<&Sampled>,
    voice: &Voice,
) -> Vec<[String; 3]> {
    named(document, sampled)
        .into_iter()
        .map(|field| {
            [
                full_label(field),
                shown_value(field, document, voice.units),
                source(field, document),
            ]
        })
        .collect()
}

/// Whether an input bears on the run: not its name, its price, its readings or where things stand on the plan.
fn bears(field: &Field, document: &ScenarioDocument) -> bool {
    use noonday_engine::scenario::Group;
    let other = matches!(
        field.group,
        Group::Title | Group::Readings | Group::Prices | Group::Cabling
    );
    !other && !groups::is_place_on_plan(field.key) && is_relevant(field.key, document)
}

/// How many others there are, by where they come from.
pub fn counted(document: &ScenarioDocument, sampled: Option<&Sampled>, voice: &Voice) -> String {
    let named = named(document, sampled);
    let rest: Vec<&Field> = fields()
        .filter(|field| bears(field, document))
        .filter(|field| !named.iter().any(|other| other.key == field.key))
        .collect();
    let unchanged = |field: &&&Field| field.same_in(document, &example());
    let of = |holds: fn(&Basis) -> bool| {
        let rest = rest.iter().filter(unchanged);
        rest.filter(|field| holds(&field.basis)).count()
    };
    let entered = rest.len() - rest.iter().filter(unchanged).count();
    let kinds = [
        (entered, "entered for this scenario"),
        (
            of(|basis| matches!(basis, Basis::Published(_))),
            "from published sources",
        ),
        (
            of(|basis| matches!(basis, Basis::FromMemory(_))),
            "from published sources quoted from memory",
        ),
        (
            of(|basis| matches!(basis, Basis::CommonPractice)),
            "common practice without a source",
        ),
        (
            of(|basis| matches!(basis, Basis::Example)),
            "the example’s own, invented",
        ),
    ];
    let number = |count: usize| voice.units.number(count as f64, 0);
    let told: Vec<String> = kinds
        .into_iter()
        .filter(|(count, _)| *count > 0)
        .map(|(count, kind)| format!("{} {kind}", number(count)))
        .collect();
    format!(
        "Of the {} other inputs that bear on it, {}.",
        number(rest.len()),
        listed(&told)
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;

    #[test]
    fn the_counts_add_up_and_what_was_entered_is_told_apart() {
        let mut document = example();
        document.day.high_c = 41.0;
        document.vehicle.length_m = 3.0;
        let voice = Voice::new(&document, UnitSystem::Metric);
        let named = assumptions(&document, None, &voice);
        assert_eq!(named.len(), NAMED);
        assert_eq!(named[0][2], "entered for this scenario");
        assert!(
            named[1..]
                .iter()
                .all(|[_, _, from]| from != "entered for this scenario")
        );
        let said = counted(&document, None, &voice);
        let mut numbers = said
            .split(|mark: char| !mark.is_ascii_digit())
            .filter_map(|text| text.parse::<usize>().ok());
        let all = numbers.next().unwrap();
        assert_eq!(numbers.sum::<usize>(), all, "{said}");
        assert!(said.contains("1 entered for this scenario"));
    }
}
