//! The cabin against an independent heat balance: see the checks for what is compared with what.

use noonday_tests::checks::{assert_all, thermal};

#[test]
fn cabin_air_follows_the_reference() {
    assert_all(&thermal::cabin_air_follows_the_reference());
}

#[test]
fn cooling_loads_follow_the_reference() {
    assert_all(&thermal::cooling_loads_follow_the_reference());
}

#[test]
fn pull_down_takes_as_long_as_the_reference() {
    assert_all(&thermal::pull_down_takes_as_long_as_the_reference());
}
