//! Which fault would make the readings what they are.

use super::contributions;
use super::expected::{Fault, Shown, Sight, Unit};
use crate::quantity::{Bounded, sort_few};

/// What may be wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cause {
    /// Too little air over the coil.
    LowAirflow,
    /// Too little refrigerant.
    LowCharge,
    /// Too much voltage lost in cable and joints.
    VoltageDrop,
    /// Sun or warm metal at a sensor.
    WarmSensor,
    /// The condenser draws in air that is warmer than outdoors, or too little of it.
    WarmCondenserAir,
    /// It has not come up to its steady state yet.
    NotSteady,
    /// The plate promises more than the unit ever gave.
    PlateOverstated,
    /// It ran below its full output.
    PartSpeed,
}

impl Cause {
    /// Every cause.
    pub const ALL: [Self; 8] = [
        Self::LowAirflow,
        Self::LowCharge,
        Self::VoltageDrop,
        Self::WarmSensor,
        Self::WarmCondenserAir,
        Self::NotSteady,
        Self::PlateOverstated,
        Self::PartSpeed,
    ];

    /// Severities that are thought of, from what can hardly be noticed to what nobody overlooks.
    fn severities(self, least_speed: Option<f64>) -> Vec<Fault> {
        let shares = [0.9, 0.8, 0.7, 0.6, 0.5, 0.4];
        match self {
            Self::LowAirflow => shares
                .into_iter()
                .flat_map(|share| [Fault::Airflow(share), Fault::AirflowAlone(share)])
                .collect(),
            Self::LowCharge => shares.map(Fault::Charge).to_vec(),
            Self::VoltageDrop => [1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0]
                .map(Fault::Cable)
                .to_vec(),
            // The return grille lies in the shade of the cabin; the outlet may stand in full sun.
            Self::WarmSensor => vec![
                Fault::SupplySensor(2.0),
                Fault::SupplySensor(4.0),
                Fault::SupplySensor(8.0),
                Fault::ReturnSensor(2.0),
                Fault::ReturnSensor(4.0),
            ],
            Self::WarmCondenserAir => [4.0, 8.0, 12.0, 16.0, 20.0].map(Fault::Condenser).to_vec(),
            Self::NotSteady => [2.0, 4.0, 8.0].map(Fault::Slow).to_vec(),
            Self::PlateOverstated => shares.map(Fault::Plate).to_vec(),
            Self::PartSpeed => least_speed.map_or_else(Vec::new, |least| {
                [0.0, 1.0, 2.0, 3.0]
                    .map(|step| Fault::Speed(least + (1.0 - least) * step / 4.0))
                    .to_vec()
            }),
        }
    }
}

/// A cause and how likely it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LikelyCause {
    /// The cause.
    pub cause: Cause,
    /// Its share of the likelihood of all causes, 0…1.
    pub share: f64,
}

/// Least share of the likelihood at which a cause is named.
const NAMED_FROM_SHARE: f64 = 0.05;

/// Greatest number of signs.
const MOST: usize = 5;

/// Values of chi-squared that 95 % stay below, for one to five degrees of freedom (any table, as NIST/SEMATECH e-Handbook 1.3.6.7.4).
const CHI_SQUARED_95: [f64; MOST] = [3.841, 5.991, 7.815, 9.488, 11.070];

/// How far readings and expectation may lie apart together: the Cholesky factor of their covariance.
pub(super) struct Residuals {
    indices: Vec<usize>,
    variances: Vec<f64>,
    factor: [[f64; MOST]; MOST],
}

impl Residuals {
    pub(super) fn new(
        unit: &Unit,
        sight: &Sight,
        uncertainty: &Sight,
        used: &[bool; MOST],
    ) -> Self {
        let indices: Vec<usize> = (0..MOST).filter(|index| used[*index]).collect();
        let parts = contributions(unit, sight, uncertainty, residuals);
        let covariance = |one: usize, other: usize| -> f64 {
            parts.iter().map(|part| part[one] * part[other]).sum()
        };
        let mut factor = [[0.0; MOST]; MOST];
        for (row, one) in indices.iter().enumerate() {
            for (column, other) in indices.iter().enumerate().take(row + 1) {
                let known: f64 = (0..column)
                    .map(|inner| factor[row][inner] * factor[column][inner])
                    .sum();
                let rest = covariance(*one, *other) - known;
                factor[row][column] = if row == column {
                    rest.at_least(f64::MIN_POSITIVE).sqrt()
                } else {
                    rest / factor[column][column]
                };
            }
        }
        Self {
            variances: indices
                .iter()
                .map(|index| covariance(*index, *index))
                .collect(),
            indices,
            factor,
        }
    }

    /// Signs that were read, with the variance of reading less expectation.
    pub(super) fn used(&self) -> impl Iterator<Item = (usize, f64)> {
        self.indices
            .iter()
            .copied()
            .zip(self.variances.iter().copied())
    }

    /// rᵀ C⁻¹ r of the residuals under a fault.
    fn chi_squared(&self, unit: &Unit, sight: &Sight, fault: Fault) -> f64 {
        let all = residuals(&unit.look(sight, fault));
        let mut white = [0.0; MOST];
        for (row, index) in self.indices.iter().enumerate() {
            let known: f64 = (0..row)
                .map(|inner| self.factor[row][inner] * white[inner])
                .sum();
            white[row] = (all[*index] - known) / self.factor[row][row];
        }
        white.iter().map(|value| value * value).sum()
    }

    /// Whether the readings are none that only one in twenty of such units would show.
    pub(super) fn is_plausible(&self, unit: &Unit, sight: &Sight, fault: Fault) -> bool {
        let degrees = self.indices.len().clamp(1, MOST);
        self.chi_squared(unit, sight, fault) <= CHI_SQUARED_95[degrees - 1]
    }
}

fn residuals(shown: &Shown) -> [f64; MOST] {
    std::array::from_fn(|index| shown.read[index] - shown.expected[index])
}

/// Causes likelier than none, likeliest first, and whether the first explains the readings.
pub(super) fn likely_causes(
    unit: &Unit,
    sight: &Sight,
    residuals: &Residuals,
) -> (Vec<LikelyCause>, bool) {
    let sound = residuals.chi_squared(unit, sight, Fault::None);
    let mut found = Vec::new();
    for cause in Cause::ALL {
        let severities = cause.severities(unit.least_speed);
        if severities.is_empty() {
            continue;
        }
        let of = |fault: &Fault| residuals.chi_squared(unit, sight, *fault);
        let squares: Vec<f64> = severities.iter().map(of).collect();
        let least = squares.iter().copied().fold(f64::INFINITY, f64::min);
        if least < sound {
            found.push((cause, severities, squares));
        }
    }
    // Likelihoods relative to the best of all, for they may all be too small for a number.
    let best = found
        .iter()
        .flat_map(|(_, _, squares)| squares)
        .copied()
        .fold(f64::INFINITY, f64::min);
    let weight = |squares: &[f64]| {
        let sum: f64 = squares
            .iter()
            .map(|square| libm::exp(-0.5 * (square - best)))
            .sum();
        sum / squares.len() as f64
    };
    let whole: f64 = found.iter().map(|(_, _, squares)| weight(squares)).sum();
    let mut causes: Vec<LikelyCause> = found
        .iter()
        .map(|(cause, _, squares)| LikelyCause {
            cause: *cause,
            share: weight(squares) / whole,
        })
        .filter(|likely| likely.share >= NAMED_FROM_SHARE)
        .collect();
    sort_few(&mut causes, |one, other| one.share < other.share);
    let explained = found.iter().any(|(_, severities, _)| {
        severities
            .iter()
            .any(|fault| residuals.is_plausible(unit, sight, *fault))
    });
    (causes, explained)
}
