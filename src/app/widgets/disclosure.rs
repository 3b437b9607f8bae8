//! A line that opens: what it holds is worked out once it is open, and no longer once it is closed.

use crate::live::{at_event, part};
use crate::state::AppState;
use leptos::html;
use leptos::prelude::*;

/// Such a line with its title and what it holds.
pub fn disclosure(
    class: &'static str,
    title: &'static str,
    body: fn(AppState) -> AnyView,
) -> AnyView {
    let state = expect_context::<AppState>();
    disclosed(class, title.into_any(), Box::new(move || body(state)))
}

/// Such a line with whatever it shows while it is closed.
pub fn disclosed(
    class: &'static str,
    summary: AnyView,
    body: Box<dyn Fn() -> AnyView + Send>,
) -> AnyView {
    let open = RwSignal::new(false);
    let element = NodeRef::<html::Details>::new();
    let toggled = at_event(move || {
        if let Some(details) = element.get_untracked() {
            open.set(details.open());
        }
    });
    view! {
        <details class=class node_ref=element on:toggle=toggled>
            <summary>{summary}</summary>
            {part(move || open.get().then(&body))}
        </details>
    }
    .into_any()
}
