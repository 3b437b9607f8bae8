//! What has come in files, as a list to tick, and the picker of files.

use super::Arrivals;
use super::plan::Line;
use crate::dropped::Dropped;
use crate::inputs::focus_on;
use crate::live::{click, flag, part, words};
use crate::text::files as text;
use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;

/// The list, while there is one.
#[component]
pub fn Arriving() -> impl IntoView {
    let arrivals = expect_context::<Arrivals>();
    part(move || {
        let waits = arrivals.entries.with(|entries| !entries.is_empty());
        waits.then(|| list(arrivals))
    })
}

fn list(arrivals: Arrivals) -> AnyView {
    let heading = NodeRef::<html::H2>::new();
    Effect::new(move |_| {
        if let Some(heading) = heading.get() {
            heading.scroll_into_view();
            focus_on(&heading);
        }
    });
    let lines = part(move || {
        let lines = arrivals.lines().into_iter().enumerate();
        let lines: Vec<AnyView> = lines
            .map(|(index, line)| row(arrivals, index, line))
            .collect();
        Some(view! { <ul>{lines}</ul> }.into_any())
    });
    let count = move || arrivals.wanted().len();
    view! {
        <section class="shelf arriving" aria-labelledby="arriving-title">
            <h2 id="arriving-title" tabindex="-1" node_ref=heading>
                {text::ARRIVED}
            </h2>
            <p class="note">{words(move || text::from(&arrivals.names.get()))}</p>
            {lines}
            <div class="line-actions">
                <button
                    type="button"
                    prop:disabled=flag(move || count() == 0)
                    on:click=click(move || arrivals.add())
                >
                    {words(move || text::add(count()))}
                </button>
                <button type="button" on:click=click(move || arrivals.dismiss())>
                    {text::LEAVE}
                </button>
            </div>
        </section>
    }
    .into_any()
}

fn row(arrivals: Arrivals, index: usize, line: Line) -> AnyView {
    if line.addition.is_none() {
        return view! {
            <li>
                <p>
                    <b>{line.name}</b>
                    " "
                    {line.fate}
                </p>
            </li>
        }
        .into_any();
    }
    let ticked = move |event: leptos::ev::Event| {
        let input = event
            .target()
            .and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        if let Some(input) = input {
            arrivals.want(index, input.checked());
        }
    };
    view! {
        <li>
            <label class="option">
                <input
                    type="checkbox"
                    prop:checked=flag(move || {
                        arrivals.left_out.with(|left_out| !left_out.contains(&index))
                    })
                    on:change=ticked
                />
                <span>
                    <b>{line.name}</b>
                    " "
                    {line.fate}
                </span>
            </label>
        </li>
    }
    .into_any()
}

/// A picker of files.
pub fn pick_file() -> AnyView {
    let dropped = expect_context::<Dropped>();
    view! {
        <label class="file">
            {text::FROM_FILE}
            <input
                type="file"
                accept=".json,application/json"
                multiple
                on:change=move |event| dropped.chosen(&event)
            />
        </label>
    }
    .into_any()
}
