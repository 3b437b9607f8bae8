//! A logged day as people have it: lines of a table that a logger, a spreadsheet or a hand wrote.
//!
//! Forgiving in form: comma, semicolon, tab or blanks between the columns, decimal point or comma, with a line of names or without,
//! date and time together, apart, as a clock alone or as a number of minutes or hours since the start. Strict in structure:
//! every line has as many columns as the first, time rises, and what is not a number is refused with its line and column rather than
//! left out. Only empty cells count as not measured.

mod columns;
mod stamp;
#[cfg(test)]
mod tests;

pub use columns::Column;
use columns::{Columns, cells, separator_of};
use stamp::{Stamp, read_stamp};

use crate::quantity::parse_decimal;
use crate::solar::Date;
use serde::{Deserialize, Serialize};

/// Longest log that is read, bytes.
pub const LOG_GREATEST_BYTES: usize = 1_000_000;

/// Most lines that are read.
pub const LOG_GREATEST_LINES: usize = 20_000;

/// Temperatures that a log may hold, °C.
const TEMPERATURE_RANGE_C: (f64, f64) = (-40.0, 100.0);

/// Currents that a log may hold, A; loggers differ in the sign of a discharge.
const CURRENT_GREATEST_A: f64 = 1_000.0;

const SECONDS_PER_MINUTE: f64 = 60.0;
const SECONDS_PER_HOUR: f64 = 3_600.0;
const SECONDS_PER_DAY: f64 = 86_400.0;

/// What a log does not say itself.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Unsaid {
    /// Temperatures are in °F unless the header says °C.
    pub fahrenheit: bool,
    /// Numbers in the time column are hours unless the header says otherwise; else they are minutes.
    pub hours: bool,
    /// Clock hour at which a log begins that only counts from its start, 0…24.
    pub begins_hour: f64,
}

impl Unsaid {
    /// Until somebody says otherwise: °C, minutes, from six in the morning.
    pub const USUAL: Self = Self {
        fahrenheit: false,
        hours: false,
        begins_hour: 6.0,
    };
}

/// A line of a log.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LogPoint {
    /// Clock time since midnight of the log's first day, s.
    pub clock_s: f64,
    /// Cabin, °C.
    pub cabin_c: f64,
    /// Outdoors, °C.
    pub outdoor_c: Option<f64>,
    /// Current drawn by the cooler, A, without sign.
    pub current_a: Option<f64>,
}

/// A log that was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Log {
    /// Its points, time rising.
    pub points: Vec<LogPoint>,
    /// Its first day, if it says so.
    pub date: Option<Date>,
    /// How far its clock is ahead of UTC, h, if it says so.
    pub ahead_of_utc_h: Option<f64>,
    /// Whether it has the air outdoors.
    pub has_outdoor: bool,
    /// Whether it has the cooler's current.
    pub has_current: bool,
    /// Whether temperatures were taken as °F.
    pub fahrenheit: bool,
    /// Lines without a cabin temperature, which were passed over.
    pub empty_lines: usize,
    /// Names of columns that were not used.
    pub unused: Vec<String>,
}

/// Why a log cannot be read.
#[derive(Clone, Debug, PartialEq)]
pub enum LogError {
    /// Longer than [`LOG_GREATEST_BYTES`].
    TooLong {
        /// Its length.
        bytes: usize,
    },
    /// More lines than [`LOG_GREATEST_LINES`].
    TooManyLines {
        /// How many.
        lines: usize,
    },
    /// Nothing in it.
    Empty,
    /// The names of the columns do not say which is the time.
    NoTimeColumn,
    /// The names of the columns do not say which is the cabin.
    NoCabinColumn,
    /// A line with another number of columns than the first.
    ColumnCount {
        /// Line, from one.
        line: usize,
        /// Columns it has.
        found: usize,
        /// Columns that the first has.
        expected: usize,
    },
    /// A cell that is not what its column holds.
    NotReadable {
        /// Line, from one.
        line: usize,
        /// Its column.
        column: Column,
        /// The cell, cut after forty characters.
        cell: String,
    },
    /// A number that no log of a cabin holds.
    OutOfRange {
        /// Line, from one.
        line: usize,
        /// Its column.
        column: Column,
        /// The cell, cut after forty characters.
        cell: String,
    },
    /// A time that does not follow the one before.
    TimeNotRising {
        /// Line, from one.
        line: usize,
    },
}

/// Reads a log.
///
/// * `text` — at most [`LOG_GREATEST_BYTES`] and [`LOG_GREATEST_LINES`]; both are looked at before anything is read
/// * `unsaid` — what to take where the log does not say
///
/// # Errors
/// [`LogError`], with line and column where there is one.
pub fn read_log(text: &str, unsaid: &Unsaid) -> Result<Log, LogError> {
    if text.len() > LOG_GREATEST_BYTES {
        return Err(LogError::TooLong { bytes: text.len() });
    }
    let text = text.trim_start_matches('\u{feff}');
    let count = text.lines().count();
    if count > LOG_GREATEST_LINES {
        return Err(LogError::TooManyLines { lines: count });
    }
    let mut lines = (1..)
        .zip(text.lines())
        .filter(|(_, line)| !line.trim().is_empty() && !line.trim_start().starts_with('#'))
        .peekable();
    let Some(first) = lines.peek().copied() else {
        return Err(LogError::Empty);
    };
    let separator = separator_of(first.1, lines.clone().nth(1).map(|(_, line)| line));
    let head = cells(first.1, separator);
    let columns = Columns::find(&head)?;
    if columns.named {
        lines.next();
    }
    let mut reader = Reader::new(columns, *unsaid, head.len());
    for (line, text) in lines {
        reader.line(line, &cells(text, separator))?;
    }
    reader.finish()
}

struct Reader {
    columns: Columns,
    unsaid: Unsaid,
    expected: usize,
    /// Start of the log's first day, s since an epoch, once there is a date.
    first_day_s: Option<f64>,
    before_s: Option<f64>,
    log: Log,
}

impl Reader {
    fn new(columns: Columns, unsaid: Unsaid, expected: usize) -> Self {
        let log = Log {
            points: Vec::new(),
            date: None,
            ahead_of_utc_h: None,
            has_outdoor: false,
            has_current: false,
            fahrenheit: columns.fahrenheit.unwrap_or(unsaid.fahrenheit),
            empty_lines: 0,
            unused: columns.unused.clone(),
        };
        Self {
            columns,
            unsaid,
            expected,
            first_day_s: None,
            before_s: None,
            log,
        }
    }

    fn line(&mut self, line: usize, cells: &[String]) -> Result<(), LogError> {
        if cells.len() != self.expected {
            return Err(LogError::ColumnCount {
                line,
                found: cells.len(),
                expected: self.expected,
            });
        }
        let clock_s = self.clock_s(line, cells)?;
        let temperature = |column, index| self.temperature_c(line, column, cells, index);
        let cabin_c = temperature(Column::Cabin, Some(self.columns.cabin))?;
        let outdoor_c = temperature(Column::Outdoor, self.columns.outdoor)?;
        let current_a = self.current_a(line, cells)?;
        if self.before_s.is_some_and(|before_s| clock_s <= before_s) {
            return Err(LogError::TimeNotRising { line });
        }
        self.before_s = Some(clock_s);
        let Some(cabin_c) = cabin_c else {
            self.log.empty_lines += 1;
            return Ok(());
        };
        self.log.has_outdoor |= outdoor_c.is_some();
        self.log.has_current |= current_a.is_some();
        self.log.points.push(LogPoint {
            clock_s,
            cabin_c,
            outdoor_c,
            current_a,
        });
        Ok(())
    }

    fn clock_s(&mut self, line: usize, cells: &[String]) -> Result<f64, LogError> {
        let cell = self.columns.time_cell(cells);
        let stamp = read_stamp(&cell).ok_or_else(|| LogError::NotReadable {
            line,
            column: Column::Time,
            cell: shortened(&cell),
        })?;
        Ok(match stamp {
            Stamp::Dated {
                date,
                days,
                second,
                ahead_of_utc_h,
            } => {
                let at_s = days * SECONDS_PER_DAY + second;
                if self.first_day_s.is_none() {
                    self.first_day_s = Some(days * SECONDS_PER_DAY);
                    self.log.date = date;
                    self.log.ahead_of_utc_h = ahead_of_utc_h;
                }
                at_s - self.first_day_s.unwrap_or(at_s)
            }
            Stamp::Clock { second } => self.after_midnight(second),
            Stamp::Number { value } => {
                let unit_s = self.columns.time_unit_s.unwrap_or(if self.unsaid.hours {
                    SECONDS_PER_HOUR
                } else {
                    SECONDS_PER_MINUTE
                });
                self.unsaid.begins_hour * SECONDS_PER_HOUR + value * unit_s
            }
        })
    }

    /// A clock that falls by more than half a day has passed midnight.
    fn after_midnight(&self, second: f64) -> f64 {
        let Some(before_s) = self.before_s else {
            return second;
        };
        let day_s = (before_s / SECONDS_PER_DAY).floor() * SECONDS_PER_DAY;
        let clock_s = day_s + second;
        if before_s - clock_s > 0.5 * SECONDS_PER_DAY {
            return clock_s + SECONDS_PER_DAY;
        }
        clock_s
    }

    fn temperature_c(
        &self,
        line: usize,
        column: Column,
        cells: &[String],
        index: Option<usize>,
    ) -> Result<Option<f64>, LogError> {
        let Some(cell) = index.and_then(|index| cells.get(index)) else {
            return Ok(None);
        };
        let Some(value) = number(line, column, cell)? else {
            return Ok(None);
        };
        let own = cell.ends_with('F') || self.log.fahrenheit && !cell.ends_with('C');
        let value_c = if own { (value - 32.0) / 1.8 } else { value };
        if (TEMPERATURE_RANGE_C.0..=TEMPERATURE_RANGE_C.1).contains(&value_c) {
            return Ok(Some(value_c));
        }
        Err(out_of_range(line, column, cell))
    }

    fn current_a(&self, line: usize, cells: &[String]) -> Result<Option<f64>, LogError> {
        let Some(cell) = self.columns.current.and_then(|index| cells.get(index)) else {
            return Ok(None);
        };
        let value_a = number(line, Column::Current, cell)?.map(f64::abs);
        if value_a.is_some_and(|value_a| value_a > CURRENT_GREATEST_A) {
            return Err(out_of_range(line, Column::Current, cell));
        }
        Ok(value_a)
    }

    fn finish(self) -> Result<Log, LogError> {
        if self.log.points.is_empty() {
            return Err(LogError::Empty);
        }
        Ok(self.log)
    }
}

/// A number with point or comma, perhaps with its unit behind it; none in an empty cell.
fn number(line: usize, column: Column, cell: &str) -> Result<Option<f64>, LogError> {
    let cell = cell.trim();
    if ["", "--", "nan", "na", "null"]
        .iter()
        .any(|nothing| cell.eq_ignore_ascii_case(nothing))
    {
        return Ok(None);
    }
    let text = ["°C", "°F", "°", "C", "F", "A"]
        .iter()
        .find_map(|unit| cell.strip_suffix(unit))
        .unwrap_or(cell)
        .trim_end()
        .replace('\u{2212}', "-")
        .replace(',', ".");
    match parse_decimal(&text).filter(|value| value.is_finite()) {
        Some(value) => Ok(Some(value)),
        None => Err(LogError::NotReadable {
            line,
            column,
            cell: shortened(cell),
        }),
    }
}

fn out_of_range(line: usize, column: Column, cell: &str) -> LogError {
    LogError::OutOfRange {
        line,
        column,
        cell: shortened(cell),
    }
}

fn shortened(cell: &str) -> String {
    cell.trim().chars().take(40).collect()
}
