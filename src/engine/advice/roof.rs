//! The roof held against its limits: what is wrong with the plan, loads, height, and what its panels offer.

use crate::roof::{Finding, Plan, RoofLoad, findings, free_area_m2, roof_load};
use crate::scenario::{Scenario, ScenarioDocument};
use crate::simulation::{PanelYield, panel_yield, roof_plan};

/// A value and the limit that it is held against.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Against {
    /// The value.
    pub value: f64,
    /// Its limit.
    pub limit: f64,
}

impl Against {
    /// What is left below the limit; negative above it.
    #[must_use]
    pub fn left(&self) -> f64 {
        self.limit - self.value
    }

    /// Whether the value is within the limit.
    #[must_use]
    pub fn is_kept(&self) -> bool {
        self.value <= self.limit
    }
}

/// What can be said of a roof without a run.
#[derive(Clone, Debug, PartialEq)]
pub struct RoofReport {
    /// The plan.
    pub plan: Plan,
    /// What is wrong with it.
    pub findings: Vec<Finding>,
    /// Loads.
    pub load: RoofLoad,
    /// Mass against the limit at rest, kg.
    pub at_rest_kg: Against,
    /// Mass against the limit under way, kg.
    pub under_way_kg: Against,
    /// Top of the highest thing above the ground against the height to pass under, m.
    pub height_m: Against,
    /// Mass of the unit, kg; zero where it is not on the roof.
    pub unit_kg: f64,
    /// Mass of the panels, kg.
    pub panels_kg: f64,
    /// Mass of everything else, kg.
    pub other_kg: f64,
    /// Area of the panels, m².
    pub panel_area_m2: f64,
    /// Area left free, m².
    pub free_area_m2: f64,
}

/// Reports on the roof of a document.
///
/// `document`: of a validated scenario.
///
/// Sources: those of [`roof_load`]; the limits are the user's.
#[must_use]
pub fn roof_report(document: &ScenarioDocument) -> RoofReport {
    let (roof, plan) = (&document.roof, roof_plan(document));
    let has_unit = plan.item(crate::roof::ItemKind::Unit).is_some();
    let unit_kg = if has_unit { roof.unit.mass_kg } else { 0.0 };
    let panels_kg = roof.panel.count * roof.panel.mass_kg;
    let load = roof_load(
        unit_kg + panels_kg + roof.other_mass_kg,
        &plan.items,
        roof.highest_speed_m_s,
    );
    let highest_m = plan
        .items
        .iter()
        .map(|item| item.height_m)
        .fold(0.0, f64::max);
    let mass_against = |limit| Against {
        value: load.mass_kg,
        limit,
    };
    RoofReport {
        findings: findings(&plan),
        load,
        at_rest_kg: mass_against(roof.limit_at_rest_kg),
        under_way_kg: mass_against(roof.limit_under_way_kg),
        height_m: Against {
            value: roof.height_above_ground_m + highest_m,
            limit: roof.clearance_height_m,
        },
        unit_kg,
        panels_kg,
        other_kg: roof.other_mass_kg,
        panel_area_m2: plan.panel_area_m2(),
        free_area_m2: free_area_m2(&plan),
        plan,
    }
}

/// What the panels of the plan offer over the run; all zero should a component refuse its input, which no validated scenario
/// makes it do.
#[must_use]
pub fn panels_offer(scenario: &Scenario) -> PanelYield {
    panel_yield(scenario).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    /// By hand: unit 30 kg, three panels of 7 kg, 15 kg of the rest; 2.55 m and a unit of 0.25 m; seen from the front the unit is
    /// 0.65 m by 0.25 m, and fan and hatch (0.57 m to 0.97 m from the left) hide behind it (0.45 m to 1.10 m).
    #[test]
    fn the_example_is_as_added_up_by_hand() {
        let report = roof_report(&example());
        assert_eq!(report.load.mass_kg, 66.0);
        assert_eq!(report.under_way_kg.left(), 84.0);
        assert!((report.height_m.value - 2.8).abs() < 1e-12 && report.height_m.is_kept());
        assert!((report.load.frontal_area_m2 - 0.1625).abs() < 1e-12);
        assert!((report.load.wind_n - 0.5 * 1.225 * 36.0 * 36.0 * 0.1625).abs() < 1e-9);
        assert!((report.panel_area_m2 - 3.0 * 0.567).abs() < 1e-12);
    }

    #[test]
    fn a_cooler_that_is_not_there_weighs_nothing_and_stands_no_higher() {
        let mut document = example();
        document.cooler.installed = false;
        document.roof.limit_under_way_kg = 35.0;
        let report = roof_report(&document);
        assert_eq!(report.load.mass_kg, 36.0);
        assert!(!report.under_way_kg.is_kept());
        assert!((report.height_m.value - 2.65).abs() < 1e-12);
    }

    #[test]
    fn measures_of_panels_take_over_from_the_plan_and_start_from_what_it_gave() {
        use crate::advice::{MeasureKind, cost};
        let mut document = example();
        document.roof.panels_from_plan = true;
        document.roof.panel.count = 4.0;
        assert_eq!(cost(&document).panels, 400.0 * document.prices.panels_per_w);
        MeasureKind::Panels { added_w: 200.0 }.apply(&mut document);
        assert!(!document.roof.panels_from_plan);
        assert_eq!(document.panel_power_w(), 600.0);
    }
}
