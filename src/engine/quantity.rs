//! Physical constants and the few conversions between scales that every module shares.

use std::ops::{Add, Mul, Sub};
use wide::bytemuck::cast;
use wide::{f64x4, u64x4};

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

/// A number, or four of them that a processor works out side by side: left to itself the compiler does so or not from one build to
/// the next.
pub trait Number:
    Copy + Add<Output = Self> + Sub<Output = Self> + Mul<Output = Self> + Bounded
{
    /// The same number in each place.
    #[must_use]
    fn of(number: f64) -> Self;

    /// Its size.
    #[must_use]
    fn abs(self) -> Self;

    /// Its square root.
    #[must_use]
    fn sqrt(self) -> Self;

    /// Its cube root, of either sign, within 1e-14 of it.
    ///
    /// Convection asks for it more often than for anything else, and the correctly rounded one of the mathematics library costs
    /// ten times as much where no fused multiply-add is at hand. A guess from the exponent (Kahan 1991) is mended twice by
    /// Halley's iteration x(x³ + 2a)/(2x³ + a), in operations that every platform rounds alike. Zero, infinities and NaN give
    /// themselves.
    #[must_use]
    fn cube_root(self) -> Self;

    /// One number where this one is above zero, another elsewhere.
    #[must_use]
    fn where_positive(self, one: Self, other: Self) -> Self;
}

impl Number for f64 {
    #[inline(always)]
    fn of(number: f64) -> Self {
        number
    }

    #[inline(always)]
    fn abs(self) -> Self {
        f64::abs(self)
    }

    #[inline(always)]
    fn sqrt(self) -> Self {
        f64::sqrt(self)
    }

    fn cube_root(self) -> Self {
        let [root, ..] = f64x4::splat(self).cube_root().to_array();
        root
    }

    #[inline(always)]
    fn where_positive(self, one: Self, other: Self) -> Self {
        if self > 0.0 { one } else { other }
    }
}

impl Number for f64x4 {
    #[inline(always)]
    fn of(number: f64) -> Self {
        Self::splat(number)
    }

    #[inline(always)]
    fn abs(self) -> Self {
        Self::abs(self)
    }

    #[inline(always)]
    fn sqrt(self) -> Self {
        Self::sqrt(self)
    }

    fn cube_root(self) -> Self {
        let size = self.abs();
        let mut root = guessed_cube_roots(size);
        for _ in 0..2 {
            let cube = root * root * root;
            root *= (cube + 2.0 * size) / (2.0 * cube + size);
        }
        let is_ordinary =
            size.simd_ge(Self::splat(f64::MIN_POSITIVE)) & size.simd_le(Self::splat(f64::MAX));
        is_ordinary.select(root.copysign(self), self)
    }

    #[inline(always)]
    fn where_positive(self, one: Self, other: Self) -> Self {
        self.simd_gt(Self::splat(0.0)).select(one, other)
    }
}

/// A third of the exponent. Processors divide no whole numbers side by side, so it is taken of the fraction of a number that is so
/// large that its last bit stands for one.
#[inline(always)]
fn guessed_cube_roots(size: f64x4) -> f64x4 {
    const THIRD: f64 = 1.0 / 3.0;
    const EXPONENT_OFFSET: f64 = 0x2A9F_7893 as f64;
    let upper = cast::<f64x4, u64x4>(size) >> 32_u32;
    let large: f64x4 = cast(upper | u64x4::splat(LARGE.to_bits()));
    let third = large * THIRD + f64x4::splat(LARGE - LARGE * THIRD + EXPONENT_OFFSET);
    cast(cast::<f64x4, u64x4>(third) << 32_u32)
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

impl Bounded for f64x4 {
    #[inline(always)]
    fn at_least(self, bound: Self) -> Self {
        self.simd_gt(bound).select(self, bound)
    }

    #[inline(always)]
    fn at_most(self, bound: Self) -> Self {
        self.simd_lt(bound).select(self, bound)
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
                let ratio = number.cube_root() / libm::cbrt(number);
                assert!((ratio - 1.0).abs() < 1e-14, "{number}: {ratio}");
                assert_eq!((-number).cube_root(), -number.cube_root());
            }
        }
        assert_eq!(0.0.cube_root(), 0.0);
        assert!(f64::NAN.cube_root().is_nan());
    }

    #[test]
    fn four_numbers_go_as_each_of_them() {
        let (numbers, others) = ([-2.0, 0.0, 0.5, f64::NAN], [1.0, -1.0, 0.25, 3.0]);
        let (four, other) = (f64x4::new(numbers), f64x4::new(others));
        let each = |result: f64x4, alone: fn(f64, f64) -> f64| {
            let results = result.to_array().into_iter();
            for ((result, number), other) in results.zip(numbers).zip(others) {
                let expected = alone(number, other);
                assert_eq!(result.to_bits(), expected.to_bits(), "{number}, {other}");
            }
        };
        each(four.at_least(other), f64::at_least);
        each(four.at_most(other), f64::at_most);
        each(four.where_positive(other, four), |a, b| {
            a.where_positive(b, a)
        });
        each(Number::abs(four), |a, _| Number::abs(a));
        each(Number::sqrt(other * other), |_, b| Number::sqrt(b * b));
        each(other.cube_root(), |_, b| b.cube_root());
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
