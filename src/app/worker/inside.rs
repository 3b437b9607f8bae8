//! The worker's side: takes a request, works on it slice by slice, and looks between slices whether there is another.

use super::message::{Request, read, written};
use super::work::Work;
use std::cell::RefCell;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

thread_local! {
    static WORK: RefCell<Option<Work>> = const { RefCell::new(None) };
}

/// Serves requests if this copy of the program runs in a worker; gives whether it does.
pub fn serve_if_worker() -> bool {
    let Ok(scope) = js_sys::global().dyn_into::<DedicatedWorkerGlobalScope>() else {
        return false;
    };
    let received = Closure::<dyn FnMut(MessageEvent)>::new(|event: MessageEvent| {
        let bytes = js_sys::Uint8Array::new(&event.data()).to_vec();
        let Some(request) = read::<Request>(&bytes) else {
            return;
        };
        let was_idle = WORK.with_borrow_mut(|work| work.replace(Work::new(request)).is_none());
        if was_idle {
            go_on_soon();
        }
    });
    scope.set_onmessage(Some(received.as_ref().unchecked_ref()));
    // It lasts as long as the worker.
    received.forget();
    // An empty message says that it listens.
    post(&scope, &[]);
    true
}

/// Lets messages in before the next slice.
fn go_on_soon() {
    let Ok(scope) = js_sys::global().dyn_into::<DedicatedWorkerGlobalScope>() else {
        return;
    };
    let slice = Closure::once_into_js(go_on);
    // Without the timer the work stands still until the next request, which starts it anew.
    let _ = scope.set_timeout_with_callback(slice.unchecked_ref());
}

fn go_on() {
    let answer = WORK.with_borrow_mut(|work| work.as_mut()?.step(js_sys::Date::now));
    match answer {
        Some(answer) => {
            if let Ok(scope) = js_sys::global().dyn_into::<DedicatedWorkerGlobalScope>() {
                post(&scope, &written(&answer));
            }
            go_on_soon();
        }
        None => WORK.with_borrow_mut(|work| *work = None),
    }
}

fn post(scope: &DedicatedWorkerGlobalScope, bytes: &[u8]) {
    // Bytes can always be cloned; a page that is gone hears nothing.
    let _ = scope.post_message(&js_sys::Uint8Array::from(bytes));
}
