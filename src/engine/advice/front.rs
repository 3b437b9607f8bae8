//! The efficient front: what nothing cheaper does better.

use super::trial::Outcome;
use crate::quantity::sort_few;
use std::cmp::Ordering;

/// Differences below these are taken for none: degree-hours, K h, and charge, share. They are what a run's steps are worth.
const DEGREE_HOURS_RESOLUTION_K_H: f64 = 0.01;
const CHARGE_RESOLUTION: f64 = 0.001;

/// What a package leaves unmet, coarsened to what a run can tell apart: first degree-hours, then charge missing below the reserve.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Unmet {
    degree_hours: u64,
    reserve_shortfall: u64,
}

impl Unmet {
    /// Nothing is unmet.
    pub(super) const NONE: Self = Self {
        degree_hours: 0,
        reserve_shortfall: 0,
    };

    pub(super) fn of(outcome: &Outcome) -> Self {
        Self {
            degree_hours: steps(outcome.degree_hours_k_h, DEGREE_HOURS_RESOLUTION_K_H),
            reserve_shortfall: steps(outcome.reserve_shortfall(), CHARGE_RESOLUTION),
        }
    }
}

/// Whole steps of a resolution in a value of zero or more, rounded.
fn steps(value: f64, resolution: f64) -> u64 {
    (value / resolution).round() as u64
}

/// Gives the indices of the points that no other dominates, cheapest first.
///
/// A point dominates another that costs no less and leaves no less unmet, unless they are equal in both; of equal points the
/// first stands for all. Sorted by cost, a point belongs to the front when it leaves less unmet than every one before it.
///
/// `points`: cost, finite, and what is unmet.
pub(super) fn front(points: &[(f64, Unmet)]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..points.len()).collect();
    sort_few(&mut order, |one, other| {
        compare(points[*one], points[*other]).is_gt()
    });
    let mut least: Option<Unmet> = None;
    order.retain(|index| {
        let unmet = points[*index].1;
        let better = least.is_none_or(|least| unmet < least);
        if better {
            least = Some(unmet);
        }
        better
    });
    order
}

fn compare(one: (f64, Unmet), other: (f64, Unmet)) -> Ordering {
    one.0.total_cmp(&other.0).then(one.1.cmp(&other.1))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn unmet(degree_hours: u64, reserve_shortfall: u64) -> Unmet {
        Unmet {
            degree_hours,
            reserve_shortfall,
        }
    }

    #[test]
    fn a_front_worked_by_hand() {
        let points = [
            (100.0, unmet(50, 0)),
            (0.0, unmet(90, 0)),
            // Dearer and worse than the first.
            (120.0, unmet(60, 0)),
            // As good as the first and dearer.
            (110.0, unmet(50, 0)),
            // Equal degree-hours, less charge missing.
            (130.0, unmet(50, 0)),
            (200.0, unmet(0, 7)),
            (300.0, unmet(0, 0)),
            // Saves money and is worse than everything.
            (-50.0, unmet(900, 0)),
        ];
        assert_eq!(front(&points), [7, 1, 0, 5, 6]);
    }

    /// The definition itself, point against point, on points from a fixed linear congruence.
    #[test]
    fn nothing_dominated_is_on_it_and_nothing_undominated_left_out() {
        let mut state = 12_345_u64;
        let mut draw = |below: u64| {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            (state >> 33) % below
        };
        let points: Vec<(f64, Unmet)> = (0..200)
            .map(|_| (draw(60) as f64, unmet(draw(40), draw(3))))
            .collect();
        let found = front(&points);
        let dominates = |one: (f64, Unmet), other: (f64, Unmet)| {
            one.0 <= other.0 && one.1 <= other.1 && one != other
        };
        for (index, point) in points.iter().enumerate() {
            let dominated = points.iter().any(|other| dominates(*other, *point));
            let stands = found.iter().any(|found| points[*found] == *point);
            assert_eq!(stands, !dominated, "{index}: {point:?}");
        }
    }
}
