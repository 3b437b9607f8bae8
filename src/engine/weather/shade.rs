//! Shade of a tree, a building or an awning: a share of the sun and of the sky taken away by hours
//! of the day.
//!
//! The edges are sharp: shade is on or off. It takes from the beam what the leaves or the cloth
//! stop, and from the diffuse light the share of the sky that they hide.

use super::WeatherError;
use crate::quantity::Bounded;
use crate::schedule::HourWindow;
use crate::solar::Irradiance;
use crate::validity::require_within;

/// Shade between two hours of every day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shade {
    hours: HourWindow,
    beam_share: f64,
    sky_share: f64,
}

impl Shade {
    /// Makes a shade.
    ///
    /// `start_h`, `end_h`: 0…24 h local standard time; an end before the start runs past midnight,
    /// and an end equal to the start (0 and 24 are the same hour) means the whole day.
    /// `beam_share`, `sky_share`: what is taken away from direct and from diffuse irradiance, 0…1.
    ///
    /// # Errors
    /// [`WeatherError`] if an argument is out of its range.
    pub fn new(
        start_h: f64,
        end_h: f64,
        beam_share: f64,
        sky_share: f64,
    ) -> Result<Self, WeatherError> {
        Ok(Self {
            hours: HourWindow::new(start_h, end_h)?,
            beam_share: require_within("beam_share", beam_share, 0.0, 1.0)?,
            sky_share: require_within("sky_share", sky_share, 0.0, 1.0)?,
        })
    }

    /// Whether it shades at an instant; the start belongs to it, the end does not.
    ///
    /// `time_s`: seconds of local standard time since any midnight.
    #[must_use]
    pub fn is_on(&self, time_s: f64) -> bool {
        self.hours.contains(time_s)
    }

    /// Gives the irradiance under the shade.
    ///
    /// The beam and the diffuse part are reduced by their shares, and the global part is their sum
    /// again.
    ///
    /// `time_s`: seconds of local standard time since any midnight.
    #[must_use]
    pub fn apply(&self, irradiance: &Irradiance, time_s: f64) -> Irradiance {
        if !self.is_on(time_s) {
            return *irradiance;
        }
        let diffuse_w_m2 = irradiance.diffuse_horizontal_w_m2;
        let beam_horizontal_w_m2 = (irradiance.global_horizontal_w_m2 - diffuse_w_m2).at_least(0.0);
        let (beam_left, sky_left) = (1.0 - self.beam_share, 1.0 - self.sky_share);
        Irradiance {
            global_horizontal_w_m2: beam_horizontal_w_m2 * beam_left + diffuse_w_m2 * sky_left,
            direct_normal_w_m2: irradiance.direct_normal_w_m2 * beam_left,
            diffuse_horizontal_w_m2: diffuse_w_m2 * sky_left,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const NOON: Irradiance = Irradiance {
        global_horizontal_w_m2: 900.0,
        direct_normal_w_m2: 850.0,
        diffuse_horizontal_w_m2: 100.0,
    };

    fn hours_on(start_h: f64, end_h: f64) -> usize {
        let shade = Shade::new(start_h, end_h, 1.0, 1.0).unwrap();
        let on = |hour: i32| shade.is_on(f64::from(hour) * 3600.0);
        let hours = (0..24).filter(|&hour| on(hour)).count();
        assert_eq!((-48..-24).filter(|&hour| on(hour)).count(), hours);
        hours
    }

    #[test]
    fn hours_wrap_past_midnight() {
        assert_eq!(hours_on(15.0, 20.0), 5);
        assert_eq!(hours_on(20.0, 6.0), 10);
        assert_eq!(hours_on(15.0, 24.0), 9);
        assert_eq!(hours_on(24.0, 3.0), 3);
        assert_eq!(hours_on(7.0, 7.0), 24);
        assert_eq!(hours_on(0.0, 24.0), 24);
    }

    /// By hand: 800·0.3 + 100·0.6 = 300.
    #[test]
    fn takes_its_shares() {
        let shade = Shade::new(10.0, 14.0, 0.7, 0.4).unwrap();
        let shaded = shade.apply(&NOON, 12.0 * 3600.0);
        assert!((shaded.direct_normal_w_m2 - 255.0).abs() < 1e-9);
        assert!((shaded.diffuse_horizontal_w_m2 - 60.0).abs() < 1e-9);
        assert!((shaded.global_horizontal_w_m2 - 300.0).abs() < 1e-9);
        assert_eq!(shade.apply(&NOON, 14.0 * 3600.0), NOON);
    }

    #[test]
    fn refuses_what_is_out_of_range() {
        assert!(Shade::new(-1.0, 5.0, 0.5, 0.5).is_err());
        assert!(Shade::new(1.0, 25.0, 0.5, 0.5).is_err());
        assert!(Shade::new(1.0, 5.0, 1.5, 0.5).is_err());
        assert!(Shade::new(1.0, 5.0, 0.5, f64::NAN).is_err());
    }
}
