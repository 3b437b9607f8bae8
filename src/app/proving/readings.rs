//! The check of the finished unit.

use crate::live::{derived, part};
use crate::state::AppState;
use crate::text::{Voice, proving as text};
use crate::widgets::{Row, paragraph, plain, sheet, together};
use leptos::prelude::*;
use noonday_engine::advice::acceptance::{Acceptance, acceptance};

/// The check, for as long as it is looked at.
pub(super) fn check() -> AnyView {
    let state = expect_context::<AppState>();
    let found = derived(move || {
        state.checked.with(|checked| {
            let installed = checked.scenario.document().cooler.installed;
            (installed, acceptance(&checked.scenario).ok().flatten())
        })
    });
    let view = part(move || {
        let voice = state.voice.get();
        found.with(|(installed, found)| match found {
            Some(found) => shown(found, &voice),
            None if *installed => Some(paragraph("note", text::NO_READINGS.to_owned())),
            None => Some(paragraph("note", text::NO_COOLER.to_owned())),
        })
    });
    view! { <div aria-live="polite">{view}</div> }.into_any()
}

fn shown(found: &Acceptance, voice: &Voice) -> Option<AnyView> {
    let signs = found.signs.iter().map(|sign| text::sign_row(sign, voice));
    let rows: Vec<Row> = signs
        .chain(text::made_rows(found, voice))
        .map(|(name, cells)| (plain(name), cells))
        .collect();
    let mut views = vec![
        paragraph("said", text::verdict(found, voice)),
        sheet(text::SIGN_HEADS[0], &text::SIGN_HEADS, rows),
        paragraph("note", text::assumptions(found)),
    ];
    if !found.causes.is_empty() {
        views.push(causes(found, voice));
    }
    if !found.explained {
        views.push(paragraph("said", text::UNEXPLAINED.to_owned()));
    }
    together(views)
}

fn causes(found: &Acceptance, voice: &Voice) -> AnyView {
    let items = found
        .causes
        .iter()
        .map(|likely| {
            let share = voice.units.percent(likely.share);
            view! {
                <li>
                    <b>{text::cause_name(likely.cause)}</b>
                    {format!(", {share}. {}", text::cause_check(likely.cause))}
                </li>
            }
            .into_any()
        })
        .collect_view();
    view! {
        <h3>{text::CAUSES}</h3>
        <ol class="causes">{items}</ol>
        <p class="note">{text::CAUSES_NOTE}</p>
    }
    .into_any()
}
