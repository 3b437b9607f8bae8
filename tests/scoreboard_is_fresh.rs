//! The scoreboard kept beside the references is what the engine gives now.

use noonday_tests::checks::scoreboard;
use noonday_tests::reference_path;

#[test]
fn the_scoreboard_is_fresh_and_all_pass() {
    let (now, all_pass) = scoreboard();
    let kept = std::fs::read_to_string(reference_path("SCOREBOARD.md")).unwrap();
    for (was, is) in kept.lines().zip(now.lines()) {
        assert_eq!(
            was, is,
            "stale: run `make validate` and keep what it writes"
        );
    }
    assert_eq!(
        kept, now,
        "stale: run `make validate` and keep what it writes"
    );
    assert!(all_pass);
}
