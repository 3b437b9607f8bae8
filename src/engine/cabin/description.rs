//! What a cabin is made of, before it becomes a network.

use super::chain::Chain;
use crate::envelope::convection::Facing;

/// Chains that a network can hold.
pub const LANES: usize = 20;

/// Longwave emittance of wood and cloth, from memory.
const FURNISHING_EMITTANCE: f64 = 0.9;

/// The part of the vehicle to which a chain belongs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Roof.
    Roof,
    /// Left side.
    Left,
    /// Right side.
    Right,
    /// Nose or partition.
    Nose,
    /// Rear doors.
    Rear,
    /// Floor.
    Floor,
    /// Glass on any face.
    Glass,
    /// Furniture and stored goods: a slab inside the cabin.
    Furnishing,
}

/// What a chain's outer face meets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Outside {
    /// Wind, sun, sky and the open ground.
    Open,
    /// Still outdoor air and the shaded ground below the vehicle.
    Underside,
    /// Nothing: the far side of furniture.
    Nothing,
}

/// One chain with its area and surroundings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Element {
    /// Part of the vehicle.
    pub part: Part,
    /// Area, m², above zero.
    pub area_m2: f64,
    /// Nodes of a square metre.
    pub chain: Chain,
    /// Cosine between the outward normal and straight up: 1 roof, 0 wall, −1 floor.
    pub facing_up_cosine: f64,
    /// Direction of the outward normal, degrees clockwise from north; of no account for roof and floor.
    pub azimuth_deg: f64,
    /// Height of its middle above ground, m, above zero.
    pub height_m: f64,
    /// What the outer face meets.
    pub outside: Outside,
    /// Longwave emittance outside.
    pub outside_emittance: f64,
    /// Longwave emittance inside.
    pub inside_emittance: f64,
    /// Share of the sun that entered through glass and falls on this element, of all that stays in the cabin.
    pub inside_sun_share: f64,
}

impl Element {
    /// Furniture and stored goods of a heat capacity (J/K) behind a surface (m²), both above zero, on which falls a share of the
    /// sun that stays inside.
    #[must_use]
    pub fn furnishing(heat_capacity_j_k: f64, area_m2: f64, inside_sun_share: f64) -> Self {
        Self {
            part: Part::Furnishing,
            area_m2,
            chain: Chain::goods(heat_capacity_j_k / area_m2),
            facing_up_cosine: 0.0,
            azimuth_deg: 0.0,
            height_m: 1.0,
            outside: Outside::Nothing,
            outside_emittance: FURNISHING_EMITTANCE,
            inside_emittance: FURNISHING_EMITTANCE,
            inside_sun_share,
        }
    }

    /// How the inner face lies: as ceiling or floor where the outer normal is within 60° of straight up or down, else as a side.
    #[must_use]
    pub fn inside_facing(&self) -> Facing {
        if self.facing_up_cosine > 0.5 {
            Facing::Ceiling
        } else if self.facing_up_cosine < -0.5 {
            Facing::Floor
        } else {
            Facing::Side
        }
    }
}

/// A whole cabin.
#[derive(Clone, Debug, PartialEq)]
pub struct CabinDescription {
    /// Every chain, at most [`LANES`].
    pub elements: Vec<Element>,
    /// Volume of the air, m³.
    pub air_volume_m3: f64,
    /// Pressure, Pa.
    pub pressure_pa: f64,
    /// Moisture held by furniture over that held by the air.
    pub furnishing_moisture_factor: f64,
}

/// Why a cabin cannot be built.
#[derive(Clone, Debug, PartialEq)]
pub enum CabinError {
    /// No element at all, or more than [`LANES`].
    ElementCount {
        /// How many there are.
        count: usize,
    },
    /// A quantity that has to be above zero, and finite.
    NotPositive {
        /// Which.
        quantity: &'static str,
        /// Its value.
        value: f64,
    },
    /// Shares of the sun inside that do not add to one.
    SunShares {
        /// Their sum.
        sum: f64,
    },
}

impl CabinDescription {
    /// Checks everything that stepping relies on.
    ///
    /// # Errors
    /// [`CabinError`]: the first thing that is wrong, with its value.
    pub fn check(&self) -> Result<(), CabinError> {
        let count = self.elements.len();
        if count == 0 || count > LANES {
            return Err(CabinError::ElementCount { count });
        }
        let positive = [
            ("air volume", self.air_volume_m3),
            ("pressure", self.pressure_pa),
        ];
        let areas = self
            .elements
            .iter()
            .map(|element| ("element area", element.area_m2));
        for (quantity, value) in positive.into_iter().chain(areas) {
            if !(value > 0.0 && value.is_finite()) {
                return Err(CabinError::NotPositive { quantity, value });
            }
        }
        let sum: f64 = self
            .elements
            .iter()
            .map(|element| element.inside_sun_share)
            .sum();
        if (sum - 1.0).abs() > 1e-9 {
            return Err(CabinError::SunShares { sum });
        }
        Ok(())
    }
}
