//! Where and on what day.

use super::ScenarioDocument;
use crate::air::{
    dew_point_c_from_humidity_ratio, humidity_ratio_from_dew_point,
    humidity_ratio_from_relative_humidity, relative_humidity_from_humidity_ratio,
    standard_atmosphere_pressure_pa,
};
use crate::solar::Date;
use serde::{Deserialize, Serialize};

/// How open the land is to the wind.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Terrain {
    /// Open country.
    OpenCountry,
    /// Suburb or wood.
    Suburb,
    /// Town centre.
    Town,
}

/// What the vehicle stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ground {
    /// Asphalt.
    Asphalt,
    /// Concrete.
    Concrete,
    /// Gravel or bare soil.
    Gravel,
    /// Grass.
    Grass,
}

/// How the water in the air is stated.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HumidityGiven {
    /// By the dew point.
    DewPoint,
    /// By the relative humidity at the warmest of the day.
    RelativeHumidity,
}

/// Where the vehicle stands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Place {
    /// Latitude, degrees, north positive.
    pub latitude_deg: f64,
    /// Longitude, degrees, east positive.
    pub longitude_deg: f64,
    /// Altitude, m.
    pub altitude_m: f64,
    /// Standard time ahead of UTC, h.
    pub utc_offset_h: f64,
    /// Whether the clock shows summer time.
    pub summer_time: bool,
    /// How open the land is to the wind.
    pub terrain: Terrain,
    /// What the vehicle stands on.
    pub ground: Ground,
}

/// The weather forecast as people know it, and shade.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Day {
    /// First day.
    pub date: Date,
    /// Clock hour at which the run begins.
    pub start_hour: f64,
    /// Days to run.
    pub days: f64,
    /// Highest temperature of the first day, °C.
    pub high_c: f64,
    /// Lowest temperature of the first day, °C.
    pub low_c: f64,
    /// How the water in the air is stated.
    pub humidity_given: HumidityGiven,
    /// Dew point, °C, where it is stated.
    pub dew_point_c: f64,
    /// Relative humidity at the day's high, share, where that is stated.
    pub relative_humidity_at_high: f64,
    /// Cloud cover, share of the sky.
    pub cloud_fraction: f64,
    /// Wind at 10 m over open country, m/s.
    pub wind_speed_m_s: f64,
    /// Direction from which the wind comes, degrees clockwise from north.
    pub wind_from_deg: f64,
    /// Linke turbidity of the clear air.
    pub linke_turbidity: f64,
    /// Warming from day to day, K.
    pub warming_per_day_k: f64,
    /// Share of direct sun taken away by shade.
    pub shade_beam_share: f64,
    /// Share of the sky hidden by shade.
    pub shade_sky_share: f64,
    /// Shade from this hour.
    pub shade_from_hour: f64,
    /// Shade until this hour.
    pub shade_until_hour: f64,
}

impl ScenarioDocument {
    /// Dew point of the day with which a run reckons, °C: as entered, or that of air at the day's high, at the pressure of the
    /// altitude, which has the relative humidity entered.
    ///
    /// Source: ASHRAE Fundamentals (2017) ch. 1, by [`crate::air`].
    #[must_use]
    pub fn day_dew_point_c(&self) -> f64 {
        match self.day.humidity_given {
            HumidityGiven::DewPoint => self.day.dew_point_c,
            HumidityGiven::RelativeHumidity => {
                let pressure_pa = standard_atmosphere_pressure_pa(self.place.altitude_m);
                let share = self.day.relative_humidity_at_high;
                let ratio =
                    humidity_ratio_from_relative_humidity(self.day.high_c, share, pressure_pa);
                dew_point_c_from_humidity_ratio(ratio, pressure_pa)
            }
        }
    }

    /// Relative humidity at the day's high, share, of air with a dew point in °C; above one where the dew point is above the high.
    #[must_use]
    pub fn relative_humidity_at_high(&self, dew_point_c: f64) -> f64 {
        let pressure_pa = standard_atmosphere_pressure_pa(self.place.altitude_m);
        let ratio = humidity_ratio_from_dew_point(dew_point_c, pressure_pa);
        relative_humidity_from_humidity_ratio(self.day.high_c, ratio, pressure_pa)
    }

    /// Chooses how the water in the air is stated, and carries its amount over to a tenth of a kelvin or of a percent.
    pub fn state_humidity_as(&mut self, given: HumidityGiven) {
        if given == self.day.humidity_given {
            return;
        }
        let dew_point_c = self.day_dew_point_c();
        let share = self.relative_humidity_at_high(dew_point_c).min(1.0);
        match given {
            HumidityGiven::DewPoint => self.day.dew_point_c = (dew_point_c * 10.0).round() / 10.0,
            HumidityGiven::RelativeHumidity => {
                self.day.relative_humidity_at_high = (share * 1_000.0).round() / 1_000.0;
            }
        }
        self.day.humidity_given = given;
    }

    /// States the dew point in place of the relative humidity, at the same water in the air.
    pub fn state_dew_point(&mut self) {
        self.day.dew_point_c = self.day_dew_point_c();
        self.day.humidity_given = HumidityGiven::DewPoint;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    /// PsychroLib 2.5.0 at sea level: 35 °C and 40 % are a dew point of 19.3846 °C (tests/reference/psychro.csv).
    #[test]
    fn humidity_in_the_warmest_hour_gives_the_dew_point_of_the_table() {
        let mut document = example();
        (document.day.high_c, document.place.altitude_m) = (35.0, 0.0);
        document.day.humidity_given = HumidityGiven::RelativeHumidity;
        document.day.relative_humidity_at_high = 0.4;
        assert!((document.day_dew_point_c() - 19.384_6).abs() < 1e-3);
        assert!((document.relative_humidity_at_high(19.384_6) - 0.4).abs() < 1e-5);
        document.state_dew_point();
        assert!((document.day.dew_point_c - 19.384_6).abs() < 1e-3);
    }

    #[test]
    fn the_amount_of_water_is_carried_over() {
        let mut document = example();
        document.state_humidity_as(HumidityGiven::RelativeHumidity);
        assert!((document.day_dew_point_c() - 17.0).abs() < 0.05);
        document.state_humidity_as(HumidityGiven::DewPoint);
        assert_eq!(document.day.dew_point_c, 17.0);
        assert_eq!(document.day.humidity_given, HumidityGiven::DewPoint);
    }
}
