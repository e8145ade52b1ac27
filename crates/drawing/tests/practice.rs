//! Pictures of how practice goes: snapshots, and that no figure breaks them.
#![cfg(not(target_family = "wasm"))]

use drawing::bars::{Bar, bars};
use drawing::forgetting_curve::{self, ForgettingView, forgetting_curve};
use drawing::shape::Shape;
use drawing::skill_rose::{SkillRoseView, Words, skill_rose};
use drawing::svg::Picture;
use drawing::theme::Theme;
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
        let all = values.map(|value| Bar { name: "name", value, figure: "7" });
        for shapes in [
            skill_rose(&view, size),
            forgetting_curve(&curve, size),
            bars(&all, size),
        ] {
            let written = svg(size, &shapes);
            prop_assert!(shapes.is_empty() || !written.contains("NaN") && !written.contains("inf"));
        }
    }
}
