//! The state of the outdoors at any instant of a run.
//!
//! Two sources give one and the same thing, [`Outdoors`]: a [`HotDay`] made of a forecast's few
//! numbers, and a [`FileWeather`] read from an hourly file. Both run on local standard time, in
//! seconds since the midnight that begins the first day of the run. [`Shade`] and the surface
//! temperature of the ground belong to the parking spot and are worked out from the same state.

mod epw;
mod epw_calendar;
#[cfg(test)]
mod epw_tests;
mod file;
mod file_days;
#[cfg(test)]
mod file_days_tests;
mod file_records;
#[cfg(test)]
mod file_tests;
mod ground;
mod ground_slab;
mod ground_surface;
mod hot_day;
mod invented;
mod shade;
mod sky;

pub use epw::{EPW_TEXT_GREATEST_BYTES, Epw, EpwError, EpwLocation, EpwRecord};
pub use file::FileWeather;
pub(crate) use file_days::mean_wind_from_deg;
pub use file_days::{FileDay, ReducedDay};
pub use file_records::Filled;
pub use ground::{GroundExposure, GroundTemperatures, ground_surface_temperatures_c};
pub use ground_surface::{GroundLayer, GroundProperties, GroundSurface};
pub use hot_day::{HotDay, HotDayInput, Sunlight};
pub use invented::invented_summer;
pub use shade::Shade;
pub use sky::{
    clear_sky_emissivity, clear_sky_emissivity_corrected, cloud_factor, sky_longwave_w_m2,
    sky_temperature_c,
};

use crate::schedule::ScheduleError;
use crate::solar::{Irradiance, SolarError, SunPath, SunPosition};
use crate::validity::OutOfRange;

/// The outdoors at an instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outdoors {
    /// Dry bulb of the air, °C.
    pub dry_bulb_c: f64,
    /// Humidity ratio of the air, kg per kg of dry air; never above saturation.
    pub humidity_ratio: f64,
    /// Pressure of the air, Pa.
    pub pressure_pa: f64,
    /// Wind speed 10 m above open country, m/s.
    pub wind_speed_10m_m_s: f64,
    /// Where the wind comes from, degrees clockwise from north; a forecast may not say.
    pub wind_from_deg: Option<f64>,
    /// Longwave radiation of the sky onto a horizontal plane, W/m².
    pub sky_longwave_w_m2: f64,
    /// Shortwave irradiance of the ground.
    pub irradiance: Irradiance,
    /// Where the sun stands.
    pub sun: SunPosition,
}

/// Why a weather cannot be built.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WeatherError {
    /// The low of the day is above its high.
    LowAboveHigh {
        /// Low given, °C.
        low_c: f64,
        /// High given, °C.
        high_c: f64,
    },
    /// A number is outside its range.
    OutOfRange(OutOfRange),
    /// An hour is not one of a day.
    Hours(ScheduleError),
    /// The sun has no path there.
    Sun(SolarError),
}

impl From<SolarError> for WeatherError {
    fn from(error: SolarError) -> Self {
        Self::Sun(error)
    }
}

impl From<ScheduleError> for WeatherError {
    fn from(error: ScheduleError) -> Self {
        Self::Hours(error)
    }
}

impl From<OutOfRange> for WeatherError {
    fn from(error: OutOfRange) -> Self {
        Self::OutOfRange(error)
    }
}

/// Where the weather of a run comes from.
#[derive(Clone, Debug, PartialEq)]
pub enum Weather {
    /// A forecast's high, low, dew point, cloud and wind.
    HotDay(Box<HotDay>),
    /// A weather file.
    File(FileWeather),
}

impl Weather {
    /// The outdoors at an instant.
    ///
    /// `time_s`: seconds of local standard time since the midnight that begins the first day,
    /// within the reach of `sun`, whose time base is the same.
    #[must_use]
    pub fn at(&self, time_s: f64, sun: &SunPath) -> Outdoors {
        match self {
            Self::HotDay(day) => day.at(time_s, sun),
            Self::File(file) => file.at(time_s, sun),
        }
    }
}
