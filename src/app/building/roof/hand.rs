//! Moving things on the plan, by pointer and by keyboard.

use super::picture::{Sight, WIDTH, thing};
use super::{Bench, KINDS, place_fields, put};
use crate::live::{derived, flag, words};
use crate::text::roof as text;
use leptos::ev::{KeyboardEvent, PointerEvent};
use leptos::prelude::*;
use noonday_engine::roof::{ItemKind, Rectangle};
use wasm_bindgen::JsCast;

/// With Shift, keys go so many steps at once.
const LONG_STEP: f64 = 10.0;

/// A thing that a pointer holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Held {
    pub(super) kind: ItemKind,
    /// Where it is now.
    pub(super) place: Rectangle,
    /// Where it was taken, and where the pointer was then, CSS pixels.
    taken: Rectangle,
    pointer: (f64, f64),
    metres_per_pixel: f64,
}

/// All things of the plan. Each stays while it is there, so that it keeps the keyboard while it moves.
pub(super) fn things(bench: Bench) -> AnyView {
    KINDS.map(|kind| one(bench, kind)).collect_view().into_any()
}

fn one(bench: Bench, kind: ItemKind) -> AnyView {
    let Bench { report, voice, .. } = bench;
    let there = derived(move || report.with(|report| report.plan.item(kind).is_some()));
    let drawn = words(move || report.with(|report| thing(report, kind)));
    let described = words(move || report.with(|report| text::labelled(kind, report, &voice.get())));
    let class = match kind {
        ItemKind::Unit => "r-thing r-unit",
        ItemKind::Panel(_) => "r-thing r-panel",
        ItemKind::Fan | ItemKind::Hatch(_) => "r-thing r-hole",
    };
    view! {
        <g
            class=class
            class:r-chosen=flag(move || bench.chosen.get() == Some(kind))
            class:r-gone=flag(move || !there.get())
            role="button"
            tabindex="0"
            aria-roledescription=text::MOVABLE
            aria-label=described
            aria-pressed=words(move || (bench.chosen.get() == Some(kind)).to_string())
            inner_html=drawn
            on:focus=move |_| bench.chosen.set(Some(kind))
            on:keydown=pressed(bench, kind)
            // Engines differ in whether a shape of an SVG has a touch-action; this keeps the page still in all of them.
            on:touchstart=|event: leptos::ev::TouchEvent| event.prevent_default()
            on:pointerdown=taken(bench, kind)
            on:pointermove=moved(bench)
            on:pointerup=let_go(bench)
            on:pointercancel=dropped(bench)
        ></g>
    }
    .into_any()
}

type OnPointer = Box<dyn FnMut(PointerEvent)>;

fn target(event: &PointerEvent) -> Option<web_sys::Element> {
    event.current_target()?.dyn_into().ok()
}

fn at(event: &PointerEvent) -> (f64, f64) {
    (f64::from(event.client_x()), f64::from(event.client_y()))
}

fn taken(bench: Bench, kind: ItemKind) -> OnPointer {
    Box::new(move |event| {
        if !event.is_primary() || event.button() != 0 {
            return;
        }
        let Some(element) = target(&event) else {
            return;
        };
        bench.chosen.set(Some(kind));
        let sheet = element.closest("svg").ok().flatten();
        let Some(width) = sheet.map(|sheet| sheet.get_bounding_client_rect().width()) else {
            return;
        };
        let plan = bench.report.with_untracked(|report| {
            let place = report.plan.item(kind).map(|item| item.place);
            place.map(|place| (place, Sight::of(&report.plan).scale))
        });
        let Some((place, scale)) = plan.filter(|_| width > 0.0) else {
            return;
        };
        // Without capture a fast hand leaves the thing behind; it still moves while the pointer is over it.
        let _ = element.set_pointer_capture(event.pointer_id());
        bench.held.set(Some(Held {
            kind,
            place,
            taken: place,
            pointer: at(&event),
            metres_per_pixel: WIDTH / width / scale,
        }));
    })
}

fn moved(bench: Bench) -> OnPointer {
    Box::new(move |event| {
        let Some(held) = bench.held.get_untracked() else {
            return;
        };
        let (x, y) = at(&event);
        let along_m = (x - held.pointer.0) * held.metres_per_pixel;
        let across_m = (held.pointer.1 - y) * held.metres_per_pixel;
        let place = shifted(bench, held.taken, along_m, across_m);
        if place != held.place {
            bench.held.set(Some(Held { place, ..held }));
        }
    })
}

fn let_go(bench: Bench) -> OnPointer {
    Box::new(move |_| {
        let Some(held) = bench.held.get_untracked() else {
            return;
        };
        bench.held.set(None);
        if held.place != held.taken {
            write(bench, held.kind, held.place, true);
        }
    })
}

fn dropped(bench: Bench) -> OnPointer {
    Box::new(move |_| bench.held.set(None))
}

fn pressed(bench: Bench, kind: ItemKind) -> Box<dyn FnMut(KeyboardEvent)> {
    Box::new(move |event| {
        let (along, across) = match event.key().as_str() {
            "ArrowLeft" => (-1.0, 0.0),
            "ArrowRight" => (1.0, 0.0),
            "ArrowUp" => (0.0, 1.0),
            "ArrowDown" => (0.0, -1.0),
            "Escape" => {
                bench.held.set(None);
                return;
            }
            "Enter" | " " => {
                event.prevent_default();
                bench.chosen.set(Some(kind));
                return;
            }
            _ => return,
        };
        event.prevent_default();
        let step_m = bench
            .voice
            .with_untracked(|voice| voice.units.plan_step_m());
        let step_m = if event.shift_key() {
            LONG_STEP * step_m
        } else {
            step_m
        };
        let place = bench
            .report
            .with_untracked(|report| report.plan.item(kind).map(|item| item.place));
        if let Some(place) = place {
            let place = shifted(bench, place, along * step_m, across * step_m);
            write(bench, kind, place, false);
        }
    })
}

/// A place moved by so much, on the grid and on the roof.
fn shifted(bench: Bench, place: Rectangle, along_m: f64, across_m: f64) -> Rectangle {
    let units = bench.voice.with_untracked(|voice| voice.units);
    let wanted = Rectangle {
        from_front_m: units.on_plan_grid(place.from_front_m + along_m),
        from_left_m: units.on_plan_grid(place.from_left_m + across_m),
        ..place
    };
    let held = bench
        .report
        .with_untracked(|report| report.plan.held_on_roof(wanted));
    // Held at an edge it may end between two steps: to the tenth of a millimetre, so that it is short to write.
    let short = |value_m: f64| (value_m * 10_000.0).floor() / 10_000.0;
    let stopped = |wanted_m: f64, held_m: f64| {
        if wanted_m == held_m {
            held_m
        } else {
            short(held_m)
        }
    };
    Rectangle {
        from_front_m: stopped(wanted.from_front_m, held.from_front_m),
        from_left_m: stopped(wanted.from_left_m, held.from_left_m),
        ..held
    }
}

/// Writes a place into the document, as a step of its own or as part of the one that is being made, and says it.
fn write(bench: Bench, kind: ItemKind, place: Rectangle, whole: bool) {
    let Some(field) = place_fields(kind)[0] else {
        return;
    };
    let change = |document: &mut noonday_engine::scenario::ScenarioDocument| {
        put(document, kind, &place);
    };
    if whole {
        bench.state.edit_at_once(field, change);
    } else {
        bench.state.edit(field, change);
    }
    let voice = bench.voice.get_untracked();
    let said = bench
        .report
        .with_untracked(|report| text::described(kind, report, &voice));
    bench.said.set(String::new());
    bench.heard.set(said);
}
