//! What a run gives: sampled series, totals by path, and the state at the end.

/// Ways by which heat enters the cabin, or leaves it when negative.
///
/// The cabin is its air, furniture and inner linings; a wall's heat is what passes from its insulation into its lining.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum HeatPath {
    /// Through the roof.
    Roof,
    /// Through the left side.
    Left,
    /// Through the right side.
    Right,
    /// Through the nose or partition.
    Nose,
    /// Through the rear doors.
    Rear,
    /// Through the floor.
    Floor,
    /// Through glass by its temperature.
    GlassWarmth,
    /// Sun that enters through glass.
    GlassSun,
    /// Leaks of the closed cabin.
    Leakage,
    /// Outdoor air moved by the fan.
    Fan,
    /// Opened windows and hatches.
    Openings,
    /// People.
    People,
    /// Animals.
    Animals,
    /// Cooking.
    Cooking,
    /// Appliances, lights and blowers.
    Appliances,
    /// The cooler; negative while it cools.
    Cooler,
    /// Heat that furniture, linings and air give back, or take up when negative.
    Stored,
}

impl HeatPath {
    /// Number of paths.
    pub const COUNT: usize = 17;

    /// Every path, in the order of the arrays of [`Series`] and [`Totals`].
    pub const ALL: [HeatPath; Self::COUNT] = [
        Self::Roof,
        Self::Left,
        Self::Right,
        Self::Nose,
        Self::Rear,
        Self::Floor,
        Self::GlassWarmth,
        Self::GlassSun,
        Self::Leakage,
        Self::Fan,
        Self::Openings,
        Self::People,
        Self::Animals,
        Self::Cooking,
        Self::Appliances,
        Self::Cooler,
        Self::Stored,
    ];
}

/// Samples at even spacing, each the state at its time; flows are means over the sample's span before it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Series {
    /// Clock hours since midnight of the first day: 6.0 is six in the morning, 30.0 six in the next.
    pub time_h: Vec<f64>,
    /// Outdoor dry bulb, °C.
    pub outdoor_c: Vec<f64>,
    /// Cabin air, °C.
    pub cabin_c: Vec<f64>,
    /// Felt (operative) temperature: air and surroundings together, °C.
    pub felt_c: Vec<f64>,
    /// Mean radiant temperature, °C.
    pub radiant_c: Vec<f64>,
    /// Relative humidity of the cabin, share.
    pub relative_humidity: Vec<f64>,
    /// Sun on a horizontal square metre, after shade, W/m².
    pub sun_w_m2: Vec<f64>,
    /// Direction towards the sun as the vehicle sees it: to its right, ahead and up, of length one (within 3e-4, for it is read
    /// on straight lines between points ten minutes apart). Up is negative while the sun is below the horizon.
    pub sun_direction: Vec<[f64; 3]>,
    /// Charge of the bank, share of its capacity.
    pub state_of_charge: Vec<f64>,
    /// Voltage at the bank's terminals, V.
    pub bank_voltage_v: Vec<f64>,
    /// Current into the bank, A; negative while it discharges.
    pub bank_current_a: Vec<f64>,
    /// Output of the compressor over its full output, mean over the sample's span.
    pub cooler_share: Vec<f64>,
    /// What kept the cooler from running at the sample's time, if anything did.
    pub stopped: Vec<Option<Stop>>,
    /// Power drawn for the cooler with blower and inverter loss, W.
    pub cooler_w: Vec<f64>,
    /// Power drawn by everything else, W.
    pub loads_w: Vec<f64>,
    /// Power from the panels, W.
    pub panels_w: Vec<f64>,
    /// Power from driving, W.
    pub driving_w: Vec<f64>,
    /// Power from shore, W.
    pub shore_w: Vec<f64>,
    /// Heat into the cabin by path, W, in the order of [`HeatPath::ALL`]; latent heat is not in it.
    pub heat_w: Vec<[f64; HeatPath::COUNT]>,
}

impl Series {
    /// An empty series with room for a number of samples.
    #[must_use]
    pub fn with_capacity(samples: usize) -> Self {
        let room = || Vec::with_capacity(samples);
        Self {
            time_h: room(),
            outdoor_c: room(),
            cabin_c: room(),
            felt_c: room(),
            radiant_c: room(),
            relative_humidity: room(),
            sun_w_m2: room(),
            sun_direction: Vec::with_capacity(samples),
            state_of_charge: room(),
            bank_voltage_v: room(),
            bank_current_a: room(),
            cooler_share: room(),
            stopped: Vec::with_capacity(samples),
            cooler_w: room(),
            loads_w: room(),
            panels_w: room(),
            driving_w: room(),
            shore_w: room(),
            heat_w: Vec::with_capacity(samples),
        }
    }

    /// Heat into the cabin by path at a sample, W; all zero beyond the last.
    ///
    /// The first sample has no span before it over which a flow could be meant: it gives the flows of the span after it.
    #[must_use]
    pub fn heat_w_at(&self, index: usize) -> [f64; HeatPath::COUNT] {
        let found = self.heat_w.get(index.max(1));
        found.copied().unwrap_or([0.0; HeatPath::COUNT])
    }

    /// Height of the sun above the horizon at a sample, degrees; negative below it, none beyond the last sample.
    #[must_use]
    pub fn sun_height_deg(&self, index: usize) -> Option<f64> {
        let [right, ahead, up] = *self.sun_direction.get(index)?;
        let level = (right * right + ahead * ahead).sqrt();
        Some(libm::atan2(up, level).to_degrees())
    }
}

/// Sums over the whole run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Totals {
    /// Heat into the cabin by path, Wh, in the order of [`HeatPath::ALL`].
    pub heat_wh: [f64; HeatPath::COUNT],
    /// Latent heat taken out by the cooler, Wh.
    pub cooler_latent_wh: f64,
    /// Water drained from the coil, kg.
    pub condensate_kg: f64,
    /// Water condensed on cold surfaces, kg.
    pub surface_condensation_kg: f64,
    /// Electric energy for the cooler, Wh.
    pub cooler_wh: f64,
    /// Electric energy for everything else, Wh.
    pub loads_wh: f64,
    /// Energy from the panels that was used or stored, Wh.
    pub panels_wh: f64,
    /// Energy from driving that was used or stored, Wh.
    pub driving_wh: f64,
    /// Energy from shore that was used or stored, Wh.
    pub shore_wh: f64,
    /// Energy lost in the bank, Wh.
    pub bank_loss_wh: f64,
    /// Charge drawn from the bank, Ah.
    pub discharged_ah: f64,
    /// Charge put into the bank, Ah.
    pub charged_ah: f64,
    /// Hours in which the compressor ran.
    pub compressor_h: f64,
    /// Starts of the compressor.
    pub compressor_starts: u32,
}

/// Why the cooler gave less than it was asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stop {
    /// The bank reached its lowest charge.
    BankEmpty,
    /// Voltage at the cooler fell below its cut-out.
    LowVoltage,
    /// The current exceeded what the bank's protection allows.
    CurrentLimit,
    /// The inverter could not carry the start.
    InverterOverload,
}

/// How well the heat and power balances close.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Balance {
    /// Heat that came in less heat that went out less heat stored, over the throughput.
    pub heat_residual: f64,
    /// Water that came in less water that went out less water stored, over the throughput.
    pub moisture_residual: f64,
    /// Electric energy in less out less stored and lost, over the throughput.
    pub electric_residual: f64,
}

/// A whole run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Results {
    /// Samples.
    pub series: Series,
    /// Sums.
    pub totals: Totals,
    /// The first time that something stopped the cooler: clock hours since midnight of the first day, and what.
    pub first_stop: Option<(f64, Stop)>,
    /// When the bank first was at its lowest charge, clock hours since midnight of the first day.
    pub emptied_at_h: Option<f64>,
    /// When the bank first fell below the reserve asked for, clock hours since midnight of the first day.
    pub below_reserve_at_h: Option<f64>,
    /// Greatest current out of the bank, A, starts not counted.
    pub peak_discharge_a: f64,
    /// Greatest current out of the bank at a start of the compressor, A.
    pub peak_start_a: f64,
    /// Closing of the balances.
    pub balance: Balance,
    /// Whether the cooler ran outside the range of its published curves, which are then extrapolated.
    pub curves_extrapolated: bool,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_sample_gives_the_flows_that_follow_it() {
        let series = Series {
            heat_w: vec![[0.0; HeatPath::COUNT], [3.0; HeatPath::COUNT]],
            ..Series::default()
        };
        assert_eq!(series.heat_w_at(0), [3.0; HeatPath::COUNT]);
        assert_eq!(series.heat_w_at(1), [3.0; HeatPath::COUNT]);
        assert_eq!(series.heat_w_at(2), [0.0; HeatPath::COUNT]);
    }

    #[test]
    fn the_height_of_the_sun_is_the_angle_above_level() {
        let series = Series {
            sun_direction: vec![
                [0.0, 0.5, 0.75_f64.sqrt()],
                [0.6, 0.8, 0.0],
                [0.0, 0.0, -1.0],
            ],
            ..Series::default()
        };
        let height = |index| series.sun_height_deg(index);
        assert!((height(0).unwrap() - 60.0).abs() < 1e-12);
        assert_eq!(
            (height(1), height(2), height(3)),
            (Some(0.0), Some(-90.0), None)
        );
    }
}
