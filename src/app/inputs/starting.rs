//! What stands under the pick of a starting point: what it sets, where its values come from, and what was changed since.

use crate::live::{click, derived, part};
use crate::state::AppState;
use crate::text::starting as words;
use leptos::prelude::*;
use noonday_engine::scenario::starting_points::Library;
use noonday_engine::scenario::{Kind, field};

/// The line under a pick.
pub fn note(library: &'static Library, state: AppState) -> AnyView {
    let changes = derived(move || {
        state.document.with(|document| {
            let picked = library.picked(&document.starting)?;
            let count = state
                .meant
                .with(|meant| library.changes_from(meant, document));
            Some((picked.point, count))
        })
    });
    let line = part(move || {
        let (_, count) = changes.get()?;
        let source = state.document.with_untracked(|document| {
            library
                .picked(&document.starting)
                .map(|start| words::basis(start.basis))
        });
        let again = (count > 0).then(|| take_again(library, state));
        Some(
            view! {
                <p>{source} " " {words::changed(count)}</p>
                {again}
            }
            .into_any(),
        )
    });
    view! {
        <div class="starting" role="status">
            <p>{words::offered(library)}</p>
            {line}
        </div>
    }
    .into_any()
}

fn take_again(library: &'static Library, state: AppState) -> AnyView {
    let act = click(move || {
        let Some(field) = field(library.key) else {
            return;
        };
        if let Kind::Choice(choice) = &field.kind {
            let option = state.document.with_untracked(choice.read);
            state.choose(field, choice, option);
        }
    });
    view! {
        <button type="button" class="quiet" on:click=act>
            {words::TAKE_AGAIN}
        </button>
    }
    .into_any()
}
