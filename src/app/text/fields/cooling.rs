//! Cooler and ventilation.

use super::{Wording, say};

pub(super) fn wording(key: &str) -> Option<Wording> {
    machine(key)
        .or_else(|| control(key))
        .or_else(|| supply(key))
        .or_else(|| ventilation(key))
}

fn machine(key: &str) -> Option<Wording> {
    Some(match key {
        "cooler.installed" => say(
            "A cooler is fitted",
            "Take the tick away to see the same day with none.",
            "",
        ),
        "cooler.capacity_rated_w" => say(
            "Cooling capacity on the plate",
            "Heat taken out each hour at the rating condition. On a hotter day or with a hot roof under it, it gives less.",
            "from the smallest to more than a van can feed",
        ),
        "cooler.electric_power_rated_w" => say(
            "Power on the plate",
            "What it draws at the same rating condition. Capacity over power is the efficiency that the bank has to live with.",
            "from the smallest to more than a van can feed",
        ),
        "cooler.plate_trust" => say(
            "Believe the plate",
            "Some plates promise more cooling than their own power can give. The cautious choice reckons with what small units reach.",
            "",
        ),
        "cooler.airflow_m3_s_per_kw" => say(
            "Air through the cooler",
            "For its capacity. Less air comes out colder and drier; more air gives more cooling and less drying.",
            "as coils are built",
        ),
        "cooler.sensible_heat_ratio_rated" => say(
            "Share that lowers temperature",
            "The rest of the capacity goes into taking water out of the air.",
            "from wet coil to dry",
        ),
        "cooler.blower_power_w" => say(
            "Indoor blower",
            "It runs as long as the cooler may run, and all its power ends up as heat in the cabin.",
            "from none to a large blower",
        ),
        "cooler.condenser_air_rise_k" => say(
            "Its outdoor air is warmer by",
            "Over a sunlit roof or under a hot floor the cooler draws in air warmer than the weather, and gives less for more power.",
            "from free air to a hot box",
        ),
        _ => return None,
    })
}

fn control(key: &str) -> Option<Wording> {
    Some(match key {
        "cooler.control" => say(
            "Its output is",
            "A compressor that can run slowly uses less power for the same heat and does not start again and again.",
            "",
        ),
        "cooler.least_capacity_share" => say(
            "Least output",
            "How far it can throttle down. Below that it has to switch off and on.",
            "as compressors are built",
        ),
        "cooler.part_speed_efficiency_gain" => say(
            "Efficiency at least output",
            "As a multiple of the efficiency at full output: coils that are large for the load work better.",
            "from no gain to the best",
        ),
        "cooler.set_point_c" => say(
            "Thermostat set to",
            "Every degree lower costs power for as long as the cooler runs. Set too near the limit, the felt temperature passes it because walls are warmer than the air.",
            "as thermostats allow",
        ),
        "cooler.band_k" => say(
            "Width of its band",
            "A narrow band holds the temperature closer and starts the compressor more often.",
            "as thermostats allow",
        ),
        "cooler.minimum_on_s" => say(
            "Least time on",
            "It protects the compressor, and overshoots a little in a small cabin.",
            "a quarter of an hour at most",
        ),
        "cooler.minimum_off_s" => say(
            "Least time off",
            "Pressures have to even out before the next start.",
            "a quarter of an hour at most",
        ),
        "cooler.run_from_hour" => say(
            "It may run from",
            "Starting before the need gives it time to draw the heat out of furniture and walls.",
            "",
        ),
        "cooler.run_until_hour" => say(
            "It may run until",
            "The same hour in both boxes means that it may run all day.",
            "",
        ),
        _ => return None,
    })
}

fn supply(key: &str) -> Option<Wording> {
    Some(match key {
        "cooler.supply" => say(
            "It is fed with",
            "Through an inverter some of the power is lost on the way, and the start can be more than the inverter carries.",
            "",
        ),
        "cooler.idle_power_w" => say(
            "Draw while waiting",
            "Electronics draw a little for as long as the cooler is switched on.",
            "from none to wasteful",
        ),
        "cooler.start_surge_factor" => say(
            "Start over running current",
            "A hard start pulls the voltage down and can trip protection; a compressor with its own drive starts softly.",
            "from a soft drive to a direct start",
        ),
        "cooler.cut_out_v_per_12_v" => say(
            "Stops below, for each 12 V",
            "Thin cable or a tired bank brings the voltage down to this long before the bank is empty.",
            "and below the voltage at which it starts again",
        ),
        "cooler.recovery_v_per_12_v" => say(
            "Starts again at, for each 12 V",
            "The gap between the two keeps it from switching to and fro.",
            "a bank at rest reaches no more",
        ),
        "cooler.cable_resistance_ohm" => say(
            "Cable, out and back",
            "Its loss grows with the square of the current, and the voltage at the cooler is what the cut-out sees.",
            "from short and thick to far too thin",
        ),
        "cooler.inverter_rated_w" => say(
            "Inverter, continuous",
            "It has to carry the cooler and whatever else runs on mains voltage at the same time.",
            "from small to very large",
        ),
        "cooler.inverter_surge_w" => say(
            "Inverter, at a start",
            "What it gives for the moment of a start; below the surge of the cooler it shuts down.",
            "and at least its continuous rating",
        ),
        "cooler.inverter_idle_w" => say(
            "Inverter, idle draw",
            "It is drawn for every hour in which the inverter is on, cooling or not.",
            "from very good to wasteful",
        ),
        _ => return None,
    })
}

fn ventilation(key: &str) -> Option<Wording> {
    Some(match key {
        "ventilation.fan_use" => say(
            "The roof fan runs",
            "A fan cools for next to nothing while it is cooler outdoors, and heats the cabin when it is not.",
            "",
        ),
        "ventilation.fan_flow_m3_s" => say(
            "Air moved by the fan",
            "What really passes: a fan with nowhere to draw from moves little.",
            "from none to two large fans",
        ),
        "ventilation.fan_power_w" => say(
            "Power of the fan",
            "Small, but it can run all night.",
            "from none to two large fans",
        ),
        "ventilation.fan_from_hour" => say(
            "Fan from",
            "The hours in which the fan may run. The same hour twice means all day.",
            "",
        ),
        "ventilation.fan_until_hour" => say(
            "Fan until",
            "The hours in which the fan may run. The same hour twice means all day.",
            "",
        ),
        "ventilation.purge_before_cooling" => say(
            "Blow the hot air out first",
            "When the cabin is hotter than outdoors, a few minutes of fan save the cooler its first and worst work.",
            "",
        ),
        "ventilation.opening_area_m2" => say(
            "Opened windows and hatches",
            "Free area, without nets. Open at night they cool; open while the cooler runs they undo its work.",
            "from shut to a wide open door",
        ),
        "ventilation.opening_from_hour" => say(
            "Opened from",
            "The hours in which they stand open. The same hour twice means all day.",
            "",
        ),
        "ventilation.opening_until_hour" => say(
            "Opened until",
            "The hours in which they stand open. The same hour twice means all day.",
            "",
        ),
        _ => return None,
    })
}
