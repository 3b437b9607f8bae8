//! How safe: how fast the cabin gets hot when cooler or bank fails.
//!
//! The failure is tried at instants spread evenly over every occurrence of a window; for each mark the shortest time to it counts,
//! whichever instant gives it. Marks are the beginnings of the published heat index categories and, for animals, 29.5 °C of air:
//! 85 °F, which United States regulation 9 CFR 3.3 lets housing of dogs and cats exceed for four hours at most. That is a
//! rule for attended facilities and no safe limit.
//!
//! None of this can say that leaving a child or an animal is safe. A mark that is not reached within the time watched is not
//! reached in this model, on this day, with this shade; the heat index was made for healthy adults in shade; and a day hotter by
//! some kelvins changes minutes.

use super::heat::heat_index_at_c;
use super::judge::judge;
use super::trial::COARSE_STEPS_PER_MINUTE;
use crate::comfort::heat_index::HeatIndexCategory;
use crate::quantity::{Bounded, SECONDS_PER_HOUR};
use crate::scenario::{NeededFor, Scenario};
use crate::simulation::{BuildError, FailingPart, Failure, Prepared, Series};
use serde::{Deserialize, Serialize};
use std::collections::VecDeque;

/// Air temperature that animals' housing may exceed for at most four hours, °C: 9 CFR 3.3(a), given there as 85 °F (29.5 °C).
pub const ANIMAL_FACILITY_LIMIT_C: f64 = 29.5;

/// Instants of a failure that are tried in each window of the need, over all of its days.
const INSTANTS: usize = 20;

/// Longest run that a scenario may ask for, days.
const MOST_DAYS: f64 = 7.0;

/// Time between samples, h; a failure takes effect with one.
const SAMPLE_H: f64 = 1.0 / 12.0;

const MINUTES_PER_HOUR: f64 = 60.0;

/// A state of the cabin that is dangerous.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Mark {
    /// The heat index is in a category or above.
    HeatIndex(HeatIndexCategory),
    /// The air is at [`ANIMAL_FACILITY_LIMIT_C`] or above.
    AnimalFacilityLimit,
}

/// Marks from the mildest to the worst; the animals' limit is for animals only.
const MARKS: [Mark; 5] = [
    Mark::HeatIndex(HeatIndexCategory::Caution),
    Mark::AnimalFacilityLimit,
    Mark::HeatIndex(HeatIndexCategory::ExtremeCaution),
    Mark::HeatIndex(HeatIndexCategory::Danger),
    Mark::HeatIndex(HeatIndexCategory::ExtremeDanger),
];

/// The shortest time to a mark.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct MarkReached {
    /// The mark.
    pub mark: Mark,
    /// Minutes from the failure until the cabin is there, zero where it already was; none where it never was within the run
    /// and the day after it.
    pub minutes: Option<f64>,
    /// The failure that gives them, clock hours since midnight of the first day; the first one tried where none does.
    pub failed_at_h: f64,
}

/// A window of the need in which a part fails.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WindowFailure {
    /// Index of the window in the scenario.
    pub slot: usize,
    /// For whom it is.
    pub needed_for: NeededFor,
    /// What fails.
    pub part: FailingPart,
    /// Marks from the mildest to the worst.
    pub marks: Vec<MarkReached>,
}

/// Lets cooler and bank fail in every window of the need, at the worst instant for each mark; none without a cooler. Some twenty
/// coarse runs for each window and part.
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn failures(scenario: &Scenario) -> Result<Vec<WindowFailure>, BuildError> {
    let mut search = FailureSearch::new(scenario)?;
    while !search.step()? {}
    Ok(search.found)
}

/// One case: the window, for whom it is, what fails, and the instants at which it is tried, h.
type Case = (usize, NeededFor, FailingPart, Vec<f64>);

/// Lets parts fail one case at a time, so that it can be watched and given up.
#[derive(Debug)]
pub struct FailureSearch {
    prepared: Prepared,
    cases: VecDeque<Case>,
    /// What was found so far.
    pub found: Vec<WindowFailure>,
}

impl FailureSearch {
    /// Makes the cases of a scenario ready, which takes one coarse run; there are none without a cooler.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn new(scenario: &Scenario) -> Result<Self, BuildError> {
        let prepared = Prepared::new(&watched(scenario))?;
        let cases = if scenario.document().cooler.installed {
            cases(scenario, &prepared)?
        } else {
            VecDeque::new()
        };
        Ok(Self {
            prepared,
            cases,
            found: Vec::new(),
        })
    }

    /// Tries one case more; gives whether that was the last.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn step(&mut self) -> Result<bool, BuildError> {
        if let Some((slot, needed_for, part, instants_h)) = self.cases.pop_front() {
            self.found.push(WindowFailure {
                slot,
                needed_for,
                part,
                marks: marks(&self.prepared, part, needed_for, &instants_h)?,
            });
        }
        Ok(self.cases.is_empty())
    }
}

fn cases(scenario: &Scenario, prepared: &Prepared) -> Result<VecDeque<Case>, BuildError> {
    let document = scenario.document();
    let run = prepared.run_for_verdict(COARSE_STEPS_PER_MINUTE)?;
    let windows = judge(document, &run, &run).windows;
    let mut cases = VecDeque::new();
    for (slot, window) in document.need.windows.iter().enumerate() {
        let spans: Vec<(f64, f64)> = windows
            .iter()
            .filter(|other| other.slot == slot)
            .map(|other| (other.from_h, other.until_h))
            .collect();
        let instants_h = instants_h(&spans);
        if instants_h.is_empty() {
            continue;
        }
        for part in [FailingPart::Cooler, FailingPart::Bank] {
            cases.push_back((slot, window.needed_for, part, instants_h.clone()));
        }
    }
    Ok(cases)
}

/// The scenario with a day more to watch, where it can have one.
fn watched(scenario: &Scenario) -> Scenario {
    let mut document = scenario.document().clone();
    document.day.days = (document.day.days + 1.0).at_most(MOST_DAYS);
    Scenario::new(document).unwrap_or_else(|_| scenario.clone())
}

/// Instants of failure: the samples of all spans, thinned evenly.
fn instants_h(spans: &[(f64, f64)]) -> Vec<f64> {
    let samples_h: Vec<f64> = spans
        .iter()
        .flat_map(|(from_h, until_h)| {
            let count = ((until_h - from_h) / SAMPLE_H).floor() as usize + 1;
            (0..count).map(move |index| from_h + SAMPLE_H * index as f64)
        })
        .collect();
    let every = samples_h.len().div_ceil(INSTANTS).max(1);
    samples_h.into_iter().step_by(every).collect()
}

fn marks(
    prepared: &Prepared,
    part: FailingPart,
    needed_for: NeededFor,
    instants_h: &[f64],
) -> Result<Vec<MarkReached>, BuildError> {
    let first_h = instants_h.first().copied().unwrap_or_default();
    let mut marks: Vec<MarkReached> = MARKS
        .into_iter()
        .filter(|mark| *mark != Mark::AnimalFacilityLimit || needed_for == NeededFor::Animals)
        .map(|mark| MarkReached {
            mark,
            minutes: None,
            failed_at_h: first_h,
        })
        .collect();
    for failed_at_h in instants_h {
        let failure = Failure {
            part,
            at_s: failed_at_h * SECONDS_PER_HOUR,
        };
        let run = prepared
            .failing(failure)
            .run_for_verdict(COARSE_STEPS_PER_MINUTE)?;
        for reached in &mut marks {
            let Some(minutes) = minutes_to(reached.mark, &run.series, *failed_at_h) else {
                continue;
            };
            if reached.minutes.is_none_or(|least| minutes < least) {
                reached.minutes = Some(minutes);
                reached.failed_at_h = *failed_at_h;
            }
        }
    }
    Ok(marks)
}

/// Minutes from a failure until a mark, by straight lines between samples.
fn minutes_to(mark: Mark, series: &Series, failed_at_h: f64) -> Option<f64> {
    let beyond_k = |index: usize| match mark {
        Mark::HeatIndex(category) => {
            heat_index_at_c(series, index) - category.from_c().unwrap_or(f64::NEG_INFINITY)
        }
        Mark::AnimalFacilityLimit => series.cabin_c[index] - ANIMAL_FACILITY_LIMIT_C,
    };
    let reached = (0..series.time_h.len())
        .find(|index| series.time_h[*index] >= failed_at_h - 1e-9 && beyond_k(*index) >= 0.0)?;
    let at_h = match reached.checked_sub(1) {
        Some(before) if beyond_k(before) < 0.0 => {
            let share = beyond_k(before) / (beyond_k(before) - beyond_k(reached));
            series.time_h[before] + share * (series.time_h[reached] - series.time_h[before])
        }
        _ => series.time_h[reached],
    };
    Some((at_h - failed_at_h).at_least(0.0) * MINUTES_PER_HOUR)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    fn found(change: impl Fn(&mut crate::scenario::ScenarioDocument)) -> Vec<WindowFailure> {
        let mut document = example();
        document.glass.covers_fitted = false;
        document.day.high_c = 38.0;
        change(&mut document);
        failures(&Scenario::new(document).unwrap()).unwrap()
    }

    fn minutes(failure: &WindowFailure, mark: Mark) -> f64 {
        let reached = failure
            .marks
            .iter()
            .find(|reached| reached.mark == mark)
            .unwrap();
        reached.minutes.unwrap_or(f64::INFINITY)
    }

    #[test]
    fn worse_marks_take_longer_and_a_dead_bank_is_no_better_than_a_dead_cooler() {
        let found = found(|_| {});
        // Two windows, two parts.
        assert_eq!(found.len(), 4);
        let extreme = Mark::HeatIndex(HeatIndexCategory::ExtremeCaution);
        let danger = Mark::HeatIndex(HeatIndexCategory::Danger);
        for failure in &found {
            assert!(
                minutes(failure, extreme) <= minutes(failure, danger),
                "{failure:?}"
            );
        }
        let (cooler, bank) = (&found[0], &found[1]);
        assert_eq!(
            (cooler.part, bank.part),
            (FailingPart::Cooler, FailingPart::Bank)
        );
        assert!(
            minutes(cooler, danger) > 5.0 && minutes(cooler, danger) < 240.0,
            "{cooler:?}"
        );
        assert!(minutes(bank, danger) < minutes(cooler, danger) + 5.0);
    }

    #[test]
    fn the_animals_limit_is_for_animals() {
        let found = found(|_| {});
        let has = |failure: &WindowFailure| {
            failure
                .marks
                .iter()
                .any(|reached| reached.mark == Mark::AnimalFacilityLimit)
        };
        for failure in &found {
            assert_eq!(has(failure), failure.needed_for == NeededFor::Animals);
        }
    }

    #[test]
    fn less_insulation_leaves_less_time() {
        let danger = Mark::HeatIndex(HeatIndexCategory::ExtremeCaution);
        let usual = found(|_| {});
        let bare = found(|document| {
            document.shell.roof_insulation_m = 0.005;
            document.shell.wall_insulation_m = 0.005;
        });
        assert!(minutes(&bare[0], danger) < minutes(&usual[0], danger));
    }

    #[test]
    fn until_the_failure_the_run_is_the_same_and_after_it_nothing_cools() {
        let scenario = Scenario::new(example()).unwrap();
        let prepared = Prepared::new(&scenario).unwrap();
        let (whole, at_h) = (prepared.run().unwrap(), 13.5);
        let failure = Failure {
            part: FailingPart::Bank,
            at_s: at_h * SECONDS_PER_HOUR,
        };
        let failed = prepared.failing(failure).run().unwrap();
        for index in 0..whole.series.time_h.len() {
            if whole.series.time_h[index] <= at_h {
                assert_eq!(whole.series.cabin_c[index], failed.series.cabin_c[index]);
            } else {
                assert_eq!(failed.series.cooler_w[index], 0.0);
                assert_eq!(failed.series.loads_w[index], 0.0);
            }
        }
        assert!(failed.balance.heat_residual < 1e-9);
    }

    #[test]
    fn instants_lie_in_their_spans_and_are_few() {
        let instants = instants_h(&[(13.0, 15.0), (37.0, 39.0)]);
        assert!(instants.len() <= INSTANTS && instants.len() > INSTANTS / 2);
        assert_eq!(instants[0], 13.0);
        assert!(
            instants
                .iter()
                .all(|at_h| (13.0..=15.01).contains(at_h) || (37.0..=39.01).contains(at_h))
        );
        assert!(instants_h(&[]).is_empty());
    }

    #[test]
    fn a_mark_is_reached_between_samples_by_a_straight_line() {
        let series = Series {
            time_h: vec![12.0, 13.0],
            cabin_c: vec![28.5, 30.5],
            relative_humidity: vec![0.4, 0.4],
            ..Series::default()
        };
        // Half way from 28.5 to 30.5 °C.
        let minutes = minutes_to(Mark::AnimalFacilityLimit, &series, 12.0).unwrap();
        assert!((minutes - 30.0).abs() < 1e-9);
        assert_eq!(
            minutes_to(Mark::AnimalFacilityLimit, &series, 13.0),
            Some(0.0)
        );
        let danger = Mark::HeatIndex(HeatIndexCategory::ExtremeDanger);
        assert_eq!(minutes_to(danger, &series, 12.0), None);
    }
}
