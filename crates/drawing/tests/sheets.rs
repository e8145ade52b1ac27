//! Sheets and what stands on them: snapshots, and that nothing is lost or leaves the page.
#![cfg(not(target_family = "wasm"))]

use compass::heading::{CompassHeading, MagneticHeading};
use compass::maths;
use drawing::deviation_curve::{DeviationCurveView, deviation_curve};
use drawing::heeling_chart::{HeelingChartView, heeling_chart};
use drawing::roll_out_rose::{Allowance, PlaceView, RollOutRoseView, Words, roll_out_rose};
use drawing::shape::{Anchor, Shape, Text};
use drawing::sheet::{Block, Column, Figure, Paper, SheetView, TableView, pages, width};
use drawing::svg::Picture;
use drawing::theme::{Role, Theme};
use kurbo::{Affine, Point, Rect, Size};
use proptest::num::f64::ANY;
use proptest::prelude::*;

const WORDS: Words = Words {
    left: "left turn",
    right: "right turn",
    inside: "inside: undershoot",
    on: "dots: as it reads",
    outside: "outside: overshoot",
};

/// By formula: `greatest` degrees on north, more in left turns.
fn allowances(greatest: f64) -> Vec<Allowance> {
    (0..36)
        .map(|step| {
            let target = MagneticHeading::from_degrees(10.0 * f64::from(step));
            let allowance = (greatest * maths::cos(target.radians())).to_radians();
            Allowance {
                target,
                left: 1.2 * allowance,
                right: allowance,
            }
        })
        .collect()
}

fn snapshot(name: &str, size: Size, shapes: &[Shape]) {
    let theme = Theme::day().strong();
    let svg = Picture {
        size,
        shapes,
        theme: &theme,
        id: name,
        title: "A title",
        description: "A sentence.",
        ground: true,
    }
    .to_svg();
    insta::with_settings!({ omit_expression => true }, {
        insta::assert_snapshot!(name, svg);
    });
}

#[test]
fn the_rose_of_one_place_beside_its_legend_and_of_two_above_it() {
    let [north, south] = [-23.0, 31.0].map(allowances);
    let one = RollOutRoseView {
        places: &[PlaceView {
            name: "",
            allowances: &north,
        }],
        words: WORDS,
    };
    let wide = Size::new(500.0, 300.0);
    snapshot("roll-out-rose-wide", wide, &roll_out_rose(&one, wide));
    let two = RollOutRoseView {
        places: &[
            PlaceView {
                name: "30° N",
                allowances: &north,
            },
            PlaceView {
                name: "41° S",
                allowances: &south,
            },
        ],
        words: WORDS,
    };
    let tall = Size::new(390.0, 520.0);
    snapshot("roll-out-rose-two", tall, &roll_out_rose(&two, tall));
}

#[test]
fn the_curve_of_a_swing() {
    // NGA, Handbook of Magnetic Compass Adjustment (2004), §501.
    let found = [10.5, 20.0, 11.5, -1.2, -5.5, -8.0, -12.5, -6.8];
    let found: Vec<(CompassHeading, f64)> = (0..8)
        .map(|eighth| CompassHeading::from_degrees(45.0 * f64::from(eighth)))
        .zip(found.map(f64::to_radians))
        .collect();
    let view = DeviationCurveView {
        found: &found,
        limit: 10_f64.to_radians(),
        limit_words: "limit 10°",
        east: "east",
        west: "west",
    };
    let size = Size::new(500.0, 220.0);
    snapshot("deviation-curve", size, &deviation_curve(&view, size));
}

#[test]
fn heeling_lines_are_told_apart_and_named() {
    let view = HeelingChartView {
        banks: &[-0.5, 0.0, 0.5],
        bank_words: &["left", "", "right"],
        lines: &[
            ("North", &[0.1, 0.0, -0.1]),
            ("East", &[0.02, 0.02, 0.02]),
            ("South", &[f64::NAN, 0.0, 0.1]),
            ("West", &[0.0, f64::INFINITY, f64::NAN]),
        ],
        east: "east",
        west: "west",
    };
    let size = Size::new(500.0, 220.0);
    let shapes = heeling_chart(&view, size);
    let words: Vec<String> = (shapes.iter())
        .filter_map(|shape| match shape {
            Shape::Text(Text { content, .. }) => Some(content.to_string()),
            _ => None,
        })
        .collect();
    for word in [
        "North", "East", "South", "West", "left", "right", "east", "west", "0°",
    ] {
        assert!(words.iter().any(|it| it == word), "{word}: {words:?}");
    }
    let none = HeelingChartView {
        banks: &[0.1],
        ..view
    };
    assert!(heeling_chart(&none, size).is_empty());
    assert!(heeling_chart(&view, Size::new(f64::NAN, 5.0)).is_empty());
}

#[test]
fn a_sheet_with_everything_on_it() {
    let columns = ["target", "left", "right"].map(|title| Column {
        title: title.to_owned(),
        share: 1.0,
        centred: true,
    });
    let rows = [["360°", "037°", "323°"], ["180°", "157°", "203°"]]
        .map(|row| row.map(str::to_owned).to_vec());
    let places = allowances(-23.0);
    let rose = |size: Size| {
        let place = PlaceView {
            name: "",
            allowances: &places,
        };
        roll_out_rose(
            &RollOutRoseView {
                places: &[place],
                words: WORDS,
            },
            size,
        )
    };
    let points = ["one point".to_owned(), "another, long enough that it has to be broken into a second line before it comes to its end, which it does here".to_owned()];
    let view = SheetView {
        title: "Roll-outs",
        under: "30° N",
        blocks: &[
            Block::Heading("A heading"),
            Block::Paragraph("A paragraph."),
            Block::Points(&points),
            Block::Table(TableView {
                groups: &[(String::new(), 1), ("turn".to_owned(), 2)],
                columns: &columns,
                rows: &rows,
                least_row: 0.0,
            }),
            Block::Picture(Figure {
                draw: &rose,
                least: 200.0,
                most: 300.0,
            }),
        ],
        caution: "For training, not for navigation.",
    };
    let laid = pages(&view, Paper::Letter);
    assert_eq!(laid.len(), 1);
    snapshot("sheet", Paper::Letter.size(), &laid[0]);
}

/// Every text with its place on the page, groups resolved.
fn texts(shapes: &[Shape], place: Affine, all: &mut Vec<(Affine, Text)>) {
    for shape in shapes {
        match shape {
            Shape::Text(text) => all.push((place * text.place, text.clone())),
            Shape::Group(group) => texts(&group.shapes, place * group.transform, all),
            _ => {}
        }
    }
}

fn words_of(pages: &[Vec<Shape>]) -> Vec<(Affine, Text)> {
    let mut all = Vec::new();
    for page in pages {
        texts(page, Affine::IDENTITY, &mut all);
    }
    all
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn nothing_is_lost_and_nothing_leaves_the_paper(
        paragraphs in proptest::collection::vec("([a-z]{1,12} ){1,160}", 1..14),
        rows in proptest::collection::vec(proptest::collection::vec("[a-z ]{0,60}", 3), 0..40),
        least_row in 0.0..60.0_f64,
        letter in any::<bool>(),
    ) {
        let paper = if letter { Paper::Letter } else { Paper::A4 };
        let columns: Vec<Column> = [0.2, 1.0, 0.5]
            .map(|share| Column { title: "column".to_owned(), share, centred: share < 0.9 })
            .into();
        let table = Block::Table(TableView { groups: &[], columns: &columns, rows: &rows, least_row });
        let mut blocks: Vec<Block> = paragraphs.iter().map(|words| Block::Paragraph(words)).collect();
        blocks.push(Block::Heading("heading"));
        blocks.push(table);
        let view = SheetView { title: "title", under: "under", blocks: &blocks, caution: "caution" };
        let laid = pages(&view, paper);
        let found = words_of(&laid);

        let page = Rect::from_origin_size(Point::ORIGIN, paper.size());
        let mut letters = String::new();
        for (place, text) in &found {
            let at = *place * Point::ORIGIN;
            let wide = width(&text.content, text.size, text.weight);
            let left = match text.anchor {
                Anchor::Start => at.x,
                Anchor::Middle => at.x - wide / 2.0,
                Anchor::End => at.x - wide,
            };
            let inside = page.inset(-20.0);
            prop_assert!(inside.contains(Point::new(left, at.y - text.size)), "{text:?}");
            prop_assert!(inside.contains(Point::new(left + wide, at.y)), "{text:?}");
            letters.push_str(&text.content);
        }
        let count = |words: &str| words.chars().filter(|it| it.is_ascii_lowercase()).count();
        let given: usize = paragraphs.iter().chain(rows.iter().flatten()).map(|it| count(it)).sum();
        let furniture = laid.len() * count("titleundercaution");
        prop_assert_eq!(count(&letters), given + furniture + count("headingcolumncolumncolumn"));
    }

    #[test]
    fn no_number_breaks_rose_or_curve(
        left in ANY, right in ANY, limit in ANY, width in 1.0..3000.0_f64, height in 1.0..3000.0_f64,
    ) {
        let mut odd = allowances(-30.0);
        odd[3].left = left;
        odd[7].right = right;
        let place = PlaceView { name: "odd", allowances: &odd };
        let size = Size::new(width, height);
        let rose = roll_out_rose(&RollOutRoseView { places: &[place; 3], words: WORDS }, size);
        let found = [(CompassHeading::from_degrees(10.0), left), (CompassHeading::from_degrees(200.0), right)];
        let view = DeviationCurveView { found: &found, limit, ..DeviationCurveView::default() };
        let curve = deviation_curve(&view, size);
        let svg = Picture {
            size,
            shapes: &[rose, curve].concat(),
            theme: &Theme::day(),
            id: "odd",
            title: "",
            description: "",
            ground: false,
        }
        .to_svg();
        prop_assert!(!svg.contains("NaN") && !svg.contains("inf"), "{svg}");
    }
}

#[test]
fn black_on_white_tells_all_of_the_rose() {
    fn roles(shapes: &[Shape], all: &mut Vec<Role>) {
        for shape in shapes {
            match shape {
                Shape::Stroke { pen, .. } => all.push(pen.tone.role),
                Shape::Text(text) => all.push(text.tone.role),
                Shape::Group(group) => roles(&group.shapes, all),
                Shape::Fill { .. } => {}
            }
        }
    }
    let places = allowances(-23.0);
    let place = PlaceView {
        name: "",
        allowances: &places,
    };
    let view = RollOutRoseView {
        places: &[place],
        words: WORDS,
    };
    let mut all = Vec::new();
    roles(&roll_out_rose(&view, Size::new(500.0, 300.0)), &mut all);
    assert!(
        all.iter()
            .all(|role| matches!(role, Role::Ink | Role::FaintInk | Role::Rule))
    );
}
