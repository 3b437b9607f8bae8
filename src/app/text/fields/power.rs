//! Battery, charging and loads.

use super::{Wording, say};

pub(super) fn wording(key: &str) -> Option<Wording> {
    battery(key).or_else(|| charging(key))
}

fn battery(key: &str) -> Option<Wording> {
    Some(match key {
        "battery.chemistry" => say(
            "Cells",
            "Lithium iron phosphate holds its voltage and can be used nearly to the end; lead sags, ages fast when used deeply and gives less at high current.",
            "",
        ),
        "battery.system_voltage" => say(
            "Voltage of the bank",
            "At twice the voltage the same power needs half the current, and cable loses a quarter.",
            "",
        ),
        "battery.capacity_ah" => say(
            "Capacity of the bank",
            "In ampere-hours at the voltage of the bank: 400 Ah at 12 V hold as much as 200 Ah at 24 V.",
            "from a starter battery to more than a van can carry",
        ),
        "battery.start_state_of_charge" => say(
            "Charge at the start",
            "A run that begins with a full bank flatters a set-up that cannot fill it again.",
            "from empty to full",
        ),
        "battery.least_state_of_charge" => say(
            "Lowest charge allowed",
            "Protection cuts off here. Lead-acid lasts longer if it stays above half.",
            "and at least 5 % below the highest",
        ),
        "battery.most_state_of_charge" => say(
            "Charging aims at",
            "Stopping short of full spares the cells and costs capacity.",
            "up to full",
        ),
        "battery.resistance_ohm_per_12_v" => say(
            "Resistance, for each 12 V",
            "Current through it costs voltage and warms the bank. It grows with age and cold.",
            "from a large new bank to a small old one",
        ),
        "battery.coulombic_efficiency" => say(
            "Charge got back",
            "The share of the ampere-hours put in that can be taken out again.",
            "from old lead-acid to lithium",
        ),
        "battery.highest_discharge_a" => say(
            "Highest discharge current",
            "Protection switches off above it, and then everything is off.",
            "from one small battery to many in parallel",
        ),
        "battery.highest_charge_a" => say(
            "Highest charging current",
            "Panels, driving and shore together cannot put in more than this.",
            "from one small battery to many in parallel",
        ),
        "battery.peukert_exponent" => say(
            "Peukert's exponent",
            "How much a lead-acid bank loses at high current: 1 is nothing.",
            "from an ideal bank to a poor one",
        ),
        "battery.health_share" => say(
            "Capacity left of new",
            "Banks lose capacity with years and use. Plan with what will be left at the end of their service.",
            "below that it is due for replacement",
        ),
        _ => return None,
    })
}

fn charging(key: &str) -> Option<Wording> {
    Some(match key {
        "charging.panel_power_w" => say(
            "Panels on the roof",
            "Rated power, lying flat. Even at noon in summer they give less: the sun is not overhead and cells grow hot.",
            "what a roof can carry",
        ),
        "charging.panel_loss_share" => say(
            "Losses of the panels",
            "Dirt, mismatch, wiring and age together.",
            "from clean and new to neglected",
        ),
        "charging.panel_shading_share" => say(
            "Shaded by things on the roof",
            "Fan, rack and cooler throw shadows, and a small shadow takes away more than its area.",
            "from a clear roof to a crowded one",
        ),
        "charging.panel_temperature_loss_per_k" => say(
            "Loss as cells grow hot",
            "Power lost for each degree above the rating at 25 °C (77 °F); on a roof they run far above it.",
            "from the best cells to the worst",
        ),
        "charging.controller_efficiency" => say(
            "Efficiency of the controller",
            "What is left after matching the panels to the bank.",
            "from simple to lossless",
        ),
        "charging.drives" => say(
            "It is driven that day",
            "Driving charges the bank and cools the skin with its own wind.",
            "",
        ),
        "charging.drive_from_hour" => say("Driving from", "The hours on the road.", ""),
        "charging.drive_until_hour" => say("Driving until", "The hours on the road.", ""),
        "charging.drive_speed_m_s" => say(
            "Speed",
            "Faster air takes more heat off a sunlit skin, and brings more in through leaks.",
            "as roads allow",
        ),
        "charging.dc_dc_current_a" => say(
            "DC-DC charger",
            "What it puts into the bank while the engine runs; 0 is none.",
            "what alternators can spare",
        ),
        "charging.shore_power_w" => say(
            "Shore charger",
            "What it puts into the bank while plugged in; 0 is none.",
            "what a socket gives",
        ),
        "charging.shore_from_hour" => say("Plugged in from", "The hours with a socket.", ""),
        "charging.shore_until_hour" => say("Plugged in until", "The hours with a socket.", ""),
        _ => return None,
    })
}

/// One of the loads: each has its own reason for its power, the rest is common.
pub(super) fn load(load: &str, quantity: &str) -> Option<Wording> {
    let why_power = match load {
        "fridge" => "A refrigerator runs day and night; in a hot cabin it runs more.",
        "lights" => "Lights are small loads in the hours when no panel gives anything.",
        "electronics" => "Laptop, telephone and router together, as drawn from the bank.",
        "other" => "Whatever else draws from the bank. It ends up as heat in the cabin too.",
        _ => return None,
    };
    const DUTY: &str =
        "The share of its hours in which it really draws. The rest of the time it waits.";
    const HOURS: &str = "The hours in which it is in use. The same hour twice means all day.";
    Some(match quantity {
        "power_w" => say(
            "Power while on",
            why_power,
            "from none to what a bank can feed",
        ),
        "duty" => say("Share of that time on", DUTY, "from never to always"),
        "from_hour" => say("From", HOURS, ""),
        "until_hour" => say("Until", HOURS, ""),
        _ => return None,
    })
}
