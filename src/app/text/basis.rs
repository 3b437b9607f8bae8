//! Where the example's value of an input comes from.

use noonday_engine::scenario::Basis;

/// The source in a sentence.
pub fn basis(basis: Basis) -> String {
    match basis {
        Basis::Published(source) => format!("Source: {source}."),
        Basis::FromMemory(source) => format!("Source, quoted from memory: {source}."),
        Basis::CommonPractice => "The example’s value is common practice; no source.".to_owned(),
        Basis::Example => "The example’s value is invented.".to_owned(),
    }
}

/// The allowed range in a sentence.
pub fn range_sentence(range: &str, bounds: &str) -> String {
    format!("Allowed is {range}: {bounds}.")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_without_a_source_says_so() {
        assert!(basis(Basis::CommonPractice).contains("no source"));
        assert!(basis(Basis::Example).contains("invented"));
        assert!(basis(Basis::Published("a table")).contains("a table"));
    }
}
