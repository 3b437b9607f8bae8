//! The network itself: state, factored matrix, step.

use super::boundary::{Boundary, OuterFace, wind_side};
use super::chain::{Chain, NODES};
use super::description::{CabinDescription, CabinError, Element, LANES, Outside, Part};
use super::ledger::Ledger;
use super::moisture::Moisture;
use crate::air;
use crate::envelope::convection::{
    Facing, ROUGHNESS_SMOOTH, ROUGHNESS_VERY_SMOOTH, WindProfile, WindTerm, inside_w_m2_k,
    moving_air_term, natural_w_m2_k,
};
use crate::quantity::{STEFAN_BOLTZMANN_W_M2_K4, kelvin_from_celsius};

/// Weight of the step's end; above one half, so that stiff nodes settle at any step.
pub(super) const THETA: f64 = 0.55;

/// A row of the lanes.
type Lanes = [f64; LANES];

/// Gains inside, W and kg/s.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Gains {
    /// Given to the air, W.
    pub convective_w: f64,
    /// Radiated to the surfaces, W.
    pub radiant_w: f64,
    /// Water vapour, kg/s.
    pub moisture_kg_s: f64,
}

/// What a cooler would take out of the air.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Extraction {
    /// Sensible heat at most, W.
    pub sensible_w: f64,
    /// The air is not cooled below this, °C.
    pub least_c: f64,
    /// Water at most, kg/s.
    pub moisture_kg_s: f64,
    /// The air is not dried below this, kg/kg.
    pub least_humidity_ratio: f64,
}

impl Extraction {
    /// Nothing is taken out.
    pub const NONE: Self = Self {
        sensible_w: 0.0,
        least_c: -200.0,
        moisture_kg_s: 0.0,
        least_humidity_ratio: 0.0,
    };
}

/// What the air would do in a step without any cooler.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Forecast {
    /// Temperature of the air at the end of the step, °C.
    pub air_c: f64,
    /// How far each watt taken out over the step lowers it, K/W.
    pub fall_k_per_w: f64,
}

/// What a step did.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StepResult {
    /// Sensible heat taken out over the step, W.
    pub extracted_w: f64,
    /// Water taken out over the step, kg/s.
    pub coil_kg_s: f64,
}

/// The built network with its state.
#[derive(Clone, Debug)]
pub struct Cabin {
    elements: Vec<Element>,
    faces: [OuterFace; LANES],
    facing: [Facing; LANES],
    wind_factor: Lanes,
    wind_speed: Lanes,
    wind: [WindTerm; LANES],
    star_resistance: Lanes,
    air_volume_m3: f64,
    pressure_pa: f64,
    moisture_factor: f64,
    capacity: [Lanes; NODES],
    conductance: [Lanes; NODES - 1],
    temperature: [Lanes; NODES],
    eliminated: [Lanes; NODES],
    is_eliminated: bool,
    is_factored: bool,
    air_c: f64,
    star_c: f64,
    moisture: Moisture,
    now: Coefficients,
    sums: Sums,
    condensation_w: f64,
    chains_energy_j: f64,
    inner_energy_j: f64,
}

/// Everything that is frozen in an interval.
#[derive(Clone, Debug, Default)]
struct Coefficients {
    step_s: f64,
    carry: [Lanes; NODES],
    feed: [Lanes; NODES],
    back: [Lanes; NODES],
    inverse_diagonal: [Lanes; NODES],
    outer_source: Lanes,
    inner_source: Lanes,
    to_air: Lanes,
    to_star: Lanes,
    outer_conductance: Lanes,
    outer_forcing: Lanes,
    outer_sun: Lanes,
    inner_sun: Lanes,
    exchange_w_k: f64,
    outdoor_c: f64,
    flow_shares: [f64; 3],
    air_capacity_j_k: f64,
    air_carry: f64,
    inverse: [[f64; 2]; 2],
}

/// Sums over the steps of an interval, temperatures (°C) weighted by time (s).
#[derive(Clone, Debug, Default)]
struct Sums {
    seconds: f64,
    outer: Lanes,
    beneath: Lanes,
    inner: Lanes,
    air: f64,
    star: f64,
    gains_j: f64,
    extracted_j: f64,
    condensation_j: f64,
    exchanged_kg: f64,
    exchanged_magnitude_kg: f64,
    moisture_gains_kg: f64,
    coil_kg: f64,
    condensed_kg: f64,
    stored_kg: f64,
    stored_inside_j: f64,
}

impl Cabin {
    /// Builds the network, everything at one temperature (°C) and humidity ratio (kg/kg).
    ///
    /// `wind_profile` is that of the land around.
    ///
    /// # Errors
    /// When the description does not hold together.
    pub fn new(
        description: &CabinDescription,
        wind_profile: &WindProfile,
        temperature_c: f64,
        humidity_ratio: f64,
    ) -> Result<Self, CabinError> {
        description.check()?;
        let mut cabin = Self {
            elements: description.elements.clone(),
            faces: [OuterFace::default(); LANES],
            facing: [Facing::Side; LANES],
            wind_factor: [0.0; LANES],
            wind_speed: [0.0; LANES],
            wind: [WindTerm::default(); LANES],
            star_resistance: [1.0; LANES],
            air_volume_m3: description.air_volume_m3,
            pressure_pa: description.pressure_pa,
            moisture_factor: description.furnishing_moisture_factor.max(0.0),
            capacity: [[1.0; LANES]; NODES],
            conductance: [[1.0; LANES]; NODES - 1],
            temperature: [[temperature_c; LANES]; NODES],
            eliminated: [[0.0; LANES]; NODES],
            is_eliminated: false,
            is_factored: false,
            air_c: temperature_c,
            star_c: temperature_c,
            moisture: Moisture::default(),
            now: Coefficients::default(),
            sums: Sums::default(),
            condensation_w: 0.0,
            chains_energy_j: 0.0,
            inner_energy_j: 0.0,
        };
        cabin.moisture.humidity_ratio = humidity_ratio;
        cabin.place_elements(wind_profile);
        cabin.place_star();
        (cabin.chains_energy_j, cabin.inner_energy_j) = cabin.chain_energies_j();
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

    /// Mean temperature of an element's nodes by their capacity, °C: of stored goods, say, and of the bank among them.
    #[must_use]
    pub fn core_c(&self, element: usize) -> Option<f64> {
        let capacities = self.elements.get(element)?.chain.capacity_j_m2_k;
        let sum: f64 = capacities.iter().sum();
        let weighted: f64 = capacities
            .iter()
            .zip(&self.temperature)
            .map(|(capacity, row)| capacity * row[element])
            .sum();
        Some(weighted / sum)
    }

    /// Humidity ratio of the air, kg/kg.
    #[must_use]
    pub fn humidity_ratio(&self) -> f64 {
        self.moisture.humidity_ratio
    }

    /// Temperature of an element's outer face, °C.
    #[must_use]
    pub fn outer_face_c(&self, element: usize) -> Option<f64> {
        (element < self.elements.len()).then(|| self.temperature[0][element])
    }

    /// Temperature of an element's inner face, °C.
    #[must_use]
    pub fn inner_face_c(&self, element: usize) -> Option<f64> {
        (element < self.elements.len()).then(|| self.temperature[NODES - 1][element])
    }

    /// The elements in the order of the lanes.
    #[must_use]
    pub fn elements(&self) -> &[Element] {
        &self.elements
    }

    /// Gives every pane the conductances of another chain, as when covers go on; capacities stay.
    pub fn replace_panes(&mut self, pane: &Chain) {
        for (lane, element) in self.elements.iter().enumerate() {
            if element.part == Part::Glass {
                for link in 0..NODES - 1 {
                    self.conductance[link][lane] = pane.conductance_w_m2_k[link] * element.area_m2;
                }
            }
        }
    }

    /// Freezes the coefficients of the interval that follows from the surroundings and the present state, for steps of
    /// `step_s` seconds, above zero.
    pub fn set_conditions(&mut self, boundary: &Boundary, step_s: f64) {
        self.set_outer(boundary);
        self.set_inner(boundary);
        self.set_exchange(boundary);
        self.is_factored = false;
        self.set_step(step_s);
    }

    /// Goes on in steps of another length, above zero, under the same coefficients.
    pub fn set_step(&mut self, step_s: f64) {
        if step_s == self.now.step_s && self.is_factored {
            return;
        }
        self.is_factored = true;
        self.now.step_s = step_s;
        self.is_eliminated = false;
        self.moisture.set_step(step_s);
        self.factor(1.0 / (THETA * step_s));
    }

    /// Looks ahead to the end of the next step, so that a control that follows the temperature can be solved with it.
    pub fn forecast(&mut self, gains: &Gains) -> Forecast {
        self.eliminate();
        let (untouched_c, _, _) = self.solve_core(gains, &Extraction::NONE);
        Forecast {
            air_c: self.air_c + (untouched_c - self.air_c) / THETA,
            fall_k_per_w: self.now.inverse[0][0] / THETA,
        }
    }

    /// One step of the length given to [`Cabin::set_conditions`].
    pub fn step(&mut self, gains: &Gains, extraction: &Extraction) -> StepResult {
        self.eliminate();
        let (air, star, extracted_w) = self.solve_core(gains, extraction);
        self.substitute(air, star);
        self.is_eliminated = false;
        self.advance_core(air, star);
        let water = self.moisture.step(
            gains.moisture_kg_s,
            extraction.moisture_kg_s,
            extraction.least_humidity_ratio,
        );
        let sums = &mut self.sums;
        let step_s = self.now.step_s;
        sums.gains_j += (gains.convective_w + gains.radiant_w) * step_s;
        sums.extracted_j += extracted_w * step_s;
        sums.condensation_j += self.condensation_w * step_s;
        sums.moisture_gains_kg += gains.moisture_kg_s * step_s;
        sums.exchanged_kg += water.exchanged_kg;
        sums.exchanged_magnitude_kg += water.exchanged_kg.abs();
        sums.coil_kg += water.coil_kg;
        sums.condensed_kg += water.condensed_kg;
        sums.stored_kg += water.stored_kg;
        StepResult {
            extracted_w,
            coil_kg_s: water.coil_kg / self.now.step_s,
        }
    }

    /// Adds the flows since the last call to a ledger.
    pub fn close_interval(&mut self, ledger: &mut Ledger) {
        let (chains_j, inner_j) = self.chain_energies_j();
        let mut interval = self.interval();
        interval.stored_j = self.sums.stored_inside_j + chains_j - self.chains_energy_j;
        interval.stored_inside_j = self.sums.stored_inside_j + inner_j - self.inner_energy_j;
        ledger.add(&interval);
        (self.chains_energy_j, self.inner_energy_j) = (chains_j, inner_j);
        self.sums = Sums::default();
    }

    /// Energy of all nodes of the chains and of their inner nodes alone, J above 0 °C.
    fn chain_energies_j(&self) -> (f64, f64) {
        let mut all_j = 0.0;
        let mut inner_j = 0.0;
        for lane in 0..self.elements.len() {
            for node in 0..NODES {
                all_j += self.capacity[node][lane] * self.temperature[node][lane];
            }
            inner_j += self.capacity[NODES - 1][lane] * self.temperature[NODES - 1][lane];
        }
        (all_j, inner_j)
    }

    fn place_elements(&mut self, wind_profile: &WindProfile) {
        for (lane, element) in self.elements.iter().enumerate() {
            self.faces[lane] = OuterFace::open(
                element.outside_emittance,
                element.facing_up_cosine,
                if element.part == Part::Glass {
                    ROUGHNESS_VERY_SMOOTH
                } else {
                    ROUGHNESS_SMOOTH
                },
            );
            self.facing[lane] = element.inside_facing();
            self.wind_factor[lane] = match element.outside {
                Outside::Open => wind_profile.factor_at(element.height_m),
                Outside::Underside | Outside::Nothing => 0.0,
            };
            for node in 0..NODES {
                self.capacity[node][lane] = element.chain.capacity_j_m2_k[node] * element.area_m2;
            }
            for link in 0..NODES - 1 {
                self.conductance[link][lane] =
                    element.chain.conductance_w_m2_k[link] * element.area_m2;
            }
        }
    }

    /// Resistances to the star without the 4σT³: (1/F + (1 − ε)/ε)/A, with Carroll's F = 1/(1 − A F/ΣAF), solved by
    /// repeated substitution.
    fn place_star(&mut self) {
        let areas: Vec<f64> = self
            .elements
            .iter()
            .map(|element| element.area_m2)
            .collect();
        let factors = carroll_factors(&areas);
        for (lane, element) in self.elements.iter().enumerate() {
            self.star_resistance[lane] = (1.0 / factors[lane]
                + (1.0 - element.inside_emittance) / element.inside_emittance)
                / element.area_m2;
        }
    }

    fn set_outer(&mut self, boundary: &Boundary) {
        for (lane, element) in self.elements.iter().enumerate() {
            if element.outside == Outside::Nothing {
                continue;
            }
            let weather_m_s = boundary.wind_speed_m_s * self.wind_factor[lane];
            let road_m_s = if self.wind_factor[lane] > 0.0 {
                boundary.road_speed_m_s
            } else {
                0.0
            };
            let speed_m_s = (weather_m_s * weather_m_s + road_m_s * road_m_s).sqrt();
            if speed_m_s != self.wind_speed[lane] {
                self.wind_speed[lane] = speed_m_s;
                self.wind[lane] = WindTerm::at(speed_m_s);
            }
            let side = wind_side(
                element.facing_up_cosine,
                element.azimuth_deg,
                boundary.wind_from_deg,
            );
            let ground_c = match element.outside {
                Outside::Open => boundary.ground_c,
                Outside::Underside | Outside::Nothing => boundary.shaded_ground_c,
            };
            let (conductance, forcing) = self.faces[lane].exchange(
                self.temperature[0][lane],
                boundary,
                ground_c,
                &self.wind[lane],
                side,
            );
            let now = &mut self.now;
            now.outer_conductance[lane] = conductance * element.area_m2;
            now.outer_forcing[lane] = forcing * element.area_m2;
            now.outer_sun[lane] = boundary.sun[lane].absorbed_outside_w;
        }
    }

    fn set_inner(&mut self, boundary: &Boundary) {
        let moving = moving_air_term(boundary.stirred_m3_s, self.air_volume_m3);
        let transmitted_w: f64 = boundary.sun.iter().map(|sun| sun.transmitted_w).sum();
        for (lane, element) in self.elements.iter().enumerate() {
            let surface_c = self.temperature[NODES - 1][lane];
            let natural = natural_w_m2_k(surface_c - self.air_c, -element.facing_up_cosine);
            let now = &mut self.now;
            now.to_air[lane] = element.area_m2 * inside_w_m2_k(natural, moving, self.facing[lane]);
            now.to_star[lane] =
                linear_radiation_w_m2_k(surface_c, self.star_c) / self.star_resistance[lane];
            now.inner_sun[lane] =
                boundary.sun[lane].absorbed_inside_w + transmitted_w * element.inside_sun_share;
        }
    }

    fn set_exchange(&mut self, boundary: &Boundary) {
        let outdoor_kg_m3 = air::density_dry_air_kg_per_m3(
            boundary.outdoor_c,
            boundary.outdoor_humidity_ratio,
            self.pressure_pa,
        );
        let cabin_kg_m3 = air::density_dry_air_kg_per_m3(
            self.air_c,
            self.moisture.humidity_ratio,
            self.pressure_pa,
        );
        let heat_capacity = air::moist_air_heat_capacity_j_per_kg_k(self.moisture.humidity_ratio);
        let flows = boundary.air_exchange;
        let flow_m3_s = flows.leakage_m3_s + flows.fan_m3_s + flows.openings_m3_s;
        let air_kg = cabin_kg_m3 * self.air_volume_m3;
        let now = &mut self.now;
        now.exchange_w_k = outdoor_kg_m3 * flow_m3_s * heat_capacity;
        now.flow_shares = [flows.leakage_m3_s, flows.fan_m3_s, flows.openings_m3_s].map(|flow| {
            if flow_m3_s > 0.0 {
                flow / flow_m3_s
            } else {
                0.0
            }
        });
        now.outdoor_c = boundary.outdoor_c;
        now.air_capacity_j_k = air_kg * heat_capacity;
        self.moisture.capacity_kg = air_kg * (1.0 + self.moisture_factor);
        let (condensing_kg_s, towards_kg_s) = self.condensing(heat_capacity);
        self.moisture.set(
            outdoor_kg_m3 * flow_m3_s,
            boundary.outdoor_humidity_ratio,
            condensing_kg_s,
            towards_kg_s,
        );
        let condensed_kg_s = condensing_kg_s * self.moisture.humidity_ratio - towards_kg_s;
        self.condensation_w = condensed_kg_s * air::latent_heat_vaporisation_j_per_kg(self.air_c);
    }

    /// Mass-transfer conductance of inner faces below the dew point by the Lewis relation k = h A/cp, and the sum of k times
    /// the saturated humidity ratio at each face.
    fn condensing(&self, heat_capacity_j_kg_k: f64) -> (f64, f64) {
        let inner = &self.temperature[NODES - 1][..self.elements.len()];
        let coldest_c = inner.iter().copied().fold(f64::INFINITY, f64::min);
        let humidity_ratio = self.moisture.humidity_ratio;
        if humidity_ratio <= air::saturation_humidity_ratio(coldest_c, self.pressure_pa) {
            return (0.0, 0.0);
        }
        let mut sum_kg_s = 0.0;
        let mut towards_kg_s = 0.0;
        for (lane, surface_c) in inner.iter().enumerate() {
            let saturated = air::saturation_humidity_ratio(*surface_c, self.pressure_pa);
            if humidity_ratio > saturated {
                let conductance_kg_s = self.now.to_air[lane] / heat_capacity_j_kg_k;
                sum_kg_s += conductance_kg_s;
                towards_kg_s += conductance_kg_s * saturated;
            }
        }
        (sum_kg_s, towards_kg_s)
    }

    /// Eliminates each chain from its outer to its inner node, then inverts what is left: air and star.
    fn factor(&mut self, per_s: f64) {
        let (now, capacity, conductance) = (&mut self.now, &self.capacity, &self.conductance);
        let mut inward = now.outer_conductance;
        let mut taken = [0.0; LANES];
        for node in 0..NODES {
            for lane in 0..LANES {
                let carried = capacity[node][lane] * per_s;
                let onward = if node + 1 < NODES {
                    conductance[node][lane]
                } else {
                    now.to_air[lane] + now.to_star[lane]
                };
                let inverse = 1.0 / (carried + onward + inward[lane] - taken[lane]);
                let back = onward * inverse;
                now.carry[node][lane] = carried * inverse;
                now.feed[node][lane] = inward[lane] * inverse;
                now.back[node][lane] = back;
                now.inverse_diagonal[node][lane] = inverse;
                inward[lane] = onward;
                taken[lane] = onward * back;
            }
        }
        for lane in 0..LANES {
            now.outer_source[lane] =
                now.inverse_diagonal[0][lane] * (now.outer_forcing[lane] + now.outer_sun[lane]);
            now.inner_source[lane] = now.inverse_diagonal[NODES - 1][lane] * now.inner_sun[lane];
        }
        now.air_carry = now.air_capacity_j_k * per_s;
        now.inverse = now.core_inverse();
    }

    /// Eliminates the chains for the coming step, unless a forecast has done it already.
    fn eliminate(&mut self) {
        if self.is_eliminated {
            return;
        }
        self.is_eliminated = true;
        let (now, old, forward) = (&self.now, &self.temperature, &mut self.eliminated);
        for lane in 0..LANES {
            forward[0][lane] = now.carry[0][lane] * old[0][lane] + now.outer_source[lane];
        }
        for node in 1..NODES {
            for lane in 0..LANES {
                forward[node][lane] = now.carry[node][lane] * old[node][lane]
                    + now.feed[node][lane] * forward[node - 1][lane];
            }
        }
        accumulate(&mut forward[NODES - 1], &now.inner_source, 1.0);
    }

    /// Air and star at the implicit instant, and the heat taken out.
    fn solve_core(&self, gains: &Gains, extraction: &Extraction) -> (f64, f64, f64) {
        let now = &self.now;
        let (mut to_air, mut to_star) = (0.0, 0.0);
        for (lane, inner) in self.eliminated[NODES - 1].iter().enumerate() {
            to_air += now.to_air[lane] * inner;
            to_star += now.to_star[lane] * inner;
        }
        let right = [
            now.air_carry * self.air_c
                + to_air
                + now.exchange_w_k * now.outdoor_c
                + gains.convective_w
                + self.condensation_w,
            to_star + gains.radiant_w,
        ];
        let solve = |row: &[f64; 2]| row[0] * right[0] + row[1] * right[1];
        let untouched_c = solve(&now.inverse[0]);
        let least_c = self.air_c + THETA * (extraction.least_c - self.air_c);
        let most_w = ((untouched_c - least_c) / now.inverse[0][0]).max(0.0);
        let extracted_w = extraction.sensible_w.min(most_w);
        (
            untouched_c - extracted_w * now.inverse[0][0],
            solve(&now.inverse[1]) - extracted_w * now.inverse[1][0],
            extracted_w,
        )
    }

    fn substitute(&mut self, air_c: f64, star_c: f64) {
        let (now, sums, eliminated) = (&self.now, &mut self.sums, &self.eliminated);
        let mut implicit = [0.0; LANES];
        for lane in 0..LANES {
            implicit[lane] = eliminated[NODES - 1][lane]
                + now.inverse_diagonal[NODES - 1][lane]
                    * (now.to_air[lane] * air_c + now.to_star[lane] * star_c);
            sums.inner[lane] += implicit[lane] * now.step_s;
        }
        advance(&mut self.temperature[NODES - 1], &implicit);
        for node in (0..NODES - 1).rev() {
            for lane in 0..LANES {
                implicit[lane] = eliminated[node][lane] + now.back[node][lane] * implicit[lane];
            }
            if node == NODES - 2 {
                accumulate(&mut sums.beneath, &implicit, now.step_s);
            }
            advance(&mut self.temperature[node], &implicit);
        }
        accumulate(&mut sums.outer, &implicit, now.step_s);
    }

    fn advance_core(&mut self, air_c: f64, star_c: f64) {
        let air_change_k = (air_c - self.air_c) / THETA;
        self.air_c += air_change_k;
        self.star_c = star_c;
        let sums = &mut self.sums;
        let step_s = self.now.step_s;
        sums.seconds += step_s;
        sums.air += air_c * step_s;
        sums.star += star_c * step_s;
        sums.stored_inside_j += self.now.air_capacity_j_k * air_change_k;
    }

    /// The flows of the interval: coefficients times sums of implicit temperatures.
    fn interval(&self) -> Ledger {
        let (now, sums) = (&self.now, &self.sums);
        let mut ledger = Ledger::default();
        for lane in 0..self.elements.len() {
            let outside_j = now.outer_forcing[lane] * sums.seconds
                - now.outer_conductance[lane] * sums.outer[lane]
                + now.outer_sun[lane] * sums.seconds;
            let conducted_j =
                self.conductance[NODES - 2][lane] * (sums.beneath[lane] - sums.inner[lane]);
            let to_cabin_j = now.to_air[lane] * (sums.inner[lane] - sums.air)
                + now.to_star[lane] * (sums.inner[lane] - sums.star);
            let sun_j = now.inner_sun[lane] * sums.seconds;
            ledger.conducted_j[lane] = conducted_j;
            ledger.outside_j += outside_j;
            ledger.glass_sun_j += sun_j;
            ledger.throughput_j += outside_j.abs() + conducted_j.abs() + to_cabin_j.abs();
        }
        let exchange_j = now.exchange_w_k * (now.outdoor_c * sums.seconds - sums.air);
        [ledger.leakage_j, ledger.fan_j, ledger.openings_j] =
            now.flow_shares.map(|share| share * exchange_j);
        ledger.gains_j = sums.gains_j;
        ledger.extracted_j = sums.extracted_j;
        ledger.condensation_j = sums.condensation_j;
        ledger.throughput_j +=
            ledger.glass_sun_j + exchange_j.abs() + ledger.gains_j.abs() + ledger.extracted_j.abs();
        ledger.exchanged_kg = sums.exchanged_kg;
        ledger.moisture_gains_kg = sums.moisture_gains_kg;
        ledger.coil_kg = sums.coil_kg;
        ledger.condensed_kg = sums.condensed_kg;
        ledger.stored_kg = sums.stored_kg;
        ledger.throughput_kg = sums.exchanged_magnitude_kg
            + sums.moisture_gains_kg
            + sums.coil_kg
            + sums.condensed_kg.abs();
        ledger
    }
}

impl Coefficients {
    /// Inverse of what is left for air and star once the chains are eliminated: symmetric and diagonally dominant.
    fn core_inverse(&self) -> [[f64; 2]; 2] {
        let (mut air, mut star, mut cross) = (self.air_carry + self.exchange_w_k, 0.0, 0.0);
        for lane in 0..LANES {
            let (a, s, inverse) = (
                self.to_air[lane],
                self.to_star[lane],
                self.inverse_diagonal[NODES - 1][lane],
            );
            air += a - a * a * inverse;
            star += s - s * s * inverse;
            cross += a * s * inverse;
        }
        let scale = 1.0 / (air * star - cross * cross);
        [[star * scale, cross * scale], [cross * scale, air * scale]]
    }
}

fn advance(old: &mut Lanes, implicit: &Lanes) {
    for (old, implicit) in old.iter_mut().zip(implicit) {
        *old += (implicit - *old) * (1.0 / THETA);
    }
}

fn accumulate(sums: &mut Lanes, row: &Lanes, weight: f64) {
    for (sum, value) in sums.iter_mut().zip(row) {
        *sum += value * weight;
    }
}

/// 4 σ T³ at the mean of two temperatures, W/(m² K).
fn linear_radiation_w_m2_k(one_c: f64, other_c: f64) -> f64 {
    let mean_k = kelvin_from_celsius(0.5 * (one_c + other_c));
    4.0 * STEFAN_BOLTZMANN_W_M2_K4 * mean_k * mean_k * mean_k
}

/// Carroll's view factors to the star.
fn carroll_factors(areas: &[f64]) -> Vec<f64> {
    const ROUNDS: usize = 200;
    let mut factors = vec![1.0; areas.len()];
    for _ in 0..ROUNDS {
        let sum: f64 = areas.iter().zip(&factors).map(|(a, f)| a * f).sum();
        for (factor, area) in factors.iter_mut().zip(areas) {
            // A face larger than half of the whole sees itself in the formula; it then sees the star whole.
            let own = (area * *factor / sum).min(0.5);
            *factor = 1.0 / (1.0 - own);
        }
    }
    factors
}
