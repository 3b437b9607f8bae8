//! Sums over the steps of an interval, and the ledger that they make.

use super::chain::NODES;
use super::ledger::Ledger;
use super::network::Cabin;
use super::strip::WIDTH;

/// Sums over the steps of an interval, temperatures (°C) weighted by time (s).
#[derive(Clone, Debug, Default)]
pub(super) struct Sums {
    pub(super) seconds: f64,
    pub(super) air: f64,
    pub(super) star: f64,
    pub(super) gains_j: f64,
    pub(super) extracted_j: f64,
    pub(super) condensation_j: f64,
    pub(super) exchanged_kg: f64,
    pub(super) exchanged_magnitude_kg: f64,
    pub(super) moisture_gains_kg: f64,
    pub(super) coil_kg: f64,
    pub(super) condensed_kg: f64,
    pub(super) stored_kg: f64,
    pub(super) stored_inside_j: f64,
}

impl Cabin {
    /// Adds the flows since the last call to a ledger.
    pub fn close_interval(&mut self, ledger: &mut Ledger) {
        let (chains_j, inner_j) = self.chain_energies_j();
        let mut interval = self.interval();
        interval.stored_j = self.sums.stored_inside_j + chains_j - self.chains_energy_j;
        interval.stored_inside_j = self.sums.stored_inside_j + inner_j - self.inner_energy_j;
        ledger.add(&interval);
        (self.chains_energy_j, self.inner_energy_j) = (chains_j, inner_j);
        self.sums = Sums::default();
        for chain in &mut self.chains {
            chain.clear_sums();
        }
    }

    /// Energy of all nodes of the chains and of their inner nodes alone, J above 0 °C.
    pub(super) fn chain_energies_j(&self) -> (f64, f64) {
        let mut all_j = 0.0;
        let mut inner_j = 0.0;
        for lane in 0..self.elements.len() {
            for node in 0..NODES {
                all_j += self.capacity[node][lane] * self.node_c(node, lane);
            }
            inner_j += self.capacity[NODES - 1][lane] * self.node_c(NODES - 1, lane);
        }
        (all_j, inner_j)
    }

    /// The flows of the interval: coefficients times sums of implicit temperatures.
    fn interval(&self) -> Ledger {
        let (now, sums) = (&self.now, &self.sums);
        let mut ledger = Ledger::default();
        for lane in 0..self.elements.len() {
            let (chain, place) = (&self.chains[lane / WIDTH], lane % WIDTH);
            let outer_c_s = chain.outer_sum[place];
            let beneath_c_s = chain.beneath_sum[place];
            let inner_c_s = chain.inner_sum[place];
            let outside_j = now.outer_forcing[lane] * sums.seconds
                - now.outer_conductance[lane] * outer_c_s
                + now.outer_sun[lane] * sums.seconds;
            let conducted_j = self.conductance[NODES - 2][lane] * (beneath_c_s - inner_c_s);
            let to_cabin_j = now.to_air[lane] * (inner_c_s - sums.air)
                + now.to_star[lane] * (inner_c_s - sums.star);
            let sun_j = now.inner_sun[lane] * sums.seconds;
            ledger.conducted_j[lane] = conducted_j;
            ledger.outside_j += outside_j;
            ledger.glass_sun_j += sun_j;
            ledger.throughput_j += outside_j.abs() + conducted_j.abs() + to_cabin_j.abs();
        }
        let exchange_j = now.exchange_w_k * (now.outdoor_c * sums.seconds - sums.air);
        [ledger.leakage_j, ledger.fan_j, ledger.openings_j] =
            now.flow_shares.map(|share| share * exchange_j);
        ledger.gains_j = sums.gains_j;
        ledger.extracted_j = sums.extracted_j;
        ledger.condensation_j = sums.condensation_j;
        ledger.throughput_j +=
            ledger.glass_sun_j + exchange_j.abs() + ledger.gains_j.abs() + ledger.extracted_j.abs();
        ledger.exchanged_kg = sums.exchanged_kg;
        ledger.moisture_gains_kg = sums.moisture_gains_kg;
        ledger.coil_kg = sums.coil_kg;
        ledger.condensed_kg = sums.condensed_kg;
        ledger.stored_kg = sums.stored_kg;
        ledger.throughput_kg = sums.exchanged_magnitude_kg
            + sums.moisture_gains_kg
            + sums.coil_kg
            + sums.condensed_kg.abs();
        ledger
    }
}
