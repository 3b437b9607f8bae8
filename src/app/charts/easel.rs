//! The charts on their canvases: drawn together, once in a frame, after anything that they show has changed.

use super::fine::{FineCanvas, STEPS_PER_PIXEL};
use super::pen::{Drawn, Pen};
use super::skin::{Skin, room};
use super::{bank, heat, temperatures};
use crate::sight::watch;
use crate::state::AppState;
use leptos::html;
use leptos::prelude::*;
use plotters::prelude::IntoDrawingArea;
use plotters_canvas::CanvasBackend;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

/// Places of the charts.
pub const TEMPERATURES: usize = 0;
/// Sun and heat.
pub const HEAT: usize = 1;
/// Charge and power.
pub const BANK: usize = 2;

/// The canvases and what makes them be drawn anew.
#[derive(Clone, Copy)]
pub struct Easel {
    /// Canvases of the temperatures, of sun and heat, and of the bank; each is there once its part of the page is.
    pub canvases: [NodeRef<html::Canvas>; 3],
    /// Rises when size, pixel ratio or colours have changed.
    surroundings: RwSignal<u32>,
    /// Which canvases can be seen.
    seen: [RwSignal<bool>; 3],
    /// Which do not show the state yet.
    stale: StoredValue<[bool; 3]>,
    waiting: StoredValue<bool>,
    measured: StoredValue<Option<Measured>>,
}

/// Width and height, CSS pixels.
type Room = (f64, f64);

/// A canvas and its room.
type Sheet<'a> = (&'a HtmlCanvasElement, Room);

/// What the page says of the charts. To ask it makes the browser work out style and layout, so it is asked only when they may
/// have changed.
#[derive(Clone)]
struct Measured {
    skin: Skin,
    rooms: [Room; 3],
}

impl Measured {
    fn read(canvases: &[Option<HtmlCanvasElement>; 3]) -> Option<Self> {
        let any = canvases.iter().flatten().next()?;
        Some(Self {
            skin: Skin::read(any)?,
            rooms: std::array::from_fn(|place| {
                canvases[place].as_ref().map(room).unwrap_or_default()
            }),
        })
    }
}

impl Easel {
    /// An easel that draws what the state shows.
    pub fn new(state: AppState) -> Self {
        let easel = Self {
            canvases: std::array::from_fn(|_| NodeRef::new()),
            surroundings: RwSignal::new(0),
            seen: std::array::from_fn(|_| RwSignal::new(true)),
            stale: StoredValue::new([true; 3]),
            waiting: StoredValue::new(false),
            measured: StoredValue::new(None),
        };
        Effect::new(move |_| {
            state.advice.track();
            state.voice.track();
            state.sampled.track();
            state.pinned.track();
            state.held.track();
            easel.surroundings.track();
            easel.stale.set_value([true; 3]);
            easel.draw_soon(state);
        });
        for place in 0..easel.canvases.len() {
            Effect::new(move |_| {
                if let Some(canvas) = easel.canvases[place].get() {
                    easel.has_come(place, canvas, state);
                }
            });
        }
        easel.watch_media("(prefers-color-scheme: dark)");
        easel.watch_pixel_ratio();
        easel
    }

    /// Share of the plot's width at a place over a chart, from 0 at its left edge to 1 at its right.
    pub fn share_at(self, element: &web_sys::Element, client_x: f64) -> Option<f64> {
        let bounds = element.get_bounding_client_rect();
        self.measured.with_value(|measured| {
            let skin = &measured.as_ref()?.skin;
            let plot = bounds.width() - skin.gutter_left - skin.gutter_right;
            let share = (client_x - bounds.left() - skin.gutter_left) / plot;
            (plot > 0.0).then(|| share.clamp(0.0, 1.0))
        })
    }

    fn draw_soon(self, state: AppState) {
        if self.waiting.get_value() {
            return;
        }
        self.waiting.set_value(true);
        request_animation_frame(move || {
            self.waiting.set_value(false);
            self.draw(state);
        });
    }

    fn draw(self, state: AppState) {
        let canvases = self.canvases.map(|canvas| canvas.get_untracked());
        let known = self.measured.get_value();
        let Some(measured) = known.or_else(|| Measured::read(&canvases)) else {
            return;
        };
        let held = state.held.get_untracked();
        let mut stale = self.stale.get_value();
        for (place, canvas) in canvases.iter().enumerate() {
            let waits = held && !self.seen[place].get_untracked();
            if let Some(canvas) = canvas
                && stale[place]
                && !waits
            {
                draw_on(
                    place,
                    (canvas, measured.rooms[place]),
                    &measured.skin,
                    state,
                );
                stale[place] = false;
            }
        }
        self.stale.set_value(stale);
        self.measured.set_value(Some(measured));
    }

    /// A canvas has come: it is drawn by itself, the others stay as they are.
    fn has_come(self, place: usize, canvas: HtmlCanvasElement, state: AppState) {
        self.measured.set_value(None);
        self.stale.update_value(|stale| stale[place] = true);
        watch(&canvas, self.seen[place]);
        self.watch_size(canvas);
        self.draw_soon(state);
    }

    /// What the style sheet says is read anew only then: reading it makes the browser work out the page's style.
    fn surroundings_changed(self) {
        self.measured.set_value(None);
        self.surroundings.update(|count| *count += 1);
    }

    fn watch_size(self, canvas: HtmlCanvasElement) {
        let watched = canvas.clone();
        // It is told of the first size as well, for which the chart was just drawn.
        let changed = Closure::<dyn FnMut()>::new(move || {
            let ratio = window().device_pixel_ratio();
            if device_size(room(&watched), ratio) != (watched.width(), watched.height()) {
                self.surroundings_changed();
            }
        });
        if let Ok(observer) = web_sys::ResizeObserver::new(changed.as_ref().unchecked_ref()) {
            observer.observe(&canvas);
        }
        // It lasts as long as the page.
        changed.forget();
    }

    fn watch_media(self, query: &str) {
        let Some(list) = window().match_media(query).ok().flatten() else {
            return;
        };
        let changed = Closure::<dyn FnMut()>::new(move || self.surroundings_changed());
        list.set_onchange(Some(changed.as_ref().unchecked_ref()));
        changed.forget();
    }

    /// A query for the present ratio changes once; then the next ratio is watched.
    fn watch_pixel_ratio(self) {
        let query = format!("(resolution: {}dppx)", window().device_pixel_ratio());
        let Some(list) = window().match_media(&query).ok().flatten() else {
            return;
        };
        let changed = Closure::once_into_js(move || {
            self.surroundings_changed();
            self.watch_pixel_ratio();
        });
        let once = web_sys::AddEventListenerOptions::new();
        once.set_once(true);
        // Without the listener the next change of size draws anew.
        let _ = list.add_event_listener_with_callback_and_add_event_listener_options(
            "change",
            changed.unchecked_ref(),
            &once,
        );
    }
}

/// Draws the chart of a place on its canvas.
fn draw_on(place: usize, sheet: Sheet, skin: &Skin, state: AppState) {
    let advice = state.advice.get_untracked();
    let voice = state.voice.get_untracked();
    let pinned = state.pinned.get_untracked();
    let pinned = pinned.as_ref().map(|pinned| &*pinned.advice);
    let sampled = state.sampled.get_untracked();
    let shown = (&*advice, pinned, sampled.as_deref());
    paint(sheet, skin, |pen, room| match place {
        TEMPERATURES => temperatures::draw(pen, skin, room, shown, &voice),
        HEAT => {
            let before = pinned.map(|pinned| &pinned.with_cooler.series);
            let series = (&advice.with_cooler.series, before);
            heat::draw(pen, skin, room, series, &voice)
        }
        _ => {
            let reserve = state
                .checked
                .with_untracked(|checked| checked.scenario.document().need.reserve_state_of_charge);
            bank::draw(pen, skin, room, shown, reserve)
        }
    });
}

/// Sizes a canvas to its room in device pixels, wipes it and draws.
fn paint(
    (canvas, room): Sheet,
    skin: &Skin,
    draw: impl FnOnce(&Pen<FineCanvas>, (f64, f64)) -> Drawn<FineCanvas>,
) {
    let (width, height) = device_size(room, skin.pixel_ratio);
    if width == 0 || height == 0 {
        return;
    }
    if canvas.width() != width || canvas.height() != height {
        canvas.set_width(width);
        canvas.set_height(height);
    }
    let Some(context) = context(canvas) else {
        return;
    };
    wipe(&context, f64::from(width), f64::from(height));
    if let Some(backend) = CanvasBackend::with_canvas_object(canvas.clone()) {
        let area = FineCanvas(backend).into_drawing_area();
        // A canvas that refuses to be drawn on leaves a gap; text and table say the same.
        let _ = draw(&Pen::new(&area, skin), room);
    }
}

fn device_size(room: (f64, f64), pixel_ratio: f64) -> (u32, u32) {
    let pixels = |measure: f64| (measure * pixel_ratio).round() as u32;
    (pixels(room.0), pixels(room.1))
}

/// Where a canvas is drawn on.
pub(super) fn context(canvas: &HtmlCanvasElement) -> Option<CanvasRenderingContext2d> {
    canvas.get_context("2d").ok()??.dyn_into().ok()
}

fn wipe(context: &CanvasRenderingContext2d, width: f64, height: f64) {
    let step = 1.0 / f64::from(STEPS_PER_PIXEL);
    // Setting a plain scale cannot fail.
    let _ = context.set_transform(1.0, 0.0, 0.0, 1.0, 0.0, 0.0);
    context.clear_rect(0.0, 0.0, width, height);
    let _ = context.set_transform(step, 0.0, 0.0, step, 0.0, 0.0);
    context.set_line_join("round");
}
