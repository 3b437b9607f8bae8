//! Scenarios as a file: JSON that says what it is and of which version, with each document written out in full.
//!
//! ```json
//! { "format": "noonday-scenarios", "version": 1, "scenarios": [ { "saved": "2026-07-21T10:00:00Z", "document": { … } } ] }
//! ```
//!
//! A document is nested by the keys of the fields table: every value stands at the path that is its field's key. A value that is missing is that of the document's version, so that files of an older build can be read and a file written
//! by hand may name only what differs. A member that is unknown, stands twice or holds something else is an error that names it;
//! so is a version that this build does not know. Nothing is guessed. Numbers read back to the same bits.

mod json;
mod read;
mod write;

pub use read::from_file;
pub use write::to_file;

use super::validate::{FieldError, Scenario};

/// What a file says it is.
pub const FILE_FORMAT: &str = "noonday-scenarios";

/// Version of the file's own form, apart from that of the documents in it.
pub const FILE_VERSION: u32 = 1;

/// Largest file that is read, bytes: more than [`MOST_SCENARIOS`] documents take.
pub const LARGEST_FILE_BYTES: usize = 8 * 1024 * 1024;

/// Most scenarios in one file.
pub const MOST_SCENARIOS: usize = 300;

/// A scenario of a file, valid and ready to run.
#[derive(Clone, Debug, PartialEq)]
pub struct Filed {
    /// When it was saved, in universal time as RFC 3339 writes it (`2026-07-21T10:00:00Z`); not known of one that never was.
    pub saved: Option<String>,
    /// The scenario.
    pub scenario: Scenario,
}

/// A scenario of a file, or why it cannot be read.
#[derive(Clone, Debug, PartialEq)]
pub struct FileEntry {
    /// Its name, where that can be read.
    pub name: Option<String>,
    /// The scenario, or what is wrong with it.
    pub read: Result<Filed, EntryError>,
}

/// Why a whole file cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileError {
    /// Larger than [`LARGEST_FILE_BYTES`].
    TooLarge {
        /// Its size in bytes.
        bytes: usize,
    },
    /// Not JSON (RFC 8259).
    NotJson {
        /// Line of the first mistake, counted from 1.
        line: usize,
        /// Column of it.
        column: usize,
    },
    /// JSON, but not a file of scenarios.
    OtherFormat,
    /// A version that this build does not know.
    UnknownVersion {
        /// The version as written.
        version: String,
    },
    /// A member that files of this version do not have, or have once, or that holds something else.
    Member {
        /// Its name.
        name: String,
    },
    /// More scenarios than [`MOST_SCENARIOS`].
    TooMany,
}

/// Why one scenario of a file cannot be read.
#[derive(Clone, Debug, PartialEq)]
pub enum EntryError {
    /// Not a scenario with a document in it.
    NoDocument,
    /// A document whose version this build does not know.
    UnknownVersion {
        /// The version as written.
        version: String,
    },
    /// A member that documents of this version do not have.
    UnknownMember {
        /// Its path.
        path: String,
    },
    /// The same member twice.
    Twice {
        /// Its path.
        path: String,
    },
    /// A member that holds another kind of thing, or an option that does not exist.
    Unreadable {
        /// Its path.
        path: String,
        /// What stands there, shortened.
        found: String,
    },
    /// A document that can be read but not run.
    Invalid(Vec<FieldError>),
}

#[cfg(test)]
mod tests;
