//! How sure: the uncertain inputs sampled together, many days run, bands and chances read off.
//!
//! Inputs ([`Uncertain`]) are taken as independent. They are drawn by a low-discrepancy sequence with a seeded shift, so that a seed
//! gives the same answer everywhere. Each draw is run with and without a cooler, in coarse steps: what they are worth is a
//! hundredth of a kelvin, the bands are some kelvins wide.
//!
//! *Limits.* The bands show how far the stated inputs may be off, not what the model leaves out. Wind, cloud and how people live are
//! as the scenario says.

mod distribution;
mod inputs;
mod sequence;
mod statistics;

pub use distribution::Distribution;
pub use inputs::Uncertain;

use super::judge::judge;
use super::trial::COARSE_STEPS_PER_MINUTE;
use super::verdict::Verdict;
use crate::quantity::sort_few;
use crate::scenario::{Scenario, ScenarioDocument};
use crate::simulation::{BuildError, Prepared};
use sequence::{MOST_DIMENSIONS, Sequence};
use serde::{Deserialize, Serialize};
use statistics::{explained_share, mean_and_deviation, quantile};

/// Draws after which the answer is firm: chances are then known to about two hundredths.
pub const ENOUGH_SAMPLES: usize = 400;

/// Probabilities of the bands' lines.
pub const BAND_PROBABILITIES: [f64; 3] = [0.1, 0.5, 0.9];

/// Lines below which a tenth, a half and nine tenths of the draws lie, each with a value for every sample of the series.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Band {
    /// One draw in ten is lower.
    pub low: Vec<f64>,
    /// Half of the draws are lower.
    pub middle: Vec<f64>,
    /// Nine draws in ten are lower.
    pub high: Vec<f64>,
}

/// How likely a window of the need is met.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct WindowChance {
    /// Index of the window in the scenario.
    pub slot: usize,
    /// It begins, clock hours since midnight of the first day.
    pub from_h: f64,
    /// Share of draws in which it is met.
    pub met: f64,
    /// Share of draws in which it is met without any cooler.
    pub met_without_cooler: f64,
}

/// How much of the spread of the outcome one input explains, shares of its variance.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Influence {
    /// The input.
    pub input: Uncertain,
    /// Of the greatest excess over a limit.
    pub of_excess: f64,
    /// Of the lowest charge.
    pub of_lowest_charge: f64,
}

/// What sampling gives.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Sampled {
    /// Draws run.
    pub samples: usize,
    /// Clock hours since midnight of the first day, of the bands' values.
    pub time_h: Vec<f64>,
    /// Felt temperature, °C.
    pub felt_c: Band,
    /// Felt temperature without any cooler, °C.
    pub felt_without_cooler_c: Band,
    /// Charge of the bank, share.
    pub state_of_charge: Band,
    /// Every window on every day, in the order in which they begin.
    pub windows: Vec<WindowChance>,
    /// Share of draws in which all windows are met and the reserve is kept; none where no window is in use.
    pub all_met: Option<f64>,
    /// Every input, the one that explains most of the excess first, or of the lowest charge where nothing is asked.
    pub influences: Vec<Influence>,
    /// Standard deviation of the greatest excess over a limit, K.
    pub excess_deviation_k: f64,
    /// Standard deviation of the lowest charge, share.
    pub lowest_charge_deviation: f64,
}

/// One draw, run.
#[derive(Clone, Debug)]
struct Draw {
    probabilities: [f64; MOST_DIMENSIONS],
    felt_c: Vec<f64>,
    felt_without_cooler_c: Vec<f64>,
    state_of_charge: Vec<f64>,
    met: Vec<(bool, bool)>,
    kept: bool,
    excess_k: f64,
    lowest_charge: f64,
}

/// Samples a scenario a few draws at a time, so that it can be watched and given up.
#[derive(Clone, Debug)]
pub struct Sampler {
    document: ScenarioDocument,
    sequence: Sequence,
    time_h: Vec<f64>,
    windows: Vec<(usize, f64)>,
    draws: Vec<Draw>,
    /// The first draw made ready, whose sun the others share.
    first: Option<Prepared>,
}

impl Sampler {
    /// A sampler of a scenario; the same seed gives the same draws.
    #[must_use]
    pub fn new(scenario: &Scenario, seed: u64) -> Self {
        Self {
            document: scenario.document().clone(),
            sequence: Sequence::shifted(seed),
            time_h: Vec::new(),
            windows: Vec::new(),
            draws: Vec::new(),
            first: None,
        }
    }

    /// Draws and runs a number of times more; gives how many draws have been run in all.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn step(&mut self, draws: usize) -> Result<usize, BuildError> {
        for _ in 0..draws {
            let probabilities = self.sequence.next_point();
            let mut document = self.document.clone();
            for (input, probability) in Uncertain::ALL.into_iter().zip(probabilities) {
                let (distribution, _) = input.spread();
                input.apply(&mut document, distribution.quantile(probability));
            }
            // Every draw is held within the ranges of the fields; one at odds with itself for another reason is left out.
            if let Ok(scenario) = Scenario::new(document) {
                self.run(&scenario, probabilities)?;
            }
        }
        Ok(self.draws.len())
    }

    fn run(
        &mut self,
        scenario: &Scenario,
        probabilities: [f64; MOST_DIMENSIONS],
    ) -> Result<(), BuildError> {
        let document = scenario.document();
        let prepared = match &self.first {
            Some(first) => first.beside(scenario)?,
            None => self.first.insert(Prepared::new(scenario)?).clone(),
        };
        let with = prepared.run_for_verdict(COARSE_STEPS_PER_MINUTE)?;
        let without = if document.cooler.installed {
            prepared
                .without_cooler()
                .run_for_verdict(COARSE_STEPS_PER_MINUTE)?
        } else {
            with.clone()
        };
        let verdict = judge(document, &with, &without);
        let windows = &verdict.windows;
        if self.draws.is_empty() {
            self.time_h = with.series.time_h;
            self.windows = windows
                .iter()
                .map(|window| (window.slot, window.from_h))
                .collect();
        }
        self.draws.push(Draw {
            probabilities,
            felt_c: with.series.felt_c,
            felt_without_cooler_c: without.series.felt_c,
            state_of_charge: with.series.state_of_charge,
            met: windows
                .iter()
                .map(|window| (window.met, window.missed_without_cooler_h == 0.0))
                .collect(),
            kept: verdict.windows_met() && with.below_reserve_at_h.is_none(),
            excess_k: greatest_excess_k(&verdict),
            lowest_charge: verdict.bank.lowest_state_of_charge,
        });
        Ok(())
    }

    /// What the draws so far give; empty before the first.
    #[must_use]
    pub fn result(&self) -> Sampled {
        if self.draws.is_empty() {
            return Sampled::default();
        }
        let excess_k: Vec<f64> = self.draws.iter().map(|draw| draw.excess_k).collect();
        let charge: Vec<f64> = self.draws.iter().map(|draw| draw.lowest_charge).collect();
        let asked = !self.windows.is_empty();
        Sampled {
            samples: self.draws.len(),
            time_h: self.time_h.clone(),
            felt_c: self.band(|draw| &draw.felt_c),
            felt_without_cooler_c: self.band(|draw| &draw.felt_without_cooler_c),
            state_of_charge: self.band(|draw| &draw.state_of_charge),
            windows: self.chances(),
            all_met: asked.then(|| self.share(|draw| draw.kept)),
            influences: self.influences(&excess_k, &charge),
            excess_deviation_k: mean_and_deviation(&excess_k).1,
            lowest_charge_deviation: mean_and_deviation(&charge).1,
        }
    }

    fn share(&self, holds: impl Fn(&Draw) -> bool) -> f64 {
        let count = self.draws.iter().filter(|draw| holds(draw)).count();
        count as f64 / self.draws.len() as f64
    }

    fn chances(&self) -> Vec<WindowChance> {
        let windows = self.windows.iter().enumerate();
        windows
            .map(|(index, (slot, from_h))| WindowChance {
                slot: *slot,
                from_h: *from_h,
                met: self.share(|draw| draw.met[index].0),
                met_without_cooler: self.share(|draw| draw.met[index].1),
            })
            .collect()
    }

    fn band(&self, series: fn(&Draw) -> &Vec<f64>) -> Band {
        let mut column = vec![0.0; self.draws.len()];
        let mut lines = [(); 3].map(|()| Vec::with_capacity(self.time_h.len()));
        for sample in 0..self.time_h.len() {
            for (value, draw) in column.iter_mut().zip(&self.draws) {
                *value = series(draw)[sample];
            }
            for (line, probability) in lines.iter_mut().zip(BAND_PROBABILITIES) {
                line.push(quantile(&mut column, probability));
            }
        }
        let [low, middle, high] = lines;
        Band { low, middle, high }
    }

    fn influences(&self, excess_k: &[f64], charge: &[f64]) -> Vec<Influence> {
        let mut influences: Vec<Influence> = Uncertain::ALL
            .into_iter()
            .enumerate()
            .map(|(dimension, input)| {
                let drawn: Vec<f64> = self
                    .draws
                    .iter()
                    .map(|draw| draw.probabilities[dimension])
                    .collect();
                Influence {
                    input,
                    of_excess: explained_share(&drawn, excess_k),
                    of_lowest_charge: explained_share(&drawn, charge),
                }
            })
            .collect();
        sort_few(&mut influences, |one, other| {
            let by_excess = one.of_excess.total_cmp(&other.of_excess);
            by_excess
                .then(one.of_lowest_charge.total_cmp(&other.of_lowest_charge))
                .is_lt()
        });
        influences
    }
}

/// How far the worst window is above its limit, K, negative below it; zero where nothing is asked.
fn greatest_excess_k(verdict: &Verdict) -> f64 {
    let excess = verdict.windows.iter().map(|window| -window.margin_k());
    excess.reduce(f64::max).unwrap_or(0.0)
}

#[cfg(test)]
#[path = "tests.rs"]
mod tests;
