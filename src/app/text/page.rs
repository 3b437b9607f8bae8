//! Wording of the page's fixed parts.

/// Name of the program.
pub const PROGRAM: &str = "Noonday";
/// Said should the page be unable to begin.
pub const CANNOT_START: &str = "The example cannot be calculated, so the page cannot begin.";
/// First stop of the keyboard.
pub const SKIP: &str = "Skip to the inputs";
/// Said of the example.
pub const EXAMPLE_NOTE: &str = "This is an example: vehicle, people and prices are invented. Every line can be opened and changed; the answer follows at once.";
/// Button: save under its name.
pub const SAVE: &str = "Save";
/// Button: list of saved scenarios.
pub const SCENARIOS: &str = "Scenarios";
/// Button: copy a link.
pub const COPY_LINK: (&str, &str) = ("Copy", " link");
/// Legend of the switch of units.
pub const UNITS: &str = "Units";
/// US units.
pub const UNITS_US: &str = "US";
/// Metric units.
pub const UNITS_METRIC: &str = "Metric";
/// Heading of the answer.
pub const ANSWER: &str = "The answer";
/// Heading of the charts.
pub const THE_DAY: &str = "The day";
/// Heading of the inputs.
pub const INPUTS: &str = "What it rests on";
/// Under that heading.
pub const INPUTS_NOTE: &str = "Every line can be opened and changed; the answer follows at once.";
/// Heading of the figures.
pub const LEDGER: &str = "The figures";
/// Where people or animals depend on the cooler.
pub const CAUTION_ANIMALS: &str = "Heat kills children and animals in parked vehicles within minutes, whatever a calculator says. Never rely on a cooler to keep them alive: it can stop at any moment.";
/// Where nobody but grown people is concerned.
pub const CAUTION_ALL: &str = "Heat kills children and animals in parked vehicles within minutes, whatever a calculator says. Never leave them in one, cooled or not.";
/// Button: why it matters.
pub const WHY: &str = "Why?";
/// Button: undo.
pub const UNDO: &str = "Undo";
/// Button: make a change again that was undone.
pub const REDO: &str = "Redo";
/// Name of the bar with these and the pin.
pub const AT_HAND: &str = "Changes";
/// Button: keep this state to compare with.
pub const PIN: &str = "Pin this";
/// The same while another is kept.
pub const PIN_ANEW: &str = "Pin anew";
/// Button: compare with nothing any more.
pub const UNPIN: &str = "Unpin";
/// Button: the device's own way of sending.
pub const SHARE: &str = "Share";
/// Button: close a message.
pub const DISMISS: &str = "Close";
/// Said when a newer version of the page is ready.
pub const NEW_VERSION: &str =
    "A new version of Noonday is ready. To use it, the page loads once more; your scenario stays.";
/// Button: use the new version.
pub const TAKE_VERSION: &str = "Use it now";
/// Button: go on with the present one.
pub const LATER: &str = "Later";
/// Link from the message to the entry.
pub const SHOW_ENTRY: &str = "Go to the entry";
/// Name of the slider of the hour.
pub const HOUR: &str = "Hour of the day";
/// How to use it.
pub const HOUR_HINT: &str = "Drag the sun along the day, or use the arrow keys, to read any hour";
/// Table of the samples.
pub const TABLE: &str = "The same as a table";

/// Title of the document.
pub fn document_title(name: &str) -> String {
    if name.trim().is_empty() {
        return PROGRAM.to_owned();
    }
    format!("{} · {PROGRAM}", name.trim())
}

/// Name shown where a scenario has none.
pub fn shown_name(name: &str) -> String {
    if name.trim().is_empty() {
        "Without a name".to_owned()
    } else {
        name.trim().to_owned()
    }
}

/// Accessible name of the button that puts back the example's value.
pub fn reset_label(label: &str, value: &str) -> String {
    format!("{}: {label}", reset_text(value))
}

/// Text of that button.
pub fn reset_text(value: &str) -> String {
    format!("Back to {value}")
}

/// What a step changed, by the name of its field.
pub fn step_name(field: Option<String>) -> String {
    field.unwrap_or_else(|| "the whole".to_owned())
}

/// Said while some entry cannot be run.
pub fn held(name: &str) -> String {
    format!("{name}: this entry cannot be used. Shown is the last state that could be calculated.")
}

/// Said in a closed group that holds entries which cannot be run.
pub fn needs_attention(count: usize) -> String {
    match count {
        1 => "One entry here cannot be used".to_owned(),
        count => format!("{count} entries here cannot be used"),
    }
}
