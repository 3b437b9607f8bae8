//! How likely what is in a link: whole numbers, decimals and texts as yes after no.

use super::coder::{Chance, Coder};
use crate::quantity::parse_decimal;
use crate::scenario::link::LONGEST_LINK_BYTES;

/// Binary digits of the greatest whole number, and one more for none at all.
const LENGTHS: usize = 64;
/// Exponents of ten from here on are common.
const LEAST_COMMON_EXPONENT: i32 = -9;
/// Those of rare ones are counted from here; all of f64 lie above.
const LEAST_EXPONENT: i32 = -400;
/// Stands for an exponent that is not common.
const RARE: u64 = 15;
/// The exponent, rare too, of what is no decimal, such as an infinity: its bits follow.
const NO_DECIMAL: i32 = 623;

/// From this text the chances of letters are learnt before the first: it is part of the form and never changes.
const LIKELY_TEXT: &str = "For Mr and Mrs the van, two people and a dog. Please see that the roof and the windows are covered \
    in the afternoon; it is a hot day and we need the cooler until 10 pm at 25 degrees. Thanks, see you on Monday.";

/// Whole numbers: how many binary digits, learnt; then the digits.
pub(super) struct WholeModel {
    lengths: [Chance; LENGTHS],
}

/// A whole number of a known count of binary digits, each as likely as not.
fn plain_digits(coder: &mut Coder, digits: u32, value: u64) -> u64 {
    (0..digits).rev().fold(0, |read, digit| {
        let yes = coder.pass(&mut Chance::even(), (value >> digit) & 1 == 1);
        (read << 1) | u64::from(yes)
    })
}

/// A whole number of a known count of binary digits, each learnt at its place behind those before it.
fn learnt_digits(coder: &mut Coder, chances: &mut [Chance], digits: u32, value: u64) -> u64 {
    let mut place = 1_usize;
    for digit in (0..digits).rev() {
        let yes = (value >> digit) & 1 == 1;
        let yes = match chances.get_mut(place) {
            Some(chance) => coder.pass(chance, yes),
            None => yes,
        };
        place = (place << 1) | usize::from(yes);
    }
    place as u64 - (1 << digits)
}

/// How many binary digits a whole number has.
fn length(value: u64) -> u64 {
    u64::from(u64::BITS - value.leading_zeros())
}

/// A whole number of a known length, whose first digit is therefore known.
fn digits_below_first(coder: &mut Coder, length: u32, value: u64) -> u64 {
    match length.checked_sub(1) {
        Some(below) => (1 << below) | plain_digits(coder, below, value),
        None => 0,
    }
}

impl WholeModel {
    /// Nothing learnt.
    pub(super) fn new() -> Self {
        Self {
            lengths: [Chance::even(); LENGTHS],
        }
    }

    /// Passes a whole number below 2^63.
    pub(super) fn pass(&mut self, coder: &mut Coder, value: u64) -> u64 {
        let length = learnt_digits(coder, &mut self.lengths, 6, length(value));
        digits_below_first(coder, length as u32, value)
    }

    /// Passes a whole number of either sign.
    pub(super) fn pass_signed(&mut self, coder: &mut Coder, value: i64) -> i64 {
        let folded = ((value << 1) ^ (value >> 63)) as u64;
        let folded = self.pass(coder, folded);
        (folded >> 1) as i64 ^ -((folded & 1) as i64)
    }
}

/// Numbers: most are a whole number of grains, and its binary digits are about as many as those of the default.
pub(super) struct NumberModel {
    in_grains: Chance,
    grains: [Chance; 2 * LENGTHS],
    exponents: [Chance; 16],
    sign: Chance,
    whole: WholeModel,
}

impl NumberModel {
    /// Nothing learnt.
    pub(super) fn new() -> Self {
        Self {
            in_grains: Chance::even(),
            grains: [Chance::even(); 2 * LENGTHS],
            exponents: [Chance::even(); 16],
            sign: Chance::even(),
            whole: WholeModel::new(),
        }
    }

    /// Passes a number whose grain is a power of ten and whose default is known; what is read is what was written, to the bit.
    pub(super) fn pass(&mut self, coder: &mut Coder, value: f64, usual: (i32, f64)) -> f64 {
        let (power, default) = usual;
        let decimal = Decimal::of(value);
        let grains = decimal.in_grains(power);
        if !coder.pass(&mut self.in_grains, grains.is_some()) {
            return self.pass_any(coder, value, &decimal);
        }
        let negative = coder.pass(&mut self.sign, decimal.negative);
        let usual = Decimal::of(default).in_grains(power).unwrap_or_default();
        let digits = grains.unwrap_or_default();
        let more = length(digits) + u64::from(u64::BITS) - length(usual);
        let more = learnt_digits(coder, &mut self.grains, 7, more);
        let length = (more + length(usual)).saturating_sub(u64::from(u64::BITS));
        let digits = digits_below_first(coder, length.min(63) as u32, digits);
        Decimal {
            negative,
            digits,
            exponent: power,
        }
        .value()
    }

    fn pass_any(&mut self, coder: &mut Coder, value: f64, decimal: &Decimal) -> f64 {
        let common = u64::try_from(decimal.exponent - LEAST_COMMON_EXPONENT).unwrap_or(RARE);
        let common = learnt_digits(coder, &mut self.exponents, 4, common.min(RARE));
        let exponent = if common < RARE {
            common as i32 + LEAST_COMMON_EXPONENT
        } else {
            let rare = u64::try_from(decimal.exponent - LEAST_EXPONENT).unwrap_or_default();
            plain_digits(coder, 10, rare) as i32 + LEAST_EXPONENT
        };
        if exponent == NO_DECIMAL {
            return f64::from_bits(plain_digits(coder, u64::BITS, value.to_bits()));
        }
        let negative = coder.pass(&mut self.sign, decimal.negative);
        let digits = self.whole.pass(coder, decimal.digits);
        Decimal {
            negative,
            digits,
            exponent,
        }
        .value()
    }
}

/// ± digits × 10^exponent.
struct Decimal {
    negative: bool,
    digits: u64,
    exponent: i32,
}

impl Decimal {
    /// The shortest that reads back to the same bits.
    fn of(value: f64) -> Self {
        let negative = value.is_sign_negative();
        if !value.is_finite() {
            return Self {
                negative,
                digits: 0,
                exponent: NO_DECIMAL,
            };
        }
        let text = value.abs().to_string();
        let (whole, fraction) = text.split_once('.').unwrap_or((&text, ""));
        let all = format!("{whole}{fraction}");
        let kept = all.trim_end_matches('0');
        let zeros = all.len() - kept.len();
        Self {
            negative,
            digits: kept.parse().unwrap_or_default(),
            exponent: zeros as i32 - fraction.len() as i32,
        }
    }

    /// How many times a power of ten it is; nothing if that is no whole number, or a very great one.
    fn in_grains(&self, power: i32) -> Option<u64> {
        if self.digits == 0 && self.exponent != NO_DECIMAL {
            return Some(0);
        }
        let zeros = u32::try_from(self.exponent - power).ok()?;
        let grains = 10_u64.checked_pow(zeros)?.checked_mul(self.digits)?;
        (length(grains) < 63).then_some(grains)
    }

    fn value(&self) -> f64 {
        let size = parse_decimal(&format!("{}e{}", self.digits, self.exponent));
        let size = size.unwrap_or(f64::NAN);
        if self.negative { -size } else { size }
    }
}

/// Texts: their bytes, each learnt by what kind of byte it follows, or each as likely as any other.
pub(super) struct TextModel {
    learns: bool,
    length: WholeModel,
    bytes: Box<[[Chance; 256]; KINDS]>,
}

const KINDS: usize = 4;

/// Blank or mark, small letter, other letter or digit, anything beyond ASCII.
fn kind(byte: u8) -> usize {
    match byte {
        b'a'..=b'z' => 1,
        b'A'..=b'Z' | b'0'..=b'9' => 2,
        128.. => 3,
        _ => 0,
    }
}

impl TextModel {
    /// With what [`LIKELY_TEXT`] teaches, if it is to learn at all.
    pub(super) fn new(learns: bool) -> Self {
        let mut model = Self {
            learns,
            length: WholeModel::new(),
            bytes: Box::new([[Chance::even(); 256]; KINDS]),
        };
        model.pass_bytes(
            &mut Coder::learner(),
            LIKELY_TEXT.as_bytes(),
            LIKELY_TEXT.len(),
        );
        model
    }

    /// Passes a text of at most [`LONGEST_LINK_BYTES`]; nothing where a longer one, or none of UTF-8, is read.
    pub(super) fn pass(&mut self, coder: &mut Coder, text: &str) -> Option<String> {
        let length = self.length.pass(coder, text.len() as u64);
        let length = usize::try_from(length).ok()?;
        if length > LONGEST_LINK_BYTES {
            return None;
        }
        let bytes = self.pass_bytes(coder, text.as_bytes(), length);
        String::from_utf8(bytes).ok()
    }

    fn pass_bytes(&mut self, coder: &mut Coder, bytes: &[u8], length: usize) -> Vec<u8> {
        let mut passed = Vec::new();
        let mut before = 0;
        for index in 0..length {
            let byte = u64::from(bytes.get(index).copied().unwrap_or_default());
            before = match self.bytes.get_mut(kind(before)) {
                Some(chances) if self.learns => learnt_digits(coder, chances, 8, byte) as u8,
                _ => plain_digits(coder, 8, byte) as u8,
            };
            passed.push(before);
        }
        passed
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn through(value: f64, usual: (i32, f64)) -> f64 {
        let mut coder = Coder::writer();
        NumberModel::new().pass(&mut coder, value, usual);
        let bytes = coder.finish();
        NumberModel::new().pass(&mut Coder::reader(&bytes), 0.0, usual)
    }

    #[test]
    fn numbers_come_back_to_the_bit() {
        let mut bits = 0x9E37_79B9_7F4A_7C15_u64;
        let mut numbers = vec![
            0.0,
            -0.0,
            0.1,
            -33.85,
            1e-9,
            5e5,
            1e6,
            786.123_456_789_012_3,
            f64::MAX,
            f64::MIN_POSITIVE,
            5e-324,
            f64::INFINITY,
            f64::NEG_INFINITY,
            f64::NAN,
        ];
        for _ in 0..2_000 {
            bits = bits
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            numbers.push(f64::from_bits(bits));
        }
        for number in numbers {
            for usual in [(-3, 0.25), (3, 250_000.0), (0, 0.0), (-7, 1e300)] {
                let back = through(number, usual);
                assert_eq!(back.to_bits(), number.to_bits(), "{number}");
            }
        }
    }

    #[test]
    fn whole_numbers_and_signs_come_back() {
        for value in [0, 1, 2, 3, 255, 256, 1 << 40, (1 << 62) + 12_345] {
            let mut coder = Coder::writer();
            WholeModel::new().pass(&mut coder, value);
            WholeModel::new().pass_signed(&mut coder, -(value as i64 >> 1));
            let bytes = coder.finish();
            let mut coder = Coder::reader(&bytes);
            assert_eq!(WholeModel::new().pass(&mut coder, 0), value);
            let signed = WholeModel::new().pass_signed(&mut coder, 0);
            assert_eq!(signed, -(value as i64 >> 1));
        }
    }

    #[test]
    fn texts_come_back_and_endless_ones_are_refused() {
        for text in ["", "van", "Zoë & Søn #1 = 100 %", "日よけ 🐕\n\u{0}"] {
            for learns in [true, false] {
                let mut coder = Coder::writer();
                TextModel::new(learns).pass(&mut coder, text);
                let bytes = coder.finish();
                let read = TextModel::new(learns).pass(&mut Coder::reader(&bytes), "");
                assert_eq!(read.as_deref(), Some(text));
            }
        }
        let mut coder = Coder::writer();
        WholeModel::new().pass(&mut coder, 1 << 50);
        let bytes = coder.finish();
        assert_eq!(
            TextModel::new(true).pass(&mut Coder::reader(&bytes), ""),
            None
        );
    }
}
