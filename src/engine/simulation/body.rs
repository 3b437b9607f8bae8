//! From a scenario's vehicle, shell and glass to a cabin description.

use crate::air::standard_atmosphere_pressure_pa;
use crate::cabin::{CabinDescription, Chain, Element, Layer, Outside, Part};
use crate::envelope::bridging::RibbedWall;
use crate::envelope::convection::{OPEN_COUNTRY, SUBURB, TOWN, WindProfile};
use crate::envelope::glazing::{GLASS_EMITTANCE, Glazing, GlazingError};
use crate::envelope::materials::{
    BUBBLE_FOIL, CAVITY_RESISTANCE_M2_K_W, CORK, ELASTOMERIC_FOAM, EXTRUDED_POLYSTYRENE,
    LIGHT_INSULATION, MINERAL_WOOL, Material, PLYWOOD, POLYURETHANE_BOARD, SHEEP_WOOL, SPRAY_FOAM,
    STEEL,
};
use crate::scenario::{InsulationMaterial, ScenarioDocument, Terrain};

/// Thickness of vehicle glass, m: common practice, no source.
const GLASS_THICKNESS_M: f64 = 0.004;

/// Longwave emittance of wood, cloth and painted metal inside, from memory.
const INSIDE_EMITTANCE: f64 = 0.9;

/// A face of the box.
#[derive(Clone, Copy, Debug)]
pub(super) struct Face {
    pub(super) part: Part,
    pub(super) area_m2: f64,
    pub(super) glass_m2: f64,
    pub(super) facing_up_cosine: f64,
    pub(super) azimuth_deg: f64,
    pub(super) height_m: f64,
}

/// The built body: description, and what its lanes are made of.
#[derive(Clone, Debug)]
pub(super) struct Body {
    pub(super) description: CabinDescription,
    pub(super) bare_glass: Glazing,
    pub(super) covered_glass: Glazing,
    /// Nodes of a pane without and with its cover.
    pub(super) bare_pane: Chain,
    pub(super) covered_pane: Chain,
    /// Share of the sun that enters and does not leave again through the glass.
    pub(super) kept_sun_share: f64,
    /// Lane of furniture and stored goods.
    pub(super) goods: usize,
}

/// The six faces of the vehicle.
pub(super) fn faces(document: &ScenarioDocument) -> [Face; 6] {
    let (vehicle, glass) = (&document.vehicle, &document.glass);
    let middle_m = vehicle.floor_above_ground_m + 0.5 * vehicle.height_m;
    let top_m = vehicle.floor_above_ground_m + vehicle.height_m;
    let end_m2 = vehicle.width_m * vehicle.height_m;
    let side_m2 = vehicle.length_m * vehicle.height_m;
    let plan_m2 = vehicle.length_m * vehicle.width_m;
    let upright = |part, area_m2, glass_m2, turn_deg: f64| Face {
        part,
        area_m2,
        glass_m2,
        facing_up_cosine: 0.0,
        azimuth_deg: (vehicle.heading_deg + turn_deg).rem_euclid(360.0),
        height_m: middle_m,
    };
    let level = |part, glass_m2, facing_up_cosine, height_m| Face {
        part,
        area_m2: plan_m2,
        glass_m2,
        facing_up_cosine,
        azimuth_deg: 0.0,
        height_m,
    };
    [
        level(Part::Roof, glass.roof_area_m2, 1.0, top_m),
        upright(Part::Left, side_m2, glass.left_area_m2, -90.0),
        upright(Part::Right, side_m2, glass.right_area_m2, 90.0),
        upright(Part::Nose, end_m2, glass.nose_area_m2, 0.0),
        upright(Part::Rear, end_m2, glass.rear_area_m2, 180.0),
        level(Part::Floor, 0.0, -1.0, vehicle.floor_above_ground_m),
    ]
}

/// Builds the body.
///
/// # Errors
/// When the glass cannot be described; a validated scenario's always can.
pub(super) fn body(document: &ScenarioDocument) -> Result<Body, GlazingError> {
    let (vehicle, glass) = (&document.vehicle, &document.glass);
    let bare_glass = Glazing::new(
        glass.transmittance_w_m2_k,
        glass.solar_heat_gain_coefficient,
    )?;
    let covered_glass = Glazing::new(
        1.0 / (1.0 / glass.transmittance_w_m2_k + glass.cover_resistance_m2_k_w),
        glass.solar_heat_gain_coefficient * glass.cover_sun_share,
    )?;
    let bare_pane = Chain::pane(bare_glass.resistance_m2_k_w, GLASS_THICKNESS_M);
    let covered_pane = Chain::pane(covered_glass.resistance_m2_k_w, GLASS_THICKNESS_M);
    let faces = faces(document);
    let mut elements = opaque_elements(document, &faces);
    for face in faces.iter().filter(|face| face.glass_m2 > 0.0) {
        elements.push(element(
            face,
            Part::Glass,
            face.glass_m2,
            bare_pane,
            GLASS_EMITTANCE,
        ));
    }
    share_sun(document, &mut elements);
    // Beside the filled walls: what has mass in its middle is worked out faster together.
    let goods = faces.len();
    let furnishing = Element::furnishing(
        vehicle.furnishing_heat_capacity_j_k,
        vehicle.furnishing_area_m2,
        glass.sun_on_furnishings_share,
    );
    elements.insert(goods, furnishing);
    let glass_m2: f64 = faces.iter().map(|face| face.glass_m2).sum();
    let inner_m2: f64 =
        faces.iter().map(|face| face.area_m2).sum::<f64>() + vehicle.furnishing_area_m2;
    Ok(Body {
        goods,
        description: CabinDescription {
            elements,
            air_volume_m3: vehicle.length_m * vehicle.width_m * vehicle.height_m,
            pressure_pa: standard_atmosphere_pressure_pa(document.place.altitude_m),
            furnishing_moisture_factor: vehicle.furnishing_moisture_factor,
        },
        bare_glass,
        covered_glass,
        bare_pane,
        covered_pane,
        kept_sun_share: kept_share(
            document.shell.lining_sun_absorptance,
            glass_m2 * bare_glass.transmittance_diffuse / inner_m2,
        ),
    })
}

/// Share kept by a cavity whose walls absorb α and whose openings are a share w of its inner surface:
/// α/(α + (1 − α) w), repeated diffuse reflection (Duffie & Beckman, Solar Engineering of Thermal Processes, ch. 5).
pub(crate) fn kept_share(absorptance: f64, opening_share: f64) -> f64 {
    absorptance / (absorptance + (1.0 - absorptance) * opening_share)
}

/// The land's wind profile.
pub(super) fn wind_profile(terrain: Terrain) -> &'static WindProfile {
    match terrain {
        Terrain::OpenCountry => &OPEN_COUNTRY,
        Terrain::Suburb => &SUBURB,
        Terrain::Town => &TOWN,
    }
}

/// The walls, filled ones first.
fn opaque_elements(document: &ScenarioDocument, faces: &[Face; 6]) -> Vec<Element> {
    let shell = &document.shell;
    let (mut filled, mut empty) = (Vec::new(), Vec::new());
    for face in faces {
        let area_m2 = face.area_m2 - face.glass_m2;
        let filled_share = if face.part == Part::Floor {
            1.0
        } else {
            shell.filled_share
        };
        let wall = |share: f64, chain| {
            let emittance = shell.paint_emittance;
            element(face, face.part, area_m2 * share, chain, emittance)
        };
        filled.push(wall(filled_share, filled_chain(document, face.part)));
        if filled_share < 1.0 {
            let cavity = Chain::cavity(
                layer(STEEL, shell.skin_thickness_m),
                CAVITY_RESISTANCE_M2_K_W,
                layer(PLYWOOD, shell.lining_thickness_m),
            );
            empty.push(wall(1.0 - filled_share, cavity));
        }
    }
    filled.append(&mut empty);
    filled
}

fn element(face: &Face, part: Part, area_m2: f64, chain: Chain, emittance: f64) -> Element {
    let outside = if face.part == Part::Floor {
        Outside::Underside
    } else {
        Outside::Open
    };
    Element {
        part,
        area_m2,
        chain,
        facing_up_cosine: face.facing_up_cosine,
        azimuth_deg: face.azimuth_deg,
        height_m: face.height_m,
        outside,
        outside_emittance: emittance,
        inside_emittance: if part == Part::Glass {
            GLASS_EMITTANCE
        } else {
            INSIDE_EMITTANCE
        },
        inside_sun_share: 0.0,
    }
}

/// Sun inside: stated shares on floor and furniture, the rest on the linings by area.
fn share_sun(document: &ScenarioDocument, elements: &mut [Element]) {
    let glass = &document.glass;
    let rest = 1.0 - glass.sun_on_floor_share - glass.sun_on_furnishings_share;
    let lining = |element: &&mut Element| !matches!(element.part, Part::Floor | Part::Glass);
    let lining_m2: f64 = elements
        .iter_mut()
        .filter(lining)
        .map(|element| element.area_m2)
        .sum();
    for element in elements.iter_mut() {
        element.inside_sun_share = match element.part {
            Part::Floor => glass.sun_on_floor_share,
            Part::Glass => 0.0,
            _ => rest * element.area_m2 / lining_m2,
        };
    }
}

/// A part of the shell whose insulation lies between ribs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShellPart {
    /// The roof.
    Roof,
    /// Sides, nose and rear.
    Walls,
}

/// Roof or walls of a valid scenario with their ribs, where they are filled.
#[must_use]
pub fn ribbed_wall(document: &ScenarioDocument, part: ShellPart) -> RibbedWall {
    let shell = &document.shell;
    RibbedWall {
        insulation_m: match part {
            ShellPart::Roof => shell.roof_insulation_m,
            ShellPart::Walls => shell.wall_insulation_m,
        },
        insulation_conductivity_w_m_k: insulation_of(document).conductivity_w_m_k,
        lining_m: shell.lining_thickness_m,
        lining_conductivity_w_m_k: PLYWOOD.conductivity_w_m_k,
        rib_spacing_m: shell.rib_spacing_m,
        thermal_break_m: shell.thermal_break_m,
    }
}

fn filled_chain(document: &ScenarioDocument, part: Part) -> Chain {
    let shell = &document.shell;
    let plain = insulation_of(document);
    let ribbed = |part| {
        let wall = ribbed_wall(document, part);
        let material = if wall.insulation_m > 0.0 {
            plain.with_conductivity(wall.equivalent_conductivity_w_m_k())
        } else {
            plain
        };
        (layer(material, wall.insulation_m), wall.lining_m)
    };
    let (insulation, lining_m) = match part {
        Part::Roof => ribbed(ShellPart::Roof),
        Part::Floor => (layer(plain, shell.floor_insulation_m), shell.floor_board_m),
        _ => ribbed(ShellPart::Walls),
    };
    Chain::lined(
        layer(STEEL, shell.skin_thickness_m),
        insulation,
        layer(PLYWOOD, lining_m),
    )
}

fn layer(material: Material, thickness_m: f64) -> Layer {
    Layer {
        material,
        thickness_m,
    }
}

pub(crate) fn insulation_of(document: &ScenarioDocument) -> Material {
    let shell = &document.shell;
    match shell.insulation_material {
        InsulationMaterial::SheepWool => SHEEP_WOOL,
        InsulationMaterial::MineralWool => MINERAL_WOOL,
        InsulationMaterial::ElastomericFoam => ELASTOMERIC_FOAM,
        InsulationMaterial::ExtrudedPolystyrene => EXTRUDED_POLYSTYRENE,
        InsulationMaterial::PolyurethaneBoard => POLYURETHANE_BOARD,
        InsulationMaterial::SprayFoam => SPRAY_FOAM,
        InsulationMaterial::Cork => CORK,
        InsulationMaterial::BubbleFoil => BUBBLE_FOIL,
        InsulationMaterial::Other => {
            LIGHT_INSULATION.with_conductivity(shell.other_conductivity_w_m_k)
        }
    }
}
