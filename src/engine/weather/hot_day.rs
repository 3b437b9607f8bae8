//! The day that a forecast describes, and days like it.
//!
//! The dry bulb runs between low and high by the ASHRAE fractions of the daily range, interpolated
//! so that it is smooth and never passes either. The dew point is constant, but never above the dry
//! bulb. Wind and cloud are constant. The sun is that of the date under clear sky with the given
//! cloud; the sky's longwave follows Berdahl & Martin with all terms.
//!
//! Sources: ASHRAE Handbook—Fundamentals (2017), ch. 14, table of the fractions of the daily range;
//! Fritsch & Butland 1984, SIAM Journal on Scientific and Statistical Computing 5:300.

use super::{
    Outdoors, WeatherError, clear_sky_emissivity_corrected, cloud_factor, sky_longwave_w_m2,
};
use crate::air::{
    humidity_ratio_from_dew_point, saturation_humidity_ratio, standard_atmosphere_pressure_pa,
};
use crate::quantity::{Bounded, SECONDS_PER_DAY, SECONDS_PER_HOUR};
use crate::solar::{ClearSky, Clouds, Irradiance, SunPath, SunPosition};
use crate::validity::require_within;

/// How far below the high the dry bulb is, as a fraction of the daily range, at the hours 1…24 of
/// local standard time (ASHRAE Fundamentals ch. 14).
const DAILY_RANGE_FRACTIONS: [f64; 24] = [
    0.88, 0.92, 0.95, 0.98, 1.00, 0.98, 0.91, 0.74, 0.55, 0.38, 0.23, 0.13, 0.05, 0.00, 0.00, 0.06,
    0.14, 0.24, 0.39, 0.50, 0.59, 0.68, 0.75, 0.82,
];

/// Hour of the low in that table, h.
const HOUR_OF_LOW_H: f64 = 5.0;

/// Hours from the low to the middle of the high in that table, h.
const HOURS_FROM_LOW_TO_HIGH_H: f64 = 9.5;

/// What a forecast says of a hot day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HotDayInput {
    /// High of the first day, −40…60 °C.
    pub high_c: f64,
    /// Low of the first day, −50…60 °C and at most the high.
    pub low_c: f64,
    /// Dew point, −40…35 °C.
    pub dew_point_c: f64,
    /// Covered share of the sky, 0…1.
    pub cloud_fraction: f64,
    /// Wind speed 10 m above open country, 0…40 m/s.
    pub wind_speed_10m_m_s: f64,
    /// Where the wind comes from, 0…360° clockwise from north, if known.
    pub wind_from_deg: Option<f64>,
    /// Linke turbidity of the air, 2…8 (typical values: [`crate::solar::ClearSky`]).
    pub linke_turbidity: f64,
    /// Height above the sea, −500…6000 m.
    pub altitude_m: f64,
    /// By how much each day is warmer than the one before, −10…10 K.
    pub warming_per_day_k: f64,
}

/// Where the sun stands and what of it gets through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sunlight {
    /// Where the sun stands.
    pub sun: SunPosition,
    /// Shortwave irradiance of the ground.
    pub irradiance: Irradiance,
}

/// A hot day and the days around it.
#[derive(Clone, Debug, PartialEq)]
pub struct HotDay {
    input: HotDayInput,
    clear_sky: ClearSky,
    clouds: Clouds,
    cloud_factor: f64,
    pressure_pa: f64,
    /// Humidity ratio of air whose dry bulb is above the dew point.
    humidity_ratio: f64,
    /// Slope of the fraction at the hours 0…23, 1/h.
    slopes: [f64; 24],
}

impl HotDay {
    /// Prepares the day.
    ///
    /// # Errors
    /// [`WeatherError::OutOfRange`] if an input is outside the range that [`HotDayInput`] states,
    /// and [`WeatherError::LowAboveHigh`].
    pub fn new(input: HotDayInput) -> Result<Self, WeatherError> {
        require_within("high_c", input.high_c, -40.0, 60.0)?;
        require_within("low_c", input.low_c, -50.0, 60.0)?;
        require_within("dew_point_c", input.dew_point_c, -40.0, 35.0)?;
        require_within("wind_speed_10m_m_s", input.wind_speed_10m_m_s, 0.0, 40.0)?;
        require_within(
            "wind_from_deg",
            input.wind_from_deg.unwrap_or(0.0),
            0.0,
            360.0,
        )?;
        require_within("warming_per_day_k", input.warming_per_day_k, -10.0, 10.0)?;
        let clear_sky = ClearSky::new(input.linke_turbidity, input.altitude_m)?;
        let clouds = Clouds::new(input.cloud_fraction)?;
        if input.low_c > input.high_c {
            return Err(WeatherError::LowAboveHigh {
                low_c: input.low_c,
                high_c: input.high_c,
            });
        }
        let pressure_pa = standard_atmosphere_pressure_pa(input.altitude_m);
        Ok(Self {
            input,
            clear_sky,
            clouds,
            cloud_factor: cloud_factor(input.cloud_fraction),
            pressure_pa,
            humidity_ratio: humidity_ratio_from_dew_point(input.dew_point_c, pressure_pa),
            slopes: monotone_slopes(),
        })
    }

    /// The forecast that it was made of.
    #[must_use]
    pub fn input(&self) -> &HotDayInput {
        &self.input
    }

    /// The dry bulb at an instant.
    ///
    /// t = high − f(h)(high − low), with f by a periodic monotone cubic through the table's hours.
    /// When days grow warmer, the high is that of the day, and the low that of the morning before
    /// it until the high has passed, then that of the morning to come: each day still meets its own
    /// high and low exactly, and the change goes into the way between them, without a step.
    ///
    /// `time_s`: seconds of local standard time since the midnight that begins the first day; days
    /// before the first go on in the same way. Result in °C.
    ///
    /// Source: ASHRAE Fundamentals (2017) ch. 14, hourly fractions of the daily range.
    #[must_use]
    pub fn dry_bulb_c(&self, time_s: f64) -> f64 {
        let hours_since_low = time_s / SECONDS_PER_HOUR - HOUR_OF_LOW_H;
        let day = (hours_since_low / 24.0).floor();
        let falling = hours_since_low - 24.0 * day > HOURS_FROM_LOW_TO_HIGH_H;
        let high_c = self.input.high_c + day * self.input.warming_per_day_k;
        let mornings = day + f64::from(u8::from(falling));
        let low_c = self.input.low_c + mornings * self.input.warming_per_day_k;
        high_c - self.fraction(time_s) * (high_c - low_c)
    }

    /// The outdoors at an instant.
    ///
    /// `time_s` as for [`HotDay::dry_bulb_c`], within the reach of `sun`.
    #[must_use]
    pub fn at(&self, time_s: f64, sun: &SunPath) -> Outdoors {
        self.under(time_s, &self.sunlight(time_s, sun))
    }

    /// The sunlight at an instant: neither temperatures nor dew point nor wind have a part in it.
    ///
    /// `time_s` as for [`HotDay::at`].
    #[must_use]
    pub fn sunlight(&self, time_s: f64, sun: &SunPath) -> Sunlight {
        let sun = sun.at(time_s);
        let clear = self.clear_sky.at(&sun, self.pressure_pa);
        Sunlight {
            irradiance: self.clouds.apply(&clear, &sun),
            sun,
        }
    }

    /// The outdoors at an instant under its sunlight; `time_s` as for [`HotDay::at`].
    #[must_use]
    pub fn under(&self, time_s: f64, sunlight: &Sunlight) -> Outdoors {
        self.with_dry_bulb(time_s, sunlight, self.dry_bulb_c(time_s))
    }

    /// The same with another dry bulb in the place of the forecast's, `dry_bulb_c`: −60…120 °C.
    #[must_use]
    pub fn with_dry_bulb(&self, time_s: f64, sunlight: &Sunlight, dry_bulb_c: f64) -> Outdoors {
        let dew_point_c = self.input.dew_point_c.at_most(dry_bulb_c);
        let humidity_ratio = if dry_bulb_c > self.input.dew_point_c {
            self.humidity_ratio
        } else {
            saturation_humidity_ratio(dry_bulb_c, self.pressure_pa)
        };
        let hour_h = time_s / SECONDS_PER_HOUR;
        let emissivity = clear_sky_emissivity_corrected(dew_point_c, hour_h, self.pressure_pa);
        Outdoors {
            dry_bulb_c,
            humidity_ratio,
            pressure_pa: self.pressure_pa,
            wind_speed_10m_m_s: self.input.wind_speed_10m_m_s,
            wind_from_deg: self.input.wind_from_deg,
            sky_longwave_w_m2: sky_longwave_w_m2(emissivity, self.cloud_factor, dry_bulb_c),
            irradiance: sunlight.irradiance,
            sun: sunlight.sun,
        }
    }

    /// Fraction of the daily range at an instant: the cubic of Hermite between the hours.
    fn fraction(&self, time_s: f64) -> f64 {
        let days = time_s / SECONDS_PER_DAY;
        let hours = 24.0 * (days - days.floor());
        let hour = hours.floor();
        let along = hours - hour;
        // The remainder of a day may round up to 24 h, which is hour 0.
        let start = hour as usize % 24;
        let end = (start + 1) % 24;
        let rest = 1.0 - along;
        rest * rest * ((1.0 + 2.0 * along) * fraction_at_hour(start) + along * self.slopes[start])
            + along
                * along
                * ((3.0 - 2.0 * along) * fraction_at_hour(end) - rest * self.slopes[end])
    }
}

/// Fraction of the daily range at an hour 0…23.
fn fraction_at_hour(hour: usize) -> f64 {
    DAILY_RANGE_FRACTIONS[(hour + 23) % 24]
}

/// Slopes at the hours 0…23 that keep the cubic between its ends: the harmonic mean of the slopes
/// on both sides, and zero where they differ in sign (Fritsch & Butland 1984, equal steps).
fn monotone_slopes() -> [f64; 24] {
    core::array::from_fn(|hour| {
        let here = fraction_at_hour(hour);
        let before = here - fraction_at_hour((hour + 23) % 24);
        let after = fraction_at_hour((hour + 1) % 24) - here;
        if before * after > 0.0 {
            2.0 * before * after / (before + after)
        } else {
            0.0
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solar::{Date, Place};

    const INPUT: HotDayInput = HotDayInput {
        high_c: 40.0,
        low_c: 24.0,
        dew_point_c: 12.0,
        cloud_fraction: 0.2,
        wind_speed_10m_m_s: 3.0,
        wind_from_deg: None,
        linke_turbidity: 3.5,
        altitude_m: 300.0,
        warming_per_day_k: 0.0,
    };

    fn sun() -> SunPath {
        let place = Place {
            latitude_deg: 33.4,
            longitude_deg: -112.0,
            altitude_m: 300.0,
            utc_offset_h: -7.0,
        };
        SunPath::new(&place, Date::new(2026, 7, 10).unwrap(), 4).unwrap()
    }

    fn extremes(day: &HotDay, from_h: u32, to_h: u32) -> (f64, f64) {
        (from_h * 60..=to_h * 60)
            .map(|minute| day.dry_bulb_c(f64::from(minute) * 60.0))
            .fold((f64::MAX, f64::MIN), |(low, high), value| {
                (low.min(value), high.max(value))
            })
    }

    /// ASHRAE's hours come out as printed: 16 K of range, 10:00 is 0.38 of it below the high.
    #[test]
    fn meets_the_table_at_the_hours() {
        let day = HotDay::new(INPUT).unwrap();
        for (hour, fraction) in (1..=24).zip(DAILY_RANGE_FRACTIONS) {
            let dry_bulb_c = day.dry_bulb_c(f64::from(hour) * 3600.0);
            assert!(
                (dry_bulb_c - (40.0 - 16.0 * fraction)).abs() < 1e-9,
                "hour {hour}"
            );
        }
        assert!((day.dry_bulb_c(36_000.0) - 33.92).abs() < 1e-9);
    }

    #[test]
    fn stays_between_low_and_high_and_repeats() {
        let day = HotDay::new(INPUT).unwrap();
        assert_eq!(extremes(&day, 0, 72), (24.0, 40.0));
        for minute in 0..1_440 {
            let time_s = f64::from(minute) * 60.0;
            let next = day.dry_bulb_c(time_s + SECONDS_PER_DAY);
            assert!((day.dry_bulb_c(time_s) - next).abs() < 1e-9);
            assert!((day.dry_bulb_c(time_s - SECONDS_PER_DAY) - next).abs() < 1e-9);
        }
    }

    /// In a heat wave each day has its own high and low, and no minute jumps.
    #[test]
    fn warms_without_steps() {
        let day = HotDay::new(HotDayInput {
            warming_per_day_k: 2.0,
            ..INPUT
        })
        .unwrap();
        for number in 0..3 {
            let shift_k = 2.0 * f64::from(number);
            let (low_c, high_c) = extremes(&day, 24 * number, 24 * number + 24);
            assert!((low_c - (24.0 + shift_k)).abs() < 1e-9);
            assert!((high_c - (40.0 + shift_k)).abs() < 1e-9);
        }
        let mut last_c = day.dry_bulb_c(-SECONDS_PER_DAY);
        for minute in -1_439..5_760 {
            let dry_bulb_c = day.dry_bulb_c(f64::from(minute) * 60.0);
            assert!((dry_bulb_c - last_c).abs() < 0.1, "jump at minute {minute}");
            last_c = dry_bulb_c;
        }
    }

    /// A dew point above the dry bulb gives saturated air, never more.
    #[test]
    fn never_supersaturated() {
        let day = HotDay::new(HotDayInput {
            dew_point_c: 30.0,
            ..INPUT
        })
        .unwrap();
        let sun = sun();
        for step in -288..5 * 288 {
            let outdoors = day.at(f64::from(step) * 300.0, &sun);
            let full = saturation_humidity_ratio(outdoors.dry_bulb_c, outdoors.pressure_pa);
            assert!(outdoors.humidity_ratio <= full);
            assert!(outdoors.sky_longwave_w_m2 > 300.0 && outdoors.sky_longwave_w_m2 < 560.0);
            assert_eq!(
                outdoors.irradiance.global_horizontal_w_m2 > 0.0,
                outdoors.sun.is_up()
            );
        }
    }

    #[test]
    fn refuses_what_is_out_of_range() {
        let refused = |input| HotDay::new(input).is_err();
        assert_eq!(
            HotDay::new(HotDayInput {
                low_c: 41.0,
                ..INPUT
            }),
            Err(WeatherError::LowAboveHigh {
                low_c: 41.0,
                high_c: 40.0
            })
        );
        assert!(refused(HotDayInput {
            high_c: f64::NAN,
            ..INPUT
        }));
        assert!(refused(HotDayInput {
            dew_point_c: 36.0,
            ..INPUT
        }));
        assert!(refused(HotDayInput {
            cloud_fraction: -0.1,
            ..INPUT
        }));
        assert!(refused(HotDayInput {
            wind_from_deg: Some(361.0),
            ..INPUT
        }));
        assert!(refused(HotDayInput {
            linke_turbidity: 9.0,
            ..INPUT
        }));
        assert!(refused(HotDayInput {
            warming_per_day_k: 11.0,
            ..INPUT
        }));
    }
}
