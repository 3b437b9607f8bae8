//! Prices.

use super::{Wording, say};

const WORK: &str = "Hours that somebody practised takes. Put in your own.";
const HOURS: &str = "from none to a great deal";
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
        "prices.measures.insulation_h_per_m2" => say("Work: insulating", WORK, HOURS),
        "prices.measures.stuffing_h_per_m2" => say(
            "Work: stuffing cavities anew",
            "Lining off, cavities filled, lining on. Put in your own.",
            HOURS,
        ),
        "prices.measures.covers_h_per_m2" => say("Work: making window covers", WORK, HOURS),
        "prices.measures.paint_h_per_m2" => say(
            "Work: painting the roof white",
            "The paint is in it. Put in your own.",
            HOURS,
        ),
        "prices.measures.fan_h" => say(
            "Work: a roof fan",
            "A hole in a roof has to stay tight, and whoever cuts it has to stand safely. Put in your own.",
            HOURS,
        ),
        "prices.measures.bank_h" => say("Work: another bank", WORK, HOURS),
        "prices.measures.panels_h_per_100_w" => say("Work: each 100 W of panels", WORK, HOURS),
        "prices.measures.dc_dc_h" => say("Work: a stronger DC-DC charger", WORK, HOURS),
        "prices.measures.cooler_h" => say(
            "Work: fitting a cooler",
            "Saved where there is none. Put in your own.",
            HOURS,
        ),
        "prices.measures.cooler_price_exponent" => say(
            "How a cooler’s price grows with its size",
            "At 0.6 twice the capacity costs half as much again; at 1 it costs twice as much.",
            "from one price for all to prices by the watt",
        ),
        "prices.tax_share" => say("Tax", "Added to everything above.", "as taxes are"),
        _ => return None,
    })
}
