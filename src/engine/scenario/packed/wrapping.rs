//! Bytes as text that any address carries, with a sum by which damage shows.

/// Letters of base64url, RFC 4648 (2006), table 2.
const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// Bytes as base64url without padding, RFC 4648 (2006), section 5.
pub(super) fn letters_of_bytes(bytes: &[u8]) -> String {
    let mut text = String::new();
    for part in bytes.chunks(3) {
        let mut bits = 0_u32;
        for index in 0..3 {
            bits = (bits << 8) | u32::from(part.get(index).copied().unwrap_or_default());
        }
        for index in 0..=part.len() {
            let letter = (bits >> (18 - 6 * index)) & 63;
            text.push(char::from(LETTERS[letter as usize]));
        }
    }
    text
}

/// Bytes back from base64url without padding; nothing for any other text, spare bits that are not zero included.
pub(super) fn bytes_of_letters(text: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::new();
    for part in text.as_bytes().chunks(4) {
        let mut bits = 0_u32;
        for index in 0..4 {
            let letter = match part.get(index) {
                Some(letter) => LETTERS.iter().position(|other| other == letter)?,
                None => 0,
            };
            bits = (bits << 6) | letter as u32;
        }
        let [_, first, second, third] = bits.to_be_bytes();
        let whole = [first, second, third];
        let (kept, spare) = whole.split_at_checked(part.len() - 1)?;
        if kept.is_empty() || spare.iter().any(|byte| *byte != 0) {
            return None;
        }
        bytes.extend(kept);
    }
    Some(bytes)
}

/// CRC-16/IBM-3740: polynomial 0x1021 (ITU-T V.41), begun with all ones.
pub(super) fn sum_of(bytes: &[u8]) -> u16 {
    bytes.iter().fold(u16::MAX, |sum, byte| {
        (0..8).fold(sum ^ (u16::from(*byte) << 8), |sum, _| {
            let shifted = sum << 1;
            if sum & 0x8000 == 0 {
                shifted
            } else {
                shifted ^ 0x1021
            }
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Test vectors of RFC 4648, section 10, without their padding; the last has the two letters that base64 has otherwise.
    #[test]
    fn letters_are_those_of_rfc_4648() {
        for (bytes, text) in [
            (&b""[..], ""),
            (b"f", "Zg"),
            (b"fo", "Zm8"),
            (b"foo", "Zm9v"),
            (b"foob", "Zm9vYg"),
            (b"fooba", "Zm9vYmE"),
            (b"foobar", "Zm9vYmFy"),
            (&[0xFB, 0xFF], "-_8"),
        ] {
            assert_eq!(letters_of_bytes(bytes), text);
            assert_eq!(bytes_of_letters(text).as_deref(), Some(bytes));
        }
    }

    #[test]
    fn other_texts_are_no_bytes() {
        for text in ["Z", "Zm9vY", "Zh", "Zm9", "Zg==", "Zm 9", "Zm8é", "+/8"] {
            assert_eq!(bytes_of_letters(text), None, "{text}");
        }
    }

    /// Check value of CRC-16/IBM-3740 in the catalogue of parametrised CRC algorithms (G. Cook): 0x29B1 for "123456789".
    #[test]
    fn the_sum_has_its_published_check_value() {
        assert_eq!(sum_of(b"123456789"), 0x29B1);
    }
}
