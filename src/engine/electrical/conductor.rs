//! Copper conductors: their sizes, what they carry and what they resist.
//!
//! Allowable currents are those of 33 CFR 183.425, Table 5 (United States law for boats; read in the published text): copper,
//! air at 30 °C, no more than two conductors together. That table knows sizes of the American wire gauge only; a metric size is
//! allowed the current of the thickest gauge size that is not thicker than it. Resistances of gauge sizes are those of NEC
//! chapter 9, Table 8 (uncoated, stranded, 75 °C; 14 to 8, 16 and 18 AWG from memory), of metric sizes the maxima of IEC 60228
//! for flexible plain copper (class 5, 20 °C). Both are taken at 75 °C.
//!
//! *Limits.* Direct current. Terminals, joints, fuses and switches add resistance that is not in it.

/// Highest temperature that the insulation of a conductor bears.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Insulation {
    /// 60 °C.
    C60,
    /// 75 °C.
    C75,
    /// 80 °C.
    C80,
    /// 90 °C.
    C90,
    /// 105 °C.
    C105,
    /// 125 °C.
    C125,
    /// 200 °C.
    C200,
}

impl Insulation {
    /// Every class, coolest first, as the columns of Table 5.
    pub const ALL: [Self; 7] = [
        Self::C60,
        Self::C75,
        Self::C80,
        Self::C90,
        Self::C105,
        Self::C125,
        Self::C200,
    ];

    /// The temperature, °C.
    #[must_use]
    pub fn rating_c(self) -> f64 {
        [60.0, 75.0, 80.0, 90.0, 105.0, 125.0, 200.0][self as usize]
    }
}

/// A family of conductor sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizeSeries {
    /// American wire gauge.
    WireGauge,
    /// Square millimetres of IEC 60228.
    Metric,
}

/// A size of conductor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conductor {
    /// Gauge, `2/0` for 00; none for a metric size.
    pub gauge: Option<&'static str>,
    /// Cross-section of the copper, mm².
    pub area_mm2: f64,
    /// Resistance at 75 °C, Ω/m.
    pub resistance_ohm_m: f64,
    /// Allowable current in each column of Table 5, A.
    allowable_a: [f64; 7],
}

/// One row of the gauge table: gauge, mm², Ω/km at 75 °C, and Table 5 from 60 to 200 °C in A.
type GaugeRow = (&'static str, f64, f64, [f64; 7]);

const GAUGES: [GaugeRow; 15] = [
    (
        "18",
        0.823,
        26.0827,
        [10.0, 10.0, 15.0, 20.0, 20.0, 25.0, 25.0],
    ),
    (
        "16",
        1.309,
        16.3714,
        [15.0, 15.0, 20.0, 25.0, 25.0, 30.0, 35.0],
    ),
    (
        "14",
        2.081,
        10.3018,
        [20.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0],
    ),
    (
        "12",
        3.309,
        6.4961,
        [25.0, 25.0, 35.0, 40.0, 45.0, 50.0, 55.0],
    ),
    (
        "10",
        5.261,
        4.0682,
        [40.0, 40.0, 50.0, 55.0, 60.0, 70.0, 70.0],
    ),
    (
        "8",
        8.366,
        2.5525,
        [55.0, 65.0, 70.0, 70.0, 80.0, 90.0, 100.0],
    ),
    (
        "6",
        13.302,
        1.6109,
        [80.0, 95.0, 100.0, 100.0, 120.0, 125.0, 135.0],
    ),
    (
        "4",
        21.151,
        1.0105,
        [105.0, 125.0, 130.0, 135.0, 160.0, 170.0, 180.0],
    ),
    (
        "3",
        26.670,
        0.8038,
        [120.0, 145.0, 150.0, 155.0, 180.0, 195.0, 210.0],
    ),
    (
        "2",
        33.631,
        0.6365,
        [140.0, 170.0, 175.0, 180.0, 210.0, 225.0, 240.0],
    ),
    (
        "1",
        42.408,
        0.5052,
        [165.0, 195.0, 210.0, 210.0, 245.0, 265.0, 280.0],
    ),
    (
        "1/0",
        53.475,
        0.4003,
        [195.0, 230.0, 245.0, 245.0, 285.0, 305.0, 325.0],
    ),
    (
        "2/0",
        67.431,
        0.3173,
        [225.0, 265.0, 285.0, 285.0, 330.0, 355.0, 370.0],
    ),
    (
        "3/0",
        85.029,
        0.2513,
        [260.0, 310.0, 330.0, 330.0, 385.0, 410.0, 430.0],
    ),
    (
        "4/0",
        107.219,
        0.1995,
        [300.0, 360.0, 385.0, 385.0, 445.0, 475.0, 510.0],
    ),
];

/// Metric sizes, mm², with the greatest resistance of IEC 60228, class 5, at 20 °C, Ω/km.
const METRIC_SIZES: [(f64, f64); 13] = [
    (1.0, 19.5),
    (1.5, 13.3),
    (2.5, 7.98),
    (4.0, 4.95),
    (6.0, 3.3),
    (10.0, 1.91),
    (16.0, 1.21),
    (25.0, 0.78),
    (35.0, 0.554),
    (50.0, 0.386),
    (70.0, 0.272),
    (95.0, 0.206),
    (120.0, 0.161),
];

/// Rise of copper's resistance with temperature at 20 °C, 1/K (IEC 60228, from memory).
const COPPER_RISE_PER_K: f64 = 0.003_93;

/// Temperature at which the drop is reckoned, °C: that of NEC chapter 9, Table 8.
const CONDUCTOR_C: f64 = 75.0;

/// Temperature of the air to which Table 5 refers, °C.
const TABLE_AIR_C: f64 = 30.0;

const METRES_PER_KILOMETRE: f64 = 1_000.0;

/// The sizes of a family, thinnest first.
pub fn sizes(series: SizeSeries) -> impl Iterator<Item = Conductor> {
    let count = match series {
        SizeSeries::WireGauge => GAUGES.len(),
        SizeSeries::Metric => METRIC_SIZES.len(),
    };
    (0..count).filter_map(move |index| match series {
        SizeSeries::WireGauge => GAUGES.get(index).map(gauge_size),
        SizeSeries::Metric => METRIC_SIZES.get(index).and_then(metric_size),
    })
}

fn gauge_size(&(gauge, area_mm2, ohm_km, allowable_a): &GaugeRow) -> Conductor {
    Conductor {
        gauge: Some(gauge),
        area_mm2,
        resistance_ohm_m: ohm_km / METRES_PER_KILOMETRE,
        allowable_a,
    }
}

fn metric_size(&(area_mm2, ohm_km_20): &(f64, f64)) -> Option<Conductor> {
    let thickest_within = GAUGES.iter().rev().find(|row| row.1 <= area_mm2)?;
    let warmed = 1.0 + COPPER_RISE_PER_K * (CONDUCTOR_C - 20.0);
    Some(Conductor {
        gauge: None,
        area_mm2,
        resistance_ohm_m: ohm_km_20 * warmed / METRES_PER_KILOMETRE,
        allowable_a: thickest_within.3,
    })
}

impl Conductor {
    /// Current that Table 5 of 33 CFR 183.425 allows in air of 30 °C with at most two conductors together, A.
    #[must_use]
    pub fn allowable_a(&self, insulation: Insulation) -> f64 {
        self.allowable_a[insulation as usize]
    }

    /// Resistance out and back, Ω: R = 2 L r.
    ///
    /// * `length_one_way_m` — L, m, at least 0
    #[must_use]
    pub fn loop_resistance_ohm(&self, length_one_way_m: f64) -> f64 {
        2.0 * length_one_way_m * self.resistance_ohm_m
    }
}

/// Share of the allowable current that is left in hot air: √((T_c − T_a)/(T_c − 30 °C)), at most 1, and 0 where the air is as
/// hot as the insulation bears.
///
/// * `insulation` — T_c, its rating
/// * `air_c` — T_a, air around the conductor, °C
///
/// Source: NEC 310.15(B), equation for ambient temperatures (from memory). At 50 °C it gives the factors for engine spaces of 33
/// CFR 183.425, Table 5, note 1, but for 200 °C, where that allows all and this a little less.
#[must_use]
pub fn hot_air_factor(insulation: Insulation, air_c: f64) -> f64 {
    let rating_c = insulation.rating_c();
    ((rating_c - air_c) / (rating_c - TABLE_AIR_C))
        .clamp(0.0, 1.0)
        .sqrt()
}

/// Share of the allowable current that is left where conductors lie together.
///
/// * `conductors` — how many that carry current lie together, the return included
///
/// Source: the less of ABYC E-11 (3: 0.70, 4 to 6: 0.60, 7 to 24: 0.50, more: 0.40; from memory), which belongs to the currents
/// of Table 5, and NEC 310.15(C)(1) (4 to 6: 0.80, to 9: 0.70, to 20: 0.50, to 30: 0.45, to 40: 0.40, more: 0.35).
#[must_use]
pub fn bundle_factor(conductors: f64) -> f64 {
    match conductors {
        count if count < 3.0 => 1.0,
        count if count < 4.0 => 0.7,
        count if count < 7.0 => 0.6,
        count if count < 21.0 => 0.5,
        count if count < 25.0 => 0.45,
        count if count < 41.0 => 0.4,
        _ => 0.35,
    }
}
