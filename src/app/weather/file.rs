//! The weather file: where it is chosen, what it holds, and what a day of it would set.

use super::desk::{Held, WeatherDesk};
use crate::live::{click, derived, part, with_value, words};
use crate::state::AppState;
use crate::text::weather::file as text;
use crate::widgets::paragraph;
use leptos::prelude::*;
use std::sync::Arc;
use wasm_bindgen::JsCast;
use web_sys::HtmlDetailsElement;

/// Marks the part, so that a file dropped elsewhere can open it.
const PART: &str = "[data-weather=file]";

/// Opens the part and brings it into sight.
pub(super) fn show() {
    let Ok(Some(part)) = document().query_selector(PART) else {
        return open_part();
    };
    part.scroll_into_view();
}

/// Opens the part, whose content comes a turn later.
fn open_part() {
    let Ok(Some(parts)) = document().query_selector("#weather details:nth-of-type(3)") else {
        return;
    };
    if let Some(details) = parts.dyn_ref::<HtmlDetailsElement>() {
        details.set_open(true);
        details.scroll_into_view();
    }
}

/// The part.
pub(super) fn view(state: AppState) -> AnyView {
    let desk = expect_context::<WeatherDesk>();
    view! {
        <div class="group-body" data-weather="file">
            <p class="note">{text::ABOUT}</p>
            {chooser(desk)}
            {part(move || {
                let held = desk.held.get()?;
                Some(content(desk, state, &held))
            })}
        </div>
    }
    .into_any()
}

/// Where a file is chosen, and what is wrong with it.
pub(super) fn chooser(desk: WeatherDesk) -> AnyView {
    let chosen = move |event: leptos::ev::Event| {
        desk.trouble.set(None);
        desk.dropped.chosen(&event);
    };
    let trouble = derived(move || desk.trouble.get().or_else(|| desk.refused()));
    view! {
        <div class="log-tools">
            <label class="file">
                {text::CHOOSE}
                <input type="file" accept=".epw,.txt,text/plain" on:change=chosen />
            </label>
            <button type="button" on:click=click(move || desk.invent())>
                {text::INVENTED}
            </button>
        </div>
        <p class="trouble" role="status" data-weather="trouble">
            {words(move || trouble.get().unwrap_or_default())}
        </p>
    }
    .into_any()
}

fn content(desk: WeatherDesk, state: AppState, held: &Arc<Held>) -> AnyView {
    let facts = {
        let held = held.clone();
        words(move || text::facts(held.weather.name(), &held.weather, state.units.get()))
    };
    let is_invented = held.is_invented();
    view! {
        <p class="said" role="status" data-weather="facts">
            {facts}
        </p>
        {is_invented.then(|| paragraph("caution", text::INVENTED_NOTE.to_owned()))}
        {days(desk, state, held)}
        {chosen_day(desk, state)}
        <button type="button" class="quiet" on:click=click(move || desk.put_away())>
            {text::PUT_AWAY}
        </button>
    }
    .into_any()
}

/// The days in a list, in either order, and a few by name.
fn days(desk: WeatherDesk, state: AppState, held: &Arc<Held>) -> AnyView {
    let by_date = RwSignal::new(false);
    let list = {
        let held = held.clone();
        part(move || {
            let units = state.units.get();
            let order: Vec<usize> = if by_date.get() {
                (0..held.days.len()).collect()
            } else {
                held.by_heat.clone()
            };
            let mut ranks = vec![0; held.days.len()];
            for (rank, day) in held.by_heat.iter().enumerate() {
                ranks[*day] = rank;
            }
            let options = order.into_iter().map(|index| {
                let line = text::day_line(ranks[index], &held.days[index], units);
                view! { <option value=index.to_string()>{line}</option> }.into_any()
            });
            Some(
                view! {
                    <select
                        id="weather-day"
                        prop:value=words(move || desk.day.get().to_string())
                        on:change=with_value(move |typed| {
                            if let Ok(index) = typed.parse() {
                                desk.day.set(index);
                                desk.taken.set(false);
                            }
                        })
                    >
                        {options.collect_view()}
                    </select>
                }
                .into_any(),
            )
        })
    };
    let ranks = {
        let held = held.clone();
        let offered = text::RANKS.into_iter().filter_map(move |(rank, name)| {
            let index = *held.by_heat.get(rank)?;
            let choose = click(move || {
                desk.day.set(index);
                desk.taken.set(false);
            });
            Some(
                view! {
                    <button type="button" on:click=choose>
                        {name}
                    </button>
                }
                .into_any(),
            )
        });
        offered.collect_view()
    };
    view! {
        <div class="building-actions">
            <span class="note">{text::TYPICAL}</span>
            {ranks}
        </div>
        <div class="field wide">
            <label for="weather-order">{text::ORDER}</label>
            <select
                id="weather-order"
                on:change=with_value(move |typed| by_date.set(typed == "date"))
            >
                <option value="heat">{text::BY_HEAT}</option>
                <option value="date">{text::BY_DATE}</option>
            </select>
        </div>
        <div class="field wide">
            <label for="weather-day">{text::DAY}</label>
            {list}
        </div>
    }
    .into_any()
}

/// What the day that is looked at would set, and what it loses. Only its words follow the scenario, so that the button keeps the
/// keyboard when it is pressed.
fn chosen_day(desk: WeatherDesk, state: AppState) -> AnyView {
    let date = derived(move || {
        let held = desk.held.get()?;
        held.days.get(desk.day.get()).map(|day| day.date)
    });
    let told = derived(move || {
        let on_day = desk.on_day(date.get()?)?;
        Some(on_day.map(|taken| {
            let voice = state.voice.get();
            [text::would_set(&taken, &voice), text::loses(&taken, &voice)]
        }))
    });
    let said = move |index: usize| {
        words(move || match told.get() {
            Some(Ok(said)) => said[index].clone(),
            _ => String::new(),
        })
    };
    let trouble = words(move || told.get().and_then(Result::err).unwrap_or_default());
    let put = click(move || {
        if let Some(date) = date.get_untracked() {
            desk.put_on(date);
        }
    });
    view! {
        <div data-weather="day">
            <p class="said">{said(0)}</p>
            <p class="note">{said(1)}</p>
            <p class="trouble" role="status">
                {trouble}
            </p>
            <button
                type="button"
                aria-disabled=words(move || (!matches!(told.get(), Some(Ok(_)))).to_string())
                on:click=put
            >
                {text::USE}
            </button>
            {taken_note(desk)}
        </div>
    }
    .into_any()
}

/// Says that the scenario is on the day, with the way back.
pub(super) fn taken_note(desk: WeatherDesk) -> AnyView {
    view! {
        <div role="status">
            {part(move || {
                desk.taken
                    .get()
                    .then(|| {
                        let back = click(move || {
                            desk.taken.set(false);
                            desk.state.back();
                        });
                        view! {
                            <div class="taken">
                                {paragraph("", text::TAKEN.to_owned())}
                                <button type="button" on:click=back>
                                    {crate::text::page::UNDO}
                                </button>
                            </div>
                        }
                        .into_any()
                    })
            })}
        </div>
    }
    .into_any()
}
