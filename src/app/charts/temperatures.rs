//! The chart of temperatures: outdoors, the cabin as felt with and without a cooler, the limits and the hours of need.

use super::Shown;
use super::frame::{Frame, ticks, widened};
use super::pen::{Anchor, Drawn, EndLabel, Pen, Stroke};
use super::skin::Skin;
use crate::format::unit;
use crate::text::Voice;
use crate::text::charts::{FELT, OUTDOORS, WITHOUT, limit_label};
use noonday_engine::advice::{Advice, WindowVerdict};
use noonday_engine::scenario::Dimension;
use plotters::prelude::DrawingBackend;

/// Most numbers on the scale.
const MOST_TICKS: usize = 6;
/// Distance between the strokes that fill what is missed, CSS pixels.
const HATCH_GAP: f64 = 3.0;

/// A line of the chart, in the shown unit.
struct Line {
    label: &'static str,
    values: Vec<f64>,
    stroke: Stroke,
}

/// Draws the chart into so much room.
pub fn draw<DB: DrawingBackend>(
    pen: &Pen<DB>,
    skin: &Skin,
    (width, height): (f64, f64),
    (advice, pinned, sampled): Shown,
    voice: &Voice,
) -> Drawn<DB> {
    let times = &advice.with_cooler.series.time_h;
    let (Some(from), Some(until)) = (times.first(), times.last()) else {
        return Ok(());
    };
    let ghosts = pinned.map_or_else(Vec::new, |pinned| lines(pinned, skin, voice));
    let lines = lines(advice, skin, voice);
    let frame = Frame {
        left: skin.gutter_left,
        right: width - skin.gutter_right,
        top: pen.line_height() * 0.6,
        bottom: height - pen.line_height() * 0.5,
        across: (*from, *until),
        up: range(lines.iter().chain(&ghosts), &advice.verdict.windows, voice),
    };
    for window in &advice.verdict.windows {
        hours_of_need(pen, skin, &frame, window)?;
    }
    let marks = ticks(frame.up.0, frame.up.1, MOST_TICKS);
    pen.scale(&frame, &marks, |value| {
        format!("{value:.0}").replace('-', "\u{2212}")
    })?;
    let degrees = unit(Dimension::Temperature, voice.units).symbol;
    let corner = (frame.left + 4.0, frame.top + pen.line_height() * 0.6);
    pen.text(degrees, corner, skin.ink_soft, Anchor::Start)?;
    for window in &advice.verdict.windows {
        missed(pen, skin, &frame, (window, times), &lines, voice)?;
    }
    if let Some(sampled) = sampled {
        let degrees = |values_c: &[f64]| shown(values_c, voice);
        pen.band(
            &frame,
            &sampled.time_h,
            &sampled.felt_c,
            (degrees, skin.cabin),
        )?;
    }
    let pinned_times = pinned.map_or(&[][..], |pinned| &pinned.with_cooler.series.time_h);
    for ghost in &ghosts {
        let places = frame.places(pinned_times, &ghost.values);
        pen.line(&places, ghost.stroke.ghost(skin.paper))?;
    }
    for line in &lines {
        pen.line(&frame.places(times, &line.values), line.stroke)?;
    }
    let mut named: Vec<usize> = Vec::new();
    for window in &advice.verdict.windows {
        limit(pen, skin, &frame, window, voice)?;
        // On further days the same window has the same limit.
        if !named.contains(&window.slot) {
            named.push(window.slot);
            limit_name(pen, skin, &frame, window, voice)?;
        }
    }
    let ends: Vec<EndLabel> = lines
        .iter()
        .filter_map(|line| {
            let last = line.values.last()?;
            Some((line.label, frame.y(*last), line.stroke.colour))
        })
        .collect();
    pen.end_labels(&frame, &ends)
}

/// Draws the chart of a state by itself on an area.
#[cfg(test)]
pub fn draw_alone<DB: DrawingBackend>(
    area: &plotters::drawing::DrawingArea<DB, plotters::coord::Shift>,
    skin: &Skin,
    room: (f64, f64),
    advice: &Advice,
    voice: &Voice,
) -> Drawn<DB> {
    draw(
        &Pen::new(area, skin),
        skin,
        room,
        (advice, None, None),
        voice,
    )
}

fn lines(advice: &Advice, skin: &Skin, voice: &Voice) -> Vec<Line> {
    let series = &advice.with_cooler.series;
    let without = &advice.without_cooler.series;
    vec![
        Line {
            label: WITHOUT,
            values: shown(&without.felt_c, voice),
            stroke: Stroke::dashed(skin.without, 1.75, (7.0, 3.0)),
        },
        Line {
            label: OUTDOORS,
            values: shown(&series.outdoor_c, voice),
            stroke: Stroke::dashed(skin.outdoors, 1.75, (2.0, 2.5)),
        },
        Line {
            label: FELT,
            values: shown(&series.felt_c, voice),
            stroke: Stroke::solid(skin.cabin, 2.5),
        },
    ]
}

fn shown(values_c: &[f64], voice: &Voice) -> Vec<f64> {
    let unit = unit(Dimension::Temperature, voice.units);
    values_c.iter().map(|value| unit.shown(*value)).collect()
}

fn range<'a>(
    lines: impl Iterator<Item = &'a Line>,
    windows: &[WindowVerdict],
    voice: &Voice,
) -> (f64, f64) {
    let limits: Vec<f64> = windows.iter().map(|window| window.highest_felt_c).collect();
    let limits = shown(&limits, voice);
    let all = lines.flat_map(|line| &line.values).chain(&limits);
    let (low, high) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
        (low.min(*value), high.max(*value))
    });
    widened(low, high, MOST_TICKS)
}

fn hours_of_need<DB: DrawingBackend>(
    pen: &Pen<DB>,
    skin: &Skin,
    frame: &Frame,
    window: &WindowVerdict,
) -> Drawn<DB> {
    let (from, until) = (frame.x(window.from_h), frame.x(window.until_h));
    pen.block((from, frame.top), (until, frame.bottom), skin.need)
}

/// Fills the area between the limit and the felt temperature above it with upright strokes.
fn missed<DB: DrawingBackend>(
    pen: &Pen<DB>,
    skin: &Skin,
    frame: &Frame,
    (window, times): (&WindowVerdict, &[f64]),
    lines: &[Line],
    voice: &Voice,
) -> Drawn<DB> {
    let Some(felt) = lines.last().filter(|_| !window.met) else {
        return Ok(());
    };
    let limit = unit(Dimension::Temperature, voice.units).shown(window.highest_felt_c);
    let floor = frame.y(limit);
    let mut last = f64::NEG_INFINITY;
    for (time, value) in times.iter().zip(&felt.values) {
        let x = frame.x(*time);
        let inside = *time >= window.from_h && *time <= window.until_h;
        if inside && *value > limit && x - last >= HATCH_GAP {
            last = x;
            let stroke = Stroke::solid(skin.without, 1.0);
            pen.line(&[(x, floor), (x, frame.y(*value))], stroke)?;
        }
    }
    Ok(())
}

fn limit<DB: DrawingBackend>(
    pen: &Pen<DB>,
    skin: &Skin,
    frame: &Frame,
    window: &WindowVerdict,
    voice: &Voice,
) -> Drawn<DB> {
    let limit = unit(Dimension::Temperature, voice.units).shown(window.highest_felt_c);
    let (from, until) = (frame.x(window.from_h), frame.x(window.until_h));
    let y = frame.y(limit);
    pen.line(&[(from, y), (until, y)], Stroke::solid(skin.ink, 1.5))?;
    for x in [from, until] {
        pen.line(&[(x, y - 4.0), (x, y + 4.0)], Stroke::solid(skin.ink, 1.5))?;
    }
    Ok(())
}

fn limit_name<DB: DrawingBackend>(
    pen: &Pen<DB>,
    skin: &Skin,
    frame: &Frame,
    window: &WindowVerdict,
    voice: &Voice,
) -> Drawn<DB> {
    let limit = unit(Dimension::Temperature, voice.units).shown(window.highest_felt_c);
    let (from, until) = (frame.x(window.from_h), frame.x(window.until_h));
    let y = frame.y(limit);
    let label = limit_label(window.highest_felt_c, voice);
    // Where the limit is passed, the line of the cabin runs above it.
    let side = if window.met { -0.7 } else { 0.75 };
    // Near the right edge the label runs back from the end of the hours instead of on from their beginning.
    let room = frame.right - from;
    let beside = y + pen.line_height() * side;
    let (x, anchor) = if room > pen.line_height() * 6.0 {
        (from + 3.0, Anchor::Start)
    } else {
        (until - 3.0, Anchor::End)
    };
    pen.text_on(&label, (x, beside), (skin.ink, skin.need), anchor)
}
