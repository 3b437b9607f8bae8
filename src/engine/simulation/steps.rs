//! What happens within an interval: step after step, thermostat and bank deciding in each, or nothing but heat and charge that go on.

use super::cooling::{AirAhead, CoolerPlan, CoolerStep};
use super::interval::Interval;
use super::power::{Demand, PowerStep};
use super::run::Run;
use super::timetable::LEAST_STEP_S;
use crate::cabin::{Extraction, Forecast, Gains};
use crate::quantity::{Bounded, SECONDS_PER_HOUR};

/// Change of the cabin within an interval at which the coefficients are worked out anew, K: still air that a stove heats would
/// overshoot by many kelvins if its convection stayed as weak as before.
const DRIFT_K: f64 = 1.0;

/// What of an interval has passed.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Passed {
    pub(super) span_s: f64,
    /// Heat of the appliances.
    pub(super) appliances_j: f64,
}

/// A step or a part of one, and what it would bring.
struct Planned {
    step_s: f64,
    air: AirAhead,
    plan: Option<CoolerPlan>,
}

impl Run<'_> {
    /// Passes through an interval step by step, thermostat and bank deciding in each.
    pub(super) fn control(
        &mut self,
        interval: &Interval,
        clock_s: f64,
        step_s: f64,
        planned_s: f64,
    ) -> Passed {
        let began_c = self.cabin.air_c();
        let mut passed = Passed::default();
        while passed.span_s < planned_s - LEAST_STEP_S {
            let now_s = clock_s + passed.span_s;
            let length_s = step_s.at_most(planned_s - passed.span_s);
            let switches = self.step(interval, now_s, length_s, &mut passed);
            if switches || self.has_drifted(began_c) || self.cooling.needs_refresh() {
                break;
            }
        }
        passed
    }

    /// Passes through an interval in which nothing decides, if it is one: the cooler is outside its hours, and one step of the
    /// bank, which then sees one power throughout, leaves it within its limits.
    pub(super) fn rest(
        &mut self,
        interval: &Interval,
        clock_s: f64,
        step_s: f64,
        planned_s: f64,
    ) -> Option<Passed> {
        let demand = interval.demand(0.0);
        if !(self.cooling.rests() && self.bank_rests(planned_s, &demand)) {
            return None;
        }
        let began_c = self.cabin.air_c();
        let gains = interval.gains.with_appliances(interval.loads_w);
        let mut span_s = 0.0;
        while span_s < planned_s - LEAST_STEP_S && !self.has_drifted(began_c) {
            let length_s = step_s.at_most(planned_s - span_s);
            self.cabin.set_step(length_s);
            self.cabin.step(&gains, &Extraction::NONE);
            span_s += length_s;
        }
        self.cooling.rest(span_s);
        let power = self.power.step(span_s, &demand);
        self.note(clock_s, &CoolerStep::NONE, &power);
        self.recorder.step(span_s, &power, 0.0);
        self.bank_current_a = power.current_a;
        Some(Passed {
            span_s,
            appliances_j: interval.loads_w * span_s,
        })
    }

    /// Whether one step of the bank over an interval meets no limit, neither the bank's nor one that is told or acted upon. It goes by
    /// the state alone, so that a run that is cut in two is stepped as if it were not.
    fn bank_rests(&self, span_s: f64, demand: &Demand) -> bool {
        let ahead = self.power.ahead(span_s, demand);
        let reserve = self.document.need.reserve_state_of_charge;
        let crosses_reserve = self.power.is_below(reserve) != ahead.is_below(reserve);
        !ahead.is_limited() && !crosses_reserve && self.cooling.rests_at(ahead.voltage_v())
    }

    /// Whether the air has left the temperature of an interval's beginning so far that convection has to be worked out anew.
    #[inline(always)]
    fn has_drifted(&self, began_c: f64) -> bool {
        (self.cabin.air_c() - began_c).abs() > DRIFT_K
    }

    /// One step, cut short where the thermostat switches within it; gives whether it was.
    #[inline(always)]
    fn step(&mut self, interval: &Interval, now_s: f64, step_s: f64, passed: &mut Passed) -> bool {
        let mut planned = self.planned(interval, step_s);
        let switch_s = self.switch_within_s(&planned);
        if let Some(switch_s) = switch_s {
            planned = self.planned_anew(interval, switch_s);
        }
        self.part(interval, now_s, &planned, passed);
        if switch_s.is_some() {
            self.switch_c = self.cooling.switch_c();
        }
        switch_s.is_some()
    }

    /// When within a step the thermostat switches, s, if neither at its beginning nor at its end.
    #[inline(always)]
    fn switch_within_s(&self, planned: &Planned) -> Option<f64> {
        let step_s = planned.step_s;
        let plan = planned.plan.as_ref()?;
        self.cooling
            .switch_after_s(step_s, &planned.air, plan)
            .filter(|after_s| (LEAST_STEP_S..step_s - LEAST_STEP_S).contains(after_s))
    }

    /// [`Self::planned`] for the few steps that are cut.
    #[cold]
    #[inline(never)]
    fn planned_anew(&mut self, interval: &Interval, step_s: f64) -> Planned {
        self.planned(interval, step_s)
    }

    /// What a step of a length would bring.
    #[inline(always)]
    fn planned(&mut self, interval: &Interval, step_s: f64) -> Planned {
        self.cabin.set_step(step_s);
        let air = self.air_ahead(interval);
        let plan = self.cooling.plan(step_s, &air, interval.cooler_waits);
        Planned { step_s, air, plan }
    }

    /// The air now and, where a cooler may follow it, at the end of the step without one.
    #[inline(always)]
    fn air_ahead(&mut self, interval: &Interval) -> AirAhead {
        let now_c = self.cabin.air_c();
        if interval.cooler_waits || !self.cooling.may_run() {
            // Nothing follows the temperature, so nothing is gained by looking ahead.
            return AirAhead {
                now_c,
                forecast: Forecast {
                    air_c: now_c,
                    fall_k_per_w: 0.0,
                },
            };
        }
        let gains = interval.gains.with_appliances(interval.loads_w);
        AirAhead {
            now_c,
            forecast: self.cabin.forecast(&gains),
        }
    }

    /// A step or a part of one: thermostat, bank and network in turn.
    #[inline(always)]
    fn part(&mut self, interval: &Interval, now_s: f64, planned: &Planned, passed: &mut Passed) {
        let step_s = planned.step_s;
        let mut cooler = self
            .cooling
            .step(step_s, &planned.air, planned.plan.as_ref());
        let demand = interval.demand(cooler.electric_power_w);
        let power = self.power.step(step_s, &demand);
        if self.cooling.after(step_s, &cooler, &power, &self.power) {
            cooler = CoolerStep::NONE;
        }
        self.note(now_s, &cooler, &power);
        let appliances_w = power.loads_w + cooler.blower_w;
        passed.appliances_j += appliances_w * step_s;
        passed.span_s += step_s;
        let gains: Gains = interval.gains.with_appliances(appliances_w);
        self.cabin.step(&gains, &cooler.extraction);
        self.recorder.step(step_s, &power, cooler.capacity_share);
        self.bank_current_a = power.current_a;
    }

    /// Keeps the extremes and firsts of the run.
    #[inline(always)]
    fn note(&mut self, now_s: f64, cooler: &CoolerStep, power: &PowerStep) {
        let now_h = || now_s / SECONDS_PER_HOUR;
        let results = &mut self.results;
        results.peak_discharge_a = results.peak_discharge_a.at_least(-power.current_a);
        if cooler.started {
            self.recorder.totals.compressor_starts += 1;
            let start_a = self.cooling.start_current_a(&self.power) - power.current_a.at_most(0.0);
            results.peak_start_a = results.peak_start_a.at_least(start_a);
        }
        if let (None, Some(stop)) = (results.first_stop, self.cooling.stopped()) {
            results.first_stop = Some((now_h(), stop));
        }
        if power.emptied && results.emptied_at_h.is_none() {
            results.emptied_at_h = Some(now_h());
        }
        let reserve = self.document.need.reserve_state_of_charge;
        if results.below_reserve_at_h.is_none() && self.power.is_below(reserve) {
            results.below_reserve_at_h = Some(now_h());
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::scenario::{FanUse, Scenario, ScenarioDocument, example};
    use crate::simulation::{Prepared, Results};

    /// A cool grey day without fan, and a cooler that would draw nothing while it is off.
    fn grey_day(installed: bool) -> Results {
        let mut document: ScenarioDocument = example();
        (document.day.high_c, document.day.low_c) = (16.0, 8.0);
        (document.day.dew_point_c, document.day.cloud_fraction) = (4.0, 1.0);
        document.ventilation.fan_use = FanUse::Off;
        document.cooler.installed = installed;
        document.cooler.set_point_c = 32.0;
        document.cooler.idle_power_w = 0.0;
        (
            document.cooler.run_from_hour,
            document.cooler.run_until_hour,
        ) = (0.0, 0.0);
        let scenario = Scenario::new(document).unwrap();
        Prepared::new(&scenario).unwrap().run().unwrap()
    }

    /// Without a cooler the bank takes a resting interval in one step; with one that never starts, it is stepped every ten seconds.
    #[test]
    fn a_bank_at_rest_goes_as_one_that_is_stepped() {
        let (rested, stepped) = (grey_day(false), grey_day(true));
        assert_eq!(stepped.totals.compressor_starts, 0);
        let (one, other) = (&rested.series, &stepped.series);
        let least = one.state_of_charge.iter().copied().fold(1.0, f64::min);
        assert!(least < 0.94, "nothing was drawn: {least}");
        let pairs = |one: &[f64], other: &[f64]| -> f64 {
            let gaps = one.iter().zip(other).map(|(a, b)| (a - b).abs());
            gaps.fold(0.0, f64::max)
        };
        assert!(pairs(&one.state_of_charge, &other.state_of_charge) < 1e-7);
        assert!(pairs(&one.bank_current_a, &other.bank_current_a) < 1e-3);
        assert!(pairs(&one.cabin_c, &other.cabin_c) < 1e-9);
        assert!((rested.totals.loads_wh - stepped.totals.loads_wh).abs() < 1e-6);
        assert!((rested.totals.bank_loss_wh - stepped.totals.bank_loss_wh).abs() < 1e-3);
    }
}
