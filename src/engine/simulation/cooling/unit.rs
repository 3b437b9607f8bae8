//! The cooler itself: coil, thermostat and start-up, and the temperature that it follows.

use super::{AirAhead, CoolerPlan, CoolerStep};
use crate::cabin::Extraction;
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
use crate::quantity::Bounded;
use crate::scenario::{CompressorControl, ScenarioDocument, cooler_rating};
use crate::schedule::HourWindow;
use crate::simulation::build::BuildError;

/// How long the voltage has to stay low before the cooler stops, s: common practice, no source.
const CUT_OUT_DELAY_S: f64 = 30.0;

/// Share of full output below which a driven cooler counts as off: what blower and electronics draw is known no better.
const LEAST_DRIVEN_SPEED: f64 = 0.05;

/// A built cooler.
#[derive(Clone, Debug)]
pub(super) struct Unit {
    pub(super) coil: Coil,
    pub(super) thermostat: Thermostat,
    pub(super) compressor: CompressorState,
    pub(super) lag: StartUpLag,
    pub(super) cut_out: LowVoltageCutOut,
    pub(super) cut_out_state: CutOutState,
    pub(super) hours: HourWindow,
    pub(super) variable: bool,
    pub(super) low_c: f64,
    pub(super) band_k: f64,
    pub(super) idle_speed: f64,
    pub(super) idle_w: f64,
    pub(super) surge_factor: f64,
    pub(super) condenser_air_rise_k: f64,
    /// What the coil does at `speed`, as of the last refresh.
    pub(super) output: Option<CoilOutput>,
    pub(super) speed: f64,
    /// One over that speed.
    pub(super) per_speed: f64,
    pub(super) was_running: bool,
    /// A start that no step has booked yet.
    pub(super) has_started: bool,
}

impl Unit {
    pub(super) fn new(document: &ScenarioDocument) -> Result<Self, BuildError> {
        let cooler = &document.cooler;
        let blocks = document.battery.system_voltage.blocks();
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
            per_speed: 1.0,
            was_running: false,
            has_started: false,
        })
    }

    /// How far the capacity comes up in a step, and where the air goes.
    ///
    /// A variable speed is the share s of the band below the temperature; the air ends at T = T₀ − s q, with T₀ its end without
    /// cooling and q the fall at full speed, so that s = (T₀ − low)/(band + q). At the least speed it is the temperature itself
    /// that decides on a stop.
    #[inline(always)]
    pub(super) fn plan(&self, step_s: f64, air: &AirAhead) -> CoolerPlan {
        let mut lag = self.lag;
        let started_up = lag.advance(step_s, 1.0);
        let mut plan = CoolerPlan {
            lag,
            started_up,
            controlled_c: air.now_c,
            end_c: air.forecast.air_c,
        };
        let running = self.compressor.speed > 0.0;
        let (true, Some(output)) = (running, &self.output) else {
            return plan;
        };
        let full_fall_k =
            output.sensible_w * self.per_speed * started_up * air.forecast.fall_k_per_w;
        if !self.variable {
            plan.end_c = air.forecast.air_c - full_fall_k * self.compressor.speed;
            return plan;
        }
        // The air ahead is known last: nothing but a product waits for it.
        let per_k = 1.0 / (self.band_k + full_fall_k);
        let share = (air.forecast.air_c - self.low_c) * per_k;
        plan.controlled_c = if share <= self.idle_speed {
            air.now_c
                .at_most(self.low_c + self.idle_speed * self.band_k)
        } else {
            self.low_c + self.band_k * share
        };
        plan.end_c = air.forecast.air_c - full_fall_k * share.clamp(self.idle_speed, 1.0);
        plan
    }

    /// Heat follows the lagging capacity, power the command: a start draws in full before it cools in full.
    #[inline(always)]
    pub(super) fn running(
        &self,
        output: &CoilOutput,
        command: SpeedCommand,
        reached: f64,
    ) -> CoolerStep {
        let heat_share = reached * self.per_speed;
        let blower_w = self.coil.fan_power_w(airflow_fraction(command.speed));
        CoolerStep {
            electric_power_w: output.electric_power_w * (command.speed * self.per_speed) + blower_w,
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

    /// A step at the speed that was read off the power it drew.
    pub(super) fn driven_step(&mut self, step_s: f64) -> CoolerStep {
        let speed = self.compressor.speed;
        let reached = self.lag.advance(step_s, speed);
        let command = SpeedCommand {
            speed,
            started: false,
        };
        match &self.output {
            Some(output) if speed > 0.0 => self.running(output, command, reached),
            _ => CoolerStep::NONE,
        }
    }

    /// The speed at which it draws so much at its terminals, as far as the last minute tells; zero where only the blower runs.
    pub(super) fn speed_at_power(&self, power_w: f64) -> f64 {
        let full_w = match &self.output {
            Some(output) if output.electric_power_w > 0.0 => output.electric_power_w / self.speed,
            _ => self.coil.rating().electric_power_rated_w,
        };
        let blower_w = self.coil.fan_power_w(airflow_fraction(self.speed));
        let speed = (power_w - blower_w) / full_w;
        if speed < LEAST_DRIVEN_SPEED {
            return 0.0;
        }
        speed.at_most(1.0)
    }

    pub(super) fn stop(&mut self) {
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
pub(crate) fn airflow_fraction(speed: f64) -> f64 {
    flow_fraction_at_speed(speed).at_least(0.2)
}
