//! The calculation behind Noonday.

pub mod advice;
pub mod air;
pub mod cabin;
pub mod comfort;
pub mod cooler;
pub mod electrical;
pub mod envelope;
pub mod quantity;
pub mod scenario;
pub mod schedule;
pub mod simulation;
pub mod solar;
pub mod validity;
pub mod weather;
