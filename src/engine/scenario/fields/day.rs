//! Place and day: rows of the fields table.

use super::{choice, date, number, position, set_at, switch};
use crate::scenario::document::{Ground, HumidityGiven, Terrain};
use crate::scenario::field::{Basis, Dimension, Field, Group};

/// Options and their stable names.
const TERRAIN_OPTIONS: ([Terrain; 3], [&str; 3]) = (
    [Terrain::OpenCountry, Terrain::Suburb, Terrain::Town],
    ["open_country", "suburb", "town"],
);

/// Options and their stable names.
const GROUND_OPTIONS: ([Ground; 4], [&str; 4]) = (
    [
        Ground::Asphalt,
        Ground::Concrete,
        Ground::Gravel,
        Ground::Grass,
    ],
    ["asphalt", "concrete", "gravel", "grass"],
);

/// Options and their stable names.
const HUMIDITY_OPTIONS: ([HumidityGiven; 2], [&str; 2]) = (
    [HumidityGiven::DewPoint, HumidityGiven::RelativeHumidity],
    ["dew_point", "relative_humidity"],
);

/// Fields of [`Group::Place`].
pub(super) const PLACE: &[Field] = &[
    Field {
        id: 71,
        key: "place.latitude_deg",
        group: Group::Place,
        kind: number(
            Dimension::Angle,
            -66.0,
            66.0,
            |d| d.place.latitude_deg,
            |d, v| d.place.latitude_deg = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 72,
        key: "place.longitude_deg",
        group: Group::Place,
        kind: number(
            Dimension::Angle,
            -180.0,
            180.0,
            |d| d.place.longitude_deg,
            |d, v| d.place.longitude_deg = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 73,
        key: "place.altitude_m",
        group: Group::Place,
        kind: number(
            Dimension::Altitude,
            -400.0,
            4_500.0,
            |d| d.place.altitude_m,
            |d, v| d.place.altitude_m = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 74,
        key: "place.utc_offset_h",
        group: Group::Place,
        kind: number(
            Dimension::ClockOffset,
            -12.0,
            14.0,
            |d| d.place.utc_offset_h,
            |d, v| d.place.utc_offset_h = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 75,
        key: "place.summer_time",
        group: Group::Place,
        kind: switch(|d| d.place.summer_time, |d, v| d.place.summer_time = v),
        basis: Basis::Example,
    },
    Field {
        id: 76,
        key: "place.terrain",
        group: Group::Place,
        kind: choice(
            &TERRAIN_OPTIONS.1,
            |d| position(&TERRAIN_OPTIONS.0, d.place.terrain),
            |d, i| set_at(&TERRAIN_OPTIONS.0, i, &mut d.place.terrain),
        ),
        basis: Basis::Published("ASHRAE Fundamentals ch. 24 wind profile"),
    },
    Field {
        id: 77,
        key: "place.ground",
        group: Group::Place,
        kind: choice(
            &GROUND_OPTIONS.1,
            |d| position(&GROUND_OPTIONS.0, d.place.ground),
            |d, i| set_at(&GROUND_OPTIONS.0, i, &mut d.place.ground),
        ),
        basis: Basis::Example,
    },
];

/// Fields of [`Group::Day`].
pub(super) const DAY: &[Field] = &[
    Field {
        id: 78,
        key: "day.date",
        group: Group::Day,
        kind: date(|d| d.day.date, |d, v| d.day.date = v),
        basis: Basis::Example,
    },
    Field {
        id: 79,
        key: "day.start_hour",
        group: Group::Day,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            23.0,
            |d| d.day.start_hour,
            |d, v| d.day.start_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 80,
        key: "day.days",
        group: Group::Day,
        kind: number(
            Dimension::Count,
            1.0,
            7.0,
            |d| d.day.days,
            |d, v| d.day.days = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 81,
        key: "day.high_c",
        group: Group::Day,
        kind: number(
            Dimension::Temperature,
            10.0,
            55.0,
            |d| d.day.high_c,
            |d, v| d.day.high_c = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 82,
        key: "day.low_c",
        group: Group::Day,
        kind: number(
            Dimension::Temperature,
            -5.0,
            45.0,
            |d| d.day.low_c,
            |d, v| d.day.low_c = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 350,
        key: "day.humidity_given",
        group: Group::Day,
        kind: choice(
            &HUMIDITY_OPTIONS.1,
            |d| position(&HUMIDITY_OPTIONS.0, d.day.humidity_given),
            |d, i| set_at(&HUMIDITY_OPTIONS.0, i, &mut d.day.humidity_given),
        ),
        basis: Basis::Example,
    },
    Field {
        id: 83,
        key: "day.dew_point_c",
        group: Group::Day,
        kind: number(
            Dimension::Temperature,
            -15.0,
            32.0,
            |d| d.day.dew_point_c,
            |d, v| d.day.dew_point_c = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 351,
        key: "day.relative_humidity_at_high",
        group: Group::Day,
        kind: number(
            Dimension::Share,
            0.01,
            1.0,
            |d| d.day.relative_humidity_at_high,
            |d, v| d.day.relative_humidity_at_high = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 84,
        key: "day.cloud_fraction",
        group: Group::Day,
        kind: number(
            Dimension::Share,
            0.0,
            1.0,
            |d| d.day.cloud_fraction,
            |d, v| d.day.cloud_fraction = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 85,
        key: "day.wind_speed_m_s",
        group: Group::Day,
        kind: number(
            Dimension::WindSpeed,
            0.0,
            25.0,
            |d| d.day.wind_speed_m_s,
            |d, v| d.day.wind_speed_m_s = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 86,
        key: "day.wind_from_deg",
        group: Group::Day,
        kind: number(
            Dimension::Angle,
            0.0,
            360.0,
            |d| d.day.wind_from_deg,
            |d, v| d.day.wind_from_deg = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 87,
        key: "day.linke_turbidity",
        group: Group::Day,
        kind: number(
            Dimension::Factor,
            2.0,
            8.0,
            |d| d.day.linke_turbidity,
            |d, v| d.day.linke_turbidity = v,
        ),
        basis: Basis::Published("Remund et al. 2003, monthly world climatology"),
    },
    Field {
        id: 88,
        key: "day.warming_per_day_k",
        group: Group::Day,
        kind: number(
            Dimension::TemperatureDifference,
            -4.0,
            4.0,
            |d| d.day.warming_per_day_k,
            |d, v| d.day.warming_per_day_k = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 89,
        key: "day.shade_beam_share",
        group: Group::Day,
        kind: number(
            Dimension::Share,
            0.0,
            1.0,
            |d| d.day.shade_beam_share,
            |d, v| d.day.shade_beam_share = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 90,
        key: "day.shade_sky_share",
        group: Group::Day,
        kind: number(
            Dimension::Share,
            0.0,
            1.0,
            |d| d.day.shade_sky_share,
            |d, v| d.day.shade_sky_share = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 91,
        key: "day.shade_from_hour",
        group: Group::Day,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.day.shade_from_hour,
            |d, v| d.day.shade_from_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 92,
        key: "day.shade_until_hour",
        group: Group::Day,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.day.shade_until_hour,
            |d, v| d.day.shade_until_hour = v,
        ),
        basis: Basis::Example,
    },
];
