//! Which clock is likely kept at a place.

/// Degrees of longitude that the sun passes in an hour.
const DEGREES_PER_HOUR: f64 = 15.0;

/// How far the clock of a zone may be from the hour of its meridian, h: from memory, no inhabited zone of any size but the west of
/// China is further from it.
const ZONE_REACHES_H: f64 = 2.5;

/// Standard time less universal time that is likely kept at a longitude, h: that of one's own clock if it may be of the same zone,
/// else the whole hour nearest to the sun. Gives whether it is the own one.
///
/// Zones are drawn by governments; this is a guess to be checked. Common practice, no source.
///
/// * `longitude_deg` — −180…180°, east positive
/// * `own_offset_h` — standard time less universal time of one's own clock, −12…14 h
#[must_use]
pub fn likely_utc_offset_h(longitude_deg: f64, own_offset_h: f64) -> (f64, bool) {
    let by_sun_h = longitude_deg / DEGREES_PER_HOUR;
    if (by_sun_h - own_offset_h).abs() <= ZONE_REACHES_H {
        (own_offset_h, true)
    } else {
        (by_sun_h.round(), false)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Zones as of the tz database: Phoenix −7, Madrid +1, Delhi +5.5, Tokyo +9.
    #[test]
    fn ones_own_clock_counts_near_home_and_the_sun_elsewhere() {
        for (longitude_deg, offset_h) in [(-112.07, -7.0), (-3.7, 1.0), (77.2, 5.5), (139.7, 9.0)] {
            assert_eq!(
                likely_utc_offset_h(longitude_deg, offset_h),
                (offset_h, true)
            );
        }
        assert_eq!(likely_utc_offset_h(-112.07, 1.0), (-7.0, false));
        assert_eq!(likely_utc_offset_h(139.7, -7.0), (9.0, false));
    }
}
