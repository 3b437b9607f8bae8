//! A difference from the pinned state, beside the number that differs.

use leptos::prelude::*;

/// The difference in brackets; nothing where there is none.
pub fn since_pinned(difference: Option<String>) -> Option<AnyView> {
    let difference = difference?;
    Some(view! { <span class="since">" (" {difference} ")"</span> }.into_any())
}
