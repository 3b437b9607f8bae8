//! What can be seen of the page. While a slider is held, only that follows: the rest would cost the time in which the finger has
//! moved on.

use crate::state::AppState;
use leptos::context::Provider;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, IntersectionObserver, IntersectionObserverEntry};

/// A part of the page that waits while a slider is held and the element of that class cannot be seen.
pub fn waits_unseen(selector: &'static str, view: fn() -> AnyView) -> AnyView {
    let seen = RwSignal::new(true);
    Effect::new(move |_| {
        if let Ok(Some(element)) = document().query_selector(selector) {
            watch(&element, seen);
        }
    });
    let state = expect_context::<AppState>().as_seen(seen);
    view! { <Provider value=state>{view()}</Provider> }.into_any()
}

/// Tells whether an element can be seen, whenever that changes; until it is known, it counts as seen.
pub fn watch(element: &Element, seen: RwSignal<bool>) {
    let told = Closure::<dyn FnMut(js_sys::Array)>::new(move |entries: js_sys::Array| {
        let entries = entries.iter().rev();
        let last = entries.filter_map(|entry| entry.dyn_into::<IntersectionObserverEntry>().ok());
        if let Some(entry) = last.take(1).next() {
            seen.set(entry.is_intersecting());
        }
    });
    // Without an observer the part counts as seen, which only costs time.
    if let Ok(observer) = IntersectionObserver::new(told.as_ref().unchecked_ref()) {
        observer.observe(element);
        told.forget();
    }
}
