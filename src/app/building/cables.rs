//! Cable and fuse of every circuit: a line each, which opens to its length and its working.

use super::{Built, built};
use crate::format::unit;
use crate::inputs::{Opened, number_text, trouble_of};
use crate::live::{at_event, click, derived, flag, part, with_value, words};
use crate::state::AppState;
use crate::text::building as text;
use crate::widgets::{disclosed, worked_list};
use leptos::prelude::*;
use noonday_engine::advice::circuits::{Circuit, CircuitKind};
use noonday_engine::scenario::{Field, NumberField, field};

const KINDS: [CircuitKind; 6] = [
    CircuitKind::Bus,
    CircuitKind::Cooler,
    CircuitKind::Inverter,
    CircuitKind::DcDc,
    CircuitKind::Panels,
    CircuitKind::Controller,
];

const RUN_RESISTANCE: &str = "cooler.cable_resistance_ohm";

/// What is built now, and the way to the state.
type Follow = (AppState, Memo<Option<Built>>);

pub(super) fn view(state: AppState) -> AnyView {
    let built = built(state);
    let short = words(move || {
        built.with(|built| {
            let built = built.as_ref();
            built.map_or_else(String::new, |built| {
                text::short_circuit(&built.circuits, &built.voice)
            })
        })
    });
    let heads = text::CABLES_HEADS
        .map(|head| view! { <span>{head}</span> })
        .collect_view();
    let cautions = text::CABLE_CAUTIONS
        .map(|caution| view! { <p class="caution">{caution}</p> })
        .collect_view();
    view! {
        <p class="note">{text::CABLES_NOTE}</p>
        <div class="circuit-heads" aria-hidden="true">
            {heads}
        </div>
        <ul class="circuits">{KINDS.map(|kind| line((state, built), kind)).collect_view()}</ul>
        <p class="said">{short}</p>
        {cautions}
    }
    .into_any()
}

fn find(built: &Built, kind: CircuitKind) -> Option<&Circuit> {
    let mut all = built.circuits.circuits.iter();
    all.find(|circuit| circuit.kind == kind)
}

/// The line stays while its numbers change, so that what is typed in it keeps the keyboard.
fn line(follow: Follow, kind: CircuitKind) -> AnyView {
    let (_, built) = follow;
    let there = derived(move || {
        built.with(|built| {
            let built = built.as_ref();
            built.is_some_and(|built| find(built, kind).is_some())
        })
    });
    part(move || there.get().then(|| circuit_line(follow, kind))).into_any()
}

fn circuit_line(follow: Follow, kind: CircuitKind) -> AnyView {
    let (_, built) = follow;
    let cells = derived(move || {
        built.with(|built| {
            let built = built.as_ref()?;
            find(built, kind).map(|circuit| text::circuit_cells(circuit, &built.voice))
        })
    });
    let cell = move |index: usize| {
        words(move || {
            let cells = cells.get();
            cells.map_or_else(String::new, |cells| cells[index].clone())
        })
    };
    let summary = view! {
        <b>{text::circuit_name(kind)}</b>
        <span>{cell(0)}</span>
        <span class="cable">{cell(1)}</span>
        <span>{cell(2)}</span>
        <span>{cell(3)}</span>
    };
    let body = Box::new(move || opened_line(follow, kind));
    view! { <li>{disclosed("", summary.into_any(), body)}</li> }.into_any()
}

fn opened_line(follow: Follow, kind: CircuitKind) -> AnyView {
    let (state, built) = follow;
    let opened = expect_context::<Opened>();
    let feeds_cooler = matches!(kind, CircuitKind::Cooler | CircuitKind::Inverter);
    let working = part(move || {
        built.with(|built| {
            let built = built.as_ref()?;
            let circuit = find(built, kind)?;
            let lines =
                text::circuit_working(circuit, &built.circuits, &built.document, &built.voice);
            Some(worked_list(lines))
        })
    });
    view! {
        {field(kind.length_key())
            .and_then(|field| Some((field, field.number()?)))
            .map(|length| length_box(state, kind, length))}
        <button type="button" class="quiet" on:click=click(move || opened.show(kind.drop_key()))>
            {text::MORE_OF_WAY}
        </button>
        {feeds_cooler.then(|| in_the_run(follow))}
        <dl>{working}</dl>
    }
    .into_any()
}

/// The length where it is looked at; the same input stands among the others, with its range and its reason.
fn length_box(
    state: AppState,
    kind: CircuitKind,
    (field, number): (&'static Field, &'static NumberField),
) -> AnyView {
    let id = format!("way-{}", field.id);
    let unit_of = move || unit(number.dimension, state.units.get());
    let shown = number_text(field, number);
    let trouble = trouble_of(field);
    let why_id = format!("way-trouble-{}", field.id);
    view! {
        <p class="way">
            <label for=id.clone()>{text::length_label(kind)}</label>
            <span class="entry">
                <input
                    type="text"
                    id=id
                    inputmode="decimal"
                    autocomplete="off"
                    prop:value=words(move || shown.get())
                    aria-invalid=words(move || trouble.get().is_some().to_string())
                    aria-describedby=why_id.clone()
                    on:input=with_value(move |text| state.type_number(field, text))
                    on:change=at_event(move || state.finish_typing(field))
                    on:focusout=move |_| state.finish_typing(field)
                />
                <span class="unit">
                    {words(move || unit_of().symbol.to_owned())}
                </span>
            </span>
        </p>
        <p class="trouble" id=why_id>
            {words(move || trouble.get().unwrap_or_default())}
        </p>
    }
    .into_any()
}

/// The run's resistance against the cable's, and a button that makes them one.
fn in_the_run((state, built): Follow) -> AnyView {
    let found_ohm = derived(move || {
        built.with(|built| {
            let built = built.as_ref()?;
            let ohm = built
                .circuits
                .cable_resistance_ohm(text::series(built.voice.units))?;
            let range = field(RUN_RESISTANCE)?.number()?;
            (range.minimum..=range.maximum)
                .contains(&ohm)
                .then_some(ohm)
        })
    });
    let differs = derived(move || {
        let voice = state.voice.get();
        let in_run_ohm = state
            .document
            .with(|document| document.cooler.cable_resistance_ohm);
        let found_ohm = found_ohm.get();
        found_ohm.is_some_and(|ohm| !text::looks_same(in_run_ohm, ohm, &voice))
    });
    let said = words(move || {
        let in_run_ohm = state
            .document
            .with(|document| document.cooler.cable_resistance_ohm);
        match found_ohm.get() {
            Some(ohm) if differs.get() => text::run_resistance(in_run_ohm, ohm, &state.voice.get()),
            Some(_) => text::USED_IN_RUN.to_owned(),
            None => String::new(),
        }
    });
    let take = click(move || {
        if let (Some(ohm), Some(field)) = (found_ohm.get_untracked(), field(RUN_RESISTANCE)) {
            state.edit(field, |document| document.cooler.cable_resistance_ohm = ohm);
        }
    });
    view! {
        <p class="said">{said}</p>
        <button type="button" hidden=flag(move || !differs.get()) on:click=take>
            {text::USE_IN_RUN}
        </button>
    }
    .into_any()
}
