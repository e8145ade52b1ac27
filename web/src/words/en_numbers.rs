//! English, for the page of numbers and the ways from page to page.

use super::en::ENGLISH;
use super::en_numbers_fields::{choice, hint, label, refusal, slider};
use super::numbers::{
    CorrectionWords, HandOutWords, NumbersWords, PagesWords, PlannerWords, SwingWords,
};
use crate::numbers::Part;
use crate::pages::Page;
use crate::situation_form::nanotesla;
use compass::deviation::Coefficients;
use lessons::sheet::{Column, Table};

/// The ways from page to page.
pub(super) const PAGES: PagesWords = PagesWords {
    title: "Pages",
    name: |page| match page {
        Page::Fly => "Fly",
        Page::Demonstrations => "Demonstrations",
        Page::Drills => "Drills",
        Page::Sets => "Sets",
        Page::Numbers => "Numbers",
        Page::Maps => "Maps",
    },
};

/// The page of numbers.
pub(super) static NUMBERS: NumbersWords = NumbersWords {
    parts: "Parts of this page",
    part: |part| match part {
        Part::Planner => "Roll-outs",
        Part::HandOuts => "Hand-outs",
        Part::Corrections => "Corrections",
        Part::Swing => "Compass swing",
    },
    label,
    slider,
    hint,
    choice,
    refusal,
    mend: "Mend what is marked, and the figures follow.",
    field: |setting| {
        let field = setting.field();
        let variation = if setting.has_variation() {
            format!(
                "{}. ",
                (ENGLISH.variation_line)(field.variation().to_degrees())
            )
        } else {
            String::new()
        };
        format!(
            "{}. {variation}{}.",
            (ENGLISH.dip_line)(field.dip().to_degrees()),
            (ENGLISH.horizontal_line)(nanotesla(field.horizontal()))
        )
    },
    take_home: "Take this home",
    copy_text: "Copy as text",
    copy_csv: "Copy as CSV",
    copy_link: "Copy link",
    save_svg: "Save SVG",
    save_png: "Save PNG",
    copied: "Copied.",
    not_copied: "This browser did not let the page copy.",
    planner: PLANNER,
    hand_outs: HandOutWords {
        form: "What to print",
        results: "The sheet",
        title: "Hand-outs for print",
        print: "Print",
    },
    corrections: CORRECTIONS,
    swing: SWING,
};

const PLANNER: PlannerWords = PlannerWords {
    form: "Where, and how the turn is flown",
    results: "When to begin to roll out",
    title: "When to begin to roll out",
    asked: |left, target, bank| {
        let side = if left { "left" } else { "right" };
        format!(
            "Turning {side} at {} of bank onto {target:03}°, begin to roll out when the compass reads:",
            degrees(bank)
        )
    },
    rule: "Rule: latitude",
    rule_note: "in proportion",
    half_rule: "Rule: 15° + ½ latitude",
    half_rule_note: "in proportion",
    steady: "Closed form",
    steady_note: "a card at rest",
    float: "Simulated float",
    float_note: "by flying the turn",
    comes: |lead, exact, bare| {
        let bare = match bare {
            None => "The card never comes to show the bare reading.".to_owned(),
            Some(past) if past.abs() < 0.5 => {
                "Rolling out on the bare reading comes out on the target.".to_owned()
            }
            Some(past) => format!(
                "Rolling out as if the compass did not err comes out {} {} the target.",
                degrees(past.abs().round()),
                if past < 0.0 { "short of" } else { "past" }
            ),
        };
        format!(
            "All four leave {} of lead to stop the turn in. As the simulated aircraft rolls, \
             {exact:03}° is what ends on the target exactly. {bare}",
            degrees(lead)
        )
    },
    progress: "Flying the turns all round",
    cancel: "Cancel",
    resume: "Go on",
    table: "Readings at which to begin to roll out, by target",
    table_note: "Off if bare: how far short of (−) or past (+) the target the simulated aircraft comes out when it rolls out as if the compass did not err. The rules are common practice.",
    rose: "Roll-out rose: undershoot and overshoot by target",
    extremes: |place, extremes| {
        let part = |word: &str, (by, at): (i16, u16)| match by {
            0 => format!("no {word}"),
            by => format!("{word} up to {}° (onto {at:03}°)", by.abs()),
        };
        format!(
            "{place}: {}, {}.",
            part("undershoot", extremes.undershoot),
            part("overshoot", extremes.overshoot)
        )
    },
};

const CORRECTIONS: CorrectionWords = CorrectionWords {
    form: "What is given",
    results: "The working",
    title: "True, magnetic, compass",
    under: "Headings, not tracks: wind is left out.",
    working: |it, from| {
        let heading =
            |name: &str, degrees: f64| vec![name.to_owned(), format!("{:05.1}°", full(degrees))];
        let angle = |name: &str, angle: f64| vec![name.to_owned(), east_west(angle.to_degrees())];
        let mut rows = vec![
            heading("True heading", it.true_heading.degrees()),
            angle("Variation", it.variation),
            heading("Magnetic heading", it.magnetic.degrees()),
            angle("Deviation on this heading", it.deviation),
            heading("Compass heading", it.compass.degrees()),
        ];
        if from == "compass" {
            rows.reverse();
        }
        Table {
            columns: vec![Column::words("Line", 2.0), Column::figures("Figure", 1.0)],
            rows,
            ..Table::default()
        }
    },
    told: |it, from| match from {
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
    verses_note: "Common practice, no source: verses of the trade. They hold for headings; wind makes a track of a heading and is left out here.",
};

const SWING: SwingWords = SwingWords {
    form: "The aircraft",
    results: "The swing",
    title: "Swing the compass",
    about: "An invented aircraft with iron that nobody has seen. Turn it on the ramp, take the deviation out with two adjusters, then swing it for its card.",
    another: "Another aircraft",
    start_over: "Start over",
    ramp: "The aircraft on the ramp",
    deviation_name: "Deviation",
    deviation: east_west,
    rose: |heading, compass, deviation| {
        format!("From above: magnetic heading {heading}, compass {compass}, deviation {deviation}.")
    },
    cardinals: ["North", "East", "South", "West"],
    adjustment: "Adjustment",
    steps: [
        "North: take out all, by the N–S adjuster.",
        "East: take out all, by the E–W adjuster.",
        "South: take out half of what is found.",
        "West: take out half of what is found.",
    ],
    done: "Done.",
    next: |step, ready| match (step, ready) {
        (0, false) => "Next: turn the aircraft to north.",
        (1, false) => "Next: turn the aircraft to east.",
        (2, false) => "Next: turn the aircraft to south.",
        (3, false) => "Next: turn the aircraft to west.",
        (0 | 1, true) => {
            "Take it all out here: with the button, or by hand until no deviation is left."
        }
        (2 | 3, true) => "Leave half of it: with the button, or by hand.",
        _ => "Adjusted. Now swing it for the record, below.",
    },
    take_out: [
        "Take out all on north",
        "Take out all on east",
        "Take out half on south",
        "Take out half on west",
    ],
    by_hand: "Done by hand",
    half_error: "Why half: an adjuster moves opposite headings opposite ways. What is left on south after north was set right is twice what no single setting can take away, so half of it stays on each.",
    record: "Swing of record",
    swing_it: "Swing it all round",
    aircraft: |seed, place, electric| {
        let electric = if electric { "on" } else { "off" };
        format!("Invented aircraft {seed}, radios and lights {electric}. {place}.")
    },
    found: |found, left| {
        let rows = found
            .iter()
            .enumerate()
            .map(|(index, (heading, deviation))| {
                vec![
                    format!("{:03}°", heading.whole_degrees()),
                    east_west(deviation.to_degrees()),
                    left.get(index)
                        .map_or_else(|| "–".to_owned(), |(_, left)| signed(left.to_degrees())),
                ]
            });
        Table {
            rows: rows.collect(),
            columns: vec![
                Column::figures("compass", 1.0),
                Column::figures("deviation", 1.0),
                Column::figures("left over", 1.0),
            ],
            ..Table::default()
        }
    },
    coefficients_title: "Coefficients",
    coefficients,
    left_over: |most| {
        format!(
            "Means: the handbook’s, of the eight points. The swing strays from the curve of least squares by at most {most:.2}°."
        )
    },
    verdict: |most, within| {
        format!(
            "Greatest deviation {}: {} the limit of 10° on any heading in level flight (14 CFR 25.1327(b)).",
            degrees(most),
            if within { "within" } else { "beyond" }
        )
    },
    curve: "Deviation by compass heading",
    residual_curve: "What the coefficients leave over",
    residual_note: "The swing less its curve of least squares, by compass heading.",
};

fn coefficients(means: &Coefficients, least: &Coefficients) -> Table {
    let rows = [
        ("A", means.a, least.a),
        ("B", means.b, least.b),
        ("C", means.c, least.c),
        ("D", means.d, least.d),
        ("E", means.e, least.e),
    ];
    let row = |(name, mean, least): (&str, f64, f64)| {
        let figures = [mean, least].map(|it| signed(it.to_degrees()));
        let [mean, least] = figures;
        vec![name.to_owned(), mean, least]
    };
    Table {
        columns: vec![
            Column::words("coefficient", 1.0),
            Column::figures("means", 1.0),
            Column::figures("least squares", 1.0),
        ],
        rows: rows.map(row).to_vec(),
        ..Table::default()
    }
}

/// A heading that is not rounded up to 360.0.
fn full(degrees: f64) -> f64 {
    let tenths = (degrees * 10.0).round() / 10.0;
    if tenths >= 360.0 { 0.0 } else { tenths }
}

/// To a tenth, without a tenth that is none.
fn tenths(value: f64) -> String {
    let rounded = (value * 10.0).round() / 10.0 + 0.0;
    rounded.to_string().replace('-', "−")
}

fn degrees(value: f64) -> String {
    format!("{}°", tenths(value))
}

fn signed(value: f64) -> String {
    let words = format!("{value:+.2}°");
    if words == "-0.00°" {
        "+0.00°".to_owned()
    } else {
        words.replace('-', "−")
    }
}

/// Degrees, east positive.
fn east_west(value: f64) -> String {
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
    fn the_answer_and_the_bare_reading_are_told() {
        let told = PLANNER.comes;
        assert!(told(7.5, 321, Some(23.4)).ends_with("comes out 23° past the target."));
        assert!(told(7.5, 321, Some(-3.0)).ends_with("comes out 3° short of the target."));
        assert!(
            told(7.5, 7, None).contains("007° is what ends on the target exactly. The card never")
        );
    }

    #[test]
    fn figures_have_their_sides() {
        assert_eq!([east_west(-2.84), east_west(0.02)], ["2.8° W", "0°"]);
        assert_eq!([signed(-1.5), signed(-0.001)], ["−1.50°", "+0.00°"]);
        assert_eq!(full(359.97), 0.0);
    }
}
