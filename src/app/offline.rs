//! A newer version of the page: heard of from `src/delivery/offline.js`, and taken only when somebody says so.

use leptos::prelude::*;

/// Sent by the script when a newer version is ready.
const READY: &str = "newversion";
/// Sent to the script to take it.
const TAKE: &str = "takeversion";

/// Sent to the script once the whole page is there.
const WHOLE: &str = "pagewhole";

/// Whether a newer version of the page is ready to be taken.
#[derive(Clone, Copy)]
pub struct NewVersion(RwSignal<bool>);

impl NewVersion {
    /// Listens for a newer version from now on.
    pub fn awaited() -> Self {
        let ready = RwSignal::new(false);
        window_event_listener_untyped(READY, move |_| ready.set(true));
        Self(ready)
    }

    /// Whether there is one, and it has not been put off.
    pub fn is_ready(self) -> bool {
        self.0.get()
    }

    /// Goes on with the present version until the next time the page is opened, or a still newer one comes.
    pub fn put_off(self) {
        self.0.set(false);
    }

    /// Takes it: the page is loaded once more.
    pub fn take(self) {
        send(TAKE);
    }
}

/// Lets the page be kept on the device, now that all of it is there.
pub fn page_is_whole() {
    send(WHOLE);
}

fn send(name: &str) {
    if let Ok(event) = web_sys::Event::new(name) {
        // It cannot be cancelled, so there is no answer.
        let _ = window().dispatch_event(&event);
    }
}
