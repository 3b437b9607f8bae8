//! How sure it is, how fast it gets hot when something fails, and why plain division says something else.

use super::{Decision, Parts};
use crate::text::{Voice, decide as text};
use crate::widgets::{Row, paragraph, plain, sheet, together};
use leptos::prelude::*;
use noonday_engine::advice::failure::WindowFailure;
use noonday_engine::advice::sampling::Sampled;

pub(super) fn sure(decision: Decision, parts: &Parts) -> Option<AnyView> {
    let found = parts.sampled.as_ref()?;
    let voice = decision.state.voice.get_untracked();
    let mut views = vec![paragraph("said", text::sure(found, &voice))];
    if !found.windows.is_empty() {
        views.push(chances(decision, found, &voice));
    }
    views.extend(text::measure_first(found).map(|told| paragraph("said", told)));
    views.push(influences(found, &voice));
    views.push(paragraph("note", text::SURE_NOTE.to_owned()));
    together(views)
}

fn chances(decision: Decision, found: &Sampled, voice: &Voice) -> AnyView {
    let rows: Vec<Row> = found
        .windows
        .iter()
        .map(|window| {
            let cells = vec![
                voice.units.percent(window.met),
                voice.units.percent(window.met_without_cooler),
            ];
            let when = voice.instant(window.from_h);
            let name = format!("{} ({when})", window_name(decision, window.slot, voice));
            (plain(name), cells)
        })
        .collect();
    let [chance, with, without] = text::CHANCE_HEADS;
    sheet(chance, &[chance, with, without], rows)
}

fn influences(found: &Sampled, voice: &Voice) -> AnyView {
    let rows = found
        .influences
        .iter()
        .map(|influence| {
            let cells = vec![
                voice.units.percent(influence.of_excess),
                voice.units.percent(influence.of_lowest_charge),
            ];
            (plain(text::uncertain_name(influence.input)), cells)
        })
        .collect();
    sheet(text::INFLUENCE_HEADS[0], &text::INFLUENCE_HEADS, rows)
}

pub(super) fn failures(decision: Decision, parts: &Parts) -> Option<AnyView> {
    let found = parts.failures.as_ref()?;
    let voice = decision.state.voice.get_untracked();
    let mut views = vec![paragraph("caution", text::FAILS_CAUTION.to_owned())];
    for window in found.chunk_by(|one, other| one.slot == other.slot) {
        views.push(one_window(decision, window, &voice));
    }
    if !found.is_empty() {
        views.push(paragraph("note", text::FAILS_NOTE.to_owned()));
    }
    together(views)
}

fn one_window(decision: Decision, parts: &[WindowFailure], voice: &Voice) -> AnyView {
    let Some(first) = parts.first() else {
        return ().into_any();
    };
    let name = window_name(decision, first.slot, voice);
    let mut heads = vec![name.as_str()];
    heads.extend(parts.iter().map(|failure| text::part_name(failure.part)));
    let rows = first
        .marks
        .iter()
        .enumerate()
        .map(|(index, reached)| {
            let cells = parts
                .iter()
                .filter_map(|failure| failure.marks.get(index))
                .map(|reached| text::minutes(reached.minutes))
                .collect();
            (plain(text::mark_name(reached.mark, voice)), cells)
        })
        .collect();
    sheet(&name, &heads, rows)
}

fn window_name(decision: Decision, slot: usize, voice: &Voice) -> String {
    decision.of.with_untracked(|of| {
        of.as_ref().map_or_else(String::new, |of| {
            text::window_name(of.document(), slot, voice)
        })
    })
}

pub(super) fn plain_division(decision: Decision, parts: &Parts) -> Option<AnyView> {
    let voice = decision.state.voice.get_untracked();
    let Some(found) = parts.plain.as_ref()? else {
        return Some(paragraph("said", text::PLAIN_NONE.to_owned()));
    };
    let mut rows: Vec<Row> = vec![(
        plain(text::division(found, &voice)),
        vec![crate::format::duration(found.plain_h)],
    )];
    for (reason, hours) in found.items_h {
        rows.push((plain(text::reason_name(reason)), vec![text::item(hours)]));
    }
    let run = view! { <b>{text::PLAIN_RUN}</b> }.into_any();
    rows.push((run, vec![text::run_lasts(found)]));
    together(vec![
        sheet(text::PLAIN, &text::PLAIN_HEADS, rows),
        paragraph("note", text::PLAIN_NOTE.to_owned()),
    ])
}
