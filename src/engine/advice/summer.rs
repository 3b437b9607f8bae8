//! A whole summer of a weather file: in which nights and afternoons the need is met by the fan alone, by a cooler on the mains, and
//! by the cooler on the bank.
//!
//! Every day of the span is run by the file's own hours, and each day begins as the one before left cabin and bank
//! ([`Season`]). The windows of the need are judged as those of a single run are ([`super::judge`]). The three ways differ only in
//! equipment: without the cooler; with it, fed amply as from the mains; with it, on bank, panels and driving as the scenario has
//! them, but never plugged in.
//!
//! Runs take steps of a minute, as those of searches do; how far that is from steps of ten seconds is held by a test.

use super::ample::feed_amply;
use super::judge::{HOURS_PER_DAY, excess, length_h};
use super::trial::COARSE_STEPS_PER_MINUTE;
use crate::scenario::{Day, NeedWindow, NeededFor, Place, Scenario, ScenarioDocument};
use crate::simulation::{BuildError, Passage, Results, Season, Series};
use crate::solar::Date;
use crate::weather::{FileDay, FileWeather};
use serde::{Deserialize, Serialize};

/// Hours by which a sample may lie before its time by rounding.
const ROUNDING_H: f64 = 1e-6;

/// Ways to meet the need.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Means {
    /// Fan and opened windows, no cooler.
    FanAlone,
    /// The cooler, with as much electricity as it wants.
    Mains,
    /// The cooler on the bank, never plugged in.
    Bank,
}

impl Means {
    /// Every way, in the order of [`SummerDay::held`].
    pub const ALL: [Self; 3] = [Self::FanAlone, Self::Mains, Self::Bank];
}

/// A window of the need that is in use.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct AskedWindow {
    /// Its index in the scenario.
    pub slot: usize,
    /// For whom.
    pub needed_for: NeededFor,
    /// From this clock hour.
    pub from_hour: f64,
    /// Until this clock hour; not after it where it wraps past midnight.
    pub until_hour: f64,
    /// Highest felt temperature allowed, °C.
    pub highest_felt_c: f64,
}

impl AskedWindow {
    /// Whether it reaches over midnight, or begins with it.
    #[must_use]
    pub fn is_night(&self) -> bool {
        self.until_hour <= self.from_hour || self.from_hour == 0.0
    }
}

/// A window on one day by one of the ways.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Held {
    /// Whether it was met throughout.
    pub met: bool,
    /// Time above its limits, h.
    pub missed_h: f64,
    /// Highest felt temperature in it, °C.
    pub worst_felt_c: f64,
}

/// A day of the summer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SummerDay {
    /// What the file says of it.
    pub facts: FileDay,
    /// Each window in use that begins on it, by each way in the order of [`Means::ALL`].
    pub held: Vec<[Held; 3]>,
    /// Lowest charge of the bank, share, from the hour at which runs begin to the same hour of the next day.
    pub lowest_charge: f64,
    /// Electricity that the cooler takes in that time, Wh, from the mains and from the bank.
    pub cooler_wh: [f64; 2],
}

/// The whole of it, or what there is so far.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Summer {
    /// The windows in use, in the order of the scenario.
    pub windows: Vec<AskedWindow>,
    /// The days.
    pub days: Vec<SummerDay>,
    /// Whether there is a cooler; without one the three ways are the same.
    pub has_cooler: bool,
}

impl Summer {
    /// On how many days a window is met by one of the ways.
    #[must_use]
    pub fn met(&self, window: usize, means: Means) -> usize {
        let held = self.days.iter().filter_map(|day| day.held.get(window));
        held.filter(|held| held[means as usize].met).count()
    }

    /// The lowest charge of the bank and the day on which it is reached.
    #[must_use]
    pub fn lowest_charge(&self) -> Option<(f64, Date)> {
        let days = self.days.iter();
        days.map(|day| (day.lowest_charge, day.facts.date))
            .min_by(|one, other| one.0.total_cmp(&other.0))
    }
}

/// Whether two scenarios have the same summer under the same file: they may differ in what the file says instead, in names, prices
/// and readings.
#[must_use]
pub fn same_summer(one: &ScenarioDocument, other: &ScenarioDocument) -> bool {
    let day = &one.day;
    let alike = ScenarioDocument {
        name: other.name.clone(),
        note: other.note.clone(),
        recipient: other.recipient.clone(),
        sender: other.sender.clone(),
        prices: other.prices.clone(),
        readings: other.readings.clone(),
        place: Place {
            terrain: one.place.terrain,
            ground: one.place.ground,
            summer_time: one.place.summer_time,
            ..other.place.clone()
        },
        day: Day {
            start_hour: day.start_hour,
            shade_beam_share: day.shade_beam_share,
            shade_sky_share: day.shade_sky_share,
            shade_from_hour: day.shade_from_hour,
            shade_until_hour: day.shade_until_hour,
            ..other.day.clone()
        },
        ..one.clone()
    };
    alike == *other
}

/// Runs a summer day by day, so that it can be watched and given up.
#[derive(Clone, Debug)]
pub struct SummerSearch {
    season: Season,
    passages: Vec<Passage>,
    windows: Vec<NeedWindow>,
    facts: Vec<FileDay>,
    /// The run of the last day and of the one before it, by each way; hours since midnight of the first day of the season.
    series: Vec<Series>,
    passed: Option<Passed>,
    runs: usize,
    steps_per_minute: u32,
    found: Summer,
}

impl SummerSearch {
    /// Begins with the day on which the file's time base begins.
    ///
    /// A run begins at the scenario's own hour, or with the first window of the day where that is earlier, so that every window of
    /// every day is passed in whole.
    ///
    /// `days`: one to 366.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do, or the file's place has no path of the sun.
    pub fn new(scenario: &Scenario, weather: &FileWeather, days: u32) -> Result<Self, BuildError> {
        Self::in_steps(scenario, weather, days, COARSE_STEPS_PER_MINUTE)
    }

    fn in_steps(
        scenario: &Scenario,
        weather: &FileWeather,
        days: u32,
        steps_per_minute: u32,
    ) -> Result<Self, BuildError> {
        let days = days.clamp(1, 366);
        let need = scenario.document().need.windows.iter().enumerate();
        let used: Vec<(usize, NeedWindow)> = need
            .filter(|(_, window)| window.needed_for != NeededFor::Nobody)
            .map(|(slot, window)| (slot, window.clone()))
            .collect();
        let first_h = used.iter().map(|(_, window)| window.from_hour);
        let start_h = first_h.fold(scenario.document().day.start_hour, f64::min);
        let season = Season::new(scenario, weather, days + 1, start_h)?;
        let has_cooler = scenario.document().cooler.installed;
        let ways = if has_cooler {
            &Means::ALL[..]
        } else {
            &Means::ALL[..1]
        };
        let passages = ways
            .iter()
            .map(|means| season.passage(equipped(season.document(), *means)))
            .collect();
        let facts = weather.facts(days)?;
        Ok(Self {
            passages,
            season,
            facts,
            series: vec![Series::default(); ways.len()],
            passed: None,
            runs: 0,
            steps_per_minute,
            found: Summer {
                windows: used
                    .iter()
                    .map(|(slot, window)| asked(*slot, window))
                    .collect(),
                days: Vec::with_capacity(days as usize),
                has_cooler,
            },
            windows: used.into_iter().map(|(_, window)| window).collect(),
        })
    }

    /// Share of the days that is done.
    #[must_use]
    pub fn progress(&self) -> f64 {
        self.found.days.len() as f64 / self.facts.len().max(1) as f64
    }

    /// What there is so far.
    #[must_use]
    pub fn found(&self) -> &Summer {
        &self.found
    }

    /// Runs one day more by every way; gives whether all are done.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn step(&mut self) -> Result<bool, BuildError> {
        if self.found.days.len() >= self.facts.len() {
            return Ok(true);
        }
        let begins_h = HOURS_PER_DAY * self.runs as f64;
        let mut now = Passed::default();
        for (index, (passage, kept)) in self.passages.iter_mut().zip(&mut self.series).enumerate() {
            let run = passage.next_day(&self.season, self.steps_per_minute)?;
            now.note(index, &run);
            keep(kept, run.series, begins_h);
        }
        let before = self.passed.replace(now);
        // A window may last until the same hour of the next day, so that it takes two runs to judge those of a day.
        if let Some(before) = before {
            let day = self.judged(self.runs - 1, before);
            self.found.days.extend(day);
        }
        self.runs += 1;
        Ok(self.found.days.len() >= self.facts.len())
    }

    /// The windows that begin on a day, from the runs of it and of the next.
    fn judged(&self, day: usize, passed: Passed) -> Option<SummerDay> {
        let midnight_h = HOURS_PER_DAY * day as f64;
        let held_in = |window: &NeedWindow| {
            let from_h = midnight_h + window.from_hour;
            let span = (from_h, from_h + length_h(window));
            let by = |way: usize| {
                // Without a cooler there is only one way.
                let series = &self.series[way.min(self.series.len() - 1)];
                let excess = excess(series, window, span);
                Held {
                    met: excess.missed_h == 0.0,
                    missed_h: excess.missed_h,
                    worst_felt_c: excess.worst_c,
                }
            };
            [by(0), by(1), by(2)]
        };
        Some(SummerDay {
            facts: *self.facts.get(day)?,
            held: self.windows.iter().map(held_in).collect(),
            lowest_charge: passed.lowest_charge,
            cooler_wh: passed.cooler_wh,
        })
    }
}

/// What is kept of the runs of a day besides their series.
#[derive(Clone, Copy, Debug, Default)]
struct Passed {
    lowest_charge: f64,
    cooler_wh: [f64; 2],
}

impl Passed {
    fn note(&mut self, way: usize, run: &Results) {
        let charges = run.series.state_of_charge.iter();
        // That of the bank comes last.
        self.lowest_charge = charges.copied().fold(1.0, f64::min);
        if let Some(cooler_wh) = way
            .checked_sub(1)
            .and_then(|way| self.cooler_wh.get_mut(way))
        {
            *cooler_wh = run.totals.cooler_wh;
        }
    }
}

fn asked(slot: usize, window: &NeedWindow) -> AskedWindow {
    AskedWindow {
        slot,
        needed_for: window.needed_for,
        from_hour: window.from_hour,
        until_hour: window.until_hour,
        highest_felt_c: window.highest_felt_c,
    }
}

/// A document equipped for one of the ways.
fn equipped(document: &ScenarioDocument, means: Means) -> ScenarioDocument {
    let mut document = document.clone();
    match means {
        Means::FanAlone => document.cooler.installed = false,
        Means::Mains => feed_amply(&mut document),
        Means::Bank => document.charging.shore_power_w = 0.0,
    }
    document
}

/// Puts what a day's windows are judged by behind that of the day before, and drops what is older. The first sample of a run is the
/// last of the one before.
fn keep(kept: &mut Series, mut run: Series, begins_h: f64) {
    let begin_h = run.time_h.first().map_or(0.0, |first_h| first_h + begins_h);
    let older = kept
        .time_h
        .partition_point(|time_h| *time_h < begin_h - HOURS_PER_DAY - ROUNDING_H);
    for time_h in &mut run.time_h {
        *time_h += begins_h;
    }
    let columns: [fn(&mut Series) -> &mut Vec<f64>; 4] = [
        |series| &mut series.time_h,
        |series| &mut series.felt_c,
        |series| &mut series.cabin_c,
        |series| &mut series.relative_humidity,
    ];
    for column in columns {
        let kept = column(kept);
        kept.pop();
        kept.drain(..older.min(kept.len()));
        kept.append(column(&mut run));
    }
}

#[cfg(test)]
mod tests;
