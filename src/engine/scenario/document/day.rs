//! Where and on what day.

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
    /// Dew point, °C.
    pub dew_point_c: f64,
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
