//! Cable and protection: see the checks for what is compared with what.

use noonday_tests::checks::{assert_all, cabling};

#[test]
fn conductors_are_those_of_the_published_tables() {
    assert_all(&cabling::conductors_are_those_of_the_published_tables());
}

#[test]
fn metric_conductors_are_those_of_the_standard() {
    assert_all(&cabling::metric_conductors_are_those_of_the_standard());
}

#[test]
fn metric_conductors_are_allowed_no_more_than_thicker_gauges() {
    assert_all(&cabling::metric_conductors_are_allowed_no_more_than_thicker_gauges());
}

#[test]
fn drop_and_loss_follow_the_tables() {
    assert_all(&cabling::drop_and_loss_follow_the_tables());
}

#[test]
fn the_choice_lies_where_the_table_draws_the_line() {
    assert_all(&cabling::the_choice_lies_where_the_table_draws_the_line());
}

#[test]
fn fuses_are_standard_ratings() {
    assert_all(&cabling::fuses_are_standard_ratings());
}

#[test]
fn heat_and_neighbours_take_what_the_codes_say() {
    assert_all(&cabling::heat_and_neighbours_take_what_the_codes_say());
}
