//! The day on paper: the sun's way above, and below it on the same hours temperatures, heat and charge.

use crate::charts::vector::{Ending, Stand, Vector, whole};
use crate::charts::{Frame, ticks, widened};
use crate::format::unit;
use crate::text::heat::coming_in_w;
use crate::text::{Voice, charts as words, report as text};
use noonday_engine::advice::Advice;
use noonday_engine::advice::sampling::{Band, Sampled};
use noonday_engine::scenario::{Dimension, ScenarioDocument};
use noonday_engine::simulation::{HeatPath, Series};

/// A size of the picture, in units of which a line of labels has [`LINE`].
pub(super) struct Size {
    width: f64,
    gutters: (f64, f64),
    /// Heights of the sun's way and of the three bands.
    heights: [f64; 4],
}

/// As wide as a page, and as wide as a phone.
pub(super) const PAGE: Size = Size {
    width: 703.0,
    gutters: (40.0, 92.0),
    heights: [42.0, 114.0, 54.0, 54.0],
};
pub(super) const PHONE: Size = Size {
    width: 340.0,
    gutters: (36.0, 84.0),
    heights: [48.0, 150.0, 90.0, 90.0],
};

/// Height of a line of labels.
const LINE: f64 = 12.0;
/// Room between bands.
const GAP: f64 = 17.0;
/// Distance of the strokes that mark what is missed.
const HATCH_GAP: f64 = 3.0;

/// The picture as the text of an SVG.
pub(super) fn picture(
    (advice, document): (&Advice, &ScenarioDocument),
    sampled: Option<&Sampled>,
    voice: &Voice,
    size: &Size,
) -> String {
    let series = &advice.with_cooler.series;
    let (Some(from), Some(until)) = (series.time_h.first(), series.time_h.last()) else {
        return String::new();
    };
    let height = size.heights.iter().sum::<f64>() + 3.0 * GAP + 2.0 * LINE;
    let mut top = 0.0;
    let frames = size.heights.map(|height| {
        let frame = Frame {
            left: size.gutters.0,
            right: size.width - size.gutters.1,
            top,
            bottom: top + height,
            across: (*from, *until),
            up: (0.0, 1.0),
        };
        top = frame.bottom + GAP;
        frame
    });
    let [sky, degrees, heat, charge] = frames;
    let mut vector = Vector::new(size.width, height);
    sun(&mut vector, &sky, size, series);
    temperatures(&mut vector, degrees, advice, sampled, voice);
    heats(&mut vector, heat, series, voice);
    charges(&mut vector, charge, (series, document), sampled);
    let whole = Frame {
        top: degrees.top,
        ..charge
    };
    vector.hours(&whole, charge.bottom + LINE, voice);
    vector.finish()
}

/// The sun's height over the horizon, which runs across the whole page, with a disc for each hour of light.
fn sun(vector: &mut Vector, frame: &Frame, size: &Size, series: &Series) {
    let horizon = frame.bottom - 2.0;
    let heights: Vec<f64> = (0..series.time_h.len())
        .map(|index| series.sun_height_deg(index).unwrap_or_default())
        .collect();
    let most = heights.iter().copied().fold(1.0, f64::max);
    let y = |height: f64| horizon - height / most * (horizon - frame.top - 10.0);
    let mut way: Vec<(f64, f64)> = Vec::new();
    for (time_h, height) in series.time_h.iter().zip(&heights) {
        if *height > 0.0 {
            way.push((frame.x(*time_h), y(*height)));
        } else if !way.is_empty() {
            vector.line("way", &std::mem::take(&mut way));
        }
    }
    vector.line("way", &way);
    vector.line("horizon", &[(0.0, horizon), (size.width, horizon)]);
    let highest = heights.iter().position(|height| *height == most);
    for (index, (time_h, height)) in series.time_h.iter().zip(&heights).enumerate() {
        let on_the_hour = (time_h - time_h.round()).abs() < 1e-6;
        let place = (frame.x(*time_h), y(*height));
        if Some(index) == highest {
            vector.disc("sun high", place, 9.0);
        } else if on_the_hour && *height > 1.0 && is_a_day(series) {
            vector.disc("sun", place, 2.4);
        }
    }
}

/// Whether there is room for what belongs to single hours.
fn is_a_day(series: &Series) -> bool {
    match (series.time_h.first(), series.time_h.last()) {
        (Some(from), Some(until)) => until - from < 30.0,
        _ => false,
    }
}

fn name(vector: &mut Vector, frame: &Frame, name: &str, unit: &str) {
    let text = if unit.is_empty() {
        name.to_owned()
    } else {
        format!("{name}, {unit}")
    };
    let place = (frame.left, frame.top - LINE * 0.7);
    vector.text("band-name", place, Stand::Start, &text);
}

fn band(
    vector: &mut Vector,
    frame: &Frame,
    times: &[f64],
    band: &Band,
    shown: impl Fn(f64) -> f64,
) {
    let held = |values: &[f64]| -> Vec<f64> {
        let (low, high) = frame.up;
        let values = values.iter().map(|value| shown(*value).clamp(low, high));
        values.collect()
    };
    let mut outline = frame.places(times, &held(&band.low));
    let mut above = frame.places(times, &held(&band.high));
    above.reverse();
    outline.append(&mut above);
    if !outline.is_empty() {
        vector.area("spread", &outline);
    }
}

fn temperatures(
    vector: &mut Vector,
    frame: Frame,
    advice: &Advice,
    sampled: Option<&Sampled>,
    voice: &Voice,
) {
    let degrees = unit(Dimension::Temperature, voice.units);
    let shown =
        |values: &[f64]| -> Vec<f64> { values.iter().map(|value| degrees.shown(*value)).collect() };
    let series = &advice.with_cooler.series;
    let felt = shown(&series.felt_c);
    let lines = [
        (
            words::WITHOUT,
            "without",
            shown(&advice.without_cooler.series.felt_c),
        ),
        (words::OUTDOORS, "outdoors", shown(&series.outdoor_c)),
        (words::FELT, "felt", felt.clone()),
    ];
    let has_cooler = lines[0].2 != felt;
    let windows = &advice.verdict.windows;
    let limits = windows
        .iter()
        .map(|window| degrees.shown(window.highest_felt_c));
    let all = lines
        .iter()
        .flat_map(|(_, _, values)| values.iter().copied());
    let (low, high) = all
        .chain(limits)
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
            (low.min(value), high.max(value))
        });
    let frame = Frame {
        up: widened(low, high, 5),
        ..frame
    };
    for window in windows {
        let (from, until) = (frame.x(window.from_h), frame.x(window.until_h));
        vector.block("need", (from, frame.top), (until, frame.bottom));
    }
    vector.scale(&frame, &ticks(frame.up.0, frame.up.1, 5), whole);
    if let Some(found) = sampled {
        band(vector, &frame, &found.time_h, &found.felt_c, |value_c| {
            degrees.shown(value_c)
        });
    }
    for window in windows {
        let limit = degrees.shown(window.highest_felt_c);
        let (from, until) = (frame.x(window.from_h), frame.x(window.until_h));
        let y = frame.y(limit);
        let mut last = f64::NEG_INFINITY;
        for (time_h, value) in series.time_h.iter().zip(&felt) {
            let x = frame.x(*time_h);
            let inside = *time_h >= window.from_h && *time_h <= window.until_h;
            if inside && *value > limit && x - last >= HATCH_GAP {
                last = x;
                vector.line("missed", &[(x, y), (x, frame.y(*value))]);
            }
        }
        for ends in [
            [(from, y - 4.0), (from, y + 4.0)],
            [(until, y - 4.0), (until, y + 4.0)],
        ] {
            vector.line("limit", &ends);
        }
        vector.line("limit", &[(from, y), (until, y)]);
    }
    let mut endings: Vec<Ending> = Vec::new();
    for (name, class, values) in &lines {
        if *class == "without" && !has_cooler {
            continue;
        }
        let places = frame.places(&series.time_h, values);
        vector.line(class, &places);
        if let Some((_, y)) = places.last() {
            endings.push(((*name).to_owned(), *y, "ink"));
        }
    }
    let mut named: Vec<usize> = Vec::new();
    for window in windows {
        // Over several days there is no room for them; the situation says them all.
        if named.contains(&window.slot) || !is_a_day(series) {
            continue;
        }
        named.push(window.slot);
        let y = frame.y(degrees.shown(window.highest_felt_c)) - LINE * 0.7;
        let label = words::limit_label(window.highest_felt_c, voice);
        let from = frame.x(window.from_h);
        let (x, stand) = if frame.right - from > LINE * 6.0 {
            (from + 3.0, Stand::Start)
        } else {
            (frame.x(window.until_h) - 3.0, Stand::End)
        };
        vector.text("ink on", (x, y), stand, &label);
    }
    vector.endings(&frame, &endings, LINE);
    name(vector, &frame, text::BAND_TEMPERATURES, degrees.symbol);
}

fn heats(vector: &mut Vector, frame: Frame, series: &Series, voice: &Voice) {
    let flow = unit(Dimension::HeatFlow, voice.units);
    let samples = 0..series.time_h.len();
    let heat_w: Vec<[f64; HeatPath::COUNT]> =
        samples.map(|index| series.heat_w_at(index)).collect();
    let cooler = HeatPath::ALL
        .iter()
        .position(|path| *path == HeatPath::Cooler)
        .unwrap_or_default();
    let coming: Vec<f64> = heat_w
        .iter()
        .map(|heat| flow.shown(coming_in_w(heat)))
        .collect();
    let taken: Vec<f64> = heat_w
        .iter()
        .map(|heat| flow.shown(-heat.get(cooler).copied().unwrap_or_default()))
        .collect();
    let has_cooler = taken.iter().any(|value| value.abs() > 1.0);
    let all = coming.iter().chain(&taken);
    let (low, high) = all.fold((0.0_f64, 0.0_f64), |(low, high), value| {
        (low.min(*value), high.max(*value))
    });
    let frame = Frame {
        up: widened(low, high, 3),
        ..frame
    };
    vector.scale(&frame, &ticks(frame.up.0, frame.up.1, 3), |value| {
        if value.abs() >= 1_000.0 {
            let short = crate::format::entry_text(value / 1_000.0, 1);
            format!("{short}k").replace('-', "\u{2212}")
        } else {
            whole(value)
        }
    });
    let zero = frame.y(0.0);
    let mut outline = vec![(frame.left, zero)];
    outline.extend(frame.places(&series.time_h, &coming));
    outline.push((frame.right, zero));
    vector.area("warm", &outline);
    vector.line("zero", &[(frame.left, zero), (frame.right, zero)]);
    let mut endings: Vec<Ending> = Vec::new();
    for (label, class, values) in [
        (text::COMES_IN, "coming", &coming),
        (text::TAKEN_OUT, "taken", &taken),
    ] {
        if class == "taken" && !has_cooler {
            continue;
        }
        let places = frame.places(&series.time_h, values);
        vector.line(class, &places);
        if let Some((_, y)) = places.last() {
            endings.push((label.to_owned(), *y, "ink"));
        }
    }
    vector.endings(&frame, &endings, LINE);
    name(vector, &frame, text::BAND_HEAT, flow.symbol);
}

fn charges(
    vector: &mut Vector,
    frame: Frame,
    (series, document): (&Series, &ScenarioDocument),
    sampled: Option<&Sampled>,
) {
    let frame = Frame {
        up: (0.0, 100.0),
        ..frame
    };
    vector.scale(&frame, &[0.0, 50.0, 100.0], |value| format!("{value:.0}%"));
    if let Some(found) = sampled {
        band(
            vector,
            &frame,
            &found.time_h,
            &found.state_of_charge,
            |share| share * 100.0,
        );
    }
    let percent: Vec<f64> = series
        .state_of_charge
        .iter()
        .map(|share| share * 100.0)
        .collect();
    let places = frame.places(&series.time_h, &percent);
    vector.line("felt", &places);
    let mut endings: Vec<Ending> = Vec::new();
    if let Some((_, y)) = places.last() {
        endings.push((words::CHARGE.to_owned(), *y, "ink"));
    }
    let reserve = document.need.reserve_state_of_charge * 100.0;
    if reserve > 0.0 {
        let y = frame.y(reserve);
        vector.line("limit dashed", &[(frame.left, y), (frame.right, y)]);
        endings.push((words::RESERVE.to_owned(), y, "ink"));
    }
    vector.endings(&frame, &endings, LINE);
    name(vector, &frame, text::BAND_CHARGE, "");
}
