//! Words on and about the charts.

use super::heat::{GROUPS, group_w, in_and_out_w};
use super::{Voice, listed};
use crate::format::{Amount, Measure, csv_text};
use noonday_engine::advice::Advice;
use noonday_engine::scenario::Dimension;
use noonday_engine::simulation::Series;

/// Label at the end of the line of the outdoor temperature.
pub const OUTDOORS: &str = "outdoors";
/// Label of the felt temperature in the cabin.
pub const FELT: &str = "cabin, felt";
/// Label of the felt temperature without a cooler.
pub const WITHOUT: &str = "no cooler";
/// Label of the charge.
pub const CHARGE: &str = "charge";
/// Label of the reserve.
pub const RESERVE: &str = "reserve";
/// Label of the cooler's draw.
pub const COOLER: &str = "cooler";
/// Label of the other loads' draw.
pub const LOADS: &str = "other loads";
/// Label of the panels' power.
pub const PANELS: &str = "panels";
/// Label of the power from driving.
pub const DRIVING: &str = "driving";
/// Label of the power from shore.
pub const SHORE: &str = "shore";
/// Above the zero line of the power.
pub const POWER_IN: &str = "in";
/// Below it.
pub const POWER_OUT: &str = "out";
/// Heading of the temperature chart.
pub const TEMPERATURES: &str = "Temperatures";
/// Heading of the chart of the bank.
pub const BANK: &str = "Charge and power";

/// A day of the run, where several are over each other.
pub fn day_number(day: i64) -> String {
    format!("day\u{a0}{day}")
}

/// What the limit of a window is called on the chart.
pub fn limit_label(limit_c: f64, voice: &Voice) -> String {
    let shown = crate::format::unit(Dimension::Temperature, voice.units).shown(limit_c);
    let whole = (shown - shown.round()).abs() < 0.05;
    let limit = voice.units.temperature(limit_c, usize::from(!whole));
    format!("limit {limit}")
}

/// What the temperature chart shows, for those who do not see it.
pub fn temperatures_described(advice: &Advice, voice: &Voice) -> String {
    let series = &advice.with_cooler.series;
    let mut parts = Vec::new();
    if let Some(text) = peak(&series.time_h, &series.outdoor_c, "outdoors", voice) {
        parts.push(text);
    }
    if let Some(text) = peak(&series.time_h, &series.felt_c, "the cabin as felt", voice) {
        parts.push(text);
    }
    let without = &advice.without_cooler.series;
    if let Some(text) = peak(
        &without.time_h,
        &without.felt_c,
        "the cabin without a cooler",
        voice,
    ) {
        parts.push(text);
    }
    format!("Highest over the run: {}.", listed(&parts))
}

/// What the chart of the bank shows, for those who do not see it.
pub fn bank_described(advice: &Advice, voice: &Voice) -> String {
    let bank = &advice.verdict.bank;
    let totals = &advice.with_cooler.totals;
    format!(
        "Charge lowest at {} with {}, at the end {}. Over the run the cooler draws {}, other loads {}; panels give {}, driving {}, shore {}.",
        voice.instant(bank.lowest_at_h),
        voice.units.percent(bank.lowest_state_of_charge),
        voice.units.percent(bank.end_state_of_charge),
        voice.units.energy(totals.cooler_wh),
        voice.units.energy(totals.loads_wh),
        voice.units.energy(totals.panels_wh),
        voice.units.energy(totals.driving_wh),
        voice.units.energy(totals.shore_wh),
    )
}

/// What one reading is called, and what it says.
pub type Reading = (&'static str, Amount);

/// Temperatures at one sample, in the order of the lines.
pub fn temperature_readings(advice: &Advice, index: usize) -> Vec<Reading> {
    let series = &advice.with_cooler.series;
    let degrees = |values: &[f64]| values.get(index).map(|c| Measure::Temperature.of(*c));
    found([
        (OUTDOORS, degrees(&series.outdoor_c)),
        (FELT, degrees(&series.felt_c)),
        (WITHOUT, degrees(&advice.without_cooler.series.felt_c)),
    ])
}

/// Charge and power at one sample; sources that never give anything are left out.
pub fn bank_readings(advice: &Advice, index: usize) -> Vec<Reading> {
    let series = &advice.with_cooler.series;
    let watts = |values: &[f64]| values.get(index).map(|w| Measure::Power.of(*w));
    let some_watts = |values: &[f64]| watts(values).filter(|_| ever_positive(values));
    let charge = series.state_of_charge.get(index);
    found([
        (CHARGE, charge.map(|share| Measure::Percent.of(*share))),
        (COOLER, watts(&series.cooler_w)),
        (LOADS, watts(&series.loads_w)),
        (PANELS, some_watts(&series.panels_w)),
        (DRIVING, some_watts(&series.driving_w)),
        (SHORE, some_watts(&series.shore_w)),
    ])
}

/// The same as one spoken line.
pub fn reading_spoken(advice: &Advice, index: usize, voice: &Voice) -> String {
    let time_h = advice.with_cooler.series.time_h.get(index).copied();
    let said: Vec<String> = temperature_readings(advice, index)
        .into_iter()
        .chain(bank_readings(advice, index))
        .map(|(name, amount)| format!("{name} {}", voice.amount(amount)))
        .collect();
    let hour = time_h.map_or_else(String::new, |time_h| voice.instant(time_h));
    let (into_w, _) = in_and_out_w(&advice.with_cooler.series.heat_w_at(index));
    let heat = voice.units.quantity(Dimension::HeatFlow, into_w);
    format!("{hour}: {}, heat in {heat}", said.join(", ")).replace('\u{a0}', " ")
}

/// Last columns of the table of samples.
const POWER_COLUMNS: [&str; 6] = [
    "Charge, %",
    "Power to the cooler, W",
    "Loads, W",
    "Panels, W",
    "Driving, W",
    "Shore, W",
];

/// Columns of the table of samples.
pub fn table_columns(voice: &Voice) -> Vec<String> {
    let degree = if voice.units == crate::format::UnitSystem::Us {
        "°F"
    } else {
        "°C"
    };
    let sun = voice.units.irradiance_symbol();
    let flow = crate::format::unit(Dimension::HeatFlow, voice.units).symbol;
    let mut columns = vec![
        "Hour".to_owned(),
        format!("Outdoors, {degree}"),
        format!("Cabin air, {degree}"),
        format!("As felt, {degree}"),
        format!("Without cooler, {degree}"),
        "Humidity, %".to_owned(),
        format!("Sun outdoors, {sun}"),
    ];
    let heat = GROUPS
        .iter()
        .map(|group| format!("Heat, {}, {flow}", group.name));
    columns.extend(heat);
    columns.extend(POWER_COLUMNS.map(str::to_owned));
    columns
}

/// What is offered under the charts.
pub const SAVE_DAY: &str = "Save the day as CSV";
/// Name of that file.
pub const DAY_FILE: &str = "noonday-day.csv";
/// What is in the picture.
pub const IN_PICTURE: &str = "In the picture";
/// All of it.
pub const ALL_CHARTS: &str = "All charts";
/// The other offer.
pub const COPY_PICTURE: &str = "Copy the charts as a picture";
/// The same as a file.
pub const SAVE_PICTURE: &str = "Save the picture as PNG";
/// Name of the picture where it cannot be copied.
pub const PICTURE_FILE: &str = "noonday-day.png";
/// Said of the picture.
pub const PICTURE_COPIED: &str = "The picture is copied.";
/// Said where the browser does not let pictures be copied.
pub const PICTURE_SAVED: &str = "This browser copies no pictures; it was saved as a file.";

/// A row of that table.
pub fn table_row(advice: &Advice, index: usize, voice: &Voice) -> Vec<String> {
    let values = row_values(advice, index, voice)
        .into_iter()
        .map(|(value, decimals)| voice.units.number(value, decimals));
    std::iter::once(hour_of_row(&advice.with_cooler.series, index, voice))
        .chain(values)
        .collect()
}

/// Every sample as comma-separated values for other programs: numbers with a point, whatever the browser's language writes.
pub fn day_csv(advice: &Advice, voice: &Voice) -> String {
    let mut columns = table_columns(voice);
    if let Some(first) = columns.first_mut() {
        *first = "Hours since midnight of the first day".to_owned();
    }
    let mut rows = vec![columns];
    for (index, time_h) in advice.with_cooler.series.time_h.iter().enumerate() {
        let values = row_values(advice, index, voice)
            .into_iter()
            .map(|(value, decimals)| format!("{value:.*}", decimals + 1));
        rows.push(
            std::iter::once(format!("{time_h:.4}"))
                .chain(values)
                .collect(),
        );
    }
    csv_text(&rows)
}

/// Values of a row in the shown units, with the decimals that a reader wants.
fn row_values(advice: &Advice, index: usize, voice: &Voice) -> Vec<(f64, usize)> {
    let series = &advice.with_cooler.series;
    let at = |values: &[f64]| values.get(index).copied().unwrap_or_default();
    let unit = crate::format::unit(Dimension::Temperature, voice.units);
    let degrees = |values: &[f64]| (unit.shown(at(values)), 1);
    let flow = crate::format::unit(Dimension::HeatFlow, voice.units);
    let heat_w = series.heat_w_at(index);
    let mut values = vec![
        degrees(&series.outdoor_c),
        degrees(&series.cabin_c),
        degrees(&series.felt_c),
        degrees(&advice.without_cooler.series.felt_c),
        (at(&series.relative_humidity) * 100.0, 0),
        (voice.units.irradiance_number(at(&series.sun_w_m2)), 0),
    ];
    let heat = GROUPS
        .iter()
        .map(|group| (flow.shown(group_w(group, &heat_w)), 0));
    values.extend(heat);
    let power = [
        at(&series.state_of_charge) * 100.0,
        at(&series.cooler_w),
        at(&series.loads_w),
        at(&series.panels_w),
        at(&series.driving_w),
        at(&series.shore_w),
    ];
    values.extend(power.map(|value| (value, 0)));
    values
}

fn hour_of_row(series: &Series, index: usize, voice: &Voice) -> String {
    series
        .time_h
        .get(index)
        .map_or_else(String::new, |time_h| voice.instant(*time_h))
}

fn peak(times_h: &[f64], values_c: &[f64], name: &str, voice: &Voice) -> Option<String> {
    let (time_h, value_c) = times_h
        .iter()
        .zip(values_c)
        .max_by(|one, other| one.1.total_cmp(other.1))?;
    Some(format!(
        "{name} {} at {}",
        voice.units.temperature(*value_c, 0),
        voice.instant(*time_h)
    ))
}

fn found<const COUNT: usize>(rows: [(&'static str, Option<Amount>); COUNT]) -> Vec<Reading> {
    rows.into_iter()
        .filter_map(|(name, value)| value.map(|value| (name, value)))
        .collect()
}

fn ever_positive(values: &[f64]) -> bool {
    values.iter().any(|value| *value > 0.5)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::UnitSystem;
    use noonday_engine::advice::advise;
    use noonday_engine::scenario::{Scenario, example};

    /// The example's day as it was calculated on the machine of whoever changed the engine. The browser tests hold what the page
    /// saves against the same files, so that both give the same numbers. `WRITE_DAY=1 cargo test -p noonday the_day_as` writes
    /// them anew.
    #[test]
    fn the_day_as_it_is_saved_is_what_it_was() {
        let document = example();
        let scenario = Scenario::new(document.clone()).expect("the example is valid");
        let advice = advise(&scenario).expect("the example runs");
        for (name, units) in [("metric", UnitSystem::Metric), ("us", UnitSystem::Us)] {
            let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/golden");
            let path = format!("{folder}/example_day_{name}.csv");
            let now = day_csv(&advice, &Voice::new(&document, units));
            if std::env::var_os("WRITE_DAY").is_some() {
                std::fs::write(&path, &now).expect("the day can be written");
            }
            let kept = std::fs::read_to_string(&path).expect("the day is there");
            assert!(kept == now, "the example's day has moved: {path}");
        }
    }
}
