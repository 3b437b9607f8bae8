//! Who asks a worker: it begins with the first request, and another once where it has ended by itself.

use super::message::{Answer, Request};
use super::outside::Companion;
use leptos::prelude::*;

/// A worker with the requests that went to it.
#[derive(Clone, Copy)]
pub struct Asker {
    companion: StoredValue<Option<Companion>, LocalStorage>,
    /// Number of the last request.
    number: RwSignal<u32>,
    /// Whether a worker has ended by itself since one last brought what it was asked for.
    ended_before: StoredValue<bool>,
}

impl Asker {
    /// Has no worker yet.
    pub fn new() -> Self {
        Self {
            companion: StoredValue::new_local(None),
            number: RwSignal::new(0),
            ended_before: StoredValue::new(false),
        }
    }

    /// Sends a request under the next number, to a worker that begins where there is none; tells whether there is one.
    ///
    /// * `answered` — takes each answer of a worker that begins
    /// * `failed` — called should it not start, or end
    pub fn ask(
        self,
        request: Request,
        answered: impl Fn(Answer) + 'static,
        failed: impl Fn() + 'static,
    ) -> bool {
        if self.companion.with_value(Option::is_none) {
            self.companion.set_value(Companion::start(answered, failed));
        }
        self.number.update(|number| *number += 1);
        let request = Request {
            number: self.number.get_untracked(),
            ..request
        };
        self.companion.with_value(|companion| {
            let there = companion.as_ref();
            there.map(|companion| companion.ask(request)).is_some()
        })
    }

    /// Number of the last request.
    pub fn last(self) -> u32 {
        self.number.get()
    }

    /// Whether an answer is to the last request.
    pub fn is_to_last(self, answer: &Answer) -> bool {
        answer.number == self.number.get_untracked()
    }

    /// Lets go of a worker that has ended by itself; tells whether the one before it has too, without a result between them.
    pub fn has_ended_again(self) -> bool {
        self.companion.set_value(None);
        let again = self.ended_before.get_value();
        self.ended_before.set_value(true);
        again
    }

    /// Notes that a worker has brought what it was asked for.
    pub fn has_brought(self) {
        self.ended_before.set_value(false);
    }
}
