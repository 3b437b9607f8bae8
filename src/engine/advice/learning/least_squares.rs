//! Least squares over a few bounded quantities of a model that is dear to run.
//!
//! Levenberg and Marquardt's method: the step δ solves (JᵀJ + λ D) δ = Jᵀr, D being the diagonal of JᵀJ and r the measured less
//! the modelled; λ falls while the sum of squares does and rises where it does not. Each quantity is searched as the logit of its
//! place between its bounds, or of that of its logarithm, so that no bound is ever left. J is taken by differences of runs to
//! both sides. The search asks for one run at a time, so that it can be watched and given up.
//!
//! Errors of the fit: covariance s² (JᵀJ)⁻¹ with s² = Σr²/(n − p), widened by n over the effective number of residuals
//! n (1 − ρ)/(1 + ρ), with ρ the correlation of each with the next, for residuals of a run hang together and count for fewer than
//! they are.
//!
//! Sources: Marquardt 1963, SIAM J. Appl. Math. 11:431; Seber & Wild, Nonlinear Regression (1989), ch. 2 and 6; Bayley & Hammersley
//! 1946, J. R. Stat. Soc. Suppl. 8:184, for the effective number.

use super::algebra::{autocorrelation, coverage, scaled_inverse, solve};
use crate::quantity::Bounded;

/// Bounds of a quantity, least and greatest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Least value.
    pub least: f64,
    /// Greatest value, above the least.
    pub greatest: f64,
    /// Whether it is searched by its logarithm; both bounds are then above zero.
    pub by_logarithm: bool,
}

impl Bounds {
    /// Share of the way from the least to the greatest, 0…1.
    fn place(&self, value: f64) -> f64 {
        if self.by_logarithm {
            libm::log(value / self.least) / libm::log(self.greatest / self.least)
        } else {
            (value - self.least) / (self.greatest - self.least)
        }
    }

    fn value(&self, place: f64) -> f64 {
        if self.by_logarithm {
            self.least * libm::exp(place * libm::log(self.greatest / self.least))
        } else {
            self.least + place * (self.greatest - self.least)
        }
    }

    fn searched(&self, value: f64) -> f64 {
        let place = self.place(value).clamp(EDGE, 1.0 - EDGE);
        libm::log(place / (1.0 - place))
    }

    fn value_of(&self, searched: f64) -> f64 {
        self.value(1.0 / (1.0 + libm::exp(-searched)))
    }
}

/// How near to a bound a search starts at most, share: at the bound itself nothing would move it.
const EDGE: f64 = 0.02;

/// Step of the differences to either side, logits. A run decides on its intervals as it goes, which leaves steps of a hundredth of a
/// kelvin in what it gives: much smaller differences would measure those.
const DIFFERENCE: f64 = 0.2;

/// Longest step of a quantity in one go, logits.
const LONGEST_STEP: f64 = 1.5;

/// How far from the middle a search goes, logits: a hundredth of the way from a bound.
const FARTHEST: f64 = 4.6;

const DAMPING_FIRST: f64 = 1.0e-3;
const DAMPING_LEAST: f64 = 1.0e-7;
const DAMPING_GREATEST: f64 = 1.0e5;

/// Share by which the sum of squares must still fall for the search to go on, and longest search.
const FALL_LEAST: f64 = 1.0e-6;
const ROUNDS_GREATEST: usize = 40;

#[derive(Clone, Copy, Debug, PartialEq)]
enum Stage {
    Start,
    Difference(usize),
    Trial,
    Over,
}

/// A search.
#[derive(Clone, Debug)]
pub struct LeastSquares {
    bounds: Vec<Bounds>,
    measured: Vec<f64>,
    model_rms: f64,
    stage: Stage,
    here: Vec<f64>,
    trial: Vec<f64>,
    modelled: Vec<f64>,
    jacobian: Vec<Vec<f64>>,
    damping: f64,
    rounds: usize,
    /// Whether the last differences are being taken, after which nothing moves.
    closing: bool,
}

/// A quantity as it was fitted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FittedQuantity {
    /// Its value.
    pub value: f64,
    /// Between these it lies at the level of 95 %.
    pub least: f64,
    /// The upper end.
    pub greatest: f64,
    /// What part of its whole range that is, 0…1.
    pub range_share: f64,
}

/// A fit.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitted {
    /// Each quantity.
    pub quantities: Vec<FittedQuantity>,
    /// Correlation of the errors of each with each.
    pub correlation: Vec<Vec<f64>>,
    /// Root mean square of the residuals.
    pub rms: f64,
    /// Correlation of each residual with the next, 0…1.
    pub autocorrelation: f64,
    /// Number of independent residuals that they are worth.
    pub effective: f64,
    /// Standard errors to either side of a value in its interval.
    pub coverage: f64,
    /// Least singular value of the differences over the greatest, each quantity's scaled to one: towards zero the data say nothing
    /// along some direction.
    pub conditioning: f64,
    /// The model at the fit.
    pub modelled: Vec<f64>,
}

impl LeastSquares {
    /// A search that starts at given values, one for each of `bounds`, for what was `measured`. Residuals are never taken as smaller
    /// than the root mean square `model_rms` by which the model errs with the right values.
    #[must_use]
    pub fn new(bounds: Vec<Bounds>, start: &[f64], measured: Vec<f64>, model_rms: f64) -> Self {
        let here: Vec<f64> = bounds
            .iter()
            .zip(start)
            .map(|(bounds, value)| bounds.searched(*value))
            .collect();
        Self {
            jacobian: vec![vec![0.0; measured.len()]; bounds.len()],
            trial: here.clone(),
            modelled: vec![0.0; measured.len()],
            stage: Stage::Start,
            damping: DAMPING_FIRST,
            rounds: 0,
            closing: false,
            bounds,
            measured,
            model_rms,
            here,
        }
    }

    /// The values for which the model is to be run next; none when the search is over.
    #[must_use]
    pub fn wanted(&self) -> Option<Vec<f64>> {
        let searched = match self.stage {
            Stage::Over => return None,
            Stage::Start => self.here.clone(),
            Stage::Difference(index) => {
                let mut moved = self.here.clone();
                moved[index % self.bounds.len()] += self.difference(index);
                moved
            }
            Stage::Trial => self.trial.clone(),
        };
        Some(self.values(&searched))
    }

    /// About how much of the search is done, 0…1: most end within eight rounds.
    #[must_use]
    pub fn progress(&self) -> f64 {
        const ROUNDS_USUAL: f64 = 8.0;
        if self.stage == Stage::Over {
            return 1.0;
        }
        let done = self.rounds as f64;
        done / (done + 0.3 * ROUNDS_USUAL)
    }

    /// Takes what the model gave for the values asked for, as many numbers as were measured.
    pub fn give(&mut self, modelled: Vec<f64>) {
        match self.stage {
            Stage::Over => {}
            Stage::Start => {
                self.modelled = modelled;
                self.stage = Stage::Difference(0);
            }
            Stage::Difference(index) => {
                let by = self.difference(index);
                let opposite = index >= self.bounds.len();
                for (slope, (moved, here)) in self.jacobian[index % self.bounds.len()]
                    .iter_mut()
                    .zip(modelled.iter().zip(&self.modelled))
                {
                    let own = (moved - here) / by;
                    *slope = if opposite {
                        f64::midpoint(*slope, own)
                    } else {
                        own
                    };
                }
                self.after_difference(index);
            }
            Stage::Trial => self.after_trial(modelled),
        }
    }

    fn after_difference(&mut self, index: usize) {
        if index + 1 < 2 * self.bounds.len() {
            self.stage = Stage::Difference(index + 1);
        } else if self.closing {
            self.stage = Stage::Over;
        } else {
            self.set_out();
        }
    }

    fn after_trial(&mut self, modelled: Vec<f64>) {
        self.rounds += 1;
        let (before, now) = (
            self.sum_of_squares(&self.modelled),
            self.sum_of_squares(&modelled),
        );
        if now < before {
            self.here.clone_from(&self.trial);
            self.modelled = modelled;
            self.damping = (self.damping / 6.0).at_least(DAMPING_LEAST);
            self.closing = before - now < FALL_LEAST * before || self.rounds >= ROUNDS_GREATEST;
            self.stage = Stage::Difference(0);
            return;
        }
        self.damping *= 5.0;
        if self.damping > DAMPING_GREATEST || self.rounds >= ROUNDS_GREATEST {
            self.closing = true;
            self.stage = Stage::Difference(0);
            return;
        }
        self.set_out();
    }

    /// Works out the next place to try.
    fn set_out(&mut self) {
        let mut normal = self.normal();
        let slope: Vec<f64> = self
            .jacobian
            .iter()
            .map(|column| {
                let products = column.iter().zip(self.measured.iter().zip(&self.modelled));
                products
                    .map(|(slope, (measured, modelled))| slope * (measured - modelled))
                    .sum()
            })
            .collect();
        for (index, row) in normal.iter_mut().enumerate() {
            row[index] += self.damping * row[index] + f64::MIN_POSITIVE.sqrt();
        }
        let step = solve(&normal, &slope);
        self.trial = self
            .here
            .iter()
            .zip(&step)
            .map(|(here, step)| {
                (here + step.clamp(-LONGEST_STEP, LONGEST_STEP)).clamp(-FARTHEST, FARTHEST)
            })
            .collect();
        if self.trial == self.here {
            self.closing = true;
            self.stage = Stage::Difference(0);
        } else {
            self.stage = Stage::Trial;
        }
    }

    /// The step of a difference: towards the middle first, so that it never runs into a bound, then the other way.
    fn difference(&self, index: usize) -> f64 {
        let quantities = self.bounds.len();
        let inwards = if self.here[index % quantities] > 0.0 {
            -DIFFERENCE
        } else {
            DIFFERENCE
        };
        if index < quantities {
            inwards
        } else {
            -inwards
        }
    }

    /// JᵀJ.
    fn normal(&self) -> Vec<Vec<f64>> {
        let product = |one: &Vec<f64>, other: &Vec<f64>| -> f64 {
            one.iter().zip(other).map(|(one, other)| one * other).sum()
        };
        let row = |one| {
            self.jacobian
                .iter()
                .map(|other| product(one, other))
                .collect()
        };
        self.jacobian.iter().map(row).collect()
    }

    fn sum_of_squares(&self, modelled: &[f64]) -> f64 {
        let pairs = self.measured.iter().zip(modelled);
        pairs
            .map(|(one, other)| (one - other) * (one - other))
            .sum()
    }

    fn values(&self, searched: &[f64]) -> Vec<f64> {
        let pairs = self.bounds.iter().zip(searched);
        pairs
            .map(|(bounds, searched)| bounds.value_of(*searched))
            .collect()
    }

    /// What was found so far, with its errors.
    #[must_use]
    pub fn fitted(&self) -> Fitted {
        let count = self.measured.len() as f64;
        let quantities = self.bounds.len();
        let residuals: Vec<f64> = self
            .measured
            .iter()
            .zip(&self.modelled)
            .map(|(measured, modelled)| measured - modelled)
            .collect();
        let sum = self.sum_of_squares(&self.modelled);
        let autocorrelation = autocorrelation(&residuals);
        let effective = (count * (1.0 - autocorrelation) / (1.0 + autocorrelation)).at_least(1.0);
        let spread = (sum / (count - quantities as f64).at_least(1.0))
            .at_least(self.model_rms * self.model_rms);
        let variance = spread * count / effective;
        let coverage = coverage(effective - quantities as f64);
        let (inverse, conditioning) = scaled_inverse(&self.normal());
        let deviation = |index: usize| (variance * inverse[index][index]).sqrt();
        let values = self.values(&self.here);
        let fitted = |index: usize| {
            let bounds = &self.bounds[index];
            let reach = coverage * deviation(index);
            let (least, greatest) = (
                bounds.value_of(self.here[index] - reach),
                bounds.value_of(self.here[index] + reach),
            );
            FittedQuantity {
                value: values[index],
                least,
                greatest,
                range_share: bounds.place(greatest) - bounds.place(least),
            }
        };
        let correlation = |one: usize, other: usize| {
            inverse[one][other] / (inverse[one][one] * inverse[other][other]).sqrt()
        };
        Fitted {
            quantities: (0..quantities).map(fitted).collect(),
            correlation: (0..quantities)
                .map(|one| {
                    (0..quantities)
                        .map(|other| correlation(one, other))
                        .collect()
                })
                .collect(),
            rms: (sum / count.at_least(1.0)).sqrt(),
            autocorrelation,
            effective,
            coverage,
            conditioning,
            modelled: self.modelled.clone(),
        }
    }
}

#[cfg(test)]
mod tests;
