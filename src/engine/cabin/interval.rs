//! Sums over the steps of an interval, and the ledger that they make.

use super::chain::{BENEATH, INNER, OUTER};
use super::ledger::Ledger;
use super::network::Cabin;
use super::strip::{Strip, WIDTH, sum_of};

/// Sums over the steps of an interval.
#[derive(Clone, Debug, Default)]
pub(super) struct Sums {
    /// Sums over steps of the present length.
    pub(super) steps: StepSums,
    /// Temperature and humidity of the air when the interval began.
    began_c: f64,
    began_humidity_ratio: f64,
}

/// Sums of the steps' implicit temperatures (°C), humidity ratios above that outdoors, powers (W) and flows of water (kg/s); by time, each
/// is multiplied by seconds.
#[derive(Clone, Debug, Default)]
pub(super) struct StepSums {
    pub(super) air: f64,
    pub(super) star: f64,
    pub(super) above_outdoors: f64,
    pub(super) gains_w: f64,
    pub(super) extracted_w: f64,
    pub(super) moisture_gains_kg_s: f64,
    pub(super) coil_kg_s: f64,
    pub(super) count: f64,
}

impl StepSums {
    fn times(&self, factor: f64) -> Self {
        Self {
            air: self.air * factor,
            star: self.star * factor,
            above_outdoors: self.above_outdoors * factor,
            gains_w: self.gains_w * factor,
            extracted_w: self.extracted_w * factor,
            moisture_gains_kg_s: self.moisture_gains_kg_s * factor,
            coil_kg_s: self.coil_kg_s * factor,
            count: self.count * factor,
        }
    }
}

impl Cabin {
    /// The flows since the last call.
    pub fn close_interval(&mut self) -> Ledger {
        let (chains_j, inner_j) = self.chain_energies_j();
        let air_j = self.now.air_capacity_j_k * (self.air_c - self.sums.began_c);
        let ledger = Ledger {
            stored_j: air_j + chains_j - self.chains_energy_j,
            stored_inside_j: air_j + inner_j - self.inner_energy_j,
            ..self.flows()
        };
        (self.chains_energy_j, self.inner_energy_j) = (chains_j, inner_j);
        self.begin_sums();
        for chain in &mut self.chains[..self.used] {
            chain.clear_sums();
        }
        ledger
    }

    /// Begins new sums from the present state.
    pub(super) fn begin_sums(&mut self) {
        self.sums = Sums {
            began_c: self.air_c,
            began_humidity_ratio: self.moisture.humidity_ratio,
            ..Sums::default()
        };
    }

    /// Counts the steps so far as so many of another length, s, and weight of their end, which follow.
    pub(super) fn count_in_steps_of(&mut self, step_s: f64, theta: f64) {
        if self.sums.steps.count == 0.0 || step_s == self.now.step_s {
            return;
        }
        let times = self.now.step_s / step_s;
        for chain in &mut self.chains[..self.used] {
            chain.rescale_sums(times * self.now.theta / theta);
        }
        self.sums.steps = self.sums.steps.times(times);
    }

    /// Energy of all nodes of the chains and of their inner nodes alone, J above 0 °C.
    pub(super) fn chain_energies_j(&self) -> (f64, f64) {
        let mut all_j = Strip::default();
        let mut inner_j = Strip::default();
        for (strip, chain) in self.chains[..self.used].iter().enumerate() {
            let energy_j = |node: usize| self.capacity[node][strip] * chain.temperature[node];
            for node in OUTER..INNER {
                all_j += energy_j(node);
            }
            inner_j += energy_j(INNER);
        }
        (sum_of(all_j + inner_j), sum_of(inner_j))
    }

    /// The flows of the interval: coefficients times sums of implicit temperatures.
    fn flows(&self) -> Ledger {
        let (now, sums) = (&self.now, self.sums.steps.times(self.now.step_s));
        let seconds = sums.count;
        let weight_s = now.theta * now.step_s;
        let mut ledger = Ledger::default();
        let [mut outside_sum_j, mut sun_sum_j, mut throughput_j] = [Strip::default(); 3];
        for (strip, chain) in self.chains[..self.used].iter().enumerate() {
            let faces = chain.sums_by_time(weight_s);
            let outside_j =
                now.outer_forcing[strip] * seconds - now.outer_conductance[strip] * faces.outer;
            let conducted_j = self.conductance[BENEATH][strip] * (faces.beneath - faces.inner);
            let to_cabin_j = now.to_air[strip] * (faces.inner - sums.air)
                + now.to_star[strip] * (faces.inner - sums.star);
            sun_sum_j += now.inner_sun[strip] * seconds;
            outside_sum_j += outside_j;
            throughput_j += outside_j.abs() + conducted_j.abs() + to_cabin_j.abs();
            ledger.conducted_j[strip * WIDTH..][..WIDTH].copy_from_slice(conducted_j.as_array());
        }
        ledger.outside_j = sum_of(outside_sum_j);
        ledger.glass_sun_j = sum_of(sun_sum_j);
        ledger.throughput_j = sum_of(throughput_j);
        let exchange_j = now.exchange_w_k * (now.outdoor_c * seconds - sums.air);
        [ledger.leakage_j, ledger.fan_j, ledger.openings_j] =
            now.flow_shares.map(|share| share * exchange_j);
        ledger.gains_j = sums.gains_w;
        ledger.extracted_j = sums.extracted_w;
        ledger.condensation_j = self.condensation_w * seconds;
        ledger.throughput_j +=
            ledger.glass_sun_j + exchange_j.abs() + ledger.gains_j.abs() + ledger.extracted_j.abs();
        let water = &self.moisture;
        ledger.exchanged_kg = water.exchanged_kg(sums.above_outdoors);
        ledger.moisture_gains_kg = sums.moisture_gains_kg_s;
        ledger.coil_kg = sums.coil_kg_s;
        ledger.condensed_kg = water.condensed_kg(seconds, sums.above_outdoors);
        ledger.stored_kg =
            water.capacity_kg * (water.humidity_ratio - self.sums.began_humidity_ratio);
        ledger.throughput_kg = ledger.exchanged_kg.abs()
            + ledger.moisture_gains_kg
            + ledger.coil_kg
            + ledger.condensed_kg.abs();
        ledger
    }
}
