//! Scenarios side by side: up to four over each other, what each gives, and what is entered differently. Built once it is opened;
//! each is run where it stands, which takes a few milliseconds.

mod columns;
mod overlay;
mod tables;

use crate::desk::Desk;
use crate::live::{at_event, click, derived, flag, part, words};
use crate::sight::on_resize;
use crate::state::AppState;
use crate::text::answer::answer;
use crate::text::{Voice, comparing as text};
use crate::widgets::{disclosure, paragraph};
use columns::{Candidate, Choice, Column, Kept, Ran, columns_run};
use leptos::html;
use leptos::prelude::*;
use overlay::{Room, Strand};

/// Most that are compared.
const MOST: usize = 4;
/// How many are chosen to begin with, if there are so many.
const AT_FIRST: usize = 3;
/// Heights of the bands, CSS pixels.
const HEIGHTS: [f64; 3] = [230.0, 170.0, 180.0];

/// The section's own state.
#[derive(Clone, Copy)]
struct Comparing {
    state: AppState,
    desk: Desk,
    chosen: RwSignal<Vec<Choice>>,
    kept: StoredValue<Kept>,
    width: RwSignal<f64>,
}

/// The section.
#[component]
pub fn SideBySide() -> impl IntoView {
    view! {
        <section id="compare" class="compare" aria-labelledby="compare-title">
            <h2 id="compare-title">{text::COMPARING}</h2>
            <p class="note">{text::COMPARING_NOTE}</p>
            {disclosure("building-part", text::CHOOSE, opened)}
        </section>
    }
}

fn opened(state: AppState) -> AnyView {
    let comparing = Comparing {
        state,
        desk: expect_context::<Desk>(),
        chosen: RwSignal::new(Vec::new()),
        kept: StoredValue::new(Vec::new()),
        width: RwSignal::new(0.0),
    };
    comparing.chosen.set(comparing.first_choice());
    let element = NodeRef::<html::Div>::new();
    let measure = move || {
        if let Some(element) = element.get_untracked() {
            comparing.width.set(f64::from(element.offset_width()));
        }
    };
    Effect::new(move |_| {
        if element.get().is_some() {
            measure();
        }
    });
    on_resize(measure);
    view! {
        <div class="compared" node_ref=element>
            {choice_list(comparing)}
            {part(move || Some(comparing.shown()))}
        </div>
    }
    .into_any()
}

/// A box for each that can be chosen.
fn choice_list(comparing: Comparing) -> AnyView {
    let chosen = comparing.chosen;
    let full = derived(move || chosen.with(|chosen| chosen.len() >= MOST));
    let candidates = derived(move || comparing.candidates());
    let boxes = part(move || {
        let boxes = candidates
            .get()
            .into_iter()
            .map(|candidate| choice_box(comparing, candidate, full))
            .collect_view();
        Some(boxes.into_any())
    });
    view! {
        <fieldset class="choice">
            <legend>{text::WHICH}</legend>
            <div class="choices">{boxes}</div>
            <p class="note" role="status">
                {words(move || {
                    let few = chosen.with(|chosen| chosen.len() < 2);
                    match (full.get(), few) {
                        (true, _) => text::FOUR,
                        (false, true) => text::TOO_FEW,
                        _ => "",
                    }
                        .to_owned()
                })}
            </p>
        </fieldset>
    }
    .into_any()
}

fn choice_box(comparing: Comparing, candidate: Candidate, full: Memo<bool>) -> AnyView {
    let chosen = comparing.chosen;
    let (choice, toggled) = (candidate.choice.clone(), candidate.choice);
    let is_chosen = derived(move || chosen.with(|chosen| chosen.contains(&choice)));
    let toggle = at_event(move || {
        chosen.update(|chosen| {
            let before = chosen.len();
            chosen.retain(|other| *other != toggled);
            if chosen.len() == before && before < MOST {
                chosen.push(toggled.clone());
            }
        });
    });
    view! {
        <label class="tick">
            <input
                type="checkbox"
                prop:checked=flag(move || is_chosen.get())
                disabled=flag(move || full.get() && !is_chosen.get())
                on:change=toggle
            />
            <span>
                <b>{candidate.name}</b>
                " "
                <span class="when">{candidate.which}</span>
            </span>
        </label>
    }
    .into_any()
}

impl Comparing {
    /// Everything under the choice.
    fn shown(self) -> AnyView {
        let columns = self.columns();
        let width = self.width.get();
        if columns.len() < 2 || width <= 0.0 {
            return ().into_any();
        }
        let voice = self.state.voice.get();
        view! {
            {heads(self, &columns, &voice)}
            {bands(&columns, width, &voice)}
            {tables::answers(&columns, voice.units)}
            {tables::weights(columns_run(&columns), voice.units)}
            {tables::inputs(&columns, voice.units)}
        }
        .into_any()
    }

    fn open(self, choice: &Choice) {
        match choice {
            Choice::Shown => return,
            Choice::Own => self.desk.back_to_own(),
            Choice::Example => self.desk.open_example(),
            Choice::Saved(key) => self.desk.open(key),
        }
        // What was opened stands at the top.
        if let Some(head) = document().query_selector("h1").ok().flatten() {
            window().scroll_to_with_x_and_y(0.0, 0.0);
            crate::inputs::focus_on(&head);
        }
    }
}

/// A column's name, its line, its answer, and how to open it.
fn heads(comparing: Comparing, columns: &[Column], voice: &Voice) -> AnyView {
    let heads = columns
        .iter()
        .map(|column| {
            let name = text::column_name(column.letter, &column.candidate.name);
            let said = match &column.ran {
                Ok(ran) => {
                    let voice = Voice::new(ran.scenario.document(), voice.units);
                    paragraph("said", answer(&ran.advice, &voice).lead)
                }
                Err(why) => paragraph("trouble", text::cannot(why)),
            };
            let choice = column.candidate.choice.clone();
            let can_open = choice != Choice::Shown && column.ran.is_ok();
            let label = format!("{} “{}”", text::OPEN, column.candidate.name);
            let open = can_open.then(|| {
                view! {
                    <button
                        type="button"
                        class="quiet"
                        aria-label=label
                        on:click=click(move || comparing.open(&choice))
                    >
                        {text::OPEN}
                    </button>
                }
                .into_any()
            });
            view! {
                <li>
                    <span class="sample" inner_html=overlay::sample(column.place)></span>
                    <p>
                        <b>{name}</b>
                        " "
                        <span class="when">{column.candidate.which.clone()}</span>
                    </p>
                    {said}
                    {open}
                </li>
            }
            .into_any()
        })
        .collect_view();
    view! { <ul class="heads">{heads}</ul> }.into_any()
}

/// The three bands over each other.
fn bands(columns: &[Column], width: f64, voice: &Voice) -> AnyView {
    let strands: Vec<Strand> = columns
        .iter()
        .filter_map(|column| {
            Some(Strand {
                place: column.place,
                letter: column.letter,
                name: &column.candidate.name,
                ran: column.ran.as_ref().ok()?,
            })
        })
        .collect();
    if strands.is_empty() {
        return ().into_any();
    }
    type Draw = fn(&[Strand], Room, &Voice) -> String;
    type Say = fn(&Ran, &Voice) -> String;
    let say_heat: Say = |ran, voice| text::most_heat(overlay::most_heat_w(ran), voice);
    let all: [(&str, Draw, Say); 3] = [
        (text::TEMPERATURES, overlay::temperatures, |ran, voice| {
            text::warmest(&ran.advice, voice)
        }),
        (text::HEAT, overlay::heat, say_heat),
        (text::CHARGE, overlay::charge, |ran, voice| {
            text::lowest(&ran.advice, voice)
        }),
    ];
    all.into_iter()
        .zip(HEIGHTS)
        .map(|((heading, draw, say), height)| {
            let said: Vec<(char, String)> = strands
                .iter()
                .map(|strand| {
                    let voice = Voice::new(strand.ran.scenario.document(), voice.units);
                    (strand.letter, say(strand.ran, &voice))
                })
                .collect();
            let described = text::band_described(heading, &said);
            view! {
                <figure class="overlay">
                    <h3 aria-hidden="true">{heading}</h3>
                    <div
                        role="img"
                        aria-label=described
                        inner_html=draw(&strands, Room { width, height }, voice)
                    ></div>
                </figure>
            }
            .into_any()
        })
        .collect_view()
        .into_any()
}
