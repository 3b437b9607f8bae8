//! How far something is that is worked out beside the page.

use crate::live::{flag, words};
use leptos::prelude::*;

/// A bar for the share that is done, from 0 to 1; hidden while nothing is being done.
pub fn progress(label: &'static str, done: Memo<Option<f64>>) -> AnyView {
    view! {
        <progress
            max="1"
            aria-label=label
            hidden=flag(move || done.get().is_none())
            prop:value=words(move || match done.get() {
                Some(share) => format!("{share:.3}"),
                None => "1".to_owned(),
            })
        ></progress>
    }
    .into_any()
}
