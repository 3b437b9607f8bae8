//! Irradiance of a tilted plane.
//!
//! Direct irradiance by the angle of incidence, the sky by Perez et al. 1990 (isotropic dome,
//! circumsolar disc and horizon band, all-sites composite coefficients), the ground as a uniform
//! reflector. The isotropic and the Hay–Davies sky give shaded walls 10–30 % too little, and the
//! coefficients cost nothing: they are found once for an instant and serve every plane.
//!
//! Source: Perez, Ineichen, Seals, Michalsky & Stewart 1990, Solar Energy 44:271, cited by equation
//! number. Coefficients at full precision: Perez 1999, as printed in the EnergyPlus Engineering
//! Reference.

use super::clear_sky::relative_airmass;
use super::position::direction;
use super::{Irradiance, SunPosition};
use crate::quantity::Bounded;

/// Weight of the cube of the zenith angle in the clearness, 1/rad³ (eq. 1).
const ZENITH_WEIGHT: f64 = 1.041;

/// Cosine of 85°: below, the circumsolar disc is kept from growing without bound (eq. 9).
const LEAST_DISC_COSINE: f64 = 0.087_155_742_747_658_17;

/// Upper ends of the clearness bins but the last (table 1).
const CLEARNESS_BINS: [f64; 7] = [1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2];

/// F11, F12, F13, F21, F22, F23 of each clearness bin (table 6, at full precision).
const COEFFICIENTS: [[f64; 6]; 8] = [
    [
        -0.008_311_7,
        0.587_728_5,
        -0.062_063_6,
        -0.059_601_2,
        0.072_124_9,
        -0.022_021_6,
    ],
    [
        0.129_945_7,
        0.682_595_4,
        -0.151_375_2,
        -0.018_932_5,
        0.065_965_0,
        -0.028_874_8,
    ],
    [
        0.329_695_8,
        0.486_873_5,
        -0.221_095_8,
        0.055_414_0,
        -0.063_958_8,
        -0.026_054_2,
    ],
    [
        0.568_205_3,
        0.187_452_5,
        -0.295_129_0,
        0.108_863_1,
        -0.151_922_9,
        -0.013_975_4,
    ],
    [
        0.873_028_0,
        -0.392_040_3,
        -0.361_614_9,
        0.225_564_7,
        -0.462_044_2,
        0.001_244_8,
    ],
    [
        1.132_607_7,
        -1.236_728_4,
        -0.411_849_4,
        0.287_781_3,
        -0.823_035_7,
        0.055_865_1,
    ],
    [
        1.060_159_1,
        -1.599_913_7,
        -0.358_922_1,
        0.264_212_4,
        -1.127_234_0,
        0.131_069_4,
    ],
    [
        0.677_747_0,
        -0.327_258_8,
        -0.250_428_6,
        0.156_131_3,
        -1.376_503_1,
        0.250_621_2,
    ],
];

/// A flat surface, by the way it faces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plane {
    tilt_deg: f64,
    azimuth_deg: f64,
    normal: [f64; 3],
    tilt_sine: f64,
}

impl Plane {
    /// Makes a plane.
    ///
    /// `tilt_deg`: 0° lies flat and faces up, 90° is a wall, 180° faces down; `azimuth_deg`: the
    /// direction it faces, clockwise from north, any number of turns.
    #[must_use]
    pub fn new(tilt_deg: f64, azimuth_deg: f64) -> Self {
        Self {
            tilt_deg,
            azimuth_deg,
            normal: direction(tilt_deg, azimuth_deg),
            tilt_sine: libm::sin(tilt_deg.to_radians()),
        }
    }

    /// Tilt from lying flat, degrees.
    #[must_use]
    pub fn tilt_deg(&self) -> f64 {
        self.tilt_deg
    }

    /// Direction that it faces, degrees clockwise from north.
    #[must_use]
    pub fn azimuth_deg(&self) -> f64 {
        self.azimuth_deg
    }

    /// Unit vector of east, north and up that it faces.
    #[must_use]
    pub fn normal(&self) -> [f64; 3] {
        self.normal
    }

    /// Share of its view that is sky over a level horizon: (1 + cos β)/2.
    #[must_use]
    pub fn sky_view(&self) -> f64 {
        0.5 * (1.0 + self.normal[2])
    }

    /// Cosine of the angle between its normal and the apparent sun; negative when the sun is
    /// behind.
    #[must_use]
    pub fn incidence_cosine(&self, sun: &SunPosition) -> f64 {
        self.normal
            .iter()
            .zip(sun.direction)
            .map(|(normal, towards)| normal * towards)
            .sum()
    }
}

/// What falls on a plane, by where it comes from.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PlaneIrradiance {
    /// Straight from the sun, W/m².
    pub beam_w_m2: f64,
    /// From the sky, W/m².
    pub sky_diffuse_w_m2: f64,
    /// Reflected by the ground, W/m².
    pub ground_w_m2: f64,
    /// Cosine of the beam's angle of incidence; negative when the sun is behind the plane.
    pub incidence_cosine: f64,
}

impl PlaneIrradiance {
    /// Everything together, W/m².
    #[must_use]
    pub fn total_w_m2(&self) -> f64 {
        self.beam_w_m2 + self.sky_diffuse_w_m2 + self.ground_w_m2
    }
}

/// The sky at an instant: irradiance, sun and Perez's brightness coefficients.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SkyDome {
    irradiance: Irradiance,
    sun: SunPosition,
    /// Share of the diffuse irradiance in the circumsolar disc, F1′.
    circumsolar: f64,
    /// Share of the diffuse irradiance in the horizon band, F2′.
    horizon: f64,
}

impl SkyDome {
    /// Finds the brightness coefficients of an instant.
    ///
    /// ε = ((D + B)/D + 1.041z³)/(1 + 1.041z³), Δ = Dm/E₀, F1′ = max(0, F11 + F12Δ + F13z), F2′ =
    /// F21 + F22Δ + F23z, with z the zenith in rad, D the diffuse horizontal and B the direct
    /// normal irradiance, m the relative airmass. Without diffuse irradiance both are zero.
    ///
    /// Source: Perez et al. 1990, eq. 1, 2 and 6.
    #[must_use]
    pub fn new(sun: &SunPosition, irradiance: &Irradiance) -> Self {
        let (circumsolar, horizon) = brightness(sun, irradiance);
        Self {
            irradiance: *irradiance,
            sun: *sun,
            circumsolar,
            horizon,
        }
    }

    /// Gives what falls on a plane.
    ///
    /// Beam B max(0, cos θ); sky D((1 − F1′)(1 + cos β)/2 + F1′ max(0, cos θ)/max(cos 85°, cos z) +
    /// F2′ sin β), never below zero; ground ρG(1 − cos β)/2.
    ///
    /// `ground_reflectance`: ρ, 0…1.
    ///
    /// Source: Perez et al. 1990, eq. 9; the ground as a uniform diffuse reflector.
    #[must_use]
    pub fn on_plane(&self, plane: &Plane, ground_reflectance: f64) -> PlaneIrradiance {
        let incidence_cosine = plane.incidence_cosine(&self.sun);
        let facing = incidence_cosine.at_least(0.0);
        let disc = facing / self.sun.zenith_cosine().at_least(LEAST_DISC_COSINE);
        let sky_view = plane.sky_view();
        let sky_ratio = (1.0 - self.circumsolar) * sky_view
            + self.circumsolar * disc
            + self.horizon * plane.tilt_sine;
        PlaneIrradiance {
            beam_w_m2: self.irradiance.direct_normal_w_m2 * facing,
            sky_diffuse_w_m2: (self.irradiance.diffuse_horizontal_w_m2 * sky_ratio).at_least(0.0),
            ground_w_m2: ground_reflectance
                * self.irradiance.global_horizontal_w_m2
                * (1.0 - sky_view),
            incidence_cosine,
        }
    }
}

/// Perez's F1′ and F2′ of an instant.
fn brightness(sun: &SunPosition, irradiance: &Irradiance) -> (f64, f64) {
    let diffuse_w_m2 = irradiance.diffuse_horizontal_w_m2;
    if diffuse_w_m2 <= 0.0 {
        return (0.0, 0.0);
    }
    let zenith = sun.apparent_zenith_deg.at_most(90.0).to_radians();
    let lift = ZENITH_WEIGHT * zenith * zenith * zenith;
    let clearness = (1.0 + irradiance.direct_normal_w_m2 / diffuse_w_m2 + lift) / (1.0 + lift);
    let bin = CLEARNESS_BINS
        .iter()
        .filter(|end| clearness >= **end)
        .count();
    let [f11, f12, f13, f21, f22, f23] = COEFFICIENTS[bin];
    let brightness =
        diffuse_w_m2 * relative_airmass(sun.apparent_zenith_deg) / sun.extraterrestrial_normal_w_m2;
    (
        (f11 + f12 * brightness + f13 * zenith).at_least(0.0),
        f21 + f22 * brightness + f23 * zenith,
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    const SKY: Irradiance = Irradiance {
        global_horizontal_w_m2: 600.0,
        direct_normal_w_m2: 800.0,
        diffuse_horizontal_w_m2: 200.0,
    };

    /// By hand: a sun 60° off the zenith in the south meets a south wall at 30°.
    #[test]
    fn incidence_by_hand() {
        let sun = SunPosition::from_angles(60.0, 180.0, 1_360.0);
        let wall = Plane::new(90.0, 180.0);
        assert!((wall.incidence_cosine(&sun) - 0.75_f64.sqrt()).abs() < 1e-12);
        assert!((Plane::new(0.0, 0.0).incidence_cosine(&sun) - 0.5).abs() < 1e-12);
        assert!(Plane::new(90.0, 0.0).incidence_cosine(&sun) < 0.0);
    }

    /// A level plane gets exactly what lies on the ground, and a plane facing down only what it
    /// reflects.
    #[test]
    fn level_planes_close_the_balance() {
        let sun = SunPosition::from_angles(60.0, 135.0, 1_360.0);
        let sky = SkyDome::new(&sun, &SKY);
        let roof = sky.on_plane(&Plane::new(0.0, 77.0), 0.2);
        assert!((roof.total_w_m2() - SKY.global_horizontal_w_m2).abs() < 1e-9);
        let belly = sky.on_plane(&Plane::new(180.0, 0.0), 0.2);
        assert!((belly.ground_w_m2 - 120.0).abs() < 1e-9);
        assert_eq!(belly.beam_w_m2, 0.0);
    }

    /// By hand, bin 6 (ε = 3.29 at z = π/3: (1 + 4 + 1.1955)/2.1955 = 2.822), Δ = 200·1.9943/1360 =
    /// 0.29328: F1′ = 1.1326077 − 1.2367284·0.29328 − 0.4118494·1.0471976 = 0.33861.
    #[test]
    fn brightness_by_hand() {
        let sun = SunPosition::from_angles(60.0, 180.0, 1_360.0);
        let (circumsolar, horizon) = brightness(&sun, &SKY);
        assert!((circumsolar - 0.338_61).abs() < 1e-4, "{circumsolar}");
        assert!((horizon - 0.104_90).abs() < 1e-4, "{horizon}");
    }

    /// Without sun, without sky, and with the sun anywhere, nothing is negative or not a number.
    #[test]
    fn stays_finite_and_positive() {
        for zenith_deg in [0.0, 45.0, 84.9, 85.1, 90.0, 91.0, 150.0] {
            let sun = SunPosition::from_angles(zenith_deg, 200.0, 1_330.0);
            for (direct, diffuse) in [
                (0.0, 0.0),
                (900.0, 0.0),
                (0.0, 300.0),
                (0.1, 1e-6),
                (1_000.0, 60.0),
            ] {
                let irradiance = Irradiance {
                    global_horizontal_w_m2: direct * sun.zenith_cosine().max(0.0) + diffuse,
                    direct_normal_w_m2: direct,
                    diffuse_horizontal_w_m2: diffuse,
                };
                let sky = SkyDome::new(&sun, &irradiance);
                for tilt_deg in [0.0, 10.0, 45.0, 90.0, 135.0, 180.0] {
                    let plane = sky.on_plane(&Plane::new(tilt_deg, 30.0), 0.2);
                    for part in [plane.beam_w_m2, plane.sky_diffuse_w_m2, plane.ground_w_m2] {
                        assert!(part.is_finite() && part >= 0.0, "{plane:?}");
                    }
                }
            }
        }
    }
}
