//! The chart of the bank: its charge above, and below it the power that goes in and the power that is drawn.

use super::Shown;
use super::frame::{Frame, ticks, widened};
use super::pen::{Anchor, Drawn, EndLabel, Pen, Stroke};
use super::skin::Skin;
use crate::text::charts::{
    CHARGE, COOLER, DRIVING, LOADS, PANELS, POWER_IN, POWER_OUT, RESERVE, SHORE,
};
use noonday_engine::simulation::Series;
use plotters::prelude::DrawingBackend;

/// Share of the height that the charge has.
const CHARGE_SHARE: f64 = 0.46;
/// Power below which a source or load is left out, W.
const LEAST_SHOWN_W: f64 = 0.5;
/// How much of a line's colour fills the area under it.
const FILL: f64 = 0.16;

/// A source or load over the run, W; what is drawn from the bank is negative.
struct Flow {
    label: &'static str,
    values: Vec<f64>,
    stroke: Stroke,
}

/// Draws the chart into so much room; `reserve` is the charge to keep back.
pub fn draw<DB: DrawingBackend>(
    pen: &Pen<DB>,
    skin: &Skin,
    (width, height): (f64, f64),
    (advice, pinned, sampled): Shown,
    reserve: f64,
) -> Drawn<DB> {
    let series = &advice.with_cooler.series;
    let (Some(from), Some(until)) = (series.time_h.first(), series.time_h.last()) else {
        return Ok(());
    };
    let frame = Frame {
        left: skin.gutter_left,
        right: width - skin.gutter_right,
        top: pen.line_height() * 0.6,
        bottom: height * CHARGE_SHARE,
        across: (*from, *until),
        up: (0.0, 100.0),
    };
    if let Some(sampled) = sampled {
        let times = &sampled.time_h;
        pen.band(
            &frame,
            times,
            &sampled.state_of_charge,
            (hundredths, skin.cabin),
        )?;
    }
    let before = pinned.map(|pinned| &pinned.with_cooler.series);
    charge(pen, skin, &frame, (series, before), reserve)?;
    let ghosts = before.map_or_else(Vec::new, |before| flows(before, skin));
    let flows = flows(series, skin);
    let below = Frame {
        top: frame.bottom + pen.line_height() * 1.3,
        bottom: height - pen.line_height() * 0.5,
        up: power_range(flows.iter().chain(&ghosts)),
        ..frame
    };
    power(pen, skin, &below, series, &flows)?;
    for ghost in &ghosts {
        let times = before.map_or(&[][..], |before| &before.time_h);
        let places = below.places(times, &ghost.values);
        pen.line(&places, ghost.stroke.ghost(skin.paper))?;
    }
    Ok(())
}

fn charge<DB: DrawingBackend>(
    pen: &Pen<DB>,
    skin: &Skin,
    frame: &Frame,
    (series, pinned): (&Series, Option<&Series>),
    reserve: f64,
) -> Drawn<DB> {
    pen.scale(frame, &[0.0, 50.0, 100.0], |value| format!("{value:.0}%"))?;
    let percent = percent(series);
    let line = Stroke::solid(skin.cabin, 2.5);
    if let Some(pinned) = pinned {
        let places = frame.places(&pinned.time_h, &self::percent(pinned));
        pen.line(&places, line.ghost(skin.paper))?;
    }
    pen.line(&frame.places(&series.time_h, &percent), line)?;
    let kept = frame.y(reserve * 100.0);
    let mut labels = Vec::new();
    if reserve > 0.0 {
        let dashed = Stroke::dashed(skin.ink, 1.5, (9.0, 4.0));
        pen.line(&[(frame.left, kept), (frame.right, kept)], dashed)?;
        labels.push((RESERVE, kept, skin.ink));
    }
    if let Some(last) = percent.last() {
        labels.push((CHARGE, frame.y(*last), skin.cabin));
    }
    pen.end_labels(frame, &labels)
}

fn hundredths(shares: &[f64]) -> Vec<f64> {
    shares.iter().map(|share| share * 100.0).collect()
}

fn power<DB: DrawingBackend>(
    pen: &Pen<DB>,
    skin: &Skin,
    frame: &Frame,
    series: &Series,
    flows: &[Flow],
) -> Drawn<DB> {
    let marks = ticks(frame.up.0, frame.up.1, 4);
    pen.scale(frame, &marks, |value| match value.abs() {
        size if size >= 1_000.0 => format!("{}k", trimmed(size / 1_000.0)),
        size => format!("{size:.0}"),
    })?;
    let zero = frame.y(0.0);
    for flow in flows {
        let places = frame.places(&series.time_h, &flow.values);
        let mut outline = vec![(frame.left, zero)];
        outline.extend(&places);
        outline.push((frame.right, zero));
        pen.fill(&outline, flow.stroke.colour, FILL)?;
        pen.line(&places, flow.stroke)?;
    }
    pen.hairline((frame.left, zero), (frame.right, zero), skin.ink)?;
    let half = pen.line_height() * 0.65;
    let beside = frame.left + 4.0;
    if frame.up.1 > 0.0 {
        let text = format!("W\u{a0}{POWER_IN}");
        pen.text(
            &text,
            (beside, frame.top + half * 0.4),
            skin.ink_soft,
            Anchor::Start,
        )?;
    }
    if frame.up.0 < 0.0 {
        let text = format!("W\u{a0}{POWER_OUT}");
        pen.text(
            &text,
            (beside, frame.bottom - half * 0.6),
            skin.ink_soft,
            Anchor::Start,
        )?;
    }
    let labels: Vec<EndLabel> = flows
        .iter()
        .map(|flow| {
            let last = flow.values.last().copied().unwrap_or_default();
            (flow.label, frame.y(last), flow.stroke.colour)
        })
        .collect();
    pen.end_labels(frame, &labels)
}

fn flows(series: &Series, skin: &Skin) -> Vec<Flow> {
    let drawn = |values: &[f64]| values.iter().map(|value| -value).collect();
    let all = [
        Flow {
            label: PANELS,
            values: series.panels_w.clone(),
            stroke: Stroke::solid(skin.sun, 2.0),
        },
        Flow {
            label: DRIVING,
            values: series.driving_w.clone(),
            stroke: Stroke::dashed(skin.source, 2.0, (7.0, 3.0)),
        },
        Flow {
            label: SHORE,
            values: series.shore_w.clone(),
            stroke: Stroke::dashed(skin.source, 2.0, (2.0, 2.5)),
        },
        Flow {
            label: LOADS,
            values: drawn(&series.loads_w),
            stroke: Stroke::dashed(skin.outdoors, 1.75, (2.0, 2.5)),
        },
        Flow {
            label: COOLER,
            values: drawn(&series.cooler_w),
            stroke: Stroke::solid(skin.cabin, 2.0),
        },
    ];
    all.into_iter()
        .filter(|flow| flow.values.iter().any(|value| value.abs() > LEAST_SHOWN_W))
        .collect()
}

fn percent(series: &Series) -> Vec<f64> {
    hundredths(&series.state_of_charge)
}

fn power_range<'a>(flows: impl Iterator<Item = &'a Flow>) -> (f64, f64) {
    let values = flows.flat_map(|flow| &flow.values);
    let (low, high) = values.fold((0.0_f64, 0.0_f64), |(low, high), value| {
        (low.min(*value), high.max(*value))
    });
    if low == high {
        return (-100.0, 100.0);
    }
    widened(low, high, 4)
}

fn trimmed(value: f64) -> String {
    crate::format::entry_text(value, 1)
}
