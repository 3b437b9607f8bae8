//! The time loop.
//!
//! Surroundings, coefficients of the network and the coil are refreshed once an interval; every step in between moves
//! thermostat, bank and network (`steps`; a bank at rest takes an interval in one). An interval is five minutes while the cabin is quiet and one minute while it changes fast. It
//! reaches over no hour at which something switches, and ends at once when the air has left the temperature for which
//! convection was worked out, or the compressor starts, stops or leaves the speed for which its coil was worked out. None of
//! this depends on the step, so that a shorter step changes little. The day before the run is passed through in steps of five
//! minutes, cooler off, to give the shell its history.

use super::body::Body;
use super::build::BuildError;
use super::cooling::Cooling;
use super::environment::Environment;
use super::failure::Failure;
use super::inside::Inside;
use super::interval::Interval;
use super::power::Power;
use super::prepared::Settled;
use super::recorder::{Detail, Recorder, SampleState};
use super::results::{Balance, Results};
use super::roof::PanelShade;
use super::steps::Passed;
use super::timetable::{LEAST_STEP_S, Timetable};
use super::ventilation::Ventilation;
use crate::air;
use crate::cabin::{Cabin, Extraction, Part};
use crate::quantity::{Bounded, SECONDS_PER_DAY, SECONDS_PER_HOUR};
use crate::scenario::ScenarioDocument;
use crate::schedule::HourWindow;

/// Time between samples, and longest time between refreshed coefficients, s.
const SAMPLE_S: f64 = 300.0;

/// Time between refreshed coefficients while the cabin changes fast, s.
pub(super) const SHORT_INTERVAL_S: f64 = 60.0;

/// Change of the cabin in a sample's time from which it counts as changing fast, K: convection goes with the cube root of some
/// kelvins, so that half of one changes it by a few hundredths.
const FAST_CHANGE_K: f64 = 0.5;

/// Electric throughput below which a residual is not taken relative to it, Wh.
const LEAST_THROUGHPUT_WH: f64 = 1e-3;

/// Step of the day before the run, s.
const SETTLING_STEP_S: f64 = 300.0;

pub(super) struct Run<'a> {
    pub(super) document: &'a ScenarioDocument,
    pub(super) body: &'a Body,
    pub(super) environment: &'a Environment,
    pub(super) cabin: Cabin,
    pub(super) inside: Inside,
    pub(super) ventilation: Ventilation,
    pub(super) power: Power,
    pub(super) cooling: Cooling,
    pub(super) covers: Option<HourWindow>,
    pub(super) covered: bool,
    pub(super) driving: Option<HourWindow>,
    pub(super) failure: Option<Failure>,
    pub(super) panel_shade: Option<&'a PanelShade>,
    timetable: Timetable,
    pub(super) recorder: Recorder,
    pub(super) results: Results,
    quiet: bool,
    /// Temperature to feed to the thermostat where an interval was cut for it, °C.
    pub(super) switch_c: Option<f64>,
    pub(super) bank_current_a: f64,
    stored_wh_at_start: f64,
}

impl<'a> Run<'a> {
    /// A run that begins with the cabin as `settled` says, and of which so much is kept.
    pub(super) fn new(
        document: &'a ScenarioDocument,
        body: &'a Body,
        environment: &'a Environment,
        settled: Settled,
        detail: Detail,
    ) -> Result<Self, BuildError> {
        let elements = settled.cabin.elements();
        let parts: Vec<Part> = elements.iter().map(|element| element.part).collect();
        let samples = (document.day.days * SECONDS_PER_DAY / SAMPLE_S) as usize + 1;
        let (glass, charging) = (&document.glass, &document.charging);
        let power = Power::new(document)?;
        Ok(Self {
            document,
            body,
            environment,
            cabin: settled.cabin,
            inside: Inside::new(document)?,
            ventilation: settled.ventilation,
            cooling: Cooling::new(document)?,
            covers: window_if(
                glass.covers_fitted,
                glass.covers_from_hour,
                glass.covers_until_hour,
            )?,
            covered: settled.covered,
            driving: window_if(
                charging.drives,
                charging.drive_from_hour,
                charging.drive_until_hour,
            )?,
            failure: None,
            panel_shade: None,
            timetable: Timetable::new(document),
            recorder: Recorder::new(parts, samples, detail),
            results: Results::default(),
            quiet: false,
            switch_c: None,
            bank_current_a: 0.0,
            stored_wh_at_start: power.stored_wh(),
            power,
        })
    }

    /// What the day before left, once it is over.
    pub(super) fn into_settled(self) -> Settled {
        Settled {
            cabin: self.cabin,
            ventilation: self.ventilation,
            covered: self.covered,
        }
    }

    fn start_s(&self) -> f64 {
        self.document.day.start_hour * SECONDS_PER_HOUR
    }

    /// Passes through the day before, cooler off.
    pub(super) fn settle(&mut self) {
        let steps = (SECONDS_PER_DAY / SETTLING_STEP_S) as usize;
        for index in 0..steps {
            let clock_s = self.start_s() - SECONDS_PER_DAY + SETTLING_STEP_S * index as f64;
            let interval = self.open(clock_s, SETTLING_STEP_S, SETTLING_STEP_S, false);
            let appliances_w = interval.loads_w;
            let gains = interval.gains.with_appliances(appliances_w);
            self.cabin.step(&gains, &Extraction::NONE);
            self.cabin.close_interval();
        }
    }

    /// Passes through the run.
    pub(super) fn pass(&mut self, steps_per_minute: u32) {
        let samples = (self.document.day.days * SECONDS_PER_DAY / SAMPLE_S) as usize;
        let step_s = SHORT_INTERVAL_S / f64::from(steps_per_minute);
        let first = self.sample_state(self.start_s());
        self.recorder.first(&first);
        let mut edge_s = self.timetable.next_after_s(self.start_s());
        for index in 0..samples {
            let sample_s = self.start_s() + SAMPLE_S * index as f64;
            let mut done_s = 0.0;
            while done_s < SAMPLE_S - LEAST_STEP_S {
                let clock_s = sample_s + done_s;
                if edge_s - clock_s <= LEAST_STEP_S {
                    edge_s = self.timetable.next_after_s(clock_s);
                    self.quiet = false;
                }
                let longest_s = if self.quiet {
                    SAMPLE_S
                } else {
                    SHORT_INTERVAL_S
                };
                let planned_s = longest_s
                    .at_most(SAMPLE_S - done_s)
                    .at_most(edge_s - clock_s);
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
            interval.outdoor_c,
        );
        self.power.set_bank_temperature(self.bank_c());
        let began_c = self.cabin.air_c();
        let passed = self
            .rest(&interval, clock_s, step_s, planned_s)
            .unwrap_or_else(|| self.control(&interval, clock_s, step_s, planned_s));
        let passed_s = passed.span_s;
        let change_k = (self.cabin.air_c() - began_c).abs() * SAMPLE_S / passed_s;
        self.quiet = change_k < FAST_CHANGE_K && passed_s >= planned_s - LEAST_STEP_S;
        self.close(&interval, &passed);
        passed_s
    }

    /// Books an interval.
    fn close(&mut self, interval: &Interval, passed: &Passed) {
        let Passed {
            span_s,
            appliances_j,
        } = *passed;
        if !self.recorder.books_heat() {
            self.recorder.pass(span_s);
            return;
        }
        let ledger = self.cabin.close_interval();
        let latent_j_kg = air::latent_heat_vaporisation_j_per_kg(self.cabin.air_c());
        self.recorder
            .interval(span_s, &interval.gains, appliances_j, &ledger, latent_j_kg);
    }

    fn sample_state(&self, clock_s: f64) -> SampleState {
        let outdoors = self.environment.seen_at(clock_s);
        SampleState {
            clock_s,
            outdoor_c: outdoors.outdoor_c,
            cabin_c: self.cabin.air_c(),
            radiant_c: self.cabin.radiant_c(),
            relative_humidity: air::relative_humidity_from_humidity_ratio(
                self.cabin.air_c(),
                self.cabin.humidity_ratio(),
                self.body.description.pressure_pa,
            ),
            sun_w_m2: outdoors.horizontal_sun_w_m2,
            sun_direction: outdoors.sun_direction,
            state_of_charge: self.power.state_of_charge(),
            stored_wh: self.power.stored_wh(),
            bank_voltage_v: self.power.voltage_v(),
            bank_current_a: self.bank_current_a,
            stopped: self.cooling.stopped(),
        }
    }

    /// What the run leaves.
    pub(super) fn results(self) -> Results {
        let (ledger, totals) = (&self.recorder.ledger, &self.recorder.totals);
        let electric_in_wh = totals.panels_wh + totals.driving_wh + totals.shore_wh;
        let electric_out_wh = totals.cooler_wh + totals.loads_wh + totals.bank_loss_wh;
        let stored_wh = self.power.stored_wh() - self.stored_wh_at_start;
        let electric_wh = electric_in_wh - electric_out_wh - stored_wh;
        let heat = ledger
            .heat_residual()
            .abs()
            .at_least(ledger.inside_residual().abs());
        Results {
            balance: Balance {
                heat_residual: heat,
                moisture_residual: ledger.moisture_residual().abs(),
                electric_residual: electric_wh.abs()
                    / (electric_in_wh + electric_out_wh).at_least(LEAST_THROUGHPUT_WH),
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
