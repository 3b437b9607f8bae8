//! The answer in sentences, and the figures behind it.

mod figures;
mod heat;
mod then;
mod working;

pub use figures::Figures;
pub use then::Then;

use crate::inputs::Opened;
use crate::live::{click, derived, part, words};
use crate::state::{AppState, Trouble};
use crate::text::answer::{Answer, answer, help};
use crate::text::{fields::full_label, page};
use leptos::prelude::*;
use noonday_engine::scenario::{NeededFor, ScenarioDocument, field};

/// The answer of the state shown.
fn answer_shown(state: AppState) -> Memo<Answer> {
    derived(move || answer(&state.advice.get(), &state.voice.get()))
}

/// What would help most, once the inputs have settled; nothing while they move.
fn help_shown(state: AppState) -> Memo<Option<String>> {
    derived(move || {
        let settled = state.settled.get();
        let rests = state
            .checked
            .with(|checked| settled.as_ref() == Some(&checked.scenario));
        let headline = state.advice.get().verdict.headline;
        rests
            .then(|| {
                state
                    .effects
                    .with(|effects| help(effects.as_ref()?, headline, &state.voice.get()))
            })
            .flatten()
    })
}

/// The one sentence that stays in view, and what is held back if anything is.
#[component]
pub fn Lead() -> impl IntoView {
    let state = expect_context::<AppState>();
    let shown = answer_shown(state);
    view! {
        <h2 class="visually-hidden">{page::ANSWER}</h2>
        <p class="lead" data-answer="lead">
            {words(move || shown.with(|answer| answer.lead.clone()))}
        </p>
        <Held />
    }
}

#[component]
fn Held() -> impl IntoView {
    let state = expect_context::<AppState>();
    let opened = expect_context::<Opened>();
    let note = move |trouble: Trouble| {
        let Some(found) = field(trouble.key) else {
            return view! { <p>{trouble.why}</p> }.into_any();
        };
        // Beside the entry the reason is seen; here it is only heard, so that the charts keep their room.
        view! {
            <button type="button" on:click=click(move || opened.show(trouble.key))>
                {page::held(&full_label(found))}
                " "
                <span class="visually-hidden">{trouble.why}</span>
                " "
                <span class="go">{page::SHOW_ENTRY}</span>
            </button>
        }
        .into_any()
    };
    view! {
        <div class="held" role="status">
            {part(move || {
                let first = state.troubles.with(|troubles| troubles.first().cloned());
                first.map(note)
            })}
        </div>
    }
}

/// The rest of the answer.
#[component]
pub fn Rest() -> impl IntoView {
    let state = expect_context::<AppState>();
    let shown = answer_shown(state);
    let help = help_shown(state);
    view! {
        <div class="rest" data-answer="rest">
            <p>{words(move || shown.with(Answer::rest))}</p>
            <p class="help" data-answer="help">
                {words(move || help.get().unwrap_or_default())}
            </p>
        </div>
        <Announcement />
    }
}

/// What a screen reader is told once a change has settled and it is known what would help: once for each change.
#[component]
fn Announcement() -> impl IntoView {
    let state = expect_context::<AppState>();
    let shown = answer_shown(state);
    let help = help_shown(state);
    let told = Memo::new(move |before: Option<&String>| {
        let settled = state.settled.get();
        let rests = state
            .checked
            .with(|checked| settled.as_ref() == Some(&checked.scenario));
        if !rests || state.effects.with(Option::is_none) {
            return before.cloned().unwrap_or_default();
        }
        let spoken = shown.with(Answer::spoken);
        match help.get() {
            Some(help) => format!("{spoken} {}", help.replace('\u{a0}', " ")),
            None => spoken,
        }
    });
    view! {
        <p class="visually-hidden" role="status" aria-live="polite" data-answer="announced">
            {words(move || told.get())}
        </p>
    }
}

/// The caution, sharper where animals are concerned.
#[component]
pub fn Cautions() -> impl IntoView {
    let state = expect_context::<AppState>();
    let animals = derived(move || state.document.with(concerns_animals));
    view! {
        <div class="cautions">
            <p class="caution">
                {words(move || {
                    if animals.get() { page::CAUTION_ANIMALS } else { page::CAUTION_ALL }
                        .to_owned()
                })}
            </p>
        </div>
    }
}

/// Whether animals are in it, or it must be cool for them.
pub fn concerns_animals(document: &ScenarioDocument) -> bool {
    let asked = document
        .need
        .windows
        .iter()
        .any(|window| window.needed_for == NeededFor::Animals);
    asked || document.occupants.dogs > 0.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::example;

    #[test]
    fn animals_are_a_concern_when_in_it_or_when_it_must_be_cool_for_them() {
        let mut document = example();
        assert!(concerns_animals(&document));
        document.occupants.dogs = 0.0;
        assert!(concerns_animals(&document));
        for window in &mut document.need.windows {
            window.needed_for = NeededFor::People;
        }
        assert!(!concerns_animals(&document));
    }
}
