//! Whether the finished cooler does what the scenario expects of it under the conditions it was read in.
//!
//! The expectation is the engine's own coil at the read conditions: air that enters, air at the condenser, voltage, time since the
//! start. Every reading and the model itself have an uncertainty; they are carried to each result by half the difference of the
//! result at the input plus and minus its standard uncertainty, and added in quadrature, with all that readings and expectation
//! have in common. A limit ± a without more is taken as evenly likely, u = a/√3. Bands are ± 2 u.
//!
//! Each fault is given a few severities and the coil is run with it. The likelihood of a fault is that of the readings under the
//! normal distribution of the residuals, meant over its severities, so that a fault that could explain anything is not
//! preferred to one that explains just this. All faults count as equally frequent, and only one at a time is thought of.
//!
//! Sources: JCGM 100:2008 (GUM), 4.3.7, 5.1.2, 5.1.3 note 2, 5.2.2, 6.2; JCGM 102:2011 for several results at once; MacKay,
//! Information Theory, Inference, and Learning Algorithms (2003), ch. 28, for the mean over severities.

mod expected;
mod likely;
mod measured;
#[cfg(test)]
mod tests;

pub use likely::{Cause, LikelyCause};
pub use measured::{MeasuredCapacity, measured_capacity};

use crate::scenario::{Readings, Scenario};
use crate::simulation::BuildError;
use expected::{Fault, Shown, Sight, Unit};
use likely::{Residuals, likely_causes};

/// Bands are so many standard uncertainties wide either way: 95 % for a normal distribution (GUM 6.2).
const COVERAGE: f64 = 2.0;

/// Least share of the steady cooling that must have come up for a judgement.
const COME_UP_LEAST: f64 = 0.9;

/// Relative humidity taken where none was read, with limits either way: common practice, no source.
const HUMIDITY_ASSUMED: (f64, f64) = (0.5, 0.25);
const SUPPLY_HUMIDITY_ASSUMED: (f64, f64) = (0.9, 0.1);

/// How far the flow of a sound installation lies from the rated one, limits, share: common practice, no source.
const FLOW_LIMIT_SHARE: f64 = 0.2;

/// How far a sound unit may fall short of its rating, limits, share (AHRI 210/240, tolerance of published ratings, from memory).
const RATING_LIMIT_SHARE: f64 = 0.05;

/// Standard uncertainty of the curves, share: what the published sets differ by away from the rating point, see the tests.
const CURVES_SHARE: f64 = 0.05;

/// How well the resistance of a cable with its lugs is known, limits, share: common practice, no source.
const CABLE_LIMIT_SHARE: f64 = 0.3;

/// What is compared one by one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// Temperature of the air blown out, °C.
    SupplyTemperature,
    /// Current, A.
    Current,
    /// Voltage lost between bank and cooler, V.
    VoltageLoss,
    /// Air flow, m³/s.
    Airflow,
    /// Humidity ratio of the air blown out.
    SupplyHumidity,
}

impl Sign {
    const ALL: [Self; 5] = [
        Self::SupplyTemperature,
        Self::Current,
        Self::VoltageLoss,
        Self::Airflow,
        Self::SupplyHumidity,
    ];
}

/// A reading beside what was expected.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Compared {
    /// What it is.
    pub sign: Sign,
    /// As read.
    pub read: f64,
    /// As expected of a sound unit.
    pub expected: f64,
    /// How far both may lie apart, ±.
    pub band: f64,
}

impl Compared {
    /// Whether the reading lies within the band.
    #[must_use]
    pub fn agrees(&self) -> bool {
        (self.read - self.expected).abs() <= self.band
    }
}

/// A quantity made of readings, beside the same of the model.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Made {
    /// As measured.
    pub measured: f64,
    /// Its band, ±.
    pub measured_band: f64,
    /// As expected of a sound unit.
    pub expected: f64,
    /// Measured over expected.
    pub ratio: f64,
    /// Its band, ±, in which what both have in common cancels.
    pub ratio_band: f64,
}

/// The verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AcceptanceVerdict {
    /// The cooling has not come up yet.
    TooEarly,
    /// The readings lie as readings of a sound unit do, at the level of 95 %: each alone and all together.
    AsExpected,
    /// One of them does not, but all together they still could be those of a sound unit.
    Doubtful,
    /// They do not.
    Deviates,
}

/// The check of a finished unit.
#[derive(Clone, Debug, PartialEq)]
pub struct Acceptance {
    /// The verdict.
    pub verdict: AcceptanceVerdict,
    /// Readings one by one.
    pub signs: Vec<Compared>,
    /// Whether the whole of the capacity could be measured; otherwise what follows is the sensible part.
    pub is_total: bool,
    /// Cooling capacity, W.
    pub capacity: Made,
    /// Cooling over electric input at the terminals.
    pub efficiency: Made,
    /// What may be wrong, likeliest first; empty unless the readings deviate.
    pub causes: Vec<LikelyCause>,
    /// Whether the likeliest cause brings the readings as near as those of a sound unit would be.
    pub explained: bool,
    /// Whether the air flow is the rated one, as none was measured.
    pub flow_assumed: bool,
    /// Whether the humidity of the cabin's air was assumed.
    pub humidity_assumed: bool,
    /// Share of the steady cooling that has come up by then.
    pub come_up: f64,
    /// Whether the curves were used outside the range they were fitted in.
    pub extrapolated: bool,
}

/// Holds the readings of a scenario against what its cooler should do; none without a cooler or without readings.
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn acceptance(scenario: &Scenario) -> Result<Option<Acceptance>, BuildError> {
    let document = scenario.document();
    let readings = &document.readings;
    if !readings.taken || !document.cooler.installed {
        return Ok(None);
    }
    let unit = Unit::new(document)?;
    let (sight, standard) = sight(readings, &unit);
    let residuals = Residuals::new(&unit, &sight, &standard, &used(readings));
    let shown = unit.look(&sight, Fault::None);
    let is_total = readings.return_humidity_known && readings.supply_humidity_known;
    let come_up = unit.come_up(1.0);
    let signs = compared(&shown, &residuals, unit.rated_flow_m3_s());
    let verdict = if come_up < COME_UP_LEAST {
        AcceptanceVerdict::TooEarly
    } else if !residuals.is_plausible(&unit, &sight, Fault::None) {
        AcceptanceVerdict::Deviates
    } else if signs.iter().all(Compared::agrees) {
        AcceptanceVerdict::AsExpected
    } else {
        AcceptanceVerdict::Doubtful
    };
    let (causes, explained) = if verdict == AcceptanceVerdict::AsExpected {
        (Vec::new(), true)
    } else {
        likely_causes(&unit, &sight, &residuals)
    };
    let made = |of: fn(&Shown, bool) -> [f64; 2]| made(&unit, &sight, &standard, is_total, of);
    Ok(Some(Acceptance {
        verdict,
        signs,
        is_total,
        capacity: made(capacities),
        efficiency: made(efficiencies),
        causes,
        explained,
        flow_assumed: !readings.airflow_known,
        humidity_assumed: !readings.return_humidity_known,
        come_up,
        extrapolated: shown.extrapolated,
    }))
}

/// Which signs were read.
fn used(readings: &Readings) -> [bool; 5] {
    [
        true,
        true,
        true,
        readings.airflow_known,
        readings.supply_humidity_known && readings.return_humidity_known,
    ]
}

/// What is known, and the standard uncertainty of each.
fn sight(readings: &Readings, unit: &Unit) -> (Sight, Sight) {
    let known = |is_known, value, limit, assumed: (f64, f64)| {
        if is_known { (value, limit) } else { assumed }
    };
    let humidity_limit = readings.humidity_limit;
    let (return_relative_humidity, return_limit) = known(
        readings.return_humidity_known,
        readings.return_relative_humidity,
        humidity_limit,
        HUMIDITY_ASSUMED,
    );
    let (supply_relative_humidity, supply_limit) = known(
        readings.supply_humidity_known,
        readings.supply_relative_humidity,
        humidity_limit,
        SUPPLY_HUMIDITY_ASSUMED,
    );
    let flow = readings.airflow_m3_s / unit.rated_flow_m3_s();
    let (flow, flow_limit) = known(
        readings.airflow_known,
        flow,
        flow * readings.airflow_limit_share,
        (1.0, FLOW_LIMIT_SHARE),
    );
    let sight = Sight {
        return_c: readings.return_c,
        return_relative_humidity,
        outdoor_c: readings.outdoor_c,
        supply_c: readings.supply_c,
        supply_relative_humidity,
        flow,
        current_a: readings.current_a,
        bank_voltage_v: readings.bank_voltage_v,
        unit_voltage_v: readings.unit_voltage_v,
        capacity: 1.0,
        power: 1.0,
        cable: 1.0,
        rated_flow: 1.0,
    };
    let temperature = standard(readings.temperature_limit_k);
    let model = libm::hypot(standard(RATING_LIMIT_SHARE), CURVES_SHARE);
    let uncertainty = Sight {
        return_c: temperature,
        return_relative_humidity: standard(return_limit),
        outdoor_c: temperature,
        supply_c: temperature,
        supply_relative_humidity: standard(supply_limit),
        flow: standard(flow_limit),
        current_a: standard(readings.current_limit_share * readings.current_a),
        bank_voltage_v: standard(readings.voltage_limit_share * readings.bank_voltage_v),
        unit_voltage_v: standard(readings.voltage_limit_share * readings.unit_voltage_v),
        capacity: model,
        power: model,
        cable: standard(CABLE_LIMIT_SHARE),
        rated_flow: standard(FLOW_LIMIT_SHARE),
    };
    (sight, uncertainty)
}

/// Standard uncertainty of what lies evenly within limits: u = a/√3 (GUM 4.3.7).
fn standard(limit: f64) -> f64 {
    limit / 3.0_f64.sqrt()
}

/// Half the difference that each input's standard uncertainty makes, either way (GUM 5.1.3, note 2).
fn contributions<const N: usize>(
    unit: &Unit,
    sight: &Sight,
    uncertainty: &Sight,
    of: impl Fn(&Shown) -> [f64; N],
) -> [[f64; N]; Sight::COUNT] {
    std::array::from_fn(|index| {
        let mut uncertainty = *uncertainty;
        let by = *uncertainty.quantity(index);
        let at = |by: f64| {
            let mut moved = *sight;
            *moved.quantity(index) += by;
            of(&unit.look(&moved, Fault::None))
        };
        let (above, below) = (at(by), at(-by));
        std::array::from_fn(|result| 0.5 * (above[result] - below[result]))
    })
}

/// Measured and expected cooling, W.
fn capacities(shown: &Shown, is_total: bool) -> [f64; 2] {
    if is_total {
        [shown.measured.total_w, shown.model.total_w]
    } else {
        [shown.measured.sensible_w, shown.model.sensible_w]
    }
}

/// Measured and expected cooling over electric input.
fn efficiencies(shown: &Shown, is_total: bool) -> [f64; 2] {
    let [measured_w, expected_w] = capacities(shown, is_total);
    [
        measured_w / shown.measured.electric_w,
        expected_w / shown.model.electric_w,
    ]
}

fn made(
    unit: &Unit,
    sight: &Sight,
    uncertainty: &Sight,
    is_total: bool,
    of: fn(&Shown, bool) -> [f64; 2],
) -> Made {
    let with_ratio = |shown: &Shown| {
        let [measured, expected] = of(shown, is_total);
        // Nothing is expected of a unit that has only just started.
        [measured, measured / expected.max(f64::MIN_POSITIVE.sqrt())]
    };
    let parts = contributions(unit, sight, uncertainty, with_ratio);
    let band = |result: usize| {
        let squares = parts.iter().map(|part| part[result] * part[result]);
        COVERAGE * squares.sum::<f64>().sqrt()
    };
    let shown = unit.look(sight, Fault::None);
    let [measured, expected] = of(&shown, is_total);
    Made {
        measured,
        measured_band: band(0),
        expected,
        ratio: with_ratio(&shown)[1],
        ratio_band: band(1),
    }
}

fn compared(shown: &Shown, residuals: &Residuals, rated_flow_m3_s: f64) -> Vec<Compared> {
    residuals
        .used()
        .map(|(index, variance)| {
            let sign = Sign::ALL[index];
            let scale = if sign == Sign::Airflow {
                rated_flow_m3_s
            } else {
                1.0
            };
            Compared {
                sign,
                read: scale * shown.read[index],
                expected: scale * shown.expected[index],
                band: scale * COVERAGE * variance.sqrt(),
            }
        })
        .collect()
}
