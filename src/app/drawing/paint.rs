//! Puts the vehicle, its signs, the sun, the heat and its numbers on the two sheets.

use super::bands::{
    ANIMALS_AT, Band, Edge, PEOPLE_AT, appliance_m, bands, cooking_m, dog_m, furniture_m, person_m,
};
use super::scene::{Cut, GROUND, HEIGHT, Place, Rect, WIDTH, across, lengthwise};
use super::sheet::{Sheet, Stand};
use crate::format::{UnitSystem, unit};
use crate::text::Voice;
use crate::text::drawing as words;
use noonday_engine::advice::Advice;
use noonday_engine::scenario::{Dimension, FanUse, ScenarioDocument};
use noonday_engine::simulation::{HeatPath, Series};

/// What goes out is hatched: the pattern of both sheets.
const HATCHING: &str = "<defs><pattern id=\"heat-out\" width=\"3.6\" height=\"3.6\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><rect class=\"d-ground\" width=\"3.6\" height=\"3.6\"/><path class=\"d-hatch\" d=\"M0 0V3.6\"/></pattern></defs>";
/// Distance of the sun from the edges of its sheet.
const SUN_INSET: f64 = 9.0;
/// Distance of its rays from one another.
const RAY_GAP: f64 = 17.0;
/// Length of an arrow's head, and how far it is wider than the arrow on either side.
const HEAD: f64 = 8.0;
const BARB: f64 = 3.5;
/// Most people and dogs drawn.
const MOST_FIGURES: f64 = 3.0;
/// A seated person one metre high, on the floor at the origin.
const PERSON: &str =
    "M-.27 0Q-.34-.34-.2-.52Q-.1-.62 0-.62Q.1-.62.2-.52Q.34-.34.27 0ZM0-.66A.17.17 0 1 1 .01-.66Z";
/// A sitting dog one metre high, looking to the left.
const DOG: &str = "M-.3 0V-.1L-.22-.12L-.2-.46L-.46-.5L-.5-.64L-.3-.8L-.2-1L-.08-.82Q.02-.74.04-.6Q.36-.44.38-.14L.56-.24L.6-.16L.4 0Z";

/// The drawing at a sample: two SVGs as text, without a word that a user wrote.
pub fn drawing(
    advice: &Advice,
    document: &ScenarioDocument,
    index: usize,
    voice: &Voice,
) -> String {
    let series = &advice.with_cooler.series;
    let cuts = [lengthwise(document), across(document)];
    let bands = bands(series, document, &cuts, index);
    let [right, ahead, up] = series.sun_direction.get(index).copied().unwrap_or_default();
    let mut svg = String::new();
    for (number, cut) in cuts.iter().enumerate() {
        let mut sheet = Sheet::new();
        let across = if number == 0 { -ahead } else { right };
        if number == 0 {
            sheet.raw(HATCHING);
        }
        if up > 0.0 {
            sun(&mut sheet, cut, (across, -up));
        }
        body(&mut sheet, cut, number);
        if number == 0 {
            devices(&mut sheet, cut, document);
        } else {
            figures(&mut sheet, cut, document, &bands);
        }
        let here: Vec<&Band> = bands.iter().filter(|band| band.sheet == number).collect();
        for band in &here {
            sheet.line("d-lead", lead_end(band), band.lead);
        }
        for band in &here {
            arrow(&mut sheet, band);
        }
        for band in &here {
            number_of(&mut sheet, band, voice);
        }
        if number == 0 {
            temperatures(&mut sheet, cut, series, index, voice);
        }
        foot(&mut sheet, cut, number, voice);
        svg.push_str(&sheet.finish());
    }
    svg
}

/// The sun where it stands in the plane of the cut, and rays on their way to the body, which hides them.
fn sun(sheet: &mut Sheet, cut: &Cut, (across, down): Place) {
    let (x, y) = cut.outer.at(0.5, 0.5);
    let reach = |step: f64, from: f64, low: f64, high: f64| match step {
        step if step > 1e-9 => (high - from) / step,
        step if step < -1e-9 => (low - from) / step,
        _ => f64::INFINITY,
    };
    let far = reach(across, x, SUN_INSET, WIDTH - SUN_INSET).min(reach(
        down,
        y,
        SUN_INSET,
        GROUND - SUN_INSET,
    ));
    if !far.is_finite() {
        return;
    }
    let place = (x + far * across, y + far * down);
    let length = (across * across + down * down).sqrt();
    let (aside, along) = (down / length * RAY_GAP, -across / length * RAY_GAP);
    for ray in [-1.0, 0.0, 1.0] {
        let shifted = |(x, y): Place| (x + ray * aside, y + ray * along);
        sheet.line("d-ray", shifted(place), shifted((x, y)));
    }
    sheet.disc("d-sun", place, 6.5);
}

/// Ground, wheels, shell, panes.
fn body(sheet: &mut Sheet, cut: &Cut, number: usize) {
    let below = GROUND - cut.outer.bottom;
    let radius = (0.75 * below).max(3.0);
    for share in if number == 0 {
        [0.2, 0.8]
    } else {
        [0.11, 0.89]
    } {
        let (x, _) = cut.outer.at(share, 1.0);
        if number == 0 {
            sheet.disc("d-wheel", (x, GROUND - radius), radius);
            continue;
        }
        let wheel = Rect {
            left: x - 0.35 * radius,
            right: x + 0.35 * radius,
            top: GROUND - 2.0 * radius,
            bottom: GROUND,
        };
        sheet.rect("d-wheel", &wheel);
    }
    sheet.line("d-earth", (18.0, GROUND), (WIDTH - 18.0, GROUND));
    sheet.rect("d-shell", &cut.outer);
    sheet.rect("d-room", &cut.inner);
    if let Some(pane) = &cut.beyond {
        sheet.rect("d-beyond", pane);
    }
    for pane in cut.panes.iter().flatten() {
        sheet.rect("d-pane", pane);
    }
}

/// Signs of what stands in the cabin and on its roof, where there is such a thing.
fn devices(sheet: &mut Sheet, cut: &Cut, document: &ScenarioDocument) {
    let block = |middle: f64, wide: f64, high_m: f64| {
        let (x, floor) = cut.inner.at(middle, 1.0);
        let half = 0.5 * wide * cut.inner.width();
        Rect {
            left: x - half,
            right: x + half,
            top: floor - high_m * cut.scale,
            bottom: floor,
        }
    };
    sheet.rect("d-thing", &block(0.84, 0.24, furniture_m(document)));
    let fridge = block(0.6, 0.1, appliance_m(document));
    sheet.rect("d-thing", &fridge);
    sheet.line("d-mark", fridge.at(0.0, 0.4), fridge.at(1.0, 0.4));
    if document.occupants.cooking_heat_w > 0.0 {
        let stove = block(0.4, 0.13, cooking_m(document));
        sheet.rect("d-thing", &stove);
        sheet.line("d-mark", stove.at(0.1, -0.12), stove.at(0.4, -0.12));
        sheet.line("d-mark", stove.at(0.6, -0.12), stove.at(0.9, -0.12));
    }
    let cap = |middle: f64, wide_m: f64, high_m: f64| {
        let (x, top) = (cut.inner.at(middle, 0.0).0, cut.outer.top);
        let half = 0.5 * (wide_m * cut.scale).min(0.18 * cut.inner.width());
        Rect {
            left: x - half,
            right: x + half,
            top: top - high_m * cut.scale,
            bottom: top,
        }
    };
    if document.ventilation.fan_use != FanUse::Off {
        sheet.rect("d-thing", &cap(0.62, 0.4, 0.08));
    }
    if document.cooler.installed {
        sheet.rect("d-thing", &cap(0.85, 0.75, 0.2));
    }
    if document.ventilation.opening_area_m2 > 0.0 {
        let flap = cap(0.42, 0.4, 0.12);
        sheet.line("d-mark", flap.at(0.0, 1.0), flap.at(1.0, 0.0));
    }
}

/// People and dogs while they are in.
fn figures(sheet: &mut Sheet, cut: &Cut, document: &ScenarioDocument, bands: &[Band]) {
    let occupants = &document.occupants;
    let is_in = |path: HeatPath| bands.iter().any(|band| band.path == path);
    let mut row = |shape: &str, middle: f64, high_m: f64, count: f64| {
        let drawn = count.ceil().clamp(1.0, MOST_FIGURES);
        let (x, floor) = cut.inner.at(middle, 1.0);
        let apart = 0.11 * cut.inner.width();
        for figure in 0..drawn as usize {
            let shift = (figure as f64 - 0.5 * (drawn - 1.0)) * apart;
            sheet.shape("d-who", (x + shift, floor), high_m * cut.scale, shape);
        }
    };
    if is_in(HeatPath::People) {
        row(PERSON, PEOPLE_AT, person_m(document), occupants.people);
    }
    if is_in(HeatPath::Animals) {
        row(DOG, ANIMALS_AT, dog_m(document), occupants.dogs);
    }
}

fn arrow(sheet: &mut Sheet, band: &Band) {
    let class = if band.heat_w > 0.0 { "d-in" } else { "d-out" };
    sheet.outline(class, &arrow_outline(band));
}

/// Outline of an arrow whose shaft is as wide as its band.
fn arrow_outline(band: &Band) -> [Place; 7] {
    let (from, to) = (band.from, band.to);
    let (across, down) = (to.0 - from.0, to.1 - from.1);
    let length = (across * across + down * down).sqrt().max(1e-9);
    let (ahead_x, ahead_y) = (across / length, down / length);
    let neck = length - HEAD.min(0.5 * length);
    let place = |along: f64, aside: f64| {
        (
            from.0 + along * ahead_x - aside * ahead_y,
            from.1 + along * ahead_y + aside * ahead_x,
        )
    };
    let half = 0.5 * band.width;
    [
        place(0.0, half),
        place(neck, half),
        place(neck, half + BARB),
        to,
        place(neck, -half - BARB),
        place(neck, -half),
        place(0.0, -half),
    ]
}

/// Where the line to a band leaves its number.
fn lead_end(band: &Band) -> Place {
    let (x, y) = band.label;
    match band.edge {
        Edge::Top => (x, y + 15.0),
        Edge::Bottom => (x, y - 11.0),
        Edge::Left => (x + 2.0, y),
        Edge::Right => (x - 2.0, y),
    }
}

/// The name of a band and its number in two lines.
fn number_of(sheet: &mut Sheet, band: &Band, voice: &Voice) {
    let (x, y) = band.label;
    let (stand, name_y) = match band.edge {
        Edge::Top | Edge::Bottom => (Stand::Middle, y),
        Edge::Left => (Stand::End, y - 2.0),
        Edge::Right => (Stand::Start, y - 2.0),
    };
    let shown = unit(Dimension::HeatFlow, voice.units).shown(band.heat_w);
    sheet.text("d-name", (x, name_y), stand, words::short_name(band.path));
    let number = voice.units.number(shown, 0);
    sheet.text("d-number", (x, name_y + 12.5), stand, &number);
}

/// Temperatures: outdoors outside, the cabin's inside, or beside it where it is too low.
fn temperatures(sheet: &mut Sheet, cut: &Cut, series: &Series, index: usize, voice: &Voice) {
    let degrees = |values: &[f64]| {
        let value = values.get(index).copied().unwrap_or_default();
        voice.units.temperature(value, 0)
    };
    sheet.text("d-soft", (18.0, 58.0), Stand::Start, words::OUTDOORS);
    let outdoors = degrees(&series.outdoor_c);
    sheet.text("d-degrees", (18.0, 71.0), Stand::Start, &outdoors);
    let cabin = format!("{} {}", words::CABIN, degrees(&series.cabin_c));
    let felt = format!("{} {}", words::FELT, degrees(&series.felt_c));
    let (middle, _) = cut.inner.at(0.5, 0.0);
    let y = cut.inner.top + 30.0;
    let roomy = cut.inner.height() > 62.0;
    if roomy && cut.inner.width() > 140.0 {
        let both = format!("{cabin}, {felt}");
        sheet.text("d-degrees", (middle, y), Stand::Middle, &both);
    } else {
        let x = WIDTH - 18.0;
        sheet.text("d-degrees", (x, 58.0), Stand::End, &cabin);
        sheet.text("d-degrees", (x, 71.0), Stand::End, &felt);
    }
}

/// What the sheet shows, and a measure of length.
fn foot(sheet: &mut Sheet, cut: &Cut, number: usize, voice: &Voice) {
    let y = HEIGHT - 4.0;
    let title = if number == 0 {
        words::LENGTHWISE
    } else {
        words::ACROSS
    };
    sheet.text("d-soft", (18.0, y), Stand::Start, title);
    let shown = match voice.units {
        UnitSystem::Us => 3.0,
        UnitSystem::Metric => 1.0,
    };
    let length_m = unit(Dimension::Length, voice.units).si(shown);
    let (right, left) = (WIDTH - 18.0, WIDTH - 18.0 - length_m * cut.scale);
    for (from, to) in [
        ((left, y - 3.0), (right, y - 3.0)),
        ((left, y - 6.0), (left, y)),
        ((right, y - 6.0), (right, y)),
    ] {
        sheet.line("d-mark", from, to);
    }
    let measure = voice.units.quantity(Dimension::Length, length_m);
    sheet.text("d-soft", (left - 4.0, y), Stand::End, &measure);
}
