//! How to build it in: what the scenario asks of cable, bank and roof. Each part is worked out once it is opened, and no longer
//! once it is closed, so that closed parts cost nothing while a slider is dragged.

use crate::text::building as text;
use leptos::prelude::*;

/// The section.
#[component]
pub fn Building() -> impl IntoView {
    view! {
        <section id="building" class="building" aria-labelledby="building-title">
            <h2 id="building-title">{text::BUILDING}</h2>
            <p class="note">{text::BUILDING_NOTE}</p>
        </section>
    }
}
