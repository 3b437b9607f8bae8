//! A number: typed entry with its unit, and a slider.

use super::row::{field_id, tools, trouble_id, trouble_of};
use super::slider::Scale;
use crate::format::{UnitSystem, entry_text, unit};
use crate::live::{at_event, derived, flag, with_value, words};
use crate::state::AppState;
use crate::text::fields::{full_label, part_title, wording};
use leptos::prelude::*;
use noonday_engine::scenario::{Dimension, Field, NumberField, ScenarioDocument, example};

/// The row of a number.
pub fn number_row(field: &'static Field, number: &'static NumberField) -> AnyView {
    let state = expect_context::<AppState>();
    let is_hour = number.dimension == Dimension::HourOfDay;
    let symbol = move || {
        let currency = state
            .document
            .with(|document| document.prices.currency.clone());
        unit(number.dimension, state.units.get()).label(&currency)
    };
    let text = number_text(field, number);
    let trouble = trouble_of(field);
    view! {
        <div class="field number" class:troubled=flag(move || trouble.get().is_some())>
            <label for=field_id(field)>{wording(field).label}</label>
            <span class="entry">
                <input
                    type="text"
                    id=field_id(field)
                    inputmode=if is_hour { "text" } else { "decimal" }
                    autocomplete="off"
                    spellcheck="false"
                    class:hour=is_hour
                    prop:value=words(move || text.get())
                    aria-label=words(move || named_with_unit(field, &symbol()))
                    aria-invalid=words(move || trouble.get().is_some().to_string())
                    aria-describedby=trouble_id(field)
                    on:input=with_value(move |text| state.type_number(field, text))
                    on:change=at_event(move || state.finish_typing(field))
                    on:focusout=move |_| state.finish_typing(field)
                />
                <span class="unit" aria-hidden="true">{words(symbol)}</span>
            </span>
            {slider(field, number, state)}
            {tools(field)}
        </div>
    }
    .into_any()
}

/// What the box of a number shows: what was typed, while that waits, or else the number.
pub fn number_text(field: &'static Field, number: &'static NumberField) -> Memo<String> {
    let state = expect_context::<AppState>();
    derived(move || {
        let as_typed = state.typed.with(|texts| texts.get(field.key).cloned());
        as_typed.unwrap_or_else(|| {
            state
                .document
                .with(|document| written(number, document, state.units.get()))
        })
    })
}

fn slider(field: &'static Field, number: &'static NumberField, state: AppState) -> AnyView {
    let scale = derived(move || Scale::new(number, &example(), state.units.get()));
    let value = derived(move || state.document.with(number.read));
    let moved = with_value(move |position| {
        if let Ok(position) = position.parse::<u32>() {
            state.slide_number(
                field,
                scale.with_untracked(|scale| scale.value_si(position)),
            );
        }
    });
    view! {
        <input
            type="range"
            min="0"
            max=words(move || scale.with(|scale| scale.positions.to_string()))
            step="1"
            prop:value=words(move || scale.with(|scale| scale.position(value.get())).to_string())
            aria-label=full_label(field)
            aria-valuetext=words(move || spoken(number, value.get(), state))
            on:pointerdown=move |_| state.held.set(true)
            on:pointerup=move |_| state.held.set(false)
            on:pointercancel=move |_| state.held.set(false)
            on:change=at_event(move || state.held.set(false))
            on:focusout=move |_| state.held.set(false)
            on:input=moved
        />
    }
    .into_any()
}

/// The accessible name begins with the visible label and ends with the unit.
fn named_with_unit(field: &'static Field, symbol: &str) -> String {
    let label = wording(field).label;
    let name = match part_title(field.key) {
        Some(part) => format!("{label}, {part}"),
        None => label.to_owned(),
    };
    if symbol.is_empty() {
        return name;
    }
    format!("{name}, {symbol}")
}

fn spoken(number: &NumberField, value_si: f64, state: AppState) -> String {
    let currency = state
        .document
        .with(|document| document.prices.currency.clone());
    state
        .units
        .get()
        .quantity(number.dimension, value_si)
        .replace('¤', &currency)
        .replace('\u{a0}', " ")
}

/// A number as its box shows it.
fn written(number: &NumberField, document: &ScenarioDocument, units: UnitSystem) -> String {
    let value_si = (number.read)(document);
    if number.dimension == Dimension::HourOfDay {
        return units.clock(value_si).replace('\u{a0}', " ");
    }
    let unit = unit(number.dimension, units);
    entry_text(unit.shown(value_si), unit.decimals)
}
