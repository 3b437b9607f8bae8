//! The order of the work, in slices of some tens of milliseconds.

use super::message::{Answer, Extent, Found, Lesson, Request, SummerAsked, SummerWeather};
use noonday_engine::advice::failure::FailureSearch;
use noonday_engine::advice::learning::{Learning, read_log};
use noonday_engine::advice::sampling::{ENOUGH_SAMPLES, Sampler};
use noonday_engine::advice::summer::SummerSearch;
use noonday_engine::advice::{PackageSearch, alternatives, levers, measures, plain_division, size};
use noonday_engine::scenario::{Scenario, from_link};
use noonday_engine::simulation::BuildError;
use noonday_engine::weather::{FileWeather, invented_summer};

/// Runs of packages in a slice, and slices between two results that are shown.
const RUNS_IN_SLICE: usize = 20;
const SLICES_BETWEEN_RESULTS: u32 = 6;

/// Draws in a slice, and between two results that are shown.
const DRAWS_IN_SLICE: usize = 16;
const DRAWS_BETWEEN_RESULTS: usize = 208;

/// Days of a summer in a slice.
const DAYS_IN_SLICE: usize = 6;

/// Seed of the draws: any will do, and the same gives the same answer.
const SEED: u64 = 12;

/// Parts of the work in order, with the share of the whole at which each ends: what they take on the example.
enum Part {
    Levers,
    Alternatives,
    Failures(Box<FailureSearch>),
    Plain,
    Sizing,
    Packages(Box<PackageSearch>, u32),
    Sampling(Box<Sampler>),
    Learning(Option<Box<Learning>>),
    /// Nothing before its first slice.
    Summer(Option<Box<SummerSearch>>),
    Over,
}

const ENDS: [f64; 7] = [0.02, 0.04, 0.16, 0.17, 0.2, 0.4, 1.0];

/// The work on one request.
pub struct Work {
    request: Request,
    scenario: Option<Scenario>,
    part: Part,
    took_ms: f64,
}

impl Work {
    /// Begins the work on a request.
    pub fn new(request: Request) -> Self {
        let document = from_link(&request.link).ok();
        let scenario = document.and_then(|document| Scenario::new(document).ok());
        let part = match (request.extent, &request.lesson, &request.summer) {
            (Extent::Nothing, ..) => Part::Over,
            (_, Some(lesson), _) => Part::Learning(begun(scenario.as_ref(), lesson)),
            (_, None, Some(_)) => Part::Summer(None),
            (Extent::Everything, ..) => Part::Levers,
            (Extent::Choices, ..) => Part::Sizing,
        };
        Self {
            scenario,
            request,
            part,
            took_ms: 0.0,
        }
    }

    /// Does a slice more; none when all is done. `now_ms` reads a clock.
    pub fn step(&mut self, now_ms: fn() -> f64) -> Option<Answer> {
        if matches!(self.part, Part::Over) {
            return None;
        }
        let began_ms = now_ms();
        let before = self.place();
        let (found, progress) = self.slice().unwrap_or_else(|_| {
            self.part = Part::Over;
            (Found::Refused, 1.0)
        });
        self.took_ms += now_ms() - began_ms;
        let answer = Answer {
            number: self.request.number,
            progress,
            took_ms: self.took_ms,
            found,
        };
        if self.place() != before {
            self.took_ms = 0.0;
        }
        Some(answer)
    }

    fn place(&self) -> usize {
        match self.part {
            Part::Levers => 0,
            Part::Alternatives => 1,
            Part::Failures(_) => 2,
            Part::Plain => 3,
            Part::Sizing => 4,
            Part::Packages(..) => 5,
            Part::Sampling(_) => 6,
            Part::Learning(_) => 7,
            Part::Summer(_) => 8,
            Part::Over => 9,
        }
    }

    fn slice(&mut self) -> Result<(Found, f64), BuildError> {
        let Some(scenario) = &self.scenario else {
            self.part = Part::Over;
            return Ok((Found::Refused, 1.0));
        };
        let place = self.place();
        let last = ENDS.len() - 1;
        let begin = place
            .checked_sub(1)
            .map_or(0.0, |before| ENDS[before.min(last)]);
        let end = ENDS[place.min(last)];
        let at = |share: f64| begin + share * (end - begin);
        match &mut self.part {
            Part::Levers => {
                let found = Found::Levers(levers(scenario)?);
                self.part = Part::Alternatives;
                Ok((found, end))
            }
            Part::Alternatives => {
                let found = Found::Alternatives(alternatives(scenario)?);
                self.part = Part::Failures(Box::new(FailureSearch::new(scenario)?));
                Ok((found, end))
            }
            Part::Failures(search) => {
                if !search.step()? {
                    return Ok((Found::Progress, at(0.5)));
                }
                let found = std::mem::take(&mut search.found);
                self.part = Part::Plain;
                Ok((Found::Failures(found), end))
            }
            Part::Plain => {
                let found = Found::Plain(plain_division(scenario)?);
                self.part = Part::Sizing;
                Ok((found, end))
            }
            Part::Sizing => {
                let found = Found::Sizing(size(scenario, self.request.must_recover)?.map(Box::new));
                let mut offered = measures(scenario);
                let left_out = &self.request.left_out;
                offered.retain(|measure| !left_out.contains(&measure.kind.subject()));
                let search = PackageSearch::new(scenario, offered);
                self.part = Part::Packages(Box::new(search), 0);
                Ok((found, end))
            }
            Part::Packages(search, slices) => {
                *slices += 1;
                if !search.step(RUNS_IN_SLICE)? {
                    let shown = slices.is_multiple_of(SLICES_BETWEEN_RESULTS);
                    let found = shown.then(|| Found::Packages(search.result()));
                    let progress = at(search.progress());
                    return Ok((found.unwrap_or(Found::Progress), progress));
                }
                let found = Found::Packages(search.result());
                self.part = match self.request.extent {
                    Extent::Everything => Part::Sampling(Box::new(Sampler::new(scenario, SEED))),
                    _ => Part::Over,
                };
                Ok((found, end))
            }
            Part::Sampling(sampler) => {
                let drawn = sampler.step(DRAWS_IN_SLICE)?;
                let progress = at(drawn as f64 / ENOUGH_SAMPLES as f64);
                let over = drawn >= ENOUGH_SAMPLES;
                let shown = over || drawn.is_multiple_of(DRAWS_BETWEEN_RESULTS);
                let found = shown.then(|| Found::Sampled(sampler.result()));
                if over {
                    self.part = Part::Over;
                }
                Ok((found.unwrap_or(Found::Progress), progress.min(1.0)))
            }
            Part::Learning(learning) => {
                let Some(learning) = learning else {
                    self.part = Part::Over;
                    return Ok((Found::Refused, 1.0));
                };
                if !learning.step()? {
                    return Ok((Found::Progress, learning.progress()));
                }
                let found = Found::Learned(Box::new(learning.result()));
                self.part = Part::Over;
                Ok((found, 1.0))
            }
            Part::Summer(search) => {
                if search.is_none() {
                    let asked = self.request.summer.as_ref();
                    *search = asked.and_then(|asked| summer(scenario, asked));
                }
                let Some(search) = search else {
                    self.part = Part::Over;
                    return Ok((Found::Refused, 1.0));
                };
                let mut over = false;
                for _ in 0..DAYS_IN_SLICE {
                    over = over || search.step()?;
                }
                let found = Found::Summer(Box::new(search.found().clone()));
                let progress = search.progress();
                if over {
                    self.part = Part::Over;
                }
                Ok((found, progress))
            }
            Part::Over => Ok((Found::Progress, 1.0)),
        }
    }
}

/// A fit begun; none of a log that cannot be fitted, which the page does not send.
fn begun(scenario: Option<&Scenario>, lesson: &Lesson) -> Option<Box<Learning>> {
    let log = read_log(&lesson.text, &lesson.assumed.unsaid).ok()?;
    let learning = Learning::new(scenario?, &log, &lesson.assumed).ok()?;
    Some(Box::new(learning))
}

/// A summer begun; none of a file that cannot be read or does not hold the day, which the page does not ask for.
fn summer(scenario: &Scenario, asked: &SummerAsked) -> Option<Box<SummerSearch>> {
    let weather = match &asked.weather {
        SummerWeather::File(text) => FileWeather::from_epw_text(text),
        SummerWeather::Invented => invented_summer(),
    };
    let weather = weather.ok()?.starting_on(asked.from.0, asked.from.1).ok()?;
    let search = SummerSearch::new(scenario, &weather, asked.days).ok()?;
    Some(Box::new(search))
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::advice::Subject;
    use noonday_engine::scenario::{example, to_link};

    fn request(extent: Extent) -> Request {
        Request {
            left_out: vec![Subject::Shade],
            must_recover: true,
            number: 3,
            ..Request::new(extent, to_link(&example()))
        }
    }

    fn all(request: Request) -> Vec<Answer> {
        let mut work = Work::new(request);
        std::iter::from_fn(|| work.step(|| 0.0)).collect()
    }

    #[test]
    fn everything_is_found_once_and_progress_never_falls() {
        let answers = all(request(Extent::Everything));
        assert!(answers.iter().all(|answer| answer.number == 3));
        assert!(answers.is_sorted_by(|one, other| one.progress <= other.progress));
        assert_eq!(answers.last().unwrap().progress, 1.0);
        let count = |is: fn(&Found) -> bool| answers.iter().filter(|one| is(&one.found)).count();
        assert_eq!(count(|found| matches!(found, Found::Alternatives(_))), 1);
        assert_eq!(
            count(|found| matches!(found, Found::Failures(all) if all.len() == 4)),
            1
        );
        assert_eq!(count(|found| matches!(found, Found::Plain(Some(_)))), 1);
        assert_eq!(count(|found| matches!(found, Found::Sizing(Some(_)))), 1);
        let complete = |found: &Found| matches!(found, Found::Packages(all) if all.complete);
        assert_eq!(count(complete), 1);
        let enough = |found: &Found| matches!(found, Found::Sampled(all) if all.samples >= 400);
        assert_eq!(count(enough), 1);
    }

    #[test]
    fn what_is_left_out_is_in_no_package() {
        for answer in all(request(Extent::Choices)) {
            let Found::Packages(found) = answer.found else {
                assert!(!matches!(answer.found, Found::Sampled(_)));
                continue;
            };
            let chosen = found.front.iter().chain(&found.alone);
            let mut measures = chosen.flat_map(|package| &package.measures);
            assert!(measures.all(|measure| measure.kind.subject() != Subject::Shade));
            assert!(found.nothing.is_some());
        }
    }

    #[test]
    fn a_lesson_is_learned_alone_and_a_bad_one_is_refused() {
        use noonday_engine::advice::learning::Assumed;
        let lesson = |text: &str| Lesson {
            text: text.to_owned(),
            assumed: Assumed::USUAL,
        };
        let answers = |text: &str| {
            all(Request {
                lesson: Some(lesson(text)),
                ..request(Extent::Everything)
            })
        };
        let learned = answers(include_str!("../../../tests/browser/logged-day.csv"));
        assert!(learned.is_sorted_by(|one, other| one.progress <= other.progress));
        let Some(Found::Learned(learned)) = learned.last().map(|answer| &answer.found) else {
            panic!("nothing was learned");
        };
        assert!(learned.follows() && (learned.estimates[0].value - 0.6).abs() < 0.1);
        assert_eq!(answers("no log").last().unwrap().found, Found::Refused);
    }

    #[test]
    fn a_summer_comes_day_by_day_and_one_that_cannot_be_is_refused() {
        let asked = |from| Request {
            summer: Some(SummerAsked {
                weather: SummerWeather::Invented,
                from,
                days: 9,
            }),
            ..request(Extent::Everything)
        };
        let answers = all(asked((7, 1)));
        assert!(answers.is_sorted_by(|one, other| one.progress <= other.progress));
        let Some(Found::Summer(summer)) = answers.last().map(|answer| &answer.found) else {
            panic!("no summer");
        };
        assert_eq!(
            (summer.days.len(), answers.last().unwrap().progress),
            (9, 1.0)
        );
        assert_eq!(all(asked((1, 1))).last().unwrap().found, Found::Refused);
    }

    #[test]
    fn nothing_is_done_when_nothing_is_asked_and_a_bad_scenario_is_refused() {
        assert!(all(request(Extent::Nothing)).is_empty());
        let answers = all(Request {
            link: "v=9".to_owned(),
            ..request(Extent::Everything)
        });
        assert_eq!(answers.len(), 1);
        assert_eq!(answers[0].found, Found::Refused);
    }
}
