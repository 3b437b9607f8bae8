//! An invented summer, so that what asks for a weather file can be tried without one.
//!
//! Nothing in it was measured. Its days follow a yearly wave, with two shorter waves that never quite repeat for spells of heat
//! and of cool; the hours of a day are those of [`HotDay`], so that sun, cloud and humidity agree with one another.

use super::{Epw, EpwError, EpwLocation, EpwRecord, FileWeather, HotDay, HotDayInput};
use crate::quantity::{Bounded, SECONDS_PER_DAY, SECONDS_PER_HOUR};
use crate::solar::{Date, Place, SunPath};
use core::f64::consts::TAU;

/// Where it is: the middle of nowhere, in the latitude of the example.
const PLACE: Place = Place {
    latitude_deg: 38.0,
    longitude_deg: -98.0,
    altitude_m: 400.0,
    utc_offset_h: -6.0,
};

/// Days from ten before 1 June until ten after 31 August, so that a summer has a day before it and one after.
const DAYS: u32 = 112;
const BEFORE_MIDSUMMER: i32 = 30;

/// Mean high of the warmest day, °C, how much cooler the ends are, K, the waves of spells, K and days, and the daily range, K.
const WARMEST_C: f64 = 33.0;
const COOLER_K: f64 = 4.0;
const SPELLS: [(f64, f64); 2] = [(4.0, 9.7), (2.5, 23.3)];
const RANGE_K: f64 = 13.0;

/// An invented summer of a hundred and twelve days: made by formula, for demonstration.
///
/// # Errors
/// None that the formula brings about; those of [`FileWeather::new`] and of its parts are passed on.
pub fn invented_summer() -> Result<FileWeather, EpwError> {
    summer_of(forecast)
}

/// Such a summer of whatever a forecast says of each day.
pub(super) fn summer_of(forecast: fn(f64) -> HotDayInput) -> Result<FileWeather, EpwError> {
    let nothing = EpwError::NothingKnown {
        field: "irradiance",
    };
    let first_day = Date::MIDSUMMER.plus_days(-BEFORE_MIDSUMMER);
    let sun = SunPath::new(&PLACE, first_day, DAYS).map_err(|_| nothing.clone())?;
    let mut records = Vec::with_capacity(DAYS as usize * 24);
    for day in 0..DAYS {
        let hours = HotDay::new(forecast(f64::from(day))).map_err(|_| nothing.clone())?;
        let next = HotDay::new(forecast(f64::from(day + 1))).map_err(|_| nothing.clone())?;
        for hour in 1..=24u32 {
            let time_s = f64::from(day) * SECONDS_PER_DAY + f64::from(hour) * SECONDS_PER_HOUR;
            // The evening leads over to the next day, so that midnight has no step.
            let onward = (f64::from(hour) - 14.0).at_least(0.0) / 10.0;
            let mix = |one: f64, other: f64| one + onward * (other - one);
            let outdoors = hours.at(time_s, &sun);
            let later = next.at(time_s, &sun);
            let light = hours
                .sunlight(time_s - 0.5 * SECONDS_PER_HOUR, &sun)
                .irradiance;
            let dry_bulb_c = mix(outdoors.dry_bulb_c, later.dry_bulb_c);
            let dew_point_c = mix(hours.input().dew_point_c, next.input().dew_point_c);
            records.push(EpwRecord {
                dry_bulb_c: Some(dry_bulb_c),
                dew_point_c: Some(dew_point_c.at_most(dry_bulb_c)),
                pressure_pa: Some(outdoors.pressure_pa),
                sky_longwave_w_m2: Some(mix(outdoors.sky_longwave_w_m2, later.sky_longwave_w_m2)),
                global_horizontal_w_m2: Some(light.global_horizontal_w_m2),
                direct_normal_w_m2: Some(light.direct_normal_w_m2),
                diffuse_horizontal_w_m2: Some(light.diffuse_horizontal_w_m2),
                wind_from_deg: Some(180.0),
                wind_speed_m_s: Some(outdoors.wind_speed_10m_m_s),
                ..EpwRecord::default()
            });
        }
    }
    FileWeather::new(&Epw {
        location: EpwLocation {
            name: String::new(),
            latitude_deg: PLACE.latitude_deg,
            longitude_deg: PLACE.longitude_deg,
            utc_offset_h: PLACE.utc_offset_h,
            altitude_m: PLACE.altitude_m,
        },
        first_day,
        records_per_hour: 1,
        records,
    })
}

/// What a forecast would say of one of its days.
pub(super) fn forecast(day: f64) -> HotDayInput {
    let middle = 0.5 * f64::from(DAYS);
    let off = (day - middle) / middle;
    let wave = |(height_k, length): (f64, f64)| height_k * libm::sin(TAU * day / length);
    let spell_k: f64 = SPELLS.into_iter().map(wave).sum();
    let high_c = WARMEST_C - COOLER_K * off * off + spell_k;
    HotDayInput {
        high_c,
        low_c: high_c - RANGE_K + 0.3 * spell_k,
        dew_point_c: 14.0 + 0.4 * spell_k,
        cloud_fraction: (0.45 - 0.07 * spell_k).clamp(0.0, 0.95),
        wind_speed_10m_m_s: 3.0,
        wind_from_deg: Some(180.0),
        linke_turbidity: 3.7,
        altitude_m: PLACE.altitude_m,
        warming_per_day_k: 0.0,
    }
}
