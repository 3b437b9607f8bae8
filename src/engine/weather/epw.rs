//! Reader of EPW, the open hourly weather format.
//!
//! Strict on structure: eight header lines in their order, one data period, every hour of every day
//! in its place. Forgiving of values: the codes that the format lists for "missing", an empty
//! field, and a sky that radiates nothing are read as unknown (`None`); what stands in for them is
//! decided where the file is used. Any data period is read, also one that runs over the end of the
//! year, with one or more records an hour.
//!
//! Source: EnergyPlus Auxiliary Programs, chapter "Weather Converter Program", EPW data dictionary.

use core::fmt;
use core::str::FromStr;

use super::epw_calendar::{Calendar, Period};
use crate::quantity::parse_decimal;
use crate::solar::Date;

/// Longest text that is read, bytes: a year at six records an hour.
pub const EPW_TEXT_GREATEST_BYTES: usize = 12 * 1024 * 1024;

/// First words of the header lines, in their order.
const HEADERS: [&str; 8] = [
    "LOCATION",
    "DESIGN CONDITIONS",
    "TYPICAL/EXTREME PERIODS",
    "GROUND TEMPERATURES",
    "HOLIDAYS/DAYLIGHT SAVINGS",
    "COMMENTS 1",
    "COMMENTS 2",
    "DATA PERIODS",
];

/// Why an EPW text cannot be read. Lines count from 1.
#[derive(Clone, Debug, PartialEq)]
pub enum EpwError {
    /// The text is longer than [`EPW_TEXT_GREATEST_BYTES`].
    TooLong {
        /// Length of the text.
        bytes: usize,
    },
    /// A header line does not begin with its word.
    HeaderMissing {
        /// Line.
        line: usize,
        /// Word expected.
        expected: &'static str,
    },
    /// A line ends before a field.
    FieldMissing {
        /// Line.
        line: usize,
        /// Field.
        field: &'static str,
    },
    /// A field does not hold a number (or, in the header, a date).
    NotANumber {
        /// Line.
        line: usize,
        /// Field.
        field: &'static str,
    },
    /// A number is outside the range that the format allows, and is no code for "missing".
    OutOfRange {
        /// Line.
        line: usize,
        /// Field.
        field: &'static str,
        /// Value read.
        value: f64,
        /// Least value allowed.
        least: f64,
        /// Greatest value allowed.
        greatest: f64,
    },
    /// The record is not that of the hour that should follow.
    OutOfSequence {
        /// Line.
        line: usize,
        /// Field that differs.
        field: &'static str,
    },
    /// The records end before the end of the data period, or there are none.
    EndsEarly {
        /// Records read.
        records: usize,
    },
    /// A quantity is missing in every record.
    NothingKnown {
        /// Field.
        field: &'static str,
    },
    /// The file does not hold the day asked for.
    NoSuchDay {
        /// Month asked for.
        month: u8,
        /// Day of the month asked for.
        day: u8,
    },
}

impl fmt::Display for EpwError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{self:?}")
    }
}

impl core::error::Error for EpwError {}

/// Where the file's weather was recorded.
#[derive(Clone, Debug, PartialEq)]
pub struct EpwLocation {
    /// Name of the place, as written.
    pub name: String,
    /// Latitude, degrees, north positive.
    pub latitude_deg: f64,
    /// Longitude, degrees, east positive.
    pub longitude_deg: f64,
    /// Standard time less universal time, h.
    pub utc_offset_h: f64,
    /// Height above the sea, m.
    pub altitude_m: f64,
}

/// One record, as far as the engine uses it; `None` is missing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct EpwRecord {
    /// Dry bulb at the stamp, °C.
    pub dry_bulb_c: Option<f64>,
    /// Dew point at the stamp, °C.
    pub dew_point_c: Option<f64>,
    /// Relative humidity at the stamp, as a fraction.
    pub relative_humidity: Option<f64>,
    /// Pressure at the stamp, Pa.
    pub pressure_pa: Option<f64>,
    /// Longwave radiation of the sky, W/m².
    pub sky_longwave_w_m2: Option<f64>,
    /// Global horizontal irradiance, mean of the interval before the stamp, W/m².
    pub global_horizontal_w_m2: Option<f64>,
    /// Direct normal irradiance, mean of the interval before the stamp, W/m².
    pub direct_normal_w_m2: Option<f64>,
    /// Diffuse horizontal irradiance, mean of the interval before the stamp, W/m².
    pub diffuse_horizontal_w_m2: Option<f64>,
    /// Where the wind comes from at the stamp, degrees clockwise from north.
    pub wind_from_deg: Option<f64>,
    /// Wind speed at 10 m at the stamp, m/s.
    pub wind_speed_m_s: Option<f64>,
    /// Share of the sky covered by any cloud.
    pub total_cloud_fraction: Option<f64>,
    /// Share of the sky covered by cloud that hides it.
    pub opaque_cloud_fraction: Option<f64>,
}

/// A weather file as read.
#[derive(Clone, Debug, PartialEq)]
pub struct Epw {
    /// Where it was recorded.
    pub location: EpwLocation,
    /// The day of the first record, in a year whose February has as many days as the file's.
    ///
    /// Files of typical months take each month from a year of its own and leave out 29 February.
    /// The year is that of the first record, or, if that year's calendar does not fit the days in
    /// the file, the last before it that does.
    pub first_day: Date,
    /// Records in an hour.
    pub records_per_hour: usize,
    /// The records, whole days of them.
    pub records: Vec<EpwRecord>,
}

/// A numeric field of a record: its column, its name, its code for "missing" and its range.
pub(super) struct Field {
    column: usize,
    name: &'static str,
    missing_from: f64,
    least: f64,
    greatest: f64,
}

/// Shorthand for the table below.
pub(super) const fn field(
    column: usize,
    name: &'static str,
    missing_from: f64,
    least: f64,
    greatest: f64,
) -> Field {
    Field {
        column,
        name,
        missing_from,
        least,
        greatest,
    }
}

/// Columns counted from 0; codes and ranges of the EPW data dictionary. Irradiances, which it
/// leaves unbounded, may reach the solar constant and a tenth.
const DRY_BULB: Field = field(6, "dry bulb temperature", 99.9, -70.0, 70.0);
const DEW_POINT: Field = field(7, "dew point temperature", 99.9, -70.0, 70.0);
const RELATIVE_HUMIDITY: Field = field(8, "relative humidity", 999.0, 0.0, 110.0);
const PRESSURE: Field = field(
    9,
    "atmospheric station pressure",
    999_999.0,
    31_000.0,
    120_000.0,
);
const INFRARED: Field = field(12, "horizontal infrared radiation", 9_999.0, 0.0, 1_000.0);
const GLOBAL: Field = field(13, "global horizontal radiation", 9_999.0, 0.0, 1_500.0);
const DIRECT: Field = field(14, "direct normal radiation", 9_999.0, 0.0, 1_500.0);
const DIFFUSE: Field = field(15, "diffuse horizontal radiation", 9_999.0, 0.0, 1_500.0);
const WIND_DIRECTION: Field = field(20, "wind direction", 999.0, 0.0, 360.0);
const WIND_SPEED: Field = field(21, "wind speed", 999.0, 0.0, 40.0);
const TOTAL_COVER: Field = field(22, "total sky cover", 99.0, 0.0, 10.0);
const OPAQUE_COVER: Field = field(23, "opaque sky cover", 99.0, 0.0, 10.0);

impl Epw {
    /// Reads an EPW text.
    ///
    /// Lines may end in either way, and a byte-order mark is passed over. Only lengths up to
    /// [`EPW_TEXT_GREATEST_BYTES`] are looked at.
    ///
    /// Source: EnergyPlus Auxiliary Programs, EPW data dictionary.
    ///
    /// # Errors
    /// An [`EpwError`] with the line and the field of the first fault.
    pub fn parse(text: &str) -> Result<Self, EpwError> {
        if text.len() > EPW_TEXT_GREATEST_BYTES {
            return Err(EpwError::TooLong { bytes: text.len() });
        }
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let mut lines = (1..).zip(text.lines());
        let mut headers = [Line::default(); HEADERS.len()];
        for (index, expected) in HEADERS.into_iter().enumerate() {
            let (number, text) = lines.next().unwrap_or((index + 1, ""));
            if !text.trim_start().to_ascii_uppercase().starts_with(expected) {
                return Err(EpwError::HeaderMissing {
                    line: number,
                    expected,
                });
            }
            headers[index] = Line { number, text };
        }
        let location = read_location(headers[0])?;
        let period = Period::read(headers[7])?;
        let mut calendar = Calendar::new(&period);
        let mut records = Vec::new();
        for (number, text) in lines.filter(|(_, text)| !text.trim().is_empty()) {
            let line = Line { number, text };
            calendar.check(line)?;
            records.push(read_record(line)?);
        }
        let first_day = calendar.close(&period)?;
        Ok(Self {
            location,
            first_day,
            records_per_hour: period.records_per_hour,
            records,
        })
    }
}

/// A line of the text and its number.
#[derive(Clone, Copy, Default)]
pub(super) struct Line<'text> {
    pub number: usize,
    pub text: &'text str,
}

impl<'text> Line<'text> {
    pub fn text(self, column: usize, name: &'static str) -> Result<&'text str, EpwError> {
        let text = self.text.split(',').nth(column).map(str::trim);
        text.ok_or(EpwError::FieldMissing {
            line: self.number,
            field: name,
        })
    }

    fn number(self, column: usize, name: &'static str) -> Result<f64, EpwError> {
        parse_number(self.text(column, name)?, self.number, name)
    }

    pub fn integer<Integer: FromStr>(
        self,
        column: usize,
        name: &'static str,
    ) -> Result<Integer, EpwError> {
        self.text(column, name)?
            .parse()
            .map_err(|_| EpwError::NotANumber {
                line: self.number,
                field: name,
            })
    }

    pub fn number_in(self, field: &Field) -> Result<f64, EpwError> {
        let value = self.number(field.column, field.name)?;
        in_field_range(value, self.number, field)
    }
}

/// A finite number.
fn parse_number(text: &str, line: usize, field: &'static str) -> Result<f64, EpwError> {
    parse_decimal(text)
        .filter(|value| value.is_finite())
        .ok_or(EpwError::NotANumber { line, field })
}

/// A number that lies in the range of its field.
fn in_field_range(value: f64, line: usize, field: &Field) -> Result<f64, EpwError> {
    if (field.least..=field.greatest).contains(&value) {
        Ok(value)
    } else {
        Err(EpwError::OutOfRange {
            line,
            field: field.name,
            value,
            least: field.least,
            greatest: field.greatest,
        })
    }
}

fn read_location(line: Line<'_>) -> Result<EpwLocation, EpwError> {
    let number = |column, name, least, greatest| {
        line.number_in(&field(column, name, f64::INFINITY, least, greatest))
    };
    Ok(EpwLocation {
        name: line.text(1, "city")?.to_owned(),
        latitude_deg: number(6, "latitude", -90.0, 90.0)?,
        longitude_deg: number(7, "longitude", -180.0, 180.0)?,
        utc_offset_h: number(8, "time zone", -12.0, 14.0)?,
        altitude_m: number(9, "elevation", -500.0, 6_000.0)?,
    })
}

fn read_record(line: Line<'_>) -> Result<EpwRecord, EpwError> {
    let mut columns = [""; OPAQUE_COVER.column + 1];
    let mut count = 0;
    for (slot, text) in columns.iter_mut().zip(line.text.split(',')) {
        *slot = text.trim();
        count += 1;
    }
    let value = |field: &Field| -> Result<Option<f64>, EpwError> {
        if field.column >= count {
            return Err(EpwError::FieldMissing {
                line: line.number,
                field: field.name,
            });
        }
        let text = columns[field.column];
        if text.is_empty() {
            return Ok(None);
        }
        let value = parse_number(text, line.number, field.name)?;
        if value >= field.missing_from {
            return Ok(None);
        }
        in_field_range(value, line.number, field).map(Some)
    };
    let share = |field: &Field, whole: f64| Ok(value(field)?.map(|value| value / whole));
    Ok(EpwRecord {
        dry_bulb_c: value(&DRY_BULB)?,
        dew_point_c: value(&DEW_POINT)?,
        relative_humidity: share(&RELATIVE_HUMIDITY, 100.0)?,
        pressure_pa: value(&PRESSURE)?,
        sky_longwave_w_m2: value(&INFRARED)?.filter(|value| *value > 0.0),
        global_horizontal_w_m2: value(&GLOBAL)?,
        direct_normal_w_m2: value(&DIRECT)?,
        diffuse_horizontal_w_m2: value(&DIFFUSE)?,
        wind_from_deg: value(&WIND_DIRECTION)?,
        wind_speed_m_s: value(&WIND_SPEED)?,
        total_cloud_fraction: share(&TOTAL_COVER, 10.0)?,
        opaque_cloud_fraction: share(&OPAQUE_COVER, 10.0)?,
    })
}
