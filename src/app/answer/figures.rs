//! Bank, electricity and cost, as tables; heat by path is among them.

use super::heat::Heat;
use super::working::ShownWorking;
use crate::live::part;
use crate::state::AppState;
use crate::text::Voice;
use crate::text::ledger::{self as words, Row};
use crate::text::page;
use crate::widgets::since_pinned;
use leptos::prelude::*;
use noonday_engine::advice::Advice;

/// All the figures.
#[component]
pub fn Figures() -> impl IntoView {
    view! {
        <section id="figures" class="figures" aria-labelledby="figures-title">
            <h2 id="figures-title">{page::LEDGER}</h2>
            <div class="ledger">
                <Plain title=words::BANK rows=words::bank_rows note=words::PLAIN_NOTE />
                <Plain title=words::ENERGY rows=words::energy_rows note="" />
                <Plate />
                <Heat />
                <Cost />
            </div>
            <Extrapolated />
            <ShownWorking />
        </section>
    }
}

#[component]
fn Plain(
    title: &'static str,
    rows: fn(&Advice, &Voice) -> Vec<Row>,
    note: &'static str,
) -> impl IntoView {
    let state = expect_context::<AppState>();
    let body = part(move || compared(state, rows));
    view! {
        <div class="account">
            <table>
                <caption>{title}</caption>
                <tbody>{body}</tbody>
            </table>
            {(!note.is_empty()).then(|| view! { <p class="note">{note}</p> })}
        </div>
    }
}

/// What the data plate implies; nothing without a cooler.
#[component]
fn Plate() -> impl IntoView {
    let state = expect_context::<AppState>();
    part(move || {
        let verdict = state.advice.get().plate?.verdict;
        let rows = compared(state, words::plate_rows)?;
        let view = view! {
            <div class="account">
                <table>
                    <caption>{words::PLATE}</caption>
                    <tbody>{rows}</tbody>
                </table>
                <p class="note">{words::plate_verdict(verdict)}</p>
            </div>
        };
        Some(view.into_any())
    })
}

#[component]
fn Cost() -> impl IntoView {
    let state = expect_context::<AppState>();
    let body = part(move || compared(state, words::cost_rows));
    view! {
        <div class="account">
            <table>
                <caption>{words::COST}</caption>
                <tbody class="sum">{body}</tbody>
            </table>
            <p class="note">{words::COST_NOTE}</p>
        </div>
    }
}

#[component]
fn Extrapolated() -> impl IntoView {
    let state = expect_context::<AppState>();
    part(move || {
        let extrapolated = state.advice.get().with_cooler.curves_extrapolated;
        extrapolated.then(|| view! { <p class="note">{words::EXTRAPOLATED}</p> }.into_any())
    })
}

/// Rows, each with its difference from the same row of the pinned state.
fn table_rows(rows: Vec<Row>, before: &[Row], voice: &Voice) -> AnyView {
    rows.into_iter()
        .map(|row| {
            let since = before
                .iter()
                .find(|other| other.name == row.name)
                .and_then(|other| voice.difference(row.amount?, other.amount?));
            view! {
                <tr>
                    <th scope="row">{row.title()}</th>
                    <td>
                        {row.text(voice)}
                        {since_pinned(since)}
                    </td>
                </tr>
            }
        })
        .collect_view()
        .into_any()
}

/// Rows of the state shown beside those of the pinned one.
fn compared(state: AppState, rows: fn(&Advice, &Voice) -> Vec<Row>) -> Option<AnyView> {
    let voice = state.voice.get();
    let before = state
        .pinned
        .with(|pinned| pinned.as_ref().map(|pinned| rows(&pinned.advice, &voice)));
    let rows = rows(&state.advice.get(), &voice);
    (!rows.is_empty()).then(|| table_rows(rows, &before.unwrap_or_default(), &voice))
}
