//! What page and worker say to each other.

use noonday_engine::advice::failure::WindowFailure;
use noonday_engine::advice::learning::{Assumed, Learned};
use noonday_engine::advice::sampling::Sampled;
use noonday_engine::advice::summer::Summer;
use noonday_engine::advice::{Alternatives, LeverEffect, Packages, PlainDivision, Sizing, Subject};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

/// How much of the work is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Extent {
    /// None: whatever is being done is to stop.
    Nothing,
    /// All of it.
    Everything,
    /// Sizes and packages: what the page's own switches change.
    Choices,
}

/// A log to learn from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Lesson {
    /// The log as it was pasted.
    pub text: String,
    /// What is taken of its day.
    pub assumed: Assumed,
}

/// Where the weather of a summer comes from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum SummerWeather {
    /// The text of a weather file.
    File(String),
    /// The invented one.
    Invented,
}

/// A summer to be run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SummerAsked {
    /// Its weather.
    pub weather: SummerWeather,
    /// Month and day with which it begins.
    pub from: (u8, u8),
    /// Its days.
    pub days: u32,
}

/// What the page asks for; it replaces what was asked before.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Request {
    /// Number of the request.
    pub number: u32,
    /// How much.
    pub extent: Extent,
    /// The scenario as in a link.
    pub link: String,
    /// What packages must leave alone.
    pub left_out: Vec<Subject>,
    /// Whether over several days the bank must recover.
    pub must_recover: bool,
    /// A log to learn from: then this alone is done.
    pub lesson: Option<Lesson>,
    /// A summer to be run: then this alone is done.
    pub summer: Option<SummerAsked>,
}

impl Request {
    /// A request that leaves nothing out and asks for nothing else; whoever sends it numbers it.
    pub fn new(extent: Extent, link: String) -> Self {
        Self {
            number: 0,
            extent,
            link,
            left_out: Vec::new(),
            must_recover: false,
            lesson: None,
            summer: None,
        }
    }
}

/// Something that was worked out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Found {
    /// What single changes would do, best first.
    Levers(Vec<LeverEffect>),
    /// The need without a cooler, and with it.
    Alternatives(Alternatives),
    /// How fast it gets hot; the last message holds all cases.
    Failures(Vec<WindowFailure>),
    /// Plain division; none without a cooler that runs.
    Plain(Option<PlainDivision>),
    /// Sizes; none where nothing is asked.
    Sizing(Option<Box<Sizing>>),
    /// Packages found so far.
    Packages(Packages),
    /// Draws so far.
    Sampled(Sampled),
    /// What a log taught.
    Learned(Box<Learned>),
    /// The days of a summer so far.
    Summer(Box<Summer>),
    /// Nothing new, but it goes on.
    Progress,
    /// The scenario was refused, which no checked one should be.
    Refused,
}

/// What the worker says.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Answer {
    /// Number of the request that it answers.
    pub number: u32,
    /// Share of the work that is done.
    pub progress: f64,
    /// Milliseconds of work in the part that it belongs to.
    pub took_ms: f64,
    /// What was found.
    pub found: Found,
}

/// Bytes of a message; empty should it not be writable, which nothing in it can bring about.
pub fn written<T: Serialize>(message: &T) -> Vec<u8> {
    postcard::to_allocvec(message).unwrap_or_default()
}

/// The message in bytes, if it is one.
pub fn read<T: DeserializeOwned>(bytes: &[u8]) -> Option<T> {
    postcard::from_bytes(bytes).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn messages_survive_the_way() {
        let request = Request {
            number: 7,
            extent: Extent::Everything,
            link: "v=1&18=0.05".to_owned(),
            left_out: vec![Subject::Shade, Subject::Cooler],
            must_recover: true,
            lesson: None,
            summer: Some(SummerAsked {
                weather: SummerWeather::Invented,
                from: (6, 1),
                days: 92,
            }),
        };
        assert_eq!(read(&written(&request)), Some(request));
        let answer = Answer {
            number: 7,
            progress: 0.25,
            took_ms: 12.5,
            found: Found::Sampled(Sampled {
                time_h: vec![0.1 + 0.2, f64::NEG_INFINITY],
                all_met: Some(0.75),
                ..Sampled::default()
            }),
        };
        assert_eq!(read(&written(&answer)), Some(answer));
        assert_eq!(read::<Answer>(&[9, 9]), None);
    }
}
