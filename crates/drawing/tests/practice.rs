//! Pictures of how practice goes: snapshots, and that no figure breaks them.
#![cfg(not(target_family = "wasm"))]

use drawing::bars::{Bar, bars};
use drawing::forgetting_curve::{self, ForgettingView, forgetting_curve};
use drawing::shape::Shape;
use drawing::skill_rose::{SkillRoseView, Words, skill_rose};
use drawing::svg::Picture;
use drawing::theme::Theme;
use drawing::turn_chart::{self, CameOut, TurnChartView, TurnLine, TurnPoint, turn_chart};
use kurbo::Size;
use proptest::num::f64::ANY;
use proptest::prelude::*;

const ROSE: Size = Size::new(360.0, 384.0);
const CURVE: Size = Size::new(420.0, 260.0);

fn svg(size: Size, shapes: &[Shape]) -> String {
    Picture {
        size,
        shapes,
        theme: &Theme::day(),
        id: "practice",
        title: "A title",
        description: "A sentence.",
        ground: true,
    }
    .to_svg()
}

fn snapshot(name: &str, size: Size, shapes: &[Shape]) {
    insta::with_settings!({ omit_expression => true }, {
        insta::assert_snapshot!(name, svg(size, shapes));
    });
}

const WORDS: Words = Words {
    left: "left turns",
    right: "right turns",
};

const CURVE_WORDS: forgetting_curve::Words = forgetting_curve::Words {
    today: "today",
    days: "days from now",
    refresh: "refresh below this",
};

#[test]
fn the_rose_of_some_practice() {
    let mut view = SkillRoseView {
        words: WORDS,
        ..SkillRoseView::default()
    };
    view.octants[0] = [Some(0.95), Some(0.88)];
    view.octants[1] = [Some(0.5), None];
    view.octants[4] = [Some(0.72), Some(1.0)];
    view.octants[6] = [Some(0.0), Some(0.3)];
    snapshot("skill-rose", ROSE, &skill_rose(&view, ROSE));
}

#[test]
fn a_curve_of_a_month_and_one_of_nothing() {
    let recall: Vec<f64> = (0..=30)
        .map(|day| 1.0 / (1.0 + 0.03 * f64::from(day)))
        .collect();
    let view = ForgettingView {
        recall: &recall,
        words: CURVE_WORDS,
    };
    snapshot("forgetting-curve", CURVE, &forgetting_curve(&view, CURVE));
    let none = ForgettingView {
        words: CURVE_WORDS,
        ..ForgettingView::default()
    };
    assert!(!forgetting_curve(&none, CURVE).is_empty());
}

#[test]
fn the_longest_bar_fills_the_room_and_an_empty_day_keeps_its_row() {
    let all = [
        ("Mon", 6.0, "6 min"),
        ("Tue", 0.0, "–"),
        ("Wed", 12.5, "13 min"),
    ];
    let all = all.map(|(name, value, figure)| Bar {
        name,
        value,
        figure,
    });
    let size = Size::new(360.0, 72.0);
    snapshot("bars", size, &bars(&all, size));
}

/// A turn at 3° a second to a side for so long, by formula, the card behind it until level.
fn turn(side: f64, seconds: u32) -> Vec<TurnPoint> {
    (0..10 * (seconds + 20))
        .map(|tenth| {
            let time_s = f64::from(tenth) / 10.0 - 5.0;
            let rolled = time_s - f64::from(seconds);
            TurnPoint {
                time_s,
                turned_deg: side * 3.0 * time_s.clamp(0.0, f64::from(seconds)),
                error_deg: -side * 20.0 * (time_s / 5.0).clamp(0.0, 1.0) / rolled.max(1.0),
            }
        })
        .collect()
}

const TURN_WORDS: turn_chart::Words = turn_chart::Words {
    heading: "heading",
    compass: "compass",
    target: "target ±10°",
    seconds: "seconds from the roll-in",
};

const CHART: Size = Size::new(560.0, 340.0);

#[test]
fn a_turn_by_the_clock_and_by_the_compass_right_and_left() {
    for (name, side) in [("turn-chart-right", 1.0), ("turn-chart-left", -1.0)] {
        let flown = [turn(side, 30), turn(side, 37), turn(side, 31)];
        let line = |number: u8, seconds: f64| TurnLine {
            number,
            points: &flown[usize::from(number) - 1],
            roll_out_s: Some(seconds),
            is_strong: number == 2,
            has_reading: number == 2,
        };
        let lines = [line(1, 30.0), line(3, 31.0), line(2, 37.0)];
        let view = TurnChartView {
            from_deg: 300.0,
            turned_to_deg: 90.0 * side,
            tolerance_deg: 10.0,
            lines: &lines,
            words: TURN_WORDS,
        };
        snapshot(name, CHART, &turn_chart(&view, CHART));
        let came_out = |number, turned: f64, off: f64| CameOut {
            number,
            heading: (300.0 + side * turned).rem_euclid(360.0) as u16,
            off: (side * off) as i16,
        };
        let told = [(1, 90.0, 0.0), (3, 93.0, 3.0), (2, 111.0, 21.0)];
        let told = told.map(|(number, turned, off)| came_out(number, turned, off));
        assert_eq!(turn_chart::describe(&view), told);
    }
}

#[test]
fn a_turn_that_never_ends_has_a_line_and_no_number() {
    let points = turn(1.0, 60);
    let line = TurnLine {
        number: 7,
        points: &points,
        has_reading: true,
        ..TurnLine::default()
    };
    let view = TurnChartView {
        turned_to_deg: 90.0,
        tolerance_deg: 10.0,
        lines: &[line],
        ..TurnChartView::default()
    };
    assert_eq!(turn_chart::describe(&view), []);
    let shapes = turn_chart(&view, CHART);
    assert!(shapes.iter().any(|it| matches!(it, Shape::Group(_))));
    let numbered = |it: &Shape| matches!(it, Shape::Text(text) if text.content == "7");
    assert!(!shapes.iter().any(numbered));
}

proptest! {
    #[test]
    fn nothing_that_is_no_number_is_written(
        values in prop::array::uniform16(ANY),
        width in ANY,
        height in 0.0..2000.0,
    ) {
        let size = Size::new(width, height);
        let mut view = SkillRoseView { words: WORDS, ..SkillRoseView::default() };
        for (at, value) in values.into_iter().enumerate() {
            view.octants[at / 2][at % 2] = Some(value);
        }
        let curve = ForgettingView { recall: &values, words: CURVE_WORDS };
        let points: Vec<TurnPoint> = values
            .windows(3)
            .map(|of| TurnPoint { time_s: of[0], turned_deg: of[1], error_deg: of[2] })
            .collect();
        let lines = [true, false].map(|it| TurnLine {
            number: 1,
            points: &points,
            roll_out_s: Some(values[3]),
            is_strong: it,
            has_reading: it,
        });
        let turns = TurnChartView {
            from_deg: values[0],
            turned_to_deg: values[1],
            tolerance_deg: values[2],
            lines: &lines,
            words: TURN_WORDS,
        };
        let all = values.map(|value| Bar { name: "name", value, figure: "7" });
        for shapes in [
            skill_rose(&view, size),
            forgetting_curve(&curve, size),
            bars(&all, size),
            turn_chart(&turns, size),
        ] {
            let written = svg(size, &shapes);
            prop_assert!(shapes.is_empty() || !written.contains("NaN") && !written.contains("inf"));
        }
    }
}
