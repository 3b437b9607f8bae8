//! People, animals, cooking and appliances: what they give to the cabin.

use super::build::BuildError;
use crate::air::latent_heat_vaporisation_j_per_kg;
use crate::cabin::Gains;
use crate::comfort::occupants::{
    DogHeatBasis, OccupantHeat, PersonActivity, ROOM_TEMPERATURE_TABLE_C, dog_heat, person_heat,
};
use crate::scenario::{Activity, ScenarioDocument};
use crate::schedule::HourWindow;

/// Radiant share of the sensible heat of people and animals at rest: ASHRAE Fundamentals ch. 18 table 1, about 0.6 in still air,
/// taken as the share that does not meet the air first; 0.3 as in whole-building programs.
const BODY_RADIANT_SHARE: f64 = 0.3;

/// Radiant share of appliances' heat, common practice, no source.
const APPLIANCE_RADIANT_SHARE: f64 = 0.5;

/// Temperature at which vapour leaves skin and breath, °C.
const BODY_C: f64 = 34.0;

/// Heat by source over an interval, W, and all of it together.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct InsideGains {
    pub(super) people_w: f64,
    pub(super) animals_w: f64,
    pub(super) cooking_w: f64,
    pub(super) sum: Gains,
}

impl InsideGains {
    /// Adds heat of appliances, W.
    pub(super) fn with_appliances(mut self, appliances_w: f64) -> Gains {
        self.sum.convective_w += (1.0 - APPLIANCE_RADIANT_SHARE) * appliances_w;
        self.sum.radiant_w += APPLIANCE_RADIANT_SHARE * appliances_w;
        self.sum
    }
}

/// Who and what is inside, by hours.
#[derive(Clone, Debug)]
pub(super) struct Inside {
    people: f64,
    people_in: HourWindow,
    asleep: HourWindow,
    awake_as: PersonActivity,
    dogs: f64,
    dog: OccupantHeat,
    dogs_in: HourWindow,
    cooking_w: f64,
    cooking_kg_s: f64,
    cooking: HourWindow,
}

impl Inside {
    pub(super) fn new(document: &ScenarioDocument) -> Result<Self, BuildError> {
        let occupants = &document.occupants;
        Ok(Self {
            people: occupants.people,
            people_in: HourWindow::new(occupants.people_from_hour, occupants.people_until_hour)?,
            asleep: HourWindow::new(occupants.asleep_from_hour, occupants.asleep_until_hour)?,
            awake_as: match occupants.activity {
                Activity::Seated => PersonActivity::Seated,
                Activity::DeskWork => PersonActivity::SeatedAtWork,
                Activity::Moving => PersonActivity::Active,
            },
            dogs: occupants.dogs,
            dog: dog_heat(
                DogHeatBasis::AnimalRoom,
                occupants.dog_mass_kg,
                ROOM_TEMPERATURE_TABLE_C,
            ),
            dogs_in: HourWindow::new(occupants.dogs_from_hour, occupants.dogs_until_hour)?,
            cooking_w: occupants.cooking_heat_w,
            cooking_kg_s: occupants.cooking_moisture_kg_s,
            cooking: HourWindow::new(occupants.cooking_from_hour, occupants.cooking_until_hour)?,
        })
    }

    /// Gains over an interval in a cabin that feels like `felt_c`.
    pub(super) fn gains(&self, clock_s: f64, span_s: f64, felt_c: f64) -> InsideGains {
        let present = self.people * self.people_in.overlap_fraction(clock_s, span_s);
        let asleep_share = self.asleep.overlap_fraction(clock_s, span_s);
        let asleep = person_heat(PersonActivity::Asleep, felt_c).times(present * asleep_share);
        let awake = person_heat(self.awake_as, felt_c).times(present * (1.0 - asleep_share));
        let dogs_in = self.dogs * self.dogs_in.overlap_fraction(clock_s, span_s);
        let dogs = self.dog.shifted(felt_c).times(dogs_in);
        let cooking_share = self.cooking.overlap_fraction(clock_s, span_s);
        let people_w = asleep.sensible_w + awake.sensible_w;
        let latent_w = asleep.latent_w + awake.latent_w + dogs.latent_w;
        let bodies_w = people_w + dogs.sensible_w;
        let cooking_w = self.cooking_w * cooking_share;
        InsideGains {
            people_w,
            animals_w: dogs.sensible_w,
            cooking_w,
            sum: Gains {
                convective_w: (1.0 - BODY_RADIANT_SHARE) * bodies_w + cooking_w,
                radiant_w: BODY_RADIANT_SHARE * bodies_w,
                moisture_kg_s: latent_w / latent_heat_vaporisation_j_per_kg(BODY_C)
                    + self.cooking_kg_s * cooking_share,
            },
        }
    }
}
