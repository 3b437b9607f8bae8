//! A scenario made ready: what all of its runs share.

use super::body::{Body, body, wind_profile};
use super::build::BuildError;
use super::environment::{Environment, same_sun};
use super::failure::Failure;
use super::observed::Observed;
use super::recorder::Detail;
use super::results::Results;
use super::roof::PanelShade;
use super::run::{Run, SHORT_INTERVAL_S};
use super::ventilation::Ventilation;
use crate::cabin::Cabin;
use crate::quantity::{SECONDS_PER_DAY, SECONDS_PER_HOUR};
use crate::scenario::{Scenario, ScenarioDocument};
use crate::weather::Sunlight;
use std::rc::Rc;

/// Length of a step, s.
pub const STEP_S: f64 = 10.0;

/// Such steps in a minute.
pub const FULL_STEPS_PER_MINUTE: u32 = (SHORT_INTERVAL_S / STEP_S) as u32;

/// A scenario made ready to run: its body, its surroundings, and the cabin as the day before left it. None of them depends on
/// the cooler, which that day passes without.
#[derive(Clone, Debug)]
pub struct Prepared {
    document: ScenarioDocument,
    body: Rc<Body>,
    environment: Rc<Environment>,
    settled: Rc<Settled>,
    panel_shade: Option<Rc<PanelShade>>,
    failure: Option<Failure>,
    observed: Observed,
}

/// What the day before the run left.
#[derive(Clone, Debug)]
pub(super) struct Settled {
    pub(super) cabin: Cabin,
    pub(super) ventilation: Ventilation,
    pub(super) covered: bool,
}

impl Settled {
    pub(super) fn new(
        document: &ScenarioDocument,
        body: &Body,
        environment: &Environment,
    ) -> Result<Self, BuildError> {
        let first = environment.at(document.day.start_hour * SECONDS_PER_HOUR - SECONDS_PER_DAY);
        let before = Self {
            cabin: Cabin::new(
                &body.description,
                wind_profile(document.place.terrain),
                first.outdoor_c,
                first.humidity_ratio,
            )?,
            ventilation: Ventilation::new(document)?,
            covered: false,
        };
        let mut run = Run::new(document, body, environment, before, Detail::Verdict)?;
        run.settle();
        Ok(run.into_settled())
    }
}

impl Prepared {
    /// Works out body and surroundings of a scenario and passes through the day before it.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn new(scenario: &Scenario) -> Result<Self, BuildError> {
        Self::under(scenario, None, Observed::default())
    }

    /// Makes a scenario ready for a day of which something was seen, under the sun of this one where place, days and sky are the
    /// same.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn on_day(&self, scenario: &Scenario, observed: Observed) -> Result<Self, BuildError> {
        Self::under(scenario, self.shared_sun(scenario), observed)
    }

    fn shared_sun(&self, scenario: &Scenario) -> Option<Rc<[Sunlight]>> {
        same_sun(&self.document, scenario.document()).then(|| self.environment.sunlight())
    }

    /// Makes another scenario ready anew, but under the sun of this one where place, days and sky are the same.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn beside(&self, scenario: &Scenario) -> Result<Self, BuildError> {
        Self::under(scenario, self.shared_sun(scenario), self.observed.clone())
    }

    fn under(
        scenario: &Scenario,
        sunlight: Option<Rc<[Sunlight]>>,
        observed: Observed,
    ) -> Result<Self, BuildError> {
        let document = scenario.document().clone();
        let body = body(&document)?;
        let environment = Environment::new(&document, &body, sunlight, &observed)?;
        let settled = Settled::new(&document, &body, &environment)?;
        let panel_shade = PanelShade::of(&document, &environment).map(Rc::new);
        Ok(Self {
            document,
            panel_shade,
            body: Rc::new(body),
            environment: Rc::new(environment),
            settled: Rc::new(settled),
            failure: None,
            observed,
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
            return Self::under(scenario, None, self.observed.clone());
        }
        let mut other = self.clone();
        other.document = scenario.document().clone();
        other.shade_panels();
        Ok(other)
    }

    /// The same in which a part fails.
    #[must_use]
    pub fn failing(&self, failure: Failure) -> Self {
        let mut other = self.clone();
        other.failure = Some(failure);
        other
    }

    /// The same without any cooler, sharing all of it.
    #[must_use]
    pub fn without_cooler(&self) -> Self {
        let mut other = self.clone();
        other.document.cooler.installed = false;
        other.shade_panels();
        other
    }

    /// Works the shade of the panels out anew, where they are those of the plan.
    fn shade_panels(&mut self) {
        self.panel_shade = PanelShade::of(&self.document, &self.environment).map(Rc::new);
    }

    /// Runs the scenario in steps of [`STEP_S`].
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn run(&self) -> Result<Results, BuildError> {
        self.run_in_steps(FULL_STEPS_PER_MINUTE)
    }

    /// Runs the scenario with a number of steps in each minute, from one up; none counts as one.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn run_in_steps(&self, steps_per_minute: u32) -> Result<Results, BuildError> {
        self.passed(steps_per_minute, Detail::Everything)
    }

    /// Runs the scenario and keeps only what a verdict needs, a tenth faster: of the series time, cabin, felt temperature,
    /// humidity, charge, share of full output and stops, of the totals what the cooler drew and how long it ran. They are the same
    /// numbers as those of [`Prepared::run_in_steps`]; everything else is empty or zero, the balances too.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn run_for_verdict(&self, steps_per_minute: u32) -> Result<Results, BuildError> {
        self.passed(steps_per_minute, Detail::Verdict)
    }

    fn passed(&self, steps_per_minute: u32, detail: Detail) -> Result<Results, BuildError> {
        let mut settled = Settled::clone(&self.settled);
        settled.cabin.warm_by(self.observed.starts_warmer_k);
        let (body, environment) = (&self.body, &self.environment);
        let mut run = Run::new(&self.document, body, environment, settled, detail)?;
        run.failure = self.failure;
        run.panel_shade = self.panel_shade.as_deref();
        run.cooling.drive_by(self.observed.cooler_w.clone());
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    #[test]
    fn under_a_shared_sun_the_run_is_the_same() {
        let prepared = Prepared::new(&Scenario::new(example()).unwrap()).unwrap();
        let mut document = example();
        (document.day.high_c, document.shell.leakage_area_m2) = (38.0, 0.002);
        let warmer = Scenario::new(document.clone()).unwrap();
        assert_eq!(prepared.beside(&warmer).unwrap().run(), simulate(&warmer));
        (document.day.cloud_fraction, document.place.latitude_deg) = (0.4, 45.0);
        let elsewhere = Scenario::new(document).unwrap();
        assert_eq!(
            prepared.beside(&elsewhere).unwrap().run(),
            simulate(&elsewhere)
        );
    }

    #[test]
    fn a_run_for_a_verdict_gives_the_same_numbers() {
        let mut document = example();
        document.day.high_c = 40.0;
        document.battery.capacity_ah = 150.0;
        let prepared = Prepared::new(&Scenario::new(document).unwrap()).unwrap();
        for steps_per_minute in [1, FULL_STEPS_PER_MINUTE] {
            let whole = prepared.run_in_steps(steps_per_minute).unwrap();
            let lean = prepared.run_for_verdict(steps_per_minute).unwrap();
            let (one, other) = (&whole.series, &lean.series);
            assert!(whole.first_stop.is_some());
            assert_eq!(one.time_h, other.time_h);
            assert_eq!(one.felt_c, other.felt_c);
            assert_eq!(one.cabin_c, other.cabin_c);
            assert_eq!(one.relative_humidity, other.relative_humidity);
            assert_eq!(one.state_of_charge, other.state_of_charge);
            assert_eq!(one.cooler_share, other.cooler_share);
            assert_eq!(one.stopped, other.stopped);
            assert_eq!(whole.totals.cooler_wh, lean.totals.cooler_wh);
            assert_eq!(whole.totals.compressor_h, lean.totals.compressor_h);
            assert_eq!(whole.first_stop, lean.first_stop);
            assert_eq!(whole.emptied_at_h, lean.emptied_at_h);
            assert_eq!(whole.below_reserve_at_h, lean.below_reserve_at_h);
        }
    }
}
