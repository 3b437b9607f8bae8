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
mod take;
mod temperatures;
pub mod vector;

pub use cursor::{hour_read, reading_index};
pub use easel::Easel;
pub use frame::{Frame, spread, ticks, widened};
pub use reading::ReadingLine;
pub use strip::Strip;
pub use table::SampleTable;
pub use take::TakeAlong;
#[cfg(test)]
pub use {
    cursor::reading_at_rest,
    skin::Skin,
    strip::{hours_shown, sky},
    temperatures::draw_alone as draw_temperatures,
};

use crate::live::words;
use crate::state::AppState;
use crate::text::Voice;
use crate::text::charts as text;
use crate::text::heat as heat_text;
use cursor::{CursorLine, follow};
use easel::{BANK, HEAT, TEMPERATURES};
use leptos::ev::PointerEvent;
use leptos::html;
use leptos::prelude::*;
use noonday_engine::advice::Advice;
use noonday_engine::advice::sampling::Sampled;

/// What is said of a run for those who do not see its chart.
type Describe = fn(&Advice, &Voice) -> String;

/// What charts show: the runs of the state, those of a pinned one, and how far such days may differ.
type Shown<'a> = (&'a Advice, Option<&'a Advice>, Option<&'a Sampled>);

/// The chart of temperatures.
#[component]
pub fn TemperatureChart() -> impl IntoView {
    let easel = expect_context::<Easel>();
    let caption = unseen(text::TEMPERATURES, text::temperatures_described);
    chart("chart temperatures", easel.canvases[TEMPERATURES], caption)
}

/// The chart of the sun and the heat, with its key above it.
#[component]
pub fn HeatChart() -> impl IntoView {
    let state = expect_context::<AppState>();
    let easel = expect_context::<Easel>();
    let key = words(move || heat_text::key(&state.voice.get()));
    let caption = view! {
        {unseen(heat_text::HEADING, heat_text::heat_described)}
        <p class="key">
            <b>{heat_text::HEADING}</b>
            " "
            {key}
        </p>
    };
    chart("chart heat-day", easel.canvases[HEAT], caption.into_any())
}

/// The chart of charge and power.
#[component]
pub fn BankChart() -> impl IntoView {
    let easel = expect_context::<Easel>();
    let caption = unseen(text::BANK, text::bank_described);
    chart("chart bank", easel.canvases[BANK], caption)
}

/// A caption for those who do not see the chart.
fn unseen(heading: &'static str, describe: Describe) -> AnyView {
    let state = expect_context::<AppState>();
    let described = words(move || describe(&state.advice.get(), &state.voice.get()));
    view! { <figcaption class="visually-hidden">{heading} ". " {described}</figcaption> }.into_any()
}

/// A chart with the cursor over it, which follows a pointer.
fn chart(class: &'static str, canvas: NodeRef<html::Canvas>, caption: AnyView) -> AnyView {
    let state = expect_context::<AppState>();
    let easel = expect_context::<Easel>();
    let followed = move || -> Box<dyn FnMut(PointerEvent)> {
        Box::new(move |event| follow(state, easel, &event))
    };
    view! {
        <figure class=class on:pointermove=followed() on:pointerdown=followed()>
            {caption}
            <div class="plot">
                <canvas node_ref=canvas aria-hidden="true"></canvas>
                <CursorLine />
            </div>
        </figure>
    }
    .into_any()
}
