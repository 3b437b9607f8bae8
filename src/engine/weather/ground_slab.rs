//! Heat conducted down into the ground.

use super::GroundProperties;
use super::ground::LinearBalance;

/// Cells of the slab.
const CELLS: usize = 10;

/// Thickness of the uppermost cell, m: a tenth of the depth to which a day's wave reaches.
const FIRST_CELL_M: f64 = 0.008;

/// Growth of the cells downwards; ten of them make 0.9 m, six times the reach of a day's wave.
const CELL_GROWTH: f64 = 1.5;

/// The ground below the surface. Eliminated from the bottom, each cell is α times the one above
/// plus β, and α does not change.
pub(super) struct Slab {
    temperatures_c: [f64; CELLS],
    /// Temperature of the surface itself at the last step.
    surface_c: f64,
    /// Conductance from the surface to the first cell and from each cell to the next, W/(m² K).
    conductances: [f64; CELLS],
    /// Heat capacity of each cell by the step, W/(m² K).
    capacities: [f64; CELLS],
    /// Share of the temperature above that each cell takes over.
    shares: [f64; CELLS],
    /// Reciprocal of each cell's diagonal, m² K/W.
    reciprocals: [f64; CELLS],
}

impl Slab {
    pub fn new(ground: &GroundProperties, spacing_s: f64, temperature_c: f64) -> Self {
        let mut slab = Self {
            temperatures_c: [temperature_c; CELLS],
            surface_c: temperature_c,
            conductances: [0.0; CELLS],
            capacities: [0.0; CELLS],
            shares: [0.0; CELLS],
            reciprocals: [0.0; CELLS],
        };
        let mut thickness_m = FIRST_CELL_M;
        let mut depth_m = 0.0;
        let mut resistance_above = 0.0;
        for cell in 0..CELLS {
            let layer = if depth_m + 0.5 * thickness_m < ground.top_thickness_m {
                ground.top
            } else {
                ground.below
            };
            let half = 0.5 * thickness_m / layer.conductivity_w_m_k;
            slab.conductances[cell] = 1.0 / (resistance_above + half);
            slab.capacities[cell] = layer.heat_capacity_j_m3_k * thickness_m / spacing_s;
            resistance_above = half;
            depth_m += thickness_m;
            thickness_m *= CELL_GROWTH;
        }
        let mut below = 0.0;
        for cell in (0..CELLS).rev() {
            let diagonal = slab.capacities[cell] + slab.conductances[cell] + below;
            slab.reciprocals[cell] = 1.0 / diagonal;
            slab.shares[cell] = slab.conductances[cell] / diagonal;
            below = slab.conductances[cell] * (1.0 - slab.shares[cell]);
        }
        slab
    }

    /// Advances by one spacing and gives the surface temperature at its end, °C.
    ///
    /// `balance` linearises what acts on the surface about the temperature that it had before.
    pub fn step(&mut self, balance: impl FnOnce(f64) -> LinearBalance) -> f64 {
        let mut offsets = [0.0; CELLS];
        let mut from_below = 0.0;
        for cell in (0..CELLS).rev() {
            let stored = self.capacities[cell] * self.temperatures_c[cell];
            offsets[cell] = (stored + from_below) * self.reciprocals[cell];
            from_below = self.conductances[cell] * offsets[cell];
        }
        let balance = balance(self.surface_c);
        let slab_slope = self.conductances[0] * (1.0 - self.shares[0]);
        self.surface_c = (balance.at_zero_w_m2 + from_below) / (balance.slope_w_m2_k + slab_slope);
        let mut above_c = self.surface_c;
        let cells = self.temperatures_c.iter_mut().zip(self.shares);
        for ((temperature_c, share), offset_c) in cells.zip(offsets) {
            above_c = share * above_c + offset_c;
            *temperature_c = above_c;
        }
        self.surface_c
    }
}
