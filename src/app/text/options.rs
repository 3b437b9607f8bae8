//! Names of the options of each choice, keyed by their stable names.

/// What an option is called; the stable name itself stands in should there be nothing, which a test rules out.
pub fn option_name(stable: &'static str) -> &'static str {
    find(stable).unwrap_or(stable)
}

fn find(stable: &str) -> Option<&'static str> {
    Some(match stable {
        "sheep_wool" => "Sheep wool",
        "mineral_wool" => "Mineral or glass wool",
        "elastomeric_foam" => "Elastomeric foam",
        "extruded_polystyrene" => "Extruded polystyrene board",
        "polyurethane_board" => "Polyurethane board",
        "spray_foam" => "Sprayed polyurethane foam",
        "cork" => "Cork board",
        "bubble_foil" => "Bubble foil, no air gap",
        "other" => "Another, by its conductivity",
        "seated" => "Sitting quietly",
        "desk_work" => "Working at a desk",
        "moving" => "Up and about",
        "nobody" => "Nobody",
        "people" => "People",
        "animals" => "Animals",
        "open_country" => "Open country",
        "suburb" => "Suburb or wood",
        "town" => "Town",
        "asphalt" => "Asphalt",
        "concrete" => "Concrete",
        "gravel" => "Gravel or soil",
        "grass" => "Grass",
        "as_stated" => "As stated",
        "derated" => "Only what its power can carry",
        "on_off" => "On or off",
        "two_level" => "Full or economy",
        "variable" => "Continuously variable",
        "direct_current" => "Direct current from the bank",
        "mains_through_inverter" => "Mains voltage through an inverter",
        "off" => "Not at all",
        "in_hours" => "In its hours",
        "when_outdoors_cooler" => "In its hours, while it is cooler outdoors",
        "lithium_iron_phosphate" => "Lithium iron phosphate",
        "absorbent_glass_mat" => "Lead-acid, glass mat",
        "flooded_lead" => "Lead-acid, flooded",
        "v12" => "12 V",
        "v24" => "24 V",
        "v48" => "48 V",
        "c60" => "60 °C (140 °F)",
        "c75" => "75 °C (167 °F)",
        "c80" => "80 °C (176 °F)",
        "c90" => "90 °C (194 °F)",
        "c105" => "105 °C (221 °F)",
        "c125" => "125 °C (257 °F)",
        "c200" => "200 °C (392 °F)",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::{Kind, fields};

    #[test]
    fn every_option_has_a_name() {
        for field in fields() {
            if let Kind::Choice(choice) = &field.kind {
                for option in choice.options {
                    assert!(find(option).is_some(), "{}: {option}", field.key);
                }
            }
        }
    }
}
