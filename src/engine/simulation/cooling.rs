//! The cooler in a run: coil, thermostat, start-up, and everything that keeps it from running.

use super::build::BuildError;
use super::power::{Power, PowerStep, blocks};
use super::results::Stop;
use crate::cabin::{Extraction, Forecast};
use crate::cooler::bypass::EnteringAir;
use crate::cooler::coil::{Coil, CoilOutput, flow_fraction_at_speed};
use crate::cooler::control::{
    CompressorState, ControlMode, SpeedCommand, Thermostat, ThermostatInput,
};
use crate::cooler::curves::WINDOW_UNIT_WINKLER_2013;
use crate::cooler::protection::{CutOutState, LowVoltageCutOut};
use crate::cooler::rating::{CoolerRating, PartSpeed};
use crate::cooler::start_up::{
    CYCLIC_DEGRADATION_WINDOW_UNIT, CYCLING_RATE_GREATEST_PER_H, StartUpLag,
};
use crate::electrical::BankLimit;
use crate::scenario::{CompressorControl, ScenarioDocument, cooler_rating};
use crate::schedule::HourWindow;

/// How long the voltage has to stay low before the cooler stops, s: common practice, no source.
const CUT_OUT_DELAY_S: f64 = 30.0;

/// How long the cooler waits after the bank could not feed it, s: common practice, no source.
const RETRY_AFTER_S: f64 = 600.0;

/// How far the speed may leave that for which the coil was worked out, share of full: heat and power are scaled in between.
const SPEED_DRIFT: f64 = 0.1;

/// Charge above the lowest allowed at which an emptied bank is used again, share: common practice, no source.
const RECOVERED_SHARE: f64 = 0.05;

/// What the cooler does in a step.
#[derive(Clone, Copy, Debug)]
pub(super) struct CoolerStep {
    /// Power at the cooler's terminals, W.
    pub(super) electric_power_w: f64,
    /// Part of it that the blower turns into heat in the cabin, W.
    pub(super) blower_w: f64,
    /// Compressor's output over its full output, mean of the step.
    pub(super) capacity_share: f64,
    pub(super) started: bool,
    pub(super) extraction: Extraction,
}

impl CoolerStep {
    pub(super) const NONE: Self = Self {
        electric_power_w: 0.0,
        blower_w: 0.0,
        capacity_share: 0.0,
        started: false,
        extraction: Extraction::NONE,
    };
}

/// The air at the beginning of a step, and at its end if nothing cooled it.
#[derive(Clone, Copy, Debug)]
pub(super) struct AirAhead {
    pub(super) now_c: f64,
    pub(super) forecast: Forecast,
}

/// A built cooler with its state, or none.
#[derive(Clone, Debug)]
pub(super) struct Cooling {
    unit: Option<Unit>,
    in_hours: bool,
    stopped: Option<Stop>,
    wait_s: f64,
    recovered_state_of_charge: f64,
    extrapolated: bool,
}

#[derive(Clone, Debug)]
struct Unit {
    coil: Coil,
    thermostat: Thermostat,
    compressor: CompressorState,
    lag: StartUpLag,
    cut_out: LowVoltageCutOut,
    cut_out_state: CutOutState,
    hours: HourWindow,
    variable: bool,
    low_c: f64,
    band_k: f64,
    idle_speed: f64,
    idle_w: f64,
    surge_factor: f64,
    condenser_air_rise_k: f64,
    /// What the coil does at `speed`, as of the last refresh.
    output: Option<CoilOutput>,
    speed: f64,
    was_running: bool,
    /// A start that no step has booked yet.
    has_started: bool,
}

impl Cooling {
    pub(super) fn new(document: &ScenarioDocument) -> Result<Self, BuildError> {
        let unit = if document.cooler.installed {
            Some(Unit::new(document)?)
        } else {
            None
        };
        Ok(Self {
            unit,
            in_hours: false,
            stopped: None,
            wait_s: 0.0,
            recovered_state_of_charge: document.battery.least_state_of_charge + RECOVERED_SHARE,
            extrapolated: false,
        })
    }

    /// Takes in the clock at the beginning of an interval, which reaches over no edge of the cooler's hours.
    pub(super) fn set_clock(&mut self, clock_s: f64) {
        self.in_hours = self
            .unit
            .as_ref()
            .is_some_and(|unit| unit.hours.contains(clock_s));
    }

    /// Breaks for good.
    pub(super) fn fail(&mut self) {
        self.unit = None;
    }

    /// Whether clock and bank let the cooler run.
    pub(super) fn may_run(&self) -> bool {
        self.in_hours && self.stopped.is_none()
    }

    pub(super) fn running(&self) -> bool {
        self.unit
            .as_ref()
            .is_some_and(|unit| unit.compressor.speed > 0.0)
    }

    /// Whether the compressor has started, stopped or left the speed for which the coil was worked out.
    pub(super) fn needs_refresh(&self) -> bool {
        self.unit.as_ref().is_some_and(|unit| {
            let speed = unit.compressor.speed;
            let running = speed > 0.0;
            running != unit.was_running || running && (speed - unit.speed).abs() > SPEED_DRIFT
        })
    }

    pub(super) fn stopped(&self) -> Option<Stop> {
        self.stopped
    }

    pub(super) fn extrapolated(&self) -> bool {
        self.extrapolated
    }

    /// Air that the blower moves, m³/s.
    pub(super) fn airflow_m3_s(&self) -> f64 {
        match &self.unit {
            Some(unit) if unit.compressor.speed > 0.0 => {
                unit.coil.rating().airflow_rated_m3_s * airflow_fraction(unit.compressor.speed)
            }
            _ => 0.0,
        }
    }

    /// Works out the coil for the minute that begins.
    pub(super) fn refresh(
        &mut self,
        cabin_c: f64,
        humidity_ratio: f64,
        pressure_pa: f64,
        outdoor_c: f64,
    ) {
        let Some(unit) = &mut self.unit else {
            return;
        };
        let running = unit.compressor.speed > 0.0;
        unit.speed = match (running, cabin_c > unit.low_c + unit.band_k) {
            (true, _) => unit.compressor.speed,
            (false, true) => 1.0,
            (false, false) => unit.idle_speed,
        };
        let air = EnteringAir {
            dry_bulb_c: cabin_c,
            humidity_ratio,
            pressure_pa,
        };
        let output = unit.coil.operate(
            &air,
            outdoor_c + unit.condenser_air_rise_k,
            unit.speed,
            airflow_fraction(unit.speed),
        );
        self.extrapolated |= running && output.extrapolated;
        unit.output = Some(output);
        unit.was_running = running;
    }

    /// When within a step the thermostat switches, s from its beginning.
    pub(super) fn switch_after_s(
        &self,
        step_s: f64,
        air: &AirAhead,
        waits_for_fan: bool,
    ) -> Option<f64> {
        let may_run = self.may_run() && !waits_for_fan;
        let unit = self.unit.as_ref().filter(|_| may_run)?;
        let started_up = {
            let mut lag = unit.lag;
            lag.advance(step_s, 1.0)
        };
        let end_c = unit.end_c(air, started_up);
        unit.thermostat
            .switch_after_s(&unit.compressor, air.now_c, end_c, step_s)
    }

    /// The temperature at which the thermostat switches next, °C: fed to it where a step was cut there, so that rounding does
    /// not put the switch off.
    pub(super) fn switch_c(&self) -> Option<f64> {
        let unit = self.unit.as_ref()?;
        Some(if unit.compressor.speed > 0.0 {
            unit.thermostat.stop_c()
        } else {
            unit.thermostat.start_c()
        })
    }

    /// Lets the thermostat switch at the very beginning of an interval, before air flow and coil are worked out for it.
    pub(super) fn settle(&mut self, cabin_c: f64, waits_for_fan: bool) {
        let may_run = self.may_run() && !waits_for_fan;
        if let Some(unit) = &mut self.unit {
            let command = unit
                .thermostat
                .step(&mut unit.compressor, 0.0, cabin_c, may_run);
            unit.has_started |= command.started;
        }
    }

    /// Commands a step. Start and stop go by the temperature at its start; a variable speed is solved together with the
    /// temperature that it brings about, so that neither hunts however long the step.
    pub(super) fn step(&mut self, step_s: f64, air: &AirAhead, waits_for_fan: bool) -> CoolerStep {
        self.wait_s = (self.wait_s - step_s).max(0.0);
        let may_run = self.may_run() && !waits_for_fan;
        let Some(unit) = &mut self.unit else {
            return CoolerStep::NONE;
        };
        let mut lag = unit.lag;
        let started_up = if may_run {
            lag.advance(step_s, 1.0)
        } else {
            0.0
        };
        let cabin_c = unit.controlled_c(air, started_up);
        let mut command = unit
            .thermostat
            .step(&mut unit.compressor, step_s, cabin_c, may_run);
        command.started |= std::mem::take(&mut unit.has_started);
        if command.speed > 0.0 {
            unit.lag = lag;
        } else {
            unit.lag.advance(step_s, 0.0);
        }
        let reached = command.speed * started_up;
        match &unit.output {
            Some(output) if command.speed > 0.0 => unit.running(output, command, reached),
            _ if self.in_hours => CoolerStep {
                electric_power_w: unit.idle_w,
                ..CoolerStep::NONE
            },
            _ => CoolerStep::NONE,
        }
    }

    /// Takes in what the bank made of the step; gives whether the cooler did not run after all.
    pub(super) fn after(
        &mut self,
        step_s: f64,
        cooler: &CoolerStep,
        step: &PowerStep,
        power: &Power,
    ) -> bool {
        let Some(unit) = &mut self.unit else {
            return false;
        };
        let low = !unit
            .cut_out
            .step(&mut unit.cut_out_state, step_s, step.cooler_voltage_v);
        let overload = cooler.started
            && power.inverter().is_some_and(|inverter| {
                let running_w = cooler.electric_power_w;
                inverter
                    .overload(running_w, running_w * unit.surge_factor)
                    .is_some()
            });
        let refused = step.refused.filter(|_| cooler.electric_power_w > 0.0);
        let stop = match refused {
            Some(BankLimit::DischargeCurrent) => Some(Stop::CurrentLimit),
            Some(BankLimit::DischargeVoltage) => Some(Stop::LowVoltage),
            Some(_) => Some(Stop::BankEmpty),
            None if overload => Some(Stop::InverterOverload),
            None if low => Some(Stop::LowVoltage),
            None => None,
        };
        if let Some(stop) = stop {
            if self.stopped.is_none() {
                self.wait_s = RETRY_AFTER_S;
            }
            self.stopped = Some(stop);
            unit.stop();
            return refused.is_some() || overload;
        }
        self.recover(power);
        false
    }

    /// Lets the cooler try again once what stopped it is over.
    fn recover(&mut self, power: &Power) {
        let over = match self.stopped {
            None | Some(Stop::InverterOverload) => false,
            Some(Stop::BankEmpty) => power.state_of_charge() >= self.recovered_state_of_charge,
            Some(Stop::LowVoltage | Stop::CurrentLimit) => true,
        };
        if over && self.wait_s <= 0.0 {
            self.stopped = None;
        }
    }

    /// Current that a start adds over the running current, A at the bank.
    pub(super) fn start_current_a(&self, power: &Power) -> f64 {
        let Some(unit) = &self.unit else {
            return 0.0;
        };
        let running_w = unit.output.map_or(0.0, |output| output.electric_power_w);
        let (running_a, _) = power.cooler_feed(running_w);
        running_a * (unit.surge_factor - 1.0)
    }
}

impl Unit {
    fn new(document: &ScenarioDocument) -> Result<Self, BuildError> {
        let cooler = &document.cooler;
        let blocks = blocks(document);
        let rating: CoolerRating = cooler_rating(document);
        let (mode, least) = match cooler.control {
            CompressorControl::OnOff => (ControlMode::OnOff, 1.0),
            CompressorControl::TwoLevel => (
                ControlMode::TwoLevel {
                    economy_fraction: cooler.least_capacity_share,
                },
                cooler.least_capacity_share,
            ),
            CompressorControl::Variable => (
                ControlMode::Variable {
                    least_fraction: cooler.least_capacity_share,
                },
                cooler.least_capacity_share,
            ),
        };
        let part_speed = PartSpeed {
            least_capacity_fraction: least,
            part_speed_efficiency_gain: cooler.part_speed_efficiency_gain,
        };
        Ok(Self {
            coil: Coil::new(rating, &WINDOW_UNIT_WINKLER_2013, part_speed)?,
            thermostat: Thermostat::new(ThermostatInput {
                set_point_c: cooler.set_point_c,
                band_k: cooler.band_k,
                minimum_on_s: cooler.minimum_on_s,
                minimum_off_s: cooler.minimum_off_s,
                mode,
            })?,
            compressor: CompressorState::default(),
            lag: StartUpLag::new(CYCLIC_DEGRADATION_WINDOW_UNIT, CYCLING_RATE_GREATEST_PER_H)?,
            cut_out: LowVoltageCutOut::new(
                cooler.cut_out_v_per_12_v * blocks,
                cooler.recovery_v_per_12_v * blocks,
                CUT_OUT_DELAY_S,
            )?,
            cut_out_state: CutOutState::default(),
            hours: HourWindow::new(cooler.run_from_hour, cooler.run_until_hour)?,
            variable: cooler.control == CompressorControl::Variable,
            low_c: cooler.set_point_c - 0.5 * cooler.band_k,
            band_k: cooler.band_k,
            idle_speed: least,
            idle_w: cooler.idle_power_w,
            surge_factor: cooler.start_surge_factor,
            condenser_air_rise_k: cooler.condenser_air_rise_k,
            output: None,
            speed: 1.0,
            was_running: false,
            has_started: false,
        })
    }

    /// The temperature by which the thermostat goes.
    ///
    /// A variable speed is the share s of the band below the temperature; the air ends at T = T₀ − s q, with T₀ its end without
    /// cooling and q the fall at full speed, so that s = (T₀ − low)/(band + q). At the least speed it is the temperature itself
    /// that decides on a stop.
    fn controlled_c(&self, air: &AirAhead, started_up: f64) -> f64 {
        let Some(fall_k) = self.full_fall_k(air, started_up) else {
            return air.now_c;
        };
        let share = (air.forecast.air_c - self.low_c) / (self.band_k + fall_k);
        if share <= self.idle_speed {
            return air.now_c.min(self.low_c + self.idle_speed * self.band_k);
        }
        self.low_c + self.band_k * share
    }

    /// How far full speed would lower the air in a step, K, while a compressor of variable speed runs.
    fn full_fall_k(&self, air: &AirAhead, started_up: f64) -> Option<f64> {
        let output = self.output?;
        let running = self.variable && self.compressor.speed > 0.0;
        running.then(|| output.sensible_w / self.speed * started_up * air.forecast.fall_k_per_w)
    }

    /// Where the air ends a step at the speed that the thermostat will command.
    fn end_c(&self, air: &AirAhead, started_up: f64) -> f64 {
        let Some(output) = self.output.filter(|_| self.compressor.speed > 0.0) else {
            return air.forecast.air_c;
        };
        let speed = match self.full_fall_k(air, started_up) {
            Some(fall_k) => ((air.forecast.air_c - self.low_c) / (self.band_k + fall_k))
                .clamp(self.idle_speed, 1.0),
            None => self.compressor.speed,
        };
        let taken_w = output.sensible_w * speed / self.speed * started_up;
        air.forecast.air_c - taken_w * air.forecast.fall_k_per_w
    }

    /// Heat follows the lagging capacity, power the command: a start draws in full before it cools in full.
    fn running(&self, output: &CoilOutput, command: SpeedCommand, reached: f64) -> CoolerStep {
        let heat_share = reached / self.speed;
        let blower_w = self.coil.fan_power_w(airflow_fraction(command.speed));
        CoolerStep {
            electric_power_w: output.electric_power_w * command.speed / self.speed + blower_w,
            blower_w,
            capacity_share: reached,
            started: command.started,
            extraction: Extraction {
                sensible_w: output.sensible_w * heat_share,
                least_c: output.supply_dry_bulb_c,
                moisture_kg_s: output.condensate_kg_s * heat_share,
                least_humidity_ratio: output.supply_humidity_ratio,
            },
        }
    }

    fn stop(&mut self) {
        if self.compressor.speed > 0.0 {
            self.compressor = CompressorState {
                speed: 0.0,
                elapsed_s: 0.0,
            };
        }
        self.lag.advance(1.0, 0.0);
    }
}

/// Air over the coil at a speed, share of the rated flow, not below what the coil's curves cover.
fn airflow_fraction(speed: f64) -> f64 {
    flow_fraction_at_speed(speed).max(0.2)
}
