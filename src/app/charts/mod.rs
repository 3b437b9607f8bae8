//! The day on one time axis: temperatures, the strip of sky, sun and heat, charge and power, and one instant read on all of them.

mod bank;
mod cursor;
mod easel;
mod fine;
mod frame;
mod heat;
mod pen;
mod reading;
mod skin;
mod strip;
mod table;
mod temperatures;

pub use cursor::reading_index;
pub use easel::Easel;
pub use frame::spread;
pub use reading::ReadingLine;
pub use strip::Strip;
pub use table::SampleTable;

use crate::live::words;
use crate::state::AppState;
use crate::text::charts as text;
use crate::text::heat as heat_text;
use cursor::{CursorLine, follow};
use leptos::prelude::*;
use noonday_engine::advice::Advice;
use noonday_engine::advice::sampling::Sampled;

/// What charts show: the runs of the state, those of a pinned one, and how far such days may differ.
type Shown<'a> = (&'a Advice, Option<&'a Advice>, Option<&'a Sampled>);

/// The chart of temperatures.
#[component]
pub fn TemperatureChart() -> impl IntoView {
    let state = expect_context::<AppState>();
    let easel = expect_context::<Easel>();
    let described =
        words(move || text::temperatures_described(&state.advice.get(), &state.voice.get()));
    view! {
        <figure
            class="chart temperatures"
            on:pointermove=move |event| follow(state, easel, &event)
            on:pointerdown=move |event| follow(state, easel, &event)
        >
            <figcaption class="visually-hidden">{text::TEMPERATURES} ". " {described}</figcaption>
            <canvas node_ref=easel.temperatures aria-hidden="true"></canvas>
            <CursorLine />
        </figure>
    }
}

/// The chart of the sun and the heat.
#[component]
pub fn HeatChart() -> impl IntoView {
    let state = expect_context::<AppState>();
    let easel = expect_context::<Easel>();
    let described =
        words(move || heat_text::heat_described(&state.advice.get(), &state.voice.get()));
    let key = words(move || heat_text::key(&state.voice.get()));
    view! {
        <figure
            class="chart heat-day"
            on:pointermove=move |event| follow(state, easel, &event)
            on:pointerdown=move |event| follow(state, easel, &event)
        >
            <figcaption>
                <b>{heat_text::HEADING}</b>
                " "
                {key}
                <span class="visually-hidden">" " {described}</span>
            </figcaption>
            <div class="plot">
                <canvas node_ref=easel.heat aria-hidden="true"></canvas>
                <CursorLine />
            </div>
        </figure>
    }
}

/// The chart of charge and power.
#[component]
pub fn BankChart() -> impl IntoView {
    let state = expect_context::<AppState>();
    let easel = expect_context::<Easel>();
    let described = words(move || text::bank_described(&state.advice.get(), &state.voice.get()));
    view! {
        <figure
            class="chart bank"
            on:pointermove=move |event| follow(state, easel, &event)
            on:pointerdown=move |event| follow(state, easel, &event)
        >
            <figcaption class="visually-hidden">{text::BANK} ". " {described}</figcaption>
            <canvas node_ref=easel.bank aria-hidden="true"></canvas>
            <CursorLine />
        </figure>
    }
}
