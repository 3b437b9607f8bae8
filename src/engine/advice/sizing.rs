//! How big: the smallest cooler, the smallest bank and the least charging that meet the need with the reserve.
//!
//! Sizes are sought on ladders of common sizes ([`super::ladder`]), one after the other:
//!
//! 1. the smallest cooler at the efficiency of the scenario's own that keeps every window, fed by a supply that never fails;
//! 2. with it, the smallest bank out of the scenario's own blocks that keeps every window and the reserve;
//! 3. with both, the fewest panels, or hours of driving where the vehicle is driven, that still do so and, over several days,
//!    let the bank recover. Where no bank will do with the charging that is there, charging is sought with the scenario's own.
//!
//! A larger bank or more panels never make a window worse, so their rungs are found by bisection. A larger cooler may: it dries
//! the air less and may overload its inverter; so when the largest fails, every smaller one is tried. Driving longer may as
//! well, since the wind of the road heats the cabin; its rungs are tried from the bottom.

use super::ample::feed_amply;
use super::ladder::{
    BANK_CAPACITIES_AH, COOLER_CAPACITIES_W, DRIVING_HOURS, PANEL_POWERS_W, set_bank_capacity,
    set_cooler_capacity, set_driving_hours, set_panels,
};
use super::trial::{Outcome, Trials};
use crate::scenario::{NeededFor, Scenario, ScenarioDocument};
use crate::simulation::BuildError;
use serde::{Deserialize, Serialize};

/// What charging is sized by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum ChargingSized {
    /// Rated power of the panels, W.
    PanelsW,
    /// Hours of driving in a day.
    DrivingHours,
}

/// A size that was tried.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Rung {
    /// The size: W of cooling, Ah, W of panels or hours of driving.
    pub size: f64,
    /// Whether it does what is asked of it.
    pub meets: bool,
    /// What it achieves.
    pub outcome: Outcome,
}

/// The smallest size that does, with the common sizes beside it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sized {
    /// The smallest.
    pub smallest: Rung,
    /// The next common size down, if there is one.
    pub down: Option<Rung>,
    /// The next common size up, if there is one.
    pub up: Option<Rung>,
}

/// Sizes that meet the need.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sizing {
    /// Whether the need is met without any cooler.
    pub met_without_cooler: bool,
    /// The smallest cooler, by W of rated capacity; its outcomes are those with a supply that never fails. None where no common
    /// size will do.
    pub cooler: Option<Sized>,
    /// The smallest bank, by Ah, with that cooler. None where no common size will do with the charging that is there.
    pub bank: Option<Sized>,
    /// What `charging` is counted in.
    pub charging_by: ChargingSized,
    /// The least charging, with that cooler and bank. None where no common size will do.
    pub charging: Option<Sized>,
    /// Whether the bank of the last outcome is no lower on the last day than on the first; none where nothing was found.
    pub recovers: Option<bool>,
    /// Runs that it took.
    pub runs: usize,
}

impl Sizing {
    /// Puts the sizes that were found into a document; what was not found stays as it is.
    pub fn apply(&self, document: &mut ScenarioDocument) {
        if let Some(cooler) = &self.cooler {
            set_cooler_capacity(document, cooler.smallest.size);
        }
        if let Some(bank) = &self.bank {
            set_bank_capacity(document, bank.smallest.size);
        }
        match (&self.charging, self.charging_by) {
            (Some(sized), ChargingSized::PanelsW) => set_panels(document, sized.smallest.size),
            (Some(sized), ChargingSized::DrivingHours) => {
                set_driving_hours(document, sized.smallest.size);
            }
            (None, _) => {}
        }
    }
}

/// Finds the smallest sizes that meet the need of a scenario; none at all where no window of it is in use.
///
/// `must_recover`: whether over several days the lowest charge of the last must not be lower than that of the first.
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn size(scenario: &Scenario, must_recover: bool) -> Result<Option<Sizing>, BuildError> {
    let mut document = scenario.document().clone();
    let windows = &document.need.windows;
    if windows
        .iter()
        .all(|window| window.needed_for == NeededFor::Nobody)
    {
        return Ok(None);
    }
    let charging_by = if document.charging.drives {
        ChargingSized::DrivingHours
    } else {
        ChargingSized::PanelsW
    };
    let mut trials = Trials::full();
    let met_without_cooler = met_without_cooler(&document, &mut trials)?;
    document.cooler.installed = true;
    let mut sizing = Sizing {
        met_without_cooler,
        cooler: cooler_ladder(&document, &mut trials).sized(Search::BisectOrTryEach)?,
        bank: None,
        charging_by,
        charging: None,
        recovers: None,
        runs: 0,
    };
    if let Some(cooler) = &sizing.cooler {
        set_cooler_capacity(&mut document, cooler.smallest.size);
        sizing.bank = bank_ladder(&document, &mut trials).sized(Search::Bisect)?;
        if let Some(bank) = &sizing.bank {
            set_bank_capacity(&mut document, bank.smallest.size);
        }
        let search = match charging_by {
            ChargingSized::PanelsW => Search::Bisect,
            ChargingSized::DrivingHours => Search::TryEach,
        };
        sizing.charging =
            charging_ladder(&document, charging_by, must_recover, &mut trials).sized(search)?;
    }
    let last = sizing.charging.or(sizing.bank);
    sizing.recovers = last.map(|sized| sized.smallest.outcome.recovers());
    sizing.runs = trials.runs();
    Ok(Some(sizing))
}

fn met_without_cooler(
    document: &ScenarioDocument,
    trials: &mut Trials,
) -> Result<bool, BuildError> {
    let mut bare = document.clone();
    bare.cooler.installed = false;
    let Ok(bare) = Scenario::new(bare) else {
        return Ok(false);
    };
    Ok(trials.outcome(&bare)?.windows_met)
}

fn cooler_ladder<'a>(document: &ScenarioDocument, trials: &'a mut Trials) -> Ladder<'a> {
    let mut ample = document.clone();
    feed_amply(&mut ample);
    let rungs = rungs(&ample, &COOLER_CAPACITIES_W, set_cooler_capacity);
    Ladder::new(rungs, |outcome| outcome.windows_met, trials)
}

fn bank_ladder<'a>(document: &ScenarioDocument, trials: &'a mut Trials) -> Ladder<'a> {
    let rungs = rungs(document, &BANK_CAPACITIES_AH, set_bank_capacity);
    Ladder::new(
        rungs,
        |outcome| outcome.windows_met && outcome.keeps_reserve(),
        trials,
    )
}

fn charging_ladder<'a>(
    document: &ScenarioDocument,
    charging_by: ChargingSized,
    must_recover: bool,
    trials: &'a mut Trials,
) -> Ladder<'a> {
    let rungs = match charging_by {
        ChargingSized::PanelsW => rungs(document, &PANEL_POWERS_W, set_panels),
        ChargingSized::DrivingHours => rungs(document, &DRIVING_HOURS, set_driving_hours),
    };
    let meets: fn(&Outcome) -> bool = if must_recover {
        |outcome| outcome.windows_met && outcome.keeps_reserve() && outcome.recovers()
    } else {
        |outcome| outcome.windows_met && outcome.keeps_reserve()
    };
    Ladder::new(rungs, meets, trials)
}

/// The sizes of a ladder that can be run, smallest first, each with its scenario.
fn rungs(
    document: &ScenarioDocument,
    sizes: &[f64],
    set: fn(&mut ScenarioDocument, f64),
) -> Vec<(f64, Scenario)> {
    sizes
        .iter()
        .filter_map(|size| {
            let mut changed = document.clone();
            set(&mut changed, *size);
            Some((*size, Scenario::new(changed).ok()?))
        })
        .collect()
}

/// How a rung is sought.
#[derive(Clone, Copy)]
enum Search {
    Bisect,
    BisectOrTryEach,
    TryEach,
}

/// A ladder that is climbed, each rung run once at most.
struct Ladder<'a> {
    rungs: Vec<(f64, Scenario)>,
    tried: Vec<Option<Rung>>,
    meets: fn(&Outcome) -> bool,
    trials: &'a mut Trials,
}

impl<'a> Ladder<'a> {
    fn new(
        rungs: Vec<(f64, Scenario)>,
        meets: fn(&Outcome) -> bool,
        trials: &'a mut Trials,
    ) -> Self {
        Self {
            tried: vec![None; rungs.len()],
            rungs,
            meets,
            trials,
        }
    }

    fn rung(&mut self, index: usize) -> Result<Rung, BuildError> {
        if let Some(rung) = self.tried[index] {
            return Ok(rung);
        }
        let (size, scenario) = &self.rungs[index];
        let outcome = self.trials.outcome(scenario)?;
        let rung = Rung {
            size: *size,
            meets: (self.meets)(&outcome),
            outcome,
        };
        self.tried[index] = Some(rung);
        Ok(rung)
    }

    /// The smallest rung that does, and its neighbours.
    fn sized(mut self, search: Search) -> Result<Option<Sized>, BuildError> {
        let found = match search {
            Search::Bisect => self.bisect()?,
            Search::TryEach => self.try_each()?,
            Search::BisectOrTryEach => match self.bisect()? {
                Some(index) => Some(index),
                None => self.try_each()?,
            },
        };
        let Some(index) = found else {
            return Ok(None);
        };
        let down = index.checked_sub(1).map(|below| self.rung(below));
        let up = (index + 1 < self.rungs.len()).then(|| self.rung(index + 1));
        Ok(Some(Sized {
            smallest: self.rung(index)?,
            down: down.transpose()?,
            up: up.transpose()?,
        }))
    }

    /// Bisection between a rung below the ladder, which fails, and its top, which must do.
    fn bisect(&mut self) -> Result<Option<usize>, BuildError> {
        let Some(top) = self.rungs.len().checked_sub(1) else {
            return Ok(None);
        };
        if !self.rung(top)?.meets {
            return Ok(None);
        }
        let (mut lowest, mut meeting) = (0, top);
        while lowest < meeting {
            let middle = usize::midpoint(lowest, meeting);
            if self.rung(middle)?.meets {
                meeting = middle;
            } else {
                lowest = middle + 1;
            }
        }
        Ok(Some(meeting))
    }

    fn try_each(&mut self) -> Result<Option<usize>, BuildError> {
        for index in 0..self.rungs.len() {
            if self.rung(index)?.meets {
                return Ok(Some(index));
            }
        }
        Ok(None)
    }
}

#[cfg(test)]
#[path = "sizing_tests.rs"]
mod tests;
