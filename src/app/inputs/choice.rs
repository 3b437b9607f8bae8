//! One of a few: buttons where they are few enough to be seen at once, otherwise a list.

use super::row::{field_id, tools};
use super::starting;
use crate::live::{at_event, derived, flag, with_value, words};
use crate::state::AppState;
use crate::text::fields::{full_label, wording};
use crate::text::options::option_name;
use leptos::prelude::*;
use noonday_engine::scenario::starting_points::Library;
use noonday_engine::scenario::{ChoiceField, Field};

/// Most options that are shown side by side.
const MOST_BUTTONS: usize = 4;

/// The row of a choice.
pub fn choice_row(field: &'static Field, choice: &'static ChoiceField) -> AnyView {
    let state = expect_context::<AppState>();
    let chosen = derived(move || state.document.with(choice.read));
    if choice.options.len() <= MOST_BUTTONS {
        buttons(field, choice, state, chosen)
    } else {
        list(field, choice, state, chosen)
    }
}

fn buttons(
    field: &'static Field,
    choice: &'static ChoiceField,
    state: AppState,
    chosen: Memo<usize>,
) -> AnyView {
    let option = move |(index, stable): (usize, &&'static str)| {
        let id = match index {
            0 => field_id(field),
            _ => format!("{}-{index}", field_id(field)),
        };
        view! {
            <label class="option">
                <input
                    type="radio"
                    id=id
                    name=field_id(field)
                    prop:checked=flag(move || chosen.get() == index)
                    on:change=at_event(move || state.choose(field, choice, index))
                />
                <span>{option_name(stable)}</span>
            </label>
        }
    };
    view! {
        <div class="field" role="radiogroup" aria-label=full_label(field)>
            <span class="label">{wording(field).label}</span>
            <div class="options">
                {choice.options.iter().enumerate().map(option).collect_view()}
            </div>
            {tools(field)}
        </div>
    }
    .into_any()
}

fn list(
    field: &'static Field,
    choice: &'static ChoiceField,
    state: AppState,
    chosen: Memo<usize>,
) -> AnyView {
    let picked = with_value(move |index| {
        if let Ok(index) = index.parse::<usize>() {
            state.choose(field, choice, index);
        }
    });
    let option = move |(index, stable): (usize, &&'static str)| {
        view! {
            <option value=index.to_string() selected=flag(move || chosen.get() == index)>
                {option_name(stable)}
            </option>
        }
    };
    view! {
        <div class="field">
            <label for=field_id(field)>{wording(field).label}</label>
            <select
                id=field_id(field)
                prop:value=words(move || chosen.get().to_string())
                on:change=picked
            >
                {choice.options.iter().enumerate().map(option).collect_view()}
            </select>
            {Library::behind(field.key).map(|library| starting::note(library, state))}
            {tools(field)}
        </div>
    }
    .into_any()
}
