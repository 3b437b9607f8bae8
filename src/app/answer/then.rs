//! The pinned state in a sentence, and what was changed since.

use crate::inputs::shown_value;
use crate::live::part;
use crate::state::{AppState, Pinned};
use crate::text::answer::answer;
use crate::text::compare as words;
use crate::text::fields::full_label;
use leptos::prelude::*;
use noonday_engine::scenario::{ScenarioDocument, fields};

/// Then and now; nothing while no state is pinned.
#[component]
pub fn Then() -> impl IntoView {
    let state = expect_context::<AppState>();
    let said = part(move || {
        let pinned = state.pinned.get()?;
        let lead = answer(&pinned.advice, &state.voice.get()).lead;
        let changes = state
            .document
            .with(|document| changes(&pinned, document, state));
        let said = view! {
            <p>{words::pinned(&lead)}</p>
            <p class="note">{words::changes(&changes)}</p>
        };
        Some(said.into_any())
    });
    view! { <div class="then">{said}</div> }
}

/// Every field that differs, with its value then and now.
fn changes(pinned: &Pinned, document: &ScenarioDocument, state: AppState) -> Vec<String> {
    let before = pinned.scenario.document();
    let units = state.units.get();
    fields()
        .filter(|field| !field.same_in(before, document))
        .map(|field| {
            let value = |document| shown_value(field, document, units);
            words::change(&full_label(field), &value(before), &value(document))
        })
        .collect()
}
