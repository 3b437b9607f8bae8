//! Glass from two numbers everybody has: thermal transmittance and solar heat gain coefficient.
//!
//! Arasteh, Kohler & Griffith 2009, *Modeling Windows in EnergyPlus with Simple Performance Indices* (LBNL-2804E): the
//! equivalent pane's resistance, solar transmittance, absorptance, and its dependence on the angle of incidence. The angular
//! curves are blended between the report's families by transmittance and gain on a coarser grid than the report's, each node
//! of the grid exact. Validity: U 1.0 to 6.0 W/(m² K), SHGC 0.02 to 0.88.

use crate::quantity::Bounded;

/// Longwave emittance of glass: LBNL-2804E.
pub const GLASS_EMITTANCE: f64 = 0.84;

/// An equivalent pane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Glazing {
    /// Resistance between its faces, m² K/W.
    pub resistance_m2_k_w: f64,
    /// Solar transmittance at normal incidence.
    pub transmittance_normal: f64,
    /// Solar reflectance at normal incidence.
    pub reflectance_normal: f64,
    angular_transmittance: [f64; 5],
    angular_reflectance: [f64; 5],
    /// Share of diffuse sunlight transmitted.
    pub transmittance_diffuse: f64,
    /// Share of diffuse sunlight absorbed.
    pub absorptance_diffuse: f64,
}

/// What becomes of a beam on the pane.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeamShares {
    /// Share transmitted.
    pub transmitted: f64,
    /// Share absorbed.
    pub absorbed: f64,
}

/// Why a pane cannot be described.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GlazingError {
    /// Transmittance outside 0.1 to 7 W/(m² K).
    Transmittance {
        /// The value.
        value: f64,
    },
    /// Gain coefficient outside 0 to 0.95.
    GainCoefficient {
        /// The value.
        value: f64,
    },
}

impl Glazing {
    /// The equivalent pane of a thermal transmittance (W/(m² K), with films, 0.1…7) and a solar heat gain coefficient (at normal
    /// incidence, 0…0.95).
    ///
    /// Source: LBNL-2804E, eqs. 5 to 21 and table 1.
    ///
    /// # Errors
    /// [`GlazingError`] when either lies outside its range.
    pub fn new(
        transmittance_w_m2_k: f64,
        solar_heat_gain_coefficient: f64,
    ) -> Result<Self, GlazingError> {
        if !(0.1..=7.0).contains(&transmittance_w_m2_k) {
            return Err(GlazingError::Transmittance {
                value: transmittance_w_m2_k,
            });
        }
        if !(0.0..=0.95).contains(&solar_heat_gain_coefficient) {
            return Err(GlazingError::GainCoefficient {
                value: solar_heat_gain_coefficient,
            });
        }
        Ok(Self::from_indices(
            transmittance_w_m2_k,
            solar_heat_gain_coefficient,
        ))
    }

    /// Shares of a beam at a cosine of incidence, 0…1; one below 0, from behind the pane, counts as grazing.
    ///
    /// T = T₀ t(μ); R = R₀ + (1 − R₀)(r(μ) − r(1))/(r(0) − r(1)). The report gives r as a multiple of R₀, which for a reflective
    /// pane would pass 1 long before grazing; its shape between the normal value and total reflection serves every pane.
    #[must_use]
    pub fn beam(&self, incidence_cosine: f64) -> BeamShares {
        let cosine = incidence_cosine.clamp(0.0, 1.0);
        let transmitted = self.transmittance_normal
            * polynomial(&self.angular_transmittance, cosine).at_least(0.0);
        let curve = |cosine| polynomial(&self.angular_reflectance, cosine);
        let rise = (curve(cosine) - curve(1.0)) / (curve(0.0) - curve(1.0));
        let reflected = self.reflectance_normal + (1.0 - self.reflectance_normal) * rise;
        let reflected = reflected.clamp(0.0, 1.0 - transmitted);
        BeamShares {
            transmitted,
            absorbed: 1.0 - transmitted - reflected,
        }
    }

    fn from_indices(u: f64, gain: f64) -> Self {
        let resistance_m2_k_w = core_resistance_m2_k_w(u);
        let transmittance_normal = normal_transmittance(u, gain);
        let absorptance = absorptance(u, gain - transmittance_normal, resistance_m2_k_w)
            .clamp(0.0, 1.0 - transmittance_normal);
        let reflectance_normal = 1.0 - transmittance_normal - absorptance;
        let mut glazing = Self {
            resistance_m2_k_w,
            transmittance_normal,
            reflectance_normal,
            angular_transmittance: blended(&TRANSMITTANCE_CURVES, u, gain),
            angular_reflectance: blended(&REFLECTANCE_CURVES, u, gain),
            transmittance_diffuse: 0.0,
            absorptance_diffuse: 0.0,
        };
        glazing.set_diffuse();
        glazing
    }

    /// Hemispherical mean, 2∫ f(μ) μ dμ, by the midpoint rule: smooth polynomials, error below 1e-4.
    fn set_diffuse(&mut self) {
        const STEPS: u32 = 40;
        for step in 0..STEPS {
            let cosine = (f64::from(step) + 0.5) / f64::from(STEPS);
            let weight = 2.0 * cosine / f64::from(STEPS);
            let shares = self.beam(cosine);
            self.transmittance_diffuse += weight * shares.transmitted;
            self.absorptance_diffuse += weight * shares.absorbed;
        }
    }
}

/// Least resistance of a pane, m² K/W: 2 mm of glass; keeps very conductive panes solvable.
const LEAST_RESISTANCE_M2_K_W: f64 = 0.002;

/// R = 1/U − Ri,w − Ro,w: LBNL-2804E eqs. 5 to 7.
fn core_resistance_m2_k_w(u: f64) -> f64 {
    let inside = if u < 5.85 {
        1.0 / (0.359_073 * libm::log(u) + 6.949_915)
    } else {
        1.0 / (1.788_041 * u - 2.886_625)
    };
    let outside = 1.0 / (0.025_342 * u + 29.163_853);
    (1.0 / u - inside - outside).at_least(LEAST_RESISTANCE_M2_K_W)
}

/// Weight of the single-pane correlation between U 3.4 (none) and 4.5 (all): LBNL-2804E.
fn single_pane_weight(u: f64) -> f64 {
    ((u - 3.4) / 1.1).clamp(0.0, 1.0)
}

/// Solar transmittance at normal incidence: LBNL-2804E eqs. 10 to 14.
fn normal_transmittance(u: f64, gain: f64) -> f64 {
    let single = if gain < 0.7206 {
        0.939_998 * gain * gain + 0.203_32 * gain
    } else {
        1.304_15 * gain - 0.305_15
    };
    let double = if gain > 0.15 {
        0.085_775 * gain * gain + 0.963_954 * gain - 0.084_958
    } else {
        0.410_40 * gain
    };
    let weight = single_pane_weight(u);
    (weight * single + (1.0 - weight) * double).clamp(0.0, gain)
}

/// Absorptance from the inward-flowing share of what is absorbed: LBNL-2804E eqs. 15 to 21.
fn absorptance(u: f64, inward_gain: f64, core_m2_k_w: f64) -> f64 {
    let x = inward_gain;
    let inside_single =
        1.0 / (29.436_546 * x * x * x - 21.943_415 * x * x + 9.945_872 * x + 7.426_151);
    let inside_double =
        1.0 / (199.820_812_8 * x * x * x - 90.639_733 * x * x + 19.737_055 * x + 6.766_575);
    let outside_single = 1.0 / (2.225_824 * x + 20.577_08);
    let outside_double = 1.0 / (5.763_355 * x + 20.541_528);
    let weight = single_pane_weight(u);
    let inside = weight * inside_single + (1.0 - weight) * inside_double;
    let outside = weight * outside_single + (1.0 - weight) * outside_double;
    let inward_share = (outside + 0.5 * core_m2_k_w) / (outside + core_m2_k_w + inside);
    inward_gain / inward_share
}

/// Curves A, mean of B, C, D, D; E; mean of F, G, H, I; mean of F, H: normalised transmittance over the cosine of incidence,
/// highest power first, LBNL-2804E table 1.
const TRANSMITTANCE_CURVES: Families = Families {
    clear_single: [0.014_70, 1.486, -3.852, 3.355, -0.001_474],
    tinted_single: [0.504_475, 0.047_493, -2.289, 2.742_25, -0.001_159_95],
    dark_single: [0.346_2, 0.396_3, -2.582, 2.845, -0.000_280_4],
    clear_double: [2.883, -5.873, 2.489, 1.510, -0.002_577],
    tinted_double: [3.183_5, -6.799, 3.608, 1.015_9, -0.002_535_5],
    dark_double: [3.179_5, -6.748_5, 3.483, 1.094_8, -0.002_159_5],
};

/// The same for normalised reflectance.
const REFLECTANCE_CURVES: Families = Families {
    clear_single: [16.32, -57.82, 79.24, -50.08, 13.34],
    tinted_single: [27.349_5, -79.285, 87.515, -44.808, 10.274_5],
    dark_single: [5.714, -16.67, 18.63, -9.756, 3.074],
    clear_double: [-0.548_8, -6.498, 21.20, -20.97, 7.814],
    tinted_double: [17.932_75, -51.927_5, 57.982_5, -30.629, 7.657_5],
    dark_double: [4.315_5, -12.735, 14.72, -8.178, 2.875],
};

struct Families {
    clear_single: [f64; 5],
    tinted_single: [f64; 5],
    dark_single: [f64; 5],
    clear_double: [f64; 5],
    tinted_double: [f64; 5],
    dark_double: [f64; 5],
}

fn blended(families: &Families, u: f64, gain: f64) -> [f64; 5] {
    let single = if gain >= 0.45 {
        let weight = ((gain - 0.60) / 0.05).clamp(0.0, 1.0);
        mix(&families.tinted_single, &families.clear_single, weight)
    } else {
        let weight = ((gain - 0.30) / 0.15).clamp(0.0, 1.0);
        mix(&families.dark_single, &families.tinted_single, weight)
    };
    let double = if gain >= 0.45 {
        let weight = ((gain - 0.50) / 0.05).clamp(0.0, 1.0);
        mix(&families.tinted_double, &families.clear_double, weight)
    } else {
        let weight = ((gain - 0.25) / 0.05).clamp(0.0, 1.0);
        mix(&families.dark_double, &families.tinted_double, weight)
    };
    mix(&double, &single, ((u - 3.41) / 1.13).clamp(0.0, 1.0))
}

fn mix(from: &[f64; 5], to: &[f64; 5], weight: f64) -> [f64; 5] {
    let mut mixed = [0.0; 5];
    for ((mixed, from), to) in mixed.iter_mut().zip(from).zip(to) {
        *mixed = (1.0 - weight) * from + weight * to;
    }
    mixed
}

fn polynomial(coefficients: &[f64; 5], x: f64) -> f64 {
    coefficients.iter().fold(0.0, |sum, term| sum * x + term)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_single_clear_pane_by_hand() {
        // LBNL-2804E eq. 10 for U 5.8, SHGC 0.82: 1.30415·0.82 − 0.30515 = 0.764253.
        let pane = Glazing::new(5.8, 0.82).unwrap();
        assert!((pane.transmittance_normal - 0.764_253).abs() < 1e-9);
        assert!((pane.beam(1.0).transmitted / pane.transmittance_normal - 1.0).abs() < 0.003);
        assert!((0.85..0.93).contains(&(pane.transmittance_diffuse / pane.transmittance_normal)));
    }

    #[test]
    fn shares_never_leave_zero_to_one() {
        for u in [1.0, 2.0, 3.4, 4.0, 4.6, 5.8, 6.0] {
            for gain in [0.02, 0.1, 0.15, 0.3, 0.5, 0.62, 0.72, 0.88] {
                let pane = Glazing::new(u, gain).unwrap();
                for step in 0..=20 {
                    let shares = pane.beam(f64::from(step) / 20.0);
                    assert!(shares.transmitted >= 0.0 && shares.absorbed >= 0.0);
                    assert!(shares.transmitted + shares.absorbed <= 1.0 + 1e-12);
                }
            }
        }
    }

    #[test]
    fn nonsense_is_refused() {
        assert!(Glazing::new(f64::NAN, 0.5).is_err());
        assert!(Glazing::new(5.8, 1.2).is_err());
    }
}
