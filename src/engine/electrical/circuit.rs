//! The thinnest conductor with its fuse for a circuit, and what would do where none will.

use super::conductor::{Conductor, Insulation, SizeSeries, bundle_factor, hot_air_factor, sizes};
use super::overcurrent::rating_at_least_a;
use crate::quantity::Bounded;

/// Least cross-section that may share a current with others in parallel: 1/0 AWG (NEC 310.10(G), from memory), mm².
const LEAST_PARALLEL_MM2: f64 = 50.0;

/// Most runs in parallel that are tried.
const MOST_RUNS: u32 = 8;

/// What a circuit asks of its conductor. Every number is finite and at least 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CircuitNeed {
    /// From source to load, m.
    pub length_one_way_m: f64,
    /// Current while running, A, above 0.
    pub running_a: f64,
    /// Current for the seconds of a start, A.
    pub surge_a: f64,
    /// By how much conductor and fuse have to exceed the running current.
    pub continuous_factor: f64,
    /// Voltage to which the drop refers, V, above 0.
    pub voltage_v: f64,
    /// Greatest drop at the running current, share of the voltage.
    pub allowed_drop_share: f64,
    /// Rating of the insulation.
    pub insulation: Insulation,
    /// Conductors that carry current and lie together.
    pub bundled_conductors: f64,
    /// Hottest air along the way, °C.
    pub air_c: f64,
}

/// A conductor that will do, with its fuse and what it loses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fitted {
    /// The conductor.
    pub conductor: Conductor,
    /// Current that it may carry here, A.
    pub allowable_a: f64,
    /// Standard rating of its fuse or breaker, A.
    pub fuse_a: f64,
    /// Resistance out and back, Ω.
    pub resistance_ohm: f64,
    /// Drop at the running current, V.
    pub drop_v: f64,
    /// The same as a share of the voltage.
    pub drop_share: f64,
    /// Heat in the cable at the running current, W.
    pub loss_w: f64,
    /// Drop at the surge, V.
    pub surge_drop_v: f64,
    /// Heat in the cable at the surge, W.
    pub surge_loss_w: f64,
}

/// What would do where no size does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Remedies {
    /// The longest way for which the thickest size would do, m; none where its current is the trouble.
    pub longest_m: Option<f64>,
    /// The least of the voltages offered at which a size would do for the same power, V.
    pub voltage_v: Option<f64>,
    /// The fewest equal runs side by side, each with a fuse of its own.
    pub parallel_runs: Option<u32>,
}

impl CircuitNeed {
    /// Share of Table 5 that is left here.
    #[must_use]
    pub fn derating(&self) -> f64 {
        hot_air_factor(self.insulation, self.air_c) * bundle_factor(self.bundled_conductors)
    }

    /// Least rating that the fuse may have, A: the running current with its factor, and half the surge.
    ///
    /// That a slow fuse carries twice its rating for the seconds of a start is common practice, no source.
    #[must_use]
    pub fn least_fuse_a(&self) -> f64 {
        (self.continuous_factor * self.running_a).at_least(0.5 * self.surge_a)
    }

    /// The same power at another voltage.
    ///
    /// * `voltage_v` — V, above 0
    #[must_use]
    pub fn at_voltage(&self, voltage_v: f64) -> Self {
        let ratio = self.voltage_v / voltage_v;
        Self {
            running_a: self.running_a * ratio,
            surge_a: self.surge_a * ratio,
            voltage_v,
            ..*self
        }
    }

    /// What each of some equal runs side by side has to carry.
    fn shared_by(&self, runs: u32) -> Self {
        let runs = f64::from(runs);
        Self {
            running_a: self.running_a / runs,
            surge_a: self.surge_a / runs,
            ..*self
        }
    }
}

/// The thinnest conductor of a family that is protected by a fuse of a standard rating and keeps the drop within what is
/// allowed; none if there is none.
///
/// The fuse is the least standard rating not below [`CircuitNeed::least_fuse_a`]. It must not exceed what the conductor may
/// carry here, so that the conductor is safe at any current the fuse lets through; 33 CFR 183.455(c) would allow half as much
/// again. ΔV = 2 L I r, heat I² 2 L r.
#[must_use]
pub fn thinnest(series: SizeSeries, need: &CircuitNeed) -> Option<Fitted> {
    sizes(series).find_map(|conductor| fitted(conductor, need))
}

fn fitted(conductor: Conductor, need: &CircuitNeed) -> Option<Fitted> {
    let (allowable_a, fuse_a) = carries(conductor, need)?;
    let resistance_ohm = conductor.loop_resistance_ohm(need.length_one_way_m);
    let drop_v = need.running_a * resistance_ohm;
    let drop_share = drop_v / need.voltage_v;
    (drop_share <= need.allowed_drop_share).then_some(Fitted {
        conductor,
        allowable_a,
        fuse_a,
        resistance_ohm,
        drop_v,
        drop_share,
        loss_w: drop_v * need.running_a,
        surge_drop_v: need.surge_a * resistance_ohm,
        surge_loss_w: need.surge_a * need.surge_a * resistance_ohm,
    })
}

/// What the conductor may carry here, and the fuse within it.
fn carries(conductor: Conductor, need: &CircuitNeed) -> Option<(f64, f64)> {
    let allowable_a = conductor.allowable_a(need.insulation) * need.derating();
    let fuse_a = rating_at_least_a(need.least_fuse_a())?;
    (fuse_a <= allowable_a).then_some((allowable_a, fuse_a))
}

/// What would do where no size of a family does.
///
/// * `need` — what is asked
/// * `voltages_v` — other voltages at which the circuit could run, lowest first, V, above 0
#[must_use]
pub fn remedies(series: SizeSeries, need: &CircuitNeed, voltages_v: &[f64]) -> Remedies {
    let thickest = sizes(series).last();
    let longest_m = thickest
        .filter(|conductor| carries(*conductor, need).is_some())
        .map(|conductor| {
            let allowed_v = need.allowed_drop_share * need.voltage_v;
            allowed_v / (2.0 * need.running_a * conductor.resistance_ohm_m)
        });
    let higher = voltages_v.iter().copied();
    let voltage_v = higher
        .filter(|voltage_v| *voltage_v > need.voltage_v)
        .find(|voltage_v| thinnest(series, &need.at_voltage(*voltage_v)).is_some());
    let parallel_runs = (2..=MOST_RUNS).find(|runs| {
        let shared = need.shared_by(*runs);
        sizes(series)
            .filter(|conductor| conductor.area_mm2 >= LEAST_PARALLEL_MM2)
            .any(|conductor| fitted(conductor, &shared).is_some())
    });
    Remedies {
        longest_m,
        voltage_v,
        parallel_runs,
    }
}

#[cfg(test)]
mod tests;
