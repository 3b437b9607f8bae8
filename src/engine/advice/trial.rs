//! One run of a changed scenario, boiled down to what searches compare.

use super::heat::HeatReading;
use super::judge::{HOURS_PER_DAY, judge};
use super::verdict::{Cause, Verdict, WindowVerdict};
use crate::quantity::Bounded;
use crate::scenario::{Scenario, ScenarioDocument};
use crate::simulation::{BuildError, FULL_STEPS_PER_MINUTE, Prepared, Results, Series};
use serde::{Deserialize, Serialize};

/// Charge by which the last day may end up lower than the first and still count as recovered, share: rounding of the run.
const RECOVERED_WITHIN: f64 = 0.005;

/// Cabins kept ready for further runs.
const KEPT_READY: usize = 24;

/// Steps to a minute of a coarse run: within a hundredth of a kelvin and two thousandths of charge of a full one, in half the
/// time.
pub(super) const COARSE_STEPS_PER_MINUTE: u32 = 1;

/// What one run achieves.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Outcome {
    /// Whether every window of the need is met.
    pub windows_met: bool,
    /// Hours in the windows of the need.
    pub needed_h: f64,
    /// Hours of them in which the limits are kept.
    pub met_h: f64,
    /// Excess above the limits summed over time, K h.
    pub degree_hours_k_h: f64,
    /// Least distance below the limits of felt temperature and heat index in any window, K; negative when missed. None without
    /// windows.
    pub margin_k: Option<f64>,
    /// Which limit failed first, if any did.
    pub cause: Option<Cause>,
    /// Highest heat index in any window; none without windows.
    pub worst_heat: Option<HeatReading>,
    /// Lowest charge less the reserve asked for, share.
    pub reserve_margin: f64,
    /// Lowest charge, share.
    pub lowest_state_of_charge: f64,
    /// Lowest charge of the last day less that of the first, share; zero for one day.
    pub recovery: f64,
    /// Hours until the bank is at its lowest charge; none if it lasts for weeks.
    pub lasts_h: Option<f64>,
    /// Electric energy for the cooler, Wh.
    pub cooler_wh: f64,
}

impl Outcome {
    /// Boils a verdict and its run down.
    pub(super) fn new(document: &ScenarioDocument, verdict: &Verdict, run: &Results) -> Self {
        let windows = &verdict.windows;
        let sum = |of: fn(&WindowVerdict) -> f64| windows.iter().map(of).sum::<f64>();
        let needed_h = sum(|window| window.until_h - window.from_h);
        let lowest_state_of_charge = verdict.bank.lowest_state_of_charge;
        Self {
            windows_met: verdict.windows_met(),
            needed_h,
            met_h: needed_h - sum(|window| window.missed_h),
            degree_hours_k_h: verdict.degree_hours_k_h(),
            margin_k: windows.iter().map(WindowVerdict::margin_k).reduce(f64::min),
            cause: verdict.first_missed.and_then(|index| windows[index].cause),
            worst_heat: windows
                .iter()
                .map(|window| window.worst_heat)
                .max_by(|one, other| one.heat_index_c.total_cmp(&other.heat_index_c)),
            reserve_margin: lowest_state_of_charge - document.need.reserve_state_of_charge,
            lowest_state_of_charge,
            recovery: recovery(&run.series, document.day.days),
            lasts_h: verdict.bank.lasts_h,
            cooler_wh: run.totals.cooler_wh,
        }
    }

    /// Whether the reserve is kept at every instant.
    #[must_use]
    pub fn keeps_reserve(&self) -> bool {
        self.reserve_margin >= 0.0
    }

    /// Whether the bank is no lower on the last day than on the first, to half a hundredth of its charge.
    #[must_use]
    pub fn recovers(&self) -> bool {
        self.recovery >= -RECOVERED_WITHIN
    }

    /// Charge missing below the reserve, share, zero or more.
    #[must_use]
    pub fn reserve_shortfall(&self) -> f64 {
        (-self.reserve_margin).at_least(0.0)
    }
}

/// Lowest charge of the last day less that of the first.
fn recovery(series: &Series, days: f64) -> f64 {
    let (Some(start_h), Some(end_h)) = (series.time_h.first(), series.time_h.last()) else {
        return 0.0;
    };
    if days <= 1.0 {
        return 0.0;
    }
    let lowest = |within: &dyn Fn(f64) -> bool| {
        series
            .time_h
            .iter()
            .zip(&series.state_of_charge)
            .filter(|(time_h, _)| within(**time_h))
            .map(|(_, charge)| *charge)
            .fold(1.0, f64::min)
    };
    let first = lowest(&|time_h| time_h <= start_h + HOURS_PER_DAY);
    lowest(&|time_h| time_h >= end_h - HOURS_PER_DAY) - first
}

/// Runs changed scenarios, sharing bodies and surroundings between those that have them in common.
#[derive(Debug)]
pub(super) struct Trials {
    ready: Vec<Prepared>,
    steps_per_minute: u32,
    runs: usize,
}

impl Trials {
    /// Trials in full steps.
    pub(super) fn full() -> Self {
        Self {
            ready: Vec::new(),
            steps_per_minute: FULL_STEPS_PER_MINUTE,
            runs: 0,
        }
    }

    /// Trials in coarse steps, for screening.
    pub(super) fn coarse() -> Self {
        Self {
            steps_per_minute: COARSE_STEPS_PER_MINUTE,
            ..Self::full()
        }
    }

    /// Runs made so far.
    pub(super) fn runs(&self) -> usize {
        self.runs
    }

    /// Runs and judges.
    pub(super) fn outcome(&mut self, scenario: &Scenario) -> Result<Outcome, BuildError> {
        let prepared = self.prepared(scenario)?;
        let run = prepared.run_for_verdict(self.steps_per_minute)?;
        self.runs += 1;
        let document = scenario.document();
        let verdict = judge(document, &run, &run);
        Ok(Outcome::new(document, &verdict, &run))
    }

    /// The scenario made ready, out of what is kept if that suits.
    fn prepared(&mut self, scenario: &Scenario) -> Result<Prepared, BuildError> {
        if let Some(kept) = self.ready.iter().find(|kept| kept.suits(scenario)) {
            return kept.like(scenario);
        }
        let prepared = match self.ready.last() {
            Some(kept) => kept.beside(scenario)?,
            None => Prepared::new(scenario)?,
        };
        if self.ready.len() == KEPT_READY {
            self.ready.remove(0);
        }
        self.ready.push(prepared.clone());
        Ok(prepared)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;
    use crate::simulation::simulate;

    #[test]
    fn sharing_changes_nothing() {
        let mut document = example();
        document.battery.capacity_ah = 300.0;
        document.charging.panel_power_w = 500.0;
        let other = Scenario::new(document).unwrap();
        let first = Scenario::new(example()).unwrap();
        let prepared = Prepared::new(&first).unwrap();
        assert!(prepared.suits(&other));
        assert_eq!(prepared.like(&other).unwrap().run(), simulate(&other));
    }

    #[test]
    fn hours_met_and_missed_add_up() {
        let mut document = example();
        document.cooler.installed = false;
        document.day.high_c = 40.0;
        let scenario = Scenario::new(document).unwrap();
        let outcome = Trials::full().outcome(&scenario).unwrap();
        // The example asks for two hours and for eight.
        assert!((outcome.needed_h - 10.0).abs() < 1e-9);
        assert!(outcome.met_h < outcome.needed_h && !outcome.windows_met);
        assert!(outcome.margin_k.unwrap() < 0.0 && outcome.degree_hours_k_h > 0.0);
        assert_eq!(outcome.cause, Some(Cause::NoCooler));
    }

    #[test]
    fn coarse_runs_are_close_to_full_ones() {
        let scenario = Scenario::new(example()).unwrap();
        let full = Trials::full().outcome(&scenario).unwrap();
        let coarse = Trials::coarse().outcome(&scenario).unwrap();
        assert!((full.margin_k.unwrap() - coarse.margin_k.unwrap()).abs() < 0.02);
        assert!((full.lowest_state_of_charge - coarse.lowest_state_of_charge).abs() < 0.003);
    }

    #[test]
    fn recovery_compares_the_lowest_of_first_and_last_day() {
        let series = Series {
            time_h: vec![6.0, 18.0, 30.0, 42.0, 54.0],
            state_of_charge: vec![0.9, 0.5, 0.6, 0.42, 0.5],
            ..Series::default()
        };
        assert!((recovery(&series, 2.0) + 0.08).abs() < 1e-12);
        assert_eq!(recovery(&series, 1.0), 0.0);
    }
}
