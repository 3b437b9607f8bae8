//! The roof.

use super::{Wording, say};

pub(super) fn wording(key: &str) -> Option<Wording> {
    let rest = key.strip_prefix("roof.")?;
    if rest.ends_with(".from_front_m") {
        return Some(say(
            "From the front",
            "From the front edge of the usable roof to its front edge. The plan shows it to scale and says what is in its way.",
            "the longest roof",
        ));
    }
    if rest.ends_with(".from_left_m") {
        return Some(say(
            "From the left",
            "From the left edge of the usable roof, seen in the direction of travel, to its left edge.",
            "the widest roof",
        ));
    }
    if let Some(hatch) = rest.strip_prefix("hatches.") {
        return hatch_wording(hatch.get(2..)?);
    }
    whole(rest).or_else(|| unit(rest)).or_else(|| panel(rest))
}

fn whole(rest: &str) -> Option<Wording> {
    Some(match rest {
        "panels_from_plan" => say(
            "The plan’s panels count",
            "Power is then the number of panels times the power of each, and their shade is what unit, fan and hatches throw on them hour by hour. Switched off, power and shade are those entered under “Charging”.",
            "",
        ),
        "length_m" => say(
            "Usable length",
            "What of the roof is flat and free, measured on the vehicle.",
            "from a small car to a coach",
        ),
        "width_m" => say(
            "Usable width",
            "Between the gutters or the bends of the roof, measured on the vehicle.",
            "road vehicles are no wider",
        ),
        "height_above_ground_m" => say(
            "Bare roof above the ground",
            "Measured on the loaded vehicle. What stands highest on the roof is added to it.",
            "from a low car to the tallest that may use the road",
        ),
        "clearance_height_m" => say(
            "Has to pass under",
            "The lowest gate, bridge, branch or ferry deck on the way. Law sets a height as well: 4 m in the European Union, 13.5 to 14 ft in most of the United States.",
            "from a garage to open country",
        ),
        "limit_at_rest_kg" => say(
            "Roof carries at rest",
            "From the maker’s papers. People on the roof, tents and snow count against it as well.",
            "from next to nothing to a truck",
        ),
        "limit_under_way_kg" => say(
            "Roof carries under way",
            "The maker’s roof load for driving: everything that is fixed to the roof counts, rails and racks too. It is lower than the one at rest.",
            "from next to nothing to a truck",
        ),
        "highest_speed_m_s" => say(
            "Highest speed on the road",
            "The pull of the wind grows with its square. Add a strong headwind.",
            "from a crawl to a motorway with headwind",
        ),
        "other_mass_kg" => say(
            "Everything else on the roof",
            "Fan, hatches, rails, rack, awning and cables: all but the unit and the panels.",
            "up to what the roof carries",
        ),
        "fan_and_hatch_height_m" => say(
            "Height of fan and hatches",
            "Above the roof, closed. They throw shadows on panels beside them.",
            "from flush to a tall hood",
        ),
        "fan.side_m" => say(
            "Side",
            "Of the square that the roof fan covers, flange and all; 0 if there is none. Its opening has to miss the ribs.",
            "from none to the largest",
        ),
        _ => return None,
    })
}

fn unit(rest: &str) -> Option<Wording> {
    Some(match rest.strip_prefix("unit.")? {
        "length_m" => say(
            "Length",
            "Along the vehicle; 0 if the cooler does not stand on the roof.",
            "from none to the largest",
        ),
        "width_m" => say("Width", "Across the vehicle.", "from none to the largest"),
        "height_m" => say(
            "Height",
            "Above the roof. It makes the vehicle taller, stands in the wind and shades panels.",
            "from flat to tall",
        ),
        "mass_kg" => say(
            "Mass",
            "With frame, seal and fastening.",
            "from a light unit to a heavy one",
        ),
        "cut_out_m" => say(
            "Cut-out",
            "Side of the square hole under its middle; the longer side if it is not square. It has to miss the ribs.",
            "from none to a large hatch",
        ),
        "clearance_m" => say(
            "Clearance around it",
            "What the maker asks for air and for the hand. Hot air that comes back costs capacity.",
            "from none to a metre",
        ),
        _ => return None,
    })
}

fn hatch_wording(quantity: &str) -> Option<Wording> {
    Some(match quantity {
        "length_m" => say(
            "Length",
            "Along the vehicle, as it lies on the roof; 0 if there is none.",
            "from none to the largest",
        ),
        "width_m" => say(
            "Width",
            "Across the vehicle, as it lies on the roof.",
            "from none to the largest",
        ),
        _ => return None,
    })
}

fn panel(rest: &str) -> Option<Wording> {
    Some(match rest.strip_prefix("panel.")? {
        "count" => say("Number", "All of one kind.", "as many as the plan holds"),
        "rated_power_w" => say(
            "Power of each",
            "As rated, at 1,000 W/m² and 25 °C (77 °F).",
            "from a small panel to the largest",
        ),
        "length_m" => say(
            "Length",
            "Along the vehicle. Exchange length and width to turn the panels.",
            "from a small panel to the largest",
        ),
        "width_m" => say(
            "Width",
            "Across the vehicle.",
            "from a small panel to the largest",
        ),
        "mass_kg" => say(
            "Mass of each",
            "With its fastening.",
            "from a bare laminate to glass in a frame",
        ),
        _ => return None,
    })
}
