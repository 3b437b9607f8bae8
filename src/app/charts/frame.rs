//! Geometry of a chart: from values to places on the page, round ticks, and labels that do not overlap.

/// A plot's place on its canvas, in CSS pixels, and the values at its edges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// Left edge.
    pub left: f64,
    /// Right edge.
    pub right: f64,
    /// Top edge.
    pub top: f64,
    /// Bottom edge.
    pub bottom: f64,
    /// Values at the left and right edges.
    pub across: (f64, f64),
    /// Values at the bottom and top edges.
    pub up: (f64, f64),
}

impl Frame {
    /// Place of a value along the horizontal axis.
    pub fn x(&self, value: f64) -> f64 {
        let (from, to) = self.across;
        self.left + (value - from) / (to - from) * (self.right - self.left)
    }

    /// Place of a value along the vertical axis.
    pub fn y(&self, value: f64) -> f64 {
        let (low, high) = self.up;
        self.bottom - (value - low) / (high - low) * (self.bottom - self.top)
    }

    /// Places of samples, those beyond the sides left out.
    pub fn places(&self, times: &[f64], values: &[f64]) -> Vec<(f64, f64)> {
        let (from, until) = self.across;
        times
            .iter()
            .zip(values)
            .filter(|(time, _)| (from..=until).contains(*time))
            .map(|(time, value)| (self.x(*time), self.y(*value)))
            .collect()
    }
}

/// Round values within a range, at most so many.
pub fn ticks(low: f64, high: f64, most: usize) -> Vec<f64> {
    let step = tick_step(high - low, most);
    let first = (low / step - 1e-9).ceil() as i64;
    let last = (high / step + 1e-9).floor() as i64;
    (first..=last).map(|index| index as f64 * step).collect()
}

/// A range widened to round values.
pub fn widened(low: f64, high: f64, most: usize) -> (f64, f64) {
    let span = (high - low).max(1.0);
    let step = tick_step(span, most);
    let bottom = (low / step).floor() * step;
    let top = (high / step).ceil() * step;
    if top > bottom {
        (bottom, top)
    } else {
        (bottom, bottom + step)
    }
}

/// Hours for an axis of clock time, so many pixels wide.
pub fn hour_ticks(from_h: f64, until_h: f64, width: f64) -> Vec<f64> {
    const LEAST_GAP: f64 = 42.0;
    const STEPS: [f64; 7] = [1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 48.0];
    let span = (until_h - from_h).max(1.0);
    let fits = |step: &f64| width * step / span >= LEAST_GAP;
    let step = STEPS.into_iter().find(fits).unwrap_or(48.0);
    ticks_every(from_h, until_h, step)
}

/// Midnights within a span.
pub fn midnights(from_h: f64, until_h: f64) -> Vec<f64> {
    ticks_every(from_h, until_h, 24.0)
        .into_iter()
        .filter(|hour| *hour > from_h && *hour < until_h)
        .collect()
}

/// Moves places apart so that neighbours keep a gap, within bounds, each as near as may be to where it was wanted.
pub fn spread(wanted: &[f64], gap: f64, low: f64, high: f64) -> Vec<f64> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    let at = |index: usize| wanted.get(index).copied().unwrap_or_default();
    noonday_engine::quantity::sort_few(&mut order, |one, other| {
        at(*one).total_cmp(&at(*other)).is_gt()
    });
    let mut places: Vec<f64> = order.iter().map(|index| at(*index)).collect();
    push_down(&mut places, gap, low);
    push_up(&mut places, gap, high);
    push_down(&mut places, gap, low);
    let mut spread = vec![0.0; wanted.len()];
    for (index, place) in order.into_iter().zip(places) {
        if let Some(slot) = spread.get_mut(index) {
            *slot = place;
        }
    }
    spread
}

fn push_down(places: &mut [f64], gap: f64, low: f64) {
    let mut least = low;
    for place in places.iter_mut() {
        *place = place.max(least);
        least = *place + gap;
    }
}

fn push_up(places: &mut [f64], gap: f64, high: f64) {
    let mut most = high;
    for place in places.iter_mut().rev() {
        *place = place.min(most);
        most = *place - gap;
    }
}

fn ticks_every(from: f64, until: f64, step: f64) -> Vec<f64> {
    let first = (from / step - 1e-9).ceil() as i64;
    let last = (until / step + 1e-9).floor() as i64;
    (first..=last).map(|index| index as f64 * step).collect()
}

fn tick_step(span: f64, most: usize) -> f64 {
    let rough = span / most.max(1) as f64;
    let mut decade = 1.0;
    while decade > rough {
        decade /= 10.0;
    }
    while decade * 10.0 <= rough {
        decade *= 10.0;
    }
    let factor = [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .find(|factor| decade * factor >= rough - 1e-12);
    decade * factor.unwrap_or(10.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_map_to_places() {
        let frame = Frame {
            left: 30.0,
            right: 330.0,
            top: 10.0,
            bottom: 210.0,
            across: (6.0, 30.0),
            up: (20.0, 40.0),
        };
        assert_eq!(
            (frame.x(6.0), frame.x(18.0), frame.x(30.0)),
            (30.0, 180.0, 330.0)
        );
        assert_eq!(
            (frame.y(20.0), frame.y(30.0), frame.y(40.0)),
            (210.0, 110.0, 10.0)
        );
    }

    #[test]
    fn ticks_are_round_and_few() {
        assert_eq!(ticks(21.0, 43.0, 5), [25.0, 30.0, 35.0, 40.0]);
        assert_eq!(ticks(0.0, 100.0, 4), [0.0, 50.0, 100.0]);
        assert_eq!(widened(21.3, 43.0, 5), (20.0, 45.0));
        assert_eq!(widened(20.0, 20.0, 5).0, 20.0);
        assert_eq!(ticks(-0.2, 0.2, 4), [-0.2, -0.1, 0.0, 0.1, 0.2]);
    }

    #[test]
    fn hours_are_as_close_as_their_labels_allow() {
        assert_eq!(
            hour_ticks(6.0, 30.0, 340.0),
            [6.0, 9.0, 12.0, 15.0, 18.0, 21.0, 24.0, 27.0, 30.0]
        );
        assert_eq!(hour_ticks(6.0, 30.0, 200.0), [6.0, 12.0, 18.0, 24.0, 30.0]);
        assert_eq!(midnights(6.0, 54.0), [24.0, 48.0]);
        assert_eq!(midnights(0.0, 24.0), Vec::<f64>::new());
    }

    #[test]
    fn labels_keep_their_distance_and_order() {
        let placed = spread(&[100.0, 101.0, 50.0, 102.0], 14.0, 0.0, 120.0);
        assert_eq!(placed[2], 50.0);
        let mut sorted = [placed[0], placed[1], placed[3]];
        sorted.sort_by(f64::total_cmp);
        assert!(sorted[1] - sorted[0] >= 14.0 && sorted[2] - sorted[1] >= 14.0);
        assert!(sorted[2] <= 120.0 && placed[0] < placed[1] && placed[1] < placed[3]);
    }
}
