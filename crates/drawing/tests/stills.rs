//! Snapshots of whole frames, and what holds for any of them.

use compass::frame::Vector;
use compass::heading::{CompassHeading, MagneticHeading};
use compass::heading_indicator::GyroHeading;
use compass::reading::Torques;
use drawing::card_face::{self, CardFaceView, level};
use drawing::shape::{Group, Shape};
use drawing::still::{Beside, COMPOSED, StillView, Words, describe, still};
use drawing::strip_chart::{self, Sample, StripChartView};
use drawing::svg::Picture;
use drawing::theme::Theme;
use drawing::torque_ledger::{self, LedgerView};
use kurbo::Size;

const FIGURES: [(&str, &str); 3] = [
    ("time", "12.5 s"),
    ("bank", "15° right"),
    ("airspeed", "100 kt"),
];

fn lag() -> StillView<'static> {
    let reading = CompassHeading::from_degrees(344.0);
    StillView {
        card: CardFaceView {
            attitude: level(reading),
            heading: MagneticHeading::from_degrees(7.0),
            reading,
            apparent_vertical: Vector::z_axis(),
            at_stop: false,
            show_reference: true,
            show_compass: true,
            words: card_face::Words {
                error: Some("lags 23°"),
                stop: Some("card touches its stop"),
                cover: Some("What does the compass show?"),
            },
        },
        beside: Beside::Rose,
        ledger: None,
        strip: None,
        captioned: true,
        words: Words {
            title: "A turn through north",
            chapter: "The card falls behind",
            place: "45° N, dip 63° down",
            heading: "Magnetic heading",
            compass: "Compass",
            difference: "lags by 23°",
            figures: &FIGURES,
            caption: "The nose is past north already, and the card still says that north is to \
                      come: roll out later than it asks for.",
            caution: "For training only, never for navigation.",
        },
    }
}

fn flight() -> Vec<Sample> {
    let sample = |tenths: u32| {
        let heading = 330.0 + 0.3 * f64::from(tenths);
        Sample {
            time: f64::from(tenths) / 10.0,
            heading: MagneticHeading::from_degrees(heading),
            reading: CompassHeading::from_degrees(heading - 0.18 * f64::from(tenths)),
            rate_of_turn: 3_f64.to_radians(),
            bank: 15_f64.to_radians(),
            airspeed: 51.4,
        }
    };
    (0..=125).map(sample).collect()
}

/// The torques and the flight against time as well, by a dial.
fn full(samples: &[Sample]) -> StillView<'_> {
    StillView {
        beside: Beside::Dial(GyroHeading::from_degrees(5.0)),
        ledger: Some(LedgerView {
            torques: Torques {
                horizontal_field: -0.31,
                vertical_field: 0.62,
                iron: 0.0,
                balance_weight: 0.0,
                liquid_drag: -0.12,
                friction: 0.001,
            },
            scale: 1.0,
            words: torque_ledger::Words {
                parts: [
                    "vertical field",
                    "balance weight",
                    "iron",
                    "liquid",
                    "pivot",
                    "field",
                ],
                net: "net",
                anticlockwise: "anticlockwise",
                clockwise: "clockwise",
            },
        }),
        strip: Some(StripChartView {
            samples,
            window: [0.0, 40.0],
            words: strip_chart::Words {
                heading: "heading",
                compass: "compass",
                error: "error",
                lags: "lags",
                leads: "leads",
                bank: "bank",
                right: "right",
                left: "left",
                airspeed: "airspeed, kt",
                ..strip_chart::Words::default()
            },
            ..StripChartView::default()
        }),
        captioned: false,
        ..lag()
    }
}

fn svg(view: &StillView, theme: &Theme, size: Size) -> String {
    Picture {
        size,
        shapes: &still(view, size),
        theme,
        id: "frame",
        title: "A frame",
        description: "A sentence.",
        ground: true,
    }
    .to_svg()
}

fn check(name: &str, svg: &str) {
    insta::with_settings!({ omit_expression => true }, {
        insta::assert_snapshot!(name, svg);
    });
}

#[test]
fn a_frame_with_a_caption_and_one_with_everything() {
    check("captioned", &svg(&lag(), &Theme::day(), COMPOSED));
    let samples = flight();
    check(
        "full-night",
        &svg(&full(&samples), &Theme::night(), COMPOSED),
    );
}

#[test]
fn a_frame_is_the_same_at_any_size() {
    let shapes = |size| match still(&lag(), size).remove(0) {
        Shape::Group(Group {
            shapes, transform, ..
        }) => (shapes, transform.as_coeffs()),
        other => panic!("{other:?}"),
    };
    let (small, at) = shapes(COMPOSED);
    let (large, twice) = shapes(COMPOSED * 2.0);
    assert_eq!(small, large);
    assert_eq!((at[0], twice[0]), (1.0, 2.0));
    // In a higher picture it stands in the middle.
    let (_, high) = shapes(Size::new(1920.0, 1280.0));
    assert_eq!(high, [1.0, 0.0, 0.0, 1.0, 0.0, 100.0]);
    assert!(still(&lag(), Size::new(f64::NAN, 5.0)).is_empty());
}

#[test]
fn what_is_covered_is_not_told() {
    let mut view = lag();
    view.card.show_compass = false;
    let told = svg(&view, &Theme::day(), COMPOSED);
    assert!(!told.contains(">344<") && !told.contains("lags"));
    assert!(told.contains("007") && told.contains("What does the compass show?"));
    assert_eq!(describe(&view).difference, None);
}
