//! The library of starting points: bodies, build-ups, climates, coolers, banks and people of the project's own.
//!
//! A starting point is a list of values for some fields, with where they come from. Picking one writes them and notes which it
//! was; every value stays an input like any other. What was changed since is found by comparing, so that links, storage and
//! undo need to carry nothing but the pick.
//!
//! All bodies, coolers and banks are generic. Numbers are of the kind that a workshop would guess before it measures; only where a
//! row names a source is there one.

mod battery;
mod cooler;
mod occupants;
mod place;
mod shell;
mod vehicle;

use super::document::{ScenarioDocument, Starting, StartingPoint};
use super::example::example;
use super::field::{Basis, Field, Group, Kind};
use super::fields::field;
use super::link::set;

/// Starting points for one part of the consult: all of them set the same fields.
#[derive(Clone, Copy, Debug)]
pub struct Library {
    /// Key of the choice that holds the pick.
    pub key: &'static str,
    /// Keys of the fields that are set.
    pub sets: &'static [&'static str],
    /// The starting points.
    pub points: &'static [Start],
}

/// A starting point.
#[derive(Clone, Copy, Debug)]
pub struct Start {
    /// Which it is.
    pub point: StartingPoint,
    /// Where its values come from; [`Basis::Example`] where they are assumed.
    pub basis: Basis,
    /// A value for each key of [`Library::sets`], in the form that links have, set apart by spaces.
    values: &'static str,
}

const fn start(point: StartingPoint, basis: Basis, values: &'static str) -> Start {
    Start {
        point,
        basis,
        values,
    }
}

/// Every library, in the order of a consult.
pub static LIBRARIES: [Library; 6] = [
    vehicle::LIBRARY,
    shell::LIBRARY,
    occupants::LIBRARY,
    place::LIBRARY,
    cooler::LIBRARY,
    battery::LIBRARY,
];

impl Library {
    /// The library whose pick a field holds, if it holds one.
    #[must_use]
    pub fn behind(key: &str) -> Option<&'static Library> {
        LIBRARIES.iter().find(|library| library.key == key)
    }

    /// The library that sets a field, if one does.
    #[must_use]
    pub fn setting(key: &str) -> Option<&'static Library> {
        LIBRARIES.iter().find(|library| library.sets.contains(&key))
    }

    /// What was picked from it, if anything.
    #[must_use]
    pub fn picked(&self, picks: &Starting) -> Option<&'static Start> {
        let point = self.pick_in(picks);
        self.points.iter().find(|start| start.point == point)
    }

    /// Notes a starting point by its place among the options of the pick and writes its values. The first option notes that there
    /// is none and leaves every value as it is.
    pub fn pick(&self, option: usize, document: &mut ScenarioDocument) {
        if let Some(Kind::Choice(choice)) = field(self.key).map(|field| &field.kind) {
            (choice.write)(document, option);
            let picked = self.picked(&document.starting);
            self.write(document, picked);
        }
    }

    /// Stable name of what was picked from it, if anything.
    #[must_use]
    pub fn picked_name(&self, document: &ScenarioDocument) -> Option<&'static str> {
        self.picked(&document.starting)?;
        match &field(self.key)?.kind {
            Kind::Choice(choice) => choice.options.get((choice.read)(document)).copied(),
            _ => None,
        }
    }

    /// How many of its fields in a group differ from what was picked; nothing where nothing was picked or it sets none there.
    #[must_use]
    pub fn changes_in(&self, group: Group, document: &ScenarioDocument) -> Option<usize> {
        self.picked(&document.starting)?;
        let meant = baseline(&document.starting);
        let here = |field: &&Field| field.group == group;
        let differs = |field: &&Field| !field.same_in(document, &meant);
        self.fields().any(|field| here(&field)).then(|| {
            let changed = self.fields().filter(here).filter(differs);
            changed.count()
        })
    }

    /// How many of its fields differ between two documents.
    #[must_use]
    pub fn changes_from(&self, meant: &ScenarioDocument, document: &ScenarioDocument) -> usize {
        let differs = |field: &&Field| !field.same_in(document, meant);
        self.fields().filter(differs).count()
    }

    fn fields(&self) -> impl Iterator<Item = &'static Field> {
        self.sets.iter().filter_map(|key| field(key))
    }

    fn pick_in(&self, picks: &Starting) -> StartingPoint {
        match self.key {
            vehicle::KEY => picks.vehicle,
            shell::KEY => picks.shell,
            occupants::KEY => picks.occupants,
            place::KEY => picks.place,
            cooler::KEY => picks.cooler,
            battery::KEY => picks.battery,
            _ => StartingPoint::None,
        }
    }

    fn write(&self, document: &mut ScenarioDocument, start: Option<&Start>) {
        let values = start.map_or("", |start| start.values).split_whitespace();
        for (key, value) in self.sets.iter().zip(values) {
            // That every value can be read is a test's business.
            field(key).and_then(|field| set(field, value, document));
        }
    }
}

/// What the inputs are compared with and put back to: the example with the values of every starting point that was picked, and
/// the picks themselves.
#[must_use]
pub fn baseline(picks: &Starting) -> ScenarioDocument {
    let mut meant = example();
    meant.starting = picks.clone();
    for library in &LIBRARIES {
        library.write(&mut meant, library.picked(picks));
    }
    meant
}

/// The library that fills in a group, or some of it, if one does.
#[must_use]
pub fn library_of(group: Group) -> Option<&'static Library> {
    LIBRARIES.iter().find(|library| {
        let mut keys = library.sets.iter();
        keys.any(|key| field(key).is_some_and(|field| field.group == group))
    })
}

#[cfg(test)]
mod tests;
