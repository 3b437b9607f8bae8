//! The search against every package, run one by one.

use super::*;
use crate::scenario::{ScenarioDocument, example};

/// A van that is too hot: bare windows, a small cooler, a day of 39 °C.
fn hot() -> ScenarioDocument {
    let mut document = example();
    document.day.high_c = 39.0;
    document.glass.covers_fitted = false;
    document.cooler.capacity_rated_w = 1_000.0;
    document.cooler.electric_power_rated_w = 400.0;
    document.battery.capacity_ah = 300.0;
    document.need.windows[0].highest_felt_c = 27.0;
    document
}

fn some_measures(scenario: &Scenario) -> Vec<Measure> {
    [
        MeasureKind::RoofInsulation { added_m: 0.025 },
        MeasureKind::WindowCovers,
        MeasureKind::Panels { added_w: 400.0 },
        MeasureKind::Bank { capacity_ah: 400.0 },
        MeasureKind::Bank { capacity_ah: 600.0 },
        MeasureKind::Cooler {
            capacity_w: 1_600.0,
        },
        MeasureKind::NoCooler,
    ]
    .map(|kind| Measure::new(kind, scenario.document()))
    .to_vec()
}

fn finished(mut search: PackageSearch) -> Packages {
    while !search.step(7).unwrap() {
        assert!((0.0..1.0).contains(&search.progress()));
    }
    search.result()
}

/// Cost and unmet need of every package, each run in full.
fn by_brute_force(scenario: &Scenario, measures: &[Measure]) -> Vec<(f64, Unmet)> {
    let search = PackageSearch::new(scenario, measures.to_vec());
    let mut trials = Trials::full();
    let all = search.all_by_cost();
    assert_eq!(all.len(), 2 * 2 * 2 * 3 * 3);
    all.iter()
        .map(|choice| {
            let changed = applied(&search.measures_of(choice), scenario.document());
            let outcome = trials.outcome(&Scenario::new(changed).unwrap()).unwrap();
            (search.cost_of(choice), Unmet::of(&outcome))
        })
        .collect()
}

fn points(packages: &[Package]) -> Vec<(f64, Unmet)> {
    packages
        .iter()
        .map(|package| (package.cost_change, Unmet::of(&package.outcome)))
        .collect()
}

#[test]
fn both_searches_find_the_front_that_running_everything_finds() {
    let scenario = Scenario::new(hot()).unwrap();
    let measures = some_measures(&scenario);
    let everything = by_brute_force(&scenario, &measures);
    let expected: Vec<(f64, Unmet)> = front(&everything)
        .into_iter()
        .map(|index| everything[index])
        .collect();
    assert!(expected.len() >= 5, "{expected:?}");
    let exact = finished(PackageSearch::new(&scenario, measures.clone()));
    assert!(exact.exact && exact.complete);
    assert_eq!(points(&exact.front), expected);
    let mut local = PackageSearch::new(&scenario, measures);
    local.exact = false;
    local.to_screen.clear();
    let local = finished(local);
    assert_eq!(points(&local.front), expected);
    // Nothing on it is dominated by anything, nothing undominated is missing.
    for point in &expected {
        let dominated = everything
            .iter()
            .any(|other| other.0 <= point.0 && other.1 <= point.1 && other != point);
        assert!(!dominated);
    }
    for other in &everything {
        let covered = expected
            .iter()
            .any(|point| point.0 <= other.0 && point.1 <= other.1);
        assert!(covered, "{other:?}");
    }
}

#[test]
fn nothing_no_cooler_and_each_measure_alone_are_there_in_full() {
    let scenario = Scenario::new(hot()).unwrap();
    let measures = some_measures(&scenario);
    let found = finished(PackageSearch::new(&scenario, measures.clone()));
    let nothing = found.nothing.unwrap();
    assert!(nothing.confirmed && nothing.measures.is_empty() && nothing.cost_change == 0.0);
    let bare = found.without_cooler.unwrap();
    assert!(bare.confirmed && bare.cost_change < 0.0);
    assert!(bare.outcome.degree_hours_k_h > nothing.outcome.degree_hours_k_h);
    assert_eq!(found.alone.len(), measures.len());
    assert!(found.alone.iter().all(|package| package.confirmed));
    assert!(found.front.iter().all(|package| package.confirmed));
}

#[test]
fn the_whole_search_keeps_to_its_runs() {
    let scenario = Scenario::new(hot()).unwrap();
    let found = packages(&scenario).unwrap();
    assert!(!found.exact && found.complete);
    assert!(found.runs <= 600, "{} runs", found.runs);
    let best = found.front.last().unwrap();
    assert!(best.outcome.degree_hours_k_h < 0.5 * found.nothing.unwrap().outcome.degree_hours_k_h);
}
