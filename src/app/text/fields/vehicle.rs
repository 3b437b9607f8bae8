//! Title and vehicle.

use super::{Wording, say};

pub(super) fn wording(key: &str) -> Option<Wording> {
    Some(match key {
        "name" => say(
            "Name",
            "It heads the page, names the saved scenario and travels in the link.",
            "",
        ),
        "note" => say(
            "Note",
            "What is special about it, or what you want to say. It travels in the link and is shown as plain text.",
            "",
        ),
        "recipient" => say(
            "For whom",
            "Whoever opens the link or reads the report sees that it was worked out for them.",
            "",
        ),
        "sender" => say(
            "From",
            "Whoever opens the link or reads the report sees who worked it out.",
            "",
        ),
        "vehicle.length_m" => say(
            "Inner length",
            "A longer cabin has more roof and wall for the heat to come through, and more air to cool.",
            "from the bed of a small car to a long coach-built cabin",
        ),
        "vehicle.width_m" => say(
            "Inner width",
            "Width adds roof, the part that the midday sun strikes hardest.",
            "road vehicles are no wider",
        ),
        "vehicle.height_m" => say(
            "Inner height",
            "Height adds wall, which takes the low sun of morning and evening.",
            "road vehicles are no higher inside",
        ),
        "vehicle.floor_above_ground_m" => say(
            "Floor above the ground",
            "Hot ground warms the floor from below. A higher floor lets more air through between them.",
            "from a low floor to a high chassis",
        ),
        "vehicle.heading_deg" => say(
            "The nose points to",
            "It decides which windows and which wall face the sun at the hours that matter. Clockwise from north: 90° is east, 180° south.",
            "once round the compass",
        ),
        "vehicle.furnishing_heat_capacity_j_k" => say(
            "Heat held by furniture",
            "Wood, water and stores soak up heat by day and give it back at night, so a cooler has to draw it out of them as well as out of the air.",
            "from an empty shell to several hundred kilograms of wood and water",
        ),
        "vehicle.furnishing_area_m2" => say(
            "Surface of the furniture",
            "The larger the surface that meets the air, the faster furniture takes up and gives back its heat.",
            "from a bare shell to closely furnished",
        ),
        "vehicle.furnishing_moisture_factor" => say(
            "Moisture held by bedding",
            "Bedding, wood and cloth hold many times the water of the air and release it while the cooler dries the cabin.",
            "as a multiple of what the air holds",
        ),
        _ => return None,
    })
}
