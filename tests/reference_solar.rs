//! The sun: see the checks for what is compared with what.

use noonday_tests::checks::{assert_all, solar};

#[test]
fn position_agrees_with_the_published_library() {
    assert_all(&solar::position_agrees_with_the_published_library());
}

#[test]
fn position_agrees_with_the_worked_example() {
    assert_all(&solar::position_agrees_with_the_worked_example());
}

#[test]
fn clear_sky_agrees_with_the_published_library() {
    assert_all(&solar::clear_sky_agrees_with_the_published_library());
}

#[test]
fn daily_sums_agree_with_the_published_library() {
    assert_all(&solar::daily_sums_agree_with_the_published_library());
}

#[test]
fn planes_agree_with_the_published_library() {
    assert_all(&solar::planes_agree_with_the_published_library());
}
