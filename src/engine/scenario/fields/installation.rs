//! Ways of cable, make-up of the bank and what they cost: rows of the fields table.

use super::{choice, number, position, set_at};
use crate::scenario::document::CableInsulation;
use crate::scenario::field::{Basis, Dimension, Field, Group};

/// Options and their stable names.
const INSULATION_OPTIONS: ([CableInsulation; 7], [&str; 7]) = (
    [
        CableInsulation::C60,
        CableInsulation::C75,
        CableInsulation::C80,
        CableInsulation::C90,
        CableInsulation::C105,
        CableInsulation::C125,
        CableInsulation::C200,
    ],
    ["c60", "c75", "c80", "c90", "c105", "c125", "c200"],
);

/// The four rows of a way of cable, with the first of their ids.
macro_rules! way {
    ($id:literal, $way:ident) => {
        [
            Field {
                id: $id,
                key: concat!("installation.", stringify!($way), ".length_m"),
                group: Group::Cabling,
                kind: number(
                    Dimension::Length,
                    0.1,
                    30.0,
                    |d| d.installation.$way.length_m,
                    |d, v| d.installation.$way.length_m = v,
                ),
                basis: Basis::Example,
            },
            Field {
                id: $id + 1,
                key: concat!("installation.", stringify!($way), ".allowed_drop_share"),
                group: Group::Cabling,
                kind: number(
                    Dimension::Share,
                    0.002,
                    0.1,
                    |d| d.installation.$way.allowed_drop_share,
                    |d, v| d.installation.$way.allowed_drop_share = v,
                ),
                basis: Basis::FromMemory(
                    "ABYC E-11 and ISO 10133: 3 % where it matters, 10 % elsewhere",
                ),
            },
            Field {
                id: $id + 2,
                key: concat!("installation.", stringify!($way), ".bundled_conductors"),
                group: Group::Cabling,
                kind: number(
                    Dimension::Count,
                    1.0,
                    40.0,
                    |d| d.installation.$way.bundled_conductors,
                    |d, v| d.installation.$way.bundled_conductors = v,
                ),
                basis: Basis::Example,
            },
            Field {
                id: $id + 3,
                key: concat!("installation.", stringify!($way), ".air_c"),
                group: Group::Cabling,
                kind: number(
                    Dimension::Temperature,
                    20.0,
                    90.0,
                    |d| d.installation.$way.air_c,
                    |d, v| d.installation.$way.air_c = v,
                ),
                basis: Basis::Published(
                    "33 CFR 183.425, Table 5: engine spaces are taken at 50 °C",
                ),
            },
        ]
    };
}

/// Rows of [`Group::Cabling`], way after way.
pub(super) const WAYS: [[Field; 4]; 6] = [
    way!(193, cooler),
    way!(197, dc_dc),
    way!(201, panels),
    way!(205, controller),
    way!(209, bus),
    way!(213, inverter),
];

/// The other rows of [`Group::Cabling`].
pub(super) const CABLING: &[Field] = &[
    Field {
        id: 217,
        key: "installation.insulation",
        group: Group::Cabling,
        kind: choice(
            &INSULATION_OPTIONS.1,
            |d| position(&INSULATION_OPTIONS.0, d.installation.insulation),
            |d, i| set_at(&INSULATION_OPTIONS.0, i, &mut d.installation.insulation),
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 218,
        key: "installation.panel_voltage_v",
        group: Group::Cabling,
        kind: number(
            Dimension::Voltage,
            10.0,
            250.0,
            |d| d.installation.panel_voltage_v,
            |d, v| d.installation.panel_voltage_v = v,
        ),
        basis: Basis::FromMemory("a panel of 36 cells gives its best power at 18 to 20 V"),
    },
    Field {
        id: 219,
        key: "installation.parallel_packs",
        group: Group::Cabling,
        kind: number(
            Dimension::Count,
            1.0,
            16.0,
            |d| d.installation.parallel_packs,
            |d, v| d.installation.parallel_packs = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 220,
        key: "installation.bank_peak_a",
        group: Group::Cabling,
        kind: number(
            Dimension::Current,
            5.0,
            6_000.0,
            |d| d.installation.bank_peak_a,
            |d, v| d.installation.bank_peak_a = v,
        ),
        basis: Basis::CommonPractice,
    },
];

/// Fields of [`Group::Prices`] for cable, fuses and small parts.
pub(super) const BUILD_PRICES: &[Field] = &[
    Field {
        id: 300,
        key: "prices.build.cable_per_m_mm2",
        group: Group::Prices,
        kind: number(
            Dimension::MoneyPerCable,
            0.0,
            50.0,
            |d| d.prices.build.cable_per_m_mm2,
            |d, v| d.prices.build.cable_per_m_mm2 = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 301,
        key: "prices.build.fuse",
        group: Group::Prices,
        kind: number(
            Dimension::Money,
            0.0,
            2_000.0,
            |d| d.prices.build.fuse,
            |d, v| d.prices.build.fuse = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 304,
        key: "prices.build.inverter_per_w",
        group: Group::Prices,
        kind: number(
            Dimension::MoneyPerWatt,
            0.0,
            20.0,
            |d| d.prices.build.inverter_per_w,
            |d, v| d.prices.build.inverter_per_w = v,
        ),
        basis: Basis::Example,
    },
    Field {
        id: 302,
        key: "prices.build.small_parts_share",
        group: Group::Prices,
        kind: number(
            Dimension::Share,
            0.0,
            0.5,
            |d| d.prices.build.small_parts_share,
            |d, v| d.prices.build.small_parts_share = v,
        ),
        basis: Basis::CommonPractice,
    },
    Field {
        id: 303,
        key: "prices.build.markup_share",
        group: Group::Prices,
        kind: number(
            Dimension::Share,
            0.0,
            2.0,
            |d| d.prices.build.markup_share,
            |d, v| d.prices.build.markup_share = v,
        ),
        basis: Basis::Example,
    },
];
