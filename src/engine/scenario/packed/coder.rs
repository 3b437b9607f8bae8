//! An adaptive binary arithmetic coder: each yes or no costs as many bits as it is unlikely.
//!
//! Witten, Neal and Cleary (1987), "Arithmetic coding for data compression", in the form for two symbols that needs no carry: an
//! interval of 32 bits is cut in proportion to the chance, and bytes on which both ends agree are written. Integers only, so every
//! platform reads what any other wrote.

/// Cases after which a chance learns no more slowly.
const MOST_SEEN: u8 = 60;

/// The chance that a yes or no is a yes, learnt from those before it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Chance {
    /// In 65 536ths, never quite none and never quite all.
    of_yes: u16,
    /// Cases seen.
    seen: u8,
}

impl Chance {
    /// Nothing known.
    pub(super) fn even() -> Self {
        Self {
            of_yes: 1 << 15,
            seen: 0,
        }
    }

    fn learn(&mut self, yes: bool) {
        let aim = if yes { i32::from(u16::MAX) } else { 0 };
        let now = i32::from(self.of_yes);
        let next = now + (aim - now) / (i32::from(self.seen) + 2);
        self.of_yes = next.clamp(1, i32::from(u16::MAX) - 1) as u16;
        self.seen = (self.seen + 1).min(MOST_SEEN);
    }
}

/// Which way the coder goes.
enum Way<'a> {
    /// Only chances learn.
    Learn,
    /// Bytes come out.
    Write(Vec<u8>),
    /// Bytes go in; behind their end there are zeros for ever.
    Read { bytes: &'a [u8], code: u32 },
}

/// Writes or reads yes after no. One model serves both ways: what it tells a reader is passed over, and it goes by the answer.
pub(super) struct Coder<'a> {
    low: u32,
    high: u32,
    way: Way<'a>,
}

impl<'a> Coder<'a> {
    /// One that only lets the chances learn.
    pub(super) fn learner() -> Self {
        Self::new(Way::Learn)
    }

    /// One that writes.
    pub(super) fn writer() -> Self {
        Self::new(Way::Write(Vec::new()))
    }

    /// One that reads.
    pub(super) fn reader(bytes: &'a [u8]) -> Self {
        let mut coder = Self::new(Way::Read { bytes, code: 0 });
        for _ in 0..4 {
            coder.take_byte();
        }
        coder
    }

    fn new(way: Way<'a>) -> Self {
        Self {
            low: 0,
            high: u32::MAX,
            way,
        }
    }

    /// Passes one yes or no.
    pub(super) fn pass(&mut self, chance: &mut Chance, yes: bool) -> bool {
        let width = u64::from(self.high - self.low);
        let middle = self.low + ((width * u64::from(chance.of_yes)) >> 16) as u32;
        let yes = match &self.way {
            Way::Read { code, .. } => *code <= middle,
            Way::Learn | Way::Write(_) => yes,
        };
        chance.learn(yes);
        if yes {
            self.high = middle;
        } else {
            self.low = middle + 1;
        }
        while (self.low ^ self.high) >> 24 == 0 {
            self.shift();
        }
        yes
    }

    /// The fewest bytes from which a reader reads the same.
    pub(super) fn finish(self) -> Vec<u8> {
        let Way::Write(mut bytes) = self.way else {
            return Vec::new();
        };
        for kept_bits in [0, 8, 16, 24, 32] {
            let zeros = u64::from(u32::MAX) >> kept_bits;
            let least = (u64::from(self.low) + zeros) & !zeros;
            if least <= u64::from(self.high) {
                bytes.extend((least as u32).to_be_bytes());
                break;
            }
        }
        while bytes.last() == Some(&0) {
            bytes.pop();
        }
        bytes
    }

    fn shift(&mut self) {
        if let Way::Write(bytes) = &mut self.way {
            bytes.push((self.high >> 24) as u8);
        }
        self.low <<= 8;
        self.high = (self.high << 8) | 0xFF;
        self.take_byte();
    }

    fn take_byte(&mut self) {
        if let Way::Read { bytes, code } = &mut self.way {
            let (first, rest) = bytes.split_first().unwrap_or((&0, &[]));
            *code = (*code << 8) | u32::from(*first);
            *bytes = rest;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pattern(count: u32, share: u32) -> Vec<bool> {
        let mut state = 1_u32;
        (0..count)
            .map(|_| {
                state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                (state >> 16) % 100 < share
            })
            .collect()
    }

    fn written(answers: &[bool]) -> Vec<u8> {
        let mut chance = Chance::even();
        let mut coder = Coder::writer();
        for yes in answers {
            coder.pass(&mut chance, *yes);
        }
        coder.finish()
    }

    #[test]
    fn what_is_written_is_read() {
        for share in [0, 1, 20, 50, 99, 100] {
            for count in [0, 1, 2, 7, 40, 5_000] {
                let answers = pattern(count, share);
                let bytes = written(&answers);
                let mut chance = Chance::even();
                let mut coder = Coder::reader(&bytes);
                let read: Vec<bool> = answers
                    .iter()
                    .map(|_| coder.pass(&mut chance, false))
                    .collect();
                assert_eq!(read, answers, "{share} of {count}");
            }
        }
    }

    /// Shannon (1948): a source with a share p of yes has -p log2 p - (1 - p) log2 (1 - p) bits each, and no code is shorter.
    #[test]
    fn it_comes_near_the_entropy_of_its_source() {
        for share in [5, 20, 50] {
            let answers = pattern(40_000, share);
            let p = answers.iter().filter(|yes| **yes).count() as f64 / 40_000.0;
            let entropy = -p * libm::log2(p) - (1.0 - p) * libm::log2(1.0 - p);
            let bits = 8.0 * written(&answers).len() as f64 / 40_000.0;
            assert!(
                bits > 0.995 * entropy && bits < 1.03 * entropy + 0.01,
                "{bits} {entropy}"
            );
        }
    }
}
