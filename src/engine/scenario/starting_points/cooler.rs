//! Coolers of each common kind. What they take for what they give is as such units are commonly offered: common practice, no
//! source, unless a row names one. Units on mains voltage come with an inverter that can start them.

use super::{Library, Start, start};
use crate::scenario::document::StartingPoint as P;
use crate::scenario::field::Basis::{CommonPractice, FromMemory};

pub(super) const KEY: &str = "starting.cooler";

pub(super) const LIBRARY: Library = Library {
    key: KEY,
    sets: &[
        "cooler.installed",
        "cooler.capacity_rated_w",
        "cooler.electric_power_rated_w",
        "cooler.airflow_m3_s_per_kw",
        "cooler.sensible_heat_ratio_rated",
        "cooler.blower_power_w",
        "cooler.control",
        "cooler.least_capacity_share",
        "cooler.part_speed_efficiency_gain",
        "cooler.supply",
        "cooler.idle_power_w",
        "cooler.start_surge_factor",
        "cooler.inverter_rated_w",
        "cooler.inverter_surge_w",
        "cooler.inverter_idle_w",
    ],
    points: &POINTS,
};

/// US federal minimum for small room units, quoted from memory: combined energy efficiency ratio 11.0 Btu/(W h), or 3.2.
const MINIMUM: &str =
    "efficiency of the US minimum for room units, 10 CFR 430.32(b): 11.0 Btu an hour for each watt";

// Installed; capacity, power; air flow for each kilowatt, sensible share, blower; control, least output, gain at least speed;
// supply, idle, surge; inverter's rating, surge, idle.
const POINTS: [Start; 8] = [
    start(
        P::NoCooler,
        CommonPractice,
        "0  2000 800 0.055 0.75 40  variable 0.15 1.2  direct_current 4 1.5  2000 4000 15",
    ),
    start(
        P::RoofSmall,
        CommonPractice,
        "1  1200 500 0.055 0.75 25  variable 0.3 1.15  direct_current 3 1.5  2000 4000 15",
    ),
    start(
        P::RoofMedium,
        CommonPractice,
        "1  2000 800 0.055 0.75 40  variable 0.2 1.2  direct_current 4 1.5  2000 4000 15",
    ),
    start(
        P::RoofLarge,
        CommonPractice,
        "1  2900 1250 0.055 0.75 60  variable 0.25 1.2  direct_current 5 1.5  2000 4000 15",
    ),
    start(
        P::RoofFixedSpeed,
        CommonPractice,
        "1  1600 720 0.055 0.75 40  on_off 0.95 1  direct_current 3 3  2000 4000 15",
    ),
    start(
        P::RoofMains,
        CommonPractice,
        "1  3900 1450 0.05 0.72 120  on_off 0.95 1  mains_through_inverter 5 5  3000 9000 25",
    ),
    start(
        P::RoomSmall,
        FromMemory(MINIMUM),
        "1  1460 453 0.055 0.72 45  on_off 0.95 1  mains_through_inverter 2 5  1500 3000 12",
    ),
    start(
        P::RoomVariable,
        CommonPractice,
        "1  2340 620 0.055 0.74 40  variable 0.3 1.3  mains_through_inverter 3 1.5  1500 3000 12",
    ),
];
