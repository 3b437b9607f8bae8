//! The electrical side: the battery bank, what charges it and what stands between it and mains loads.
//!
//! Power is reckoned at the terminals of the bank; current into the bank is positive.

mod bank_input;
mod battery;
mod charger;
mod chemistry;
pub mod circuit;
pub mod conductor;
mod inverter;
pub mod overcurrent;
mod panels;

pub use bank_input::{BankError, BankInput};
pub use battery::{Bank, BankConditions, BankFlow, BankLimit, BankState, BankStep};
pub use charger::{DriveCharger, ShoreCharger};
pub use chemistry::{CellProperties, Chemistry};
pub use inverter::{Inverter, InverterInput, InverterOverload, grid_inverter_efficiency};
pub use panels::{PanelInput, PanelLosses, PanelMounting, Panels, cell_temperature_c};
