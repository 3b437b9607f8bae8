//! Ways of cable, make-up of the bank, and what they cost.

use super::{Wording, say};

const YOURS: &str = "An invented price to begin with: put in your own.";

/// Wording of one quantity of a way of cable.
pub(super) fn way(quantity: &str) -> Option<Wording> {
    Some(match quantity {
        "length_m" => say(
            "Length, one way",
            "Along the way that the cable takes, not as the crow flies. The current has to come back, so drop and loss go by twice this.",
            "from a hand’s breadth to more than a van’s length there and back",
        ),
        "allowed_drop_share" => say(
            "Drop allowed",
            "Voltage that the cable may take, of the nominal. 3 % where a load stops at low voltage, up to 10 % where it does not matter.",
            "from hardly any to what rules allow at most",
        ),
        "bundled_conductors" => say(
            "Conductors together",
            "How many that carry current lie in one bundle or conduit, both ways counted. They warm one another.",
            "from one alone to a full conduit",
        ),
        "air_c" => say(
            "Hottest air along the way",
            "Cable cools less in hot air. Under a roof in the sun or beside an engine it is far hotter than in the cabin.",
            "from a mild cabin to a place where no cable should lie",
        ),
        _ => return None,
    })
}

pub(super) fn wording(key: &str) -> Option<Wording> {
    Some(match key {
        "installation.insulation" => say(
            "Insulation of the cable bears",
            "It is printed on the cable. What bears more heat may carry more current.",
            "",
        ),
        "installation.panel_voltage_v" => say(
            "Voltage of the panels at best power",
            "It is on the panel. Panels in series add their voltages, and twice the voltage is half the current.",
            "from one small panel to a long string; above 50 V a shock can kill",
        ),
        "installation.parallel_packs" => say(
            "Packs in parallel",
            "Batteries side by side share current and protection. When one drops out, the others get its share.",
            "from one to as many as a van carries",
        ),
        "installation.bank_peak_a" => say(
            "Current the bank bears for seconds",
            "Protection lets more through for the moment of a start than for good. For all packs together; it is on their data sheet.",
            "from one small battery to many in parallel",
        ),
        "prices.build.cable_per_m_mm2" => say("Conductor, by length and copper", YOURS, "a price"),
        "prices.build.fuse" => say("Fuse or breaker with holder", YOURS, "a price"),
        "prices.build.inverter_per_w" => say("Inverter, for each W", YOURS, "a price"),
        "prices.build.small_parts_share" => say(
            "Small parts",
            "Lugs, heat shrink, sealant, screws, conduit: a share of all other parts.",
            "from none to half as much again",
        ),
        "prices.build.markup_share" => say(
            "Markup on parts",
            "What a workshop adds to parts. At zero for one’s own van.",
            "from none to three times the price",
        ),
        _ => return None,
    })
}
