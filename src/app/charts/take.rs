//! The day to take along: its numbers as a file, its charts as a picture.

use super::easel::{Easel, context};
use super::skin::{Skin, room};
use super::strip::hours_on;
use crate::live::{click, with_value, words};
use crate::save::{save, save_text};
use crate::state::AppState;
use crate::text::charts as text;
use crate::text::{heat, page};
use js_sys::{Array, Function, Object, Promise, Reflect};
use leptos::prelude::*;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{Blob, HtmlCanvasElement};

/// Lines of text above the charts, and below them for the hours; heights in sizes of the labels.
const HEAD: f64 = 2.2;
const FOOT: f64 = 1.8;

/// Choice of all charts, after each by itself.
const ALL: usize = 3;

/// All offers.
#[component]
pub fn TakeAlong() -> impl IntoView {
    let state = expect_context::<AppState>();
    let easel = expect_context::<Easel>();
    let told = RwSignal::new("");
    let save_day = click(move || {
        let csv = text::day_csv(&state.advice.get_untracked(), &state.voice.get_untracked());
        save_text(text::DAY_FILE, "text/csv;charset=utf-8", &csv);
    });
    let chosen = RwSignal::new(ALL);
    let copy = click(move || take_picture(state, easel, (chosen, told)));
    let save_picture = click(move || {
        give_picture(state, easel, chosen, |blob| save(text::PICTURE_FILE, &blob));
    });
    let choose = with_value(move |index| chosen.set(index.parse().unwrap_or(ALL)));
    let charts = [
        text::TEMPERATURES,
        heat::HEADING,
        text::BANK,
        text::ALL_CHARTS,
    ]
    .into_iter()
    .enumerate()
    .map(|(index, name)| {
        view! {
            <option value=index.to_string() selected=index == ALL>
                {name}
            </option>
        }
    })
    .collect_view();
    view! {
        <div class="take-along">
            <button type="button" on:click=save_day>
                {text::SAVE_DAY}
            </button>
            <label>
                {text::IN_PICTURE}
                <select on:change=choose>{charts}</select>
            </label>
            <button type="button" on:click=copy>
                {text::COPY_PICTURE}
            </button>
            <button type="button" on:click=save_picture>
                {text::SAVE_PICTURE}
            </button>
            <span role="status">{words(move || told.get().to_owned())}</span>
        </div>
    }
}

/// Copies the picture; saves it where that is not to be had.
fn take_picture(
    state: AppState,
    easel: Easel,
    (chosen, told): (RwSignal<usize>, RwSignal<&'static str>),
) {
    give_picture(state, easel, chosen, move |blob| {
        spawn_local(async move {
            let copied = match copied(&blob) {
                Ok(done) => JsFuture::from(done).await.is_ok(),
                Err(_) => false,
            };
            if !copied {
                save(text::PICTURE_FILE, &blob);
            }
            told.set(if copied {
                text::PICTURE_COPIED
            } else {
                text::PICTURE_SAVED
            });
        });
    });
}

/// Hands over the picture of the chosen charts as soon as the browser has made it.
fn give_picture(
    state: AppState,
    easel: Easel,
    chosen: RwSignal<usize>,
    give: impl FnOnce(Blob) + 'static,
) {
    let Some(picture) = picture(state, easel, chosen.get_untracked()) else {
        return;
    };
    let mut give: Option<Box<dyn FnOnce(Blob)>> = Some(Box::new(give));
    let taken = Closure::once_into_js(move |blob: Option<Blob>| {
        if let (Some(blob), Some(give)) = (blob, give.take()) {
            give(blob);
        }
    });
    // A canvas that gives no picture leaves everything as it is.
    let _ = picture.to_blob(taken.unchecked_ref());
}

/// Puts a picture on the clipboard, through names that not every browser has.
fn copied(blob: &Blob) -> Result<Promise, JsValue> {
    let window = window();
    let item: Function = Reflect::get(&window, &"ClipboardItem".into())?.dyn_into()?;
    let content = Object::new();
    Reflect::set(&content, &"image/png".into(), blob)?;
    let item = Reflect::construct(&item, &Array::of1(&content))?;
    let clipboard = Reflect::get(&window.navigator(), &"clipboard".into())?;
    let write: Function = Reflect::get(&clipboard, &"write".into())?.dyn_into()?;
    write.call1(&clipboard, &Array::of1(&item))?.dyn_into()
}

/// One chart or all of them one under the other, with the name above and the hours below.
fn picture(state: AppState, easel: Easel, chosen: usize) -> Option<HtmlCanvasElement> {
    let canvases: Vec<HtmlCanvasElement> = easel
        .canvases
        .iter()
        .enumerate()
        .filter(|(index, _)| chosen == ALL || *index == chosen)
        .filter_map(|(_, canvas)| canvas.get_untracked())
        .collect();
    let first = canvases.first()?;
    let skin = Skin::read(first)?;
    let ratio = skin.pixel_ratio;
    let (head, foot) = (HEAD * skin.font_size * ratio, FOOT * skin.font_size * ratio);
    let charts: u32 = canvases.iter().map(HtmlCanvasElement::height).sum();
    let sheet: HtmlCanvasElement = document().create_element("canvas").ok()?.dyn_into().ok()?;
    sheet.set_width(first.width());
    sheet.set_height(charts + (head + foot) as u32);
    let context = context(&sheet)?;
    let css = |colour: plotters::style::RGBColor| {
        format!("#{:02x}{:02x}{:02x}", colour.0, colour.1, colour.2)
    };
    context.set_fill_style_str(&css(skin.paper));
    context.fill_rect(
        0.0,
        0.0,
        f64::from(sheet.width()),
        f64::from(sheet.height()),
    );
    context.set_fill_style_str(&css(skin.ink));
    context.set_font(&format!("{}px {}", skin.font_size * ratio, skin.font));
    let name = state
        .document
        .with_untracked(|document| page::shown_name(&document.name));
    // Text that does not fit its room is left out by the canvas itself.
    let _ = context.fill_text(&name, skin.gutter_left * ratio, 0.6 * head);
    let mut top = head;
    for canvas in &canvases {
        let _ = context.draw_image_with_html_canvas_element(canvas, 0.0, top);
        top += f64::from(canvas.height());
    }
    context.set_text_align("center");
    let (width, _) = room(first);
    let plot = width - skin.gutter_left - skin.gutter_right;
    let advice = state.advice.get_untracked();
    let voice = state.voice.get_untracked();
    for (share, label) in hours_on(&advice.with_cooler.series, &voice, plot) {
        let x = (skin.gutter_left + share * plot) * ratio;
        let _ = context.fill_text(&label, x, top + 0.7 * foot);
    }
    Some(sheet)
}
