//! The log: where it is pasted, dropped or typed, what is taken of it, and the fit.

use super::lesson::{Kept, Phase, Teaching};
use super::taught;
use crate::format::{Typed, UnitSystem, parse_clock};
use crate::live::{click, derived, flag, part, with_value, words};
use crate::state::AppState;
use crate::text::proving as text;
use crate::widgets::{paragraph, progress};
use leptos::prelude::*;
use noonday_engine::advice::learning::{LOG_GREATEST_BYTES, LogError};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{File, FileList, HtmlInputElement};

/// The part.
pub(super) fn view(state: AppState) -> AnyView {
    let teaching = expect_context::<Teaching>();
    let read = teaching.read();
    let trouble = derived(move || {
        let refused = teaching.refused_file.get();
        refused.or_else(|| read.with(|read| read.as_ref()?.as_ref().err().cloned()))
    });
    let facts = derived(move || {
        read.with(|read| {
            let log = read.as_ref()?.as_ref().ok()?;
            Some(text::log_facts(log, &state.voice.get()))
        })
    });
    let can_fit = derived(move || read.with(|read| matches!(read, Some(Ok(_)))));
    view! {
        <div class="group-body">
            <p class="note">{text::LEARN_NOTE}</p>
            <p class="caution">{text::LEARN_CAUTION}</p>
            {pasted(teaching, trouble)}
            {unsaid(teaching, state)}
            <p class="note" role="status" data-proving="facts">
                {words(move || facts.get().unwrap_or_default())}
            </p>
            {fit(teaching, can_fit)}
            {part(move || {
                let found = teaching.learned.get()?;
                let voice = state.voice.get();
                taught::view(teaching, &found.1, &voice)
            })}
        </div>
    }
    .into_any()
}

fn pasted(teaching: Teaching, trouble: Memo<Option<String>>) -> AnyView {
    let chosen = move |event: leptos::ev::Event| {
        let input = event
            .target()
            .and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        if let Some(input) = input {
            take_first(teaching, input.files());
            // The same file may be chosen again.
            input.set_value("");
        }
    };
    let dropped = move |event: leptos::ev::DragEvent| {
        let files = event.data_transfer().and_then(|data| data.files());
        if files.as_ref().is_some_and(|files| files.length() > 0) {
            event.prevent_default();
            take_first(teaching, files);
        }
    };
    view! {
        <div class="field wide" class:troubled=flag(move || trouble.get().is_some())>
            <label for="log-text">{text::LOG_TEXT}</label>
            <textarea
                id="log-text"
                rows="8"
                spellcheck="false"
                autocomplete="off"
                placeholder=text::LOG_SAMPLE
                prop:value=words(move || teaching.kept.with(|kept| kept.text.clone()))
                aria-invalid=words(move || trouble.get().is_some().to_string())
                aria-describedby="log-trouble"
                on:input=with_value(move |typed| teaching.change(|kept| kept.text = typed))
                on:drop=dropped
            ></textarea>
            <p class="trouble" id="log-trouble" role="status">
                {words(move || trouble.get().unwrap_or_default())}
            </p>
            <div class="log-tools">
                <label class="file">
                    {text::LOG_FILE}
                    <input type="file" accept=".csv,.tsv,.txt,text/*" on:change=chosen />
                </label>
                <button
                    type="button"
                    class="quiet"
                    on:click=click(move || teaching.change(|kept| kept.text.clear()))
                >
                    {text::LOG_CLEAR}
                </button>
            </div>
        </div>
    }
    .into_any()
}

/// Takes the first of the files in, unless it is larger than what is read.
fn take_first(teaching: Teaching, files: Option<FileList>) {
    let Some(file) = files.and_then(|files| files.get(0)) else {
        return;
    };
    if file.size() > LOG_GREATEST_BYTES as f64 {
        let bytes = file.size() as usize;
        let why = text::log_error(&LogError::TooLong { bytes });
        return teaching.refused_file.set(Some(why));
    }
    spawn_local(take(teaching, file));
}

async fn take(teaching: Teaching, file: File) {
    // A file that the browser cannot read leaves what is there.
    if let Ok(read) = JsFuture::from(file.text()).await
        && let Some(read) = read.as_string()
    {
        teaching.change(|kept| kept.text = read);
    }
}

/// Where a tick stands.
type Tick = fn(&mut Kept) -> &mut bool;

fn unsaid(teaching: Teaching, state: AppState) -> AnyView {
    let ticks: [(&str, Tick); 4] = [
        (text::FAHRENHEIT, |kept| &mut kept.assumed.unsaid.fahrenheit),
        (text::HOURS, |kept| &mut kept.assumed.unsaid.hours),
        (text::OCCUPIED, |kept| &mut kept.assumed.occupied),
        (text::COOLED, |kept| &mut kept.assumed.cooled),
    ];
    let tick = move |(name, place): (&'static str, Tick)| {
        let ticked = derived(move || *place(&mut teaching.kept.get()));
        view! {
            <label class="tick">
                <input
                    type="checkbox"
                    prop:checked=flag(move || ticked.get())
                    on:change=crate::live::at_event(move || {
                        teaching.change(|kept| *place(kept) = !*place(kept));
                    })
                />
                <span>{name}</span>
            </label>
        }
        .into_any()
    };
    let hour = move || {
        let hour = teaching.kept.with(|kept| kept.assumed.unsaid.begins_hour);
        let units: UnitSystem = state.units.get();
        units.clock(hour).replace('\u{a0}', " ")
    };
    let typed = with_value(move |typed| {
        if let Typed::Value(hour) = parse_clock(&typed)
            && (0.0..=24.0).contains(&hour)
        {
            teaching.change(|kept| kept.assumed.unsaid.begins_hour = hour);
        }
    });
    view! {
        <fieldset class="part unsaid">
            <legend>{text::UNSAID}</legend>
            {ticks.map(tick).collect_view()}
            <div class="field number">
                <label for="log-begins">{text::BEGINS}</label>
                <span class="entry">
                    <input
                        type="text"
                        id="log-begins"
                        class="hour"
                        autocomplete="off"
                        prop:value=words(hour)
                        on:change=typed
                    />
                </span>
            </div>
        </fieldset>
    }
    .into_any()
}

/// The button, and how far the fit is.
fn fit(teaching: Teaching, can_fit: Memo<bool>) -> AnyView {
    let phase = teaching.phase;
    let done = derived(move || match phase.get() {
        Phase::Working(share) => Some(share),
        _ => None,
    });
    let is_working = derived(move || done.get().is_some());
    let told = move || match phase.get() {
        Phase::Idle | Phase::Done => "",
        Phase::Working(_) => text::FITTING,
        Phase::Stopped => text::FIT_STOPPED,
        Phase::Refused => text::FIT_REFUSED,
        Phase::Failed => text::FIT_FAILED,
        Phase::Unavailable => text::NO_WORKER,
    };
    let act = click(move || {
        if is_working.get_untracked() {
            teaching.stop();
        } else if can_fit.get_untracked() {
            teaching.fit();
        }
    });
    view! {
        <div class="work-status">
            <button
                type="button"
                aria-disabled=words(move || (!can_fit.get() && !is_working.get()).to_string())
                class:idle=flag(move || !can_fit.get() && !is_working.get())
                on:click=act
            >
                {words(move || {
                    if is_working.get() { text::STOP_FIT } else { text::FIT }.to_owned()
                })}
            </button>
            <p class="note" role="status">
                {words(move || told().to_owned())}
            </p>
            {progress(text::FIT_PROGRESS, done)}
        </div>
        {part(move || {
            let adopted = teaching.adopted.get()?;
            let still = teaching.state.document.with(|now| *now == adopted);
            still.then(|| taught_undo(teaching))
        })}
    }
    .into_any()
}

fn taught_undo(teaching: Teaching) -> AnyView {
    view! {
        <div class="taken">
            {paragraph("", text::ADOPTED.to_owned())}
            <button
                type="button"
                on:click=click(move || {
                    teaching.adopted.set(None);
                    teaching.state.back();
                })
            >
                {crate::text::page::UNDO}
            </button>
        </div>
    }
    .into_any()
}
