//! Weather from an hourly file, at any instant.
//!
//! **Where the values stand in time.** Dry bulb, humidity, pressure, wind and the sky's longwave
//! are values at the stamp and are interpolated between stamps. (The format calls the longwave a
//! mean, but in the typical-year files it is computed from the dew point and cover at the stamp.)
//! Direct and diffuse irradiance are means of the interval that ends at the stamp: they are put at
//! its middle, interpolated, and set to zero while the sun is down. This keeps the sum of a clear
//! day to about 1 %. The global irradiance is the sum of the two, so that the three always agree.
//!
//! **Before the first and after the last record** the value of that record holds; a file of a whole
//! year goes on with its other end.
//!
//! What stands in for missing values is counted for each quantity ([`FileWeather::filled`]).
//!
//! Source: EnergyPlus Auxiliary Programs, EPW data dictionary; placing of the means at mid-interval
//! as in the EnergyPlus Engineering Reference, interpolation of weather data.

use super::Outdoors;
use super::epw::{Epw, EpwError};
use super::file_records::{Filled, Stamp, Sunshine, mix, place, spacing_s, stamps, sunshine};
use crate::air::saturation_humidity_ratio;
use crate::quantity::{Bounded, SECONDS_PER_DAY};
use crate::solar::{Date, Irradiance, Place, SunPath, SunPosition};

/// Days from which a file counts as a whole year.
const DAYS_IN_YEAR: usize = 365;

/// The weather of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct FileWeather {
    name: String,
    place: Place,
    /// Day of the first record.
    file_first_day: Date,
    /// Days from there to the day on which the run begins.
    start_day: usize,
    spacing_s: f64,
    stamps: Vec<Stamp>,
    sunshine: Vec<Sunshine>,
    filled: Vec<Filled>,
}

impl FileWeather {
    /// Makes weather of an EPW text; the time base begins with its first day.
    ///
    /// # Errors
    /// An [`EpwError`] if the text cannot be read or lacks a quantity altogether.
    pub fn from_epw_text(text: &str) -> Result<Self, EpwError> {
        Self::new(&Epw::parse(text)?)
    }

    /// Makes weather of a file that has been read; the time base begins with its first day.
    ///
    /// # Errors
    /// [`EpwError::NothingKnown`] if a quantity is missing in every record.
    pub fn new(epw: &Epw) -> Result<Self, EpwError> {
        let mut filled = Vec::new();
        let stamps = stamps(epw, &mut filled)?;
        let sunshine = sunshine(epw, &mut filled)?;
        Ok(Self {
            name: epw.location.name.clone(),
            place: place(epw),
            file_first_day: epw.first_day,
            start_day: 0,
            spacing_s: spacing_s(epw),
            stamps,
            sunshine,
            filled,
        })
    }

    /// The same weather with the time base beginning on another of its days.
    ///
    /// # Errors
    /// [`EpwError::NoSuchDay`] if the file does not hold that day.
    pub fn starting_on(self, month: u8, day: u8) -> Result<Self, EpwError> {
        let start_day = (0..self.file_days()).find(|&offset| {
            let date = self.file_first_day.plus_days(offset as i32);
            (date.month(), date.day()) == (month, day)
        });
        let start_day = start_day.ok_or(EpwError::NoSuchDay { month, day })?;
        Ok(Self { start_day, ..self })
    }

    /// Name of the place, as the file gives it.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Where the file's weather was recorded; the sun's path is to be made of it.
    #[must_use]
    pub fn place(&self) -> Place {
        self.place
    }

    /// The day on which the time base begins.
    #[must_use]
    pub fn first_day(&self) -> Date {
        self.file_first_day.plus_days(self.start_day as i32)
    }

    /// Days from the beginning of the time base to the end of the file.
    #[must_use]
    pub fn days(&self) -> usize {
        self.file_days() - self.start_day
    }

    /// Days that can be asked for from the beginning of the time base: to the end of the file, or as many as a file of a whole year
    /// has, which goes on with its other end.
    #[must_use]
    pub fn reaches(&self) -> usize {
        if self.file_days() >= DAYS_IN_YEAR {
            self.file_days()
        } else {
            self.days()
        }
    }

    /// The quantities that were missing somewhere, with how often.
    #[must_use]
    pub fn filled(&self) -> &[Filled] {
        &self.filled
    }

    /// The outdoors at an instant.
    ///
    /// `time_s`: seconds of local standard time since the midnight that begins
    /// [`FileWeather::first_day`], within the reach of `sun`, which must be the path at
    /// [`FileWeather::place`] from that day.
    #[must_use]
    pub fn at(&self, time_s: f64, sun: &SunPath) -> Outdoors {
        let sun = sun.at(time_s);
        let intervals = (time_s + self.start_day as f64 * SECONDS_PER_DAY) / self.spacing_s;
        let (before, after, along) = self.neighbours(intervals - 1.0);
        let (one, other) = (&self.stamps[before], &self.stamps[after]);
        let between = |value: fn(&Stamp) -> f64| mix(value(one), value(other), along);
        let dry_bulb_c = between(|stamp| stamp.dry_bulb_c);
        let pressure_pa = between(|stamp| stamp.pressure_pa);
        // Between two saturated stamps the line runs above the curve of saturation.
        let full = saturation_humidity_ratio(dry_bulb_c, pressure_pa);
        Outdoors {
            dry_bulb_c,
            humidity_ratio: between(|stamp| stamp.humidity_ratio).at_most(full),
            pressure_pa,
            wind_speed_10m_m_s: between(|stamp| stamp.wind_speed_m_s),
            wind_from_deg: mix_direction(one.wind_from_deg, other.wind_from_deg, along),
            sky_longwave_w_m2: between(|stamp| stamp.sky_longwave_w_m2),
            irradiance: self.irradiance(intervals - 0.5, &sun),
            sun,
        }
    }

    /// Irradiance at a place in the row of intervals.
    fn irradiance(&self, position: f64, sun: &SunPosition) -> Irradiance {
        if !sun.is_up() {
            return Irradiance::default();
        }
        let (before, after, along) = self.neighbours(position);
        let (one, other) = (&self.sunshine[before], &self.sunshine[after]);
        let direct_w_m2 = mix(one.direct_normal_w_m2, other.direct_normal_w_m2, along);
        let diffuse_w_m2 = mix(
            one.diffuse_horizontal_w_m2,
            other.diffuse_horizontal_w_m2,
            along,
        );
        Irradiance {
            global_horizontal_w_m2: direct_w_m2 * sun.zenith_cosine() + diffuse_w_m2,
            direct_normal_w_m2: direct_w_m2,
            diffuse_horizontal_w_m2: diffuse_w_m2,
        }
    }

    /// Records on both sides of a place in their row, and how far it is from the first towards the
    /// second.
    fn neighbours(&self, position: f64) -> (usize, usize, f64) {
        let count = self.stamps.len() as i64;
        let below = position.floor();
        let along = position - below;
        let index = |number: i64| -> usize {
            let inside = if self.file_days() >= DAYS_IN_YEAR {
                number.rem_euclid(count)
            } else {
                number.clamp(0, count - 1)
            };
            inside as usize
        };
        let number = below as i64;
        (index(number), index(number.saturating_add(1)), along)
    }

    /// Days in the file.
    fn file_days(&self) -> usize {
        (self.stamps.len() as f64 * self.spacing_s / SECONDS_PER_DAY).round() as usize
    }
}

/// Interpolation of two compass directions over the shorter way; the known one if only one is.
fn mix_direction(one: Option<f64>, other: Option<f64>, along: f64) -> Option<f64> {
    let (Some(one_deg), Some(other_deg)) = (one, other) else {
        return one.or(other);
    };
    let turn_deg = (other_deg - one_deg + 180.0).rem_euclid(360.0) - 180.0;
    Some((one_deg + along * turn_deg).rem_euclid(360.0))
}
