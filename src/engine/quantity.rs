//! Physical constants and the few conversions between scales that every module shares.

use wide::f64x4;

/// Kelvin at 0 °C (exact, BIPM SI brochure).
pub const ZERO_CELSIUS_K: f64 = 273.15;

/// Stefan–Boltzmann constant, W/(m² K⁴) (CODATA 2018).
pub const STEFAN_BOLTZMANN_W_M2_K4: f64 = 5.670_374_419e-8;

/// Standard gravity, m/s² (ISO 80000-3).
pub const GRAVITY_M_S2: f64 = 9.806_65;

/// Seconds in an hour.
pub const SECONDS_PER_HOUR: f64 = 3_600.0;

/// Seconds in a day.
pub const SECONDS_PER_DAY: f64 = 86_400.0;

/// Reads a decimal number, rounded to the nearest f64 as IEEE 754 asks: `21.5`, `-3`, `1e-5`. Nothing for any other text; words
/// for infinity and for no number are read as such.
#[must_use]
pub fn parse_decimal(text: &str) -> Option<f64> {
    use lexical_parse_float::FromLexical;
    f64::from_lexical(text.as_bytes()).ok()
}

/// Absolute temperature of a Celsius temperature, K: t + 273.15, for any t.
#[must_use]
pub fn kelvin_from_celsius(temperature_c: f64) -> f64 {
    temperature_c + ZERO_CELSIUS_K
}

/// Celsius temperature of an absolute temperature, °C: T − 273.15, for any T.
#[must_use]
pub fn celsius_from_kelvin(temperature_k: f64) -> f64 {
    temperature_k - ZERO_CELSIUS_K
}

/// Longwave of a black surface at a temperature (°C), W/m²: σ T⁴ (Stefan–Boltzmann).
#[must_use]
pub fn black_body_w_m2(surface_c: f64) -> f64 {
    let square = kelvin_from_celsius(surface_c) * kelvin_from_celsius(surface_c);
    STEFAN_BOLTZMANN_W_M2_K4 * square * square
}

/// The last whole number below a position from 0 to 2³², or 0: at a whole number itself it or the one before, since either bounds an
/// interval that holds it.
///
/// Half a step is taken off and the rest rounded by adding a number so large that its last bit stands for one: to convert it takes
/// processors as long as to divide, and WebAssembly longer.
#[must_use]
#[inline(always)]
pub fn interval_of(position: f64) -> usize {
    let rounded = (position - 0.5).at_least(0.0) + LARGE;
    (rounded.to_bits() & u64::from(u32::MAX)) as usize
}

/// The least number whose last bit stands for one.
const LARGE: f64 = (1_u64 << 52) as f64;

/// Cube root of a number of either sign, within 1e-14 of it.
///
/// Convection asks for it more often than for anything else, and the correctly rounded one of the mathematics library costs
/// ten times as much where no fused multiply-add is at hand. A guess from the exponent (Kahan 1991) is mended twice by Halley's
/// iteration x(x³ + 2a)/(2x³ + a), in operations that every platform rounds alike. Zero, infinities and NaN give themselves.
#[must_use]
pub fn cube_root(number: f64) -> f64 {
    let [root] = cube_roots([number]);
    root
}

/// The [`cube_root`] of each of some numbers, which a processor works out side by side.
#[must_use]
pub fn cube_roots<const COUNT: usize>(numbers: [f64; COUNT]) -> [f64; COUNT] {
    let mut roots = numbers.map(guessed_cube_root);
    let (root_strips, root_rest) = roots.as_chunks_mut();
    let (number_strips, number_rest) = numbers.as_chunks();
    for (roots, numbers) in root_strips.iter_mut().zip(number_strips) {
        *roots = mended_cube_roots(*roots, *numbers);
    }
    for (root, number) in root_rest.iter_mut().zip(number_rest) {
        [*root, ..] = mended_cube_roots([*root; 4], [*number; 4]);
    }
    roots
}

/// A third of the exponent. Processors divide no whole numbers side by side, so it is taken of the fraction of a number that is so
/// large that its last bit stands for one.
#[inline(always)]
fn guessed_cube_root(number: f64) -> f64 {
    const THIRD: f64 = 1.0 / 3.0;
    const EXPONENT_OFFSET: f64 = 0x2A9F_7893 as f64;
    let upper = number.abs().to_bits() >> 32;
    let large = f64::from_bits(LARGE.to_bits() | upper);
    let third = large * THIRD + (LARGE - LARGE * THIRD + EXPONENT_OFFSET);
    f64::from_bits(third.to_bits() << 32)
}

/// Halley's iteration, twice; what has no root of its own, as zero, stays.
#[inline(always)]
fn mended_cube_roots(roots: [f64; 4], numbers: [f64; 4]) -> [f64; 4] {
    let number = f64x4::new(numbers);
    let size = number.abs();
    let mut root = f64x4::new(roots);
    for _ in 0..2 {
        let cube = root * root * root;
        root *= (cube + 2.0 * size) / (2.0 * cube + size);
    }
    let is_ordinary =
        size.simd_ge(f64x4::splat(f64::MIN_POSITIVE)) & size.simd_le(f64x4::splat(f64::MAX));
    is_ordinary.select(root.copysign(number), number).to_array()
}

/// Bounds by a single comparison.
///
/// The minimum and maximum of std pass over NaN on either side, for which processors need three instructions and WebAssembly a
/// call. These take the bound where the number itself is NaN, and no bound is ever NaN.
pub trait Bounded {
    /// The number, or the bound if it is below it or NaN.
    #[must_use]
    fn at_least(self, bound: Self) -> Self;

    /// The number, or the bound if it is above it or NaN.
    #[must_use]
    fn at_most(self, bound: Self) -> Self;
}

impl Bounded for f64 {
    #[inline(always)]
    fn at_least(self, bound: Self) -> Self {
        if self > bound { self } else { bound }
    }

    #[inline(always)]
    fn at_most(self, bound: Self) -> Self {
        if self < bound { self } else { bound }
    }
}

/// Sorts a few items so that none stands before another that it must follow; equal ones keep their order.
///
/// Insertion: the library's sorts are faster above some hundreds and take thirty times the room, in every copy of them.
pub fn sort_few<T>(items: &mut [T], must_follow: impl Fn(&T, &T) -> bool) {
    for end in 1..items.len() {
        let mut place = end;
        while place > 0 && must_follow(&items[place - 1], &items[place]) {
            items.swap(place - 1, place);
            place -= 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_few_are_sorted_and_equal_ones_keep_their_order() {
        let mut items = [(3, 'a'), (1, 'b'), (3, 'c'), (2, 'd'), (1, 'e')];
        sort_few(&mut items, |one, other| one.0 > other.0);
        assert_eq!(items, [(1, 'b'), (1, 'e'), (2, 'd'), (3, 'a'), (3, 'c')]);
        sort_few::<u8>(&mut [], |_, _| true);
    }

    #[test]
    fn bounds_hold_on_their_side_and_in_place_of_nothing() {
        for (number, least, most) in [(-1.0, 0.0, -1.0), (0.5, 0.5, 0.5), (2.0, 2.0, 1.0)] {
            assert_eq!(number.at_least(0.0), least);
            assert_eq!(number.at_most(1.0), most);
        }
        assert_eq!(f64::NAN.at_least(0.0), 0.0);
        assert_eq!(f64::NAN.at_most(1.0), 1.0);
    }

    #[test]
    fn a_position_lies_in_its_interval() {
        for step in 0..10_000 {
            let position = f64::from(step) / 64.0;
            let index = interval_of(position) as f64;
            assert!(index <= position && position <= index + 1.0, "{position}");
        }
        assert_eq!(interval_of(-3.0), 0);
        assert_eq!(interval_of(4_294_967_290.7), 4_294_967_290);
        assert_eq!(interval_of(f64::NAN), 0);
    }

    #[test]
    fn cube_roots_agree_with_the_library() {
        for exponent in -40..40 {
            for mantissa in [1.0, 1.3, 2.0, 3.7, 5.1, 7.9] {
                let number = mantissa * libm::pow(10.0, f64::from(exponent) / 4.0);
                let ratio = cube_root(number) / libm::cbrt(number);
                assert!((ratio - 1.0).abs() < 1e-14, "{number}: {ratio}");
                assert_eq!(cube_root(-number), -cube_root(number));
            }
        }
        assert_eq!(cube_root(0.0), 0.0);
        assert!(cube_root(f64::NAN).is_nan());
    }

    /// The standard library reads decimals to the nearest number; so must this.
    #[test]
    fn decimals_are_read_to_the_last_bit() {
        let mut bits = 0x9E37_79B9_7F4A_7C15_u64;
        for _ in 0..20_000 {
            bits = bits
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            let any = f64::from_bits(bits);
            let usual = (bits >> 11) as f64 * libm::exp2(-40.0) - 4_000.0;
            for number in [any, usual].into_iter().filter(|number| number.is_finite()) {
                assert_eq!(parse_decimal(&format!("{number}")), Some(number));
                let short = format!("{number:.3}");
                assert_eq!(parse_decimal(&short), short.parse().ok(), "{short}");
            }
        }
    }

    #[test]
    fn what_is_no_decimal_is_not_read() {
        for text in [
            "", "abc", "4x", "--4", "4..2", "1e", " 4", "4 ", "0x10", "1_000",
        ] {
            assert_eq!(parse_decimal(text), None, "{text:?}");
        }
        assert_eq!(parse_decimal("+.5"), "+.5".parse().ok());
        assert_eq!(parse_decimal("3."), "3.".parse().ok());
    }
}
