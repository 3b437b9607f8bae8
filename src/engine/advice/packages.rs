//! Packages: the best combination of measures for every budget.
//!
//! Measures about the same subject exclude each other, so a package is a choice for each subject, and there are some ten
//! thousand of them: too many to run. Where there are few, all are run, cheapest first. Else the front is climbed by Pareto local
//! search (Paquete, Chiarandini & Stützle 2004, Lecture Notes in Economics and Mathematical Systems 535:177): from every package
//! on the front all packages one choice away are run, until no package on the front has neighbours left to try. It suits the
//! problem because measures mostly add up: what improves a package also improves those near it, and cheap and dear packages
//! are climbed at once. What one choice leaves standing is two measures that only pay in exchange for each other, so with the
//! runs that are left packages two choices away are tried, from the dear end down.
//!
//! A package that costs no less than one that leaves nothing unmet is dominated whatever it does, and is not run.
//!
//! Packages are screened by coarse runs; those on the front, nothing, no cooler and each measure alone are run in full.

use super::front::{Unmet, front};
use super::measures::{Measure, MeasureKind, applied, cost_of, measures};
use super::trial::{Outcome, Trials};
use crate::quantity::sort_few;
use crate::scenario::Scenario;
use crate::simulation::BuildError;
use serde::{Deserialize, Serialize};
use std::collections::VecDeque;

/// Packages up to which all are run.
const FEW: usize = 400;

/// Runs after which a local search stops climbing.
const MOST_SCREENED: usize = 500;

/// A set of measures and what it achieves.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Package {
    /// The measures, none for the scenario as it is.
    pub measures: Vec<Measure>,
    /// What it costs over the scenario as it is, with tax, in the scenario's currency; below zero where it saves money.
    pub cost_change: f64,
    /// What it achieves.
    pub outcome: Outcome,
    /// Whether that comes from a full run; while the search lasts, some come from coarse ones.
    pub confirmed: bool,
}

/// What a search found so far.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Packages {
    /// The scenario as it is; none before its run.
    pub nothing: Option<Package>,
    /// The same without its cooler; none before its run and where there is no cooler to leave out.
    pub without_cooler: Option<Package>,
    /// Each measure alone, as far as they have been run.
    pub alone: Vec<Package>,
    /// Packages that nothing cheaper betters, cheapest first, each leaving less unmet than the one before.
    pub front: Vec<Package>,
    /// Whether every package was run or shown to be dominated.
    pub exact: bool,
    /// Runs made.
    pub runs: usize,
    /// Whether the search is over.
    pub complete: bool,
}

/// Index of the measure chosen for each subject, counted from one; none is zero.
type Choice = Vec<usize>;

/// A package that has been run.
#[derive(Clone, Copy, Debug)]
struct Record {
    cost_change: f64,
    outcome: Outcome,
    confirmed: bool,
    /// How many choices away its neighbours have been lined up.
    climbed: usize,
}

/// A search for packages that runs a few at a time, so that it can be watched and given up.
#[derive(Debug)]
pub struct PackageSearch {
    scenario: Scenario,
    subjects: Vec<Vec<Measure>>,
    /// In the order of their choices.
    records: Vec<(Choice, Record)>,
    /// Packages to run in full first, then packages to screen.
    alone: VecDeque<Choice>,
    to_screen: VecDeque<Choice>,
    exact: bool,
    screened: usize,
    complete: bool,
    full: Trials,
    coarse: Trials,
}

/// Searches to the end; some six hundred runs.
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn packages(scenario: &Scenario) -> Result<Packages, BuildError> {
    let mut search = PackageSearch::new(scenario, measures(scenario));
    while !search.step(usize::MAX)? {}
    Ok(search.result())
}

impl PackageSearch {
    /// A search over packages of some measures.
    #[must_use]
    pub fn new(scenario: &Scenario, measures: Vec<Measure>) -> Self {
        let mut subjects: Vec<Vec<Measure>> = Vec::new();
        for measure in measures {
            let subject = measure.kind.subject();
            match subjects
                .iter_mut()
                .find(|other| other[0].kind.subject() == subject)
            {
                Some(others) => others.push(measure),
                None => subjects.push(vec![measure]),
            }
        }
        let packages = subjects.iter().fold(1_usize, |count, subject| {
            count.saturating_mul(subject.len() + 1)
        });
        let nothing = vec![0; subjects.len()];
        let mut search = Self {
            scenario: scenario.clone(),
            alone: std::iter::once(nothing.clone())
                .chain(neighbours(&nothing, &subjects))
                .collect(),
            subjects,
            records: Vec::new(),
            to_screen: VecDeque::new(),
            exact: packages <= FEW,
            screened: 0,
            complete: false,
            full: Trials::full(),
            coarse: Trials::coarse(),
        };
        if search.exact {
            search.to_screen = search.all_by_cost();
        }
        search
    }

    /// Makes up to a number of runs; gives whether the search is over.
    ///
    /// # Errors
    /// When a component refuses its input, which no validated scenario makes it do.
    pub fn step(&mut self, runs: usize) -> Result<bool, BuildError> {
        for _ in 0..runs {
            if let Some(choice) = self.alone.pop_front() {
                self.run(choice, true)?;
            } else if let Some(choice) = self.next_to_screen() {
                self.screened += 1;
                self.run(choice, false)?;
            } else if let Some(choice) = self.next_to_confirm() {
                self.run(choice, true)?;
            } else {
                self.complete = true;
                break;
            }
        }
        Ok(self.complete)
    }

    /// How much of the search is done, 0 to 1; it may end sooner.
    #[must_use]
    pub fn progress(&self) -> f64 {
        if self.complete {
            return 1.0;
        }
        let left = if self.exact {
            self.to_screen.len()
        } else {
            MOST_SCREENED.saturating_sub(self.screened)
        };
        let done = self.runs() as f64;
        done / (done + (self.alone.len() + left) as f64 + 1.0)
    }

    /// What was found so far.
    #[must_use]
    pub fn result(&self) -> Packages {
        let chosen = |choice: &Choice| choice.iter().filter(|option| **option > 0).count();
        let alone = self
            .records
            .iter()
            .filter(|(choice, _)| chosen(choice) == 1);
        let alone: Vec<Package> = alone
            .map(|(choice, record)| self.package(choice, record))
            .collect();
        let nothing = vec![0; self.subjects.len()];
        Packages {
            nothing: self
                .record(&nothing)
                .map(|record| self.package(&nothing, record)),
            without_cooler: alone
                .iter()
                .find(|package| package.measures[0].kind == MeasureKind::NoCooler)
                .cloned(),
            alone,
            front: self
                .front()
                .into_iter()
                .map(|(choice, record)| self.package(choice, record))
                .collect(),
            exact: self.exact,
            runs: self.runs(),
            complete: self.complete,
        }
    }

    fn runs(&self) -> usize {
        self.full.runs() + self.coarse.runs()
    }

    /// Where a package's record is, or where it belongs.
    fn place(&self, choice: &Choice) -> Result<usize, usize> {
        self.records
            .binary_search_by(|(other, _)| other.cmp(choice))
    }

    fn record(&self, choice: &Choice) -> Option<&Record> {
        Some(&self.records[self.place(choice).ok()?].1)
    }

    fn measures_of(&self, choice: &Choice) -> Vec<Measure> {
        choice
            .iter()
            .zip(&self.subjects)
            .filter_map(|(option, measures)| Some(measures[option.checked_sub(1)?]))
            .collect()
    }

    fn cost_of(&self, choice: &Choice) -> f64 {
        cost_of(&self.measures_of(choice), self.scenario.document())
    }

    fn package(&self, choice: &Choice, record: &Record) -> Package {
        Package {
            measures: self.measures_of(choice),
            cost_change: record.cost_change,
            outcome: record.outcome,
            confirmed: record.confirmed,
        }
    }

    /// Runs a package; one that leaves the ranges of the fields is passed over.
    fn run(&mut self, choice: Choice, full: bool) -> Result<(), BuildError> {
        let changed = applied(&self.measures_of(&choice), self.scenario.document());
        let Ok(changed) = Scenario::new(changed) else {
            return Ok(());
        };
        let trials = if full {
            &mut self.full
        } else {
            &mut self.coarse
        };
        let outcome = trials.outcome(&changed)?;
        let cost_change = self.cost_of(&choice);
        let climbed = self.record(&choice).map_or(0, |record| record.climbed);
        let record = Record {
            cost_change,
            outcome,
            confirmed: full,
            climbed,
        };
        match self.place(&choice) {
            Ok(place) => self.records[place].1 = record,
            Err(place) => self.records.insert(place, (choice, record)),
        }
        Ok(())
    }

    /// The front of what has been run.
    fn front(&self) -> Vec<(&Choice, &Record)> {
        let records = &self.records;
        let points: Vec<(f64, Unmet)> = records
            .iter()
            .map(|(_, record)| (record.cost_change, Unmet::of(&record.outcome)))
            .collect();
        front(&points)
            .into_iter()
            .map(|index| (&records[index].0, &records[index].1))
            .collect()
    }

    /// The next package worth a coarse run.
    fn next_to_screen(&mut self) -> Option<Choice> {
        loop {
            if !self.exact && self.screened >= MOST_SCREENED {
                return None;
            }
            let enough_cost = self.enough_cost();
            while let Some(choice) = self.to_screen.pop_front() {
                let hopeless = self.cost_of(&choice) >= enough_cost;
                if !hopeless && self.record(&choice).is_none() {
                    return Some(choice);
                }
            }
            if self.exact || !self.climb() {
                return None;
            }
        }
    }

    /// Least cost at which nothing is left unmet, so far.
    fn enough_cost(&self) -> f64 {
        self.records
            .iter()
            .map(|(_, record)| record)
            .filter(|record| Unmet::of(&record.outcome) == Unmet::NONE)
            .map(|record| record.cost_change)
            .fold(f64::INFINITY, f64::min)
    }

    /// Lines up the neighbours of a package on the front whose turn has not come; false when there is none.
    fn climb(&mut self) -> bool {
        let front = self.front();
        let once = front.iter().find(|(_, record)| record.climbed == 0);
        let twice = || front.iter().rev().find(|(_, record)| record.climbed == 1);
        let Some((choice, climbed)) = once
            .or_else(twice)
            .map(|(choice, record)| ((*choice).clone(), record.climbed))
        else {
            return false;
        };
        let mut near = neighbours(&choice, &self.subjects);
        if climbed == 1 {
            near = near
                .iter()
                .flat_map(|other| neighbours(other, &self.subjects))
                .collect();
        }
        self.to_screen.extend(near);
        if let Ok(place) = self.place(&choice) {
            self.records[place].1.climbed = climbed + 1;
        }
        true
    }

    fn next_to_confirm(&self) -> Option<Choice> {
        let unconfirmed = self
            .front()
            .into_iter()
            .find(|(_, record)| !record.confirmed);
        unconfirmed.map(|(choice, _)| choice.clone())
    }

    /// Every package, cheapest first.
    fn all_by_cost(&self) -> VecDeque<Choice> {
        let mut all = vec![Vec::new()];
        for measures in &self.subjects {
            all = all
                .iter()
                .flat_map(|choice: &Choice| {
                    (0..=measures.len()).map(move |option| {
                        let mut longer = choice.clone();
                        longer.push(option);
                        longer
                    })
                })
                .collect();
        }
        let mut priced: Vec<(f64, Choice)> = all
            .into_iter()
            .map(|choice| (self.cost_of(&choice), choice))
            .collect();
        sort_few(&mut priced, |one, other| one.0 > other.0);
        priced.into_iter().map(|(_, choice)| choice).collect()
    }
}

/// Every package one choice away.
fn neighbours(choice: &Choice, subjects: &[Vec<Measure>]) -> Vec<Choice> {
    let mut found = Vec::new();
    for (index, measures) in subjects.iter().enumerate() {
        for option in (0..=measures.len()).filter(|option| *option != choice[index]) {
            let mut other = choice.clone();
            other[index] = option;
            found.push(other);
        }
    }
    found
}

#[cfg(test)]
#[path = "packages_tests.rs"]
mod tests;
