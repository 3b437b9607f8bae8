//! What an interval is worked out from: the surroundings, what is inside, what draws and what charges.

use super::failure::FailingPart;
use super::inside::InsideGains;
use super::power::Demand;
use super::recorder::FELT_AIR_SPEED_M_S;
use super::run::Run;
use super::timetable::LEAST_STEP_S;
use super::ventilation::FanSituation;
use crate::cabin::Boundary;
use crate::comfort::operative_temperature_c;
use crate::quantity::Bounded;

/// An interval's inputs, worked out once.
pub(super) struct Interval {
    pub(super) outdoor_c: f64,
    pub(super) gains: InsideGains,
    pub(super) cooler_waits: bool,
    pub(super) loads_w: f64,
    pub(super) panels_w: f64,
    pub(super) driving_share: f64,
    pub(super) shore_share: f64,
}

impl Interval {
    /// What is offered and asked in a step with so much for the cooler, W.
    #[inline(always)]
    pub(super) fn demand(&self, cooler_w: f64) -> Demand {
        Demand {
            cooler_w,
            loads_w: self.loads_w,
            panels_w: self.panels_w,
            driving_share: self.driving_share,
            shore_share: self.shore_share,
        }
    }

    /// Nothing draws and nothing charges.
    fn without_power(self) -> Self {
        Self {
            loads_w: 0.0,
            panels_w: 0.0,
            driving_share: 0.0,
            shore_share: 0.0,
            ..self
        }
    }
}

impl Run<'_> {
    /// Lets fail what has failed; gives whether the bank still feeds anything.
    fn fail(&mut self, clock_s: f64) -> bool {
        let Some(failure) = self.failure.filter(|failure| failure.has_happened(clock_s)) else {
            return true;
        };
        self.cooling.fail();
        let powered = failure.part != FailingPart::Bank;
        if !powered {
            self.ventilation.fail();
        }
        powered
    }

    /// Works out an interval and sets the network's coefficients.
    pub(super) fn open(
        &mut self,
        clock_s: f64,
        span_s: f64,
        step_s: f64,
        cooled: bool,
    ) -> Interval {
        let surroundings = self.environment.at(clock_s + 0.5 * span_s);
        // An interval may begin a rounding before the hour at which something switches.
        let within_s = clock_s + LEAST_STEP_S;
        let powered = self.fail(within_s);
        self.cooling.set_clock(within_s);
        let situation = FanSituation {
            clock_s,
            within_s,
            span_s,
            cabin_c: self.cabin.air_c(),
            outdoor_c: surroundings.outdoor_c,
            cooler_allowed: cooled && self.cooling.may_run(),
            cooler_running: self.cooling.running(),
        };
        let cooler_waits = self.ventilation.decide(&situation);
        if cooled {
            let cabin_c = self.switch_c.take().unwrap_or(situation.cabin_c);
            self.cooling.settle(cabin_c, cooler_waits);
        }
        let road_m_s = if self.drives_at(within_s) {
            self.document.charging.drive_speed_m_s
        } else {
            0.0
        };
        let wind_m_s = surroundings.wind_speed_m_s;
        let boundary = Boundary {
            outdoor_c: surroundings.outdoor_c,
            outdoor_humidity_ratio: surroundings.humidity_ratio,
            sky_c: surroundings.sky_c,
            ground_c: surroundings.ground_c,
            shaded_ground_c: surroundings.shaded_ground_c,
            wind_speed_m_s: wind_m_s,
            wind_from_deg: self.environment.wind_from_deg,
            road_speed_m_s: road_m_s,
            air_exchange: self
                .ventilation
                .air_exchange(&situation, wind_m_s, road_m_s),
            stirred_m3_s: self.ventilation.fan_flow_m3_s() + self.cooling.airflow_m3_s(),
            sun: &surroundings.sun,
        };
        self.set_covers(within_s);
        self.cabin.set_conditions(&boundary, step_s);
        let felt_c = operative_temperature_c(
            self.cabin.air_c(),
            self.cabin.radiant_c(),
            FELT_AIR_SPEED_M_S,
        );
        let plan_shade = self
            .panel_shade
            .map(|shade| shade.at(clock_s + 0.5 * span_s));
        let interval = Interval {
            gains: self.inside.gains(clock_s, span_s, felt_c),
            cooler_waits,
            loads_w: self.power.loads_w(clock_s, span_s) + self.ventilation.fan_power_w(),
            panels_w: self.power.panels_w(
                surroundings.horizontal_sun_w_m2,
                plan_shade,
                surroundings.outdoor_c,
                wind_m_s.at_least(road_m_s),
            ),
            driving_share: self.power.driving_share(clock_s, span_s),
            shore_share: self.power.shore_share(clock_s, span_s),
            outdoor_c: surroundings.outdoor_c,
        };
        if powered {
            interval
        } else {
            interval.without_power()
        }
    }

    /// The bank stands among the goods and has their temperature.
    pub(super) fn bank_c(&self) -> f64 {
        self.cabin
            .core_c(self.body.goods)
            .unwrap_or_else(|| self.cabin.air_c())
    }

    fn drives_at(&self, clock_s: f64) -> bool {
        self.driving.is_some_and(|hours| hours.contains(clock_s))
    }

    /// Puts covers on the panes or takes them off.
    fn set_covers(&mut self, clock_s: f64) {
        let covered = self.covers.is_some_and(|hours| hours.contains(clock_s));
        if covered == self.covered {
            return;
        }
        self.covered = covered;
        let pane = if covered {
            &self.body.covered_pane
        } else {
            &self.body.bare_pane
        };
        self.cabin.replace_panes(pane);
    }
}
