//! The working behind results: title, equation, numbers, source.

use crate::text::working::Worked;
use leptos::prelude::*;

/// Terms and descriptions of a list.
pub fn worked_list(all: Vec<Worked>) -> AnyView {
    all.into_iter()
        .map(|line| {
            view! {
                <dt>{line.title}</dt>
                <dd>
                    <p>{line.equation}</p>
                    <p class="numbers">{line.numbers}</p>
                    <p class="note">{line.source}</p>
                </dd>
            }
        })
        .collect_view()
        .into_any()
}
