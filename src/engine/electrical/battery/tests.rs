//! Hand calculations and invariants of the bank.

use super::*;
use crate::electrical::chemistry::Chemistry;

fn input() -> BankInput {
    BankInput {
        chemistry: Chemistry::LithiumIronPhosphate,
        nominal_voltage_v: 12.0,
        capacity_ah: 600.0,
        usable_min_soc: 0.0,
        usable_max_soc: 1.0,
        resistance_ohm: 0.002,
        coulombic_efficiency: 0.99,
        max_discharge_a: 300.0,
        max_charge_a: 200.0,
        peukert_exponent: 1.0,
        health_fraction: 1.0,
    }
}

fn bank() -> Bank {
    Bank::new(input()).unwrap()
}

#[test]
fn sagging_bank_draws_more_current() {
    let bank = bank();
    let mut state = bank.state_at(0.5);
    let step = bank.step(&mut state, 0.01, -1200.0, 25.0);
    // By hand: U = 4 · 3.3090 = 13.236 V, R = 2 mΩ: I = (U − √(U² − 4 R P)) / 2R = 91.93 A.
    let by_hand = (13.236 - (13.236_f64 * 13.236 - 4.0 * 0.002 * 1200.0).sqrt()) / (2.0 * 0.002);
    assert!((step.current_a + by_hand).abs() < 1e-3);
    assert!((step.terminal_voltage_v * step.current_a + 1200.0).abs() < 1e-9);
    assert!(-step.current_a > 1200.0 / 13.236);
    assert!((step.loss_w - 0.002 * by_hand * by_hand).abs() < 1e-4);
    assert_eq!(step.limited_by, None);
}

#[test]
fn resistance_rises_in_the_cold() {
    // By hand: exp(2500 (1/273.15 − 1/298.15)) = exp(0.76744) = 2.1542.
    let ratio = bank().resistance_ohm(0.0) / bank().resistance_ohm(25.0);
    assert!((ratio - 2.1542).abs() < 1e-3);
}

#[test]
fn energy_closes_over_a_round_trip() {
    let bank = bank();
    let mut state = bank.state_at(0.6);
    let start_wh = bank.stored_energy_wh(&state);
    let (mut terminal_wh, mut loss_wh, mut by_hand_wh) = (0.0, 0.0, 0.0);
    for index in 0..20_000 {
        let power_w = if index % 700 < 320 { 900.0 } else { -800.0 };
        let step = bank.step(&mut state, 10.0, power_w, 20.0);
        let hours = 10.0 / 3600.0;
        terminal_wh += step.power_w * hours;
        loss_wh += step.loss_w * hours;
        let stored_share = if step.current_a > 0.0 { 0.01 } else { 0.0 };
        let resistive_w = step.current_a * step.current_a * bank.resistance_ohm(20.0);
        by_hand_wh += (resistive_w
            + stored_share * step.current_a * bank.open_circuit_voltage_v(&state))
            * hours;
    }
    let rise_wh = bank.stored_energy_wh(&state) - start_wh;
    assert!((terminal_wh - rise_wh - loss_wh).abs() < 1e-6 * terminal_wh.abs());
    // The booked loss is resistive heat and unstored charge; the voltage moves within a step.
    assert!((loss_wh / by_hand_wh - 1.0).abs() < 1e-4);
    assert!(loss_wh > 0.0);
}

#[test]
fn empty_bank_delivers_nothing_and_cold_only_locks_charge_away() {
    let bank = Bank::new(BankInput {
        usable_min_soc: 0.1,
        ..input()
    })
    .unwrap();
    let mut state = bank.state_at(0.0999);
    let step = bank.step(&mut state, 10.0, -500.0, 25.0);
    assert_eq!((step.current_a, step.power_w), (0.0, 0.0));
    assert_eq!(step.limited_by, Some(BankLimit::Empty));
    // By hand at 0 °C: 600 (1 − 0.9 · 0.9) = 114 Ah are out of reach.
    let state = bank.state_at(0.5);
    assert!((bank.usable_charge_ah(&state, 0.0) - 186.0).abs() < 1e-9);
    assert!((bank.usable_charge_ah(&state, 25.0) - 240.0).abs() < 1e-9);
}

#[test]
fn last_step_delivers_only_what_is_left() {
    let bank = bank();
    let mut state = BankState { charge_ah: 0.05 };
    let step = bank.step(&mut state, 10.0, -800.0, 25.0);
    assert_eq!(step.limited_by, Some(BankLimit::Empty));
    assert!((step.current_a * 10.0 / 3600.0 + 0.05).abs() < 1e-12);
    assert!(state.charge_ah.abs() < 1e-12);
}

#[test]
fn current_and_temperature_limits_bind() {
    let bank = bank();
    let mut state = bank.state_at(0.5);
    let discharge = bank.step(&mut state, 10.0, -9000.0, 25.0);
    assert_eq!(discharge.limited_by, Some(BankLimit::DischargeCurrent));
    assert!((discharge.current_a + 300.0).abs() < 1e-9);
    let charge = bank.step(&mut state, 10.0, 9000.0, 25.0);
    assert_eq!(charge.limited_by, Some(BankLimit::ChargeCurrent));
    assert!((charge.current_a - 200.0).abs() < 1e-9);
    for temperature_c in [-0.1, 45.1] {
        let refused = bank.step(&mut state, 10.0, 500.0, temperature_c);
        assert_eq!(refused.limited_by, Some(BankLimit::ChargeTemperature));
        assert_eq!(refused.power_w, 0.0);
    }
    assert!(bank.step(&mut state, 10.0, 500.0, 0.0).power_w > 499.9);
}

#[test]
fn weak_bank_stops_at_its_least_voltage() {
    let bank = Bank::new(BankInput {
        resistance_ohm: 0.05,
        ..input()
    })
    .unwrap();
    let mut state = bank.state_at(0.5);
    let step = bank.step(&mut state, 10.0, -2000.0, 25.0);
    assert_eq!(step.limited_by, Some(BankLimit::DischargeVoltage));
    assert!((step.terminal_voltage_v - 10.0).abs() < 1e-9);
}

#[test]
fn charge_tapers_and_never_passes_the_voltage_limit() {
    let bank = bank();
    let mut state = bank.state_at(0.85);
    let mut previous_a = f64::INFINITY;
    let mut tapered = false;
    for _ in 0..1000 {
        let step = bank.step(&mut state, 10.0, 1500.0, 25.0);
        assert!(step.terminal_voltage_v <= 4.0 * 3.55 + 1e-9);
        if step.limited_by == Some(BankLimit::ChargeVoltage) {
            assert!(step.current_a < previous_a);
            previous_a = step.current_a;
            tapered = true;
        }
    }
    assert!(tapered);
    assert!(state.charge_ah <= 600.0);
    assert!(bank.state_of_charge(&state) > 0.999);
}

#[test]
fn halving_the_step_changes_little() {
    let bank = bank();
    let run = |step_s: f64| {
        let mut state = bank.state_at(0.97);
        let steps = (6.0 * 3600.0 / step_s) as usize;
        for index in 0..steps {
            let power_w = if (index as f64 * step_s) < 3.0 * 3600.0 {
                1400.0
            } else {
                -1400.0
            };
            bank.step(&mut state, step_s, power_w, 25.0);
        }
        bank.state_of_charge(&state)
    };
    assert!((run(10.0) - run(5.0)).abs() < 1e-6);
    assert!((run(60.0) - run(30.0)).abs() < 1e-5);
}

#[test]
fn every_demand_gives_finite_numbers() {
    for chemistry in [
        Chemistry::LithiumIronPhosphate,
        Chemistry::AbsorbentGlassMat,
        Chemistry::Flooded,
    ] {
        for resistance_ohm in [0.0, 0.003, 1.0] {
            let bank = Bank::new(BankInput {
                chemistry,
                resistance_ohm,
                peukert_exponent: 1.2,
                ..input()
            })
            .unwrap();
            for soc in [0.0, 1e-9, 0.3, 0.999_999, 1.0] {
                for power_w in [-1e6, -1.0, 0.0, 1.0, 1e6] {
                    for temperature_c in [-20.0, 25.0, 60.0] {
                        let mut state = bank.state_at(soc);
                        let step = bank.step(&mut state, 10.0, power_w, temperature_c);
                        let numbers = [
                            step.current_a,
                            step.terminal_voltage_v,
                            step.power_w,
                            step.loss_w,
                        ];
                        assert!(numbers.iter().all(|number| number.is_finite()));
                        assert!((0.0..=bank.full_charge_ah).contains(&state.charge_ah));
                    }
                }
            }
        }
    }
}

#[test]
fn refuses_what_is_out_of_range() {
    let refused = |input: BankInput| Bank::new(input).is_err();
    assert!(refused(BankInput {
        nominal_voltage_v: 13.0,
        ..input()
    }));
    assert!(refused(BankInput {
        capacity_ah: 0.0,
        ..input()
    }));
    assert!(refused(BankInput {
        usable_min_soc: 0.9,
        usable_max_soc: 0.9,
        ..input()
    }));
    assert!(refused(BankInput {
        coulombic_efficiency: f64::NAN,
        ..input()
    }));
}
