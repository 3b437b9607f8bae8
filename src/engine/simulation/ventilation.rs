//! Leaks, fan and opened windows: how much outdoor air comes in.

use super::build::BuildError;
use crate::cabin::AirExchange;
use crate::envelope::air_exchange::{leakage_flow_m3_s, opening_flow_m3_s};
use crate::quantity::Bounded;
use crate::scenario::{FanUse, ScenarioDocument};
use crate::schedule::HourWindow;

/// How much cooler it has to be outdoors before a fan helps, K: common practice, no source.
const WORTHWHILE_K: f64 = 1.0;

/// How close to the outdoors the fan brings the cabin before the cooler takes over, K, and how long it may try, s: common
/// practice, no source.
const PURGED_WITHIN_K: f64 = 2.0;
const LONGEST_PURGE_S: f64 = 900.0;

/// Road speed over which wind-driven leaks are counted in full, as share of it: openings lie out of the stream.
const ROAD_WIND_SHARE: f64 = 0.3;

/// The state of the air when the fan's use is decided.
#[derive(Clone, Copy, Debug)]
pub(super) struct FanSituation {
    /// Beginning of the interval, s.
    pub(super) clock_s: f64,
    /// An instant within it, s.
    pub(super) within_s: f64,
    pub(super) span_s: f64,
    pub(super) cabin_c: f64,
    pub(super) outdoor_c: f64,
    /// Whether the cooler may run in this interval.
    pub(super) cooler_allowed: bool,
    /// Whether the cooler was running.
    pub(super) cooler_running: bool,
}

/// The ways for outdoor air, with what the fan is doing.
#[derive(Clone, Debug)]
pub(super) struct Ventilation {
    leakage_m2: f64,
    height_m: f64,
    fan_use: FanUse,
    fan_m3_s: f64,
    fan_w: f64,
    fan_hours: HourWindow,
    purges: bool,
    purged_s: f64,
    set_point_c: f64,
    opening_m2: f64,
    opening_hours: HourWindow,
    fan_on: bool,
}

impl Ventilation {
    pub(super) fn new(document: &ScenarioDocument) -> Result<Self, BuildError> {
        let ventilation = &document.ventilation;
        let has_fan = ventilation.fan_use != FanUse::Off && ventilation.fan_flow_m3_s > 0.0;
        Ok(Self {
            leakage_m2: document.shell.leakage_area_m2,
            height_m: document.vehicle.height_m,
            fan_use: ventilation.fan_use,
            fan_m3_s: ventilation.fan_flow_m3_s,
            fan_w: ventilation.fan_power_w,
            fan_hours: HourWindow::new(ventilation.fan_from_hour, ventilation.fan_until_hour)?,
            purges: ventilation.purge_before_cooling && has_fan,
            purged_s: 0.0,
            set_point_c: document.cooler.set_point_c,
            opening_m2: ventilation.opening_area_m2,
            opening_hours: HourWindow::new(
                ventilation.opening_from_hour,
                ventilation.opening_until_hour,
            )?,
            fan_on: false,
        })
    }

    /// Stops the fan for good.
    pub(super) fn fail(&mut self) {
        self.fan_use = FanUse::Off;
        self.purges = false;
    }

    /// Decides on the fan for an interval; gives whether the cooler has to wait for it.
    pub(super) fn decide(&mut self, now: &FanSituation) -> bool {
        let purging = self.purging(now);
        self.fan_on = purging || self.wanted(now);
        let fan_does_it = self.fan_on
            && self.fan_use == FanUse::WhenOutdoorsCooler
            && now.outdoor_c < self.set_point_c - WORTHWHILE_K;
        purging || fan_does_it
    }

    pub(super) fn fan_power_w(&self) -> f64 {
        if self.fan_on { self.fan_w } else { 0.0 }
    }

    pub(super) fn fan_flow_m3_s(&self) -> f64 {
        if self.fan_on { self.fan_m3_s } else { 0.0 }
    }

    /// Outdoor air over an interval; `wind_m_s` at the station, `road_m_s` of the vehicle.
    pub(super) fn air_exchange(
        &self,
        now: &FanSituation,
        wind_m_s: f64,
        road_m_s: f64,
    ) -> AirExchange {
        let stream_m_s = wind_m_s.at_least(ROAD_WIND_SHARE * road_m_s);
        let open_share = if self.opening_m2 > 0.0 {
            self.opening_hours.overlap_fraction(now.clock_s, now.span_s)
        } else {
            0.0
        };
        AirExchange {
            leakage_m3_s: leakage_flow_m3_s(
                self.leakage_m2,
                self.height_m,
                now.cabin_c - now.outdoor_c,
                stream_m_s,
            ),
            fan_m3_s: self.fan_flow_m3_s(),
            openings_m3_s: open_share
                * opening_flow_m3_s(
                    self.opening_m2,
                    self.height_m,
                    now.cabin_c,
                    now.outdoor_c,
                    stream_m_s,
                ),
        }
    }

    /// Blowing the hot air out before the cooler starts, as long as that gets anywhere.
    fn purging(&mut self, now: &FanSituation) -> bool {
        if !self.purges || !now.cooler_allowed || now.cooler_running {
            self.purged_s = 0.0;
            return false;
        }
        let hot = now.cabin_c > self.set_point_c
            && now.cabin_c > now.outdoor_c + PURGED_WITHIN_K
            && self.purged_s < LONGEST_PURGE_S;
        if hot {
            self.purged_s += now.span_s;
        }
        hot
    }

    fn wanted(&self, now: &FanSituation) -> bool {
        let in_hours = self.fan_hours.contains(now.within_s);
        match self.fan_use {
            FanUse::Off => false,
            FanUse::InHours => in_hours,
            FanUse::WhenOutdoorsCooler => {
                let less_k = if self.fan_on { 0.0 } else { WORTHWHILE_K };
                let helps = now.cabin_c > self.set_point_c - WORTHWHILE_K
                    && now.outdoor_c < now.cabin_c - less_k;
                let cooler_has_it = now.cooler_allowed && now.outdoor_c > self.set_point_c;
                in_hours && helps && !cooler_has_it
            }
        }
    }
}
