//! What a logged day teaches.

use crate::format::duration;
use crate::text::answer::lever_name;
use crate::text::{Voice, listed};
use noonday_engine::advice::LeverEffect;
use noonday_engine::advice::learning::{
    Column, Estimate, Learned, LearningError, Log, LogError, Parameter,
};
use noonday_engine::scenario::Dimension;

/// Title of the part.
pub const LEARN: &str = "Learn from a logged day";
/// Under it.
pub const LEARN_NOTE: &str = "Paste or drop the table of a logger, or type a few lines: time, cabin temperature, and outdoors and the cooler’s current if they were logged. Insulation, leaks and heat capacity are then fitted so that the calculated cabin follows the logged one. The log stays on this device and is in no link.";
/// Caution beside it.
pub const LEARN_CAUTION: &str =
    "Log an empty vehicle. Nobody, and no animal, waits in a hot cabin for the sake of a curve.";
/// Label of the box.
pub const LOG_TEXT: &str = "The log";
/// Shown in the empty box.
pub const LOG_SAMPLE: &str = "time, cabin °C, outdoor °C\n06:00, 21.5, 20.8\n06:10, 21.9, 21.0";
/// Label of the file button.
pub const LOG_FILE: &str = "Take it from a file";
/// Button that empties the box.
pub const LOG_CLEAR: &str = "Clear the log";
/// Legend of what the log does not say.
pub const UNSAID: &str = "What the log does not say itself";
/// Ticks.
pub const FAHRENHEIT: &str = "Temperatures are in °F";
/// Ticks.
pub const HOURS: &str = "A time that counts from the start counts hours, not minutes";
/// Label.
pub const BEGINS: &str = "Such a log begins at";
/// Ticks.
pub const OCCUPIED: &str = "People, animals and cooking were in it as the scenario says";
/// Ticks.
pub const COOLED: &str = "The cooler ran as the scenario says (where no current was logged)";
/// Button that begins the fit.
pub const FIT: &str = "Fit the scenario to the log";
/// Button that gives it up.
pub const STOP_FIT: &str = "Stop";
/// Name of the progress.
pub const FIT_PROGRESS: &str = "Share of the fit done";
/// Said while it goes on.
pub const FITTING: &str = "The fit is being worked out beside the page.";
/// Said where no worker is to be had.
pub const NO_WORKER: &str = "This browser does not let the page calculate beside itself, or ended it twice, and the fit needs that. Everything else works without it; loading the page again may help.";
/// Said when the calculation ended by itself.
pub const FIT_FAILED: &str =
    "The calculation ended by itself. Begin the fit again: it gets a fresh start.";
/// Said when given up.
pub const FIT_STOPPED: &str = "Stopped.";
/// Said should the engine refuse.
pub const FIT_REFUSED: &str = "This log could not be fitted with the scenario as it stands.";
/// Button that takes the values over.
pub const ADOPT: &str = "Put these values into the scenario";
/// Said once they are there.
pub const ADOPTED: &str = "The scenario now has the fitted values.";
/// Said when the scenario has moved on since the fit.
pub const STALE: &str = "The scenario has changed since this fit.";
/// Heads of the table of values.
pub const VALUE_HEADS: [&str; 4] = [
    "Fitted to the log",
    "Entered",
    "The log says",
    "Which means",
];
/// Title of the table of the curve.
pub const CURVE_TABLE: &str = "The curves as a table";
/// Heads of that table.
pub const CURVE_HEADS: [&str; 4] = ["Time", "Logged", "As entered", "As fitted"];
/// Heading of measures.
pub const MENDS: &str = "What would mend it";
/// About the errors.
pub const FIT_NOTE: &str = "Ranges hold 19 of 20 fits. Residuals that hang together count for fewer than they are, and the calculation’s own error is in them; sun on the logger’s sensor, opened doors and another wind than entered are not. The share filled stands for the insulation as a whole: thickness, material and gaps act alike.";

/// What a log holds, in a sentence or two.
pub fn log_facts(log: &Log, voice: &Voice) -> String {
    let (Some(first), Some(last)) = (log.points.first(), log.points.last()) else {
        return String::new();
    };
    let hours = (last.clock_s - first.clock_s) / 3_600.0;
    let unit = if log.fahrenheit { "°F" } else { "°C" };
    let mut told = format!(
        "{} points over {}, cabin from {} to {} (read as {unit}).",
        voice.units.number(log.points.len() as f64, 0),
        duration(hours),
        voice.units.temperature(extreme(log, f64::min), 1),
        voice.units.temperature(extreme(log, f64::max), 1),
    );
    told.push_str(if log.has_outdoor {
        " Outdoors as logged takes the place of the day entered; sun, cloud and wind are those of the scenario."
    } else {
        " Outdoors was not logged: the day entered is taken, so enter that day as it was."
    });
    if log.has_current {
        told.push_str(" The cooler follows its logged current.");
    }
    if log.date.is_none() {
        told.push_str(" The date is that of the scenario.");
    }
    if log.empty_lines > 0 {
        told.push_str(&format!(
            " Lines without a cabin temperature: {}.",
            log.empty_lines
        ));
    }
    if !log.unused.is_empty() {
        told.push_str(&format!(" Columns not used: {}.", log.unused.join(", ")));
    }
    told
}

fn extreme(log: &Log, of: fn(f64, f64) -> f64) -> f64 {
    let values = log.points.iter().map(|point| point.cabin_c);
    values.reduce(of).unwrap_or_default()
}

fn column_name(column: Column) -> &'static str {
    match column {
        Column::Time => "time",
        Column::Cabin => "cabin temperature",
        Column::Outdoor => "outdoor temperature",
        Column::Current => "current",
    }
}

/// Why a log cannot be read.
pub fn log_error(error: &LogError) -> String {
    match error {
        LogError::TooLong { bytes } => format!(
            "The log has {} kB; at most 1,000 kB are read. Leave lines out: one in five minutes is enough.",
            bytes / 1_000
        ),
        LogError::TooManyLines { lines } => {
            format!(
                "The log has {lines} lines; at most 20,000 are read. One in five minutes is enough."
            )
        }
        LogError::Empty => "There is no line with a time and a temperature yet.".to_owned(),
        LogError::NoTimeColumn => "No column is called time, date or the like.".to_owned(),
        LogError::NoCabinColumn => {
            "No column is called cabin, inside, temperature or the like.".to_owned()
        }
        LogError::ColumnCount {
            line,
            found,
            expected,
        } => format!("Line {line} has {found} columns where the first line has {expected}."),
        LogError::NotReadable { line, column, cell } => format!(
            "Line {line}, {}: “{cell}” cannot be read.{}",
            column_name(*column),
            if *column == Column::Time {
                " Understood are 14:05, 2:05 pm, 2026-07-21 14:05, 21.07.2026 14:05, and minutes or hours since the start."
            } else {
                ""
            }
        ),
        LogError::OutOfRange { line, column, cell } => format!(
            "Line {line}, {}: {cell} is beyond what such a log holds. Is it °F, or another quantity?",
            column_name(*column)
        ),
        LogError::TimeNotRising { line } => {
            format!("Line {line}: its time does not follow the line before.")
        }
    }
}

/// Why a log cannot be fitted.
pub fn learning_error(error: &LearningError) -> String {
    match error {
        LearningError::Span { hours, allowed_h } if *hours < allowed_h.0 => format!(
            "The log spans {}; at least {} are needed, better a whole day.",
            duration(*hours),
            duration(allowed_h.0)
        ),
        LearningError::Span { allowed_h, .. } => {
            format!(
                "The log spans more than {}; leave days out.",
                duration(allowed_h.1)
            )
        }
        LearningError::TooFew { points, least } => {
            format!("The log has {points} points that lie apart; at least {least} are needed.")
        }
        LearningError::Refused => FIT_REFUSED.to_owned(),
    }
}

/// Name of a quantity.
pub fn parameter_name(parameter: Parameter) -> &'static str {
    match parameter {
        Parameter::FilledShare => "Share of roof and walls filled",
        Parameter::LeakageArea => "Leakage area",
        Parameter::HeatCapacity => "Heat capacity of furniture and goods",
    }
}

fn amount(parameter: Parameter, value: f64, voice: &Voice) -> String {
    match parameter {
        Parameter::FilledShare => voice.units.percent(value),
        Parameter::LeakageArea => voice.units.quantity(Dimension::LeakArea, value),
        Parameter::HeatCapacity => voice.units.quantity(Dimension::HeatCapacity, value),
    }
}

fn degrees(difference_k: f64, voice: &Voice) -> String {
    voice
        .units
        .quantity(Dimension::TemperatureDifference, difference_k)
}

/// A row of the table of values.
pub fn value_row(estimate: &Estimate, voice: &Voice) -> (String, Vec<String>) {
    let shown = |value| amount(estimate.parameter, value, voice);
    let said = format!(
        "{} ({} to {})",
        shown(estimate.value),
        shown(estimate.least),
        shown(estimate.greatest)
    );
    let means = if !estimate.is_known {
        "this log does not tell".to_owned()
    } else if estimate.is_refuted() {
        let way = if estimate.effect_k < 0.0 {
            "cooler"
        } else {
            "warmer"
        };
        format!(
            "not as entered: {} {way} in the mean",
            degrees(estimate.effect_k.abs(), voice)
        )
    } else {
        "agrees with what was entered".to_owned()
    };
    (
        parameter_name(estimate.parameter).to_owned(),
        vec![shown(estimate.entered), said, means],
    )
}

/// How well it fits.
pub fn fit_sentence(learned: &Learned, voice: &Voice) -> String {
    format!(
        "With what was entered the calculated cabin misses the log by {} (root mean square), with the fitted values by {}. The {} points are worth about {} independent ones. The cabin began {} {} than a quiet day before would have left it.",
        degrees(learned.rms_entered_k, voice),
        degrees(learned.rms_k, voice),
        voice.units.number(learned.logged_c.len() as f64, 0),
        voice.units.number(learned.effective, 0),
        degrees(learned.started_warmer_k.abs(), voice),
        if learned.started_warmer_k < 0.0 {
            "cooler"
        } else {
            "warmer"
        },
    )
}

/// What was wrong with the scenario.
pub fn wrong_sentence(learned: &Learned, voice: &Voice) -> String {
    let mut wrong: Vec<&Estimate> = learned
        .estimates
        .iter()
        .filter(|estimate| estimate.is_known && estimate.is_refuted())
        .collect();
    noonday_engine::quantity::sort_few(&mut wrong, |one, other| {
        one.effect_k.abs() < other.effect_k.abs()
    });
    let phrases: Vec<String> = wrong
        .iter()
        .map(|estimate| {
            let shown = |value| amount(estimate.parameter, value, voice);
            let name = parameter_name(estimate.parameter).to_lowercase();
            format!(
                "{name} ({} instead of {})",
                shown(estimate.value),
                shown(estimate.entered)
            )
        })
        .collect();
    if !learned.follows() {
        return "No insulation, leak or heat capacity makes the calculated cabin follow this log. Something else was at work: sun on the sensor, doors or windows opened, a cooler or heater running, another sky, wind or parking direction than entered. Its values mean nothing and are not offered.".to_owned();
    }
    if learned.estimates.iter().all(|estimate| !estimate.is_known) {
        return "This log does not tell enough to confirm or refute what was entered.".to_owned();
    }
    if phrases.is_empty() {
        return "Nothing that was entered is refuted by this log.".to_owned();
    }
    format!("What was wrong: {}.", listed(&phrases))
}

/// Pairs that cannot be told apart; nothing where all can.
pub fn confounded_sentence(learned: &Learned) -> Option<String> {
    let pairs: Vec<String> = learned
        .confounded
        .iter()
        .map(|(one, other)| {
            format!(
                "{} and {}",
                parameter_name(*one).to_lowercase(),
                parameter_name(*other).to_lowercase()
            )
        })
        .collect();
    (!pairs.is_empty()).then(|| {
        format!(
            "This log cannot tell apart {}: more of one does the same as more or less of the other, and only what they do together is known. A log over a windy and a calm day, or a cooled and a free one, would part them.",
            pairs.join("; nor ")
        )
    })
}

/// The need on the scenario's own day, with the fitted values.
pub fn need_sentence(learned: &Learned, voice: &Voice) -> String {
    let [entered, fitted] = learned
        .unmet_k_h
        .map(|unmet| voice.units.degree_hours(unmet));
    if learned.unmet_k_h[1] <= 0.0 {
        return "With the fitted values the need is met on the scenario’s own day.".to_owned();
    }
    format!(
        "On the scenario’s own day too warm by {fitted} with the fitted values, {entered} with what was entered."
    )
}

/// What a change would do to the fitted scenario.
pub fn mend(effect: &LeverEffect, voice: &Voice) -> String {
    let name = lever_name(effect.lever);
    if effect.met {
        return format!("{name}: the need is then met");
    }
    let less = voice.units.degree_hours(-effect.degree_hours_change_k_h);
    format!("{name}: {less} less, still too warm")
}

/// The chart for those who do not see it.
pub fn curve_summary(learned: &Learned, voice: &Voice) -> String {
    let peak = |values: &[f64]| {
        voice
            .units
            .temperature(values.iter().copied().fold(f64::MIN, f64::max), 1)
    };
    format!(
        "Cabin air as logged, at most {}; as calculated with what was entered, at most {}; with the fitted values, at most {}. Below: logged less fitted.",
        peak(&learned.logged_c),
        peak(&learned.entered_c),
        peak(&learned.fitted_c)
    )
}

/// Direct labels of the lines.
pub const LINES: [&str; 3] = ["logged", "as entered", "as fitted"];
/// Label of the strip below.
pub const RESIDUALS: &str = "logged less fitted";
