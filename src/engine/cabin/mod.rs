//! The cabin as a thermal network: one well-mixed air node, a mean-radiant star, and for every part of the shell, and for
//! furniture, a chain of five nodes from its outer to its inner face.
//!
//! Each chain meets the outdoors at node 0 (sun, convection, longwave to sky, air and ground) and the cabin at node 4
//! (convection to the air, longwave to the star, sun that came through glass). Within an interval of about a minute the
//! coefficients are frozen, the network is linear, and its matrix is factored once; a step is then a substitution without
//! division. Steps use the θ-method with θ = 0.55 (1 in steps beyond a minute): the state at t + θΔt is solved implicitly, every flow is taken there, and
//! the state at t + Δt follows by extrapolation. That is stable at any step, nearly of second order, and it conserves energy
//! to rounding because both ends of a path see the same flow.
//!
//! Assumptions: one-dimensional conduction; one air temperature; ribs inside the conductivity of the insulation
//! ([`crate::envelope::bridging`]), unfilled cavities as chains of their own; longwave between inner surfaces by the star of
//! Carroll 1980 (ASHRAE Transactions 86(2)). The cabin knows no clock, no weather source and no thermostat.

mod boundary;
mod chain;
mod coefficients;
mod description;
mod faces;
mod flows;
mod interval;
mod ledger;
mod moisture;
mod network;
mod star;
mod strip;
mod wind;

pub use boundary::{AirExchange, Boundary, SunOnElements};
pub use chain::{Chain, Layer};
pub use description::{CabinDescription, CabinError, Element, LANES, Outside, Part};
pub use flows::{Extraction, Forecast, Gains, StepResult};
pub use ledger::Ledger;
pub use network::Cabin;
