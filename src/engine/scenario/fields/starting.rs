//! Which starting points were picked: rows of the fields table, each at the head of its group. Options stand in the order in
//! which they were added, since links may count them: new ones go to the end.

use super::{choice, position, set_at};
use crate::scenario::document::StartingPoint;
use crate::scenario::field::{Basis, Field, Group};

/// Options and their stable names.
const VEHICLE_OPTIONS: ([StartingPoint; 12], [&str; 12]) = (
    [
        StartingPoint::None,
        StartingPoint::CompactVan,
        StartingPoint::PassengerVan,
        StartingPoint::MediumVanLow,
        StartingPoint::MediumVanHigh,
        StartingPoint::LongVanHigh,
        StartingPoint::TruckCamper,
        StartingPoint::BoxCamper,
        StartingPoint::TeardropTrailer,
        StartingPoint::TravelTrailer,
        StartingPoint::CoachBuilt,
        StartingPoint::ConvertedBus,
    ],
    [
        "none",
        "compact_van",
        "passenger_van",
        "medium_van_low",
        "medium_van_high",
        "long_van_high",
        "truck_camper",
        "box_camper",
        "teardrop_trailer",
        "travel_trailer",
        "coach_built",
        "converted_bus",
    ],
);

/// Options and their stable names.
const SHELL_OPTIONS: ([StartingPoint; 15], [&str; 15]) = (
    [
        StartingPoint::None,
        StartingPoint::BareMetal,
        StartingPoint::FoilOnly,
        StartingPoint::Wool25,
        StartingPoint::Wool50,
        StartingPoint::Wool50Break,
        StartingPoint::Mineral50,
        StartingPoint::Elastomeric19,
        StartingPoint::Elastomeric38,
        StartingPoint::Board25,
        StartingPoint::Board50,
        StartingPoint::Sprayed40,
        StartingPoint::Cork20,
        StartingPoint::Sandwich30,
        StartingPoint::Sandwich50,
    ],
    [
        "none",
        "bare_metal",
        "foil_only",
        "wool_25",
        "wool_50",
        "wool_50_break",
        "mineral_50",
        "elastomeric_19",
        "elastomeric_38",
        "board_25",
        "board_50",
        "sprayed_40",
        "cork_20",
        "sandwich_30",
        "sandwich_50",
    ],
);

/// Options and their stable names.
const OCCUPANTS_OPTIONS: ([StartingPoint; 9], [&str; 9]) = (
    [
        StartingPoint::None,
        StartingPoint::OnePerson,
        StartingPoint::Couple,
        StartingPoint::CoupleAndDog,
        StartingPoint::Family,
        StartingPoint::AtWorkInside,
        StartingPoint::DriverByDay,
        StartingPoint::DogByDay,
        StartingPoint::TwoDogsByDay,
    ],
    [
        "none",
        "one_person",
        "couple",
        "couple_and_dog",
        "family",
        "at_work_inside",
        "driver_by_day",
        "dog_by_day",
        "two_dogs_by_day",
    ],
);

/// Options and their stable names.
const PLACE_OPTIONS: ([StartingPoint; 15], [&str; 15]) = (
    [
        StartingPoint::None,
        StartingPoint::HotDesert,
        StartingPoint::GulfDesert,
        StartingPoint::HumidCoast,
        StartingPoint::HumidPlain,
        StartingPoint::ContinentalPlain,
        StartingPoint::HighPlateau,
        StartingPoint::MediterraneanInland,
        StartingPoint::MediterraneanCoast,
        StartingPoint::CentralHotSpell,
        StartingPoint::MildMaritime,
        StartingPoint::NorthernSummer,
        StartingPoint::Tropical,
        StartingPoint::SouthernDry,
        StartingPoint::SouthernCoast,
    ],
    [
        "none",
        "hot_desert",
        "gulf_desert",
        "humid_coast",
        "humid_plain",
        "continental_plain",
        "high_plateau",
        "mediterranean_inland",
        "mediterranean_coast",
        "central_hot_spell",
        "mild_maritime",
        "northern_summer",
        "tropical",
        "southern_dry",
        "southern_coast",
    ],
);

/// Options and their stable names.
const COOLER_OPTIONS: ([StartingPoint; 9], [&str; 9]) = (
    [
        StartingPoint::None,
        StartingPoint::NoCooler,
        StartingPoint::RoofSmall,
        StartingPoint::RoofMedium,
        StartingPoint::RoofLarge,
        StartingPoint::RoofFixedSpeed,
        StartingPoint::RoofMains,
        StartingPoint::RoomSmall,
        StartingPoint::RoomVariable,
    ],
    [
        "none",
        "no_cooler",
        "roof_small",
        "roof_medium",
        "roof_large",
        "roof_fixed_speed",
        "roof_mains",
        "room_small",
        "room_variable",
    ],
);

/// Options and their stable names.
const BATTERY_OPTIONS: ([StartingPoint; 12], [&str; 12]) = (
    [
        StartingPoint::None,
        StartingPoint::Lithium12V100,
        StartingPoint::Lithium12V200,
        StartingPoint::Lithium12V400,
        StartingPoint::Lithium12V600,
        StartingPoint::Lithium24V200,
        StartingPoint::Lithium24V400,
        StartingPoint::Lithium48V100,
        StartingPoint::Lithium48V200,
        StartingPoint::GlassMat12V200,
        StartingPoint::GlassMat24V200,
        StartingPoint::Flooded12V220,
    ],
    [
        "none",
        "lithium_12v_100",
        "lithium_12v_200",
        "lithium_12v_400",
        "lithium_12v_600",
        "lithium_24v_200",
        "lithium_24v_400",
        "lithium_48v_100",
        "lithium_48v_200",
        "glass_mat_12v_200",
        "glass_mat_24v_200",
        "flooded_12v_220",
    ],
);

/// Field at the head of [`Group::Vehicle`].
pub(super) const VEHICLE: &[Field] = &[Field {
    id: 380,
    key: "starting.vehicle",
    group: Group::Vehicle,
    kind: choice(
        &VEHICLE_OPTIONS.1,
        |d| position(&VEHICLE_OPTIONS.0, d.starting.vehicle),
        |d, i| set_at(&VEHICLE_OPTIONS.0, i, &mut d.starting.vehicle),
    ),
    basis: Basis::Example,
}];

/// Field at the head of [`Group::Shell`].
pub(super) const SHELL: &[Field] = &[Field {
    id: 381,
    key: "starting.shell",
    group: Group::Shell,
    kind: choice(
        &SHELL_OPTIONS.1,
        |d| position(&SHELL_OPTIONS.0, d.starting.shell),
        |d, i| set_at(&SHELL_OPTIONS.0, i, &mut d.starting.shell),
    ),
    basis: Basis::Example,
}];

/// Field at the head of [`Group::Occupants`].
pub(super) const OCCUPANTS: &[Field] = &[Field {
    id: 382,
    key: "starting.occupants",
    group: Group::Occupants,
    kind: choice(
        &OCCUPANTS_OPTIONS.1,
        |d| position(&OCCUPANTS_OPTIONS.0, d.starting.occupants),
        |d, i| set_at(&OCCUPANTS_OPTIONS.0, i, &mut d.starting.occupants),
    ),
    basis: Basis::Example,
}];

/// Field at the head of [`Group::Place`].
pub(super) const PLACE: &[Field] = &[Field {
    id: 383,
    key: "starting.place",
    group: Group::Place,
    kind: choice(
        &PLACE_OPTIONS.1,
        |d| position(&PLACE_OPTIONS.0, d.starting.place),
        |d, i| set_at(&PLACE_OPTIONS.0, i, &mut d.starting.place),
    ),
    basis: Basis::Example,
}];

/// Field at the head of [`Group::Cooler`].
pub(super) const COOLER: &[Field] = &[Field {
    id: 384,
    key: "starting.cooler",
    group: Group::Cooler,
    kind: choice(
        &COOLER_OPTIONS.1,
        |d| position(&COOLER_OPTIONS.0, d.starting.cooler),
        |d, i| set_at(&COOLER_OPTIONS.0, i, &mut d.starting.cooler),
    ),
    basis: Basis::Example,
}];

/// Field at the head of [`Group::Battery`].
pub(super) const BATTERY: &[Field] = &[Field {
    id: 385,
    key: "starting.battery",
    group: Group::Battery,
    kind: choice(
        &BATTERY_OPTIONS.1,
        |d| position(&BATTERY_OPTIONS.0, d.starting.battery),
        |d, i| set_at(&BATTERY_OPTIONS.0, i, &mut d.starting.battery),
    ),
    basis: Basis::Example,
}];
