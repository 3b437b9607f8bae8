//! Wording of how it is built in.

mod bank;
mod cables;
mod job;
mod voltages;

pub use bank::*;
pub use cables::*;
pub use job::*;
pub use voltages::*;

use super::Voice;
use crate::format::{Measure, UnitSystem};
use noonday_engine::advice::circuits::{Choice, Circuit, CircuitKind};
use noonday_engine::electrical::conductor::{Conductor, SizeSeries};
use noonday_engine::scenario::Dimension;

/// Heading of the whole.
pub const BUILDING: &str = "How to build it in";
/// Under it.
pub const BUILDING_NOTE: &str = "Planning figures from tables and from the scenario, not an inspection. Local codes, the makers’ instructions and whoever is licensed for the work come first.";
/// Said should a component refuse its input.
pub const REFUSED: &str = "The state shown could not be worked out here.";

/// The sizes in which cable is bought.
pub fn series(units: UnitSystem) -> SizeSeries {
    match units {
        UnitSystem::Us => SizeSeries::WireGauge,
        UnitSystem::Metric => SizeSeries::Metric,
    }
}

/// Name of a circuit at the head of its line.
pub fn circuit_name(kind: CircuitKind) -> &'static str {
    match kind {
        CircuitKind::Bus => "Bank to bus",
        CircuitKind::Cooler => "Bus to cooler",
        CircuitKind::Inverter => "Bus to inverter",
        CircuitKind::DcDc => "Starter battery to DC-DC charger",
        CircuitKind::Panels => "Panels to controller",
        CircuitKind::Controller => "Controller to bank",
    }
}

/// A current, with a decimal only where it is small.
pub fn amps(current_a: f64, voice: &Voice) -> String {
    let decimals = usize::from(current_a < 20.0);
    format!("{}\u{a0}A", voice.units.number(current_a, decimals))
}

fn volts(voltage_v: f64, voice: &Voice) -> String {
    voice.amount(Measure::Of(Dimension::Voltage).of(voltage_v))
}

fn watts(power_w: f64, voice: &Voice) -> String {
    let decimals = usize::from(power_w < 10.0);
    format!("{}\u{a0}W", voice.units.number(power_w, decimals))
}

fn ohms(resistance_ohm: f64, voice: &Voice) -> String {
    voice.amount(Measure::Of(Dimension::Resistance).of(resistance_ohm))
}

fn length(length_m: f64, voice: &Voice) -> String {
    voice.amount(Measure::Of(Dimension::Length).of(length_m))
}

/// A share with one decimal.
fn percent(share: f64, voice: &Voice) -> String {
    format!("{}\u{a0}%", voice.units.number(100.0 * share, 1))
}

/// A size as it is printed on the cable.
pub fn size(conductor: &Conductor, voice: &Voice) -> String {
    match conductor.gauge {
        Some(gauge) => format!("{gauge}\u{a0}AWG"),
        None => format!("{}\u{a0}mm²", voice.units.number(conductor.area_mm2, 2)),
    }
}

/// Both sizes of a circuit, that of the units shown first.
fn both_sizes(gauge: &Choice, metric: &Choice, voice: &Voice) -> String {
    let sizes = match voice.units {
        UnitSystem::Us => [gauge, metric],
        UnitSystem::Metric => [metric, gauge],
    };
    let [first, second] = sizes.map(|choice| {
        let fitted = choice.fitted()?;
        Some(size(&fitted.conductor, voice))
    });
    match (first, second) {
        (Some(first), Some(second)) => format!("{first} ({second})"),
        (Some(only), None) => only,
        (None, _) => "no cable in the table will do".to_owned(),
    }
}

/// What the sizes in which cable is bought offer a circuit.
pub fn offered<'a>(circuit: &'a Circuit, voice: &Voice) -> &'a Choice {
    circuit.choice(series(voice.units))
}

#[cfg(test)]
mod tests;
