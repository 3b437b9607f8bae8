//! Messages: what was done and how to take it back, what came in a link, what could not be read.

use crate::desk::{Desk, Notice};
use crate::text::{page, storage as words};
use leptos::html;
use leptos::prelude::*;

/// The messages under the head.
#[component]
pub fn Notices() -> impl IntoView {
    let desk = expect_context::<Desk>();
    view! {
        <div class="notices" role="status">
            {move || desk.visitor.get().then(|| view! { <Visitor /> })}
            {move || desk.notice.get().map(|notice| view! { <Message notice /> })}
        </div>
    }
}

#[component]
fn Visitor() -> impl IntoView {
    let desk = expect_context::<Desk>();
    view! {
        <div class="notice">
            <p>{words::FROM_LINK}</p>
            <button type="button" on:click=move |_| desk.keep_visitor()>
                {words::KEEP}
            </button>
            <button type="button" on:click=move |_| desk.back_to_own()>
                {words::BACK}
            </button>
        </div>
    }
}

#[component]
fn Message(notice: Notice) -> impl IntoView {
    let desk = expect_context::<Desk>();
    view! {
        <div class="notice">
            <p>{notice.text}</p>
            {notice.raw.map(|raw| view! { <RawText raw /> })}
            {notice
                .undo
                .map(|_| {
                    view! {
                        <button type="button" on:click=move |_| desk.undo()>
                            {page::UNDO}
                        </button>
                    }
                })}
            <button type="button" on:click=move |_| desk.notice.set(None)>
                {page::DISMISS}
            </button>
        </div>
    }
}

/// A text to copy by hand, selected when it appears or takes the focus.
#[component]
pub fn RawText(raw: String) -> impl IntoView {
    let element = NodeRef::<html::Textarea>::new();
    let select = move || {
        if let Some(area) = element.get_untracked() {
            area.select();
        }
    };
    Effect::new(move |_| {
        if element.get().is_some() {
            select();
        }
    });
    view! {
        <textarea
            class="raw"
            readonly
            rows="3"
            aria-label=words::RAW
            node_ref=element
            prop:value=raw
            on:focus=move |_| select()
        ></textarea>
    }
}
