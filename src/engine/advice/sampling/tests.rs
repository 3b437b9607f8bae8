//! The sampler as a whole.

use super::*;
use crate::scenario::example;

fn hot() -> Scenario {
    let mut document = example();
    document.day.high_c = 36.0;
    document.cooler.capacity_rated_w = 1_250.0;
    document.cooler.electric_power_rated_w = 500.0;
    document.need.windows[0].highest_felt_c = 27.0;
    Scenario::new(document).unwrap()
}

fn sampled(scenario: &Scenario, seed: u64, draws: usize) -> Sampled {
    let mut sampler = Sampler::new(scenario, seed);
    assert_eq!(sampler.step(draws).unwrap(), draws);
    sampler.result()
}

#[test]
fn in_pieces_or_at_once_a_seed_gives_the_same_answer() {
    let scenario = hot();
    let whole = sampled(&scenario, 11, 40);
    let mut pieces = Sampler::new(&scenario, 11);
    assert_eq!(pieces.result(), Sampled::default());
    for _ in 0..4 {
        pieces.step(10).unwrap();
    }
    assert_eq!(pieces.result(), whole);
    assert_ne!(sampled(&scenario, 12, 40).felt_c, whole.felt_c);
}

#[test]
fn bands_lie_in_order_and_around_the_run() {
    let scenario = hot();
    let found = sampled(&scenario, 5, 64);
    let run = Prepared::new(&scenario).unwrap().run().unwrap();
    assert_eq!(found.time_h, run.series.time_h);
    let bands = [
        &found.felt_c,
        &found.felt_without_cooler_c,
        &found.state_of_charge,
    ];
    for band in bands {
        for index in 0..found.time_h.len() {
            assert!(band.low[index] <= band.middle[index]);
            assert!(band.middle[index] <= band.high[index]);
        }
    }
    // The forecast is right on average, so the middle follows the run; at the hottest hour within a kelvin.
    let hottest = (0..found.time_h.len())
        .max_by(|one, other| run.series.felt_c[*one].total_cmp(&run.series.felt_c[*other]))
        .unwrap();
    assert!((found.felt_c.middle[hottest] - run.series.felt_c[hottest]).abs() < 1.0);
    assert!(found.felt_c.high[hottest] - found.felt_c.low[hottest] > 1.0);
}

#[test]
fn chances_are_shares_and_better_with_a_cooler() {
    let found = sampled(&hot(), 5, 64);
    assert_eq!(found.windows.len(), 2);
    for window in &found.windows {
        assert!((0.0..=1.0).contains(&window.met));
        assert!(window.met >= window.met_without_cooler);
    }
    let chance = found.windows[1].met;
    assert!(chance > 0.0 && chance < 1.0, "{:?}", found.windows);
    assert!(found.all_met.unwrap() <= chance);
}

#[test]
fn on_the_edge_of_capacity_the_forecast_matters_and_for_the_charge_ageing_does() {
    let found = sampled(&hot(), 5, 256);
    let of = |input: Uncertain| {
        let found = found
            .influences
            .iter()
            .find(|influence| influence.input == input);
        *found.unwrap()
    };
    assert!(
        of(Uncertain::ForecastHigh).of_excess > 0.2,
        "{:?}",
        found.influences
    );
    assert!(of(Uncertain::Ageing).of_excess < 0.1);
    assert!(of(Uncertain::Ageing).of_lowest_charge > of(Uncertain::Paint).of_lowest_charge);
    let sum: f64 = found
        .influences
        .iter()
        .map(|influence| influence.of_excess)
        .sum();
    assert!(sum < 1.15, "{sum}");
}

#[test]
fn where_nothing_is_asked_there_is_no_chance_of_it() {
    let mut document = example();
    for window in &mut document.need.windows {
        window.needed_for = crate::scenario::NeededFor::Nobody;
    }
    let found = sampled(&Scenario::new(document).unwrap(), 1, 20);
    assert_eq!(found.all_met, None);
    assert!(found.windows.is_empty() && found.excess_deviation_k == 0.0);
}
