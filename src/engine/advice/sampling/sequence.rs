//! Sobol' points in the unit cube, shifted by a seed.
//!
//! Point n of Sobol's sequence has in each dimension the exclusive or of the direction numbers v_k at the ones of n's Gray code;
//! direction numbers follow Joe & Kuo 2008 (SIAM Journal on Scientific Computing 30:2635), whose table for ten dimensions is
//! below. A digital shift (exclusive or with one random word for each dimension, Cranley & Patterson's rotation in base two)
//! makes the points random without harming how evenly they lie: every run of 2^m points that starts at a multiple of 2^m still has exactly one
//! in each of 2^m equal slices of each dimension. The words come from the seed by SplitMix64 (Steele, Lea & Flood 2014).

/// Most dimensions.
pub(super) const MOST_DIMENSIONS: usize = 10;

/// Binary digits of a coordinate.
const BITS: usize = 32;

/// Degree s of the primitive polynomial, its inner coefficients a as bits, and the first s odd numbers m, for dimensions two to
/// ten: Joe & Kuo's new-joe-kuo-6.21201.
const JOE_KUO_2008: [(usize, u32, [u32; 5]); MOST_DIMENSIONS - 1] = [
    (1, 0, [1, 0, 0, 0, 0]),
    (2, 1, [1, 3, 0, 0, 0]),
    (3, 1, [1, 3, 1, 0, 0]),
    (3, 2, [1, 1, 1, 0, 0]),
    (4, 1, [1, 1, 3, 3, 0]),
    (4, 4, [1, 3, 5, 13, 0]),
    (5, 2, [1, 1, 5, 5, 17]),
    (5, 4, [1, 1, 5, 5, 5]),
    (5, 7, [1, 1, 7, 11, 19]),
];

/// The sequence.
#[derive(Clone, Debug)]
pub(super) struct Sequence {
    directions: [[u32; BITS]; MOST_DIMENSIONS],
    shifts: [u32; MOST_DIMENSIONS],
    point: [u32; MOST_DIMENSIONS],
    index: u32,
}

impl Sequence {
    /// The sequence with the shift of a seed.
    pub(super) fn shifted(seed: u64) -> Self {
        let mut state = seed;
        Self {
            shifts: [(); MOST_DIMENSIONS].map(|()| (split_mix(&mut state) >> 32) as u32),
            ..Self::plain()
        }
    }

    /// The sequence as published.
    fn plain() -> Self {
        let mut directions = [[0; BITS]; MOST_DIMENSIONS];
        for (bit, direction) in directions[0].iter_mut().enumerate() {
            *direction = 1 << (BITS - 1 - bit);
        }
        for (dimension, row) in JOE_KUO_2008.iter().enumerate() {
            directions[dimension + 1] = direction_numbers(row);
        }
        Self {
            directions,
            shifts: [0; MOST_DIMENSIONS],
            point: [0; MOST_DIMENSIONS],
            index: 0,
        }
    }

    /// The next point, each coordinate in the middle of its cell of 2⁻³², so above 0 and below 1.
    pub(super) fn next_point(&mut self) -> [f64; MOST_DIMENSIONS] {
        let mut coordinates = [0.0; MOST_DIMENSIONS];
        for (dimension, coordinate) in coordinates.iter_mut().enumerate() {
            let digits = self.point[dimension] ^ self.shifts[dimension];
            *coordinate = (f64::from(digits) + 0.5) / 4_294_967_296.0;
        }
        // The Gray codes of n and n + 1 differ in the lowest zero of n.
        let bit = (self.index.trailing_ones() as usize).min(BITS - 1);
        for dimension in 0..MOST_DIMENSIONS {
            self.point[dimension] ^= self.directions[dimension][bit];
        }
        self.index = self.index.wrapping_add(1);
        coordinates
    }
}

/// Direction numbers v_k = m_k 2^(32 − k), with m_k = 2 a_1 m_(k−1) ⊕ … ⊕ 2^(s−1) a_(s−1) m_(k−s+1) ⊕ 2^s m_(k−s) ⊕ m_(k−s)
/// (Joe & Kuo 2008, equation 3).
fn direction_numbers(row: &(usize, u32, [u32; 5])) -> [u32; BITS] {
    let (degree, inner, first) = *row;
    let mut numbers = [0_u32; BITS];
    for bit in 0..BITS {
        if bit < degree {
            numbers[bit] = first[bit] << (BITS - 1 - bit);
            continue;
        }
        let oldest = numbers[bit - degree];
        numbers[bit] = oldest ^ (oldest >> degree);
        for term in 1..degree {
            if (inner >> (degree - 1 - term)) & 1 == 1 {
                numbers[bit] ^= numbers[bit - term];
            }
        }
    }
    numbers
}

/// SplitMix64 (Steele, Lea & Flood 2014, OOPSLA): the next word of a state.
fn split_mix(state: &mut u64) -> u64 {
    *state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
    let mut word = *state;
    word = (word ^ (word >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    word = (word ^ (word >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    word ^ (word >> 31)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn points(mut sequence: Sequence, count: usize) -> Vec<[f64; MOST_DIMENSIONS]> {
        (0..count).map(|_| sequence.next_point()).collect()
    }

    /// The first points as Joe & Kuo's own notes on the sequence print them, in three dimensions.
    #[test]
    fn the_first_points_are_the_published_ones() {
        let expected = [
            [0.0, 0.0, 0.0],
            [0.5, 0.5, 0.5],
            [0.75, 0.25, 0.25],
            [0.25, 0.75, 0.75],
            [0.375, 0.375, 0.625],
            [0.875, 0.875, 0.125],
            [0.625, 0.125, 0.875],
            [0.125, 0.625, 0.375],
        ];
        for (point, expected) in points(Sequence::plain(), 8).iter().zip(expected) {
            for (coordinate, expected) in point.iter().zip(expected) {
                assert!((coordinate - expected).abs() < 1e-9, "{point:?}");
            }
        }
    }

    /// Every dimension is a (0, 1) sequence in base two: one point in each of as many slices as there are points.
    #[test]
    fn each_slice_of_each_dimension_has_one_point() {
        for sequence in [Sequence::plain(), Sequence::shifted(7)] {
            let points = points(sequence, 256);
            for dimension in 0..MOST_DIMENSIONS {
                let mut slices = [0; 256];
                for point in &points {
                    slices[(point[dimension] * 256.0) as usize] += 1;
                }
                assert_eq!(slices, [1; 256], "dimension {dimension}");
            }
        }
    }

    /// Property A of Sobol: of 2^d points each of the 2^d octants of the cube has one; Joe & Kuo's table keeps it.
    #[test]
    fn each_octant_of_ten_dimensions_has_one_point() {
        let mut octants = vec![0; 1 << MOST_DIMENSIONS];
        for point in points(Sequence::plain(), 1 << MOST_DIMENSIONS) {
            let octant = point.iter().fold(0, |octant, coordinate| {
                2 * octant + usize::from(*coordinate >= 0.5)
            });
            octants[octant] += 1;
        }
        assert!(octants.iter().all(|count| *count == 1));
    }

    /// Π |4x − 2| over ten dimensions integrates to one exactly (Sobol's g-function with all a = 0 is the hardest of its family; here
    /// Π (|4x_i − 2| + a_i)/(1 + a_i) with a_i = i²). Random points err by about σ/√n.
    #[test]
    fn integrals_come_out_far_closer_than_with_random_points() {
        let value = |point: &[f64; MOST_DIMENSIONS]| -> f64 {
            point
                .iter()
                .enumerate()
                .map(|(index, x)| {
                    let weight = (index * index) as f64;
                    ((4.0 * x - 2.0).abs() + weight) / (1.0 + weight)
                })
                .product()
        };
        // Variance of the product: Π (1 + 1/(3 (1 + a)²)) − 1.
        let variance = (0..MOST_DIMENSIONS)
            .map(|index| 1.0 + 1.0 / (3.0 * libm::pow(1.0 + (index * index) as f64, 2.0)))
            .product::<f64>()
            - 1.0;
        for seed in 0..20 {
            let points = points(Sequence::shifted(seed), 400);
            let mean = points.iter().map(value).sum::<f64>() / 400.0;
            let random_error = (variance / 400.0).sqrt();
            assert!(
                (mean - 1.0).abs() < 0.35 * random_error,
                "seed {seed}: {mean}"
            );
        }
    }

    #[test]
    fn a_seed_gives_the_same_points_again_and_another_seed_others() {
        let first = points(Sequence::shifted(42), 50);
        assert_eq!(first, points(Sequence::shifted(42), 50));
        assert_ne!(first, points(Sequence::shifted(43), 50));
        assert!(first.iter().flatten().all(|x| *x > 0.0 && *x < 1.0));
    }

    /// SplitMix64 with seed 1234567: values of the reference implementation, from memory.
    #[test]
    fn the_words_are_those_of_split_mix() {
        let mut state = 1_234_567;
        assert_eq!(split_mix(&mut state), 6_457_827_717_110_365_317);
        assert_eq!(split_mix(&mut state), 3_203_168_211_198_807_973);
    }
}
