//! What the scenario's cooler shows under given conditions, sound or with a fault.

use super::measured::{MeasuredCapacity, measured_capacity};
use crate::air::{humidity_ratio_from_relative_humidity, standard_atmosphere_pressure_pa};
use crate::cooler::bypass::EnteringAir;
use crate::cooler::coil::Coil;
use crate::cooler::curves::WINDOW_UNIT_WINKLER_2013;
use crate::cooler::rating::PartSpeed;
use crate::cooler::start_up::{
    CYCLIC_DEGRADATION_WINDOW_UNIT, CYCLING_RATE_GREATEST_PER_H, StartUpLag,
};
use crate::electrical::Inverter;
use crate::quantity::Bounded;
use crate::scenario::{CompressorControl, ScenarioDocument, cooler_rating};
use crate::simulation::{BuildError, airflow_fraction, inverter_of};

/// Range of air flows that a coil takes, share of the rated one; readings beyond are held at its ends.
const FLOW_RANGE: (f64, f64) = (0.2, 1.5);

/// Hottest air that a condenser takes, °C; hotter is held there.
const CONDENSER_HOTTEST_C: f64 = 70.0;

/// Power that a compressor short of refrigerant loses, as a share of the capacity that it loses: 6 % of power with 20 % of
/// capacity at three quarters of the charge, mean of the units tested (Kim & Braun 2010, Purdue, paper 1122, from memory).
const POWER_LOST_BY_CHARGE: f64 = 0.3;

/// What is read, and what the model takes as given. Each has its own uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Sight {
    pub(super) return_c: f64,
    pub(super) return_relative_humidity: f64,
    pub(super) outdoor_c: f64,
    pub(super) supply_c: f64,
    pub(super) supply_relative_humidity: f64,
    /// Air flow over the rated one.
    pub(super) flow: f64,
    pub(super) current_a: f64,
    pub(super) bank_voltage_v: f64,
    pub(super) unit_voltage_v: f64,
    /// Capacity, electric power, resistance of the cable and rated flow of the real unit over the model's.
    pub(super) capacity: f64,
    pub(super) power: f64,
    pub(super) cable: f64,
    pub(super) rated_flow: f64,
}

impl Sight {
    /// How many quantities there are.
    pub(super) const COUNT: usize = 13;

    /// One of them, to be moved.
    pub(super) fn quantity(&mut self, index: usize) -> &mut f64 {
        match index {
            0 => &mut self.return_c,
            1 => &mut self.return_relative_humidity,
            2 => &mut self.outdoor_c,
            3 => &mut self.supply_c,
            4 => &mut self.supply_relative_humidity,
            5 => &mut self.flow,
            6 => &mut self.current_a,
            7 => &mut self.bank_voltage_v,
            8 => &mut self.unit_voltage_v,
            9 => &mut self.capacity,
            10 => &mut self.power,
            11 => &mut self.cable,
            _ => &mut self.rated_flow,
        }
    }
}

/// Something wrong, and how much.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Fault {
    None,
    /// So much of the rated flow.
    Airflow(f64),
    /// So much of the rated flow, at the power of the rated one: at half the flow the published sets of curves say 0.96 to 1.19
    /// of the power, so that both are thought of.
    AirflowAlone(f64),
    /// So much of the capacity, for want of refrigerant.
    Charge(f64),
    /// The cable has so many times its resistance.
    Cable(f64),
    /// The sensor in the supply air shows so much too much, K.
    SupplySensor(f64),
    /// The sensor in the return air shows so much too much, K.
    ReturnSensor(f64),
    /// The condenser's air is so much warmer, K.
    Condenser(f64),
    /// It takes so many times as long to come up.
    Slow(f64),
    /// So much of the capacity, at the power of the plate.
    Plate(f64),
    /// Such a speed instead of full output.
    Speed(f64),
}

/// What is looked at: readings less expectation, and what is made of them.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Shown {
    /// Supply temperature, °C; current, A; loss of voltage, V; flow over the rated one; supply humidity ratio.
    pub(super) read: [f64; 5],
    pub(super) expected: [f64; 5],
    pub(super) measured: Heat,
    pub(super) model: Heat,
    pub(super) extrapolated: bool,
}

/// Heat taken out, W, and the electric power for it, W.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Heat {
    pub(super) sensible_w: f64,
    pub(super) total_w: f64,
    pub(super) electric_w: f64,
}

impl Heat {
    fn new(capacity: MeasuredCapacity, electric_w: f64) -> Self {
        Self {
            sensible_w: capacity.sensible_w,
            total_w: capacity.total_w,
            electric_w,
        }
    }
}

/// The scenario's cooler.
pub(super) struct Unit {
    coil: Coil,
    inverter: Option<Inverter>,
    time_constant_s: f64,
    condenser_air_rise_k: f64,
    cable_ohm: f64,
    pressure_pa: f64,
    running_s: f64,
    flow_known: bool,
    /// Least speed of a unit that has others than full.
    pub(super) least_speed: Option<f64>,
}

impl Unit {
    pub(super) fn new(document: &ScenarioDocument) -> Result<Self, BuildError> {
        let cooler = &document.cooler;
        let least_speed =
            (cooler.control != CompressorControl::OnOff).then_some(cooler.least_capacity_share);
        let part_speed = PartSpeed {
            least_capacity_fraction: least_speed.unwrap_or(1.0),
            part_speed_efficiency_gain: cooler.part_speed_efficiency_gain,
        };
        let lag = StartUpLag::new(CYCLIC_DEGRADATION_WINDOW_UNIT, CYCLING_RATE_GREATEST_PER_H)?;
        Ok(Self {
            coil: Coil::new(
                cooler_rating(document),
                &WINDOW_UNIT_WINKLER_2013,
                part_speed,
            )?,
            inverter: inverter_of(document)?,
            time_constant_s: lag.time_constant_s(),
            condenser_air_rise_k: cooler.condenser_air_rise_k,
            cable_ohm: cooler.cable_resistance_ohm,
            pressure_pa: standard_atmosphere_pressure_pa(document.place.altitude_m),
            running_s: document.readings.running_s,
            flow_known: document.readings.airflow_known,
            least_speed,
        })
    }

    /// Air through the coil as rated, m³/s.
    pub(super) fn rated_flow_m3_s(&self) -> f64 {
        self.coil.rating().airflow_rated_m3_s
    }

    /// Share of the steady capacity that has come up: 1 − e^(−t/τ), as [`StartUpLag`] has it.
    pub(super) fn come_up(&self, times_as_long: f64) -> f64 {
        -libm::expm1(-self.running_s / (self.time_constant_s * times_as_long))
    }

    fn air(&self, dry_bulb_c: f64, relative_humidity: f64) -> EnteringAir {
        EnteringAir {
            dry_bulb_c,
            humidity_ratio: humidity_ratio_from_relative_humidity(
                dry_bulb_c,
                relative_humidity.clamp(0.0, 1.0),
                self.pressure_pa,
            ),
            pressure_pa: self.pressure_pa,
        }
    }

    /// What is read and what a unit with such a fault would show.
    pub(super) fn look(&self, sight: &Sight, fault: Fault) -> Shown {
        let mut seen = *sight;
        let (mut speed, mut flow_sign, mut slow, mut too_warm_k) = (1.0, 1.0, 1.0, 0.0);
        match fault {
            Fault::None => {}
            Fault::Airflow(share) | Fault::AirflowAlone(share) => flow_sign = share,
            Fault::Charge(share) => {
                seen.capacity *= share;
                seen.power *= 1.0 - POWER_LOST_BY_CHARGE * (1.0 - share);
            }
            Fault::Cable(times) => seen.cable *= times,
            Fault::SupplySensor(warmer_k) => too_warm_k = warmer_k,
            Fault::ReturnSensor(warmer_k) => seen.return_c -= warmer_k,
            Fault::Condenser(warmer_k) => seen.outdoor_c += warmer_k,
            Fault::Slow(times) => slow = times,
            Fault::Plate(share) => seen.capacity *= share,
            Fault::Speed(share) => (speed, flow_sign) = (share, airflow_fraction(share)),
        }
        if !self.flow_known {
            seen.flow *= flow_sign;
        }
        let entering = self.air(seen.return_c, seen.return_relative_humidity);
        let condenser_c = (seen.outdoor_c + self.condenser_air_rise_k).at_most(CONDENSER_HOTTEST_C);
        let output = self.coil.operate(
            &entering,
            condenser_c,
            speed,
            seen.flow.clamp(FLOW_RANGE.0, FLOW_RANGE.1),
        );
        let share = seen.capacity * self.come_up(slow);
        let leaving = EnteringAir {
            dry_bulb_c: entering.dry_bulb_c
                - share * (entering.dry_bulb_c - output.supply_dry_bulb_c),
            humidity_ratio: entering.humidity_ratio
                - share * (entering.humidity_ratio - output.supply_humidity_ratio),
            pressure_pa: self.pressure_pa,
        };
        let compressor_w = match fault {
            Fault::AirflowAlone(_) => {
                self.coil
                    .operate(&entering, condenser_c, speed, 1.0)
                    .electric_power_w
            }
            _ => output.electric_power_w,
        };
        let running_w = compressor_w * seen.power + self.coil.fan_power_w(airflow_fraction(speed));
        let electric_w = match &self.inverter {
            Some(inverter) => inverter.input_power_w(running_w),
            None => running_w,
        };
        let current_a = electric_w / seen.unit_voltage_v;
        let flow_m3_s = seen.flow * self.rated_flow_m3_s();
        let read_air = self.air(sight.return_c, sight.return_relative_humidity);
        let read_supply = self.air(sight.supply_c, sight.supply_relative_humidity);
        let read_flow_m3_s = sight.flow * self.rated_flow_m3_s();
        Shown {
            read: [
                sight.supply_c,
                sight.current_a,
                sight.bank_voltage_v - sight.unit_voltage_v,
                sight.flow,
                read_supply.humidity_ratio,
            ],
            expected: [
                leaving.dry_bulb_c + too_warm_k,
                current_a,
                current_a * self.cable_ohm * seen.cable,
                flow_sign * seen.rated_flow,
                leaving.humidity_ratio,
            ],
            measured: Heat::new(
                measured_capacity(&read_air, &read_supply, read_flow_m3_s),
                sight.current_a * sight.unit_voltage_v,
            ),
            model: Heat::new(
                measured_capacity(&entering, &leaving, flow_m3_s),
                electric_w,
            ),
            extrapolated: output.extrapolated,
        }
    }
}
