//! Prices.

use super::{Wording, say};

const YOURS: &str = "An invented price to begin with: put in your own.";

pub(super) fn wording(key: &str) -> Option<Wording> {
    Some(match key {
        "prices.currency" => say(
            "Currency",
            "The three letters of ISO 4217. Nothing is converted: every price is in this currency.",
            "",
        ),
        "prices.cooler" => say("Cooler", YOURS, "a price"),
        "prices.bank_per_wh" => say(
            "Bank, for each Wh",
            "Capacity times voltage times this gives the bank's price. It is invented to begin with: put in your own.",
            "a price",
        ),
        "prices.panels_per_w" => say(
            "Panels, for each W",
            "With brackets, cable and controller. It is invented to begin with: put in your own.",
            "a price",
        ),
        "prices.insulation_per_m2_25_mm" => say(
            "Insulation, for each 25 mm (1 in)",
            "For the area of roof, walls and floor, in layers of 25 mm. It is invented to begin with: put in your own.",
            "a price",
        ),
        "prices.covers_per_m2" => say("Window covers", YOURS, "a price"),
        "prices.fan" => say("Roof fan", YOURS, "a price"),
        "prices.dc_dc_per_a" => say("DC-DC charger, for each A", YOURS, "a price"),
        "prices.labour_h" => say(
            "Hours of work",
            "Roof work, wiring and testing. It is invented to begin with: put in your own.",
            "ten weeks at most",
        ),
        "prices.labour_per_h" => say("An hour of work", YOURS, "a price"),
        "prices.tax_share" => say("Tax", "Added to everything above.", "as taxes are"),
        _ => return None,
    })
}
