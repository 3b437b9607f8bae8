//! What a parking spot is made of.
//!
//! Typical values of dry, weathered surfaces; each varies by a third either way, reflectances most.

use serde::{Deserialize, Serialize};

/// What the parking spot is made of.
#[derive(Clone, Copy, Debug, Deserialize, Eq, Hash, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum GroundSurface {
    /// Asphalt, weathered, on gravel.
    Asphalt,
    /// Concrete, weathered, on gravel.
    Concrete,
    /// Dry loose gravel on soil.
    Gravel,
    /// Bare dry soil or sand.
    Soil,
    /// Short grass on moist soil.
    Grass,
}

/// A layer of the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GroundLayer {
    /// Thermal conductivity, W/(m K).
    pub conductivity_w_m_k: f64,
    /// Heat capacity of a volume, J/(m³ K).
    pub heat_capacity_j_m3_k: f64,
}

/// What the balance needs to know of a ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GroundProperties {
    /// Share of sunlight that it reflects.
    pub solar_reflectance: f64,
    /// Emissivity for longwave radiation.
    pub emissivity: f64,
    /// Share of the net radiation, while that is positive, which evaporates water.
    pub evaporative_share: f64,
    /// The layer on top.
    pub top: GroundLayer,
    /// Depth to which it reaches, m.
    pub top_thickness_m: f64,
    /// What lies below.
    pub below: GroundLayer,
}

/// Gravel, crushed, dry (from memory, after the dry sandy soil of Oke 1987 and its denser packing).
const GRAVEL: GroundLayer = GroundLayer {
    conductivity_w_m_k: 0.5,
    heat_capacity_j_m3_k: 1.4e6,
};

/// Dry sandy soil, 40 % pores (Oke 1987, Boundary Layer Climates, table 2.1, from memory).
const DRY_SOIL: GroundLayer = GroundLayer {
    conductivity_w_m_k: 0.30,
    heat_capacity_j_m3_k: 1.28e6,
};

/// Clay soil half way to saturation (Oke 1987, table 2.1, between its dry 0.25 and 1.42, saturated
/// 1.58 and 3.10, from memory).
const MOIST_SOIL: GroundLayer = GroundLayer {
    conductivity_w_m_k: 0.92,
    heat_capacity_j_m3_k: 2.26e6,
};

impl GroundSurface {
    /// The properties of the surface.
    ///
    /// Conductivities and heat capacities of asphalt and concrete: Oke 1987, table 8.1 (0.75 and
    /// 1.94·10⁶; 1.51 and 2.11·10⁶). Emissivities: the same, table 1.1 and 8.2. Reflectances:
    /// asphalt 0.05 new to 0.20 old, here 0.10; concrete 0.10…0.35, here 0.30; dry soil and gravel
    /// 0.20…0.35, here 0.25; grass 0.23 (Allen et al. 1998, FAO Irrigation and Drainage Paper 56).
    /// All but the last from memory. Half of the net radiation evaporating from grass is common in
    /// summer where it is not watered (Bowen ratio about 0.7); from memory.
    #[must_use]
    pub fn properties(self) -> GroundProperties {
        match self {
            Self::Asphalt => GroundProperties {
                solar_reflectance: 0.10,
                emissivity: 0.95,
                evaporative_share: 0.0,
                top: GroundLayer {
                    conductivity_w_m_k: 0.75,
                    heat_capacity_j_m3_k: 1.94e6,
                },
                top_thickness_m: 0.10,
                below: GRAVEL,
            },
            Self::Concrete => GroundProperties {
                solar_reflectance: 0.30,
                emissivity: 0.90,
                evaporative_share: 0.0,
                top: GroundLayer {
                    conductivity_w_m_k: 1.51,
                    heat_capacity_j_m3_k: 2.11e6,
                },
                top_thickness_m: 0.15,
                below: GRAVEL,
            },
            Self::Gravel => GroundProperties {
                solar_reflectance: 0.25,
                emissivity: 0.92,
                evaporative_share: 0.0,
                top: GRAVEL,
                top_thickness_m: 0.10,
                below: DRY_SOIL,
            },
            Self::Soil => GroundProperties {
                solar_reflectance: 0.25,
                emissivity: 0.92,
                evaporative_share: 0.0,
                top: DRY_SOIL,
                top_thickness_m: 0.10,
                below: DRY_SOIL,
            },
            Self::Grass => GroundProperties {
                solar_reflectance: 0.23,
                emissivity: 0.95,
                evaporative_share: 0.5,
                top: MOIST_SOIL,
                top_thickness_m: 0.10,
                below: MOIST_SOIL,
            },
        }
    }
}
