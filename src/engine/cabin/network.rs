//! The network itself: state and step.

use super::boundary::Boundary;
use super::chain::{Chain, NODES};
use super::coefficients::{Coefficients, DryLimit};
use super::description::{CabinDescription, CabinError, Element, Part};
use super::faces::{InnerFaces, OuterFaces, inner_faces, outer_faces};
use super::flows::{Extraction, Forecast, Gains, StepResult};
use super::interval::Sums;
use super::moisture::Moisture;
use super::strip::{Given, Implicit, Row, STRIPS, Strip, StripState, WIDTH, set_lane, sum_of};
use super::wind::WindOnFaces;
use crate::envelope::convection::{WindProfile, moving_air_term};
use crate::quantity::Bounded;

/// Weight of the step's end: a little above one half, which is nearly of second order and stable at any step.
const THETA: f64 = 0.55;

/// Longest step taken with that weight, s. In longer ones it would let the air swing about its balance for many steps; they are
/// taken wholly from their end, which cannot.
const THETA_STEP_LONGEST_S: f64 = 60.0;

/// Weight of the end of a step of a length, s.
fn theta_of(step_s: f64) -> f64 {
    if step_s > THETA_STEP_LONGEST_S {
        1.0
    } else {
        THETA
    }
}

/// The built network with its state.
#[derive(Clone, Debug)]
pub struct Cabin {
    pub(super) elements: Vec<Element>,
    pub(super) outer: [OuterFaces; STRIPS],
    pub(super) inner: [InnerFaces; STRIPS],
    pub(super) wind: WindOnFaces,
    /// Air that is stirred, m³/s, and the term of convection that it makes.
    pub(super) stirred_m3_s: f64,
    pub(super) moving_air: f64,
    pub(super) air_volume_m3: f64,
    pub(super) pressure_pa: f64,
    pub(super) moisture_factor: f64,
    pub(super) capacity: [Row; NODES],
    pub(super) conductance: [Row; NODES - 1],
    pub(super) chains: [StripState; STRIPS],
    /// Strips that hold chains, and how many of them come before those of which no chain has mass in its middle.
    pub(super) used: usize,
    pub(super) filled: usize,
    /// What the eliminated chains give to air and star, W.
    pub(super) given_w: [f64; 2],
    pub(super) is_factored: bool,
    pub(super) air_c: f64,
    pub(super) star_c: f64,
    pub(super) moisture: Moisture,
    pub(super) now: Coefficients,
    pub(super) sums: Sums,
    pub(super) condensation_w: f64,
    pub(super) dry: DryLimit,
    /// What outdoor air and condensing water give to the air at 0 °C, W.
    pub(super) given_freely_w: f64,
    pub(super) chains_energy_j: f64,
    pub(super) inner_energy_j: f64,
}

impl Cabin {
    /// Builds the network, everything at one temperature (°C, −60…120) and humidity ratio (kg/kg, zero or more).
    ///
    /// `wind_profile` is that of the land around.
    ///
    /// # Errors
    /// [`CabinError`] when the description does not hold together.
    pub fn new(
        description: &CabinDescription,
        wind_profile: &WindProfile,
        temperature_c: f64,
        humidity_ratio: f64,
    ) -> Result<Self, CabinError> {
        description.check()?;
        let mut cabin = Self {
            elements: description.elements.clone(),
            outer: outer_faces(&description.elements),
            inner: inner_faces(&description.elements),
            wind: WindOnFaces::new(&description.elements, wind_profile),
            stirred_m3_s: 0.0,
            moving_air: moving_air_term(0.0, description.air_volume_m3),
            air_volume_m3: description.air_volume_m3,
            pressure_pa: description.pressure_pa,
            moisture_factor: description.furnishing_moisture_factor.at_least(0.0),
            capacity: [[Strip::splat(1.0); STRIPS]; NODES],
            conductance: [[Strip::splat(1.0); STRIPS]; NODES - 1],
            chains: std::array::from_fn(|_| StripState::at(temperature_c)),
            used: description.elements.len().div_ceil(WIDTH),
            filled: filled_strips(&description.elements),
            given_w: [0.0; 2],
            is_factored: false,
            air_c: temperature_c,
            star_c: temperature_c,
            moisture: Moisture::default(),
            now: Coefficients::default(),
            sums: Sums::default(),
            condensation_w: 0.0,
            dry: DryLimit::default(),
            given_freely_w: 0.0,
            chains_energy_j: 0.0,
            inner_energy_j: 0.0,
        };
        cabin.moisture.humidity_ratio = humidity_ratio;
        cabin.place_elements();
        (cabin.chains_energy_j, cabin.inner_energy_j) = cabin.chain_energies_j();
        cabin.begin_sums();
        Ok(cabin)
    }

    /// Temperature of the air, °C.
    #[must_use]
    pub fn air_c(&self) -> f64 {
        self.air_c
    }

    /// Mean radiant temperature as the star sees it, °C.
    #[must_use]
    pub fn radiant_c(&self) -> f64 {
        self.star_c
    }

    /// Mean temperature of an element's nodes by their capacity, °C: of stored goods, say, and of the bank among them;
    /// none if there is no such element.
    #[must_use]
    pub fn core_c(&self, element: usize) -> Option<f64> {
        let capacities = self.elements.get(element)?.chain.capacity_j_m2_k;
        let sum: f64 = capacities.iter().sum();
        let weighted: f64 = capacities
            .iter()
            .enumerate()
            .map(|(node, capacity)| capacity * self.node_c(node, element))
            .sum();
        Some(weighted / sum)
    }

    /// Temperature of a node of a lane, °C.
    #[inline]
    pub(super) fn node_c(&self, node: usize, lane: usize) -> f64 {
        self.chains[lane / WIDTH].temperature[node].as_array()[lane % WIDTH]
    }

    /// Humidity ratio of the air, kg/kg.
    #[must_use]
    pub fn humidity_ratio(&self) -> f64 {
        self.moisture.humidity_ratio
    }

    /// Temperature of an element's outer face, °C; none if there is no such element.
    #[must_use]
    pub fn outer_face_c(&self, element: usize) -> Option<f64> {
        (element < self.elements.len()).then(|| self.node_c(0, element))
    }

    /// Temperature of an element's inner face, °C; none if there is no such element.
    #[must_use]
    pub fn inner_face_c(&self, element: usize) -> Option<f64> {
        (element < self.elements.len()).then(|| self.node_c(NODES - 1, element))
    }

    /// The elements in the order of the lanes.
    #[must_use]
    pub fn elements(&self) -> &[Element] {
        &self.elements
    }

    /// Warms everything by so many kelvins, which may be negative; water stays where it is.
    pub fn warm_by(&mut self, warmer_k: f64) {
        if warmer_k == 0.0 {
            return;
        }
        for strip in &mut self.chains {
            for node in &mut strip.temperature {
                *node += Strip::splat(warmer_k);
            }
        }
        self.air_c += warmer_k;
        self.star_c += warmer_k;
        self.eliminate();
        (self.chains_energy_j, self.inner_energy_j) = self.chain_energies_j();
        self.begin_sums();
    }

    /// Gives every pane the conductances of another chain, as when covers go on; capacities stay.
    pub fn replace_panes(&mut self, pane: &Chain) {
        for lane in 0..self.elements.len() {
            if self.elements[lane].part == Part::Glass {
                self.conduct_by(lane, pane);
            }
        }
    }

    /// Gives a lane the conductances of a chain.
    fn conduct_by(&mut self, lane: usize, chain: &Chain) {
        let chain = if lane / WIDTH < self.filled {
            *chain
        } else {
            chain.across_middle()
        };
        for (link, conductance) in self.conductance.iter_mut().enumerate() {
            let w_k = chain.conductance_w_m2_k[link] * self.elements[lane].area_m2;
            set_lane(conductance, lane, w_k);
        }
    }

    /// Freezes the coefficients of the interval that follows from the surroundings and the present state, for steps of
    /// `step_s` seconds, above zero.
    pub fn set_conditions(&mut self, boundary: &Boundary<'_>, step_s: f64) {
        self.set_outer(boundary);
        self.set_inner(boundary);
        self.set_exchange(boundary);
        self.given_freely_w = self.now.exchange_w_k * self.now.outdoor_c + self.condensation_w;
        self.is_factored = false;
        self.set_step(step_s);
    }

    /// Goes on in steps of another length, above zero, under the same coefficients.
    #[inline(always)]
    pub fn set_step(&mut self, step_s: f64) {
        if step_s != self.now.step_s || !self.is_factored {
            self.begin_steps(step_s);
        }
    }

    /// Factors for steps of a length that follow.
    #[inline(never)]
    fn begin_steps(&mut self, step_s: f64) {
        self.is_factored = true;
        let theta = theta_of(step_s);
        self.count_in_steps_of(step_s, theta);
        (self.now.step_s, self.now.theta) = (step_s, theta);
        self.now.per_theta = 1.0 / theta;
        self.now.kept = 1.0 - self.now.per_theta;
        self.moisture.set_step(step_s, theta);
        self.factor(1.0 / (theta * step_s));
        self.eliminate();
    }

    /// Looks ahead to the end of the next step, so that a control that follows the temperature can be solved with it.
    pub fn forecast(&self, gains: &Gains) -> Forecast {
        let (untouched_c, _, _) = self.solve_core(gains, &Extraction::NONE);
        Forecast {
            air_c: self.air_c * self.now.kept + untouched_c * self.now.per_theta,
            fall_k_per_w: self.now.inverse[0][0] * self.now.per_theta,
        }
    }

    /// One step of the length given to [`Cabin::set_conditions`].
    pub fn step(&mut self, gains: &Gains, extraction: &Extraction) -> StepResult {
        let (air, star, extracted_w) = self.solve_core(gains, extraction);
        self.advance_chains(air, star);
        self.advance_core(air, star);
        let water = self.moisture.step(
            gains.moisture_kg_s,
            extraction.moisture_kg_s,
            extraction.least_humidity_ratio,
        );
        let steps = &mut self.sums.steps;
        steps.air += air;
        steps.star += star;
        steps.above_outdoors += water.above_outdoors;
        steps.gains_w += gains.convective_w + gains.radiant_w;
        steps.extracted_w += extracted_w;
        steps.moisture_gains_kg_s += gains.moisture_kg_s;
        steps.coil_kg_s += water.coil_kg_s;
        steps.count += 1.0;
        StepResult {
            extracted_w,
            coil_kg_s: water.coil_kg_s,
        }
    }

    fn place_elements(&mut self) {
        for lane in 0..self.elements.len() {
            let Element { chain, area_m2, .. } = self.elements[lane];
            for (row, capacity_j_m2_k) in self.capacity.iter_mut().zip(chain.capacity_j_m2_k) {
                set_lane(row, lane, capacity_j_m2_k * area_m2);
            }
            self.conduct_by(lane, &chain);
        }
    }

    /// Eliminates the chains for the coming step, where none before it has done so.
    fn eliminate(&mut self) {
        let (filled, hollow) = self.chains[..self.used].split_at_mut(self.filled);
        for strip in filled {
            strip.eliminate::<false>();
        }
        for strip in hollow {
            strip.eliminate::<true>();
        }
        self.give();
    }

    /// Sums what the eliminated chains give to air and star.
    #[inline(always)]
    fn give(&mut self) {
        let mut given = Given::default();
        for strip in &self.chains[..self.used] {
            let [to_air, to_star] = strip.given();
            given[0] += to_air;
            given[1] += to_star;
        }
        self.given_w = given.map(sum_of);
    }

    /// Air and star at the implicit instant, and the heat taken out.
    fn solve_core(&self, gains: &Gains, extraction: &Extraction) -> (f64, f64, f64) {
        let now = &self.now;
        let given_w = gains.convective_w + self.given_freely_w;
        let air_w = (now.air_carry * self.air_c + given_w) + self.given_w[0];
        let star_w = self.given_w[1] + gains.radiant_w;
        let untouched_c = now.inverse[0][0] * air_w + now.inverse[0][1] * star_w;
        let star_c = now.inverse[1][0] * air_w + now.inverse[1][1] * star_w;
        if extraction.sensible_w == 0.0 {
            return (untouched_c, star_c, 0.0);
        }
        let least_c = self.air_c + now.theta * (extraction.least_c - self.air_c);
        let most_w = ((untouched_c - least_c) * now.air_w_k).at_least(0.0);
        let extracted_w = extraction.sensible_w.at_most(most_w);
        (
            untouched_c - extracted_w * now.inverse[0][0],
            star_c - extracted_w * now.inverse[1][0],
            extracted_w,
        )
    }

    /// Takes the step in the chains.
    fn advance_chains(&mut self, air_c: f64, star_c: f64) {
        let implicit = Implicit {
            air_c,
            star_c,
            kept: self.now.kept,
        };
        let (filled, hollow) = self.chains[..self.used].split_at_mut(self.filled);
        for strip in filled {
            strip.advance::<false>(&implicit);
        }
        for strip in hollow {
            strip.advance::<true>(&implicit);
        }
        self.give();
    }

    fn advance_core(&mut self, air_c: f64, star_c: f64) {
        self.air_c = self.air_c * self.now.kept + air_c * self.now.per_theta;
        self.star_c = star_c;
    }
}

/// Strips up to the last chain that has mass in its middle.
fn filled_strips(elements: &[Element]) -> usize {
    let last = elements
        .iter()
        .rposition(|element| !element.chain.is_hollow());
    last.map_or(0, |last| last / WIDTH + 1)
}
