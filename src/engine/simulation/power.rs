//! The electric side of a run: what draws, what charges, what the bank makes of it.

mod served;

use self::served::{Served, served_within};
use super::build::BuildError;
use crate::electrical::{
    Bank, BankConditions, BankInput, BankLimit, BankState, Chemistry, DriveCharger, Inverter,
    InverterInput, PanelInput, PanelLosses, PanelMounting, Panels, ShoreCharger,
};
use crate::quantity::Bounded;
use crate::scenario::{CellChemistry, CoolerSupply, Load, ScenarioDocument};
use crate::schedule::HourWindow;

/// Losses of a small low-voltage inverter over its idle draw, linear and square in the load: quadratic form of Schmidt & Sauer
/// 1996, example values from memory.
const INVERTER_LINEAR_LOSS: f64 = 0.02;
const INVERTER_SQUARE_LOSS: f64 = 0.04;

/// Efficiency of chargers: of no account at the bank, on whose side their outputs are stated. Common practice, no source.
const CHARGER_EFFICIENCY: f64 = 0.92;

/// Exponent with which a bank gives its rated charge at any current: lithium cells lose next to none of it.
const NO_PEUKERT_EXPONENT: f64 = 1.0;

/// Range of bank temperatures that the bank's model covers, °C.
const BANK_LEAST_C: f64 = -20.0;
const BANK_GREATEST_C: f64 = 60.0;

/// Temperature at which a bank is rated, °C.
const REFERENCE_BANK_C: f64 = 25.0;

/// What is offered and asked in a step, W at the bank's terminals unless said otherwise.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Demand {
    /// Power that the cooler takes at its own terminals, W; zero when it is off.
    pub(super) cooler_w: f64,
    /// Everything else.
    pub(super) loads_w: f64,
    /// Offered by the panels.
    pub(super) panels_w: f64,
    /// Share of the step in which the vehicle is driven.
    pub(super) driving_share: f64,
    /// Share of the step in which it is plugged in.
    pub(super) shore_share: f64,
}

/// What became of a step, W.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct PowerStep {
    pub(super) cooler_w: f64,
    pub(super) loads_w: f64,
    pub(super) panels_w: f64,
    pub(super) driving_w: f64,
    pub(super) shore_w: f64,
    /// Power into the bank at its terminals.
    pub(super) bank_w: f64,
    pub(super) current_a: f64,
    pub(super) bank_voltage_v: f64,
    pub(super) cooler_voltage_v: f64,
    /// Whether the bank met a limit, and whether it was its lowest charge.
    pub(super) limited: bool,
    pub(super) emptied: bool,
    /// Why the cooler could not be fed, if it could not.
    pub(super) refused: Option<BankLimit>,
}

/// What a step without the cooler would bring.
pub(super) struct PowerAhead<'power> {
    bank: &'power Bank,
    state: BankState,
    step: PowerStep,
}

impl PowerAhead<'_> {
    /// Whether the bank would meet a limit.
    pub(super) fn is_limited(&self) -> bool {
        self.step.limited
    }

    /// Whether the state of charge would fall below so much.
    pub(super) fn is_below(&self, state_of_charge: f64) -> bool {
        is_below(self.bank, &self.state, state_of_charge)
    }

    /// Voltage at the bank, V.
    pub(super) fn voltage_v(&self) -> f64 {
        self.step.bank_voltage_v
    }
}

/// The built electric side with its state.
#[derive(Clone, Debug)]
pub(super) struct Power {
    bank: Bank,
    state: BankState,
    conditions: BankConditions,
    voltage_v: f64,
    panels: Panels,
    shading_share: f64,
    inverter: Option<Inverter>,
    cable_ohm: f64,
    drive_charger: DriveCharger,
    shore_charger: ShoreCharger,
    loads: [(Load, HourWindow); 4],
    driving: Option<HourWindow>,
    shore: HourWindow,
}

impl Power {
    pub(super) fn new(document: &ScenarioDocument) -> Result<Self, BuildError> {
        let (cooler, charging) = (&document.cooler, &document.charging);
        let bank = bank_of(document)?;
        let state = bank.state_at(document.battery.start_state_of_charge);
        let inverter = inverter_of(document)?;
        let loads = &document.loads;
        let windowed = |load: &Load| -> Result<(Load, HourWindow), BuildError> {
            Ok((
                load.clone(),
                HourWindow::new(load.from_hour, load.until_hour)?,
            ))
        };
        Ok(Self {
            voltage_v: bank.open_circuit_voltage_v(&state),
            conditions: bank.conditions(REFERENCE_BANK_C),
            bank,
            state,
            panels: panels(document)?,
            shading_share: charging.panel_shading_share,
            inverter,
            cable_ohm: cooler.cable_resistance_ohm,
            drive_charger: DriveCharger::new(charging.dc_dc_current_a, CHARGER_EFFICIENCY)?,
            shore_charger: ShoreCharger::new(charging.shore_power_w, CHARGER_EFFICIENCY)?,
            loads: [
                windowed(&loads.fridge)?,
                windowed(&loads.lights)?,
                windowed(&loads.electronics)?,
                windowed(&loads.other)?,
            ],
            driving: if charging.drives {
                Some(HourWindow::new(
                    charging.drive_from_hour,
                    charging.drive_until_hour,
                )?)
            } else {
                None
            },
            shore: HourWindow::new(charging.shore_from_hour, charging.shore_until_hour)?,
        })
    }

    /// Takes in the temperature of the bank, °C; beyond what the bank's model covers it is held at the edge.
    pub(super) fn set_bank_temperature(&mut self, bank_c: f64) {
        let bank_c = bank_c.clamp(BANK_LEAST_C, BANK_GREATEST_C);
        self.conditions = self.bank.conditions(bank_c);
    }

    pub(super) fn state_of_charge(&self) -> f64 {
        self.bank.state_of_charge(&self.state)
    }

    /// Whether the state of charge is below so much.
    pub(super) fn is_below(&self, state_of_charge: f64) -> bool {
        is_below(&self.bank, &self.state, state_of_charge)
    }

    pub(super) fn voltage_v(&self) -> f64 {
        self.voltage_v
    }

    pub(super) fn stored_wh(&self) -> f64 {
        self.bank.stored_energy_wh(&self.state)
    }

    pub(super) fn inverter(&self) -> Option<&Inverter> {
        self.inverter.as_ref()
    }

    /// Loads other than cooler and fan, mean over a span, W.
    pub(super) fn loads_w(&self, clock_s: f64, span_s: f64) -> f64 {
        self.loads
            .iter()
            .filter(|(load, _)| load.power_w > 0.0)
            .map(|(load, hours)| load.power_w * load.duty * hours.overlap_fraction(clock_s, span_s))
            .sum()
    }

    /// What the panels offer, W; `plan_shade` is the share that shadows take, where a plan says it.
    pub(super) fn panels_w(
        &self,
        sun_w_m2: f64,
        plan_shade: Option<f64>,
        outdoor_c: f64,
        wind_m_s: f64,
    ) -> f64 {
        let shaded = plan_shade.unwrap_or(self.shading_share);
        self.panels.power_w(sun_w_m2, shaded, outdoor_c, wind_m_s)
    }

    pub(super) fn driving_share(&self, clock_s: f64, span_s: f64) -> f64 {
        self.driving
            .map_or(0.0, |hours| hours.overlap_fraction(clock_s, span_s))
    }

    pub(super) fn shore_share(&self, clock_s: f64, span_s: f64) -> f64 {
        self.shore.overlap_fraction(clock_s, span_s)
    }

    /// Current at the bank and voltage at the cooler for a power at the cooler, W: V = (U + √(U² − 4 P R))/2.
    pub(super) fn cooler_feed(&self, cooler_w: f64) -> (f64, f64) {
        let bank_v = self.voltage_v;
        if cooler_w <= 0.0 {
            return (0.0, bank_v);
        }
        let at_cable_w = match &self.inverter {
            Some(inverter) => inverter.input_power_w(cooler_w),
            None => cooler_w,
        };
        let root = (bank_v * bank_v - 4.0 * at_cable_w * self.cable_ohm).at_least(0.0);
        let arriving_v = 0.5 * (bank_v + root.sqrt());
        (at_cable_w / arriving_v, arriving_v)
    }

    /// What a step would bring, none of it taken.
    pub(super) fn ahead(&self, step_s: f64, demand: &Demand) -> PowerAhead<'_> {
        let (state, step) = self.try_step(step_s, demand, 0.0);
        PowerAhead {
            bank: &self.bank,
            state,
            step,
        }
    }

    /// Steps the bank under a demand. A cooler that the bank cannot feed is left out of the step and the reason given.
    #[inline(always)]
    pub(super) fn step(&mut self, step_s: f64, demand: &Demand) -> PowerStep {
        let (current_a, arriving_v) = self.cooler_feed(demand.cooler_w);
        let cooler_w = current_a * self.voltage_v;
        let (mut state, mut step) = self.try_step(step_s, demand, cooler_w);
        if step.refused.is_some() && demand.cooler_w > 0.0 {
            (state, step) = self.try_without_cooler(step_s, demand, &step);
        }
        step.cooler_voltage_v = arriving_v;
        self.state = state;
        self.voltage_v = step.bank_voltage_v;
        step
    }

    /// The step without the cooler, for the reason that `refused` gives.
    #[cold]
    #[inline(never)]
    fn try_without_cooler(
        &self,
        step_s: f64,
        demand: &Demand,
        refused: &PowerStep,
    ) -> (BankState, PowerStep) {
        let (state, mut step) = self.try_step(step_s, demand, 0.0);
        step.refused = refused.refused;
        step.emptied |= refused.emptied;
        (state, step)
    }

    #[inline(always)]
    fn try_step(&self, step_s: f64, demand: &Demand, cooler_w: f64) -> (BankState, PowerStep) {
        let driving_w = demand.driving_share * self.drive_charger.available_power_w(self.voltage_v);
        let shore_w = demand.shore_share * self.shore_charger.available_power_w();
        let offered_w = demand.panels_w + driving_w + shore_w;
        let asked_w = cooler_w + demand.loads_w;
        let mut state = self.state;
        let bank = self
            .bank
            .step_under(&mut state, step_s, offered_w - asked_w, &self.conditions);
        let served = match bank.limited_by {
            // What was offered and asked, where nothing limits, waits for nothing that the bank works out.
            None => Served {
                loads_w: demand.loads_w,
                kept: 1.0,
                refused: None,
            },
            Some(limit) => served_within(limit, &bank, offered_w, asked_w, cooler_w),
        };
        let step = PowerStep {
            cooler_w,
            loads_w: served.loads_w,
            panels_w: demand.panels_w * served.kept,
            driving_w: driving_w * served.kept,
            shore_w: shore_w * served.kept,
            bank_w: bank.power_w,
            current_a: bank.current_a,
            bank_voltage_v: bank.terminal_voltage_v,
            cooler_voltage_v: bank.terminal_voltage_v,
            limited: bank.limited_by.is_some(),
            emptied: bank.limited_by == Some(BankLimit::Empty),
            refused: served.refused,
        };
        (state, step)
    }
}

/// Whether a bank holds less than a state of charge.
fn is_below(bank: &Bank, state: &BankState, state_of_charge: f64) -> bool {
    state.charge_ah < bank.state_at(state_of_charge).charge_ah
}

/// The inverter that feeds the cooler; none where it takes direct current.
pub(crate) fn inverter_of(document: &ScenarioDocument) -> Result<Option<Inverter>, BuildError> {
    let cooler = &document.cooler;
    if cooler.supply == CoolerSupply::DirectCurrent {
        return Ok(None);
    }
    Ok(Some(Inverter::new(InverterInput {
        continuous_power_w: cooler.inverter_rated_w,
        surge_power_w: cooler.inverter_surge_w,
        idle_power_w: cooler.inverter_idle_w,
        linear_loss_fraction: INVERTER_LINEAR_LOSS,
        square_loss_fraction: INVERTER_SQUARE_LOSS,
    })?))
}

/// The bank of a scenario.
pub(crate) fn bank_of(document: &ScenarioDocument) -> Result<Bank, BuildError> {
    let battery = &document.battery;
    let blocks = document.battery.system_voltage.blocks();
    Ok(Bank::new(BankInput {
        chemistry: match battery.chemistry {
            CellChemistry::LithiumIronPhosphate => Chemistry::LithiumIronPhosphate,
            CellChemistry::AbsorbentGlassMat => Chemistry::AbsorbentGlassMat,
            CellChemistry::FloodedLead => Chemistry::Flooded,
        },
        nominal_voltage_v: document.battery.system_voltage.nominal_v(),
        capacity_ah: battery.capacity_ah,
        usable_min_soc: battery.least_state_of_charge,
        usable_max_soc: battery.most_state_of_charge,
        resistance_ohm: battery.resistance_ohm_per_12_v * blocks,
        coulombic_efficiency: battery.coulombic_efficiency,
        max_discharge_a: battery.highest_discharge_a,
        max_charge_a: battery.highest_charge_a,
        peukert_exponent: if battery.chemistry.has_peukert() {
            battery.peukert_exponent
        } else {
            NO_PEUKERT_EXPONENT
        },
        health_fraction: battery.health_share,
    })?)
}

pub(super) fn panels(document: &ScenarioDocument) -> Result<Panels, BuildError> {
    let charging = &document.charging;
    let losses = PanelLosses {
        soiling: charging.panel_loss_share,
        mismatch: 0.0,
        wiring: 0.0,
        connections: 0.0,
        light_induced_degradation: 0.0,
        nameplate: 0.0,
        ..PanelLosses::VEHICLE
    };
    Ok(Panels::new(PanelInput {
        rated_power_w: document.panel_power_w(),
        temperature_coefficient_per_k: -charging.panel_temperature_loss_per_k,
        mounting: PanelMounting::GluedToRoof,
        losses,
        controller_efficiency: charging.controller_efficiency,
    })?)
}
