//! What every input has around its control: reason and source, a way back to the value it started from, and what is wrong.

use crate::format::{UnitSystem, date};
use crate::live::{click, derived, part, words};
use crate::state::AppState;
use crate::text::basis::{basis, range_sentence};
use crate::text::errors::range;
use crate::text::fields::{bounds, full_label, wording};
use crate::text::options::option_name;
use crate::text::{page, starting};
use leptos::prelude::*;
use noonday_engine::scenario::starting_points::Library;
use noonday_engine::scenario::{Field, Kind, ScenarioDocument};

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

/// Button that shows the reason, button that puts back what it started from, and the texts under the control.
pub fn tools(field: &'static Field) -> AnyView {
    let state = expect_context::<AppState>();
    let shown = RwSignal::new(false);
    let changed = derived(move || {
        state
            .document
            .with(|document| state.meant.with(|meant| !field.same_in(document, meant)))
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
    let value = move || {
        let value = state
            .meant
            .with(|meant| shown_value(field, meant, state.units.get()));
        state
            .document
            .with(|document| starting::value_as(field, document, value))
    };
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
    let source = words(move || {
        state
            .document
            .with(|document| match starting_source(field, document) {
                Some(source) => source,
                None if Library::behind(field.key).is_some() => starting::PICK_SOURCE.to_owned(),
                None => basis(field.basis),
            })
    });
    view! {
        <p>{wording(field).why}</p>
        <p>{allowed} " " {source}</p>
    }
    .into_any()
}

/// Where the value of the starting point comes from, if one that was picked sets this field.
fn starting_source(field: &Field, document: &ScenarioDocument) -> Option<String> {
    let start = Library::setting(field.key)?.picked(&document.starting)?;
    Some(starting::basis(start.basis))
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
