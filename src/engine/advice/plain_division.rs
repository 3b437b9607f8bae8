//! Plain division beside the run: ampere-hours over amperes, and where the difference comes from.
//!
//! What is commonly reckoned is the bank's rated charge over the current on the cooler's plate. Between that and the time that the
//! run finds stand reasons, which are switched on one after the other in a fixed order, each by letting a plain bucket of charge
//! run empty under the current that has been explained so far:
//!
//! 1. usable share: the bucket begins at the charge of the start, ends at the lowest allowed, and shrinks with age;
//! 2. duty: the plate's current only as far as the compressor works, I(t) = P_plate s(t)/U_nominal;
//! 3. voltage: the same power at the voltage of the bank, I(t) = P_plate s(t)/U(t);
//! 4. other loads: I(t) = (P_plate s(t) + P_loads(t))/U(t);
//! 5. charging: panels, driving and shore taken off;
//! 6. heat: the power that the cooler really draws, on a hot day and at part speed, instead of its plate's;
//! 7. the bank itself: losses, temperature, Peukert's law and limits, the rest up to the time of the run.
//!
//! The share s and what cooler and loads draw come from a run with a supply that does not fail, so that they do not end where the
//! bank does; voltage U and charging come from the run itself. Days after the run repeat its last. Each item is the difference of two times, so they add up to the whole difference. Their
//! sizes depend on the order, as those of all such splits do.

use super::ample::feed_amply;
use super::judge::{DAYS_LOOKED, HOURS_PER_DAY, judge};
use crate::quantity::Bounded;
use crate::scenario::{Scenario, ScenarioDocument};
use crate::simulation::{BuildError, Prepared, Series};
use serde::{Deserialize, Serialize};

/// Why the run differs from plain division, in the order in which reasons are switched on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Reason {
    /// Only part of the rated charge is usable.
    UsableShare,
    /// The compressor does not work all the time, nor always in full.
    Duty,
    /// The bank's voltage is not the nominal one.
    Voltage,
    /// Fan, fridge and the like.
    OtherLoads,
    /// Panels, driving and shore.
    Charging,
    /// The cooler draws another power than its plate says.
    Heat,
    /// Losses, temperature and limits of the bank.
    Bank,
}

impl Reason {
    /// Every reason, in order.
    pub const ALL: [Reason; 7] = [
        Reason::UsableShare,
        Reason::Duty,
        Reason::Voltage,
        Reason::OtherLoads,
        Reason::Charging,
        Reason::Heat,
        Reason::Bank,
    ];
}

/// Plain division and the run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PlainDivision {
    /// The bank's rated charge, Ah.
    pub rated_ah: f64,
    /// The plate's power over nominal voltage, A.
    pub plate_a: f64,
    /// One over the other, h.
    pub plain_h: f64,
    /// Hours until the bank of the run is at its lowest charge, at most [`PlainDivision::looked_h`].
    pub simulated_h: f64,
    /// Whether the bank lasts longer than was looked.
    pub lasts_longer: bool,
    /// How far ahead was looked, h; no time above is longer.
    pub looked_h: f64,
    /// What each reason adds, h, in the order of [`Reason::ALL`]; they add up to `simulated_h` less `plain_h`.
    pub items_h: [(Reason, f64); 7],
}

/// Itemises the difference between plain division and the run; none without a cooler, or where it never runs. Two runs.
///
/// # Errors
/// When a component refuses its input, which no validated scenario makes it do.
pub fn plain_division(scenario: &Scenario) -> Result<Option<PlainDivision>, BuildError> {
    let document = scenario.document();
    if !document.cooler.installed {
        return Ok(None);
    }
    let prepared = Prepared::new(scenario)?;
    let run = prepared.run()?;
    let mut ample = document.clone();
    feed_amply(&mut ample);
    let Ok(ample) = Scenario::new(ample) else {
        return Ok(None);
    };
    let demand = prepared.like(&ample)?.run()?;
    if demand.totals.compressor_h <= 0.0 {
        return Ok(None);
    }
    let lasts_h = judge(document, &run, &run).bank.lasts_h;
    Ok(Some(itemised(
        document,
        &demand.series,
        &run.series,
        lasts_h,
    )))
}

fn itemised(
    document: &ScenarioDocument,
    demand: &Series,
    run: &Series,
    lasts_h: Option<f64>,
) -> PlainDivision {
    let battery = &document.battery;
    let looked_h = HOURS_PER_DAY * (document.day.days + f64::from(DAYS_LOOKED));
    let nominal_v = nominal_voltage_v(document);
    let plate_w = document.cooler.electric_power_rated_w;
    let plate_a = plate_w / nominal_v;
    let plain_h = (battery.capacity_ah / plate_a).at_most(looked_h);
    let bucket = Bucket::new(document, looked_h);
    let duty = |index: usize| plate_w * demand.cooler_share[index];
    let volts = |index: usize| run.bank_voltage_v[index];
    let loads = |index: usize| demand.loads_w[index];
    let charging = |index: usize| run.panels_w[index] + run.driving_w[index] + run.shore_w[index];
    let stages_h = [
        bucket.empty_after_h(demand, |_| plate_a),
        bucket.empty_after_h(demand, |index| duty(index) / nominal_v),
        bucket.empty_after_h(demand, |index| duty(index) / volts(index)),
        bucket.empty_after_h(demand, |index| (duty(index) + loads(index)) / volts(index)),
        bucket.empty_after_h(demand, |index| {
            (duty(index) + loads(index) - charging(index)) / volts(index)
        }),
        bucket.empty_after_h(demand, |index| {
            (demand.cooler_w[index] + loads(index) - charging(index)) / volts(index)
        }),
        lasts_h.unwrap_or(looked_h).at_most(looked_h),
    ];
    let mut before_h = plain_h;
    let mut items_h = [(Reason::Bank, 0.0); 7];
    for (item, (reason, stage_h)) in items_h
        .iter_mut()
        .zip(Reason::ALL.into_iter().zip(stages_h))
    {
        *item = (reason, stage_h - before_h);
        before_h = stage_h;
    }
    PlainDivision {
        rated_ah: battery.capacity_ah,
        plate_a,
        plain_h,
        simulated_h: before_h,
        lasts_longer: lasts_h.is_none(),
        looked_h,
        items_h,
    }
}

fn nominal_voltage_v(document: &ScenarioDocument) -> f64 {
    document.battery.system_voltage.nominal_v()
}

/// Charge that is drawn and put back without any loss.
struct Bucket {
    start_ah: f64,
    full_ah: f64,
    looked_h: f64,
}

impl Bucket {
    fn new(document: &ScenarioDocument, looked_h: f64) -> Self {
        let battery = &document.battery;
        let whole_ah = battery.capacity_ah * battery.health_share;
        let above_least = |charge: f64| (charge - battery.least_state_of_charge).at_least(0.0);
        Self {
            start_ah: whole_ah * above_least(battery.start_state_of_charge),
            full_ah: whole_ah * above_least(battery.most_state_of_charge),
            looked_h,
        }
    }

    /// Hours until it is empty under a current given for each sample's span, A, at most the time looked ahead.
    fn empty_after_h(&self, series: &Series, current_a: impl Fn(usize) -> f64) -> f64 {
        let samples = series.time_h.len();
        let Some(last_day) = samples
            .checked_sub(1)
            .and_then(|last| day_before(series, last))
        else {
            return self.looked_h;
        };
        let (mut left_ah, mut passed_h, mut index) = (self.start_ah, 0.0, 1);
        while passed_h < self.looked_h && left_ah > 0.0 {
            let span_h = series.time_h[index] - series.time_h[index - 1];
            let drawn_ah = current_a(index) * span_h;
            if drawn_ah >= left_ah {
                return (passed_h + span_h * left_ah / drawn_ah).at_most(self.looked_h);
            }
            left_ah = (left_ah - drawn_ah).at_most(self.full_ah.at_least(left_ah));
            passed_h += span_h;
            index = if index + 1 < samples {
                index + 1
            } else {
                last_day
            };
        }
        passed_h.at_most(self.looked_h)
    }
}

/// The first sample whose span lies within the day before a sample; none where that sample is the first.
fn day_before(series: &Series, last: usize) -> Option<usize> {
    let since_h = series.time_h[last] - HOURS_PER_DAY;
    (1..=last).find(|index| series.time_h[index - 1] >= since_h - 1e-9)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    fn itemise(document: ScenarioDocument) -> PlainDivision {
        plain_division(&Scenario::new(document).unwrap())
            .unwrap()
            .unwrap()
    }

    fn item(found: &PlainDivision, reason: Reason) -> f64 {
        found
            .items_h
            .iter()
            .find(|item| item.0 == reason)
            .unwrap()
            .1
    }

    #[test]
    fn items_add_up_to_the_difference() {
        for capacity_ah in [100.0, 300.0, 600.0, 1_500.0] {
            let mut document = example();
            document.battery.capacity_ah = capacity_ah;
            let found = itemise(document);
            let sum: f64 = found.items_h.iter().map(|item| item.1).sum();
            assert!(
                (found.plain_h + sum - found.simulated_h).abs() < 1e-9,
                "{found:?}"
            );
            // By hand: 800 W over 12 V are 66.7 A.
            assert!((found.plain_h - capacity_ah / (800.0 / 12.0)).abs() < 1e-9);
        }
    }

    #[test]
    fn the_usable_share_is_that_of_a_hand_calculation() {
        let mut document = example();
        document.battery.health_share = 0.9;
        let found = itemise(document);
        // (0.95 − 0.1) · 0.9 of nine hours, less the nine hours.
        assert!((item(&found, Reason::UsableShare) - 9.0 * (0.85 * 0.9 - 1.0)).abs() < 0.01);
    }

    #[test]
    fn duty_lengthens_loads_shorten_and_charging_lengthens() {
        let mut document = example();
        document.battery.capacity_ah = 200.0;
        let found = itemise(document.clone());
        assert!(item(&found, Reason::Duty) > 0.0, "{found:?}");
        assert!(item(&found, Reason::OtherLoads) < 0.0, "{found:?}");
        assert!(item(&found, Reason::Charging) > 0.0, "{found:?}");
        document.charging.panel_power_w = 0.0;
        document.loads.fridge.power_w = 0.0;
        document.loads.electronics.power_w = 0.0;
        document.loads.lights.power_w = 0.0;
        document.ventilation.fan_power_w = 0.0;
        let bare = itemise(document);
        // Only the cooler's own idle draw is left of the loads, and nothing charges.
        assert!(item(&bare, Reason::OtherLoads).abs() < 1e-9, "{bare:?}");
        assert_eq!(item(&bare, Reason::Charging), 0.0);
    }

    #[test]
    fn a_bank_that_is_never_empty_is_said_to_last_longer() {
        let mut document = example();
        document.charging.shore_power_w = 3_000.0;
        (
            document.charging.shore_from_hour,
            document.charging.shore_until_hour,
        ) = (0.0, 0.0);
        let found = itemise(document);
        assert!(found.lasts_longer);
        assert_eq!(found.simulated_h, found.looked_h);
    }

    #[test]
    fn without_a_cooler_there_is_nothing_to_divide_by() {
        let mut document = example();
        document.cooler.installed = false;
        assert_eq!(plain_division(&Scenario::new(document).unwrap()), Ok(None));
    }

    #[test]
    fn a_bucket_worked_by_hand() {
        let series = Series {
            time_h: vec![0.0, 12.0, 24.0],
            ..Series::default()
        };
        let bucket = Bucket {
            start_ah: 100.0,
            full_ah: 110.0,
            looked_h: 200.0,
        };
        assert!((bucket.empty_after_h(&series, |_| 5.0) - 20.0).abs() < 1e-12);
        // Half a day of 5 A, half a day of 2 A back: 60 Ah lost, 24 Ah gained; empty in the second day after 100 − 36 = 64,
        // 64 − 60 = 4, 28 in the morning of the third day, gone after 28/5 h.
        let by_halves = |index: usize| if index == 1 { 5.0 } else { -2.0 };
        assert!((bucket.empty_after_h(&series, by_halves) - (48.0 + 5.6)).abs() < 1e-9);
        assert_eq!(bucket.empty_after_h(&series, |_| -1.0), 200.0);
    }
}
