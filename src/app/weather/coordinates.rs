//! Coordinates as people paste them from a map: decimal or in degrees, minutes and seconds, with signs or the points of the compass.

use noonday_engine::quantity::parse_decimal;

/// Why a text holds no place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoPlace {
    /// Nothing was entered.
    Empty,
    /// It does not hold a latitude and a longitude.
    NotTwo,
    /// Minutes or seconds of sixty or more.
    Sixty,
    /// A latitude beyond a pole.
    Latitude,
    /// A longitude of more than half a turn.
    Longitude,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Token {
    Number {
        value: f64,
        negative: bool,
    },
    /// Whether it is along the meridian, and whether it makes the number negative.
    Compass {
        latitude: bool,
        negative: bool,
    },
    Comma,
}

/// Reads latitude and longitude, degrees, north and east positive, to the fourth decimal, which is eleven metres.
///
/// Two numbers without letters are latitude and longitude in that order, as ISO 6709 has them; letters may stand before or behind,
/// and then in either order.
pub fn read_coordinates(text: &str) -> Result<(f64, f64), NoPlace> {
    if text.trim().is_empty() {
        return Err(NoPlace::Empty);
    }
    let tokens = tokens(text).ok_or(NoPlace::NotTwo)?;
    let lettered = tokens
        .iter()
        .filter(|token| matches!(token, Token::Compass { .. }))
        .count();
    let (latitude, longitude) = match lettered {
        0 => by_order(&tokens)?,
        2 => by_letters(&tokens)?,
        _ => return Err(NoPlace::NotTwo),
    };
    if latitude.abs() > 90.0 {
        return Err(NoPlace::Latitude);
    }
    if longitude.abs() > 180.0 {
        return Err(NoPlace::Longitude);
    }
    let rounded = |degrees: f64| (degrees * 1e4).round() / 1e4;
    Ok((rounded(latitude), rounded(longitude)))
}

fn tokens(text: &str) -> Option<Vec<Token>> {
    let text = text.to_uppercase().replace(['\u{2212}', '\u{2013}'], "-");
    let comma_is_decimal = has_decimal_commas(&text);
    let marks: Vec<char> = text.chars().collect();
    let mut found = Vec::new();
    let mut index = 0;
    while let Some(mark) = marks.get(index).copied() {
        let from = index;
        index += 1;
        let next_is_digit = marks.get(index).is_some_and(char::is_ascii_digit);
        if mark.is_ascii_digit() || (mark == '-' || mark == '+') && next_is_digit {
            let goes_on = |mark: &char| {
                mark.is_ascii_digit() || *mark == '.' || comma_is_decimal && *mark == ','
            };
            while marks.get(index).is_some_and(goes_on) {
                index += 1;
            }
            let digits: String = marks[from..index].iter().collect();
            let digits = digits.replace(',', ".");
            let value = parse_decimal(digits.trim_start_matches(['+', '-']).trim_end_matches('.'))?;
            found.push(Token::Number {
                value,
                negative: mark == '-',
            });
        } else if mark.is_alphabetic() {
            while marks.get(index).is_some_and(|mark| mark.is_alphabetic()) {
                index += 1;
            }
            let word: String = marks[from..index].iter().collect();
            found.extend(compass(&word));
        } else if mark == ',' || mark == ';' {
            found.push(Token::Comma);
        }
    }
    Some(found)
}

/// A comma between digits is a decimal one where no point is, and something else parts the two numbers.
fn has_decimal_commas(text: &str) -> bool {
    let marks: Vec<char> = text.chars().collect();
    let between_digits =
        |part: &[char]| part[0].is_ascii_digit() && part[1] == ',' && part[2].is_ascii_digit();
    let parted = text.trim().contains([';', ' ', '°', 'N', 'S']);
    !text.contains('.') && parted && marks.windows(3).any(between_digits)
}

fn compass(word: &str) -> Option<Token> {
    let (latitude, negative) = match word {
        "N" | "NORTH" => (true, false),
        "S" | "SOUTH" => (true, true),
        "E" | "EAST" => (false, false),
        "W" | "WEST" => (false, true),
        _ => return None,
    };
    Some(Token::Compass { latitude, negative })
}

/// Degrees, minutes and seconds.
fn angle(tokens: &[Token]) -> Result<f64, NoPlace> {
    let mut parts = tokens.iter().filter_map(|token| match token {
        Token::Number { value, negative } => Some((*value, *negative)),
        _ => None,
    });
    let (degrees, negative) = parts.next().ok_or(NoPlace::NotTwo)?;
    let mut sum = degrees;
    let mut unit = 60.0;
    for (value, below_zero) in parts {
        if unit > 3_600.0 || below_zero {
            return Err(NoPlace::NotTwo);
        }
        if value >= 60.0 {
            return Err(NoPlace::Sixty);
        }
        sum += value / unit;
        unit *= 60.0;
    }
    Ok(if negative { -sum } else { sum })
}

fn by_order(tokens: &[Token]) -> Result<(f64, f64), NoPlace> {
    let comma = tokens.iter().position(|token| *token == Token::Comma);
    let (one, other) = match comma {
        Some(at) => (&tokens[..at], &tokens[at + 1..]),
        None if tokens.len().is_multiple_of(2) => tokens.split_at(tokens.len() / 2),
        None => return Err(NoPlace::NotTwo),
    };
    if other.contains(&Token::Comma) {
        return Err(NoPlace::NotTwo);
    }
    Ok((angle(one)?, angle(other)?))
}

fn by_letters(tokens: &[Token]) -> Result<(f64, f64), NoPlace> {
    let is_letter = |token: &Token| matches!(token, Token::Compass { .. });
    let first_is_letter = tokens.first().is_some_and(is_letter);
    let mut found = [None, None];
    let mut rest = tokens;
    for _ in 0..2 {
        let at = rest.iter().position(is_letter).ok_or(NoPlace::NotTwo)?;
        let Token::Compass { latitude, negative } = rest[at] else {
            return Err(NoPlace::NotTwo);
        };
        let (numbers, after) = if first_is_letter {
            let behind = &rest[at + 1..];
            behind.split_at(behind.iter().position(is_letter).unwrap_or(behind.len()))
        } else {
            (&rest[..at], &rest[at + 1..])
        };
        let size = angle(numbers)?;
        let slot = &mut found[usize::from(!latitude)];
        if slot.is_some() {
            return Err(NoPlace::NotTwo);
        }
        *slot = Some(if negative { -size.abs() } else { size });
        rest = after;
    }
    match found {
        [Some(latitude), Some(longitude)] => Ok((latitude, longitude)),
        _ => Err(NoPlace::NotTwo),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_are_read_as_maps_write_them() {
        let phoenix = Ok((33.45, -112.07));
        for text in [
            "33.45, -112.07",
            "33.45 -112.07",
            "33.45,-112.07",
            "geo:33.45,-112.07",
            "Lat: 33.45, Lon: \u{2212}112.07",
            "33.45° N, 112.07° W",
            "33.45N 112.07W",
            "N 33.45 W 112.07",
            "112.07° west, 33.45° north",
            "33,45; -112,07",
            "33,45° N, 112,07° W",
            "33°27′N 112°4.2′W",
            "33°27'0.0\"N 112°04'12.0\"W",
            "33 27 0, -112 4 12",
            "33 27 -112 4.2",
        ] {
            assert_eq!(read_coordinates(text), phoenix, "{text}");
        }
        assert_eq!(read_coordinates("33,112"), Ok((33.0, 112.0)));
        assert_eq!(read_coordinates("-33.87, 151.21"), Ok((-33.87, 151.21)));
        assert_eq!(read_coordinates("0°30'S 78°30'W"), Ok((-0.5, -78.5)));
        assert_eq!(read_coordinates("-0 30 0, -78 30 0"), Ok((-0.5, -78.5)));
    }

    #[test]
    fn what_is_no_place_says_why() {
        for (text, why) in [
            ("  ", NoPlace::Empty),
            ("Main Street 5", NoPlace::NotTwo),
            ("33.45", NoPlace::NotTwo),
            ("33.45 N, 12 N", NoPlace::NotTwo),
            ("33.45 N", NoPlace::NotTwo),
            ("1, 2, 3", NoPlace::NotTwo),
            ("33 75 0, -112 4 12", NoPlace::Sixty),
            ("95, 10", NoPlace::Latitude),
            ("10, 195", NoPlace::Longitude),
            ("1 2 3 4 5 6 7 8", NoPlace::NotTwo),
            ("1.2.3, 4", NoPlace::NotTwo),
        ] {
            assert_eq!(read_coordinates(text), Err(why), "{text}");
        }
    }
}
