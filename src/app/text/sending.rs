//! What is said of sending a scenario to somebody, and what came with one.

use noonday_engine::scenario::ScenarioDocument;

/// Heading.
pub const TITLE: &str = "To somebody else";
/// Button that opens it; on a narrow screen only the first part is seen.
pub const OPEN: (&str, &str) = ("QR", " code and note");
/// What becomes of the entries.
pub const SAID_NOTE: &str = "The link carries this as plain text, and whoever opens it sees it first. Anybody who has the link can read it.";
/// Name of the code.
pub const CODE: &str = "QR code of the link to this scenario";
/// Said where no code can hold the link.
pub const TOO_LONG: &str =
    "The link is too long for a code. It can still be copied; a shorter note makes it shorter.";
/// Button: close.
pub const CLOSE: &str = "Close";

/// Under the code; `characters` of the whole address.
pub fn code_caption(characters: usize) -> String {
    format!(
        "Point the camera of a phone at it: it opens this scenario there. The whole link has {characters} characters; what it says stays \
         in the browser and reaches no server."
    )
}

/// What may be entered into a text; why it counts otherwise than the eye is said where it does.
pub fn room(text: &str, room_bytes: usize) -> String {
    let used_bytes = text.len();
    let why = if text.is_ascii() {
        ""
    } else {
        ": accented letters count two, those of other scripts and small pictures three or four"
    };
    format!("{used_bytes} of {room_bytes} letters used{why}.")
}

/// What was said with a scenario, each with its name.
pub fn said(document: &ScenarioDocument) -> Vec<(&'static str, String)> {
    [
        ("For", &document.recipient),
        ("From", &document.sender),
        ("Note", &document.note),
    ]
    .into_iter()
    .map(|(name, text)| (name, text.trim().to_owned()))
    .filter(|(_, text)| !text.is_empty())
    .collect()
}

/// For and from whom, in a line among the inputs.
pub fn for_and_from(document: &ScenarioDocument) -> String {
    match (document.recipient.trim(), document.sender.trim()) {
        ("", "") => String::new(),
        (recipient, "") => format!(" For {recipient}."),
        ("", sender) => format!(" From {sender}."),
        (recipient, sender) => format!(" For {recipient}, from {sender}."),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::example;

    #[test]
    fn only_what_was_said_is_shown() {
        let mut document = example();
        assert_eq!(said(&document), []);
        assert_eq!(for_and_from(&document), "");
        document.sender = "Sam".to_owned();
        document.note = " \n".to_owned();
        assert_eq!(said(&document), [("From", "Sam".to_owned())]);
        assert_eq!(room("Sam", 40), "3 of 40 letters used.");
        assert!(room("Zoë", 40).starts_with("4 of 40 letters used: accented"));
        document.recipient = "Maria".to_owned();
        assert_eq!(for_and_from(&document), " For Maria, from Sam.");
    }
}
