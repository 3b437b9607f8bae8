//! What measures take beside the scenario's own prices: hours of work, and how a cooler's price grows with its capacity.

/// Hours of work that measures take, and how the price of a cooler grows. The defaults are common practice, no source; the user
/// edits them.
#[derive(Clone, Copy, Debug, PartialEq)]
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

impl Default for MeasurePrices {
    fn default() -> Self {
        Self {
            insulation_h_per_m2: 0.3,
            stuffing_h_per_m2: 0.4,
            covers_h_per_m2: 0.5,
            paint_h_per_m2: 0.8,
            fan_h: 4.0,
            bank_h: 1.0,
            panels_h_per_100_w: 1.0,
            dc_dc_h: 2.0,
            cooler_h: 6.0,
            cooler_price_exponent: 0.6,
        }
    }
}
