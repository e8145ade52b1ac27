//! Figures as they stand on paper.

use compass::heading::CompassHeading;

/// Rounded to a tenth, without a tenth that is none: `15`, `22.5`.
pub(super) fn plain(value: f64) -> String {
    let tenths = (value * 10.0).round() / 10.0 + 0.0;
    let words = if tenths == tenths.round() {
        format!("{tenths:.0}")
    } else {
        format!("{tenths:.1}")
    };
    words.replace('-', "−")
}

/// An angle in radians: `15°`, `22.5°`.
pub(super) fn degrees(angle: f64) -> String {
    format!("{}°", plain(angle.to_degrees()))
}

/// An angle in whole degrees, with or without its sign. Half degrees are common, as half a bank or
/// half a latitude is one, and must not fall to either side by the last bit: tables elsewhere
/// round to six decimals first, so this does.
fn whole(angle: f64) -> i64 {
    ((angle.to_degrees() * 1e6).round() / 1e6).round() as i64
}

/// The size of an angle in whole degrees: `36°`.
pub(super) fn size(angle: f64) -> String {
    format!("{}°", whole(angle).abs())
}

/// An angle in whole degrees with its sign: `+12°`, `−3°`, `0°`.
pub(super) fn signed(angle: f64) -> String {
    match whole(angle) {
        0 => "0°".to_owned(),
        whole if whole < 0 => format!("−{}°", -whole),
        whole => format!("+{whole}°"),
    }
}

/// A heading in whole degrees, 001 to 360.
pub(super) fn heading(whole_degrees: u16) -> String {
    format!("{whole_degrees:03}°")
}

/// A compass reading in whole degrees, a half as in [`whole`].
pub(super) fn reading(reading: CompassHeading) -> String {
    let degrees = (reading.degrees() * 1e6).round() / 1e6;
    match degrees.round() as u16 {
        0 => heading(360),
        whole => heading(whole),
    }
}

/// A dip in radians, and which end of a needle it pulls down.
pub(super) fn dip(dip: f64) -> String {
    let side = if dip < 0.0 { "up" } else { "down" };
    format!("{} {side}", degrees(dip.abs()))
}

/// An angle in radians, east positive: `3° E`, `12.5° W`.
pub(super) fn east_west(angle: f64) -> String {
    let words = degrees(angle.abs());
    match words.as_str() {
        "0°" => words,
        _ if angle < 0.0 => format!("{words} W"),
        _ => format!("{words} E"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_written_as_on_paper() {
        assert_eq!(
            [plain(15.0), plain(22.54), plain(-0.01)],
            ["15", "22.5", "0"]
        );
        let angle = |degrees: f64| degrees.to_radians();
        assert_eq!(
            [signed(angle(-2.6)), signed(angle(0.4)), signed(angle(12.0))],
            ["−3°", "0°", "+12°"]
        );
        // Half of 41° and 15°, and the same by another way round.
        let half = 15_f64.to_radians() + 41_f64.to_radians() / 2.0;
        let other = angle(35.5) - 2.0 * f64::EPSILON;
        for half in [half, other] {
            assert_eq!(
                [size(half), size(-half), signed(half)],
                ["36°", "36°", "+36°"]
            );
        }
        assert_eq!(
            [east_west(angle(-3.0)), east_west(angle(0.01))],
            ["3° W", "0°"]
        );
        assert_eq!(
            (heading(7), dip(angle(-40.0))),
            ("007°".to_owned(), "40° up".to_owned())
        );
    }
}
