//! Which limit failed first in a missed window.

use super::judge::{TOLERANCE_K, over_k};
use super::verdict::Cause;
use crate::quantity::SECONDS_PER_HOUR;
use crate::scenario::{NeedWindow, ScenarioDocument};
use crate::schedule::HourWindow;
use crate::simulation::{Series, Stop};

/// Output from which a cooler counts as working flat out, share.
const FLAT_OUT: f64 = 0.95;

/// Why a window was missed, from the state at the first sample that misses it.
///
/// * `index` — that sample
/// * `last_met` — the last sample of the window that keeps the limit, if any does
pub(super) fn cause(
    document: &ScenarioDocument,
    window: &NeedWindow,
    series: &Series,
    index: usize,
    last_met: Option<usize>,
) -> Cause {
    if over_k(window, series, index) <= TOLERANCE_K {
        return Cause::Humidity;
    }
    if !document.cooler.installed {
        return Cause::NoCooler;
    }
    if let Some(stop) = series.stopped[index] {
        return match stop {
            Stop::BankEmpty => Cause::BankEmpty,
            Stop::LowVoltage => Cause::LowVoltage,
            Stop::CurrentLimit => Cause::CurrentLimit,
            Stop::InverterOverload => Cause::InverterOverload,
        };
    }
    if !allowed_at(document, series.time_h[index]) {
        return Cause::NeverSwitchedOn;
    }
    let met_later = last_met.is_some_and(|last| last > index);
    let met_before = last_met.is_some_and(|last| last < index);
    if met_later && !met_before && series.cooler_share[index] > 0.0 {
        return Cause::NotYetCooled;
    }
    if series.cooler_share[index] >= FLAT_OUT {
        Cause::Capacity
    } else {
        Cause::SetPoint
    }
}

/// Whether the cooler may run at an instant.
fn allowed_at(document: &ScenarioDocument, time_h: f64) -> bool {
    let cooler = &document.cooler;
    HourWindow::new(cooler.run_from_hour, cooler.run_until_hour)
        .is_ok_and(|hours| hours.contains(time_h * SECONDS_PER_HOUR))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::example;

    /// What the one sample of a window that misses its limit of 28 °C shows.
    #[derive(Clone, Copy)]
    struct Seen {
        felt_c: f64,
        at_h: f64,
        cooler_share: f64,
        stopped: Option<Stop>,
        last_met: Option<usize>,
    }

    /// Noon, within the cooler's hours, working flat out, never cool enough.
    const FLAT_OUT_AT_NOON: Seen = Seen {
        felt_c: 31.0,
        at_h: 12.0,
        cooler_share: 1.0,
        stopped: None,
        last_met: None,
    };

    fn named(document: &ScenarioDocument, seen: Seen) -> Cause {
        let series = Series {
            time_h: vec![seen.at_h],
            felt_c: vec![seen.felt_c],
            cooler_share: vec![seen.cooler_share],
            stopped: vec![seen.stopped],
            ..Series::default()
        };
        let window = &document.need.windows[0];
        cause(document, window, &series, 0, seen.last_met)
    }

    #[test]
    fn each_limit_has_its_name() {
        let document = example();
        let seen = FLAT_OUT_AT_NOON;
        assert_eq!(named(&document, seen), Cause::Capacity);
        let idle = Seen {
            cooler_share: 0.4,
            ..seen
        };
        assert_eq!(named(&document, idle), Cause::SetPoint);
        let pulling_down = Seen {
            last_met: Some(7),
            ..seen
        };
        assert_eq!(named(&document, pulling_down), Cause::NotYetCooled);
        let early = Seen { at_h: 9.0, ..seen };
        assert_eq!(named(&document, early), Cause::NeverSwitchedOn);
        let humid = Seen {
            felt_c: 27.0,
            ..seen
        };
        assert_eq!(named(&document, humid), Cause::Humidity);
    }

    #[test]
    fn each_stop_has_its_name() {
        for (stop, expected) in [
            (Stop::BankEmpty, Cause::BankEmpty),
            (Stop::LowVoltage, Cause::LowVoltage),
            (Stop::CurrentLimit, Cause::CurrentLimit),
            (Stop::InverterOverload, Cause::InverterOverload),
        ] {
            let seen = Seen {
                stopped: Some(stop),
                ..FLAT_OUT_AT_NOON
            };
            assert_eq!(named(&example(), seen), expected);
        }
    }

    #[test]
    fn without_a_cooler_that_is_the_cause() {
        let mut document = example();
        document.cooler.installed = false;
        assert_eq!(named(&document, FLAT_OUT_AT_NOON), Cause::NoCooler);
    }
}
