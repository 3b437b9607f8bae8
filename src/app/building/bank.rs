//! What the bank allows, and what trips first.

use super::{Built, built, shown};
use crate::inputs::Opened;
use crate::live::click;
use crate::state::AppState;
use crate::text::building as text;
use crate::widgets::{Row, paragraph, plain, sheet, together};
use leptos::prelude::*;
use noonday_engine::advice::bank_limits::bank_limits;

/// An input among those of the bank's make-up.
const PACKS_INPUT: &str = "installation.parallel_packs";

pub(super) fn view(state: AppState) -> AnyView {
    let opened = expect_context::<Opened>();
    let to_packs = click(move || opened.show(PACKS_INPUT));
    view! {
        {shown(built(state), table)}
        <button type="button" on:click=to_packs>
            {text::TO_PACKS}
        </button>
        <p class="note">{text::LIMITS_NOTE}</p>
        <p class="caution">{text::LIMITS_CAUTION}</p>
    }
    .into_any()
}

fn table(built: &Built) -> Option<AnyView> {
    let voice = &built.voice;
    let series = text::series(voice.units);
    let limits = bank_limits(&built.document, &built.circuits, series).ok()?;
    let rows: Vec<Row> = limits
        .limits
        .iter()
        .map(|limit| {
            let name = text::limit_name(limit.kind, limits.packs, voice);
            (plain(name), text::limit_cells(limit, voice))
        })
        .collect();
    let nearest = text::nearest(&limits, voice).unwrap_or_default();
    together(vec![
        paragraph("said", nearest),
        paragraph("said", text::everything(&limits, voice)),
        sheet(text::LIMITS_CAPTION, &text::LIMITS_HEADS, rows),
    ])
}
