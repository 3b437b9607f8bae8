//! Logged, entered and fitted cabin air over time, and below it what the fit leaves: the text of an SVG.

use crate::charts::{Frame, spread};
use crate::format::{UnitSystem, unit};
use crate::text::{Voice, proving as text};
use leptos::prelude::*;
use noonday_engine::advice::learning::Learned;
use noonday_engine::scenario::Dimension;
use std::fmt::Write;

/// Size of the drawing and its parts, in its own units, which are pixels on the narrowest phone.
const WIDTH: f64 = 340.0;
const HEIGHT: f64 = 300.0;
const LEFT: f64 = 34.0;
const RIGHT: f64 = 268.0;
const TOP: f64 = 10.0;
const BOTTOM: f64 = 200.0;
const STRIP_TOP: f64 = 236.0;
const STRIP_BOTTOM: f64 = 292.0;

/// Least distance of labels of lines.
const LABEL_GAP: f64 = 14.0;

/// Least span of the strip either way, K.
const STRIP_LEAST_K: f64 = 1.0;

/// The drawing with its words.
pub(super) fn figure(learned: &Learned, voice: &Voice) -> AnyView {
    let svg = drawing(learned, voice.units);
    view! {
        <figure class="fit">
            <div class="fit-drawing" aria-hidden="true" inner_html=svg></div>
            <figcaption class="note">{text::curve_summary(learned, voice)}</figcaption>
        </figure>
    }
    .into_any()
}

// Writing into a text cannot fail, which is why what it gives is put aside throughout.
fn drawing(learned: &Learned, units: UnitSystem) -> String {
    let (Some(from_h), Some(until_h)) = (learned.time_h.first(), learned.time_h.last()) else {
        return String::new();
    };
    let temperature = unit(Dimension::Temperature, units);
    let shown = |values: &[f64]| -> Vec<f64> {
        values
            .iter()
            .map(|value| temperature.shown(*value))
            .collect()
    };
    let lines = [
        ("logged", shown(&learned.logged_c)),
        ("entered", shown(&learned.entered_c)),
        ("fitted", shown(&learned.fitted_c)),
    ];
    let all = || lines.iter().flat_map(|(_, values)| values.iter().copied());
    let step = tick_step(all().fold(f64::MIN, f64::max) - all().fold(f64::MAX, f64::min));
    let frame = Frame {
        left: LEFT,
        right: RIGHT,
        top: TOP,
        bottom: BOTTOM,
        across: (*from_h, *until_h),
        up: (
            (all().fold(f64::MAX, f64::min) / step).floor() * step,
            (all().fold(f64::MIN, f64::max) / step).ceil() * step,
        ),
    };
    let mut svg = format!("<svg viewBox=\"0 0 {WIDTH} {HEIGHT}\" focusable=\"false\">");
    axes(&mut svg, &frame, step, units);
    for (class, values) in &lines {
        let course = course(&frame.places(&learned.time_h, values));
        let _ = write!(svg, "<path class=\"line {class}\" d=\"{course}\"/>");
    }
    let ends: Vec<f64> = lines
        .iter()
        .map(|(_, values)| frame.y(values.last().copied().unwrap_or_default()))
        .collect();
    labels(&mut svg, &ends);
    residuals(&mut svg, learned, &frame, units);
    svg.push_str("</svg>");
    svg
}

/// Step of the marks upwards: four to eight of them.
fn tick_step(span: f64) -> f64 {
    let steps = [1.0, 2.0, 5.0, 10.0, 20.0];
    steps
        .into_iter()
        .find(|step| span / step <= 7.0)
        .unwrap_or(50.0)
}

fn axes(svg: &mut String, frame: &Frame, step: f64, units: UnitSystem) {
    let ((least, greatest), (from_h, until_h)) = (frame.up, frame.across);
    let count = ((greatest - least) / step).round() as usize;
    for index in 0..=count {
        let value = least + step * index as f64;
        let y = frame.y(value);
        let _ = write!(
            svg,
            "<path class=\"grid\" d=\"M{LEFT} {y:.1}H{RIGHT}\"/><text x=\"{:.1}\" y=\"{:.1}\" text-anchor=\"end\">{}°</text>",
            LEFT - 4.0,
            y + 4.0,
            units.number(value, 0)
        );
    }
    let hours = until_h - from_h;
    let every = [1.0, 2.0, 3.0, 6.0, 12.0, 24.0]
        .into_iter()
        .find(|every| hours / every <= 5.0)
        .unwrap_or(48.0);
    let mut time_h = (from_h / every).ceil() * every;
    while time_h <= until_h {
        let x = frame.x(time_h);
        let _ = write!(
            svg,
            "<path class=\"grid\" d=\"M{x:.1} {TOP}V{BOTTOM}\"/><text x=\"{x:.1}\" y=\"{:.1}\" text-anchor=\"middle\">{}</text>",
            BOTTOM + 15.0,
            units.axis_hour(time_h)
        );
        time_h += every;
    }
}

/// A course through places, as SVG writes it.
fn course(places: &[(f64, f64)]) -> String {
    let mut course = String::new();
    for (index, (x, y)) in places.iter().enumerate() {
        let step = if index == 0 { 'M' } else { 'L' };
        let _ = write!(course, "{step}{x:.1} {y:.1}");
    }
    course
}

/// Names beside the ends of the lines, apart from one another.
fn labels(svg: &mut String, ends: &[f64]) {
    let names = ["logged", "entered", "fitted"].into_iter().zip(text::LINES);
    for ((class, name), y) in names.zip(spread(ends, LABEL_GAP, TOP, BOTTOM)) {
        let _ = write!(
            svg,
            "<text class=\"name {class}\" x=\"{:.1}\" y=\"{:.1}\">{name}</text>",
            RIGHT + 5.0,
            y + 4.0
        );
    }
}

/// What the fit leaves, around zero.
fn residuals(svg: &mut String, learned: &Learned, frame: &Frame, units: UnitSystem) {
    let left: Vec<f64> = learned
        .logged_c
        .iter()
        .zip(&learned.fitted_c)
        .map(|(logged, fitted)| logged - fitted)
        .collect();
    let most = left
        .iter()
        .fold(STRIP_LEAST_K, |most, value| most.max(value.abs()))
        .ceil();
    let middle = f64::midpoint(STRIP_TOP, STRIP_BOTTOM);
    let difference = unit(Dimension::TemperatureDifference, units);
    for (value, y) in [(most, STRIP_TOP), (0.0, middle), (-most, STRIP_BOTTOM)] {
        let _ = write!(
            svg,
            "<path class=\"grid\" d=\"M{LEFT} {y:.1}H{RIGHT}\"/><text x=\"{:.1}\" y=\"{:.1}\" text-anchor=\"end\">{}°</text>",
            LEFT - 4.0,
            y + 4.0,
            units.number(difference.shown(value), 0)
        );
    }
    let strip = Frame {
        top: STRIP_TOP,
        bottom: STRIP_BOTTOM,
        up: (-most, most),
        ..*frame
    };
    let course = course(&strip.places(&learned.time_h, &left));
    let _ = write!(
        svg,
        "<path class=\"line residual\" d=\"{course}\"/><text x=\"{LEFT}\" y=\"{:.1}\">{}</text>",
        STRIP_TOP - 6.0,
        text::RESIDUALS
    );
}
