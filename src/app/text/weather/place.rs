//! The place by its coordinates.

use crate::format::UnitSystem;
use crate::weather::NoPlace;
use noonday_engine::scenario::{Dimension, Place};

pub const NOTE: &str = "Paste what a map shows: “33.45, −112.07”, “33°27′N 112°4′W”. Latitude first, unless letters say otherwise.";
pub const COORDINATES: &str = "Coordinates";
pub const SET: &str = "Set the place";
pub const HERE: &str = "Use this device's place";
pub const HERE_NOTE: &str = "The browser will ask you first. The position is rounded to about a kilometre, goes into the scenario and nowhere else; a link that you share tells the scenario.";
pub const ASKING: &str = "Waiting for the device.";
pub const REFUSED: &str = "The browser was not allowed to say where this device is. Type the coordinates, or allow it in the browser's settings for this page.";
pub const UNAVAILABLE: &str =
    "This device could not find out where it is. Out of doors it may; or type the coordinates.";
pub const TOO_SLOW: &str = "The device did not find its place within half a minute. Try again out of doors, or type the coordinates.";
pub const NOT_OFFERED: &str =
    "This browser does not tell a page where it is. Type the coordinates.";

/// Why a text holds no place.
pub fn no_place(why: NoPlace) -> &'static str {
    match why {
        NoPlace::Empty => "Enter a latitude and a longitude.",
        NoPlace::NotTwo => {
            "This cannot be read as a latitude and a longitude. Write two numbers, such as 33.45, −112.07."
        }
        NoPlace::Sixty => "Minutes and seconds go up to 59.",
        NoPlace::Latitude => "A latitude is at most 90 degrees. Does the longitude come first?",
        NoPlace::Longitude => "A longitude is at most 180 degrees.",
    }
}

/// A place in words.
pub fn position(place: &Place, units: UnitSystem) -> String {
    let degrees = |value: f64| units.quantity(Dimension::Angle, value.abs());
    let side = |value: f64, positive, negative| if value < 0.0 { negative } else { positive };
    format!(
        "{} {}, {} {}",
        degrees(place.latitude_deg),
        side(place.latitude_deg, "north", "south"),
        degrees(place.longitude_deg),
        side(place.longitude_deg, "east", "west"),
    )
}

/// What was set, and what to look over.
pub fn set(place: &Place, own_clock: bool, altitude_given: bool, units: UnitSystem) -> String {
    let sign = if place.utc_offset_h < 0.0 { "" } else { "+" };
    let clock = format!("UTC{sign}{}", units.number(place.utc_offset_h, 2));
    let summer = if place.summer_time {
        " with summer time"
    } else {
        " without summer time"
    };
    let source = if own_clock {
        "as on this device on the day of the scenario"
    } else {
        "a guess by the sun: look it over under “Where it stands”"
    };
    let altitude = units.quantity(Dimension::Altitude, place.altitude_m);
    let height = if altitude_given {
        format!("{altitude} up, as the device says.")
    } else {
        format!("The altitude stays at {altitude}; change it if that is wrong.")
    };
    format!(
        "It now stands at {}. The clock is {clock}{summer}, {source}. {height}",
        position(place, units)
    )
}
