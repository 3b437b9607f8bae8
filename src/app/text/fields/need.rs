//! The need.

use super::{Wording, say};

pub(super) fn wording(key: &str) -> Option<Wording> {
    Some(match key {
        "need.reserve_state_of_charge" => say(
            "Charge to keep back",
            "What must be left in the bank at every hour, for a colder fridge, a cloudy day or an older bank than the plan assumes.",
            "keeping back more leaves no bank to speak of",
        ),
        _ => return None,
    })
}

/// One of the three windows, by the rest of its key.
pub(super) fn window(rest: &str) -> Option<Wording> {
    Some(match rest {
        "needed_for" => say(
            "It must be cool for",
            "Only these hours are judged. Animals and children cannot open a door: for them plan as if the cooler will fail.",
            "",
        ),
        "from_hour" => say(
            "From",
            "From this hour on it must feel no warmer than the limit.",
            "",
        ),
        "until_hour" => say(
            "Until",
            "An earlier hour than the first means the next morning; the same hour means all day.",
            "",
        ),
        "highest_felt_c" => say(
            "It may feel no warmer than",
            "Felt temperature counts hot walls and roof as well as the air. It is the limit that the answer is about.",
            "cooler is out of reach, warmer is not cool",
        ),
        "highest_relative_humidity" => say(
            "Humidity no higher than",
            "Damp air feels closer and keeps sweat and panting from cooling. 100 % asks nothing of the humidity.",
            "drier than 30 % nobody asks for in summer",
        ),
        "highest_heat_index_c" => say(
            "Heat index no higher than",
            "The heat index weighs warm and damp air together, without sun or hot walls. 60 °C (140 °F) asks nothing of it.",
            "from a cool room to asking nothing",
        ),
        _ => return None,
    })
}
