//! Automatic arrangement of panels around what stands on the roof already.
//!
//! Places worth trying begin at an edge or follow one another at the pitch of the panels (the normal patterns of packing). A
//! search that always goes the same way takes as many panels as it finds room for; each is then moved to free places in which
//! unit, fan and hatches shade it less. The search gives up after a fixed number of tries, so that it always ends; on crowded
//! roofs it may miss a way that a person finds.

use super::plan::{Item, ItemKind, PANEL_GAP_M, Plan};
use super::rectangle::{Rectangle, SLACK_M};
use super::shading::{Caster, shaded_share};
use crate::quantity::Bounded;

/// Places that the search tries at most.
const MOST_TRIES: usize = 20_000;

/// Rounds of moving panels into the sun.
const MOST_ROUNDS: usize = 8;

/// Places are multiples of this, m, so that they are short to write.
const GRID_M: f64 = 0.01;

/// Heights of the suns for which a place is judged, degrees, and how many directions around.
const SUN_HEIGHTS_DEG: [f64; 3] = [20.0, 40.0, 60.0];
const SUN_DIRECTIONS: u32 = 8;

/// Where panels go.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Arrangement {
    /// A place for each panel that fits, in order from the front and from the left.
    pub places: Vec<Rectangle>,
    /// Whether they lie with length and width exchanged.
    pub turned: bool,
}

/// Arranges panels of one size on a roof around everything but panels.
///
/// * `plan` — the roof; panels that it has are left out of account
/// * `count` — panels wanted
/// * `length_m`, `width_m` — of a panel, m, above 0
///
/// Gives as many as fit, at most `count`; turned by a quarter only where that lets more of them fit. Each keeps its gap from the
/// next and from what stands on the roof, and lies within the usable roof.
#[must_use]
pub fn arrange(plan: &Plan, count: usize, length_m: f64, width_m: f64) -> Arrangement {
    let straight = in_one_way(plan, count, length_m, width_m);
    if straight.len() >= count {
        return Arrangement {
            places: straight,
            turned: false,
        };
    }
    let across = in_one_way(plan, count, width_m, length_m);
    let turned = across.len() > straight.len();
    Arrangement {
        places: if turned { across } else { straight },
        turned,
    }
}

fn in_one_way(plan: &Plan, count: usize, length_m: f64, width_m: f64) -> Vec<Rectangle> {
    if count == 0 || length_m <= 0.0 || width_m <= 0.0 {
        return Vec::new();
    }
    let obstacles: Vec<&Item> = plan
        .items
        .iter()
        .filter(|item| !matches!(item.kind, ItemKind::Panel(_)))
        .collect();
    let free = free_places(plan, &obstacles, length_m, width_m);
    let mut best = Vec::new();
    for (along, across) in [(1.0, 1.0), (1.0, -1.0), (-1.0, 1.0), (-1.0, -1.0)] {
        let mut order = free.clone();
        let rank = |place: &Rectangle| (along * place.from_front_m, across * place.from_left_m);
        order.sort_by(|one, other| {
            let ((x, y), (other_x, other_y)) = (rank(one), rank(other));
            x.total_cmp(&other_x).then(y.total_cmp(&other_y))
        });
        let found = Search::new(&order, count).found();
        if found.len() > best.len() {
            best = found;
        }
        if best.len() >= count {
            break;
        }
    }
    into_the_sun(&mut best, &free, &obstacles);
    best.sort_by(|one, other| {
        let by_front = one.from_front_m.total_cmp(&other.from_front_m);
        by_front.then(one.from_left_m.total_cmp(&other.from_left_m))
    });
    best
}

/// Places in which a panel stands clear of everything else, at the corners of what is free.
fn free_places(plan: &Plan, obstacles: &[&Item], length_m: f64, width_m: f64) -> Vec<Rectangle> {
    let spans = |edges: fn(&Rectangle) -> (f64, f64)| -> Vec<(f64, f64)> {
        obstacles
            .iter()
            .map(|item| {
                let gap_m = item.clearance_m.at_least(PANEL_GAP_M);
                let (from_m, until_m) = edges(&item.place);
                (from_m - gap_m, until_m + gap_m)
            })
            .collect()
    };
    let along = starts_m(
        &spans(|place| (place.from_front_m, place.rear_m())),
        plan.length_m,
        length_m,
    );
    let across = starts_m(
        &spans(|place| (place.from_left_m, place.right_m())),
        plan.width_m,
        width_m,
    );
    let everywhere = along.iter().flat_map(|&from_front_m| {
        across.iter().map(move |&from_left_m| Rectangle {
            from_front_m,
            from_left_m,
            length_m,
            width_m,
        })
    });
    everywhere
        .filter(|place| {
            obstacles
                .iter()
                .all(|item| place.is_clear_of(&item.place, item.clearance_m.at_least(PANEL_GAP_M)))
        })
        .collect()
}

/// Where panels may begin along one side of the roof: one after the other from each edge, and before each edge.
fn starts_m(taken: &[(f64, f64)], room_m: f64, size_m: f64) -> Vec<f64> {
    let pitch_m = up(size_m + PANEL_GAP_M);
    let mut starts = Vec::new();
    let mut add = |first_m: f64, step_m: f64| {
        let mut at_m = first_m;
        while at_m >= -SLACK_M && at_m + size_m <= room_m + SLACK_M {
            starts.push(at_m.at_least(0.0));
            at_m = nearest(at_m + step_m);
        }
    };
    let behind = taken.iter().map(|(_, until_m)| up(until_m.at_least(0.0)));
    for first_m in std::iter::once(0.0).chain(behind) {
        add(first_m, pitch_m);
    }
    let before = taken.iter().map(|(from_m, _)| from_m.at_most(room_m));
    for last_m in std::iter::once(room_m).chain(before) {
        add(down(last_m - size_m), -pitch_m);
    }
    starts.sort_by(f64::total_cmp);
    starts.dedup_by(|one, other| (*one - *other).abs() < SLACK_M);
    starts
}

fn up(value_m: f64) -> f64 {
    (value_m / GRID_M - SLACK_M).ceil() / 100.0
}

fn down(value_m: f64) -> f64 {
    (value_m / GRID_M + SLACK_M).floor() / 100.0
}

fn nearest(value_m: f64) -> f64 {
    (value_m / GRID_M).round() / 100.0
}

/// A search that takes places in order and goes back where too few are left.
struct Search<'a> {
    order: &'a [Rectangle],
    count: usize,
    tries: usize,
    chosen: Vec<Rectangle>,
    best: Vec<Rectangle>,
}

impl<'a> Search<'a> {
    fn new(order: &'a [Rectangle], count: usize) -> Self {
        Self {
            order,
            count,
            tries: MOST_TRIES,
            chosen: Vec::new(),
            best: Vec::new(),
        }
    }

    fn found(mut self) -> Vec<Rectangle> {
        self.go_on(0);
        self.best
    }

    fn go_on(&mut self, from: usize) {
        if self.chosen.len() > self.best.len() {
            self.best.clone_from(&self.chosen);
        }
        let order = self.order;
        for (index, place) in order.iter().enumerate().skip(from) {
            let enough = self.best.len() >= self.count;
            let hopeless = self.chosen.len() + order.len() - index <= self.best.len();
            if enough || hopeless || self.tries == 0 {
                return;
            }
            self.tries -= 1;
            let clear = |other: &Rectangle| place.is_clear_of(other, PANEL_GAP_M);
            if self.chosen.iter().all(clear) {
                self.chosen.push(*place);
                self.go_on(index + 1);
                self.chosen.pop();
            }
        }
    }
}

/// Moves each panel to the free place in which it is shaded least, until none gains.
fn into_the_sun(chosen: &mut [Rectangle], free: &[Rectangle], obstacles: &[&Item]) {
    let casters: Vec<Caster> = obstacles
        .iter()
        .map(|item| Caster {
            place: item.place,
            height_m: item.height_m,
        })
        .collect();
    let suns = suns();
    let shaded: Vec<f64> = free
        .iter()
        .map(|place| mean_shade(place, &casters, &suns))
        .collect();
    for _ in 0..MOST_ROUNDS {
        let mut moved = false;
        for index in 0..chosen.len() {
            let Some(now) = chosen.get(index).copied() else {
                continue;
            };
            let mut best = (mean_shade(&now, &casters, &suns) - 1e-9, now);
            for (place, shade) in free.iter().zip(&shaded) {
                let mut others = chosen.iter().enumerate().filter(|(at, _)| *at != index);
                let clear = others.all(|(_, other)| place.is_clear_of(other, PANEL_GAP_M));
                if *shade < best.0 && clear {
                    best = (*shade, *place);
                }
            }
            if best.1 != now
                && let Some(panel) = chosen.get_mut(index)
            {
                *panel = best.1;
                moved = true;
            }
        }
        if !moved {
            return;
        }
    }
}

/// Suns from all around, each with its direction and with its weight, the sine of its height: a van may be parked any way.
fn suns() -> Vec<[f64; 3]> {
    let heights = SUN_HEIGHTS_DEG.iter();
    heights
        .flat_map(|height_deg| {
            let (up, level) = libm::sincos(height_deg.to_radians());
            (0..SUN_DIRECTIONS).map(move |direction| {
                let turn_deg = 360.0 * f64::from(direction) / f64::from(SUN_DIRECTIONS);
                let (sine, cosine) = libm::sincos(turn_deg.to_radians());
                [level * sine, level * cosine, up]
            })
        })
        .collect()
}

fn mean_shade(place: &Rectangle, casters: &[Caster], suns: &[[f64; 3]]) -> f64 {
    let weighted = suns
        .iter()
        .map(|sun| sun[2] * shaded_share(place, casters, *sun));
    weighted.sum::<f64>() / suns.iter().map(|sun| sun[2]).sum::<f64>()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn roof(length_m: f64, width_m: f64, unit: Option<Rectangle>) -> Plan {
        let unit = unit.map(|place| Item {
            kind: ItemKind::Unit,
            place,
            height_m: 0.25,
            clearance_m: 0.1,
            opening: None,
        });
        Plan {
            length_m,
            width_m,
            rib_spacing_m: 0.6,
            items: unit.into_iter().collect(),
        }
    }

    #[test]
    fn an_empty_roof_takes_what_its_measures_say() {
        // Three of 1.0 m with two gaps of 0.02 m take 3.04 m, two of 0.5 m take 1.02 m.
        assert_eq!(
            arrange(&roof(3.04, 1.02, None), 8, 1.0, 0.5).places.len(),
            6
        );
        assert_eq!(
            arrange(&roof(3.03, 1.02, None), 8, 1.0, 0.5).places.len(),
            5
        );
        assert_eq!(
            arrange(&roof(3.04, 1.02, None), 4, 1.0, 0.5).places.len(),
            4
        );
    }

    #[test]
    fn panels_are_turned_only_where_more_fit_so() {
        let narrow = arrange(&roof(1.6, 1.0, None), 3, 0.9, 0.5);
        assert!(narrow.turned);
        assert_eq!(narrow.places.len(), 3);
        assert_eq!(narrow.places[0].length_m, 0.5);
        assert!(!arrange(&roof(3.0, 1.6, None), 2, 0.9, 0.5).turned);
    }

    #[test]
    fn a_single_panel_goes_away_from_the_unit() {
        let unit = Rectangle {
            from_front_m: 0.0,
            from_left_m: 0.5,
            length_m: 0.8,
            width_m: 0.6,
        };
        let found = arrange(&roof(4.0, 1.6, Some(unit)), 1, 1.0, 0.5);
        assert!(found.places[0].from_front_m >= 1.5, "{found:?}");
    }

    #[test]
    fn where_nothing_fits_nothing_is_placed() {
        assert_eq!(
            arrange(&roof(0.5, 0.5, None), 2, 1.0, 0.6),
            Arrangement::default()
        );
        assert_eq!(
            arrange(&roof(3.0, 1.6, None), 0, 1.0, 0.6),
            Arrangement::default()
        );
    }
}
