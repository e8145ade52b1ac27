//! English, for the corrections of the page of numbers.

use super::en_figures::{degrees, east_west, full};
use super::numbers::CorrectionWords;
use compass::unit::KNOT;
use lessons::corrections::Working;
use lessons::sheet::{Column, Table};
use lessons::wind::Triangle;

pub(super) const CORRECTIONS: CorrectionWords = CorrectionWords {
    form: "What is given",
    results: "The working",
    title: "True, magnetic, compass",
    under: "Headings, not tracks: wind is left out.",
    under_wind: "Track is the way over ground, heading where the nose points. Wind from true north; the triangle is common practice.",
    working: |it, wind, from| Table {
        columns: vec![Column::words("Line", 2.0), Column::figures("Figure", 1.0)],
        rows: lines(it, wind, from),
        ..Table::default()
    },
    told: |it, wind, from| {
        let heading = told(it, from);
        match wind {
            Some(wind) if from == "track" => format!(
                "To hold a track of {:03}° true, steer {:03}° by compass: a heading of {:03}° true.",
                wind.track.whole_degrees(),
                it.compass.whole_degrees(),
                it.true_heading.whole_degrees()
            ),
            Some(wind) => format!(
                "{heading} The wind makes of it a track of {:03}° true.",
                wind.track.whole_degrees()
            ),
            None => heading,
        }
    },
    card: "Deviation card",
    card_hint: "Deviation by compass heading, such as 2 E or 3 W. Between, in proportion.",
    curve: "The deviation card as a curve",
    curve_note: "Deviation by compass heading, with the limit of 10° either way.",
    verses_title: "As it is remembered",
    verses: &[
        "Variation east, magnetic least; variation west, magnetic best: from true to magnetic take east away and add west.",
        "Deviation east, compass least; deviation west, compass best: the same from magnetic to compass.",
        "True, variation, magnetic, deviation, compass: down the list east is taken away, up the list it is added.",
    ],
    verses_note: "Common practice, no source: verses of the trade. They hold for headings; wind makes a track of a heading.",
};

/// The lines of the working, from what is given on.
fn lines(it: &Working, wind: Option<&Triangle>, from: &str) -> Vec<Vec<String>> {
    let heading =
        |name: &str, degrees: f64| vec![name.to_owned(), format!("{:05.1}°", full(degrees))];
    let true_heading = heading("True heading", it.true_heading.degrees());
    let magnetic = heading("Magnetic heading", it.magnetic.degrees());
    let compass = heading("Compass heading", it.compass.degrees());
    // East is taken away on the way from true to compass, and added on the way back.
    let angle = |name: &str, angle: f64, up: bool| {
        let figure = east_west(angle.to_degrees());
        vec![done(name, &figure, up), figure]
    };
    let variation = |up| angle("Variation", it.variation, up);
    let deviation = |up| angle("Deviation on this heading", it.deviation, up);
    let correction = wind.map(|it| left_right(it.correction.to_degrees()));
    let corrected = |up| {
        Some(vec![
            done("Wind correction", correction.as_ref()?, up),
            correction.clone()?,
        ])
    };
    let track = wind.map(|it| heading("True track", it.track.degrees()));
    let speed = wind.map(|it| {
        let knots = (it.ground_speed / KNOT).round();
        vec!["Ground speed".to_owned(), format!("{knots} kt")]
    });
    let (given, down) = ([track.clone(), corrected(true)], [corrected(false), track]);
    let (before, chain, after) = match from {
        "compass" => (
            [None, None],
            [
                compass,
                deviation(true),
                magnetic,
                variation(true),
                true_heading,
            ],
            down,
        ),
        "magnetic" => (
            [None, None],
            [
                magnetic,
                deviation(false),
                compass,
                variation(true),
                true_heading,
            ],
            down,
        ),
        _ => (
            if from == "track" { given } else { [None, None] },
            [
                true_heading,
                variation(false),
                magnetic,
                deviation(false),
                compass,
            ],
            if from == "track" { [None, None] } else { down },
        ),
    };
    let before = before.into_iter().flatten();
    let after = after.into_iter().flatten().chain(speed);
    before.chain(chain).chain(after).collect()
}

/// What a line does with its figure, by the letter or word of its side; `up` for the way on which
/// east and right are added.
fn done(name: &str, figure: &str, up: bool) -> String {
    let (side, adds) = match figure.rsplit(' ').next() {
        Some("E") => ("east", up),
        Some("W") => ("west", !up),
        Some("right") => ("right", up),
        Some("left") => ("left", !up),
        _ => return name.to_owned(),
    };
    format!("{name}, {side}: {}", if adds { "add" } else { "take away" })
}

fn told(it: &Working, from: &str) -> String {
    match from {
        "compass" => format!(
            "Compass {:03}° is {:03}° magnetic and {:03}° true.",
            it.compass.whole_degrees(),
            it.magnetic.whole_degrees(),
            it.true_heading.whole_degrees()
        ),
        "magnetic" => format!(
            "For {:03}° magnetic steer {:03}° by compass; that is {:03}° true.",
            it.magnetic.whole_degrees(),
            it.compass.whole_degrees(),
            it.true_heading.whole_degrees()
        ),
        _ => format!(
            "For {:03}° true steer {:03}° by compass; that is {:03}° magnetic.",
            it.true_heading.whole_degrees(),
            it.compass.whole_degrees(),
            it.magnetic.whole_degrees()
        ),
    }
}

/// Degrees, right positive.
fn left_right(value: f64) -> String {
    let words = degrees(value.abs());
    match words.as_str() {
        "0°" => words,
        _ if value < 0.0 => format!("{words} left"),
        _ => format!("{words} right"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use compass::heading::{CompassHeading, TrueHeading};
    use lessons::corrections::DeviationCard;
    use lessons::wind::Wind;

    fn names(it: &Working, wind: Option<&Triangle>, from: &str) -> Vec<String> {
        let lines = lines(it, wind, from).into_iter();
        lines.map(|line| line[0].clone()).collect()
    }

    #[test]
    fn the_working_begins_at_what_is_given_and_says_what_is_done() {
        let card = DeviationCard::new(
            (0..8_u8)
                .map(|it| {
                    let heading = CompassHeading::from_degrees(45.0 * f64::from(it));
                    (heading, 2_f64.to_radians())
                })
                .collect(),
        )
        .unwrap();
        let variation = -10_f64.to_radians();
        let it = Working::from_true(TrueHeading::from_degrees(75.0), variation, &card);
        let down = [
            "True heading",
            "Variation, west: add",
            "Magnetic heading",
            "Deviation on this heading, east: take away",
            "Compass heading",
        ];
        assert_eq!(names(&it, None, "true"), down);
        assert_eq!(
            names(&it, None, "compass"),
            [
                "Compass heading",
                "Deviation on this heading, east: add",
                "Magnetic heading",
                "Variation, west: take away",
                "True heading",
            ]
        );
        assert_eq!(
            names(&it, None, "magnetic"),
            [
                "Magnetic heading",
                "Deviation on this heading, east: take away",
                "Compass heading",
                "Variation, west: take away",
                "True heading",
            ]
        );
        // A wind from the right: the nose right of the track.
        let wind = Wind::new(165_f64.to_radians(), 10.0).unwrap();
        let blown = wind.blowing(it.true_heading, 50.0).unwrap();
        let with_wind = names(&it, Some(&blown), "true");
        assert_eq!(with_wind[..5], down);
        assert_eq!(
            with_wind[5..],
            [
                "Wind correction, right: take away",
                "True track",
                "Ground speed"
            ]
        );
        assert_eq!(
            names(&it, Some(&blown), "track")[..3],
            ["True track", "Wind correction, right: add", "True heading"]
        );
    }
}
