//! A QR code (ISO/IEC 18004), for a class to point its phones at.
//!
//! Unlike other drawings it has no roles: what reads it wants black on white, whatever the theme.

use kurbo::{BezPath, Rect, Shape};
use qrcodegen::{QrCode, QrCodeEcc};

/// The most bytes that a code holds (ISO/IEC 18004, version 40 at its lowest correction).
pub const MOST_BYTES: usize = 2953;

/// Squares of white on every side, as the standard asks for.
pub const QUIET: i32 = 4;

/// A code in squares of one unit, from the top left corner of its white edge.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// Width and height with the white edge.
    pub side: f64,
    /// The black squares.
    pub black: BezPath,
}

/// The code of a text, as small as it can be and with as much correction as that size allows;
/// none for a text of more than [`MOST_BYTES`].
pub fn qr_code(text: &str) -> Option<Drawn> {
    let code = QrCode::encode_binary(text.as_bytes(), QrCodeEcc::Low).ok()?;
    let size = code.size();
    let mut black = BezPath::new();
    for y in 0..size {
        let mut x = 0;
        while x < size {
            let from = x;
            while code.get_module(x, y) {
                x += 1;
            }
            if x > from {
                let [x0, x1, y0] = [from, x, y].map(|it| f64::from(it + QUIET));
                black.extend(Rect::new(x0, y0, x1, y0 + 1.0).path_elements(0.1));
            }
            x += 1;
        }
    }
    Some(Drawn {
        side: f64::from(size + 2 * QUIET),
        black,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::Point;

    #[test]
    fn the_corners_are_finders_inside_a_white_edge() {
        let code = qr_code("https://example.org/").unwrap();
        // Version 2 has 25 squares a side: 32 bytes at the lowest correction.
        assert_eq!(code.side, 33.0);
        let black = |x: i32, y: i32| {
            let place = Point::new(f64::from(x) + 0.5, f64::from(y) + 0.5);
            code.black.winding(place) != 0
        };
        for at in 0..33 {
            for edge in 0..QUIET {
                assert!(!black(at, edge) && !black(edge, at), "{at} {edge}");
                assert!(
                    !black(at, 32 - edge) && !black(32 - edge, at),
                    "{at} {edge}"
                );
            }
        }
        // A finder: seven squares of 1 1 1 1 1 1 1 along the edge, 1 0 1 1 1 0 1 through the middle.
        for (left, top) in [(4, 4), (22, 4), (4, 22)] {
            for step in 0..7 {
                assert!(black(left + step, top) && black(left, top + step));
                assert_eq!(black(left + step, top + 3), ![1, 5].contains(&step));
            }
        }
    }

    #[test]
    fn a_text_that_is_too_long_has_no_code() {
        assert!(qr_code(&"a".repeat(MOST_BYTES)).is_some());
        assert_eq!(qr_code(&"a".repeat(MOST_BYTES + 1)), None);
    }
}
