//! Position of the sun over a run.
//!
//! The NREL solar position algorithm (SPA) is exact to 0.0003° and far too slow to be asked every
//! minute. What it computes that is slow, the sun's declination and the equation of time as seen
//! from the Earth's centre, changes by a smooth fraction of a degree a day. So it is asked once a
//! day, and in between the sine of the declination and the hour angle less 15° an hour are
//! interpolated by cubic polynomials through four days; parallax, horizon coordinates and
//! refraction are then computed exactly as the algorithm prescribes. The interpolation adds less
//! than 1e-5°: its error term, (3/128)h⁴f⁗, is 1e-7° for the yearly motion and less for the
//! fortnightly nutation.
//!
//! Valid for 1950…2100. Universal time is taken as UT1 (they differ by less than 0.9 s, 0.004°).
//!
//! Source: Reda & Andreas 2004, Solar Energy 76:577 (NREL/TP-560-34302, 2008), cited by equation
//! number of the report.

use super::ephemeris::{DAYS_BEFORE, Midnight, cubic_weights, midnights};
use super::{Date, SolarError};
use crate::air::standard_atmosphere_pressure_pa;
use crate::quantity::SECONDS_PER_DAY;
use crate::validity::{OutOfRange, require_within};

/// Ratio of the polar to the equatorial radius of the Earth (SPA eq. 34).
pub(super) const EARTH_AXIS_RATIO: f64 = 0.996_647_19;

/// Equatorial radius of the Earth, m (SPA eq. 35).
pub(super) const EARTH_RADIUS_M: f64 = 6_378_140.0;

/// Radius of the sun and refraction at the horizon, degrees: below minus this there is no
/// refraction (SPA sec. 3.14).
const REFRACTION_ENDS_BELOW_DEG: f64 = 0.266_67 + 0.566_7;

/// Air temperature by which refraction is computed unless another is given, °C: a summer day. Ten
/// kelvin more or less change the altitude on the horizon by 0.02°.
const REFRACTION_TEMPERATURE_C: f64 = 25.0;

/// Longest run, days: two years.
pub const DAYS_GREATEST: u32 = 732;

/// Where the vehicle stands and by which clock its days run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Latitude, −90…90°, north positive.
    pub latitude_deg: f64,
    /// Longitude, −180…180°, east positive.
    pub longitude_deg: f64,
    /// Height above the sea, −500…6000 m.
    pub altitude_m: f64,
    /// Standard time less universal time, −14…14 h, without daylight saving.
    pub utc_offset_h: f64,
}

/// The sun at an instant, as seen from the place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunPosition {
    /// Angle between straight up and the sun, without refraction, degrees.
    pub zenith_deg: f64,
    /// The same angle as the eye sees it, with refraction, degrees.
    pub apparent_zenith_deg: f64,
    /// Compass direction of the sun, 0…360°, clockwise from north.
    pub azimuth_deg: f64,
    /// Unit vector of east, north and up towards the apparent sun.
    pub direction: [f64; 3],
    /// Irradiance of the sun outside the atmosphere on a plane facing it, W/m².
    pub extraterrestrial_normal_w_m2: f64,
}

impl SunPosition {
    /// Makes a position from angles that already hold the refraction.
    ///
    /// `apparent_zenith_deg`: 0…180°; `azimuth_deg`: any; `extraterrestrial_normal_w_m2` in W/m².
    #[must_use]
    pub fn from_angles(
        apparent_zenith_deg: f64,
        azimuth_deg: f64,
        extraterrestrial_normal_w_m2: f64,
    ) -> Self {
        Self {
            zenith_deg: apparent_zenith_deg,
            apparent_zenith_deg,
            azimuth_deg,
            direction: direction(apparent_zenith_deg, azimuth_deg),
            extraterrestrial_normal_w_m2,
        }
    }

    /// Cosine of the apparent zenith; positive while the sun's centre is above the horizon.
    #[must_use]
    pub fn zenith_cosine(&self) -> f64 {
        self.direction[2]
    }

    /// Whether the sun's centre is above the horizon, with refraction.
    #[must_use]
    pub fn is_up(&self) -> bool {
        self.zenith_cosine() > 0.0
    }
}

/// Unit vector of east, north and up towards a zenith and azimuth in degrees.
pub(crate) fn direction(zenith_deg: f64, azimuth_deg: f64) -> [f64; 3] {
    let (zenith_sine, zenith_cosine) = libm::sincos(zenith_deg.to_radians());
    let (azimuth_sine, azimuth_cosine) = libm::sincos(azimuth_deg.to_radians());
    [
        zenith_sine * azimuth_sine,
        zenith_sine * azimuth_cosine,
        zenith_cosine,
    ]
}

/// The sun's path over a number of days at a place.
#[derive(Clone, Debug, PartialEq)]
pub struct SunPath {
    midnights: Vec<Midnight>,
    latitude_sine: f64,
    latitude_cosine: f64,
    /// Distance of the place from the Earth's axis, in equatorial radii (SPA eq. 35).
    axis_distance: f64,
    /// Distance of the place from the equator's plane, in equatorial radii (SPA eq. 36).
    equator_distance: f64,
    /// Refraction relative to that at 1010 hPa and 10 °C (SPA eq. 42).
    refraction_ratio: f64,
    first_day: Date,
    days: u32,
}

impl SunPath {
    /// Computes the path from the midnight that begins `first_day`, standard time, for `days` days.
    ///
    /// Refraction is that of the standard atmosphere at the altitude and 25 °C; see
    /// [`SunPath::with_refraction`]. Costs about 20 µs for each day and five more.
    ///
    /// # Errors
    /// [`SolarError::OutOfRange`] if a coordinate or the number of days (1…[`DAYS_GREATEST`]) is
    /// out of its range.
    pub fn new(place: &Place, first_day: Date, days: u32) -> Result<Self, SolarError> {
        let latitude_deg = require_within("latitude_deg", place.latitude_deg, -90.0, 90.0)?;
        let longitude_deg = require_within("longitude_deg", place.longitude_deg, -180.0, 180.0)?;
        let altitude_m = require_within("altitude_m", place.altitude_m, -500.0, 6_000.0)?;
        let utc_offset_h = require_within("utc_offset_h", place.utc_offset_h, -14.0, 14.0)?;
        require_within("days", f64::from(days), 1.0, f64::from(DAYS_GREATEST))?;

        let (latitude_sine, latitude_cosine) = libm::sincos(latitude_deg.to_radians());
        // Reduced latitude by its sine and cosine, so that the poles need no tangent (SPA eq. 34).
        let polar = EARTH_AXIS_RATIO * latitude_sine;
        let length = (polar * polar + latitude_cosine * latitude_cosine).sqrt();
        let height = altitude_m / EARTH_RADIUS_M;
        let path = Self {
            midnights: midnights(longitude_deg, utc_offset_h, first_day, days)?,
            latitude_sine,
            latitude_cosine,
            axis_distance: latitude_cosine / length + height * latitude_cosine,
            equator_distance: EARTH_AXIS_RATIO * polar / length + height * latitude_sine,
            refraction_ratio: 0.0,
            first_day,
            days,
        };
        let pressure_pa = standard_atmosphere_pressure_pa(altitude_m);
        Ok(path.with_refraction(pressure_pa, REFRACTION_TEMPERATURE_C)?)
    }

    /// The same path with the refraction of other air.
    ///
    /// `pressure_pa`: 40 000…120 000 Pa; `temperature_c`: −60…60 °C.
    ///
    /// Source: SPA eq. 42.
    ///
    /// # Errors
    /// [`OutOfRange`] if either is out of its range.
    pub fn with_refraction(self, pressure_pa: f64, temperature_c: f64) -> Result<Self, OutOfRange> {
        let pressure_pa = require_within("pressure_pa", pressure_pa, 40_000.0, 120_000.0)?;
        let temperature_c = require_within("temperature_c", temperature_c, -60.0, 60.0)?;
        let refraction_ratio = pressure_pa / 101_000.0 * 283.0 / (273.0 + temperature_c);
        Ok(Self {
            refraction_ratio,
            ..self
        })
    }

    /// The day on which the time base begins.
    #[must_use]
    pub fn first_day(&self) -> Date {
        self.first_day
    }

    /// The number of days that were asked for.
    #[must_use]
    pub fn days(&self) -> u32 {
        self.days
    }

    /// The sun at an instant.
    ///
    /// `time_s`: seconds of local standard time since the midnight that begins the first day, from
    /// one day before it to one day after the last. Beyond, the polynomials at the ends are
    /// continued and lose accuracy.
    ///
    /// Source: SPA eq. 32–47, in vectors: the parallax shifts the place off the Earth's centre, and
    /// the horizon is a rotation by the latitude.
    #[must_use]
    pub fn at(&self, time_s: f64) -> SunPosition {
        let day = time_s / SECONDS_PER_DAY + f64::from(DAYS_BEFORE);
        let last_start = self.midnights.len() - 3;
        // A negative day saturates at 0, so the index is in 1…last_start whatever the time.
        let index = (day.floor() as usize).clamp(1, last_start);
        let fraction = day - index as f64;
        let around = &self.midnights[index - 1..index + 3];
        let weights = cubic_weights(fraction);
        let weighted = |value: fn(&Midnight) -> f64| -> f64 {
            around
                .iter()
                .zip(weights)
                .map(|(midnight, weight)| weight * value(midnight))
                .sum()
        };
        let declination_sine = weighted(|midnight| midnight.declination_sine);
        let hour_angle_deg = weighted(|midnight| midnight.hour_angle_deg) + 360.0 * fraction;
        let today = &around[1];
        let horizon = self.horizon_vector(declination_sine, hour_angle_deg, today.parallax_sine);
        self.refracted(horizon, today.extraterrestrial_normal_w_m2)
    }

    /// Unit vector of east, north and up towards the true sun.
    fn horizon_vector(
        &self,
        declination_sine: f64,
        hour_angle_deg: f64,
        parallax_sine: f64,
    ) -> [f64; 3] {
        let declination_cosine = (1.0 - declination_sine * declination_sine).sqrt();
        let (hour_sine, hour_cosine) = libm::sincos(hour_angle_deg.to_radians());
        let meridian = declination_cosine * hour_cosine - self.axis_distance * parallax_sine;
        let west = declination_cosine * hour_sine;
        let axis = declination_sine - self.equator_distance * parallax_sine;
        let length = (meridian * meridian + west * west + axis * axis).sqrt();
        let north = self.latitude_cosine * axis - self.latitude_sine * meridian;
        let up = self.latitude_sine * axis + self.latitude_cosine * meridian;
        [-west / length, north / length, up / length]
    }

    /// The position with its refraction, from the unit vector towards the true sun.
    fn refracted(&self, true_sun: [f64; 3], extraterrestrial_normal_w_m2: f64) -> SunPosition {
        let [east, north, up] = true_sun;
        let level = (east * east + north * north).sqrt();
        let zenith_deg = libm::atan2(level, up).to_degrees();
        let azimuth_deg = libm::atan2(east, north).to_degrees();
        let lift_deg = self.refraction_deg(90.0 - zenith_deg);
        let (lift_sine, lift_cosine) = libm::sincos(lift_deg.to_radians());
        let apparent_up = up * lift_cosine + level * lift_sine;
        let apparent_level = level * lift_cosine - up * lift_sine;
        let stretch = if level > 0.0 {
            apparent_level / level
        } else {
            0.0
        };
        SunPosition {
            zenith_deg,
            apparent_zenith_deg: zenith_deg - lift_deg,
            azimuth_deg: if azimuth_deg < 0.0 {
                azimuth_deg + 360.0
            } else {
                azimuth_deg
            },
            direction: [east * stretch, north * stretch, apparent_up],
            extraterrestrial_normal_w_m2,
        }
    }

    /// Lift of the sun by refraction at a true elevation, degrees (SPA eq. 42).
    fn refraction_deg(&self, elevation_deg: f64) -> f64 {
        if elevation_deg < -REFRACTION_ENDS_BELOW_DEG {
            return 0.0;
        }
        let angle_deg = elevation_deg + 10.3 / (elevation_deg + 5.11);
        self.refraction_ratio * 1.02 / (60.0 * libm::tan(angle_deg.to_radians()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn place() -> Place {
        Place {
            latitude_deg: 40.0,
            longitude_deg: -105.0,
            altitude_m: 1_800.0,
            utc_offset_h: -7.0,
        }
    }

    /// Two paths that begin on different days agree at the same instant, so nothing depends on the
    /// phase of the interpolation, and the year's end is no seam.
    #[test]
    fn paths_agree_where_they_overlap() {
        let early = SunPath::new(&place(), Date::new(2026, 12, 28).unwrap(), 8).unwrap();
        let late = SunPath::new(&place(), Date::new(2027, 1, 1).unwrap(), 1).unwrap();
        for minute in -1_440..2_880 {
            let time_s = f64::from(minute) * 60.0;
            let (one, other) = (early.at(time_s + 4.0 * SECONDS_PER_DAY), late.at(time_s));
            assert!((one.zenith_deg - other.zenith_deg).abs() < 1e-9);
            assert!((one.azimuth_deg - other.azimuth_deg).abs() < 1e-9);
        }
    }

    /// The direction is the unit vector of the apparent angles.
    #[test]
    fn direction_matches_the_angles() {
        let path = SunPath::new(&place(), Date::new(2026, 6, 21).unwrap(), 1).unwrap();
        for minute in 0..1_440 {
            let sun = path.at(f64::from(minute) * 60.0);
            let expected = direction(sun.apparent_zenith_deg, sun.azimuth_deg);
            for (value, expected) in sun.direction.iter().zip(expected) {
                assert!((value - expected).abs() < 1e-12);
            }
        }
    }

    /// Every latitude, the poles and the tropics at noon included, and every time gives numbers.
    #[test]
    fn stays_finite_everywhere() {
        for latitude_deg in [-90.0, -66.6, -23.4, 0.0, 23.43, 45.0, 90.0] {
            let place = Place {
                latitude_deg,
                ..place()
            };
            let path = SunPath::new(&place, Date::new(2100, 12, 31).unwrap(), 1).unwrap();
            for step in -200..400 {
                let sun = path.at(f64::from(step) * 900.0);
                assert!((0.0..=180.0).contains(&sun.zenith_deg));
                assert!((0.0..360.0).contains(&sun.azimuth_deg));
                assert!(sun.direction.iter().all(|part| part.is_finite()));
            }
        }
    }

    #[test]
    fn refuses_what_is_out_of_range() {
        let day = Date::new(2026, 6, 21).unwrap();
        let refused = |place: Place, days| {
            matches!(
                SunPath::new(&place, day, days),
                Err(SolarError::OutOfRange(_))
            )
        };
        assert!(refused(
            Place {
                latitude_deg: 91.0,
                ..place()
            },
            1
        ));
        assert!(refused(
            Place {
                longitude_deg: f64::NAN,
                ..place()
            },
            1
        ));
        assert!(refused(
            Place {
                utc_offset_h: 15.0,
                ..place()
            },
            1
        ));
        assert!(refused(place(), 0));
        assert!(refused(place(), DAYS_GREATEST + 1));
        assert!(!refused(place(), DAYS_GREATEST));
    }
}
