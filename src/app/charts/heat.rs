//! The chart of sun and heat: a row for each group of paths, all to one scale. What comes in stands solid on the row's line, what
//! goes out hangs hatched below it, so that a look along the day says when, and a look down says from what.

use super::frame::{Frame, spread};
use super::pen::{Anchor, Drawn, EndLabel, Pen, Place, Stroke};
use super::skin::Skin;
use crate::format::unit;
use crate::text::Voice;
use crate::text::heat::{GROUPS, SUN, group_w};
use noonday_engine::scenario::Dimension;
use noonday_engine::simulation::{HeatPath, Series};
use plotters::prelude::DrawingBackend;
use plotters::style::RGBColor;
use std::cmp::Ordering;

/// Rows: the sun and every group.
const ROWS: usize = 1 + GROUPS.len();
/// Share of the height that the sun has.
const SUN_SHARE: f64 = 0.15;
/// Room between rows, CSS pixels.
const GAP: f64 = 7.0;
/// Distance of points along the day, CSS pixels: hatching is one stroke a point.
const POINT_GAP: f64 = 3.0;
/// How much of a line's colour fills the area of what comes in.
const FILL: f64 = 0.5;

/// What the chart shows of a run: sun, then groups, at points that stand for a few samples each.
struct Rows {
    time_h: Vec<f64>,
    values: [Vec<f64>; ROWS],
}

impl Rows {
    /// Means over spans of samples, so that areas stay what they are.
    fn new(series: &Series, most_points: usize) -> Self {
        let samples = series.time_h.len();
        let span = samples.div_ceil(most_points.max(1)).max(1);
        let mut rows = Self {
            time_h: Vec::new(),
            values: [const { Vec::new() }; ROWS],
        };
        for from in (0..samples).step_by(span) {
            rows.push_mean(series, from, (from + span).min(samples));
        }
        rows
    }

    fn push_mean(&mut self, series: &Series, from: usize, until: usize) {
        let count = (until - from) as f64;
        let mut sums = [0.0; ROWS];
        let mut heat_w = [0.0; HeatPath::COUNT];
        for index in from..until {
            sums[0] += series.sun_w_m2.get(index).copied().unwrap_or_default();
            for (sum, watts) in heat_w.iter_mut().zip(series.heat_w_at(index)) {
                *sum += watts;
            }
        }
        for (sum, group) in sums.iter_mut().skip(1).zip(&GROUPS) {
            *sum = group_w(group, &heat_w);
        }
        let times = series.time_h.get(from..until).unwrap_or_default();
        self.time_h.push(times.iter().sum::<f64>() / count);
        for (values, sum) in self.values.iter_mut().zip(sums) {
            values.push(sum / count);
        }
    }

    /// The least and the greatest of a row, zero always between them.
    fn range(&self, row: usize) -> (f64, f64) {
        let values = self.values.get(row).into_iter().flatten();
        values.fold((0.0, 0.0), |(low, high): (f64, f64), value| {
            (low.min(*value), high.max(*value))
        })
    }
}

/// Draws the chart into so much room.
pub fn draw<DB: DrawingBackend>(
    pen: &Pen<DB>,
    skin: &Skin,
    room: (f64, f64),
    (series, pinned): (&Series, Option<&Series>),
    voice: &Voice,
) -> Drawn<DB> {
    let (Some(from), Some(until)) = (series.time_h.first(), series.time_h.last()) else {
        return Ok(());
    };
    let whole = Frame {
        left: skin.gutter_left,
        right: room.0 - skin.gutter_right,
        top: pen.line_height() * 0.5,
        bottom: room.1 - pen.line_height() * 0.5,
        across: (*from, *until),
        up: (0.0, 1.0),
    };
    let most_points = (whole.right - whole.left) / POINT_GAP;
    let rows = Rows::new(series, most_points as usize);
    let ghosts = pinned.map(|pinned| Rows::new(pinned, most_points as usize));
    let frames = frames(&whole, &rows, ghosts.as_ref());
    pen.scale(&whole, &[], |_| String::new())?;
    for (row, frame) in frames.iter().enumerate() {
        ribbon(pen, frame, &rows, row, colours(skin, row))?;
    }
    if let Some(ghosts) = &ghosts {
        outlines(
            pen,
            &frames,
            ghosts,
            |colour| Stroke::solid(colour, 1.25).ghost(skin.paper),
            skin,
        )?;
    }
    outlines(
        pen,
        &frames,
        &rows,
        |colour| Stroke::solid(colour, 1.5),
        skin,
    )?;
    scales(pen, skin, &frames, &rows, voice)?;
    let labels: Vec<EndLabel> = frames
        .iter()
        .enumerate()
        .map(|(row, frame)| (row_name(row), label_height(frame), skin.ink))
        .collect();
    pen.end_labels(&whole, &labels)
}

/// The edges of the rows: of the run that is shown, or faintly those of another in the same frames.
fn outlines<DB: DrawingBackend>(
    pen: &Pen<DB>,
    frames: &[Frame],
    rows: &Rows,
    stroke: impl Fn(RGBColor) -> Stroke,
    skin: &Skin,
) -> Drawn<DB> {
    for (row, (frame, values)) in frames.iter().zip(&rows.values).enumerate() {
        let (into, out) = colours(skin, row);
        let places = frame.places(&rows.time_h, values);
        let zero = frame.y(0.0);
        let sign = |y: f64| (zero - y).total_cmp(&0.0);
        for run in places.chunk_by(|one, other| sign(one.1) == sign(other.1)) {
            let colour = match run.first().map(|(_, y)| sign(*y)) {
                Some(Ordering::Greater) => into,
                Some(Ordering::Less) => out,
                _ => continue,
            };
            pen.line(run, stroke(colour))?;
        }
    }
    Ok(())
}

/// What comes in, solid, and what goes out, hatched.
fn ribbon<DB: DrawingBackend>(
    pen: &Pen<DB>,
    frame: &Frame,
    rows: &Rows,
    row: usize,
    (into, out): (RGBColor, RGBColor),
) -> Drawn<DB> {
    let Some(values) = rows.values.get(row) else {
        return Ok(());
    };
    let zero = frame.y(0.0);
    let mut outline: Vec<Place> = vec![(frame.left, zero)];
    for (time_h, value) in rows.time_h.iter().zip(values) {
        let (x, y) = (frame.x(*time_h), frame.y(*value));
        outline.push((x, y.min(zero)));
        if y > zero + 0.5 {
            pen.line(&[(x, zero), (x, y)], Stroke::solid(out, 1.0))?;
        }
    }
    outline.push((frame.right, zero));
    pen.fill(&outline, into, FILL)
}

/// A number for each row at its greatest, and the line from which it is measured.
fn scales<DB: DrawingBackend>(
    pen: &Pen<DB>,
    skin: &Skin,
    frames: &[Frame],
    rows: &Rows,
    voice: &Voice,
) -> Drawn<DB> {
    let mut marks = Vec::new();
    for (row, frame) in frames.iter().enumerate() {
        let zero = frame.y(0.0);
        pen.hairline((frame.left, zero), (frame.right, zero), skin.ink_soft)?;
        let (low, high) = rows.range(row);
        let most = if -low > high { low } else { high };
        if most.abs() >= 0.5 {
            marks.push((frame.y(most), number(row, most.abs(), voice)));
        }
    }
    let wanted: Vec<f64> = marks.iter().map(|(y, _)| *y).collect();
    let (Some(first), Some(last)) = (frames.first(), frames.last()) else {
        return Ok(());
    };
    let placed = spread(&wanted, pen.line_height(), first.top, last.bottom);
    for ((y, text), at) in marks.iter().zip(placed) {
        let tick = [(first.left - 4.0, at), (first.left, *y)];
        pen.line(&tick, Stroke::solid(skin.ink_soft, 1.0))?;
        pen.text(text, (first.left - 6.0, at), skin.ink_soft, Anchor::End)?;
    }
    Ok(())
}

/// Rows one below another, with room for those of a pinned run: the sun's by its share, the others to one scale.
fn frames(whole: &Frame, rows: &Rows, ghosts: Option<&Rows>) -> Vec<Frame> {
    let range = |row: usize| {
        let (low, high) = rows.range(row);
        let (ghost_low, ghost_high) = ghosts.map_or((low, high), |ghosts| ghosts.range(row));
        (low.min(ghost_low), high.max(ghost_high))
    };
    let height = whole.bottom - whole.top;
    let sun_height = height * SUN_SHARE;
    let span: f64 = (1..ROWS)
        .map(|row| {
            let (low, high) = range(row);
            high - low
        })
        .sum();
    let left_px = height - sun_height - GAP * (ROWS - 1) as f64;
    let px_per_watt = left_px / span.max(1.0);
    let mut top = whole.top;
    (0..ROWS)
        .map(|row| {
            let (low, high) = range(row);
            let height = match row {
                0 => sun_height,
                _ => (high - low) * px_per_watt,
            };
            let frame = Frame {
                top,
                bottom: top + height,
                // A row without any heat is a line.
                up: if high > low { (low, high) } else { (0.0, 1.0) },
                ..*whole
            };
            top = frame.bottom + GAP;
            frame
        })
        .collect()
}

/// The height at which a row is named: the middle of what there is of it.
fn label_height(frame: &Frame) -> f64 {
    0.5 * (frame.top + frame.bottom)
}

fn row_name(row: usize) -> &'static str {
    match row.checked_sub(1).and_then(|group| GROUPS.get(group)) {
        Some(group) => group.name,
        None => SUN,
    }
}

/// Colours of what comes in and of what goes out.
fn colours(skin: &Skin, row: usize) -> (RGBColor, RGBColor) {
    match row {
        0 => (skin.sun, skin.sun),
        _ => (skin.without, skin.cabin),
    }
}

fn number(row: usize, value: f64, voice: &Voice) -> String {
    let shown = match row {
        0 => voice.units.irradiance_number(value),
        _ => unit(Dimension::HeatFlow, voice.units).shown(value),
    };
    voice.units.number(shown, 0)
}
