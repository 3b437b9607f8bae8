//! The list of saved scenarios.

use super::notices::RawText;
use crate::desk::Desk;
use crate::storage::{Entry, Listed};
use crate::text::storage as words;
use leptos::html;
use leptos::prelude::*;

/// The list.
#[component]
pub fn Shelf() -> impl IntoView {
    let desk = expect_context::<Desk>();
    view! {
        <section class="shelf" aria-labelledby="shelf-title">
            <h2 id="shelf-title">{words::LIST}</h2>
            {move || {
                desk.saved
                    .with(Vec::is_empty)
                    .then(|| view! { <p class="note">{words::NONE}</p> })
            }}
            <ul>
                <For
                    each=move || desk.saved.get()
                    key=|line| (line.key().to_owned(), format!("{line:?}"))
                    children=|line| match line {
                        Listed::Good { key, entry } => view! { <Line key_text=key entry /> }.into_any(),
                        Listed::Damaged { key, why, raw } => {
                            view! { <DamagedLine key_text=key why raw /> }.into_any()
                        }
                    }
                />
            </ul>
            <button type="button" class="quiet" on:click=move |_| desk.open_example()>
                {words::EXAMPLE}
            </button>
        </section>
    }
}

#[component]
fn Line(key_text: String, entry: Entry) -> impl IntoView {
    let desk = expect_context::<Desk>();
    let key = StoredValue::new(key_text);
    let renaming = RwSignal::new(false);
    let name = StoredValue::new(entry.name.clone());
    let day = entry.saved_at.get(..10).unwrap_or_default().to_owned();
    let action = move |label: &'static str, act: fn(Desk, &str)| {
        view! {
            <button
                type="button"
                class="quiet"
                aria-label=format!("{label} “{}”", name.get_value())
                on:click=move |_| key.with_value(|key| act(desk, key))
            >
                {label}
            </button>
        }
    };
    view! {
        <li>
            <p>
                <b>{entry.name}</b>
                " "
                <span class="when">{words::saved_at(&day)}</span>
            </p>
            <Show
                when=move || renaming.get()
                fallback=move || {
                    view! {
                        <div class="line-actions">
                            {action(words::OPEN, Desk::open)}
                            <button
                                type="button"
                                class="quiet"
                                aria-label=format!("{} “{}”", words::RENAME, name.get_value())
                                on:click=move |_| renaming.set(true)
                            >
                                {words::RENAME}
                            </button>
                            {action(words::DUPLICATE, Desk::duplicate)}
                            {action(words::DELETE, Desk::delete)}
                        </div>
                    }
                }
            >
                <Renaming key name renaming />
            </Show>
        </li>
    }
}

#[component]
fn Renaming(
    key: StoredValue<String>,
    name: StoredValue<String>,
    renaming: RwSignal<bool>,
) -> impl IntoView {
    let desk = expect_context::<Desk>();
    let element = NodeRef::<html::Input>::new();
    Effect::new(move |_| {
        if let Some(input) = element.get() {
            input.select();
        }
    });
    let done = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        renaming.set(false);
        if let Some(input) = element.get_untracked() {
            key.with_value(|key| desk.rename(key, &input.value()));
        }
    };
    view! {
        <form class="renaming" on:submit=done>
            <input
                type="text"
                maxlength="60"
                aria-label=words::NEW_NAME
                node_ref=element
                prop:value=name.get_value()
            />
            <button type="submit" class="quiet">
                {words::DONE}
            </button>
            <button type="button" class="quiet" on:click=move |_| renaming.set(false)>
                {words::CANCEL}
            </button>
        </form>
    }
}

#[component]
fn DamagedLine(key_text: String, why: String, raw: String) -> impl IntoView {
    let desk = expect_context::<Desk>();
    view! {
        <li class="damaged">
            <p>{words::damaged_entry(&why)}</p>
            <RawText raw />
            <button type="button" class="quiet" on:click=move |_| desk.delete(&key_text)>
                {words::DELETE}
            </button>
        </li>
    }
}
