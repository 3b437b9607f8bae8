//! The scenario: one document that holds the whole of a consult, the table of its fields, its validation, its example and
//! its form in a link.

mod document;
mod example;
mod field;
mod fields;
pub mod file;
mod file_day;
mod grain;
mod link;
mod packed;
mod rating;
pub mod starting_points;
mod validate;

pub use document::*;
pub use example::example;
pub use field::{
    Basis, ChoiceField, DateField, Dimension, Field, Group, Kind, NumberField, SwitchField,
    TextField,
};
pub use fields::{field, fields, fields_of};
pub use file_day::{TakenDay, take_file_day};
pub use link::{LONGEST_LINK_BYTES, LinkError, from_link, to_link};
pub use packed::{LONGEST_SHARED_LINK, from_any_link, from_packed, to_share_link};
pub use rating::{cooler_rating, plate_assessment};
pub use validate::{FieldError, Problem, Scenario};
