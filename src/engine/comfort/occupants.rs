//! Heat that people and dogs give off, split into sensible and latent.
//!
//! Warmth shifts the same heat from sensible to latent. The handbook gives one point of that shift
//! (27 °C: 20 % less sensible heat than at 24 °C); the line through it is continued here, down to no
//! sensible heat and up to no less latent heat than a body loses without sweating. The continuation
//! has no source.
//!
//! Sources: ASHRAE Handbook—Fundamentals (2009, 2013), chapter 18, table 1 and its note on 27 °C.
//! ASHRAE animal-room heat for dogs, its factors and split from memory.

/// Room temperature of the table, °C (ch. 18, table 1).
pub const ROOM_TEMPERATURE_TABLE_C: f64 = 24.0;

/// Loss of sensible heat per kelvin above it: 20 % over 3 K (ch. 18, table 1, note on 27 °C).
const SENSIBLE_SHIFT_PER_K: f64 = 0.2 / 3.0;

/// Share of the heat of a body at rest that leaves by breath and dry skin without sweat (from memory).
const LATENT_LEAST_SHARE: f64 = 0.2;

/// Share of an animal's heat that is sensible in a temperate room (ASHRAE animal rooms, from memory).
const DOG_SENSIBLE_SHARE: f64 = 0.67;

/// Watts in a kilocalorie a day (exact: 4 184 J over 86 400 s).
const WATT_PER_KILOCALORIE_DAY: f64 = 4_184.0 / 86_400.0;

/// What people are doing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PersonActivity {
    /// Asleep: 0.7 met over 1.8 m²; the split is from memory.
    Asleep,
    /// Seated and quiet (theatre).
    Seated,
    /// Seated with very light work (writing, reading).
    SeatedAtWork,
    /// On their feet with light work, moving about.
    Active,
}

/// How the heat of a dog is reckoned from its body mass.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum DogHeatBasis {
    /// At complete rest: 70 kcal/(kg^0.75 day) (Kleiber, from memory).
    Resting,
    /// A companion that mostly lies: 95 kcal/(kg^0.75 day) (NRC 2006, from memory).
    Inactive,
    /// An active dog: 130 kcal/(kg^0.75 day) (NRC 2006, from memory).
    Active,
    /// Average total heat gain of animal rooms: 2.5 times 3.5 W/kg^0.75 (ASHRAE, factors from memory).
    ///
    /// The most cautious of the four for sizing a cooler: it covers a dog that is awake and pants.
    AnimalRoom,
}

/// Heat given to the room.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct OccupantHeat {
    /// Sensible heat, W.
    pub sensible_w: f64,
    /// Latent heat, W.
    pub latent_w: f64,
}

impl OccupantHeat {
    /// Sensible and latent heat together, W.
    #[must_use]
    pub fn total_w(&self) -> f64 {
        self.sensible_w + self.latent_w
    }

    /// The heat of a number of such occupants, zero or more.
    #[must_use]
    pub fn times(&self, count: f64) -> Self {
        Self {
            sensible_w: count * self.sensible_w,
            latent_w: count * self.latent_w,
        }
    }

    /// Heat reckoned at 24 °C, its total kept and its split that of another room temperature (°C, 0…50): sensible heat falls by
    /// 0.2/3 for each kelvin, and is held between 0 and 80 % of the total.
    ///
    /// Source: ASHRAE Fundamentals ch. 18, table 1, note on 27 °C; beyond it continued without a source.
    #[must_use]
    pub fn shifted(&self, room_c: f64) -> Self {
        let total_w = self.total_w();
        let warmer_k = room_c - ROOM_TEMPERATURE_TABLE_C;
        let sensible_w = (self.sensible_w * (1.0 - SENSIBLE_SHIFT_PER_K * warmer_k))
            .clamp(0.0, (1.0 - LATENT_LEAST_SHARE) * total_w);
        Self {
            sensible_w,
            latent_w: total_w - sensible_w,
        }
    }
}

/// Gives the heat of a person, W.
///
/// Q_s(T) = Q_s(24 °C) (1 − 0.2/3 (T − 24)), the total staying the same; the sensible share is held
/// between 0 and 80 %. The table is for a mix of men and women; a woman gives 85 % and a child 75 % of
/// what a man gives (ch. 18, table 1, note).
///
/// * `activity` — what the person does
/// * `room_c` — operative temperature of the room, °C, 0…50
///
/// Source: ASHRAE Fundamentals (2013), ch. 18, table 1.
///
/// ```
/// use noonday_engine::comfort::occupants::{PersonActivity, person_heat};
/// let heat = person_heat(PersonActivity::Seated, 27.0);
/// assert!((heat.sensible_w - 52.0).abs() < 1e-9 && (heat.latent_w - 43.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn person_heat(activity: PersonActivity, room_c: f64) -> OccupantHeat {
    let (sensible_w, latent_w) = match activity {
        PersonActivity::Asleep => (50.0, 22.0),
        PersonActivity::Seated => (65.0, 30.0),
        PersonActivity::SeatedAtWork => (70.0, 45.0),
        PersonActivity::Active => (75.0, 55.0),
    };
    let table = OccupantHeat {
        sensible_w,
        latent_w,
    };
    table.shifted(room_c)
}

/// Gives the heat of a dog, W: Q = q m^0.75, two thirds of it sensible at 24 °C.
///
/// The shift from sensible to latent heat with warmth is that of people: a panting dog sheds most of
/// its heat as vapour (common practice, no source).
///
/// * `basis` — which q
/// * `mass_kg` — m, 1…90
/// * `room_c` — operative temperature of the room, °C, 0…50
///
/// Source: Kleiber's exponent; q as stated at [`DogHeatBasis`].
#[must_use]
pub fn dog_heat(basis: DogHeatBasis, mass_kg: f64, room_c: f64) -> OccupantHeat {
    let factor_w = match basis {
        DogHeatBasis::Resting => 70.0 * WATT_PER_KILOCALORIE_DAY,
        DogHeatBasis::Inactive => 95.0 * WATT_PER_KILOCALORIE_DAY,
        DogHeatBasis::Active => 130.0 * WATT_PER_KILOCALORIE_DAY,
        DogHeatBasis::AnimalRoom => 2.5 * 3.5,
    };
    let total_w = factor_w * libm::pow(mass_kg, 0.75);
    let temperate = OccupantHeat {
        sensible_w: DOG_SENSIBLE_SHARE * total_w,
        latent_w: (1.0 - DOG_SENSIBLE_SHARE) * total_w,
    };
    temperate.shifted(room_c)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn warmth_moves_heat_but_keeps_its_sum() {
        for room in 0..=50 {
            let heat = person_heat(PersonActivity::Active, f64::from(room));
            assert!((heat.total_w() - 130.0).abs() < 1e-9);
            assert!(heat.sensible_w >= 0.0 && heat.latent_w >= 0.2 * 130.0 - 1e-9);
        }
        // By hand: 75 (1 − 0.2) = 60 W at 27 °C; nothing sensible from 39 °C on.
        assert!((person_heat(PersonActivity::Active, 27.0).sensible_w - 60.0).abs() < 1e-9);
        assert!(person_heat(PersonActivity::Active, 39.1).sensible_w < 1e-9);
    }

    #[test]
    fn two_dogs_give_twice_the_heat_of_one() {
        let one = dog_heat(DogHeatBasis::Inactive, 25.0, 24.0);
        let two = one.times(2.0);
        assert!((two.total_w() - 2.0 * one.total_w()).abs() < 1e-12);
        assert!((one.sensible_w / one.total_w() - 0.67).abs() < 1e-12);
    }
}
