//! Colours and measures of the charts, read from the style sheet so that they are said in one place.

use noonday_engine::quantity::parse_decimal;
use plotters::style::RGBColor;
use wasm_bindgen::JsCast;

/// What the style sheet says of the charts.
#[derive(Clone, Debug, PartialEq)]
pub struct Skin {
    /// Font family of the labels.
    pub font: String,
    /// Size of the labels, CSS pixels.
    pub font_size: f64,
    /// Room for the scale on the left, CSS pixels.
    pub gutter_left: f64,
    /// Room for the labels at the ends of the lines, CSS pixels.
    pub gutter_right: f64,
    /// Ground.
    pub paper: RGBColor,
    /// Text.
    pub ink: RGBColor,
    /// Scale and its numbers.
    pub ink_soft: RGBColor,
    /// Hairlines.
    pub rule: RGBColor,
    /// Behind the hours of need.
    pub need: RGBColor,
    /// Outdoors and other loads.
    pub outdoors: RGBColor,
    /// The cabin, and the cooler that keeps it so.
    pub cabin: RGBColor,
    /// Without a cooler, and what is missed.
    pub without: RGBColor,
    /// The sun and what it gives.
    pub sun: RGBColor,
    /// Other sources.
    pub source: RGBColor,
    /// Device pixels for each CSS pixel.
    pub pixel_ratio: f64,
}

impl Skin {
    /// Reads the style sheet through an element that it applies to.
    pub fn read(element: &web_sys::Element) -> Option<Self> {
        let window = web_sys::window()?;
        let style = window.get_computed_style(element).ok()??;
        let text = |name: &str| {
            let value = style.get_property_value(name).unwrap_or_default();
            value.trim().to_owned()
        };
        let colour = |name: &str| parse_colour(&text(name));
        let measure = |name: &str| parse_decimal(text(name).trim_end_matches("px"));
        Some(Self {
            font: text("--font-plain"),
            font_size: measure("--chart-font")?,
            gutter_left: measure("--gutter-left")?,
            gutter_right: measure("--gutter-right")?,
            paper: colour("--paper")?,
            ink: colour("--ink")?,
            ink_soft: colour("--ink-soft")?,
            rule: colour("--rule")?,
            need: colour("--need")?,
            outdoors: colour("--outdoors")?,
            cabin: colour("--cabin")?,
            without: colour("--without")?,
            sun: colour("--sun-line")?,
            source: colour("--source")?,
            pixel_ratio: window.device_pixel_ratio(),
        })
    }
}

/// Room on the canvas of an element, CSS pixels.
pub fn room(canvas: &web_sys::HtmlCanvasElement) -> (f64, f64) {
    let element: &web_sys::HtmlElement = canvas.unchecked_ref();
    (
        f64::from(element.offset_width()),
        f64::from(element.offset_height()),
    )
}

/// Reads `#rrggbb`.
fn parse_colour(text: &str) -> Option<RGBColor> {
    let digits = text.strip_prefix('#').filter(|digits| digits.len() == 6)?;
    let part = |from: usize| u8::from_str_radix(digits.get(from..from + 2)?, 16).ok();
    Some(RGBColor(part(0)?, part(2)?, part(4)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colours_are_read_as_the_style_sheet_writes_them() {
        assert_eq!(parse_colour("#0a4a8f"), Some(RGBColor(10, 74, 143)));
        assert_eq!(parse_colour("#fff"), None);
        assert_eq!(parse_colour("red"), None);
    }
}
