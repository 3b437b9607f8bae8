//! Bodies: inner size of the room that is cooled, its windows and what stands in it.
//!
//! Sizes are rounded from what such bodies commonly have behind the front seats, windscreen included where the cab is open to the
//! room: common practice, no source. Furnishing grows with the floor, as in the example.

use super::{Library, Start, start};
use crate::scenario::document::StartingPoint as P;
use crate::scenario::field::Basis::CommonPractice;

pub(super) const KEY: &str = "starting.vehicle";

pub(super) const LIBRARY: Library = Library {
    key: KEY,
    sets: &[
        "vehicle.length_m",
        "vehicle.width_m",
        "vehicle.height_m",
        "vehicle.floor_above_ground_m",
        "vehicle.furnishing_heat_capacity_j_k",
        "vehicle.furnishing_area_m2",
        "glass.nose_area_m2",
        "glass.left_area_m2",
        "glass.right_area_m2",
        "glass.rear_area_m2",
        "glass.roof_area_m2",
    ],
    points: &POINTS,
};

// Length, width, height, floor above ground; furnishing's heat capacity and surface; glass of nose, left, right, rear, roof.
const POINTS: [Start; 11] = [
    start(
        P::CompactVan,
        CommonPractice,
        "1.8 1.4 1.15 0.45 70000 5 0.9 0.25 0.25 0.3 0",
    ),
    start(
        P::PassengerVan,
        CommonPractice,
        "2.8 1.6 1.3 0.45 150000 10 1.2 1.2 1.2 0.7 0",
    ),
    start(
        P::MediumVanLow,
        CommonPractice,
        "2.6 1.6 1.4 0.5 140000 9 1.2 0.4 0.4 0.4 0",
    ),
    start(
        P::MediumVanHigh,
        CommonPractice,
        "3.3 1.75 1.9 0.5 200000 12 1.2 0.5 0.5 0.4 0.16",
    ),
    start(
        P::LongVanHigh,
        CommonPractice,
        "4.3 1.78 1.95 0.55 260000 16 1.3 0.5 0.5 0.4 0.16",
    ),
    start(
        P::TruckCamper,
        CommonPractice,
        "3 2 1.95 0.9 220000 14 0.2 0.5 0.5 0.2 0.16",
    ),
    start(
        P::BoxCamper,
        CommonPractice,
        "4.5 2.1 2.05 0.95 320000 20 0.2 0.6 0.6 0.3 0.32",
    ),
    start(
        P::TeardropTrailer,
        CommonPractice,
        "2.4 1.5 1.2 0.45 90000 6 0 0.3 0.3 0 0.16",
    ),
    start(
        P::TravelTrailer,
        CommonPractice,
        "5.5 2.2 1.95 0.6 400000 24 0.7 1 1 0.5 0.32",
    ),
    start(
        P::CoachBuilt,
        CommonPractice,
        "6.5 2.2 2 0.7 500000 30 1.6 1.2 1.2 0.5 0.48",
    ),
    start(
        P::ConvertedBus,
        CommonPractice,
        "8.5 2.3 1.95 0.9 650000 38 2 3 3 0.8 0.32",
    ),
];
