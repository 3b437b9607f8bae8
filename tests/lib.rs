//! Shared helpers of the reference checks.
//!
//! The tables stand in `reference/`, each with a header comment that names its source. A check that
//! reads nothing proves nothing, so reading a table without rows is a failure, and so is asking for
//! a column or a number that is not there.

pub mod checks;
pub mod readers;
pub mod scenarios;
pub mod sound;
pub mod thermal_box;

use checks::Check;
use std::collections::HashMap;
use std::path::PathBuf;

/// A table of reference values, its columns found by name.
pub struct Table {
    name: String,
    columns: HashMap<String, usize>,
    records: Vec<csv::StringRecord>,
}

/// One row of a [`Table`].
#[derive(Clone, Copy)]
pub struct Row<'table> {
    table: &'table Table,
    index: usize,
}

impl Table {
    /// Reads `reference/<name>`, leaving out comment lines (`#`) and accepting quoted fields.
    ///
    /// # Panics
    /// If the file cannot be read or has no rows.
    #[must_use]
    #[expect(
        clippy::panic,
        clippy::expect_used,
        reason = "a test helper fails the test"
    )]
    pub fn read(name: &str) -> Self {
        let path = reference_path(name);
        let mut reader = csv::ReaderBuilder::new()
            .comment(Some(b'#'))
            .flexible(true)
            .from_path(&path)
            .unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        let header = reader.headers().expect("a header line");
        let columns = header.iter().map(str::to_owned).zip(0..).collect();
        let records: Vec<_> = reader
            .records()
            .collect::<Result<_, _>>()
            .unwrap_or_else(|error| panic!("{name}: {error}"));
        assert!(!records.is_empty(), "{name} has no rows");
        let name = name.to_owned();
        Self {
            name,
            columns,
            records,
        }
    }

    /// The rows in the order of the file.
    pub fn rows(&self) -> impl ExactSizeIterator<Item = Row<'_>> {
        (0..self.records.len()).map(|index| Row { table: self, index })
    }
}

impl<'table> Row<'table> {
    /// The text in a column.
    ///
    /// # Panics
    /// If the column does not exist or the row ends before it.
    #[must_use]
    #[expect(clippy::panic, reason = "a test helper fails the test")]
    pub fn text(self, column: &str) -> &'table str {
        let Table {
            name,
            columns,
            records,
        } = self.table;
        columns
            .get(column)
            .and_then(|&position| records[self.index].get(position))
            .unwrap_or_else(|| panic!("{name} row {}: no column {column}", self.index))
    }

    /// The number in a column.
    ///
    /// # Panics
    /// If the column does not exist or does not hold a number.
    #[must_use]
    #[expect(clippy::panic, reason = "a test helper fails the test")]
    pub fn number(self, column: &str) -> f64 {
        let text = self.text(column);
        let name = &self.table.name;
        text.trim()
            .parse()
            .unwrap_or_else(|_| panic!("{name} row {}: {column} is {text:?}", self.index))
    }
}

/// The path of a file in `reference/`.
#[must_use]
pub fn reference_path(name: &str) -> PathBuf {
    [env!("CARGO_MANIFEST_DIR"), "reference", name]
        .iter()
        .collect()
}

/// The path of a file in `golden/`.
#[must_use]
pub fn golden_path(name: &str) -> PathBuf {
    [env!("CARGO_MANIFEST_DIR"), "golden", name]
        .iter()
        .collect()
}

/// The largest error met while a check walks its rows, and the row that gave it.
#[derive(Debug, Default)]
pub struct Worst {
    error: f64,
    label: String,
    count: usize,
}

impl Worst {
    /// Takes in one error (its sign does not matter; not-a-number counts as infinite).
    pub fn note(&mut self, error: f64, label: impl std::fmt::Display) {
        self.count += 1;
        let error = if error.is_nan() {
            f64::INFINITY
        } else {
            error.abs()
        };
        if error > self.error {
            self.error = error;
            self.label = label.to_string();
        }
    }

    /// What the walk came to, against what is allowed.
    #[must_use]
    pub fn check(&self, quantity: impl Into<String>, allowed: f64, source: &'static str) -> Check {
        Check {
            quantity: quantity.into(),
            source,
            points: self.count,
            worst: self.error,
            worst_at: self.label.clone(),
            allowed,
        }
    }
}
