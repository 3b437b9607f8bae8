//! The vehicle's shell: materials, steel ribs, convection on both sides, glass, leaks and openings.
//!
//! Pure functions and small records of coefficients; the thermal network that uses them is in [`crate::cabin`].

pub mod air_exchange;
pub mod bridging;
pub mod convection;
pub mod glazing;
pub mod materials;
