//! Messages about what is saved, opened and shared.

/// Said when the browser keeps nothing.
pub const BLOCKED: &str = "This browser keeps nothing for this page, so scenarios cannot be saved. A copied link holds everything.";
/// Said when there is no room.
pub const FULL: &str = "There is no room left in this browser’s storage, so this was not saved. Delete a scenario, or copy the link: it holds everything.";
/// Said when nothing is saved yet.
pub const NONE: &str = "Nothing is saved yet. “Save” keeps the scenario shown under its name.";
/// Heading of the list.
pub const LIST: &str = "Saved in this browser";
/// Button: open.
pub const OPEN: &str = "Open";
/// Button: rename.
pub const RENAME: &str = "Rename";
/// Button: duplicate.
pub const DUPLICATE: &str = "Duplicate";
/// Button: delete.
pub const DELETE: &str = "Delete";
/// Button: done renaming.
pub const DONE: &str = "Done";
/// Button: do not rename.
pub const CANCEL: &str = "Cancel";
/// Label of the box with the new name.
pub const NEW_NAME: &str = "New name";
/// Button: start again from the example.
pub const EXAMPLE: &str = "Open the example";
/// Said of a scenario that came in a link.
pub const FROM_LINK: &str = "Opened from a link. Your own scenario is untouched.";
/// Button: make it one's own.
pub const KEEP: &str = "Keep this one";
/// Button: return.
pub const BACK: &str = "Back to mine";
/// Said when a link was copied.
pub const COPIED: &str = "The link is copied. It holds the whole scenario.";
/// Said when it could not be copied.
pub const COPY_BY_HAND: &str = "The browser does not allow copying. Here is the link, selected:";
/// Said when another tab has changed what is one's own.
pub const BESIDE: &str = "Another tab has changed your scenario since this one showed it, so this one keeps nothing more until you choose. The one that gives way is put among the saved ones.";
/// Button: what the other tab has.
pub const TAKE_THEIRS: &str = "Show the other tab’s";
/// Button: what this tab has.
pub const KEEP_MINE: &str = "Keep this one’s";
/// Label of the box with a link or a stored text.
pub const RAW: &str = "Its text, to copy";

/// Said when a scenario was saved.
pub fn saved(name: &str) -> String {
    format!("Saved as “{name}”.")
}

/// Said when a saved scenario was replaced.
pub fn replaced(name: &str) -> String {
    format!("“{name}” was saved before and is now replaced.")
}

/// Said when a scenario was opened.
pub fn opened(name: &str) -> String {
    format!("Opened “{name}”.")
}

/// Said when a scenario was deleted.
pub fn deleted(name: &str) -> String {
    format!("Deleted “{name}”.")
}

/// Said when a scenario was renamed.
pub fn renamed(name: &str) -> String {
    format!("It is now called “{name}”.")
}

/// Said when a scenario was duplicated.
pub fn duplicated(name: &str) -> String {
    format!("Saved a second one as “{name}”.")
}

/// Said when a linked scenario was kept and one's own had to be put by.
pub fn kept(own: &str) -> String {
    format!("Kept. What you had before is saved as “{own}”.")
}

/// Said when a linked scenario was kept.
pub const KEPT: &str = "Kept. It is now your own.";

/// Said when the other tab's scenario is shown, and what was shown here had to be put by.
pub fn took_theirs(own: Option<&str>) -> String {
    match own {
        Some(own) => format!("This is the other tab’s. What this tab had is saved as “{own}”."),
        None => "This is the other tab’s.".to_owned(),
    }
}

/// Said when this tab's scenario is kept, and the other's had to be put by.
pub fn kept_mine(theirs: Option<&str>) -> String {
    match theirs {
        Some(theirs) => format!("Kept. What the other tab had is saved as “{theirs}”."),
        None => "Kept. It is your own scenario in every tab that is opened now.".to_owned(),
    }
}

/// Said when what the other tab left cannot be read; `why` is a clause.
pub fn unreadable_theirs(why: &str) -> String {
    format!("What the other tab has cannot be read here: {why}. It is left as it is.")
}

/// Said of a stored visit that cannot be read; `why` is a clause.
pub fn damaged_visit(why: &str) -> String {
    format!(
        "The scenario from a link that was shown here last cannot be read: {why}. It is kept as it is, among the saved ones."
    )
}

/// Said of a stored log that cannot be read.
pub const DAMAGED_LOG: &str =
    "The logged day that was kept cannot be read. It is kept as it is, among the saved scenarios.";

/// Name for a copy.
pub fn copy_name(name: &str, number: usize) -> String {
    format!("{name} ({number})")
}

/// Said of a link that cannot be read; `why` is a clause.
pub fn damaged_link(why: &str) -> String {
    format!("The link cannot be opened: {why}. Nothing of yours was changed.")
}

/// Said of a stored working state that cannot be read; `why` is a clause.
pub fn damaged_working(why: &str) -> String {
    format!(
        "What you worked on last cannot be read: {why}. It is kept as it is, among the saved ones; the example is shown."
    )
}

/// Said of a saved entry that cannot be read; `why` is a clause.
pub fn damaged_entry(why: &str) -> String {
    format!("This entry cannot be read: {why}. It is kept as it is.")
}

/// Clause for a stored text that is no entry at all.
pub const NOT_AN_ENTRY: &str = "it is not in the form in which this page saves";

/// Clause for a scenario that reads well but cannot be run.
pub fn cannot_run(first_error: &str) -> String {
    format!(
        "one of its values cannot be run ({})",
        first_error.trim_end_matches('.')
    )
}

/// When an entry was saved.
pub fn saved_at(date: &str) -> String {
    if date.is_empty() {
        "put by as it stood".to_owned()
    } else {
        format!("saved {date}")
    }
}
