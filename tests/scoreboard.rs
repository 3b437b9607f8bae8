//! Writes and prints the scoreboard; fails if a check does not pass.

use noonday_tests::checks::scoreboard;
use noonday_tests::reference_path;
use std::process::ExitCode;

fn main() -> ExitCode {
    let (text, all_pass) = scoreboard();
    print!("{text}");
    if let Err(error) = std::fs::write(reference_path("SCOREBOARD.md"), &text) {
        eprintln!("SCOREBOARD.md: {error}");
        return ExitCode::FAILURE;
    }
    if all_pass {
        ExitCode::SUCCESS
    } else {
        eprintln!("some checks do not pass");
        ExitCode::FAILURE
    }
}
