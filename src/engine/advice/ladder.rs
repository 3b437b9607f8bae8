//! Common sizes: the ladders on which sizing and packages step.
//!
//! Cooler capacities are the R10 series of preferred numbers (ISO 3:1973), ten steps to the decade, each a quarter above the one
//! before. Banks, panels and chargers come in the sizes listed here: common practice, no source.

use crate::scenario::{Field, ScenarioDocument, field};

/// Cooling capacities, W: ISO 3, R10.
pub const COOLER_CAPACITIES_W: [f64; 13] = [
    500.0, 630.0, 800.0, 1_000.0, 1_250.0, 1_600.0, 2_000.0, 2_500.0, 3_150.0, 4_000.0, 5_000.0,
    6_300.0, 8_000.0,
];

/// Capacities of a bank, Ah: common practice, no source.
pub const BANK_CAPACITIES_AH: [f64; 16] = [
    50.0, 100.0, 150.0, 200.0, 250.0, 300.0, 400.0, 500.0, 600.0, 700.0, 800.0, 1_000.0, 1_200.0,
    1_400.0, 1_600.0, 2_000.0,
];

/// Rated powers of panels, W: common practice, no source.
pub const PANEL_POWERS_W: [f64; 12] = [
    0.0, 100.0, 200.0, 300.0, 400.0, 500.0, 600.0, 800.0, 1_000.0, 1_200.0, 1_500.0, 2_000.0,
];

/// Output currents of DC-DC chargers, A: common practice, no source.
pub const DC_DC_CURRENTS_A: [f64; 9] = [10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 80.0, 100.0, 120.0];

/// Hours of driving in a day: common practice, no source.
pub const DRIVING_HOURS: [f64; 11] = [0.0, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0];

/// How far two sizes may lie apart and still be the same, relative.
const SAME_SIZE: f64 = 1e-6;

/// The next size above, if there is one.
#[must_use]
pub fn next_above(ladder: &[f64], size: f64) -> Option<f64> {
    ladder
        .iter()
        .copied()
        .find(|rung| *rung > size * (1.0 + SAME_SIZE))
}

/// The next size below, if there is one.
#[must_use]
pub fn next_below(ladder: &[f64], size: f64) -> Option<f64> {
    ladder
        .iter()
        .rev()
        .copied()
        .find(|rung| *rung < size * (1.0 - SAME_SIZE))
}

/// Gives the cooler another capacity at the same efficiency: electric power and blower grow with it. The blower is held within the
/// range of its field; power is not, and what leaves its range cannot be run.
pub(super) fn set_cooler_capacity(document: &mut ScenarioDocument, capacity_w: f64) {
    let cooler = &mut document.cooler;
    let factor = capacity_w / cooler.capacity_rated_w;
    cooler.installed = true;
    cooler.capacity_rated_w = capacity_w;
    cooler.electric_power_rated_w *= factor;
    scale(document, "cooler.blower_power_w", factor);
}

/// Gives the bank another capacity out of the same blocks in parallel: resistance falls as it grows, currents grow with it, both
/// within the ranges of their fields.
pub(super) fn set_bank_capacity(document: &mut ScenarioDocument, capacity_ah: f64) {
    let factor = capacity_ah / document.battery.capacity_ah;
    document.battery.capacity_ah = capacity_ah;
    scale(document, "battery.resistance_ohm_per_12_v", 1.0 / factor);
    scale(document, "battery.highest_discharge_a", factor);
    scale(document, "battery.highest_charge_a", factor);
}

/// Scales a number, held within the range of its field.
pub(super) fn scale(document: &mut ScenarioDocument, key: &str, factor: f64) {
    change(document, key, |value| value * factor);
}

/// Shifts a number, held within the range of its field.
pub(super) fn shift(document: &mut ScenarioDocument, key: &str, by: f64) {
    change(document, key, |value| value + by);
}

fn change(document: &mut ScenarioDocument, key: &str, to: impl Fn(f64) -> f64) {
    if let Some(number) = field(key).and_then(Field::number) {
        let value = to((number.read)(document));
        (number.write)(document, value.clamp(number.minimum, number.maximum));
    }
}

/// Sets the rated power of the panels, W, in place of what a plan of the roof gives: a plan cannot say where others would lie.
pub(super) fn set_panels(document: &mut ScenarioDocument, power_w: f64) {
    document.set_panel_power_w(power_w);
}

/// Sets the hours of driving a day from the hour at which it begins; no hours is not driving.
pub(super) fn set_driving_hours(document: &mut ScenarioDocument, hours: f64) {
    let charging = &mut document.charging;
    charging.drives = hours > 0.0;
    charging.drive_until_hour = (charging.drive_from_hour + hours).rem_euclid(24.0);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::{Scenario, example};

    #[test]
    fn ladders_rise() {
        for ladder in [
            COOLER_CAPACITIES_W.as_slice(),
            &BANK_CAPACITIES_AH,
            &PANEL_POWERS_W,
            &DC_DC_CURRENTS_A,
            &DRIVING_HOURS,
        ] {
            assert!(ladder.windows(2).all(|pair| pair[0] < pair[1]));
        }
    }

    #[test]
    fn neighbours_leave_the_size_itself_out() {
        let ladder = &BANK_CAPACITIES_AH;
        assert_eq!(next_above(ladder, 600.0), Some(700.0));
        assert_eq!(next_below(ladder, 600.0), Some(500.0));
        assert_eq!(next_above(ladder, 650.0), Some(700.0));
        assert_eq!(next_below(ladder, 650.0), Some(600.0));
        assert_eq!(next_above(ladder, 2_000.0), None);
        assert_eq!(next_below(ladder, 50.0), None);
    }

    /// ISO 3: each preferred number of R10 is 10^(1/10), 1.2589, times the one before, rounded.
    #[test]
    fn cooler_capacities_are_the_tenth_root_of_ten_apart() {
        for pair in COOLER_CAPACITIES_W.windows(2) {
            let ratio = pair[1] / pair[0];
            assert!(
                (ratio / libm::pow(10.0, 0.1) - 1.0).abs() < 0.02,
                "{pair:?}"
            );
        }
    }

    #[test]
    fn every_size_can_be_run_in_the_example() {
        for capacity_w in COOLER_CAPACITIES_W {
            let mut document = example();
            set_cooler_capacity(&mut document, capacity_w);
            assert!(Scenario::new(document).is_ok(), "{capacity_w} W");
        }
        for capacity_ah in BANK_CAPACITIES_AH {
            let mut document = example();
            set_bank_capacity(&mut document, capacity_ah);
            assert!(Scenario::new(document).is_ok(), "{capacity_ah} Ah");
        }
        for hours in DRIVING_HOURS {
            let mut document = example();
            set_driving_hours(&mut document, hours);
            assert!(Scenario::new(document).is_ok(), "{hours} h");
        }
    }
}
