//! Parked cars against published heat-up measurements: see the checks for what is compared with what.

use noonday_tests::checks::{assert_all, parked};

#[test]
fn a_closed_sedan_heats_as_fast_as_measured() {
    assert_all(&parked::a_closed_sedan_heats_as_fast_as_measured());
}

#[test]
fn closed_all_day_it_peaks_where_georgia_cars_did() {
    assert_all(&parked::closed_all_day_it_peaks_where_georgia_cars_did());
}

#[test]
fn black_stands_above_silver_as_measured() {
    assert_all(&parked::black_stands_above_silver_as_measured());
}
