//! What a run leaves behind: samples every five minutes, sums over all of it.

use super::inside::InsideGains;
use super::power::PowerStep;
use super::results::{HeatPath, Series, Stop, Totals};
use crate::cabin::{Ledger, Part};
use crate::comfort::operative_temperature_c;
use crate::quantity::{Bounded, SECONDS_PER_HOUR};

/// Air speed at which felt temperature is reckoned, m/s: still indoor air, ISO 7726.
pub(crate) const FELT_AIR_SPEED_M_S: f64 = 0.1;

/// Energy by electric way since the last sample, J, and heat by source, J.
#[derive(Clone, Copy, Debug, Default)]
struct Meters {
    cooler_j: f64,
    loads_j: f64,
    panels_j: f64,
    driving_j: f64,
    shore_j: f64,
    bank_j: f64,
    charged_c: f64,
    discharged_c: f64,
    cooler_share_s: f64,
    running_s: f64,
    people_j: f64,
    animals_j: f64,
    cooking_j: f64,
    appliances_j: f64,
    latent_kg: f64,
}

/// The state at a sample's time.
#[derive(Clone, Copy, Debug)]
pub(super) struct SampleState {
    pub(super) clock_s: f64,
    pub(super) outdoor_c: f64,
    pub(super) cabin_c: f64,
    pub(super) radiant_c: f64,
    pub(super) relative_humidity: f64,
    pub(super) sun_w_m2: f64,
    pub(super) sun_direction: [f64; 3],
    pub(super) state_of_charge: f64,
    pub(super) stored_wh: f64,
    pub(super) bank_voltage_v: f64,
    pub(super) bank_current_a: f64,
    pub(super) stopped: Option<Stop>,
}

/// How much of a run is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Detail {
    /// Every series, every sum and both balances.
    Everything,
    /// What a verdict needs: the state inside, the charge, how the cooler ran and what it drew. Nothing else is booked.
    Verdict,
}

/// Collects a run.
#[derive(Clone, Debug)]
pub(super) struct Recorder {
    detail: Detail,
    parts: Vec<Part>,
    now: Meters,
    span_s: f64,
    /// Energy in the bank at the last sample, Wh.
    stored_wh: f64,
    pub(super) series: Series,
    pub(super) totals: Totals,
    pub(super) ledger: Ledger,
    sample_ledger: Ledger,
}

impl Recorder {
    pub(super) fn new(parts: Vec<Part>, samples: usize, detail: Detail) -> Self {
        Self {
            detail,
            parts,
            now: Meters::default(),
            span_s: 0.0,
            stored_wh: 0.0,
            series: match detail {
                Detail::Everything => Series::with_capacity(samples),
                Detail::Verdict => Series::default(),
            },
            totals: Totals::default(),
            ledger: Ledger::default(),
            sample_ledger: Ledger::default(),
        }
    }

    /// Books the electric side of a step and the share of full output that the compressor gave in it.
    pub(super) fn step(&mut self, step_s: f64, power: &PowerStep, cooler_share: f64) {
        let now = &mut self.now;
        now.cooler_j += power.cooler_w * step_s;
        now.loads_j += power.loads_w * step_s;
        now.panels_j += power.panels_w * step_s;
        now.driving_j += power.driving_w * step_s;
        now.shore_j += power.shore_w * step_s;
        now.bank_j += power.bank_w * step_s;
        now.charged_c += power.current_a.at_least(0.0) * step_s;
        now.discharged_c -= power.current_a.at_most(0.0) * step_s;
        now.cooler_share_s += cooler_share * step_s;
        if cooler_share > 0.0 {
            now.running_s += step_s;
        }
    }

    /// Whether heat and water are booked by their ways.
    pub(super) fn books_heat(&self) -> bool {
        self.detail == Detail::Everything
    }

    /// Lets time pass of which nothing is booked.
    pub(super) fn pass(&mut self, span_s: f64) {
        self.span_s += span_s;
    }

    /// Books the heat of an interval by source.
    pub(super) fn interval(
        &mut self,
        span_s: f64,
        gains: &InsideGains,
        appliances_j: f64,
        ledger: &Ledger,
        latent_j_kg: f64,
    ) {
        self.span_s += span_s;
        self.now.people_j += gains.people_w * span_s;
        self.now.animals_j += gains.animals_w * span_s;
        self.now.cooking_j += gains.cooking_w * span_s;
        self.now.appliances_j += appliances_j;
        self.now.latent_kg += ledger.coil_kg;
        self.totals.cooler_latent_wh += ledger.coil_kg * latent_j_kg / SECONDS_PER_HOUR;
        self.sample_ledger.add(ledger);
    }

    /// Takes the first sample, at the start of the run.
    pub(super) fn first(&mut self, state: &SampleState) {
        self.stored_wh = state.stored_wh;
        self.push_state(state);
        if self.books_heat() {
            self.push_flows(&[0.0; HeatPath::COUNT], 1.0);
        }
    }

    /// Takes a sample and clears the meters.
    pub(super) fn sample(&mut self, state: &SampleState) {
        if !self.books_heat() {
            self.push_state(state);
            self.totals.cooler_wh += self.now.cooler_j / SECONDS_PER_HOUR;
            self.totals.compressor_h += self.now.running_s / SECONDS_PER_HOUR;
            self.now = Meters::default();
            self.span_s = 0.0;
            return;
        }
        let heat_j = self.heat_j();
        let span_s = self.span_s.at_least(1.0);
        self.push_state(state);
        self.push_flows(&heat_j, span_s);
        self.add_totals(&heat_j, state.stored_wh - self.stored_wh);
        self.stored_wh = state.stored_wh;
        self.ledger.add(&self.sample_ledger);
        self.sample_ledger = Ledger::default();
        self.now = Meters::default();
        self.span_s = 0.0;
    }

    fn heat_j(&self) -> [f64; HeatPath::COUNT] {
        let (ledger, now) = (&self.sample_ledger, &self.now);
        let through = |part: Part| -> f64 {
            self.parts
                .iter()
                .zip(&ledger.conducted_j)
                .filter(|(lane, _)| **lane == part)
                .map(|(_, joules)| joules)
                .sum()
        };
        HeatPath::ALL.map(|path| match path {
            HeatPath::Roof => through(Part::Roof),
            HeatPath::Left => through(Part::Left),
            HeatPath::Right => through(Part::Right),
            HeatPath::Nose => through(Part::Nose),
            HeatPath::Rear => through(Part::Rear),
            HeatPath::Floor => through(Part::Floor),
            HeatPath::GlassWarmth => through(Part::Glass),
            HeatPath::GlassSun => ledger.glass_sun_j,
            HeatPath::Leakage => ledger.leakage_j,
            HeatPath::Fan => ledger.fan_j,
            HeatPath::Openings => ledger.openings_j,
            HeatPath::People => now.people_j,
            HeatPath::Animals => now.animals_j,
            HeatPath::Cooking => now.cooking_j,
            HeatPath::Appliances => now.appliances_j,
            HeatPath::Cooler => -ledger.extracted_j,
            HeatPath::Stored => {
                through(Part::Furnishing) + ledger.condensation_j - ledger.stored_inside_j
            }
        })
    }

    fn push_state(&mut self, state: &SampleState) {
        let share = self.now.cooler_share_s / self.span_s.at_least(1.0);
        let series = &mut self.series;
        series.cooler_share.push(share);
        series.time_h.push(state.clock_s / SECONDS_PER_HOUR);
        series.cabin_c.push(state.cabin_c);
        series.felt_c.push(operative_temperature_c(
            state.cabin_c,
            state.radiant_c,
            FELT_AIR_SPEED_M_S,
        ));
        series.relative_humidity.push(state.relative_humidity);
        series.state_of_charge.push(state.state_of_charge);
        series.stopped.push(state.stopped);
        if self.detail == Detail::Verdict {
            return;
        }
        series.outdoor_c.push(state.outdoor_c);
        series.radiant_c.push(state.radiant_c);
        series.sun_w_m2.push(state.sun_w_m2);
        series.sun_direction.push(state.sun_direction);
        series.bank_voltage_v.push(state.bank_voltage_v);
        series.bank_current_a.push(state.bank_current_a);
    }

    fn push_flows(&mut self, heat_j: &[f64; HeatPath::COUNT], span_s: f64) {
        let (series, now) = (&mut self.series, &self.now);
        series.cooler_w.push(now.cooler_j / span_s);
        series.loads_w.push(now.loads_j / span_s);
        series.panels_w.push(now.panels_j / span_s);
        series.driving_w.push(now.driving_j / span_s);
        series.shore_w.push(now.shore_j / span_s);
        series.heat_w.push(heat_j.map(|joules| joules / span_s));
    }

    fn add_totals(&mut self, heat_j: &[f64; HeatPath::COUNT], risen_wh: f64) {
        let (totals, now) = (&mut self.totals, &self.now);
        for (sum, joules) in totals.heat_wh.iter_mut().zip(heat_j) {
            *sum += joules / SECONDS_PER_HOUR;
        }
        totals.condensate_kg += now.latent_kg;
        totals.surface_condensation_kg += self.sample_ledger.condensed_kg;
        totals.cooler_wh += now.cooler_j / SECONDS_PER_HOUR;
        totals.loads_wh += now.loads_j / SECONDS_PER_HOUR;
        totals.panels_wh += now.panels_j / SECONDS_PER_HOUR;
        totals.driving_wh += now.driving_j / SECONDS_PER_HOUR;
        totals.shore_wh += now.shore_j / SECONDS_PER_HOUR;
        totals.bank_loss_wh += now.bank_j / SECONDS_PER_HOUR - risen_wh;
        totals.charged_ah += now.charged_c / SECONDS_PER_HOUR;
        totals.discharged_ah += now.discharged_c / SECONDS_PER_HOUR;
        totals.compressor_h += now.running_s / SECONDS_PER_HOUR;
    }
}
