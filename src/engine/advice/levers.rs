//! What would change the answer most: a few changes, each tried alone.

use super::judge::judge;
use super::measures::MeasureKind;
use super::verdict::{Headline, Verdict};
use crate::quantity::sort_few;
use crate::scenario::{Scenario, ScenarioDocument};
use crate::simulation::{BuildError, Prepared};
use serde::{Deserialize, Serialize};

/// A change that the adviser tries.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Lever {
    /// 25 mm more insulation in roof and walls.
    MoreInsulation,
    /// Covers on every window all day.
    WindowCovers,
    /// Roof painted white.
    WhiteRoof,
    /// Parked in shade.
    Shade,
    /// A roof fan that runs while it is cooler outdoors.
    RoofFan,
    /// Half as much bank again.
    LargerBank,
    /// 200 W more panels.
    MorePanels,
    /// Half as much cooling capacity again.
    LargerCooler,
    /// The cooler may run two hours earlier.
    EarlierStart,
}

/// What a change alone would do.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct LeverEffect {
    /// The change.
    pub lever: Lever,
    /// Unmet degree-hours after it less before, K h; negative is better.
    pub degree_hours_change_k_h: f64,
    /// Lowest charge after it less before, share; positive is better.
    pub lowest_state_of_charge_change: f64,
    /// Whether the need is met with it.
    pub met: bool,
}

/// More insulation that the lever tries, m.
const INSULATION_STEP_M: f64 = 0.025;

/// More panels that the lever tries, W.
const PANEL_STEP_W: f64 = 200.0;

/// How much larger a bank and a cooler the levers try.
const LARGER: f64 = 1.5;

/// How much earlier the cooler may run, h.
const EARLIER_H: f64 = 2.0;

impl Lever {
    /// Every change that is tried.
    pub const ALL: [Lever; 9] = [
        Lever::MoreInsulation,
        Lever::WindowCovers,
        Lever::WhiteRoof,
        Lever::Shade,
        Lever::RoofFan,
        Lever::LargerBank,
        Lever::MorePanels,
        Lever::LargerCooler,
        Lever::EarlierStart,
    ];

    /// Makes the change in a document; what comes out may lie outside the ranges of the fields and is still to be validated.
    pub fn apply(self, document: &mut ScenarioDocument) {
        for measure in self.measures(document) {
            measure.apply(document);
        }
        if self == Self::EarlierStart {
            let from_hour = document.cooler.run_from_hour - EARLIER_H;
            document.cooler.run_from_hour = from_hour.rem_euclid(24.0);
        }
    }

    /// The measures it consists of; starting earlier is none, as nothing is bought for it.
    fn measures(self, document: &ScenarioDocument) -> Vec<MeasureKind> {
        let added_m = INSULATION_STEP_M;
        match self {
            Self::MoreInsulation => vec![
                MeasureKind::RoofInsulation { added_m },
                MeasureKind::WallInsulation { added_m },
            ],
            Self::WindowCovers => vec![MeasureKind::WindowCovers],
            Self::WhiteRoof => vec![MeasureKind::LighterRoof],
            Self::Shade => vec![MeasureKind::Shade],
            Self::RoofFan => vec![MeasureKind::RoofFan],
            Self::LargerBank => vec![MeasureKind::Bank {
                capacity_ah: LARGER * document.battery.capacity_ah,
            }],
            Self::MorePanels => vec![MeasureKind::Panels {
                added_w: PANEL_STEP_W,
            }],
            Self::LargerCooler => vec![MeasureKind::Cooler {
                capacity_w: LARGER * document.cooler.capacity_rated_w,
            }],
            Self::EarlierStart => Vec::new(),
        }
    }

    /// Whether the change means anything in a scenario.
    fn applies(self, document: &ScenarioDocument) -> bool {
        let cooler = &document.cooler;
        if self == Self::EarlierStart {
            return cooler.installed && cooler.run_from_hour != cooler.run_until_hour;
        }
        self.measures(document)
            .iter()
            .all(|measure| measure.applies(document))
    }
}

/// Tries every change that applies, best first: by unmet degree-hours, then by lowest charge. Changes that would leave the ranges
/// of the document are left out. It takes a run for each change and one for the scenario itself.
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn levers(scenario: &Scenario) -> Result<Vec<LeverEffect>, BuildError> {
    let before = verdict_of(scenario)?;
    let mut effects = Vec::new();
    for lever in Lever::ALL {
        if !lever.applies(scenario.document()) {
            continue;
        }
        let mut document = scenario.document().clone();
        lever.apply(&mut document);
        if let Ok(changed) = Scenario::new(document) {
            effects.push(effect(lever, &before, &verdict_of(&changed)?));
        }
    }
    sort_few(&mut effects, |one, other| {
        let by_heat = one
            .degree_hours_change_k_h
            .total_cmp(&other.degree_hours_change_k_h);
        by_heat
            .then(
                other
                    .lowest_state_of_charge_change
                    .total_cmp(&one.lowest_state_of_charge_change),
            )
            .is_gt()
    });
    Ok(effects)
}

fn verdict_of(scenario: &Scenario) -> Result<Verdict, BuildError> {
    let results = Prepared::new(scenario)?.run()?;
    Ok(judge(scenario.document(), &results, &results))
}

fn effect(lever: Lever, before: &Verdict, after: &Verdict) -> LeverEffect {
    LeverEffect {
        lever,
        degree_hours_change_k_h: after.degree_hours_k_h() - before.degree_hours_k_h(),
        lowest_state_of_charge_change: after.bank.lowest_state_of_charge
            - before.bank.lowest_state_of_charge,
        met: !matches!(after.headline, Headline::Missed | Headline::NothingAsked),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    #[test]
    fn no_lever_leaves_the_example_unchanged_or_invalid() {
        for lever in Lever::ALL
            .into_iter()
            .filter(|lever| lever.applies(&example()))
        {
            let mut document = example();
            lever.apply(&mut document);
            assert_ne!(document, example(), "{lever:?}");
            assert!(Scenario::new(document).is_ok(), "{lever:?}");
        }
    }
}
