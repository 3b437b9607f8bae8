//! Sums over the steps of an interval, and the ledger that they make.

use super::chain::{BENEATH, INNER, OUTER};
use super::ledger::Ledger;
use super::network::Cabin;
use super::strip::{Strip, WIDTH, strip_of, sum_of};

/// Sums over the steps of an interval.
#[derive(Clone, Debug, Default)]
pub(super) struct Sums {
    /// Sums over steps of one length.
    pub(super) now: StepSums,
    /// Sums by time, but for the steps counted in `now`.
    done: StepSums,
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
    fn add(&mut self, other: &Self, weight: f64) {
        self.air += other.air * weight;
        self.star += other.star * weight;
        self.above_outdoors += other.above_outdoors * weight;
        self.gains_w += other.gains_w * weight;
        self.extracted_w += other.extracted_w * weight;
        self.moisture_gains_kg_s += other.moisture_gains_kg_s * weight;
        self.coil_kg_s += other.coil_kg_s * weight;
        self.count += other.count * weight;
    }
}

impl Cabin {
    /// Adds the flows since the last call to a ledger.
    pub fn close_interval(&mut self, ledger: &mut Ledger) {
        self.weigh_sums();
        let (chains_j, inner_j) = self.chain_energies_j();
        let mut interval = self.interval();
        let air_j = self.now.air_capacity_j_k * (self.air_c - self.sums.began_c);
        interval.stored_j = air_j + chains_j - self.chains_energy_j;
        interval.stored_inside_j = air_j + inner_j - self.inner_energy_j;
        ledger.add(&interval);
        (self.chains_energy_j, self.inner_energy_j) = (chains_j, inner_j);
        self.begin_sums();
        for chain in &mut self.chains {
            chain.clear_sums();
        }
    }

    /// Begins new sums from the present state.
    pub(super) fn begin_sums(&mut self) {
        self.sums = Sums {
            began_c: self.air_c,
            began_humidity_ratio: self.moisture.humidity_ratio,
            ..Sums::default()
        };
    }

    /// Weighs what the chains have summed by the length of the steps so far.
    pub(super) fn weigh_sums(&mut self) {
        let weight_s = self.now.theta * self.now.step_s;
        for chain in &mut self.chains {
            chain.weigh_sums(weight_s);
        }
        let sums = &mut self.sums;
        sums.done.add(&sums.now, self.now.step_s);
        sums.now = StepSums::default();
    }

    /// Energy of all nodes of the chains and of their inner nodes alone, J above 0 °C.
    pub(super) fn chain_energies_j(&self) -> (f64, f64) {
        let mut all_j = Strip::default();
        let mut inner_j = Strip::default();
        for (strip, chain) in self.chains.iter().enumerate() {
            let energy_j =
                |node: usize| strip_of(&self.capacity[node], strip) * chain.temperature[node];
            for node in OUTER..INNER {
                all_j += energy_j(node);
            }
            inner_j += energy_j(INNER);
        }
        (sum_of(all_j + inner_j), sum_of(inner_j))
    }

    /// The flows of the interval: coefficients times sums of implicit temperatures.
    fn interval(&self) -> Ledger {
        let (now, sums) = (&self.now, &self.sums.done);
        let seconds = sums.count;
        let mut ledger = Ledger::default();
        let [mut outside_sum_j, mut sun_sum_j, mut throughput_j] = [Strip::default(); 3];
        for (strip, chain) in self.chains.iter().enumerate() {
            let row = |lanes| strip_of(lanes, strip);
            let faces = chain.sums();
            let outside_j = (row(&now.outer_forcing) + row(&now.outer_sun)) * seconds
                - row(&now.outer_conductance) * faces.outer;
            let conducted_j = row(&self.conductance[BENEATH]) * (faces.beneath - faces.inner);
            let to_cabin_j = row(&now.to_air) * (faces.inner - sums.air)
                + row(&now.to_star) * (faces.inner - sums.star);
            sun_sum_j += row(&now.inner_sun) * seconds;
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
