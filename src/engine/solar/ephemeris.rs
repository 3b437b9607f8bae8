//! What the solar position algorithm says of each midnight, and the polynomial in between.
//!
//! Source: Reda & Andreas 2004, as for the position of the sun.

use solar_positioning::time::JulianDate;
use solar_positioning::{Location, SolarPositions, delta_t};

use super::clear_sky::extraterrestrial_normal_w_m2;
use super::position::{EARTH_AXIS_RATIO, EARTH_RADIUS_M};
use super::{Date, SolarError};

/// Equatorial horizontal parallax of the sun at one astronomical unit, arc seconds (SPA eq. 33).
const PARALLAX_ARC_SECONDS: f64 = 8.794;

/// Days evaluated before the first day: one for the time before it, one for the polynomial's reach.
pub(super) const DAYS_BEFORE: i32 = 2;

/// Days evaluated after the last midnight, for the same reasons.
const DAYS_AFTER: i32 = 2;

/// What the algorithm says of one midnight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Midnight {
    /// Sine of the geocentric declination.
    pub declination_sine: f64,
    /// Hour angle at the place, degrees, continuous over the days.
    pub hour_angle_deg: f64,
    /// Sine of the horizontal parallax.
    pub parallax_sine: f64,
    /// Irradiance outside the atmosphere of the day that begins, W/m².
    pub extraterrestrial_normal_w_m2: f64,
}

/// Weights of the cubic polynomial through the values at −1, 0, 1 and 2 (Lagrange).
pub(super) fn cubic_weights(fraction: f64) -> [f64; 4] {
    let before = fraction + 1.0;
    let after = fraction - 1.0;
    let second = fraction - 2.0;
    [
        -fraction * after * second / 6.0,
        before * after * second / 2.0,
        -before * fraction * second / 2.0,
        before * fraction * after / 6.0,
    ]
}

/// Asks the algorithm for every midnight that the run needs.
pub(super) fn midnights(
    longitude_deg: f64,
    utc_offset_h: f64,
    first_day: Date,
    days: u32,
) -> Result<Vec<Midnight>, SolarError> {
    let mut previous_deg: Option<f64> = None;
    (-DAYS_BEFORE..=days as i32 + DAYS_AFTER)
        .map(|offset| {
            let mut midnight = midnight(first_day.plus_days(offset), longitude_deg, utc_offset_h)?;
            if let Some(previous_deg) = previous_deg {
                let turns = ((previous_deg - midnight.hour_angle_deg) / 360.0).round();
                midnight.hour_angle_deg += 360.0 * turns;
            }
            previous_deg = Some(midnight.hour_angle_deg);
            Ok(midnight)
        })
        .collect()
}

/// Asks the algorithm for the midnight that begins a date.
///
/// The hour angle is read off the azimuth of an observer at the Earth's centre whose zenith is the
/// pole: his horizon is the equator, there is no parallax, and the angle is well conditioned at
/// every hour.
fn midnight(date: Date, longitude_deg: f64, utc_offset_h: f64) -> Result<Midnight, SolarError> {
    let refused = |_| SolarError::NoSuchDate {
        year: date.year(),
        month: date.month(),
        day: date.day(),
    };
    let universal = date.julian_date_at_midnight() - utc_offset_h / 24.0;
    let delta_t_s = delta_t::estimate(date.decimal_year()).map_err(refused)?;
    let time = JulianDate::new(universal, delta_t_s).map_err(refused)?;
    let sun = SolarPositions::new()
        .for_time_from_julian(time)
        .map_err(refused)?;
    let pole = Location {
        latitude: 90.0,
        longitude: longitude_deg,
    };
    let centre_m = -EARTH_AXIS_RATIO * EARTH_RADIUS_M;
    let hour_angle_deg = sun.at(pole, centre_m, None).map_err(refused)?.azimuth() - 180.0;
    let distance_au = sun.earth_radius_vector().unwrap_or(1.0);
    let parallax_deg = PARALLAX_ARC_SECONDS / (3_600.0 * distance_au);
    Ok(Midnight {
        declination_sine: libm::sin(sun.declination().to_radians()),
        hour_angle_deg,
        parallax_sine: libm::sin(parallax_deg.to_radians()),
        extraterrestrial_normal_w_m2: extraterrestrial_normal_w_m2(date.day_of_year()),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The cubic reproduces a cubic, at and between the nodes.
    #[test]
    fn weights_reproduce_a_cubic() {
        let cubic = |x: f64| 2.0 - x + 3.0 * x * x - 0.5 * x * x * x;
        for fraction in [0.0, 0.25, 0.5, 1.0] {
            let value: f64 = cubic_weights(fraction)
                .iter()
                .zip([-1.0, 0.0, 1.0, 2.0])
                .map(|(weight, node)| weight * cubic(node))
                .sum();
            assert!((value - cubic(fraction)).abs() < 1e-12);
        }
    }
}
