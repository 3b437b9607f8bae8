//! The list of saved scenarios.

use super::notices::raw_text;
use crate::desk::Desk;
use crate::files::pick_file;
use crate::format::{date, parse_date};
use crate::live::{click, part};
use crate::storage::{Entry, Listed};
use crate::text::{files, storage as words};
use leptos::html;
use leptos::prelude::*;

/// The list.
pub fn shelf(desk: Desk) -> AnyView {
    let lines = part(move || {
        let lines = desk.saved.get();
        if lines.is_empty() {
            return Some(view! { <p class="note">{words::NONE}</p> }.into_any());
        }
        let lines: Vec<AnyView> = lines
            .into_iter()
            .map(|line| list_line(desk, line))
            .collect();
        Some(view! { <ul>{lines}</ul> }.into_any())
    });
    view! {
        <section class="shelf" aria-labelledby="shelf-title">
            <h2 id="shelf-title">{words::LIST}</h2>
            {lines}
            <div class="line-actions">
                <button type="button" class="quiet" on:click=click(move || desk.open_example())>
                    {words::EXAMPLE}
                </button>
                <button type="button" class="quiet" on:click=click(move || desk.file_shown())>
                    {files::FILE_SHOWN}
                </button>
                {part(move || desk.saved.with(|lines| !lines.is_empty()).then(|| file_all(desk)))}
                {pick_file()}
            </div>
            <p class="note">{files::DROP_HINT}</p>
        </section>
    }
    .into_any()
}

fn file_all(desk: Desk) -> AnyView {
    view! {
        <button type="button" class="quiet" on:click=click(move || desk.file_all())>
            {files::FILE_ALL}
        </button>
    }
    .into_any()
}

fn list_line(desk: Desk, line: Listed) -> AnyView {
    match line {
        Listed::Good { key, entry } => good_line(desk, key, entry),
        Listed::Damaged { key, why, raw } => damaged_line(desk, key, &why, raw),
    }
}

fn good_line(desk: Desk, key: String, entry: Entry) -> AnyView {
    let renaming = RwSignal::new(false);
    let day = entry.saved_at.get(..10).unwrap_or_default();
    let day = parse_date(day).map_or_else(|| day.to_owned(), date);
    let name = entry.name.clone();
    let actions = part(move || {
        let shown = if renaming.get() {
            rename_form(desk, key.clone(), name.clone(), renaming)
        } else {
            line_actions(desk, &key, &name, renaming)
        };
        Some(shown)
    });
    view! {
        <li>
            <p>
                <b>{entry.name}</b>
                " "
                <span class="when">{words::saved_at(&day)}</span>
            </p>
            {actions}
        </li>
    }
    .into_any()
}

fn line_actions(desk: Desk, key: &str, name: &str, renaming: RwSignal<bool>) -> AnyView {
    let on_key = |act: fn(Desk, &str)| {
        let key = key.to_owned();
        click(move || act(desk, &key))
    };
    let actions = [
        (words::OPEN, on_key(Desk::open)),
        (words::RENAME, click(move || renaming.set(true))),
        (words::DUPLICATE, on_key(Desk::duplicate)),
        (files::FILE_ONE, on_key(Desk::file_one)),
        (words::DELETE, on_key(Desk::delete)),
    ];
    let buttons = actions
        .into_iter()
        .map(|(label, act)| {
            view! {
                <button
                    type="button"
                    class="quiet"
                    aria-label=format!("{label} “{name}”")
                    on:click=act
                >
                    {label}
                </button>
            }
        })
        .collect_view();
    view! { <div class="line-actions">{buttons}</div> }.into_any()
}

fn rename_form(desk: Desk, key: String, name: String, renaming: RwSignal<bool>) -> AnyView {
    let element = NodeRef::<html::Input>::new();
    Effect::new(move |_| {
        if let Some(input) = element.get() {
            input.select();
        }
    });
    let done = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let typed = element.get_untracked().map(|input| input.value());
        // The list is written anew by the change, and this form with it.
        renaming.set(false);
        desk.rename(&key, &typed.unwrap_or_default());
    };
    view! {
        <form class="renaming" on:submit=done>
            <input
                type="text"
                maxlength="60"
                aria-label=words::NEW_NAME
                node_ref=element
                prop:value=name
            />
            <button type="submit" class="quiet">
                {words::DONE}
            </button>
            <button type="button" class="quiet" on:click=click(move || renaming.set(false))>
                {words::CANCEL}
            </button>
        </form>
    }
    .into_any()
}

fn damaged_line(desk: Desk, key: String, why: &str, raw: String) -> AnyView {
    view! {
        <li class="damaged">
            <p>{words::damaged_entry(why)}</p>
            {raw_text(raw)}
            <button type="button" class="quiet" on:click=click(move || desk.delete(&key))>
                {words::DELETE}
            </button>
        </li>
    }
    .into_any()
}
