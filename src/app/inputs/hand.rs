//! What is always at hand beside the inputs: the last change back, forward again, and a state pinned to compare with.

use super::row::FIELD_ID;
use crate::live::{click, derived, flag, part, words};
use crate::state::AppState;
use crate::text::fields::full_label;
use crate::text::page;
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use noonday_engine::scenario::field;
use wasm_bindgen::JsCast;

/// The bar.
#[component]
pub fn Hand() -> impl IntoView {
    let state = expect_context::<AppState>();
    let back = derived(move || state.trail.with(|trail| trail.next_back()));
    let forward = derived(move || state.trail.with(|trail| trail.next_forward()));
    let has_typed = derived(move || state.typed.with(|typed| !typed.is_empty()));
    let pinned = derived(move || state.pinned.with(Option::is_some));
    let pin_text = move || {
        if pinned.get() {
            page::PIN_ANEW
        } else {
            page::PIN
        }
    };
    window_event_listener(leptos::ev::keydown, move |event| shortcut(state, &event));
    view! {
        <div class="hand" role="group" aria-label=page::AT_HAND>
            {step(page::UNDO, back, derived(move || has_typed.get() || back.get().is_some()), move || state.back())}
            {step(page::REDO, forward, derived(move || forward.get().is_some()), move || state.forward())}
            <button type="button" class="pin" on:click=click(move || state.pin())>
                {words(move || pin_text().to_owned())}
            </button>
            {part(move || {
                pinned
                    .get()
                    .then(|| {
                        view! {
                            <button type="button" on:click=click(move || state.unpin())>
                                {page::UNPIN}
                            </button>
                        }
                            .into_any()
                    })
            })}
        </div>
    }
}

/// A button that takes a step and says which. It stays where it is while there is no step, so that the keyboard does too.
fn step(
    label: &'static str,
    field_of_step: Memo<Option<Option<&'static str>>>,
    possible: Memo<bool>,
    act: impl Fn() + 'static,
) -> AnyView {
    let what = move || {
        field_of_step
            .get()
            .map(|key| page::step_name(key.and_then(field).map(full_label)))
    };
    view! {
        <button
            type="button"
            aria-disabled=words(move || (!possible.get()).to_string())
            class:idle=flag(move || !possible.get())
            on:click=click(act)
        >
            {label}
            <span class="what">{words(move || what().map(|what| format!(" {what}")).unwrap_or_default())}</span>
        </button>
    }
    .into_any()
}

/// The customary keys: Ctrl or Command with Z, with Shift or Y for forward.
fn shortcut(state: AppState, event: &KeyboardEvent) {
    let held = (event.ctrl_key() || event.meta_key()) && !event.alt_key();
    if !held || types_elsewhere(event) {
        return;
    }
    match (event.key().to_ascii_lowercase().as_str(), event.shift_key()) {
        ("z", false) => state.back(),
        ("z", true) | ("y", false) => state.forward(),
        _ => return,
    }
    event.prevent_default();
}

/// Whether the keys belong to a text that is no part of the scenario.
fn types_elsewhere(event: &KeyboardEvent) -> bool {
    let target = event
        .target()
        .and_then(|target| target.dyn_into::<web_sys::HtmlElement>().ok());
    target.is_some_and(|element| {
        let writes = matches!(element.tag_name().as_str(), "INPUT" | "TEXTAREA");
        writes && !element.id().starts_with(FIELD_ID)
    })
}
