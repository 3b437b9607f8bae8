//! Advice built on runs: the verdict, what would change it most, what it costs.

mod verdict;

pub use verdict::{BankVerdict, Cause, Headline, Verdict, WindowVerdict};

use crate::simulation::Results;

/// A change that the adviser tries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lever {
    /// 25 mm more insulation in roof and walls.
    MoreInsulation,
    /// Covers on every window all day.
    WindowCovers,
    /// Roof painted white.
    WhiteRoof,
    /// Parked in shade.
    Shade,
    /// A roof fan that runs while it is cooler outdoors.
    RoofFan,
    /// Half as much bank again.
    LargerBank,
    /// 200 W more panels.
    MorePanels,
    /// Half as much cooling capacity again.
    LargerCooler,
    /// The cooler may run two hours earlier.
    EarlierStart,
}

/// What a change alone would do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeverEffect {
    /// The change.
    pub lever: Lever,
    /// Unmet degree-hours after it less before, K h; negative is better.
    pub degree_hours_change_k_h: f64,
    /// Lowest charge after it less before, share; positive is better.
    pub lowest_state_of_charge_change: f64,
    /// Whether the need is met with it.
    pub met: bool,
}

/// What the set-up costs.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Cost {
    /// The cooler.
    pub cooler: f64,
    /// The bank.
    pub bank: f64,
    /// Panels.
    pub panels: f64,
    /// DC-DC charger.
    pub dc_dc: f64,
    /// Insulation.
    pub insulation: f64,
    /// Window covers.
    pub covers: f64,
    /// Fan.
    pub fan: f64,
    /// Work.
    pub labour: f64,
    /// Tax.
    pub tax: f64,
    /// Sum.
    pub total: f64,
}

/// Everything that the page shows of a valid scenario.
#[derive(Clone, Debug, PartialEq)]
pub struct Advice {
    /// The run as described.
    pub with_cooler: Results,
    /// The same without any cooler.
    pub without_cooler: Results,
    /// The verdict.
    pub verdict: Verdict,
    /// What it costs.
    pub cost: Cost,
}
