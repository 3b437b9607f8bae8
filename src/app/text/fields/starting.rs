//! The picks of starting points.

use super::{Wording, say};

pub(super) fn wording(key: &str) -> Option<Wording> {
    Some(match key {
        "starting.vehicle" => say(
            "Body to start from",
            "Sets inner size, height above the ground, furnishing and the area of each window, so that only what differs has to be measured.",
            "",
        ),
        "starting.shell" => say(
            "Build-up to start from",
            "Sets insulation, how much of it is filled, ribs, lining and floor. Paint and leaks stay as they are.",
            "",
        ),
        "starting.occupants" => say(
            "People to start from",
            "Sets who is in it and when, what they do, cooking, and the hours in which it must be cool. Old, ill or very young people and short-nosed dogs bear less: ask a doctor or a vet for their limits.",
            "",
        ),
        "starting.place" => say(
            "Climate to start from",
            "Sets place, clock and ground, and an ordinary day of the warmest month. A hot spell is some degrees above it.",
            "",
        ),
        "starting.cooler" => say(
            "Cooler to start from",
            "Sets capacity and power, control, supply and inverter, as such units are commonly offered. The plate of the real unit always counts for more.",
            "",
        ),
        "starting.battery" => say(
            "Bank to start from",
            "Sets chemistry, voltage, capacity and limits. Chargers, fuses and cables must suit them: see “How to build it in”.",
            "",
        ),
        _ => return None,
    })
}
