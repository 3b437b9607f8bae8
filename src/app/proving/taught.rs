//! What a fit found: values, curves, what was wrong and what mends it.

use super::chart;
use super::lesson::Teaching;
use crate::live::{click, derived, part};
use crate::text::{Voice, proving as text};
use crate::widgets::disclosure;
use crate::widgets::{Row, paragraph, plain, sheet, together};
use leptos::prelude::*;
use noonday_engine::advice::learning::Learned;

/// Most measures named.
const MENDS: usize = 3;

/// Rows of the table of curves at most.
const CURVE_ROWS: usize = 49;

pub(super) fn view(teaching: Teaching, learned: &Learned, voice: &Voice) -> Option<AnyView> {
    let values: Vec<Row> = learned
        .estimates
        .iter()
        .map(|estimate| text::value_row(estimate, voice))
        .map(|(name, cells)| (plain(name), cells))
        .collect();
    let mut views = vec![
        paragraph("said", text::wrong_sentence(learned, voice)),
        sheet(text::VALUE_HEADS[0], &text::VALUE_HEADS, values),
    ];
    views.extend(text::confounded_sentence(learned).map(|told| paragraph("said", told)));
    views.push(paragraph("", text::fit_sentence(learned, voice)));
    views.push(chart::figure(learned, voice));
    views.push(disclosure("curve-table finer", text::CURVE_TABLE, |_| {
        curve_table()
    }));
    views.push(paragraph("note", text::FIT_NOTE.to_owned()));
    if learned.follows() {
        views.push(adopt(teaching));
        views.push(mends(learned, voice));
    }
    together(views)
}

fn curve_table() -> AnyView {
    let teaching = expect_context::<Teaching>();
    let voice = teaching.state.voice.get_untracked();
    let Some(found) = teaching.learned.get_untracked() else {
        return ().into_any();
    };
    let learned = &found.1;
    let every = learned.time_h.len().div_ceil(CURVE_ROWS).max(1);
    let rows: Vec<Row> = (0..learned.time_h.len())
        .step_by(every)
        .map(|index| {
            let shown = |values: &[f64]| {
                let value = values.get(index).copied().unwrap_or_default();
                voice.units.temperature(value, 1)
            };
            let cells = vec![
                shown(&learned.logged_c),
                shown(&learned.entered_c),
                shown(&learned.fitted_c),
            ];
            let time = voice.units.clock(learned.time_h[index].rem_euclid(24.0));
            (plain(time), cells)
        })
        .collect();
    sheet(text::CURVE_TABLE, &text::CURVE_HEADS, rows)
}

fn adopt(teaching: Teaching) -> AnyView {
    let stale = derived(move || {
        let of = teaching.learned.get();
        let same = of.is_some_and(|of| {
            teaching
                .state
                .checked
                .with(|checked| checked.scenario == of.0)
        });
        let adopted = teaching.adopted.get();
        let just_adopted = adopted.is_some_and(|adopted| {
            teaching
                .state
                .document
                .with(|document| *document == adopted)
        });
        !same && !just_adopted
    });
    view! {
        <button type="button" class="adopt" on:click=click(move || teaching.adopt())>
            {text::ADOPT}
        </button>
        {part(move || stale.get().then(|| paragraph("note", text::STALE.to_owned())))}
    }
    .into_any()
}

fn mends(learned: &Learned, voice: &Voice) -> AnyView {
    let helps = learned
        .levers
        .iter()
        .filter(|effect| effect.degree_hours_change_k_h < 0.0)
        .take(MENDS)
        .map(|effect| view! { <li>{text::mend(effect, voice)}</li> }.into_any())
        .collect_view();
    view! {
        <h3>{text::MENDS}</h3>
        <p>{text::need_sentence(learned, voice)}</p>
        <ul class="causes">{helps}</ul>
    }
    .into_any()
}
