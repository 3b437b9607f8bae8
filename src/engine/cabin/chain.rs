//! A part of the shell as five nodes and four conductances for each square metre.

use crate::envelope::materials::{GLASS, Material, PLYWOOD};
use crate::quantity::Bounded;

/// Nodes of a chain.
pub const NODES: usize = 5;

/// The node at the outer face, the one beneath the inner face, and the one at it.
pub(super) const OUTER: usize = 0;
pub(super) const BENEATH: usize = 3;
pub(super) const INNER: usize = 4;

/// Greatest conductance between neighbouring nodes, W/(m² K): bare metal would be infinite for every purpose here.
const GREATEST_CONDUCTANCE_W_M2_K: f64 = 2.0e4;

/// Capacities and conductances of one square metre, outermost first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chain {
    /// Heat capacity of each node, J/(m² K).
    pub capacity_j_m2_k: [f64; NODES],
    /// Conductance between neighbouring nodes, W/(m² K).
    pub conductance_w_m2_k: [f64; NODES - 1],
}

/// A homogeneous layer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layer {
    /// Its material.
    pub material: Material,
    /// Its thickness, m, zero or more.
    pub thickness_m: f64,
}

impl Layer {
    fn capacity_j_m2_k(&self) -> f64 {
        self.material.density_kg_m3 * self.material.specific_heat_j_kg_k * self.thickness_m
    }

    fn conductance_w_m2_k(&self, share: f64) -> f64 {
        limited(self.material.conductivity_w_m_k / (self.thickness_m * share))
    }
}

impl Chain {
    /// Skin, core and lining: the core in three slices between nodes 0 and 3, the lining between nodes 3 and 4.
    ///
    /// Thicknesses are zero or more; layers of no thickness conduct without limit that matters.
    #[must_use]
    pub fn lined(skin: Layer, core: Layer, lining: Layer) -> Self {
        let third = core.capacity_j_m2_k() / 3.0;
        let half_lining = lining.capacity_j_m2_k() / 2.0;
        let core_w_m2_k = core.conductance_w_m2_k(1.0 / 3.0);
        Self {
            capacity_j_m2_k: [
                skin.capacity_j_m2_k() + third / 2.0,
                third,
                third,
                third / 2.0 + half_lining,
                half_lining,
            ],
            conductance_w_m2_k: [
                core_w_m2_k,
                core_w_m2_k,
                core_w_m2_k,
                lining.conductance_w_m2_k(1.0),
            ],
        }
    }

    /// Skin, a massless resistance (m² K/W, above zero) such as an air space, and lining.
    #[must_use]
    pub fn cavity(skin: Layer, resistance_m2_k_w: f64, lining: Layer) -> Self {
        let half_lining = lining.capacity_j_m2_k() / 2.0;
        let slice_w_m2_k = limited(3.0 / resistance_m2_k_w);
        Self {
            capacity_j_m2_k: [skin.capacity_j_m2_k(), 0.0, 0.0, half_lining, half_lining],
            conductance_w_m2_k: [
                slice_w_m2_k,
                slice_w_m2_k,
                slice_w_m2_k,
                lining.conductance_w_m2_k(1.0),
            ],
        }
    }

    /// A bare sheet, its heat capacity and resistance spread evenly over the nodes; thickness above zero.
    #[must_use]
    pub fn sheet(skin: Layer) -> Self {
        let share = skin.capacity_j_m2_k() / NODES as f64;
        let slice_w_m2_k = skin.conductance_w_m2_k(0.25);
        Self {
            capacity_j_m2_k: [share; NODES],
            conductance_w_m2_k: [slice_w_m2_k; NODES - 1],
        }
    }

    /// A pane of a given resistance between its faces (m² K/W, above zero) with the mass of `thickness_m` of glass (m, zero or
    /// more): half of it in the middle, a quarter at each face.
    #[must_use]
    pub fn pane(resistance_m2_k_w: f64, thickness_m: f64) -> Self {
        let mass = Layer {
            material: GLASS,
            thickness_m,
        };
        let quarter = mass.capacity_j_m2_k() / 4.0;
        let slice_w_m2_k = limited(6.0 / resistance_m2_k_w);
        Self {
            capacity_j_m2_k: [quarter, 0.0, 0.0, 2.0 * quarter, quarter],
            conductance_w_m2_k: [
                slice_w_m2_k,
                slice_w_m2_k,
                slice_w_m2_k,
                limited(2.0 / resistance_m2_k_w),
            ],
        }
    }

    /// Goods of a heat capacity for each square metre (J/(m² K), above zero), taken as wood: the face follows the air, the core
    /// lags.
    #[must_use]
    pub fn goods(capacity_j_m2_k: f64) -> Self {
        let volumetric_j_m3_k = PLYWOOD.density_kg_m3 * PLYWOOD.specific_heat_j_kg_k;
        let slice_m = capacity_j_m2_k / volumetric_j_m3_k / (NODES - 1) as f64;
        let slice_j_m2_k = capacity_j_m2_k / (NODES - 1) as f64;
        let mut capacity = [slice_j_m2_k; NODES];
        capacity[0] *= 0.5;
        capacity[NODES - 1] *= 0.5;
        Self {
            capacity_j_m2_k: capacity,
            conductance_w_m2_k: [limited(PLYWOOD.conductivity_w_m_k / slice_m); NODES - 1],
        }
    }

    /// Whether there is no mass between its outer node and the one beneath its inner face, as in an empty cavity and a pane.
    #[must_use]
    pub(super) fn is_hollow(&self) -> bool {
        self.capacity_j_m2_k[OUTER + 1..BENEATH]
            .iter()
            .all(|capacity| *capacity == 0.0)
    }

    /// The same with the conductance around its middle nodes, in series, in the place of the first.
    #[must_use]
    pub(super) fn across_middle(&self) -> Self {
        let mut across = *self;
        let series: f64 = self.conductance_w_m2_k[OUTER..BENEATH]
            .iter()
            .map(|g| 1.0 / g)
            .sum();
        across.conductance_w_m2_k[OUTER] = 1.0 / series;
        across
    }

    /// Resistance from face to face, m² K/W: Σ 1/G.
    #[must_use]
    pub fn resistance_m2_k_w(&self) -> f64 {
        self.conductance_w_m2_k.iter().map(|g| 1.0 / g).sum()
    }
}

fn limited(conductance_w_m2_k: f64) -> f64 {
    conductance_w_m2_k.at_most(GREATEST_CONDUCTANCE_W_M2_K)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::envelope::materials::{SHEEP_WOOL, STEEL};

    #[test]
    fn a_lined_wall_has_its_layers_resistance_and_capacity() {
        let layer = |material, thickness_m| Layer {
            material,
            thickness_m,
        };
        let chain = Chain::lined(
            layer(STEEL, 0.001),
            layer(SHEEP_WOOL, 0.038),
            layer(PLYWOOD, 0.006),
        );
        // By hand: 0.038/0.038 + 0.006/0.12 = 1.05 m² K/W.
        assert!((chain.resistance_m2_k_w() - 1.05).abs() < 1e-9);
        // By hand: 7850·480·0.001 + 20·1700·0.038 + 540·1210·0.006 = 3768 + 1292 + 3920.4 J/(m² K).
        let capacity: f64 = chain.capacity_j_m2_k.iter().sum();
        assert!((capacity - 8_980.4).abs() < 1e-6);
    }
}
