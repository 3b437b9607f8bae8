//! Files of the reader's own, dropped anywhere on the page or picked: each goes to the part that knows how such a file begins. They
//! are read on this device and sent nowhere.

use leptos::ev::{self, DragEvent};
use leptos::prelude::*;
use noonday_engine::scenario::file::LARGEST_FILE_BYTES;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{File, FileList, HtmlInputElement};

/// Largest file that is read at all, bytes; each reader may ask for less.
pub const LARGEST_BYTES: f64 = LARGEST_FILE_BYTES as f64;

/// Marks the page while a file is held over it.
const HELD_OVER: &str = "data-file-over";

/// Takes the name and the text of a file.
type Take = Rc<dyn Fn(String, String)>;

/// Who takes which files.
#[derive(Clone, Copy)]
pub struct Dropped {
    takers: StoredValue<Vec<(&'static str, Take)>, LocalStorage>,
    /// Why the file that came last was not taken.
    pub refused: RwSignal<Option<Refused>>,
}

/// Why a file was not taken.
#[derive(Clone, Debug, PartialEq)]
pub enum Refused {
    /// It is larger than anything that is read.
    TooLarge {
        /// Its name.
        name: String,
        /// Its size.
        bytes: f64,
    },
    /// Nobody knows such a beginning, or the browser cannot read it.
    Unknown {
        /// Its name.
        name: String,
    },
}

impl Dropped {
    /// Listens to the page.
    pub fn listen() -> Self {
        let dropped = Self {
            takers: StoredValue::new_local(Vec::new()),
            refused: RwSignal::new(None),
        };
        window_event_listener(ev::dragover, |event| {
            if holds_files(&event) {
                // Otherwise the browser opens the file in place of the page.
                event.prevent_default();
                mark(true);
            }
        });
        window_event_listener(ev::dragleave, |event| {
            if event.related_target().is_none() {
                mark(false);
            }
        });
        window_event_listener(ev::drop, move |event| {
            mark(false);
            // A box that takes files itself has said so.
            if !event.default_prevented() && holds_files(&event) {
                event.prevent_default();
                dropped.read_all(event.data_transfer().and_then(|data| data.files()));
            }
        });
        dropped
    }

    /// Hands files that begin with a word, in capitals, to `take`.
    pub fn takes(self, begins: &'static str, take: impl Fn(String, String) + 'static) {
        self.takers
            .update_value(|takers| takers.push((begins, Rc::new(take))));
    }

    /// Takes what was chosen in a picker of files.
    pub fn chosen(self, event: &ev::Event) {
        let input = event
            .target()
            .and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        if let Some(input) = input {
            self.read_all(input.files());
            // The same file may be chosen again.
            input.set_value("");
        }
    }

    /// Reads files and hands each to the one who knows it.
    fn read_all(self, files: Option<FileList>) {
        self.refused.set(None);
        let Some(files) = files else { return };
        for index in 0..files.length() {
            if let Some(file) = files.get(index) {
                self.read(file);
            }
        }
    }

    /// Reads a file and hands it to the one who knows it.
    pub fn read(self, file: File) {
        let name = file.name();
        let bytes = file.size();
        if bytes > LARGEST_BYTES {
            return self.refused.set(Some(Refused::TooLarge { name, bytes }));
        }
        spawn_local(async move {
            let text = JsFuture::from(file.text()).await;
            let text = text.ok().and_then(|text| text.as_string());
            self.hand(name, text.unwrap_or_default());
        });
    }

    fn hand(self, name: String, text: String) {
        let begins: String = text
            .trim_start_matches('\u{feff}')
            .trim_start()
            .chars()
            .take(12)
            .collect();
        let begins = begins.to_ascii_uppercase();
        let taker = self.takers.with_value(|takers| {
            let mut takers = takers.iter();
            takers.find_map(|(word, take)| begins.starts_with(word).then(|| take.clone()))
        });
        match taker {
            Some(take) => take(name, text),
            None => self.refused.set(Some(Refused::Unknown { name })),
        }
    }
}

/// Whether what is dragged is a file, and not a text or a link.
fn holds_files(event: &DragEvent) -> bool {
    let kinds = event.data_transfer().map(|data| data.types());
    kinds.is_some_and(|kinds| kinds.includes(&"Files".into(), 0))
}

fn mark(held_over: bool) {
    if let Some(body) = document().body() {
        // A mark that cannot be set is only not seen.
        let _ = match held_over {
            true => body.set_attribute(HELD_OVER, ""),
            false => body.remove_attribute(HELD_OVER),
        };
    }
}
