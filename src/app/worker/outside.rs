//! The page's side: starts the worker once, sends requests, takes answers.

use super::message::{Answer, Extent, Request, read, written};
use leptos::prelude::{TimeoutHandle, set_timeout_with_handle};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Event, MessageEvent, Worker, WorkerOptions, WorkerType};

/// Address of what starts the program in a worker.
const LOADER: &str = "worker.js";

/// How long a worker at work may be silent: slices take some tens of milliseconds, on a slow device some hundreds.
const LONGEST_SILENCE: Duration = Duration::from_secs(20);

/// A worker, and what waits until it listens.
#[derive(Clone)]
pub struct Companion {
    worker: Worker,
    listens: Rc<RefCell<Listens>>,
    watch: Rc<Watch>,
}

/// Notices a worker that ends without a word, which browsers let happen.
struct Watch {
    /// The clock that runs while an answer is awaited.
    clock: Cell<Option<TimeoutHandle>>,
    failed: Box<dyn Fn()>,
    worker: Worker,
    over: Cell<bool>,
}

impl Watch {
    fn begin(self: &Rc<Self>) {
        self.end();
        let own = self.clone();
        let handle = set_timeout_with_handle(move || own.fail(), LONGEST_SILENCE);
        self.clock.set(handle.ok());
    }

    fn heard(self: &Rc<Self>, answer: &Answer) {
        if answer.progress < 1.0 {
            self.begin();
        } else {
            self.end();
        }
    }

    fn end(&self) {
        if let Some(handle) = self.clock.take() {
            handle.clear();
        }
    }

    /// Ends the worker, whose state can no longer be trusted, and says so once.
    fn fail(&self) {
        self.end();
        if !self.over.replace(true) {
            self.worker.terminate();
            (self.failed)();
        }
    }
}

enum Listens {
    NotYet(Option<Request>),
    Yes,
}

impl Companion {
    /// Starts a worker; none where the browser has none to give.
    ///
    /// * `answered` — takes each answer
    /// * `failed` — called should the worker not start, or end
    pub fn start(answered: impl Fn(Answer) + 'static, failed: impl Fn() + 'static) -> Option<Self> {
        let options = WorkerOptions::new();
        options.set_type(WorkerType::Module);
        let worker = Worker::new_with_options(LOADER, &options).ok()?;
        let watch = Rc::new(Watch {
            clock: Cell::new(None),
            failed: Box::new(failed),
            worker: worker.clone(),
            over: Cell::new(false),
        });
        let companion = Self {
            worker: worker.clone(),
            listens: Rc::new(RefCell::new(Listens::NotYet(None))),
            watch: watch.clone(),
        };
        let own = companion.clone();
        let received = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
            let bytes = js_sys::Uint8Array::new(&event.data()).to_vec();
            match read(&bytes) {
                Some(answer) => {
                    own.watch.heard(&answer);
                    answered(answer);
                }
                None => own.now_listens(),
            }
        });
        let ended = Closure::<dyn FnMut(Event)>::new(move |event: Event| {
            event.prevent_default();
            watch.fail();
        });
        worker.set_onmessage(Some(received.as_ref().unchecked_ref()));
        worker.set_onerror(Some(ended.as_ref().unchecked_ref()));
        // Both last as long as the page.
        received.forget();
        ended.forget();
        worker.post_message(&program()?).ok()?;
        Some(companion)
    }

    /// Sends a request, which replaces the one before.
    pub fn ask(&self, request: Request) {
        match request.extent {
            Extent::Nothing => self.watch.end(),
            _ => self.watch.begin(),
        }
        let mut listens = self.listens.borrow_mut();
        match &mut *listens {
            Listens::NotYet(waiting) => *waiting = Some(request),
            Listens::Yes => self.send(&request),
        }
    }

    fn now_listens(&self) {
        let before = self.listens.replace(Listens::Yes);
        if let Listens::NotYet(Some(request)) = before {
            self.send(&request);
        }
    }

    fn send(&self, request: &Request) {
        let bytes = js_sys::Uint8Array::from(written(request).as_slice());
        // Bytes can always be cloned.
        let _ = self.worker.post_message(&bytes);
    }
}

/// The address of this program and its compiled form, as the loader wants them.
fn program() -> Option<JsValue> {
    let link = leptos::prelude::document()
        .query_selector("link[rel=modulepreload]")
        .ok()??;
    let address = js_sys::Reflect::get(&link, &JsValue::from_str("href")).ok()?;
    let program = js_sys::Object::new();
    for (name, value) in [("address", address), ("compiled", wasm_bindgen::module())] {
        js_sys::Reflect::set(&program, &JsValue::from_str(name), &value).ok()?;
    }
    Some(program.into())
}
