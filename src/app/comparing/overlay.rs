//! Several runs over each other: temperatures, heat that comes in, and charge. Each run has a letter, a dash and a colour.

use super::Ran;
use crate::charts::vector::{Ending, Stand, Vector, whole};
use crate::charts::{Frame, ticks, widened};
use crate::format::unit;
use crate::text::Voice;
use crate::text::comparing as text;
use crate::text::heat::coming_in_w;
use noonday_engine::advice::WindowVerdict;
use noonday_engine::scenario::Dimension;
use noonday_engine::simulation::Series;

/// A run among the others.
pub(super) struct Strand<'a> {
    /// Its place among all columns.
    pub place: usize,
    /// Its letter.
    pub letter: char,
    /// Its name.
    pub name: &'a str,
    /// The run.
    pub ran: &'a Ran,
}

/// Room on the page.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Room {
    pub width: f64,
    pub height: f64,
}

/// Width from which names have more room, CSS pixels.
const WIDE: f64 = 640.0;
/// Height of a line of labels, CSS pixels (`style/compare.css`).
const LINE: f64 = 14.0;
/// Mean width of a mark of a label, CSS pixels: less would cut names that fit, more let them run over the edge.
const MARK: f64 = 6.6;
const MOST_TICKS: usize = 5;

/// Classes of lines and of their labels, by place.
pub(super) const LINES: [&str; 4] = ["strand s0", "strand s1", "strand s2", "strand s3"];
const LABELS: [&str; 4] = ["name s0", "name s1", "name s2", "name s3"];

fn class(of: &[&'static str; 4], place: usize) -> &'static str {
    of.get(place).copied().unwrap_or("strand")
}

fn gutters(room: Room) -> (f64, f64) {
    if room.width >= WIDE {
        (46.0, 170.0)
    } else {
        (38.0, 92.0)
    }
}

/// The frame over all hours that any run has, below it room for the hours.
fn frame(strands: &[Strand], room: Room, up: (f64, f64)) -> Frame {
    let (left, right) = gutters(room);
    let times = || strands.iter().map(|strand| &strand.ran.series().time_h);
    let from = times().filter_map(|times| times.first().copied());
    let until = times().filter_map(|times| times.last().copied());
    let across = (
        from.fold(f64::INFINITY, f64::min),
        until.fold(f64::NEG_INFINITY, f64::max),
    );
    Frame {
        left,
        right: room.width - right,
        top: LINE * 0.6,
        bottom: room.height - LINE * 1.7,
        across: if across.1 > across.0 {
            across
        } else {
            (0.0, 24.0)
        },
        up,
    }
}

/// Lines of one kind over each other.
type Values = fn(&Series) -> Vec<f64>;

fn greatest(lines: &[Vec<f64>], others: &[f64]) -> (f64, f64) {
    let all = lines.iter().flatten().chain(others);
    all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
        (low.min(*value), high.max(*value))
    })
}

fn lines(vector: &mut Vector, frame: &Frame, strands: &[Strand], values: &[Vec<f64>], room: Room) {
    let mut endings: Vec<Ending> = Vec::new();
    for (strand, values) in strands.iter().zip(values) {
        let places = frame.places(&strand.ran.series().time_h, values);
        vector.line(class(&LINES, strand.place), &places);
        let Some((_, y)) = places.last() else {
            continue;
        };
        let marks = (gutters(room).1 - 10.0) / MARK;
        let label = text::line_name(strand.letter, strand.name, marks as usize);
        endings.push((label, *y, class(&LABELS, strand.place)));
    }
    vector.endings(frame, &endings, LINE);
}

/// Felt temperatures, with the hours of need and their limits, and the weather.
pub(super) fn temperatures(strands: &[Strand], room: Room, voice: &Voice) -> String {
    let degrees = unit(Dimension::Temperature, voice.units);
    let shown =
        |values: &[f64]| -> Vec<f64> { values.iter().map(|value| degrees.shown(*value)).collect() };
    let felt: Vec<Vec<f64>> = strands
        .iter()
        .map(|strand| shown(&strand.ran.series().felt_c))
        .collect();
    let outdoors: Vec<Vec<f64>> = strands
        .iter()
        .map(|strand| shown(&strand.ran.series().outdoor_c))
        .collect();
    let asked = asked(strands);
    let limits: Vec<f64> = asked
        .iter()
        .map(|asked| degrees.shown(asked.window.highest_felt_c))
        .collect();
    let all: Vec<Vec<f64>> = felt.iter().chain(&outdoors).cloned().collect();
    let (low, high) = greatest(&all, &limits);
    let up = widened(low, high, MOST_TICKS);
    let frame = frame(strands, room, up);
    let mut vector = Vector::new(room.width, room.height);
    for asked in &asked {
        let (from, until) = (frame.x(asked.window.from_h), frame.x(asked.window.until_h));
        vector.block("need", (from, frame.top), (until, frame.bottom));
    }
    vector.scale(&frame, &ticks(up.0, up.1, MOST_TICKS), whole);
    for (place, strand) in strands.iter().enumerate() {
        let first = outdoors.iter().position(|other| *other == outdoors[place]);
        // The same weather is drawn once.
        if first == Some(place) {
            let places = frame.places(&strand.ran.series().time_h, &outdoors[place]);
            vector.line("weather", &places);
            let with = same(&outdoors, place);
            let letters = text::letters(strands.len(), with.map(|index| strands[index].letter));
            if let Some((x, y)) = highest(&places) {
                let name = text::weather(&letters);
                let y = (y - LINE * 0.7).max(frame.top + LINE * 0.2);
                vector.text("soft on", (x, y), Stand::Middle, &name);
            }
        }
    }
    for (asked, limit) in asked.iter().zip(&limits) {
        let (from, until) = (frame.x(asked.window.from_h), frame.x(asked.window.until_h));
        let y = frame.y(*limit);
        vector.line("limit", &[(from, y - 4.0), (from, y + 4.0)]);
        vector.line("limit", &[(from, y), (until, y)]);
        vector.line("limit", &[(until, y - 4.0), (until, y + 4.0)]);
    }
    lines(&mut vector, &frame, strands, &felt, room);
    for (asked, limit) in asked.iter().zip(&limits) {
        let y = frame.y(*limit) - LINE * 0.7;
        let name = text::limit(asked.window.highest_felt_c, &asked.letters, voice);
        let from = frame.x(asked.window.from_h);
        let (x, stand) = if frame.right - from > LINE * 6.0 {
            (from + 3.0, Stand::Start)
        } else {
            (frame.x(asked.window.until_h) - 3.0, Stand::End)
        };
        vector.text("ink on", (x, y), stand, &name);
    }
    corner(&mut vector, &frame, degrees.symbol);
    vector.hours(&frame, frame.bottom + LINE, voice);
    vector.finish()
}

fn same(all: &[Vec<f64>], place: usize) -> impl Iterator<Item = usize> {
    let of = &all[place];
    (0..all.len()).filter(move |index| all[*index] == *of)
}

fn highest(places: &[(f64, f64)]) -> Option<(f64, f64)> {
    places
        .iter()
        .copied()
        .min_by(|one, other| one.1.total_cmp(&other.1))
}

fn corner(vector: &mut Vector, frame: &Frame, unit: &str) {
    let place = (frame.left + 4.0, frame.top + LINE * 0.5);
    vector.text("soft on", place, Stand::Start, unit);
}

/// A limit with the runs that ask for it.
struct Asked<'a> {
    window: &'a WindowVerdict,
    letters: String,
}

/// Every window that differs from the others, on the first day on which it stands.
fn asked<'a>(strands: &[Strand<'a>]) -> Vec<Asked<'a>> {
    let mut found: Vec<(&WindowVerdict, Vec<char>)> = Vec::new();
    for strand in strands {
        for window in &strand.ran.advice.verdict.windows {
            let equal = |other: &&WindowVerdict| {
                other.from_h == window.from_h
                    && other.until_h == window.until_h
                    && other.highest_felt_c == window.highest_felt_c
            };
            match found.iter_mut().find(|(other, _)| equal(other)) {
                Some((_, letters)) if letters.contains(&strand.letter) => {}
                Some((_, letters)) => letters.push(strand.letter),
                None => found.push((window, vec![strand.letter])),
            }
        }
    }
    found
        .into_iter()
        .map(|(window, letters)| Asked {
            window,
            letters: text::letters(strands.len(), letters.into_iter()),
        })
        .collect()
}

/// Heat that comes in by all ways but what furniture gives back.
pub(super) fn heat(strands: &[Strand], room: Room, voice: &Voice) -> String {
    let flow = unit(Dimension::HeatFlow, voice.units);
    let values: Vec<Vec<f64>> = strands
        .iter()
        .map(|strand| {
            let series = strand.ran.series();
            let samples = 0..series.time_h.len();
            samples
                .map(|index| flow.shown(coming_in_w(&series.heat_w_at(index))))
                .collect()
        })
        .collect();
    let (low, high) = greatest(&values, &[0.0]);
    let up = widened(low, high, MOST_TICKS);
    let frame = frame(strands, room, up);
    let mut vector = Vector::new(room.width, room.height);
    vector.scale(&frame, &ticks(up.0, up.1, MOST_TICKS), thousands);
    vector.line(
        "zero",
        &[(frame.left, frame.y(0.0)), (frame.right, frame.y(0.0))],
    );
    lines(&mut vector, &frame, strands, &values, room);
    corner(&mut vector, &frame, flow.symbol);
    vector.hours(&frame, frame.bottom + LINE, voice);
    vector.finish()
}

fn thousands(value: f64) -> String {
    if value.abs() >= 1_000.0 {
        let short = crate::format::entry_text(value / 1_000.0, 1);
        format!("{short}k").replace('-', "\u{2212}")
    } else {
        whole(value)
    }
}

/// The most heat that comes in at a time, W.
pub(super) fn most_heat_w(ran: &Ran) -> f64 {
    let series = ran.series();
    let samples = 0..series.time_h.len();
    let heat = samples.map(|index| coming_in_w(&series.heat_w_at(index)));
    heat.fold(f64::NEG_INFINITY, f64::max)
}

/// Charge of the banks, with the reserves.
pub(super) fn charge(strands: &[Strand], room: Room, voice: &Voice) -> String {
    let percent: Values = |series| {
        let shares = series.state_of_charge.iter();
        shares.map(|share| share * 100.0).collect()
    };
    let values: Vec<Vec<f64>> = strands
        .iter()
        .map(|strand| percent(strand.ran.series()))
        .collect();
    let frame = frame(strands, room, (0.0, 100.0));
    let mut vector = Vector::new(room.width, room.height);
    vector.scale(&frame, &[0.0, 50.0, 100.0], |value| format!("{value:.0}%"));
    let mut reserves: Vec<(f64, Vec<char>)> = Vec::new();
    for strand in strands {
        let reserve = strand.ran.scenario.document().need.reserve_state_of_charge;
        match reserves.iter_mut().find(|(other, _)| *other == reserve) {
            Some((_, letters)) => letters.push(strand.letter),
            None => reserves.push((reserve, vec![strand.letter])),
        }
    }
    for (reserve, letters) in reserves {
        if reserve <= 0.0 {
            continue;
        }
        let y = frame.y(reserve * 100.0);
        vector.line("limit dashed", &[(frame.left, y), (frame.right, y)]);
        let letters = text::letters(strands.len(), letters.into_iter());
        let place = (frame.left + 4.0, y - LINE * 0.6);
        vector.text("ink on", place, Stand::Start, &text::reserve(&letters));
    }
    lines(&mut vector, &frame, strands, &values, room);
    vector.hours(&frame, frame.bottom + LINE, voice);
    vector.finish()
}

/// A piece of a run's line, for its head.
pub(super) fn sample(place: usize) -> String {
    let mut vector = Vector::new(44.0, 12.0);
    vector.line(class(&LINES, place), &[(1.0, 6.0), (43.0, 6.0)]);
    vector.finish()
}
