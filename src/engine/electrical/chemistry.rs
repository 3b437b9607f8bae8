//! What a battery's chemistry settles: voltages, temperature behaviour and how it accepts charge.
//!
//! Values are for one cell. The open-circuit voltage of lithium iron phosphate comes from published
//! half-cell fits, not from a measured pack. Charge and discharge curves of real cells lie 10–30 mV
//! apart (from memory), so on the flat part the voltage does not tell the state of charge. Lead-acid
//! voltage is taken as linear in the state of charge.
//!
//! Sources: Safari & Delacourt, J. Electrochem. Soc. 158 (2011) A562, for both electrodes, with the
//! graphite window of Schimpe et al., J. Electrochem. Soc. 165 (2018) A181. Everything marked "from
//! memory" or "common practice, no source" below has no source that was checked.

/// Battery chemistries the model knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Chemistry {
    /// Lithium iron phosphate with a graphite negative electrode.
    LithiumIronPhosphate,
    /// Sealed lead-acid with the electrolyte in glass mats.
    AbsorbentGlassMat,
    /// Vented lead-acid with free electrolyte.
    Flooded,
}

/// Properties of a cell that follow from its chemistry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CellProperties {
    /// Nominal voltage of the cell, V.
    pub nominal_voltage_v: f64,
    /// Cells in series in a "12 V" block.
    pub cells_per_block: f64,
    /// Open-circuit voltage against state of charge at 25 °C: (fraction, V), rising.
    pub open_circuit_voltage_v: &'static [(f64, f64)],
    /// Voltage the charger does not exceed, V.
    pub voltage_charge_limit_v: f64,
    /// Voltage below which discharge stops, V.
    pub voltage_discharge_limit_v: f64,
    /// Share of the capacity at 25 °C that can be drawn, against temperature: (°C, fraction), rising.
    pub capacity_fraction: &'static [(f64, f64)],
    /// Constant B of R(T) = R₂₅ exp(B (1/T − 1/298.15 K)), K.
    pub resistance_temperature_constant_k: f64,
    /// Temperatures between which the bank takes charge, °C.
    pub charge_temperature_range_c: (f64, f64),
    /// Time constant with which the accepted current falls as the bank nears full, h.
    pub acceptance_time_constant_h: f64,
    /// Discharge time at which the capacity is rated, h.
    pub rated_discharge_time_h: f64,
}

/// Lithium iron phosphate against graphite at 25 °C (Safari & Delacourt 2011).
const OPEN_CIRCUIT_LITHIUM_IRON_PHOSPHATE: [(f64, f64); 29] = [
    (0.0, 2.7479),
    (0.01, 2.8669),
    (0.02, 2.9421),
    (0.03, 3.0030),
    (0.05, 3.0935),
    (0.075, 3.1618),
    (0.1, 3.1991),
    (0.15, 3.2332),
    (0.2, 3.2518),
    (0.25, 3.2684),
    (0.3, 3.2835),
    (0.35, 3.2948),
    (0.4, 3.3022),
    (0.45, 3.3064),
    (0.5, 3.3090),
    (0.55, 3.3110),
    (0.6, 3.3134),
    (0.65, 3.3175),
    (0.7, 3.3239),
    (0.75, 3.3316),
    (0.8, 3.3381),
    (0.85, 3.3425),
    (0.9, 3.3469),
    (0.93, 3.3534),
    (0.95, 3.3638),
    (0.97, 3.3862),
    (0.98, 3.4060),
    (0.99, 3.4353),
    (1.0, 3.4782),
];

/// Sealed lead-acid: acid of relative density 1.13…1.30 by "density + 0.845 V" (from memory).
const OPEN_CIRCUIT_ABSORBENT_GLASS_MAT: [(f64, f64); 2] = [(0.0, 1.975), (1.0, 2.145)];

/// Vented lead-acid: acid of relative density 1.12…1.265 by "density + 0.845 V" (from memory).
const OPEN_CIRCUIT_FLOODED: [(f64, f64); 2] = [(0.0, 1.965), (1.0, 2.110)];

/// Middle of the spread of published cells (from memory).
const CAPACITY_LITHIUM_IRON_PHOSPHATE: [(f64, f64); 4] =
    [(-20.0, 0.675), (-10.0, 0.8), (0.0, 0.9), (25.0, 1.0)];

/// About 1 % less for each kelvin below 25 °C at moderate currents (from memory).
const CAPACITY_LEAD_ACID: [(f64, f64); 4] =
    [(-20.0, 0.58), (-10.0, 0.69), (0.0, 0.79), (25.0, 1.0)];

const LITHIUM_IRON_PHOSPHATE: CellProperties = CellProperties {
    nominal_voltage_v: 3.2,
    cells_per_block: 4.0,
    open_circuit_voltage_v: &OPEN_CIRCUIT_LITHIUM_IRON_PHOSPHATE,
    // Within the 3.45…3.65 V of common practice (no source).
    voltage_charge_limit_v: 3.55,
    // Usual cut-off of data sheets (common practice, no source).
    voltage_discharge_limit_v: 2.5,
    capacity_fraction: &CAPACITY_LITHIUM_IRON_PHOSPHATE,
    // Middle of 2 000…3 000 K (from memory).
    resistance_temperature_constant_k: 2_500.0,
    // Below 0 °C lithium plates the graphite; 0…45 °C is the usual range of data
    // sheets (common practice, no source).
    charge_temperature_range_c: (0.0, 45.0),
    // Middle of 10…25 min (from memory): the current falls from about 90 % on.
    acceptance_time_constant_h: 0.25,
    // Capacity is stated for 5 h (common practice, no source); it only matters with an exponent above 1.
    rated_discharge_time_h: 5.0,
};

const ABSORBENT_GLASS_MAT: CellProperties = CellProperties {
    nominal_voltage_v: 2.0,
    cells_per_block: 6.0,
    open_circuit_voltage_v: &OPEN_CIRCUIT_ABSORBENT_GLASS_MAT,
    // 14.4 V for six cells (common practice, no source).
    voltage_charge_limit_v: 2.4,
    // 10.5 V for six cells, the end of the usual capacity test (from memory).
    voltage_discharge_limit_v: 1.75,
    capacity_fraction: &CAPACITY_LEAD_ACID,
    // Resistance doubles from 25 °C to −20 °C (from memory).
    resistance_temperature_constant_k: 1_163.0,
    // Usual range of data sheets (common practice, no source).
    charge_temperature_range_c: (-20.0, 50.0),
    // A fifth of the capacity per hour is accepted up to 80 % (common practice, no source).
    acceptance_time_constant_h: 1.0,
    // Capacity is stated for 20 h (common practice, no source).
    rated_discharge_time_h: 20.0,
};

const FLOODED: CellProperties = CellProperties {
    open_circuit_voltage_v: &OPEN_CIRCUIT_FLOODED,
    // 14.7 V for six cells (common practice, no source).
    voltage_charge_limit_v: 2.45,
    // An eighth of the capacity per hour is accepted up to 80 % (common practice, no source).
    acceptance_time_constant_h: 1.6,
    ..ABSORBENT_GLASS_MAT
};

impl Chemistry {
    /// The cell properties of the chemistry.
    #[must_use]
    pub const fn cell(self) -> &'static CellProperties {
        match self {
            Self::LithiumIronPhosphate => &LITHIUM_IRON_PHOSPHATE,
            Self::AbsorbentGlassMat => &ABSORBENT_GLASS_MAT,
            Self::Flooded => &FLOODED,
        }
    }
}

/// Linear interpolation in a table of rising abscissae, held at its ends.
pub(super) fn interpolate(table: &[(f64, f64)], at: f64) -> f64 {
    let mut previous = table[0];
    for &point in table {
        if at <= point.0 {
            let span = point.0 - previous.0;
            if span <= 0.0 {
                return point.1;
            }
            return previous.1 + (point.1 - previous.1) * (at - previous.0) / span;
        }
        previous = point;
    }
    previous.1
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn interpolation_meets_its_points_and_holds_its_ends() {
        let table = CAPACITY_LITHIUM_IRON_PHOSPHATE;
        for (at, value) in table {
            assert!((interpolate(&table, at) - value).abs() < 1e-15);
        }
        assert_eq!(interpolate(&table, -40.0), 0.675);
        assert_eq!(interpolate(&table, 60.0), 1.0);
        assert!((interpolate(&table, 12.5) - 0.95).abs() < 1e-12);
    }

    #[test]
    fn charge_and_discharge_limits_enclose_the_open_circuit_voltage() {
        for chemistry in [
            Chemistry::LithiumIronPhosphate,
            Chemistry::AbsorbentGlassMat,
            Chemistry::Flooded,
        ] {
            let cell = chemistry.cell();
            for pair in cell.open_circuit_voltage_v.windows(2) {
                assert!(pair[0].0 < pair[1].0 && pair[0].1 < pair[1].1);
            }
            for (_, voltage_v) in cell.open_circuit_voltage_v {
                assert!(*voltage_v > cell.voltage_discharge_limit_v);
                assert!(*voltage_v < cell.voltage_charge_limit_v);
            }
        }
    }
}
