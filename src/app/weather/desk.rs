//! The weather file that lies open, and the summer that is run of it beside the page.

use crate::dropped::{Dropped, Refused};
use crate::state::AppState;
use crate::text::errors::field_error_named;
use crate::text::weather::{file as text, summer as summer_text};
use crate::worker::{Answer, Asker, Extent, Found, Request, SummerAsked, SummerWeather};
use leptos::prelude::*;
use noonday_engine::advice::summer::Summer;
use noonday_engine::scenario::{Scenario, TakenDay, take_file_day, to_link};
use noonday_engine::solar::Date;
use noonday_engine::weather::{FileDay, FileWeather, invented_summer};
use std::sync::Arc;

/// How EPW files begin.
const BEGINS: &str = "LOCATION,";

/// A weather file as it lies open: kept in memory only.
#[derive(PartialEq)]
pub(super) struct Held {
    /// Its text; none of the invented one.
    text: Option<String>,
    pub(super) weather: FileWeather,
    pub(super) days: Vec<FileDay>,
    /// Indices of the days, hottest first.
    pub(super) by_heat: Vec<usize>,
}

impl Held {
    /// Whether it was made up.
    pub(super) fn is_invented(&self) -> bool {
        self.text.is_none()
    }

    fn new(text: Option<String>, weather: FileWeather) -> Option<Self> {
        let days = weather.facts(weather.days() as u32).ok()?;
        let mut by_heat: Vec<usize> = (0..days.len()).collect();
        by_heat.sort_by(|one, other| days[*other].high_c.total_cmp(&days[*one].high_c));
        Some(Self {
            text,
            weather,
            days,
            by_heat,
        })
    }
}

/// How far the run of a summer is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Phase {
    Idle,
    Working(f64),
    Stopped,
    Refused,
    /// The worker ended by itself.
    Failed,
    Unavailable,
}

/// The file, the day looked at, and the summer.
#[derive(Clone, Copy)]
pub(super) struct WeatherDesk {
    pub(super) state: AppState,
    pub(super) dropped: Dropped,
    pub(super) held: RwSignal<Option<Arc<Held>>>,
    /// Why a file was not taken.
    pub(super) trouble: RwSignal<Option<String>>,
    /// Index of the day of the file that is looked at.
    pub(super) day: RwSignal<usize>,
    /// Said once a day was put into the scenario.
    pub(super) taken: RwSignal<bool>,
    /// First day of the span to be run and how many.
    pub(super) span: RwSignal<(Date, u32)>,
    pub(super) phase: RwSignal<Phase>,
    /// What was found, and of which scenario.
    pub(super) summer: RwSignal<Option<Arc<(Scenario, Summer)>>>,
    /// Index of the day of the summer whose numbers are shown.
    pub(super) chosen: RwSignal<Option<usize>>,
    /// The work that the last summer took, ms.
    pub(super) took_ms: RwSignal<f64>,
    asker: Asker,
    of: StoredValue<Option<Scenario>>,
}

impl WeatherDesk {
    /// Begins without a file, and takes those that are dropped on the page.
    pub(super) fn new() -> Self {
        let desk = Self {
            state: expect_context::<AppState>(),
            dropped: expect_context::<Dropped>(),
            held: RwSignal::new(None),
            trouble: RwSignal::new(None),
            day: RwSignal::new(0),
            taken: RwSignal::new(false),
            span: RwSignal::new((Date::MIDSUMMER, 1)),
            phase: RwSignal::new(Phase::Idle),
            summer: RwSignal::new(None),
            chosen: RwSignal::new(None),
            took_ms: RwSignal::new(0.0),
            asker: Asker::new(),
            of: StoredValue::new(None),
        };
        desk.dropped.takes(BEGINS, move |_, text| {
            desk.take_text(text);
            super::file::show();
        });
        desk
    }

    /// Takes the text of a weather file.
    pub(super) fn take_text(self, text: String) {
        match FileWeather::from_epw_text(&text) {
            Ok(weather) => self.hold(Held::new(Some(text), weather)),
            Err(error) => self.trouble.set(Some(text::file_error(&error))),
        }
    }

    /// Takes the invented summer.
    pub(super) fn invent(self) {
        self.hold(
            invented_summer()
                .ok()
                .and_then(|weather| Held::new(None, weather)),
        );
    }

    /// Puts the file away.
    pub(super) fn put_away(self) {
        self.stop();
        self.phase.set(Phase::Idle);
        self.summer.set(None);
        self.held.set(None);
    }

    fn hold(self, held: Option<Held>) {
        let Some(held) = held else {
            return self.trouble.set(Some(text::NO_SUN.to_owned()));
        };
        self.put_away();
        self.trouble.set(None);
        self.taken.set(false);
        self.day
            .set(held.by_heat.first().copied().unwrap_or_default());
        let ((month, day), days) = held.weather.summer();
        let first = held.weather.clone().starting_on(month, day);
        self.span.set((
            first.map_or(Date::MIDSUMMER, |first| first.first_day()),
            days,
        ));
        self.held.set(Some(Arc::new(held)));
    }

    /// Why a dropped or chosen file was not even looked into.
    pub(super) fn refused(self) -> Option<String> {
        self.dropped
            .refused
            .with(|refused| match refused.as_ref()? {
                Refused::TooLarge { bytes, .. } => {
                    Some(text::too_large(*bytes, crate::dropped::LARGEST_BYTES))
                }
                Refused::Unknown { name } => Some(text::unknown(name)),
            })
    }

    /// The scenario on a day of the file, or why that cannot be.
    pub(super) fn on_day(self, date: Date) -> Option<Result<TakenDay, String>> {
        let held = self.held.get()?;
        let weather = held.weather.clone().starting_on(date.month(), date.day());
        let document = self.state.document.get();
        let taken = take_file_day(&document, &weather.ok()?)
            .map_err(|error| text::weather_error(&error).to_owned());
        Some(taken.and_then(|taken| {
            let Err(errors) = Scenario::new(taken.document.clone()) else {
                return Ok(taken);
            };
            let about_it = |key: &str| key.starts_with("place.") || key.starts_with("day.");
            match errors.iter().find(|error| about_it(error.key)) {
                Some(error) => Err(field_error_named(error, self.state.units.get(), "")),
                // What is wrong elsewhere was wrong before.
                None => Ok(taken),
            }
        }))
    }

    /// Puts the scenario on a day of the file, as one step.
    pub(super) fn put_on(self, date: Date) {
        if let Some(Ok(taken)) = untrack(|| self.on_day(date)) {
            self.state.exchange(taken.document);
            self.taken.set(true);
        }
    }

    /// Begins to run the summer.
    pub(super) fn run(self) {
        let Some(held) = self.held.get_untracked() else {
            return;
        };
        let scenario = self
            .state
            .checked
            .with_untracked(|checked| checked.scenario.clone());
        let link = to_link(scenario.document());
        self.of.set_value(Some(scenario));
        self.summer.set(None);
        self.chosen.set(None);
        let (first, days) = self.span.get_untracked();
        let weather = match &held.text {
            Some(text) => SummerWeather::File(text.clone()),
            None => SummerWeather::Invented,
        };
        let asked = SummerAsked {
            weather,
            from: (first.month(), first.day()),
            days,
        };
        self.ask(Extent::Everything, link, Some(asked));
    }

    /// Gives it up.
    pub(super) fn stop(self) {
        if let Phase::Working(_) = self.phase.get_untracked() {
            self.ask(Extent::Nothing, String::new(), None);
            self.phase.set(Phase::Stopped);
        }
    }

    fn ask(self, extent: Extent, link: String, summer: Option<SummerAsked>) {
        let request = Request {
            summer,
            ..Request::new(extent, link)
        };
        let asked = self.asker.ask(
            request,
            move |answer| self.take(answer),
            move || self.fail(),
        );
        self.phase.set(if asked {
            Phase::Working(0.0)
        } else {
            Phase::Unavailable
        });
    }

    /// The worker has ended by itself: another begins with the next run, unless that has been tried.
    fn fail(self) {
        self.phase.set(if self.asker.has_ended_again() {
            Phase::Unavailable
        } else {
            Phase::Failed
        });
    }

    fn take(self, answer: Answer) {
        let waiting = matches!(self.phase.get_untracked(), Phase::Working(_));
        if !self.asker.is_to_last(&answer) || !waiting {
            return;
        }
        match answer.found {
            Found::Summer(summer) => {
                let of = self.of.with_value(Option::clone);
                self.summer.set(of.map(|of| Arc::new((of, *summer))));
                self.took_ms.set(answer.took_ms);
                self.phase.set(if answer.progress < 1.0 {
                    Phase::Working(answer.progress)
                } else {
                    self.asker.has_brought();
                    Phase::Idle
                });
            }
            Found::Refused => self.phase.set(Phase::Refused),
            _ => self.phase.set(Phase::Working(answer.progress)),
        }
    }

    /// What the run is at, in words.
    pub(super) fn told(self) -> &'static str {
        match self.phase.get() {
            Phase::Idle => "",
            Phase::Working(_) => summer_text::RUNNING,
            Phase::Stopped => summer_text::STOPPED,
            Phase::Refused => summer_text::REFUSED,
            Phase::Failed => summer_text::FAILED,
            Phase::Unavailable => summer_text::NO_WORKER,
        }
    }
}
