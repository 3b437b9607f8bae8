//! What is said of the roof beside its plan: what is wrong, loads and height, panels, measures, working.

use super::Bench;
use crate::live::{derived, part, words};
use crate::state::AppState;
use crate::text::roof as text;
use crate::text::working::SHOW;
use crate::widgets::{Row, paragraph, plain, sheet, together};
use crate::widgets::{disclosure, worked_list};
use leptos::prelude::*;
use noonday_engine::advice::{panels_offer, roof_report};
use noonday_engine::simulation::PanelYield;

/// What is wrong, in words.
pub(super) fn findings(bench: Bench) -> AnyView {
    let lines = derived(move || {
        let voice = bench.voice.get();
        bench.report.with(|report| {
            let found = report.findings.iter();
            found
                .map(|finding| text::finding(finding, &voice))
                .collect::<Vec<String>>()
        })
    });
    part(move || {
        let lines = lines.get();
        if lines.is_empty() {
            return Some(paragraph("said", text::NOTHING_WRONG.to_owned()));
        }
        let lines = lines
            .into_iter()
            .map(|line| view! { <li>{line}</li> }.into_any())
            .collect_view();
        Some(view! { <ul class="roof-findings">{lines}</ul> }.into_any())
    })
    .into_any()
}

/// What the panels offer in the state in which the inputs last rested.
fn offered(state: AppState) -> Memo<Option<PanelYield>> {
    derived(move || {
        state
            .settled
            .with(|settled| settled.as_ref().map(panels_offer))
    })
}

/// Everything else.
pub(super) fn rest(bench: Bench) -> AnyView {
    let state = bench.state;
    let offered = offered(state);
    let reckoned = words(move || {
        state
            .checked
            .with(|checked| text::reckoned(checked.scenario.document(), &bench.voice.get()))
    });
    view! {
        <p class="said">{reckoned}</p>
        <p class="caution">{text::LOAD_CAUTION}</p>
        <div class="roof-tables">
            {part(move || limits(bench))}
            {part(move || sun(bench, offered.get().as_ref()))}
            <p class="note">{text::SUN_NOTE}</p>
            {part(move || measures(bench, offered.get().as_ref()))}
            <p class="note">{text::MEASURES_NOTE}</p>
        </div>
        {disclosure("working finer", SHOW, working)}
    }
    .into_any()
}

fn limits(bench: Bench) -> Option<AnyView> {
    let voice = bench.voice.get();
    bench.report.with(|report| {
        let rows: Vec<Row> = text::limits(report, &voice)
            .into_iter()
            .map(|(name, cells)| (plain(name), cells.into()))
            .collect();
        together(vec![
            sheet(text::LIMITS, &text::LIMITS_HEADS, rows),
            paragraph("said", text::forces(report, &voice)),
        ])
    })
}

fn sun(bench: Bench, offered: Option<&PanelYield>) -> Option<AnyView> {
    let voice = bench.voice.get();
    let rows: Vec<Row> = bench.report.with(|report| {
        text::sun(report, offered, &voice)
            .into_iter()
            .map(|(name, cell)| (plain(name), vec![cell]))
            .collect()
    });
    Some(sheet(text::SUN, &text::SUN_HEADS, rows))
}

fn measures(bench: Bench, offered: Option<&PanelYield>) -> Option<AnyView> {
    let voice = bench.voice.get();
    let rows: Vec<Row> = bench.report.with(|report| {
        text::measures(report, offered, &voice)
            .into_iter()
            .map(|(kind, cells)| (plain(text::name(kind)), cells))
            .collect()
    });
    Some(sheet(text::MEASURES, &text::MEASURES_HEADS, rows))
}

fn working(state: AppState) -> AnyView {
    let offered = offered(state);
    part(move || {
        let voice = state.voice.get();
        let all = state.checked.with(|checked| {
            let document = checked.scenario.document();
            text::worked(
                &roof_report(document),
                document,
                offered.get().as_ref(),
                &voice,
            )
        });
        Some(view! { <dl>{worked_list(all)}</dl> }.into_any())
    })
    .into_any()
}
