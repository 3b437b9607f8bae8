//! The check fed with the engine's own output, sound and with known faults.

use super::expected::{Fault, Sight, Unit};
use super::*;
use crate::cooler::curves::{
    PACKAGED_AUTOSIZED, PACKAGED_HOUSE, PerformanceCurves, SPLIT_HIGH_STAGE_CUTLER_2013,
    SPLIT_LOW_STAGE_CUTLER_2013, SPLIT_ONE_SPEED_CUTLER_2013, WINDOW_UNIT_WINKLER_2013,
};
use crate::scenario::{CompressorControl, ScenarioDocument, example};

/// The example with readings as a unit with this fault would show them, everything measured.
fn read_off(fault: Fault, change: impl Fn(&mut ScenarioDocument)) -> ScenarioDocument {
    let mut document = example();
    document.readings.taken = true;
    document.readings.return_humidity_known = true;
    change(&mut document);
    let unit = Unit::new(&document).unwrap();
    let readings = &mut document.readings;
    let known = Sight {
        flow: 1.0,
        return_relative_humidity: readings.return_relative_humidity,
        ..sight(readings, &unit).0
    };
    let seen = match fault {
        Fault::Airflow(share) | Fault::AirflowAlone(share) if readings.airflow_known => Sight {
            flow: share,
            ..known
        },
        _ => known,
    };
    let shown = unit.look(&seen, fault);
    readings.supply_c = shown.expected[0];
    readings.current_a = shown.expected[1];
    readings.bank_voltage_v = readings.unit_voltage_v + shown.expected[2];
    if readings.airflow_known {
        readings.airflow_m3_s = shown.expected[3] * unit.rated_flow_m3_s();
    }
    document
}

fn judged(document: ScenarioDocument) -> Acceptance {
    acceptance(&Scenario::new(document).unwrap())
        .unwrap()
        .unwrap()
}

#[test]
fn nothing_is_judged_without_readings_or_cooler() {
    assert_eq!(acceptance(&Scenario::new(example()).unwrap()), Ok(None));
    let mut document = example();
    document.readings.taken = true;
    document.cooler.installed = false;
    assert_eq!(acceptance(&Scenario::new(document).unwrap()), Ok(None));
}

#[test]
fn a_sound_unit_is_as_expected_and_its_capacity_is_that_of_the_coil() {
    let found = judged(read_off(Fault::None, |_| {}));
    assert_eq!(found.verdict, AcceptanceVerdict::AsExpected);
    assert!(found.causes.is_empty() && !found.is_total && found.flow_assumed);
    assert!((found.capacity.ratio - 1.0).abs() < 0.01, "{found:?}");
    assert!(found.signs.iter().all(Compared::agrees));
}

#[test]
fn the_examples_readings_are_those_of_a_sound_unit() {
    let mut document = example();
    document.readings.taken = true;
    let found = judged(document);
    assert_eq!(found.verdict, AcceptanceVerdict::AsExpected, "{found:?}");
}

#[test]
fn each_known_fault_is_named_first() {
    let cases = [
        (Fault::Airflow(0.5), Cause::LowAirflow),
        (Fault::AirflowAlone(0.5), Cause::LowAirflow),
        (Fault::Charge(0.5), Cause::LowCharge),
        (Fault::Cable(6.0), Cause::VoltageDrop),
        (Fault::Condenser(18.0), Cause::WarmCondenserAir),
        (Fault::Plate(0.5), Cause::PlateOverstated),
    ];
    for airflow_known in [false, true] {
        for (fault, cause) in cases {
            let found = judged(read_off(fault, |document| {
                document.cooler.control = CompressorControl::OnOff;
                document.readings.airflow_known = airflow_known;
            }));
            assert_eq!(found.verdict, AcceptanceVerdict::Deviates, "{fault:?}");
            assert_eq!(found.causes[0].cause, cause, "{airflow_known} {found:#?}");
            assert!(found.explained, "{fault:?} {found:#?}");
            let sum: f64 = found.causes.iter().map(|likely| likely.share).sum();
            assert!(sum <= 1.0 + 1e-12);
        }
    }
}

#[test]
fn a_slow_sensor_and_a_slow_start_are_among_the_likely() {
    let named = |fault, seconds| {
        let found = judged(read_off(fault, |document| {
            document.readings.running_s = seconds;
        }));
        let causes: Vec<Cause> = found.causes.iter().map(|likely| likely.cause).collect();
        (found.verdict, causes)
    };
    let (verdict, causes) = named(Fault::SupplySensor(8.0), 1_200.0);
    assert_eq!(verdict, AcceptanceVerdict::Deviates);
    assert!(causes.contains(&Cause::WarmSensor), "{causes:?}");
    let (verdict, causes) = named(Fault::Slow(8.0), 240.0);
    assert_eq!(verdict, AcceptanceVerdict::Deviates);
    assert!(causes.contains(&Cause::NotSteady), "{causes:?}");
    assert_eq!(named(Fault::None, 60.0).0, AcceptanceVerdict::TooEarly);
}

#[test]
fn a_unit_that_idles_along_is_not_called_broken() {
    let found = judged(read_off(Fault::Speed(0.4), |_| {}));
    assert_eq!(found.causes[0].cause, Cause::PartSpeed, "{found:#?}");
}

/// Combined by hand: Q = m c (t₁ − t₂) with m from a flow known within ± 10 %, each temperature within ± 1 K. At 28 and about
/// 15 °C: u = Q √((0.1/√3)² + 2 (1/√3)²/ΔT²), but for the moisture's share of c, below a hundredth, and the density's of t₁.
#[test]
fn the_band_of_the_capacity_by_hand() {
    let found = judged(read_off(Fault::None, |document| {
        document.readings.airflow_known = true;
    }));
    let document = read_off(Fault::None, |_| {});
    let fall_k = document.readings.return_c - document.readings.supply_c;
    let relative = (0.01 / 3.0 + 2.0 / 3.0 / (fall_k * fall_k)).sqrt();
    let by_hand = 2.0 * relative * found.capacity.measured;
    let ratio = found.capacity.measured_band / by_hand;
    assert!((ratio - 1.0).abs() < 0.02, "{ratio}");
}

#[test]
fn one_reading_out_of_its_band_is_doubtful() {
    let document = read_off(Fault::None, |_| {});
    let warmer_by = |by_k: f64| {
        let mut document = document.clone();
        document.readings.supply_c += by_k;
        judged(document)
    };
    let band_k = warmer_by(0.0).signs[0].band;
    assert_eq!(
        warmer_by(0.95 * band_k).verdict,
        AcceptanceVerdict::AsExpected
    );
    let doubtful = warmer_by(1.1 * band_k);
    assert_eq!(doubtful.verdict, AcceptanceVerdict::Doubtful);
    assert!(!doubtful.causes.is_empty() && doubtful.explained);
    assert_eq!(warmer_by(2.0 * band_k).verdict, AcceptanceVerdict::Deviates);
}

#[test]
fn an_assumed_flow_widens_the_band() {
    let band = |airflow_known| {
        let found = judged(read_off(Fault::None, |document| {
            document.readings.airflow_known = airflow_known;
        }));
        found.capacity.measured_band
    };
    assert!(band(false) > 1.3 * band(true));
}

#[test]
fn both_humidities_give_the_whole_capacity() {
    let mut document = read_off(Fault::None, |document| {
        document.readings.supply_humidity_known = true;
    });
    let unit = Unit::new(&document).unwrap();
    let shown = unit.look(&sight(&document.readings, &unit).0, Fault::None);
    document.readings.supply_relative_humidity = crate::air::relative_humidity_from_humidity_ratio(
        document.readings.supply_c,
        shown.expected[4],
        crate::air::standard_atmosphere_pressure_pa(document.place.altitude_m),
    )
    .min(1.0);
    let found = judged(document);
    assert!(found.is_total && found.signs.len() == 4);
    assert!((found.capacity.ratio - 1.0).abs() < 0.03, "{found:?}");
}

/// What the published sets of curves differ by between 30 and 42 °C outdoors and 16 and 21 °C wet bulb, away from the rating
/// point at which all agree: the standard deviation of capacity and of power is what the check reckons with.
#[test]
fn the_curves_differ_by_what_is_reckoned_with() {
    let sets = [
        WINDOW_UNIT_WINKLER_2013,
        SPLIT_ONE_SPEED_CUTLER_2013,
        SPLIT_LOW_STAGE_CUTLER_2013,
        SPLIT_HIGH_STAGE_CUTLER_2013,
        PACKAGED_AUTOSIZED,
        PACKAGED_HOUSE,
    ]
    .map(|set| PerformanceCurves::at_standard_rating(&set));
    let mut squares = Vec::new();
    for wet_bulb_c in [16.0, 18.0, 19.44, 21.0] {
        for outdoor_c in [30.0, 35.0, 40.0, 42.0] {
            for of in [|one: f64, _: f64| one, |one: f64, other: f64| one * other] {
                let values = sets.map(|set| {
                    let found = set.performance(wet_bulb_c, outdoor_c, 1.0);
                    of(found.capacity_ratio, found.input_ratio)
                });
                let mean = values.iter().sum::<f64>() / 6.0;
                let sum: f64 = values
                    .iter()
                    .map(|value| (value / mean - 1.0) * (value / mean - 1.0))
                    .sum();
                squares.push(sum / 5.0);
            }
        }
    }
    let spread = (squares.iter().sum::<f64>() / squares.len() as f64).sqrt();
    assert!(
        (0.5 * CURVES_SHARE..=CURVES_SHARE).contains(&spread),
        "{spread}"
    );
}
