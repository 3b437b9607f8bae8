//! Wording of what is to be decided: whether, how big, what for the money, how sure, and what if it fails.

use super::{Voice, listed};
use crate::format::{UnitSystem, duration, unit};
use noonday_engine::advice::failure::{ANIMAL_FACILITY_LIMIT_C, Mark};
use noonday_engine::advice::sampling::{Sampled, Uncertain};
use noonday_engine::advice::{
    Alternative, Alternatives, ChargingSized, MeasureKind, Outcome, Package, PlainDivision,
    PurgeEffect, Reason, Rung, Subject,
};
use noonday_engine::comfort::heat_index::HeatIndexCategory;
use noonday_engine::scenario::{Dimension, NeededFor, ScenarioDocument};
use noonday_engine::simulation::FailingPart;

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

/// Name of a change.
pub fn measure_name(kind: MeasureKind, voice: &Voice) -> String {
    let quantity = |dimension, value| voice.units.quantity(dimension, value);
    // Trade sizes: 25 mm and an inch are the same layer.
    let layer = |added_m| {
        let unit = unit(Dimension::Thickness, voice.units);
        let number = voice.units.number(unit.shown(added_m), 1);
        format!("{number}\u{a0}{}", unit.symbol)
    };
    match kind {
        MeasureKind::RoofInsulation { added_m } => format!("{} more in the roof", layer(added_m)),
        MeasureKind::WallInsulation { added_m } => format!("{} more in the walls", layer(added_m)),
        MeasureKind::BetterStuffing => "cavities stuffed anew".to_owned(),
        MeasureKind::WindowCovers => "covers on every window".to_owned(),
        MeasureKind::LighterRoof => "a white roof".to_owned(),
        MeasureKind::Shade => "shade all day".to_owned(),
        MeasureKind::RoofFan => "a roof fan".to_owned(),
        MeasureKind::Bank { capacity_ah } => {
            format!("a bank of {}", quantity(Dimension::Charge, capacity_ah))
        }
        MeasureKind::Panels { added_w } => format!(
            "{} more panels",
            quantity(Dimension::ElectricPower, added_w)
        ),
        MeasureKind::DcDc { current_a } => format!(
            "a DC-DC charger of {}",
            quantity(Dimension::Current, current_a)
        ),
        MeasureKind::Cooler { capacity_w } => {
            format!("a cooler of {}", quantity(Dimension::HeatFlow, capacity_w))
        }
        MeasureKind::NoCooler => "no cooler".to_owned(),
    }
}

/// What a set of changes is.
pub fn package_name(package: &Package, voice: &Voice) -> String {
    if package.measures.is_empty() {
        return AS_IT_IS.to_owned();
    }
    let names: Vec<String> = package
        .measures
        .iter()
        .map(|measure| measure_name(measure.kind, voice))
        .collect();
    listed(&names)
}

/// A difference of cost.
pub fn cost_change(amount: f64, voice: &Voice) -> String {
    let money = voice.units.money(amount.abs(), &voice.currency);
    if amount > 0.5 {
        format!("+{money}")
    } else if amount < -0.5 {
        format!("\u{2212}{money}")
    } else {
        "no cost".to_owned()
    }
}

/// A difference of cost with the hours of work in it.
pub fn cost_and_work(amount: f64, labour_h: f64, voice: &Voice) -> String {
    let cost = cost_change(amount, voice);
    if labour_h.abs() < 0.05 {
        return cost;
    }
    let hours = voice.units.number(labour_h.abs(), 1);
    let sign = if labour_h < 0.0 { "\u{2212}" } else { "" };
    format!("{cost}, {sign}{hours}\u{a0}h")
}

/// Degrees above the limit times hours.
pub fn too_warm(degree_hours_k_h: f64, voice: &Voice) -> String {
    voice.units.degree_hours(degree_hours_k_h)
}

/// The same as a difference.
pub fn too_warm_change(change_k_h: f64, voice: &Voice) -> String {
    signed(change_k_h, &too_warm(change_k_h.abs(), voice), 0.005)
}

/// How much longer the bank lasts.
pub fn lasts_change(before: Option<f64>, after: Option<f64>) -> String {
    match (before, after) {
        (Some(before_h), Some(after_h)) => signed(
            after_h - before_h,
            &duration((after_h - before_h).abs()),
            0.009,
        ),
        (Some(_), None) => "for weeks".to_owned(),
        (None, Some(after_h)) => format!("only {}", duration(after_h)),
        (None, None) => "as before".to_owned(),
    }
}

fn signed(value: f64, size: &str, least: f64) -> String {
    if value > least {
        format!("+{size}")
    } else if value < -least {
        format!("\u{2212}{size}")
    } else {
        "as before".to_owned()
    }
}

/// A package in a line: what it costs, what it leaves, what it is.
pub fn package_line(package: &Package, voice: &Voice) -> [String; 3] {
    let outcome = &package.outcome;
    let left = if outcome.degree_hours_k_h > 0.005 {
        format!("{} too warm", too_warm(outcome.degree_hours_k_h, voice))
    } else if !outcome.windows_met {
        "too damp".to_owned()
    } else if !outcome.keeps_reserve() {
        "cool enough, below the reserve".to_owned()
    } else {
        "cool enough".to_owned()
    };
    [
        cost_change(package.cost_change, voice),
        left,
        package_name(package, voice),
    ]
}

/// Subjects of changes, in the order of the table, for what is left out of it.
pub fn subject_name(subject: Subject) -> &'static str {
    match subject {
        Subject::Roof => "insulation of the roof",
        Subject::Walls => "insulation of the walls",
        Subject::Stuffing => "stuffing",
        Subject::Covers => "window covers",
        Subject::Paint => "white roof",
        Subject::Shade => "shade",
        Subject::Fan => "roof fan",
        Subject::Bank => "bank",
        Subject::Panels => "panels",
        Subject::DcDc => "DC-DC charger",
        Subject::Cooler => "cooler",
    }
}

/// Name of a window of the need with its hours.
pub fn window_name(document: &ScenarioDocument, slot: usize, voice: &Voice) -> String {
    let Some(window) = document.need.windows.get(slot) else {
        return String::new();
    };
    let whom = match window.needed_for {
        NeededFor::Animals => "Animals",
        NeededFor::People => "People",
        NeededFor::Nobody => "Nobody",
    };
    format!(
        "{whom}, {}",
        voice.span(window.from_hour, window.until_hour)
    )
}

/// Chance of everything, and what it was asked of.
pub fn sure(found: &Sampled, voice: &Voice) -> String {
    let days = voice.units.number(found.samples as f64, 0);
    match found.all_met {
        Some(share) => format!(
            "Of {days} such days, with inputs as far off as they usually are, {} keep all hours and the reserve.",
            voice.units.percent(share)
        ),
        None => format!("{days} such days, with inputs as far off as they usually are."),
    }
}

/// What to find out first.
pub fn measure_first(found: &Sampled) -> Option<String> {
    let most = found.influences.first()?;
    (most.of_excess >= 0.1).then(|| {
        format!(
            "What it depends on most is {}: that is worth finding out first.",
            uncertain_name(most.input)
        )
    })
}

/// Name of an uncertain input in mid-sentence.
pub fn uncertain_name(input: Uncertain) -> &'static str {
    match input {
        Uncertain::Leakage => "leaks of the closed cabin",
        Uncertain::FilledShare => "how well cavities are stuffed",
        Uncertain::Paint => "how dark the paint is to the sun",
        Uncertain::ForecastHigh => "the high of the forecast",
        Uncertain::DewPoint => "the dew point of the forecast",
        Uncertain::Capacity => "the cooler’s real capacity",
        Uncertain::Efficiency => "the cooler’s real efficiency",
        Uncertain::Ageing => "age of the bank",
        Uncertain::OtherLoads => "draw of the other loads",
    }
}

/// What fails, as a column.
pub fn part_name(part: FailingPart) -> &'static str {
    match part {
        FailingPart::Cooler => "Cooler fails",
        FailingPart::Bank => "Bank fails",
    }
}

/// Name of a danger value.
pub fn mark_name(mark: Mark, voice: &Voice) -> String {
    let degrees = |value_c| voice.units.temperature(value_c, 0);
    let category = match mark {
        Mark::AnimalFacilityLimit => {
            let decimals = usize::from(voice.units == UnitSystem::Metric);
            let limit = voice.units.temperature(ANIMAL_FACILITY_LIMIT_C, decimals);
            return format!("Air at {limit}, animals");
        }
        Mark::HeatIndex(category) => category,
    };
    let name = match category {
        HeatIndexCategory::None => "None",
        HeatIndexCategory::Caution => "Caution",
        HeatIndexCategory::ExtremeCaution => "Extreme caution",
        HeatIndexCategory::Danger => "Danger",
        HeatIndexCategory::ExtremeDanger => "Extreme danger",
    };
    match category.from_c() {
        Some(from_c) => format!("{name}, heat index {}", degrees(from_c)),
        None => name.to_owned(),
    }
}

/// Time to a danger value.
pub fn minutes(minutes: Option<f64>) -> String {
    match minutes {
        None => NOT_REACHED.to_owned(),
        Some(minutes) if minutes < 0.5 => "already there".to_owned(),
        Some(minutes) => duration(minutes.floor() / 60.0),
    }
}

/// What plain division leaves out.
pub fn reason_name(reason: Reason) -> &'static str {
    match reason {
        Reason::UsableShare => "Only part of the charge is usable",
        Reason::Duty => "The compressor rests or runs slower",
        Reason::Voltage => "The bank’s real voltage",
        Reason::OtherLoads => "Other loads",
        Reason::Charging => "Charging",
        Reason::Heat => "The real draw in this heat",
        Reason::Bank => "Losses and limits of the bank",
    }
}

/// The division itself.
pub fn division(plain: &PlainDivision, voice: &Voice) -> String {
    let quantity = |dimension, value: f64| voice.units.quantity(dimension, value.round());
    format!(
        "{} by {} on the plate",
        quantity(Dimension::Charge, plain.rated_ah),
        quantity(Dimension::Current, plain.plate_a)
    )
}

/// An item of the difference.
pub fn item(hours: f64) -> String {
    signed(hours, &duration(hours.abs()), 0.009).replace("as before", "0\u{a0}h")
}

/// How long the bank of the run lasts.
pub fn run_lasts(plain: &PlainDivision) -> String {
    let hours = duration(plain.simulated_h);
    if plain.lasts_longer {
        format!("more than {hours}")
    } else {
        hours
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::advice::failure::failures;
    use noonday_engine::advice::{alternatives, measures};
    use noonday_engine::scenario::{Scenario, example};

    fn voice() -> Voice {
        Voice::new(&example(), UnitSystem::Metric)
    }

    #[test]
    fn a_mark_that_is_not_reached_is_never_called_safe() {
        for text in [minutes(None), NOT_REACHED.to_owned()] {
            assert!(!text.contains("safe") && !text.contains("never"), "{text}");
        }
        assert!(FAILS_NOTE.contains("it does not mean safe"));
        assert!(FAILS_CAUTION.contains("kills"));
        assert_eq!(minutes(Some(0.0)), "already there");
        // Rounded down: no minute is promised that is not there.
        assert_eq!(minutes(Some(12.9)), "12\u{a0}min");
    }

    #[test]
    fn every_change_mark_input_and_reason_has_a_name_of_its_own() {
        let scenario = Scenario::new(example()).unwrap();
        let voice = voice();
        let mut groups: Vec<Vec<String>> = vec![
            measures(&scenario)
                .iter()
                .map(|measure| measure_name(measure.kind, &voice))
                .collect(),
            Uncertain::ALL
                .map(|input| uncertain_name(input).to_owned())
                .to_vec(),
            Reason::ALL
                .map(|reason| reason_name(reason).to_owned())
                .to_vec(),
            Alternative::ALL
                .map(|one| alternative_name(one).to_owned())
                .to_vec(),
        ];
        let failures = failures(&scenario).unwrap();
        groups.push(
            failures[0]
                .marks
                .iter()
                .map(|one| mark_name(one.mark, &voice))
                .collect(),
        );
        for names in groups {
            let mut sorted = names.clone();
            sorted.sort();
            sorted.dedup();
            assert_eq!(sorted.len(), names.len(), "{names:?}");
        }
    }

    #[test]
    fn differences_carry_their_sign_and_nothing_is_no_difference() {
        let voice = voice();
        assert_eq!(cost_change(512.2, &voice), "+USD\u{a0}512");
        assert_eq!(cost_change(-512.2, &voice), "\u{2212}USD\u{a0}512");
        assert_eq!(cost_change(0.2, &voice), "no cost");
        assert_eq!(too_warm_change(-1.27, &voice), "\u{2212}1.3\u{a0}°C·h");
        assert_eq!(too_warm_change(0.0, &voice), "as before");
        assert_eq!(
            lasts_change(Some(10.0), Some(12.5)),
            "+2\u{a0}h 30\u{a0}min"
        );
        assert_eq!(lasts_change(Some(10.0), None), "for weeks");
        assert_eq!(item(-0.001), "0\u{a0}h");
    }

    #[test]
    fn whether_cooling_is_needed_is_said_of_the_least_that_will_do() {
        let mut document = example();
        document.day.high_c = 40.0;
        let hot = alternatives(&Scenario::new(document.clone()).unwrap()).unwrap();
        assert!(
            needed(&hot).contains("nothing but the cooler") || needed(&hot).contains("do not keep")
        );
        (document.day.high_c, document.day.low_c) = (22.0, 12.0);
        let mild = alternatives(&Scenario::new(document).unwrap()).unwrap();
        assert!(needed(&mild).contains("without"), "{}", needed(&mild));
    }
}
