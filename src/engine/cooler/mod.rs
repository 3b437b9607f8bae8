//! The cooler: what a direct-expansion unit extracts, what it draws and when it runs.
//!
//! `curves` holds published performance curves and `bypass` the split of a coil's capacity; `coil`
//! makes of both and a rating the heat extracted from the cabin air. `control` decides when and how
//! fast the compressor runs, `start_up` what a start costs, `protection` when the voltage forbids it.
//! `data_plate` judges what a plate claims.

pub mod bypass;
pub mod coil;
pub mod control;
pub mod curves;
pub mod data_plate;
pub mod protection;
pub mod rating;
pub mod start_up;
