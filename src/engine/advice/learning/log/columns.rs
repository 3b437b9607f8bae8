//! Cells of a line, and which column holds what.

use super::LogError;
use super::stamp::read_stamp;
use crate::quantity::parse_decimal;

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Column {
    /// Time.
    Time,
    /// Cabin temperature.
    Cabin,
    /// Outdoor temperature.
    Outdoor,
    /// Current of the cooler.
    Current,
}

/// Words by which the names of columns are known, in small letters.
const DATE_WORDS: [&str; 3] = ["date", "datum", "day"];
const TIME_WORDS: [&str; 8] = [
    "time", "zeit", "heure", "hora", "clock", "hour", "minute", "stamp",
];
const OUTDOOR_WORDS: [&str; 6] = ["out", "ambient", "ext", "auß", "auss", "weather"];
const CABIN_WORDS: [&str; 7] = [
    "cabin", "inside", "indoor", "interior", "innen", "van", "temp",
];
const CURRENT_WORDS: [&str; 5] = ["current", "amp", "strom", "(a)", "[a]"];

/// Which column holds what.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Columns {
    /// Whether the first line holds names.
    pub(super) named: bool,
    date: Option<usize>,
    time: usize,
    pub(super) cabin: usize,
    pub(super) outdoor: Option<usize>,
    pub(super) current: Option<usize>,
    pub(super) fahrenheit: Option<bool>,
    /// Seconds in the unit of a counted time, if its name says it.
    pub(super) time_unit_s: Option<f64>,
    pub(super) unused: Vec<String>,
}

impl Columns {
    /// Finds columns by the first line: by its names, or by its order, time first, then cabin, outdoors and current.
    pub(super) fn find(head: &[String]) -> Result<Self, LogError> {
        let is_value = |cell: &String| {
            read_stamp(cell).is_some() || parse_decimal(&cell.replace(',', ".")).is_some()
        };
        if head.iter().any(is_value) {
            return Ok(Self::in_order(head));
        }
        Self::named(head)
    }

    fn in_order(head: &[String]) -> Self {
        // A date in a column of its own is followed by the clock.
        let apart = head.len() > 2
            && head
                .first()
                .is_some_and(|cell| read_stamp(&format!("{cell} 00:00")).is_some())
            && head.get(1).is_some_and(|cell| cell.contains(':'));
        let time = usize::from(apart);
        let there = |index: usize| (index < head.len()).then_some(index);
        Self {
            named: false,
            date: apart.then_some(0),
            time,
            cabin: time + 1,
            outdoor: there(time + 2),
            current: there(time + 3),
            fahrenheit: None,
            time_unit_s: None,
            unused: Vec::new(),
        }
    }

    fn named(head: &[String]) -> Result<Self, LogError> {
        let names: Vec<String> = head.iter().map(|name| name.to_lowercase()).collect();
        let mut taken = vec![false; names.len()];
        let mut find = |words: &[&str]| {
            let has = |name: &String| words.iter().any(|word| name.contains(word));
            let found = (0..names.len()).find(|index| !taken[*index] && has(&names[*index]))?;
            taken[found] = true;
            Some(found)
        };
        let time = find(&TIME_WORDS);
        let date = find(&DATE_WORDS);
        let outdoor = find(&OUTDOOR_WORDS);
        let current = find(&CURRENT_WORDS);
        let cabin = find(&CABIN_WORDS);
        let (time, date) = match (time, date) {
            (Some(time), date) => (time, date),
            (None, Some(date)) => (date, None),
            (None, None) => return Err(LogError::NoTimeColumn),
        };
        let cabin = cabin.ok_or(LogError::NoCabinColumn)?;
        let unused = (0..head.len())
            .filter(|index| !taken[*index])
            .map(|index| head[index].clone())
            .collect();
        let measured = [Some(cabin), outdoor];
        let mut units = measured
            .iter()
            .flatten()
            .filter_map(|index| unit(&names[*index]));
        Ok(Self {
            named: true,
            date,
            time,
            cabin,
            outdoor,
            current,
            fahrenheit: units.next(),
            time_unit_s: time_unit_s(&names[time]),
            unused,
        })
    }

    /// The time of a line, with its date if that stands in a column of its own.
    pub(super) fn time_cell(&self, cells: &[String]) -> String {
        let cell = |index: usize| cells.get(index).map_or("", String::as_str);
        match self.date {
            Some(date) => format!("{} {}", cell(date), cell(self.time)),
            None => cell(self.time).to_owned(),
        }
    }
}

/// Whether a name says degrees Fahrenheit, or Celsius.
fn unit(name: &str) -> Option<bool> {
    let has = |words: &[&str]| words.iter().any(|word| name.contains(word));
    if has(&[
        "°f",
        "ºf",
        "(f)",
        "[f]",
        "_f",
        "fahrenheit",
        "deg f",
        "degf",
    ]) {
        return Some(true);
    }
    has(&["°c", "ºc", "(c)", "[c]", "_c", "celsius", "deg c", "degc"]).then_some(false)
}

fn time_unit_s(name: &str) -> Option<f64> {
    let has = |words: &[&str]| words.iter().any(|word| name.contains(word));
    if has(&["min"]) {
        return Some(60.0);
    }
    if has(&["sec", "(s)", "[s]", "_s"]) {
        return Some(1.0);
    }
    has(&["hour", "(h)", "[h]", "_h"]).then_some(3_600.0)
}

/// What stands between columns: a tab, a semicolon, a comma that is no decimal mark, else blanks.
pub(super) fn separator_of(first: &str, second: Option<&str>) -> Option<char> {
    [';', '\t', ',']
        .into_iter()
        .find(|mark| first.contains(*mark) && second.is_none_or(|second| second.contains(*mark)))
        .filter(|mark| *mark != ',' || !is_decimal_comma(first))
}

/// Whether a line parted by blanks has commas only within numbers: `14:05 31,5`.
fn is_decimal_comma(line: &str) -> bool {
    let parts: Vec<&str> = line.split_whitespace().collect();
    let plain = |part: &&str| {
        part.split(',').all(|number| !number.is_empty()) && part.matches(',').count() == 1
    };
    parts.len() > 1
        && parts
            .iter()
            .filter(|part| part.contains(','))
            .all(|part| plain(part) && parse_decimal(&part.replace(',', ".")).is_some())
        && !line.contains(", ")
}

/// The cells of a line without the quotes around them; separators inside quotes part nothing.
pub(super) fn cells(line: &str, separator: Option<char>) -> Vec<String> {
    let line = line.trim_end_matches('\r');
    let Some(separator) = separator else {
        return by_blanks(line);
    };
    let mut cells = vec![String::new()];
    let mut quoted = false;
    for mark in line.chars() {
        if mark == '"' {
            quoted = !quoted;
        } else if mark == separator && !quoted {
            cells.push(String::new());
        } else if let Some(cell) = cells.last_mut() {
            cell.push(mark);
        }
    }
    cells.iter().map(|cell| cell.trim().to_owned()).collect()
}

/// Cells parted by blanks; a date keeps the clock behind it, and a clock its half of the day.
fn by_blanks(line: &str) -> Vec<String> {
    let mut cells: Vec<String> = Vec::new();
    for part in line.split_whitespace() {
        let half = matches!(part.to_lowercase().as_str(), "am" | "pm");
        let clock = part.contains(':');
        let joins = cells.last().is_some_and(|last| {
            half && last.contains(':') || clock && cells.len() == 1 && !last.contains(':')
        });
        match cells.last_mut().filter(|_| joins) {
            Some(last) => {
                last.push(' ');
                last.push_str(part);
            }
            None => cells.push(part.to_owned()),
        }
    }
    cells
}
