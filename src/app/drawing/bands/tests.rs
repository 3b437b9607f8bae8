//! Bands of the example, and of vehicles that are not like it.

use super::super::scene::{HEIGHT, across, lengthwise};
use super::*;
use noonday_engine::advice::{Advice, advise};
use noonday_engine::scenario::{Scenario, example};

fn advice(document: &ScenarioDocument) -> Advice {
    advise(&Scenario::new(document.clone()).unwrap()).unwrap()
}

fn bands_at(document: &ScenarioDocument, advice: &Advice, index: usize) -> Vec<Band> {
    let cuts = [lengthwise(document), across(document)];
    bands(&advice.with_cooler.series, document, &cuts, index)
}

/// Samples spread over the day.
fn some_samples(advice: &Advice) -> impl Iterator<Item = usize> {
    (0..advice.with_cooler.series.time_h.len()).step_by(7)
}

#[test]
fn widths_are_to_one_scale_for_all_paths_and_hours() {
    let document = example();
    let advice = advice(&document);
    let mut scales = Vec::new();
    for index in some_samples(&advice) {
        let shown = bands_at(&document, &advice, index);
        scales.extend(shown.iter().map(|band| band.width / band.heat_w.abs()));
    }
    assert!(scales.len() > 300, "{}", scales.len());
    for scale in &scales {
        assert!((scale / scales[0] - 1.0).abs() < 1e-9);
    }
    assert!(scales[0] * 1_000.0 > 10.0, "a kilowatt can be seen");
}

#[test]
fn every_path_that_carries_heat_is_shown_and_together_they_are_the_whole() {
    let document = example();
    let advice = advice(&document);
    for index in some_samples(&advice) {
        let heat_w = advice.with_cooler.series.heat_w_at(index);
        let shown = bands_at(&document, &advice, index);
        for (path, watts) in HeatPath::ALL.into_iter().zip(heat_w) {
            let named = shown.iter().filter(|band| band.path == path).count();
            assert_eq!(named, usize::from(watts.abs() >= LEAST_SHOWN_W), "{path:?}");
        }
        let sum: f64 = shown.iter().map(|band| band.heat_w).sum();
        let total: f64 = heat_w.iter().sum();
        let left_out = LEAST_SHOWN_W * (HeatPath::COUNT - shown.len()) as f64;
        assert!((sum - total).abs() <= left_out + 1e-9, "{sum} for {total}");
    }
}

#[test]
fn what_comes_in_points_in_and_what_goes_out_points_out() {
    let document = example();
    let advice = advice(&document);
    let cut = across(&document);
    for index in some_samples(&advice) {
        let shown = bands_at(&document, &advice, index);
        for band in shown.iter().filter(|band| band.path == HeatPath::Left) {
            let inwards = band.to.0 > cut.inner.left && band.from.0 < cut.outer.left;
            assert_eq!(inwards, band.heat_w > 0.0);
        }
    }
}

/// Half the width of a name of twelve letters, and the height of two lines.
const LABEL: (f64, f64) = (38.0, 25.0);

fn box_of(band: &Band) -> (f64, f64, f64, f64) {
    let name = crate::text::drawing::short_name(band.path).len().max(6) as f64;
    let width = name * 2.0 * LABEL.0 / 12.0;
    let (x, y) = band.label;
    let (left, top) = match band.edge {
        Edge::Top | Edge::Bottom => (x - 0.5 * width, y - 10.0),
        Edge::Left => (x - width, y - 12.0),
        Edge::Right => (x, y - 12.0),
    };
    (left, top, left + width, top + LABEL.1)
}

fn assert_apart(shown: &[Band], what: &str) {
    for (index, band) in shown.iter().enumerate() {
        let one = box_of(band);
        assert!(
            one.0 >= 0.0 && one.2 <= WIDTH && one.1 >= 0.0 && one.3 <= HEIGHT,
            "{what}: {band:?} leaves the sheet"
        );
        for other in shown.iter().skip(index + 1) {
            let two = box_of(other);
            let apart = one.2 <= two.0 || two.2 <= one.0 || one.3 <= two.1 || two.3 <= one.1;
            assert!(
                apart || band.sheet != other.sheet,
                "{what}: {:?} lies on {:?}",
                band.path,
                other.path
            );
        }
    }
}

#[test]
fn numbers_neither_overlap_nor_leave_the_sheet() {
    let mut bare = example();
    let glass = &mut bare.glass;
    (glass.left_area_m2, glass.right_area_m2) = (0.0, 0.0);
    let mut blind = bare.clone();
    blind.glass.roof_area_m2 = 0.0;
    let mut small = example();
    (small.vehicle.length_m, small.vehicle.width_m) = (1.5, 1.3);
    small.vehicle.height_m = 1.1;
    small.glass.nose_area_m2 = 0.5;
    let mut long = example();
    (long.vehicle.length_m, long.vehicle.height_m) = (9.0, 1.6);
    long.ventilation.opening_area_m2 = 0.3;
    let all = [
        ("the example", example()),
        ("no side windows", bare),
        ("a windscreen alone", blind),
        ("a small box", small),
        ("a long one", long),
    ];
    for (what, document) in all {
        let advice = advice(&document);
        for index in some_samples(&advice) {
            assert_apart(&bands_at(&document, &advice, index), what);
        }
    }
}
