//! The plan as text of an SVG: to scale, the front on the left, so that the right side of the vehicle is at the top.

use crate::text::Voice;
use crate::text::roof as text;
use noonday_engine::advice::RoofReport;
use noonday_engine::roof::{Finding, ItemKind, Plan, Rectangle, ribs_m};
use std::fmt::Write;

/// Width of the sheet, and what of it the roof may take, units.
pub const WIDTH: f64 = 360.0;
const MOST_LENGTH: f64 = 308.0;
const MOST_WIDTH: f64 = 300.0;
const LEFT: f64 = 46.0;
const TOP: f64 = 22.0;
const BELOW: f64 = 40.0;

/// Least side of what can be touched, units.
const TOUCHED: f64 = 42.0;

/// Widest letter of a name, units.
const LETTER: f64 = 7.0;

/// How the roof lies on the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sight {
    /// Units for each metre.
    pub scale: f64,
    width_m: f64,
    length_m: f64,
}

// Writing into a text cannot fail, which is why what it gives is put aside throughout.
impl Sight {
    pub fn of(plan: &Plan) -> Self {
        Self {
            scale: (MOST_LENGTH / plan.length_m).min(MOST_WIDTH / plan.width_m),
            width_m: plan.width_m,
            length_m: plan.length_m,
        }
    }

    /// Box of the sheet as SVG writes it.
    pub fn view_box(&self) -> String {
        let height = TOP + self.width_m * self.scale + BELOW;
        format!("0 0 {WIDTH} {height:.1}")
    }

    fn x(&self, from_front_m: f64) -> f64 {
        LEFT + from_front_m * self.scale
    }

    fn y(&self, from_left_m: f64) -> f64 {
        TOP + (self.width_m - from_left_m) * self.scale
    }

    /// Left, top, width and height of a rectangle on the sheet.
    fn on_sheet(&self, place: &Rectangle) -> [f64; 4] {
        [
            self.x(place.from_front_m),
            self.y(place.right_m()),
            place.length_m * self.scale,
            place.width_m * self.scale,
        ]
    }

    fn rectangle(&self, out: &mut String, class: &str, place: &Rectangle) {
        let [x, y, width, height] = self.on_sheet(place);
        let _ = write!(
            out,
            "<rect class=\"{class}\" x=\"{x:.2}\" y=\"{y:.2}\" width=\"{width:.2}\" height=\"{height:.2}\"/>"
        );
    }
}

fn line(out: &mut String, class: &str, from: (f64, f64), to: (f64, f64)) {
    let _ = write!(
        out,
        "<path class=\"{class}\" d=\"M{:.2} {:.2}L{:.2} {:.2}\"/>",
        from.0, from.1, to.0, to.1
    );
}

fn label(out: &mut String, class: &str, at: (f64, f64), anchor: &str, words: &str) {
    let _ = write!(
        out,
        "<text class=\"{class}\" x=\"{:.1}\" y=\"{:.1}\" text-anchor=\"{anchor}\">{words}</text>",
        at.0, at.1
    );
}

/// A line between two places with ends across it and its length beside it.
fn dimension(out: &mut String, from: (f64, f64), to: (f64, f64), words: &str) {
    const END: f64 = 3.0;
    line(out, "r-dimension", from, to);
    let lies = (from.1 - to.1).abs() < 1e-6;
    let (across_x, across_y) = if lies { (0.0, END) } else { (END, 0.0) };
    for (x, y) in [from, to] {
        line(
            out,
            "r-dimension",
            (x - across_x, y - across_y),
            (x + across_x, y + across_y),
        );
    }
    let middle = (0.5 * (from.0 + to.0), 0.5 * (from.1 + to.1));
    if lies {
        label(out, "r-length", (middle.0, middle.1 - 4.0), "middle", words);
        return;
    }
    let _ = write!(
        out,
        "<text class=\"r-length\" text-anchor=\"middle\" transform=\"translate({:.1} {:.1}) rotate(-90)\">{words}</text>",
        middle.0 - 4.0,
        middle.1
    );
}

/// The roof with its ribs, its measures, and those of what is chosen.
pub fn ground(report: &RoofReport, voice: &Voice) -> String {
    let plan = &report.plan;
    let sight = Sight::of(plan);
    let mut out = String::from(
        "<defs><pattern id=\"roof-wrong\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\"><path class=\"r-hatch\" d=\"M0 6L6 0\"/></pattern></defs>",
    );
    let whole = Rectangle {
        length_m: plan.length_m,
        width_m: plan.width_m,
        ..Rectangle::default()
    };
    sight.rectangle(&mut out, "r-roof", &whole);
    let (top, bottom) = (sight.y(plan.width_m), sight.y(0.0));
    for rib_m in ribs_m(plan) {
        let x = sight.x(rib_m);
        line(&mut out, "r-rib", (x, top), (x, bottom));
    }
    let (front, rear) = (sight.x(0.0), sight.x(sight.length_m));
    let middle = 0.5 * (top + bottom);
    let _ = write!(
        out,
        "<path class=\"r-nose\" d=\"M{front:.1} {top:.1}Q{:.1} {middle:.1} {front:.1} {bottom:.1}\"/>",
        front - 16.0
    );
    let [right, left] = text::SIDES;
    label(&mut out, "r-side", (front, top - 8.0), "start", text::FRONT);
    label(&mut out, "r-side", (rear, top - 8.0), "end", right);
    label(&mut out, "r-side", (rear, bottom + 14.0), "end", left);
    dimension(
        &mut out,
        (front, bottom + 32.0),
        (rear, bottom + 32.0),
        &text::tape(plan.length_m, voice),
    );
    dimension(
        &mut out,
        (22.0, top),
        (22.0, bottom),
        &text::tape(plan.width_m, voice),
    );
    out
}

/// A thing, with room enough for a finger.
pub fn thing(report: &RoofReport, kind: ItemKind) -> String {
    let Some(item) = report.plan.item(kind) else {
        return String::new();
    };
    let sight = Sight::of(&report.plan);
    let mut out = String::new();
    let [x, y, width, height] = sight.on_sheet(&item.place);
    let (more_x, more_y) = (
        0.5 * (TOUCHED - width).max(0.0),
        0.5 * (TOUCHED - height).max(0.0),
    );
    let _ = write!(
        out,
        "<rect class=\"r-touch\" x=\"{:.1}\" y=\"{:.1}\" width=\"{:.1}\" height=\"{:.1}\"/>",
        x - more_x,
        y - more_y,
        width + 2.0 * more_x,
        height + 2.0 * more_y
    );
    sight.rectangle(&mut out, "r-body", &item.place);
    if let Some(opening) = &item.opening {
        sight.rectangle(&mut out, "r-opening", opening);
    }
    let wrong = report.findings.iter().any(|one| text::concerns(one, kind));
    let mark = if wrong { " !" } else { "" };
    let name = text::short_name(kind);
    // A name that does not fit stands where it can, and the rim of paper keeps it legible.
    let fits = LETTER * (name.len() + mark.len()) as f64 <= width;
    let name = if fits { format!("{name}{mark}") } else { name };
    label(
        &mut out,
        "r-name",
        (x + 0.5 * width, y + 0.5 * height + 4.0),
        "middle",
        &name,
    );
    out
}

/// What is wrong, hatched, and the distances of what is chosen.
pub fn marks(report: &RoofReport, chosen: Option<ItemKind>, voice: &Voice) -> String {
    let sight = Sight::of(&report.plan);
    let mut out = String::new();
    for finding in &report.findings {
        if let Some(place) = marked(report, finding) {
            sight.rectangle(&mut out, "r-wrong", &place);
        }
    }
    let Some(item) = chosen.and_then(|kind| report.plan.item(kind)) else {
        return out;
    };
    let place = &item.place;
    let [x, y, width, height] = sight.on_sheet(place);
    if place.from_front_m > 0.0 {
        let level = y + 0.5 * height;
        dimension(
            &mut out,
            (sight.x(0.0), level),
            (x, level),
            &text::tape(place.from_front_m, voice),
        );
    }
    if place.from_left_m > 0.0 {
        let upright = x + 0.5 * width;
        dimension(
            &mut out,
            (upright, y + height),
            (upright, sight.y(0.0)),
            &text::tape(place.from_left_m, voice),
        );
    }
    out
}

/// The part of the roof that a finding is about: what is shared, what lies between, or the rib in the opening.
fn marked(report: &RoofReport, finding: &Finding) -> Option<Rectangle> {
    let place = |kind: &ItemKind| report.plan.item(*kind).map(|item| item.place);
    match finding {
        Finding::BeyondRoof { item, .. } => place(item),
        Finding::Overlap { one, other, .. } => Some(between(&place(one)?, &place(other)?)),
        Finding::TooClose { one, other, .. } => Some(between(&place(one)?, &place(other)?)),
        Finding::CutsRib { item, rib_m } => {
            let opening = report.plan.item(*item)?.opening?;
            Some(Rectangle {
                from_front_m: rib_m - 0.03,
                length_m: 0.06,
                ..opening
            })
        }
    }
}

/// What two rectangles share along each side, or what lies between them where they share nothing.
fn between(one: &Rectangle, other: &Rectangle) -> Rectangle {
    let span = |from: (f64, f64), until: (f64, f64)| {
        let (late, early) = (from.0.max(from.1), until.0.min(until.1));
        (late.min(early), (early - late).abs())
    };
    let (from_front_m, length_m) = span(
        (one.from_front_m, other.from_front_m),
        (one.rear_m(), other.rear_m()),
    );
    let (from_left_m, width_m) = span(
        (one.from_left_m, other.from_left_m),
        (one.right_m(), other.right_m()),
    );
    Rectangle {
        from_front_m,
        from_left_m,
        length_m,
        width_m,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::advice::roof_report;
    use noonday_engine::scenario::example;

    #[test]
    fn everything_is_to_one_scale_and_on_the_sheet() {
        let mut document = example();
        for (length_m, width_m) in [(3.7, 1.55), (0.5, 2.6), (9.0, 0.5), (0.5, 0.5)] {
            (document.roof.length_m, document.roof.width_m) = (length_m, width_m);
            let report = roof_report(&document);
            let sight = Sight::of(&report.plan);
            let whole = Rectangle {
                length_m,
                width_m,
                ..Rectangle::default()
            };
            let [x, y, width, height] = sight.on_sheet(&whole);
            assert!((width / length_m - height / width_m).abs() < 1e-9);
            assert!(x >= 0.0 && y >= 0.0 && x + width <= WIDTH);
        }
    }

    #[test]
    fn the_right_side_is_at_the_top() {
        let report = roof_report(&example());
        let sight = Sight::of(&report.plan);
        let left = report.plan.item(ItemKind::Panel(0)).unwrap();
        let right = report.plan.item(ItemKind::Panel(1)).unwrap();
        assert!(sight.on_sheet(&right.place)[1] < sight.on_sheet(&left.place)[1]);
    }

    #[test]
    fn what_is_wrong_is_hatched_and_named() {
        let mut document = example();
        let voice = Voice::new(&document, UnitSystem::Metric);
        assert!(!marks(&roof_report(&document), None, &voice).contains("r-wrong"));
        document.roof.panels[0].from_front_m = 0.9;
        let report = roof_report(&document);
        assert_eq!(marks(&report, None, &voice).matches("r-wrong").count(), 1);
        assert!(thing(&report, ItemKind::Panel(0)).contains("P1 !"));
        assert!(!thing(&report, ItemKind::Panel(1)).contains('!'));
    }

    #[test]
    fn between_two_lies_what_they_share_or_the_gap() {
        let one = Rectangle {
            length_m: 1.0,
            width_m: 1.0,
            ..Rectangle::default()
        };
        let other = Rectangle {
            from_front_m: 1.1,
            ..one
        };
        let gap = between(&one, &other);
        assert!((gap.from_front_m - 1.0).abs() < 1e-12 && (gap.length_m - 0.1).abs() < 1e-12);
        assert_eq!(gap.width_m, 1.0);
    }
}
