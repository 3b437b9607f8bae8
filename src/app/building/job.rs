//! Parts with their prices, and the order of work.

use super::{Built, built, shown};
use crate::inputs::Opened;
use crate::live::{click, words};
use crate::save::save_text;
use crate::share_link;
use crate::state::AppState;
use crate::text::building as text;
use crate::widgets::{Row, paragraph, plain, sheet, together};
use leptos::prelude::*;
use noonday_engine::advice::job::{Job, WorkStep, job};

/// An input among the prices.
const PRICE_INPUT: &str = "prices.build.markup_share";

pub(super) fn view(state: AppState) -> AnyView {
    let opened = expect_context::<Opened>();
    let told = RwSignal::new("");
    let built = built(state);
    let csv = move || {
        built
            .with_untracked(|built| {
                let built = built.as_ref()?;
                Some(text::parts_csv(&job_of(built), &built.voice))
            })
            .unwrap_or_default()
    };
    let save = click(move || save_text(text::CSV_NAME, "text/csv;charset=utf-8", &csv()));
    let copy = click(move || {
        leptos::task::spawn_local(async move {
            let copied = share_link::copy(&csv()).await;
            told.set(if copied {
                text::PARTS_COPIED
            } else {
                text::PARTS_NOT_COPIED
            });
        });
    });
    view! {
        {shown(built, parts)}
        <div class="building-actions">
            <button type="button" on:click=save>
                {text::SAVE_CSV}
            </button>
            <button type="button" on:click=copy>
                {text::COPY_PARTS}
            </button>
            <button type="button" on:click=click(move || opened.show(PRICE_INPUT))>
                {text::TO_PRICES}
            </button>
        </div>
        <p class="note" role="status">
            {words(move || told.get().to_owned())}
        </p>
        <p class="note">{text::PARTS_NOTE}</p>
        <h3>{text::ORDER}</h3>
        {shown(built, order)}
        <p class="note">{text::ORDER_NOTE}</p>
    }
    .into_any()
}

fn job_of(built: &Built) -> Job {
    let series = text::series(built.voice.units);
    job(&built.document, &built.circuits, series)
}

fn parts(built: &Built) -> Option<AnyView> {
    let job = job_of(built);
    let rows: Vec<Row> = text::part_rows(&job, &built.voice)
        .into_iter()
        .map(|(name, cells)| (plain(name), cells))
        .collect();
    let table = sheet(text::PARTS_CAPTION, &text::PARTS_HEADS, rows);
    let unpriced = text::unpriced(&job).map(|said| paragraph("said", said));
    together(std::iter::once(table).chain(unpriced).collect())
}

fn order(built: &Built) -> Option<AnyView> {
    let steps = job_of(built)
        .steps
        .into_iter()
        .map(step)
        .collect_view()
        .into_any();
    Some(view! { <ol class="work-order">{steps}</ol> }.into_any())
}

fn step(step: WorkStep) -> AnyView {
    let hold = step
        .is_hold()
        .then(|| view! { <b>{text::HOLD} " "</b> }.into_any());
    view! { <li>{hold} {text::work_step(step)}</li> }.into_any()
}
