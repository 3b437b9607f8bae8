//! What the bank's protection allows against everything that may run at once, and which limit is nearest.

use super::circuits::{CircuitKind, Circuits, charging_a, cooler_at_bank_w, other_loads_w};
use crate::electrical::conductor::SizeSeries;
use crate::quantity::{Bounded, sort_few};
use crate::scenario::ScenarioDocument;
use crate::simulation::{BuildError, inverter_of};

/// A limit that may trip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LimitKind {
    /// The bank's protection, for good.
    Continuous,
    /// The same with one pack gone.
    ContinuousOnePackLess,
    /// The bank's protection, for the seconds of a start.
    Peak,
    /// What the bank accepts while charging.
    Charging,
    /// The fuse between bank and bus, for good.
    BusFuse,
    /// The cooler's low-voltage cut-out, at a start with the bank at its lowest charge.
    CutOut,
    /// The inverter's rating, by the cooler alone, W.
    InverterContinuous,
    /// The inverter's surge rating, by the cooler's start, W.
    InverterSurge,
}

/// What is asked of a limit, both in amperes, but for the inverter in watts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// Which.
    pub kind: LimitKind,
    /// What may be asked of it.
    pub asked: f64,
    /// What it allows.
    pub allowed: f64,
}

/// Below this a limit allows nothing, A or W; it keeps the load finite.
const LEAST_ALLOWED: f64 = 1e-6;

impl Limit {
    /// What is asked over what is allowed; above 1 it trips.
    #[must_use]
    pub fn load(&self) -> f64 {
        if self.asked <= 0.0 {
            return 0.0;
        }
        self.asked / self.allowed.at_least(LEAST_ALLOWED)
    }

    /// Whether it trips.
    #[must_use]
    pub fn trips(&self) -> bool {
        self.asked > self.allowed
    }
}

/// What may run at once, and what it asks of each limit.
#[derive(Clone, Debug, PartialEq)]
pub struct BankLimits {
    /// The cooler at its rating, A at the bank.
    pub cooler_a: f64,
    /// Everything else, A.
    pub others_a: f64,
    /// What a start adds for some seconds, A.
    pub start_a: f64,
    /// Panels, driving and shore, A.
    pub charging_a: [f64; 3],
    /// Packs in parallel.
    pub packs: f64,
    /// Share of one pack in the current that everything takes, A, if they share evenly.
    pub each_pack_a: f64,
    /// Limits, the one nearest to tripping first.
    pub limits: Vec<Limit>,
}

/// Works out what is asked of the bank.
///
/// * `document` — of a validated scenario
/// * `circuits` — of the same
/// * `series` — the family of sizes that is used
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn bank_limits(
    document: &ScenarioDocument,
    circuits: &Circuits,
    series: SizeSeries,
) -> Result<BankLimits, BuildError> {
    let voltage_v = document.battery.system_voltage.nominal_v();
    let cooler_a = cooler_at_bank_w(document, 1.0)? / voltage_v;
    let others_a = other_loads_w(document) / voltage_v;
    let started_w = cooler_at_bank_w(document, document.cooler.start_surge_factor)?;
    let start_a = started_w / voltage_v - cooler_a;
    let charging_a = charging_a(document);
    let packs = document.installation.parallel_packs;
    let running_a = cooler_a + others_a;
    let continuous_a = document.battery.highest_discharge_a;
    let mut limits = vec![
        limit(LimitKind::Continuous, running_a, continuous_a),
        limit(
            LimitKind::Peak,
            running_a + start_a,
            document.installation.bank_peak_a.at_least(continuous_a),
        ),
        limit(
            LimitKind::Charging,
            charging_a.iter().sum(),
            document.battery.highest_charge_a,
        ),
    ];
    if packs > 1.0 {
        let left_a = continuous_a * (packs - 1.0) / packs;
        limits.push(limit(LimitKind::ContinuousOnePackLess, running_a, left_a));
    }
    limits.extend(bus_fuse(circuits, series, running_a));
    limits.extend(cut_out(circuits, series));
    limits.extend(inverter(document)?);
    sort_few(&mut limits, |one, other| one.load() < other.load());
    Ok(BankLimits {
        cooler_a,
        others_a,
        start_a,
        charging_a,
        packs,
        each_pack_a: running_a / packs,
        limits,
    })
}

fn limit(kind: LimitKind, asked: f64, allowed: f64) -> Limit {
    Limit {
        kind,
        asked,
        allowed,
    }
}

fn bus_fuse(circuits: &Circuits, series: SizeSeries, running_a: f64) -> Option<Limit> {
    let mut all = circuits.circuits.iter();
    let bus = all.find(|one| one.kind == CircuitKind::Bus)?;
    let fitted = bus.choice(series).fitted()?;
    Some(limit(LimitKind::BusFuse, running_a, fitted.fuse_a))
}

/// The start at which the cooler's voltage would reach its cut-out: I = (U − V − R I₀)/(R + R_cable), with R of bank and bus and
/// I₀ everything else.
fn cut_out(circuits: &Circuits, series: SizeSeries) -> Option<Limit> {
    let start = circuits.start(series)?;
    let shared_ohm = start.bank_ohm + start.bus_ohm;
    let left_v = start.bank_open_v - start.cut_out_v - shared_ohm * start.others_a;
    let allowed_a = left_v / (shared_ohm + start.cable_ohm);
    Some(limit(
        LimitKind::CutOut,
        start.start_a,
        allowed_a.at_least(0.0),
    ))
}

fn inverter(document: &ScenarioDocument) -> Result<Vec<Limit>, BuildError> {
    let cooler = &document.cooler;
    if !cooler.installed || inverter_of(document)?.is_none() {
        return Ok(Vec::new());
    }
    let load_w = cooler.electric_power_rated_w;
    let start_w = load_w * cooler.start_surge_factor;
    Ok(vec![
        limit(
            LimitKind::InverterContinuous,
            load_w,
            cooler.inverter_rated_w,
        ),
        limit(LimitKind::InverterSurge, start_w, cooler.inverter_surge_w),
    ])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice::circuits::circuits;
    use crate::scenario::{CoolerSupply, example};

    fn of(document: &ScenarioDocument) -> BankLimits {
        let all = circuits(document).unwrap();
        bank_limits(document, &all, SizeSeries::Metric).unwrap()
    }

    fn find(limits: &BankLimits, kind: LimitKind) -> Limit {
        *limits
            .limits
            .iter()
            .find(|limit| limit.kind == kind)
            .unwrap()
    }

    #[test]
    fn everything_at_once_adds_up_by_hand() {
        let limits = of(&example());
        // (800 + 45 + 15 + 60 + 25) W / 12 V; two packs; 300 W · 0.96 / 12 V from panels.
        let continuous = find(&limits, LimitKind::Continuous);
        assert!((continuous.asked - 78.75).abs() < 1e-9 && !continuous.trips());
        assert!((limits.each_pack_a - 39.375).abs() < 1e-9);
        assert!((find(&limits, LimitKind::Charging).asked - 24.0).abs() < 1e-9);
        let one_less = find(&limits, LimitKind::ContinuousOnePackLess);
        assert!((one_less.allowed - 100.0).abs() < 1e-9);
        let loads: Vec<f64> = limits.limits.iter().map(Limit::load).collect();
        assert!(loads.is_sorted_by(|one, other| one >= other), "{loads:?}");
    }

    #[test]
    fn at_the_start_that_is_allowed_the_voltage_is_at_the_cut_out() {
        let document = example();
        let all = circuits(&document).unwrap();
        let start = all.start(SizeSeries::Metric).unwrap();
        let allowed_a = find(&of(&document), LimitKind::CutOut).allowed;
        let arriving_v = start.bank_open_v
            - (allowed_a + start.others_a) * (start.bank_ohm + start.bus_ohm)
            - allowed_a * start.cable_ohm;
        assert!((arriving_v - start.cut_out_v).abs() < 1e-9);
    }

    #[test]
    fn a_weak_protection_trips_first() {
        let mut document = example();
        document.battery.highest_discharge_a = 60.0;
        document.installation.parallel_packs = 1.0;
        let limits = of(&document);
        assert_eq!(limits.limits[0].kind, LimitKind::Continuous);
        assert!(limits.limits[0].trips());
    }

    #[test]
    fn an_inverter_has_limits_of_its_own() {
        let mut document = example();
        document.cooler.supply = CoolerSupply::MainsThroughInverter;
        document.cooler.inverter_rated_w = 700.0;
        document.cooler.inverter_surge_w = 1_000.0;
        let limits = of(&document);
        assert!(find(&limits, LimitKind::InverterContinuous).trips());
        assert!(find(&limits, LimitKind::InverterSurge).trips());
    }
}
