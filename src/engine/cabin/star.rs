//! Longwave between inner surfaces by a mean-radiant star: Carroll 1980 (ASHRAE Transactions 86(2)).

use super::description::Element;
use crate::quantity::{Bounded, Number, STEFAN_BOLTZMANN_W_M2_K4, ZERO_CELSIUS_K};

/// Resistance of each element to the star without the 4σT³, 1/m²: (1/F + (1 − ε)/ε)/A, with Carroll's
/// F = 1/(1 − A F/ΣAF), solved by repeated substitution.
pub(super) fn star_resistances(elements: &[Element]) -> Vec<f64> {
    let areas: Vec<f64> = elements.iter().map(|element| element.area_m2).collect();
    carroll_factors(&areas)
        .iter()
        .zip(elements)
        .map(|(factor, element)| {
            (1.0 / factor + (1.0 - element.inside_emittance) / element.inside_emittance)
                / element.area_m2
        })
        .collect()
}

/// 4 σ T³ at the mean of two temperatures, W/(m² K).
#[inline(always)]
pub(super) fn linear_radiation_w_m2_k<N: Number>(one_c: N, other_c: N) -> N {
    let mean_k = N::of(0.5) * (one_c + other_c) + N::of(ZERO_CELSIUS_K);
    N::of(4.0 * STEFAN_BOLTZMANN_W_M2_K4) * mean_k * mean_k * mean_k
}

/// Carroll's view factors to the star.
fn carroll_factors(areas: &[f64]) -> Vec<f64> {
    const ROUNDS: usize = 200;
    let mut factors = vec![1.0; areas.len()];
    for _ in 0..ROUNDS {
        let sum: f64 = areas.iter().zip(&factors).map(|(a, f)| a * f).sum();
        for (factor, area) in factors.iter_mut().zip(areas) {
            // A face larger than half of the whole sees itself in the formula; it then sees the star whole.
            let own = (area * *factor / sum).at_most(0.5);
            *factor = 1.0 / (1.0 - own);
        }
    }
    factors
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn six_equal_faces_see_the_star_alike() {
        // By hand: F = 1/(1 − 1/6) = 1.2 for each of six equal areas.
        for factor in carroll_factors(&[2.0; 6]) {
            assert!((factor - 1.2).abs() < 1e-12);
        }
    }

    #[test]
    fn linear_radiation_by_hand() {
        // 4 · 5.670374e-8 · 300³ = 6.124 W/(m² K).
        assert!((linear_radiation_w_m2_k(26.85, 26.85) - 6.124).abs() < 1e-3);
    }
}
