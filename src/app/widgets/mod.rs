//! Parts of the page around the consult: its head, its messages and the list of saved scenarios.

mod disclosure;
mod masthead;
mod notices;
#[allow(dead_code, reason = "what shows it comes next")]
pub mod quick_response;
mod sheet;
mod shelf;
mod since;
mod worked;

pub use disclosure::{disclosed, disclosure};
pub use masthead::Masthead;
pub use notices::Notices;
pub use sheet::{Row, paragraph, plain, sheet, together};
pub use since::since_pinned;
pub use worked::worked_list;
