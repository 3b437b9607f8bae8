//! What loads and sources see of a step of the bank.

use crate::electrical::{BankFlow, BankLimit};
use crate::quantity::Bounded;

/// A shortfall of delivery below this is rounding, W.
const SHORTFALL_W: f64 = 0.5;

/// What loads and sources see of a step.
pub(super) struct Served {
    /// Given to the loads beside the cooler, W.
    pub(super) loads_w: f64,
    /// Share of what the sources offer that is taken.
    pub(super) kept: f64,
    /// Why not all was served, if it was not.
    pub(super) refused: Option<BankLimit>,
}

/// What is served where the bank met a limit. Charging: loads get all they ask, and the sources give only what loads and bank take.
/// Discharging: the sources give all they offer, and loads get only what sources and bank give.
#[inline(never)]
pub(super) fn served_within(
    limit: BankLimit,
    bank: &BankFlow,
    offered_w: f64,
    asked_w: f64,
    cooler_w: f64,
) -> Served {
    if offered_w > asked_w {
        return Served {
            loads_w: asked_w - cooler_w,
            kept: (asked_w + bank.power_w).at_least(0.0) / offered_w,
            refused: None,
        };
    }
    let served_w = offered_w - bank.power_w;
    let short = served_w < asked_w - SHORTFALL_W;
    Served {
        loads_w: served_w - cooler_w,
        kept: 1.0,
        refused: short.then_some(limit),
    }
}
