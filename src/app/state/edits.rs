//! Every way in which the consult is changed.

use super::{AppState, Pinned, Trail, TypedTexts, read_typed};
use crate::format::{Typed, UnitSystem, unit};
use leptos::prelude::*;
use noonday_engine::scenario::starting_points::Library;
use noonday_engine::scenario::{ChoiceField, Field, ScenarioDocument, example, field, fields};
use std::sync::Arc;

impl AppState {
    /// Shows another scenario, with the steps that led to it if they are known.
    pub fn open(self, document: ScenarioDocument, trail: Trail) {
        self.typed.set(TypedTexts::default());
        self.trail.set(trail);
        self.document.set(document);
        self.cursor.set(None);
    }

    /// Puts another document in the place of the whole, as one step that can be taken back.
    pub fn exchange(self, document: ScenarioDocument) {
        let document = self.settled(document);
        let mut trail = self.trail.get_untracked();
        trail.leave(self.document.get_untracked(), None);
        self.open(document, trail);
    }

    /// Takes the last change back; an entry that cannot be used is the first to go.
    pub fn back(self) {
        let now = self.document.get_untracked();
        if let Some(document) = self.trail.try_update(|trail| trail.back(&now)).flatten() {
            self.document.set(document);
        }
        self.typed.set(TypedTexts::default());
    }

    /// Makes the change again that was taken back last.
    pub fn forward(self) {
        let now = self.document.get_untracked();
        if let Some(document) = self.trail.try_update(|trail| trail.forward(&now)).flatten() {
            self.typed.set(TypedTexts::default());
            self.document.set(document);
        }
    }

    /// Keeps the state shown to compare with.
    pub fn pin(self) {
        let scenario = self
            .checked
            .with_untracked(|checked| checked.scenario.clone());
        let advice = self.advice.get_untracked();
        self.pinned.set(Some(Arc::new(Pinned { scenario, advice })));
    }

    /// Forgets the state kept.
    pub fn unpin(self) {
        self.pinned.set(None);
    }

    /// Takes a text typed into a number: the document follows if it can be read.
    pub fn type_number(self, field: &'static Field, text: String) {
        self.typing.set(Some(field.key));
        if let Typed::Value(shown) = self.read_typed(field, &text) {
            self.write_shown(field, shown);
        }
        self.typed.update(|texts| {
            texts.insert(field.key, text);
        });
    }

    /// Keeps a text that cannot be read as it was typed.
    pub fn keep_typed(self, field: &'static Field, text: String) {
        self.typed.update(|texts| {
            texts.insert(field.key, text);
        });
    }

    /// Ends the typing of a number: a text that can be run gives way to the number as it is written.
    pub fn finish_typing(self, field: &'static Field) {
        self.typing.set(None);
        self.trail.update_untracked(Trail::rest);
        let troubled = self
            .troubles
            .with_untracked(|troubles| troubles.iter().any(|trouble| trouble.key == field.key));
        let readable = self.typed.with_untracked(|texts| {
            texts
                .get(field.key)
                .is_none_or(|text| matches!(self.read_typed(field, text), Typed::Value(_)))
        });
        if readable && !troubled {
            self.forget_typed(field.key);
        }
    }

    /// Sets a number in the shown unit, as a slider does.
    pub fn slide_number(self, field: &'static Field, value_si: f64) {
        self.forget_typed(field.key);
        self.write_si(field, value_si);
    }

    /// Changes the document through a field.
    pub fn edit(self, field: &'static Field, change: impl FnOnce(&mut ScenarioDocument)) {
        self.forget_typed(field.key);
        let mut document = self.document.get_untracked();
        change(&mut document);
        self.step(Some(field.key), document);
    }

    /// Changes the document through a field, as a step of its own.
    pub fn edit_at_once(self, field: &'static Field, change: impl FnOnce(&mut ScenarioDocument)) {
        self.trail.update_untracked(Trail::rest);
        self.edit(field, change);
        self.trail.update_untracked(Trail::rest);
    }

    /// Takes an option; a starting point brings its values with it, as one step.
    pub fn choose(self, field: &'static Field, choice: &ChoiceField, option: usize) {
        let Some(library) = Library::behind(field.key) else {
            return self.edit(field, |document| take(choice, option, document));
        };
        for key in library.sets {
            self.forget_typed(key);
        }
        self.edit_at_once(field, |document| library.pick(option, document));
    }

    /// Puts a field back to the starting point's value, or else the example's.
    pub fn reset(self, field: &'static Field) {
        self.trail.update_untracked(Trail::rest);
        let meant = self.meant.get_untracked();
        self.edit(field, |document| field.copy(&meant, document));
    }

    /// Shows the other units; texts that could be read are written anew, the others stay as typed.
    pub fn show_units(self, units: UnitSystem) {
        self.typed.update(|texts| {
            texts.0.retain(|(key, text)| {
                field(key)
                    .is_some_and(|field| !matches!(self.read_typed(field, text), Typed::Value(_)))
            });
        });
        self.units.set(units);
    }

    fn read_typed(self, field: &Field, text: &str) -> Typed {
        let currency = self
            .document
            .with_untracked(|document| document.prices.currency.clone());
        read_typed(field, text, self.units.get_untracked(), &currency)
    }

    fn write_shown(self, field: &'static Field, shown: f64) {
        let Some(number) = field.number() else {
            return;
        };
        let value_si = unit(number.dimension, self.units.get_untracked()).si(shown);
        self.write_si(field, value_si);
    }

    fn write_si(self, field: &'static Field, value_si: f64) {
        let Some(number) = field.number() else {
            return;
        };
        let mut document = self.document.get_untracked();
        (number.write)(&mut document, value_si);
        self.step(Some(field.key), document);
    }

    /// Goes on to another state of the document, from which a step leads back.
    fn step(self, field: Option<&'static str>, document: ScenarioDocument) {
        let before = self.document.get_untracked();
        let document = self.settled(document);
        if before != document {
            self.trail.update(|trail| trail.leave(before, field));
            self.document.set(document);
        }
    }

    /// The same with numbers as fine as they are kept, those that changed.
    fn settled(self, mut document: ScenarioDocument) -> ScenarioDocument {
        let (before, usual) = (self.document.get_untracked(), example());
        for field in fields() {
            let stays = field.same_in(&before, &document) || field.same_in(&usual, &document);
            if let (false, Some(number)) = (stays, field.number()) {
                let value_si = number.settled((number.read)(&document));
                (number.write)(&mut document, value_si);
            }
        }
        document
    }

    fn forget_typed(self, key: &str) {
        if self.typed.with_untracked(|texts| texts.get(key).is_some()) {
            self.typed.update(|texts| {
                texts.remove(key);
            });
        }
    }
}

/// Takes an option; where it only says how something is stated, what is stated stays.
fn take(choice: &ChoiceField, option: usize, document: &mut ScenarioDocument) {
    let before = document.day.humidity_given;
    (choice.write)(document, option);
    let given = std::mem::replace(&mut document.day.humidity_given, before);
    document.state_humidity_as(given);
}
