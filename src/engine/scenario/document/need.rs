//! Who is in it, and when it must be cool.

use serde::{Deserialize, Serialize};

/// What people do while awake.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Activity {
    /// Sitting quietly.
    Seated,
    /// Sitting at light work.
    DeskWork,
    /// Standing, light work, walking about.
    Moving,
}

/// People, animals and cooking.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Occupants {
    /// Number of people.
    pub people: f64,
    /// People are in from this hour.
    pub people_from_hour: f64,
    /// People are in until this hour.
    pub people_until_hour: f64,
    /// What they do while awake.
    pub activity: Activity,
    /// They sleep from this hour.
    pub asleep_from_hour: f64,
    /// They sleep until this hour.
    pub asleep_until_hour: f64,
    /// Number of dogs.
    pub dogs: f64,
    /// Mass of each dog, kg.
    pub dog_mass_kg: f64,
    /// Dogs are in from this hour.
    pub dogs_from_hour: f64,
    /// Dogs are in until this hour.
    pub dogs_until_hour: f64,
    /// Heat of cooking into the cabin, W.
    pub cooking_heat_w: f64,
    /// Water vapour of cooking, kg/s.
    pub cooking_moisture_kg_s: f64,
    /// Cooking from this hour.
    pub cooking_from_hour: f64,
    /// Cooking until this hour.
    pub cooking_until_hour: f64,
}

/// For whom a window of the need is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum NeededFor {
    /// The window is not used.
    Nobody,
    /// People.
    People,
    /// Animals.
    Animals,
}

/// Limit of the heat index that asks nothing, °C: the end of its field's range.
pub const HEAT_INDEX_ASKS_NOTHING_C: f64 = 60.0;

/// Hours in which the cabin must stay below a felt temperature, and below a heat index where that is asked.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NeedWindow {
    /// For whom.
    pub needed_for: NeededFor,
    /// From this hour.
    pub from_hour: f64,
    /// Until this hour.
    pub until_hour: f64,
    /// Highest felt (operative) temperature, °C.
    pub highest_felt_c: f64,
    /// Highest relative humidity, share; 1 asks nothing.
    pub highest_relative_humidity: f64,
    /// Highest heat index of the air, °C; [`HEAT_INDEX_ASKS_NOTHING_C`] asks nothing.
    pub highest_heat_index_c: f64,
}

/// When it must be cool.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Need {
    /// Up to three windows.
    pub windows: [NeedWindow; 3],
    /// Charge that must be left at every instant, share of capacity.
    pub reserve_state_of_charge: f64,
}
