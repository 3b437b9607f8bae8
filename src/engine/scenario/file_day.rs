//! A day of a weather file put into a scenario.

use super::document::{HumidityGiven, ScenarioDocument};
use crate::weather::{FileWeather, ReducedDay, WeatherError};

/// A scenario on a day of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct TakenDay {
    /// The scenario; it need not be valid, for a day may lie outside what its fields allow.
    pub document: ScenarioDocument,
    /// The day as a forecast, and how far that is off the file's hours.
    pub reduced: ReducedDay,
}

/// Puts a scenario on the day of a file with which its time base begins: place, altitude and clock of the file, the date in the
/// file's year, high, low, dew point, cloud and wind. Summer time, ground, shade, haze, the hour of the start and the number of
/// days stay; no day is warmer than the one before.
///
/// # Errors
/// [`WeatherError`] if the day lies outside the range of [`crate::weather::HotDay`].
pub fn take_file_day(
    document: &ScenarioDocument,
    weather: &FileWeather,
) -> Result<TakenDay, WeatherError> {
    let reduced = weather.reduced(document.day.linke_turbidity)?;
    let mut document = document.clone();
    let site = weather.place();
    let place = &mut document.place;
    (place.latitude_deg, place.longitude_deg) = (site.latitude_deg, site.longitude_deg);
    (place.altitude_m, place.utc_offset_h) = (site.altitude_m, site.utc_offset_h);
    let (day, forecast) = (&mut document.day, &reduced.forecast);
    day.date = weather.first_day();
    (day.high_c, day.low_c) = (forecast.high_c, forecast.low_c);
    (day.humidity_given, day.dew_point_c) = (HumidityGiven::DewPoint, forecast.dew_point_c);
    day.cloud_fraction = forecast.cloud_fraction;
    day.wind_speed_m_s = forecast.wind_speed_10m_m_s;
    day.wind_from_deg = forecast.wind_from_deg.unwrap_or(day.wind_from_deg);
    day.warming_per_day_k = 0.0;
    Ok(TakenDay { document, reduced })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::{Scenario, example};
    use crate::weather::invented_summer;

    #[test]
    fn a_day_of_a_file_makes_a_scenario_that_runs() {
        let weather = invented_summer().unwrap().starting_on(7, 10).unwrap();
        let taken = take_file_day(&example(), &weather).unwrap();
        let document = &taken.document;
        assert_eq!(document.place.latitude_deg, weather.place().latitude_deg);
        assert_eq!(
            (document.day.date.month(), document.day.date.day()),
            (7, 10)
        );
        assert_eq!(document.day.high_c, taken.reduced.forecast.high_c);
        assert_eq!(document.cooler, example().cooler);
        assert!(Scenario::new(taken.document).is_ok());
    }
}
