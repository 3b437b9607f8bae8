//! The days of a weather file, each boiled down to what a forecast says, and how far that is off the file's own hours.

use super::{FileWeather, HotDay, HotDayInput, Outdoors, WeatherError};
use crate::air::dew_point_c_from_humidity_ratio;
use crate::quantity::{Bounded, SECONDS_PER_DAY, SECONDS_PER_HOUR};
use crate::solar::{Date, SolarError, SunPath};
use serde::{Deserialize, Serialize};

/// Times a day at which a day boiled down is held against its hours: every ten minutes.
const TIMES: u32 = 144;

/// Loss of global irradiance under a full cover of cloud, and the exponent of the covered share (Kasten & Czeplak 1980, eq. 7,
/// as in [`crate::solar::Clouds`]).
const CLOUD_LOSS: f64 = 0.75;
const CLOUD_EXPONENT: f64 = 3.4;

/// A day of a file in a few numbers.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct FileDay {
    /// Its date in the file's year.
    pub date: Date,
    /// Highest dry bulb of its records, °C.
    pub high_c: f64,
    /// Lowest dry bulb of its records, °C.
    pub low_c: f64,
    /// Dew point of the mean of its humidity ratios, °C.
    pub dew_point_c: f64,
    /// Mean wind speed 10 m above open country, m/s.
    pub wind_speed_m_s: f64,
    /// Direction of the mean wind, degrees clockwise from north, where the file states any.
    pub wind_from_deg: Option<f64>,
    /// Sun on a level square metre, Wh/m².
    pub sun_wh_m2: f64,
}

/// A day of a file as a forecast would put it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReducedDay {
    /// The forecast; temperatures to a tenth of a kelvin, cloud to a hundredth, direction to a degree.
    pub forecast: HotDayInput,
    /// Root mean square of the differences of dry bulb, every ten minutes of the day, K.
    pub rms_k: f64,
    /// Greatest difference of dry bulb, K; positive where the forecast is too warm.
    pub worst_k: f64,
    /// Sun of the day on a level square metre by the file, Wh/m².
    pub sun_file_wh_m2: f64,
    /// The same by the forecast, Wh/m².
    pub sun_forecast_wh_m2: f64,
}

impl FileWeather {
    /// So many days from the beginning of the time base; beyond what the file reaches its last record holds.
    ///
    /// # Errors
    /// [`SolarError`] if the place of the file has no path of the sun.
    pub fn facts(&self, days: u32) -> Result<Vec<FileDay>, SolarError> {
        let sun = self.sun_path(days)?;
        Ok((0..days as usize)
            .map(|day| self.day_facts(day, &sun))
            .collect())
    }

    /// Path of the sun at the file's place from the beginning of the time base.
    ///
    /// # Errors
    /// [`SolarError`] if the place has none, or for more than two years.
    pub fn sun_path(&self, days: u32) -> Result<SunPath, SolarError> {
        let first_day = self.first_day();
        SunPath::new(&self.place(), first_day, days.max(1))
    }

    fn day_facts(&self, day: usize, sun: &SunPath) -> FileDay {
        let begin_s = day as f64 * SECONDS_PER_DAY;
        let stamps: Vec<Outdoors> = (1..=24u32)
            .map(|hour| self.at(begin_s + f64::from(hour) * SECONDS_PER_HOUR, sun))
            .collect();
        let mean = |value: fn(&Outdoors) -> f64| stamps.iter().map(value).sum::<f64>() / 24.0;
        let dry_bulbs_c = || stamps.iter().map(|outdoors| outdoors.dry_bulb_c);
        let suns_w_m2 = (0..24u32).map(|hour| {
            let middle_s = begin_s + (f64::from(hour) + 0.5) * SECONDS_PER_HOUR;
            self.at(middle_s, sun).irradiance.global_horizontal_w_m2
        });
        FileDay {
            date: self.first_day().plus_days(day as i32),
            high_c: dry_bulbs_c().fold(f64::NEG_INFINITY, f64::max),
            low_c: dry_bulbs_c().fold(f64::INFINITY, f64::min),
            dew_point_c: dew_point_c_from_humidity_ratio(
                mean(|outdoors| outdoors.humidity_ratio),
                mean(|outdoors| outdoors.pressure_pa),
            ),
            wind_speed_m_s: mean(|outdoors| outdoors.wind_speed_10m_m_s),
            wind_from_deg: mean_wind_from_deg(&stamps),
            sun_wh_m2: suns_w_m2.sum(),
        }
    }

    /// The first day of the time base as a forecast would put it: its high, low, mean humidity and mean wind, and as much cloud as
    /// brings the sun of the day to that of the file.
    ///
    /// The covered share follows from the ratio r of the file's sun to that of a clear day, n = ((1 − r)/0.75)^(1/3.4), r held
    /// within 0.25…1: a sky brighter than the clear one of this turbidity counts as clear, and a darker one than that of a full
    /// cover as covered.
    ///
    /// `linke_turbidity`: 2…8, that of the clear sky on which the cloud is reckoned.
    ///
    /// Source: Kasten & Czeplak 1980, Solar Energy 24:177, eq. 7, solved for the covered share.
    ///
    /// # Errors
    /// [`WeatherError`] if the day lies outside the range of [`HotDay`].
    pub fn reduced(&self, linke_turbidity: f64) -> Result<ReducedDay, WeatherError> {
        let sun = self.sun_path(1)?;
        let facts = self.day_facts(0, &sun);
        let tenth = |value: f64| (value * 10.0).round() / 10.0;
        let mut forecast = HotDayInput {
            high_c: tenth(facts.high_c),
            low_c: tenth(facts.low_c),
            dew_point_c: tenth(facts.dew_point_c),
            cloud_fraction: 0.0,
            wind_speed_10m_m_s: tenth(facts.wind_speed_m_s),
            wind_from_deg: facts.wind_from_deg.map(f64::round),
            linke_turbidity,
            altitude_m: self.place().altitude_m,
            warming_per_day_k: 0.0,
        };
        let clear = HotDay::new(forecast)?;
        let times =
            || (0..TIMES).map(|time| (f64::from(time) + 0.5) * SECONDS_PER_DAY / f64::from(TIMES));
        let each_h = 24.0 / f64::from(TIMES);
        let sum_wh_m2 = |day: &HotDay| -> f64 {
            let lights = times().map(|time_s| day.sunlight(time_s, &sun).irradiance);
            lights
                .map(|light| light.global_horizontal_w_m2 * each_h)
                .sum()
        };
        let sun_file_wh_m2: f64 = times()
            .map(|time_s| self.at(time_s, &sun).irradiance.global_horizontal_w_m2 * each_h)
            .sum();
        let ratio = sun_file_wh_m2 / sum_wh_m2(&clear).at_least(f64::MIN_POSITIVE);
        let lost = ((1.0 - ratio) / CLOUD_LOSS).clamp(0.0, 1.0);
        let cover = libm::pow(lost, 1.0 / CLOUD_EXPONENT);
        forecast.cloud_fraction = (cover * 100.0).round() / 100.0;
        let day = HotDay::new(forecast)?;
        let (mut squares, mut worst_k) = (0.0, 0.0_f64);
        for time_s in times() {
            let off_k = day.dry_bulb_c(time_s) - self.at(time_s, &sun).dry_bulb_c;
            squares += off_k * off_k;
            if off_k.abs() > worst_k.abs() {
                worst_k = off_k;
            }
        }
        Ok(ReducedDay {
            forecast,
            rms_k: (squares / f64::from(TIMES)).sqrt(),
            worst_k,
            sun_file_wh_m2,
            sun_forecast_wh_m2: sum_wh_m2(&day),
        })
    }

    /// The summer of the file, as the month and day it begins with and its days: June to August north of the equator, December
    /// to February south of it; the whole of a file that does not hold all of that.
    #[must_use]
    pub fn summer(&self) -> ((u8, u8), u32) {
        let north = self.place().latitude_deg >= 0.0;
        let (first, days) = if north { ((6, 1), 92) } else { ((12, 1), 90) };
        let held = self.clone().starting_on(first.0, first.1);
        if held.is_ok_and(|from| from.reaches() >= days as usize) {
            return (first, days);
        }
        let first_day = self.first_day();
        ((first_day.month(), first_day.day()), self.days() as u32)
    }
}

/// Direction of the mean wind, degrees clockwise from north; none where none is known.
pub(crate) fn mean_wind_from_deg(outdoors: &[Outdoors]) -> Option<f64> {
    let (mut east, mut north, mut known) = (0.0, 0.0, false);
    for outdoors in outdoors {
        if let Some(from_deg) = outdoors.wind_from_deg {
            let (sine, cosine) = libm::sincos(from_deg.to_radians());
            east += outdoors.wind_speed_10m_m_s * sine;
            north += outdoors.wind_speed_10m_m_s * cosine;
            known = true;
        }
    }
    known.then(|| libm::atan2(east, north).to_degrees().rem_euclid(360.0))
}
