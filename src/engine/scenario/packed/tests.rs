use super::*;
use crate::scenario::to_link;

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
}

fn with_three_changes() -> ScenarioDocument {
    let mut document = example();
    document.shell.wall_insulation_m = 0.055;
    document.battery.capacity_ah = 280.0;
    document.glass.covers_fitted = !document.glass.covers_fitted;
    document
}

fn with_everything_changed() -> ScenarioDocument {
    let mut document = example();
    for field in fields() {
        match &field.kind {
            Kind::Number(number) => {
                let value = number.minimum + (number.maximum - number.minimum) / 3.0;
                (number.write)(&mut document, value);
            }
            Kind::Choice(choice) => (choice.write)(&mut document, choice.options.len() - 1),
            Kind::Switch(switch) => flip(switch, &mut document),
            Kind::Text(text) => (text.write)(&mut document, "Zoë 🐕 日".to_owned()),
            Kind::Date(date) => {
                let day = (date.read)(&document).plus_days(-9_000);
                (date.write)(&mut document, day);
            }
        }
    }
    document
}

#[test]
fn the_example_takes_a_few_marks_and_three_changes_a_few_more() {
    let bare = to_share_link(&example());
    assert!(bare.len() <= 8, "{bare}");
    assert_eq!(from_any_link(&bare), Ok(example()));
    let link = to_share_link(&with_three_changes());
    println!("three changes: {link}");
    assert!(link.len() <= 30, "{link}");
    assert_eq!(from_any_link(&link), Ok(with_three_changes()));
}

#[test]
fn full_precision_comes_back_to_the_bit() {
    let document = with_everything_changed();
    let link = to_share_link(&document);
    println!("everything in full precision: {}", link.len());
    assert_eq!(from_any_link(&link), Ok(document.clone()));
    assert!(link.len() * 2 < to_link(&document).len());
}

/// A letter takes at most the eight bits of its byte, whatever the text.
#[test]
fn no_text_is_longer_than_its_bytes() {
    let mut numbers = Numbers(5);
    for _ in 0..200 {
        let mut document = example();
        document.name.clear();
        document.note = (0..160)
            .map(|_| char::from(numbers.below(96) as u8 + 31))
            .collect();
        let bare = document.note.len() * 8 / 6;
        let link = to_share_link(&document);
        assert!(link.len() <= bare + 16, "{}", link.len());
        assert_eq!(from_packed(&link), Ok(document));
    }
}

#[test]
fn links_of_the_first_version_are_read_too() {
    let document = with_three_changes();
    assert_eq!(from_any_link(&to_link(&document)), Ok(document));
}

#[test]
fn no_link_ends_in_a_mark_that_messengers_leave_out() {
    let mut mended = 0;
    for metres in 0..2_000 {
        let mut document = example();
        document.place.altitude_m = f64::from(metres);
        let link = to_share_link(&document);
        assert!(link.ends_with(|mark: char| mark.is_ascii_alphanumeric()));
        assert_eq!(from_packed(&link), Ok(document.clone()));
        mended += usize::from(link != wrapped(&packed(&document)));
    }
    assert!(mended > 0);
}

/// A sum of 16 bits finds every error that lies within 16 bits in a row, so every single letter.
#[test]
fn a_letter_mistyped_or_cut_off_is_told() {
    let link = to_share_link(&with_three_changes());
    for place in 1..link.len() {
        for other in ["A", "b", "7", "_"] {
            let mut mistyped = link.clone();
            mistyped.replace_range(place..=place, other);
            if mistyped != link {
                assert_eq!(from_any_link(&mistyped), Err(LinkError::Damaged), "{place}");
            }
        }
        assert_eq!(from_any_link(&link[..place]), Err(LinkError::Damaged));
    }
    for other in ["2é", "2 ", "2%", "2"] {
        assert_eq!(from_any_link(other), Err(LinkError::Damaged));
    }
    assert!(matches!(
        from_any_link("3abc"),
        Err(LinkError::UnknownVersion { .. })
    ));
    let long = "2".repeat(LONGEST_LINK_BYTES + 1);
    assert!(matches!(
        from_any_link(&long),
        Err(LinkError::TooLong { .. })
    ));
}

/// Bytes whose sum is right and whose rest is anything at all.
#[test]
fn anything_with_a_right_sum_is_read_or_refused() {
    let (mut numbers, mut read) = (Numbers(1), 0);
    let whole = packed(&with_everything_changed());
    for round in 0..4_000 {
        let bytes: Vec<u8> = if round % 2 == 0 {
            let length = numbers.below(400);
            (0..length).map(|_| numbers.below(256) as u8).collect()
        } else {
            let mut bytes = whole.clone();
            let place = numbers.below(bytes.len() as u64) as usize;
            bytes[place] ^= 1 << numbers.below(8);
            bytes.truncate(numbers.below(bytes.len() as u64 + 1) as usize);
            bytes
        };
        if let Ok(document) = from_packed(&wrapped(&bytes)) {
            assert!(from_packed(&to_share_link(&document)).is_ok());
            read += 1;
        }
    }
    println!("{read} of 4000 happened to read");
}

#[test]
fn a_field_of_a_newer_page_is_named() {
    let mut coder = Coder::writer();
    let mut models = Models::begun(&mut coder, true);
    models.gaps.pass(&mut coder, 9_999);
    assert_eq!(
        from_packed(&wrapped(&coder.finish())),
        Err(LinkError::UnknownField {
            id: "9999".to_owned()
        })
    );
}
