//! Occupants.

use super::{Wording, say};

const HOURS_WRAP: &str = "The hours run past midnight when the second is the earlier one; the same hour twice means all day.";

pub(super) fn wording(key: &str) -> Option<Wording> {
    Some(match key {
        "occupants.people" => say(
            "People",
            "Each person warms the cabin like a bright old lamp and adds water to the air, which the cooler must take out again.",
            "more than eight do not fit",
        ),
        "occupants.people_from_hour" => say("People in from", HOURS_WRAP, ""),
        "occupants.people_until_hour" => say("People in until", HOURS_WRAP, ""),
        "occupants.activity" => say(
            "While awake they are",
            "The more they move, the more heat and water they give off.",
            "",
        ),
        "occupants.asleep_from_hour" => say(
            "Asleep from",
            "Sleepers give off less heat than people who are awake.",
            "",
        ),
        "occupants.asleep_until_hour" => say(
            "Asleep until",
            "Sleepers give off less heat than people who are awake.",
            "",
        ),
        "occupants.dogs" => say(
            "Dogs",
            "A dog gives off heat, and far more water than its size suggests once it pants.",
            "more than eight do not fit",
        ),
        "occupants.dog_mass_kg" => say(
            "Weight of each dog",
            "A dog's heat follows its weight, though not in full proportion.",
            "from toy breeds to the largest",
        ),
        "occupants.dogs_from_hour" => say("Dogs in from", HOURS_WRAP, ""),
        "occupants.dogs_until_hour" => say("Dogs in until", HOURS_WRAP, ""),
        "occupants.cooking_heat_w" => say(
            "Heat of cooking",
            "A flame or plate heats the cabin as well as the pan.",
            "from a kettle now and then to a large stove",
        ),
        "occupants.cooking_moisture_kg_s" => say(
            "Water from cooking",
            "Open pans, and gas flames themselves, put water into the air.",
            "from dry to several pots boiling",
        ),
        "occupants.cooking_from_hour" => say("Cooking from", HOURS_WRAP, ""),
        "occupants.cooking_until_hour" => say("Cooking until", HOURS_WRAP, ""),
        _ => return None,
    })
}
