//! Published performance curves of direct-expansion units.
//!
//! A set gives capacity and input ratio (electric input over capacity) relative to the rating point,
//! as functions of the wet bulb that enters the coil, the air that enters the condenser and the air
//! flow. Published coefficients are rounded: at the rating point they give 0.994…1.002 of the rated
//! capacity and up to 1.7 % more input. Each set is therefore divided by its own value there, so that
//! a cooler at its rating point does exactly what its rating says.
//!
//! Outside the range that a set was fitted in, wet bulb and flow are held at the end of the range and
//! so is a condenser colder than the range, all of which credit nothing. A condenser hotter than the
//! range is followed along the tangent at its end, because holding it would promise too much on the
//! hottest hours. Every such answer is flagged, except more air than the range, whose gain ends there.
//!
//! Sources: Winkler et al. (2013), laboratory tests of window units, NREL; Cutler et al. (2013),
//! NREL/TP-5500-56354, tables 9, 10, 16, 17; the packaged sets of the EnergyPlus example files. The
//! coefficients are those of public implementations of these reports.

use crate::quantity::Bounded;

/// Wet bulb entering the coil at the rating point, °C (AHRI 210/240 condition A, 67 °F).
pub const ENTERING_WET_BULB_RATED_C: f64 = 19.44;

/// Air entering the condenser at the rating point, °C (AHRI 210/240 condition A, 95 °F).
pub const CONDENSER_AIR_RATED_C: f64 = 35.0;

/// Range in which the packaged sets were fitted: wet bulb, condenser air, °C, and share of the flow.
const PACKAGED_RANGE: FittedRange = FittedRange {
    entering_wet_bulb_c: (12.78, 23.89),
    condenser_air_c: (18.0, 46.11),
    flow_fraction: (0.5, 1.5),
};

/// Range of the sets of Cutler et al. (2013): 55…75 °F and 75…125 °F; the flow as packaged sets.
const SPLIT_RANGE: FittedRange = FittedRange {
    entering_wet_bulb_c: (12.78, 23.89),
    condenser_air_c: (23.89, 51.67),
    flow_fraction: (0.5, 1.5),
};

/// Range in which a set of curves was fitted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FittedRange {
    /// Least and greatest wet bulb entering the coil, °C.
    pub entering_wet_bulb_c: (f64, f64),
    /// Coldest and hottest air entering the condenser, °C.
    pub condenser_air_c: (f64, f64),
    /// Least and greatest share of the rated air flow.
    pub flow_fraction: (f64, f64),
}

/// Coefficients of a set of curves as published.
///
/// Temperature curves are c₁ + c₂ x + c₃ x² + c₄ y + c₅ y² + c₆ x y with x the wet bulb entering the
/// coil and y the air entering the condenser, °C; flow curves are quadratic in the share of the flow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CurveSet {
    /// Capacity by temperatures.
    pub capacity: [f64; 6],
    /// Input ratio by temperatures.
    pub input_ratio: [f64; 6],
    /// Capacity by flow.
    pub capacity_flow: [f64; 3],
    /// Input ratio by flow.
    pub input_ratio_flow: [f64; 3],
    /// Where the set holds.
    pub range: FittedRange,
}

/// Small packaged window unit (Winkler et al. 2013), the set nearest to a vehicle's unit.
///
/// No range is published with the coefficients; that of the packaged sets is taken.
pub const WINDOW_UNIT_WINKLER_2013: CurveSet = CurveSet {
    capacity: [
        0.6405,
        0.015_68,
        0.000_453_1,
        0.001_615,
        -0.000_182_5,
        0.000_066_14,
    ],
    input_ratio: [2.287, -0.1732, 0.004_745, 0.016_62, 0.000_484, -0.001_306],
    capacity_flow: [0.887, 0.1128, 0.0],
    input_ratio_flow: [1.763, -0.6081, 0.0],
    range: PACKAGED_RANGE,
};

/// Central split unit of one speed (Cutler et al. 2013).
pub const SPLIT_ONE_SPEED_CUTLER_2013: CurveSet = CurveSet {
    capacity: [1.5509, -0.075_05, 0.0031, 0.0024, -0.000_05, -0.000_43],
    input_ratio: [-0.304_28, 0.118_05, -0.003_42, -0.006_26, 0.0007, -0.000_47],
    capacity_flow: [0.718_605_468, 0.410_099_989, -0.128_705_457],
    input_ratio_flow: [1.322_999_05, -0.477_711_207, 0.154_712_157],
    range: SPLIT_RANGE,
};

/// Central split unit of two stages at its low stage (Cutler et al. 2013).
pub const SPLIT_LOW_STAGE_CUTLER_2013: CurveSet = CurveSet {
    capacity: [1.664_58, -0.080_39, 0.0033, 0.001_24, -0.000_03, -0.000_52],
    input_ratio: [
        -0.427_38, 0.141_91, -0.004_12, -0.014_06, 0.000_83, -0.000_43,
    ],
    capacity_flow: [0.656_730_24, 0.516_470_835, -0.172_887_149],
    input_ratio_flow: [1.562_945_114, -0.791_859_997, 0.230_030_877],
    range: SPLIT_RANGE,
};

/// Central split unit of two stages at its high stage (Cutler et al. 2013).
pub const SPLIT_HIGH_STAGE_CUTLER_2013: CurveSet = CurveSet {
    capacity: [1.367_88, -0.062_57, 0.0028, 0.005_04, -0.000_07, -0.000_45],
    input_ratio: [
        0.042_32, 0.078_92, -0.002_38, -0.003_04, 0.000_53, -0.000_32,
    ],
    capacity_flow: [0.690_334_551, 0.464_383_753, -0.154_507_638],
    input_ratio_flow: [1.315_654_04, -0.482_467_162, 0.166_239_001],
    range: SPLIT_RANGE,
};

/// Packaged unit of the EnergyPlus example with automatic sizes.
pub const PACKAGED_AUTOSIZED: CurveSet = CurveSet {
    capacity: [
        0.766_956,
        0.010_775_6,
        -4.147_03e-5,
        0.001_349_61,
        -0.000_261_144,
        0.000_457_488,
    ],
    input_ratio: [
        0.297_145,
        0.043_093_3,
        -0.000_748_766,
        0.005_977_27,
        0.000_482_112,
        -0.000_956_448,
    ],
    capacity_flow: [0.8, 0.2, 0.0],
    input_ratio_flow: [1.1552, -0.1808, 0.0256],
    range: PACKAGED_RANGE,
};

/// Packaged unit of the EnergyPlus example of a small house.
pub const PACKAGED_HOUSE: CurveSet = CurveSet {
    capacity: [
        0.942_587_793,
        0.009_543_347,
        0.000_683_77,
        -0.011_042_676,
        5.249e-6,
        -9.72e-6,
    ],
    input_ratio: [
        0.342_414_409,
        0.034_885_008,
        -0.000_623_7,
        0.004_977_216,
        0.000_437_951,
        -0.000_728_028,
    ],
    capacity_flow: [0.8, 0.2, 0.0],
    input_ratio_flow: [1.1552, -0.1808, 0.0256],
    range: FittedRange {
        flow_fraction: (0.6, 1.8),
        ..PACKAGED_RANGE
    },
};

/// What a set of curves says at an operating point, relative to the rating point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Performance {
    /// Capacity over rated capacity.
    pub capacity_ratio: f64,
    /// Input ratio over rated input ratio.
    pub input_ratio: f64,
    /// Whether the point lies outside the range in which the set was fitted.
    pub extrapolated: bool,
}

/// A set of curves that gives exactly 1 at the rating point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PerformanceCurves {
    set: CurveSet,
    capacity_scale: f64,
    input_ratio_scale: f64,
}

impl CurveSet {
    /// Capacity relative to the rated one as published, before the division by the rating point.
    ///
    /// * `entering_wet_bulb_c`, `condenser_air_c` — °C, inside or outside [`FittedRange`]
    #[must_use]
    pub fn capacity_as_published(&self, entering_wet_bulb_c: f64, condenser_air_c: f64) -> f64 {
        biquadratic(&self.capacity, entering_wet_bulb_c, condenser_air_c)
    }

    /// Input ratio relative to the rated one as published, before the division by the rating point.
    ///
    /// * `entering_wet_bulb_c`, `condenser_air_c` — °C, inside or outside [`FittedRange`]
    #[must_use]
    pub fn input_ratio_as_published(&self, entering_wet_bulb_c: f64, condenser_air_c: f64) -> f64 {
        biquadratic(&self.input_ratio, entering_wet_bulb_c, condenser_air_c)
    }
}

impl PerformanceCurves {
    /// Divides a published set by its own value at a rating point and the rated flow.
    ///
    /// * `set` — coefficients as published
    /// * `entering_wet_bulb_rated_c`, `condenser_air_rated_c` — the rating point, °C, within the
    ///   range of the set
    #[must_use]
    pub fn new(set: &CurveSet, entering_wet_bulb_rated_c: f64, condenser_air_rated_c: f64) -> Self {
        let (wet_bulb_c, condenser_c) = (entering_wet_bulb_rated_c, condenser_air_rated_c);
        let capacity =
            set.capacity_as_published(wet_bulb_c, condenser_c) * quadratic(&set.capacity_flow, 1.0);
        let input_ratio = set.input_ratio_as_published(wet_bulb_c, condenser_c)
            * quadratic(&set.input_ratio_flow, 1.0);
        Self {
            set: *set,
            capacity_scale: 1.0 / capacity,
            input_ratio_scale: 1.0 / input_ratio,
        }
    }

    /// A set divided by its value at the standard rating point, 19.44 °C wet bulb and 35 °C outdoors.
    #[must_use]
    pub fn at_standard_rating(set: &CurveSet) -> Self {
        Self::new(set, ENTERING_WET_BULB_RATED_C, CONDENSER_AIR_RATED_C)
    }

    /// Capacity over rated capacity, under the rule for points outside the fitted range.
    ///
    /// * `entering_wet_bulb_c`, `condenser_air_c` — °C, 0…40 and −10…70
    /// * `flow_fraction` — share of the rated flow for the speed, above 0
    #[must_use]
    pub fn capacity_ratio(
        &self,
        entering_wet_bulb_c: f64,
        condenser_air_c: f64,
        flow_fraction: f64,
    ) -> f64 {
        let range = &self.set.range;
        let wet_bulb_c = hold(entering_wet_bulb_c, range.entering_wet_bulb_c);
        let flow = hold(flow_fraction, range.flow_fraction);
        self.capacity_scale
            * along_condenser(&self.set.capacity, wet_bulb_c, condenser_air_c, range)
            * quadratic(&self.set.capacity_flow, flow)
    }

    /// Capacity and input ratio relative to the rating point, and whether they are extrapolated.
    ///
    /// Each is its temperature curve times its flow curve over the same at the rating point.
    ///
    /// * `entering_wet_bulb_c`, `condenser_air_c` — °C, 0…40 and −10…70
    /// * `flow_fraction` — share of the rated flow for the speed, above 0
    #[must_use]
    pub fn performance(
        &self,
        entering_wet_bulb_c: f64,
        condenser_air_c: f64,
        flow_fraction: f64,
    ) -> Performance {
        let range = &self.set.range;
        let wet_bulb_c = hold(entering_wet_bulb_c, range.entering_wet_bulb_c);
        let flow = hold(flow_fraction, range.flow_fraction);
        let input_ratio = self.input_ratio_scale
            * along_condenser(&self.set.input_ratio, wet_bulb_c, condenser_air_c, range)
            * quadratic(&self.set.input_ratio_flow, flow);
        Performance {
            capacity_ratio: self.capacity_ratio(
                entering_wet_bulb_c,
                condenser_air_c,
                flow_fraction,
            ),
            input_ratio,
            extrapolated: wet_bulb_c != entering_wet_bulb_c
                || hold(condenser_air_c, range.condenser_air_c) != condenser_air_c
                || flow_fraction < range.flow_fraction.0,
        }
    }
}

impl Default for PerformanceCurves {
    fn default() -> Self {
        Self::at_standard_rating(&WINDOW_UNIT_WINKLER_2013)
    }
}

/// A temperature curve held at a cold condenser and followed along its tangent at a hot one.
fn along_condenser(
    coefficients: &[f64; 6],
    wet_bulb_c: f64,
    condenser_air_c: f64,
    range: &FittedRange,
) -> f64 {
    let held_c = hold(condenser_air_c, range.condenser_air_c);
    let value = biquadratic(coefficients, wet_bulb_c, held_c);
    let hotter_k = (condenser_air_c - held_c).at_least(0.0);
    let [_, _, _, linear, square, cross] = *coefficients;
    value + hotter_k * (linear + 2.0 * square * held_c + cross * wet_bulb_c)
}

fn hold(value: f64, (least, greatest): (f64, f64)) -> f64 {
    value.clamp(least, greatest)
}

fn biquadratic(coefficients: &[f64; 6], x: f64, y: f64) -> f64 {
    let [c1, c2, c3, c4, c5, c6] = *coefficients;
    c1 + x * (c2 + c3 * x) + y * (c4 + c5 * y) + c6 * x * y
}

fn quadratic(coefficients: &[f64; 3], x: f64) -> f64 {
    let [c1, c2, c3] = *coefficients;
    c1 + x * (c2 + c3 * x)
}

#[cfg(test)]
mod tests {
    use super::*;

    const SETS: [CurveSet; 6] = [
        WINDOW_UNIT_WINKLER_2013,
        SPLIT_ONE_SPEED_CUTLER_2013,
        SPLIT_LOW_STAGE_CUTLER_2013,
        SPLIT_HIGH_STAGE_CUTLER_2013,
        PACKAGED_AUTOSIZED,
        PACKAGED_HOUSE,
    ];

    #[test]
    fn rating_point_gives_exactly_one() {
        for set in &SETS {
            let curves = PerformanceCurves::at_standard_rating(set);
            let rated = curves.performance(ENTERING_WET_BULB_RATED_C, CONDENSER_AIR_RATED_C, 1.0);
            assert!((rated.capacity_ratio - 1.0).abs() < 1e-14);
            assert!((rated.input_ratio - 1.0).abs() < 1e-14);
            assert!(!rated.extrapolated);
        }
    }

    #[test]
    fn outside_the_range_is_flagged_continuous_and_never_better() {
        for set in &SETS {
            let curves = PerformanceCurves::at_standard_rating(set);
            let hottest_c = set.range.condenser_air_c.1;
            let edge = curves.performance(19.44, hottest_c, 1.0);
            let beyond = curves.performance(19.44, hottest_c + 1e-6, 1.0);
            assert!(!edge.extrapolated && beyond.extrapolated);
            assert!((edge.capacity_ratio - beyond.capacity_ratio).abs() < 1e-6);
            let roof = curves.performance(19.44, hottest_c + 8.0, 1.0);
            assert!(roof.capacity_ratio < edge.capacity_ratio);
            assert!(roof.input_ratio > edge.input_ratio);
            let cold = curves.performance(19.44, 5.0, 1.0);
            let coldest = curves.performance(19.44, set.range.condenser_air_c.0, 1.0);
            assert_eq!(cold.capacity_ratio, coldest.capacity_ratio);
            assert!(cold.extrapolated);
            assert!(!curves.performance(19.44, 35.0, 2.4).extrapolated);
            assert!(curves.performance(19.44, 35.0, 0.3).extrapolated);
        }
    }

    #[test]
    fn positive_wherever_a_cabin_can_go() {
        for set in &SETS {
            let curves = PerformanceCurves::at_standard_rating(set);
            for wet_bulb in 0..=40 {
                for condenser in -10..=70 {
                    let point = curves.performance(f64::from(wet_bulb), f64::from(condenser), 0.7);
                    assert!(point.capacity_ratio > 0.1 && point.capacity_ratio < 2.0);
                    assert!(point.input_ratio > 0.1 && point.input_ratio < 6.0);
                }
            }
        }
    }
}
