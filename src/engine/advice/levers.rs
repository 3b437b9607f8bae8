//! What would change the answer most: a few changes, each tried alone.

use super::judge::judge;
use super::verdict::{Headline, Verdict};
use crate::scenario::{FanUse, Scenario, ScenarioDocument};
use crate::simulation::{BuildError, Prepared};

/// A change that the adviser tries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
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
#[derive(Clone, Copy, Debug, PartialEq)]
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

/// Sun absorptance of a fresh white roof: from memory, 0.20 to 0.35.
const WHITE_ABSORPTANCE: f64 = 0.25;

/// Share of sun and sky that a leafy tree takes, common practice, no source.
const TREE_BEAM_SHARE: f64 = 0.8;
const TREE_SKY_SHARE: f64 = 0.5;

/// Flow and power of a usual roof fan: common practice, no source.
const FAN_FLOW_M3_S: f64 = 0.2;
const FAN_POWER_W: f64 = 30.0;

/// More panels that the lever tries, W.
const PANEL_STEP_W: f64 = 200.0;

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
        match self {
            Self::MoreInsulation => {
                document.shell.roof_insulation_m += INSULATION_STEP_M;
                document.shell.wall_insulation_m += INSULATION_STEP_M;
            }
            Self::WindowCovers => {
                document.glass.covers_fitted = true;
                document.glass.covers_from_hour = 0.0;
                document.glass.covers_until_hour = 0.0;
            }
            Self::WhiteRoof => {
                let shell = &mut document.shell;
                shell.roof_sun_absorptance = shell.roof_sun_absorptance.min(WHITE_ABSORPTANCE);
            }
            Self::Shade => shade_all_day(document),
            Self::RoofFan => add_fan(document),
            Self::LargerBank => document.battery.capacity_ah *= 1.5,
            Self::MorePanels => document.charging.panel_power_w += PANEL_STEP_W,
            Self::LargerCooler => {
                document.cooler.capacity_rated_w *= 1.5;
                document.cooler.electric_power_rated_w *= 1.5;
            }
            Self::EarlierStart => {
                let from_hour = document.cooler.run_from_hour - EARLIER_H;
                document.cooler.run_from_hour = from_hour.rem_euclid(24.0);
            }
        }
    }

    /// Whether the change means anything in a scenario.
    fn applies(self, document: &ScenarioDocument) -> bool {
        let cooler = &document.cooler;
        let always = cooler.run_from_hour == cooler.run_until_hour;
        match self {
            Self::LargerCooler => cooler.installed,
            Self::EarlierStart => cooler.installed && !always,
            Self::WindowCovers => !document.glass.covers_fitted,
            Self::WhiteRoof => document.shell.roof_sun_absorptance > WHITE_ABSORPTANCE,
            Self::RoofFan => document.ventilation.fan_use == FanUse::Off,
            _ => true,
        }
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
    effects.sort_unstable_by(|one, other| {
        one.degree_hours_change_k_h
            .total_cmp(&other.degree_hours_change_k_h)
            .then(
                other
                    .lowest_state_of_charge_change
                    .total_cmp(&one.lowest_state_of_charge_change),
            )
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

fn shade_all_day(document: &mut ScenarioDocument) {
    let day = &mut document.day;
    day.shade_beam_share = day.shade_beam_share.max(TREE_BEAM_SHARE);
    day.shade_sky_share = day.shade_sky_share.max(TREE_SKY_SHARE);
    day.shade_from_hour = 0.0;
    day.shade_until_hour = 0.0;
}

fn add_fan(document: &mut ScenarioDocument) {
    let ventilation = &mut document.ventilation;
    ventilation.fan_use = FanUse::WhenOutdoorsCooler;
    ventilation.fan_flow_m3_s = ventilation.fan_flow_m3_s.max(FAN_FLOW_M3_S);
    ventilation.fan_power_w = ventilation.fan_power_w.max(FAN_POWER_W);
    ventilation.fan_from_hour = 0.0;
    ventilation.fan_until_hour = 0.0;
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
