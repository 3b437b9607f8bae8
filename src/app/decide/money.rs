//! Where money goes furthest: each change alone, and the best for every budget.

use super::front::front;
use super::{Decision, Parts};
use crate::inputs::Opened;
use crate::live::{at_event, click, flag};
use crate::text::{Voice, decide as text};
use crate::widgets::{Row, paragraph, plain, sheet, together};
use leptos::prelude::*;
use noonday_engine::advice::{Outcome, Package, Packages, Subject};
use noonday_engine::quantity::sort_few;

/// An input among the hours of work.
const WORK_INPUT: &str = "prices.measures.insulation_h_per_m2";

pub(super) fn view(decision: Decision, parts: &Parts) -> Option<AnyView> {
    let found = parts.packages.as_ref()?;
    let voice = decision.state.voice.get_untracked();
    let opened = expect_context::<Opened>();
    let to_prices = click(move || opened.show(WORK_INPUT));
    together(vec![
        front(decision, found, &voice),
        alone(decision, found, &voice),
        paragraph("note", text::MEASURES_NOTE.to_owned()),
        view! {
            <button type="button" on:click=to_prices>
                {text::TO_PRICES}
            </button>
        }
        .into_any(),
    ])
}

fn alone(decision: Decision, found: &Packages, voice: &Voice) -> AnyView {
    let Some(nothing) = &found.nothing else {
        return ().into_any();
    };
    let mut alone: Vec<&Package> = found.alone.iter().collect();
    let helps = |package: &Package| package.outcome.degree_hours_k_h;
    sort_few(&mut alone, |one, other| helps(one) > helps(other));
    let mut rows: Vec<Row> = Vec::new();
    for package in alone {
        let Some(measure) = package.measures.first() else {
            continue;
        };
        let name = text::measure_name(measure.kind, voice);
        let cells = effects(package, measure.labour_h, &nothing.outcome, voice);
        rows.push((tick(decision, measure.kind.subject(), name), cells));
    }
    for subject in decision.left_out.get_untracked() {
        let name = text::subject_name(subject).to_owned();
        rows.push((tick(decision, subject, name), vec![String::new(); 3]));
    }
    sheet(text::MEASURES, &text::MEASURES_HEADS, rows)
}

fn effects(package: &Package, labour_h: f64, before: &Outcome, voice: &Voice) -> Vec<String> {
    let after = &package.outcome;
    let cells = vec![
        text::cost_and_work(package.cost_change, labour_h, voice),
        text::too_warm_change(after.degree_hours_k_h - before.degree_hours_k_h, voice),
        text::lasts_change(before.lasts_h, after.lasts_h),
    ];
    // On a narrow screen numbers and their units may part.
    let breakable = |cell: String| cell.replace('\u{a0}', " ");
    cells.into_iter().map(breakable).collect()
}

/// A name with a box that says whether packages may hold it.
fn tick(decision: Decision, subject: Subject, name: String) -> AnyView {
    let left_out = decision.left_out;
    let toggled = at_event(move || {
        left_out.update(|left_out| {
            let before = left_out.len();
            left_out.retain(|other| *other != subject);
            if left_out.len() == before {
                left_out.push(subject);
            }
        });
        decision.choose();
    });
    view! {
        <label class="tick">
            <input
                type="checkbox"
                prop:checked=flag(move || left_out.with(|left_out| !left_out.contains(&subject)))
                on:change=toggled
            />
            <span>{plain(name)}</span>
        </label>
    }
    .into_any()
}
