//! The head of the page: what the scenario is called, and what can be done with it.

use super::sending::sending;
use super::shelf::shelf;
use crate::desk::Desk;
use crate::format::UnitSystem;
use crate::live::{at_event, click, flag, part, words};
use crate::share_link;
use crate::state::AppState;
use crate::text::{page, report, sending as sending_words};
use leptos::html;
use leptos::prelude::*;

/// The head.
#[component]
pub fn Masthead() -> impl IntoView {
    let state = expect_context::<AppState>();
    let desk = expect_context::<Desk>();
    let (listed, sent) = (RwSignal::new(false), RwSignal::new(false));
    let opener = NodeRef::<html::Button>::new();
    let name = words(move || {
        state
            .document
            .with(|document| page::shown_name(&document.name))
    });
    view! {
        <header class="masthead">
            <p class="program">{page::PROGRAM}</p>
            <h1 tabindex="-1">{name}</h1>
            <div class="actions">
                <button type="button" on:click=click(move || desk.save())>
                    {page::SAVE}
                </button>
                <button
                    type="button"
                    aria-expanded=words(move || listed.get().to_string())
                    aria-controls="shelf"
                    on:click=click(move || listed.update(|listed| *listed = !*listed))
                >
                    {page::SCENARIOS}
                </button>
                <button type="button" class="copy" on:click=click(move || desk.copy_link())>
                    {page::COPY_LINK.0}
                    <span class="more">{page::COPY_LINK.1}</span>
                </button>
                {share_link::can_send()
                    .then(|| {
                        view! {
                            <button type="button" class="share" on:click=click(move || desk.share())>
                                {page::SHARE}
                            </button>
                        }
                    })}
                <button
                    type="button"
                    class="send"
                    node_ref=opener
                    aria-expanded=words(move || sent.get().to_string())
                    aria-controls="sending"
                    on:click=click(move || sent.update(|sent| *sent = !*sent))
                >
                    {sending_words::OPEN.0}
                    <span class="more">{sending_words::OPEN.1}</span>
                </button>
                <button type="button" class="print report-button" on:click=click(move || desk.show_report())>
                    {report::REPORT}
                </button>
            </div>
            <UnitSwitch />
            <div id="sending">
                {part(move || sent.get().then(|| sending(desk, sent, opener)))}
            </div>
            <div id="shelf">
                {part(move || listed.get().then(|| shelf(desk)))}
            </div>
        </header>
    }
}

#[component]
fn UnitSwitch() -> impl IntoView {
    let state = expect_context::<AppState>();
    let option = move |units: UnitSystem, label: &'static str| {
        view! {
            <label>
                <input
                    type="radio"
                    name="units"
                    prop:checked=flag(move || state.units.get() == units)
                    on:change=at_event(move || state.show_units(units))
                />
                <span>{label}</span>
            </label>
        }
    };
    view! {
        <fieldset class="unit-switch">
            <legend class="visually-hidden">{page::UNITS}</legend>
            {option(UnitSystem::Us, page::UNITS_US)}
            {option(UnitSystem::Metric, page::UNITS_METRIC)}
        </fieldset>
    }
}
