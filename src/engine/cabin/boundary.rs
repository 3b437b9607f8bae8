//! What surrounds the cabin in an interval, and the coefficients that follow from it.

use super::description::LANES;
use crate::envelope::convection::{WindSide, WindTerm, natural_w_m2_k, outside_w_m2_k};
use crate::quantity::{STEFAN_BOLTZMANN_W_M2_K4, kelvin_from_celsius};

/// Sun on one element, W for the whole element.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct LaneSun {
    /// Absorbed at the outer face, W.
    pub absorbed_outside_w: f64,
    /// Absorbed at the inner face on the way in, W (panes only).
    pub absorbed_inside_w: f64,
    /// Passed into the cabin, W (panes only).
    pub transmitted_w: f64,
}

impl LaneSun {
    /// No sun.
    pub const NONE: Self = Self {
        absorbed_outside_w: 0.0,
        absorbed_inside_w: 0.0,
        transmitted_w: 0.0,
    };
}

/// Outdoor air brought in, m³/s at outdoor density, by way.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct AirExchange {
    /// Leaks, m³/s.
    pub leakage_m3_s: f64,
    /// Fan, m³/s.
    pub fan_m3_s: f64,
    /// Opened windows, m³/s.
    pub openings_m3_s: f64,
}

/// The surroundings in an interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Boundary {
    /// Outdoor dry bulb, °C.
    pub outdoor_c: f64,
    /// Outdoor humidity ratio, kg/kg.
    pub outdoor_humidity_ratio: f64,
    /// Temperature of a black sky with the same longwave, °C.
    pub sky_c: f64,
    /// Surface of the open ground, °C.
    pub ground_c: f64,
    /// Surface of the ground below the vehicle, °C.
    pub shaded_ground_c: f64,
    /// Wind at the station's 10 m, m/s.
    pub wind_speed_m_s: f64,
    /// Where the wind comes from, degrees; none if not known.
    pub wind_from_deg: Option<f64>,
    /// Speed of the vehicle, m/s.
    pub road_speed_m_s: f64,
    /// Outdoor air brought in.
    pub air_exchange: AirExchange,
    /// Air stirred by blower and fan, m³/s.
    pub stirred_m3_s: f64,
    /// Sun on each element.
    pub sun: [LaneSun; LANES],
}

/// Half-angle within which a vertical face counts as windward, degrees: Walton 1983.
const WINDWARD_HALF_ANGLE_DEG: f64 = 90.0;

/// How the wind meets a face; roofs count as windward (Walton 1983).
pub(super) fn wind_side(
    facing_up_cosine: f64,
    azimuth_deg: f64,
    wind_from_deg: Option<f64>,
) -> WindSide {
    if facing_up_cosine > 0.15 {
        return WindSide::Windward;
    }
    let Some(from_deg) = wind_from_deg else {
        return WindSide::Unknown;
    };
    let turn = (from_deg - azimuth_deg).rem_euclid(360.0);
    if turn.min(360.0 - turn) <= WINDWARD_HALF_ANGLE_DEG {
        WindSide::Windward
    } else {
        WindSide::Leeward
    }
}

/// An outer face with what it radiates to.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct OuterFace {
    pub(super) emittance: f64,
    pub(super) sky_view: f64,
    pub(super) air_view: f64,
    pub(super) ground_view: f64,
    pub(super) facing_up_cosine: f64,
    pub(super) roughness: f64,
}

impl OuterFace {
    /// Views of a tilted face: sky (1 + cos Σ)/2 split by β = √((1 + cos Σ)/2) between sky and air, ground the rest;
    /// Walton 1983.
    pub(super) fn open(emittance: f64, facing_up_cosine: f64, roughness: f64) -> Self {
        let dome = 0.5 * (1.0 + facing_up_cosine);
        let split = dome.max(0.0).sqrt();
        Self {
            emittance,
            sky_view: dome * split,
            air_view: dome * (1.0 - split),
            ground_view: 1.0 - dome,
            facing_up_cosine,
            roughness,
        }
    }

    /// Conductance (W/(m² K)) and forcing (W/m², the conductance times what it leads to in °C) of the outer face.
    pub(super) fn exchange(
        &self,
        surface_c: f64,
        boundary: &Boundary,
        ground_c: f64,
        wind: &WindTerm,
        side: WindSide,
    ) -> (f64, f64) {
        let natural = natural_w_m2_k(surface_c - boundary.outdoor_c, self.facing_up_cosine);
        let convection = outside_w_m2_k(natural, wind, side, self.roughness);
        let sky = self.radiation(surface_c, boundary.sky_c) * self.sky_view;
        let air = self.radiation(surface_c, boundary.outdoor_c) * self.air_view + convection;
        let ground = self.radiation(surface_c, ground_c) * self.ground_view;
        (
            sky + air + ground,
            sky * boundary.sky_c + air * boundary.outdoor_c + ground * ground_c,
        )
    }

    /// ε σ (T₁² + T₂²)(T₁ + T₂): exact between the two temperatures.
    fn radiation(&self, surface_c: f64, other_c: f64) -> f64 {
        let surface_k = kelvin_from_celsius(surface_c);
        let other_k = kelvin_from_celsius(other_c);
        self.emittance
            * STEFAN_BOLTZMANN_W_M2_K4
            * (surface_k * surface_k + other_k * other_k)
            * (surface_k + other_k)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn views_add_to_one() {
        for cosine in [-1.0, -0.3, 0.0, 0.5, 1.0] {
            let face = OuterFace::open(0.9, cosine, 1.0);
            assert!((face.sky_view + face.air_view + face.ground_view - 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn the_wind_from_the_south_is_on_the_south_face() {
        assert_eq!(wind_side(0.0, 180.0, Some(200.0)), WindSide::Windward);
        assert_eq!(wind_side(0.0, 0.0, Some(200.0)), WindSide::Leeward);
        assert_eq!(wind_side(0.0, 350.0, Some(10.0)), WindSide::Windward);
        assert_eq!(wind_side(0.0, 0.0, None), WindSide::Unknown);
    }
}
