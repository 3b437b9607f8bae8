//! Convection on the outside by wind and buoyancy, on the inside by buoyancy and by moving air.
//!
//! Outside: the DOE-2 form with the MoWiTT coefficients of Booten, Kruis & Christensen 2012 (NREL/TP-5500-55787) and
//! buoyancy after Walton 1983 (TARP, NBSSIR 83-2655). Inside: Walton's buoyancy, raised while a fan or cooler blows by
//! Fisher & Pedersen 1997 (ASHRAE Transactions 103(2)), the two blended as Churchill & Usagi 1972 (AIChE Journal 18:1121)
//! blend assisting mechanisms. Longwave radiation is counted apart.

use crate::quantity::{Bounded, Number};

/// How wind meets a surface.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WindSide {
    /// The wind blows onto it.
    Windward,
    /// It lies in the lee.
    Leeward,
    /// The wind's direction is not known: the mean of both.
    Unknown,
}

/// Coefficients of the wind term a·V^b, W/(m² K) with V in m/s: Booten et al. 2012.
const WINDWARD_FACTOR: f64 = 3.26;
const WINDWARD_EXPONENT: f64 = 0.89;
const LEEWARD_FACTOR: f64 = 3.55;
const LEEWARD_EXPONENT: f64 = 0.617;

/// Roughness factor of glass: Walton 1983, very smooth.
pub const ROUGHNESS_VERY_SMOOTH: f64 = 1.0;

/// Roughness factor of painted sheet with beads and seams: Walton 1983, smooth.
pub const ROUGHNESS_SMOOTH: f64 = 1.11;

/// Parameters of a wind profile: ASHRAE Fundamentals ch. 24 table 1 (exponent, boundary layer).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WindProfile {
    /// Exponent of the power law.
    pub exponent: f64,
    /// Thickness of the boundary layer, m.
    pub boundary_layer_m: f64,
}

/// Open country, and the land around a weather station.
pub const OPEN_COUNTRY: WindProfile = WindProfile {
    exponent: 0.14,
    boundary_layer_m: 270.0,
};

/// Suburbs and woods.
pub const SUBURB: WindProfile = WindProfile {
    exponent: 0.22,
    boundary_layer_m: 370.0,
};

/// Town centres.
pub const TOWN: WindProfile = WindProfile {
    exponent: 0.33,
    boundary_layer_m: 460.0,
};

/// Height at which weather stations measure wind, m.
const STATION_HEIGHT_M: f64 = 10.0;

impl WindProfile {
    /// Wind at a height over wind at 10 m over open country: (δs/10)^αs (z/δ)^α, ASHRAE Fundamentals ch. 24 eq. 4.
    ///
    /// `height_m` above 0.
    #[must_use]
    pub fn factor_at(&self, height_m: f64) -> f64 {
        libm::pow(
            OPEN_COUNTRY.boundary_layer_m / STATION_HEIGHT_M,
            OPEN_COUNTRY.exponent,
        ) * libm::pow(height_m / self.boundary_layer_m, self.exponent)
    }
}

/// Buoyant convection at a surface, W/(m² K): Walton 1983.
///
/// Vertical 1.31 |ΔT|^⅓; heat flowing up 9.482 |ΔT|^⅓ / (7.238 − |cos Σ|); heat flowing down
/// 1.810 |ΔT|^⅓ / (1.382 + |cos Σ|). `surface_less_air_k` is ΔT; `facing_up_cosine` is the cosine of the angle between the
/// surface's outward normal (towards the air in question) and straight up, −1 to 1.
#[must_use]
pub fn natural_w_m2_k(surface_less_air_k: f64, facing_up_cosine: f64) -> f64 {
    Buoyancy::at(facing_up_cosine).natural_w_m2_k(surface_less_air_k)
}

/// The factors of [`natural_w_m2_k`] for a tilt, worked out once.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Buoyancy<N = f64> {
    /// Where the surface is warmer than the air, W/(m² K^(4/3)).
    pub warmer: N,
    /// Where it is not.
    pub colder: N,
}

impl Buoyancy {
    /// For a surface whose outward normal (towards the air in question) has this cosine to straight up, −1 to 1.
    #[must_use]
    pub fn at(facing_up_cosine: f64) -> Self {
        let tilt = facing_up_cosine.abs();
        if tilt < 1e-9 {
            return Self {
                warmer: 1.31,
                colder: 1.31,
            };
        }
        let (up, down) = (9.482 / (7.238 - tilt), 1.810 / (1.382 + tilt));
        if facing_up_cosine > 0.0 {
            Self {
                warmer: up,
                colder: down,
            }
        } else {
            Self {
                warmer: down,
                colder: up,
            }
        }
    }
}

impl<N: Number> Buoyancy<N> {
    /// Buoyant convection, W/(m² K), from the surface's temperature above that of the air, K.
    #[must_use]
    #[inline(always)]
    pub fn natural_w_m2_k(&self, surface_less_air_k: N) -> N {
        let factor = surface_less_air_k.where_positive(self.warmer, self.colder);
        factor * surface_less_air_k.abs().cube_root()
    }
}

/// Wind term a·V^b for both sides, W/(m² K), worked out once for a wind speed.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct WindTerm {
    /// On the windward side.
    pub windward_w_m2_k: f64,
    /// On the leeward side.
    pub leeward_w_m2_k: f64,
}

impl WindTerm {
    /// The wind term at a local wind speed V, m/s, zero or more: 3.26 V^0.89 windward, 3.55 V^0.617 leeward (Booten et al. 2012).
    #[must_use]
    pub fn at(wind_speed_m_s: f64) -> Self {
        Self {
            windward_w_m2_k: WINDWARD_FACTOR * libm::pow(wind_speed_m_s, WINDWARD_EXPONENT),
            leeward_w_m2_k: LEEWARD_FACTOR * libm::pow(wind_speed_m_s, LEEWARD_EXPONENT),
        }
    }

    /// On a side, W/(m² K).
    #[must_use]
    pub fn on(&self, side: WindSide) -> f64 {
        match side {
            WindSide::Windward => self.windward_w_m2_k,
            WindSide::Leeward => self.leeward_w_m2_k,
            WindSide::Unknown => 0.5 * (self.windward_w_m2_k + self.leeward_w_m2_k),
        }
    }
}

/// Least outside coefficient, W/(m² K): air is never perfectly still around a vehicle (ISO 6946 annex C gives 4 at no wind,
/// longwave and buoyancy in it; a tenth of that keeps the model away from zero).
const LEAST_OUTSIDE_W_M2_K: f64 = 0.4;

/// Outside convection, W/(m² K): h = hn + R (√(hn² + (a V^b)²) − hn), the DOE-2 form (LBNL 1994).
///
/// `natural_w_m2_k` is buoyancy, zero or more; `forced_w_m2_k` the wind term of the surface's side ([`WindTerm::on`]); `roughness`
/// is Walton's factor, 1.0 very smooth to 2.17 very rough. Never less than 0.4 W/(m² K).
#[must_use]
#[inline(always)]
pub fn outside_w_m2_k<N: Number>(natural_w_m2_k: N, forced_w_m2_k: N, roughness: N) -> N {
    let smooth = (natural_w_m2_k * natural_w_m2_k + forced_w_m2_k * forced_w_m2_k).sqrt();
    (natural_w_m2_k + roughness * (smooth - natural_w_m2_k)).at_least(N::of(LEAST_OUTSIDE_W_M2_K))
}

/// Coefficients of Fisher & Pedersen 1997 for a ceiling, a wall and a floor: h = c·N^0.8, N air changes an hour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Facing {
    /// The inside of the roof.
    Ceiling,
    /// Walls, glass and furniture.
    Side,
    /// The floor.
    Floor,
}

impl Facing {
    /// The factor c of h = c·N^0.8, W/(m² K).
    #[must_use]
    pub fn moving_air_factor(self) -> f64 {
        match self {
            Self::Ceiling => 0.49,
            Self::Side => 0.19,
            Self::Floor => 0.13,
        }
    }
}

/// Air changes an hour to the power 0.8, the common part of Fisher & Pedersen's correlations.
///
/// `air_flow_m3_s` is what fan and cooler move in the cabin, zero or more; `volume_m3` above zero. Beyond 100 air changes an
/// hour, far outside the correlation's measurements, the coefficient stays at its value there.
#[must_use]
pub fn moving_air_term(air_flow_m3_s: f64, volume_m3: f64) -> f64 {
    let changes_per_hour =
        (air_flow_m3_s * crate::quantity::SECONDS_PER_HOUR / volume_m3).at_most(100.0);
    libm::pow(changes_per_hour, 0.8)
}

/// Inside convection, W/(m² K): buoyancy and moving air blended by the cube, h = (hn³ + hf³)^⅓, with hf = 0.49, 0.19 or 0.13
/// times the moving-air term for ceiling, side and floor.
///
/// `natural_w_m2_k` is buoyancy, zero or more, of which 0.1 W/(m² K) always count; `moving_air` is [`moving_air_term`], zero for
/// still air, in which case the result is buoyancy alone; `factor` is that of [`Facing::moving_air_factor`].
///
/// Source: Fisher & Pedersen 1997; blending after Churchill & Usagi 1972.
#[must_use]
#[inline(always)]
pub fn inside_w_m2_k<N: Number>(natural_w_m2_k: N, moving_air: f64, factor: N) -> N {
    let natural = natural_w_m2_k.at_least(N::of(LEAST_INSIDE_W_M2_K));
    if moving_air <= 0.0 {
        return natural;
    }
    let forced = factor * N::of(moving_air);
    (natural * natural * natural + forced * forced * forced).cube_root()
}

/// Least inside coefficient, W/(m² K): a stagnant layer still conducts (0.026 W/(m K) over some 0.25 m).
const LEAST_INSIDE_W_M2_K: f64 = 0.1;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wind_at_two_metres_over_open_country_is_four_fifths() {
        // 0.80 by hand: (2/10)^0.14.
        assert!((OPEN_COUNTRY.factor_at(2.0) - 0.798).abs() < 1e-3);
    }

    #[test]
    fn a_hot_ceiling_holds_its_air_and_a_hot_floor_stirs_it() {
        let ceiling = natural_w_m2_k(10.0, -1.0);
        let floor = natural_w_m2_k(10.0, 1.0);
        assert!(floor > 1.9 * ceiling);
    }

    #[test]
    fn moving_air_only_adds() {
        let side = Facing::Side.moving_air_factor();
        let still = inside_w_m2_k(2.0, 0.0, side);
        let blown = inside_w_m2_k(2.0, moving_air_term(0.11, 14.0), side);
        assert!(still == 2.0 && blown > still);
    }

    #[test]
    fn outside_is_never_zero() {
        let calm = WindTerm::at(0.0);
        assert!(outside_w_m2_k(0.0, calm.on(WindSide::Unknown), 1.0) > 0.0);
    }
}
