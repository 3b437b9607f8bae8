//! The chains of two lanes place by place.
//!
//! A step visits each strip once: it substitutes air and star back through the chains, moves their nodes on, and eliminates them
//! for the step that follows. Two numbers place by place are what the vector registers hold of every processor that the engine
//! is built for.

use super::chain::NODES;

/// Lanes place by place.
pub(super) const WIDTH: usize = 6;

/// A number for each lane of a strip.
pub(super) type Strip = [f64; WIDTH];

/// The factored matrix of a strip: each node's part of the elimination, from the outer node to the inner one.
#[derive(Clone, Debug, Default)]
#[repr(align(16))]
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
    /// Temperature of the inner node for each watt from the cabin, K/W.
    pub(super) inverse_inner: Strip,
    /// Conductances from the inner node to air and star, W/K.
    pub(super) to_air: Strip,
    pub(super) to_star: Strip,
}

/// The state of a strip.
#[derive(Clone, Debug, Default)]
#[repr(align(16))]
pub(super) struct StripState {
    /// Temperature of each node, °C.
    pub(super) temperature: [Strip; NODES],
    /// The same, eliminated for the coming step.
    eliminated: [Strip; NODES],
    /// Sums of the implicit temperatures of the outer node, the one beneath the inner face, and the inner node, °C s.
    pub(super) outer_sum: Strip,
    pub(super) beneath_sum: Strip,
    pub(super) inner_sum: Strip,
}

/// Temperatures of air and star at the implicit instant, °C, and the weights of the step.
#[derive(Clone, Copy, Debug)]
pub(super) struct Implicit {
    pub(super) air_c: f64,
    pub(super) star_c: f64,
    pub(super) step_s: f64,
    pub(super) per_theta: f64,
}

/// What a strip gives to air and to star, W.
pub(super) type Given = [Strip; 2];

impl StripState {
    /// Every node at one temperature, °C.
    pub(super) fn at(temperature_c: f64) -> Self {
        Self {
            temperature: [[temperature_c; WIDTH]; NODES],
            ..Self::default()
        }
    }

    /// Eliminates the chains for the coming step.
    #[inline(always)]
    pub(super) fn eliminate(&mut self, matrix: &StripMatrix) -> Given {
        let mut forward = plus(
            times(matrix.carry[0], self.temperature[0]),
            matrix.outer_source,
        );
        self.eliminated[0] = forward;
        for node in 1..NODES {
            let own = times(matrix.carry[node], self.temperature[node]);
            forward = plus(own, times(matrix.feed[node], forward));
            if node == NODES - 1 {
                forward = plus(forward, matrix.inner_source);
            }
            self.eliminated[node] = forward;
        }
        [
            times(matrix.to_air, forward),
            times(matrix.to_star, forward),
        ]
    }

    /// Takes the step, sums the implicit temperatures, and eliminates for the step that follows.
    #[inline(always)]
    pub(super) fn advance(&mut self, matrix: &StripMatrix, implicit: &Implicit) -> Given {
        let from_cabin = plus(
            scaled(matrix.to_air, implicit.air_c),
            scaled(matrix.to_star, implicit.star_c),
        );
        let mut node_c = plus(
            self.eliminated[NODES - 1],
            times(matrix.inverse_inner, from_cabin),
        );
        add(&mut self.inner_sum, scaled(node_c, implicit.step_s));
        approach(&mut self.temperature[NODES - 1], node_c, implicit.per_theta);
        for node in (0..NODES - 1).rev() {
            node_c = plus(self.eliminated[node], times(matrix.back[node], node_c));
            if node == NODES - 2 {
                add(&mut self.beneath_sum, scaled(node_c, implicit.step_s));
            }
            approach(&mut self.temperature[node], node_c, implicit.per_theta);
        }
        add(&mut self.outer_sum, scaled(node_c, implicit.step_s));
        self.eliminate(matrix)
    }

    /// Begins new sums.
    pub(super) fn clear_sums(&mut self) {
        self.outer_sum = Strip::default();
        self.beneath_sum = Strip::default();
        self.inner_sum = Strip::default();
    }
}

/// From the implicit instant to the end of the step.
#[inline]
fn approach(old: &mut Strip, implicit: Strip, per_theta: f64) {
    for (old, implicit) in old.iter_mut().zip(implicit) {
        *old += (implicit - *old) * per_theta;
    }
}

#[inline]
fn add(sum: &mut Strip, addend: Strip) {
    *sum = plus(*sum, addend);
}

#[inline]
fn plus(one: Strip, other: Strip) -> Strip {
    std::array::from_fn(|place| one[place] + other[place])
}

#[inline]
fn times(one: Strip, other: Strip) -> Strip {
    std::array::from_fn(|place| one[place] * other[place])
}

#[inline]
fn scaled(strip: Strip, factor: f64) -> Strip {
    strip.map(|number| number * factor)
}
