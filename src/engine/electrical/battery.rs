//! A battery bank: open-circuit voltage behind a resistance, with its limits.
//!
//! The bank is one block of cells; imbalance, self-discharge and hysteresis are left out. Charge is
//! counted in ampere-hours referred to the aged bank at 25 °C. Cold does not destroy charge: it
//! locks the last part of it away until the bank warms. The terminal voltage is solved together
//! with the current, so a sagging bank draws more current for the same power.
//!
//! Within a step the open-circuit voltage is followed along its slope (implicit midpoint), so the
//! energy drawn hardly depends on the length of the step. The loss of a step is booked as terminal
//! energy less rise of stored energy, so the balance closes to rounding. It holds resistive heat,
//! charge that went in without being stored, and in lead-acid the charge that a fast discharge
//! leaves behind (Peukert), which is counted as lost although rest would bring some of it back.
//!
//! Validity: −20…60 °C, steps up to a few minutes.
//!
//! Sources: textbook equivalent circuit; Peukert's law in its rated-time form t = H (C/(I H))ᵏ.
//! The properties of the cells and their sources stand in [`super::chemistry`].

mod current;
mod flow;

pub use self::flow::{BankFlow, BankLimit, BankStep};

use self::current::{ChargeLimits, current_for_power_a, least};
use super::bank_input::{BankError, BankInput};
use super::chemistry::{CellProperties, interpolate};
use crate::quantity::{Bounded, SECONDS_PER_HOUR, interval_of, kelvin_from_celsius};

/// Intervals of the even grid of the state of charge; every point of the published table lies on it.
const GRID_INTERVALS: usize = 200;

/// Temperature to which resistance and capacity are referred, K.
const REFERENCE_TEMPERATURE_K: f64 = 298.15;

/// A multiplication is several times as fast as a division.
const HOURS_PER_SECOND: f64 = 1.0 / SECONDS_PER_HOUR;

/// Voltage of one block, by which banks are named, V.
const BLOCK_VOLTAGE_V: f64 = 12.0;

/// The charge that a bank holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BankState {
    /// Charge above empty, referred to 25 °C, Ah.
    pub charge_ah: f64,
}

/// What a temperature makes of a bank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BankConditions {
    resistance_ohm: f64,
    floor_charge_ah: f64,
    may_charge: bool,
}

/// A battery bank, ready to step.
#[derive(Clone, Debug)]
pub struct Bank {
    input: BankInput,
    cell: &'static CellProperties,
    cells: f64,
    full_charge_ah: f64,
    /// Grid intervals for each ampere-hour.
    grid_per_ah: f64,
    rated_current_a: f64,
    /// Open-circuit voltage of the bank on the grid, V.
    open_circuit_v: [f64; GRID_INTERVALS + 1],
    /// Integral of the open-circuit voltage over the state of charge, from empty, V.
    open_circuit_integral_v: [f64; GRID_INTERVALS + 1],
}

/// The grid interval that holds the state of charge, and the share of it below.
type GridPosition = (usize, f64);

/// Where the bank stands on its open-circuit curve.
struct OperatingPoint {
    open_circuit_v: f64,
    /// Rise of the open-circuit voltage with charge, V/Ah.
    slope_v_per_ah: f64,
    resistance_ohm: f64,
    step_h: f64,
}

impl Bank {
    /// Builds a bank and lays its open-circuit voltage on an even grid.
    ///
    /// # Errors
    /// [`BankError`] if an input lies outside the range stated at [`BankInput`], the system voltage
    /// is not 12, 24 or 48 V, or the usable window is empty.
    pub fn new(input: BankInput) -> Result<Self, BankError> {
        input.check()?;
        let cell = input.chemistry.cell();
        let blocks = input.nominal_voltage_v / BLOCK_VOLTAGE_V;
        let cells = cell.cells_per_block * blocks;
        let full_charge_ah = input.capacity_ah * input.health_fraction;
        let mut open_circuit_v = [0.0; GRID_INTERVALS + 1];
        for (index, voltage_v) in open_circuit_v.iter_mut().enumerate() {
            let soc = index as f64 / GRID_INTERVALS as f64;
            *voltage_v = cells * interpolate(cell.open_circuit_voltage_v, soc);
        }
        let mut open_circuit_integral_v = [0.0; GRID_INTERVALS + 1];
        for index in 0..GRID_INTERVALS {
            let mean_v = f64::midpoint(open_circuit_v[index], open_circuit_v[index + 1]);
            open_circuit_integral_v[index + 1] =
                open_circuit_integral_v[index] + mean_v / GRID_INTERVALS as f64;
        }
        Ok(Self {
            input,
            cell,
            cells,
            full_charge_ah,
            grid_per_ah: GRID_INTERVALS as f64 / full_charge_ah,
            rated_current_a: full_charge_ah / cell.rated_discharge_time_h,
            open_circuit_v,
            open_circuit_integral_v,
        })
    }

    /// The state of a bank charged to a state of charge of the aged bank at 25 °C, 0…1.
    #[must_use]
    pub fn state_at(&self, state_of_charge: f64) -> BankState {
        BankState {
            charge_ah: state_of_charge * self.full_charge_ah,
        }
    }

    /// State of charge, 0…1: charge over the capacity of the aged bank at 25 °C.
    #[must_use]
    pub fn state_of_charge(&self, state: &BankState) -> f64 {
        state.charge_ah / self.full_charge_ah
    }

    /// Nominal voltage: cells in series times the nominal voltage of the cell, V.
    #[must_use]
    pub fn nominal_voltage_v(&self) -> f64 {
        self.cells * self.cell.nominal_voltage_v
    }

    /// Terminal voltage at rest, V.
    #[must_use]
    pub fn open_circuit_voltage_v(&self, state: &BankState) -> f64 {
        self.on_grid(self.grid_position(state)).0
    }

    /// Energy above empty: open-circuit voltage integrated over charge, Wh.
    #[must_use]
    pub fn stored_energy_wh(&self, state: &BankState) -> f64 {
        let (index, fraction) = self.grid_position(state);
        let (low_v, high_v) = (self.open_circuit_v[index], self.open_circuit_v[index + 1]);
        let partial_v = fraction * (low_v + 0.5 * fraction * (high_v - low_v));
        let integral_v = self.open_circuit_integral_v[index] + partial_v / GRID_INTERVALS as f64;
        integral_v * self.full_charge_ah
    }

    /// Charge that can still be drawn slowly at a temperature (°C, −20…60), Ah.
    ///
    /// Usable = charge − C (1 − f(T) (1 − s)), with C the capacity of the aged bank, f(T) the
    /// share of it that the temperature leaves and s the least usable state of charge.
    #[must_use]
    pub fn usable_charge_ah(&self, state: &BankState, temperature_c: f64) -> f64 {
        (state.charge_ah - self.floor_charge_ah(temperature_c)).at_least(0.0)
    }

    /// Resistance of the bank, Ω: R(T) = R₂₅ exp(B (1/T − 1/298.15 K)).
    ///
    /// * `temperature_c` — temperature of the bank, °C, −20…60
    #[must_use]
    pub fn resistance_ohm(&self, temperature_c: f64) -> f64 {
        let temperature_k = kelvin_from_celsius(temperature_c);
        let exponent = self.cell.resistance_temperature_constant_k
            * (1.0 / temperature_k - 1.0 / REFERENCE_TEMPERATURE_K);
        self.input.resistance_ohm * libm::exp(exponent)
    }

    /// Charges or discharges the bank for one step at constant power.
    ///
    /// The mean terminal voltage is V = U + I (R + η U' Δt/2) and the current solves V I = P, where
    /// U is the open-circuit voltage at the start, U' its rise with charge and η the share of the
    /// charge that is stored (1 while discharging). The stored charge moves by η I Δt. Where a limit
    /// of current, voltage, charge or temperature binds, the current is that of the limit.
    ///
    /// * `state` — the charge, moved to the end of the step
    /// * `step_s` — length of the step, s, above 0
    /// * `power_demand_w` — net power into the bank at its terminals, W; negative discharges
    /// * `temperature_c` — temperature of the bank, °C, −20…60
    pub fn step(
        &self,
        state: &mut BankState,
        step_s: f64,
        power_demand_w: f64,
        temperature_c: f64,
    ) -> BankStep {
        let stored_before_wh = self.stored_energy_wh(state);
        let conditions = self.conditions(temperature_c);
        let flow = self.step_under(state, step_s, power_demand_w, &conditions);
        let stored_wh = self.stored_energy_wh(state) - stored_before_wh;
        BankStep {
            current_a: flow.current_a,
            terminal_voltage_v: flow.terminal_voltage_v,
            power_w: flow.power_w,
            loss_w: flow.power_w - stored_wh * SECONDS_PER_HOUR / step_s,
            limited_by: flow.limited_by,
        }
    }

    /// What a temperature (°C, −20…60) makes of the bank, worked out once for many steps.
    #[must_use]
    pub fn conditions(&self, temperature_c: f64) -> BankConditions {
        let (coldest_c, hottest_c) = self.cell.charge_temperature_range_c;
        BankConditions {
            resistance_ohm: self.resistance_ohm(temperature_c),
            floor_charge_ah: self.floor_charge_ah(temperature_c),
            may_charge: (coldest_c..=hottest_c).contains(&temperature_c),
        }
    }

    /// The same as [`Self::step`], under conditions worked out before and without the loss, which over any time is what flowed
    /// in less the rise of [`Self::stored_energy_wh`].
    #[inline(always)]
    pub fn step_under(
        &self,
        state: &mut BankState,
        step_s: f64,
        power_demand_w: f64,
        conditions: &BankConditions,
    ) -> BankFlow {
        let (open_circuit_v, slope_v_per_ah) = self.on_grid(self.grid_position(state));
        if power_demand_w == 0.0 {
            return BankFlow {
                current_a: 0.0,
                terminal_voltage_v: open_circuit_v,
                power_w: 0.0,
                limited_by: None,
            };
        }
        let point = OperatingPoint {
            open_circuit_v,
            slope_v_per_ah,
            resistance_ohm: conditions.resistance_ohm,
            step_h: step_s * HOURS_PER_SECOND,
        };
        let (current_a, terminal_voltage_v, limited_by) = if power_demand_w < 0.0 {
            self.discharge(state, &point, -power_demand_w, conditions)
        } else {
            self.charge(state, &point, power_demand_w, conditions)
        };
        BankFlow {
            current_a,
            terminal_voltage_v,
            power_w: current_a * terminal_voltage_v,
            limited_by,
        }
    }

    /// Draws power for a step; returns current into the bank, terminal voltage and limit.
    #[inline(always)]
    fn discharge(
        &self,
        state: &mut BankState,
        point: &OperatingPoint,
        power_w: f64,
        conditions: &BankConditions,
    ) -> (f64, f64, Option<BankLimit>) {
        let resistance_ohm = point.resistance_ohm + 0.5 * point.slope_v_per_ah * point.step_h;
        let least_v = self.cells * self.cell.voltage_discharge_limit_v;
        let usable_ah = (state.charge_ah - conditions.floor_charge_ah).at_least(0.0);
        let (mut current_a, mut limit) = least(
            current_for_power_a(point.open_circuit_v, -resistance_ohm, power_w),
            &[(self.input.max_discharge_a, BankLimit::DischargeCurrent)],
        );
        if point.open_circuit_v - current_a * resistance_ohm < least_v {
            current_a = (point.open_circuit_v - least_v) / resistance_ohm;
            limit = Some(BankLimit::DischargeVoltage);
        }
        let mut drawn_ah = self.rate_at_current_a(current_a) * point.step_h;
        if drawn_ah > usable_ah {
            drawn_ah = usable_ah;
            current_a = self.current_at_rate_a(usable_ah / point.step_h);
            limit = Some(BankLimit::Empty);
        }
        state.charge_ah -= drawn_ah;
        let voltage_v = point.open_circuit_v - current_a * resistance_ohm;
        (-current_a, voltage_v, limit)
    }

    /// Puts power in for a step; returns current into the bank, terminal voltage and limit.
    #[inline(always)]
    fn charge(
        &self,
        state: &mut BankState,
        point: &OperatingPoint,
        power_w: f64,
        conditions: &BankConditions,
    ) -> (f64, f64, Option<BankLimit>) {
        if !conditions.may_charge {
            let limit = Some(BankLimit::ChargeTemperature);
            return (0.0, point.open_circuit_v, limit);
        }
        let efficiency = self.input.coulombic_efficiency;
        let resistance_ohm =
            point.resistance_ohm + 0.5 * efficiency * point.slope_v_per_ah * point.step_h;
        let wanted_a = current_for_power_a(point.open_circuit_v, resistance_ohm, power_w);
        let limits = self.charge_limits(state, point, resistance_ohm);
        let (current_a, limit) = if limits.allow(wanted_a) {
            (wanted_a, None)
        } else {
            limits.least(wanted_a)
        };
        state.charge_ah += (efficiency * current_a * point.step_h).at_most(limits.room_ah);
        let voltage_v = point.open_circuit_v + current_a * resistance_ohm;
        (current_a, voltage_v, limit)
    }

    #[inline(always)]
    fn charge_limits(
        &self,
        state: &BankState,
        point: &OperatingPoint,
        resistance_ohm: f64,
    ) -> ChargeLimits {
        let efficiency = self.input.coulombic_efficiency;
        let greatest_v = self.cells * self.cell.voltage_charge_limit_v;
        let ceiling_ah = self.input.usable_max_soc * self.full_charge_ah;
        ChargeLimits {
            current_a: self.input.max_charge_a,
            rise_v: greatest_v - point.open_circuit_v,
            resistance_ohm,
            to_full_ah: (self.full_charge_ah - state.charge_ah).at_least(0.0),
            taper_h: efficiency * (self.cell.acceptance_time_constant_h + 0.5 * point.step_h),
            room_ah: (ceiling_ah - state.charge_ah).at_least(0.0),
            stored_h: efficiency * point.step_h,
        }
    }

    /// Charge at which discharge stops at a temperature, Ah.
    fn floor_charge_ah(&self, temperature_c: f64) -> f64 {
        let left = interpolate(self.cell.capacity_fraction, temperature_c);
        self.full_charge_ah * (1.0 - left * (1.0 - self.input.usable_min_soc))
    }

    /// Rate at which a discharge current uses up charge, A: I (I/I_H)^(k−1) above the rated current.
    ///
    /// Below the rated current the law would promise more than the rated capacity; it is not used.
    fn rate_at_current_a(&self, current_a: f64) -> f64 {
        let excess = self.input.peukert_exponent - 1.0;
        if excess == 0.0 || current_a <= self.rated_current_a {
            return current_a;
        }
        current_a * libm::pow(current_a / self.rated_current_a, excess)
    }

    /// The inverse of [`Self::rate_at_current_a`].
    fn current_at_rate_a(&self, rate_a: f64) -> f64 {
        if self.input.peukert_exponent == 1.0 || rate_a <= self.rated_current_a {
            return rate_a;
        }
        let ratio = rate_a / self.rated_current_a;
        self.rated_current_a * libm::pow(ratio, 1.0 / self.input.peukert_exponent)
    }

    /// Open-circuit voltage, V, and its rise with charge, V/Ah.
    fn on_grid(&self, (index, fraction): GridPosition) -> (f64, f64) {
        let rise_v = self.open_circuit_v[index + 1] - self.open_circuit_v[index];
        let voltage_v = self.open_circuit_v[index] + fraction * rise_v;
        (voltage_v, rise_v * self.grid_per_ah)
    }

    fn grid_position(&self, state: &BankState) -> GridPosition {
        let position = state.charge_ah * self.grid_per_ah;
        let index = interval_of(position).min(GRID_INTERVALS - 1);
        (index, position - index as f64)
    }
}

#[cfg(test)]
mod tests;
