//! Glass.

use super::{Wording, say};

pub(super) fn wording(key: &str) -> Option<Wording> {
    Some(match key {
        "glass.nose_area_m2" => say(
            "Windscreen",
            "Glass open to the cabin at the nose. Behind a closed partition it is not part of the cabin: set 0.",
            "and at most nine tenths of the nose",
        ),
        "glass.left_area_m2" => say(
            "Left side",
            "Side glass takes the low sun: left and right differ with the way the nose points.",
            "and at most nine tenths of the side",
        ),
        "glass.right_area_m2" => say(
            "Right side",
            "Side glass takes the low sun: left and right differ with the way the nose points.",
            "and at most nine tenths of the side",
        ),
        "glass.rear_area_m2" => say(
            "Rear doors",
            "Small, but it faces away from the windscreen: one of the two looks at the sun.",
            "and at most nine tenths of the rear",
        ),
        "glass.roof_area_m2" => say(
            "Roof window",
            "A clear hatch looks straight at the midday sun; for its size no other glass lets in as much.",
            "and at most nine tenths of the roof",
        ),
        "glass.transmittance_w_m2_k" => say(
            "Heat through the glass",
            "Heat that a square metre passes for each degree between outside and inside, without sun. Double panes halve it.",
            "from triple panes to a single pane",
        ),
        "glass.solar_heat_gain_coefficient" => say(
            "Sun through the glass",
            "The share of the sun's heat that gets in, straight or by way of warm glass. Tinted glass is lower.",
            "from dark film to clear glass",
        ),
        "glass.covers_fitted" => say(
            "Covers on the windows",
            "Fitted covers hold off most of the sun that glass lets in, for little money.",
            "",
        ),
        "glass.covers_from_hour" => say(
            "Covers on from",
            "Covers help in the hours with sun. The same hour in both boxes means all day.",
            "",
        ),
        "glass.covers_until_hour" => say(
            "Covers on until",
            "Covers help in the hours with sun. The same hour in both boxes means all day.",
            "",
        ),
        "glass.cover_resistance_m2_k_w" => say(
            "Resistance of a cover",
            "What the cover and the air behind it add against heat without sun.",
            "from a thin screen to a thick board",
        ),
        "glass.cover_sun_share" => say(
            "Sun past a cover",
            "The share of the bare window's sun that still becomes heat inside. A cover outside the glass does much better than one inside.",
            "from a board outside to a thin curtain",
        ),
        "glass.sun_on_floor_share" => say(
            "Of that sun, on the floor",
            "Sun that lands on the heavy floor warms the air later than sun that lands on light things.",
            "a part of the whole",
        ),
        "glass.sun_on_furnishings_share" => say(
            "Of that sun, on furniture",
            "What falls on neither floor nor furniture lands on the linings.",
            "a part of the whole, with the floor's part",
        ),
        _ => return None,
    })
}
