//! The vehicle, its shell and its glass.

use serde::{Deserialize, Serialize};

/// The cabin's inner size, the way it faces and what stands in it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Vehicle {
    /// Inner length, nose to rear, m.
    pub length_m: f64,
    /// Inner width, m.
    pub width_m: f64,
    /// Inner height, m.
    pub height_m: f64,
    /// Height of the floor above ground, m.
    pub floor_above_ground_m: f64,
    /// Compass direction in which the nose points, degrees clockwise from north.
    pub heading_deg: f64,
    /// Heat capacity of furniture and stored goods, J/K.
    pub furnishing_heat_capacity_j_k: f64,
    /// Surface of furniture that meets the air, m².
    pub furnishing_area_m2: f64,
    /// Moisture held by bedding and furniture as a multiple of what the air holds.
    pub furnishing_moisture_factor: f64,
}

/// Insulation, generic materials only.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum InsulationMaterial {
    /// Sheep wool batt.
    SheepWool,
    /// Mineral or glass wool batt.
    MineralWool,
    /// Closed-cell elastomeric foam.
    ElastomericFoam,
    /// Extruded polystyrene board.
    ExtrudedPolystyrene,
    /// Polyisocyanurate or polyurethane board.
    PolyurethaneBoard,
    /// Closed-cell sprayed polyurethane.
    SprayFoam,
    /// Expanded cork board.
    Cork,
    /// Reflective bubble foil laid without an air gap.
    BubbleFoil,
    /// A conductivity that the user states.
    Other,
}

/// Metal skin, insulation, lining, paint and leaks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Shell {
    /// Share of sunlight that the roof's outside absorbs.
    pub roof_sun_absorptance: f64,
    /// Share of sunlight that the walls' outside absorbs.
    pub wall_sun_absorptance: f64,
    /// Longwave emittance of the outside.
    pub paint_emittance: f64,
    /// Thickness of the steel skin, m.
    pub skin_thickness_m: f64,
    /// What the insulation is made of.
    pub insulation_material: InsulationMaterial,
    /// Conductivity when the material is [`InsulationMaterial::Other`], W/(m K).
    pub other_conductivity_w_m_k: f64,
    /// Insulation of the roof, m.
    pub roof_insulation_m: f64,
    /// Insulation of the walls, m.
    pub wall_insulation_m: f64,
    /// Insulation of the floor, m.
    pub floor_insulation_m: f64,
    /// Share of roof and walls that really has the stated thickness; the rest is an empty cavity.
    pub filled_share: f64,
    /// Distance between steel ribs, m.
    pub rib_spacing_m: f64,
    /// Insulating strip between ribs and lining, m.
    pub thermal_break_m: f64,
    /// Plywood lining of roof and walls, m.
    pub lining_thickness_m: f64,
    /// Plywood floor, m.
    pub floor_board_m: f64,
    /// Share of sunlight that inner surfaces absorb.
    pub lining_sun_absorptance: f64,
    /// Effective leakage area of the closed cabin, m².
    pub leakage_area_m2: f64,
}

/// Windows by face, and covers.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Glass {
    /// Windscreen, m².
    pub nose_area_m2: f64,
    /// Left side, m².
    pub left_area_m2: f64,
    /// Right side, m².
    pub right_area_m2: f64,
    /// Rear doors, m².
    pub rear_area_m2: f64,
    /// Roof window or clear hatch, m².
    pub roof_area_m2: f64,
    /// Thermal transmittance with both surface films, W/(m² K).
    pub transmittance_w_m2_k: f64,
    /// Solar heat gain coefficient at normal incidence.
    pub solar_heat_gain_coefficient: f64,
    /// Whether covers are fitted.
    pub covers_fitted: bool,
    /// Covers are on from this hour.
    pub covers_from_hour: f64,
    /// Covers are on until this hour.
    pub covers_until_hour: f64,
    /// Thermal resistance of a cover with its air gap, m² K/W.
    pub cover_resistance_m2_k_w: f64,
    /// Share of the bare glass's solar gain that still enters with the cover on.
    pub cover_sun_share: f64,
    /// Share of the sun that enters falling on the floor.
    pub sun_on_floor_share: f64,
    /// Share of the sun that enters falling on furniture.
    pub sun_on_furnishings_share: f64,
}
