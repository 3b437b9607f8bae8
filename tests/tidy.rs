//! Rules of the house that a compiler does not know. Every failure says how to mend it.

#![expect(
    clippy::unwrap_used,
    reason = "a rule that cannot read the sources has to fail"
)]

use std::path::{Path, PathBuf};

/// Longest source file, lines. Rows of the fields table are data and may be longer.
const LONGEST_FILE_LINES: usize = 400;
const TABLES: &str = "scenario/fields/";

/// The engine's modules, lowest first; imports only point down.
const ENGINE_MODULES: [&str; 15] = [
    "quantity",
    "validity",
    "schedule",
    "air",
    "solar",
    "weather",
    "envelope",
    "cabin",
    "cooler",
    "electrical",
    "comfort",
    "roof",
    "scenario",
    "simulation",
    "advice",
];

/// All that the engine stands on.
const ENGINE_DEPENDENCIES: [&str; 7] = [
    "lexical-parse-float",
    "libm",
    "percent-encoding",
    "serde",
    "serde_json",
    "solar-positioning",
    "wide",
];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// Every file below a folder with one of the endings, but for what tools put there.
fn files(folder: &str, endings: &[&str]) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut folders = vec![root().join(folder)];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                if !path.ends_with("node_modules") && !path.ends_with("target") {
                    folders.push(path);
                }
            } else if endings
                .iter()
                .any(|ending| path.extension().is_some_and(|own| own == *ending))
            {
                let text = std::fs::read_to_string(&path).unwrap();
                let name = path.strip_prefix(root()).unwrap();
                found.push((name.to_string_lossy().replace('\\', "/"), text));
            }
        }
    }
    assert!(!found.is_empty(), "{folder} has no {endings:?}");
    found.sort();
    found
}

fn rust_files() -> Vec<(String, String)> {
    let mut found = files("src", &["rs"]);
    found.extend(files("tests", &["rs"]));
    found
}

/// Lines of code with their numbers, comments left out.
fn code_lines(text: &str) -> impl Iterator<Item = (usize, &str)> {
    (1..)
        .zip(text.lines())
        .filter(|(_, line)| !line.trim_start().starts_with("//"))
}

#[test]
fn files_are_short() {
    for (name, text) in files("src", &["rs"]) {
        let lines = text.lines().count();
        assert!(
            lines <= LONGEST_FILE_LINES || name.contains(TABLES),
            "{name} has {lines} lines. Mend: split it by responsibility, into parts of less than {LONGEST_FILE_LINES} \
             lines, each of which a sentence describes."
        );
    }
}

#[test]
fn nothing_is_left_to_do() {
    // Put together here, so that this file does not find itself.
    let words = [
        ["TO", "DO"].concat(),
        ["FIX", "ME"].concat(),
        ["XX", "X"].concat(),
        ["todo", "!("].concat(),
        ["unimplemented", "!("].concat(),
        ["dbg", "!("].concat(),
    ];
    for (name, text) in rust_files() {
        for (number, line) in (1..).zip(text.lines()) {
            for word in &words {
                assert!(
                    !line.contains(word.as_str()),
                    "{name}:{number} says {word}. Mend: do it now, or take it out and note it where work is planned."
                );
            }
        }
    }
}

#[test]
fn nothing_names_a_place_on_somebodys_machine() {
    let places = [["/wo", "rk/"].concat(), ["/ho", "me/"].concat()];
    let mut all = rust_files();
    all.extend(files("tests/golden", &["csv", "json", "txt"]));
    for (name, text) in all {
        for place in &places {
            assert!(
                !text.contains(place.as_str()),
                "{name} names a path below {place}. Mend: name the file by its path in the project."
            );
        }
    }
}

/// The module of the engine to which a file belongs.
fn module_of(name: &str) -> &str {
    let inside = name.trim_start_matches("src/engine/");
    inside.split(['/', '.']).next().unwrap()
}

fn rank(module: &str) -> Option<usize> {
    ENGINE_MODULES.iter().position(|known| *known == module)
}

/// Modules that a line of code names after `crate::`.
fn named_modules(line: &str) -> Vec<&str> {
    line.match_indices("crate::")
        .map(|(index, found)| {
            let rest = &line[index + found.len()..];
            let end = rest.find(|c: char| !(c.is_ascii_lowercase() || c == '_'));
            &rest[..end.unwrap_or(rest.len())]
        })
        .collect()
}

#[test]
fn the_engine_imports_only_downwards() {
    let mut imports = 0;
    for (name, text) in files("src/engine", &["rs"]) {
        let own = module_of(&name);
        if own == "lib" {
            continue;
        }
        let own_rank = rank(own).unwrap_or_else(|| {
            panic!("{name}: module {own} has no place. Mend: put it into ENGINE_MODULES of this test, as low as can be.")
        });
        for (number, line) in code_lines(&text) {
            for module in named_modules(line) {
                let other_rank = rank(module).unwrap_or_else(|| {
                    panic!("{name}:{number} names crate::{module}. Mend: name one module a line, by its path.")
                });
                imports += 1;
                assert!(
                    other_rank <= own_rank,
                    "{name}:{number}: {own} looks up to {module}. Mend: hand in the numbers it needs as arguments, or move \
                     what both need into a lower module."
                );
            }
        }
    }
    assert!(imports > 100, "only {imports} imports found");
}

/// Names of the packages in a section of a manifest.
fn dependencies(manifest: &str) -> Vec<&str> {
    let (_, after) = manifest.split_once("\n[dependencies]\n").unwrap();
    after
        .lines()
        .take_while(|line| !line.starts_with('['))
        .filter_map(|line| line.split(['.', '=', ' ']).next())
        .filter(|name| !name.is_empty() && !name.starts_with('#'))
        .collect()
}

#[test]
fn the_engine_is_pure() {
    let manifest = std::fs::read_to_string(root().join("src/engine/Cargo.toml")).unwrap();
    for dependency in dependencies(&manifest) {
        assert!(
            ENGINE_DEPENDENCIES.contains(&dependency),
            "the engine depends on {dependency}. Mend: keep web, clock, randomness and files in the page; if the package is \
             free of all of them and needed, name it in ENGINE_DEPENDENCIES of this test."
        );
    }
    let outside = [
        "std::time",
        "std::fs",
        "std::net",
        "std::env",
        "std::io",
        "std::process",
        "std::thread",
        "HashMap",
        "HashSet",
        "web_sys",
        "js_sys",
    ];
    for (name, text) in files("src/engine", &["rs"]) {
        for (number, line) in code_lines(&text) {
            for word in outside {
                assert!(
                    !line.contains(word),
                    "{name}:{number} uses {word}. Mend: the engine gives the same bytes from the same scenario everywhere; take \
                     the value as an argument, or use an ordered collection."
                );
            }
        }
    }
}

#[test]
fn every_reference_table_names_its_source() {
    const SHORTEST_COMMENT: usize = 40;
    let described =
        std::fs::read_to_string(root().join("tests/reference/thermal/summary.csv")).unwrap();
    for (name, text) in files("tests/reference", &["csv"]) {
        if let Some(case) = name.strip_prefix("tests/reference/thermal/") {
            let case = case.trim_end_matches(".csv").trim_end_matches("_10min");
            assert!(
                case == "summary"
                    || described
                        .lines()
                        .any(|row| row.starts_with(&format!("{case},"))),
                "{name} is described nowhere. Mend: give its case a row in summary.csv and README.md."
            );
            continue;
        }
        let comment = text.lines().next().unwrap_or_default();
        assert!(
            comment.starts_with('#') && comment.len() >= SHORTEST_COMMENT,
            "{name} does not begin with a comment. Mend: say in it where the numbers come from and how they were made."
        );
    }
}
