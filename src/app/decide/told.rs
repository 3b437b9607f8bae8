//! What was found, for other parts of the page to tell.

use super::view::told;
use super::{Decision, FAILS, MONEY, NEEDED, Phase, SIZES, SURE};
use leptos::prelude::*;
use noonday_engine::advice::failure::WindowFailure;
use noonday_engine::advice::sampling::Sampled;
use noonday_engine::advice::{Alternatives, Packages, Sizing};
use std::sync::Arc;

/// The decision, once its part of the page has come.
#[derive(Clone, Copy)]
pub struct Decided(RwSignal<Option<Decision>>);

/// What was found of the state that is shown; parts of an earlier state are left out.
#[derive(Clone, Debug, Default)]
pub struct Findings {
    /// The need without a cooler.
    pub alternatives: Option<Alternatives>,
    /// How fast it gets hot.
    pub failures: Option<Vec<WindowFailure>>,
    /// Sizes; none where nothing is asked.
    pub sizing: Option<Option<Box<Sizing>>>,
    /// Packages found so far.
    pub packages: Option<Packages>,
    /// How far such days may differ.
    pub sampled: Option<Arc<Sampled>>,
}

impl Decided {
    /// None yet.
    pub fn not_yet() -> Self {
        Self(RwSignal::new(None))
    }

    /// It has come.
    pub(super) fn is(self, decision: Decision) {
        self.0.set(Some(decision));
    }

    /// What was found so far.
    pub fn findings(self) -> Findings {
        self.0.get().map(findings).unwrap_or_default()
    }

    /// How far the work is, as long as it goes on.
    pub fn working(self) -> Option<String> {
        let decision = self.0.get()?;
        let goes_on = matches!(decision.phase.get(), Phase::Waiting | Phase::Working(_));
        goes_on.then(|| told(decision))
    }
}

fn findings(decision: Decision) -> Findings {
    let shown = decision.of.with(|of| {
        let scenario = |of: &_| {
            decision
                .state
                .checked
                .with(|checked| checked.scenario == *of)
        };
        of.as_ref().is_some_and(scenario)
    });
    let number = decision.asker.last();
    // What was asked for again by the switches there is of the same state.
    let current = |place: usize| {
        let (of, times) = decision.came[place].get();
        let choices = matches!(place, SIZES | MONEY);
        shown && times > 0 && (of == number || !choices)
    };
    decision.parts.with_value(|parts| Findings {
        alternatives: current(NEEDED)
            .then(|| parts.alternatives.clone())
            .flatten(),
        failures: current(FAILS).then(|| parts.failures.clone()).flatten(),
        sizing: current(SIZES).then(|| parts.sizing.clone()).flatten(),
        packages: current(MONEY).then(|| parts.packages.clone()).flatten(),
        sampled: decision.state.sampled.get().filter(|_| current(SURE)),
    })
}
