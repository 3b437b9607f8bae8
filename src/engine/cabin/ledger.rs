//! Heat and water by path, summed over intervals.

use super::description::LANES;
use crate::quantity::Bounded;

/// Throughputs below which a residual is not taken relative to them: where next to nothing flows, what is left is the rounding of
/// what is there, of water up to some tens of kilograms.
const LEAST_THROUGHPUT_J: f64 = 1.0;
const LEAST_THROUGHPUT_KG: f64 = 1.0e-2;

/// Energy (J, into the cabin positive) and water (kg) since the ledger was last cleared.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Ledger {
    /// Conducted from the outer layers into the inner face of each element, J.
    pub conducted_j: [f64; LANES],
    /// Sun that came in through glass and was absorbed in the cabin, J.
    pub glass_sun_j: f64,
    /// By leaks, J.
    pub leakage_j: f64,
    /// By the fan, J.
    pub fan_j: f64,
    /// By openings, J.
    pub openings_j: f64,
    /// By people, appliances and all else inside, J.
    pub gains_j: f64,
    /// Taken out by the cooler (a loss counts positive here), J.
    pub extracted_j: f64,
    /// Released by water condensing on inner surfaces, J.
    pub condensation_j: f64,
    /// Taken up by inner faces, furniture and air, J.
    pub stored_inside_j: f64,
    /// From outdoors into the outer faces, all elements, J.
    pub outside_j: f64,
    /// Taken up by the whole network, J.
    pub stored_j: f64,
    /// Sum of the magnitudes of all flows, J.
    pub throughput_j: f64,
    /// Water brought in by outdoor air less that carried out, kg.
    pub exchanged_kg: f64,
    /// Water from people, animals and cooking, kg.
    pub moisture_gains_kg: f64,
    /// Water taken out by the coil, kg.
    pub coil_kg: f64,
    /// Water condensed on inner surfaces, kg.
    pub condensed_kg: f64,
    /// Water taken up by air and furniture, kg.
    pub stored_kg: f64,
    /// Sum of the magnitudes of all flows of water, kg.
    pub throughput_kg: f64,
}

impl Ledger {
    /// Adds another ledger to this one, path by path.
    pub fn add(&mut self, other: &Self) {
        for (sum, part) in self.conducted_j.iter_mut().zip(&other.conducted_j) {
            *sum += part;
        }
        self.glass_sun_j += other.glass_sun_j;
        self.leakage_j += other.leakage_j;
        self.fan_j += other.fan_j;
        self.openings_j += other.openings_j;
        self.gains_j += other.gains_j;
        self.extracted_j += other.extracted_j;
        self.condensation_j += other.condensation_j;
        self.stored_inside_j += other.stored_inside_j;
        self.outside_j += other.outside_j;
        self.stored_j += other.stored_j;
        self.throughput_j += other.throughput_j;
        self.exchanged_kg += other.exchanged_kg;
        self.moisture_gains_kg += other.moisture_gains_kg;
        self.coil_kg += other.coil_kg;
        self.condensed_kg += other.condensed_kg;
        self.stored_kg += other.stored_kg;
        self.throughput_kg += other.throughput_kg;
    }

    /// What came in less what went out less what was stored over the whole network, as a share of the throughput; 0 is perfect.
    #[must_use]
    pub fn heat_residual(&self) -> f64 {
        let net_j = self.outside_j
            + self.glass_sun_j
            + self.leakage_j
            + self.fan_j
            + self.openings_j
            + self.gains_j
            + self.condensation_j
            - self.extracted_j;
        (net_j - self.stored_j) / self.throughput_j.at_least(LEAST_THROUGHPUT_J)
    }

    /// The same over the inside alone: what the inner faces conduct in instead of what the outer faces meet.
    #[must_use]
    pub fn inside_residual(&self) -> f64 {
        let net_j = self.conducted_j.iter().sum::<f64>()
            + self.glass_sun_j
            + self.leakage_j
            + self.fan_j
            + self.openings_j
            + self.gains_j
            + self.condensation_j
            - self.extracted_j;
        (net_j - self.stored_inside_j) / self.throughput_j.at_least(LEAST_THROUGHPUT_J)
    }

    /// The same as [`Self::heat_residual`] for water.
    #[must_use]
    pub fn moisture_residual(&self) -> f64 {
        let net_kg = self.exchanged_kg + self.moisture_gains_kg - self.coil_kg - self.condensed_kg;
        (net_kg - self.stored_kg) / self.throughput_kg.at_least(LEAST_THROUGHPUT_KG)
    }
}
