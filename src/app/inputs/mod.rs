//! Every input of the fields table, by group. A closed group shows its contents as a line of text.

mod choice;
mod hand;
mod number;
mod relevance;
mod row;
mod simple;
mod slider;
mod starting;

use crate::live::{at_event, derived, flag, part, words};
use crate::sight::is_turn;
use crate::state::AppState;
use crate::text::{fields::part_title, groups, page, starting::as_picked, summary::summary};
use hand::Hand;
use leptos::html;
use leptos::prelude::*;
use noonday_engine::scenario::{Field, Group, Kind, example, field, fields_of};
pub use number::{number_row, number_text};
use relevance::how_to_get_more;
pub use relevance::is_relevant;
pub use row::{shown_value, trouble_of};
pub use simple::text_entry;
#[cfg(test)]
pub use slider::Scale;

/// Which groups, and which finer points within them, stand open.
#[derive(Clone, Copy)]
pub struct Opened(RwSignal<Vec<(Group, bool)>>);

impl Opened {
    /// Starts with one group open.
    pub fn new() -> Self {
        Self(RwSignal::new(vec![(Group::Shell, false)]))
    }

    /// Whether a group, or its finer points, stand open.
    pub fn has(self, part: (Group, bool)) -> bool {
        self.0.with(|open| open.contains(&part))
    }

    fn set(self, part: (Group, bool), is_open: bool) {
        if self.0.with_untracked(|open| open.contains(&part)) == is_open {
            return;
        }
        self.0.update(|open| {
            if is_open {
                open.push(part);
            } else {
                open.retain(|other| *other != part);
            }
        });
    }

    /// Opens what holds a field and puts the keyboard there.
    pub fn show(self, key: &str) {
        let Some(field) = field(key) else { return };
        self.set((field.group, false), true);
        if groups::is_finer_point(key) {
            self.set((field.group, true), true);
        }
        let id = row::field_id(field);
        // The inputs of a closed group exist one turn after it opens.
        let focus = move || {
            if let Some(element) = document().get_element_by_id(&id) {
                element.scroll_into_view();
                focus_on(&element);
            }
        };
        request_animation_frame(move || request_animation_frame(focus));
    }
}

/// Turn in which what is in open groups comes, one after their titles.
const BODIES: u32 = 5;

/// The groups that stand here: readings of a finished unit stand beside what is made of them.
fn consult() -> impl Iterator<Item = Group> {
    Group::ALL
        .into_iter()
        .filter(|group| *group != Group::Readings)
}

/// Id of the inputs.
pub const ID: &str = "inputs";

/// The whole of the inputs.
#[component]
pub fn Inputs() -> impl IntoView {
    let state = expect_context::<AppState>();
    let is_example = derived(move || state.document.with(|document| *document == example()));
    let note = words(move || {
        if is_example.get() {
            page::EXAMPLE_NOTE.to_owned()
        } else {
            page::INPUTS_NOTE.to_owned()
        }
    });
    view! {
        <section id=ID class="inputs" tabindex="-1" aria-labelledby="inputs-title">
            <h2 id="inputs-title">{page::INPUTS}</h2>
            <p class="note">{note}</p>
            {consult().map(|group| view! { <GroupOfInputs group /> }).collect_view()}
            <Hand />
        </section>
    }
}

/// One group, closed a line of text, open its inputs.
#[component]
pub fn GroupOfInputs(group: Group) -> impl IntoView {
    let state = expect_context::<AppState>();
    let opened = expect_context::<Opened>();
    // A slider is held in an open group, whose line is not shown; the lines of the others do not change by it.
    let line = Memo::new(move |before: Option<&String>| match before {
        Some(before) if state.held.get() => before.clone(),
        _ => state.document.with(|document| {
            let voice = crate::text::Voice::new(document, state.units.get());
            as_picked(group, document) + &summary(group, document, &voice)
        }),
    });
    let line = words(move || line.get());
    let troubled = derived(move || {
        state.troubles.with(|troubles| {
            let here = |key| field(key).is_some_and(|field| field.group == group);
            troubles.iter().filter(|trouble| here(trouble.key)).count()
        })
    });
    let is_open = derived(move || opened.has((group, false)));
    let come = is_turn(BODIES);
    let element = NodeRef::<html::Details>::new();
    let toggled = at_event(move || {
        if let Some(details) = element.get_untracked() {
            opened.set((group, false), details.open());
        }
    });
    view! {
        <details
            class="group"
            id=groups::anchor(group)
            node_ref=element
            prop:open=flag(move || is_open.get())
            on:toggle=toggled
        >
            <summary>
                <span class="group-title">{groups::title(group)}</span>
                <span class="group-line">{line}</span>
                {part(move || {
                    let count = troubled.get();
                    (count > 0)
                        .then(|| {
                            view! { <span class="group-trouble">{page::needs_attention(count)}</span> }
                                .into_any()
                        })
                })}
            </summary>
            {part(move || (come.get() && is_open.get()).then(|| group_body(group)))}
        </details>
    }
}

fn group_body(group: Group) -> AnyView {
    let plain: Vec<&'static Field> = fields_of(group)
        .filter(|field| !groups::is_finer_point(field.key) && !groups::is_place_on_plan(field.key))
        .collect();
    let finer: Vec<&'static Field> = fields_of(group)
        .filter(|field| groups::is_finer_point(field.key))
        .collect();
    view! {
        <div class="group-body">
            {in_parts(&plain)}
            {(!finer.is_empty()).then(|| finer_points(group, finer))}
            {how_to_get_more(group).map(|text| view! { <p class="note">{text}</p> })}
        </div>
    }
    .into_any()
}

fn finer_points(group: Group, fields: Vec<&'static Field>) -> AnyView {
    let opened = expect_context::<Opened>();
    let is_open = derived(move || opened.has((group, true)));
    let element = NodeRef::<html::Details>::new();
    let toggled = at_event(move || {
        if let Some(details) = element.get_untracked() {
            opened.set((group, true), details.open());
        }
    });
    view! {
        <details
            class="finer"
            node_ref=element
            prop:open=flag(move || is_open.get())
            on:toggle=toggled
        >
            <summary>{groups::FINER_POINTS}</summary>
            {part(move || is_open.get().then(|| in_parts(&fields)))}
        </details>
    }
    .into_any()
}

/// Fields in order; those of one part together under its title.
fn in_parts(fields: &[&'static Field]) -> AnyView {
    fields
        .chunk_by(|one, other| part_title(one.key) == part_title(other.key))
        .map(|part| {
            let title = part.first().and_then(|field| part_title(field.key));
            let rows = part.iter().map(|field| field_row(field)).collect_view();
            match title {
                Some(title) => view! {
                    <fieldset class="part">
                        <legend>{title}</legend>
                        {rows}
                    </fieldset>
                }
                .into_any(),
                None => rows.into_any(),
            }
        })
        .collect_view()
        .into_any()
}

fn field_row(field: &'static Field) -> crate::live::Part {
    let state = expect_context::<AppState>();
    let relevant = derived(move || {
        state
            .document
            .with(|document| is_relevant(field.key, document))
    });
    let row = move || match &field.kind {
        Kind::Number(number) => number::number_row(field, number),
        Kind::Choice(choice) => choice::choice_row(field, choice),
        Kind::Switch(switch) => simple::switch_row(field, switch),
        Kind::Text(text) => simple::text_row(field, text),
        Kind::Date(date) => simple::date_row(field, date),
    };
    part(move || relevant.get().then(row))
}

/// Puts the keyboard on an element.
pub fn focus_on(element: &web_sys::Element) {
    use wasm_bindgen::JsCast;
    if let Some(element) = element.dyn_ref::<web_sys::HtmlElement>() {
        // An element that cannot take the focus keeps the page as it is, which is all right.
        let _ = element.focus();
    }
}
