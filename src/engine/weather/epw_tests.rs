//! Checks of the EPW reader on texts put together here.
//!
//! Codes and ranges: EnergyPlus Auxiliary Programs, EPW data dictionary.

use super::{Epw, EpwError, FileWeather};
use crate::solar::Date;

/// Header of a file of one data period.
pub(super) fn header(records_per_hour: usize, start: &str, end: &str) -> String {
    format!(
        "LOCATION,Somewhere,ST,USA,TMY3,000000,40.0,-105.0,-7.0,1600.0\n\
         DESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\n\
         HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\nCOMMENTS 1,none\nCOMMENTS 2,none\n\
         DATA PERIODS,1,{records_per_hour},Data,Sunday,{start},{end}\n"
    )
}

/// The values of a record from the dry bulb to the opaque cover.
pub(super) const VALUES: &str = "20.0,10.0,53,84000,0,0,330,300,400,100,0,0,0,0,180,3.0,5,2";

/// Whole days of records with the same values.
pub(super) fn days(dates: &[(i32, u8, u8)], records_per_hour: usize, values: &str) -> String {
    let mut text = String::new();
    for (year, month, day) in dates {
        for hour in 1..=24 {
            for _ in 0..records_per_hour {
                text += &format!("{year},{month},{day},{hour},60,flags,{values},16.1\n");
            }
        }
    }
    text
}

/// A file of one July day.
pub(super) fn one_day(values: &str) -> String {
    header(1, "7/ 6", "7/ 6") + &days(&[(2004, 7, 6)], 1, values)
}

/// The same text with one field of one line replaced; lines count from 1 and columns from 0.
pub(super) fn with_field(text: &str, line: usize, column: usize, value: &str) -> String {
    let lines = (1..).zip(text.lines()).map(|(number, content)| {
        let mut fields: Vec<_> = content.split(',').collect();
        if number == line {
            fields[column] = value;
        }
        fields.join(",")
    });
    lines.collect::<Vec<_>>().join("\n")
}

#[test]
fn reads_every_field() {
    let epw = Epw::parse(&one_day(VALUES)).unwrap();
    assert_eq!(epw.location.name, "Somewhere");
    assert_eq!(
        (epw.location.latitude_deg, epw.location.longitude_deg),
        (40.0, -105.0)
    );
    assert_eq!(
        (epw.location.utc_offset_h, epw.location.altitude_m),
        (-7.0, 1_600.0)
    );
    assert_eq!(epw.first_day, Date::new(2004, 7, 6).unwrap());
    assert_eq!(epw.records.len(), 24);
    let record = epw.records[23];
    assert_eq!(record.dry_bulb_c, Some(20.0));
    assert_eq!(record.dew_point_c, Some(10.0));
    assert_eq!(record.relative_humidity, Some(0.53));
    assert_eq!(record.pressure_pa, Some(84_000.0));
    assert_eq!(record.sky_longwave_w_m2, Some(330.0));
    assert_eq!(record.global_horizontal_w_m2, Some(300.0));
    assert_eq!(record.direct_normal_w_m2, Some(400.0));
    assert_eq!(record.diffuse_horizontal_w_m2, Some(100.0));
    assert_eq!(record.wind_from_deg, Some(180.0));
    assert_eq!(record.wind_speed_m_s, Some(3.0));
    assert_eq!(record.total_cloud_fraction, Some(0.5));
    assert_eq!(record.opaque_cloud_fraction, Some(0.2));
}

#[test]
fn line_ends_and_byte_order_mark_do_not_matter() {
    let text = one_day(VALUES);
    let other = format!("\u{feff}{}\r\n\r\n", text.replace('\n', "\r\n"));
    assert_eq!(Epw::parse(&other), Epw::parse(&text));
}

/// Spans over the end of the year, over both kinds of February, and a year whose months come from
/// different years.
#[test]
fn reads_any_data_period() {
    let read =
        |start, end, dates: &[_]| Epw::parse(&(header(1, start, end) + &days(dates, 1, VALUES)));
    let winter = read("12/31", "1/ 1", &[(2010, 12, 31), (1999, 1, 1)]).unwrap();
    assert_eq!(winter.first_day, Date::new(2010, 12, 31).unwrap());
    let common = read("2/28", "3/ 1", &[(2004, 2, 28), (1991, 3, 1)]).unwrap();
    assert_eq!(common.first_day, Date::new(2003, 2, 28).unwrap());
    let leap = read(
        "2/28/2004",
        "3/1/2004",
        &[(2004, 2, 28), (2004, 2, 29), (2004, 3, 1)],
    )
    .unwrap();
    assert_eq!(leap.first_day, Date::new(2004, 2, 28).unwrap());
    let half_hours = header(2, "7/6", "7/6") + &days(&[(2004, 7, 6)], 2, VALUES);
    assert_eq!(Epw::parse(&half_hours).unwrap().records.len(), 48);
}

/// Each fault names its line and its field.
#[test]
fn faults_name_line_and_field() {
    let good = one_day(VALUES);
    let fault = |line, column, value: &str| {
        Epw::parse(&with_field(&good, line, column, value)).unwrap_err()
    };
    assert_eq!(
        fault(3, 0, "TYPICAL"),
        EpwError::HeaderMissing {
            line: 3,
            expected: "TYPICAL/EXTREME PERIODS"
        }
    );
    assert_eq!(
        fault(1, 6, "north"),
        EpwError::NotANumber {
            line: 1,
            field: "latitude"
        }
    );
    assert!(matches!(
        fault(1, 6, "91"),
        EpwError::OutOfRange {
            line: 1,
            field: "latitude",
            ..
        }
    ));
    assert!(matches!(
        fault(8, 1, "2"),
        EpwError::OutOfRange {
            line: 8,
            field: "number of data periods",
            ..
        }
    ));
    assert_eq!(
        fault(8, 2, "7"),
        EpwError::NotANumber {
            line: 8,
            field: "records per hour"
        }
    );
    assert_eq!(
        fault(8, 5, "2/30"),
        EpwError::NotANumber {
            line: 8,
            field: "start of the data period"
        }
    );
    assert_eq!(fault(8, 6, "7/7"), EpwError::EndsEarly { records: 24 });
    assert_eq!(
        fault(12, 3, "5"),
        EpwError::OutOfSequence {
            line: 12,
            field: "hour"
        }
    );
    assert_eq!(
        fault(12, 2, "7"),
        EpwError::OutOfSequence {
            line: 12,
            field: "date"
        }
    );
    assert_eq!(
        fault(12, 1, "July"),
        EpwError::NotANumber {
            line: 12,
            field: "month"
        }
    );
    assert_eq!(
        fault(20, 6, "hot"),
        EpwError::NotANumber {
            line: 20,
            field: "dry bulb temperature"
        }
    );
    assert_eq!(
        fault(20, 6, "NaN"),
        EpwError::NotANumber {
            line: 20,
            field: "dry bulb temperature"
        }
    );
    assert_eq!(
        fault(20, 21, "-3"),
        EpwError::OutOfRange {
            line: 20,
            field: "wind speed",
            value: -3.0,
            least: 0.0,
            greatest: 40.0
        }
    );
    let short = good.trim_end().rsplit_once(",5,2,").unwrap().0;
    assert_eq!(
        Epw::parse(short),
        Err(EpwError::FieldMissing {
            line: 32,
            field: "total sky cover"
        })
    );
    assert_eq!(
        Epw::parse(""),
        Err(EpwError::HeaderMissing {
            line: 1,
            expected: "LOCATION"
        })
    );
    assert_eq!(
        Epw::parse(&header(1, "7/6", "7/6")),
        Err(EpwError::EndsEarly { records: 0 })
    );
    let long = " ".repeat(super::EPW_TEXT_GREATEST_BYTES + 1);
    assert_eq!(
        Epw::parse(&long),
        Err(EpwError::TooLong { bytes: long.len() })
    );
}

/// A text cut off or damaged anywhere is an error or a weather, never a panic.
#[test]
fn damaged_texts_are_refused_calmly() {
    let good = one_day(VALUES);
    for end in 0..good.len() {
        if let Ok(epw) = Epw::parse(&good[..end]) {
            assert_eq!(epw.records.len(), 24);
        }
        for damage in ["-", ",", "\n", "9e9"] {
            let text = format!("{}{damage}{}", &good[..end], &good[end + 1..]);
            if let Ok(weather) = FileWeather::from_epw_text(&text) {
                assert!(weather.days() == 1);
            }
        }
    }
}

/// The codes of the data dictionary are unknown values, and so are an empty field and a sky without
/// radiation.
#[test]
fn missing_codes_are_unknown() {
    let codes = "99.9,99.9,999,999999,0,0,9999,9999,9999,9999,0,0,0,0,999,999,99,99";
    let record = Epw::parse(&one_day(codes)).unwrap().records[0];
    assert_eq!(record, super::EpwRecord::default());
    let blank = Epw::parse(&one_day(",,,,0,0,0,,,,0,0,0,0,,,,"))
        .unwrap()
        .records[0];
    assert_eq!(blank, super::EpwRecord::default());
}
