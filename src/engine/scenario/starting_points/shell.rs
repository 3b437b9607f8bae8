//! Build-ups of the shell. Thicknesses are those in which the materials are sold, shares filled are guesses at how well each
//! follows a curved and ribbed wall: common practice, no source. What the materials conduct has its source in
//! `envelope::materials`.

use super::{Library, Start, start};
use crate::scenario::document::StartingPoint as P;
use crate::scenario::field::Basis::CommonPractice;

pub(super) const KEY: &str = "starting.shell";

pub(super) const LIBRARY: Library = Library {
    key: KEY,
    sets: &[
        "shell.insulation_material",
        "shell.roof_insulation_m",
        "shell.wall_insulation_m",
        "shell.floor_insulation_m",
        "shell.filled_share",
        "shell.rib_spacing_m",
        "shell.thermal_break_m",
        "shell.lining_thickness_m",
        "shell.floor_board_m",
    ],
    points: &POINTS,
};

// Material; insulation of roof, walls, floor; share filled; ribs apart; strip over ribs; lining; floor board. Sandwich panels have
// no ribs: they get the widest spacing that the model takes. Bare metal gets the thinnest lining.
const POINTS: [Start; 14] = [
    start(
        P::BareMetal,
        CommonPractice,
        "mineral_wool 0 0 0 1 0.6 0 0.002 0.009",
    ),
    start(
        P::FoilOnly,
        CommonPractice,
        "bubble_foil 0.004 0.004 0 0.8 0.6 0 0.004 0.009",
    ),
    start(
        P::Wool25,
        CommonPractice,
        "sheep_wool 0.025 0.025 0.01 0.9 0.6 0 0.006 0.012",
    ),
    start(
        P::Wool50,
        CommonPractice,
        "sheep_wool 0.05 0.05 0.02 0.9 0.6 0 0.006 0.012",
    ),
    start(
        P::Wool50Break,
        CommonPractice,
        "sheep_wool 0.05 0.05 0.025 0.95 0.6 0.01 0.006 0.012",
    ),
    start(
        P::Mineral50,
        CommonPractice,
        "mineral_wool 0.05 0.05 0.02 0.9 0.6 0 0.006 0.012",
    ),
    start(
        P::Elastomeric19,
        CommonPractice,
        "elastomeric_foam 0.019 0.019 0.01 0.95 0.6 0 0.006 0.012",
    ),
    start(
        P::Elastomeric38,
        CommonPractice,
        "elastomeric_foam 0.038 0.038 0.019 0.95 0.6 0 0.006 0.012",
    ),
    start(
        P::Board25,
        CommonPractice,
        "extruded_polystyrene 0.025 0.025 0.025 0.8 0.6 0 0.006 0.012",
    ),
    start(
        P::Board50,
        CommonPractice,
        "polyurethane_board 0.05 0.05 0.03 0.8 0.6 0 0.006 0.012",
    ),
    start(
        P::Sprayed40,
        CommonPractice,
        "spray_foam 0.04 0.04 0.025 0.98 0.6 0 0.006 0.012",
    ),
    start(
        P::Cork20,
        CommonPractice,
        "cork 0.02 0.02 0.01 0.9 0.6 0 0.006 0.012",
    ),
    start(
        P::Sandwich30,
        CommonPractice,
        "extruded_polystyrene 0.03 0.03 0.03 1 2 0 0.003 0.009",
    ),
    start(
        P::Sandwich50,
        CommonPractice,
        "polyurethane_board 0.05 0.05 0.05 1 2 0 0.003 0.012",
    ),
];
