//! How to build it in: what the scenario asks of cable, bank and roof. Each part is worked out once it is opened, and no longer
//! once it is closed, so that closed parts cost nothing while a slider is dragged.

mod bank;
mod cables;
mod job;
mod roof;
mod voltages;

use crate::live::{derived, part};
use crate::state::AppState;
use crate::text::roof::ROOF;
use crate::text::{Voice, building as text};
use crate::widgets::disclosure;
use crate::widgets::paragraph;
use leptos::prelude::*;
use noonday_engine::advice::circuits::{Circuits, circuits};
use noonday_engine::scenario::ScenarioDocument;

/// The section.
#[component]
pub fn Building() -> impl IntoView {
    view! {
        <section id="building" class="building" aria-labelledby="building-title">
            <h2 id="building-title">{text::BUILDING}</h2>
            <p class="note">{text::BUILDING_NOTE}</p>
            {disclosure("building-part", text::CABLES, cables::view)}
            {disclosure("building-part", text::VOLTAGES, voltages::view)}
            {disclosure("building-part", text::LIMITS, bank::view)}
            {disclosure("building-part", ROOF, roof::view)}
            {disclosure("building-part", text::JOB, job::view)}
        </section>
    }
}

/// The last state that could be run with its circuits, and how to speak of it.
#[derive(Clone, PartialEq)]
struct Built {
    document: ScenarioDocument,
    circuits: Circuits,
    voice: Voice,
}

/// Follows the state; nothing should a component refuse its input, which no checked state makes it do.
fn built(state: AppState) -> Memo<Option<Built>> {
    derived(move || {
        let document = state
            .checked
            .with(|checked| checked.scenario.document().clone());
        Some(Built {
            circuits: circuits(&document).ok()?,
            voice: state.voice.get(),
            document,
        })
    })
}

/// A part shown anew whenever the state changes.
fn shown(built: Memo<Option<Built>>, body: fn(&Built) -> Option<AnyView>) -> AnyView {
    part(move || {
        let view = built.with(|built| built.as_ref().and_then(body));
        Some(view.unwrap_or_else(|| paragraph("said", text::REFUSED.to_owned())))
    })
    .into_any()
}
