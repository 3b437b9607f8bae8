//! What a fit finds, and what becomes of it.

use super::least_squares::Bounds;
use crate::advice::LeverEffect;
use crate::scenario::{ScenarioDocument, field};
use serde::{Deserialize, Serialize};

/// What a fit finds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Parameter {
    /// Share of roof and walls that has its insulation.
    FilledShare,
    /// Leakage area, m².
    LeakageArea,
    /// Heat capacity of furniture and goods, J/K.
    HeatCapacity,
}

impl Parameter {
    /// Every one.
    pub const ALL: [Self; 3] = [Self::FilledShare, Self::LeakageArea, Self::HeatCapacity];

    /// Key of its input.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::FilledShare => "shell.filled_share",
            Self::LeakageArea => "shell.leakage_area_m2",
            Self::HeatCapacity => "vehicle.furnishing_heat_capacity_j_k",
        }
    }

    pub(super) fn place(self, document: &mut ScenarioDocument) -> &mut f64 {
        match self {
            Self::FilledShare => &mut document.shell.filled_share,
            Self::LeakageArea => &mut document.shell.leakage_area_m2,
            Self::HeatCapacity => &mut document.vehicle.furnishing_heat_capacity_j_k,
        }
    }

    /// Bounds: those of the input.
    pub(super) fn bounds(self) -> Bounds {
        let range = field(self.key())
            .and_then(|field| field.number())
            .map_or((0.0, 1.0), |number| (number.minimum, number.maximum));
        Bounds {
            least: range.0,
            greatest: range.1,
            by_logarithm: self != Self::FilledShare,
        }
    }
}

/// A quantity as it was found.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Estimate {
    /// Which.
    pub parameter: Parameter,
    /// As entered.
    pub entered: f64,
    /// As fitted.
    pub value: f64,
    /// Between these it lies at the level of 95 %.
    pub least: f64,
    /// The upper end.
    pub greatest: f64,
    /// Whether that is narrow enough to speak of.
    pub is_known: bool,
    /// What it alone changes of the cabin's mean temperature over the log, K.
    pub effect_k: f64,
}

impl Estimate {
    /// Whether what was entered lies outside of what the log allows.
    #[must_use]
    pub fn is_refuted(&self) -> bool {
        self.entered < self.least || self.entered > self.greatest
    }
}

/// What a log taught.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Learned {
    /// Each quantity.
    pub estimates: [Estimate; 3],
    /// Pairs of which only what they do together is known.
    pub confounded: Vec<(Parameter, Parameter)>,
    /// How much warmer the cabin began than the day before would have left it, K.
    pub started_warmer_k: f64,
    /// Root mean square of log less run, as entered and as fitted, K.
    pub rms_entered_k: f64,
    /// The same as fitted.
    pub rms_k: f64,
    /// Points compared, and how many independent ones they are worth.
    pub effective: f64,
    /// Hours of the clock since midnight of the first day, for each point.
    pub time_h: Vec<f64>,
    /// As logged, °C.
    pub logged_c: Vec<f64>,
    /// As run with what was entered, °C.
    pub entered_c: Vec<f64>,
    /// As run with what was fitted, °C.
    pub fitted_c: Vec<f64>,
    /// Unmet degree-hours of the scenario on its own day, as entered and as fitted, K h.
    pub unmet_k_h: [f64; 2],
    /// What single changes would do to the fitted scenario on its own day, best first.
    pub levers: Vec<LeverEffect>,
}

/// Misfit up to which a run counts as following a log, K: what reference cases are allowed to differ by.
const FOLLOWS_WITHIN_K: f64 = 1.5;

impl Learned {
    /// Whether the fitted run follows the log: otherwise something else was at work, and the values mean nothing.
    #[must_use]
    pub fn follows(&self) -> bool {
        self.rms_k <= FOLLOWS_WITHIN_K
    }

    /// Puts the fitted values into a scenario.
    pub fn apply(&self, document: &mut ScenarioDocument) {
        for estimate in &self.estimates {
            *estimate.parameter.place(document) = estimate.value;
        }
    }
}
