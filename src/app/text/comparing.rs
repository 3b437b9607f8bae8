//! Wording of scenarios side by side.

use super::Voice;
use super::charts::limit_label;
use crate::format::{Amount, Measure};
use noonday_engine::advice::weight::{
    CABLE_OVER_COPPER, CONVERTER_KG_PER_KW, COPPER_DENSITY_KG_M3, COVER_KG_M2, FAN_KG, Weighed,
    Weight, bank_wh_per_kg, insulation_kg_m3,
};
use noonday_engine::advice::{Advice, Headline};
use noonday_engine::scenario::{Dimension, ScenarioDocument};

/// Heading of the section.
pub const COMPARING: &str = "Side by side";
/// Under it.
pub const COMPARING_NOTE: &str = "Up to four scenarios over each other: the one shown, those saved in this browser, the example.";
/// Line that opens to it.
pub const CHOOSE: &str = "Compare scenarios";
/// Legend of the choice.
pub const WHICH: &str = "Which ones, four at most";
/// Said while four are chosen.
pub const FOUR: &str = "Four are chosen. Untick one to choose another.";
/// Said while fewer than two are chosen.
pub const TOO_FEW: &str = "Choose two or more. “Save” at the top keeps the scenario shown, so that it can be chosen here after it was changed.";
/// The scenario on the page.
pub const SHOWN: &str = "shown here now";
/// One's own while a visitor is shown.
pub const OWN: &str = "your own";
/// The example.
pub const EXAMPLE: &str = "the example";
/// A stored text that gives no name.
pub const UNNAMED: &str = "Entry without a readable name";
/// Said in the column of what cannot be run.
pub const NOT_THERE: &str = "\u{2013}";
/// Head of the column of names.
pub const QUANTITY: &str = "What";
/// Button.
pub const OPEN: &str = "Open";
/// Name of the first band.
pub const TEMPERATURES: &str = "Temperature felt in the cabin";
/// Name of the second band.
pub const HEAT: &str = "Heat that comes in, from outside and from what is in it";
/// Name of the third band.
pub const CHARGE: &str = "Charge of the bank";
/// Caption of the answers.
pub const ANSWERS: &str = "What each of them gives";
/// Under them.
pub const ANSWERS_NOTE: &str = "In brackets, how far from the first. Days in a row are days like the last. Price is with work and tax, as under “The figures”.";
/// Caption of the inputs that differ.
pub const INPUTS: &str = "What is entered differently";
/// Where no input differs.
pub const ALL_SAME: &str = "Nothing: the same inputs, whatever they are called.";
/// An input that has no effect there.
pub const NO_EFFECT: &str = "no effect";
/// Line that opens to the working of the weight.
pub const WEIGHT: &str = "How the weight is reckoned";
/// Caption of its table.
pub const WEIGHT_PARTS: &str = "Weight by part";
/// Under it.
pub const WEIGHT_NOTE: &str = "To tell scenarios apart. Before the roof and the axles are loaded, add up the masses on the data plates of what is bought, and weigh the vehicle.";

/// Said of a column that cannot be had; `why` is a clause.
pub fn cannot(why: &str) -> String {
    format!("Cannot be compared: {why}.")
}

/// Name of a column: its letter and what it is called.
pub fn column_name(letter: char, name: &str) -> String {
    format!("{letter}\u{a0}· {name}")
}

/// The same at the end of a line, of so many marks at most.
pub fn line_name(letter: char, name: &str, most: usize) -> String {
    let long = format!("{letter} · {name}");
    if long.chars().count() <= most {
        return long;
    }
    let cut: String = long.chars().take(most.saturating_sub(1)).collect();
    format!("{}…", cut.trim_end())
}

/// Letters of some columns: none where they are all of them.
pub fn letters(all: usize, some: impl Iterator<Item = char>) -> String {
    let letters: Vec<String> = some.map(String::from).collect();
    if letters.len() == all {
        return String::new();
    }
    format!(" {}", letters.join(", "))
}

/// Label of the weather of some columns.
pub fn weather(letters: &str) -> String {
    format!("outdoors{letters}")
}

/// Label of a limit of some columns.
pub fn limit(limit_c: f64, letters: &str, voice: &Voice) -> String {
    format!("{}{letters}", limit_label(limit_c, voice))
}

/// Label of a reserve of some columns.
pub fn reserve(letters: &str) -> String {
    format!("reserve{letters}")
}

/// What an overlaid band shows, for those who do not see it.
pub fn band_described(heading: &str, columns: &[(char, String)]) -> String {
    let parts: Vec<String> = columns
        .iter()
        .map(|(letter, said)| format!("{letter} {said}"))
        .collect();
    format!("{heading}. {}.", parts.join("; "))
}

/// The warmest of a run.
pub fn warmest(advice: &Advice, voice: &Voice) -> String {
    let series = &advice.with_cooler.series;
    let felt = series.felt_c.iter().zip(&series.time_h);
    let most = felt.max_by(|one, other| one.0.total_cmp(other.0));
    most.map_or_else(String::new, |(felt_c, time_h)| {
        let felt = voice.units.temperature(*felt_c, 0);
        format!("at most {felt} at {}", voice.instant(*time_h))
    })
}

/// The lowest charge of a run.
pub fn lowest(advice: &Advice, voice: &Voice) -> String {
    let bank = &advice.verdict.bank;
    format!(
        "lowest {} at {}",
        voice.units.percent(bank.lowest_state_of_charge),
        voice.instant(bank.lowest_at_h)
    )
}

/// The most heat that comes in at a time.
pub fn most_heat(watts: f64, voice: &Voice) -> String {
    let heat = voice.units.quantity(Dimension::HeatFlow, watts);
    format!("at most {heat}")
}

/// A cell: words, or an amount that can be held against another.
#[derive(Clone, Debug, PartialEq)]
pub enum Cell {
    /// Words.
    Said(String),
    /// An amount.
    Amount(Amount),
}

/// Names of the answers, in order.
pub const ANSWER_NAMES: [&str; 10] = [
    "Cool enough when it must be",
    "Too warm, degrees times hours",
    "Felt at most in those hours",
    "Bank lasts, such days in a row",
    "Lowest charge",
    "Cooler draws in a day",
    "Other loads draw in a day",
    "Greatest current, starts not counted",
    "Price",
    "Weight",
];

/// The answers of a run, in the order of their names.
pub fn answers(advice: &Advice, weight: &Weight, voice: &Voice) -> [Cell; 10] {
    let (verdict, run) = (&advice.verdict, &advice.with_cooler);
    let days = days(advice);
    let energy = |total_wh: f64| Cell::Amount(Measure::Energy.of(total_wh / days));
    let worst = verdict.windows.iter().max_by(|one, other| {
        let over = |margin_k: f64| -margin_k;
        over(one.margin_k()).total_cmp(&over(other.margin_k()))
    });
    [
        Cell::Said(headline(verdict.headline).to_owned()),
        Cell::Said(voice.units.degree_hours(verdict.degree_hours_k_h())),
        worst.map_or_else(
            || Cell::Said(NOT_THERE.to_owned()),
            |window| Cell::Amount(Measure::Temperature.of(window.worst_felt_c)),
        ),
        match verdict.bank.lasts_h {
            Some(hours) => Cell::Amount(Measure::Duration.of(hours)),
            None => Cell::Said(format!("over {}\u{a0}days", verdict.bank.days_looked)),
        },
        Cell::Amount(Measure::Percent.of(verdict.bank.lowest_state_of_charge)),
        energy(run.totals.cooler_wh),
        energy(run.totals.loads_wh),
        Cell::Amount(Measure::Of(Dimension::Current).of(run.peak_discharge_a.round())),
        Cell::Amount(Measure::Money.of(advice.cost.total)),
        Cell::Amount(mass(weight.total_kg)),
    ]
}

fn days(advice: &Advice) -> f64 {
    let times = &advice.with_cooler.series.time_h;
    match (times.first(), times.last()) {
        (Some(from), Some(until)) if until > from => (until - from) / 24.0,
        _ => 1.0,
    }
}

/// A mass in whole kilograms: it is reckoned, not weighed.
fn mass(mass_kg: f64) -> Amount {
    Measure::Weight.of(mass_kg)
}

fn headline(headline: Headline) -> &'static str {
    match headline {
        Headline::NothingAsked => "no hours set",
        Headline::MetWithoutCooler => "yes, even without a cooler",
        Headline::Met => "yes",
        Headline::MetBelowReserve => "yes, but below the reserve",
        Headline::Missed => "no",
    }
}

/// A cell as text.
pub fn cell(cell: &Cell, voice: &Voice) -> String {
    match cell {
        Cell::Said(said) => said.clone(),
        Cell::Amount(amount) => voice.amount(*amount),
    }
}

/// How far a cell is from the first one's; nothing between two currencies, or where no difference would show.
pub fn since(now: &Cell, first: &Cell, voice: &Voice, first_voice: &Voice) -> Option<String> {
    let (Cell::Amount(now), Cell::Amount(first)) = (now, first) else {
        return None;
    };
    let money = now.measure == Measure::Money && voice.currency != first_voice.currency;
    if money {
        return None;
    }
    voice.difference(*now, *first)
}

/// Name of a part of the weight.
pub fn part_name(part: Weighed) -> &'static str {
    match part {
        Weighed::Cooler => "Cooler",
        Weighed::Bank => "Bank",
        Weighed::Panels => "Panels",
        Weighed::Converters => "DC-DC charger, inverter",
        Weighed::Cable => "Cable",
        Weighed::Fan => "Roof fan",
        Weighed::Insulation => "Insulation",
        Weighed::Covers => "Window covers",
    }
}

/// Every part, in the order of the table.
pub const PARTS: [Weighed; 8] = [
    Weighed::Cooler,
    Weighed::Bank,
    Weighed::Panels,
    Weighed::Converters,
    Weighed::Cable,
    Weighed::Fan,
    Weighed::Insulation,
    Weighed::Covers,
];

/// A mass as text.
pub fn mass_text(mass_kg: f64, voice: &Voice) -> String {
    voice.amount(mass(mass_kg))
}

/// How a part is reckoned, with the numbers of one scenario put in, and from where.
pub fn part_worked(
    part: Weighed,
    weight: &Weight,
    document: &ScenarioDocument,
    voice: &Voice,
) -> (&'static str, String, &'static str) {
    let number = |value: f64, decimals| voice.units.number(value, decimals);
    let litres = |volume_m3: f64| format!("{}\u{a0}litres", number(volume_m3 * 1_000.0, 1));
    let practice = "Common practice, no source.";
    let panel = &document.roof.panel;
    let quantity = |dimension, value| voice.units.quantity(dimension, value);
    match part {
        Weighed::Cooler => (
            "as entered under “The roof”",
            quantity(Dimension::Mass, document.roof.unit.mass_kg),
            "The scenario’s own.",
        ),
        Weighed::Bank => (
            "rated energy over specific energy",
            format!(
                "{} over {}\u{a0}Wh/kg",
                voice.units.energy(weight.bank_wh),
                number(bank_wh_per_kg(document.battery.chemistry), 0)
            ),
            practice,
        ),
        Weighed::Panels => (
            "power over that of one panel, times its mass",
            format!(
                "{} over {}, times {}",
                quantity(Dimension::ElectricPower, document.panel_power_w()),
                quantity(Dimension::ElectricPower, panel.rated_power_w),
                quantity(Dimension::Mass, panel.mass_kg)
            ),
            "The scenario’s own.",
        ),
        Weighed::Converters => (
            "output times mass for each kilowatt",
            format!(
                "{} times {}\u{a0}kg/kW",
                voice.units.watts(weight.converters_w),
                number(CONVERTER_KG_PER_KW, 0)
            ),
            practice,
        ),
        Weighed::Cable => (
            "copper out and back, times its density, times a share for its insulation",
            format!(
                "{} times {}\u{a0}kg/m³ times {}",
                litres(weight.copper_m3),
                number(COPPER_DENSITY_KG_M3, 0),
                number(CABLE_OVER_COPPER, 1)
            ),
            "Density: IEC 60028. Share: common practice, no source.",
        ),
        Weighed::Fan => (
            "one fan with its frame",
            quantity(Dimension::Mass, FAN_KG),
            practice,
        ),
        Weighed::Insulation => (
            "volume, less what is not filled, times density",
            format!(
                "{} times {}\u{a0}kg/m³",
                litres(weight.insulation_m3),
                number(insulation_kg_m3(document), 0)
            ),
            "Densities: ASHRAE Fundamentals 2005 ch. 25, others from memory.",
        ),
        Weighed::Covers => (
            "glass times mass for each square metre",
            format!("{}\u{a0}kg/m²", number(COVER_KG_M2, 0)),
            practice,
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::advice::advise;
    use noonday_engine::advice::weight::weight;
    use noonday_engine::scenario::{Scenario, example};

    #[test]
    fn names_are_cut_where_there_is_no_room() {
        assert_eq!(line_name('A', "Bo", 9), "A · Bo");
        assert_eq!(line_name('B', "A long name", 9), "B · A lo…");
    }

    #[test]
    fn what_all_share_needs_no_letters() {
        assert_eq!(letters(2, "AB".chars()), "");
        assert_eq!(letters(3, "AC".chars()), " A, C");
    }

    #[test]
    fn amounts_differ_and_currencies_do_not_mix() {
        let document = example();
        let voice = Voice::new(&document, UnitSystem::Metric);
        let mut dear = document.clone();
        dear.prices.currency = "EUR".to_owned();
        let other = Voice::new(&dear, UnitSystem::Metric);
        let advice = advise(&Scenario::new(document.clone()).unwrap()).unwrap();
        let mut cells = answers(&advice, &weight(&document), &voice);
        let first = cells.clone();
        cells[8] = Cell::Amount(Measure::Money.of(advice.cost.total + 10.0));
        assert_eq!(since(&cells[9], &first[9], &voice, &voice), None);
        assert!(since(&cells[8], &first[8], &voice, &voice).is_some());
        assert_eq!(since(&cells[8], &first[8], &other, &voice), None);
    }

    #[test]
    fn every_part_says_how_it_is_reckoned() {
        let document = example();
        let voice = Voice::new(&document, UnitSystem::Us);
        let weight = weight(&document);
        for part in PARTS {
            let (equation, numbers, source) = part_worked(part, &weight, &document, &voice);
            assert!(
                [equation, &numbers, source]
                    .iter()
                    .all(|text| !text.is_empty())
            );
        }
    }
}
