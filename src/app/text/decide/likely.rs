//! Wording of how sure it is, of what fails, and of plain division.

use super::super::Voice;
use super::NOT_REACHED;
use super::money::signed;
use crate::format::{UnitSystem, duration};
use noonday_engine::advice::failure::{ANIMAL_FACILITY_LIMIT_C, Mark};
use noonday_engine::advice::sampling::{Sampled, Uncertain};
use noonday_engine::advice::{PlainDivision, Reason};
use noonday_engine::comfort::heat_index::HeatIndexCategory;
use noonday_engine::scenario::{Dimension, NeededFor, ScenarioDocument};
use noonday_engine::simulation::FailingPart;

/// Name of a window of the need with its hours.
pub fn window_name(document: &ScenarioDocument, slot: usize, voice: &Voice) -> String {
    let Some(window) = document.need.windows.get(slot) else {
        return String::new();
    };
    let whom = match window.needed_for {
        NeededFor::Animals => "Animals",
        NeededFor::People => "People",
        NeededFor::Nobody => "Nobody",
    };
    format!(
        "{whom}, {}",
        voice.span(window.from_hour, window.until_hour)
    )
}

/// Chance of everything, and what it was asked of.
pub fn sure(found: &Sampled, voice: &Voice) -> String {
    let days = voice.units.number(found.samples as f64, 0);
    match found.all_met {
        Some(share) => format!(
            "Of {days} such days, with inputs as far off as they usually are, {} keep all hours and the reserve.",
            voice.units.percent(share)
        ),
        None => format!("{days} such days, with inputs as far off as they usually are."),
    }
}

/// What to find out first.
pub fn measure_first(found: &Sampled) -> Option<String> {
    let most = found.influences.first()?;
    (most.of_excess >= 0.1).then(|| {
        format!(
            "What it depends on most is {}: that is worth finding out first.",
            uncertain_name(most.input)
        )
    })
}

/// Name of an uncertain input in mid-sentence.
pub fn uncertain_name(input: Uncertain) -> &'static str {
    match input {
        Uncertain::Leakage => "leaks of the closed cabin",
        Uncertain::FilledShare => "how well cavities are stuffed",
        Uncertain::Paint => "how dark the paint is to the sun",
        Uncertain::ForecastHigh => "the high of the forecast",
        Uncertain::DewPoint => "the dew point of the forecast",
        Uncertain::Capacity => "the cooler’s real capacity",
        Uncertain::Efficiency => "the cooler’s real efficiency",
        Uncertain::Ageing => "age of the bank",
        Uncertain::OtherLoads => "draw of the other loads",
    }
}

/// What fails, as a column.
pub fn part_name(part: FailingPart) -> &'static str {
    match part {
        FailingPart::Cooler => "Cooler fails",
        FailingPart::Bank => "Bank fails",
    }
}

/// Name of a danger value.
pub fn mark_name(mark: Mark, voice: &Voice) -> String {
    let degrees = |value_c| voice.units.temperature(value_c, 0);
    let category = match mark {
        Mark::AnimalFacilityLimit => {
            let decimals = usize::from(voice.units == UnitSystem::Metric);
            let limit = voice.units.temperature(ANIMAL_FACILITY_LIMIT_C, decimals);
            return format!("Air at {limit}, animals");
        }
        Mark::HeatIndex(category) => category,
    };
    let name = match category {
        HeatIndexCategory::None => "None",
        HeatIndexCategory::Caution => "Caution",
        HeatIndexCategory::ExtremeCaution => "Extreme caution",
        HeatIndexCategory::Danger => "Danger",
        HeatIndexCategory::ExtremeDanger => "Extreme danger",
    };
    match category.from_c() {
        Some(from_c) => format!("{name}, heat index {}", degrees(from_c)),
        None => name.to_owned(),
    }
}

/// Time to a danger value.
pub fn minutes(minutes: Option<f64>) -> String {
    match minutes {
        None => NOT_REACHED.to_owned(),
        Some(minutes) if minutes < 0.5 => "already there".to_owned(),
        Some(minutes) => duration(minutes.floor() / 60.0),
    }
}

/// What plain division leaves out.
pub fn reason_name(reason: Reason) -> &'static str {
    match reason {
        Reason::UsableShare => "Only part of the charge is usable",
        Reason::Duty => "The compressor rests or runs slower",
        Reason::Voltage => "The bank’s real voltage",
        Reason::OtherLoads => "Other loads",
        Reason::Charging => "Charging",
        Reason::Heat => "The real draw in this heat",
        Reason::Bank => "Losses and limits of the bank",
    }
}

/// The division itself.
pub fn division(plain: &PlainDivision, voice: &Voice) -> String {
    let quantity = |dimension, value: f64| voice.units.quantity(dimension, value.round());
    format!(
        "{} by {} on the plate",
        quantity(Dimension::Charge, plain.rated_ah),
        quantity(Dimension::Current, plain.plate_a)
    )
}

/// An item of the difference.
pub fn item(hours: f64) -> String {
    signed(hours, &duration(hours.abs()), 0.009).replace("as before", "0\u{a0}h")
}

/// How long the bank of the run lasts.
pub fn run_lasts(plain: &PlainDivision) -> String {
    let hours = duration(plain.simulated_h);
    if plain.lasts_longer {
        format!("more than {hours}")
    } else {
        hours
    }
}
