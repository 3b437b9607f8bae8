//! From a scenario's roof to a plan, and from the plan to the sun that its panels get.

use super::body::body;
use super::build::BuildError;
use super::environment::{Environment, SPACING_S, Surroundings};
use super::observed::Observed;
use super::power::panels;
use crate::quantity::{Bounded, SECONDS_PER_HOUR};
use crate::roof::{Caster, Item, ItemKind, PANEL_GAP_M, Plan, Rectangle, shaded_share};
use crate::scenario::{MOST_PLAN_PANELS, RoofPlace, Scenario, ScenarioDocument};

/// Breadth of a fan's flange around its opening, m: common practice, no source.
const FAN_FLANGE_M: f64 = 0.03;

/// Sun below which nothing is worth shading, W/m².
const LEAST_SUN_W_M2: f64 = 1e-6;

/// The plan of a scenario's roof: what has no length or width is not on it, nor is the unit of a cooler that is not installed.
///
/// `document`: need not be valid.
#[must_use]
pub fn roof_plan(document: &ScenarioDocument) -> Plan {
    let (roof, unit, fan) = (&document.roof, &document.roof.unit, &document.roof.fan);
    let thing = |kind, place: &RoofPlace, (length_m, width_m): (f64, f64), height_m| Item {
        kind,
        place: Rectangle {
            from_front_m: place.from_front_m,
            from_left_m: place.from_left_m,
            length_m,
            width_m,
        },
        height_m,
        clearance_m: PANEL_GAP_M,
        opening: None,
    };
    let low_m = roof.fan_and_hatch_height_m;
    let mut items = Vec::with_capacity(MOST_PLAN_PANELS + 4);
    if document.cooler.installed {
        let size = (unit.length_m, unit.width_m);
        let mut item = thing(ItemKind::Unit, &unit.place, size, unit.height_m);
        item.clearance_m = unit.clearance_m;
        item.opening =
            (unit.cut_out_m > 0.0).then(|| item.place.square_about_middle(unit.cut_out_m));
        items.push(item);
    }
    let mut item = thing(ItemKind::Fan, &fan.place, (fan.side_m, fan.side_m), low_m);
    let opening_m = fan.side_m - 2.0 * FAN_FLANGE_M;
    item.opening = (opening_m > 0.0).then(|| item.place.square_about_middle(opening_m));
    items.push(item);
    for (index, hatch) in roof.hatches.iter().enumerate() {
        let size = (hatch.length_m, hatch.width_m);
        items.push(thing(ItemKind::Hatch(index), &hatch.place, size, low_m));
    }
    let panel = &roof.panel;
    for (index, place) in roof.panels.iter().take(panel.count as usize).enumerate() {
        let size = (panel.length_m, panel.width_m);
        items.push(thing(ItemKind::Panel(index), place, size, 0.0));
    }
    items.retain(|item| item.place.length_m > 0.0 && item.place.width_m > 0.0);
    Plan {
        length_m: roof.length_m,
        width_m: roof.width_m,
        rib_spacing_m: document.shell.rib_spacing_m,
        items,
    }
}

/// The boxes of a plan that throw shadows.
fn casters(plan: &Plan) -> Vec<Caster> {
    let upright = plan.items.iter().filter(|item| item.height_m > 0.0);
    upright
        .map(|item| Caster {
            place: item.place,
            height_m: item.height_m,
        })
        .collect()
}

fn panel_places(plan: &Plan) -> Vec<Rectangle> {
    let panels = plan.items.iter();
    panels
        .filter(|item| matches!(item.kind, ItemKind::Panel(_)))
        .map(|item| item.place)
        .collect()
}

/// Share of all the sun on a level panel that a shadow over a share of its area takes away: only what comes straight from the
/// sun is taken.
fn lost_share(covered: f64, surroundings: &Surroundings) -> f64 {
    if surroundings.horizontal_sun_w_m2 <= LEAST_SUN_W_M2 {
        return 0.0;
    }
    covered * (surroundings.beam_sun_w_m2 / surroundings.horizontal_sun_w_m2).at_most(1.0)
}

/// Share of the panels' sun that unit, fan and hatches take away, at the points of a run's surroundings.
#[derive(Clone, Debug)]
pub(super) struct PanelShade {
    first_clock_s: f64,
    lost_shares: Vec<f64>,
}

impl PanelShade {
    /// The shade of a scenario whose panels are those of the plan; none where they are not.
    pub(super) fn of(document: &ScenarioDocument, environment: &Environment) -> Option<Self> {
        if !document.roof.panels_from_plan {
            return None;
        }
        let plan = roof_plan(document);
        let casters = casters(&plan);
        Some(Self::new(&panel_places(&plan), &casters, environment))
    }

    fn new(panels: &[Rectangle], casters: &[Caster], environment: &Environment) -> Self {
        let each = 1.0 / panels.len().max(1) as f64;
        let lost_shares = environment.points().iter().map(|point| {
            if point.beam_sun_w_m2 <= LEAST_SUN_W_M2 {
                return 0.0;
            }
            let covered: f64 = panels
                .iter()
                .map(|panel| shaded_share(panel, casters, point.sun_direction))
                .sum();
            lost_share(covered * each, point)
        });
        Self {
            first_clock_s: environment.first_clock_s(),
            lost_shares: lost_shares.collect(),
        }
    }

    /// The share lost at a clock time, s since midnight of the first day, by straight lines between points.
    pub(super) fn at(&self, clock_s: f64) -> f64 {
        let position = ((clock_s - self.first_clock_s) / SPACING_S).at_least(0.0);
        let index = position as usize;
        let at = |index: usize| self.lost_shares.get(index).copied().unwrap_or_default();
        let share = position - index as f64;
        at(index) + share * (at(index + 1) - at(index))
    }
}

/// What the panels of a plan offer over a run, whatever the bank takes of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PanelYield {
    /// Rated power of all of them, W.
    pub rated_w: f64,
    /// With every shadow of the plan, Wh.
    pub shaded_wh: f64,
    /// Without the shadow of the unit, Wh.
    pub without_unit_wh: f64,
    /// Without any shadow, Wh.
    pub unshaded_wh: f64,
    /// Of each panel, share of its sun over the run that shadows take away.
    pub lost_shares: Vec<f64>,
}

/// Works out what the panels of a scenario's plan offer over its run, whether or not the run reckons with them.
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn panel_yield(scenario: &Scenario) -> Result<PanelYield, BuildError> {
    let mut document = scenario.document().clone();
    document.roof.panels_from_plan = true;
    let environment = Environment::new(&document, &body(&document)?, None, &Observed::default())?;
    let built = panels(&document)?;
    let plan = roof_plan(&document);
    let places = panel_places(&plan);
    let every = casters(&plan);
    let unit = plan.item(ItemKind::Unit).map(|unit| unit.place);
    let mut without_unit = every.clone();
    without_unit.retain(|caster| Some(caster.place) != unit);
    let offered_wh = |casters: &[Caster]| -> f64 {
        let shade = PanelShade::new(&places, casters, &environment);
        let watts = run_points(&document, &environment).map(|(clock_s, point)| {
            built.power_w(
                point.horizontal_sun_w_m2,
                shade.at(clock_s),
                point.outdoor_c,
                point.wind_speed_m_s,
            )
        });
        watts.sum::<f64>() * SPACING_S / SECONDS_PER_HOUR
    };
    let lost_share_of = |place: &Rectangle| {
        let points = run_points(&document, &environment);
        let (lost, all) = points.fold((0.0, 0.0), |(lost, all), (_, point)| {
            let covered = shaded_share(place, &every, point.sun_direction);
            let sun_w_m2 = point.horizontal_sun_w_m2;
            (lost + lost_share(covered, point) * sun_w_m2, all + sun_w_m2)
        });
        if all > 0.0 { lost / all } else { 0.0 }
    };
    Ok(PanelYield {
        rated_w: document.panel_power_w(),
        shaded_wh: offered_wh(&every),
        without_unit_wh: offered_wh(&without_unit),
        unshaded_wh: offered_wh(&[]),
        lost_shares: places.iter().map(lost_share_of).collect(),
    })
}

/// The points of the surroundings that lie within the run, each with its clock time: the end of the run is that of the last span.
fn run_points<'a>(
    document: &ScenarioDocument,
    environment: &'a Environment,
) -> impl Iterator<Item = (f64, &'a Surroundings)> {
    let start_s = document.day.start_hour * SECONDS_PER_HOUR;
    let end_s = start_s + document.day.days * crate::quantity::SECONDS_PER_DAY;
    let first_s = environment.first_clock_s();
    let points = environment.points().iter().enumerate();
    points
        .map(move |(index, point)| (first_s + SPACING_S * index as f64, point))
        .filter(move |(clock_s, _)| *clock_s >= start_s && *clock_s < end_s)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::roof::findings;
    use crate::scenario::example;
    use crate::simulation::simulate;

    fn yield_of(document: ScenarioDocument) -> PanelYield {
        panel_yield(&Scenario::new(document).unwrap()).unwrap()
    }

    #[test]
    fn nothing_is_wrong_with_the_example() {
        let plan = roof_plan(&example());
        assert_eq!(findings(&plan), []);
        assert_eq!(plan.items.len(), 6);
        let mut document = example();
        document.cooler.installed = false;
        document.roof.fan.side_m = 0.0;
        assert_eq!(roof_plan(&document).items.len(), 4);
    }

    #[test]
    fn each_shadow_takes_some_and_none_gives() {
        // Nose to the east: the morning sun throws the unit's shadow on the panels behind it.
        let mut document = example();
        document.vehicle.heading_deg = 90.0;
        let offered = yield_of(document);
        assert_eq!(offered.rated_w, 300.0);
        assert!(offered.shaded_wh < offered.without_unit_wh);
        assert!(offered.without_unit_wh < offered.unshaded_wh);
        assert!(offered.shaded_wh > 0.9 * offered.unshaded_wh);
        assert_eq!(offered.lost_shares.len(), 3);
    }

    /// A panel wholly under a unit of next to no height loses all that comes straight from the sun and nothing else.
    #[test]
    fn a_covered_panel_keeps_the_light_of_the_sky() {
        let mut document = example();
        document.roof.panel.count = 1.0;
        document.roof.panels[0] = document.roof.unit.place;
        (document.roof.panel.length_m, document.roof.panel.width_m) = (0.8, 0.65);
        document.day.cloud_fraction = 1.0;
        let dull = yield_of(document.clone()).lost_shares[0];
        document.day.cloud_fraction = 0.0;
        let clear = yield_of(document).lost_shares[0];
        assert!(dull < 0.2 && (0.6..0.95).contains(&clear), "{dull} {clear}");
    }

    /// The run reckons with the plan's panels: what they gave is what a run with their rated power and without shade gives, less
    /// what the shadows take.
    #[test]
    fn the_run_reckons_with_the_plan_once_it_is_told_to() {
        let mut document = example();
        // An empty bank takes all that it is given.
        document.battery.start_state_of_charge = 0.1;
        let panels_wh = |document: &ScenarioDocument| {
            let scenario = Scenario::new(document.clone()).unwrap();
            simulate(&scenario).unwrap().totals.panels_wh
        };
        document.charging.panel_shading_share = 0.0;
        let by_number = panels_wh(&document);
        document.roof.panels_from_plan = true;
        let by_plan = panels_wh(&document);
        let offered = yield_of(document);
        let (kept, kept_by_yield) = (by_plan / by_number, offered.shaded_wh / offered.unshaded_wh);
        assert!(kept < 1.0);
        // Both sum the same curve, the run every minute or five, the yield every ten.
        assert!(
            (kept - kept_by_yield).abs() < 2e-3,
            "{kept} {kept_by_yield}"
        );
        assert!((offered.unshaded_wh / by_number - 1.0).abs() < 5e-3);
    }

    #[test]
    fn a_scenario_made_ready_beside_another_has_its_own_shade() {
        use crate::simulation::Prepared;
        let prepared = Prepared::new(&Scenario::new(example()).unwrap()).unwrap();
        let mut document = example();
        document.roof.panels_from_plan = true;
        document.roof.unit.height_m = 0.6;
        let scenario = Scenario::new(document).unwrap();
        assert_eq!(prepared.like(&scenario).unwrap().run(), simulate(&scenario));
        let own = Prepared::new(&scenario).unwrap();
        let without = scenario.without_cooler();
        assert_eq!(own.without_cooler().run(), simulate(&without));
    }
}
