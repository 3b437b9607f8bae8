//! The electrical side: the battery bank, what charges it and what stands between it and mains loads.
//!
//! Power is reckoned at the terminals of the bank; current into the bank is positive.

pub mod bank_input;
pub mod battery;
pub mod charger;
pub mod chemistry;
pub mod inverter;
pub mod panels;
