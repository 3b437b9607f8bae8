//! Messages: what was done and how to take it back, what came in a link, what could not be read.

use super::sending::said;
use crate::desk::{Desk, Notice};
use crate::live::{click, part};
use crate::offline::NewVersion;
use crate::state::AppState;
use crate::text::{page, storage as words};
use leptos::html;
use leptos::prelude::*;

/// The messages under the head.
#[component]
pub fn Notices() -> impl IntoView {
    let desk = expect_context::<Desk>();
    let version = expect_context::<NewVersion>();
    view! {
        <div class="notices" role="status">
            {part(move || version.is_ready().then(|| new_version(version)))}
            {part(move || desk.visitor.get().then(|| visitor(desk)))}
            {part(move || (desk.contested.get() && !desk.visitor.get()).then(|| beside(desk)))}
            {part(move || desk.notice.get().map(|notice| message(desk, notice)))}
        </div>
    }
}

fn new_version(version: NewVersion) -> AnyView {
    view! {
        <div class="notice">
            <p>{page::NEW_VERSION}</p>
            <button type="button" on:click=click(move || version.take())>
                {page::TAKE_VERSION}
            </button>
            <button type="button" on:click=click(move || version.put_off())>
                {page::LATER}
            </button>
        </div>
    }
    .into_any()
}

fn visitor(desk: Desk) -> AnyView {
    let came_with = expect_context::<AppState>().document;
    view! {
        <div class="notice">
            <p>{words::FROM_LINK}</p>
            {part(move || came_with.with(said))}
            <button type="button" on:click=click(move || desk.keep_visitor())>
                {words::KEEP}
            </button>
            <button type="button" on:click=click(move || desk.back_to_own())>
                {words::BACK}
            </button>
        </div>
    }
    .into_any()
}

fn beside(desk: Desk) -> AnyView {
    view! {
        <div class="notice">
            <p>{words::BESIDE}</p>
            <button type="button" on:click=click(move || desk.take_theirs())>
                {words::TAKE_THEIRS}
            </button>
            <button type="button" on:click=click(move || desk.keep_mine())>
                {words::KEEP_MINE}
            </button>
        </div>
    }
    .into_any()
}

fn message(desk: Desk, notice: Notice) -> AnyView {
    view! {
        <div class="notice">
            <p>{notice.text}</p>
            {notice.raw.map(raw_text)}
            {notice
                .undo
                .map(|_| {
                    view! {
                        <button type="button" on:click=click(move || desk.undo())>
                            {page::UNDO}
                        </button>
                    }
                })}
            <button type="button" on:click=click(move || desk.notice.set(None))>
                {page::DISMISS}
            </button>
        </div>
    }
    .into_any()
}

/// A text to copy by hand, selected when it appears or takes the focus.
pub fn raw_text(raw: String) -> AnyView {
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
    .into_any()
}
