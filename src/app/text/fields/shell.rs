//! Shell.

use super::{Wording, say};

pub(super) fn wording(key: &str) -> Option<Wording> {
    Some(match key {
        "shell.roof_sun_absorptance" => say(
            "Sun taken up by the roof",
            "The share of sunlight that the paint turns into heat: low for white, near the top for black. Dust raises it.",
            "from the best white coating to matt black",
        ),
        "shell.wall_sun_absorptance" => say(
            "Sun taken up by the walls",
            "The same for the walls, which take the low sun of morning and evening.",
            "from the best white coating to matt black",
        ),
        "shell.paint_emittance" => say(
            "Heat radiated by the paint",
            "Paint of any colour radiates heat to the sky well; bare metal keeps it and grows hot in the sun.",
            "from polished metal to paint",
        ),
        "shell.skin_thickness_m" => say(
            "Steel skin",
            "The skin is thin and conducts well; it sets how fast the outside follows the sun, hardly how much heat comes in.",
            "from thin body panels to plate",
        ),
        "shell.insulation_material" => say(
            "Insulation",
            "Materials differ in how much heat a given thickness lets through. Foil without an air gap does little more than its own thin foam.",
            "",
        ),
        "shell.other_conductivity_w_m_k" => say(
            "Its conductivity",
            "From the data sheet, at a mean temperature near 25 °C. Half the conductivity is worth twice the thickness.",
            "from the best boards to wood",
        ),
        "shell.roof_insulation_m" => say(
            "Insulation of the roof",
            "The roof takes the most sun, so the first millimetres here are worth the most.",
            "more than 150 mm leaves no headroom",
        ),
        "shell.wall_insulation_m" => say(
            "Insulation of the walls",
            "Walls are the largest surface. Each further layer helps less than the one before it, and ribs bypass them all.",
            "more than 150 mm leaves no room inside",
        ),
        "shell.floor_insulation_m" => say(
            "Insulation of the floor",
            "It holds off the heat of the ground; on grass or in shade it matters much less than on asphalt.",
            "more than 150 mm leaves no headroom",
        ),
        "shell.filled_share" => say(
            "Really filled",
            "The share of roof and walls where the insulation has its full thickness. Gaps behind ribs and in doors let heat round the rest.",
            "below a fifth it is not an insulated cabin",
        ),
        "shell.rib_spacing_m" => say(
            "Distance between steel ribs",
            "Every rib carries heat straight through the insulation; closer ribs make more such paths.",
            "as bodies are built",
        ),
        "shell.thermal_break_m" => say(
            "Insulating strip over the ribs",
            "A strip of foam between ribs and lining cuts the path that bypasses the insulation. A few millimetres do much.",
            "thicker strips are a layer of their own",
        ),
        "shell.lining_thickness_m" => say(
            "Lining",
            "Plywood on roof and walls: some insulation, and a store of heat that meets the air.",
            "from thin ply to boards",
        ),
        "shell.floor_board_m" => say(
            "Floor board",
            "The board evens out the heat that comes up through the floor.",
            "from thin ply to planks",
        ),
        "shell.lining_sun_absorptance" => say(
            "Sun taken up inside",
            "The share of sunlight behind the windows that dark linings keep; light linings send part of it back out.",
            "from white linings to dark carpet",
        ),
        "shell.leakage_area_m2" => say(
            "Leaks",
            "The area of one hole that leaks as much as all gaps together. Wind and warmth drive outdoor air through it, with its heat and its moisture.",
            "from taped shut to an open vent",
        ),
        _ => return None,
    })
}
