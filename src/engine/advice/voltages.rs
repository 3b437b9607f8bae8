//! The same cooling at 12, 24 and 48 V, direct and through an inverter, side by side.

use super::circuits::{Choice, Circuit, CircuitKind, circuits, cooler_at_bank_w};
use crate::electrical::InverterOverload;
use crate::scenario::{CoolerSupply, ScenarioDocument, SystemVoltage};
use crate::simulation::{BuildError, inverter_of};

/// A way to feed the cooler.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Feed {
    /// Voltage of the bank.
    pub voltage: SystemVoltage,
    /// Direct, or through an inverter.
    pub supply: CoolerSupply,
    /// Whether this is how the scenario has it.
    pub is_present: bool,
    /// Power from the bank while the cooler runs at its rating, W.
    pub running_w: f64,
    /// Current of that, A.
    pub running_a: f64,
    /// Current at a start, A.
    pub start_a: f64,
    /// Its cable among gauge sizes; an inverter's is for all that the inverter can take.
    pub gauge: Choice,
    /// The same among metric sizes.
    pub metric: Choice,
    /// Lost in the inverter while the cooler runs, W.
    pub inverter_loss_w: f64,
    /// Draw while the cooler waits, W, the idle inverter with it.
    pub idle_w: f64,
    /// How the inverter is overloaded while running or at a start, if it is.
    pub overload: Option<InverterOverload>,
}

impl Feed {
    /// Lost in a cable while the cooler runs, W: I² R.
    ///
    /// * `choice` — [`Feed::gauge`] or [`Feed::metric`]
    #[must_use]
    pub fn cable_loss_w(&self, choice: &Choice) -> Option<f64> {
        let fitted = choice.fitted()?;
        Some(self.running_a * self.running_a * fitted.resistance_ohm)
    }
}

const VOLTAGES: [SystemVoltage; 3] = [SystemVoltage::V12, SystemVoltage::V24, SystemVoltage::V48];

const SUPPLIES: [CoolerSupply; 2] = [
    CoolerSupply::DirectCurrent,
    CoolerSupply::MainsThroughInverter,
];

/// Every way to feed the cooler; none without one.
///
/// Power, ways of cable and the inverter stay as the scenario has them, and only voltage and supply change.
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn feeds(document: &ScenarioDocument) -> Result<Vec<Feed>, BuildError> {
    let mut all = Vec::new();
    if !document.cooler.installed {
        return Ok(all);
    }
    for supply in SUPPLIES {
        for voltage in VOLTAGES {
            let mut changed = document.clone();
            changed.battery.system_voltage = voltage;
            changed.cooler.supply = supply;
            let is_present = changed == *document;
            all.extend(feed(&changed, is_present)?);
        }
    }
    Ok(all)
}

fn feed(document: &ScenarioDocument, is_present: bool) -> Result<Option<Feed>, BuildError> {
    let cooler = &document.cooler;
    let circuits = circuits(document)?.circuits;
    let feeds_cooler =
        |one: &&Circuit| matches!(one.kind, CircuitKind::Cooler | CircuitKind::Inverter);
    let Some(cable) = circuits.iter().find(feeds_cooler) else {
        return Ok(None);
    };
    let load_w = cooler.electric_power_rated_w;
    let starting_w = load_w * cooler.start_surge_factor;
    let inverter = inverter_of(document)?;
    let voltage_v = document.battery.system_voltage.nominal_v();
    let running_w = cooler_at_bank_w(document, 1.0)?;
    let inverter_idle_w = inverter.map_or(0.0, |inverter| inverter.input_power_w(0.0));
    Ok(Some(Feed {
        voltage: document.battery.system_voltage,
        supply: cooler.supply,
        is_present,
        running_w,
        running_a: running_w / voltage_v,
        start_a: cooler_at_bank_w(document, cooler.start_surge_factor)? / voltage_v,
        gauge: cable.gauge,
        metric: cable.metric,
        inverter_loss_w: running_w - load_w,
        idle_w: cooler.idle_power_w + inverter_idle_w,
        overload: inverter.and_then(|inverter| inverter.overload(load_w, starting_w)),
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    #[test]
    fn twice_the_voltage_halves_the_current_and_quarters_the_loss_of_a_cable() {
        let feeds = feeds(&example()).unwrap();
        assert_eq!(feeds.len(), 6);
        assert!(feeds[0].is_present && feeds.iter().filter(|feed| feed.is_present).count() == 1);
        assert!((feeds[0].running_a - 2.0 * feeds[1].running_a).abs() < 1e-9);
        let loss = |feed: &Feed, ohm: f64| feed.running_a * feed.running_a * ohm;
        assert!((loss(&feeds[0], 0.004) - 4.0 * loss(&feeds[1], 0.004)).abs() < 1e-9);
        for feed in &feeds {
            let fitted = feed.metric.fitted().unwrap();
            let by_hand_w = feed.running_a * feed.running_a * fitted.resistance_ohm;
            assert!((feed.cable_loss_w(&feed.metric).unwrap() - by_hand_w).abs() < 1e-12);
        }
    }

    #[test]
    fn an_inverter_costs_its_losses_and_its_idle_draw() {
        let feeds = feeds(&example()).unwrap();
        let through = feeds[3];
        assert_eq!(through.supply, CoolerSupply::MainsThroughInverter);
        // By hand at 800 of 2 000 W: 15 + 2 000 · (0.02 · 0.4 + 0.04 · 0.16) = 43.8 W; idle 4 + 15 W.
        assert!((through.inverter_loss_w - 43.8).abs() < 1e-9);
        assert!((through.idle_w - 19.0).abs() < 1e-12);
        assert_eq!(through.overload, None);
    }

    #[test]
    fn a_start_too_strong_for_the_inverter_is_told() {
        let mut document = example();
        document.cooler.start_surge_factor = 6.0;
        let feeds = feeds(&document).unwrap();
        assert!(
            matches!(feeds[4].overload, Some(InverterOverload::Surge { load_w, .. }) if load_w == 4_800.0)
        );
        assert_eq!(feeds[0].overload, None);
    }

    #[test]
    fn without_a_cooler_there_is_nothing_to_feed() {
        let mut document = example();
        document.cooler.installed = false;
        assert_eq!(feeds(&document), Ok(Vec::new()));
    }
}
