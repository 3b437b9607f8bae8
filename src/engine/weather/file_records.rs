//! The records of a weather file made complete.
//!
//! **What stands in for missing values** is counted for each quantity ([`super::FileWeather::filled`]):
//! - dry bulb, pressure, wind speed: linear between the neighbours; pressure missing throughout:
//!   standard atmosphere;
//! - humidity: dew point, else relative humidity, else linear between the neighbours' dew points;
//! - longwave: Berdahl & Martin by dew point, hour and pressure with the opaque, else the total
//!   cover; where neither is known, half;
//! - direct or diffuse irradiance: from the global by Erbs et al. 1982, else those of the nearest
//!   earlier day at the same hour, else of the nearest later;
//! - wind direction: stays unknown.
//!
//! A dry bulb, humidity, wind speed or sun that is missing throughout is an error: there is nothing
//! to go by.

use super::epw::{Epw, EpwError, EpwRecord};
use super::{clear_sky_emissivity_corrected, cloud_factor, sky_longwave_w_m2};
use crate::air::{
    dew_point_c_from_humidity_ratio, humidity_ratio_from_dew_point,
    humidity_ratio_from_relative_humidity, standard_atmosphere_pressure_pa,
};
use crate::quantity::{Bounded, SECONDS_PER_HOUR};
use crate::solar::{Place, SunPath, diffuse_share_from_clearness};

/// Cover by which the longwave is estimated where a file does not state it (the EnergyPlus default,
/// from memory).
const CLOUD_FRACTION_UNKNOWN: f64 = 0.5;

/// Least cosine of the zenith by which a direct irradiance is found from a horizontal one: 86°,
/// below which the mean of an hour says nothing of the beam.
const LEAST_ZENITH_COSINE: f64 = 0.065;

/// How many records had a quantity filled in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Filled {
    /// Quantity.
    pub quantity: &'static str,
    /// Records in which it was missing.
    pub records: usize,
}

/// Values at a stamp.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Stamp {
    pub dry_bulb_c: f64,
    pub humidity_ratio: f64,
    pub pressure_pa: f64,
    pub wind_speed_m_s: f64,
    pub wind_from_deg: Option<f64>,
    pub sky_longwave_w_m2: f64,
}

/// Mean irradiances of an interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Sunshine {
    pub direct_normal_w_m2: f64,
    pub diffuse_horizontal_w_m2: f64,
}

/// Linear interpolation.
pub(super) fn mix(one: f64, other: f64, along: f64) -> f64 {
    one + along * (other - one)
}

/// Time from one record to the next, s.
pub(super) fn spacing_s(epw: &Epw) -> f64 {
    SECONDS_PER_HOUR / epw.records_per_hour as f64
}

/// Where the records were made.
pub(super) fn place(epw: &Epw) -> Place {
    Place {
        latitude_deg: epw.location.latitude_deg,
        longitude_deg: epw.location.longitude_deg,
        altitude_m: epw.location.altitude_m,
        utc_offset_h: epw.location.utc_offset_h,
    }
}

/// Counts the records in which a quantity is missing.
fn note_missing(
    filled: &mut Vec<Filled>,
    quantity: &'static str,
    epw: &Epw,
    is_missing: impl Fn(&EpwRecord) -> bool,
) {
    let records = epw
        .records
        .iter()
        .filter(|record| is_missing(record))
        .count();
    if records > 0 {
        filled.push(Filled { quantity, records });
    }
}

/// The values of a quantity with the gaps bridged linearly, and held at the ends; none if nothing
/// is known.
fn bridged(values: &[Option<f64>]) -> Option<Vec<f64>> {
    let known: Vec<(usize, f64)> = (0..)
        .zip(values)
        .filter_map(|(index, value)| value.map(|value| (index, value)))
        .collect();
    let (&(first, first_value), &(last, last_value)) = (known.first()?, known.last()?);
    let mut bridged = vec![first_value; first];
    for pair in known.windows(2) {
        let ((from, from_value), (to, to_value)) = (pair[0], pair[1]);
        let length = (to - from) as f64;
        bridged.extend((0..to - from).map(|step| mix(from_value, to_value, step as f64 / length)));
    }
    bridged.extend(vec![last_value; values.len() - last]);
    Some(bridged)
}

/// Column of a file with its gaps bridged.
fn column(
    epw: &Epw,
    filled: &mut Vec<Filled>,
    quantity: &'static str,
    value: fn(&EpwRecord) -> Option<f64>,
) -> Result<Vec<f64>, EpwError> {
    note_missing(filled, quantity, epw, |record| value(record).is_none());
    let values: Vec<_> = epw.records.iter().map(value).collect();
    bridged(&values).ok_or(EpwError::NothingKnown { field: quantity })
}

/// The values at the stamps.
pub(super) fn stamps(epw: &Epw, filled: &mut Vec<Filled>) -> Result<Vec<Stamp>, EpwError> {
    let dry_bulbs_c = column(epw, filled, "dry bulb", |record| record.dry_bulb_c)?;
    let winds_m_s = column(epw, filled, "wind speed", |record| record.wind_speed_m_s)?;
    let standard_pa = standard_atmosphere_pressure_pa(epw.location.altitude_m);
    let pressures_pa = column(epw, filled, "pressure", |record| record.pressure_pa)
        .unwrap_or_else(|_| vec![standard_pa; epw.records.len()]);
    let dew_points_c: Vec<_> = (0..epw.records.len())
        .map(|index| dew_point_c(&epw.records[index], dry_bulbs_c[index], pressures_pa[index]))
        .collect();
    note_missing(filled, "humidity", epw, |record| {
        record.dew_point_c.is_none() && record.relative_humidity.is_none()
    });
    let dew_points_c =
        bridged(&dew_points_c).ok_or(EpwError::NothingKnown { field: "humidity" })?;
    note_missing(filled, "wind direction", epw, |record| {
        record.wind_from_deg.is_none()
    });
    note_missing(filled, "sky longwave", epw, |record| {
        record.sky_longwave_w_m2.is_none()
    });
    let stamp = |index: usize| {
        let record = &epw.records[index];
        let dry_bulb_c = dry_bulbs_c[index];
        let pressure_pa = pressures_pa[index];
        let dew_point_c = dew_points_c[index].at_most(dry_bulb_c);
        let hour_h = (index + 1) as f64 / epw.records_per_hour as f64;
        Stamp {
            dry_bulb_c,
            humidity_ratio: humidity_ratio_from_dew_point(dew_point_c, pressure_pa),
            pressure_pa,
            wind_speed_m_s: winds_m_s[index],
            wind_from_deg: record.wind_from_deg,
            sky_longwave_w_m2: record.sky_longwave_w_m2.unwrap_or_else(|| {
                let cover = record.opaque_cloud_fraction.or(record.total_cloud_fraction);
                let emissivity = clear_sky_emissivity_corrected(dew_point_c, hour_h, pressure_pa);
                let factor = cloud_factor(cover.unwrap_or(CLOUD_FRACTION_UNKNOWN));
                sky_longwave_w_m2(emissivity, factor, dry_bulb_c)
            }),
        }
    };
    Ok((0..epw.records.len()).map(stamp).collect())
}

/// Dew point of a record, if it states any humidity, °C.
fn dew_point_c(record: &EpwRecord, dry_bulb_c: f64, pressure_pa: f64) -> Option<f64> {
    record.dew_point_c.or_else(|| {
        let relative_humidity = record.relative_humidity?;
        let humidity_ratio =
            humidity_ratio_from_relative_humidity(dry_bulb_c, relative_humidity, pressure_pa);
        Some(dew_point_c_from_humidity_ratio(humidity_ratio, pressure_pa))
    })
}

/// The mean irradiances of the intervals.
pub(super) fn sunshine(epw: &Epw, filled: &mut Vec<Filled>) -> Result<Vec<Sunshine>, EpwError> {
    let is_incomplete = |record: &EpwRecord| {
        record.direct_normal_w_m2.is_none() || record.diffuse_horizontal_w_m2.is_none()
    };
    note_missing(filled, "direct or diffuse irradiance", epw, is_incomplete);
    let nothing = EpwError::NothingKnown {
        field: "irradiance",
    };
    let days = epw.records.len() / (24 * epw.records_per_hour);
    let sun = SunPath::new(&place(epw), epw.first_day, days as u32).map_err(|_| nothing.clone())?;
    let spacing_s = spacing_s(epw);
    let stated: Vec<Option<Sunshine>> = (0..)
        .zip(&epw.records)
        .map(|(index, record)| stated_sunshine(record, &sun, (f64::from(index) + 0.5) * spacing_s))
        .collect();
    let in_day = 24 * epw.records_per_hour;
    (0..stated.len())
        .map(|index| {
            let earlier = (0..=index).rev().step_by(in_day);
            let later = (index..stated.len()).step_by(in_day);
            earlier.chain(later).find_map(|near| stated[near])
        })
        .collect::<Option<_>>()
        .ok_or(nothing)
}

/// The irradiances that a record states, or that follow from its global irradiance; `middle_s` is
/// the middle of its interval.
fn stated_sunshine(record: &EpwRecord, sun: &SunPath, middle_s: f64) -> Option<Sunshine> {
    if let (Some(direct_normal_w_m2), Some(diffuse_horizontal_w_m2)) =
        (record.direct_normal_w_m2, record.diffuse_horizontal_w_m2)
    {
        return Some(Sunshine {
            direct_normal_w_m2,
            diffuse_horizontal_w_m2,
        });
    }
    let global_w_m2 = record.global_horizontal_w_m2?;
    let sun = sun.at(middle_s);
    let zenith_cosine = sun.zenith_cosine().at_least(LEAST_ZENITH_COSINE);
    let clearness = global_w_m2 / (sun.extraterrestrial_normal_w_m2 * zenith_cosine);
    let diffuse_w_m2 = global_w_m2 * diffuse_share_from_clearness(clearness);
    Some(Sunshine {
        direct_normal_w_m2: (global_w_m2 - diffuse_w_m2) / zenith_cosine,
        diffuse_horizontal_w_m2: diffuse_w_m2,
    })
}
