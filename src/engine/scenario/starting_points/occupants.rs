//! Who is in it, and what they need. All of it is assumed: hours are those of an ordinary day, and limits of the felt temperature
//! are where most people sleep or sit without complaint, and where a resting dog still copes.
//!
//! People who are old, ill or very young, and short-nosed or heavy dogs, bear less: their limits are for whoever knows them, or
//! for a doctor or a vet, to set.

use super::{Library, Start, start};
use crate::scenario::document::StartingPoint as P;
use crate::scenario::field::Basis::Example;

pub(super) const KEY: &str = "starting.occupants";

pub(super) const LIBRARY: Library = Library {
    key: KEY,
    sets: &[
        "occupants.people",
        "occupants.people_from_hour",
        "occupants.people_until_hour",
        "occupants.activity",
        "occupants.asleep_from_hour",
        "occupants.asleep_until_hour",
        "occupants.dogs",
        "occupants.dog_mass_kg",
        "occupants.dogs_from_hour",
        "occupants.dogs_until_hour",
        "occupants.cooking_heat_w",
        "occupants.cooking_from_hour",
        "occupants.cooking_until_hour",
        "need.windows.0.needed_for",
        "need.windows.0.from_hour",
        "need.windows.0.until_hour",
        "need.windows.0.highest_felt_c",
        "need.windows.1.needed_for",
        "need.windows.1.from_hour",
        "need.windows.1.until_hour",
        "need.windows.1.highest_felt_c",
        "need.windows.2.needed_for",
        "need.windows.2.from_hour",
        "need.windows.2.until_hour",
        "need.windows.2.highest_felt_c",
    ],
    points: &POINTS,
};

// People, in from and until, what they do, asleep from and until; dogs, mass, in from and until; cooking, from and until; three
// windows of need: for whom, from, until, highest felt temperature.
const POINTS: [Start; 8] = [
    start(
        P::OnePerson,
        Example,
        "1 18 9 seated 22 7  0 25 0 0  300 18.5 19  people 22 6 26  people 18 22 28  nobody 13 15 28",
    ),
    start(
        P::Couple,
        Example,
        "2 18 9 seated 22 7  0 25 0 0  400 18.5 19  people 22 6 26  people 18 22 28  nobody 13 15 28",
    ),
    start(
        P::CoupleAndDog,
        Example,
        "2 18 9 seated 22 7  1 25 0 0  400 18.5 19  people 22 6 26  animals 9 18 28  people 18 22 28",
    ),
    start(
        P::Family,
        Example,
        "3 17 9 seated 21 7  0 25 0 0  600 18 18.75  people 20 7 25  people 17 20 27  nobody 13 15 28",
    ),
    start(
        P::AtWorkInside,
        Example,
        "1 0 0 desk_work 23 7  0 25 0 0  400 12.5 13  people 9 17 27  people 23 7 26  nobody 18 22 28",
    ),
    start(
        P::DriverByDay,
        Example,
        "1 7 17 seated 8 16  0 25 0 0  0 18.5 19  people 8 16 25  nobody 18 22 28  nobody 13 15 28",
    ),
    start(
        P::DogByDay,
        Example,
        "0 18 9 seated 22 7  1 25 10 16  0 18.5 19  animals 10 16 27  nobody 18 22 28  nobody 22 6 26",
    ),
    start(
        P::TwoDogsByDay,
        Example,
        "0 18 9 seated 22 7  2 20 9 17  0 18.5 19  animals 9 17 27  nobody 18 22 28  nobody 22 6 26",
    ),
];
