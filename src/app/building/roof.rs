//! The roof to scale: things on it are moved by pointer and keyboard, and what is wrong with where they stand is said.

mod hand;
mod lists;
mod picture;

use crate::inputs::{Opened, number_row};
use crate::live::{click, derived, part, words};
use crate::state::AppState;
use crate::text::Voice;
use crate::text::roof as text;
use hand::{Held, things};
use leptos::prelude::*;
use noonday_engine::advice::{RoofReport, roof_report};
use noonday_engine::roof::{ItemKind, Rectangle, arrange};
use noonday_engine::scenario::{Field, MOST_PLAN_PANELS, ScenarioDocument, field};
use noonday_engine::simulation::roof_plan;
use picture::Sight;

/// Everything that may stand on a roof.
const KINDS: [ItemKind; MOST_PLAN_PANELS + 4] = [
    ItemKind::Panel(0),
    ItemKind::Panel(1),
    ItemKind::Panel(2),
    ItemKind::Panel(3),
    ItemKind::Panel(4),
    ItemKind::Panel(5),
    ItemKind::Panel(6),
    ItemKind::Panel(7),
    ItemKind::Unit,
    ItemKind::Fan,
    ItemKind::Hatch(0),
    ItemKind::Hatch(1),
];

/// What the part works with.
#[derive(Clone, Copy)]
struct Bench {
    state: AppState,
    /// The roof as it is shown, with what is being dragged where the hand has it.
    report: Memo<RoofReport>,
    voice: Memo<Voice>,
    chosen: RwSignal<Option<ItemKind>>,
    held: RwSignal<Option<Held>>,
    /// What was done, to read.
    said: RwSignal<String>,
    /// Where something was moved, for those who do not see it.
    heard: RwSignal<String>,
}

/// The part, once it is opened.
pub(super) fn view(state: AppState) -> AnyView {
    let held = RwSignal::new(None::<Held>);
    let report = derived(move || {
        state.checked.with(|checked| {
            let document = checked.scenario.document();
            let Some(held) = held.get() else {
                return roof_report(document);
            };
            let mut moved = document.clone();
            put(&mut moved, held.kind, &held.place);
            roof_report(&moved)
        })
    });
    let bench = Bench {
        state,
        report,
        voice: state.voice,
        chosen: RwSignal::new(None),
        held,
        said: RwSignal::new(String::new()),
        heard: RwSignal::new(String::new()),
    };
    view! {
        <p class="caution">{text::CUT_CAUTION}</p>
        {sheet_of_plan(bench)}
        <p class="note">{text::KEY} " " {text::HOW}</p>
        <p class="visually-hidden" role="status">
            {words(move || bench.heard.get())}
        </p>
        {part(move || bench.chosen.get().map(exact_place))}
        {lists::findings(bench)}
        {buttons(bench)}
        <p class="said" role="status">
            {words(move || bench.said.get())}
        </p>
        {lists::rest(bench)}
    }
    .into_any()
}

fn sheet_of_plan(bench: Bench) -> AnyView {
    let Bench { report, voice, .. } = bench;
    let sight = derived(move || report.with(|report| Sight::of(&report.plan)));
    let described = words(move || report.with(|report| text::plan_described(report, &voice.get())));
    let ground = words(move || report.with(|report| picture::ground(report, &voice.get())));
    let marks = words(move || {
        report.with(|report| picture::marks(report, bench.chosen.get(), &voice.get()))
    });
    view! {
        <div class="roof-plan" role="group" aria-label=described>
            <svg viewBox=words(move || sight.get().view_box()) focusable="false">
                <g aria-hidden="true" inner_html=ground></g>
                {things(bench)}
                <g aria-hidden="true" class="r-marks" inner_html=marks></g>
            </svg>
        </div>
    }
    .into_any()
}

/// The two boxes in which the place of what is chosen is typed.
fn exact_place(kind: ItemKind) -> AnyView {
    let rows = place_fields(kind)
        .into_iter()
        .flatten()
        .filter_map(|field| field.number().map(|number| number_row(field, number)))
        .collect_view();
    view! {
        <fieldset class="part roof-place">
            <legend>{text::name(kind)}</legend>
            {rows}
        </fieldset>
    }
    .into_any()
}

/// The fields that hold the place of a thing: from the front, from the left.
fn place_fields(kind: ItemKind) -> [Option<&'static Field>; 2] {
    let thing = match kind {
        ItemKind::Unit => "unit".to_owned(),
        ItemKind::Fan => "fan".to_owned(),
        ItemKind::Hatch(index) => format!("hatches.{index}"),
        ItemKind::Panel(index) => format!("panels.{index}"),
    };
    ["from_front_m", "from_left_m"].map(|side| field(&format!("roof.{thing}.{side}")))
}

/// Writes a place into a document.
fn put(document: &mut ScenarioDocument, kind: ItemKind, place: &Rectangle) {
    let values = [place.from_front_m, place.from_left_m];
    for (field, value) in place_fields(kind).into_iter().zip(values) {
        if let Some(number) = field.and_then(Field::number) {
            (number.write)(document, value.clamp(number.minimum, number.maximum));
        }
    }
}

fn buttons(bench: Bench) -> AnyView {
    let state = bench.state;
    let opened = expect_context::<Opened>();
    let from_plan = derived(move || {
        state
            .document
            .with(|document| document.roof.panels_from_plan)
    });
    let switch = move || {
        if let Some(field) = field("roof.panels_from_plan") {
            state.edit(field, |document| {
                document.roof.panels_from_plan = !document.roof.panels_from_plan;
            });
        }
    };
    let switch_text = move || {
        if from_plan.get() {
            text::USE_NUMBER
        } else {
            text::USE_PLAN
        }
    };
    view! {
        <div class="building-actions">
            <button type="button" on:click=click(move || arrange_panels(bench))>
                {text::ARRANGE}
            </button>
            <button type="button" on:click=click(switch)>
                {words(move || switch_text().to_owned())}
            </button>
            <button type="button" on:click=click(move || opened.show("roof.length_m"))>
                {text::TO_INPUTS}
            </button>
        </div>
    }
    .into_any()
}

/// Arranges the panels, as one step.
fn arrange_panels(bench: Bench) {
    let state = bench.state;
    let Some(field) = field("roof.panels.0.from_front_m") else {
        return;
    };
    let mut told = String::new();
    state.edit_at_once(field, |document| {
        let panel = &document.roof.panel;
        let count = panel.count as usize;
        let found = arrange(&roof_plan(document), count, panel.length_m, panel.width_m);
        for (index, place) in found.places.iter().enumerate() {
            put(document, ItemKind::Panel(index), place);
        }
        if found.turned {
            let panel = &mut document.roof.panel;
            std::mem::swap(&mut panel.length_m, &mut panel.width_m);
        }
        told = text::arranged(found.places.len(), count, found.turned);
    });
    bench.said.set(told);
}
