//! Should the program stop. It can do nothing more then: the script that stands by in the page itself (`src/delivery/stopped.js`)
//! shows what is kept, and how to go on.

/// Sent to that script.
const STOPPED: &str = "programstopped";

/// Says so from now on.
pub fn stand_by() {
    std::panic::set_hook(Box::new(|_| {
        if let (Some(window), Ok(event)) = (web_sys::window(), web_sys::Event::new(STOPPED)) {
            // It cannot be cancelled, so there is no answer.
            let _ = window.dispatch_event(&event);
        }
    }));
}
