//! The whole of a consult as plain data: what the page edits, stores, shares and runs.
//!
//! Everything is SI with the unit in the name; hours are hours of the day on the clock, 0 to 24. A window of hours from
//! `from` until `until` wraps past midnight, and means the whole day when both are equal.

mod body;
mod cooling;
mod day;
mod installation;
mod measure_prices;
mod need;
mod power;
mod readings;
mod roof;
mod starting;

pub use body::*;
pub use cooling::*;
pub use day::*;
pub use installation::*;
pub use measure_prices::*;
pub use need::*;
pub use power::*;
pub use readings::*;
pub use roof::*;
pub use starting::*;

use serde::{Deserialize, Serialize};

/// Version of this form of the document. A stored document of another version is migrated or refused, never guessed at.
pub const DOCUMENT_VERSION: u32 = 1;

/// A consult: vehicle, shell, glass, occupants and need, place and day, cooling, battery and charging, prices, and readings of the finished unit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ScenarioDocument {
    /// Form of the document, [`DOCUMENT_VERSION`].
    pub version: u32,
    /// What the user calls it.
    pub name: String,
    /// A remark; shown as plain text.
    pub note: String,
    /// For whom it was worked out; shown as plain text.
    pub recipient: String,
    /// Who worked it out; shown as plain text.
    pub sender: String,
    /// From which starting points it was filled in.
    pub starting: Starting,
    /// The cabin's size and contents.
    pub vehicle: Vehicle,
    /// Metal, insulation, lining, paint and leaks.
    pub shell: Shell,
    /// Windows and their covers.
    pub glass: Glass,
    /// People and animals and what they do.
    pub occupants: Occupants,
    /// When it must be cool, and how cool.
    pub need: Need,
    /// Where the vehicle stands.
    pub place: Place,
    /// The day's weather and shade.
    pub day: Day,
    /// The cooler and its control.
    pub cooler: Cooler,
    /// Fan and opened windows.
    pub ventilation: Ventilation,
    /// The bank.
    pub battery: Battery,
    /// Panels, driving and shore.
    pub charging: Charging,
    /// What else draws from the bank.
    pub loads: Loads,
    /// How it is wired.
    pub installation: Installation,
    /// What stands on the roof.
    pub roof: Roof,
    /// What things cost.
    pub prices: Prices,
    /// What was read off the finished unit.
    pub readings: Readings,
}
