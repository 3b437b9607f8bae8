//! Convection, ribs, glass and leaks: see the checks for what is compared with what.

use noonday_tests::checks::{assert_all, envelope};

#[test]
fn convection_follows_its_published_forms() {
    assert_all(&envelope::convection_follows_its_published_forms());
}

#[test]
fn ribs_follow_the_zone_method() {
    assert_all(&envelope::ribs_follow_the_zone_method());
}

#[test]
fn glass_has_the_transmittance_it_is_described_by() {
    assert_all(&envelope::glass_has_the_transmittance_it_is_described_by());
}

#[test]
fn covers_add_their_resistance_to_the_pane() {
    assert_all(&envelope::covers_add_their_resistance_to_the_pane());
}

#[test]
fn leaks_lie_where_vehicles_were_measured() {
    assert_all(&envelope::leaks_lie_where_vehicles_were_measured());
}
