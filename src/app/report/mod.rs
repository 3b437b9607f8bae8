//! The client's report: two sheets of paper that take the place of the consult while they are looked at, and that are what the
//! browser prints, from wherever it is asked to.

mod day;
mod paper;

use crate::answer::concerns_animals;
use crate::decide::Decided;
use crate::desk::Desk;
use crate::format::{date, parse_date};
use crate::live::{click, part, words};
use crate::share_link;
use crate::state::AppState;
use crate::text::answer::help;
use crate::text::report as text;
use crate::widgets::quick_response;
use leptos::html;
use leptos::prelude::*;
use noonday_engine::scenario::to_share_link;
use paper::{Facts, paper};
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

/// Marks the page while it is printed.
const PRINTING: &str = "data-print";
/// Marks the page while the report is looked at.
const SHOWN: &str = "data-report";
/// Height that a sheet may have, CSS pixels at 96 an inch: Letter, the lower of both papers, 11 in less two margins of 10 mm, and
/// some for rounding (`style/report.css`).
const SHEET_HEIGHT: i32 = 972;
/// How close a sheet can be set: 0 is as designed.
const CLOSEST: u8 = 7;

/// The view.
#[component]
pub fn ClientReport() -> impl IntoView {
    let state = expect_context::<AppState>();
    let decided = expect_context::<Decided>();
    let desk = expect_context::<Desk>();
    let element = NodeRef::<html::Div>::new();
    let open = desk.report;
    Effect::new(move |before: Option<()>| {
        let open = open.get();
        mark(SHOWN, open);
        if before.is_some() || open {
            arrive(open);
        }
    });
    Effect::new(move |_| {
        let Some(element) = element.get() else { return };
        if open.get() {
            element.set_inner_html(&written(state, decided));
        } else {
            element.set_inner_html("");
        }
    });
    print_it(element, move || untrack(|| written(state, decided)), open);
    view! {
        <div class="report">
            {part(move || open.get().then(|| bar(desk, decided)))}
            <div node_ref=element></div>
        </div>
    }
}

/// What can be done with it, and how far it is.
fn bar(desk: Desk, decided: Decided) -> AnyView {
    let waiting = words(move || match decided.working() {
        Some(told) => format!("{told} {}", text::WAITING),
        None => text::BAR_NOTE.to_owned(),
    });
    view! {
        <nav class="report-bar" aria-label=text::VIEW>
            <button type="button" id="report-back" on:click=click(move || desk.leave_report())>
                {text::BACK}
            </button>
            <button type="button" on:click=click(print)>
                {text::PRINT}
            </button>
            <p class="note" role="status">
                {waiting}
            </p>
        </nav>
    }
    .into_any()
}

fn print() {
    // A browser that cannot print says so itself.
    let _ = window().print();
}

/// Puts eye and keyboard at the head of what has come.
fn arrive(open: bool) {
    request_animation_frame(move || {
        // On a phone the button stands elsewhere.
        let place = if open { "#report-back" } else { "h1" };
        if let Some(element) = document().query_selector(place).ok().flatten() {
            window().scroll_to_with_x_and_y(0.0, 0.0);
            crate::inputs::focus_on(&element);
        }
    });
}

fn mark(name: &str, holds: bool) {
    if let Some(root) = document().document_element() {
        // The names are valid ones, which is all that could fail.
        let _ = root.toggle_attribute_with_force(name, holds);
    }
}

/// The report of the state as it is, with what has been worked out of it so far.
fn written(state: AppState, decided: Decided) -> String {
    let scenario = state.checked.with(|checked| checked.scenario.clone());
    let advice = state.advice.get();
    let voice = state.voice.get();
    let document = scenario.document();
    let findings = decided.findings();
    let effects = state.effects.get();
    let address = share_link::address_of(&to_share_link(document));
    paper(&Facts {
        document,
        advice: &advice,
        voice: &voice,
        findings: &findings,
        help: effects.and_then(|effects| help(&effects, advice.verdict.headline, &voice)),
        animals: concerns_animals(document),
        made: today(),
        code: address.as_deref().and_then(quick_response::drawn),
        address,
    })
}

/// The day on the device.
fn today() -> String {
    let now = js_sys::Date::new_0();
    let iso = format!(
        "{:04}-{:02}-{:02}",
        now.get_full_year(),
        now.get_month() + 1,
        now.get_date()
    );
    parse_date(&iso).map_or(iso, date)
}

/// The browser prints as soon as its event is over, so the sheets are written and set at once. Printed from the consult, the report
/// comes for that long.
fn print_it(
    element: NodeRef<html::Div>,
    written: impl Fn() -> String + 'static,
    open: RwSignal<bool>,
) {
    window_event_listener_untyped("beforeprint", move |_| {
        mark(PRINTING, true);
        if let Some(element) = element.get_untracked() {
            element.set_inner_html(&written());
            set(&element);
        }
    });
    window_event_listener_untyped("afterprint", move |_| {
        mark(PRINTING, false);
        let stays = open.get_untracked();
        if let Some(element) = element.get_untracked().filter(|_| !stays) {
            element.set_inner_html("");
        }
    });
}

/// Sets each sheet closer until it fits its paper.
fn set(element: &Element) {
    let sheets = element.get_elements_by_class_name("sheet");
    let sheets = (0..sheets.length()).filter_map(|index| sheets.get_with_index(index));
    for sheet in sheets.filter_map(|sheet| sheet.dyn_into::<HtmlElement>().ok()) {
        for closeness in 0..=CLOSEST {
            // The name is a valid one, which is all that could fail.
            let _ = sheet.set_attribute("data-fit", &closeness.to_string());
            if sheet.offset_height() <= SHEET_HEIGHT {
                break;
            }
        }
    }
}
