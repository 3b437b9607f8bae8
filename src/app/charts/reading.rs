//! What is read at the cursor, as a line of text under a chart.

use super::cursor::{hour_read, reading_index, sample_at};
use crate::live::{Part, part, words};
use crate::state::AppState;
use crate::text::Voice;
use crate::text::charts::Reading;
use crate::widgets::since_pinned;
use leptos::prelude::*;
use noonday_engine::advice::Advice;

/// What a chart says at a sample.
type Read = fn(&Advice, usize) -> Vec<Reading>;

/// The line; each value with its difference from the pinned state, if there is one.
#[component]
pub fn ReadingLine(
    /// What is read at a sample.
    read: Read,
) -> impl IntoView {
    let state = expect_context::<AppState>();
    let index = reading_index(state);
    let hour = words(move || hour_read(state, index.get()));
    let values: Part = part(move || {
        let (advice, voice) = (state.advice.get(), state.voice.get());
        let before = state
            .pinned
            .with(|pinned| pinned_readings(&advice, index.get(), &pinned.as_ref()?.advice, read));
        let before = before.unwrap_or_default();
        let values = read(&advice, index.get())
            .into_iter()
            .map(|(name, amount)| {
                view! {
                    <span class="read">
                        {name} " " <span class="value">{voice.amount(amount)}</span>
                        {since(&before, (name, amount), &voice)}
                    </span>
                }
            })
            .collect_view();
        Some(values.into_any())
    });
    view! {
        <p class="reading" data-reading="">
            <b>{hour}</b>
            {values}
        </p>
    }
}

/// What the pinned state says at the same time, if its run covers it.
fn pinned_readings(
    advice: &Advice,
    index: usize,
    pinned: &Advice,
    read: Read,
) -> Option<Vec<Reading>> {
    let time_h = advice.with_cooler.series.time_h.get(index)?;
    Some(read(
        pinned,
        sample_at(&pinned.with_cooler.series, *time_h)?,
    ))
}

fn since(before: &[Reading], (name, amount): Reading, voice: &Voice) -> Option<AnyView> {
    let (_, pinned) = before.iter().find(|(other, _)| *other == name)?;
    since_pinned(voice.difference(amount, *pinned))
}
