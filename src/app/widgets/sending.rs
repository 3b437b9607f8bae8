//! What goes with the scenario to somebody else: for whom it is, from whom, a note, and the link as a code to read off the screen.

use super::{paragraph, quick_response};
use crate::desk::Desk;
use crate::inputs::text_entry;
use crate::live::{click, derived, part};
use crate::share_link;
use crate::text::{report, sending as words};
use leptos::ev::KeyboardEvent;
use leptos::html;
use leptos::prelude::*;
use noonday_engine::scenario::{ScenarioDocument, field};

/// Fields that only somebody else reads.
const SAID: [&str; 3] = ["recipient", "sender", "note"];
/// Begins the ids of their boxes here: the same fields stand among the inputs as well.
const ID: &str = "said-";

/// The panel; it is closed with its button or with Escape, and the keyboard then goes back to the button that opened it.
pub fn sending(desk: Desk, shown: RwSignal<bool>, opener: NodeRef<html::Button>) -> AnyView {
    let close = move || {
        shown.set(false);
        if let Some(button) = opener.get_untracked() {
            // Nothing is lost where the browser does not put it there.
            let _ = button.focus();
        }
    };
    let escaped: Box<dyn FnMut(KeyboardEvent)> = Box::new(move |event| {
        if event.key() == "Escape" {
            close();
        }
    });
    let link = derived(move || desk.share_link());
    let entries = SAID
        .into_iter()
        .filter_map(field)
        .map(|field| text_entry(field, format!("{ID}{}", field.id)))
        .collect_view();
    view! {
        <section class="sending" aria-labelledby="sending-title" on:keydown=escaped>
            <h2 id="sending-title">{words::TITLE}</h2>
            <figure class="code">
                {part(move || Some(code(&share_link::address_of(&link.get())?)))}
            </figure>
            <div>
                {paragraph("note", words::SAID_NOTE.to_owned())}
                {entries}
                <button
                    type="button"
                    class="report-from-here"
                    on:click=click(move || desk.show_report())
                >
                    {report::REPORT}
                </button>
                <button type="button" on:click=click(close)>
                    {words::CLOSE}
                </button>
            </div>
        </section>
    }
    .into_any()
}

fn code(address: &str) -> AnyView {
    let Some(svg) = quick_response::drawn(address) else {
        return paragraph("note", words::TOO_LONG.to_owned());
    };
    view! {
        <div class="squares" role="img" aria-label=words::CODE inner_html=svg></div>
        <figcaption class="note">{words::code_caption(address.chars().count())}</figcaption>
    }
    .into_any()
}

/// Who a scenario is for and from, and what is said with it, as plain text; nothing where nobody said anything.
pub fn said(document: &ScenarioDocument) -> Option<AnyView> {
    let lines = words::said(document);
    if lines.is_empty() {
        return None;
    }
    let lines = lines
        .into_iter()
        .map(|(name, text)| {
            view! {
                <dt>{name}</dt>
                <dd>{text}</dd>
            }
        })
        .collect_view();
    Some(view! { <dl class="came-with">{lines}</dl> }.into_any())
}
