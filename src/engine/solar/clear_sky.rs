//! Irradiance on the ground under a clear or a cloudy sky.
//!
//! Ineichen & Perez 2002 give the clear sky from one number for the haze, the Linke turbidity, and
//! the altitude. Kasten & Czeplak 1980 say how much cloud takes off the global irradiance. How the
//! rest divides into direct and diffuse is blended between the clear sky's own division and that of
//! Erbs, Klein & Duffie 1982; see [`Clouds::apply`].

use super::SunPosition;
use crate::quantity::Bounded;
use crate::validity::{OutOfRange, require_within};

/// Solar constant, W/m² (World Radiometric Reference; the value used with Spencer's series in the
/// reference tables).
const SOLAR_CONSTANT_W_M2: f64 = 1_366.1;

/// Pressure at which the relative airmass is absolute, Pa (Kasten & Young 1989).
const AIRMASS_PRESSURE_PA: f64 = 101_325.0;

/// Least Linke turbidity accepted: about that of a clean dry sky.
pub const LINKE_TURBIDITY_LEAST: f64 = 2.0;

/// Greatest Linke turbidity accepted: heavy dust.
pub const LINKE_TURBIDITY_GREATEST: f64 = 8.0;

/// Share of the global irradiance that a full cover takes away (Kasten & Czeplak 1980).
const CLOUD_LOSS: f64 = 0.75;

/// Exponent of the cloud fraction (Kasten & Czeplak 1980).
const CLOUD_EXPONENT: f64 = 3.4;

/// Shortwave irradiance of the ground.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Irradiance {
    /// Everything that falls on a horizontal plane, W/m².
    pub global_horizontal_w_m2: f64,
    /// What comes straight from the sun, on a plane that faces it, W/m².
    pub direct_normal_w_m2: f64,
    /// What the sky scatters onto a horizontal plane, W/m².
    pub diffuse_horizontal_w_m2: f64,
}

/// Gives the irradiance of the sun outside the atmosphere on a plane that faces it.
///
/// E₀ = 1366.1(1.00011 + 0.034221 cos B + 0.00128 sin B + 0.000719 cos 2B + 0.000077 sin 2B), B =
/// 2π(n − 1)/365.
///
/// `day_of_year`: 1…366. Result in W/m².
///
/// Source: Spencer 1971, Search 2(5):172.
#[must_use]
pub fn extraterrestrial_normal_w_m2(day_of_year: u16) -> f64 {
    let angle = core::f64::consts::TAU * (f64::from(day_of_year) - 1.0) / 365.0;
    let (sine, cosine) = libm::sincos(angle);
    let (double_sine, double_cosine) = libm::sincos(2.0 * angle);
    SOLAR_CONSTANT_W_M2
        * (1.000_11
            + 0.034_221 * cosine
            + 0.001_28 * sine
            + 0.000_719 * double_cosine
            + 0.000_077 * double_sine)
}

/// Gives the length of the sun's path through the air relative to straight down.
///
/// m = 1/(cos z + 0.50572(96.07995 − z)^−1.6364). A sun below the horizon counts as on it (m = 38).
///
/// `apparent_zenith_deg`: 0…180°. Result without unit.
///
/// Source: Kasten & Young 1989, Applied Optics 28:4735.
#[must_use]
pub fn relative_airmass(apparent_zenith_deg: f64) -> f64 {
    let zenith_deg = apparent_zenith_deg.at_most(90.0);
    let bend = 0.505_72 * libm::pow(96.079_95 - zenith_deg, -1.636_4);
    1.0 / (libm::cos(zenith_deg.to_radians()).at_least(0.0) + bend)
}

/// Gives the share of the global irradiance that is diffuse, from the clearness index.
///
/// k_t ≤ 0.22: 1 − 0.09k_t; k_t ≤ 0.80: 0.9511 − 0.1604k_t + 4.388k_t² − 16.638k_t³ + 12.336k_t⁴;
/// above: 0.165.
///
/// `clearness_index`: global horizontal over extraterrestrial horizontal irradiance, 0…1. Result
/// 0.165…1.
///
/// Source: Erbs, Klein & Duffie 1982, Solar Energy 28:293, eq. 1.
#[must_use]
pub fn diffuse_share_from_clearness(clearness_index: f64) -> f64 {
    let k = clearness_index.max(0.0);
    if k <= 0.22 {
        1.0 - 0.09 * k
    } else if k <= 0.80 {
        (((12.336 * k - 16.638) * k + 4.388) * k - 0.160_4) * k + 0.951_1
    } else {
        0.165
    }
}

/// The clear sky of a place: everything in Ineichen & Perez that does not move with the sun.
///
/// Typical Linke turbidity (Remund et al. 2003, monthly climatology): 2 cold clean mountain air, 3
/// clean summer air (Sydney and Perth 2.3–3.2), 3.5–4.5 mid-latitude summer (Phoenix and Las Vegas
/// 3.4, Denver, Madrid and Berlin 4), 5–5.5 humid or polluted summer (Miami 5.6, Athens 5.4), 6–7
/// dust (Dubai 6.7).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClearSky {
    /// Scale of the global irradiance, cg1.
    global_scale: f64,
    /// Extinction of the global irradiance for each airmass, cg2(fh1 + fh2(TL − 1)).
    global_extinction: f64,
    /// Scale of the direct irradiance, 0.664 + 0.163/fh1.
    direct_scale: f64,
    /// Extinction of the direct irradiance for each airmass, 0.09(TL − 1).
    direct_extinction: f64,
    /// Greatest share of the global irradiance that is direct.
    direct_share_greatest: f64,
}

impl ClearSky {
    /// Prepares the clear sky of a place.
    ///
    /// fh1 = e^(−z/8000), fh2 = e^(−z/1250), cg1 = 5.09·10⁻⁵z + 0.868, cg2 = 3.92·10⁻⁵z + 0.0387.
    ///
    /// `linke_turbidity`: 2…8 at airmass 2 (typical values: [`ClearSky`]); `altitude_m`:
    /// −500…6000 m.
    ///
    /// Source: Ineichen & Perez 2002, Solar Energy 73:151.
    ///
    /// # Errors
    /// [`OutOfRange`] if either is out of its range.
    pub fn new(linke_turbidity: f64, altitude_m: f64) -> Result<Self, OutOfRange> {
        let turbidity = require_within(
            "linke_turbidity",
            linke_turbidity,
            LINKE_TURBIDITY_LEAST,
            LINKE_TURBIDITY_GREATEST,
        )?;
        let altitude_m = require_within("altitude_m", altitude_m, -500.0, 6_000.0)?;
        let air_above = libm::exp(-altitude_m / 8_000.0);
        let haze_above = libm::exp(-altitude_m / 1_250.0);
        let extinction = 3.92e-5 * altitude_m + 0.038_7;
        Ok(Self {
            global_scale: 5.09e-5 * altitude_m + 0.868,
            global_extinction: extinction * (air_above + haze_above * (turbidity - 1.0)),
            direct_scale: 0.664 + 0.163 / air_above,
            direct_extinction: 0.09 * (turbidity - 1.0),
            direct_share_greatest: 1.0
                - (0.1 - 0.2 * libm::exp(-turbidity)) / (0.1 + 0.882 / air_above),
        })
    }

    /// Gives the irradiance under the clear sky.
    ///
    /// G = cg1 E₀ cos z exp(−cg2 m(fh1 + fh2(TL − 1))); direct normal is the lesser of E₀(0.664 +
    /// 0.163/fh1) exp(−0.09m(TL − 1)) and G(1 − (0.1 − 0.2e^(−TL))/(0.1 + 0.882/fh1))/cos z;
    /// diffuse is G less the direct. The airmass m is corrected for pressure. Zero when the sun is
    /// down.
    ///
    /// `pressure_pa`: 50 000…120 000 Pa.
    ///
    /// Source: Ineichen & Perez 2002, with the correction of Ineichen 2008 (Solar Energy 82:758)
    /// for low altitudes, as generally implemented; the enhancement at high airmass is left out.
    #[must_use]
    pub fn at(&self, sun: &SunPosition, pressure_pa: f64) -> Irradiance {
        if !sun.is_up() {
            return Irradiance::default();
        }
        let airmass = relative_airmass(sun.apparent_zenith_deg) * pressure_pa / AIRMASS_PRESSURE_PA;
        let outside_w_m2 = sun.extraterrestrial_normal_w_m2;
        // Both limits are written for a plane that faces the sun, so nothing is divided by cos z.
        let global_normal_w_m2 =
            self.global_scale * outside_w_m2 * libm::exp(-self.global_extinction * airmass);
        let direct_normal_w_m2 =
            (outside_w_m2 * self.direct_scale * libm::exp(-self.direct_extinction * airmass))
                .at_most(global_normal_w_m2 * self.direct_share_greatest);
        let zenith_cosine = sun.zenith_cosine();
        Irradiance {
            global_horizontal_w_m2: global_normal_w_m2 * zenith_cosine,
            direct_normal_w_m2,
            diffuse_horizontal_w_m2: (global_normal_w_m2 - direct_normal_w_m2) * zenith_cosine,
        }
    }
}

/// Cloud that covers a share of the sky.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clouds {
    fraction: f64,
    /// Global irradiance relative to that of the clear sky.
    global_ratio: f64,
}

impl Clouds {
    /// Prepares a cloud cover.
    ///
    /// G/G₀ = 1 − 0.75n^3.4.
    ///
    /// `fraction`: n, the covered share of the sky, 0…1.
    ///
    /// Source: Kasten & Czeplak 1980, Solar Energy 24:177, eq. 7.
    ///
    /// # Errors
    /// [`OutOfRange`] if the fraction is outside 0…1.
    pub fn new(fraction: f64) -> Result<Self, OutOfRange> {
        let fraction = require_within("cloud_fraction", fraction, 0.0, 1.0)?;
        let global_ratio = 1.0 - CLOUD_LOSS * libm::pow(fraction, CLOUD_EXPONENT);
        Ok(Self {
            fraction,
            global_ratio,
        })
    }

    /// Gives the irradiance under the clouds from that of the clear sky.
    ///
    /// k_d = (1 − n)k_d,clear + n max(k_d,clear, k_d,Erbs(k_t)): the diffuse share runs from the
    /// clear sky's own, which the clear-sky model knows better than any mean over weathers, to that
    /// of Erbs, which holds for the clearness of an overcast sky. The weight is the covered share
    /// of the sky, so that the result is continuous at n = 0; the maximum keeps thin cloud from
    /// ever strengthening the beam. The blend is this project's own; no source.
    #[must_use]
    pub fn apply(&self, clear: &Irradiance, sun: &SunPosition) -> Irradiance {
        let zenith_cosine = sun.zenith_cosine();
        if self.fraction == 0.0 || zenith_cosine <= 0.0 || clear.global_horizontal_w_m2 <= 0.0 {
            return *clear;
        }
        let global_w_m2 = self.global_ratio * clear.global_horizontal_w_m2;
        let clear_share = clear.diffuse_horizontal_w_m2 / clear.global_horizontal_w_m2;
        let clearness = global_w_m2 / (sun.extraterrestrial_normal_w_m2 * zenith_cosine);
        let cloudy_share = diffuse_share_from_clearness(clearness).at_least(clear_share);
        let share = clear_share + self.fraction * (cloudy_share - clear_share);
        Irradiance {
            global_horizontal_w_m2: global_w_m2,
            direct_normal_w_m2: global_w_m2 * (1.0 - share) / zenith_cosine,
            diffuse_horizontal_w_m2: global_w_m2 * share,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sun(zenith_deg: f64) -> SunPosition {
        SunPosition::from_angles(zenith_deg, 180.0, 1_320.0)
    }

    /// By hand: sea level, TL 3, sun overhead, m 0.99971: 0.868·1320·exp(−0.0387·0.99971·3) =
    /// 1020.2.
    #[test]
    fn overhead_sun_by_hand() {
        let clear = ClearSky::new(3.0, 0.0).unwrap().at(&sun(0.0), 101_325.0);
        assert!(
            (clear.global_horizontal_w_m2 - 1_020.2).abs() < 0.1,
            "{clear:?}"
        );
    }

    /// Kasten & Young 1989, table II (from memory): 1, 1.994, 5.586 and 38 at 0, 60, 80 and 90°.
    #[test]
    fn airmass_of_the_table() {
        for (zenith_deg, airmass) in [(0.0, 1.0), (60.0, 1.994), (80.0, 5.58), (90.0, 37.92)] {
            assert!((relative_airmass(zenith_deg) / airmass - 1.0).abs() < 2e-3);
        }
        assert_eq!(relative_airmass(120.0), relative_airmass(90.0));
    }

    /// The pieces of Erbs meet to the digits that are printed.
    #[test]
    fn diffuse_share_has_no_steps() {
        for knot in [0.22, 0.80] {
            let step =
                diffuse_share_from_clearness(knot + 1e-9) - diffuse_share_from_clearness(knot);
            assert!(step.abs() < 0.001, "{step} at {knot}");
        }
    }

    /// More cloud never gives more global or direct irradiance, the parts always add up, and no
    /// cloud changes nothing.
    #[test]
    fn clouds_only_take_away() {
        let sky = ClearSky::new(3.5, 300.0).unwrap();
        for zenith_deg in [0.0, 30.0, 60.0, 80.0, 89.0, 89.999] {
            let sun = sun(zenith_deg);
            let clear = sky.at(&sun, 97_000.0);
            let mut last = clear;
            for percent in 0..=100 {
                let clouds = Clouds::new(f64::from(percent) / 100.0).unwrap();
                let cloudy = clouds.apply(&clear, &sun);
                assert!(cloudy.global_horizontal_w_m2 <= last.global_horizontal_w_m2 + 1e-9);
                assert!(cloudy.direct_normal_w_m2 <= last.direct_normal_w_m2 + 1e-9);
                let sum = cloudy.direct_normal_w_m2 * sun.zenith_cosine()
                    + cloudy.diffuse_horizontal_w_m2;
                assert!((sum - cloudy.global_horizontal_w_m2).abs() < 1e-9);
                let jump = last.direct_normal_w_m2 - cloudy.direct_normal_w_m2;
                assert!(jump < 40.0, "{jump} at {percent} %");
                last = cloudy;
            }
            assert_eq!(Clouds::new(0.0).unwrap().apply(&clear, &sun), clear);
            assert!(last.direct_normal_w_m2 < 0.1 * clear.direct_normal_w_m2);
        }
    }

    #[test]
    fn no_sun_below_the_horizon() {
        let sky = ClearSky::new(3.5, 300.0).unwrap();
        assert_eq!(sky.at(&sun(90.0001), 97_000.0), Irradiance::default());
    }

    #[test]
    fn refuses_what_is_out_of_range() {
        assert!(ClearSky::new(1.9, 0.0).is_err());
        assert!(ClearSky::new(3.0, f64::NAN).is_err());
        assert!(Clouds::new(1.01).is_err());
    }
}
