//! What can be seen of the page comes first: when the page starts, and while a slider is held.

use crate::live::{derived, part};
use crate::offline::page_is_whole;
use crate::state::AppState;
use leptos::context::Provider;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, IntersectionObserver, IntersectionObserverEntry};

/// How many of the parts that come later are there.
#[derive(Clone, Copy)]
pub struct Arrived(RwSignal<u32>);

impl Arrived {
    /// None yet; one comes in each turn of the browser, which can draw and take touches in between.
    pub fn begin() -> Self {
        let arrived = Self(RwSignal::new(0));
        arrived.next(LATER_PARTS);
        arrived
    }

    fn next(self, missing: u32) {
        if missing == 0 {
            return page_is_whole();
        }
        let come = move || {
            self.0.update(|parts| *parts += 1);
            self.next(missing - 1);
        };
        // Two frames on, the part before has been drawn.
        request_animation_frame(move || request_animation_frame(come));
    }
}

/// How many parts come later.
const LATER_PARTS: u32 = 11;

/// A part of the page that comes later, in its turn from 1 to [`LATER_PARTS`].
pub fn comes_later(turn: u32, view: fn() -> AnyView) -> AnyView {
    let here = is_turn(turn);
    part(move || here.get().then(view)).into_any()
}

/// Whether the turn of a part has come.
pub fn is_turn(turn: u32) -> Memo<bool> {
    let Arrived(arrived) = expect_context::<Arrived>();
    derived(move || arrived.get() >= turn)
}

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

/// Does something whenever the window's size has changed, for as long as the part of the page lasts that asks for it.
pub fn on_resize(act: impl Fn() + 'static) {
    let handle = window_event_listener(leptos::ev::resize, move |_| act());
    on_cleanup(move || handle.remove());
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
