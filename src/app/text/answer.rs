//! The answer in sentences: is it cool enough when it must be, what fails first, how long the bank lasts, what helps most.

use super::Voice;
use noonday_engine::advice::{
    Advice, BankVerdict, Cause, Headline, Lever, LeverEffect, WindowVerdict,
};
use noonday_engine::scenario::NeededFor;
use noonday_engine::simulation::Series;

/// The answer, in the order in which it is read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// The one sentence that must be seen.
    pub lead: String,
    /// Why it fails, if it does.
    pub cause: Option<String>,
    /// What becomes of the bank.
    pub bank: String,
    /// What it would be without any cooler, where that is worth saying.
    pub without_cooler: Option<String>,
}

impl Answer {
    /// What follows the first sentence.
    pub fn rest(&self) -> String {
        let parts = [
            self.cause.as_deref(),
            Some(self.bank.as_str()),
            self.without_cooler.as_deref(),
        ];
        let said: Vec<&str> = parts.into_iter().flatten().collect();
        said.join(" ")
    }

    /// All of it, for those who hear it.
    pub fn spoken(&self) -> String {
        format!("{} {}", self.lead, self.rest()).replace('\u{a0}', " ")
    }
}

/// Builds the answer.
pub fn answer(advice: &Advice, voice: &Voice) -> Answer {
    let verdict = &advice.verdict;
    let missed = verdict
        .first_missed
        .and_then(|index| verdict.windows.get(index));
    Answer {
        lead: lead(advice, missed, voice),
        cause: missed.and_then(|window| window.cause).map(cause),
        bank: bank(&verdict.bank, voice),
        without_cooler: without_cooler(advice, voice),
    }
}

/// What would help most, from the effects of single changes, best first.
pub fn help(effects: &[LeverEffect], headline: Headline, voice: &Voice) -> Option<String> {
    let best = effects.first()?;
    match headline {
        Headline::NothingAsked | Headline::MetWithoutCooler => None,
        Headline::Missed => Some(help_cooling(best)),
        Headline::Met | Headline::MetBelowReserve => help_bank(effects, voice),
    }
}

/// What a change is called in mid-sentence.
pub fn lever_name(lever: Lever) -> &'static str {
    match lever {
        Lever::MoreInsulation => "25 mm (1 in) more insulation in roof and walls",
        Lever::WindowCovers => "covers on every window all day",
        Lever::WhiteRoof => "a roof painted white",
        Lever::Shade => "parking in shade",
        Lever::RoofFan => "a roof fan that runs while it is cooler outdoors",
        Lever::LargerBank => "half as much bank again",
        Lever::MorePanels => "200 W more panels",
        Lever::LargerCooler => "half as much cooling capacity again",
        Lever::EarlierStart => "letting the cooler run two hours earlier",
    }
}

fn lead(advice: &Advice, missed: Option<&WindowVerdict>, voice: &Voice) -> String {
    let verdict = &advice.verdict;
    match (verdict.headline, missed) {
        (Headline::Missed, Some(window)) => lead_missed(window, voice),
        (Headline::NothingAsked, _) => lead_nothing_asked(&advice.with_cooler.series, voice),
        (Headline::MetBelowReserve, _) => format!(
            "It stays cool enough, but the bank falls below its reserve{}.",
            match verdict.bank.below_reserve_at_h {
                Some(time_h) => format!(" at {}", voice.instant(time_h)),
                None => String::new(),
            }
        ),
        (headline, _) => lead_met(&verdict.windows, headline, voice),
    }
}

fn lead_missed(window: &WindowVerdict, voice: &Voice) -> String {
    let (worst, limit) = voice
        .units
        .temperature_against(window.worst_felt_c, window.highest_felt_c);
    let span = voice.span(window.from_h, window.until_h);
    let whom = whom(window.needed_for);
    if window.cause == Some(Cause::Humidity) {
        return format!("Too damp for {whom}: from {span} the air holds more water than asked.");
    }
    let limit_kept = window.worst_felt_c <= window.highest_felt_c;
    if let Some(limit_c) = window.highest_heat_index_c.filter(|_| limit_kept) {
        let (worst, limit) = voice
            .units
            .temperature_against(window.worst_heat.heat_index_c, limit_c);
        return format!(
            "Too warm for {whom}: from {span} the heat index should stay below {limit}, but reaches {worst} at {}.",
            voice.instant(window.worst_heat.at_h)
        );
    }
    format!(
        "Too warm for {whom}: from {span} it should stay below {limit}, but feels like {worst} at {}.",
        voice.instant(window.worst_at_h)
    )
}

fn lead_met(windows: &[WindowVerdict], headline: Headline, voice: &Voice) -> String {
    let tightest = windows.iter().max_by(|one, other| {
        let over = |window: &WindowVerdict| window.worst_felt_c - window.highest_felt_c;
        over(one).total_cmp(&over(other))
    });
    let Some(window) = tightest else {
        return "It stays cool enough.".to_owned();
    };
    let (worst, limit) = voice
        .units
        .temperature_against(window.worst_felt_c, window.highest_felt_c);
    let verdict = match headline {
        Headline::MetWithoutCooler => "It stays cool enough even without a cooler",
        _ => "It stays cool enough whenever it must",
    };
    format!(
        "{verdict}: {worst} felt at most from {}; the limit is {limit}.",
        voice.span(window.from_h, window.until_h)
    )
}

fn lead_nothing_asked(series: &Series, voice: &Voice) -> String {
    match warmest(series) {
        Some((felt_c, time_h)) => format!(
            "No hours are set in which it must be cool; at its warmest, at {}, it feels like {}.",
            voice.instant(time_h),
            voice.units.temperature(felt_c, 0)
        ),
        None => "No hours are set in which it must be cool.".to_owned(),
    }
}

fn bank(bank: &BankVerdict, voice: &Voice) -> String {
    let lowest = format!(
        "The bank is lowest at {} with {} left",
        voice.instant(bank.lowest_at_h),
        voice.units.percent(bank.lowest_state_of_charge)
    );
    match bank.lasts_h {
        Some(hours) => format!(
            "{lowest}; with such days in a row it is used up after {}.",
            crate::format::duration(hours)
        ),
        None => format!(
            "{lowest}; it would carry {} such days in a row.",
            bank.days_looked
        ),
    }
}

fn without_cooler(advice: &Advice, voice: &Voice) -> Option<String> {
    let verdict = &advice.verdict;
    if verdict.headline == Headline::MetWithoutCooler {
        return None;
    }
    let worst = verdict.windows.iter().max_by(|one, other| {
        one.worst_felt_without_cooler_c
            .total_cmp(&other.worst_felt_without_cooler_c)
    })?;
    if worst.cause == Some(Cause::NoCooler) {
        return None;
    }
    Some(format!(
        "Without a cooler it would feel like {} in those hours.",
        voice
            .units
            .temperature(worst.worst_felt_without_cooler_c, 0)
    ))
}

fn help_cooling(best: &LeverEffect) -> String {
    if best.degree_hours_change_k_h >= 0.0 {
        return "No single change that was tried brings it closer.".to_owned();
    }
    let end = if best.met {
        "with that alone it would stay cool enough."
    } else {
        "it would not be enough alone."
    };
    format!("What would help most is {}; {end}", lever_name(best.lever))
}

/// For a need that is met the best change is the one that spares the bank most.
fn help_bank(effects: &[LeverEffect], voice: &Voice) -> Option<String> {
    let best = effects
        .iter()
        .filter(|effect| effect.met)
        .max_by(|one, other| {
            one.lowest_state_of_charge_change
                .total_cmp(&other.lowest_state_of_charge_change)
        })?;
    let points = best.lowest_state_of_charge_change * 100.0;
    if points < 1.0 {
        return None;
    }
    Some(format!(
        "What would spare the bank most is {}: {} percentage points more left at its lowest.",
        lever_name(best.lever),
        voice.units.number(points, 0)
    ))
}

fn whom(needed_for: NeededFor) -> &'static str {
    match needed_for {
        NeededFor::Animals => "the animals",
        NeededFor::People => "the people in it",
        NeededFor::Nobody => "anybody",
    }
}

fn cause(cause: Cause) -> String {
    match cause {
        Cause::NoCooler => "There is no cooler to hold it.",
        Cause::NeverSwitchedOn => "The cooler is not allowed to run in those hours.",
        Cause::NotYetCooled => {
            "The cooler is still drawing the day’s heat out of the cabin when those hours begin."
        }
        Cause::Capacity => "The cooler runs flat out and cannot hold it.",
        Cause::SetPoint => "The thermostat is set too high for what is asked.",
        Cause::BankEmpty => "The bank is used up before those hours are over.",
        Cause::LowVoltage => "The voltage at the cooler falls too low and it stops.",
        Cause::CurrentLimit => "The bank’s protection does not allow the current it needs.",
        Cause::InverterOverload => "The inverter cannot carry the start of the compressor.",
        Cause::Humidity => "Only the humidity is too high; the temperature is kept.",
    }
    .to_owned()
}

fn warmest(series: &Series) -> Option<(f64, f64)> {
    series
        .felt_c
        .iter()
        .zip(&series.time_h)
        .map(|(felt_c, time_h)| (*felt_c, *time_h))
        .max_by(|one, other| one.0.total_cmp(&other.0))
}

#[cfg(test)]
#[path = "answer_tests.rs"]
mod tests;
