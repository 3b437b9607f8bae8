//! Cable and protection against published tables.

use crate::checks::Check;
use crate::{Row, Table, Worst};
use noonday_engine::electrical::circuit::{CircuitNeed, thinnest};
use noonday_engine::electrical::conductor::{
    Conductor, Insulation, SizeSeries, bundle_factor, hot_air_factor, sizes,
};
use noonday_engine::electrical::overcurrent::STANDARD_RATINGS_A;

const METRES_IN_A_THOUSAND_FEET: f64 = 304.8;

/// What Table 5 calls each class of insulation.
const COLUMNS: [&str; 7] = [
    "amp_60C", "amp_75C", "amp_80C", "amp_90C", "amp_105C", "amp_125C", "amp_200C",
];

fn gauge(name: &str) -> Conductor {
    sizes(SizeSeries::WireGauge)
        .find(|size| size.gauge == Some(name))
        .unwrap()
}

/// The row of the table for a gauge that the engine knows.
fn known(row: Row<'_>) -> Option<Conductor> {
    sizes(SizeSeries::WireGauge).find(|size| size.gauge == Some(row.text("awg")))
}

/// Every allowable current is that of 33 CFR 183.425, Table 5, to the ampere, and every resistance that of NEC chapter 9, Table
/// 8, to half of the last digit that `wire.csv` prints per kilometre.
#[must_use]
pub fn conductors_are_those_of_the_published_tables() -> Vec<Check> {
    let (mut current, mut resistance, mut area) =
        (Worst::default(), Worst::default(), Worst::default());
    for row in Table::read("wire.csv").rows() {
        let Some(size) = known(row) else { continue };
        let awg = row.text("awg");
        for (insulation, column) in Insulation::ALL.into_iter().zip(COLUMNS) {
            current.note(size.allowable_a(insulation) - row.number(column), awg);
        }
        let ohm_kft = size.resistance_ohm_m * METRES_IN_A_THOUSAND_FEET;
        resistance.note(ohm_kft - row.number("r75_ohm_per_kft"), awg);
        area.note(size.area_mm2 - row.number("mm2"), awg);
    }
    vec![
        current.check(
            "allowable current of a conductor, A",
            0.0,
            "33 CFR 183.425, Table 5 (wire.csv)",
        ),
        resistance.check(
            "resistance of gauge sizes, Ω for 1 000 ft",
            0.5e-4 * METRES_IN_A_THOUSAND_FEET / 1_000.0,
            "NEC ch. 9, Table 8 (wire.csv)",
        ),
        area.check(
            "cross-section of gauge sizes, mm²",
            0.0,
            "ASTM B258 (wire.csv)",
        ),
    ]
}

/// Metric sizes at 75 °C: IEC 60228 class 5, half-way between the table's columns for 60 and 90 °C, since copper's resistance
/// rises linearly. Tolerance: half of the last digit printed.
#[must_use]
pub fn metric_conductors_are_those_of_the_standard() -> Vec<Check> {
    let mut worst = Worst::default();
    for row in Table::read("wire_iec60228.csv").rows() {
        let area_mm2 = row.number("mm2");
        let known = sizes(SizeSeries::Metric).find(|size| size.area_mm2 == area_mm2);
        let Some(size) = known else { continue };
        let (at_60, at_90) = (
            row.number("plain_class5_at_60C"),
            row.number("plain_class5_at_90C"),
        );
        worst.note(
            1_000.0 * size.resistance_ohm_m - 0.5 * (at_60 + at_90),
            area_mm2,
        );
    }
    vec![worst.check(
        "resistance of metric sizes, Ω/km",
        0.5e-4,
        "IEC 60228 class 5 (wire_iec60228.csv)",
    )]
}

/// A metric size is never allowed more than a gauge size at least as thick, and never carries less than the next thinner one.
#[must_use]
pub fn metric_conductors_are_allowed_no_more_than_thicker_gauges() -> Vec<Check> {
    let mut worst = Worst::default();
    for row in Table::read("wire.csv").rows() {
        let Some(thicker) = known(row) else { continue };
        for metric in sizes(SizeSeries::Metric) {
            if metric.area_mm2 > thicker.area_mm2 {
                continue;
            }
            for (insulation, column) in Insulation::ALL.into_iter().zip(COLUMNS) {
                let above_a = metric.allowable_a(insulation) - row.number(column);
                worst.note(above_a.max(0.0), metric.area_mm2);
            }
        }
    }
    vec![worst.check(
        "current of metric sizes above a gauge at least as thick, A",
        0.0,
        "33 CFR 183.425, Table 5 (wire.csv)",
    )]
}

/// Drop and loss of cables worked out beside the project from NEC resistances. Tolerance: half of the last digit printed, and
/// what half of the last digit of the resistances, 0.5e-4 Ω/km, makes of 60 A over 10 m of copper: 0.3e-4 V and 0.2e-2 W.
#[must_use]
pub fn drop_and_loss_follow_the_tables() -> Vec<Check> {
    const SOURCE: &str = "ΔV = 2 L I R, NEC ch. 9, Table 8 (voltage_drop.csv)";
    let (mut drop, mut loss) = (Worst::default(), Worst::default());
    for (index, row) in Table::read("voltage_drop.csv").rows().enumerate() {
        let current_a = row.number("I_A");
        let ohm = gauge(row.text("awg")).loop_resistance_ohm(row.number("L_oneway_m"));
        drop.note(current_a * ohm - row.number("dV_V"), index);
        loss.note(current_a * current_a * ohm - row.number("loss_W"), index);
    }
    vec![
        drop.check("drop over a cable, V", 0.8e-4, SOURCE),
        loss.check("loss in a cable, W", 0.7e-2, SOURCE),
    ]
}

/// The size chosen for a drop of 3 % is thicker than every size that the table calls too thin for it, and no thicker than the
/// thinnest that it calls thick enough.
#[must_use]
pub fn the_choice_lies_where_the_table_draws_the_line() -> Vec<Check> {
    let mut worst = Worst::default();
    for (index, row) in Table::read("voltage_drop.csv").rows().enumerate() {
        let need = CircuitNeed {
            length_one_way_m: row.number("L_oneway_m"),
            running_a: row.number("I_A"),
            surge_a: row.number("I_A"),
            continuous_factor: 1.0,
            voltage_v: row.number("V"),
            allowed_drop_share: 0.03,
            insulation: Insulation::C200,
            bundled_conductors: 2.0,
            air_c: 30.0,
        };
        let chosen = thinnest(SizeSeries::WireGauge, &need).unwrap().conductor;
        let listed = gauge(row.text("awg")).area_mm2;
        let suffices = row.text("ok_3pct") == "yes";
        let agrees = if suffices {
            chosen.area_mm2 <= listed
        } else {
            chosen.area_mm2 > listed
        };
        worst.note(f64::from(u8::from(!agrees)), index);
    }
    vec![worst.check(
        "cables chosen otherwise than the table says",
        0.0,
        "3 % of ABYC E-11 and ISO 10133 (voltage_drop.csv)",
    )]
}

/// Standard ratings, to the ampere.
#[must_use]
pub fn fuses_are_standard_ratings() -> Vec<Check> {
    let table = Table::read("fuses.csv");
    let row = table
        .rows()
        .find(|row| row.text("item").starts_with("NEC 240.6(A)"))
        .unwrap();
    let mut worst = Worst::default();
    let printed: Vec<f64> = row
        .text("value")
        .split(' ')
        .map(|rating| rating.parse().unwrap())
        .collect();
    worst.note(
        printed.len() as f64 - STANDARD_RATINGS_A.len() as f64,
        "count",
    );
    for (own, printed) in STANDARD_RATINGS_A.into_iter().zip(printed) {
        worst.note(own - printed, printed);
    }
    vec![worst.check(
        "standard ratings of fuses, A",
        0.0,
        "NEC 240.6(A) (fuses.csv)",
    )]
}

/// What heat and neighbours leave of a current. Engine spaces at 50 °C: 33 CFR 183.425, Table 5, note 1, as the last column of
/// `wire.csv` has it for 105 °C insulation; its factor has two digits, 0.85, and its currents are whole amperes. Bundles: the
/// shares of NEC 310.15(C)(1) in `fuses.csv`, which nowhere may be exceeded.
#[must_use]
pub fn heat_and_neighbours_take_what_the_codes_say() -> Vec<Check> {
    let (mut heat, mut bundle) = (Worst::default(), Worst::default());
    for row in Table::read("wire.csv").rows() {
        let Some(size) = known(row) else { continue };
        let full_a = size.allowable_a(Insulation::C105);
        let left_a = full_a * hot_air_factor(Insulation::C105, 50.0);
        let beyond_rounding = (left_a - row.number("amp_105C_engine")).abs() - 0.5;
        heat.note(beyond_rounding.max(0.0) / full_a, row.text("awg"));
    }
    let table = Table::read("fuses.csv");
    let row = table
        .rows()
        .find(|row| row.text("item").contains("bundling"))
        .unwrap();
    for part in row.text("value").split(", ") {
        let numbers: Vec<f64> = part
            .split([' ', '-', '+'])
            .filter_map(|word| word.parse().ok())
            .collect();
        let (fewest, percent) = (numbers[0], numbers[numbers.len() - 1]);
        bundle.note((bundle_factor(fewest) - percent / 100.0).max(0.0), part);
    }
    vec![
        heat.check(
            "current left in an engine space, share",
            0.01,
            "33 CFR 183.425, Table 5, note 1 (wire.csv)",
        ),
        bundle.check(
            "share left in a bundle, above the code's",
            0.0,
            "NEC 310.15(C)(1) (fuses.csv)",
        ),
    ]
}
