//! Things on the roof as rectangles, and what is wrong with where they stand.

use super::rectangle::{Rectangle, SLACK_M};
use crate::envelope::bridging::FLANGE_WIDTH_M;
use crate::quantity::Bounded;

/// Least gap between panels, fan and hatches, m: room for expansion and a cloth. Common practice, no source.
pub const PANEL_GAP_M: f64 = 0.02;

/// What a thing on the roof is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ItemKind {
    /// The cooler's unit.
    Unit,
    /// The fan.
    Fan,
    /// A hatch, counted from 0.
    Hatch(usize),
    /// A panel, counted from 0.
    Panel(usize),
}

/// A thing on the roof.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Item {
    /// What it is.
    pub kind: ItemKind,
    /// Where it stands.
    pub place: Rectangle,
    /// Its height above the roof, m, at least 0.
    pub height_m: f64,
    /// Distance that it asks on all sides, m, at least 0.
    pub clearance_m: f64,
    /// The hole that has to be cut for it, where one has.
    pub opening: Option<Rectangle>,
}

/// The usable roof with everything on it.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// Usable length, m, above 0.
    pub length_m: f64,
    /// Usable width, m, above 0.
    pub width_m: f64,
    /// Distance between ribs across the roof, m, above 0.
    pub rib_spacing_m: f64,
    /// What stands on it.
    pub items: Vec<Item>,
}

impl Plan {
    /// The item of a kind, if it is on the roof.
    #[must_use]
    pub fn item(&self, kind: ItemKind) -> Option<&Item> {
        self.items.iter().find(|item| item.kind == kind)
    }

    /// The nearest place to one asked for that keeps a rectangle on the roof; what is larger than the roof begins at its edge.
    #[must_use]
    pub fn held_on_roof(&self, place: Rectangle) -> Rectangle {
        let hold = |at_m: f64, room_m: f64| at_m.at_most(room_m).at_least(0.0);
        Rectangle {
            from_front_m: hold(place.from_front_m, self.length_m - place.length_m),
            from_left_m: hold(place.from_left_m, self.width_m - place.width_m),
            ..place
        }
    }

    /// Area of all panels, m².
    #[must_use]
    pub fn panel_area_m2(&self) -> f64 {
        let panels = self
            .items
            .iter()
            .filter(|item| matches!(item.kind, ItemKind::Panel(_)));
        panels.map(|panel| panel.place.area_m2()).sum()
    }
}

/// Something wrong with a plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Finding {
    /// It reaches beyond the usable roof.
    BeyondRoof {
        /// What does.
        item: ItemKind,
        /// By how much at most, m.
        by_m: f64,
    },
    /// Two lie on one another.
    Overlap {
        /// One of them, the first in order.
        one: ItemKind,
        /// The other.
        other: ItemKind,
        /// Area shared, m².
        area_m2: f64,
    },
    /// Two do not lie on one another but are closer than one of them asks.
    TooClose {
        /// One of them, the first in order.
        one: ItemKind,
        /// The other.
        other: ItemKind,
        /// Gap between them, m.
        gap_m: f64,
        /// Gap asked, m.
        asked_m: f64,
    },
    /// Its hole would go through a rib.
    CutsRib {
        /// For what the hole is.
        item: ItemKind,
        /// The rib's middle from the front edge, m.
        rib_m: f64,
    },
}

/// The middles of the ribs from the front edge, m: evenly spaced, the first one spacing behind the edge.
///
/// Common practice, no source: the real ribs are found on the vehicle. None for a spacing that is not above 0.
pub fn ribs_m(plan: &Plan) -> impl Iterator<Item = f64> {
    let (length_m, spacing_m) = (plan.length_m, plan.rib_spacing_m);
    (1..)
        .map(move |index| spacing_m * f64::from(index))
        .take_while(move |rib_m| spacing_m > 0.0 && *rib_m < length_m - SLACK_M)
}

/// Everything that is wrong with a plan: what reaches over the edge, overlaps, missing clearances, holes through ribs.
///
/// Of two things that come close, the larger clearance counts. Names within a finding and the findings themselves are in the order
/// of [`ItemKind`], whatever the order of the items.
#[must_use]
pub fn findings(plan: &Plan) -> Vec<Finding> {
    let mut items: Vec<&Item> = plan.items.iter().collect();
    items.sort_by_key(|item| item.kind);
    let mut found: Vec<Finding> = items
        .iter()
        .filter_map(|item| beyond_roof(plan, item))
        .collect();
    for (index, one) in items.iter().enumerate() {
        found.extend(
            items
                .iter()
                .skip(index + 1)
                .filter_map(|other| between(one, other)),
        );
    }
    for item in items {
        let Some(opening) = item.opening else {
            continue;
        };
        let cut = ribs_m(plan).filter(|rib_m| goes_through(&opening, *rib_m));
        found.extend(cut.map(|rib_m| Finding::CutsRib {
            item: item.kind,
            rib_m,
        }));
    }
    found
}

fn beyond_roof(plan: &Plan, item: &Item) -> Option<Finding> {
    let place = &item.place;
    let by_m = (-place.from_front_m)
        .at_least(-place.from_left_m)
        .at_least(place.rear_m() - plan.length_m)
        .at_least(place.right_m() - plan.width_m);
    (by_m > SLACK_M).then_some(Finding::BeyondRoof {
        item: item.kind,
        by_m,
    })
}

fn between(one: &Item, other: &Item) -> Option<Finding> {
    let area_m2 = one.place.shared_area_m2(&other.place);
    if area_m2 > 0.0 {
        return Some(Finding::Overlap {
            one: one.kind,
            other: other.kind,
            area_m2,
        });
    }
    let asked_m = one.clearance_m.at_least(other.clearance_m);
    (!one.place.is_clear_of(&other.place, asked_m)).then(|| Finding::TooClose {
        one: one.kind,
        other: other.kind,
        gap_m: one.place.gap_m(&other.place),
        asked_m,
    })
}

fn goes_through(opening: &Rectangle, rib_m: f64) -> bool {
    let half_m = 0.5 * FLANGE_WIDTH_M;
    rib_m + half_m > opening.from_front_m + SLACK_M && rib_m - half_m < opening.rear_m() - SLACK_M
}

/// Area of the usable roof on which nothing stands, m²; what overlaps counts once, what reaches beyond the roof not at all.
#[must_use]
pub fn free_area_m2(plan: &Plan) -> f64 {
    let cuts = |length_m: f64, edges: fn(&Rectangle) -> [f64; 2]| {
        let mut cuts = vec![0.0, length_m];
        let edges = plan.items.iter().flat_map(|item| edges(&item.place));
        cuts.extend(edges.map(|edge_m| edge_m.clamp(0.0, length_m)));
        cuts.sort_by(f64::total_cmp);
        cuts
    };
    let along = cuts(plan.length_m, |place| [place.from_front_m, place.rear_m()]);
    let across = cuts(plan.width_m, |place| [place.from_left_m, place.right_m()]);
    let mut free_m2 = 0.0;
    for x in along.windows(2) {
        for y in across.windows(2) {
            let (middle_x, middle_y) = (0.5 * (x[0] + x[1]), 0.5 * (y[0] + y[1]));
            let taken = plan.items.iter().any(|item| {
                let place = &item.place;
                (place.from_front_m..place.rear_m()).contains(&middle_x)
                    && (place.from_left_m..place.right_m()).contains(&middle_y)
            });
            if !taken {
                free_m2 += (x[1] - x[0]) * (y[1] - y[0]);
            }
        }
    }
    free_m2
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rectangle(from_front_m: f64, from_left_m: f64, length_m: f64, width_m: f64) -> Rectangle {
        Rectangle {
            from_front_m,
            from_left_m,
            length_m,
            width_m,
        }
    }

    fn item(kind: ItemKind, place: Rectangle, clearance_m: f64) -> Item {
        Item {
            kind,
            place,
            height_m: 0.2,
            clearance_m,
            opening: None,
        }
    }

    /// A unit of 0.8 m by 0.6 m, 0.4 m from the front and 0.5 m from the left, that asks 0.1 m.
    fn with(panel: Rectangle) -> Plan {
        let unit = rectangle(0.4, 0.5, 0.8, 0.6);
        Plan {
            length_m: 3.0,
            width_m: 1.6,
            rib_spacing_m: 0.6,
            items: vec![
                item(ItemKind::Panel(0), panel, PANEL_GAP_M),
                item(ItemKind::Unit, unit, 0.1),
            ],
        }
    }

    #[test]
    fn an_overlap_is_told_with_its_area() {
        // The panel begins 0.2 m before the unit's rear edge and covers its whole width.
        let found = findings(&with(rectangle(1.0, 0.3, 1.0, 1.0)));
        let [
            Finding::Overlap {
                one,
                other,
                area_m2,
            },
        ] = found[..]
        else {
            panic!("{found:?}");
        };
        assert_eq!((one, other), (ItemKind::Unit, ItemKind::Panel(0)));
        assert!((area_m2 - 0.2 * 0.6).abs() < 1e-12);
    }

    #[test]
    fn a_gap_below_what_is_asked_is_told_with_both() {
        let found = findings(&with(rectangle(1.25, 0.3, 1.0, 1.0)));
        let [Finding::TooClose { gap_m, asked_m, .. }] = found[..] else {
            panic!("{found:?}");
        };
        assert!((gap_m - 0.05).abs() < 1e-12 && asked_m == 0.1);
        assert_eq!(findings(&with(rectangle(1.3, 0.3, 1.0, 1.0))), []);
    }

    #[test]
    fn what_reaches_over_the_edge_is_told_by_how_much() {
        let found = findings(&with(rectangle(2.25, 0.3, 1.0, 1.0)));
        let [Finding::BeyondRoof { item, by_m }] = found[..] else {
            panic!("{found:?}");
        };
        assert_eq!(item, ItemKind::Panel(0));
        assert!((by_m - 0.25).abs() < 1e-12);
    }

    #[test]
    fn a_hole_is_held_against_each_rib_with_its_width() {
        let mut plan = with(rectangle(1.9, 0.3, 1.0, 1.0));
        let place = rectangle(0.4, 0.5, 0.8, 0.6);
        // 0.62 m to 0.98 m misses the rib at 0.6 m by its middle and not by its width of 0.05 m.
        plan.items[1].opening = Some(place.square_about_middle(0.36));
        let [Finding::CutsRib { item, rib_m }] = findings(&plan)[..] else {
            panic!("{:?}", findings(&plan));
        };
        assert_eq!((item, rib_m), (ItemKind::Unit, 0.6));
        plan.items[1].opening = Some(place.square_about_middle(0.34));
        assert_eq!(findings(&plan), []);
        assert_eq!(ribs_m(&plan).count(), 4);
    }

    #[test]
    fn free_area_counts_what_overlaps_once() {
        // Unit 0.48 m², panel 1 m², 0.12 m² of it in common.
        let free_m2 = free_area_m2(&with(rectangle(1.0, 0.3, 1.0, 1.0)));
        assert!(
            (free_m2 - (4.8 - 0.48 - 1.0 + 0.12)).abs() < 1e-12,
            "{free_m2}"
        );
        let outside = free_area_m2(&with(rectangle(2.5, 0.3, 1.0, 1.0)));
        assert!((outside - (4.8 - 0.48 - 0.5)).abs() < 1e-12, "{outside}");
    }

    #[test]
    fn what_is_moved_off_the_roof_stops_at_its_edge() {
        let plan = with(rectangle(1.9, 0.3, 1.0, 1.0));
        let held = |x, y| plan.held_on_roof(rectangle(x, y, 1.0, 1.0));
        assert_eq!(held(-0.2, 0.1), rectangle(0.0, 0.1, 1.0, 1.0));
        assert_eq!(held(2.4, 5.0), rectangle(2.0, 1.6 - 1.0, 1.0, 1.0));
        let longer = plan.held_on_roof(rectangle(1.0, 0.2, 4.0, 1.0));
        assert_eq!(longer.from_front_m, 0.0);
    }
}
