//! Weather and sky: see the checks for what is compared with what.

use noonday_tests::checks::{assert_all, weather};

#[test]
fn sky_agrees_with_the_published_correlations() {
    assert_all(&weather::sky_agrees_with_the_published_correlations());
}

#[test]
fn file_weather_agrees_with_the_building_program() {
    assert_all(&weather::file_weather_agrees_with_the_building_program());
}

#[test]
fn file_weather_keeps_the_sums_of_the_file() {
    assert_all(&weather::file_weather_keeps_the_sums_of_the_file());
}
