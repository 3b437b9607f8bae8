//! What measures take beside the prices of parts: hours of work, and how a cooler's price grows with its capacity.

use serde::{Deserialize, Serialize};

/// Hours of work that measures take, and how the price of a cooler grows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeasurePrices {
    /// Each square metre of insulation added, h.
    pub insulation_h_per_m2: f64,
    /// Each square metre of cavities stuffed anew, lining off and on, h.
    pub stuffing_h_per_m2: f64,
    /// Each square metre of window covers, h.
    pub covers_h_per_m2: f64,
    /// Each square metre of roof painted, h; the paint is in it.
    pub paint_h_per_m2: f64,
    /// A roof fan, h.
    pub fan_h: f64,
    /// Another bank, h.
    pub bank_h: f64,
    /// Each hundred watts of panels, h.
    pub panels_h_per_100_w: f64,
    /// A stronger DC-DC charger with its cable, h.
    pub dc_dc_h: f64,
    /// A cooler, h: saved where there is none.
    pub cooler_h: f64,
    /// Power of its capacity by which a cooler's price grows.
    pub cooler_price_exponent: f64,
}
