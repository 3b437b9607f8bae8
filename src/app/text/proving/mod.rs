//! Wording of what comes after the work: the check of a finished unit, and what a logged day teaches.

mod acceptance;
mod learning;

pub use acceptance::*;
pub use learning::*;

/// Heading of the section.
pub const PROVING: &str = "Does it do what was promised?";
/// Under it.
pub const PROVING_NOTE: &str = "Once it is built: hold what meters show against what this calculation expects, and let a logged day say what the vehicle is really like.";
/// Caution of the whole.
pub const PROVING_CAUTION: &str = "Never leave people or animals in a parked vehicle to try the cooling. The refrigerant circuit stays closed: work on it is for people licensed for it. Cables of a low-voltage bank carry hundreds of amperes into a slipped tool; measure with insulated probes and a clamp, and leave connections tight.";
