//! What every input has around its control: reason and source, a way back to the example's value, and what is wrong.

use crate::format::{UnitSystem, date};
use crate::live::{click, derived, part, words};
use crate::state::AppState;
use crate::text::basis::{basis, range_sentence};
use crate::text::errors::range;
use crate::text::fields::{bounds, full_label, wording};
use crate::text::options::option_name;
use crate::text::page;
use leptos::prelude::*;
use noonday_engine::scenario::{Field, Kind, ScenarioDocument, example};

/// Begins the id of every field's control.
pub const FIELD_ID: &str = "field-";

/// Id of a field's control.
pub fn field_id(field: &Field) -> String {
    format!("{FIELD_ID}{}", field.id)
}

/// Id of the text that says what is wrong with it.
pub fn trouble_id(field: &Field) -> String {
    format!("trouble-{}", field.id)
}

/// What is wrong with a field now.
pub fn trouble_of(field: &'static Field) -> Memo<Option<String>> {
    let state = expect_context::<AppState>();
    derived(move || {
        state.troubles.with(|troubles| {
            troubles
                .iter()
                .find(|trouble| trouble.key == field.key)
                .map(|trouble| trouble.why.clone())
        })
    })
}

/// Button that shows the reason, button that puts back the example's value, and the texts under the control.
pub fn tools(field: &'static Field) -> AnyView {
    let state = expect_context::<AppState>();
    let shown = RwSignal::new(false);
    let changed = derived(move || {
        state
            .document
            .with(|document| !field.same_in(document, &example()))
    });
    let trouble = trouble_of(field);
    let why_id = format!("why-{}", field.id);
    let controls = why_id.clone();
    view! {
        <div class="tools">
            <button
                type="button"
                class="quiet"
                aria-expanded=words(move || shown.get().to_string())
                aria-controls=controls.clone()
                aria-label=format!("{} {}", full_label(field), page::WHY)
                on:click=click(move || shown.update(|shown| *shown = !*shown))
            >
                {page::WHY}
            </button>
            {part(move || changed.get().then(|| reset_button(field, state)))}
        </div>
        <p class="trouble" id=trouble_id(field)>
            {words(move || trouble.get().unwrap_or_default())}
        </p>
        <div class="why" id=why_id>
            {part(move || shown.get().then(|| reason(field, state)))}
        </div>
    }
    .into_any()
}

fn reset_button(field: &'static Field, state: AppState) -> AnyView {
    let value = move || shown_value(field, &example(), state.units.get());
    view! {
        <button
            type="button"
            class="quiet"
            aria-label=words(move || page::reset_label(&full_label(field), &value()))
            on:click=click(move || state.reset(field))
        >
            {words(move || page::reset_text(&value()))}
        </button>
    }
    .into_any()
}

fn reason(field: &'static Field, state: AppState) -> AnyView {
    let allowed = words(move || {
        let currency = state
            .document
            .with(|document| document.prices.currency.clone());
        field.number().map_or_else(String::new, |number| {
            let range = range(number, state.units.get(), &currency);
            range_sentence(&range, bounds(field))
        })
    });
    view! {
        <p>{wording(field).why}</p>
        <p>{allowed} " " {basis(field.basis)}</p>
    }
    .into_any()
}

/// A field's value as prose shows it.
pub fn shown_value(field: &Field, document: &ScenarioDocument, units: UnitSystem) -> String {
    match &field.kind {
        Kind::Number(number) => {
            let text = units.quantity(number.dimension, (number.read)(document));
            text.replace('¤', &document.prices.currency)
        }
        Kind::Choice(choice) => choice
            .options
            .get((choice.read)(document))
            .map_or_else(String::new, |stable| option_name(stable).to_owned()),
        Kind::Switch(switch) => if (switch.read)(document) { "yes" } else { "no" }.to_owned(),
        Kind::Text(text) => match (text.read)(document) {
            "" => "nothing".to_owned(),
            text => format!("“{text}”"),
        },
        Kind::Date(field) => date((field.read)(document)),
    }
}
