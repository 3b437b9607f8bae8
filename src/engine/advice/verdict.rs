//! Is the need met, what failed first, and how long does the bank last.

use super::heat::HeatReading;
use crate::quantity::Bounded;
use crate::scenario::NeededFor;
use serde::{Deserialize, Serialize};

/// Why a window of the need was missed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Cause {
    /// There is no cooler.
    NoCooler,
    /// The cooler was not allowed to run in those hours.
    NeverSwitchedOn,
    /// It was still pulling the heat out when the window began.
    NotYetCooled,
    /// It ran at full output and could not hold.
    Capacity,
    /// The thermostat is set above what the window asks for.
    SetPoint,
    /// The bank was at its lowest charge.
    BankEmpty,
    /// Voltage at the cooler was too low.
    LowVoltage,
    /// The bank's protection limits the current.
    CurrentLimit,
    /// The inverter could not carry the start.
    InverterOverload,
    /// Only the humidity was too high.
    Humidity,
}

/// One window of the need on one day, judged.
#[derive(Clone, Debug, PartialEq)]
pub struct WindowVerdict {
    /// Index of the window in the scenario.
    pub slot: usize,
    /// For whom.
    pub needed_for: NeededFor,
    /// It begins, clock hours since midnight of the first day.
    pub from_h: f64,
    /// It ends, clock hours since midnight of the first day.
    pub until_h: f64,
    /// Highest felt temperature allowed, °C.
    pub highest_felt_c: f64,
    /// Highest heat index allowed, °C, where one is asked.
    pub highest_heat_index_c: Option<f64>,
    /// Whether it was met throughout.
    pub met: bool,
    /// Time above the limit, h.
    pub missed_h: f64,
    /// Excess above the limit summed over time, K h.
    pub degree_hours_k_h: f64,
    /// Highest felt temperature reached in it, °C.
    pub worst_felt_c: f64,
    /// When, clock hours since midnight of the first day.
    pub worst_at_h: f64,
    /// When it was first missed, clock hours since midnight of the first day.
    pub first_missed_at_h: Option<f64>,
    /// Why, when missed.
    pub cause: Option<Cause>,
    /// Highest felt temperature reached in it without any cooler, °C.
    pub worst_felt_without_cooler_c: f64,
    /// Time above the limit without any cooler, h.
    pub missed_without_cooler_h: f64,
    /// Highest heat index reached in it.
    pub worst_heat: HeatReading,
    /// Highest heat index reached in it without any cooler.
    pub worst_heat_without_cooler: HeatReading,
}

impl WindowVerdict {
    /// Least distance below the limits of felt temperature and heat index, K; negative when one was passed.
    #[must_use]
    pub fn margin_k(&self) -> f64 {
        let felt_k = self.highest_felt_c - self.worst_felt_c;
        match self.highest_heat_index_c {
            Some(limit_c) => felt_k.at_most(limit_c - self.worst_heat.heat_index_c),
            None => felt_k,
        }
    }
}

/// What became of the bank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BankVerdict {
    /// Lowest charge, share.
    pub lowest_state_of_charge: f64,
    /// When, clock hours since midnight of the first day.
    pub lowest_at_h: f64,
    /// Charge at the end, share.
    pub end_state_of_charge: f64,
    /// When it fell below the reserve, clock hours since midnight of the first day.
    pub below_reserve_at_h: Option<f64>,
    /// Hours from the start until the bank is at its lowest charge if further days draw like the last; none within
    /// [`BankVerdict::days_looked`].
    pub lasts_h: Option<f64>,
    /// Days looked ahead for [`BankVerdict::lasts_h`].
    pub days_looked: u32,
    /// Usable ampere-hours over the cooler's mean running current, h: plain division, none if it never ran.
    pub plain_division_h: Option<f64>,
    /// Mean current of the cooler while it ran, A.
    pub cooler_running_a: f64,
}

/// The answer in one word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Headline {
    /// No window of the need is in use.
    NothingAsked,
    /// Met, and it would be met without any cooler.
    MetWithoutCooler,
    /// Met, reserve kept.
    Met,
    /// Met, but the bank falls below the reserve asked for.
    MetBelowReserve,
    /// Missed.
    Missed,
}

/// The whole verdict on a run.
#[derive(Clone, Debug, PartialEq)]
pub struct Verdict {
    /// The answer in one word.
    pub headline: Headline,
    /// Every window on every day, in the order in which they begin.
    pub windows: Vec<WindowVerdict>,
    /// Index in `windows` of the one first missed.
    pub first_missed: Option<usize>,
    /// What became of the bank.
    pub bank: BankVerdict,
}

impl Verdict {
    /// Whether any window is in use and every one of them is met.
    #[must_use]
    pub fn windows_met(&self) -> bool {
        !self.windows.is_empty() && self.windows.iter().all(|window| window.met)
    }

    /// Unmet degree-hours of all windows, K h, zero or more: Σ excess above the limit times how long.
    #[must_use]
    pub fn degree_hours_k_h(&self) -> f64 {
        self.windows
            .iter()
            .map(|window| window.degree_hours_k_h)
            .sum()
    }
}
