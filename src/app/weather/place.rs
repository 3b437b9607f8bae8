//! The place by its coordinates: typed, pasted, or asked of the device.

use super::coordinates::read_coordinates;
use super::zone::own_clock;
use crate::live::{click, flag, with_value, words};
use crate::state::AppState;
use crate::text::errors::field_error_named;
use crate::text::weather::place as text;
use leptos::prelude::*;
use noonday_engine::scenario::Scenario;
use noonday_engine::solar::likely_utc_offset_h;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Position, PositionError, PositionOptions};

/// How long the device may look for its place, ms.
const PATIENCE_MS: u32 = 30_000;

/// What was said last, and whether it is a trouble.
#[derive(Clone, Copy)]
struct Said(RwSignal<(String, bool)>);

impl Said {
    fn trouble(self, text: &str) {
        self.0.set((text.to_owned(), true));
    }

    fn told(self, text: String) {
        self.0.set((text, false));
    }
}

/// The part.
pub(super) fn view(state: AppState) -> AnyView {
    let typed = RwSignal::new(String::new());
    let said = Said(RwSignal::new(Default::default()));
    let set = move || match read_coordinates(&typed.get_untracked()) {
        Ok((latitude_deg, longitude_deg)) => {
            stand_at(state, said, latitude_deg, longitude_deg, None);
        }
        Err(why) => said.trouble(text::no_place(why)),
    };
    let entered = move |event: leptos::ev::KeyboardEvent| {
        if event.key() == "Enter" {
            set();
        }
    };
    let troubled = flag(move || said.0.with(|said| said.1));
    let words_of = move |trouble: bool| {
        words(move || {
            said.0.with(|said| {
                let shown = said.1 == trouble;
                if shown { said.0.clone() } else { String::new() }
            })
        })
    };
    view! {
        <div class="group-body">
            <p class="note">{text::NOTE}</p>
            <div class="field wide" class:troubled=troubled>
                <label for="coordinates">{text::COORDINATES}</label>
                <input
                    type="text"
                    id="coordinates"
                    autocomplete="off"
                    spellcheck="false"
                    placeholder="33.45, −112.07"
                    aria-describedby="coordinates-trouble"
                    aria-invalid=words(move || said.0.with(|said| said.1).to_string())
                    on:input=with_value(move |text| typed.set(text))
                    on:keydown=entered
                />
                <p class="trouble" id="coordinates-trouble" role="status">
                    {words_of(true)}
                </p>
            </div>
            <div class="building-actions">
                <button type="button" on:click=click(set)>
                    {text::SET}
                </button>
                <button type="button" on:click=click(move || ask_device(state, said))>
                    {text::HERE}
                </button>
            </div>
            <p class="note">{text::HERE_NOTE}</p>
            <p class="said" role="status" data-weather="place">
                {words_of(false)}
            </p>
        </div>
    }
    .into_any()
}

/// Puts the scenario at a place, as one step; what its fields do not allow is said and left.
fn stand_at(
    state: AppState,
    said: Said,
    latitude_deg: f64,
    longitude_deg: f64,
    altitude_m: Option<f64>,
) {
    let mut document = state.document.get_untracked();
    let (own_h, own_summer) = own_clock(document.day.date);
    let (offset_h, is_own) = likely_utc_offset_h(longitude_deg, own_h);
    let place = &mut document.place;
    (place.latitude_deg, place.longitude_deg) = (latitude_deg, longitude_deg);
    place.utc_offset_h = offset_h;
    if is_own {
        place.summer_time = own_summer;
    }
    if let Some(altitude_m) = altitude_m {
        place.altitude_m = altitude_m.round();
    }
    let units = state.units.get_untracked();
    let place = document.place.clone();
    if let Err(errors) = Scenario::new(document.clone()) {
        let here = errors.iter().find(|error| error.key.starts_with("place."));
        if let Some(error) = here {
            return said.trouble(&field_error_named(error, units, ""));
        }
    }
    state.exchange(document);
    said.told(text::set(&place, is_own, altitude_m.is_some(), units));
}

/// Asks the device for its place, which the browser asks its user about.
fn ask_device(state: AppState, said: Said) {
    let Ok(device) = window().navigator().geolocation() else {
        return said.trouble(text::NOT_OFFERED);
    };
    said.told(text::ASKING.to_owned());
    let found = Closure::once_into_js(move |position: Position| {
        let at = position.coords();
        // About a kilometre: the sun asks for no more, and a link that is shared should not tell more.
        let rounded = |degrees: f64| (degrees * 1e2).round() / 1e2;
        let (latitude_deg, longitude_deg) = (rounded(at.latitude()), rounded(at.longitude()));
        stand_at(state, said, latitude_deg, longitude_deg, at.altitude());
    });
    let failed = Closure::once_into_js(move |error: PositionError| {
        said.trouble(match error.code() {
            PositionError::PERMISSION_DENIED => text::REFUSED,
            PositionError::TIMEOUT => text::TOO_SLOW,
            _ => text::UNAVAILABLE,
        });
    });
    let options = PositionOptions::new();
    options.set_timeout(PATIENCE_MS);
    let asked = device.get_current_position_with_error_callback_and_options(
        found.unchecked_ref(),
        Some(failed.unchecked_ref()),
        &options,
    );
    if asked.is_err() {
        said.trouble(text::NOT_OFFERED);
    }
}
