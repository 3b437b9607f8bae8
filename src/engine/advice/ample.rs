//! A supply that never fails, for runs that ask what a cooler does and draws while nothing on the electric side stands in its way.

use crate::scenario::ScenarioDocument;

/// Shore power all day, W, and a bank of great capacity and next to no resistance that feeds any current: the ends of the fields' ranges.
const SHORE_W: f64 = 5_000.0;
const CAPACITY_AH: f64 = 2_000.0;
const CURRENT_A: f64 = 2_000.0;
const RESISTANCE_OHM: f64 = 0.000_2;

/// Voltage below which no bank falls that is kept full, V for each 12 V.
const CUT_OUT_V: f64 = 9.0;

/// Feeds a scenario amply. An inverter that cannot carry the cooler's start still cannot.
pub(super) fn feed_amply(document: &mut ScenarioDocument) {
    let battery = &mut document.battery;
    battery.capacity_ah = CAPACITY_AH;
    battery.resistance_ohm_per_12_v = RESISTANCE_OHM;
    battery.highest_discharge_a = CURRENT_A;
    battery.highest_charge_a = CURRENT_A;
    battery.start_state_of_charge = battery.most_state_of_charge;
    document.cooler.cut_out_v_per_12_v = CUT_OUT_V;
    let charging = &mut document.charging;
    charging.shore_power_w = SHORE_W;
    (charging.shore_from_hour, charging.shore_until_hour) = (0.0, 0.0);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::{Scenario, example};
    use crate::simulation::simulate;

    #[test]
    fn nothing_stops_a_cooler_that_is_fed_amply() {
        let mut document = example();
        document.battery.capacity_ah = 50.0;
        document.battery.highest_discharge_a = 10.0;
        document.day.high_c = 42.0;
        let starved = simulate(&Scenario::new(document.clone()).unwrap()).unwrap();
        assert!(starved.first_stop.is_some());
        feed_amply(&mut document);
        let run = simulate(&Scenario::new(document).unwrap()).unwrap();
        assert_eq!(run.first_stop, None);
        assert!(
            run.series
                .state_of_charge
                .iter()
                .all(|charge| *charge > 0.9)
        );
    }
}
