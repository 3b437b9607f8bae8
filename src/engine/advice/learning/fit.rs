//! The fit of a scenario to a log, run after run.

use super::day::{binned, cabin_c_at, clock_times, logged_day, observed, rms};
use super::learned::{Estimate, Learned, Parameter};
use super::least_squares::{Bounds, LeastSquares};
use super::log::{Log, Unsaid};
use crate::advice::trial::{COARSE_STEPS_PER_MINUTE, Trials};
use crate::advice::{LeverEffect, levers};
use crate::quantity::SECONDS_PER_HOUR;
use crate::scenario::{Scenario, ScenarioDocument};
use crate::simulation::{BuildError, Observed, Prepared};
use serde::{Deserialize, Serialize};

/// Shortest and longest log, h, and fewest points of it: less says nothing of insulation, more is not run.
const SPAN_H: (f64, f64) = (3.0, 168.0);
const POINTS_LEAST: usize = 12;

/// How far the start may lie from what the day before would have left, K.
const START_RANGE_K: f64 = 20.0;

/// Root mean square by which the engine's cabin differs from an independent program's on the median of the reference
/// cases, K (`tests/reference/SCOREBOARD.md`).
pub const MODEL_RMS_K: f64 = 0.09;

/// Part of its range within which a quantity counts as known.
const KNOWN_RANGE_SHARE: f64 = 0.3;

/// Correlation of two errors from which the two causes count as not told apart.
const CONFOUNDED_FROM: f64 = 0.9;

/// What is taken of the logged day.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Assumed {
    /// What the log does not say itself.
    pub unsaid: Unsaid,
    /// People, animals and cooking were in it as the scenario says; otherwise nobody was.
    pub occupied: bool,
    /// The cooler ran as the scenario says, where the log has no current; otherwise it was off.
    pub cooled: bool,
}

impl Assumed {
    /// Until somebody says otherwise: an empty vehicle, its cooler off.
    pub const USUAL: Self = Self {
        unsaid: Unsaid::USUAL,
        occupied: false,
        cooled: false,
    };
}

/// Why a log cannot be fitted.
#[derive(Clone, Debug, PartialEq)]
pub enum LearningError {
    /// Shorter or longer than what can be run.
    Span {
        /// Its length, h.
        hours: f64,
        /// Least and most, h.
        allowed_h: (f64, f64),
    },
    /// Too few points that lie far enough apart.
    TooFew {
        /// How many.
        points: usize,
        /// Fewest.
        least: usize,
    },
    /// The scenario cannot be run on the log's day.
    Refused,
}

impl From<BuildError> for LearningError {
    fn from(_: BuildError) -> Self {
        Self::Refused
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Stage {
    Entered,
    Search,
    Alone(usize),
    Mend,
    Over,
}

/// A fit in the making.
#[derive(Debug)]
pub struct Learning {
    entered: ScenarioDocument,
    day: ScenarioDocument,
    observed: Observed,
    time_h: Vec<f64>,
    logged_c: Vec<f64>,
    search: LeastSquares,
    ready: Option<Prepared>,
    entered_c: Vec<f64>,
    effects_k: [f64; 3],
    unmet_k_h: [f64; 2],
    levers: Vec<LeverEffect>,
    stage: Stage,
}

impl Learning {
    /// Begins a fit of a scenario to a log.
    ///
    /// # Errors
    /// [`LearningError`] if the log is too short, too long or too thin, or the scenario cannot be run on its day.
    pub fn new(scenario: &Scenario, log: &Log, assumed: &Assumed) -> Result<Self, LearningError> {
        let entered = scenario.document().clone();
        let clock_s = clock_times(&entered, log);
        let (time_h, logged_c) = binned(log, &clock_s);
        let hours = match (time_h.first(), time_h.last()) {
            (Some(first), Some(last)) => last - first,
            _ => 0.0,
        };
        if !(SPAN_H.0..=SPAN_H.1).contains(&hours) {
            return Err(LearningError::Span {
                hours,
                allowed_h: SPAN_H,
            });
        }
        if time_h.len() < POINTS_LEAST {
            return Err(LearningError::TooFew {
                points: time_h.len(),
                least: POINTS_LEAST,
            });
        }
        let day = logged_day(
            &entered,
            log,
            assumed,
            (clock_s[0] / SECONDS_PER_HOUR, hours),
        );
        Scenario::new(day.clone()).map_err(|_| LearningError::Refused)?;
        let mut bounds = Parameter::ALL.map(Parameter::bounds).to_vec();
        bounds.push(Bounds {
            least: -START_RANGE_K,
            greatest: START_RANGE_K,
            by_logarithm: false,
        });
        let mut start = Parameter::ALL
            .map(|parameter| *parameter.place(&mut day.clone()))
            .to_vec();
        start.push(0.0);
        Ok(Self {
            observed: observed(&day, log, &clock_s),
            search: LeastSquares::new(bounds, &start, logged_c.clone(), MODEL_RMS_K),
            entered,
            day,
            time_h,
            logged_c,
            ready: None,
            entered_c: Vec::new(),
            effects_k: [0.0; 3],
            unmet_k_h: [0.0; 2],
            levers: Vec::new(),
            stage: Stage::Entered,
        })
    }

    /// Share of the work that is done, 0…1.
    #[must_use]
    pub fn progress(&self) -> f64 {
        const SEARCH_SHARE: f64 = 0.8;
        match self.stage {
            Stage::Entered => 0.0,
            Stage::Search => SEARCH_SHARE * self.search.progress(),
            Stage::Alone(index) => SEARCH_SHARE + 0.03 * index as f64,
            Stage::Mend => 0.9,
            Stage::Over => 1.0,
        }
    }

    /// Does a run or so more; gives whether all is done.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn step(&mut self) -> Result<bool, BuildError> {
        match self.stage {
            Stage::Entered => {
                self.entered_c = self.run(&self.day.clone(), 0.0)?;
                self.stage = Stage::Search;
            }
            Stage::Search => match self.search.wanted() {
                Some(values) => {
                    let mut day = self.day.clone();
                    for (parameter, value) in Parameter::ALL.iter().zip(&values) {
                        *parameter.place(&mut day) = *value;
                    }
                    let modelled = self.run(&day, values[3])?;
                    self.search.give(modelled);
                }
                None => self.stage = Stage::Alone(0),
            },
            Stage::Alone(index) => {
                self.run_alone(index)?;
                self.stage = if index + 1 < Parameter::ALL.len() {
                    Stage::Alone(index + 1)
                } else {
                    Stage::Mend
                };
            }
            Stage::Mend => {
                self.mend()?;
                self.stage = Stage::Over;
            }
            Stage::Over => {}
        }
        Ok(self.stage == Stage::Over)
    }

    /// The log's day with one quantity as fitted and the others as entered.
    fn run_alone(&mut self, index: usize) -> Result<(), BuildError> {
        let values = self.search.fitted().quantities;
        let mut day = self.day.clone();
        *Parameter::ALL[index].place(&mut day) = values[index].value;
        let alone_c = self.run(&day, 0.0)?;
        let sum: f64 = alone_c
            .iter()
            .zip(&self.entered_c)
            .map(|(alone_c, entered_c)| alone_c - entered_c)
            .sum();
        self.effects_k[index] = sum / alone_c.len() as f64;
        Ok(())
    }

    /// What the fitted scenario would need on its own day.
    fn mend(&mut self) -> Result<(), BuildError> {
        let mut fitted = self.entered.clone();
        for (parameter, found) in Parameter::ALL.iter().zip(self.search.fitted().quantities) {
            *parameter.place(&mut fitted) = found.value;
        }
        let mut trials = Trials::coarse();
        for (unmet, document) in self.unmet_k_h.iter_mut().zip([&self.entered, &fitted]) {
            if let Ok(scenario) = Scenario::new(document.clone()) {
                *unmet = trials.outcome(&scenario)?.degree_hours_k_h;
            }
        }
        if let Ok(scenario) = Scenario::new(fitted) {
            self.levers = levers(&scenario)?;
        }
        Ok(())
    }

    /// Cabin air of the log's day at the log's times, °C.
    fn run(&mut self, day: &ScenarioDocument, warmer_k: f64) -> Result<Vec<f64>, BuildError> {
        let Ok(scenario) = Scenario::new(day.clone()) else {
            // Quantities stay within the ranges of their inputs, so that this is never reached.
            return Ok(self.logged_c.clone());
        };
        let observed = Observed {
            starts_warmer_k: warmer_k,
            ..self.observed.clone()
        };
        let prepared = match &self.ready {
            Some(ready) => ready.on_day(&scenario, observed)?,
            None => Prepared::new(&scenario)?.on_day(&scenario, observed)?,
        };
        let run = prepared.run_for_verdict(COARSE_STEPS_PER_MINUTE)?;
        self.ready = Some(prepared);
        Ok(self
            .time_h
            .iter()
            .map(|time_h| cabin_c_at(&run, *time_h))
            .collect())
    }

    /// What was found, once all is done.
    #[must_use]
    pub fn result(&self) -> Learned {
        let fitted = self.search.fitted();
        let estimate = |index: usize| {
            let (parameter, found) = (Parameter::ALL[index], &fitted.quantities[index]);
            Estimate {
                parameter,
                entered: *parameter.place(&mut self.entered.clone()),
                value: found.value,
                least: found.least,
                greatest: found.greatest,
                is_known: found.range_share < KNOWN_RANGE_SHARE,
                effect_k: self.effects_k[index],
            }
        };
        let pairs = [(0, 1), (0, 2), (1, 2)];
        Learned {
            estimates: [estimate(0), estimate(1), estimate(2)],
            confounded: pairs
                .iter()
                .filter(|(one, other)| fitted.correlation[*one][*other].abs() >= CONFOUNDED_FROM)
                .map(|(one, other)| (Parameter::ALL[*one], Parameter::ALL[*other]))
                .collect(),
            started_warmer_k: fitted.quantities[3].value,
            rms_entered_k: rms(&self.logged_c, &self.entered_c),
            rms_k: fitted.rms,
            effective: fitted.effective,
            time_h: self.time_h.clone(),
            logged_c: self.logged_c.clone(),
            entered_c: self.entered_c.clone(),
            fitted_c: fitted.modelled,
            unmet_k_h: self.unmet_k_h,
            levers: self.levers.clone(),
        }
    }
}
