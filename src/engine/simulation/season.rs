//! Many days of a weather file, passed through one after another: cabin and bank begin each day as the one before left them.
//!
//! The surroundings of all days are worked out at once by the file's own hours, so that the ground keeps its warmth too. A day is a
//! run of its own, from an hour to the same hour of the next, that goes on with cabin, cooler and bank where the one before left off;
//! that nothing is lost at the cut is checked against a run without one.

use super::body::{Body, body};
use super::build::BuildError;
use super::cooling::Cooling;
use super::environment::{Environment, SPACING_S};
use super::power::Power;
use super::prepared::Settled;
use super::recorder::Detail;
use super::results::Results;
use super::roof::PanelShade;
use super::run::Run;
use crate::quantity::{SECONDS_PER_DAY, SECONDS_PER_HOUR};
use crate::scenario::{Scenario, ScenarioDocument};
use crate::weather::{FileWeather, mean_wind_from_deg};
use std::rc::Rc;

/// Points of the surroundings in a day.
const POINTS_IN_DAY: usize = (SECONDS_PER_DAY / SPACING_S) as usize;

/// A scenario under the weather of a file, made ready for any number of its days.
#[derive(Clone, Debug)]
pub struct Season {
    document: ScenarioDocument,
    body: Body,
    whole: Environment,
    settled: Settled,
    winds_from_deg: Vec<Option<f64>>,
}

impl Season {
    /// Makes a scenario ready at the file's place, from the day on which the file's time base begins.
    ///
    /// Of the scenario's place and day only ground, terrain, summer time and shade are kept. The
    /// first day is preceded by the one before it in the file, cooler off, as in any run.
    ///
    /// `days`: from one up to what the file reaches ([`FileWeather::reaches`]); the last days of a file that is asked for more hold
    /// its last record. `start_hour`: clock hour at which each day's run begins, 0…23.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do, or the file's place has no path of the sun.
    pub fn new(
        scenario: &Scenario,
        weather: &FileWeather,
        days: u32,
        start_hour: f64,
    ) -> Result<Self, BuildError> {
        let mut document = scenario.document().clone();
        let site = weather.place();
        let place = &mut document.place;
        (place.latitude_deg, place.longitude_deg) = (site.latitude_deg, site.longitude_deg);
        (place.altitude_m, place.utc_offset_h) = (site.altitude_m, site.utc_offset_h);
        document.day.date = weather.first_day();
        (document.day.days, document.day.start_hour) = (1.0, start_hour);
        let body = body(&document)?;
        let start_s = document.day.start_hour * SECONDS_PER_HOUR;
        let first_clock_s = start_s - SECONDS_PER_DAY;
        let summer_s = if document.place.summer_time {
            SECONDS_PER_HOUR
        } else {
            0.0
        };
        let sun = weather.sun_path(days + 1)?;
        let count = (days as usize + 1) * POINTS_IN_DAY + 2;
        let outdoors: Vec<_> = (0..count)
            .map(|index| {
                let clock_s = first_clock_s + SPACING_S * index as f64;
                weather.at(clock_s - summer_s, &sun)
            })
            .collect();
        let winds_from_deg = outdoors
            .chunks(POINTS_IN_DAY)
            .map(mean_wind_from_deg)
            .collect();
        let whole = Environment::around(&document, &body, first_clock_s, outdoors, Rc::new([]))?;
        let first = whole.stretch(0..2 * POINTS_IN_DAY + 2, Some(document.day.wind_from_deg));
        let settled = Settled::new(&document, &body, &first)?;
        Ok(Self {
            document,
            body,
            whole,
            settled,
            winds_from_deg,
        })
    }

    /// The scenario as it stands at the file's place, for one day.
    #[must_use]
    pub fn document(&self) -> &ScenarioDocument {
        &self.document
    }

    /// Begins to pass through the days with other equipment: cooler, bank, charging and prices of `document` may differ from
    /// [`Season::document`], all else must not.
    #[must_use]
    pub fn passage(&self, document: ScenarioDocument) -> Passage {
        Passage {
            document,
            settled: self.settled.clone(),
            equipment: None,
            days: 0,
        }
    }

    /// Surroundings of a day and of the day before it.
    fn day(&self, day: usize) -> Environment {
        let last = self.whole.points().len();
        let from = (day * POINTS_IN_DAY).min(last.saturating_sub(2));
        let until = ((day + 2) * POINTS_IN_DAY + 2).min(last);
        let wind = self.winds_from_deg.get(day + 1).copied().flatten();
        self.whole.stretch(from..until, wind)
    }
}

/// A way through the days of a season.
#[derive(Clone, Debug)]
pub struct Passage {
    document: ScenarioDocument,
    settled: Settled,
    /// Cooler and bank as the day before left them.
    equipment: Option<(Cooling, Power)>,
    days: usize,
}

impl Passage {
    /// Runs the next day, in so many steps a minute, and keeps what a verdict needs
    /// ([`Prepared::run_for_verdict`](super::Prepared::run_for_verdict)). Times are clock hours since midnight of that day.
    ///
    /// Beyond the days of the season the last surroundings hold.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn next_day(
        &mut self,
        season: &Season,
        steps_per_minute: u32,
    ) -> Result<Results, BuildError> {
        let around = season.day(self.days);
        let shade = PanelShade::of(&self.document, &around);
        let mut run = Run::new(
            &self.document,
            &season.body,
            &around,
            self.settled.clone(),
            Detail::Verdict,
        )?;
        run.panel_shade = shade.as_ref();
        if let Some((cooling, power)) = self.equipment.take() {
            (run.cooling, run.power) = (cooling, power);
        }
        run.pass(steps_per_minute.max(1));
        self.settled = Settled {
            cabin: run.cabin.clone(),
            ventilation: run.ventilation.clone(),
            covered: run.covered,
        };
        self.equipment = Some((run.cooling.clone(), run.power.clone()));
        let results = run.results();
        self.days += 1;
        Ok(results)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;
    use crate::simulation::FULL_STEPS_PER_MINUTE;
    use crate::weather::invented_summer;

    /// Felt temperature and charge of three days, in one run and cut into days.
    fn uncut_and_cut(cooled: bool) -> [(Vec<f64>, Vec<f64>); 2] {
        let mut document = example();
        document.cooler.installed = cooled;
        let scenario = Scenario::new(document).unwrap();
        let weather = invented_summer().unwrap().starting_on(7, 1).unwrap();
        let season = Season::new(&scenario, &weather, 3, 6.0).unwrap();
        let mut document = season.document().clone();
        document.day.days = 3.0;
        let whole = season.whole.stretch(
            0..season.whole.points().len(),
            Some(document.day.wind_from_deg),
        );
        let settled = season.settled.clone();
        let detail = Detail::Verdict;
        let mut run = Run::new(&document, &season.body, &whole, settled, detail).unwrap();
        run.pass(FULL_STEPS_PER_MINUTE);
        let uncut = run.results().series;
        let mut passage = season.passage(season.document().clone());
        let mut cut = (Vec::new(), Vec::new());
        for _ in 0..3 {
            let series = passage
                .next_day(&season, FULL_STEPS_PER_MINUTE)
                .unwrap()
                .series;
            let samples = series.felt_c.len() - 1;
            cut.0.extend(&series.felt_c[..samples]);
            cut.1.extend(&series.state_of_charge[..samples]);
        }
        [(uncut.felt_c, uncut.state_of_charge), cut]
    }

    fn worst(one: &[f64], other: &[f64]) -> f64 {
        let pairs = one.iter().zip(other);
        pairs
            .map(|(one, other)| (one - other).abs())
            .fold(0.0, f64::max)
    }

    /// Rounding alone may tell them apart.
    #[test]
    fn days_one_by_one_are_a_run_without_a_cut() {
        for cooled in [false, true] {
            let [uncut, cut] = uncut_and_cut(cooled);
            assert_eq!(cut.0.len(), 3 * 288);
            assert!(worst(&uncut.0, &cut.0) < 1e-9);
            assert!(worst(&uncut.1, &cut.1) < 1e-12);
        }
    }
}
