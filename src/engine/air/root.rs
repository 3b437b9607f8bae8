//! Roots of rising functions by Halley's method.

use super::saturation::TRIPLE_POINT_C;
use super::{ITERATIONS_GREATEST, TEMPERATURE_TOLERANCE_K};
use crate::quantity::Bounded;

/// Greatest rate at which saturation rises with temperature, 1/K: that of ice at −100 °C; at 40 °C it is 0.05.
const RATE_PER_K: f64 = 0.2;

/// Value of a function with its first and second derivative.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Curve {
    pub(super) value: f64,
    pub(super) slope: f64,
    pub(super) bend: f64,
}

impl Curve {
    /// The function less a constant.
    pub(super) fn less(self, constant: f64) -> Self {
        Self {
            value: self.value - constant,
            ..self
        }
    }
}

/// Root of a rising function of saturated air's temperature between two bounds, or the nearer bound, within the tolerance of
/// temperatures.
///
/// Newton's step s is bent to s/(1 + q), with q = s f″/(2 f′) (Halley 1694): the second derivative costs less than another
/// exponential. It leaves s (q² − s² f‴/(6 f′)), and the third derivative of a straight line with an exponential is the second
/// times the rate; so none is taken only to see that it is small, unless it passes the triple point, where the curve turns. A
/// step that leaves the bracket is replaced by half of it.
pub(super) fn rising_root(
    function: impl Fn(f64) -> Curve,
    lower: f64,
    upper: f64,
    start: f64,
) -> f64 {
    let (mut low, mut high) = (lower, upper);
    let mut root = start.at_least(lower).at_most(upper);
    for _ in 0..ITERATIONS_GREATEST {
        let Curve { value, slope, bend } = function(root);
        if value > 0.0 {
            high = root;
        } else {
            low = root;
        }
        let per_slope = 1.0 / slope;
        let newton = -value * per_slope;
        let bent = 0.5 * newton * bend * per_slope;
        let halley = root + newton / (1.0 + bent);
        let inside = halley > low && halley < high;
        let next = if inside { halley } else { 0.5 * (low + high) };
        let is_smooth = inside && (root < TRIPLE_POINT_C) == (next < TRIPLE_POINT_C);
        let step = (next - root).abs();
        root = next;
        let left = if is_smooth {
            step * bent.abs() * (bent.abs() + step * RATE_PER_K / 3.0)
        } else {
            step
        };
        if left < TEMPERATURE_TOLERANCE_K {
            break;
        }
    }
    root
}
