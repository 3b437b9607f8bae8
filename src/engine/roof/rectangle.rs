//! A rectangle on the roof.

use crate::quantity::Bounded;

/// Differences below this are rounding, m.
pub(super) const SLACK_M: f64 = 1e-6;

/// A rectangle on the roof, its sides along and across the vehicle.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Rectangle {
    /// From the front edge of the usable roof to its front, m.
    pub from_front_m: f64,
    /// From the left edge of the usable roof to its left side, m.
    pub from_left_m: f64,
    /// Along the vehicle, m, at least 0.
    pub length_m: f64,
    /// Across the vehicle, m, at least 0.
    pub width_m: f64,
}

impl Rectangle {
    /// Its rear edge from the front of the usable roof, m.
    #[must_use]
    pub fn rear_m(&self) -> f64 {
        self.from_front_m + self.length_m
    }

    /// Its right edge from the left of the usable roof, m.
    #[must_use]
    pub fn right_m(&self) -> f64 {
        self.from_left_m + self.width_m
    }

    /// Its area, m².
    #[must_use]
    pub fn area_m2(&self) -> f64 {
        self.length_m * self.width_m
    }

    /// Area that it shares with another, m²; zero where they only touch.
    #[must_use]
    pub fn shared_area_m2(&self, other: &Self) -> f64 {
        let along_m =
            self.rear_m().at_most(other.rear_m()) - self.from_front_m.at_least(other.from_front_m);
        let across_m =
            self.right_m().at_most(other.right_m()) - self.from_left_m.at_least(other.from_left_m);
        if along_m <= SLACK_M || across_m <= SLACK_M {
            return 0.0;
        }
        along_m * across_m
    }

    /// Shortest distance to another, m: √(Δx² + Δy²) between nearest points; zero where they touch or overlap.
    #[must_use]
    pub fn gap_m(&self, other: &Self) -> f64 {
        let along_m = (other.from_front_m - self.rear_m())
            .at_least(self.from_front_m - other.rear_m())
            .at_least(0.0);
        let across_m = (other.from_left_m - self.right_m())
            .at_least(self.from_left_m - other.right_m())
            .at_least(0.0);
        (along_m * along_m + across_m * across_m).sqrt()
    }

    /// A square of a side about its middle, m.
    #[must_use]
    pub fn square_about_middle(&self, side_m: f64) -> Self {
        Self {
            from_front_m: self.from_front_m + 0.5 * (self.length_m - side_m),
            from_left_m: self.from_left_m + 0.5 * (self.width_m - side_m),
            length_m: side_m,
            width_m: side_m,
        }
    }

    /// Whether it leaves a distance to another, m, and does not lie on it.
    #[must_use]
    pub fn is_clear_of(&self, other: &Self, distance_m: f64) -> bool {
        self.shared_area_m2(other) <= 0.0 && self.gap_m(other) >= distance_m - SLACK_M
    }
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

    #[test]
    fn the_gap_at_a_corner_is_straight_across() {
        // 0.03 m along and 0.04 m across: 0.05 m.
        let one = rectangle(0.0, 0.0, 1.0, 1.0);
        let other = rectangle(1.03, 1.04, 1.0, 1.0);
        assert!((one.gap_m(&other) - 0.05).abs() < 1e-12);
        assert!((other.gap_m(&one) - 0.05).abs() < 1e-12);
    }
}
