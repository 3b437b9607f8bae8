//! What to decide: is cooling needed at all, how big, what for the money, how sure, and what if it fails. All of it is worked
//! out beside the page, once the inputs rest, and shown as it comes.

mod front;
mod likely;
mod money;
mod needed;
mod sizes;
mod told;
mod view;

pub use told::{Decided, Findings};
pub use view::Decide;

use crate::live::derived;
use crate::state::AppState;
use crate::text::decide as text;
use crate::worker::{Answer, Asker, Extent, Found, Request};
use leptos::prelude::*;
use noonday_engine::advice::failure::WindowFailure;
use noonday_engine::advice::sampling::Sampled;
use noonday_engine::advice::{Alternatives, Packages, PlainDivision, Sizing, Subject, levers};
use noonday_engine::scenario::{Scenario, ScenarioDocument, to_link};
use std::sync::Arc;

/// Parts that are shown, by number.
const NEEDED: usize = 0;
const FAILS: usize = 1;
const PLAIN: usize = 2;
const SIZES: usize = 3;
const MONEY: usize = 4;
const SURE: usize = 5;

/// How far the work is.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Phase {
    /// Until the inputs rest.
    Waiting,
    /// Being done, by this share.
    Working(f64),
    /// All is there.
    Complete,
    /// Given up by somebody.
    Stopped,
    /// The worker ended by itself.
    Failed,
    /// It ended once more.
    Lost,
    /// No worker is to be had.
    Unavailable,
    /// The scenario was refused.
    Refused,
}

/// What was found, each part the last of its kind.
#[derive(Debug, Default)]
struct Parts {
    alternatives: Option<Alternatives>,
    failures: Option<Vec<WindowFailure>>,
    plain: Option<Option<PlainDivision>>,
    sizing: Option<Option<Box<Sizing>>>,
    packages: Option<Packages>,
    sampled: Option<Arc<Sampled>>,
}

/// When a part came: the request that it answers, and how often it came.
type Came = (u32, u32);

/// The decision, for the views.
#[derive(Clone, Copy)]
pub struct Decision {
    state: AppState,
    asker: Asker,
    parts: StoredValue<Parts>,
    came: [RwSignal<Came>; 6],
    took_ms: [RwSignal<f64>; 6],
    phase: RwSignal<Phase>,
    /// How much the last request asked for.
    extent: StoredValue<Extent>,
    /// The scenario of the last request.
    of: RwSignal<Option<Scenario>>,
    left_out: RwSignal<Vec<Subject>>,
    must_recover: RwSignal<bool>,
    /// What was last put into the scenario from here.
    taken: RwSignal<Option<(String, ScenarioDocument)>>,
}

impl Decision {
    /// Follows the state: begins the work when the inputs rest, gives it up when they move on.
    pub fn new(state: AppState) -> Self {
        let decision = Self {
            state,
            asker: Asker::new(),
            parts: StoredValue::new(Parts::default()),
            came: std::array::from_fn(|_| RwSignal::new((0, 0))),
            took_ms: std::array::from_fn(|_| RwSignal::new(0.0)),
            phase: RwSignal::new(Phase::Waiting),
            extent: StoredValue::new(Extent::Nothing),
            of: RwSignal::new(None),
            left_out: RwSignal::new(Vec::new()),
            must_recover: RwSignal::new(true),
            taken: RwSignal::new(None),
        };
        Effect::new(move |_| {
            if let Some(scenario) = state.settled.get() {
                decision.begin(scenario);
            }
        });
        Effect::new(move |_| {
            let moved = state.checked.with(|checked| {
                decision
                    .of
                    .with_untracked(|of| of.as_ref().is_some_and(|of| *of != checked.scenario))
            });
            if moved {
                decision.moved_on();
            }
        });
        decision
    }

    fn begin(self, scenario: Scenario) {
        if self.of.with_untracked(|of| of.as_ref() == Some(&scenario)) {
            return;
        }
        self.of.set(Some(scenario));
        self.ask(Extent::Everything);
    }

    /// The state has changed: what is being worked out would be of another.
    fn moved_on(self) {
        self.state.sampled.set(None);
        self.state.effects.set(None);
        self.of.set(None);
        if let Phase::Working(_) = self.phase.get_untracked() {
            self.ask(Extent::Nothing);
        }
        self.set_phase(Phase::Waiting);
    }

    fn stop(self) {
        self.name_no_help();
        self.ask(Extent::Nothing);
        self.set_phase(Phase::Stopped);
    }

    /// The answer waits to be told until it is known what would help; where that will not be known, it need not.
    fn name_no_help(self) {
        self.state
            .effects
            .update(|effects| *effects = Some(effects.take().unwrap_or_default()));
    }

    fn go_on(self) {
        let scenario = self
            .state
            .checked
            .with_untracked(|checked| checked.scenario.clone());
        self.of.set(Some(scenario));
        self.ask(Extent::Everything);
    }

    /// Asks again for what the switches here change, or for everything where not everything is there.
    fn choose(self) {
        let complete = self.phase.get_untracked() == Phase::Complete;
        self.ask(if complete {
            Extent::Choices
        } else {
            Extent::Everything
        });
    }

    fn set_phase(self, phase: Phase) {
        let lasting = matches!(self.phase.get_untracked(), Phase::Unavailable | Phase::Lost);
        if !lasting {
            self.phase.set(phase);
        }
    }

    fn ask(self, extent: Extent) {
        let Some(link) = self
            .of
            .with_untracked(|of| Some(to_link(of.as_ref()?.document())))
            .or_else(|| (extent == Extent::Nothing).then(String::new))
        else {
            return;
        };
        match self.phase.get_untracked() {
            Phase::Lost => return self.name_no_help(),
            Phase::Unavailable => return self.do_without(),
            _ => {}
        }
        self.extent.set_value(extent);
        let request = Request {
            left_out: self.left_out.get_untracked(),
            must_recover: self.must_recover.get_untracked(),
            ..Request::new(extent, link)
        };
        let asked = self.asker.ask(
            request,
            move |answer| self.take(answer),
            move || self.fail(),
        );
        if asked {
            self.set_phase(Phase::Working(0.0));
        } else {
            self.do_without();
        }
    }

    /// Where no worker is to be had, the answer still names what would help most.
    fn do_without(self) {
        self.phase.set(Phase::Unavailable);
        let effects = self.of.with_untracked(|of| of.as_ref().map(levers)?.ok());
        self.state.effects.set(Some(effects.unwrap_or_default()));
    }

    /// The worker has ended by itself: another begins with the next request, unless that has been tried. What made it end is not
    /// tried on the page itself.
    fn fail(self) {
        self.name_no_help();
        self.phase.set(if self.asker.has_ended_again() {
            Phase::Lost
        } else {
            Phase::Failed
        });
    }

    fn take(self, answer: Answer) {
        let waiting = matches!(self.phase.get_untracked(), Phase::Working(_));
        if !self.asker.is_to_last(&answer) || !waiting {
            return;
        }
        let place = match answer.found {
            Found::Progress => None,
            Found::Levers(effects) => {
                self.state.effects.set(Some(effects));
                None
            }
            Found::Refused => {
                self.name_no_help();
                self.set_phase(Phase::Refused);
                return;
            }
            found => Some(self.keep(found)),
        };
        if let Some(place) = place {
            self.took_ms[place].set(answer.took_ms);
            self.came[place].update(|came| *came = (answer.number, came.1 + 1));
        }
        self.set_phase(if answer.progress >= 1.0 || self.choices_are_there(place) {
            self.asker.has_brought();
            Phase::Complete
        } else {
            Phase::Working(answer.progress)
        });
    }

    /// Whether the last part of a request for choices has come: the draws are there from before.
    fn choices_are_there(self, place: Option<usize>) -> bool {
        let complete = self.parts.with_value(|parts| {
            let packages = parts.packages.as_ref();
            packages.is_some_and(|packages| packages.complete)
        });
        place == Some(MONEY) && complete && self.extent.get_value() == Extent::Choices
    }

    fn keep(self, found: Found) -> usize {
        let mut place = 0;
        self.parts.update_value(|parts| {
            place = match found {
                Found::Alternatives(found) => {
                    parts.alternatives = Some(found);
                    NEEDED
                }
                Found::Failures(found) => {
                    parts.failures = Some(found);
                    FAILS
                }
                Found::Plain(found) => {
                    parts.plain = Some(found);
                    PLAIN
                }
                Found::Sizing(found) => {
                    parts.sizing = Some(found);
                    SIZES
                }
                Found::Packages(found) => {
                    parts.packages = Some(found);
                    MONEY
                }
                Found::Sampled(found) => {
                    parts.sampled = Some(Arc::new(found));
                    SURE
                }
                Found::Levers(_)
                | Found::Learned(_)
                | Found::Summer(_)
                | Found::Progress
                | Found::Refused => place,
            };
        });
        if place == SURE {
            let sampled = self.parts.with_value(|parts| parts.sampled.clone());
            self.state.sampled.set(sampled);
        }
        place
    }

    /// Whether a part is of the state that is shown, so that it may be acted on.
    fn is_current(self, place: usize) -> Memo<bool> {
        derived(move || {
            let shown = self.of.with(|of| {
                self.state
                    .checked
                    .with(|checked| of.as_ref() == Some(&checked.scenario))
            });
            // Sizes and packages are asked for apart; the other parts stay what they are until the state moves.
            shown && self.came[place].get().0 == self.asker.last()
        })
    }

    /// Makes a changed document the scenario, with a way back.
    fn adopt(self, document: ScenarioDocument, what: &str) {
        self.state.exchange(document);
        let now = self.state.document.get_untracked();
        self.taken.set(Some((text::taken(what), now)));
    }

    /// What was put into the scenario from here, as long as nothing else was changed since.
    fn taken(self) -> Option<String> {
        let (told, document) = self.taken.get()?;
        let still = self.state.document.with(|now| *now == document);
        still.then_some(told)
    }
}
