//! The whole summer: its span, its run, the calendar of its days and the numbers of one of them.

use super::calendar::{calendar, key_sign, led_to};
use super::desk::{Phase, WeatherDesk};
use super::file::{chooser, taken_note};
use crate::format::{calendar_names, parse_date};
use crate::live::{click, derived, part, with_value, words};
use crate::save::save_text;
use crate::state::AppState;
use crate::text::Voice;
use crate::text::weather::file::NEEDS_FILE;
use crate::text::weather::summer as text;
use crate::widgets::{paragraph, plain, progress, sheet};
use leptos::prelude::*;
use noonday_engine::advice::summer::{Summer, same_summer};
use noonday_engine::scenario::Scenario;
use std::sync::Arc;
use text::Went;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

/// Longest span, days.
const MOST_DAYS: u32 = 366;

/// The part.
pub(super) fn view(state: AppState) -> AnyView {
    let desk = expect_context::<WeatherDesk>();
    view! {
        <div class="group-body">
            <p class="note">{text::NOTE}</p>
            {part(move || {
                Some(match desk.held.get() {
                    None => without_file(desk),
                    Some(_) => with_file(desk, state),
                })
            })}
        </div>
    }
    .into_any()
}

fn without_file(desk: WeatherDesk) -> AnyView {
    view! {
        <p class="said">{NEEDS_FILE}</p>
        {chooser(desk)}
    }
    .into_any()
}

fn with_file(desk: WeatherDesk, state: AppState) -> AnyView {
    let asks_nothing = derived(move || state.checked.with(|checked| !checked.scenario.has_need()));
    view! {
        {part(move || {
            asks_nothing.get().then(|| paragraph("trouble", text::NOTHING_ASKED.to_owned()))
        })}
        {span(desk)}
        {run(desk)}
        {part(move || {
            let found = desk.summer.get()?;
            Some(shown(desk, state, found))
        })}
    }
    .into_any()
}

/// First day and number of days.
fn span(desk: WeatherDesk) -> AnyView {
    let first = move || {
        let (date, _) = desk.span.get();
        format!("{:04}-{:02}-{:02}", date.year(), date.month(), date.day())
    };
    let moved = with_value(move |typed| {
        if let Some(date) = parse_date(&typed) {
            desk.span.update(|span| span.0 = date);
        }
    });
    let counted = with_value(move |typed| {
        if let Ok(days) = typed.parse::<u32>() {
            desk.span.update(|span| span.1 = days.clamp(1, MOST_DAYS));
        }
    });
    view! {
        <div class="summer-span">
            <div class="field">
                <label for="summer-from">{text::FROM}</label>
                <input type="date" id="summer-from" prop:value=words(first) on:change=moved />
            </div>
            <div class="field number">
                <label for="summer-days">{text::DAYS}</label>
                <span class="entry">
                    <input
                        type="text"
                        inputmode="numeric"
                        id="summer-days"
                        autocomplete="off"
                        prop:value=words(move || desk.span.get().1.to_string())
                        on:change=counted
                    />
                </span>
            </div>
        </div>
    }
    .into_any()
}

/// The most days that the file holds from the first of the span; none where it does not hold that.
fn days_held(desk: WeatherDesk) -> Option<usize> {
    let held = desk.held.get()?;
    let (first, _) = desk.span.get();
    let from = held.weather.clone().starting_on(first.month(), first.day());
    from.ok().map(|from| from.reaches())
}

/// The button, and how far the run is.
fn run(desk: WeatherDesk) -> AnyView {
    let phase = desk.phase;
    let done = derived(move || match phase.get() {
        Phase::Working(share) => Some(share),
        _ => None,
    });
    let is_working = derived(move || done.get().is_some());
    let held = derived(move || days_held(desk));
    let act = click(move || {
        if is_working.get_untracked() {
            return desk.stop();
        }
        if let Some(most) = held.get_untracked() {
            desk.span
                .update(|span| span.1 = span.1.min(most as u32).max(1));
            desk.run();
        }
    });
    let told = move || {
        if held.get().is_none() {
            text::NO_SUCH_DAY
        } else {
            desk.told()
        }
    };
    view! {
        <div class="work-status" data-took-ms=words(move || desk.took_ms.get().to_string())>
            <button type="button" aria-disabled=words(move || held.get().is_none().to_string()) on:click=act>
                {words(move || {
                    if is_working.get() { text::STOP } else { text::RUN }.to_owned()
                })}
            </button>
            <p class="note" role="status" data-weather="phase">
                {words(move || told().to_owned())}
            </p>
            {progress(text::PROGRESS, done)}
        </div>
    }
    .into_any()
}

/// What was found so far.
fn shown(desk: WeatherDesk, state: AppState, found: Arc<(Scenario, Summer)>) -> AnyView {
    let (scenario, summer) = (&found.0, &found.1);
    // Its own voice: that of the page changes with the scenario, and the days stay those of the one that was run.
    let voice = Voice::new(scenario.document(), state.units.get());
    let sentences = text::counts(summer, &voice)
        .into_iter()
        .chain(text::lowest(summer, scenario.document(), &voice))
        .map(|sentence| paragraph("said", sentence))
        .collect_view();
    let outdated = {
        let found = found.clone();
        part(move || {
            let same = state
                .checked
                .with(|checked| same_summer(checked.scenario.document(), found.0.document()));
            (!same).then(|| paragraph("trouble", text::OUTDATED.to_owned()))
        })
    };
    let save = {
        let found = found.clone();
        click(move || {
            save_text(
                text::CSV_FILE,
                "text/csv;charset=utf-8",
                &text::csv(&found.1),
            );
        })
    };
    view! {
        <div data-weather="counts">{sentences}</div>
        {(!summer.has_cooler).then(|| paragraph("note", text::NO_COOLER.to_owned()))}
        {outdated}
        <p class="caution">{text::CAUTION}</p>
        {key()}
        {months(desk, &found)}
        {part(move || Some(one_day(desk, state, &found, desk.chosen.get())))}
        <p class="note">{text::ACCURACY}</p>
        <button type="button" on:click=save>
            {text::SAVE}
        </button>
    }
    .into_any()
}

/// What the signs mean.
fn key() -> AnyView {
    let lines = Went::ALL.map(|went| {
        view! {
            <li>
                <span class="sign" inner_html=key_sign(went)></span>
                {went.name()}
            </li>
        }
        .into_any()
    });
    view! { <ul class="summer-key">{lines.into_iter().collect_view()}</ul> }.into_any()
}

/// The calendar; one of its days is chosen by a tap or by arrow keys.
fn months(desk: WeatherDesk, found: &Arc<(Scenario, Summer)>) -> AnyView {
    let chosen = desk.chosen;
    let choose = move |day| {
        desk.taken.set(false);
        chosen.set(Some(day));
    };
    let html = calendar(&found.1, &calendar_names());
    let days = found.1.days.len();
    let holder = NodeRef::<leptos::html::Div>::new();
    let tapped = move |event: leptos::ev::MouseEvent| {
        if let Some(day) = event.target().and_then(|target| day_of(&target)) {
            choose(day);
        }
    };
    let keyed = move |event: leptos::ev::KeyboardEvent| {
        let from = event.target().and_then(|target| day_of(&target));
        let Some(to) = from.and_then(|from| led_to(&event.key(), from, days)) else {
            return;
        };
        event.prevent_default();
        choose(to);
        let cell = holder
            .get_untracked()
            .and_then(|holder| cell_of(&holder, to));
        if let Some(cell) = cell {
            // A cell that cannot take the focus leaves it where it is.
            let _ = cell.focus();
        }
    };
    Effect::new(move |before: Option<Option<usize>>| {
        let now = chosen.get();
        if let Some(holder) = holder.get() {
            if let Some(cell) = cell_of(&holder, before.flatten().unwrap_or_default()) {
                mark(&cell, false);
            }
            if let Some(cell) = cell_of(&holder, now.unwrap_or_default()) {
                mark(&cell, now.is_some());
                let _ = cell.set_attribute("tabindex", "0");
            }
        }
        now
    });
    view! {
        <div class="calendar" node_ref=holder inner_html=html on:click=tapped on:keydown=keyed></div>
    }
    .into_any()
}

/// Marks the chosen day, which alone the tab key reaches.
fn mark(cell: &HtmlElement, is_chosen: bool) {
    // Setting an attribute under a valid name cannot fail.
    let _ = cell.set_attribute("aria-pressed", if is_chosen { "true" } else { "false" });
    let _ = cell.set_attribute("tabindex", if is_chosen { "0" } else { "-1" });
}

fn day_of(target: &web_sys::EventTarget) -> Option<usize> {
    let element = target.dyn_ref::<Element>()?;
    let cell = element.closest("button[data-day]").ok()??;
    cell.get_attribute("data-day")?.parse().ok()
}

fn cell_of(holder: &Element, day: usize) -> Option<HtmlElement> {
    let cell = holder.query_selector(&format!("button[data-day=\"{day}\"]"));
    cell.ok()??.dyn_into().ok()
}

/// The numbers of the chosen day.
fn one_day(
    desk: WeatherDesk,
    state: AppState,
    found: &Arc<(Scenario, Summer)>,
    chosen: Option<usize>,
) -> AnyView {
    let summer = &found.1;
    let Some(day) = chosen.and_then(|index| summer.days.get(index)) else {
        return paragraph("note", text::CHOOSE.to_owned());
    };
    let voice = Voice::new(found.0.document(), state.units.get());
    let rows = summer.windows.iter().zip(&day.held).map(|(window, held)| {
        let cells = text::held_cells(held, window, &voice);
        (plain(text::window_name(window, &voice)), cells)
    });
    let table = sheet(text::DAY_HEADS[0], &text::DAY_HEADS, rows.collect());
    let date = day.facts.date;
    let power = summer
        .has_cooler
        .then(|| paragraph("note", text::day_power(day, &voice)));
    view! {
        <div data-weather="one-day">
            <p class="said" role="status">
                {text::day_facts(day, &voice)}
            </p>
            {table}
            {power}
            <button type="button" on:click=click(move || desk.put_on(date))>
                {text::OPEN}
            </button>
            {taken_note(desk)}
        </div>
    }
    .into_any()
}
