//! The vehicle in two cuts to scale, with the heat through each part at the instant that is read.

mod bands;
mod paint;
mod scene;
mod sheet;

pub use paint::drawing;
pub use sheet::Stand;

use crate::charts::{hour_read, reading_index};
use crate::live::words;
use crate::state::AppState;
use crate::text::drawing as text;
use leptos::prelude::*;

/// The drawing with its words.
#[component]
pub fn CabinDrawing() -> impl IntoView {
    let state = expect_context::<AppState>();
    let index = reading_index(state);
    let hour = words(move || hour_read(state, index.get()));
    let caption =
        words(move || text::caption(&state.advice.get(), index.get(), &state.voice.get()));
    let described =
        words(move || text::described(&state.advice.get(), index.get(), &state.voice.get()));
    let picture = words(move || {
        let advice = state.advice.get();
        let voice = state.voice.get();
        state
            .checked
            .with(|checked| drawing(&advice, checked.scenario.document(), index.get(), &voice))
    });
    view! {
        <figure class="drawing">
            <figcaption>
                <h2>{text::HEADING}</h2>
                <p class="reading">
                    <b>{hour}</b>
                    " · "
                    {caption}
                </p>
            </figcaption>
            <div class="cuts" role="img" aria-label=described inner_html=picture></div>
            <p class="note">{words(move || text::key(&state.voice.get()))}</p>
        </figure>
    }
}
