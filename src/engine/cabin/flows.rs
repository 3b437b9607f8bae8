//! What a step is given and what it gives.

/// Gains inside, W and kg/s.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Gains {
    /// Given to the air, W.
    pub convective_w: f64,
    /// Radiated to the surfaces, W.
    pub radiant_w: f64,
    /// Water vapour, kg/s.
    pub moisture_kg_s: f64,
}

/// What a cooler would take out of the air.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Extraction {
    /// Sensible heat at most, W.
    pub sensible_w: f64,
    /// The air is not cooled below this, °C.
    pub least_c: f64,
    /// Water at most, kg/s.
    pub moisture_kg_s: f64,
    /// The air is not dried below this, kg/kg.
    pub least_humidity_ratio: f64,
}

impl Extraction {
    /// Nothing is taken out.
    pub const NONE: Self = Self {
        sensible_w: 0.0,
        least_c: -200.0,
        moisture_kg_s: 0.0,
        least_humidity_ratio: 0.0,
    };
}

/// What the air would do in a step without any cooler.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Forecast {
    /// Temperature of the air at the end of the step, °C.
    pub air_c: f64,
    /// How far each watt taken out over the step lowers it, K/W.
    pub fall_k_per_w: f64,
}

/// What a step did.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StepResult {
    /// Sensible heat taken out over the step, W.
    pub extracted_w: f64,
    /// Water taken out over the step, kg/s.
    pub coil_kg_s: f64,
}
