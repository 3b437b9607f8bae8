//! Wording of what is to be decided: whether, how big, what for the money, how sure, and what if it fails.

mod likely;
mod money;
#[cfg(test)]
mod tests;

pub use likely::*;
pub use money::*;

use super::Voice;
use crate::format::duration;
use noonday_engine::advice::{
    Alternative, Alternatives, ChargingSized, Outcome, PurgeEffect, Rung,
};
use noonday_engine::scenario::Dimension;

/// Heading of the whole.
pub const DECIDE: &str = "What to decide";
/// Button: give up the work.
pub const STOP: &str = "Stop";
/// Button: begin it again.
pub const GO_ON: &str = "Work it out";
/// Said once the work was stopped.
pub const STOPPED: &str =
    "Stopped. What stands here may be incomplete or of an earlier state of the inputs.";
/// Said before anything is known.
pub const WAITING: &str = "This is worked out as soon as the inputs rest.";
/// Said when all is there.
pub const COMPLETE: &str = "All of this is of the inputs as they stand.";
/// Said when the calculation ended by itself.
pub const FAILED: &str = "The calculation beside the page ended by itself. What stands here may be incomplete or of an earlier state of the inputs. It begins afresh with the next change, or now:";
/// Said when it ended once more.
pub const LOST: &str = "The calculation beside the page has ended by itself again. What stands here may be incomplete or of an earlier state of the inputs; everything above is as it should be. Your scenario is kept: load the page again to begin afresh.";
/// Said where no worker is to be had.
pub const UNAVAILABLE: &str = "This part needs many hundred runs, and this browser does not let the page calculate them beside itself. Everything above works without it; a current browser shows this part too.";
/// Said should the scenario be refused.
pub const REFUSED: &str = "The state shown could not be calculated here.";
/// Name of the progress.
pub const PROGRESS: &str = "Share of the work done";
/// Heading of the need without a cooler.
pub const NEEDED: &str = "Is cooling needed at all?";
/// With the cooler of the scenario.
pub const WITH_COOLER: &str = "With the cooler";
/// Columns of that table.
pub const NEEDED_HEADS: [&str; 3] = ["What is done", "Hours kept", "At the worst hour"];
/// Where purging changes nothing.
const PURGE_DOES_NOTHING: &str =
    "Blowing the hot air out with the fan before cooling makes no difference on this day.";
/// Heading of the sizes.
pub const SIZES: &str = "How big does it have to be?";
/// Columns of that table.
pub const SIZES_HEADS: [&str; 3] = ["common sizes", "At the worst hour", "Least charge"];
/// Under it.
pub const SIZES_NOTE: &str = "Found by trying common sizes one after the other: the cooler at this efficiency with a supply that never fails, then the bank with that cooler, then what charges it.";
/// Switch: the bank has to recover.
pub const MUST_RECOVER: &str = "The last day must leave the bank no lower than the first";
/// Button: put the sizes in.
pub const TAKE_SIZES: &str = "Use the smallest sizes";
/// Said of sizes that were put in.
pub const SIZES_TAKEN: &str = "the smallest sizes";
/// Where no window is in use.
pub const NOTHING_ASKED: &str =
    "No hours are set in which it must be cool, so there is nothing to size for.";
/// Heading of measures and packages.
pub const MONEY: &str = "Where does money go furthest?";
/// Caption of the measures.
pub const MEASURES: &str = "Each change alone, against the scenario as it is";
/// Columns of that table.
pub const MEASURES_HEADS: [&str; 4] = ["May be chosen", "Cost, work", "Too warm", "Bank lasts"];
/// Under it.
pub const MEASURES_NOTE: &str = "“Too warm” is degrees above the limit times hours. Costs are with tax and work, from prices that are the scenario’s own. Untick what is out of the question.";
/// Button: to the prices.
pub const TO_PRICES: &str = "Change prices and hours of work";
/// Name of the drawing of packages.
pub const FRONT: &str = "The best that each budget buys";
/// Up and across.
pub const FRONT_UP: &str = "still too warm";
/// Across.
pub const FRONT_ACROSS: &str = "cost beside the scenario as it is";
/// Under it.
pub const FRONT_NOTE: &str = "Nothing cheaper leaves less too warm, nor less below the reserve. A dot, or its line below, makes that the scenario; it can be undone. Dots that would touch are drawn apart.";
/// The scenario unchanged.
pub const AS_IT_IS: &str = "Nothing changed";
/// Said while not every package is run.
pub const STILL_SEARCHING: &str = "Still searching.";
/// Heading of the chances.
pub const SURE: &str = "How sure is it?";
/// Columns of the chances.
pub const CHANCE_HEADS: [&str; 3] = ["Chance that it stays cool enough", "With", "Without cooler"];
/// Columns of the influences.
pub const INFLUENCE_HEADS: [&str; 3] = ["Spread that is due to", "of warmth", "of charge"];
/// Under them.
pub const SURE_NOTE: &str = "The tinted bands in the charts hold eight of ten such days. They show how far these inputs may be off, not what the model leaves out.";
/// Heading of the failures.
pub const FAILS: &str = "If it fails";
/// The caution beside it.
pub const FAILS_CAUTION: &str = "No figure here says that anybody may be left behind. A closed vehicle kills children and animals, often sooner than any of these times: be there, or have somebody there who can open the door.";
/// Under the table.
pub const FAILS_NOTE: &str = "Shortest time over all instants of those hours, in this model and this weather. Heat index categories are the National Weather Service’s, for grown people in shade; children, the old, the sick and animals are in danger earlier. For animals also the 85 °F (29.5 °C) that United States rules (9 CFR 3.3) let housing that is watched exceed for four hours at most, no safe limit. “Not reached here” is said of what was calculated; it does not mean safe.";
/// Not reached: never a word of safety.
pub const NOT_REACHED: &str = "not reached here";
/// Heading of the plain division.
pub const PLAIN: &str = "Why not just divide?";
/// Columns of that table.
pub const PLAIN_HEADS: [&str; 2] = ["Ampere-hours by amperes", "Bank lasts"];
/// The last line of that table.
pub const PLAIN_RUN: &str = "The run";
/// Under it.
pub const PLAIN_NOTE: &str = "Each line adds one thing that plain division leaves out, in this order; another order would share the difference out otherwise.";
/// Where there is nothing to divide by.
pub const PLAIN_NONE: &str =
    "The cooler draws nothing on this day, so there is nothing to divide by.";

/// How far the work is.
pub fn working(share: f64, stale: bool, voice: &Voice) -> String {
    let share = voice.units.percent((share * 10.0).floor() / 10.0);
    if stale {
        format!("Working it out anew, {share} done. Parts not yet reached are of the state before.")
    } else {
        format!("Working it out, {share} done.")
    }
}

/// What was taken over.
pub fn taken(what: &str) -> String {
    format!("The scenario now has {what}.")
}

/// Hours kept of those needed.
pub fn kept(outcome: &Outcome) -> String {
    format!(
        "{} of {}",
        duration(outcome.met_h),
        duration(outcome.needed_h)
    )
}

/// How far below or above the limit at the worst hour.
pub fn margin(outcome: &Outcome, voice: &Voice) -> String {
    let Some(margin_k) = outcome.margin_k else {
        return String::new();
    };
    let difference = |size_k: f64| {
        voice
            .units
            .quantity(Dimension::TemperatureDifference, size_k)
    };
    if outcome.windows_met {
        format!("{} to spare", difference(margin_k.max(0.0)))
    } else if margin_k < 0.0 {
        format!("{} too warm", difference(-margin_k))
    } else {
        "too damp".to_owned()
    }
}

/// Name of what is done instead of cooling.
pub fn alternative_name(alternative: Alternative) -> &'static str {
    match alternative {
        Alternative::Nothing => "No cooler, else as it is",
        Alternative::Shade => "Instead: shade all day",
        Alternative::Covers => "Instead: covers on every window",
        Alternative::Fan => "Instead: a roof fan",
        Alternative::AllOfThem => "Instead: shade, covers and fan",
    }
}

/// Whether cooling is needed at all.
pub fn needed(found: &Alternatives) -> String {
    let asked = found
        .without_cooler
        .iter()
        .any(|(_, one)| one.needed_h > 0.0);
    if !asked {
        return "No hours are set in which it must be cool.".to_owned();
    }
    let enough = found.without_cooler.iter().find(|(_, one)| one.windows_met);
    match enough {
        Some((Alternative::Nothing, _)) => {
            "On this day it stays cool enough without any cooler.".to_owned()
        }
        Some((Alternative::Shade, _)) => "On this day shade alone would do.".to_owned(),
        Some((Alternative::Covers, _)) => "On this day window covers alone would do.".to_owned(),
        Some((Alternative::Fan, _)) => "On this day a roof fan alone would do.".to_owned(),
        Some((Alternative::AllOfThem, _)) => {
            "On this day shade, covers and a fan together would do without a cooler.".to_owned()
        }
        None => match &found.with_cooler {
            Some(with) if with.windows_met => {
                "On this day nothing but the cooler keeps all of these hours.".to_owned()
            }
            _ => "Shade, covers and a fan do not keep all of these hours.".to_owned(),
        },
    }
}

/// What blowing the hot air out before cooling does.
pub fn purge(effect: &PurgeEffect, voice: &Voice) -> String {
    let less_wh = effect.unpurged.cooler_wh - effect.purged.cooler_wh;
    if less_wh.abs() < 1.0 {
        return PURGE_DOES_NOTHING.to_owned();
    }
    let energy = voice.units.energy(less_wh.abs());
    let energy = if less_wh >= 0.0 {
        format!("spares the cooler {energy}")
    } else {
        format!("costs the cooler {energy}")
    };
    format!(
        "Blowing the hot air out with the fan before cooling {energy}: {} kept with it, {} without.",
        kept(&effect.purged),
        kept(&effect.unpurged)
    )
}

/// What is sized.
pub fn size_name(charging: Option<ChargingSized>, is_cooler: bool) -> &'static str {
    match (charging, is_cooler) {
        (None, true) => "Cooler",
        (None, false) => "Bank",
        (Some(ChargingSized::PanelsW), _) => "Panels",
        (Some(ChargingSized::DrivingHours), _) => "Driving a day",
    }
}

/// Where no common size will do.
pub fn no_size(name: &str) -> String {
    format!("{name}: none of the common sizes will do.")
}

/// A size with its unit.
pub fn size(dimension: Option<Dimension>, size: f64, voice: &Voice) -> String {
    match dimension {
        Some(dimension) => voice.units.quantity(dimension, size),
        None => duration(size),
    }
}

/// A size with how it stands beside the smallest: `step` −1, 0 or 1.
pub fn rung(rung: &Rung, shown: &str, step: i32) -> String {
    match (step, rung.meets) {
        (0, _) => format!("{shown}, the smallest that will do"),
        (_, true) => shown.to_owned(),
        (_, false) => format!("{shown}, not enough"),
    }
}

/// Least charge of a run, against the reserve.
pub fn least_charge(outcome: &Outcome, voice: &Voice) -> String {
    voice.units.percent(outcome.lowest_state_of_charge)
}

/// Whether the bank recovers over several days.
pub fn recovers(recovers: bool) -> &'static str {
    if recovers {
        "With these the bank is no lower on the last day than on the first."
    } else {
        "With these the bank is lower on the last day than on the first: it would not go on like that."
    }
}
