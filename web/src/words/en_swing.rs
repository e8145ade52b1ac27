//! English, for the swing of the page of numbers.

use super::en_figures::{degrees, east_west, signed};
use super::numbers::SwingWords;
use compass::deviation::Coefficients;
use lessons::sheet::{Column, Table};

/// The banks, from the left.
const BANKS: [&str; 5] = ["30° left", "15° left", "level", "15° right", "30° right"];

pub(super) const SWING: SwingWords = SwingWords {
    form: "The aircraft",
    results: "The swing",
    title: "Swing the compass",
    about: "An invented aircraft, its iron hidden or set by you. Turn it on the ramp, take the deviation out with two adjusters, then swing it for its card.",
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
        let whose = seed.map_or_else(|| "with iron set by hand".to_owned(), |it| it.to_string());
        format!("Invented aircraft {whose}, radios and lights {electric}. {place}.")
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
    examples: "Worked examples",
    example: [
        [
            "A magnet ahead",
            "The swing finds B and C. Magnets take magnets away: after the adjustment nothing is left, level or in a turn.",
        ],
        [
            "A frame of soft iron",
            "The swing finds D, and no adjuster takes it away: it is on the card.",
        ],
        [
            "Iron below the card",
            "The swing finds nothing. Put a wing down, and it is there: look at the bank, below.",
        ],
    ],
    hard_iron: "Hard iron",
    hard_iron_note: "The aircraft’s own field: P forward, Q right, R down.",
    soft_iron: "Soft iron",
    soft_iron_note: "Poisson’s a to k, row by row: what is added forward, right and down for each unit of field forward, right, down.",
    heeling: "In the bank: heeling error",
    heeling_note: "What the iron that is left adds to the error of a card square to the apparent vertical; the error of the turn itself is put aside. In a turn near east or west little of the field lies in the card’s plane, and a little iron turns it far; below a quarter of what steers it level no figure is given (–).",
    in_bank,
    heeling_told: |found| {
        let most = |bank: usize| {
            let all = found.iter().map(|row| row[bank].abs());
            degrees(all.fold(0.0, f64::max).to_degrees())
        };
        format!(
            "Greatest deviation on the four headings: {} level, {} banked 30° left, {} banked 30° right.",
            most(2),
            most(0),
            most(4)
        )
    },
    banks: BANKS,
    east: "deviation east",
    west: "deviation west",
    fly_it: "Fly it",
    fly_note: "Opens the flight at this place with this iron, the adjusters where they stand. Bank, and compare.",
    not_flown: "The flight could not be opened: connect, and try again.",
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

fn in_bank(found: &[[f64; 5]; 4]) -> Table {
    let figures = BANKS.map(|bank| Column::figures(bank, 1.0));
    let rows = (SWING.cardinals.iter().zip(found)).map(|(name, row)| {
        let figures = row.map(|it| match it.is_finite() {
            true => east_west(it.to_degrees()),
            false => "–".to_owned(),
        });
        [(*name).to_owned()].into_iter().chain(figures).collect()
    });
    Table {
        columns: [Column::words("heading", 1.0)]
            .into_iter()
            .chain(figures)
            .collect(),
        rows: rows.collect(),
        ..Table::default()
    }
}
