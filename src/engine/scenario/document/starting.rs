//! From which starting point each part of the consult was filled in.

use serde::{Deserialize, Serialize};

/// A starting point of the project's own library, or none. What each sets stands in `scenario::starting_points`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum StartingPoint {
    /// Entered by hand.
    #[serde(rename = "none")]
    None,
    /// Compact panel van.
    #[serde(rename = "compact_van")]
    CompactVan,
    /// Van with seats and windows all round.
    #[serde(rename = "passenger_van")]
    PassengerVan,
    /// Medium panel van, standard roof.
    #[serde(rename = "medium_van_low")]
    MediumVanLow,
    /// Medium panel van, high roof.
    #[serde(rename = "medium_van_high")]
    MediumVanHigh,
    /// Long panel van, high roof.
    #[serde(rename = "long_van_high")]
    LongVanHigh,
    /// Cabin carried on a pickup's bed.
    #[serde(rename = "truck_camper")]
    TruckCamper,
    /// Box body on a light truck.
    #[serde(rename = "box_camper")]
    BoxCamper,
    /// Small sleeping trailer.
    #[serde(rename = "teardrop_trailer")]
    TeardropTrailer,
    /// Trailer to live in.
    #[serde(rename = "travel_trailer")]
    TravelTrailer,
    /// Coach-built motorhome.
    #[serde(rename = "coach_built")]
    CoachBuilt,
    /// Converted bus.
    #[serde(rename = "converted_bus")]
    ConvertedBus,
    /// No insulation.
    #[serde(rename = "bare_metal")]
    BareMetal,
    /// Bubble foil alone.
    #[serde(rename = "foil_only")]
    FoilOnly,
    /// Sheep wool, 25 mm.
    #[serde(rename = "wool_25")]
    Wool25,
    /// Sheep wool, 50 mm.
    #[serde(rename = "wool_50")]
    Wool50,
    /// Sheep wool, 50 mm, with a strip over the ribs.
    #[serde(rename = "wool_50_break")]
    Wool50Break,
    /// Mineral wool, 50 mm.
    #[serde(rename = "mineral_50")]
    Mineral50,
    /// Elastomeric foam, 19 mm.
    #[serde(rename = "elastomeric_19")]
    Elastomeric19,
    /// Elastomeric foam, two layers of 19 mm.
    #[serde(rename = "elastomeric_38")]
    Elastomeric38,
    /// Extruded polystyrene boards, 25 mm.
    #[serde(rename = "board_25")]
    Board25,
    /// Polyurethane boards, 50 mm.
    #[serde(rename = "board_50")]
    Board50,
    /// Sprayed foam, 40 mm.
    #[serde(rename = "sprayed_40")]
    Sprayed40,
    /// Cork boards, 20 mm.
    #[serde(rename = "cork_20")]
    Cork20,
    /// Sandwich panels, 30 mm.
    #[serde(rename = "sandwich_30")]
    Sandwich30,
    /// Sandwich panels, 50 mm.
    #[serde(rename = "sandwich_50")]
    Sandwich50,
    /// One person, in from evening to morning.
    #[serde(rename = "one_person")]
    OnePerson,
    /// Two people, in from evening to morning.
    #[serde(rename = "couple")]
    Couple,
    /// Two people and a dog, which stays in by day.
    #[serde(rename = "couple_and_dog")]
    CoupleAndDog,
    /// Two adults and a child, in from evening to morning.
    #[serde(rename = "family")]
    Family,
    /// One person who works and sleeps in it.
    #[serde(rename = "at_work_inside")]
    AtWorkInside,
    /// A driver who works at night and sleeps by day.
    #[serde(rename = "driver_by_day")]
    DriverByDay,
    /// A dog left alone for some hours.
    #[serde(rename = "dog_by_day")]
    DogByDay,
    /// Two dogs left alone for some hours.
    #[serde(rename = "two_dogs_by_day")]
    TwoDogsByDay,
    /// Hot desert.
    #[serde(rename = "hot_desert")]
    HotDesert,
    /// Hot desert by a warm sea.
    #[serde(rename = "gulf_desert")]
    GulfDesert,
    /// Humid subtropical coast.
    #[serde(rename = "humid_coast")]
    HumidCoast,
    /// Humid subtropical plain.
    #[serde(rename = "humid_plain")]
    HumidPlain,
    /// Inland continental plain.
    #[serde(rename = "continental_plain")]
    ContinentalPlain,
    /// Dry high plateau.
    #[serde(rename = "high_plateau")]
    HighPlateau,
    /// Inland Mediterranean valley.
    #[serde(rename = "mediterranean_inland")]
    MediterraneanInland,
    /// Mediterranean coast.
    #[serde(rename = "mediterranean_coast")]
    MediterraneanCoast,
    /// Inland temperate, hot spell.
    #[serde(rename = "central_hot_spell")]
    CentralHotSpell,
    /// Mild maritime.
    #[serde(rename = "mild_maritime")]
    MildMaritime,
    /// Northern summer with long days.
    #[serde(rename = "northern_summer")]
    NorthernSummer,
    /// Tropical, near the equator.
    #[serde(rename = "tropical")]
    Tropical,
    /// Southern hemisphere, dry summer.
    #[serde(rename = "southern_dry")]
    SouthernDry,
    /// Southern hemisphere, humid coast.
    #[serde(rename = "southern_coast")]
    SouthernCoast,
    /// No cooler at all.
    #[serde(rename = "no_cooler")]
    NoCooler,
    /// Roof unit on direct current, small.
    #[serde(rename = "roof_small")]
    RoofSmall,
    /// Roof unit on direct current, medium.
    #[serde(rename = "roof_medium")]
    RoofMedium,
    /// Roof unit on direct current, large.
    #[serde(rename = "roof_large")]
    RoofLarge,
    /// Roof unit on direct current, on or off.
    #[serde(rename = "roof_fixed_speed")]
    RoofFixedSpeed,
    /// Roof unit on mains voltage.
    #[serde(rename = "roof_mains")]
    RoofMains,
    /// Small room unit on mains voltage.
    #[serde(rename = "room_small")]
    RoomSmall,
    /// Room unit of variable speed on mains voltage.
    #[serde(rename = "room_variable")]
    RoomVariable,
    /// Lithium iron phosphate, 12 V, 100 Ah.
    #[serde(rename = "lithium_12v_100")]
    Lithium12V100,
    /// Lithium iron phosphate, 12 V, 200 Ah.
    #[serde(rename = "lithium_12v_200")]
    Lithium12V200,
    /// Lithium iron phosphate, 12 V, 400 Ah.
    #[serde(rename = "lithium_12v_400")]
    Lithium12V400,
    /// Lithium iron phosphate, 12 V, 600 Ah.
    #[serde(rename = "lithium_12v_600")]
    Lithium12V600,
    /// Lithium iron phosphate, 24 V, 200 Ah.
    #[serde(rename = "lithium_24v_200")]
    Lithium24V200,
    /// Lithium iron phosphate, 24 V, 400 Ah.
    #[serde(rename = "lithium_24v_400")]
    Lithium24V400,
    /// Lithium iron phosphate, 48 V, 100 Ah.
    #[serde(rename = "lithium_48v_100")]
    Lithium48V100,
    /// Lithium iron phosphate, 48 V, 200 Ah.
    #[serde(rename = "lithium_48v_200")]
    Lithium48V200,
    /// Lead-acid glass mat, 12 V, 200 Ah.
    #[serde(rename = "glass_mat_12v_200")]
    GlassMat12V200,
    /// Lead-acid glass mat, 24 V, 200 Ah.
    #[serde(rename = "glass_mat_24v_200")]
    GlassMat24V200,
    /// Flooded lead-acid, 12 V, 220 Ah.
    #[serde(rename = "flooded_12v_220")]
    Flooded12V220,
}

/// What was picked, part by part. It changes no result: values that differ from a starting point are found by comparing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Starting {
    /// Body: size, windows, furnishing.
    pub vehicle: StartingPoint,
    /// Build-up of the shell.
    pub shell: StartingPoint,
    /// Who is in it and what they need.
    pub occupants: StartingPoint,
    /// Climate: place and day.
    pub place: StartingPoint,
    /// Cooler.
    pub cooler: StartingPoint,
    /// Bank.
    pub battery: StartingPoint,
}
