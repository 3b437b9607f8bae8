//! Sun.
use serde::{Deserialize, Serialize};
/// A day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Date {
    /// Year.
    pub year: i32,
    /// Month.
    pub month: u8,
    /// Day.
    pub day: u8,
}

impl Date {
    /// Whether it exists.
    pub fn exists(self) -> bool {
        (1..=12).contains(&self.month) && (1..=28).contains(&self.day)
    }
}
