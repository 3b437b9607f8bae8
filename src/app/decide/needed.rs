//! Is cooling needed at all: hours kept with the cooler and without, beside each other.

use super::{Decision, Parts};
use crate::text::{Voice, decide as text};
use crate::widgets::{paragraph, plain, sheet, together};
use leptos::prelude::*;
use noonday_engine::advice::Outcome;

pub(super) fn view(decision: Decision, parts: &Parts) -> Option<AnyView> {
    let found = parts.alternatives.as_ref()?;
    let voice = decision.state.voice.get_untracked();
    let mut rows = Vec::new();
    if let Some(with) = &found.with_cooler {
        rows.push((plain(text::WITH_COOLER), cells(with, &voice)));
    }
    for (alternative, outcome) in &found.without_cooler {
        let name = plain(text::alternative_name(*alternative));
        rows.push((name, cells(outcome, &voice)));
    }
    let mut views = vec![
        paragraph("said", text::needed(found)),
        sheet(text::NEEDED, &text::NEEDED_HEADS, rows),
    ];
    if let Some(effect) = &found.purge {
        views.push(paragraph("note", text::purge(effect, &voice)));
    }
    together(views)
}

fn cells(outcome: &Outcome, voice: &Voice) -> Vec<String> {
    vec![text::kept(outcome), text::margin(outcome, voice)]
}
