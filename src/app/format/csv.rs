//! Comma-separated values as RFC 4180 describes them.

/// Rows as text: lines end with CR LF; a field with a comma, a quotation mark or a line break is quoted, and its quotation marks
/// are doubled.
pub fn csv_text(rows: &[Vec<String>]) -> String {
    let mut text = String::new();
    for row in rows {
        for (index, field) in row.iter().enumerate() {
            if index > 0 {
                text.push(',');
            }
            push_field(&mut text, field);
        }
        text.push_str("\r\n");
    }
    text
}

fn push_field(text: &mut String, field: &str) {
    if !field.contains([',', '"', '\r', '\n']) {
        text.push_str(field);
        return;
    }
    text.push('"');
    text.push_str(&field.replace('"', "\"\""));
    text.push('"');
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The examples of RFC 4180, section 2, rules 5 to 7.
    #[test]
    fn fields_are_quoted_as_rfc_4180_says() {
        let row = |fields: [&str; 3]| fields.map(str::to_owned).to_vec();
        let rows = [
            row(["aaa", "b\r\nbb", "ccc"]),
            row(["aaa", "b\"bb", "c,cc"]),
        ];
        assert_eq!(
            csv_text(&rows),
            "aaa,\"b\r\nbb\",ccc\r\naaa,\"b\"\"bb\",\"c,cc\"\r\n"
        );
    }
}
