//! What a client may expect of it and what not, and what can hurt somebody.

use super::super::decide::{minutes, part_name, window_name};
use super::super::{Voice, decide, page};
use crate::format::duration;
use noonday_engine::advice::failure::{Mark, WindowFailure};
use noonday_engine::advice::sampling::Sampled;
use noonday_engine::advice::{Advice, WindowVerdict};
use noonday_engine::comfort::heat_index::HeatIndexCategory;
use noonday_engine::scenario::{CellChemistry, CoolerSupply, Dimension, FanUse, ScenarioDocument};

/// What to expect, in sentences.
pub fn expected(
    advice: &Advice,
    document: &ScenarioDocument,
    sampled: Option<&Sampled>,
    voice: &Voice,
) -> Vec<String> {
    let mut said: Vec<String> = (0..document.need.windows.len())
        .filter_map(|slot| window(advice, document, slot, voice))
        .collect();
    let totals = &advice.with_cooler.totals;
    let energy = |energy_wh| voice.units.energy(energy_wh);
    let charged_wh = totals.panels_wh + totals.driving_wh + totals.shore_wh;
    said.push(format!(
        "Over the run the cooler draws {} in {} of running, everything else {}; charging brings {} back.",
        energy(totals.cooler_wh),
        duration(totals.compressor_h),
        energy(totals.loads_wh),
        energy(charged_wh)
    ));
    if advice.with_cooler.peak_discharge_a > 0.0 {
        let current_a = advice.with_cooler.peak_discharge_a.round();
        said.push(format!(
            "The bank gives up to {}; cable and fuses are made for that.",
            voice.units.quantity(Dimension::Current, current_a)
        ));
    }
    said.extend(sampled.map(|found| decide::sure(found, voice)));
    said
}

/// A window of the need over all days, at its worst.
fn window(
    advice: &Advice,
    document: &ScenarioDocument,
    slot: usize,
    voice: &Voice,
) -> Option<String> {
    let windows = &advice.verdict.windows;
    let here: Vec<&WindowVerdict> = windows.iter().filter(|one| one.slot == slot).collect();
    let worst = here
        .iter()
        .min_by(|one, other| one.margin_k().total_cmp(&other.margin_k()))?;
    let name = window_name(document, slot, voice);
    let (felt, limit) = voice
        .units
        .temperature_against(worst.worst_felt_c, worst.highest_felt_c);
    if here.iter().all(|one| one.met) {
        return Some(format!(
            "{name}: kept. It feels like {felt} at most; the limit is {limit}."
        ));
    }
    let missed_h: f64 = here.iter().map(|one| one.missed_h).sum();
    Some(format!(
        "{name}: not kept for {}. It feels like {felt}; the limit is {limit}.",
        duration(missed_h)
    ))
}

/// What not to expect.
pub fn not_expected(document: &ScenarioDocument, voice: &Voice) -> Vec<String> {
    let high = voice.units.temperature(document.day.high_c, 0);
    let health = voice.units.percent(document.battery.health_share);
    let mut said = vec![
        format!(
            "No promise for hotter days than this one of {high}, for more people, for a door left open or a cover left off."
        ),
        "No cold cabin at once: what the sun has stored in walls and furniture has to be drawn out first, and it costs charge."
            .to_owned(),
        format!(
            "Not these hours for ever: a bank loses capacity as it ages; {health} of the rated capacity is reckoned with."
        ),
        "Not the exact degree: leaks, gaps in the insulation and the forecast differ from what is entered. Measure what matters, enter it, and it is worked out anew."
            .to_owned(),
    ];
    if !document.cooler.installed {
        said.push(
            "No cooling: without a cooler nothing here goes below the air outdoors for long."
                .to_owned(),
        );
    }
    said
}

/// How soon it is dangerous when the cooler fails, in the worst case that was found; never a word of safety.
pub fn failing(
    failures: &[WindowFailure],
    document: &ScenarioDocument,
    voice: &Voice,
) -> Option<String> {
    let mut soonest: Option<(f64, String)> = None;
    for failure in failures {
        for reached in &failure.marks {
            let Some(after) = reached.minutes.filter(|after| *after >= 0.5) else {
                continue;
            };
            // The lower categories are reached on most hot days anyway.
            let counts = matches!(
                reached.mark,
                Mark::AnimalFacilityLimit | Mark::HeatIndex(HeatIndexCategory::Danger)
            );
            if counts && soonest.as_ref().is_none_or(|(least, _)| after < *least) {
                let said = format!(
                    "{} at the worst moment ({}): no more than {} to “{}”.",
                    part_name(failure.part),
                    window_name(document, failure.slot, voice),
                    minutes(Some(after)),
                    decide::mark_name(reached.mark, voice)
                );
                soonest = Some((after, said));
            }
        }
    }
    soonest.map(|(_, said)| format!("{said} {NOBODY_LEFT}"))
}

/// Beside every time that is told.
const NOBODY_LEFT: &str = "No figure here says that anybody may be left behind: be there, or have somebody there who can open the door.";

/// What can hurt somebody: a word and a sentence each. Heat comes first.
pub fn cautions(document: &ScenarioDocument, animals: bool) -> Vec<(String, String)> {
    let heat = if animals {
        page::CAUTION_ANIMALS
    } else {
        page::CAUTION_ALL
    };
    let (kind, battery) = match document.battery.chemistry {
        CellChemistry::LithiumIronPhosphate => (
            "Lithium batteries.",
            "Only with the protection that belongs to the cells, held down against a crash, never charged below freezing, out of the sun. One that is dented, swollen, wet inside or hot is not used again: get out, then call for help.",
        ),
        CellChemistry::AbsorbentGlassMat | CellChemistry::FloodedLead => (
            "Lead batteries.",
            "Charging gives off hydrogen, which explodes: vent it outdoors, no sparks near it. Acid burns skin and eyes. Held down against a crash.",
        ),
    };
    let mut said = vec![
        ("Heat.", heat.to_owned()),
        (kind, battery.to_owned()),
        (
            "High current.",
            "Low voltage does not mean little current: a short melts tools and starts fires. A fuse at the bank first, within 7 in (18 cm); the bank is connected last; rings and watches off."
                .to_owned(),
        ),
    ];
    let mains =
        document.cooler.supply == CoolerSupply::MainsThroughInverter && document.cooler.installed;
    if mains || document.charging.shore_power_w > 0.0 {
        said.push((
            "Mains voltage.",
            "Inverter output and shore inlet kill: a licensed electrician does that work."
                .to_owned(),
        ));
    }
    let on_roof = document.cooler.installed
        || document.panel_power_w() > 0.0
        || document.ventilation.fan_use != FanUse::Off;
    if on_roof {
        said.push((
            "On the roof.",
            "Work from a firm platform, lift with two people, cut only where both sides were looked at, and stay within the load that the vehicle’s maker allows for driving."
                .to_owned(),
        ));
    }
    said.push((
        "Who decides.",
        "Local codes, the makers’ instructions and those who are licensed for the work come first; this report comes after them."
            .to_owned(),
    ));
    said.into_iter()
        .map(|(word, said)| (word.to_owned(), said))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::advice::advise;
    use noonday_engine::scenario::{Scenario, example};

    #[test]
    fn nothing_that_can_hurt_is_left_out() {
        let mut document = example();
        let words = |document: &ScenarioDocument| -> Vec<String> {
            let cautions = cautions(document, true);
            cautions.into_iter().map(|(word, _)| word).collect()
        };
        assert_eq!(
            words(&document),
            [
                "Heat.",
                "Lithium batteries.",
                "High current.",
                "On the roof.",
                "Who decides."
            ]
        );
        document.battery.chemistry = CellChemistry::FloodedLead;
        document.charging.shore_power_w = 500.0;
        let said = words(&document);
        assert!(
            said.contains(&"Lead batteries.".to_owned())
                && said.contains(&"Mains voltage.".to_owned())
        );
    }

    #[test]
    fn each_window_in_use_is_told_once_even_over_several_days() {
        let mut document = example();
        document.day.days = 3.0;
        document.battery.capacity_ah = 200.0;
        let voice = Voice::new(&document, UnitSystem::Metric);
        let advice = advise(&Scenario::new(document.clone()).unwrap()).unwrap();
        let said = expected(&advice, &document, None, &voice);
        let about = |whom: &str| said.iter().filter(|one| one.starts_with(whom)).count();
        assert_eq!((about("Animals"), about("People")), (1, 1));
        assert!(said.iter().any(|one| one.contains("not kept for")));
    }
}
