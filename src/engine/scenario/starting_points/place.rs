//! Climates: a place and an ordinary day of its warmest month, except for the hot spell, which says so.
//!
//! Temperatures are climate normals quoted from memory, rounded to a degree; dew point, cloud and wind are from memory as well and
//! rougher. Haze is the Linke turbidity of the month where the checks of the project hold that place (Remund et al. 2003), and
//! assumed elsewhere.

use super::{Library, Start, start};
use crate::scenario::document::StartingPoint as P;
use crate::scenario::field::Basis::{Example, FromMemory};

pub(super) const KEY: &str = "starting.place";

pub(super) const LIBRARY: Library = Library {
    key: KEY,
    sets: &[
        "place.latitude_deg",
        "place.longitude_deg",
        "place.altitude_m",
        "place.utc_offset_h",
        "place.summer_time",
        "place.terrain",
        "place.ground",
        "day.date",
        "day.high_c",
        "day.low_c",
        "day.humidity_given",
        "day.dew_point_c",
        "day.cloud_fraction",
        "day.wind_speed_m_s",
        "day.linke_turbidity",
    ],
    points: &POINTS,
};

// Latitude, longitude, altitude, clock ahead of UTC, summer time, terrain, ground; date, high, low, how humidity is
// stated, dew point, cloud, wind, haze.
const POINTS: [Start; 14] = [
    start(
        P::HotDesert,
        FromMemory("normals of Phoenix, July; haze by Remund et al. 2003"),
        "33.45 -112.07 340 -7 0 suburb asphalt  2026-07-15 41 29 dew_point 13 0.15 3 3.45",
    ),
    start(
        P::GulfDesert,
        FromMemory("normals of Dubai, August; haze by Remund et al. 2003"),
        "25.2 55.27 5 4 0 suburb asphalt  2026-08-15 41 31 dew_point 23 0.1 3.5 6.65",
    ),
    start(
        P::HumidCoast,
        FromMemory("normals of Miami, July; haze by Remund et al. 2003"),
        "25.76 -80.19 2 -5 1 suburb asphalt  2026-07-15 32 26 dew_point 24 0.4 3.5 5.6",
    ),
    start(
        P::HumidPlain,
        FromMemory("normals of Houston, August; haze by Remund et al. 2003"),
        "29.76 -95.37 15 -6 1 suburb asphalt  2026-08-15 35 25 dew_point 23 0.3 3 4.45",
    ),
    start(
        P::ContinentalPlain,
        FromMemory("normals of Chicago, July; haze by Remund et al. 2003"),
        "41.88 -87.63 180 -6 1 suburb asphalt  2026-07-15 29 19 dew_point 17 0.3 3.5 4.4",
    ),
    start(
        P::HighPlateau,
        FromMemory("normals of Denver, July; haze by Remund et al. 2003"),
        "39.74 -104.99 1600 -7 1 suburb asphalt  2026-07-15 32 16 dew_point 9 0.25 3.5 4.15",
    ),
    start(
        P::MediterraneanInland,
        FromMemory("normals of Seville, July; haze by Remund et al. 2003"),
        "37.39 -5.98 10 1 1 suburb asphalt  2026-07-15 36 20 dew_point 13 0.05 3 3.15",
    ),
    start(
        P::MediterraneanCoast,
        FromMemory("normals of Athens, July; haze by Remund et al. 2003"),
        "37.98 23.73 50 2 1 suburb asphalt  2026-07-15 33 23 dew_point 15 0.05 4 5.3",
    ),
    start(
        P::CentralHotSpell,
        Example,
        "52.52 13.4 35 1 1 suburb asphalt  2026-07-15 34 20 dew_point 15 0.1 2.5 3.95",
    ),
    start(
        P::MildMaritime,
        FromMemory("normals of London, July; haze by Remund et al. 2003"),
        "51.51 -0.13 20 0 1 suburb asphalt  2026-07-15 24 14 dew_point 12 0.5 3.5 4.95",
    ),
    start(
        P::NorthernSummer,
        FromMemory("normals of Stockholm, July; haze by Remund et al. 2003"),
        "59.33 18.07 30 1 1 suburb asphalt  2026-07-15 23 14 dew_point 12 0.4 3.5 3.6",
    ),
    start(
        P::Tropical,
        FromMemory("normals of Singapore, April; haze assumed"),
        "1.35 103.82 15 8 0 suburb asphalt  2026-04-15 32 25 dew_point 24 0.6 2 5",
    ),
    start(
        P::SouthernDry,
        FromMemory("normals of Perth, January; haze by Remund et al. 2003"),
        "-31.95 115.86 20 8 0 suburb asphalt  2026-01-15 31 18 dew_point 12 0.15 4.5 3.1",
    ),
    start(
        P::SouthernCoast,
        FromMemory("normals of Sydney, January; haze by Remund et al. 2003"),
        "-33.87 151.21 20 10 1 suburb asphalt  2026-01-15 27 20 dew_point 17 0.4 4 3.15",
    ),
];
