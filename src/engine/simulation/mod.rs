//! The time loop and its results.

mod results;

pub use results::{Balance, HeatPath, Results, Series, Stop, Totals};
