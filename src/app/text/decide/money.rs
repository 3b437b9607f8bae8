//! Wording of what money buys: changes, packages, and what they differ by.

use super::super::{Voice, listed};
use super::AS_IT_IS;
use crate::format::{duration, unit};
use noonday_engine::advice::{MeasureKind, Package, Subject};
use noonday_engine::scenario::Dimension;

/// Name of a change.
pub fn measure_name(kind: MeasureKind, voice: &Voice) -> String {
    let quantity = |dimension, value| voice.units.quantity(dimension, value);
    // Trade sizes: 25 mm and an inch are the same layer.
    let layer = |added_m| {
        let unit = unit(Dimension::Thickness, voice.units);
        let number = voice.units.number(unit.shown(added_m), 1);
        format!("{number}\u{a0}{}", unit.symbol)
    };
    match kind {
        MeasureKind::RoofInsulation { added_m } => format!("{} more in the roof", layer(added_m)),
        MeasureKind::WallInsulation { added_m } => format!("{} more in the walls", layer(added_m)),
        MeasureKind::BetterStuffing => "cavities stuffed anew".to_owned(),
        MeasureKind::WindowCovers => "covers on every window".to_owned(),
        MeasureKind::LighterRoof => "a white roof".to_owned(),
        MeasureKind::Shade => "shade all day".to_owned(),
        MeasureKind::RoofFan => "a roof fan".to_owned(),
        MeasureKind::Bank { capacity_ah } => {
            format!("a bank of {}", quantity(Dimension::Charge, capacity_ah))
        }
        MeasureKind::Panels { added_w } => format!(
            "{} more panels",
            quantity(Dimension::ElectricPower, added_w)
        ),
        MeasureKind::DcDc { current_a } => format!(
            "a DC-DC charger of {}",
            quantity(Dimension::Current, current_a)
        ),
        MeasureKind::Cooler { capacity_w } => {
            format!("a cooler of {}", quantity(Dimension::HeatFlow, capacity_w))
        }
        MeasureKind::NoCooler => "no cooler".to_owned(),
    }
}

/// What a set of changes is.
pub fn package_name(package: &Package, voice: &Voice) -> String {
    if package.measures.is_empty() {
        return AS_IT_IS.to_owned();
    }
    let names: Vec<String> = package
        .measures
        .iter()
        .map(|measure| measure_name(measure.kind, voice))
        .collect();
    listed(&names)
}

/// A difference of cost.
pub fn cost_change(amount: f64, voice: &Voice) -> String {
    let money = voice.units.money(amount.abs(), &voice.currency);
    if amount > 0.5 {
        format!("+{money}")
    } else if amount < -0.5 {
        format!("\u{2212}{money}")
    } else {
        "no cost".to_owned()
    }
}

/// A difference of cost with the hours of work in it.
pub fn cost_and_work(amount: f64, labour_h: f64, voice: &Voice) -> String {
    let cost = cost_change(amount, voice);
    if labour_h.abs() < 0.05 {
        return cost;
    }
    let hours = voice.units.number(labour_h.abs(), 1);
    let sign = if labour_h < 0.0 { "\u{2212}" } else { "" };
    format!("{cost}, {sign}{hours}\u{a0}h")
}

/// Degrees above the limit times hours.
pub fn too_warm(degree_hours_k_h: f64, voice: &Voice) -> String {
    voice.units.degree_hours(degree_hours_k_h)
}

/// The same as a difference.
pub fn too_warm_change(change_k_h: f64, voice: &Voice) -> String {
    signed(change_k_h, &too_warm(change_k_h.abs(), voice), 0.005)
}

/// How much longer the bank lasts.
pub fn lasts_change(before: Option<f64>, after: Option<f64>) -> String {
    match (before, after) {
        (Some(before_h), Some(after_h)) => signed(
            after_h - before_h,
            &duration((after_h - before_h).abs()),
            0.009,
        ),
        (Some(_), None) => "for weeks".to_owned(),
        (None, Some(after_h)) => format!("only {}", duration(after_h)),
        (None, None) => "as before".to_owned(),
    }
}

pub(super) fn signed(value: f64, size: &str, least: f64) -> String {
    if value > least {
        format!("+{size}")
    } else if value < -least {
        format!("\u{2212}{size}")
    } else {
        "as before".to_owned()
    }
}

/// A package in a line: what it costs, what it leaves, what it is.
pub fn package_line(package: &Package, voice: &Voice) -> [String; 3] {
    let outcome = &package.outcome;
    let left = if outcome.degree_hours_k_h > 0.005 {
        format!("{} too warm", too_warm(outcome.degree_hours_k_h, voice))
    } else if !outcome.windows_met {
        "too damp".to_owned()
    } else if !outcome.keeps_reserve() {
        "cool enough, below the reserve".to_owned()
    } else {
        "cool enough".to_owned()
    };
    [
        cost_change(package.cost_change, voice),
        left,
        package_name(package, voice),
    ]
}

/// Subjects of changes, in the order of the table, for what is left out of it.
pub fn subject_name(subject: Subject) -> &'static str {
    match subject {
        Subject::Roof => "insulation of the roof",
        Subject::Walls => "insulation of the walls",
        Subject::Stuffing => "stuffing",
        Subject::Covers => "window covers",
        Subject::Paint => "white roof",
        Subject::Shade => "shade",
        Subject::Fan => "roof fan",
        Subject::Bank => "bank",
        Subject::Panels => "panels",
        Subject::DcDc => "DC-DC charger",
        Subject::Cooler => "cooler",
    }
}
