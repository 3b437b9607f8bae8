//! The circuits of a scenario: what each has to carry, the cable and fuse for it, and what would do where none will.
//!
//! Currents follow from what the scenario says already: powers over the nominal voltage, which is below what a bank holds while
//! it runs, so that they are on the careful side.

mod start;

pub use start::StartVoltage;

use crate::electrical::circuit::{CircuitNeed, Fitted, Remedies, remedies, thinnest};
use crate::electrical::conductor::SizeSeries;
use crate::electrical::overcurrent::{CONTINUOUS_FACTOR, breaking_class_a, short_circuit_a};
use crate::quantity::Bounded;
use crate::scenario::{CableWay, FanUse, ScenarioDocument};
use crate::simulation::{BuildError, bank_of, inverter_of};
use start::start_voltages;

/// A circuit of the installation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CircuitKind {
    /// From the bank to the bus, for everything.
    Bus,
    /// From the bus to a cooler for direct current.
    Cooler,
    /// From the bus to an inverter that feeds the cooler.
    Inverter,
    /// From the starter battery to the DC-DC charger.
    DcDc,
    /// From the panels to their controller.
    Panels,
    /// From the controller to the bank.
    Controller,
}

impl CircuitKind {
    /// Key of the input that holds the length of its way.
    #[must_use]
    pub fn length_key(self) -> &'static str {
        match self {
            Self::Bus => "installation.bus.length_m",
            Self::Cooler => "installation.cooler.length_m",
            Self::Inverter => "installation.inverter.length_m",
            Self::DcDc => "installation.dc_dc.length_m",
            Self::Panels => "installation.panels.length_m",
            Self::Controller => "installation.controller.length_m",
        }
    }

    /// Key of the input that holds the drop allowed on its way.
    #[must_use]
    pub fn drop_key(self) -> &'static str {
        match self {
            Self::Bus => "installation.bus.allowed_drop_share",
            Self::Cooler => "installation.cooler.allowed_drop_share",
            Self::Inverter => "installation.inverter.allowed_drop_share",
            Self::DcDc => "installation.dc_dc.allowed_drop_share",
            Self::Panels => "installation.panels.allowed_drop_share",
            Self::Controller => "installation.controller.allowed_drop_share",
        }
    }
}

/// What a family of sizes offers a circuit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Choice {
    /// This conductor will do.
    Fits(Fitted),
    /// None will do; these changes would.
    Nothing(Remedies),
}

impl Choice {
    /// The conductor, where one will do.
    #[must_use]
    pub fn fitted(&self) -> Option<&Fitted> {
        match self {
            Self::Fits(fitted) => Some(fitted),
            Self::Nothing(_) => None,
        }
    }
}

/// A circuit with its cable.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Circuit {
    /// Which.
    pub kind: CircuitKind,
    /// Power that its current carries, W.
    pub power_w: f64,
    /// What it asks.
    pub need: CircuitNeed,
    /// Among gauge sizes.
    pub gauge: Choice,
    /// Among metric sizes.
    pub metric: Choice,
}

impl Circuit {
    /// What a family of sizes offers.
    #[must_use]
    pub fn choice(&self, series: SizeSeries) -> &Choice {
        match series {
            SizeSeries::WireGauge => &self.gauge,
            SizeSeries::Metric => &self.metric,
        }
    }
}

/// Every circuit, and what concerns all of them.
#[derive(Clone, Debug, PartialEq)]
pub struct Circuits {
    /// Those that the scenario has.
    pub circuits: Vec<Circuit>,
    /// At the cooler, or at the inverter that feeds it, with gauge sizes and with metric ones.
    pub start: Option<[StartVoltage; 2]>,
    /// Current of a dead short at the bank, A.
    pub short_circuit_a: f64,
    /// Least common class of fuse that breaks it, A; none beyond the common ones.
    pub breaking_class_a: Option<f64>,
}

/// Efficiency of DC-DC chargers, lower end of 90 to 95 %: common practice, no source.
const DC_DC_EFFICIENCY: f64 = 0.9;

/// Voltage of the starter battery, V.
const STARTER_V: f64 = 12.0;

/// Short-circuit current of panels over their current at best power (from memory, 1.05 to 1.1).
const PANEL_SHORT_CIRCUIT_FACTOR: f64 = 1.1;

/// What panels may give above their rating for hours, on conductors and fuses (NEC 690.8(A), from memory).
const PANEL_SUN_FACTOR: f64 = 1.25;

/// Voltages of banks, V.
const BANK_VOLTAGES_V: [f64; 3] = [12.0, 24.0, 48.0];

/// Factors by which panels in series raise their voltage.
const PANELS_IN_SERIES: [f64; 3] = [2.0, 3.0, 4.0];

/// Power of loads other than the cooler that may be on at the same time, W.
#[must_use]
pub fn other_loads_w(document: &ScenarioDocument) -> f64 {
    let loads = &document.loads;
    let fan_w = match document.ventilation.fan_use {
        FanUse::Off => 0.0,
        FanUse::InHours | FanUse::WhenOutdoorsCooler => document.ventilation.fan_power_w,
    };
    loads.fridge.power_w
        + loads.lights.power_w
        + loads.electronics.power_w
        + loads.other.power_w
        + fan_w
}

/// Power that the cooler takes from the bank at its rating point, W, with what an inverter loses where there is one.
///
/// * `times` — 1 while it runs, its surge factor for a start
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn cooler_at_bank_w(document: &ScenarioDocument, times: f64) -> Result<f64, BuildError> {
    if !document.cooler.installed {
        return Ok(0.0);
    }
    let power_w = document.cooler.electric_power_rated_w * times;
    Ok(inverter_of(document)?.map_or(power_w, |inverter| inverter.input_power_w(power_w)))
}

/// Works out every circuit of a scenario.
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn circuits(document: &ScenarioDocument) -> Result<Circuits, BuildError> {
    let all: Vec<Circuit> = [
        bus(document)?,
        supply(document)?,
        dc_dc(document),
        panels(document),
        controller(document),
    ]
    .into_iter()
    .flatten()
    .collect();
    let bank = bank_of(document)?;
    let full_v = bank.open_circuit_voltage_v(&bank.state_at(document.battery.most_state_of_charge));
    let short_circuit_a = short_circuit_a(full_v, bank_ohm(document));
    Ok(Circuits {
        start: start_voltages(document, &all)?,
        circuits: all,
        short_circuit_a,
        breaking_class_a: breaking_class_a(short_circuit_a),
    })
}

/// Resistance of the bank at 25 °C, Ω.
fn bank_ohm(document: &ScenarioDocument) -> f64 {
    document.battery.resistance_ohm_per_12_v * document.battery.system_voltage.blocks()
}

/// Power, and how far a surge goes above it.
struct Draw {
    power_w: f64,
    surge_w: f64,
    voltage_v: f64,
    continuous_factor: f64,
}

fn circuit(
    kind: CircuitKind,
    document: &ScenarioDocument,
    way: &CableWay,
    draw: &Draw,
    voltages_v: &[f64],
) -> Option<Circuit> {
    if draw.power_w <= 0.0 {
        return None;
    }
    let need = CircuitNeed {
        length_one_way_m: way.length_m,
        running_a: draw.power_w / draw.voltage_v,
        surge_a: draw.surge_w.at_least(draw.power_w) / draw.voltage_v,
        continuous_factor: draw.continuous_factor,
        voltage_v: draw.voltage_v,
        allowed_drop_share: way.allowed_drop_share,
        insulation: document.installation.insulation.class(),
        bundled_conductors: way.bundled_conductors,
        air_c: way.air_c,
    };
    let choose = |series| {
        thinnest(series, &need).map_or_else(
            || Choice::Nothing(remedies(series, &need, voltages_v)),
            Choice::Fits,
        )
    };
    Some(Circuit {
        kind,
        power_w: draw.power_w,
        need,
        gauge: choose(SizeSeries::WireGauge),
        metric: choose(SizeSeries::Metric),
    })
}

/// Everything that may run at once, or everything that may charge at once, whichever is more.
fn bus(document: &ScenarioDocument) -> Result<Option<Circuit>, BuildError> {
    let others_w = other_loads_w(document);
    let drawn_w = others_w + cooler_at_bank_w(document, 1.0)?;
    let charged_w = charging_a(document).iter().sum::<f64>() * nominal_v(document);
    let surge_w = others_w + cooler_at_bank_w(document, document.cooler.start_surge_factor)?;
    let draw = Draw {
        power_w: drawn_w.at_least(charged_w),
        surge_w,
        voltage_v: nominal_v(document),
        continuous_factor: CONTINUOUS_FACTOR,
    };
    let way = &document.installation.bus;
    Ok(circuit(
        CircuitKind::Bus,
        document,
        way,
        &draw,
        &BANK_VOLTAGES_V,
    ))
}

/// The cooler's own cable, or that of its inverter, which is rated for all that the inverter can take.
fn supply(document: &ScenarioDocument) -> Result<Option<Circuit>, BuildError> {
    let cooler = &document.cooler;
    if !cooler.installed {
        return Ok(None);
    }
    let voltage_v = nominal_v(document);
    let installed = &document.installation;
    let (kind, way, power_w, surge_w) = match inverter_of(document)? {
        None => {
            let power_w = cooler.electric_power_rated_w;
            let surge_w = power_w * cooler.start_surge_factor;
            (CircuitKind::Cooler, &installed.cooler, power_w, surge_w)
        }
        Some(inverter) => {
            let power_w = inverter.input_power_w(cooler.inverter_rated_w);
            let surge_w = inverter.input_power_w(cooler.inverter_surge_w);
            (CircuitKind::Inverter, &installed.inverter, power_w, surge_w)
        }
    };
    let draw = Draw {
        power_w,
        surge_w,
        voltage_v,
        continuous_factor: CONTINUOUS_FACTOR,
    };
    Ok(circuit(kind, document, way, &draw, &BANK_VOLTAGES_V))
}

fn dc_dc(document: &ScenarioDocument) -> Option<Circuit> {
    if !document.charging.drives {
        return None;
    }
    let power_w = document.charging.dc_dc_current_a * nominal_v(document) / DC_DC_EFFICIENCY;
    let draw = Draw {
        power_w,
        surge_w: power_w,
        voltage_v: STARTER_V,
        continuous_factor: CONTINUOUS_FACTOR,
    };
    circuit(
        CircuitKind::DcDc,
        document,
        &document.installation.dc_dc,
        &draw,
        &[],
    )
}

fn panels(document: &ScenarioDocument) -> Option<Circuit> {
    let voltage_v = document.installation.panel_voltage_v;
    let power_w = document.panel_power_w();
    let draw = Draw {
        power_w,
        surge_w: power_w,
        voltage_v,
        continuous_factor: CONTINUOUS_FACTOR * PANEL_SUN_FACTOR * PANEL_SHORT_CIRCUIT_FACTOR,
    };
    let in_series = PANELS_IN_SERIES.map(|count| count * voltage_v);
    circuit(
        CircuitKind::Panels,
        document,
        &document.installation.panels,
        &draw,
        &in_series,
    )
}

fn controller(document: &ScenarioDocument) -> Option<Circuit> {
    let power_w = document.panel_power_w() * document.charging.controller_efficiency;
    let draw = Draw {
        power_w,
        surge_w: power_w,
        voltage_v: nominal_v(document),
        continuous_factor: CONTINUOUS_FACTOR,
    };
    let way = &document.installation.controller;
    circuit(
        CircuitKind::Controller,
        document,
        way,
        &draw,
        &BANK_VOLTAGES_V,
    )
}

fn nominal_v(document: &ScenarioDocument) -> f64 {
    document.battery.system_voltage.nominal_v()
}

/// Currents that panels, driving and shore can put into the bank, A.
pub(super) fn charging_a(document: &ScenarioDocument) -> [f64; 3] {
    let charging = &document.charging;
    let voltage_v = nominal_v(document);
    [
        document.panel_power_w() * charging.controller_efficiency / voltage_v,
        if charging.drives {
            charging.dc_dc_current_a
        } else {
            0.0
        },
        charging.shore_power_w / voltage_v,
    ]
}

#[cfg(test)]
mod tests;
