//! English figures: degrees with a true minus, and with their sides.

/// A heading that is not rounded up to 360.0.
pub(super) fn full(degrees: f64) -> f64 {
    let tenths = (degrees * 10.0).round() / 10.0;
    if tenths >= 360.0 { 0.0 } else { tenths }
}

/// To a tenth, without a tenth that is none.
fn tenths(value: f64) -> String {
    let rounded = (value * 10.0).round() / 10.0 + 0.0;
    rounded.to_string().replace('-', "−")
}

/// Degrees to a tenth.
pub(super) fn degrees(value: f64) -> String {
    format!("{}°", tenths(value))
}

/// Degrees to a hundredth, with a sign.
pub(super) fn signed(value: f64) -> String {
    let words = format!("{value:+.2}°");
    if words == "-0.00°" {
        "+0.00°".to_owned()
    } else {
        words.replace('-', "−")
    }
}

/// Degrees, east positive.
pub(super) fn east_west(value: f64) -> String {
    let words = degrees(value.abs());
    match words.as_str() {
        "0°" => words,
        _ if value < 0.0 => format!("{words} W"),
        _ => format!("{words} E"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_have_their_sides() {
        assert_eq!([east_west(-2.84), east_west(0.02)], ["2.8° W", "0°"]);
        assert_eq!([signed(-1.5), signed(-0.001)], ["−1.50°", "+0.00°"]);
        assert_eq!(full(359.97), 0.0);
    }
}
