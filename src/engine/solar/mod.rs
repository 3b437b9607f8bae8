//! The sun: where it stands, how strongly it shines, and what reaches a tilted plane.
//!
//! Three steps, each of its own: [`SunPath`] gives the position at an instant, [`ClearSky`] and
//! [`Clouds`] the irradiance on the ground, [`SkyDome`] the share that falls on a [`Plane`]. A
//! weather file replaces the second step and nothing else.
//!
//! Azimuths are degrees clockwise from north, zeniths degrees from straight up, tilts degrees from
//! lying flat and facing up. Directions are unit vectors of east, north and up.

mod clear_sky;
mod clock;
mod date;
mod ephemeris;
mod plane;
mod position;

pub use clear_sky::{
    ClearSky, Clouds, Irradiance, LINKE_TURBIDITY_GREATEST, LINKE_TURBIDITY_LEAST,
    diffuse_share_from_clearness, extraterrestrial_normal_w_m2, relative_airmass,
};
pub use clock::likely_utc_offset_h;
pub use date::{Date, YEAR_GREATEST, YEAR_LEAST};
pub use plane::{Plane, PlaneIrradiance, SkyDome};
pub use position::{DAYS_GREATEST, Place, SunPath, SunPosition};

use crate::validity::OutOfRange;

/// Why a date or a path of the sun cannot be had.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SolarError {
    /// The month or the day does not exist, or the year is outside
    /// [`YEAR_LEAST`]…[`YEAR_GREATEST`].
    NoSuchDate {
        /// Year asked for.
        year: i32,
        /// Month asked for.
        month: u8,
        /// Day of the month asked for.
        day: u8,
    },
    /// A number is outside its range.
    OutOfRange(OutOfRange),
}

impl From<OutOfRange> for SolarError {
    fn from(error: OutOfRange) -> Self {
        Self::OutOfRange(error)
    }
}
