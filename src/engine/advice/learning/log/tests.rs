//! Logs as people have them, and what is wrong with some.

use super::*;

const UNSAID: Unsaid = Unsaid::USUAL;

fn read(text: &str) -> Log {
    read_log(text, &UNSAID).unwrap()
}

fn refused(text: &str) -> LogError {
    read_log(text, &UNSAID).unwrap_err()
}

/// Times, cabin, outdoors and currents of a log.
fn columns(log: &Log) -> Vec<(f64, f64, Option<f64>, Option<f64>)> {
    log.points
        .iter()
        .map(|point| {
            (
                point.clock_s / 3_600.0,
                point.cabin_c,
                point.outdoor_c,
                point.current_a,
            )
        })
        .collect()
}

#[test]
fn the_same_day_in_many_forms() {
    let expected = vec![
        (14.0, 31.5, Some(30.0), Some(42.0)),
        (14.5, 32.25, Some(30.5), Some(0.0)),
    ];
    for text in [
        "time,cabin °C,outdoor °C,current A\n14:00,31.5,30,42\n14:30,32.25,30.5,0\n",
        "Zeit;Innen;Außen;Strom\r\n14:00;31,5;30,0;42\r\n14:30;32,25;30,5;0\r\n",
        "14:00\t31,5\t30\t-42\n14:30\t32,25\t30,5\t0",
        "14:00 31.5 30 42\n\n# a remark\n14:30 32.25 30.5 0",
        "14:00 31,5 30,0 42\n14:30 32,25 30,5 0",
        "\u{feff}\"time\",\"cabin_temp\",\"outside\",\"amps\"\n\"2:00 pm\",\"31.5\",\"30\",\"42\"\n\"2:30 PM\",\"32.25 °C\",\"30.5\",\"0 A\"",
        "timestamp,ambient_f,cabin_f,amps\n2026-07-21T14:00:00,86,88.7,42\n2026-07-21T14:30:00,86.9,90.05,0",
        "Date,Time,In the cabin,Outside,Current\n21.07.2026,14:00,31.5,30,42\n21.07.2026,14:30,32.25,30.5,0",
        "2026-07-21 14:00 31.5 30 42\n2026-07-21 14:30 32.25 30.5 0",
    ] {
        let log = read(text);
        for (found, wanted) in columns(&log).iter().zip(&expected) {
            assert!((found.0 - wanted.0).abs() < 1e-9, "{text}: {found:?}");
            assert!((found.1 - wanted.1).abs() < 1e-9, "{text}: {found:?}");
            assert!(
                (found.2.unwrap() - wanted.2.unwrap()).abs() < 1e-9,
                "{text}"
            );
            assert_eq!(found.3, wanted.3, "{text}");
        }
        assert_eq!(log.points.len(), 2, "{text}");
        assert!(log.has_outdoor && log.has_current);
        assert_eq!(log.date.is_some(), text.contains("2026"), "{text}");
    }
}

#[test]
fn counted_times_begin_at_the_hour_that_is_told() {
    let hours =
        |text: &str| -> Vec<f64> { columns(&read(text)).iter().map(|point| point.0).collect() };
    assert_eq!(hours("0,20\n30,21\n90,22"), [6.0, 6.5, 7.5]);
    assert_eq!(hours("time (h);cabin\n0;20\n0,5;21"), [6.0, 6.5]);
    assert_eq!(
        hours("seconds since start (time_s);cabin\n0;20\n1800;21"),
        [6.0, 6.5]
    );
    let log = read_log(
        "0 20\n1.5 21",
        &Unsaid {
            hours: true,
            ..UNSAID
        },
    )
    .unwrap();
    assert_eq!(columns(&log)[1].0, 7.5);
}

#[test]
fn midnight_is_passed_by_clocks_and_by_dates() {
    let hours =
        |text: &str| -> Vec<f64> { columns(&read(text)).iter().map(|point| point.0).collect() };
    assert_eq!(
        hours("23:30 20\n0:15 19\n12:00 30\n23:00 20\n01:00 18"),
        [23.5, 24.25, 36.0, 47.0, 49.0]
    );
    // A leap day, counted by hand.
    assert_eq!(
        hours("2028-02-28T23:00 20\n2028-02-29T01:00 19\n2028-03-01T00:00 18"),
        [23.0, 25.0, 48.0]
    );
    let log = read("2026-07-21T12:00:00Z,30\n2026-07-21T12:05:00Z,31");
    assert_eq!(log.ahead_of_utc_h, Some(0.0));
    assert_eq!(
        read("2026-07-21T12:00:00-04:30,30").ahead_of_utc_h,
        Some(-4.5)
    );
}

#[test]
fn fahrenheit_is_told_by_the_header_or_by_whoever_asks() {
    let cabin = |text: &str, fahrenheit| {
        read_log(
            text,
            &Unsaid {
                fahrenheit,
                ..UNSAID
            },
        )
        .unwrap()
        .points[0]
            .cabin_c
    };
    assert!((cabin("time,cabin (°F)\n1:00,86", false) - 30.0).abs() < 1e-12);
    assert!((cabin("time,cabin (°C)\n1:00,30", true) - 30.0).abs() < 1e-12);
    assert!((cabin("1:00,86", true) - 30.0).abs() < 1e-12);
}

#[test]
fn empty_cells_are_not_measured_and_other_columns_are_named() {
    let log = read("time,cabin,humidity,outdoor\n1:00,20,50,\n1:10,,51,18\n1:20,21,52,18");
    assert_eq!((log.empty_lines, log.points.len()), (1, 2));
    assert_eq!(log.points[0].outdoor_c, None);
    assert_eq!(log.unused, ["humidity"]);
}

#[test]
fn what_is_wrong_is_told_with_its_line() {
    assert_eq!(refused(""), LogError::Empty);
    assert_eq!(refused("time,cabin\n"), LogError::Empty);
    assert_eq!(refused("cabin,outdoor\n20,21"), LogError::NoTimeColumn);
    assert_eq!(refused("time,humidity\n1:00,50"), LogError::NoCabinColumn);
    assert_eq!(
        refused("time,cabin\n1:00,20\n1:10,20,30"),
        LogError::ColumnCount {
            line: 3,
            found: 3,
            expected: 2
        }
    );
    assert_eq!(
        refused("time,cabin\n\n1:00,20\n1:10,warm"),
        LogError::NotReadable {
            line: 4,
            column: Column::Cabin,
            cell: "warm".to_owned()
        }
    );
    assert_eq!(
        refused("time,cabin,amps\n1:00,20,1e3x"),
        LogError::NotReadable {
            line: 2,
            column: Column::Current,
            cell: "1e3x".to_owned()
        }
    );
    assert_eq!(
        refused("time,cabin\n1:00,20\nnoonish,21"),
        LogError::NotReadable {
            line: 3,
            column: Column::Time,
            cell: "noonish".to_owned()
        }
    );
    assert_eq!(
        refused("1:00,20\n1:10,200"),
        LogError::OutOfRange {
            line: 2,
            column: Column::Cabin,
            cell: "200".to_owned()
        }
    );
    assert_eq!(
        refused("1:00,20\n1:10,21\n1:05,21"),
        LogError::TimeNotRising { line: 3 }
    );
    assert_eq!(
        refused("1:00,20\n1:00,21"),
        LogError::TimeNotRising { line: 2 }
    );
}

#[test]
fn size_is_looked_at_first() {
    let long = "1".repeat(LOG_GREATEST_BYTES + 1);
    assert_eq!(
        refused(&long),
        LogError::TooLong {
            bytes: LOG_GREATEST_BYTES + 1
        }
    );
    let many = "0 1\n".repeat(LOG_GREATEST_LINES + 1);
    assert_eq!(
        refused(&many),
        LogError::TooManyLines {
            lines: LOG_GREATEST_LINES + 1
        }
    );
}
