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
        "dew_point" => "Dew point",
        "relative_humidity" => "Relative humidity",
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
        _ => return starting_point(stable),
    })
}

fn starting_point(stable: &str) -> Option<&'static str> {
    Some(match stable {
        "none" => "None: entered by hand",
        "compact_van" => "Compact panel van",
        "passenger_van" => "Van with windows all round",
        "medium_van_low" => "Medium panel van, standard roof",
        "medium_van_high" => "Medium panel van, high roof",
        "long_van_high" => "Long panel van, high roof",
        "truck_camper" => "Cabin on a pickup’s bed",
        "box_camper" => "Box body on a light truck",
        "teardrop_trailer" => "Small sleeping trailer",
        "travel_trailer" => "Trailer to live in",
        "coach_built" => "Coach-built motorhome",
        "converted_bus" => "Converted bus",
        "bare_metal" => "Bare metal",
        "foil_only" => "Bubble foil alone",
        "wool_25" => "Sheep wool, 25\u{a0}mm (1\u{a0}in)",
        "wool_50" => "Sheep wool, 50\u{a0}mm (2\u{a0}in)",
        "wool_50_break" => "Sheep wool, 50\u{a0}mm, ribs covered",
        "mineral_50" => "Mineral wool, 50\u{a0}mm (2\u{a0}in)",
        "elastomeric_19" => "Elastomeric foam, 19\u{a0}mm (¾\u{a0}in)",
        "elastomeric_38" => "Elastomeric foam, 38\u{a0}mm (1½\u{a0}in)",
        "board_25" => "Polystyrene boards, 25\u{a0}mm (1\u{a0}in)",
        "board_50" => "Polyurethane boards, 50\u{a0}mm (2\u{a0}in)",
        "sprayed_40" => "Sprayed foam, 40\u{a0}mm (1½\u{a0}in)",
        "cork_20" => "Cork boards, 20\u{a0}mm (¾\u{a0}in)",
        "sandwich_30" => "Sandwich panels, 30\u{a0}mm (1¼\u{a0}in)",
        "sandwich_50" => "Sandwich panels, 50\u{a0}mm (2\u{a0}in)",
        "one_person" => "One person, evening to morning",
        "couple" => "A couple, evening to morning",
        "couple_and_dog" => "A couple and a dog in by day",
        "family" => "Family with a child",
        "at_work_inside" => "At work in it, and asleep",
        "driver_by_day" => "Driver asleep by day",
        "dog_by_day" => "A dog alone by day",
        "two_dogs_by_day" => "Two dogs alone by day",
        "hot_desert" => "Hot desert",
        "gulf_desert" => "Hot desert by a warm sea",
        "humid_coast" => "Humid subtropical coast",
        "humid_plain" => "Humid subtropical plain",
        "continental_plain" => "Continental plain",
        "high_plateau" => "Dry high plateau",
        "mediterranean_inland" => "Mediterranean, inland",
        "mediterranean_coast" => "Mediterranean, coast",
        "central_hot_spell" => "Temperate inland, hot spell",
        "mild_maritime" => "Mild maritime",
        "northern_summer" => "Northern summer, long days",
        "tropical" => "Tropics near the equator",
        "southern_dry" => "Southern hemisphere, dry summer",
        "southern_coast" => "Southern hemisphere, humid coast",
        "no_cooler" => "No cooler",
        "roof_small" => "Roof unit on DC, small",
        "roof_medium" => "Roof unit on DC, medium",
        "roof_large" => "Roof unit on DC, large",
        "roof_fixed_speed" => "Roof unit on DC, on or off",
        "roof_mains" => "Roof unit on mains voltage",
        "room_small" => "Small room unit on mains voltage",
        "room_variable" => "Variable room unit on mains voltage",
        "lithium_12v_100" => "Lithium iron phosphate, 12\u{a0}V, 100\u{a0}Ah",
        "lithium_12v_200" => "Lithium iron phosphate, 12\u{a0}V, 200\u{a0}Ah",
        "lithium_12v_400" => "Lithium iron phosphate, 12\u{a0}V, 400\u{a0}Ah",
        "lithium_12v_600" => "Lithium iron phosphate, 12\u{a0}V, 600\u{a0}Ah",
        "lithium_24v_200" => "Lithium iron phosphate, 24\u{a0}V, 200\u{a0}Ah",
        "lithium_24v_400" => "Lithium iron phosphate, 24\u{a0}V, 400\u{a0}Ah",
        "lithium_48v_100" => "Lithium iron phosphate, 48\u{a0}V, 100\u{a0}Ah",
        "lithium_48v_200" => "Lithium iron phosphate, 48\u{a0}V, 200\u{a0}Ah",
        "glass_mat_12v_200" => "Lead-acid glass mat, 12\u{a0}V, 200\u{a0}Ah",
        "glass_mat_24v_200" => "Lead-acid glass mat, 24\u{a0}V, 200\u{a0}Ah",
        "flooded_12v_220" => "Flooded lead-acid, 12\u{a0}V, 220\u{a0}Ah",
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
