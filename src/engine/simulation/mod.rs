//! A run: a scenario made ready, passed through step by step, and what it leaves behind.

mod body;
mod build;
mod cooling;
mod environment;
mod failure;
mod inside;
mod interval;
mod observed;
mod painter;
mod power;
mod prepared;
mod recorder;
mod results;
mod roof;
mod run;
mod season;
mod steps;
mod sunshine;
mod timetable;
mod ventilation;

pub(crate) use body::insulation_of;
pub use body::{ShellPart, ribbed_wall};
pub use build::BuildError;
pub(crate) use cooling::airflow_fraction;
pub use failure::{FailingPart, Failure};
pub use observed::{Course, Observed};
pub(crate) use power::{bank_of, inverter_of};
pub use prepared::{FULL_STEPS_PER_MINUTE, Prepared, STEP_S, simulate};
pub(crate) use recorder::FELT_AIR_SPEED_M_S;
pub use results::{Balance, HeatPath, Results, Series, Stop, Totals};
pub use roof::{PanelYield, panel_yield, roof_plan};
pub use season::{Passage, Season};
pub use sunshine::{SunOnFaces, SunPlace, sun_on_faces, sun_over_day};
