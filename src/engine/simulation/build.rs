//! Why a run could not be built.

use crate::cabin::CabinError;
use crate::cooler::coil::CoilError;
use crate::electrical::BankError;
use crate::envelope::glazing::GlazingError;
use crate::schedule::ScheduleError;
use crate::solar::SolarError;
use crate::validity::OutOfRange;
use crate::weather::WeatherError;

/// A component refused its input. The ranges of a scenario lie within those of the components, so that a validated scenario
/// gives none of these; a test tries thousands.
#[derive(Clone, Debug, PartialEq)]
pub enum BuildError {
    /// The cabin.
    Cabin(CabinError),
    /// The glass.
    Glazing(GlazingError),
    /// The sun's path.
    Solar(SolarError),
    /// The weather.
    Weather(WeatherError),
    /// A window of hours.
    Schedule(ScheduleError),
    /// The bank.
    Bank(BankError),
    /// The coil.
    Coil(CoilError),
    /// The thermostat, panels, chargers or inverter.
    Component(OutOfRange),
}

impl From<CabinError> for BuildError {
    fn from(error: CabinError) -> Self {
        Self::Cabin(error)
    }
}

impl From<GlazingError> for BuildError {
    fn from(error: GlazingError) -> Self {
        Self::Glazing(error)
    }
}

impl From<SolarError> for BuildError {
    fn from(error: SolarError) -> Self {
        Self::Solar(error)
    }
}

impl From<WeatherError> for BuildError {
    fn from(error: WeatherError) -> Self {
        Self::Weather(error)
    }
}

impl From<ScheduleError> for BuildError {
    fn from(error: ScheduleError) -> Self {
        Self::Schedule(error)
    }
}

impl From<BankError> for BuildError {
    fn from(error: BankError) -> Self {
        Self::Bank(error)
    }
}

impl From<OutOfRange> for BuildError {
    fn from(error: OutOfRange) -> Self {
        Self::Component(error)
    }
}

impl From<CoilError> for BuildError {
    fn from(error: CoilError) -> Self {
        Self::Coil(error)
    }
}
