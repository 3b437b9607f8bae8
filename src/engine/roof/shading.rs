//! The shadow of unit, fan and hatches on a panel.
//!
//! A box on the roof and the sun's parallel rays make a shadow that is the base swept along a straight line of the length h/tan β,
//! h its height and β the height of the sun. Swept rectangles are six half-planes, and what several shadows cover of a panel is
//! found exactly by cutting polygons; nothing is sampled.
//!
//! Source: geometry; the cutting is that of Sutherland & Hodgman 1974, Communications of the ACM 17:32 (from memory).

use super::rectangle::Rectangle;
use crate::quantity::Bounded;

/// Sine of the sun's height below which shadows grow no longer: at half a degree next to nothing comes straight from the sun.
const LEAST_SINE: f64 = 0.01;

/// Most corners of a polygon: the four of a panel and one more for each half-plane of four shadows.
const CORNERS: usize = 28;

/// Most boxes that throw shadows: unit, fan and two hatches.
const MOST_CASTERS: usize = 4;

/// A box that throws a shadow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Caster {
    /// Its base.
    pub place: Rectangle,
    /// Its height above the panels, m, at least 0.
    pub height_m: f64,
}

/// A base swept along a straight line: the shadow of a box.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shadow {
    base: Rectangle,
    /// How far the top's shadow lies from the base, m: towards the rear and towards the right.
    pub reach_m: (f64, f64),
}

impl Shadow {
    /// The shadow of a box: the top's outline lies h (d_ahead, −d_right)/d_up behind and to the right of the base.
    ///
    /// `sun`: unit vector towards the sun as the vehicle sees it, right, ahead and up, up above 0. Shadows of a sun lower than
    /// half a degree are as long as at half a degree.
    #[must_use]
    pub fn new(caster: &Caster, [right, ahead, up]: [f64; 3]) -> Self {
        let length_m = caster.height_m / up.at_least(LEAST_SINE);
        Self {
            base: caster.place,
            reach_m: (ahead * length_m, -right * length_m),
        }
    }

    /// Whether it and a rectangle can have anything in common.
    fn can_meet(&self, place: &Rectangle) -> bool {
        let (base, (along_m, across_m)) = (&self.base, self.reach_m);
        base.from_front_m + along_m.at_most(0.0) < place.rear_m()
            && base.rear_m() + along_m.at_least(0.0) > place.from_front_m
            && base.from_left_m + across_m.at_most(0.0) < place.right_m()
            && base.right_m() + across_m.at_least(0.0) > place.from_left_m
    }

    /// The part of a polygon that it covers.
    fn covers(&self, polygon: &Polygon) -> Polygon {
        let (base, (along_m, across_m)) = (&self.base, self.reach_m);
        // Along the sweep nothing limits but the ends; across it, the corners that stand out furthest on either side.
        let sideways = |x: f64, y: f64| across_m * x - along_m * y;
        let corners = [
            sideways(base.from_front_m, base.from_left_m),
            sideways(base.rear_m(), base.from_left_m),
            sideways(base.from_front_m, base.right_m()),
            sideways(base.rear_m(), base.right_m()),
        ];
        let most = corners.iter().copied().fold(corners[0], f64::max);
        let least = corners.iter().copied().fold(corners[0], f64::min);
        polygon
            .kept((-1.0, 0.0), -(base.from_front_m + along_m.at_most(0.0)))
            .kept((1.0, 0.0), base.rear_m() + along_m.at_least(0.0))
            .kept((0.0, -1.0), -(base.from_left_m + across_m.at_most(0.0)))
            .kept((0.0, 1.0), base.right_m() + across_m.at_least(0.0))
            .kept((across_m, -along_m), most)
            .kept((-across_m, along_m), -least)
    }
}

/// A convex polygon of a few corners.
#[derive(Clone, Copy)]
struct Polygon {
    corners: [(f64, f64); CORNERS],
    count: usize,
}

impl Polygon {
    fn of(place: &Rectangle) -> Self {
        let mut polygon = Self::EMPTY;
        polygon.push((place.from_front_m, place.from_left_m));
        polygon.push((place.rear_m(), place.from_left_m));
        polygon.push((place.rear_m(), place.right_m()));
        polygon.push((place.from_front_m, place.right_m()));
        polygon
    }

    const EMPTY: Self = Self {
        corners: [(0.0, 0.0); CORNERS],
        count: 0,
    };

    fn push(&mut self, corner: (f64, f64)) {
        if let Some(place) = self.corners.get_mut(self.count) {
            *place = corner;
            self.count += 1;
        }
    }

    fn corners(&self) -> &[(f64, f64)] {
        self.corners.get(..self.count).unwrap_or_default()
    }

    /// What lies where a x + b y ≤ most.
    fn kept(&self, (a, b): (f64, f64), most: f64) -> Self {
        let mut kept = Self::EMPTY;
        let beyond = |(x, y): (f64, f64)| a * x + b * y - most;
        let corners = self.corners();
        let Some(mut before) = corners.last().copied() else {
            return kept;
        };
        for corner in corners.iter().copied() {
            let (from, to) = (beyond(before), beyond(corner));
            if (from > 0.0) != (to > 0.0) {
                let share = from / (from - to);
                kept.push((
                    before.0 + share * (corner.0 - before.0),
                    before.1 + share * (corner.1 - before.1),
                ));
            }
            if to <= 0.0 {
                kept.push(corner);
            }
            before = corner;
        }
        kept
    }

    /// By the sum of cross products along the outline.
    fn area(&self) -> f64 {
        let corners = self.corners();
        let Some(mut before) = corners.last().copied() else {
            return 0.0;
        };
        let mut twice = 0.0;
        for corner in corners.iter().copied() {
            twice += before.0 * corner.1 - corner.0 * before.1;
            before = corner;
        }
        0.5 * twice.abs()
    }
}

/// Area of a polygon that shadows cover together: each adds what it covers less what those after it cover of the same.
fn covered_m2(polygon: &Polygon, shadows: &[Shadow]) -> f64 {
    let Some((first, rest)) = shadows.split_first() else {
        return 0.0;
    };
    let under = first.covers(polygon);
    let own_m2 = under.area();
    let others_m2 = covered_m2(polygon, rest);
    if own_m2 <= 0.0 || rest.is_empty() {
        return own_m2 + others_m2;
    }
    own_m2 + others_m2 - covered_m2(&under, rest)
}

/// Share of a panel's area that lies in shadow, 0…1; zero while the sun is below the horizon, and for a panel without area.
///
/// * `panel` — at the level of the roof
/// * `casters` — at most four; more are left out
/// * `sun` — unit vector towards the sun as the vehicle sees it: right, ahead, up
///
/// A shadow is h/tan β long, h the height of its box and β that of the sun. Source: geometry.
#[must_use]
pub fn shaded_share(panel: &Rectangle, casters: &[Caster], sun: [f64; 3]) -> f64 {
    let area_m2 = panel.area_m2();
    if sun[2] <= 0.0 || area_m2 <= 0.0 {
        return 0.0;
    }
    let mut shadows = [Shadow {
        base: Rectangle::default(),
        reach_m: (0.0, 0.0),
    }; MOST_CASTERS];
    let mut count = 0;
    for caster in casters {
        let shadow = Shadow::new(caster, sun);
        if let Some(place) = shadows.get_mut(count)
            && shadow.can_meet(panel)
        {
            *place = shadow;
            count += 1;
        }
    }
    let shadows = shadows.get(..count).unwrap_or_default();
    (covered_m2(&Polygon::of(panel), shadows) / area_m2).clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn box_at(from_front_m: f64, from_left_m: f64, height_m: f64) -> Caster {
        Caster {
            place: Rectangle {
                from_front_m,
                from_left_m,
                length_m: 0.8,
                width_m: 0.6,
            },
            height_m,
        }
    }

    const PANEL: Rectangle = Rectangle {
        from_front_m: 1.0,
        from_left_m: 0.0,
        length_m: 1.0,
        width_m: 0.5,
    };

    /// Towards a sun so many degrees to the right of ahead and above the horizon.
    fn sun(to_right_deg: f64, height_deg: f64) -> [f64; 3] {
        let (sine, cosine) = libm::sincos(to_right_deg.to_radians());
        let (up, level) = libm::sincos(height_deg.to_radians());
        [level * sine, level * cosine, up]
    }

    /// A gnomon's shadow is its height over the tangent of the sun's height: the definition of the tangent.
    #[test]
    fn a_shadow_is_its_height_over_the_tangent_of_the_suns_height() {
        for height_deg in [10.0, 30.0, 45.0, 60.0, 80.0] {
            let shadow = Shadow::new(&box_at(0.0, 0.0, 0.25), sun(0.0, height_deg));
            let length_m = 0.25 / libm::tan(height_deg.to_radians());
            assert!((shadow.reach_m.0 - length_m).abs() < 1e-12, "{height_deg}");
            assert!(shadow.reach_m.1.abs() < 1e-12);
        }
        // Sun on the right throws the shadow to the left, sun behind to the front.
        assert!(
            Shadow::new(&box_at(0.0, 0.0, 0.25), sun(90.0, 45.0))
                .reach_m
                .1
                < -0.249
        );
        assert!(
            Shadow::new(&box_at(0.0, 0.0, 0.25), sun(180.0, 45.0))
                .reach_m
                .0
                < -0.249
        );
    }

    /// Sun straight ahead at 45°: the box ends 0.8 m from the front, its shadow of 0.5 m reaches 0.3 m into the panel that begins
    /// at 1.0 m, over 0.3 m of its width of 0.5 m: 0.3 × 0.3 / 0.5 of it.
    #[test]
    fn a_straight_shadow_covers_a_rectangle_of_the_panel() {
        let share = shaded_share(&PANEL, &[box_at(0.0, 0.2, 0.5)], sun(0.0, 45.0));
        assert!((share - 0.3 * 0.3 / 0.5).abs() < 1e-12, "{share}");
    }

    /// Sun 45° to the left of ahead, its height such that the shadow of a box of 0.4 m goes 0.4 m back and 0.4 m right. Its rear left
    /// corner (0.8, 0) sweeps along y = x − 0.8, and what is left of that line stays lit. Of the panel, 1.0 ≤ x ≤ 1.2 and x − 0.8 ≤ y
    /// ≤ 0.5 are covered: 0.2 × 0.5 − (0.4² − 0.2²)/2 = 0.04 m².
    #[test]
    fn a_slanted_shadow_has_slanted_sides() {
        let up = (1.0_f64 / 3.0).sqrt();
        let share = shaded_share(&PANEL, &[box_at(0.0, 0.0, 0.4)], [-up, up, up]);
        assert!((share - 0.04 / 0.5).abs() < 1e-12, "{share}");
    }

    #[test]
    fn shadows_on_one_another_count_once() {
        let one = box_at(0.0, 0.2, 0.5);
        let twice = shaded_share(&PANEL, &[one, one, one, one], sun(0.0, 45.0));
        assert!((twice - 0.18).abs() < 1e-12, "{twice}");
        // A second box beside the first: its shadow takes the 0.2 m of width left of it.
        let both = shaded_share(&PANEL, &[one, box_at(0.0, -0.4, 0.5)], sun(0.0, 45.0));
        assert!((both - 0.3).abs() < 1e-12, "{both}");
    }

    #[test]
    fn what_lies_under_a_box_is_shaded_and_night_has_no_shadow() {
        let under = Caster {
            place: PANEL,
            height_m: 0.0,
        };
        assert_eq!(shaded_share(&PANEL, &[under], [0.0, 0.0, 1.0]), 1.0);
        assert_eq!(shaded_share(&PANEL, &[under], [0.0, 1.0, 0.0]), 0.0);
        assert_eq!(shaded_share(&PANEL, &[], sun(0.0, 5.0)), 0.0);
        let low = shaded_share(&PANEL, &[box_at(0.0, 0.0, 2.0)], [0.0, 1.0, 1e-300]);
        assert!((low - 1.0).abs() < 1e-9, "{low}");
    }
}
