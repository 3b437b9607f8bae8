//! Wording of the figures beside the charts: bank, energy, heat by path, cost.

use super::Voice;
use crate::format::{Amount, Measure};
use noonday_engine::advice::{Advice, Cost};
use noonday_engine::cooler::data_plate::PlateVerdict;
use noonday_engine::scenario::Dimension;
use noonday_engine::simulation::{HeatPath, Stop};

/// A line of a table.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// What it is, the same in every state.
    pub name: &'static str,
    /// What this state adds to the name.
    detail: String,
    /// How much it is; none where only words will do.
    pub amount: Option<Amount>,
    /// Those words.
    said: String,
}

impl Row {
    fn new(name: &'static str, amount: Amount) -> Self {
        Self {
            name,
            detail: String::new(),
            amount: Some(amount),
            said: String::new(),
        }
    }

    fn in_words(name: &'static str, said: String) -> Self {
        Self {
            name,
            detail: String::new(),
            amount: None,
            said,
        }
    }

    fn with_detail(self, detail: String) -> Self {
        Self { detail, ..self }
    }

    /// Name with detail.
    pub fn title(&self) -> String {
        format!("{}{}", self.name, self.detail)
    }

    /// What stands beside it.
    pub fn text(&self, voice: &Voice) -> String {
        match self.amount {
            Some(amount) => voice.amount(amount),
            None => self.said.clone(),
        }
    }
}

/// Rows of the table of the bank.
pub fn bank_rows(advice: &Advice, voice: &Voice) -> Vec<Row> {
    let bank = &advice.verdict.bank;
    let run = &advice.with_cooler;
    let amperes = |current_a: f64| Measure::Of(Dimension::Current).of(current_a.round());
    let lasts = "Such days in a row until it is used up";
    let mut rows = vec![
        Row::new(
            "Lowest charge",
            Measure::Percent.of(bank.lowest_state_of_charge),
        )
        .with_detail(format!(", at {}", voice.instant(bank.lowest_at_h))),
        Row::new(
            "Charge at the end",
            Measure::Percent.of(bank.end_state_of_charge),
        ),
        match bank.lasts_h {
            Some(hours) => Row::new(lasts, Measure::Duration.of(hours)),
            None => Row::in_words(lasts, format!("more than {}\u{a0}days", bank.days_looked)),
        },
    ];
    if let Some(hours) = bank.plain_division_h {
        let current = voice.amount(amperes(bank.cooler_running_a));
        let name = "Plain division: usable ampere-hours by ";
        rows.push(Row::new(name, Measure::Duration.of(hours)).with_detail(current));
    }
    rows.push(Row::new(
        "Greatest current out of it",
        amperes(run.peak_discharge_a),
    ));
    if let Some((time_h, stop)) = run.first_stop {
        let row = Row::in_words("Cooler first stopped, as ", voice.instant(time_h));
        rows.push(row.with_detail(stop_name(stop).to_owned()));
    }
    rows
}

/// Rows of the table of electricity.
pub fn energy_rows(advice: &Advice, _: &Voice) -> Vec<Row> {
    let totals = &advice.with_cooler.totals;
    let named = [
        ("Cooler draws", totals.cooler_wh),
        ("Other loads draw", totals.loads_wh),
        ("Panels give", totals.panels_wh),
        ("Driving gives", totals.driving_wh),
        ("Shore gives", totals.shore_wh),
        ("Lost in the bank", totals.bank_loss_wh),
    ];
    let mut rows: Vec<Row> = named
        .into_iter()
        .filter(|(_, energy_wh)| *energy_wh != 0.0)
        .map(|(name, energy_wh)| Row::new(name, Measure::Energy.of(energy_wh)))
        .collect();
    let starts = format!(" (starts: {})", totals.compressor_starts);
    rows.push(
        Row::new("Compressor runs", Measure::Duration.of(totals.compressor_h)).with_detail(starts),
    );
    rows.push(Row::new(
        "Water drained from the cooler",
        Measure::Of(Dimension::Mass).of(totals.condensate_kg),
    ));
    rows
}

/// Rows of the data plate; none without a cooler.
pub fn plate_rows(advice: &Advice, _: &Voice) -> Vec<Row> {
    let Some(plate) = advice.plate else {
        return Vec::new();
    };
    vec![
        Row::new("Cooling over power", Measure::Ratio.of(plate.cop_implied)),
        Row::new(
            "Plausible up to",
            Measure::Ratio.of(plate.cop_plausible_greatest),
        ),
        Row::new(
            "Capacity its power can carry",
            Measure::Of(Dimension::HeatFlow).of(plate.cooling_capacity_derated_w),
        ),
    ]
}

/// Rows of the cost table, the sum last.
pub fn cost_rows(advice: &Advice, _: &Voice) -> Vec<Row> {
    let paid = cost_parts(&advice.cost);
    let paid = paid.into_iter().filter(|(_, amount)| *amount != 0.0);
    paid.chain([("Together", advice.cost.total)])
        .map(|(name, amount)| Row::new(name, Measure::Money.of(amount)))
        .collect()
}

fn cost_parts(cost: &Cost) -> [(&'static str, f64); 9] {
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
        let sum: f64 = cost_parts(&cost).iter().map(|(_, amount)| amount).sum();
        assert_eq!(sum, cost.total);
    }
}
