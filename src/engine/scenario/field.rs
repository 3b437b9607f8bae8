//! What the fields table says of each input, and how a field is read and written.

use super::document::ScenarioDocument;
use crate::solar::Date;

/// Groups in the order in which a consult goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// What it is called and for whom.
    Title,
    /// The vehicle.
    Vehicle,
    /// Its shell.
    Shell,
    /// Its glass.
    Glass,
    /// Who is in it.
    Occupants,
    /// When it must be cool.
    Need,
    /// Where.
    Place,
    /// What day.
    Day,
    /// The cooler.
    Cooler,
    /// Fan and opened windows.
    Ventilation,
    /// The bank.
    Battery,
    /// Charging.
    Charging,
    /// Other loads.
    Loads,
    /// Ways of cable and the make-up of the bank.
    Cabling,
    /// What stands on the roof.
    Roof,
    /// Prices.
    Prices,
    /// Readings of the finished unit.
    Readings,
}

impl Group {
    /// Every group, in order.
    pub const ALL: [Group; 17] = [
        Group::Title,
        Group::Vehicle,
        Group::Shell,
        Group::Glass,
        Group::Occupants,
        Group::Need,
        Group::Place,
        Group::Day,
        Group::Cooler,
        Group::Ventilation,
        Group::Battery,
        Group::Charging,
        Group::Loads,
        Group::Cabling,
        Group::Roof,
        Group::Prices,
        Group::Readings,
    ];
}

/// What a number measures; the page picks the unit shown, the document holds SI.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dimension {
    /// Length of a body, m.
    Length,
    /// Length as a tape measures it in the workshop, m.
    TapeLength,
    /// Thickness of a layer, m.
    Thickness,
    /// Altitude, m.
    Altitude,
    /// Area, m².
    Area,
    /// Area of a leak, m².
    LeakArea,
    /// Angle, degrees.
    Angle,
    /// Temperature, °C.
    Temperature,
    /// Difference of temperatures, K.
    TemperatureDifference,
    /// Electric power, W.
    ElectricPower,
    /// Heat flow, W.
    HeatFlow,
    /// Air flow, m³/s.
    AirFlow,
    /// Air flow for each kilowatt of cooling, m³/s.
    AirFlowPerKilowatt,
    /// Wind speed, m/s.
    WindSpeed,
    /// Speed on the road, m/s.
    RoadSpeed,
    /// Thermal conductivity, W/(m K).
    Conductivity,
    /// Thermal resistance, m² K/W.
    ThermalResistance,
    /// Thermal transmittance, W/(m² K).
    Transmittance,
    /// Heat capacity, J/K.
    HeatCapacity,
    /// Mass, kg.
    Mass,
    /// Force, N.
    Force,
    /// Flow of water vapour, kg/s.
    MoistureFlow,
    /// Hour of the day on the clock.
    HourOfDay,
    /// Difference of clocks, h.
    ClockOffset,
    /// Time span, s.
    TimeSpan,
    /// Time that something has been running, s.
    RunningTime,
    /// Work, h.
    WorkHours,
    /// Work for each square metre, h/m².
    WorkHoursPerArea,
    /// Voltage, V.
    Voltage,
    /// Current, A.
    Current,
    /// Charge, Ah.
    Charge,
    /// Electric resistance, Ω.
    Resistance,
    /// Share of a whole, 0 to 1.
    Share,
    /// Share for each kelvin, 1/K.
    SharePerKelvin,
    /// A plain factor.
    Factor,
    /// A whole number.
    Count,
    /// Money.
    Money,
    /// Money for each Wh.
    MoneyPerWattHour,
    /// Money for each W.
    MoneyPerWatt,
    /// Money for each m².
    MoneyPerArea,
    /// Money for each A.
    MoneyPerAmpere,
    /// Money for each metre of conductor and each mm² of its copper.
    MoneyPerCable,
    /// Money for each hour.
    MoneyPerHour,
}

impl Dimension {
    /// Whether only whole numbers make sense.
    #[must_use]
    pub fn is_whole(self) -> bool {
        self == Self::Count
    }
}

/// Where a default comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// A published source.
    Published(&'static str),
    /// A published source, the value quoted from memory.
    FromMemory(&'static str),
    /// Common practice without a source.
    CommonPractice,
    /// Invented for the example.
    Example,
}

/// A number with its range.
#[derive(Clone, Copy, Debug)]
pub struct NumberField {
    /// What it measures.
    pub dimension: Dimension,
    /// Least value allowed.
    pub minimum: f64,
    /// Greatest value allowed.
    pub maximum: f64,
    /// Reads it from a document.
    pub read: fn(&ScenarioDocument) -> f64,
    /// Writes it to a document.
    pub write: fn(&mut ScenarioDocument, f64),
}

/// One of a few named options.
#[derive(Clone, Copy, Debug)]
pub struct ChoiceField {
    /// Stable names, as in links.
    pub options: &'static [&'static str],
    /// Index of the option in force.
    pub read: fn(&ScenarioDocument) -> usize,
    /// Sets the option by index; an index beyond the last changes nothing.
    pub write: fn(&mut ScenarioDocument, usize),
}

/// Yes or no.
#[derive(Clone, Copy, Debug)]
pub struct SwitchField {
    /// Reads it from a document.
    pub read: fn(&ScenarioDocument) -> bool,
    /// Writes it to a document.
    pub write: fn(&mut ScenarioDocument, bool),
}

/// Plain text.
#[derive(Clone, Copy, Debug)]
pub struct TextField {
    /// Most characters allowed.
    pub longest: usize,
    /// Most bytes of UTF-8 that are to be entered, so that a link to it stays short; a document made before may hold more.
    pub room_bytes: usize,
    /// Reads it from a document.
    pub read: fn(&ScenarioDocument) -> &str,
    /// Writes it to a document.
    pub write: fn(&mut ScenarioDocument, String),
}

/// A day of the calendar.
#[derive(Clone, Copy, Debug)]
pub struct DateField {
    /// Reads it from a document.
    pub read: fn(&ScenarioDocument) -> Date,
    /// Writes it to a document.
    pub write: fn(&mut ScenarioDocument, Date),
}

/// What kind of input a field is.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// A number.
    Number(NumberField),
    /// One of a few.
    Choice(ChoiceField),
    /// Yes or no.
    Switch(SwitchField),
    /// Text.
    Text(TextField),
    /// A day.
    Date(DateField),
}

/// An input of the consult: the one place that knows its range, group and source.
#[derive(Clone, Copy, Debug)]
pub struct Field {
    /// Number in links; never reused, never changed.
    pub id: u16,
    /// Path in the document.
    pub key: &'static str,
    /// Group on the page.
    pub group: Group,
    /// Kind, range and access.
    pub kind: Kind,
    /// Where the default comes from.
    pub basis: Basis,
}

impl Field {
    /// The number field inside, if it is one.
    #[must_use]
    pub fn number(&self) -> Option<&NumberField> {
        match &self.kind {
            Kind::Number(number) => Some(number),
            _ => None,
        }
    }

    /// Whether two documents hold the same value of this field.
    #[must_use]
    pub fn same_in(&self, one: &ScenarioDocument, other: &ScenarioDocument) -> bool {
        match &self.kind {
            Kind::Number(field) => (field.read)(one) == (field.read)(other),
            Kind::Choice(field) => (field.read)(one) == (field.read)(other),
            Kind::Switch(field) => (field.read)(one) == (field.read)(other),
            Kind::Text(field) => (field.read)(one) == (field.read)(other),
            Kind::Date(field) => (field.read)(one) == (field.read)(other),
        }
    }

    /// Copies this field's value from one document into another.
    pub fn copy(&self, from: &ScenarioDocument, to: &mut ScenarioDocument) {
        match &self.kind {
            Kind::Number(field) => (field.write)(to, (field.read)(from)),
            Kind::Choice(field) => (field.write)(to, (field.read)(from)),
            Kind::Switch(field) => (field.write)(to, (field.read)(from)),
            Kind::Text(field) => (field.write)(to, (field.read)(from).to_owned()),
            Kind::Date(field) => (field.write)(to, (field.read)(from)),
        }
    }
}
