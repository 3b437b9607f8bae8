//! What `index.html` shows until the page has calculated: the example's answer and its first chart, worked out beforehand by the
//! engine and drawn by the page's own code. `make opening` writes it; a test fails when it is stale.

use crate::charts::{Skin, draw_temperatures, hours_shown, reading_at_rest, sky};
use crate::format::UnitSystem;
use crate::text::answer::answer;
use crate::text::charts::temperature_readings;
use crate::text::{Voice, page};
use noonday_engine::advice::{Advice, advise};
use noonday_engine::scenario::{Scenario, ScenarioDocument, example};
use plotters::prelude::IntoDrawingArea;
use plotters::style::RGBColor;
use plotters_backend::text_anchor::HPos;
use plotters_backend::{
    BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingBackend, DrawingErrorKind,
};
use std::convert::Infallible;
use std::fmt::Write;

/// The plot on a phone of the size that the page is designed for, CSS pixels (`style/tokens.css`).
const PLOT_WIDTH: f64 = 236.0;
const HEIGHT: f64 = 196.0;
const GUTTERS: (f64, f64) = (38.0, 84.0);
const FONT_SIZE: f64 = 11.5;

/// Steps in a CSS pixel: four to each of four device pixels.
const STEPS: f64 = 16.0;

/// Colours stand for what the style sheet calls them, so that the picture follows light and dark.
const NAMES: [&str; 10] = [
    "paper", "ink", "ink-soft", "rule", "need", "outdoors", "cabin", "without", "sun-line",
    "source",
];

fn stand_in(place: u8) -> RGBColor {
    RGBColor(place, 0, 0)
}

fn skin() -> Skin {
    let colour = |name: &str| {
        let place = NAMES.iter().position(|other| *other == name);
        stand_in(place.unwrap_or_default() as u8)
    };
    Skin {
        font: String::new(),
        font_size: FONT_SIZE,
        gutter_left: GUTTERS.0,
        gutter_right: GUTTERS.1,
        paper: colour("paper"),
        ink: colour("ink"),
        ink_soft: colour("ink-soft"),
        rule: colour("rule"),
        need: colour("need"),
        outdoors: colour("outdoors"),
        cabin: colour("cabin"),
        without: colour("without"),
        sun: colour("sun-line"),
        source: colour("source"),
        pixel_ratio: STEPS / 4.0,
    }
}

/// A line being gathered: dashed ones come in pieces.
struct Line {
    name: &'static str,
    width: u32,
    points: Vec<BackendCoord>,
}

/// Takes a drawing down as the text of an SVG and of the labels over it.
#[derive(Default)]
struct Scribe {
    shapes: String,
    labels: String,
    line: Option<Line>,
}

impl Scribe {
    fn across(x: i32) -> f64 {
        (f64::from(x) / STEPS - GUTTERS.0) / PLOT_WIDTH
    }

    /// Whole numbers for the picture: thousandths of the plot's width, quarters of a pixel of its height.
    fn place((x, y): BackendCoord) -> String {
        let (x, y) = (1000.0 * Self::across(x), f64::from(y) / STEPS * 4.0);
        format!("{x:.0},{y:.0} ")
    }

    fn finish_line(&mut self) {
        let Some(line) = self.line.take() else { return };
        let dash = match (line.name, line.width) {
            ("outdoors", 28) => " stroke-dasharray=\"2 2.5\"",
            ("without", 28) => " stroke-dasharray=\"7 3\"",
            _ => "",
        };
        let places: String = line.points.into_iter().map(Self::place).collect();
        let width = f64::from(line.width) / STEPS;
        let _ = write!(
            self.shapes,
            "<polyline class=\"{}\" stroke-width=\"{width}\"{dash} points=\"{}\"/>",
            line.name,
            places.trim_end()
        );
    }
}

fn name_of(colour: BackendColor) -> &'static str {
    NAMES
        .get(usize::from(colour.rgb.0))
        .copied()
        .unwrap_or("ink")
}

type Drawn = Result<(), DrawingErrorKind<Infallible>>;

impl DrawingBackend for &mut Scribe {
    type ErrorType = Infallible;

    fn get_size(&self) -> (u32, u32) {
        let steps = |pixels: f64| (pixels * STEPS) as u32;
        (steps(GUTTERS.0 + PLOT_WIDTH + GUTTERS.1), steps(HEIGHT))
    }

    fn ensure_prepared(&mut self) -> Drawn {
        Ok(())
    }

    fn present(&mut self) -> Drawn {
        Ok(())
    }

    fn draw_pixel(&mut self, _: BackendCoord, _: BackendColor) -> Drawn {
        Ok(())
    }

    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        path: I,
        style: &S,
    ) -> Drawn {
        let (name, width) = (name_of(style.color()), style.stroke_width());
        let is_piece = |line: &Line| {
            let dashed = matches!(name, "outdoors" | "without") && width == 28;
            dashed && line.name == name && line.width == width
        };
        if !self.line.as_ref().is_some_and(is_piece) {
            self.finish_line();
            let points = Vec::new();
            self.line = Some(Line {
                name,
                width,
                points,
            });
        }
        if let Some(line) = &mut self.line {
            line.points.extend(path);
        }
        Ok(())
    }

    fn draw_rect<S: BackendStyle>(
        &mut self,
        (left, top): BackendCoord,
        (right, bottom): BackendCoord,
        style: &S,
        _: bool,
    ) -> Drawn {
        self.finish_line();
        let corners = [(left, top), (right, top), (right, bottom), (left, bottom)];
        let places: String = corners.into_iter().map(Scribe::place).collect();
        let name = name_of(style.color());
        let _ = write!(
            self.shapes,
            "<polygon class=\"{name}\" points=\"{}\"/>",
            places.trim_end()
        );
        Ok(())
    }

    fn draw_text<S: BackendTextStyle>(
        &mut self,
        text: &str,
        style: &S,
        (x, y): BackendCoord,
    ) -> Drawn {
        let name = name_of(style.color());
        // The rims of labels are the style sheet's.
        if name == "need" {
            return Ok(());
        }
        let share = Scribe::across(x);
        let from_left = match share {
            share if share < 0.0 => {
                format!("calc(var(--gutter-left) - {:.0}px)", -share * PLOT_WIDTH)
            }
            share if share > 1.0 => {
                let beyond = (share - 1.0) * PLOT_WIDTH;
                format!("calc(100% - var(--gutter-right) + {beyond:.0}px)")
            }
            share => format!(
                "calc(var(--gutter-left) + {share:.3} * (100% - var(--gutter-left) - var(--gutter-right)))"
            ),
        };
        let end = if matches!(style.anchor().h_pos, HPos::Right) {
            " end"
        } else {
            ""
        };
        let top = 100.0 * f64::from(y) / STEPS / HEIGHT;
        let _ = write!(
            self.labels,
            "<span class=\"{name}{end}\" style=\"left:{from_left};top:{top:.1}%\">{text}</span>"
        );
        Ok(())
    }
}

/// The chart as text.
fn chart(advice: &Advice, voice: &Voice) -> String {
    let mut scribe = Scribe::default();
    let area = (&mut scribe).into_drawing_area();
    let room = (GUTTERS.0 + PLOT_WIDTH + GUTTERS.1, HEIGHT);
    let drawn = draw_temperatures(&area, &skin(), room, advice, voice);
    drop(area);
    assert!(drawn.is_ok());
    scribe.finish_line();
    let height = 4.0 * HEIGHT;
    format!(
        "<figure class=\"chart temperatures\"><div class=\"plot\" aria-hidden=\"true\">\n\
         <svg viewBox=\"0 0 1000 {height}\" preserveAspectRatio=\"none\">{}</svg>\n{}</div></figure>",
        scribe.shapes, scribe.labels
    )
}

fn strip(advice: &Advice, voice: &Voice) -> String {
    let series = &advice.with_cooler.series;
    let hours: String = hours_shown(series, voice)
        .into_iter()
        .map(|(class, share, label)| {
            format!("<span class=\"{class}\" style=\"--share:{share:.4}\">{label}</span>")
        })
        .collect();
    format!(
        "<div class=\"strip\"><div class=\"sky\" style=\"background:{}\"></div>\
         <div class=\"hours\" aria-hidden=\"true\">{hours}</div></div>",
        sky(series)
    )
}

fn reading(advice: &Advice, voice: &Voice) -> String {
    let index = reading_at_rest(advice);
    let hour = advice.with_cooler.series.time_h.get(index);
    let hour = hour.map_or_else(String::new, |hour| voice.instant(*hour));
    let values: String = temperature_readings(advice, index)
        .into_iter()
        .map(|(name, amount)| {
            let value = voice.amount(amount);
            format!("<span class=\"read\">{name} <span class=\"value\">{value}</span></span>")
        })
        .collect();
    format!("<p class=\"reading\"><b>{hour}</b>{values}</p>")
}

fn opening(class: &str, units: UnitSystem, document: &ScenarioDocument, advice: &Advice) -> String {
    let voice = Voice::new(document, units);
    let said = answer(advice, &voice);
    format!(
        "<div class=\"{class}\"><header class=\"masthead\"><p class=\"program\">{}</p><h1>{}</h1>\
         <div class=\"actions\"></div></header>\n\
         <main><div class=\"work\"><section class=\"day\">\n<div class=\"glance\">\n\
         <p class=\"lead\">{}</p>\n{}\n{}\n{}\n</div>\n<div class=\"rest\"><p>{}</p></div>\n\
         <div class=\"cautions\"><p class=\"caution\">{}</p></div>\n</section></div></main></div>\n",
        page::PROGRAM,
        page::shown_name(&document.name),
        said.lead,
        chart(advice, &voice),
        strip(advice, &voice),
        reading(advice, &voice),
        said.rest(),
        page::CAUTION_ANIMALS,
    )
}

fn written() -> String {
    let document = example();
    let scenario = Scenario::new(document.clone()).expect("the example is valid");
    let advice = advise(&scenario).expect("the example runs");
    let systems = [("us", UnitSystem::Us), ("metric", UnitSystem::Metric)];
    systems
        .into_iter()
        .map(|(class, units)| opening(class, units, &document, &advice))
        .collect()
}

#[test]
fn the_opening_is_what_the_page_would_show() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../delivery/opening.html");
    let now = written();
    if std::env::var_os("WRITE_OPENING").is_some() {
        std::fs::write(path, &now).expect("the opening can be written");
    }
    let kept = std::fs::read_to_string(path).expect("the opening is there");
    assert!(
        kept == now,
        "stale: run `make opening` and keep what it writes"
    );
}
