//! Every heat path as a band on one of the sheets: where it runs, which way, how wide, and where its number stands.

use super::scene::{Cut, GROUND, Place, WIDTH};
use crate::charts::spread;
use noonday_engine::scenario::ScenarioDocument;
use noonday_engine::simulation::{HeatPath, Series};

/// Heat that would be written as zero, W: such a path is neither drawn nor named.
pub const LEAST_SHOWN_W: f64 = 0.5;
/// How far an arrow reaches outside the shell and into the cabin.
const OUTSIDE: f64 = 18.0;
const INSIDE: f64 = 14.0;
/// The same across, where figures sit close to the walls.
const INSIDE_ACROSS: f64 = 8.0;
/// Length of an arrow that rises from something inside.
const RISE: f64 = 18.0;
/// Distance of sun and warmth on one pane.
const PANE_GAP: f64 = 14.0;
/// The first and last place of numbers above and below, and least distances between numbers.
const FROM: f64 = 48.0;
const APART_ACROSS: f64 = 68.0;
const APART_DOWN: f64 = 26.0;
/// Between what numbers at the sides stand.
const TOP: f64 = 84.0;

/// Where across the cabin people and animals sit, share of its width from the left.
pub const PEOPLE_AT: f64 = 0.36;
pub const ANIMALS_AT: f64 = 0.72;

/// At which edge of the sheet a number stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// Above.
    Top,
    /// Left.
    Left,
    /// Right.
    Right,
    /// Below.
    Bottom,
}

/// Heat on its way.
#[derive(Clone, Debug, PartialEq)]
pub struct Band {
    /// By which path.
    pub path: HeatPath,
    /// How much comes in, W; negative goes out.
    pub heat_w: f64,
    /// Its width on the sheet.
    pub width: f64,
    /// On which sheet: 0 lengthwise, 1 across.
    pub sheet: usize,
    /// Where it begins.
    pub from: Place,
    /// Where its head points.
    pub to: Place,
    /// What its number is tied to.
    pub lead: Place,
    /// Where its number stands.
    pub label: Place,
    /// At which edge.
    pub edge: Edge,
}

/// A course from outside, or from something inside, into the cabin.
struct Course {
    sheet: usize,
    from: Place,
    to: Place,
    lead: Place,
    edge: Edge,
    /// The widest that a band may be here.
    room: f64,
}

/// Bands at a sample, each with a place for its number.
pub fn bands(
    series: &Series,
    document: &ScenarioDocument,
    cuts: &[Cut; 2],
    index: usize,
) -> Vec<Band> {
    let right = series.sun_direction.get(index).map_or(0.0, |sun| sun[0]);
    let courses = HeatPath::ALL.map(|path| course(path, document, cuts, right > 0.0));
    let per_watt = width_per_watt(series, &courses);
    let mut bands: Vec<Band> = HeatPath::ALL
        .into_iter()
        .zip(series.heat_w_at(index))
        .zip(courses)
        .filter(|((_, heat_w), _)| heat_w.abs() >= LEAST_SHOWN_W)
        .map(|((path, heat_w), course)| {
            let (from, to) = if heat_w > 0.0 {
                (course.from, course.to)
            } else {
                (course.to, course.from)
            };
            Band {
                path,
                heat_w,
                width: heat_w.abs() * per_watt,
                sheet: course.sheet,
                from,
                to,
                lead: course.lead,
                label: course.lead,
                edge: course.edge,
            }
        })
        .collect();
    for sheet in 0..cuts.len() {
        for edge in [Edge::Top, Edge::Left, Edge::Right, Edge::Bottom] {
            place_labels(&mut bands, sheet, edge);
        }
    }
    bands
}

/// One scale for all paths and the whole run, so that widths can be compared from hour to hour.
fn width_per_watt(series: &Series, courses: &[Course; HeatPath::COUNT]) -> f64 {
    let mut most_w = [1.0_f64; HeatPath::COUNT];
    for heat_w in &series.heat_w {
        for (most, watts) in most_w.iter_mut().zip(heat_w) {
            *most = most.max(watts.abs());
        }
    }
    let fitting = courses.iter().zip(most_w);
    fitting.fold(f64::INFINITY, |least, (course, most)| {
        least.min(course.room / most)
    })
}

fn place_labels(bands: &mut [Band], sheet: usize, edge: Edge) {
    let mut here: Vec<&mut Band> = bands
        .iter_mut()
        .filter(|band| band.sheet == sheet && band.edge == edge)
        .collect();
    let level = matches!(edge, Edge::Top | Edge::Bottom);
    let along = |place: Place| if level { place.0 } else { place.1 };
    let wanted: Vec<f64> = here.iter().map(|band| along(band.lead)).collect();
    let (apart, low, high) = if level {
        (APART_ACROSS, FROM, WIDTH - FROM)
    } else {
        (APART_DOWN, TOP, GROUND - 8.0)
    };
    let placed = spread(&wanted, apart, low, high);
    for (band, at) in here.iter_mut().zip(placed) {
        band.label = match edge {
            Edge::Top => (at, 26.0),
            Edge::Bottom => (at, GROUND + 15.0),
            Edge::Left => (band.lead.0 - 4.0, at),
            Edge::Right => (band.lead.0 + 4.0, at),
        };
    }
}

fn course(path: HeatPath, document: &ScenarioDocument, cuts: &[Cut; 2], sun_right: bool) -> Course {
    let [long, wide] = cuts;
    let inside = &long.inner;
    match path {
        HeatPath::Roof => through_roof(long, 0, inside.at(0.15, 0.0).0),
        HeatPath::Openings => through_roof(long, 0, inside.at(0.42, 0.0).0),
        HeatPath::Fan => through_roof(long, 0, inside.at(0.62, 0.0).0),
        HeatPath::Cooler => through_roof(long, 0, inside.at(0.85, 0.0).0),
        HeatPath::Floor => through_floor(long),
        HeatPath::Nose => through_wall(long, 0, false, 0.74),
        HeatPath::Rear => through_wall(long, 0, true, 0.5),
        HeatPath::Leakage => through_wall(long, 0, true, 0.92),
        HeatPath::Left => through_wall(wide, 1, false, 0.86),
        HeatPath::Right => through_wall(wide, 1, true, 0.86),
        HeatPath::GlassSun => through_glass(wide, sun_right, -0.5),
        HeatPath::GlassWarmth => through_glass(wide, !sun_right, 0.5),
        HeatPath::Cooking => from_inside(long, 0, 0.4, cooking_m(document)),
        HeatPath::Appliances => from_inside(long, 0, 0.6, appliance_m(document)),
        HeatPath::Stored => from_inside(long, 0, 0.84, furniture_m(document)),
        HeatPath::People => from_inside(wide, 1, PEOPLE_AT, person_m(document)),
        HeatPath::Animals => from_inside(wide, 1, ANIMALS_AT, dog_m(document)),
    }
}

/// Height of the sign for the stove, m.
pub fn cooking_m(document: &ScenarioDocument) -> f64 {
    0.2 * document.vehicle.height_m
}

/// Height of the sign for appliances, m.
pub fn appliance_m(document: &ScenarioDocument) -> f64 {
    0.28 * document.vehicle.height_m
}

/// Height of the sign for furniture, m.
pub fn furniture_m(document: &ScenarioDocument) -> f64 {
    0.22 * document.vehicle.height_m
}

/// Height of a seated person, m: common practice, no source; less where the roof is too low for it.
pub fn person_m(document: &ScenarioDocument) -> f64 {
    1.25_f64.min(0.64 * document.vehicle.height_m)
}

/// Height of a sitting dog, m: common practice, no source.
pub fn dog_m(document: &ScenarioDocument) -> f64 {
    0.58_f64.min(0.5 * document.vehicle.height_m)
}

fn through_roof(cut: &Cut, sheet: usize, x: f64) -> Course {
    let lead = (x, cut.outer.top - OUTSIDE);
    Course {
        sheet,
        from: lead,
        to: (x, cut.inner.top + INSIDE),
        lead,
        edge: Edge::Top,
        room: (0.2 * cut.inner.width()).min(36.0),
    }
}

fn through_floor(cut: &Cut) -> Course {
    let (x, _) = cut.inner.at(0.13, 0.0);
    let lead = (x, (cut.outer.bottom + OUTSIDE).min(GROUND - 2.0));
    Course {
        sheet: 0,
        from: lead,
        to: (x, cut.inner.bottom - INSIDE),
        lead,
        edge: Edge::Bottom,
        room: (0.2 * cut.inner.width()).min(24.0),
    }
}

/// Through the left or the right wall at a share of the height from the top.
fn through_wall(cut: &Cut, sheet: usize, right: bool, down: f64) -> Course {
    let (_, y) = cut.inner.at(0.0, down);
    let inside = if sheet == 0 { INSIDE } else { INSIDE_ACROSS };
    let (from, to, edge) = if right {
        (
            cut.outer.right + OUTSIDE,
            cut.inner.right - inside,
            Edge::Right,
        )
    } else {
        (
            cut.outer.left - OUTSIDE,
            cut.inner.left + inside,
            Edge::Left,
        )
    };
    Course {
        sheet,
        from: (from, y),
        to: (to, y),
        lead: (from, y),
        edge,
        room: (0.26 * cut.inner.height()).min(24.0),
    }
}

/// Through a pane of the side wanted, else of the other, else of the roof, else on the pane beyond the cut.
fn through_glass(cut: &Cut, right: bool, offset: f64) -> Course {
    let sides = if right { [1, 0] } else { [0, 1] };
    for side in sides {
        if let Some(Some(pane)) = cut.panes.get(side) {
            let both = cut.panes.iter().take(2).flatten().count() == 2;
            let shift = if both { 0.0 } else { offset * PANE_GAP };
            let middle = 0.5 * (pane.top + pane.bottom) + shift;
            let down = (middle - cut.inner.top) / cut.inner.height();
            return through_wall(cut, 1, side == 1, down);
        }
    }
    if let Some(pane) = cut.panes.get(2).copied().flatten() {
        return through_roof(cut, 1, 0.5 * (pane.left + pane.right) + offset * PANE_GAP);
    }
    let (x, y) = cut.inner.at(0.5, 0.38);
    let edge = if right { Edge::Right } else { Edge::Left };
    let ahead = if right { 12.0 } else { -12.0 };
    let y = y + offset * PANE_GAP;
    let outside = if right {
        cut.outer.right + OUTSIDE
    } else {
        cut.outer.left - OUTSIDE
    };
    Course {
        sheet: 1,
        from: (x + ahead, y),
        to: (x - ahead, y),
        lead: (outside, y),
        edge,
        room: (0.16 * cut.inner.height()).min(14.0),
    }
}

/// Rising from something so high that stands on the floor.
fn from_inside(cut: &Cut, sheet: usize, across: f64, high_m: f64) -> Course {
    let (x, floor) = cut.inner.at(across, 1.0);
    let top = floor - high_m * cut.scale - 2.0;
    Course {
        sheet,
        from: (x, top),
        to: (x, (top - RISE).max(cut.inner.top + 2.0)),
        lead: (x, floor),
        edge: Edge::Bottom,
        room: (0.18 * cut.inner.width()).min(24.0),
    }
}

#[cfg(test)]
mod tests;
