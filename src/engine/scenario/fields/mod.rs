//! The fields table: every input of the consult, once. Forms, validation, links and tests read it.

mod body;
mod cooling;
mod day;
mod installation;
mod need;
mod power;
mod readings;
mod roof;
mod starting;

use super::document::ScenarioDocument;
use super::field::{
    ChoiceField, DateField, Dimension, Field, Group, Kind, NumberField, SwitchField, TextField,
};
use crate::solar::Date;

/// Every field, group after group in the order of a consult.
pub fn fields() -> impl Iterator<Item = &'static Field> {
    GROUPS.iter().flat_map(|group| group.iter())
}

/// The fields of one group.
pub fn fields_of(group: Group) -> impl Iterator<Item = &'static Field> {
    fields().filter(move |field| field.group == group)
}

/// The field with this key, if there is one.
#[must_use]
pub fn field(key: &str) -> Option<&'static Field> {
    fields().find(|field| field.key == key)
}

const GROUPS: [&[Field]; 30] = [
    body::TITLE,
    starting::VEHICLE,
    body::VEHICLE,
    starting::SHELL,
    body::SHELL,
    body::GLASS,
    starting::OCCUPANTS,
    need::OCCUPANTS,
    need::NEED,
    starting::PLACE,
    day::PLACE,
    day::DAY,
    starting::COOLER,
    cooling::COOLER,
    cooling::VENTILATION,
    starting::BATTERY,
    power::BATTERY,
    power::CHARGING,
    power::LOADS,
    &installation::WAYS[0],
    &installation::WAYS[1],
    &installation::WAYS[2],
    &installation::WAYS[3],
    &installation::WAYS[4],
    &installation::WAYS[5],
    installation::CABLING,
    roof::ROOF,
    power::PRICES,
    installation::BUILD_PRICES,
    readings::READINGS,
];

const fn number(
    dimension: Dimension,
    minimum: f64,
    maximum: f64,
    read: fn(&ScenarioDocument) -> f64,
    write: fn(&mut ScenarioDocument, f64),
) -> Kind {
    Kind::Number(NumberField {
        dimension,
        minimum,
        maximum,
        read,
        write,
    })
}

const fn choice(
    options: &'static [&'static str],
    read: fn(&ScenarioDocument) -> usize,
    write: fn(&mut ScenarioDocument, usize),
) -> Kind {
    Kind::Choice(ChoiceField {
        options,
        read,
        write,
    })
}

const fn switch(
    read: fn(&ScenarioDocument) -> bool,
    write: fn(&mut ScenarioDocument, bool),
) -> Kind {
    Kind::Switch(SwitchField { read, write })
}

const fn text(
    (longest, room_bytes): (usize, usize),
    read: fn(&ScenarioDocument) -> &str,
    write: fn(&mut ScenarioDocument, String),
) -> Kind {
    Kind::Text(TextField {
        longest,
        room_bytes,
        read,
        write,
    })
}

const fn date(read: fn(&ScenarioDocument) -> Date, write: fn(&mut ScenarioDocument, Date)) -> Kind {
    Kind::Date(DateField { read, write })
}

fn position<T: PartialEq>(options: &[T], value: T) -> usize {
    options
        .iter()
        .position(|option| *option == value)
        .unwrap_or_default()
}

fn set_at<T: Copy>(options: &[T], index: usize, place: &mut T) {
    if let Some(option) = options.get(index) {
        *place = *option;
    }
}
