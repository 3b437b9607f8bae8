//! The little of JSON (RFC 8259) that is stored: texts, null, and objects of these.

/// A stored value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Value {
    /// Nothing.
    Null,
    /// A text.
    Text(String),
    /// Names and values.
    Object(Vec<(String, Value)>),
}

impl Value {
    /// The text, if it is one.
    pub fn into_text(self) -> Option<String> {
        match self {
            Self::Text(text) => Some(text),
            _ => None,
        }
    }

    /// Takes the value under a name, if there is one.
    pub fn take(&mut self, name: &str) -> Option<Value> {
        let Self::Object(pairs) = self else {
            return None;
        };
        let place = pairs.iter().position(|(own, _)| own == name)?;
        Some(pairs.swap_remove(place).1)
    }

    /// An object of texts.
    pub fn object(pairs: &[(&str, Value)]) -> Self {
        let owned = |(name, value): &(&str, Value)| ((*name).to_owned(), value.clone());
        Self::Object(pairs.iter().map(owned).collect())
    }

    /// As it is stored.
    pub fn written(&self) -> String {
        match self {
            Self::Null => "null".to_owned(),
            Self::Text(text) => quoted(text),
            Self::Object(pairs) => {
                let pair = |(name, value): &(String, Value)| {
                    format!("{}:{}", quoted(name), value.written())
                };
                let pairs: Vec<String> = pairs.iter().map(pair).collect();
                format!("{{{}}}", pairs.join(","))
            }
        }
    }

    /// Reads a value; none where the text is anything else.
    pub fn read(raw: &str) -> Option<Self> {
        let mut rest = raw.trim_ascii();
        let value = value(&mut rest, DEEPEST)?;
        rest.trim_ascii().is_empty().then_some(value)
    }
}

/// Deepest nesting that is read: one more than is ever written.
const DEEPEST: u32 = 2;

fn quoted(text: &str) -> String {
    let mut quoted = String::from("\"");
    for mark in text.chars() {
        match mark {
            '"' | '\\' => {
                quoted.push('\\');
                quoted.push(mark);
            }
            control if u32::from(control) < 0x20 => {
                quoted.push_str(&format!("\\u{:04x}", u32::from(control)));
            }
            other => quoted.push(other),
        }
    }
    quoted.push('"');
    quoted
}

fn value(rest: &mut &str, depth: u32) -> Option<Value> {
    if let Some(after) = rest.strip_prefix("null") {
        *rest = after;
        return Some(Value::Null);
    }
    if rest.starts_with('"') {
        return text(rest).map(Value::Text);
    }
    let mut pairs = Vec::new();
    eat(rest, '{')?;
    if eat(rest, '}').is_some() {
        return Some(Value::Object(pairs));
    }
    loop {
        *rest = rest.trim_ascii_start();
        let name = text(rest)?;
        eat(rest, ':')?;
        *rest = rest.trim_ascii_start();
        pairs.push((name, value(rest, depth.checked_sub(1)?)?));
        if eat(rest, ',').is_none() {
            eat(rest, '}')?;
            return Some(Value::Object(pairs));
        }
    }
}

/// Takes a mark, with what space there is before it.
fn eat(rest: &mut &str, mark: char) -> Option<()> {
    *rest = rest.trim_ascii_start().strip_prefix(mark)?;
    Some(())
}

fn text(rest: &mut &str) -> Option<String> {
    let mut marks = rest.strip_prefix('"')?.chars();
    let mut text = String::new();
    loop {
        match marks.next()? {
            '"' => break,
            '\\' => text.push(escaped(&mut marks)?),
            control if u32::from(control) < 0x20 => return None,
            other => text.push(other),
        }
    }
    *rest = marks.as_str();
    Some(text)
}

fn escaped(marks: &mut std::str::Chars) -> Option<char> {
    Some(match marks.next()? {
        'n' => '\n',
        't' => '\t',
        'r' => '\r',
        'b' => '\u{8}',
        'f' => '\u{c}',
        'u' => {
            let first = unit(marks)?;
            if !(0xD800..0xDC00).contains(&first) {
                return char::from_u32(first);
            }
            // The second half of a pair.
            (marks.next()? == '\\' && marks.next()? == 'u').then_some(())?;
            let second = unit(marks)?
                .checked_sub(0xDC00)
                .filter(|low| *low < 0x400)?;
            char::from_u32(0x10000 + ((first - 0xD800) << 10) + second)?
        }
        same @ ('"' | '\\' | '/') => same,
        _ => return None,
    })
}

fn unit(marks: &mut std::str::Chars) -> Option<u32> {
    (0..4).try_fold(0, |unit, _| Some(16 * unit + marks.next()?.to_digit(16)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against another reader and writer of the same form.
    #[test]
    fn what_is_written_and_read_is_json() {
        for text in [
            "",
            "Zoë’s \"van\" \\ dog",
            "a\nb\t\u{1}",
            "🐕 \u{7f}",
            "v=1&18=0.05",
        ] {
            let value = Value::object(&[
                ("name", Value::Text(text.to_owned())),
                ("last", Value::Null),
            ]);
            let written = value.written();
            let theirs: serde_json::Value = serde_json::from_str(&written).unwrap();
            assert_eq!(theirs["name"], text);
            assert!(theirs["last"].is_null());
            assert_eq!(Value::read(&written).as_ref(), Some(&value));
            let theirs =
                serde_json::to_string_pretty(&serde_json::json!({"name": text, "last": null}));
            let mut read = Value::read(&theirs.unwrap()).unwrap();
            assert_eq!(read.take("name"), Some(Value::Text(text.to_owned())));
        }
        let escaped = r#" "\u00e9\ud83d\udc15\/\n" "#;
        assert_eq!(Value::read(escaped), Some(Value::Text("é🐕/\n".to_owned())));
    }

    #[test]
    fn anything_else_is_refused() {
        for raw in [
            "",
            "{",
            "{rubbish",
            "\"open",
            "{\"a\":}",
            "{\"a\":1}",
            "[]",
            "true",
            "\"a\"b",
            "{\"a\":\"b\",}",
            r#""\ud83d""#,
            r#""\x""#,
            "{\"a\":{\"b\":{\"c\":{}}}}",
            "\"\n\"",
        ] {
            assert_eq!(Value::read(raw), None, "{raw}");
        }
    }
}
