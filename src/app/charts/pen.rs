//! Drawing in CSS pixels on any backend of the plotting library.

use super::fine::STEPS_PER_PIXEL;
use super::frame::{Frame, midnights, spread};
use super::skin::Skin;
use noonday_engine::advice::sampling::Band;
use plotters::coord::Shift;
use plotters::element::DashedPathElement;
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, Pos, VPos};

/// How much of a line's colour tints its band.
const BAND_TINT: f64 = 0.13;

/// What drawing gives: nothing, or the backend's complaint.
pub type Drawn<DB> = Result<(), DrawingAreaErrorKind<<DB as DrawingBackend>::ErrorType>>;

/// A place in CSS pixels.
pub type Place = (f64, f64);

/// A label, the height at which its line ends, and its colour.
pub type EndLabel = (&'static str, f64, RGBColor);

/// How much of a line's colour its ghost keeps.
const GHOST: f64 = 0.5;

/// How a line is drawn.
#[derive(Clone, Copy)]
pub struct Stroke {
    /// Its colour.
    pub colour: RGBColor,
    /// Its width, CSS pixels.
    pub width: f64,
    /// Lengths of dash and gap, CSS pixels; none is solid.
    pub dash: Option<(f64, f64)>,
}

impl Stroke {
    /// A solid line.
    pub fn solid(colour: RGBColor, width: f64) -> Self {
        Self {
            colour,
            width,
            dash: None,
        }
    }

    /// A dashed line.
    pub fn dashed(colour: RGBColor, width: f64, dash: (f64, f64)) -> Self {
        Self {
            colour,
            width,
            dash: Some(dash),
        }
    }

    /// How the same line of the pinned state is drawn: thin, and half way to the ground.
    pub fn ghost(self, ground: RGBColor) -> Self {
        let mixed = |own: u8, ground: u8| {
            (f64::from(own) * GHOST + f64::from(ground) * (1.0 - GHOST)).round() as u8
        };
        let own = self.colour;
        Self {
            colour: RGBColor(
                mixed(own.0, ground.0),
                mixed(own.1, ground.1),
                mixed(own.2, ground.2),
            ),
            width: 1.25,
            ..self
        }
    }
}

/// Where a text stands relative to its place.
#[derive(Clone, Copy)]
pub enum Anchor {
    /// Begins there.
    Start,
    /// Ends there.
    End,
}

/// Draws on an area.
pub struct Pen<'a, DB: DrawingBackend> {
    area: &'a DrawingArea<DB, Shift>,
    skin: &'a Skin,
    steps: f64,
}

impl<'a, DB: DrawingBackend> Pen<'a, DB> {
    /// A pen for an area with so many steps in a device pixel.
    pub fn new(area: &'a DrawingArea<DB, Shift>, skin: &'a Skin) -> Self {
        Self {
            area,
            skin,
            steps: skin.pixel_ratio * f64::from(STEPS_PER_PIXEL),
        }
    }

    /// A line through places.
    pub fn line(&self, places: &[Place], stroke: Stroke) -> Drawn<DB> {
        let points: Vec<(i32, i32)> = places.iter().map(|place| self.point(*place)).collect();
        let style = ShapeStyle::from(&stroke.colour).stroke_width(self.length(stroke.width));
        match stroke.dash {
            None => self.area.draw(&PathElement::new(points, style)),
            Some((dash, gap)) => self.area.draw(&DashedPathElement::new(
                points,
                self.length(dash),
                self.length(gap),
                style,
            )),
        }
    }

    /// A straight hairline on the grid of device pixels.
    pub fn hairline(&self, from: Place, to: Place, colour: RGBColor) -> Drawn<DB> {
        let width = 1.0_f64.max(1.0 / self.skin.pixel_ratio);
        let snapped = |(x, y): Place| (self.snapped(x), self.snapped(y));
        self.line(&[snapped(from), snapped(to)], Stroke::solid(colour, width))
    }

    /// A filled outline.
    pub fn fill(&self, places: &[Place], colour: RGBColor, opacity: f64) -> Drawn<DB> {
        let points: Vec<(i32, i32)> = places.iter().map(|place| self.point(*place)).collect();
        self.area
            .draw(&Polygon::new(points, colour.mix(opacity).filled()))
    }

    /// The band in which eight of ten draws lie, tinted, its values turned into what the scale shows.
    pub fn band(
        &self,
        frame: &Frame,
        times: &[f64],
        band: &Band,
        (shown, colour): (impl Fn(&[f64]) -> Vec<f64>, RGBColor),
    ) -> Drawn<DB> {
        let held = |values: &[f64]| -> Vec<f64> {
            let (low, high) = frame.up;
            shown(values)
                .iter()
                .map(|value| value.clamp(low, high))
                .collect()
        };
        let mut outline = frame.places(times, &held(&band.low));
        let mut above = frame.places(times, &held(&band.high));
        above.reverse();
        outline.append(&mut above);
        self.fill(&outline, colour, BAND_TINT)
    }

    /// A filled rectangle.
    pub fn block(&self, from: Place, to: Place, colour: RGBColor) -> Drawn<DB> {
        let corners = [self.point(from), self.point(to)];
        self.area.draw(&Rectangle::new(corners, colour.filled()))
    }

    /// A text beside a place, centred on its height.
    pub fn text(&self, text: &str, place: Place, colour: RGBColor, anchor: Anchor) -> Drawn<DB> {
        let across = match anchor {
            Anchor::Start => HPos::Left,
            Anchor::End => HPos::Right,
        };
        let size = self.skin.font_size * self.steps;
        // Named outright: to look a family up by its text takes the tables of all alphabets' capitals along.
        let family = FontFamily::Name(&self.skin.font);
        let style = FontDesc::new(family, size, FontStyle::Normal)
            .color(&colour)
            .pos(Pos::new(across, VPos::Center));
        self.area
            .draw(&Text::new(text.to_owned(), self.point(place), style))
    }

    /// A text with a rim in the colour of its ground, so that lines behind it do not disturb it.
    pub fn text_on(
        &self,
        text: &str,
        (x, y): Place,
        (colour, ground): (RGBColor, RGBColor),
        anchor: Anchor,
    ) -> Drawn<DB> {
        for (right, down) in [(-1.5, 0.0), (1.5, 0.0), (0.0, -1.5), (0.0, 1.5)] {
            self.text(text, (x + right, y + down), ground, anchor)?;
        }
        self.text(text, (x, y), colour, anchor)
    }

    /// A scale with its numbers on the left, and the midnights.
    pub fn scale(
        &self,
        frame: &Frame,
        marks: &[f64],
        written: impl Fn(f64) -> String,
    ) -> Drawn<DB> {
        let soft = self.skin.ink_soft;
        for value in marks {
            let y = frame.y(*value);
            self.hairline((frame.left, y), (frame.right, y), self.skin.rule)?;
            self.text(&written(*value), (frame.left - 6.0, y), soft, Anchor::End)?;
        }
        for hour in midnights(frame.across.0, frame.across.1) {
            let x = frame.x(hour);
            self.hairline((x, frame.top), (x, frame.bottom), soft)?;
        }
        Ok(())
    }

    /// Labels at the ends of lines, moved apart where they would overlap.
    pub fn end_labels(&self, frame: &Frame, labels: &[EndLabel]) -> Drawn<DB> {
        let wanted: Vec<f64> = labels.iter().map(|(_, y, _)| *y).collect();
        let placed = spread(&wanted, self.line_height(), frame.top, frame.bottom);
        for ((label, y, colour), at) in labels.iter().zip(placed) {
            let lead = Stroke::solid(*colour, 1.0);
            self.line(&[(frame.right, *y), (frame.right + 6.0, at)], lead)?;
            self.text(label, (frame.right + 8.0, at), *colour, Anchor::Start)?;
        }
        Ok(())
    }

    /// Height of a line of text, CSS pixels.
    pub fn line_height(&self) -> f64 {
        self.skin.font_size * 1.2
    }

    fn point(&self, (x, y): Place) -> (i32, i32) {
        (
            (x * self.steps).round() as i32,
            (y * self.steps).round() as i32,
        )
    }

    fn length(&self, length: f64) -> u32 {
        (length * self.steps).round().max(1.0) as u32
    }

    fn snapped(&self, value: f64) -> f64 {
        ((value * self.skin.pixel_ratio).floor() + 0.5) / self.skin.pixel_ratio
    }
}
