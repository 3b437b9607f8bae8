//! Yes or no, text and day.

use super::row::{field_id, tools, trouble_id, trouble_of};
use crate::format::parse_date;
use crate::live::{at_event, derived, flag, with_value, words};
use crate::state::AppState;
use crate::text::fields::wording;
use crate::text::sending::room;
use js_sys::Reflect;
use leptos::ev::Event;
use leptos::prelude::*;
use noonday_engine::scenario::{DateField, Field, Kind, SwitchField, TextField};
use wasm_bindgen::JsValue;

/// Texts longer than this are written over several lines.
const LONGEST_LINE: usize = 80;
/// Of texts that have less room than this it is not said.
const LEAST_ROOM_SAID: usize = 20;

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
    let trouble = trouble_of(field);
    view! {
        <div class="field wide" class:troubled=flag(move || trouble.get().is_some())>
            <label for=field_id(field)>{wording(field).label}</label>
            {text_box(field, text, field_id(field))}
            {tools(field)}
        </div>
    }
    .into_any()
}

/// A text with its label alone, under an id of its own: it may stand among the inputs at the same time. Nothing for other fields.
pub fn text_entry(field: &'static Field, id: String) -> Option<AnyView> {
    let Kind::Text(text) = &field.kind else {
        return None;
    };
    let label_for = id.clone();
    let entry = view! {
        <div class="field wide">
            <label for=label_for>{wording(field).label}</label>
            {text_box(field, text, id)}
        </div>
    };
    Some(entry.into_any())
}

/// The box of a text, and below it how much room is left where that is not plain.
fn text_box(field: &'static Field, text: &'static TextField, id: String) -> AnyView {
    let state = expect_context::<AppState>();
    let value = derived(move || {
        state
            .document
            .with(|document| (text.read)(document).to_owned())
    });
    let trouble = trouble_of(field);
    let typed: Box<dyn FnMut(Event)> = Box::new(move |event| {
        let whole = event_target_value(&event);
        let kept = value.with_untracked(|before| kept_text(text, &whole, before));
        if let (true, Some(target)) = (kept != whole, event.target()) {
            // The document may not change by it, so the box would go on showing the whole.
            let _ = Reflect::set(
                &target,
                &JsValue::from_str("value"),
                &JsValue::from_str(&kept),
            );
        }
        state.edit(field, |document| (text.write)(document, kept));
    });
    let room_id = format!("{id}-room");
    let described = format!("{} {room_id}", trouble_id(field));
    let control = if text.longest > LONGEST_LINE {
        view! {
            <textarea
                id=id
                rows="3"
                prop:value=words(move || value.get())
                aria-invalid=words(move || trouble.get().is_some().to_string())
                aria-describedby=described
                on:input=typed
            ></textarea>
        }
        .into_any()
    } else {
        view! {
            <input
                type="text"
                id=id
                autocomplete="off"
                prop:value=words(move || value.get())
                aria-invalid=words(move || trouble.get().is_some().to_string())
                aria-describedby=described
                on:input=typed
            />
        }
        .into_any()
    };
    let room = words(move || {
        if text.room_bytes < LEAST_ROOM_SAID {
            return String::new();
        }
        value.with(|value| room(value, text.room_bytes))
    });
    view! {
        {control}
        <p class="room" id=room_id>
            {room}
        </p>
    }
    .into_any()
}

/// What is kept of a typed text: as much as there is room for. A longer one that came from elsewhere may get no longer.
fn kept_text(text: &TextField, typed: &str, before: &str) -> String {
    let most = text.room_bytes.max(before.len());
    typed
        .get(..typed.floor_char_boundary(most))
        .unwrap_or_default()
        .to_owned()
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

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::field;

    #[test]
    fn a_text_is_kept_as_far_as_there_is_room_for_it() {
        let Kind::Text(text) = &field("recipient").unwrap().kind else {
            panic!("no text");
        };
        let kept = |typed: &str, before: &str| kept_text(text, typed, before);
        assert_eq!(kept("Maria", ""), "Maria");
        assert_eq!(kept(&"a".repeat(50), ""), "a".repeat(40));
        // Thirteen of three bytes; a fourteenth would be cut in two.
        assert_eq!(kept(&"日".repeat(20), ""), "日".repeat(13));
        let longer = "b".repeat(60);
        assert_eq!(kept(&longer, &longer), longer);
        assert_eq!(kept(&"b".repeat(61), &longer), longer);
    }
}
