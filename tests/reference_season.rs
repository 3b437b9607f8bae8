//! Days of a weather file run as a scenario: see the checks for what is compared with what.

use noonday_tests::checks::{assert_all, season};

#[test]
fn a_season_follows_the_building_program() {
    assert_all(&season::a_season_follows_the_building_program());
}

#[test]
fn a_fan_alone_misses_every_night_that_never_falls_to_the_limit() {
    assert_all(&season::a_fan_alone_misses_every_night_that_never_falls_to_the_limit());
}
