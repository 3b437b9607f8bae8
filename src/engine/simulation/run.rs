//! The time loop.
//!
//! Surroundings, coefficients of the network and the coil are refreshed once an interval; every step in between moves
//! thermostat, bank and network. An interval is five minutes while the cabin is quiet, one minute while it changes fast, and
//! ends at once when the compressor starts, stops or leaves the speed for which its coil was worked out. Neither depends on the step, so that a shorter step changes little. The
//! day before the run is passed through in steps of five minutes, cooler off, to give the shell its history.

use super::body::{Body, body, wind_profile};
use super::build::BuildError;
use super::cooling::{AirAhead, CoolerStep, Cooling};
use super::environment::{Environment, Surroundings};
use super::failure::{FailingPart, Failure};
use super::inside::{Inside, InsideGains};
use super::power::{Demand, Power, PowerStep};
use super::recorder::{FELT_AIR_SPEED_M_S, Recorder, SampleState};
use super::results::{Balance, Results};
use super::ventilation::{FanSituation, Ventilation};
use crate::air;
use crate::cabin::{Boundary, Cabin, Extraction, Gains, Ledger, Part};
use crate::comfort::operative_temperature_c;
use crate::quantity::{SECONDS_PER_DAY, SECONDS_PER_HOUR};
use crate::scenario::{Scenario, ScenarioDocument};
use crate::schedule::HourWindow;

/// Length of a step, s.
pub const STEP_S: f64 = 10.0;

/// Time between samples, and longest time between refreshed coefficients, s.
const SAMPLE_S: f64 = 300.0;

/// Time between refreshed coefficients while the cabin changes fast, s.
const SHORT_INTERVAL_S: f64 = 60.0;

/// Change of the cabin in a sample's time from which it counts as changing fast, K: convection goes with the cube root of some
/// kelvins, so that half of one changes it by a few hundredths.
const FAST_CHANGE_K: f64 = 0.5;

/// Shortest part into which a step is cut, s.
const LEAST_STEP_S: f64 = 0.05;

/// Step of the day before the run, s.
const SETTLING_STEP_S: f64 = 300.0;

/// A scenario made ready to run: its body and its surroundings, which do not depend on cooler or bank.
#[derive(Clone, Debug)]
pub struct Prepared {
    document: ScenarioDocument,
    body: std::rc::Rc<Body>,
    environment: std::rc::Rc<Environment>,
    failure: Option<Failure>,
}

impl Prepared {
    /// Works out body and surroundings of a scenario.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn new(scenario: &Scenario) -> Result<Self, BuildError> {
        let document = scenario.document().clone();
        let body = body(&document)?;
        let environment = Environment::new(&document, &body)?;
        Ok(Self {
            document,
            body: std::rc::Rc::new(body),
            environment: std::rc::Rc::new(environment),
            failure: None,
        })
    }

    /// Whether another scenario has body and surroundings in common with this one.
    #[must_use]
    pub fn suits(&self, scenario: &Scenario) -> bool {
        same_day_without_cooler(&self.document, scenario.document())
    }

    /// Makes another scenario ready, sharing body and surroundings where it differs only in cooler, bank, panels or prices.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn like(&self, scenario: &Scenario) -> Result<Self, BuildError> {
        if !self.suits(scenario) {
            return Self::new(scenario);
        }
        let mut other = self.clone();
        other.document = scenario.document().clone();
        Ok(other)
    }

    /// The same in which a part fails.
    #[must_use]
    pub fn failing(&self, failure: Failure) -> Self {
        let mut other = self.clone();
        other.failure = Some(failure);
        other
    }

    /// The same without any cooler, sharing body and surroundings.
    #[must_use]
    pub fn without_cooler(&self) -> Self {
        let mut other = self.clone();
        other.document.cooler.installed = false;
        other
    }

    /// Runs the scenario in steps of [`STEP_S`].
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn run(&self) -> Result<Results, BuildError> {
        self.run_in_steps((SHORT_INTERVAL_S / STEP_S) as u32)
    }

    /// Runs the scenario with a number of steps in each minute, from one up; none counts as one.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn run_in_steps(&self, steps_per_minute: u32) -> Result<Results, BuildError> {
        let mut run = Run::new(self)?;
        run.settle();
        run.pass(steps_per_minute.max(1));
        Ok(run.results())
    }
}

/// Runs a scenario in steps of [`STEP_S`].
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn simulate(scenario: &Scenario) -> Result<Results, BuildError> {
    Prepared::new(scenario)?.run()
}

struct Run<'a> {
    document: &'a ScenarioDocument,
    body: &'a Body,
    environment: &'a Environment,
    cabin: Cabin,
    inside: Inside,
    ventilation: Ventilation,
    power: Power,
    cooling: Cooling,
    covers: Option<HourWindow>,
    covered: bool,
    driving: Option<HourWindow>,
    recorder: Recorder,
    results: Results,
    failure: Option<Failure>,
    quiet: bool,
    /// Temperature to feed to the thermostat where an interval was cut for it, °C.
    switch_c: Option<f64>,
    bank_current_a: f64,
    electric_in_j: f64,
    electric_out_j: f64,
    stored_wh_at_start: f64,
}

/// Whether two scenarios pass a day alike while no cooler runs, whatever they are equipped with.
fn same_day_without_cooler(one: &ScenarioDocument, other: &ScenarioDocument) -> bool {
    let driving = |document: &ScenarioDocument| {
        let charging = &document.charging;
        (
            charging.drives,
            charging.drive_from_hour,
            charging.drive_until_hour,
            charging.drive_speed_m_s,
        )
    };
    one.vehicle == other.vehicle
        && one.shell == other.shell
        && one.glass == other.glass
        && one.occupants == other.occupants
        && one.place == other.place
        && one.day == other.day
        && one.ventilation == other.ventilation
        && one.loads == other.loads
        && one.cooler.set_point_c == other.cooler.set_point_c
        && driving(one) == driving(other)
}

/// An interval's inputs, worked out once.
struct Interval {
    surroundings: Surroundings,
    gains: InsideGains,
    cooler_waits: bool,
    loads_w: f64,
    panels_w: f64,
    driving_share: f64,
    shore_share: f64,
}

impl Interval {
    /// Nothing draws and nothing charges.
    fn without_power(self) -> Self {
        Self {
            loads_w: 0.0,
            panels_w: 0.0,
            driving_share: 0.0,
            shore_share: 0.0,
            ..self
        }
    }
}

impl<'a> Run<'a> {
    fn new(prepared: &'a Prepared) -> Result<Self, BuildError> {
        let (document, body) = (&prepared.document, &*prepared.body);
        let environment = &*prepared.environment;
        let first = environment.at(document.day.start_hour * SECONDS_PER_HOUR - SECONDS_PER_DAY);
        let cabin = Cabin::new(
            &body.description,
            wind_profile(document.place.terrain),
            first.outdoor_c,
            first.humidity_ratio,
        )?;
        let parts: Vec<Part> = cabin
            .elements()
            .iter()
            .map(|element| element.part)
            .collect();
        let samples_per_day = SECONDS_PER_DAY / SAMPLE_S;
        let samples = (document.day.days * samples_per_day) as usize + 1;
        let glass = &document.glass;
        let charging = &document.charging;
        let power = Power::new(document)?;
        Ok(Self {
            document,
            body,
            environment,
            cabin,
            inside: Inside::new(document)?,
            ventilation: Ventilation::new(document)?,
            cooling: Cooling::new(document)?,
            covers: window_if(
                glass.covers_fitted,
                glass.covers_from_hour,
                glass.covers_until_hour,
            )?,
            covered: false,
            driving: window_if(
                charging.drives,
                charging.drive_from_hour,
                charging.drive_until_hour,
            )?,
            recorder: Recorder::new(parts, samples),
            results: Results::default(),
            failure: prepared.failure,
            quiet: false,
            switch_c: None,
            bank_current_a: 0.0,
            electric_in_j: 0.0,
            electric_out_j: 0.0,
            stored_wh_at_start: power.stored_wh(),
            power,
        })
    }

    fn start_s(&self) -> f64 {
        self.document.day.start_hour * SECONDS_PER_HOUR
    }

    /// Passes through the day before, cooler off.
    fn settle(&mut self) {
        let steps = (SECONDS_PER_DAY / SETTLING_STEP_S) as usize;
        let mut unused = Ledger::default();
        for index in 0..steps {
            let clock_s = self.start_s() - SECONDS_PER_DAY + SETTLING_STEP_S * index as f64;
            let interval = self.open(clock_s, SETTLING_STEP_S, SETTLING_STEP_S, false);
            let appliances_w = interval.loads_w;
            let gains = interval.gains.with_appliances(appliances_w);
            self.cabin.step(&gains, &Extraction::NONE);
            self.cabin.close_interval(&mut unused);
        }
    }

    fn pass(&mut self, steps_per_minute: u32) {
        let samples = (self.document.day.days * SECONDS_PER_DAY / SAMPLE_S) as usize;
        let step_s = SHORT_INTERVAL_S / f64::from(steps_per_minute);
        let first = self.sample_state(self.start_s());
        self.recorder.first(&first);
        for index in 0..samples {
            let sample_s = self.start_s() + SAMPLE_S * index as f64;
            let mut done_s = 0.0;
            while done_s < SAMPLE_S - LEAST_STEP_S {
                let left_s = SAMPLE_S - done_s;
                let planned_s = if self.quiet {
                    left_s
                } else {
                    left_s.min(SHORT_INTERVAL_S)
                };
                let clock_s = sample_s + done_s;
                let to_edge_s = self.cooling.seconds_to_edge(clock_s + LEAST_STEP_S);
                let planned_s = planned_s.min(to_edge_s + LEAST_STEP_S);
                done_s += self.interval(clock_s, step_s, planned_s);
            }
            let state = self.sample_state(sample_s + SAMPLE_S);
            self.recorder.sample(&state);
        }
    }

    /// One interval of at most `planned_s`; gives how long it was, s.
    fn interval(&mut self, clock_s: f64, step_s: f64, planned_s: f64) -> f64 {
        let interval = self.open(clock_s, planned_s, step_s, true);
        self.cooling.refresh(
            self.cabin.air_c(),
            self.cabin.humidity_ratio(),
            self.body.description.pressure_pa,
            interval.surroundings.outdoor_c,
        );
        self.power.set_bank_temperature(self.bank_c());
        let began_c = self.cabin.air_c();
        let mut appliances_j = 0.0;
        let mut passed_s = 0.0;
        while passed_s < planned_s - LEAST_STEP_S {
            let now_s = clock_s + passed_s;
            let length_s = step_s.min(planned_s - passed_s);
            let (taken_s, switches) = self.step(&interval, now_s, length_s, &mut appliances_j);
            passed_s += taken_s;
            if switches || self.cooling.needs_refresh() {
                break;
            }
        }
        let change_k = (self.cabin.air_c() - began_c).abs() * SAMPLE_S / passed_s;
        self.quiet = change_k < FAST_CHANGE_K && passed_s >= planned_s - LEAST_STEP_S;
        self.close(&interval, passed_s, appliances_j);
        passed_s
    }

    /// Books an interval.
    fn close(&mut self, interval: &Interval, span_s: f64, appliances_j: f64) {
        let mut ledger = Ledger::default();
        self.cabin.close_interval(&mut ledger);
        let latent_j_kg = air::latent_heat_vaporisation_j_per_kg(self.cabin.air_c());
        self.recorder
            .interval(span_s, &interval.gains, appliances_j, &ledger, latent_j_kg);
    }

    /// One step, cut short where the thermostat switches within it; gives its length, s, and whether it was cut.
    fn step(
        &mut self,
        interval: &Interval,
        now_s: f64,
        step_s: f64,
        appliances_j: &mut f64,
    ) -> (f64, bool) {
        self.cabin.set_step(step_s);
        let air = self.air_ahead(interval);
        let switch_s = self
            .cooling
            .switch_after_s(step_s, &air, interval.cooler_waits)
            .filter(|after_s| (LEAST_STEP_S..step_s - LEAST_STEP_S).contains(after_s));
        let Some(switch_s) = switch_s else {
            self.part(interval, now_s, step_s, &air, appliances_j);
            return (step_s, false);
        };
        self.cabin.set_step(switch_s);
        let air = self.air_ahead(interval);
        self.part(interval, now_s, switch_s, &air, appliances_j);
        self.switch_c = self.cooling.switch_c();
        (switch_s, true)
    }

    fn air_ahead(&mut self, interval: &Interval) -> AirAhead {
        let gains = interval.gains.with_appliances(interval.loads_w);
        AirAhead {
            now_c: self.cabin.air_c(),
            forecast: self.cabin.forecast(&gains),
        }
    }

    /// A step or a part of one: thermostat, bank and network in turn.
    fn part(
        &mut self,
        interval: &Interval,
        now_s: f64,
        step_s: f64,
        air: &AirAhead,
        appliances_j: &mut f64,
    ) {
        let mut cooler = self.cooling.step(step_s, air, interval.cooler_waits);
        let demand = Demand {
            cooler_w: cooler.electric_power_w,
            loads_w: interval.loads_w,
            panels_w: interval.panels_w,
            driving_share: interval.driving_share,
            shore_share: interval.shore_share,
        };
        let power = self.power.step(step_s, &demand);
        if self.cooling.after(step_s, &cooler, &power, &self.power) {
            cooler = CoolerStep::NONE;
        }
        self.note(now_s, &cooler, &power);
        let appliances_w = power.loads_w + cooler.blower_w;
        *appliances_j += appliances_w * step_s;
        let gains: Gains = interval.gains.with_appliances(appliances_w);
        self.cabin.step(&gains, &cooler.extraction);
        self.recorder.step(step_s, &power, cooler.capacity_share);
        self.electric_in_j += (power.panels_w + power.driving_w + power.shore_w) * step_s;
        self.electric_out_j += (power.cooler_w + power.loads_w + power.loss_w) * step_s;
        self.bank_current_a = power.current_a;
    }

    /// Keeps the extremes and firsts of the run.
    fn note(&mut self, now_s: f64, cooler: &CoolerStep, power: &PowerStep) {
        let now_h = now_s / SECONDS_PER_HOUR;
        let results = &mut self.results;
        results.peak_discharge_a = results.peak_discharge_a.max(-power.current_a);
        if cooler.started {
            self.recorder.totals.compressor_starts += 1;
            let start_a = self.cooling.start_current_a(&self.power) - power.current_a.min(0.0);
            results.peak_start_a = results.peak_start_a.max(start_a);
        }
        if let (None, Some(stop)) = (results.first_stop, self.cooling.stopped()) {
            results.first_stop = Some((now_h, stop));
        }
        let reserve = self.document.need.reserve_state_of_charge;
        if results.below_reserve_at_h.is_none() && self.power.state_of_charge() < reserve {
            results.below_reserve_at_h = Some(now_h);
        }
    }

    /// Lets fail what has failed; gives whether the bank still feeds anything.
    fn fail(&mut self, clock_s: f64) -> bool {
        let Some(failure) = self.failure.filter(|failure| failure.has_happened(clock_s)) else {
            return true;
        };
        self.cooling.fail();
        let powered = failure.part != FailingPart::Bank;
        if !powered {
            self.ventilation.fail();
        }
        powered
    }

    /// Works out an interval and sets the network's coefficients.
    fn open(&mut self, clock_s: f64, span_s: f64, step_s: f64, cooled: bool) -> Interval {
        let surroundings = self.environment.at(clock_s + 0.5 * span_s);
        let powered = self.fail(clock_s + LEAST_STEP_S);
        self.cooling.set_clock(clock_s + LEAST_STEP_S);
        let situation = FanSituation {
            clock_s,
            span_s,
            cabin_c: self.cabin.air_c(),
            outdoor_c: surroundings.outdoor_c,
            cooler_allowed: cooled && self.cooling.may_run(),
            cooler_running: self.cooling.running(),
        };
        let cooler_waits = self.ventilation.decide(&situation);
        if cooled {
            let cabin_c = self.switch_c.take().unwrap_or(situation.cabin_c);
            self.cooling.settle(cabin_c, cooler_waits);
        }
        let road_m_s = if self.drives_at(clock_s) {
            self.document.charging.drive_speed_m_s
        } else {
            0.0
        };
        let wind_m_s = surroundings.wind_speed_m_s;
        let boundary = Boundary {
            outdoor_c: surroundings.outdoor_c,
            outdoor_humidity_ratio: surroundings.humidity_ratio,
            sky_c: surroundings.sky_c,
            ground_c: surroundings.ground_c,
            shaded_ground_c: surroundings.shaded_ground_c,
            wind_speed_m_s: wind_m_s,
            wind_from_deg: self.environment.wind_from_deg,
            road_speed_m_s: road_m_s,
            air_exchange: self
                .ventilation
                .air_exchange(&situation, wind_m_s, road_m_s),
            stirred_m3_s: self.ventilation.fan_flow_m3_s() + self.cooling.airflow_m3_s(),
            sun: surroundings.sun,
        };
        self.set_covers(clock_s);
        self.cabin.set_conditions(&boundary, step_s);
        let felt_c = operative_temperature_c(
            self.cabin.air_c(),
            self.cabin.radiant_c(),
            FELT_AIR_SPEED_M_S,
        );
        let interval = Interval {
            gains: self.inside.gains(clock_s, span_s, felt_c),
            cooler_waits,
            loads_w: self.power.loads_w(clock_s, span_s) + self.ventilation.fan_power_w(),
            panels_w: self.power.panels_w(
                surroundings.horizontal_sun_w_m2,
                surroundings.outdoor_c,
                wind_m_s.max(road_m_s),
            ),
            driving_share: self.power.driving_share(clock_s, span_s),
            shore_share: self.power.shore_share(clock_s, span_s),
            surroundings,
        };
        if powered {
            interval
        } else {
            interval.without_power()
        }
    }

    /// The bank stands among the goods and has their temperature.
    fn bank_c(&self) -> f64 {
        self.cabin
            .core_c(self.body.goods)
            .unwrap_or_else(|| self.cabin.air_c())
    }

    fn drives_at(&self, clock_s: f64) -> bool {
        self.driving.is_some_and(|hours| hours.contains(clock_s))
    }

    /// Puts covers on the panes or takes them off.
    fn set_covers(&mut self, clock_s: f64) {
        let covered = self.covers.is_some_and(|hours| hours.contains(clock_s));
        if covered == self.covered {
            return;
        }
        self.covered = covered;
        let pane = if covered {
            &self.body.covered_pane
        } else {
            &self.body.bare_pane
        };
        self.cabin.replace_panes(pane);
    }

    fn sample_state(&self, clock_s: f64) -> SampleState {
        let surroundings = self.environment.at(clock_s);
        SampleState {
            clock_s,
            outdoor_c: surroundings.outdoor_c,
            cabin_c: self.cabin.air_c(),
            radiant_c: self.cabin.radiant_c(),
            relative_humidity: air::relative_humidity_from_humidity_ratio(
                self.cabin.air_c(),
                self.cabin.humidity_ratio(),
                self.body.description.pressure_pa,
            ),
            sun_w_m2: surroundings.horizontal_sun_w_m2,
            state_of_charge: self.power.state_of_charge(),
            bank_voltage_v: self.power.voltage_v(),
            bank_current_a: self.bank_current_a,
            stopped: self.cooling.stopped(),
        }
    }

    fn results(self) -> Results {
        let ledger = &self.recorder.ledger;
        let stored_j = (self.power.stored_wh() - self.stored_wh_at_start) * SECONDS_PER_HOUR;
        let electric_j = self.electric_in_j - self.electric_out_j - stored_j;
        let heat = ledger
            .heat_residual()
            .abs()
            .max(ledger.inside_residual().abs());
        Results {
            balance: Balance {
                heat_residual: heat,
                moisture_residual: ledger.moisture_residual().abs(),
                electric_residual: electric_j.abs()
                    / (self.electric_in_j + self.electric_out_j).max(1.0),
            },
            curves_extrapolated: self.cooling.extrapolated(),
            series: self.recorder.series,
            totals: self.recorder.totals,
            ..self.results
        }
    }
}

fn window_if(
    wanted: bool,
    from_hour: f64,
    until_hour: f64,
) -> Result<Option<HourWindow>, BuildError> {
    if !wanted {
        return Ok(None);
    }
    Ok(Some(HourWindow::new(from_hour, until_hour)?))
}
