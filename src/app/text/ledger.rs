//! Wording of the figures beside the charts: bank, energy, heat by path, cost.

use noonday_engine::advice::Cost;
use noonday_engine::cooler::data_plate::PlateVerdict;
use noonday_engine::simulation::{HeatPath, Stop};

/// Name of a heat path.
pub fn path_name(path: HeatPath) -> &'static str {
    match path {
        HeatPath::Roof => "Roof",
        HeatPath::Left => "Left side",
        HeatPath::Right => "Right side",
        HeatPath::Nose => "Nose",
        HeatPath::Rear => "Rear doors",
        HeatPath::Floor => "Floor",
        HeatPath::GlassWarmth => "Glass, by its warmth",
        HeatPath::GlassSun => "Sun through the glass",
        HeatPath::Leakage => "Leaks",
        HeatPath::Fan => "Fan",
        HeatPath::Openings => "Opened windows",
        HeatPath::People => "People",
        HeatPath::Animals => "Animals",
        HeatPath::Cooking => "Cooking",
        HeatPath::Appliances => "Lights, fridge, blowers",
        HeatPath::Cooler => "Cooler",
        HeatPath::Stored => "Given back by furniture and linings",
    }
}

/// Head of the column of an instant.
pub fn at_instant(instant: &str) -> String {
    format!("At {instant}")
}

/// What stopped the cooler, in mid-sentence.
pub fn stop_name(stop: Stop) -> &'static str {
    match stop {
        Stop::BankEmpty => "the bank was used up",
        Stop::LowVoltage => "the voltage at the cooler was too low",
        Stop::CurrentLimit => "the bank’s protection limited the current",
        Stop::InverterOverload => "the inverter could not carry the start",
    }
}

/// Rows of the cost table, without the sum.
pub fn cost_rows(cost: &Cost) -> [(&'static str, f64); 9] {
    [
        ("Cooler", cost.cooler),
        ("Bank", cost.bank),
        ("Panels", cost.panels),
        ("DC-DC charger", cost.dc_dc),
        ("Insulation", cost.insulation),
        ("Window covers", cost.covers),
        ("Roof fan", cost.fan),
        ("Work", cost.labour),
        ("Tax", cost.tax),
    ]
}

/// What is said of a data plate by what its capacity and power imply.
pub fn plate_verdict(verdict: PlateVerdict) -> &'static str {
    match verdict {
        PlateVerdict::Pessimistic => {
            "Less than small units reach: a modest plate, or a power that is not the running one."
        }
        PlateVerdict::Plausible => "Within what small units reach.",
        PlateVerdict::Optimistic => {
            "More than small units reach at the rating condition; possible if it was rated on a milder day."
        }
        PlateVerdict::Implausible => {
            "More than any small unit reaches: capacity and power on this plate cannot both hold. “Believe the plate” has a cautious choice."
        }
    }
}

/// Heading of the data plate.
pub const PLATE: &str = "The cooler’s plate";
/// Heading of the bank's figures.
pub const BANK: &str = "The bank";
/// Heading of the day's electric energy.
pub const ENERGY: &str = "Electricity over the run";
/// Heading of the heat.
pub const HEAT: &str = "Where the heat comes from";
/// Head of its names.
pub const HEAT_BY: &str = "By";
/// Head of its sums.
pub const OVER_THE_RUN: &str = "Over the run";
/// Under that heading.
pub const HEAT_NOTE: &str = "Heat into the cabin by each way, less what left by it: solid bars come in, hatched bars with a minus go out. The first column follows the hour that is read on the charts. Water that the cooler takes out of the air comes on top.";
/// Heading of the cost.
pub const COST: &str = "What it costs";
/// Under that heading.
pub const COST_NOTE: &str = "At the prices given, which are invented until you change them.";
/// Sum of the cost.
pub const TOTAL: &str = "Together";
/// Remark on plain division.
pub const PLAIN_NOTE: &str = "Plain division knows no sun, no other loads, no rest of the compressor and no losses; the run does.";
/// Remark on extrapolation.
pub const EXTRAPOLATED: &str = "For part of the run the cooler worked outside the range of its published performance curves; there they are continued, which is less certain.";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_path_has_its_own_name() {
        let mut names = HeatPath::ALL.map(path_name).to_vec();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), HeatPath::COUNT);
    }

    #[test]
    fn only_a_plate_that_cannot_hold_points_to_the_cautious_choice() {
        assert!(plate_verdict(PlateVerdict::Implausible).contains("cautious"));
        for verdict in [
            PlateVerdict::Pessimistic,
            PlateVerdict::Plausible,
            PlateVerdict::Optimistic,
        ] {
            assert!(!plate_verdict(verdict).contains("cautious"));
        }
    }

    #[test]
    fn the_rows_of_the_cost_hold_every_part_of_it() {
        let cost = Cost {
            cooler: 1.0,
            bank: 2.0,
            panels: 4.0,
            dc_dc: 8.0,
            insulation: 16.0,
            covers: 32.0,
            fan: 64.0,
            labour: 128.0,
            tax: 256.0,
            total: 511.0,
        };
        let sum: f64 = cost_rows(&cost).iter().map(|(_, amount)| amount).sum();
        assert_eq!(sum, cost.total);
    }
}
