//! Checks of the weather that is made of a file.

use super::epw_tests::{VALUES, days, header, one_day, with_field};
use super::{EpwError, FileWeather, Filled};
use crate::air::relative_humidity_from_humidity_ratio;
use crate::solar::{Date, SunPath};

/// What is missing in single records is bridged and counted; what is missing throughout has its
/// stated stand-in or is an error.
#[test]
fn missing_values_have_their_stand_ins() {
    let good = one_day(VALUES);
    let path =
        |weather: &FileWeather| SunPath::new(&weather.place(), weather.first_day(), 1).unwrap();
    // Hours 12 and 13 lie between 20 °C and, from hour 14 on, 26 °C.
    let mut text = with_field(&good, 20, 6, "99.9");
    text = with_field(&text, 21, 6, "");
    for line in 22..=32 {
        text = with_field(&text, line, 6, "26");
    }
    let weather = FileWeather::from_epw_text(&text).unwrap();
    assert_eq!(
        weather.filled(),
        [Filled {
            quantity: "dry bulb",
            records: 2
        }]
    );
    assert!((weather.at(12.0 * 3600.0, &path(&weather)).dry_bulb_c - 22.0).abs() < 1e-9);
    assert!((weather.at(13.0 * 3600.0, &path(&weather)).dry_bulb_c - 24.0).abs() < 1e-9);

    let sparse = one_day("20.0,99.9,50,999999,0,0,9999,500,9999,9999,0,0,0,0,999,3.0,99,99");
    let weather = FileWeather::from_epw_text(&sparse).unwrap();
    let noon = weather.at(12.0 * 3600.0, &path(&weather));
    let humidity =
        relative_humidity_from_humidity_ratio(20.0, noon.humidity_ratio, noon.pressure_pa);
    assert!((humidity - 0.5).abs() < 1e-9);
    assert!(
        (noon.pressure_pa - 83_500.0).abs() < 200.0,
        "standard at 1600 m: {}",
        noon.pressure_pa
    );
    assert!((300.0..400.0).contains(&noon.sky_longwave_w_m2));
    assert_eq!(noon.wind_from_deg, None);
    assert!((noon.irradiance.global_horizontal_w_m2 - 500.0).abs() < 30.0);
    let quantities: Vec<_> = weather
        .filled()
        .iter()
        .map(|filled| filled.quantity)
        .collect();
    assert_eq!(
        quantities,
        [
            "pressure",
            "wind direction",
            "sky longwave",
            "direct or diffuse irradiance"
        ]
    );

    for (values, field) in [
        (
            "99.9,10.0,53,84000,0,0,330,300,400,100,0,0,0,0,180,3.0,5,2",
            "dry bulb",
        ),
        (
            "20.0,99.9,999,84000,0,0,330,300,400,100,0,0,0,0,180,3.0,5,2",
            "humidity",
        ),
        (
            "20.0,10.0,53,84000,0,0,330,300,400,100,0,0,0,0,180,999,5,2",
            "wind speed",
        ),
        (
            "20.0,10.0,53,84000,0,0,330,9999,400,9999,0,0,0,0,180,3.0,5,2",
            "irradiance",
        ),
    ] {
        assert_eq!(
            FileWeather::from_epw_text(&one_day(values)),
            Err(EpwError::NothingKnown { field })
        );
    }
}

/// A missing sun is that of the day before at the same hour.
#[test]
fn missing_sun_is_that_of_the_day_before() {
    let first = days(&[(2004, 7, 6)], 1, VALUES);
    let second = days(
        &[(2004, 7, 7)],
        1,
        &VALUES.replace("300,400,100", "9999,9999,9999"),
    );
    let weather =
        FileWeather::from_epw_text(&(header(1, "7/6", "7/7") + &first + &second)).unwrap();
    let path = SunPath::new(&weather.place(), weather.first_day(), 2).unwrap();
    let noon = weather.at(36.0 * 3600.0, &path).irradiance;
    assert_eq!(
        (noon.direct_normal_w_m2, noon.diffuse_horizontal_w_m2),
        (400.0, 100.0)
    );
    assert_eq!(
        weather
            .at(24.0 * 3600.0, &path)
            .irradiance
            .direct_normal_w_m2,
        0.0
    );
}

/// The wind turns over the shorter way, through north.
#[test]
fn wind_turns_over_the_shorter_way() {
    let text = with_field(&one_day(&VALUES.replace(",180,", ",350,")), 20, 20, "20");
    let weather = FileWeather::from_epw_text(&text).unwrap();
    let path = SunPath::new(&weather.place(), weather.first_day(), 1).unwrap();
    let from_deg = weather.at(11.5 * 3600.0, &path).wind_from_deg.unwrap();
    assert!((from_deg - 5.0).abs() < 1e-9, "{from_deg}");
}

/// A later start shifts the time base and nothing else.
#[test]
fn starts_on_any_of_its_days() {
    let warm = VALUES.replace("20.0,10.0", "30.0,10.0");
    let body = days(&[(2004, 7, 6)], 1, VALUES) + &days(&[(2004, 7, 7)], 1, &warm);
    let weather = FileWeather::from_epw_text(&(header(1, "7/6", "7/7") + &body)).unwrap();
    let later = weather.clone().starting_on(7, 7).unwrap();
    assert_eq!(
        (later.days(), later.first_day()),
        (1, Date::new(2004, 7, 7).unwrap())
    );
    let (path, later_path) = (
        SunPath::new(&weather.place(), weather.first_day(), 2).unwrap(),
        SunPath::new(&later.place(), later.first_day(), 1).unwrap(),
    );
    for hour in -24..24 {
        let time_s = f64::from(hour) * 3600.0;
        let (one, other) = (
            weather.at(time_s + 86_400.0, &path),
            later.at(time_s, &later_path),
        );
        assert_eq!(one.dry_bulb_c, other.dry_bulb_c);
        assert!(
            (one.irradiance.global_horizontal_w_m2 - other.irradiance.global_horizontal_w_m2).abs()
                < 1e-6
        );
    }
    assert_eq!(
        later.starting_on(7, 8),
        Err(EpwError::NoSuchDay { month: 7, day: 8 })
    );
}

/// A whole year goes on with its other end; a shorter file holds its last value.
#[test]
fn whole_years_are_round() {
    let first = Date::new(2003, 1, 1).unwrap();
    let dates: Vec<_> = (0..365)
        .map(|offset| first.plus_days(offset))
        .map(|date| (date.year(), date.month(), date.day()))
        .collect();
    let warm = VALUES.replace("20.0,10.0", "30.0,10.0");
    let weather = |from: usize| {
        let start = format!("{}/{}", dates[from].1, dates[from].2);
        let body = days(&dates[from..364], 1, VALUES) + &days(&dates[364..], 1, &warm);
        FileWeather::from_epw_text(&(header(1, &start, "12/31") + &body)).unwrap()
    };
    let dry_bulb_c = |weather: &FileWeather, time_s: f64| {
        let path = SunPath::new(&weather.place(), weather.first_day(), 1).unwrap();
        weather.at(time_s, &path).dry_bulb_c
    };
    assert_eq!(weather(0).first_day(), first);
    assert_eq!(dry_bulb_c(&weather(0), -3600.0), 30.0);
    assert_eq!(dry_bulb_c(&weather(1), -3600.0), 20.0);
    let last_day = weather(0).starting_on(12, 31).unwrap();
    assert_eq!(dry_bulb_c(&last_day, 25.0 * 3600.0), 20.0);
    let last_day = weather(1).starting_on(12, 31).unwrap();
    assert_eq!(dry_bulb_c(&last_day, 25.0 * 3600.0), 30.0);
}
