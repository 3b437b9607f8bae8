//! The working behind the results, worked out once it is opened.

use crate::charts::reading_index;
use crate::live::part;
use crate::state::AppState;
use crate::text::working as words;
use crate::widgets::{disclosure, worked_list};
use leptos::prelude::*;
use noonday_engine::advice::working;

/// Equation, numbers and source of each result, at the instant that is read.
#[component]
pub fn ShownWorking() -> impl IntoView {
    disclosure("working finer", words::SHOW, lines)
}

fn lines(state: AppState) -> AnyView {
    let index = reading_index(state);
    let lines = part(move || {
        let advice = state.advice.get();
        let working = state
            .checked
            .with(|checked| working(&advice, checked.scenario.document(), index.get()))?;
        let lines = words::worked(&working, &advice, &state.voice.get());
        Some(worked_list(lines))
    });
    view! {
        <p class="note">{words::NOTE}</p>
        <dl>{lines}</dl>
    }
    .into_any()
}
