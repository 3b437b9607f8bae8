//! The working behind loads, height and shade of the roof.

use super::tape;
use crate::format::Measure;
use crate::text::Voice;
use crate::text::working::Worked;
use noonday_engine::advice::RoofReport;
use noonday_engine::roof::{AIR_DENSITY_KG_M3, BRAKING_G, CORNERING_G, DRAG_COEFFICIENT};
use noonday_engine::scenario::{Dimension, ScenarioDocument};
use noonday_engine::simulation::PanelYield;

/// The working behind it.
pub fn worked(
    report: &RoofReport,
    document: &ScenarioDocument,
    offered: Option<&PanelYield>,
    voice: &Voice,
) -> Vec<Worked> {
    let mut all = vec![
        mass(report, document, voice),
        height(report, document, voice),
        wind(report, voice),
        inertia(report, voice),
    ];
    all.extend(offered.map(|offered| shadow(document, offered, voice)));
    all
}

fn mass(report: &RoofReport, document: &ScenarioDocument, voice: &Voice) -> Worked {
    let kilograms = |value| voice.units.quantity(Dimension::Mass, value);
    let panel = &document.roof.panel;
    Worked {
        title: "Load of the roof".to_owned(),
        equation: "unit + panels × mass of each + everything else",
        numbers: format!(
            "{} + {} × {} + {} = {}",
            kilograms(report.unit_kg),
            voice.units.number(panel.count, 0),
            kilograms(panel.mass_kg),
            kilograms(report.other_kg),
            kilograms(report.load.mass_kg)
        ),
        source: "Sum; limits are from the vehicle’s papers, as entered.",
    }
}

fn height(report: &RoofReport, document: &ScenarioDocument, voice: &Voice) -> Worked {
    let metres = |value| voice.units.quantity(Dimension::Length, value);
    let roof_m = document.roof.height_above_ground_m;
    Worked {
        title: "Overall height".to_owned(),
        equation: "bare roof above the ground + what stands highest on it",
        numbers: format!(
            "{} + {} = {}",
            metres(roof_m),
            metres(report.height_m.value - roof_m),
            metres(report.height_m.value)
        ),
        source: "Sum; suspension and an empty vehicle add to it. 4 m at most in the European Union: Directive 96/53/EC, annex I.",
    }
}

fn wind(report: &RoofReport, voice: &Voice) -> Worked {
    let load = &report.load;
    Worked {
        title: "Pull of the wind".to_owned(),
        equation: "½ × density of air × speed² × drag coefficient × area seen from the front",
        numbers: format!(
            "½ × {} kg/m³ × ({} m/s)² × {} × {} m² = {}",
            voice.units.number(AIR_DENSITY_KG_M3, 3),
            voice.units.number(load.speed_m_s, 1),
            voice.units.number(DRAG_COEFFICIENT, 1),
            voice.units.number(load.frontal_area_m2, 3),
            voice.amount(Measure::Of(Dimension::Force).of(load.wind_n))
        ),
        source: "Definition of the drag coefficient; standard air at sea level by ISO 2533 (from memory); the coefficient of a blunt box is common practice, no source.",
    }
}

fn inertia(report: &RoofReport, voice: &Voice) -> Worked {
    let load = &report.load;
    let force = |value_n| voice.amount(Measure::Of(Dimension::Force).of(value_n));
    Worked {
        title: "Braking and bends".to_owned(),
        equation: "weight × multiple of gravity",
        numbers: format!(
            "{} × {} = {} braking; × {} = {} sideways; twice the weight over a bump",
            force(load.weight_n),
            voice.units.number(BRAKING_G, 1),
            force(load.braking_n),
            voice.units.number(CORNERING_G, 1),
            force(load.cornering_n)
        ),
        source: "Newton’s second law; 0.8, 0.5 and 1 times gravity are common practice, no source.",
    }
}

fn shadow(document: &ScenarioDocument, offered: &PanelYield, voice: &Voice) -> Worked {
    let lost = offered.unshaded_wh - offered.shaded_wh;
    let percent = if offered.unshaded_wh > 0.0 {
        100.0 * lost / offered.unshaded_wh
    } else {
        0.0
    };
    Worked {
        title: "What shadows take".to_owned(),
        equation: "length of a shadow = height / tangent of the sun’s height; energy without shadows − with them",
        numbers: format!(
            "the unit’s shadow is {} long while the sun stands at 45°; {} \u{2212} {} = {}, {}\u{a0}%",
            tape(document.roof.unit.height_m, voice),
            voice.units.energy(offered.unshaded_wh),
            voice.units.energy(offered.shaded_wh),
            voice.units.energy(lost),
            voice.units.number(percent, 1)
        ),
        source: "Geometry, every ten minutes of the run; only what comes straight from the sun is taken. Panels by the PVWatts module model with a hot roof behind them.",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::advice::{panels_offer, roof_report};
    use noonday_engine::scenario::{Scenario, example};

    /// The numbers of the wind's line give its result on a pocket calculator: ½ × 1.225 × 36² × 1 × 0.1625 = 129 N.
    #[test]
    fn the_working_gives_the_result_beside_it() {
        let document = example();
        let report = roof_report(&document);
        let offered = panels_offer(&Scenario::new(document.clone()).unwrap());
        let all = worked(
            &report,
            &document,
            Some(&offered),
            &Voice::new(&document, UnitSystem::Metric),
        );
        assert_eq!(all.len(), 5);
        assert!(
            all[2].numbers.contains("0.163 m² = 129\u{a0}N"),
            "{}",
            all[2].numbers
        );
        assert!(
            all[0].numbers.ends_with("= 66\u{a0}kg"),
            "{}",
            all[0].numbers
        );
        for one in all {
            assert!(one.source.ends_with('.'), "{one:?}");
        }
    }
}
