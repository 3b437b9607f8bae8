//! Bank, electricity and cost, as tables; heat by path is among them.

use super::heat::Heat;
use crate::format::duration;
use crate::live::part;
use crate::state::AppState;
use crate::text::Voice;
use crate::text::ledger as words;
use crate::text::page;
use leptos::prelude::*;
use noonday_engine::advice::Advice;
use noonday_engine::scenario::Dimension;

/// A name and what stands beside it.
type Row = (String, String);

/// All the figures.
#[component]
pub fn Figures() -> impl IntoView {
    view! {
        <section id="figures" class="figures" aria-labelledby="figures-title">
            <h2 id="figures-title">{page::LEDGER}</h2>
            <div class="ledger">
                <Plain title=words::BANK rows=bank_rows note=words::PLAIN_NOTE />
                <Plain title=words::ENERGY rows=energy_rows note="" />
                <Plate />
                <Heat />
                <Cost />
            </div>
            <Extrapolated />
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
    let body = part(move || Some(table_rows(rows(&state.advice.get(), &state.voice.get()))));
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
        let advice = state.advice.get();
        let voice = state.voice.get();
        let plate = advice.plate?;
        let rows = vec![
            (
                "Cooling over power".to_owned(),
                voice.units.number(plate.cop_implied, 2),
            ),
            (
                "Plausible up to".to_owned(),
                voice.units.number(plate.cop_plausible_greatest, 2),
            ),
            (
                "Capacity its power can carry".to_owned(),
                voice
                    .units
                    .quantity(Dimension::HeatFlow, plate.cooling_capacity_derated_w),
            ),
        ];
        let view = view! {
            <div class="account">
                <table>
                    <caption>{words::PLATE}</caption>
                    <tbody>{table_rows(rows)}</tbody>
                </table>
                <p class="note">{words::plate_verdict(plate.verdict)}</p>
            </div>
        };
        Some(view.into_any())
    })
}

#[component]
fn Cost() -> impl IntoView {
    let state = expect_context::<AppState>();
    let body = part(move || {
        let advice = state.advice.get();
        let voice = state.voice.get();
        let money = |amount| voice.units.money(amount, &voice.currency);
        let rows = words::cost_rows(&advice.cost)
            .into_iter()
            .filter(|(_, amount)| *amount != 0.0)
            .map(|(name, amount)| (name.to_owned(), money(amount)))
            .collect();
        let total = money(advice.cost.total);
        let rows = view! {
            {table_rows(rows)}
            <tr class="total">
                <th scope="row">{words::TOTAL}</th>
                <td>{total}</td>
            </tr>
        };
        Some(rows.into_any())
    });
    view! {
        <div class="account">
            <table>
                <caption>{words::COST}</caption>
                <tbody>{body}</tbody>
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

fn table_rows(rows: Vec<Row>) -> AnyView {
    rows.into_iter()
        .map(|(name, value)| {
            view! {
                <tr>
                    <th scope="row">{name}</th>
                    <td>{value}</td>
                </tr>
            }
        })
        .collect_view()
        .into_any()
}

fn bank_rows(advice: &Advice, voice: &Voice) -> Vec<Row> {
    let bank = &advice.verdict.bank;
    let run = &advice.with_cooler;
    let amperes = |current_a| voice.units.quantity(Dimension::Current, current_a);
    let mut rows = vec![
        (
            format!("Lowest charge, at {}", voice.instant(bank.lowest_at_h)),
            voice.units.percent(bank.lowest_state_of_charge),
        ),
        (
            "Charge at the end".to_owned(),
            voice.units.percent(bank.end_state_of_charge),
        ),
        (
            "Such days in a row until it is used up".to_owned(),
            match bank.lasts_h {
                Some(hours) => duration(hours),
                None => format!("more than {}\u{a0}days", bank.days_looked),
            },
        ),
    ];
    if let Some(hours) = bank.plain_division_h {
        rows.push((
            format!(
                "Plain division: usable ampere-hours by {}",
                amperes(bank.cooler_running_a.round())
            ),
            duration(hours),
        ));
    }
    rows.push((
        "Greatest current out of it".to_owned(),
        amperes(run.peak_discharge_a.round()),
    ));
    if let Some((time_h, stop)) = run.first_stop {
        rows.push((
            format!("Cooler first stopped, as {}", words::stop_name(stop)),
            voice.instant(time_h),
        ));
    }
    rows
}

fn energy_rows(advice: &Advice, voice: &Voice) -> Vec<Row> {
    let totals = &advice.with_cooler.totals;
    let named = [
        ("Cooler draws", totals.cooler_wh),
        ("Other loads draw", totals.loads_wh),
        ("Panels give", totals.panels_wh),
        ("Driving gives", totals.driving_wh),
        ("Shore gives", totals.shore_wh),
        ("Lost in the bank", totals.bank_loss_wh),
    ];
    let mut rows: Vec<Row> = named
        .into_iter()
        .filter(|(_, energy_wh)| *energy_wh != 0.0)
        .map(|(name, energy_wh)| (name.to_owned(), voice.units.energy(energy_wh)))
        .collect();
    rows.push((
        format!("Compressor runs (starts: {})", totals.compressor_starts),
        duration(totals.compressor_h),
    ));
    rows.push((
        "Water drained from the cooler".to_owned(),
        voice.units.quantity(Dimension::Mass, totals.condensate_kg),
    ));
    rows
}
