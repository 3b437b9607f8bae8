//! The vehicle on its sheets, to scale: one cut lengthwise, seen from its left with the nose on the left, and one across, seen
//! from its rear with its left on the left.
//!
//! A pane is drawn square as far as its face allows, for the scenario knows its area and not its shape.

use noonday_engine::scenario::ScenarioDocument;

/// A place on a sheet.
pub type Place = (f64, f64);

/// Width of a sheet, in its own units.
pub const WIDTH: f64 = 320.0;
/// Height of a sheet.
pub const HEIGHT: f64 = 216.0;
/// Height of the ground on it.
pub const GROUND: f64 = 170.0;

/// The largest that a body may be on its sheet: lengthwise, across, and from the ground up. What is left is for arrows and numbers.
const MOST_LONG: f64 = 164.0;
const MOST_ACROSS: f64 = 120.0;
const MOST_HIGH: f64 = 96.0;
/// Share of the inner height at which panes have their middle.
const PANE_MIDDLE: f64 = 0.62;

/// A rectangle on a sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rect {
    /// Left edge.
    pub left: f64,
    /// Top edge.
    pub top: f64,
    /// Right edge.
    pub right: f64,
    /// Bottom edge.
    pub bottom: f64,
}

impl Rect {
    /// Its width.
    pub fn width(&self) -> f64 {
        self.right - self.left
    }

    /// Its height.
    pub fn height(&self) -> f64 {
        self.bottom - self.top
    }

    /// A place in it by shares from the left and from the top.
    pub fn at(&self, across: f64, down: f64) -> Place {
        (
            self.left + across * self.width(),
            self.top + down * self.height(),
        )
    }
}

/// A cut through the vehicle.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// Units of the sheet in a metre.
    pub scale: f64,
    /// The body outside its skin.
    pub outer: Rect,
    /// The cabin inside its linings; insulation lies between the two.
    pub inner: Rect,
    /// Panes that are cut: in the left wall, in the right wall and in the roof.
    pub panes: [Option<Rect>; 3],
    /// The pane seen beyond the cut across.
    pub beyond: Option<Rect>,
}

/// The cut lengthwise.
pub fn lengthwise(document: &ScenarioDocument) -> Cut {
    let (vehicle, glass) = (&document.vehicle, &document.glass);
    let areas = [glass.nose_area_m2, glass.rear_area_m2, glass.roof_area_m2];
    let ends = (vehicle.length_m, vehicle.width_m);
    cut(document, ends, areas, (0.0, 0.28))
}

/// The cut across.
pub fn across(document: &ScenarioDocument) -> Cut {
    let (vehicle, glass) = (&document.vehicle, &document.glass);
    let areas = [glass.left_area_m2, glass.right_area_m2, glass.roof_area_m2];
    let ends = (vehicle.width_m, vehicle.length_m);
    let beyond = if glass.nose_area_m2 > 0.0 {
        glass.nose_area_m2
    } else {
        glass.rear_area_m2
    };
    cut(document, ends, areas, (beyond, 0.5))
}

/// A cut so wide, through a vehicle so deep; the roof's pane lies at a share of the width.
fn cut(
    document: &ScenarioDocument,
    (across_m, deep_m): (f64, f64),
    areas_m2: [f64; 3],
    (beyond_m2, roof_pane_at): (f64, f64),
) -> Cut {
    let scale = scale(document);
    let vehicle = &document.vehicle;
    let [roof_m, wall_m, floor_m] = thicknesses_m(document);
    let half = 0.5 * across_m * scale;
    let inner = Rect {
        left: 0.5 * WIDTH - half,
        right: 0.5 * WIDTH + half,
        top: GROUND - (vehicle.floor_above_ground_m + vehicle.height_m) * scale,
        bottom: GROUND - vehicle.floor_above_ground_m * scale,
    };
    let outer = Rect {
        left: inner.left - wall_m * scale,
        right: inner.right + wall_m * scale,
        top: inner.top - roof_m * scale,
        bottom: inner.bottom + floor_m * scale,
    };
    let upright = |area_m2: f64, wide_m: f64| {
        let (width_m, height_m) = pane_m(area_m2, wide_m, vehicle.height_m)?;
        let middle = (PANE_MIDDLE * vehicle.height_m)
            .clamp(0.5 * height_m, vehicle.height_m - 0.5 * height_m);
        let y = inner.bottom - middle * scale;
        let (wide, high) = (0.5 * width_m * scale, 0.5 * height_m * scale);
        Some((wide, y - high, y + high))
    };
    let in_wall = |area_m2, from: f64, to: f64| {
        let (_, top, bottom) = upright(area_m2, deep_m)?;
        Some(Rect {
            left: from,
            right: to,
            top,
            bottom,
        })
    };
    let in_roof = pane_m(areas_m2[2], across_m, deep_m).map(|(width_m, _)| {
        let half = 0.5 * width_m * scale;
        let (middle, _) = inner.at(roof_pane_at, 0.0);
        let middle = middle.clamp(inner.left + half, inner.right - half);
        Rect {
            left: middle - half,
            right: middle + half,
            top: outer.top,
            bottom: inner.top,
        }
    });
    Cut {
        scale,
        outer,
        inner,
        panes: [
            in_wall(areas_m2[0], outer.left, inner.left),
            in_wall(areas_m2[1], inner.right, outer.right),
            in_roof,
        ],
        beyond: upright(beyond_m2, across_m).map(|(wide, top, bottom)| Rect {
            left: 0.5 * WIDTH - wide,
            right: 0.5 * WIDTH + wide,
            top,
            bottom,
        }),
    }
}

/// Units in a metre, the same on both sheets.
fn scale(document: &ScenarioDocument) -> f64 {
    let vehicle = &document.vehicle;
    let [roof_m, wall_m, _] = thicknesses_m(document);
    let high_m = vehicle.floor_above_ground_m + vehicle.height_m + roof_m;
    (MOST_LONG / (vehicle.length_m + 2.0 * wall_m))
        .min(MOST_ACROSS / (vehicle.width_m + 2.0 * wall_m))
        .min(MOST_HIGH / high_m)
}

/// Thickness of roof, walls and floor from skin to lining, m.
fn thicknesses_m(document: &ScenarioDocument) -> [f64; 3] {
    let shell = &document.shell;
    let lined_m = shell.skin_thickness_m + shell.lining_thickness_m;
    [
        shell.roof_insulation_m + lined_m,
        shell.wall_insulation_m + lined_m,
        shell.floor_insulation_m + shell.skin_thickness_m + shell.floor_board_m,
    ]
}

/// Width and height of a pane: square, or as high as its face and so much wider; none without glass.
fn pane_m(area_m2: f64, face_wide_m: f64, face_high_m: f64) -> Option<(f64, f64)> {
    if area_m2 <= 0.0 {
        return None;
    }
    let height_m = area_m2.sqrt().min(face_high_m);
    let width_m = (area_m2 / height_m).min(face_wide_m);
    Some((width_m, area_m2 / width_m))
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::example;

    fn near(one: f64, other: f64) {
        assert!((one - other).abs() < 1e-9, "{one} against {other}");
    }

    #[test]
    fn proportions_are_those_of_the_vehicle() {
        let document = example();
        let (vehicle, shell) = (&document.vehicle, &document.shell);
        let (long, wide) = (lengthwise(&document), across(&document));
        near(long.scale, wide.scale);
        near(
            long.inner.width() / long.inner.height(),
            vehicle.length_m / vehicle.height_m,
        );
        near(
            wide.inner.width() / long.inner.width(),
            vehicle.width_m / vehicle.length_m,
        );
        near(
            (GROUND - long.inner.bottom) / long.inner.height(),
            vehicle.floor_above_ground_m / vehicle.height_m,
        );
        let lined_m = shell.skin_thickness_m + shell.lining_thickness_m;
        near(
            (long.inner.top - long.outer.top) / long.scale,
            shell.roof_insulation_m + lined_m,
        );
        near(
            (wide.inner.left - wide.outer.left) / wide.scale,
            shell.wall_insulation_m + lined_m,
        );
    }

    #[test]
    fn insulation_grows_in_step() {
        let mut document = example();
        let before = across(&document);
        document.shell.wall_insulation_m *= 2.0;
        let after = across(&document);
        let wall = |cut: &Cut| (cut.inner.left - cut.outer.left) / cut.scale;
        near(wall(&after) - wall(&before), 0.04);
    }

    #[test]
    fn panes_have_their_area() {
        let document = example();
        let beyond = across(&document).beyond.unwrap();
        let scale = across(&document).scale;
        near(beyond.width() * beyond.height() / (scale * scale), 1.2);
        let [nose, rear, roof] = lengthwise(&document).panes.map(Option::unwrap);
        near(nose.height() / scale, 1.2_f64.sqrt());
        near(rear.height() / scale, 0.4_f64.sqrt());
        near(roof.width() / scale, 0.4);
    }

    #[test]
    fn a_pane_never_leaves_its_face() {
        assert_eq!(pane_m(3.0, 1.75, 1.5), Some((1.75, 3.0 / 1.75)));
        assert_eq!(pane_m(0.0, 1.75, 1.5), None);
        assert_eq!(pane_m(1.0, 2.0, 2.0), Some((1.0, 1.0)));
    }

    #[test]
    fn bodies_of_every_size_leave_room_for_the_numbers() {
        for (length_m, width_m, height_m, floor_m) in [
            (1.5, 1.2, 1.0, 0.15),
            (1.5, 2.6, 2.6, 1.5),
            (9.0, 2.6, 2.6, 1.5),
            (9.0, 1.2, 1.0, 0.15),
        ] {
            let mut document = example();
            let vehicle = &mut document.vehicle;
            (vehicle.length_m, vehicle.width_m) = (length_m, width_m);
            (vehicle.height_m, vehicle.floor_above_ground_m) = (height_m, floor_m);
            for cut in [lengthwise(&document), across(&document)] {
                assert!(cut.outer.top >= GROUND - MOST_HIGH - 1e-9, "{cut:?}");
                assert!(cut.outer.left >= 0.5 * (WIDTH - MOST_LONG) - 1e-9);
            }
        }
    }
}
