use super::invented::{forecast, invented_summer, summer_of};

#[test]
fn the_invented_summer_is_a_summer() {
    let weather = invented_summer().unwrap();
    assert_eq!(weather.summer(), ((6, 1), 92));
    assert!(
        weather
            .filled()
            .iter()
            .all(|filled| filled.quantity != "dry bulb")
    );
    let days = weather.facts(weather.days() as u32).unwrap();
    let high_c = days.iter().map(|day| day.high_c).fold(f64::MIN, f64::max);
    assert!((36.0..41.0).contains(&high_c), "{high_c}");
    for day in &days {
        assert!(
            day.low_c < day.high_c && day.dew_point_c < day.high_c,
            "{day:?}"
        );
        assert!((1_500.0..9_000.0).contains(&day.sun_wh_m2), "{day:?}");
        assert_eq!(day.wind_from_deg.map(f64::round), Some(180.0));
    }
}

/// A summer that is the same forecast every day comes back as that forecast; between the hours the file is straight and the forecast
/// is not, which is 0.1 K at most.
#[test]
fn a_day_made_of_a_forecast_comes_back_as_it() {
    let weather = summer_of(|_| forecast(7.0)).unwrap();
    let reduced = weather.starting_on(7, 10).unwrap().reduced(3.7).unwrap();
    let (said, made) = (&reduced.forecast, forecast(7.0));
    assert!((said.high_c - made.high_c).abs() <= 0.1 && (said.low_c - made.low_c).abs() <= 0.1);
    assert!((said.dew_point_c - made.dew_point_c).abs() <= 0.1);
    assert!((said.cloud_fraction - made.cloud_fraction).abs() <= 0.02);
    assert_eq!(said.wind_speed_10m_m_s, made.wind_speed_10m_m_s);
    assert!(
        reduced.rms_k < 0.1 && reduced.worst_k.abs() < 0.25,
        "{reduced:?}"
    );
    let ratio = reduced.sun_forecast_wh_m2 / reduced.sun_file_wh_m2;
    assert!((ratio - 1.0).abs() < 0.01, "{reduced:?}");
}

#[test]
fn a_day_beyond_what_a_forecast_can_say_is_refused() {
    let weather = invented_summer().unwrap();
    assert!(weather.reduced(9.0).is_err());
    assert!(weather.facts(0).unwrap().is_empty());
    assert!(weather.facts(800).is_err());
}

#[test]
fn a_summer_that_the_file_does_not_hold_is_all_that_it_holds() {
    let weather = invented_summer().unwrap().starting_on(8, 1).unwrap();
    let ((month, day), days) = weather.summer();
    // Its time base moved on, but the file still holds June.
    assert_eq!((month, day, days), (6, 1, 92));
    assert_eq!(weather.reaches(), weather.days());
}
