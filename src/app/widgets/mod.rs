//! Parts of the page around the consult: its head, its messages and the list of saved scenarios.

mod disclosure;
mod masthead;
mod notices;
mod progress;
pub mod quick_response;
mod sending;
mod sheet;
mod shelf;
mod since;
mod worked;

pub use disclosure::{disclosed, disclosure};
pub use masthead::Masthead;
pub use notices::Notices;
pub use progress::progress;
pub use sheet::{Row, paragraph, plain, sheet, together};
pub use since::since_pinned;
pub use worked::worked_list;
