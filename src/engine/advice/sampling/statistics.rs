//! Quantiles and the share of a spread that one input explains.

use crate::quantity::Bounded;

/// Deviation against the mean below which an output does not vary but by rounding.
const ROUNDING: f64 = 1e-9;

/// Slices of equal probability into which an input is cut. Sobol' points fill them evenly.
const SLICES: usize = 16;

/// The quantile of values at a probability, by straight lines between order statistics: h = (n − 1) p + 1, definition 7 of Hyndman &
/// Fan 1996 (The American Statistician 50:361).
///
/// `values`: finite; their order is changed. Not a number where there are none.
pub(super) fn quantile(values: &mut [f64], probability: f64) -> f64 {
    let Some(last) = values.len().checked_sub(1) else {
        return f64::NAN;
    };
    let position = probability * last as f64;
    let below = (position.floor() as usize).min(last);
    select(values, below);
    let low = values[below];
    let high = values[below + 1..]
        .iter()
        .copied()
        .fold(f64::INFINITY, f64::min);
    let share = position - below as f64;
    if share > 0.0 && high.is_finite() {
        low + share * (high - low)
    } else {
        low
    }
}

/// Puts the value of a rank, counted from nothing, in its place, smaller ones before and greater ones behind it: FIND (Hoare 1961,
/// Communications of the ACM 4:321).
fn select(values: &mut [f64], rank: usize) {
    let (mut from, mut to) = (0, values.len() - 1);
    while from < to {
        let pivot = values[usize::midpoint(from, to)];
        let (mut low, mut high) = (from, to);
        loop {
            while values[low] < pivot {
                low += 1;
            }
            while values[high] > pivot {
                high -= 1;
            }
            if low >= high {
                break;
            }
            values.swap(low, high);
            low += 1;
            high -= 1;
        }
        if rank <= high {
            to = high;
        } else {
            from = high + 1;
        }
    }
}

/// The mean of values and their standard deviation, of all of them and not of a sample.
pub(super) fn mean_and_deviation(values: &[f64]) -> (f64, f64) {
    let count = values.len().max(1) as f64;
    let mean = values.iter().sum::<f64>() / count;
    let square = values
        .iter()
        .map(|value| (value - mean) * (value - mean))
        .sum::<f64>();
    (mean, (square / count).sqrt())
}

/// The share of the variance of an output that one input explains, whatever the shape of its influence.
///
/// It is the correlation ratio η² = Var(E\[Y|X\])/Var(Y) (Pearson 1905), which is Sobol's first-order index, from means over
/// slices of equal probability of the input (Plischke 2010, Reliability Engineering & System Safety 95:354), less what chance alone would
/// give: 1 − (1 − η²)(n − 1)/(n − k), with n points in k slices (Kelley 1935). Not below zero; zero where the output does not vary.
///
/// It is taken rather than rank regression because the runs at hand give it, because it needs no straight line (a thermostat keeps the
/// cabin flat until the cooler no longer can) and because the shares of independent inputs add up to at most one.
///
/// * `inputs` — probabilities at which the input was drawn, 0…1
/// * `outputs` — as many outputs
pub(super) fn explained_share(inputs: &[f64], outputs: &[f64]) -> f64 {
    let count = outputs.len() as f64;
    let (mean, deviation) = mean_and_deviation(outputs);
    let total = deviation * deviation * count;
    if deviation <= ROUNDING * (1.0 + mean.abs()) || outputs.len() <= SLICES {
        return 0.0;
    }
    let mut sums = [(0.0, 0.0); SLICES];
    for (input, output) in inputs.iter().zip(outputs) {
        let slice = ((input * SLICES as f64) as usize).min(SLICES - 1);
        sums[slice].0 += 1.0;
        sums[slice].1 += output - mean;
    }
    let between: f64 = sums
        .iter()
        .filter(|(points, _)| *points > 0.0)
        .map(|(points, sum)| sum * sum / points)
        .sum();
    let unexplained = 1.0 - between / total;
    (1.0 - unexplained * (count - 1.0) / (count - SLICES as f64)).at_least(0.0)
}

#[cfg(test)]
mod tests {
    use super::super::distribution::Distribution;
    use super::super::sequence::Sequence;
    use super::*;

    #[test]
    fn quantiles_of_a_few_numbers_by_hand() {
        let mut values = [4.0, 1.0, 3.0, 2.0];
        // h = 3 p + 1: at a tenth 1.3, in the middle 2.5, at nine tenths 3.7.
        assert!((quantile(&mut values, 0.1) - 1.3).abs() < 1e-12);
        assert!((quantile(&mut values, 0.5) - 2.5).abs() < 1e-12);
        assert!((quantile(&mut values, 0.9) - 3.7).abs() < 1e-12);
        assert_eq!(quantile(&mut values, 1.0), 4.0);
        assert!(quantile(&mut [], 0.5).is_nan());
    }

    #[test]
    fn a_rank_is_found_whatever_the_order() {
        let mut sequence = Sequence::shifted(5);
        for count in [1, 2, 3, 50] {
            let values: Vec<f64> = (0..count)
                .map(|_| (sequence.next_point()[0] * 10.0).floor())
                .collect();
            let mut sorted = values.clone();
            sorted.sort_by(f64::total_cmp);
            for rank in 0..count {
                let mut found = values.clone();
                select(&mut found, rank);
                assert_eq!(found[rank], sorted[rank]);
                assert!(found[..rank].iter().all(|value| *value <= found[rank]));
                assert!(found[rank..].iter().all(|value| *value >= found[rank]));
            }
        }
    }

    /// Closed form: a sum of independent normal inputs with weights 1, 2 and 3 is normal with variance 14, and the inputs
    /// explain 1/14, 4/14 and 9/14 of it.
    #[test]
    fn a_linear_response_has_the_bands_and_shares_of_its_closed_form() {
        let mut sequence = Sequence::shifted(3);
        let normal = Distribution::NormalShift { deviation: 1.0 };
        let points: Vec<_> = (0..400).map(|_| sequence.next_point()).collect();
        let mut outputs: Vec<f64> = points
            .iter()
            .map(|point| {
                (0..3)
                    .map(|index| (index + 1) as f64 * normal.quantile(point[index]))
                    .sum()
            })
            .collect();
        for (index, expected) in [1.0, 4.0, 9.0, 0.0].into_iter().enumerate() {
            let inputs: Vec<f64> = points.iter().map(|point| point[index]).collect();
            let share = explained_share(&inputs, &outputs);
            assert!((share - expected / 14.0).abs() < 0.04, "{index}: {share}");
        }
        let (mean, deviation) = mean_and_deviation(&outputs);
        // Random draws would miss the mean by about √(14/400) = 0.19.
        assert!(mean.abs() < 0.06, "{mean}");
        assert!(
            (deviation / 14.0_f64.sqrt() - 1.0).abs() < 0.03,
            "{deviation}"
        );
        for probability in [0.1, 0.5, 0.9] {
            let expected = 14.0_f64.sqrt() * normal.quantile(probability);
            let found = quantile(&mut outputs, probability);
            assert!(
                (found - expected).abs() < 0.25,
                "{probability}: {found} {expected}"
            );
        }
    }

    /// A response that rank regression would not see: Y = (X − ½)², all of it due to X.
    #[test]
    fn an_influence_that_turns_is_seen() {
        let inputs: Vec<f64> = (0..400)
            .map(|index| (f64::from(index) + 0.5) / 400.0)
            .collect();
        let outputs: Vec<f64> = inputs.iter().map(|x| (x - 0.5) * (x - 0.5)).collect();
        assert!(explained_share(&inputs, &outputs) > 0.95);
        let flat: Vec<f64> = inputs.iter().map(|x| 0.1 + 1e-16 * x).collect();
        assert_eq!(explained_share(&inputs, &flat), 0.0);
    }
}
