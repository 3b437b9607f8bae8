//! What a logged day tells of the vehicle: how much of its cavities is really filled, how leaky it is, how much heat its contents
//! hold.
//!
//! A run follows the log: its clock, its air outdoors and the power of the cooler where it has them. The three quantities, and by how
//! much the whole cabin was warmer at the start than the day before would have left it, are fitted to the cabin's air by least
//! squares. The share filled stands for the insulation as a whole: thickness, conductivity and gaps act on the same path of heat, and
//! one temperature cannot tell them apart. Where two of the three act so much alike over that day that only their sum is known, the
//! result says so.
//!
//! The log's column of the cabin is taken as its mixed air; sun on the sensor is not modelled.

mod algebra;
mod day;
mod fit;
mod learned;
mod least_squares;
mod log;
#[cfg(test)]
mod tests;

pub use fit::{Assumed, Learning, LearningError, MODEL_RMS_K};
pub use learned::{Estimate, Learned, Parameter};
pub use least_squares::{Bounds, Fitted, FittedQuantity, LeastSquares};
pub use log::*;
