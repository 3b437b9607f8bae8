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

    /// Weighs what the chains have summed by the length of the steps so far.
    pub(super) fn weigh_sums(&mut self) {
        if self.sums.now.count == 0.0 {
            return;
        }
        let weight_s = self.now.theta * self.now.step_s;
        for chain in &mut self.chains[..self.used] {
            chain.weigh_sums(weight_s);
        }
        self.sums.done = self.step_sums();
        self.sums.now = StepSums::default();
    }

    /// The sums of the steps by time.
    fn step_sums(&self) -> StepSums {
        let (now, done, step_s) = (&self.sums.now, &self.sums.done, self.now.step_s);
        let by_time = |done: f64, now: f64| done + now * step_s;
        StepSums {
            air: by_time(done.air, now.air),
            star: by_time(done.star, now.star),
            above_outdoors: by_time(done.above_outdoors, now.above_outdoors),
            gains_w: by_time(done.gains_w, now.gains_w),
            extracted_w: by_time(done.extracted_w, now.extracted_w),
            moisture_gains_kg_s: by_time(done.moisture_gains_kg_s, now.moisture_gains_kg_s),
            coil_kg_s: by_time(done.coil_kg_s, now.coil_kg_s),
            count: by_time(done.count, now.count),
        }
    }

    /// Energy of all nodes of the chains and of their inner nodes alone, J above 0 °C.
    pub(super) fn chain_energies_j(&self) -> (f64, f64) {
        let mut all_j = Strip::default();
        let mut inner_j = Strip::default();
        for (strip, chain) in self.chains[..self.used].iter().enumerate() {
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
    fn flows(&self) -> Ledger {
        let (now, sums) = (&self.now, self.step_sums());
        let seconds = sums.count;
        let weight_s = now.theta * now.step_s;
        let mut ledger = Ledger::default();
        let [mut outside_sum_j, mut sun_sum_j, mut throughput_j] = [Strip::default(); 3];
        for (strip, chain) in self.chains[..self.used].iter().enumerate() {
            let row = |lanes| strip_of(lanes, strip);
            let faces = chain.sums(weight_s);
            let outside_j =
                row(&now.outer_forcing) * seconds - row(&now.outer_conductance) * faces.outer;
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
