//! What stands on the roof: where it fits, what it weighs, how the wind pulls at it and where its shadow falls.
//!
//! The roof is a level rectangle, everything on it an upright box with its sides along and across the vehicle. Places are
//! measured from the front edge and from the left edge of the usable roof; directions are those of the vehicle: right, ahead, up.
//! Panels lie at the level of the roof, throw no shadow of their own and are shaded by unit, fan and hatches as closed boxes.
//!
//! *Limits.* Curved roofs, gutters, tilted panels and opened lids are left out, and so is the share of the sky that a box hides.
//! The share of a panel that is shaded counts for its loss; cells in series lose more than that share.

mod arrangement;
mod load;
mod plan;
mod rectangle;
mod shading;

pub use arrangement::{Arrangement, arrange};
pub use load::{
    AIR_DENSITY_KG_M3, BOUNCE_G, BRAKING_G, CORNERING_G, DRAG_COEFFICIENT, RoofLoad,
    frontal_area_m2, inertia_n, roof_load, wind_drag_n,
};
pub use plan::{Finding, Item, ItemKind, PANEL_GAP_M, Plan, findings, free_area_m2, ribs_m};
pub use rectangle::Rectangle;
pub use shading::{Caster, Shadow, shaded_share};
