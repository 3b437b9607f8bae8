//! What comes after the work: the check of the finished unit, and what a logged day teaches. Nothing of it is worked out while its
//! part is closed.

mod chart;
mod lesson;
mod log;
mod readings;
mod taught;

use crate::inputs::{GroupOfInputs, Opened};
use crate::live::{derived, part};
use crate::text::proving as text;
use crate::widgets::disclosure;
use leptos::prelude::*;
use lesson::Teaching;
use noonday_engine::scenario::Group;

/// The section.
#[component]
pub fn Proving() -> impl IntoView {
    let opened = expect_context::<Opened>();
    provide_context(Teaching::new());
    let is_open = derived(move || opened.has((Group::Readings, false)));
    view! {
        <section id="proving" class="proving" aria-labelledby="proving-title">
            <h2 id="proving-title">{text::PROVING}</h2>
            <p class="note">{text::PROVING_NOTE}</p>
            <p class="caution">{text::PROVING_CAUTION}</p>
            <div class="bench">
                <GroupOfInputs group=Group::Readings />
                <div class="found" data-proving="readings">
                    {part(move || is_open.get().then(readings::check))}
                </div>
            </div>
            {disclosure("group learn", text::LEARN, log::view)}
        </section>
    }
}
