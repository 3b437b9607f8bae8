//! A sheet of a drawing: marks put one after another into the text of an SVG. Colours are classes of the style sheet.

use super::scene::{HEIGHT, Place, Rect, WIDTH};
use std::fmt::Write;

/// How a text stands to its place.
#[derive(Clone, Copy)]
pub enum Stand {
    /// Begins there.
    Start,
    /// Has its middle there.
    Middle,
    /// Ends there.
    End,
}

impl Stand {
    /// As SVG calls it.
    pub fn anchor(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// An SVG that grows.
pub struct Sheet(String);

// Writing into a text cannot fail, which is why what it gives is put aside throughout.
impl Sheet {
    /// An empty sheet; it says nothing to those who do not see it, for the picture as a whole has a name.
    pub fn new() -> Self {
        let mut sheet = Self(String::new());
        let _ = write!(
            sheet.0,
            "<svg viewBox=\"0 0 {WIDTH} {HEIGHT}\" aria-hidden=\"true\" focusable=\"false\">"
        );
        sheet
    }

    /// The finished SVG.
    pub fn finish(mut self) -> String {
        self.0.push_str("</svg>");
        self.0
    }

    /// Something ready-made.
    pub fn raw(&mut self, svg: &str) {
        self.0.push_str(svg);
    }

    /// A path; `course` as SVG writes it.
    pub fn path(&mut self, class: &str, course: &str) {
        let _ = write!(self.0, "<path class=\"{class}\" d=\"{course}\"/>");
    }

    /// A closed outline.
    pub fn outline(&mut self, class: &str, places: &[Place]) {
        let mut course = String::new();
        for (index, (x, y)) in places.iter().enumerate() {
            let step = if index == 0 { 'M' } else { 'L' };
            let _ = write!(course, "{step}{x:.2} {y:.2}");
        }
        course.push('Z');
        self.path(class, &course);
    }

    /// A rectangle.
    pub fn rect(&mut self, class: &str, rect: &Rect) {
        let Rect {
            left,
            top,
            right,
            bottom,
        } = *rect;
        self.outline(
            class,
            &[(left, top), (right, top), (right, bottom), (left, bottom)],
        );
    }

    /// A straight line.
    pub fn line(&mut self, class: &str, from: Place, to: Place) {
        let course = format!("M{:.2} {:.2}L{:.2} {:.2}", from.0, from.1, to.0, to.1);
        self.path(class, &course);
    }

    /// A disc.
    pub fn disc(&mut self, class: &str, (x, y): Place, radius: f64) {
        let _ = write!(
            self.0,
            "<circle class=\"{class}\" cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"{radius:.1}\"/>"
        );
    }

    /// A shape drawn in metres from a place on the floor, up being negative.
    pub fn shape(&mut self, class: &str, (x, y): Place, scale: f64, course: &str) {
        let _ = write!(
            self.0,
            "<path class=\"{class}\" transform=\"translate({x:.1} {y:.1}) scale({scale:.2})\" d=\"{course}\"/>"
        );
    }

    /// A text. It must hold nothing that a user wrote.
    pub fn text(&mut self, class: &str, (x, y): Place, stand: Stand, text: &str) {
        let anchor = stand.anchor();
        let _ = write!(
            self.0,
            "<text class=\"{class}\" x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"{anchor}\">{text}</text>"
        );
    }
}
