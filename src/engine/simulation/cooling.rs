//! The cooler in a run: coil, thermostat, start-up, and everything that keeps it from running.

mod unit;

use self::unit::Unit;
pub(crate) use self::unit::airflow_fraction;
use super::build::BuildError;
use super::observed::Course;
use super::power::{Power, PowerStep};
use super::results::Stop;
use crate::cabin::{Extraction, Forecast};
use crate::cooler::bypass::EnteringAir;
use crate::cooler::start_up::StartUpLag;
use crate::electrical::BankLimit;
use crate::quantity::Bounded;
use crate::scenario::ScenarioDocument;

/// How long the cooler waits after the bank could not feed it, s: common practice, no source.
const RETRY_AFTER_S: f64 = 600.0;

/// Length of a minute's interval, in the middle of which a driven cooler's power is read, s.
const DRIVEN_SPAN_S: f64 = 60.0;

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

/// What a step would bring while the thermostat may let the cooler run.
#[derive(Clone, Copy, Debug)]
pub(super) struct CoolerPlan {
    /// The lag at the end of the step, if the compressor runs.
    pub(super) lag: StartUpLag,
    /// Mean share of the commanded output that has come up.
    pub(super) started_up: f64,
    /// The temperature by which the thermostat goes, °C.
    pub(super) controlled_c: f64,
    /// Where the air ends the step at the speed that the thermostat will command, °C.
    pub(super) end_c: f64,
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
    /// Electric power at the terminals, where the cooler runs by what was seen of it, W.
    driven_w: Option<Course>,
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
            driven_w: None,
        })
    }

    /// Takes in the clock at the beginning of an interval, which reaches over no edge of the cooler's hours.
    pub(super) fn set_clock(&mut self, clock_s: f64) {
        if let Some(driven_w) = &self.driven_w {
            let power_w = driven_w.at(clock_s + 0.5 * DRIVEN_SPAN_S).unwrap_or(0.0);
            self.in_hours = true;
            if let Some(unit) = &mut self.unit {
                unit.compressor.speed = unit.speed_at_power(power_w);
            }
            return;
        }
        self.in_hours = self
            .unit
            .as_ref()
            .is_some_and(|unit| unit.hours.contains(clock_s));
    }

    /// Lets the cooler run by the electric power that was seen of it, W at its terminals, and by nothing else.
    pub(super) fn drive_by(&mut self, driven_w: Option<Course>) {
        self.driven_w = driven_w;
    }

    /// Breaks for good.
    pub(super) fn fail(&mut self) {
        self.unit = None;
    }

    /// Whether clock and bank let the cooler run.
    pub(super) fn may_run(&self) -> bool {
        self.in_hours && self.stopped.is_none() && self.driven_w.is_none()
    }

    /// Whether nothing can start it before the clock does: there is none, or it is outside its hours and nothing has stopped it.
    pub(super) fn rests(&self) -> bool {
        self.unit.is_none() || !self.in_hours && self.stopped.is_none() && self.driven_w.is_none()
    }

    /// Whether this voltage, V at the bank, leaves what watches over it as it is.
    pub(super) fn rests_at(&self, voltage_v: f64) -> bool {
        self.unit
            .as_ref()
            .is_none_or(|unit| unit.cut_out.rests_at(&unit.cut_out_state, voltage_v))
    }

    /// Lets time pass while it rests, s.
    pub(super) fn rest(&mut self, span_s: f64) {
        self.wait_s = (self.wait_s - span_s).at_least(0.0);
        if let Some(unit) = &mut self.unit {
            unit.compressor.elapsed_s += span_s;
            unit.lag.advance(span_s, 0.0);
        }
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
        unit.per_speed = 1.0 / unit.speed;
        unit.was_running = running;
        if !self.in_hours {
            // Nothing starts before the next interval, which works the coil out.
            return;
        }
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
    }

    /// What a step would bring; none where nothing may run, or the thermostat is not asked.
    pub(super) fn plan(
        &self,
        step_s: f64,
        air: &AirAhead,
        waits_for_fan: bool,
    ) -> Option<CoolerPlan> {
        let may_run = self.may_run() && !waits_for_fan;
        let unit = self.unit.as_ref().filter(|_| may_run)?;
        Some(unit.plan(step_s, air))
    }

    /// When within a step so planned the thermostat switches, s from its beginning.
    pub(super) fn switch_after_s(
        &self,
        step_s: f64,
        air: &AirAhead,
        plan: &CoolerPlan,
    ) -> Option<f64> {
        let unit = self.unit.as_ref()?;
        unit.thermostat
            .switch_after_s(&unit.compressor, air.now_c, plan.end_c, step_s)
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
        if let (Some(unit), None) = (&mut self.unit, &self.driven_w) {
            let command = unit
                .thermostat
                .step(&mut unit.compressor, 0.0, cabin_c, may_run);
            unit.has_started |= command.started;
        }
    }

    /// Commands a step as planned. Start and stop go by the temperature at its start; a variable speed is solved together with
    /// the temperature that it brings about, so that neither hunts however long the step.
    #[inline(always)]
    pub(super) fn step(
        &mut self,
        step_s: f64,
        air: &AirAhead,
        plan: Option<&CoolerPlan>,
    ) -> CoolerStep {
        self.wait_s = (self.wait_s - step_s).at_least(0.0);
        let Some(unit) = &mut self.unit else {
            return CoolerStep::NONE;
        };
        if self.driven_w.is_some() {
            return unit.driven_step(step_s);
        }
        let cabin_c = plan.map_or(air.now_c, |plan| plan.controlled_c);
        let mut command =
            unit.thermostat
                .step(&mut unit.compressor, step_s, cabin_c, plan.is_some());
        command.started |= std::mem::take(&mut unit.has_started);
        match (plan, &unit.output) {
            (Some(plan), Some(output)) if command.speed > 0.0 => {
                unit.lag = plan.lag;
                unit.running(output, command, command.speed * plan.started_up)
            }
            _ => {
                unit.lag.advance(step_s, 0.0);
                CoolerStep {
                    electric_power_w: if self.in_hours { unit.idle_w } else { 0.0 },
                    ..CoolerStep::NONE
                }
            }
        }
    }

    /// Takes in what the bank made of the step; gives whether the cooler did not run after all.
    #[inline(always)]
    pub(super) fn after(
        &mut self,
        step_s: f64,
        cooler: &CoolerStep,
        step: &PowerStep,
        power: &Power,
    ) -> bool {
        let (Some(unit), None) = (&mut self.unit, &self.driven_w) else {
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
        if refused.is_none() && !overload && !low {
            self.recover(power);
            return false;
        }
        self.stop_for(refused, overload);
        refused.is_some() || overload
    }

    /// Stops for what the bank refused, an overloaded inverter or, failing both, low voltage.
    #[cold]
    #[inline(never)]
    fn stop_for(&mut self, refused: Option<BankLimit>, overload: bool) {
        let stop = match refused {
            Some(BankLimit::DischargeCurrent) => Stop::CurrentLimit,
            Some(BankLimit::DischargeVoltage) => Stop::LowVoltage,
            Some(_) => Stop::BankEmpty,
            None if overload => Stop::InverterOverload,
            None => Stop::LowVoltage,
        };
        if self.stopped.is_none() {
            self.wait_s = RETRY_AFTER_S;
        }
        self.stopped = Some(stop);
        if let Some(unit) = &mut self.unit {
            unit.stop();
        }
    }

    /// Lets the cooler try again once what stopped it is over.
    #[inline(always)]
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
