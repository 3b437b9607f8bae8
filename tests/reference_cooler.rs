//! The cooler: see the checks for what is compared with what.

use noonday_tests::checks::{assert_all, cooler};

#[test]
fn coefficients_are_those_published() {
    assert_all(&cooler::coefficients_are_those_published());
}

#[test]
fn curves_reproduce_the_published_ones() {
    assert_all(&cooler::curves_reproduce_the_published_ones());
}

#[test]
fn division_by_the_rating_point_changes_little() {
    assert_all(&cooler::division_by_the_rating_point_changes_little());
}

#[test]
fn bypass_factors_match_worked_examples() {
    assert_all(&cooler::bypass_factors_match_worked_examples());
}

#[test]
fn coil_reproduces_the_examples_it_is_built_from() {
    assert_all(&cooler::coil_reproduces_the_examples_it_is_built_from());
}

#[test]
fn coefficient_of_performance_follows_the_outdoors() {
    assert_all(&cooler::coefficient_of_performance_follows_the_outdoors());
}

#[test]
fn supply_air_in_mild_weather_is_as_cold_as_people_find_it() {
    assert_all(&cooler::supply_air_in_mild_weather_is_as_cold_as_people_find_it());
}

#[test]
fn low_speed_shifts_towards_sensible_heat() {
    assert_all(&cooler::low_speed_shifts_towards_sensible_heat());
}
