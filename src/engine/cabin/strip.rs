//! The chains of a few lanes place by place, in the registers of `wide`: left to itself the compiler arranges them well or badly
//! from one build to the next.
//!
//! Where none of a strip's chains has mass in its middle, as in empty cavities and panes, the strip is *hollow*: its middle nodes are
//! left out, which changes no result but by rounding.
//!
//! A step visits each strip once: it substitutes air and star back through the chains, moves their nodes on, and eliminates them
//! for the step that follows. Every operation is rounded for each place by itself, so that wide and narrow registers give the
//! same bits; products that are added at once are fused where the processor can do so, which shortens the way through a chain by a
//! third, and rounded twice where it cannot, as in WebAssembly.

use super::chain::{BENEATH, INNER, NODES, OUTER};
use super::description::LANES;
use wide::f64x4;

/// Lanes place by place: what a usual processor's vector register holds; where registers are narrower, two of them.
pub(super) const WIDTH: usize = 4;

/// A number for each lane of a strip.
pub(super) type Strip = f64x4;

/// Strips of all lanes.
pub(super) const STRIPS: usize = LANES / WIDTH;

/// A number for each lane.
pub(super) type Row = [Strip; STRIPS];

/// The number of one lane.
#[inline]
pub(super) fn lane_of(row: &Row, lane: usize) -> f64 {
    row[lane / WIDTH].as_array()[lane % WIDTH]
}

/// Sets the number of one lane.
pub(super) fn set_lane(row: &mut Row, lane: usize, number: f64) {
    let mut numbers = row[lane / WIDTH].to_array();
    numbers[lane % WIDTH] = number;
    row[lane / WIDTH] = Strip::new(numbers);
}

/// The numbers of a strip's lanes.
#[inline(always)]
pub(super) fn strip_of(lanes: &[f64; LANES], strip: usize) -> Strip {
    Strip::new(lanes.as_chunks().0[strip])
}

/// The sum of all lanes, in an order of our own: that of the processor's registers differs from one to another.
#[inline]
pub(super) fn sum_of(strip: Strip) -> f64 {
    let [a, b, c, d] = strip.to_array();
    (a + b) + (c + d)
}

/// The factored matrix of a strip: each node's part of the elimination, from the outer node to the inner one, for implicit
/// temperatures over θ. So divided, a step leaves a node at (1 − 1/θ) T + y/θ without a product of its own.
#[derive(Clone, Debug, Default)]
pub(super) struct StripMatrix {
    /// What a node keeps of its own temperature.
    pub(super) carry: [Strip; NODES],
    /// What it takes from the node before.
    pub(super) feed: [Strip; NODES],
    /// What it takes from the node after, on the way back.
    pub(super) back: [Strip; NODES],
    /// Sources at the outer and at the inner node, K.
    pub(super) outer_source: Strip,
    pub(super) inner_source: Strip,
    /// What the inner node takes from air and star.
    pub(super) from_air: Strip,
    pub(super) from_star: Strip,
    /// What the inner node gives to air and star, W/K.
    pub(super) to_air: Strip,
    pub(super) to_star: Strip,
}

/// A strip: its matrix beside its state, so that a step goes through both at one address.
#[derive(Clone, Debug, Default)]
pub(super) struct StripState {
    /// The matrix of the present interval.
    pub(super) matrix: StripMatrix,
    /// Temperature of each node, °C.
    pub(super) temperature: [Strip; NODES],
    /// The implicit temperatures over θ, eliminated for the coming step.
    eliminated: [Strip; NODES],
    /// Sums over steps of the present length of the implicit temperatures over θ.
    sums: FaceSums,
}

/// Sums for the outer node, the one beneath the inner face, and the inner node.
#[derive(Clone, Debug, Default)]
pub(super) struct FaceSums {
    pub(super) outer: Strip,
    pub(super) beneath: Strip,
    pub(super) inner: Strip,
}

impl FaceSums {
    fn times(&self, factor: f64) -> Self {
        Self {
            outer: self.outer * factor,
            beneath: self.beneath * factor,
            inner: self.inner * factor,
        }
    }
}

/// Temperatures of air and star at the implicit instant, °C, and the share of itself that a node keeps over a step.
#[derive(Clone, Copy, Debug)]
pub(super) struct Implicit {
    pub(super) air_c: f64,
    pub(super) star_c: f64,
    pub(super) kept: f64,
}

/// What a strip gives to air and to star, W.
pub(super) type Given = [Strip; 2];

impl StripState {
    /// Every node at one temperature, °C.
    pub(super) fn at(temperature_c: f64) -> Self {
        Self {
            temperature: [Strip::splat(temperature_c); NODES],
            ..Self::default()
        }
    }

    /// Eliminates the chains for the coming step; `HOLLOW` ones have no middle nodes.
    #[inline(always)]
    pub(super) fn eliminate<const HOLLOW: bool>(&mut self) {
        // Written out node by node: of a loop that leaves some out the compiler makes no straight code.
        let mut forward = self.with_source(OUTER, self.matrix.outer_source);
        self.eliminated[OUTER] = forward;
        if !HOLLOW {
            forward = self.feed(1, self.own(1), forward);
            forward = self.feed(2, self.own(2), forward);
        }
        forward = self.feed(BENEATH, self.own(BENEATH), forward);
        let inner = self.with_source(INNER, self.matrix.inner_source);
        self.feed(INNER, inner, forward);
    }

    /// What the eliminated chains give.
    #[inline(always)]
    pub(super) fn given(&self) -> Given {
        let inner = self.eliminated[INNER];
        [self.matrix.to_air * inner, self.matrix.to_star * inner]
    }

    /// What a node has of itself.
    #[inline(always)]
    fn own(&self, node: usize) -> Strip {
        self.matrix.carry[node] * self.temperature[node]
    }

    /// The same with a source.
    #[inline(always)]
    fn with_source(&self, node: usize, source: Strip) -> Strip {
        self.matrix.carry[node].mul_add(self.temperature[node], source)
    }

    /// Eliminates a node, which takes from the one before it.
    #[inline(always)]
    fn feed(&mut self, node: usize, own: Strip, before: Strip) -> Strip {
        self.eliminated[node] = self.matrix.feed[node].mul_add(before, own);
        self.eliminated[node]
    }

    /// Takes the step, sums the implicit temperatures, and eliminates for the step that follows.
    #[inline(always)]
    pub(super) fn advance<const HOLLOW: bool>(&mut self, implicit: &Implicit) {
        let [air_c, star_c, kept] =
            [implicit.air_c, implicit.star_c, implicit.kept].map(Strip::splat);
        let mut moved = self.matrix.from_air.mul_add(air_c, self.eliminated[INNER]);
        moved = self.matrix.from_star.mul_add(star_c, moved);
        self.sums.inner += moved;
        self.move_on(INNER, moved, kept);
        moved = self.substitute(BENEATH, moved, kept);
        self.sums.beneath += moved;
        if !HOLLOW {
            moved = self.substitute(2, moved, kept);
            moved = self.substitute(1, moved, kept);
        }
        moved = self.substitute(OUTER, moved, kept);
        self.sums.outer += moved;
        self.eliminate::<HOLLOW>();
    }

    /// Substitutes into a node the one after it, and moves it on.
    #[inline(always)]
    fn substitute(&mut self, node: usize, after: Strip, kept: Strip) -> Strip {
        let moved = self.matrix.back[node].mul_add(after, self.eliminated[node]);
        self.move_on(node, moved, kept);
        moved
    }

    /// From the beginning of a step to its end.
    #[inline(always)]
    fn move_on(&mut self, node: usize, moved: Strip, kept: Strip) {
        self.temperature[node] = self.temperature[node].mul_add(kept, moved);
    }

    /// The sums of the implicit temperatures by time, °C s, where θ times the length of a step is so many seconds.
    pub(super) fn sums_by_time(&self, weight_s: f64) -> FaceSums {
        self.sums.times(weight_s)
    }

    /// Counts the steps so far as so many times others.
    pub(super) fn rescale_sums(&mut self, times: f64) {
        self.sums = self.sums.times(times);
    }

    /// Begins new sums.
    pub(super) fn clear_sums(&mut self) {
        self.sums = FaceSums::default();
    }
}
