//! The whole of a consult as plain data: what the page edits, stores, shares and runs.
//!
//! Everything is SI with the unit in the name; hours are hours of the day on the clock, 0 to 24. A window of hours from
//! `from` until `until` wraps past midnight, and means the whole day when both are equal.

use crate::solar::Date;
use serde::{Deserialize, Serialize};

/// Version of this form of the document. A stored document of another version is migrated or refused, never guessed at.
pub const DOCUMENT_VERSION: u32 = 1;

/// A consult: vehicle, shell, glass, occupants and need, place and day, cooling, battery and charging, prices.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ScenarioDocument {
    /// Form of the document, [`DOCUMENT_VERSION`].
    pub version: u32,
    /// What the user calls it.
    pub name: String,
    /// For whom, or a remark; shown as plain text.
    pub note: String,
    /// The cabin's size and contents.
    pub vehicle: Vehicle,
    /// Metal, insulation, lining, paint and leaks.
    pub shell: Shell,
    /// Windows and their covers.
    pub glass: Glass,
    /// People and animals and what they do.
    pub occupants: Occupants,
    /// When it must be cool, and how cool.
    pub need: Need,
    /// Where the vehicle stands.
    pub place: Place,
    /// The day's weather and shade.
    pub day: Day,
    /// The cooler and its control.
    pub cooler: Cooler,
    /// Fan and opened windows.
    pub ventilation: Ventilation,
    /// The bank.
    pub battery: Battery,
    /// Panels, driving and shore.
    pub charging: Charging,
    /// What else draws from the bank.
    pub loads: Loads,
    /// What things cost.
    pub prices: Prices,
}

/// The cabin's inner size, the way it faces and what stands in it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Vehicle {
    /// Inner length, nose to rear, m.
    pub length_m: f64,
    /// Inner width, m.
    pub width_m: f64,
    /// Inner height, m.
    pub height_m: f64,
    /// Height of the floor above ground, m.
    pub floor_above_ground_m: f64,
    /// Compass direction in which the nose points, degrees clockwise from north.
    pub heading_deg: f64,
    /// Heat capacity of furniture and stored goods, J/K.
    pub furnishing_heat_capacity_j_k: f64,
    /// Surface of furniture that meets the air, m².
    pub furnishing_area_m2: f64,
    /// Moisture held by bedding and furniture as a multiple of what the air holds.
    pub furnishing_moisture_factor: f64,
}

/// Insulation, generic materials only.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum InsulationMaterial {
    /// Sheep wool batt.
    SheepWool,
    /// Mineral or glass wool batt.
    MineralWool,
    /// Closed-cell elastomeric foam.
    ElastomericFoam,
    /// Extruded polystyrene board.
    ExtrudedPolystyrene,
    /// Polyisocyanurate or polyurethane board.
    PolyurethaneBoard,
    /// Closed-cell sprayed polyurethane.
    SprayFoam,
    /// Expanded cork board.
    Cork,
    /// Reflective bubble foil laid without an air gap.
    BubbleFoil,
    /// A conductivity that the user states.
    Other,
}

/// Metal skin, insulation, lining, paint and leaks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Shell {
    /// Share of sunlight that the roof's outside absorbs.
    pub roof_sun_absorptance: f64,
    /// Share of sunlight that the walls' outside absorbs.
    pub wall_sun_absorptance: f64,
    /// Longwave emittance of the outside.
    pub paint_emittance: f64,
    /// Thickness of the steel skin, m.
    pub skin_thickness_m: f64,
    /// What the insulation is made of.
    pub insulation_material: InsulationMaterial,
    /// Conductivity when the material is [`InsulationMaterial::Other`], W/(m K).
    pub other_conductivity_w_m_k: f64,
    /// Insulation of the roof, m.
    pub roof_insulation_m: f64,
    /// Insulation of the walls, m.
    pub wall_insulation_m: f64,
    /// Insulation of the floor, m.
    pub floor_insulation_m: f64,
    /// Share of roof and walls that really has the stated thickness; the rest is an empty cavity.
    pub filled_share: f64,
    /// Distance between steel ribs, m.
    pub rib_spacing_m: f64,
    /// Insulating strip between ribs and lining, m.
    pub thermal_break_m: f64,
    /// Plywood lining of roof and walls, m.
    pub lining_thickness_m: f64,
    /// Plywood floor, m.
    pub floor_board_m: f64,
    /// Share of sunlight that inner surfaces absorb.
    pub lining_sun_absorptance: f64,
    /// Effective leakage area of the closed cabin, m².
    pub leakage_area_m2: f64,
}

/// Windows by face, and covers.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Glass {
    /// Windscreen, m².
    pub nose_area_m2: f64,
    /// Left side, m².
    pub left_area_m2: f64,
    /// Right side, m².
    pub right_area_m2: f64,
    /// Rear doors, m².
    pub rear_area_m2: f64,
    /// Roof window or clear hatch, m².
    pub roof_area_m2: f64,
    /// Thermal transmittance with both surface films, W/(m² K).
    pub transmittance_w_m2_k: f64,
    /// Solar heat gain coefficient at normal incidence.
    pub solar_heat_gain_coefficient: f64,
    /// Whether covers are fitted.
    pub covers_fitted: bool,
    /// Covers are on from this hour.
    pub covers_from_hour: f64,
    /// Covers are on until this hour.
    pub covers_until_hour: f64,
    /// Thermal resistance of a cover with its air gap, m² K/W.
    pub cover_resistance_m2_k_w: f64,
    /// Share of the bare glass's solar gain that still enters with the cover on.
    pub cover_sun_share: f64,
    /// Share of the sun that enters falling on the floor.
    pub sun_on_floor_share: f64,
    /// Share of the sun that enters falling on furniture.
    pub sun_on_furnishings_share: f64,
}

/// What people do while awake.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Activity {
    /// Sitting quietly.
    Seated,
    /// Sitting at light work.
    DeskWork,
    /// Standing, light work, walking about.
    Moving,
}

/// People, animals and cooking.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Occupants {
    /// Number of people.
    pub people: f64,
    /// People are in from this hour.
    pub people_from_hour: f64,
    /// People are in until this hour.
    pub people_until_hour: f64,
    /// What they do while awake.
    pub activity: Activity,
    /// They sleep from this hour.
    pub asleep_from_hour: f64,
    /// They sleep until this hour.
    pub asleep_until_hour: f64,
    /// Number of dogs.
    pub dogs: f64,
    /// Mass of each dog, kg.
    pub dog_mass_kg: f64,
    /// Dogs are in from this hour.
    pub dogs_from_hour: f64,
    /// Dogs are in until this hour.
    pub dogs_until_hour: f64,
    /// Heat of cooking into the cabin, W.
    pub cooking_heat_w: f64,
    /// Water vapour of cooking, kg/s.
    pub cooking_moisture_kg_s: f64,
    /// Cooking from this hour.
    pub cooking_from_hour: f64,
    /// Cooking until this hour.
    pub cooking_until_hour: f64,
}

/// For whom a window of the need is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum NeededFor {
    /// The window is not used.
    Nobody,
    /// People.
    People,
    /// Animals.
    Animals,
}

/// Hours in which the cabin must stay below a felt temperature.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NeedWindow {
    /// For whom.
    pub needed_for: NeededFor,
    /// From this hour.
    pub from_hour: f64,
    /// Until this hour.
    pub until_hour: f64,
    /// Highest felt (operative) temperature, °C.
    pub highest_felt_c: f64,
    /// Highest relative humidity, share; 1 asks nothing.
    pub highest_relative_humidity: f64,
}

/// When it must be cool.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Need {
    /// Up to three windows.
    pub windows: [NeedWindow; 3],
    /// Charge that must be left at every instant, share of capacity.
    pub reserve_state_of_charge: f64,
}

/// How open the land is to the wind.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Terrain {
    /// Open country.
    OpenCountry,
    /// Suburb or wood.
    Suburb,
    /// Town centre.
    Town,
}

/// What the vehicle stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ground {
    /// Asphalt.
    Asphalt,
    /// Concrete.
    Concrete,
    /// Gravel or bare soil.
    Gravel,
    /// Grass.
    Grass,
}

/// Where the vehicle stands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Place {
    /// Latitude, degrees, north positive.
    pub latitude_deg: f64,
    /// Longitude, degrees, east positive.
    pub longitude_deg: f64,
    /// Altitude, m.
    pub altitude_m: f64,
    /// Standard time ahead of UTC, h.
    pub utc_offset_h: f64,
    /// Whether the clock shows summer time.
    pub summer_time: bool,
    /// How open the land is to the wind.
    pub terrain: Terrain,
    /// What the vehicle stands on.
    pub ground: Ground,
}

/// The weather forecast as people know it, and shade.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Day {
    /// First day.
    pub date: Date,
    /// Clock hour at which the run begins.
    pub start_hour: f64,
    /// Days to run.
    pub days: f64,
    /// Highest temperature of the first day, °C.
    pub high_c: f64,
    /// Lowest temperature of the first day, °C.
    pub low_c: f64,
    /// Dew point, °C.
    pub dew_point_c: f64,
    /// Cloud cover, share of the sky.
    pub cloud_fraction: f64,
    /// Wind at 10 m over open country, m/s.
    pub wind_speed_m_s: f64,
    /// Direction from which the wind comes, degrees clockwise from north.
    pub wind_from_deg: f64,
    /// Linke turbidity of the clear air.
    pub linke_turbidity: f64,
    /// Warming from day to day, K.
    pub warming_per_day_k: f64,
    /// Share of direct sun taken away by shade.
    pub shade_beam_share: f64,
    /// Share of the sky hidden by shade.
    pub shade_sky_share: f64,
    /// Shade from this hour.
    pub shade_from_hour: f64,
    /// Shade until this hour.
    pub shade_until_hour: f64,
}

/// How the compressor's output is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CompressorControl {
    /// On or off.
    OnOff,
    /// A full and an economy level.
    TwoLevel,
    /// Continuously variable speed.
    Variable,
}

/// What the cooler is fed with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CoolerSupply {
    /// Direct current from the bank.
    DirectCurrent,
    /// Mains voltage through an inverter.
    MainsThroughInverter,
}

/// Which of the plate's figures the run believes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PlateTrust {
    /// Capacity as the plate says.
    AsStated,
    /// Capacity that the plate's power can carry at an efficiency small units reach.
    Derated,
}

/// The cooler, its control and its wiring.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cooler {
    /// Whether there is a cooler at all.
    pub installed: bool,
    /// Total cooling capacity at the rating point, W.
    pub capacity_rated_w: f64,
    /// Electric power at the rating point, W.
    pub electric_power_rated_w: f64,
    /// Which of the plate's figures to believe.
    pub plate_trust: PlateTrust,
    /// Air through the coil for each kilowatt of rated capacity, m³/s.
    pub airflow_m3_s_per_kw: f64,
    /// Sensible share of the capacity at the rating point.
    pub sensible_heat_ratio_rated: f64,
    /// Power of the inside blower, W.
    pub blower_power_w: f64,
    /// Warming of the condenser's air above the weather, K.
    pub condenser_air_rise_k: f64,
    /// How the output is set.
    pub control: CompressorControl,
    /// Least speed or economy level, share of full capacity.
    pub least_capacity_share: f64,
    /// Efficiency at least speed over efficiency at full speed.
    pub part_speed_efficiency_gain: f64,
    /// Cabin temperature asked of the thermostat, °C.
    pub set_point_c: f64,
    /// Width of the thermostat's band, K.
    pub band_k: f64,
    /// Least time on, s.
    pub minimum_on_s: f64,
    /// Least time off, s.
    pub minimum_off_s: f64,
    /// The cooler may run from this hour.
    pub run_from_hour: f64,
    /// The cooler may run until this hour.
    pub run_until_hour: f64,
    /// Direct current or mains through an inverter.
    pub supply: CoolerSupply,
    /// Draw while waiting, W.
    pub idle_power_w: f64,
    /// Current at start over running current.
    pub start_surge_factor: f64,
    /// Bank voltage at which the cooler stops, V for each 12 V of the bank.
    pub cut_out_v_per_12_v: f64,
    /// Bank voltage at which it may start again, V for each 12 V of the bank.
    pub recovery_v_per_12_v: f64,
    /// Resistance of the cable out and back, Ω.
    pub cable_resistance_ohm: f64,
    /// Continuous rating of the inverter, W.
    pub inverter_rated_w: f64,
    /// What the inverter can give at a start, W.
    pub inverter_surge_w: f64,
    /// Draw of the idle inverter, W.
    pub inverter_idle_w: f64,
}

/// When the fan runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FanUse {
    /// There is none, or it stays off.
    Off,
    /// In its hours, whatever the temperatures.
    InHours,
    /// In its hours, while it is cooler outdoors than in the cabin and the cabin is above the set point.
    WhenOutdoorsCooler,
}

/// Fan and opened windows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ventilation {
    /// When the fan runs.
    pub fan_use: FanUse,
    /// Outdoor air that the fan moves, m³/s.
    pub fan_flow_m3_s: f64,
    /// Power of the fan, W.
    pub fan_power_w: f64,
    /// Fan from this hour.
    pub fan_from_hour: f64,
    /// Fan until this hour.
    pub fan_until_hour: f64,
    /// Blow the hot air out before the cooler starts.
    pub purge_before_cooling: bool,
    /// Opened windows and hatches, free area, m².
    pub opening_area_m2: f64,
    /// Opened from this hour.
    pub opening_from_hour: f64,
    /// Opened until this hour.
    pub opening_until_hour: f64,
}

/// What the cells are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CellChemistry {
    /// Lithium iron phosphate.
    LithiumIronPhosphate,
    /// Absorbent-glass-mat lead-acid.
    AbsorbentGlassMat,
    /// Flooded lead-acid.
    FloodedLead,
}

/// Nominal voltage of the bank.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SystemVoltage {
    /// 12 V.
    V12,
    /// 24 V.
    V24,
    /// 48 V.
    V48,
}

/// The bank.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Battery {
    /// What the cells are.
    pub chemistry: CellChemistry,
    /// Nominal voltage.
    pub system_voltage: SystemVoltage,
    /// Rated capacity, Ah.
    pub capacity_ah: f64,
    /// Charge at the start, share.
    pub start_state_of_charge: f64,
    /// Lowest charge that the bank's protection allows, share.
    pub least_state_of_charge: f64,
    /// Highest charge that charging aims at, share.
    pub most_state_of_charge: f64,
    /// Resistance of the bank for each 12 V at 25 °C, Ω.
    pub resistance_ohm_per_12_v: f64,
    /// Charge got back over charge put in.
    pub coulombic_efficiency: f64,
    /// Highest continuous discharge current, A.
    pub highest_discharge_a: f64,
    /// Highest charging current, A.
    pub highest_charge_a: f64,
    /// Peukert's exponent, lead-acid only.
    pub peukert_exponent: f64,
    /// Capacity left over capacity when new.
    pub health_share: f64,
}

/// Panels, driving and shore.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Charging {
    /// Rated power of the panels, W.
    pub panel_power_w: f64,
    /// Losses of soiling, mismatch, wiring and ageing, share.
    pub panel_loss_share: f64,
    /// Share of the panels' sun taken by what stands on the roof.
    pub panel_shading_share: f64,
    /// Loss of power for each kelvin above 25 °C, share.
    pub panel_temperature_loss_per_k: f64,
    /// Efficiency of the controller.
    pub controller_efficiency: f64,
    /// Whether the vehicle is driven.
    pub drives: bool,
    /// Driving from this hour.
    pub drive_from_hour: f64,
    /// Driving until this hour.
    pub drive_until_hour: f64,
    /// Speed while driving, m/s.
    pub drive_speed_m_s: f64,
    /// Output of the DC-DC charger, A at the bank.
    pub dc_dc_current_a: f64,
    /// Shore charger's output into the bank, W; 0 is none.
    pub shore_power_w: f64,
    /// Plugged in from this hour.
    pub shore_from_hour: f64,
    /// Plugged in until this hour.
    pub shore_until_hour: f64,
}

/// A load on the bank.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Load {
    /// Power while on, W.
    pub power_w: f64,
    /// Share of its hours in which it is on.
    pub duty: f64,
    /// From this hour.
    pub from_hour: f64,
    /// Until this hour.
    pub until_hour: f64,
}

/// Loads other than cooler and fan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Loads {
    /// Refrigerator.
    pub fridge: Load,
    /// Lights.
    pub lights: Load,
    /// Laptop, telephone, router.
    pub electronics: Load,
    /// Anything else.
    pub other: Load,
}

/// What things cost, in one currency.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Prices {
    /// ISO 4217 code of the currency.
    pub currency: String,
    /// The cooler.
    pub cooler: f64,
    /// The bank, for each Wh.
    pub bank_per_wh: f64,
    /// Panels with mounting, for each W.
    pub panels_per_w: f64,
    /// Insulation, for each m² and each 25 mm.
    pub insulation_per_m2_25_mm: f64,
    /// Window covers, for each m².
    pub covers_per_m2: f64,
    /// Roof fan.
    pub fan: f64,
    /// DC-DC charger, for each A.
    pub dc_dc_per_a: f64,
    /// Work, h.
    pub labour_h: f64,
    /// An hour of work.
    pub labour_per_h: f64,
    /// Tax, share.
    pub tax_share: f64,
}
