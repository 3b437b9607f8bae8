//! Yes or no, text and day.

use super::row::{field_id, tools, trouble_id, trouble_of};
use crate::format::parse_date;
use crate::live::{at_event, derived, flag, with_value, words};
use crate::state::AppState;
use crate::text::fields::wording;
use leptos::prelude::*;
use noonday_engine::scenario::{DateField, Field, SwitchField, TextField};

/// Texts longer than this are written over several lines.
const LONGEST_LINE: usize = 80;

/// The row of a switch.
pub fn switch_row(field: &'static Field, switch: &'static SwitchField) -> AnyView {
    let state = expect_context::<AppState>();
    let on = derived(move || state.document.with(switch.read));
    let flipped = at_event(move || {
        let value = !on.get_untracked();
        state.edit(field, |document| (switch.write)(document, value));
    });
    view! {
        <div class="field">
            <label class="option">
                <input
                    type="checkbox"
                    id=field_id(field)
                    prop:checked=flag(move || on.get())
                    on:change=flipped
                />
                <span>{wording(field).label}</span>
            </label>
            {tools(field)}
        </div>
    }
    .into_any()
}

/// The row of a text.
pub fn text_row(field: &'static Field, text: &'static TextField) -> AnyView {
    let state = expect_context::<AppState>();
    let value = derived(move || {
        state
            .document
            .with(|document| (text.read)(document).to_owned())
    });
    let trouble = trouble_of(field);
    let typed = with_value(move |value| {
        state.edit(field, |document| (text.write)(document, value));
    });
    let control = if text.longest > LONGEST_LINE {
        view! {
            <textarea
                id=field_id(field)
                rows="3"
                prop:value=words(move || value.get())
                aria-invalid=words(move || trouble.get().is_some().to_string())
                aria-describedby=trouble_id(field)
                on:input=typed
            ></textarea>
        }
        .into_any()
    } else {
        view! {
            <input
                type="text"
                id=field_id(field)
                autocomplete="off"
                prop:value=words(move || value.get())
                aria-invalid=words(move || trouble.get().is_some().to_string())
                aria-describedby=trouble_id(field)
                on:input=typed
            />
        }
        .into_any()
    };
    view! {
        <div class="field wide" class:troubled=flag(move || trouble.get().is_some())>
            <label for=field_id(field)>{wording(field).label}</label>
            {control}
            {tools(field)}
        </div>
    }
    .into_any()
}

/// The row of a day.
pub fn date_row(field: &'static Field, date: &'static DateField) -> AnyView {
    let state = expect_context::<AppState>();
    let value = derived(move || {
        if let Some(text) = state.typed.with(|texts| texts.get(field.key).cloned()) {
            return text;
        }
        let date = state.document.with(date.read);
        format!("{:04}-{:02}-{:02}", date.year(), date.month(), date.day())
    });
    let trouble = trouble_of(field);
    let picked = with_value(move |text| match parse_date(&text) {
        Some(value) => state.edit(field, |document| (date.write)(document, value)),
        None => state.keep_typed(field, text),
    });
    view! {
        <div class="field" class:troubled=flag(move || trouble.get().is_some())>
            <label for=field_id(field)>{wording(field).label}</label>
            <input
                type="date"
                id=field_id(field)
                min="1950-01-01"
                max="2100-12-31"
                prop:value=words(move || value.get())
                aria-invalid=words(move || trouble.get().is_some().to_string())
                aria-describedby=trouble_id(field)
                on:change=picked
            />
            {tools(field)}
        </div>
    }
    .into_any()
}
