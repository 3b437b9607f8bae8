//! Occupants and need: rows of the fields table.

use super::{choice, number, position, set_at};
use crate::scenario::document::{Activity, HEAT_INDEX_ASKS_NOTHING_C, NeededFor};
use crate::scenario::field::{Basis, Dimension, Field, Group};

/// Options and their stable names.
const ACTIVITY_OPTIONS: ([Activity; 3], [&str; 3]) = (
    [Activity::Seated, Activity::DeskWork, Activity::Moving],
    ["seated", "desk_work", "moving"],
);

/// Options and their stable names.
const NEEDED_FOR_OPTIONS: ([NeededFor; 3], [&str; 3]) = (
    [NeededFor::Nobody, NeededFor::People, NeededFor::Animals],
    ["nobody", "people", "animals"],
);

/// Fields of [`Group::Occupants`].
pub(super) const OCCUPANTS: &[Field] = &[
    Field {
        id: 41,
        key: "occupants.people",
        group: Group::Occupants,
        kind: number(
            Dimension::Count,
            0.0,
            8.0,
            |d| d.occupants.people,
            |d, v| d.occupants.people = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 42,
        key: "occupants.people_from_hour",
        group: Group::Occupants,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.occupants.people_from_hour,
            |d, v| d.occupants.people_from_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 43,
        key: "occupants.people_until_hour",
        group: Group::Occupants,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.occupants.people_until_hour,
            |d, v| d.occupants.people_until_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 44,
        key: "occupants.activity",
        group: Group::Occupants,
        kind: choice(
            &ACTIVITY_OPTIONS.1,
            |d| position(&ACTIVITY_OPTIONS.0, d.occupants.activity),
            |d, i| set_at(&ACTIVITY_OPTIONS.0, i, &mut d.occupants.activity),
        ),
        basis: Basis::Published("ASHRAE Fundamentals 2009 and 2013, ch. 18, table 1"),
    },
    Field {
        id: 45,
        key: "occupants.asleep_from_hour",
        group: Group::Occupants,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.occupants.asleep_from_hour,
            |d, v| d.occupants.asleep_from_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 46,
        key: "occupants.asleep_until_hour",
        group: Group::Occupants,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.occupants.asleep_until_hour,
            |d, v| d.occupants.asleep_until_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 47,
        key: "occupants.dogs",
        group: Group::Occupants,
        kind: number(
            Dimension::Count,
            0.0,
            8.0,
            |d| d.occupants.dogs,
            |d, v| d.occupants.dogs = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 48,
        key: "occupants.dog_mass_kg",
        group: Group::Occupants,
        kind: number(
            Dimension::Mass,
            1.0,
            90.0,
            |d| d.occupants.dog_mass_kg,
            |d, v| d.occupants.dog_mass_kg = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 49,
        key: "occupants.dogs_from_hour",
        group: Group::Occupants,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.occupants.dogs_from_hour,
            |d, v| d.occupants.dogs_from_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 50,
        key: "occupants.dogs_until_hour",
        group: Group::Occupants,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.occupants.dogs_until_hour,
            |d, v| d.occupants.dogs_until_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 51,
        key: "occupants.cooking_heat_w",
        group: Group::Occupants,
        kind: number(
            Dimension::HeatFlow,
            0.0,
            4_000.0,
            |d| d.occupants.cooking_heat_w,
            |d, v| d.occupants.cooking_heat_w = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 52,
        key: "occupants.cooking_moisture_kg_s",
        group: Group::Occupants,
        kind: number(
            Dimension::MoistureFlow,
            0.0,
            0.001,
            |d| d.occupants.cooking_moisture_kg_s,
            |d, v| d.occupants.cooking_moisture_kg_s = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 53,
        key: "occupants.cooking_from_hour",
        group: Group::Occupants,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.occupants.cooking_from_hour,
            |d, v| d.occupants.cooking_from_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 54,
        key: "occupants.cooking_until_hour",
        group: Group::Occupants,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.occupants.cooking_until_hour,
            |d, v| d.occupants.cooking_until_hour = v,
        ),
        basis: Basis::Example,
    },
];

/// Fields of [`Group::Need`].
pub(super) const NEED: &[Field] = &[
    Field {
        id: 55,
        key: "need.windows.0.needed_for",
        group: Group::Need,
        kind: choice(
            &NEEDED_FOR_OPTIONS.1,
            |d| position(&NEEDED_FOR_OPTIONS.0, d.need.windows[0].needed_for),
            |d, i| set_at(&NEEDED_FOR_OPTIONS.0, i, &mut d.need.windows[0].needed_for),
        ),
        basis: Basis::Example,
    },
    Field {
        id: 56,
        key: "need.windows.0.from_hour",
        group: Group::Need,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.need.windows[0].from_hour,
            |d, v| d.need.windows[0].from_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 57,
        key: "need.windows.0.until_hour",
        group: Group::Need,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.need.windows[0].until_hour,
            |d, v| d.need.windows[0].until_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 58,
        key: "need.windows.0.highest_felt_c",
        group: Group::Need,
        kind: number(
            Dimension::Temperature,
            15.0,
            35.0,
            |d| d.need.windows[0].highest_felt_c,
            |d, v| d.need.windows[0].highest_felt_c = v,
        ),
        basis: Basis::Published(
            "CIBSE TM59: sleeping rooms not above 26 °C operative; NRC Guide: dogs 18 to 29 °C",
        ),
    },
    Field {
        id: 59,
        key: "need.windows.0.highest_relative_humidity",
        group: Group::Need,
        kind: number(
            Dimension::Share,
            0.3,
            1.0,
            |d| d.need.windows[0].highest_relative_humidity,
            |d, v| d.need.windows[0].highest_relative_humidity = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 180,
        key: "need.windows.0.highest_heat_index_c",
        group: Group::Need,
        kind: number(
            Dimension::Temperature,
            20.0,
            HEAT_INDEX_ASKS_NOTHING_C,
            |d| d.need.windows[0].highest_heat_index_c,
            |d, v| d.need.windows[0].highest_heat_index_c = v,
        ),
        basis: Basis::Published(
            "National Weather Service: caution from 27 °C (80 °F) of heat index, danger from 39 °C (103 °F)",
        ),
    },
    Field {
        id: 60,
        key: "need.windows.1.needed_for",
        group: Group::Need,
        kind: choice(
            &NEEDED_FOR_OPTIONS.1,
            |d| position(&NEEDED_FOR_OPTIONS.0, d.need.windows[1].needed_for),
            |d, i| set_at(&NEEDED_FOR_OPTIONS.0, i, &mut d.need.windows[1].needed_for),
        ),
        basis: Basis::Example,
    },
    Field {
        id: 61,
        key: "need.windows.1.from_hour",
        group: Group::Need,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.need.windows[1].from_hour,
            |d, v| d.need.windows[1].from_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 62,
        key: "need.windows.1.until_hour",
        group: Group::Need,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.need.windows[1].until_hour,
            |d, v| d.need.windows[1].until_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 63,
        key: "need.windows.1.highest_felt_c",
        group: Group::Need,
        kind: number(
            Dimension::Temperature,
            15.0,
            35.0,
            |d| d.need.windows[1].highest_felt_c,
            |d, v| d.need.windows[1].highest_felt_c = v,
        ),
        basis: Basis::Published(
            "CIBSE TM59: sleeping rooms not above 26 °C operative; NRC Guide: dogs 18 to 29 °C",
        ),
    },
    Field {
        id: 64,
        key: "need.windows.1.highest_relative_humidity",
        group: Group::Need,
        kind: number(
            Dimension::Share,
            0.3,
            1.0,
            |d| d.need.windows[1].highest_relative_humidity,
            |d, v| d.need.windows[1].highest_relative_humidity = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 181,
        key: "need.windows.1.highest_heat_index_c",
        group: Group::Need,
        kind: number(
            Dimension::Temperature,
            20.0,
            HEAT_INDEX_ASKS_NOTHING_C,
            |d| d.need.windows[1].highest_heat_index_c,
            |d, v| d.need.windows[1].highest_heat_index_c = v,
        ),
        basis: Basis::Published(
            "National Weather Service: caution from 27 °C (80 °F) of heat index, danger from 39 °C (103 °F)",
        ),
    },
    Field {
        id: 65,
        key: "need.windows.2.needed_for",
        group: Group::Need,
        kind: choice(
            &NEEDED_FOR_OPTIONS.1,
            |d| position(&NEEDED_FOR_OPTIONS.0, d.need.windows[2].needed_for),
            |d, i| set_at(&NEEDED_FOR_OPTIONS.0, i, &mut d.need.windows[2].needed_for),
        ),
        basis: Basis::Example,
    },
    Field {
        id: 66,
        key: "need.windows.2.from_hour",
        group: Group::Need,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.need.windows[2].from_hour,
            |d, v| d.need.windows[2].from_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 67,
        key: "need.windows.2.until_hour",
        group: Group::Need,
        kind: number(
            Dimension::HourOfDay,
            0.0,
            24.0,
            |d| d.need.windows[2].until_hour,
            |d, v| d.need.windows[2].until_hour = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 68,
        key: "need.windows.2.highest_felt_c",
        group: Group::Need,
        kind: number(
            Dimension::Temperature,
            15.0,
            35.0,
            |d| d.need.windows[2].highest_felt_c,
            |d, v| d.need.windows[2].highest_felt_c = v,
        ),
        basis: Basis::Published(
            "CIBSE TM59: sleeping rooms not above 26 °C operative; NRC Guide: dogs 18 to 29 °C",
        ),
    },
    Field {
        id: 69,
        key: "need.windows.2.highest_relative_humidity",
        group: Group::Need,
        kind: number(
            Dimension::Share,
            0.3,
            1.0,
            |d| d.need.windows[2].highest_relative_humidity,
            |d, v| d.need.windows[2].highest_relative_humidity = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 182,
        key: "need.windows.2.highest_heat_index_c",
        group: Group::Need,
        kind: number(
            Dimension::Temperature,
            20.0,
            HEAT_INDEX_ASKS_NOTHING_C,
            |d| d.need.windows[2].highest_heat_index_c,
            |d, v| d.need.windows[2].highest_heat_index_c = v,
        ),
        basis: Basis::Published(
            "National Weather Service: caution from 27 °C (80 °F) of heat index, danger from 39 °C (103 °F)",
        ),
    },
    Field {
        id: 70,
        key: "need.reserve_state_of_charge",
        group: Group::Need,
        kind: number(
            Dimension::Share,
            0.0,
            0.8,
            |d| d.need.reserve_state_of_charge,
            |d, v| d.need.reserve_state_of_charge = v,
        ),
        basis: Basis::CommonPractice,
    },
];
