//! Wording of 12, 24 and 48 V, direct and through an inverter.

use super::{amps, both_sizes, series, watts};
use crate::text::Voice;
use noonday_engine::advice::voltages::Feed;
use noonday_engine::electrical::InverterOverload;
use noonday_engine::electrical::conductor::SizeSeries;
use noonday_engine::scenario::{CoolerSupply, SystemVoltage};

/// Line that opens to them.
pub const VOLTAGES: &str = "12, 24 or 48 volts, direct or through an inverter";
/// Caption of the table.
pub const VOLTAGES_CAPTION: &str = "The same cooling, fed in six ways";
/// Its columns.
pub const VOLTAGES_HEADS: [&str; 4] = ["Fed with", "Current", "Cable", "Lost, waiting"];
/// Under it.
pub const VOLTAGES_NOTE: &str = "Same cooler power, lengths and inverter throughout; “waiting” is the draw while nothing cools. The inverter’s cable is for all that the inverter can take. Twice the voltage is half the current and, in the same cable, a quarter of the loss.";
/// Without a cooler.
pub const VOLTAGES_NONE: &str = "Without a cooler there is nothing to feed.";
/// Cautions beside it.
pub const VOLTAGES_CAUTION: &str = "48 V banks reach 58 V while they charge: enough for a shock on wet skin and for an arc that does not go out by itself. Mains voltage behind an inverter kills; its wiring, earthing and residual-current protection belong to a licensed electrician.";

/// A way to feed the cooler.
pub fn feed_name(feed: &Feed) -> String {
    let voltage = match feed.voltage {
        SystemVoltage::V12 => "12",
        SystemVoltage::V24 => "24",
        SystemVoltage::V48 => "48",
    };
    let supply = match feed.supply {
        CoolerSupply::DirectCurrent => "direct",
        CoolerSupply::MainsThroughInverter => "inverter",
    };
    let here = if feed.is_present { " (as it is)" } else { "" };
    format!("{voltage}\u{a0}V {supply}{here}")
}

/// Its cells.
pub fn feed_cells(feed: &Feed, voice: &Voice) -> Vec<String> {
    let choice = match series(voice.units) {
        SizeSeries::WireGauge => &feed.gauge,
        SizeSeries::Metric => &feed.metric,
    };
    let cable_loss = feed.cable_loss_w(choice).map(|loss_w| watts(loss_w, voice));
    let mut lost = cable_loss.map_or_else(String::new, |loss| format!("{loss} cable, "));
    if feed.inverter_loss_w > 0.0 {
        lost += &format!("{} inverter, ", watts(feed.inverter_loss_w, voice));
    }
    vec![
        format!(
            "{}, start {}",
            amps(feed.running_a, voice),
            amps(feed.start_a, voice)
        ),
        both_sizes(&feed.gauge, &feed.metric, voice),
        format!("{lost}waiting {}", watts(feed.idle_w, voice)),
    ]
}

/// How the inverter is overloaded, or that it is not.
pub fn overload_said(feeds: &[Feed], voice: &Voice) -> Option<String> {
    let through = feeds
        .iter()
        .find(|feed| feed.supply == CoolerSupply::MainsThroughInverter)?;
    Some(match through.overload {
        None => "The inverter carries the cooler, running and at its start.".to_owned(),
        Some(InverterOverload::Continuous { load_w, limit_w }) => format!(
            "The inverter is too small: the cooler runs with {}, it is rated for {}.",
            watts(load_w, voice),
            watts(limit_w, voice)
        ),
        Some(InverterOverload::Surge { load_w, limit_w }) => format!(
            "The inverter does not stand the start: it takes {}, and gives {} at most.",
            watts(load_w, voice),
            watts(limit_w, voice)
        ),
    })
}
