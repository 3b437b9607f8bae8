//! Numbers as they are kept, against all that can be entered: they show as they were typed, and links to them are short.

use super::{Typed, UnitSystem, entry_text, parse_clock, parse_number, unit};
use crate::inputs::Scale;
use noonday_engine::scenario::{
    Dimension, Kind, LONGEST_SHARED_LINK, NumberField, ScenarioDocument, example, fields,
    from_any_link, to_share_link,
};

/// Whole numbers by the linear congruence of Knuth's MMIX; the same at each run.
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, limit: u64) -> u64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % limit
    }

    fn share(&mut self) -> f64 {
        self.below(1 << 30) as f64 / f64::from(1 << 30)
    }
}

/// A value of a field as its box shows it, read as if it were typed.
fn typed_si(number: &NumberField, value_si: f64, system: UnitSystem) -> (String, f64) {
    let unit = unit(number.dimension, system);
    let (text, typed) = if number.dimension == Dimension::HourOfDay {
        let text = system.clock(value_si);
        let typed = parse_clock(&text);
        (text, typed)
    } else {
        let text = entry_text(unit.shown(value_si), unit.decimals);
        let typed = parse_number(&text, unit.symbol);
        (text, typed)
    };
    match typed {
        Typed::Value(shown) => (text, unit.si(shown)),
        _ => panic!("{text} is no number"),
    }
}

#[test]
fn what_is_typed_shows_back_as_it_was_typed() {
    let mut numbers = Numbers(7);
    for number in fields().filter_map(|field| field.number()) {
        for system in [UnitSystem::Us, UnitSystem::Metric] {
            for _ in 0..300 {
                let value = number.minimum + numbers.share() * (number.maximum - number.minimum);
                let (text, value_si) = typed_si(number, value, system);
                let settled = number.settled(value_si);
                let (again, _) = typed_si(number, settled, system);
                assert_eq!(again, text, "{:?} {system:?}", number.dimension);
                assert_eq!(number.settled(settled), settled);
            }
        }
    }
}

#[test]
fn sliders_stay_where_they_are_put() {
    for number in fields().filter_map(|field| field.number()) {
        for system in [UnitSystem::Us, UnitSystem::Metric] {
            let scale = Scale::new(number, &example(), system);
            for position in 0..=scale.positions {
                let settled = number.settled(scale.value_si(position));
                let near = scale.value_si(scale.position(settled));
                let back = number.settled(near);
                assert_eq!(back, settled, "{:?} {position}", number.dimension);
            }
        }
    }
}

/// Letters of a text that is as long as may be entered, by the bytes they take.
fn longest_text(room_bytes: usize, alphabet: &[char], numbers: &mut Numbers) -> String {
    let mut text = String::new();
    while !alphabet.is_empty() {
        let letter = alphabet[numbers.below(alphabet.len() as u64) as usize];
        if text.len() + letter.len_utf8() > room_bytes {
            break;
        }
        text.push(letter);
    }
    text
}

/// Every field changed to anything that can be entered in either system of units.
fn everything_changed(numbers: &mut Numbers, alphabet: &[char], spread: f64) -> ScenarioDocument {
    let mut document = example();
    for field in fields() {
        match &field.kind {
            Kind::Number(number) => {
                let system = [UnitSystem::Us, UnitSystem::Metric][numbers.below(2) as usize];
                let span = number.maximum - number.minimum;
                let value = number.minimum + (1.0 - spread * numbers.share()) * span;
                let (_, value_si) = typed_si(number, value, system);
                (number.write)(&mut document, number.settled(value_si));
            }
            Kind::Choice(choice) => {
                let index = numbers.below(choice.options.len() as u64) as usize;
                (choice.write)(&mut document, index);
            }
            Kind::Switch(switch) => {
                let usual = (switch.read)(&document);
                (switch.write)(&mut document, !usual);
            }
            Kind::Text(text) => {
                let text_now = longest_text(text.room_bytes, alphabet, numbers);
                (text.write)(&mut document, text_now);
            }
            Kind::Date(date) => {
                let day = (date.read)(&document).plus_days(numbers.below(27_000) as i32);
                (date.write)(&mut document, day);
            }
        }
    }
    document
}

#[test]
fn a_link_to_anything_that_can_be_entered_is_short() {
    let alphabets: [(&str, Vec<char>); 5] = [
        ("no letters", Vec::new()),
        ("small letters", ('a'..='z').collect()),
        ("all of ASCII", (' '..='~').collect()),
        ("Japanese", ('\u{3041}'..'\u{30FF}').collect()),
        ("anything", ('\u{20}'..'\u{1F9FF}').collect()),
    ];
    let (mut numbers, mut longest) = (Numbers(2_026), 0);
    for (name, alphabet) in alphabets {
        for spread in [1.0, 0.3] {
            let mut lengths: Vec<usize> = (0..150)
                .map(|_| {
                    let document = everything_changed(&mut numbers, &alphabet, spread);
                    let link = to_share_link(&document);
                    assert_eq!(from_any_link(&link), Ok(document));
                    link.len()
                })
                .collect();
            lengths.sort_unstable();
            println!(
                "{name}, {spread}: {} usual, {} longest",
                lengths[75], lengths[149]
            );
            longest = longest.max(lengths[149]);
        }
    }
    assert!(longest <= LONGEST_SHARED_LINK);
}
