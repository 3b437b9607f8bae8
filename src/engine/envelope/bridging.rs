//! Steel ribs through the insulation, by the zone method.
//!
//! ISO 6946 excludes insulation bridged by metal from its combined method, and the area-weighted parallel path hides nearly
//! all of the loss. The zone method of ASHRAE Fundamentals (ch. 27, from memory) widens the metal path to a zone of width
//! W = m + 2 d, m the flange, d the distance from the face to the metal and at least 13 mm, and adds resistances in it layer
//! by layer. It is approximate: the full answer is a two-dimensional calculation (ISO 10211).

use super::materials::STEEL;
use crate::quantity::Bounded;

/// Width of the flange that touches the lining, m: common practice, no source.
pub const FLANGE_WIDTH_M: f64 = 0.05;

/// Steel across the insulation: two webs of 1 mm, m: common practice, no source.
pub const WEB_THICKNESS_M: f64 = 0.002;

/// Conductivity of a strip between rib and lining, W/(m K): closed-cell foam tape, from memory.
pub const BREAK_CONDUCTIVITY_W_M_K: f64 = 0.04;

/// Least distance of the zone method, m: ASHRAE Fundamentals ch. 27, from memory.
const LEAST_ZONE_DISTANCE_M: f64 = 0.013;

/// Reference resistances of the inner and outer surface, m² K/W: ISO 6946 table 7, horizontal flow.
const INNER_SURFACE_M2_K_W: f64 = 0.13;
const OUTER_SURFACE_M2_K_W: f64 = 0.04;

/// A ribbed wall, skin neglected: insulation between steel ribs under a lining.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RibbedWall {
    /// Insulation between the ribs, m, above zero.
    pub insulation_m: f64,
    /// Its conductivity, W/(m K).
    pub insulation_conductivity_w_m_k: f64,
    /// Lining, m.
    pub lining_m: f64,
    /// Its conductivity, W/(m K).
    pub lining_conductivity_w_m_k: f64,
    /// Distance between ribs, m, above the flange's width.
    pub rib_spacing_m: f64,
    /// Insulating strip between rib and lining, m.
    pub thermal_break_m: f64,
}

impl RibbedWall {
    /// Thermal transmittance between the ribs, W/(m² K): 1/(Rsi + lining + insulation + Rse).
    ///
    /// Source: ISO 6946, homogeneous layers.
    #[must_use]
    pub fn transmittance_clear_w_m2_k(&self) -> f64 {
        1.0 / (self.resistance_without_core_m2_k_w()
            + self.insulation_m / self.insulation_conductivity_w_m_k)
    }

    /// Thermal transmittance with ribs, W/(m² K): zones and clear wall by area share, U = s U_zone + (1 − s) U_clear with s the
    /// width of the zone over the distance between ribs, at most 1.
    ///
    /// Source: zone method, ASHRAE Fundamentals ch. 27 (from memory).
    #[must_use]
    pub fn transmittance_w_m2_k(&self) -> f64 {
        let width_m = self.zone_width_m();
        let share = (width_m / self.rib_spacing_m).at_most(1.0);
        let insulation_in_zone_m = (width_m - WEB_THICKNESS_M).at_least(0.0);
        let conductance_w_m_k = WEB_THICKNESS_M * STEEL.conductivity_w_m_k
            + insulation_in_zone_m * self.insulation_conductivity_w_m_k;
        let core_m2_k_w = self.insulation_m * width_m / conductance_w_m_k;
        let break_m2_k_w =
            self.thermal_break_m * width_m / (FLANGE_WIDTH_M * BREAK_CONDUCTIVITY_W_M_K);
        let zone_w_m2_k =
            1.0 / (self.resistance_without_core_m2_k_w() + core_m2_k_w + break_m2_k_w);
        share * zone_w_m2_k + (1.0 - share) * self.transmittance_clear_w_m2_k()
    }

    /// Conductivity of a plain layer of the same thickness that gives the transmittance with ribs, W/(m K): d/(1/U − Rsi − lining −
    /// Rse).
    #[must_use]
    pub fn equivalent_conductivity_w_m_k(&self) -> f64 {
        let core_m2_k_w = 1.0 / self.transmittance_w_m2_k() - self.resistance_without_core_m2_k_w();
        self.insulation_m / core_m2_k_w
    }

    /// Width of the zone around a rib, m: W = m + 2 d, d at least 13 mm.
    ///
    /// Source: zone method, ASHRAE Fundamentals ch. 27 (from memory).
    #[must_use]
    pub fn zone_width_m(&self) -> f64 {
        let distance_m = (self.lining_m + self.thermal_break_m).at_least(LEAST_ZONE_DISTANCE_M);
        FLANGE_WIDTH_M + 2.0 * distance_m
    }

    fn resistance_without_core_m2_k_w(&self) -> f64 {
        INNER_SURFACE_M2_K_W + self.lining_m / self.lining_conductivity_w_m_k + OUTER_SURFACE_M2_K_W
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rib_doubles_the_loss_of_a_thin_wall_and_a_strip_mends_most_of_it() {
        let bare = RibbedWall {
            insulation_m: 0.04,
            insulation_conductivity_w_m_k: 0.036,
            lining_m: 0.004,
            lining_conductivity_w_m_k: 0.12,
            rib_spacing_m: 0.4,
            thermal_break_m: 0.0,
        };
        let broken = RibbedWall {
            thermal_break_m: 0.01,
            ..bare
        };
        assert!(bare.transmittance_w_m2_k() > 1.8 * bare.transmittance_clear_w_m2_k());
        assert!(broken.transmittance_w_m2_k() < 0.7 * bare.transmittance_w_m2_k());
    }

    #[test]
    fn the_equivalent_layer_gives_back_the_transmittance() {
        let wall = RibbedWall {
            insulation_m: 0.03,
            insulation_conductivity_w_m_k: 0.03,
            lining_m: 0.006,
            lining_conductivity_w_m_k: 0.12,
            rib_spacing_m: 0.6,
            thermal_break_m: 0.0,
        };
        let plain = RibbedWall {
            insulation_conductivity_w_m_k: wall.equivalent_conductivity_w_m_k(),
            ..wall
        };
        let error = plain.transmittance_clear_w_m2_k() - wall.transmittance_w_m2_k();
        assert!(error.abs() < 1e-12);
    }
}
