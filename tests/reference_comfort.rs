//! Comfort, heat index and heat of occupants: see the checks for what is compared with what.

use noonday_tests::checks::{assert_all, comfort};

#[test]
fn heat_index_follows_the_published_algorithm() {
    assert_all(&comfort::heat_index_follows_the_published_algorithm());
}

#[test]
fn heat_index_agrees_with_the_published_chart() {
    assert_all(&comfort::heat_index_agrees_with_the_published_chart());
}

#[test]
fn mean_vote_follows_the_standard() {
    assert_all(&comfort::mean_vote_follows_the_standard());
}

#[test]
fn standard_effective_temperature_follows_the_standard() {
    assert_all(&comfort::standard_effective_temperature_follows_the_standard());
}

#[test]
fn people_give_off_the_heat_of_the_handbook() {
    assert_all(&comfort::people_give_off_the_heat_of_the_handbook());
}

#[test]
fn dogs_give_off_heat_by_their_mass() {
    assert_all(&comfort::dogs_give_off_heat_by_their_mass());
}
