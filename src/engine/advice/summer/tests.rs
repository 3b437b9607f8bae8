use super::*;
use crate::scenario::example;
use crate::simulation::FULL_STEPS_PER_MINUTE;
use crate::weather::invented_summer;

fn example_scenario() -> Scenario {
    Scenario::new(example()).unwrap()
}

fn from_june() -> FileWeather {
    let weather = invented_summer().unwrap();
    let ((month, day), days) = weather.summer();
    assert_eq!(((month, day), days), ((6, 1), 92));
    weather.starting_on(month, day).unwrap()
}

fn all(mut search: SummerSearch) -> Summer {
    while !search.step().unwrap() {}
    assert_eq!(search.progress(), 1.0);
    search.found
}

/// The bound that is stated where the result is shown: half a kelvin at the worst of a window, a tenth in the mean, a hundredth of
/// charge; no window is judged otherwise.
#[test]
fn steps_of_a_minute_agree_with_steps_of_ten_seconds() {
    let summer = |steps| {
        let search = SummerSearch::in_steps(&example_scenario(), &from_june(), 20, steps);
        all(search.unwrap())
    };
    let (coarse, full) = (
        summer(COARSE_STEPS_PER_MINUTE),
        summer(FULL_STEPS_PER_MINUTE),
    );
    let (mut squares, mut count) = (0.0, 0.0);
    for (one, other) in coarse.days.iter().zip(&full.days) {
        assert!((one.lowest_charge - other.lowest_charge).abs() < 0.01);
        for (one, other) in one.held.iter().flatten().zip(other.held.iter().flatten()) {
            let off_k = one.worst_felt_c - other.worst_felt_c;
            assert!(off_k.abs() < 0.5, "{one:?} {other:?}");
            assert_eq!(one.met, other.met);
            squares += off_k * off_k;
            count += 1.0;
        }
    }
    assert_eq!(count, 120.0);
    assert!((squares / count).sqrt() < 0.1);
}

#[test]
fn more_means_meet_more_and_every_window_of_every_day_is_judged() {
    let summer = all(SummerSearch::new(&example_scenario(), &from_june(), 92).unwrap());
    assert_eq!((summer.days.len(), summer.windows.len()), (92, 2));
    assert!(!summer.windows[0].is_night() && summer.windows[1].is_night());
    assert_eq!(summer.days[0].facts.date.month(), 6);
    let last = summer.days[91].facts.date;
    assert_eq!((last.month(), last.day()), (8, 31));
    for window in 0..2 {
        let [fan, mains, bank] = Means::ALL.map(|means| summer.met(window, means));
        assert!(
            fan < bank && bank < mains && mains <= 92,
            "{fan} {bank} {mains}"
        );
    }
    for day in &summer.days {
        assert!(day.cooler_wh[1] <= day.cooler_wh[0] * 1.02, "{day:?}");
        for held in day.held.iter().flatten() {
            assert!(held.worst_felt_c.is_finite() && (0.0..=8.0).contains(&held.missed_h));
            assert_eq!(held.met, held.missed_h == 0.0);
        }
    }
}

#[test]
fn the_charge_of_a_day_is_carried_to_the_next() {
    let mut document = example();
    document.charging.panel_power_w = 0.0;
    let scenario = Scenario::new(document).unwrap();
    let summer = all(SummerSearch::new(&scenario, &from_june(), 5).unwrap());
    let lowest: Vec<f64> = summer.days.iter().map(|day| day.lowest_charge).collect();
    assert!(lowest.is_sorted_by(|one, other| one >= other), "{lowest:?}");
    assert!(lowest[4] <= 0.11, "nothing charges it: {lowest:?}");
}

#[test]
fn without_a_cooler_the_three_ways_are_one() {
    let mut document = example();
    document.cooler.installed = false;
    // A window before the hour at which a run begins is passed in whole as well.
    document.need.windows[0].from_hour = 4.0;
    let scenario = Scenario::new(document).unwrap();
    let summer = all(SummerSearch::new(&scenario, &from_june(), 3).unwrap());
    assert!(!summer.has_cooler);
    for held in summer.days.iter().flat_map(|day| &day.held) {
        assert_eq!(held[0], held[1]);
        assert_eq!(held[0], held[2]);
        assert!(held[0].worst_felt_c > 10.0);
    }
}

#[test]
fn a_summer_is_the_same_whatever_day_the_scenario_is_on() {
    let mut document = example();
    (document.place.latitude_deg, document.day.high_c) = (45.0, 30.0);
    document.prices.cooler = 1.0;
    assert!(same_summer(&document, &example()));
    for change in [
        (|document| document.shell.filled_share = 0.5) as fn(&mut ScenarioDocument),
        |document| document.day.shade_beam_share = 0.5,
        |document| document.place.summer_time = false,
        |document| document.need.windows[0].highest_felt_c = 27.0,
    ] {
        let mut changed = document.clone();
        change(&mut changed);
        assert!(!same_summer(&changed, &example()));
    }
}
