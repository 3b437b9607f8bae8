//! Charts as the text of an SVG: for what is seen seldom and wants to be crisp on paper. Colours and dashes are classes of the style
//! sheet; places are those of a [`Frame`].

use super::frame::{Frame, hour_ticks, spread};
use super::pen::Place;
pub use crate::drawing::Stand;
use crate::text::Voice;
use std::fmt::Write;

/// Most points of a line: more are not told apart.
const MOST_POINTS: usize = 640;

/// A label, the height at which its line ends, and its class.
pub type Ending = (String, f64, &'static str);

/// An SVG that grows.
pub struct Vector(String);

/// A text so that a document of marks takes it as text alone.
pub fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for mark in text.chars() {
        match mark {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            mark => safe.push(mark),
        }
    }
    safe
}

// Writing into a text cannot fail, which is why what it gives is put aside throughout.
impl Vector {
    /// An empty one of a size; it says nothing to those who do not see it, for a caption does.
    pub fn new(width: f64, height: f64) -> Self {
        Self(format!(
            "<svg viewBox=\"0 0 {width:.0} {height:.0}\" aria-hidden=\"true\" focusable=\"false\">"
        ))
    }

    /// The finished SVG.
    pub fn finish(mut self) -> String {
        self.0.push_str("</svg>");
        self.0
    }

    /// A filled outline.
    pub fn area(&mut self, class: &str, places: &[Place]) {
        self.points("polygon", class, places);
    }

    /// A disc.
    pub fn disc(&mut self, class: &str, (x, y): Place, radius: f64) {
        let _ = write!(
            self.0,
            "<circle class=\"{class}\" cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"{radius:.1}\"/>"
        );
    }

    /// A line through places.
    pub fn line(&mut self, class: &str, places: &[Place]) {
        self.points("polyline", class, places);
    }

    fn points(&mut self, element: &str, class: &str, places: &[Place]) {
        let _ = write!(self.0, "<{element} class=\"{class}\" points=\"");
        let every = places.len().div_ceil(MOST_POINTS).max(1);
        let last = places.len().saturating_sub(1);
        for (index, (x, y)) in places.iter().enumerate() {
            if index % every == 0 || index == last {
                let _ = write!(self.0, "{x:.1},{y:.1} ");
            }
        }
        self.0.push_str("\"/>");
    }

    /// A rectangle between two corners.
    pub fn block(&mut self, class: &str, from: Place, to: Place) {
        let _ = write!(
            self.0,
            "<rect class=\"{class}\" x=\"{:.1}\" y=\"{:.1}\" width=\"{:.1}\" height=\"{:.1}\"/>",
            from.0,
            from.1,
            (to.0 - from.0).max(0.0),
            (to.1 - from.1).max(0.0)
        );
    }

    /// A text beside a place, centred on its height.
    pub fn text(&mut self, class: &str, (x, y): Place, stand: Stand, text: &str) {
        let anchor = stand.anchor();
        let _ = write!(
            self.0,
            "<text class=\"{class}\" x=\"{x:.1}\" y=\"{y:.1}\" dy=\".35em\" text-anchor=\"{anchor}\">{}</text>",
            escaped(text)
        );
    }

    /// A scale with its numbers on the left.
    pub fn scale(&mut self, frame: &Frame, marks: &[f64], written: fn(f64) -> String) {
        for value in marks {
            let y = frame.y(*value);
            self.line("rule", &[(frame.left, y), (frame.right, y)]);
            self.text("soft", (frame.left - 6.0, y), Stand::End, &written(*value));
        }
    }

    /// Hours below a plot, at a height; midnights stand as the number of the day.
    pub fn hours(&mut self, frame: &Frame, y: f64, voice: &Voice) {
        let (from, until) = frame.across;
        for hour in hour_ticks(from, until, frame.right - frame.left) {
            let day = hour / 24.0;
            let is_midnight =
                (day - day.round()).abs() < 1e-6 && hour > from && until - from > 30.0;
            let x = frame.x(hour);
            if is_midnight {
                self.line("midnight", &[(x, frame.top), (x, frame.bottom)]);
            }
            let label = if is_midnight {
                crate::text::charts::day_number(day.round() as i64 + 1)
            } else {
                voice.units.axis_hour(hour)
            };
            self.text("soft", (x, y), Stand::Middle, &label);
        }
    }

    /// Labels at the ends of lines, moved apart where they would overlap.
    pub fn endings(&mut self, frame: &Frame, endings: &[Ending], line_height: f64) {
        let wanted: Vec<f64> = endings.iter().map(|(_, y, _)| *y).collect();
        let placed = spread(&wanted, line_height, frame.top, frame.bottom);
        for ((label, y, class), at) in endings.iter().zip(placed) {
            self.line(
                "leader",
                &[(frame.right + 1.0, *y), (frame.right + 7.0, at)],
            );
            self.text(class, (frame.right + 9.0, at), Stand::Start, label);
        }
    }
}

/// A whole number on a scale, with a true minus sign.
pub fn whole(value: f64) -> String {
    format!("{value:.0}").replace('-', "\u{2212}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_somebody_wrote_stays_text() {
        let mut vector = Vector::new(10.0, 10.0);
        vector.text("soft", (1.0, 1.0), Stand::Start, "<b onclick=\"x\"> & co");
        let svg = vector.finish();
        assert!(svg.contains("&lt;b onclick=&quot;x&quot;&gt; &amp; co"));
        assert!(!svg.contains("<b"));
    }

    #[test]
    fn long_lines_keep_their_ends() {
        let places: Vec<Place> = (0..5_000).map(|step| (f64::from(step), 0.0)).collect();
        let mut vector = Vector::new(10.0, 10.0);
        vector.line("x", &places);
        let svg = vector.finish();
        assert!(svg.contains("\"0.0,0.0 ") && svg.contains("4999.0,0.0 \"/>"));
        assert!(svg.matches(',').count() <= MOST_POINTS + 1);
    }
}
