//! Where place and day come from: coordinates, a weather file, the sun over the vehicle; and the whole summer of a file. Each part is
//! built once it is opened.

mod calendar;
mod coordinates;
mod desk;
mod dome;
mod file;
mod place;
mod sky;
mod summer;
mod zone;

pub use coordinates::NoPlace;

use crate::text::weather as text;
use crate::widgets::disclosure;
use desk::WeatherDesk;
use leptos::prelude::*;

/// The section.
#[component]
pub fn Weather() -> impl IntoView {
    provide_context(WeatherDesk::new());
    view! {
        <section id="weather" class="building weather" aria-labelledby="weather-title">
            <h2 id="weather-title">{text::WEATHER}</h2>
            <p class="note">{text::WEATHER_NOTE}</p>
            {disclosure("building-part", text::PLACE, place::view)}
            {disclosure("building-part", text::SKY, sky::view)}
            {disclosure("building-part", text::FILE, file::view)}
            {disclosure("building-part", text::SUMMER, summer::view)}
        </section>
    }
}
