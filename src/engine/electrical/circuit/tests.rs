use super::*;

fn need() -> CircuitNeed {
    CircuitNeed {
        length_one_way_m: 4.0,
        running_a: 60.0,
        surge_a: 90.0,
        continuous_factor: 1.25,
        voltage_v: 12.0,
        allowed_drop_share: 0.03,
        insulation: Insulation::C105,
        bundled_conductors: 2.0,
        air_c: 30.0,
    }
}

/// By hand: 0.36 V / (2 · 4 m · 60 A) = 0.75 mΩ/m, between 3 AWG (0.804) and 2 AWG (0.637); 75 A asks for 80 A.
#[test]
fn a_long_cable_is_chosen_by_its_drop() {
    let fitted = thinnest(SizeSeries::WireGauge, &need()).unwrap();
    assert_eq!(fitted.conductor.gauge, Some("2"));
    assert_eq!(fitted.fuse_a, 80.0);
    assert!((fitted.drop_v - 60.0 * 8.0 * 0.000_636_5).abs() < 1e-12);
    let metric = thinnest(SizeSeries::Metric, &need()).unwrap();
    // 35 mm² has 0.554 · (1 + 0.00393 · 55) = 0.674 mΩ/m.
    assert_eq!(metric.conductor.area_mm2, 35.0);
}

/// By hand: a fuse of 80 A needs 80 A in the table: 8 AWG at 105 °C in cool air, 6 AWG (120 · 0.856 · 0.7 = 72: no) and 4 AWG
/// (160 · 0.856 · 0.7 = 96) in a bundle of three in hot air.
#[test]
fn a_short_cable_is_chosen_by_its_current() {
    let short = CircuitNeed {
        length_one_way_m: 0.2,
        ..need()
    };
    let fitted = thinnest(SizeSeries::WireGauge, &short).unwrap();
    assert_eq!(fitted.conductor.gauge, Some("8"));
    let hot = CircuitNeed {
        air_c: 50.0,
        bundled_conductors: 3.0,
        ..short
    };
    let fitted = thinnest(SizeSeries::WireGauge, &hot).unwrap();
    assert_eq!(fitted.conductor.gauge, Some("4"));
}

#[test]
fn fuse_stands_between_load_and_conductor() {
    for running_a in [1.0, 7.0, 33.0, 60.0, 120.0, 240.0] {
        for series in [SizeSeries::WireGauge, SizeSeries::Metric] {
            let need = CircuitNeed {
                running_a,
                surge_a: 3.0 * running_a,
                length_one_way_m: 1.0,
                ..need()
            };
            let fitted = thinnest(series, &need).unwrap();
            assert!(fitted.fuse_a >= 1.25 * running_a && fitted.fuse_a >= 1.5 * running_a);
            assert!(fitted.fuse_a <= fitted.allowable_a);
        }
    }
}

#[test]
fn where_nothing_will_do_each_remedy_does_and_half_of_it_does_not() {
    let far = CircuitNeed {
        length_one_way_m: 25.0,
        ..need()
    };
    for series in [SizeSeries::WireGauge, SizeSeries::Metric] {
        assert_eq!(thinnest(series, &far), None);
        let remedies = remedies(series, &far, &[12.0, 24.0, 48.0]);
        let longest_m = remedies.longest_m.unwrap();
        let of_length = |length_one_way_m| {
            let need = CircuitNeed {
                length_one_way_m,
                ..far
            };
            thinnest(series, &need)
        };
        assert!(of_length(longest_m * 0.999_999).is_some());
        assert!(of_length(longest_m * 1.001).is_none());
        assert_eq!(remedies.voltage_v, Some(24.0));
        assert!(thinnest(series, &far.at_voltage(24.0)).is_some());
        let runs = remedies.parallel_runs.unwrap();
        assert!(thinnest(series, &far.shared_by(runs)).is_some());
        assert!(runs == 2 || thinnest(series, &far.shared_by(runs - 1)).is_none());
    }
}

#[test]
fn a_shorter_cable_does_not_help_against_too_much_current() {
    let strong = CircuitNeed {
        running_a: 450.0,
        surge_a: 450.0,
        length_one_way_m: 0.3,
        ..need()
    };
    assert_eq!(thinnest(SizeSeries::WireGauge, &strong), None);
    let remedies = remedies(SizeSeries::WireGauge, &strong, &[24.0, 48.0]);
    assert_eq!(remedies.longest_m, None);
    // 225 A each: 281 A asks for 300 A, which 2/0 carries.
    assert_eq!(remedies.parallel_runs, Some(2));
}

#[test]
fn in_air_as_hot_as_the_insulation_bears_nothing_may_flow() {
    assert_eq!(hot_air_factor(Insulation::C60, 60.0), 0.0);
    assert_eq!(hot_air_factor(Insulation::C60, 20.0), 1.0);
    let hot = CircuitNeed {
        insulation: Insulation::C60,
        air_c: 60.0,
        ..need()
    };
    assert_eq!(thinnest(SizeSeries::Metric, &hot), None);
}
