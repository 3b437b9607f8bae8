//! The sun: where it stands, how strongly it shines, and what reaches a tilted plane.
//!
//! Three steps, each of its own: [`SunPath`] gives the position at an instant, [`ClearSky`] and
//! [`Clouds`] the irradiance on the ground, [`SkyDome`] the share that falls on a [`Plane`]. A
//! weather file replaces the second step and nothing else.
//!
//! Azimuths are degrees clockwise from north, zeniths degrees from straight up, tilts degrees from
//! lying flat and facing up. Directions are unit vectors of east, north and up.

mod clear_sky;
mod date;
mod ephemeris;
mod plane;
mod position;

pub use clear_sky::{
    ClearSky, Clouds, Irradiance, LINKE_TURBIDITY_GREATEST, LINKE_TURBIDITY_LEAST,
    diffuse_share_from_clearness, extraterrestrial_normal_w_m2, relative_airmass,
};
pub use date::{Date, YEAR_GREATEST, YEAR_LEAST};
pub use plane::{Plane, PlaneIrradiance, SkyDome};
pub use position::{DAYS_GREATEST, Place, SunPath, SunPosition};

/// A number that is outside its range, or not a number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    /// Name of the quantity, with its unit.
    pub quantity: &'static str,
    /// Value given.
    pub value: f64,
    /// Least value allowed.
    pub least: f64,
    /// Greatest value allowed.
    pub greatest: f64,
}

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

/// Passes a number that lies in its range.
pub(crate) fn in_range(
    quantity: &'static str,
    value: f64,
    least: f64,
    greatest: f64,
) -> Result<f64, OutOfRange> {
    if (least..=greatest).contains(&value) {
        Ok(value)
    } else {
        Err(OutOfRange {
            quantity,
            value,
            least,
            greatest,
        })
    }
}
