//! Wording of the client's report.

mod assumptions;
mod expectations;

pub use assumptions::{assumptions, counted};
pub use expectations::{cautions, expected, failing, not_expected};

use super::comparing::mass_text;
use super::summary::summary;
use super::{Voice, decide, groups, listed};
use crate::format::duration;
use noonday_engine::advice::weight::weight;
use noonday_engine::advice::{Advice, ChargingSized, Sized, Sizing};
use noonday_engine::scenario::{Dimension, Group, ScenarioDocument};
use noonday_engine::simulation::HeatPath;

/// Button that opens it.
pub const REPORT: &str = "Report";
/// Name of the view.
pub const VIEW: &str = "Report for a client";
/// Button: print it.
pub const PRINT: &str = "Print, or save as PDF";
/// Button: back to the consult.
pub const BACK: &str = "Back to the consult";
/// Beside the buttons.
pub const BAR_NOTE: &str =
    "Two pages, on A4 or Letter. Name and note are those under “Name and note”.";
/// Said while the worker works.
pub const WAITING: &str =
    "What is still being worked out joins the report as it comes; printed now, it is left out.";
/// Kind of paper.
pub const KIND: &str = "Noonday · cooling of a van on a hot day, worked out";
/// Heading of the situation.
pub const SITUATION: &str = "The situation";
/// Heading of the day.
pub const DAY: &str = "The day";
/// Heading of the heat.
pub const HEAT: &str = "Where the heat comes from";
/// Heading of what was considered.
pub const CONSIDERED: &str = "What was considered, and what it would cost";
/// Heading of the alternatives.
pub const INSTEAD: &str = "With the cooler, and without";
/// Heading of the packages.
pub const PACKAGES: &str = "The best that each budget buys, against this";
/// Where nothing was found better.
pub const NO_PACKAGES: &str = "Nothing that was tried is better.";
/// Said where the worker had not come so far.
pub const NOT_YET: &str = "Not worked out yet when this was printed.";
/// Heading.
pub const EXPECT: &str = "What to expect";
/// Heading.
pub const EXPECT_NOT: &str = "What not to expect";
/// Heading.
pub const CAUTIONS: &str = "Cautions";
/// Heading.
pub const RESTS: &str = "What it rests on";
/// Caption of the assumptions.
pub const RESTS_CAPTION: &str = "What moves the result most";
/// Columns of the packages.
pub const PACKAGE_HEADS: [&str; 3] = ["What", "What it leaves", "Cost"];
/// Word before how soon it is dangerous.
pub const WHEN_IT_FAILS: &str = "When it fails.";
/// Heading of the code.
pub const REOPEN: &str = "Open it again";
/// Beside the code.
pub const REOPEN_NOTE: &str = "The code and the link hold the whole scenario; it is kept nowhere else. Every line can be changed there.";
/// Where the link is too long for a code.
pub const NO_CODE: &str = "The link holds the whole scenario, which is too long for a code; as a PDF this report holds it.";
/// Text of the link.
pub const LINK: &str = "Open this scenario";
/// At the foot.
pub const FOOT: &str = "Worked out by Noonday on the device that printed this; nothing was sent anywhere. Planning figures, not an inspection and no promise.";
/// Caption of the day's chart: what its lines are.
pub const DAY_KEY: &str = "Above, the sun’s way. Shaded: it must be cool. Upright strokes: too warm. Tinted bands: eight of ten such days.";
/// Name of the first band.
pub const BAND_TEMPERATURES: &str = "Temperature";
/// Name of the second band.
pub const BAND_HEAT: &str = "Heat";
/// Name of the third band.
pub const BAND_CHARGE: &str = "Charge of the bank";
/// Label: heat that comes in.
pub const COMES_IN: &str = "comes in";
/// Label: heat that the cooler takes out.
pub const TAKEN_OUT: &str = "taken out";

/// Title of the document, which becomes the file's name.
pub fn title(name: &str) -> String {
    format!(
        "{}, report · {}",
        super::page::shown_name(name),
        super::page::PROGRAM
    )
}

/// For whom it is and from whom, as far as that was entered.
pub fn between(document: &ScenarioDocument) -> String {
    let (to, from) = (document.recipient.trim(), document.sender.trim());
    match (to, from) {
        ("", "") => String::new(),
        (to, "") => format!("For {to}"),
        ("", from) => format!("From {from}"),
        (to, from) => format!("For {to}, from {from}"),
    }
}

/// Number of a page.
pub fn page(number: usize) -> String {
    format!("{number} of 2")
}

/// The situation, each group with its title.
pub fn situation(document: &ScenarioDocument, voice: &Voice) -> Vec<(String, String)> {
    const TOLD: [Group; 10] = [
        Group::Need,
        Group::Occupants,
        Group::Day,
        Group::Vehicle,
        Group::Shell,
        Group::Glass,
        Group::Cooler,
        Group::Ventilation,
        Group::Battery,
        Group::Charging,
    ];
    TOLD.into_iter()
        .map(|group| {
            let title = format!("{}.", groups::title(group));
            (title, summary(group, document, voice))
        })
        .collect()
}

/// Under the bars, which leave the cooler out: beside it the others could not be told apart.
pub fn heat_key(advice: &Advice, voice: &Voice) -> String {
    let heat_wh = HeatPath::ALL
        .into_iter()
        .zip(advice.with_cooler.totals.heat_wh);
    let taken_wh: f64 = heat_wh
        .filter(|(path, _)| *path == HeatPath::Cooler)
        .map(|(_, heat_wh)| -heat_wh)
        .sum();
    let key = "Over the run; solid comes in, hatched goes out.";
    if taken_wh < 1.0 {
        return key.to_owned();
    }
    format!("{key} The cooler takes {} out.", voice.units.heat(taken_wh))
}

/// The figures that are asked for first: number and what it is.
pub fn figures(advice: &Advice, document: &ScenarioDocument, voice: &Voice) -> Vec<[String; 2]> {
    let verdict = &advice.verdict;
    let worst = verdict
        .windows
        .iter()
        .min_by(|one, other| one.margin_k().total_cmp(&other.margin_k()));
    let mut figures = Vec::new();
    if let Some(window) = worst {
        let (felt, limit) = voice
            .units
            .temperature_against(window.worst_felt_c, window.highest_felt_c);
        figures.push([felt, format!("felt at most when it counts; limit {limit}")]);
    }
    let bank = &verdict.bank;
    let lasts = match bank.lasts_h {
        Some(hours) => duration(hours),
        None => format!("over {}\u{a0}days", bank.days_looked),
    };
    figures.push([lasts, "the bank lasts, such days in a row".to_owned()]);
    figures.push([
        voice.units.percent(bank.lowest_state_of_charge),
        format!("charge at its lowest, {}", voice.instant(bank.lowest_at_h)),
    ]);
    figures.push([
        voice.units.money(advice.cost.total, &voice.currency),
        "all of it, with work and tax".to_owned(),
    ]);
    figures.push([
        mass_text(weight(document).total_kg, voice),
        "all of it weighs, reckoned".to_owned(),
    ]);
    figures
}

/// The smallest common sizes that would do.
pub fn sizes(sizing: &Sizing, voice: &Voice) -> String {
    let shown = |sized: &Option<Sized>, dimension, name: &str| {
        let name = name.to_lowercase();
        match sized {
            Some(sized) => {
                let size = decide::size(dimension, sized.smallest.size, voice);
                format!("{name} {size}")
            }
            None => format!("no {name}"),
        }
    };
    let charging = match sizing.charging_by {
        ChargingSized::PanelsW => Some(Dimension::ElectricPower),
        ChargingSized::DrivingHours => None,
    };
    let by = Some(sizing.charging_by);
    let all = [
        shown(
            &sizing.cooler,
            Some(Dimension::HeatFlow),
            decide::size_name(None, true),
        ),
        shown(
            &sizing.bank,
            Some(Dimension::Charge),
            decide::size_name(None, false),
        ),
        shown(&sizing.charging, charging, decide::size_name(by, false)),
    ];
    let none = sizing.cooler.is_none() && sizing.bank.is_none() && sizing.charging.is_none();
    if none {
        return "None of the common sizes will do.".to_owned();
    }
    format!("The smallest common sizes that will do: {}.", listed(&all))
}

/// What the day's chart shows, for those who do not see it.
pub fn day_described(advice: &Advice, voice: &Voice) -> String {
    format!(
        "{} {} {}",
        super::charts::temperatures_described(advice, voice),
        super::heat::heat_described(advice, voice),
        super::charts::bank_described(advice, voice)
    )
}
