//! The voltage that arrives at a start.

use super::{
    Choice, Circuit, CircuitKind, Circuits, bank_ohm, cooler_at_bank_w, nominal_v, other_loads_w,
};
use crate::electrical::conductor::SizeSeries;
use crate::scenario::ScenarioDocument;
use crate::simulation::{BuildError, bank_of};

/// What arrives at the cooler when it starts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StartVoltage {
    /// Voltage of the bank at rest at its lowest charge, V.
    pub bank_open_v: f64,
    /// Resistance of the bank, Ω.
    pub bank_ohm: f64,
    /// Resistance of the bus's cable, Ω.
    pub bus_ohm: f64,
    /// Resistance of the cooler's cable, Ω.
    pub cable_ohm: f64,
    /// Current of everything else, A.
    pub others_a: f64,
    /// Current of the start, A.
    pub start_a: f64,
    /// What arrives, V.
    pub arriving_v: f64,
    /// Voltage at which the cooler stops, V.
    pub cut_out_v: f64,
}

/// What arrives where the cooler is fed: V = U − R_bank I − R_bus I − R_cable I_start, with I the start and everything else.
pub(super) fn start_voltages(
    document: &ScenarioDocument,
    circuits: &[Circuit],
) -> Result<Option<[StartVoltage; 2]>, BuildError> {
    let find = |kinds: &[CircuitKind]| circuits.iter().find(|one| kinds.contains(&one.kind));
    let (Some(bus), Some(supply)) = (
        find(&[CircuitKind::Bus]),
        find(&[CircuitKind::Cooler, CircuitKind::Inverter]),
    ) else {
        return Ok(None);
    };
    let bank = bank_of(document)?;
    let lowest = bank.state_at(document.battery.least_state_of_charge);
    let bank_open_v = bank.open_circuit_voltage_v(&lowest);
    let start_w = cooler_at_bank_w(document, document.cooler.start_surge_factor)?;
    let start_a = start_w / nominal_v(document);
    let others_a = other_loads_w(document) / nominal_v(document);
    let of = |bus: &Choice, supply: &Choice| {
        let (bus, supply) = (bus.fitted()?, supply.fitted()?);
        let (bank_ohm, bus_ohm, cable_ohm) = (
            bank_ohm(document),
            bus.resistance_ohm,
            supply.resistance_ohm,
        );
        let together_a = others_a + start_a;
        Some(StartVoltage {
            bank_open_v,
            bank_ohm,
            bus_ohm,
            cable_ohm,
            others_a,
            start_a,
            arriving_v: bank_open_v - together_a * (bank_ohm + bus_ohm) - start_a * cable_ohm,
            cut_out_v: document.cooler.cut_out_v_per_12_v
                * document.battery.system_voltage.blocks(),
        })
    };
    Ok(of(&bus.gauge, &supply.gauge)
        .zip(of(&bus.metric, &supply.metric))
        .map(|(gauge, metric)| [gauge, metric]))
}

impl Circuits {
    /// What arrives at a start with cables of a family of sizes; nothing without a cooler, or where no cable will do.
    #[must_use]
    pub fn start(&self, series: SizeSeries) -> Option<&StartVoltage> {
        let start = self.start.as_ref()?;
        match series {
            SizeSeries::WireGauge => start.first(),
            SizeSeries::Metric => start.last(),
        }
    }

    /// The resistance that a run should use for the cooler's cable, Ω: the bus's and the cooler's own together; nothing where
    /// some cable is not to be had.
    #[must_use]
    pub fn cable_resistance_ohm(&self, series: SizeSeries) -> Option<f64> {
        self.start(series)
            .map(|start| start.bus_ohm + start.cable_ohm)
    }
}
