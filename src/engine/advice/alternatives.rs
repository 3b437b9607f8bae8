//! Is cooling needed at all: the same need without a cooler, with what costs little instead.

use super::measures::MeasureKind;
use super::trial::{Outcome, Trials};
use crate::scenario::{FanUse, Scenario, ScenarioDocument};
use crate::simulation::BuildError;
use serde::{Deserialize, Serialize};

/// What is done instead of cooling.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Alternative {
    /// Nothing: the scenario without its cooler.
    Nothing,
    /// Shade.
    Shade,
    /// Covers on every window.
    Covers,
    /// A roof fan that runs while it is cooler outdoors.
    Fan,
    /// Shade, covers and fan together.
    AllOfThem,
}

impl Alternative {
    /// Every alternative.
    pub const ALL: [Alternative; 5] = [
        Alternative::Nothing,
        Alternative::Shade,
        Alternative::Covers,
        Alternative::Fan,
        Alternative::AllOfThem,
    ];

    /// Makes the change, the cooler taken out.
    pub fn apply(self, document: &mut ScenarioDocument) {
        document.cooler.installed = false;
        let measures: &[MeasureKind] = match self {
            Self::Nothing => &[],
            Self::Shade => &[MeasureKind::Shade],
            Self::Covers => &[MeasureKind::WindowCovers],
            Self::Fan => &[MeasureKind::RoofFan],
            Self::AllOfThem => &[
                MeasureKind::Shade,
                MeasureKind::WindowCovers,
                MeasureKind::RoofFan,
            ],
        };
        for measure in measures {
            measure.apply(document);
        }
    }
}

/// The need with and without a cooler.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Alternatives {
    /// The scenario as it is; none without a cooler.
    pub with_cooler: Option<Outcome>,
    /// What each alternative achieves, in the order of [`Alternative::ALL`].
    pub without_cooler: Vec<(Alternative, Outcome)>,
    /// What blowing the hot air out before cooling does; none without fan or cooler.
    pub purge: Option<PurgeEffect>,
}

/// The same scenario with and without purging by fan before the cooler starts.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct PurgeEffect {
    /// With it.
    pub purged: Outcome,
    /// Without it.
    pub unpurged: Outcome,
}

/// Runs the need without a cooler in every way, and with it with and without purging; at most seven runs.
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn alternatives(scenario: &Scenario) -> Result<Alternatives, BuildError> {
    let document = scenario.document();
    let mut trials = Trials::full();
    let mut without_cooler = Vec::with_capacity(Alternative::ALL.len());
    for alternative in Alternative::ALL {
        let mut changed = document.clone();
        alternative.apply(&mut changed);
        if let Ok(changed) = Scenario::new(changed) {
            without_cooler.push((alternative, trials.outcome(&changed)?));
        }
    }
    if !document.cooler.installed {
        return Ok(Alternatives {
            with_cooler: None,
            without_cooler,
            purge: None,
        });
    }
    let with_cooler = trials.outcome(scenario)?;
    Ok(Alternatives {
        with_cooler: Some(with_cooler),
        without_cooler,
        purge: purge(document, with_cooler, &mut trials)?,
    })
}

fn purge(
    document: &ScenarioDocument,
    as_it_is: Outcome,
    trials: &mut Trials,
) -> Result<Option<PurgeEffect>, BuildError> {
    let ventilation = &document.ventilation;
    if ventilation.fan_use == FanUse::Off || ventilation.fan_flow_m3_s <= 0.0 {
        return Ok(None);
    }
    let mut changed = document.clone();
    changed.ventilation.purge_before_cooling = !ventilation.purge_before_cooling;
    let Ok(changed) = Scenario::new(changed) else {
        return Ok(None);
    };
    let otherwise = trials.outcome(&changed)?;
    let (purged, unpurged) = if ventilation.purge_before_cooling {
        (as_it_is, otherwise)
    } else {
        (otherwise, as_it_is)
    };
    Ok(Some(PurgeEffect { purged, unpurged }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    fn bare_van(high_c: f64) -> Scenario {
        let mut document = example();
        document.glass.covers_fitted = false;
        document.ventilation.fan_use = FanUse::Off;
        document.day.high_c = high_c;
        Scenario::new(document).unwrap()
    }

    #[test]
    fn shade_covers_and_fan_each_help_and_together_most() {
        let found = alternatives(&bare_van(38.0)).unwrap();
        let unmet = |wanted: Alternative| {
            let one = found.without_cooler.iter().find(|one| one.0 == wanted);
            one.unwrap().1.degree_hours_k_h
        };
        let nothing = unmet(Alternative::Nothing);
        for alone in [Alternative::Shade, Alternative::Covers, Alternative::Fan] {
            assert!(unmet(alone) < nothing, "{alone:?}");
            assert!(unmet(Alternative::AllOfThem) < unmet(alone), "{alone:?}");
        }
        assert!(found.with_cooler.unwrap().degree_hours_k_h < unmet(Alternative::AllOfThem));
        assert!(found.purge.is_none());
    }

    #[test]
    fn on_a_mild_day_no_cooler_is_needed() {
        let mut document = example();
        (document.day.high_c, document.day.low_c) = (24.0, 14.0);
        let found = alternatives(&Scenario::new(document).unwrap()).unwrap();
        let outcome = found.without_cooler[4].1;
        assert!(outcome.windows_met);
        assert!((outcome.met_h - outcome.needed_h).abs() < 1e-9);
    }

    #[test]
    fn purging_saves_the_cooler_energy_in_a_hot_cabin() {
        let mut document = example();
        document.glass.covers_fitted = false;
        document.ventilation.fan_use = FanUse::InHours;
        (
            document.ventilation.fan_from_hour,
            document.ventilation.fan_until_hour,
        ) = (2.0, 3.0);
        let found = alternatives(&Scenario::new(document).unwrap()).unwrap();
        let purge = found.purge.unwrap();
        assert!(purge.purged.cooler_wh < purge.unpurged.cooler_wh);
    }
}
