//! Sizing against trying every size, and against what must hold of its margins.

use super::*;
use crate::scenario::example;

/// A hot need: the example on a hotter day, to be kept cooler.
fn hot(high_c: f64, days: f64) -> ScenarioDocument {
    let mut document = example();
    document.day.high_c = high_c;
    document.day.days = days;
    document.need.windows[0].highest_felt_c = 27.0;
    document.need.windows[1].highest_felt_c = 26.0;
    document.cooler.set_point_c = 22.5;
    document.battery.start_state_of_charge = 1.0;
    document
}

fn sized(document: &ScenarioDocument, must_recover: bool) -> Sizing {
    let scenario = Scenario::new(document.clone()).unwrap();
    size(&scenario, must_recover).unwrap().unwrap()
}

/// The first rung that does, every one of them run.
fn by_brute_force(ladder: &mut Ladder<'_>) -> Option<f64> {
    (0..ladder.rungs.len())
        .map(|index| ladder.rung(index).unwrap())
        .find(|rung| rung.meets)
        .map(|rung| rung.size)
}

#[test]
fn bisection_finds_what_trying_every_size_finds() {
    let mut found = Vec::new();
    for (high_c, days) in [(34.0, 1.0), (38.0, 1.0), (42.0, 1.0), (38.0, 2.0)] {
        let mut document = hot(high_c, days);
        let sizing = sized(&document, false);
        let mut trials = Trials::full();
        let cooler = by_brute_force(&mut cooler_ladder(&document, &mut trials));
        assert_eq!(sizing.cooler.map(|sized| sized.smallest.size), cooler);
        set_cooler_capacity(&mut document, cooler.unwrap());
        let bank = by_brute_force(&mut bank_ladder(&document, &mut trials));
        assert_eq!(sizing.bank.map(|sized| sized.smallest.size), bank);
        set_bank_capacity(&mut document, bank.unwrap());
        let by = ChargingSized::PanelsW;
        let panels = by_brute_force(&mut charging_ladder(&document, by, false, &mut trials));
        assert_eq!(sizing.charging.map(|sized| sized.smallest.size), panels);
        assert!(sizing.runs <= 25, "{} runs", sizing.runs);
        found.push((cooler, bank));
    }
    // The days are told apart: a hotter one needs more of either.
    assert!(
        found[0].0 < found[2].0 && found[0].1 < found[2].1,
        "{found:?}"
    );
}

#[test]
fn the_size_below_fails_and_the_one_above_has_more_margin() {
    let sizing = sized(&hot(40.0, 1.0), false);
    for sized in [sizing.cooler.unwrap(), sizing.bank.unwrap()] {
        assert!(sized.smallest.meets);
        let (down, up) = (sized.down.unwrap(), sized.up.unwrap());
        assert!(!down.meets && up.meets);
        assert!(up.size > sized.smallest.size && down.size < sized.smallest.size);
    }
    let (cooler, bank) = (sizing.cooler.unwrap(), sizing.bank.unwrap());
    let margin_k = |rung: Rung| rung.outcome.margin_k.unwrap();
    assert!(margin_k(cooler.up.unwrap()) > margin_k(cooler.down.unwrap()));
    let charge = |rung: Rung| rung.outcome.lowest_state_of_charge;
    assert!(charge(bank.up.unwrap()) > charge(bank.smallest));
    assert!(bank.smallest.outcome.keeps_reserve());
}

#[test]
fn over_several_days_charging_grows_until_the_bank_recovers() {
    let document = hot(36.0, 3.0);
    let loose = sized(&document, false);
    let strict = sized(&document, true);
    assert!(strict.recovers.unwrap());
    assert!(!loose.recovers.unwrap());
    let panels = |sizing: &Sizing| sizing.charging.unwrap().smallest.size;
    assert!(panels(&strict) > panels(&loose));
}

#[test]
fn driving_is_sized_where_the_vehicle_is_driven() {
    let mut document = hot(31.0, 2.0);
    document.battery.start_state_of_charge = 0.6;
    document.charging.drives = true;
    document.charging.panel_power_w = 100.0;
    document.charging.dc_dc_current_a = 120.0;
    let sizing = sized(&document, true);
    assert_eq!(sizing.charging_by, ChargingSized::DrivingHours);
    let hours = sizing.charging.unwrap().smallest.size;
    assert!(hours > 0.0, "{hours} h");
    assert!(sizing.runs <= 25, "{} runs", sizing.runs);
}

#[test]
fn nothing_asked_and_nothing_that_will_do_are_told_apart() {
    let mut document = example();
    for window in &mut document.need.windows {
        window.needed_for = NeededFor::Nobody;
    }
    let nobody = Scenario::new(document).unwrap();
    assert_eq!(size(&nobody, false).unwrap(), None);
    // Twelve degrees below what the thermostat is set to: no cooler does that.
    let mut document = hot(40.0, 1.0);
    document.need.windows[0].highest_felt_c = 15.0;
    document.cooler.set_point_c = 27.0;
    let sizing = sized(&document, false);
    assert!(sizing.cooler.is_none() && sizing.bank.is_none() && sizing.charging.is_none());
    assert!(sizing.recovers.is_none() && sizing.runs <= 25);
}
