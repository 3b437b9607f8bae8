//! Words for then and now: a pinned state beside the present one.

/// Most changes that are named.
const MOST_NAMED: usize = 6;

/// What the pinned state answers.
pub fn pinned(lead: &str) -> String {
    format!("Pinned, drawn faintly: {lead}")
}

/// A change since.
pub fn change(label: &str, before: &str, now: &str) -> String {
    format!("{label} {before}\u{a0}\u{2192} {now}")
}

/// All the changes since.
pub fn changes(changes: &[String]) -> String {
    match changes {
        [] => "Nothing is changed since: move any input, and every chart and number shows the difference.".to_owned(),
        few if few.len() <= MOST_NAMED => format!("Changed since: {}.", few.join("; ")),
        many => {
            let named = many.get(..MOST_NAMED).unwrap_or_default().join("; ");
            format!("Changed since: {named}; and {} more.", many.len() - MOST_NAMED)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn many_changes_are_counted_and_not_all_named() {
        let change = |number: usize| super::change(&format!("Input {number}"), "1", "2");
        let all: Vec<String> = (1..=8).map(change).collect();
        assert!(changes(&[]).contains("Nothing"));
        assert_eq!(
            changes(&all[..1]),
            "Changed since: Input 1 1\u{a0}\u{2192} 2."
        );
        assert!(changes(&all).ends_with("Input 6 1\u{a0}\u{2192} 2; and 2 more."));
    }
}
