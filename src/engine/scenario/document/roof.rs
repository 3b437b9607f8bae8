//! What stands on the roof, where, and what the roof may carry.

use super::ScenarioDocument;
use serde::{Deserialize, Serialize};

/// Most panels that the plan holds.
pub const MOST_PLAN_PANELS: usize = 8;

/// The front left corner of a thing on the roof.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RoofPlace {
    /// From the front edge of the usable roof, m.
    pub from_front_m: f64,
    /// From its left edge, m.
    pub from_left_m: f64,
}

/// The cooler's unit; without length or width it does not stand on the roof.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RoofUnit {
    /// Along the vehicle, m; 0 where it stands elsewhere.
    pub length_m: f64,
    /// Across the vehicle, m.
    pub width_m: f64,
    /// Above the roof, m.
    pub height_m: f64,
    /// Mass, kg.
    pub mass_kg: f64,
    /// Side of its square cut-out, m.
    pub cut_out_m: f64,
    /// Distance that it asks on all sides, m.
    pub clearance_m: f64,
    /// Where it stands.
    pub place: RoofPlace,
}

/// The roof fan; without a side there is none.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RoofFan {
    /// Its side with the flange, m; 0 where there is none.
    pub side_m: f64,
    /// Where it stands.
    pub place: RoofPlace,
}

/// A hatch; without length or width there is none.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RoofHatch {
    /// Along the vehicle, m; 0 where there is none.
    pub length_m: f64,
    /// Across the vehicle, m.
    pub width_m: f64,
    /// Where it is.
    pub place: RoofPlace,
}

/// The panels, all of one kind.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RoofPanel {
    /// How many there are.
    pub count: f64,
    /// Along the vehicle, m.
    pub length_m: f64,
    /// Across the vehicle, m.
    pub width_m: f64,
    /// Mass of each with its fastening, kg.
    pub mass_kg: f64,
    /// Rated power of each, W.
    pub rated_power_w: f64,
}

/// The roof.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Roof {
    /// Whether power and shade of the panels are those of the plan.
    pub panels_from_plan: bool,
    /// Usable length, m.
    pub length_m: f64,
    /// Usable width, m.
    pub width_m: f64,
    /// Top of the bare roof above the ground, m.
    pub height_above_ground_m: f64,
    /// Height under which the vehicle has to pass, m.
    pub clearance_height_m: f64,
    /// Load that the roof may carry while it stands, kg.
    pub limit_at_rest_kg: f64,
    /// Load that it may carry under way, kg.
    pub limit_under_way_kg: f64,
    /// Highest speed on the road, m/s.
    pub highest_speed_m_s: f64,
    /// Mass of everything on the roof but unit and panels, kg.
    pub other_mass_kg: f64,
    /// Height of fan and closed hatches above the roof, m.
    pub fan_and_hatch_height_m: f64,
    /// The unit.
    pub unit: RoofUnit,
    /// The fan.
    pub fan: RoofFan,
    /// Two hatches.
    pub hatches: [RoofHatch; 2],
    /// What the panels are.
    pub panel: RoofPanel,
    /// Where each of them lies; those beyond the count wait.
    pub panels: [RoofPlace; MOST_PLAN_PANELS],
}

impl ScenarioDocument {
    /// Rated power of all panels with which a run reckons, W: count times rated power each where the plan holds, else the number
    /// entered.
    #[must_use]
    pub fn panel_power_w(&self) -> f64 {
        let panel = &self.roof.panel;
        if self.roof.panels_from_plan {
            panel.count * panel.rated_power_w
        } else {
            self.charging.panel_power_w
        }
    }

    /// Enters a rated power of all panels, W, in place of what the plan gives.
    pub fn set_panel_power_w(&mut self, power_w: f64) {
        self.roof.panels_from_plan = false;
        self.charging.panel_power_w = power_w;
    }
}
