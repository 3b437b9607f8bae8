//! An address as a code of squares that a phone reads off a screen or a sheet of paper: a QR code, ISO/IEC 18004.

use qrcodegen::{QrCode, QrCodeEcc};
use std::fmt::Write;

/// Free squares around the code, ISO/IEC 18004 (2015), 9.1.
const QUIET: i32 = 4;

/// The code as the text of an SVG in black on white, whatever the page's colours: readers look for dark on light. It says nothing to
/// those who do not see it, so what holds it has to be named. Nothing where the address is too long for any such code.
///
/// Errors are corrected as well as the least size allows, which is at least the lowest level: a screen has no stains.
pub fn drawn(address: &str) -> Option<String> {
    let code = QrCode::encode_text(address, QrCodeEcc::Low).ok()?;
    let side = code.size() + 2 * QUIET;
    let mut svg = format!(
        "<svg viewBox=\"0 0 {side} {side}\" shape-rendering=\"crispEdges\" aria-hidden=\"true\" focusable=\"false\">\
         <rect width=\"{side}\" height=\"{side}\" fill=\"#fff\"/><path fill=\"#000\" d=\""
    );
    for y in 0..code.size() {
        push_row(&mut svg, &code, y);
    }
    svg.push_str("\"/></svg>");
    Some(svg)
}

/// The dark squares of a row, each run of them as one box.
fn push_row(svg: &mut String, code: &QrCode, y: i32) {
    let mut x = 0;
    while x < code.size() {
        let start = x;
        // Outside of the code everything is light.
        while code.get_module(x, y) {
            x += 1;
        }
        let run = x - start;
        if run > 0 {
            let (left, top) = (start + QUIET, y + QUIET);
            // Writing into a text cannot fail.
            let _ = write!(svg, "M{left} {top}h{run}v1h-{run}z");
        }
        x += 1;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use noonday_engine::scenario::LONGEST_SHARED_LINK;

    /// Squares on a side, quiet zone included.
    fn side(svg: &str) -> i32 {
        let (_, rest) = svg.split_once("viewBox=\"0 0 ").unwrap();
        rest.split(' ').next().unwrap().parse().unwrap()
    }

    /// Least sizes for bytes at level L, ISO/IEC 18004 (2015), table 7: 53 bytes in version 3 (29 squares), 1273 in version 25 (117).
    #[test]
    fn it_is_as_small_as_the_standard_allows() {
        for (bytes, squares) in [(53, 29), (54, 33), (1_273, 117), (1_274, 121)] {
            let svg = drawn(&"a".repeat(bytes)).unwrap();
            assert_eq!(side(&svg) - 2 * QUIET, squares, "{bytes}");
        }
        assert_eq!(drawn(&"a".repeat(2_954)), None);
    }

    /// The finder pattern at the upper left, ISO/IEC 18004 (2015), 6.3.3: seven squares wide, and four free squares around it.
    #[test]
    fn it_begins_with_its_finder_behind_the_quiet_zone() {
        let svg = drawn("https://example.org/#2Nll-AA").unwrap();
        assert!(svg.contains(" d=\"M4 4h7v1h-7z"), "{svg}");
        assert!(svg.contains("M4 5h1v1h-1zM10 5h1v1h-1z"));
        assert!(!svg.contains("M3 ") && !svg.contains(" 3h"));
    }

    #[test]
    fn any_link_of_the_page_has_a_code() {
        let address = format!(
            "https://a-long-name.example.org/tools/noonday/#{}",
            "2".repeat(LONGEST_SHARED_LINK)
        );
        let squares = side(&drawn(&address).unwrap());
        println!("longest link: {squares} squares");
        assert!(squares <= 125 + 2 * QUIET);
    }
}
