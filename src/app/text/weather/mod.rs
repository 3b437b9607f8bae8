//! Weather files, the place by its coordinates, the sun over the vehicle, and the whole summer.

pub mod file;
pub mod place;
pub mod sky;
pub mod summer;

pub const WEATHER: &str = "Weather and sun";
pub const WEATHER_NOTE: &str = "Where the place and the day of this scenario come from, and how a whole summer would go. Files are read on this device, kept only while the page is open, and sent nowhere.";

pub const PLACE: &str = "The place by its coordinates";
pub const SKY: &str = "Where the sun stands";
pub const FILE: &str = "A day out of a weather file";
pub const SUMMER: &str = "A whole summer";
