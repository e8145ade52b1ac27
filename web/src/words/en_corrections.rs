//! English, for the corrections of the page of numbers.

use super::en_figures::{degrees, east_west, full};
use super::numbers::CorrectionWords;
use compass::unit::KNOT;
use lessons::corrections::Working;
use lessons::sheet::{Column, Table};

pub(super) const CORRECTIONS: CorrectionWords = CorrectionWords {
    form: "What is given",
    results: "The working",
    title: "True, magnetic, compass",
    under: "Headings, not tracks: wind is left out.",
    under_wind: "Track is the way over ground, heading where the nose points. Wind from true north; the triangle is common practice.",
    working: |it, wind, from| {
        let heading =
            |name: &str, degrees: f64| vec![name.to_owned(), format!("{:05.1}°", full(degrees))];
        let angle = |name: &str, angle: f64| vec![name.to_owned(), east_west(angle.to_degrees())];
        let mut rows = Vec::new();
        if let Some(wind) = wind {
            rows.push(heading("True track", wind.track.degrees()));
            let correction = left_right(wind.correction.to_degrees());
            rows.push(vec!["Wind correction".to_owned(), correction]);
        }
        rows.extend([
            heading("True heading", it.true_heading.degrees()),
            angle("Variation", it.variation),
            heading("Magnetic heading", it.magnetic.degrees()),
            angle("Deviation on this heading", it.deviation),
            heading("Compass heading", it.compass.degrees()),
        ]);
        if from == "compass" {
            rows.reverse();
        }
        if let Some(wind) = wind {
            let knots = (wind.ground_speed / KNOT).round();
            rows.push(vec!["Ground speed".to_owned(), format!("{knots} kt")]);
        }
        Table {
            columns: vec![Column::words("Line", 2.0), Column::figures("Figure", 1.0)],
            rows,
            ..Table::default()
        }
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
