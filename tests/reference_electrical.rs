//! The electrical side: see the checks for what is compared with what.

use noonday_tests::checks::{assert_all, electrical};

#[test]
fn open_circuit_voltage_follows_the_published_fit() {
    assert_all(&electrical::open_circuit_voltage_follows_the_published_fit());
}

#[test]
fn open_circuit_voltage_lies_within_the_spread_of_two_fits() {
    assert_all(&electrical::open_circuit_voltage_lies_within_the_spread_of_two_fits());
}

#[test]
fn bank_lasts_ampere_hours_over_amperes() {
    assert_all(&electrical::bank_lasts_ampere_hours_over_amperes());
}

#[test]
fn lead_acid_lasts_as_peukert_says() {
    assert_all(&electrical::lead_acid_lasts_as_peukert_says());
}

#[test]
fn panels_follow_published_models() {
    assert_all(&electrical::panels_follow_published_models());
}

#[test]
fn default_losses_add_up_to_the_published_figure() {
    assert_all(&electrical::default_losses_add_up_to_the_published_figure());
}

#[test]
fn inverter_efficiencies_follow_their_tables() {
    assert_all(&electrical::inverter_efficiencies_follow_their_tables());
}
