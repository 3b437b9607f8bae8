//! Advice built on runs: the verdict and what it costs; whether cooling is needed at all, how big it has to be, where money goes
//! furthest, how sure that is, how fast it gets hot when something fails, and why plain division says something else.
//!
//! Everything here is built on runs of changed scenarios and on nothing else. What takes many runs, [`PackageSearch`] and
//! [`sampling::Sampler`], goes a few at a time, so that it can be watched and given up.

pub mod acceptance;
mod alternatives;
mod ample;
pub mod bank_limits;
mod cause;
pub mod circuits;
mod cost;
pub mod failure;
mod front;
mod heat;
pub mod job;
mod judge;
pub mod ladder;
pub mod learning;
mod levers;
mod measures;
mod packages;
mod plain_division;
mod roof;
pub mod sampling;
mod sizing;
pub mod summer;
mod trial;
mod verdict;
pub mod voltages;
pub mod weight;
mod working;

pub use alternatives::{Alternative, Alternatives, PurgeEffect, alternatives};
pub use cost::{Cost, cost};
pub use heat::HeatReading;
pub use judge::judge;
pub use levers::{Lever, LeverEffect, levers};
pub use measures::{Measure, MeasureKind, Subject, applied, cost_of, measures};
pub use packages::{Package, PackageSearch, Packages, packages};
pub use plain_division::{PlainDivision, Reason, plain_division};
pub use roof::{Against, RoofReport, panels_offer, roof_report};
pub use sizing::{ChargingSized, Rung, Sized, Sizing, size};
use trial::COARSE_STEPS_PER_MINUTE;
pub use trial::Outcome;
pub use verdict::{BankVerdict, Cause, Headline, Verdict, WindowVerdict};
pub use working::{
    ChargeWorking, CoolerWorking, FeltWorking, HeatWorking, PowerWorking, ShellWorking, Working,
    working,
};

use crate::cooler::data_plate::PlateAssessment;
use crate::scenario::{Scenario, plate_assessment};
use crate::simulation::{BuildError, FULL_STEPS_PER_MINUTE, Prepared, Results};

/// Everything that the page shows of a valid scenario.
#[derive(Clone, Debug, PartialEq)]
pub struct Advice {
    /// The run as described.
    pub with_cooler: Results,
    /// The same without any cooler; of it only what a verdict needs ([`Prepared::run_for_verdict`]).
    pub without_cooler: Results,
    /// The verdict.
    pub verdict: Verdict,
    /// What it costs.
    pub cost: Cost,
    /// What the cooler's data plate implies; none without a cooler or where the plate is beyond any small unit's.
    pub plate: Option<PlateAssessment>,
}

/// Runs a scenario with and without its cooler and judges it.
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn advise(scenario: &Scenario) -> Result<Advice, BuildError> {
    advise_in_steps(scenario, FULL_STEPS_PER_MINUTE)
}

/// The same in coarse steps, for while an input is being moved: on the example the day's temperatures are on average within three
/// hundredths of a kelvin of those of [`advise`], the worst of a window within a tenth, charge within two thousandths.
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn advise_coarsely(scenario: &Scenario) -> Result<Advice, BuildError> {
    advise_in_steps(scenario, COARSE_STEPS_PER_MINUTE)
}

fn advise_in_steps(scenario: &Scenario, steps_per_minute: u32) -> Result<Advice, BuildError> {
    let prepared = Prepared::new(scenario)?;
    let with_cooler = prepared.run_in_steps(steps_per_minute)?;
    let without_cooler = if scenario.document().cooler.installed {
        let without = prepared.without_cooler();
        without.run_for_verdict(steps_per_minute)?
    } else {
        with_cooler.clone()
    };
    let verdict = judge(scenario.document(), &with_cooler, &without_cooler);
    Ok(Advice {
        with_cooler,
        without_cooler,
        verdict,
        cost: cost(scenario.document()),
        plate: scenario
            .document()
            .cooler
            .installed
            .then(|| plate_assessment(scenario.document()))
            .flatten(),
    })
}
