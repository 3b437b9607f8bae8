//! Scenarios to and from files: what is saved as one, and what a file would add before it does.

mod plan;
mod view;

pub use view::{Arriving, pick_file};

use crate::desk::{Desk, Notice};
use crate::dropped::Dropped;
use crate::inputs::focus_on;
use crate::text::files as words;
use leptos::prelude::*;
use noonday_engine::scenario::file::{FileEntry, from_file};
use plan::{Line, plan};

/// What has come in files and waits to be added.
#[derive(Clone, Copy)]
pub struct Arrivals {
    desk: Desk,
    /// Names of the files.
    names: RwSignal<Vec<String>>,
    entries: RwSignal<Vec<FileEntry>>,
    /// Places of the lines that are not wanted.
    left_out: RwSignal<Vec<usize>>,
}

impl Arrivals {
    /// Takes files of scenarios from now on.
    pub fn new(desk: Desk, dropped: Dropped) -> Self {
        let arrivals = Self {
            desk,
            names: RwSignal::new(Vec::new()),
            entries: RwSignal::new(Vec::new()),
            left_out: RwSignal::new(Vec::new()),
        };
        // JSON; whether it is a file of scenarios is told when it is read.
        for begins in ["{", "["] {
            dropped.takes(begins, move |name, text| arrivals.take(name, &text));
        }
        Effect::new(move |_| {
            if let Some(refused) = dropped.refused.get() {
                arrivals.refuse(words::not_taken(&refused));
            }
        });
        arrivals
    }

    fn take(self, name: String, text: &str) {
        match from_file(text) {
            Ok(entries) if entries.is_empty() => self.refuse(words::nothing_in(&name)),
            Ok(entries) => {
                self.desk.notice.set(None);
                self.names.update(|names| names.push(name));
                self.entries.update(|all| all.extend(entries));
            }
            Err(error) => self.refuse(words::refused(&name, &error)),
        }
    }

    fn refuse(self, text: String) {
        self.desk.notice.set(Some(Notice {
            text,
            ..Notice::default()
        }));
    }

    /// What would become of each, beside what is kept.
    fn lines(self) -> Vec<Line> {
        let kept = self.desk.kept();
        self.entries.with(|entries| plan(entries, &kept))
    }

    /// Those that can be added and are wanted.
    fn wanted(self) -> Vec<Line> {
        let left_out = self.left_out.get();
        let lines = self.lines().into_iter().enumerate();
        lines
            .filter(|(index, line)| line.addition.is_some() && !left_out.contains(index))
            .map(|(_, line)| line)
            .collect()
    }

    fn want(self, index: usize, wanted: bool) {
        self.left_out.update(|left_out| {
            left_out.retain(|other| *other != index);
            if !wanted {
                left_out.push(index);
            }
        });
    }

    /// Adds what is wanted, all or nothing.
    fn add(self) {
        let additions = self.wanted().into_iter();
        if self
            .desk
            .add(additions.filter_map(|line| line.addition).collect())
        {
            self.dismiss();
        }
    }

    fn dismiss(self) {
        // The keyboard was on what goes now.
        if let Ok(Some(button)) = document().query_selector("[aria-controls=shelf]") {
            focus_on(&button);
        }
        self.entries.set(Vec::new());
        self.names.set(Vec::new());
        self.left_out.set(Vec::new());
    }
}
