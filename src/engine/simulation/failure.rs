//! What may fail in a run, and when.

use serde::{Deserialize, Serialize};

/// A part that fails.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum FailingPart {
    /// The cooler: compressor and blower stop. Fan, loads and charging go on.
    Cooler,
    /// The bank: everything that it feeds stops, the fan as well, and nothing charges it.
    Bank,
}

/// A part that fails for good.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Failure {
    /// Which.
    pub part: FailingPart,
    /// When, s since midnight of the first day. It takes effect with the interval that begins then or next, at the latest with
    /// the next sample.
    pub at_s: f64,
}

impl Failure {
    /// Whether it has happened, s since midnight of the first day.
    pub(super) fn has_happened(&self, clock_s: f64) -> bool {
        clock_s >= self.at_s
    }
}
