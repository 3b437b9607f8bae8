//! Distributions of uncertain inputs, by their quantiles.

use crate::quantity::Bounded;

/// How an input may differ from what the scenario says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Distribution {
    /// Added, normal about zero.
    NormalShift {
        /// Standard deviation.
        deviation: f64,
    },
    /// A factor whose logarithm is normal about zero.
    LogNormalFactor {
        /// Standard deviation of the logarithm.
        deviation: f64,
    },
    /// A factor between two limits, likeliest in between, falling off in straight lines.
    TriangularFactor {
        /// Least.
        low: f64,
        /// Likeliest.
        mode: f64,
        /// Greatest.
        high: f64,
    },
    /// A factor anywhere between two limits.
    UniformFactor {
        /// Least.
        low: f64,
        /// Greatest.
        high: f64,
    },
}

impl Distribution {
    /// The shift or factor below which it lies with a probability above 0 and below 1.
    #[must_use]
    pub fn quantile(self, probability: f64) -> f64 {
        match self {
            Self::NormalShift { deviation } => deviation * normal_quantile(probability),
            Self::LogNormalFactor { deviation } => {
                libm::exp(deviation * normal_quantile(probability))
            }
            Self::TriangularFactor { low, mode, high } => {
                let below = (mode - low) / (high - low);
                if probability < below {
                    low + (probability * (high - low) * (mode - low)).sqrt()
                } else {
                    high - ((1.0 - probability) * (high - low) * (high - mode)).sqrt()
                }
            }
            Self::UniformFactor { low, high } => low + probability * (high - low),
        }
    }
}

/// Numerators and denominators, by rising power, of the three parts of the normal quantile: Wichura 1988, Applied Statistics 37:477,
/// algorithm AS 241, PPND7; good to seven figures.
const CENTRE: ([f64; 4], [f64; 4]) = (
    [
        3.387_132_717_9,
        50.434_271_938,
        159.291_132_02,
        59.109_374_720,
    ],
    [1.0, 17.895_169_469, 78.757_757_664, 67.187_563_600],
);
const SHOULDER: ([f64; 4], [f64; 4]) = (
    [
        1.423_437_277_7,
        2.756_815_390_0,
        1.306_728_481_6,
        0.170_238_211_03,
    ],
    [1.0, 0.737_001_642_50, 0.120_211_329_75, 0.0],
);
const TAIL: ([f64; 4], [f64; 4]) = (
    [
        6.657_905_115_0,
        3.081_226_386_0,
        0.428_682_943_37,
        0.017_337_203_997,
    ],
    [1.0, 0.241_978_942_25, 0.012_258_202_635, 0.0],
);

/// The standard normal quantile (AS 241), of a probability above 0 and below 1.
fn normal_quantile(probability: f64) -> f64 {
    let from_middle = probability - 0.5;
    if from_middle.abs() <= 0.425 {
        return from_middle * ratio(&CENTRE, 0.180_625 - from_middle * from_middle);
    }
    let outside = probability.at_most(1.0 - probability);
    let depth = (-libm::log(outside)).sqrt();
    let size = if depth <= 5.0 {
        ratio(&SHOULDER, depth - 1.6)
    } else {
        ratio(&TAIL, depth - 5.0)
    };
    size.copysign(from_middle)
}

fn ratio((above, below): &([f64; 4], [f64; 4]), x: f64) -> f64 {
    let sum = |terms: &[f64; 4]| terms.iter().rev().fold(0.0, |sum, term| sum * x + term);
    sum(above) / sum(below)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Φ(z) = ½ erfc(−z/√2).
    fn normal_probability(z: f64) -> f64 {
        0.5 * libm::erfc(-z / core::f64::consts::SQRT_2)
    }

    #[test]
    fn the_normal_quantile_inverts_the_error_function() {
        for step in 1..2_000 {
            let probability = f64::from(step) / 2_000.0;
            let back = normal_probability(normal_quantile(probability));
            assert!((back - probability).abs() < 2e-7, "{probability}: {back}");
        }
        for exponent in 4..10 {
            let probability = libm::pow(10.0, -f64::from(exponent));
            let back = normal_probability(normal_quantile(probability));
            assert!(
                (back / probability - 1.0).abs() < 5e-6,
                "{probability}: {back}"
            );
        }
        // Tables: 97.5 % below 1.959 964.
        assert!((normal_quantile(0.975) - 1.959_964).abs() < 1e-6);
    }

    #[test]
    fn the_triangle_has_its_share_below_the_mode() {
        let triangle = Distribution::TriangularFactor {
            low: 0.8,
            mode: 1.0,
            high: 1.05,
        };
        // By hand: (1 − 0.8)/(1.05 − 0.8) = 0.8 of it.
        assert!((triangle.quantile(0.8) - 1.0).abs() < 1e-12);
        assert!((triangle.quantile(0.2) - 0.9).abs() < 1e-12);
        assert!(triangle.quantile(1e-12) >= 0.8 && triangle.quantile(1.0 - 1e-12) <= 1.05);
    }
}
