//! What the pictures promise, read off their shapes.

use compass::frame::{Rotation, Vector};
use compass::heading::{CompassHeading, MagneticHeading};
use compass::maths;
use drawing::card_face::{CardFaceView, Words, card_face, describe, level};
use drawing::figures::Side;
use drawing::layout::{Layout, VISIBLE};
use drawing::rose::{self, RoseView, rose};
use drawing::shape::{Anchor, Paint, Shape, Text, Tone};
use drawing::svg::Picture;
use drawing::theme::{Role, Theme};
use glam::DQuat;
use kurbo::{Affine, BezPath, PathEl, Point, Rect, Shape as _, Size, Vec2};
use proptest::prelude::*;

const STAGE: Size = Size::new(1200.0, 520.0);
/// Positions are sums of a few products near a thousand: rounding stays far below this.
const CLOSE: f64 = 1e-9;

fn view(heading: f64, reading: f64) -> CardFaceView<'static> {
    let reading = CompassHeading::from_degrees(reading);
    CardFaceView {
        attitude: level(reading),
        heading: MagneticHeading::from_degrees(heading),
        reading,
        apparent_vertical: Vector::z_axis(),
        at_stop: false,
        show_reference: true,
        show_compass: true,
        words: Words::default(),
    }
}

/// Every shape within groups too, groups themselves left out.
fn flatten(shapes: &[Shape]) -> Vec<&Shape> {
    let mut all = Vec::new();
    for shape in shapes {
        match shape {
            Shape::Group(group) => {
                assert_eq!(
                    group.transform,
                    Affine::IDENTITY,
                    "positions are read as they are"
                );
                all.extend(flatten(&group.shapes));
            }
            other => all.push(other),
        }
    }
    all
}

fn texts(shapes: &[Shape], role: Role) -> Vec<&Text> {
    flatten(shapes)
        .into_iter()
        .filter_map(|shape| match shape {
            Shape::Text(text) if text.tone.role == role => Some(text),
            _ => None,
        })
        .collect()
}

/// How far right of the lubber line a numeral of a role stands, if it is there.
fn offset_of(shapes: &[Shape], role: Role, numeral: &str) -> Option<f64> {
    texts(shapes, role)
        .into_iter()
        .find(|text| text.content == numeral)
        .map(|text| {
            assert_eq!(text.anchor, Anchor::Middle);
            text.place.translation().x - STAGE.width / 2.0
        })
}

fn drum(shapes: &[Shape], numeral: &str) -> Option<f64> {
    offset_of(shapes, Role::CardInk, numeral)
}

fn ruler(shapes: &[Shape], numeral: &str) -> Option<f64> {
    offset_of(shapes, Role::Heading, numeral)
}

/// The solid marks of the compass: the diamond or the arrowhead.
fn compass_mark(shapes: &[Shape]) -> Rect {
    let solid = Paint::Flat(Role::Compass.solid());
    let marks: Vec<Rect> = flatten(shapes)
        .into_iter()
        .filter_map(|shape| match shape {
            Shape::Fill { path, paint } if *paint == solid => Some(path.bounding_box()),
            _ => None,
        })
        .collect();
    let [mark] = marks[..] else {
        panic!("one mark, not {marks:?}");
    };
    mark
}

fn radius() -> f64 {
    Layout::for_size(STAGE).map_or(f64::NAN, |layout| layout.radius)
}

#[test]
fn on_north_33_stands_to_the_right_and_3_to_the_left() {
    let shapes = card_face(&view(0.0, 0.0), STAGE);
    assert!(drum(&shapes, "N").is_some_and(|x| x.abs() < CLOSE));
    let half = radius() / 2.0;
    assert!(drum(&shapes, "33").is_some_and(|x| (x - half).abs() < CLOSE));
    assert!(drum(&shapes, "3").is_some_and(|x| (x + half).abs() < CLOSE));
    assert_eq!(drum(&shapes, "S"), None, "the far side is not seen");
}

#[test]
fn a_right_turn_brings_3_under_the_line() {
    let at = |reading| drum(&card_face(&view(reading, reading), STAGE), "3");
    let places: Vec<f64> = [0.0, 10.0, 20.0, 30.0].into_iter().filter_map(at).collect();
    assert_eq!(places.len(), 4);
    assert!(places.is_sorted(), "it moves to the right: {places:?}");
    assert!(places[3].abs() < CLOSE);
}

#[test]
fn each_numeral_stands_over_its_own_when_the_card_is_right() {
    for heading in (0..360).step_by(7) {
        let heading = f64::from(heading);
        let shapes = card_face(&view(heading, heading), STAGE);
        let on_ruler = texts(&shapes, Role::Heading);
        assert!(on_ruler.len() >= 3, "{heading}");
        for text in on_ruler {
            let (drum, ruler) = (drum(&shapes, &text.content), ruler(&shapes, &text.content));
            let both = drum.zip(ruler);
            assert!(
                both.is_some_and(|(drum, ruler)| (drum - ruler).abs() < CLOSE),
                "{} at {heading}: {both:?}",
                text.content
            );
        }
    }
}

#[test]
fn numerals_slide_and_the_bar_reaches_to_where_the_headings_numeral_stands() {
    let cases = [
        ("N", 0.0, -23.0),
        ("3", 30.0, 40.0),
        ("E", 90.0, -5.0),
        ("21", 210.0, 55.0),
    ];
    for (own, heading, error) in cases {
        let shapes = card_face(&view(heading, heading + error), STAGE);
        let expected = radius() * maths::sin(f64::to_radians(error));
        let mark = compass_mark(&shapes).center().x - STAGE.width / 2.0;
        assert!((mark - expected).abs() < CLOSE, "{mark} for {expected}");
        let numeral = drum(&shapes, own);
        assert!(
            numeral.is_some_and(|x| (x - expected).abs() < CLOSE),
            "{own}: {numeral:?} for {expected}"
        );
        assert!(ruler(&shapes, own).is_some_and(|x| x.abs() < CLOSE));
    }
}

#[test]
fn past_the_window_the_bar_ends_in_an_arrowhead_at_its_edge() {
    let edge = STAGE.width / 2.0 + radius() * maths::sin(VISIBLE);
    for error in [70.0, 120.0, 179.0] {
        let right = compass_mark(&card_face(&view(10.0, 10.0 + error), STAGE));
        assert!((right.x1 - edge).abs() < CLOSE, "{error}");
        let left = compass_mark(&card_face(&view(10.0, 10.0 - error), STAGE));
        assert!((left.x0 - (STAGE.width - edge)).abs() < CLOSE, "{error}");
    }
}

#[test]
fn the_cards_right_side_sinks_and_its_near_side_sinks_as_it_tilts() {
    let level_y = |text: &Text| text.place.translation().y;
    let numeral = |bank: f64, pitch: f64, numeral: &str| {
        let tilted = CardFaceView {
            attitude: Rotation::from_quaternion(
                Rotation::from_attitude(0.0, pitch, bank).quaternion,
            ),
            ..view(0.0, 0.0)
        };
        let shapes = card_face(&tilted, STAGE);
        let found = texts(&shapes, Role::CardInk)
            .into_iter()
            .find(|text| text.content == numeral)
            .map(level_y);
        found.unwrap_or(f64::NAN)
    };
    assert!(numeral(0.05, 0.0, "33") > numeral(0.0, 0.0, "33") + 5.0);
    assert!(numeral(0.05, 0.0, "3") < numeral(0.0, 0.0, "3") - 5.0);
    // Nose up, the card's far side rises and the near side, which is seen, sinks.
    assert!(numeral(0.0, 0.05, "N") > numeral(0.0, 0.0, "N") + 5.0);
}

#[test]
fn what_is_hidden_gives_nothing_away() {
    let roles = |view: &CardFaceView| {
        let shapes = card_face(view, STAGE);
        flatten(&shapes)
            .into_iter()
            .flat_map(tones)
            .map(|tone| tone.role)
            .collect::<Vec<_>>()
    };
    let both = view(7.0, 344.0);
    let no_compass = CardFaceView {
        show_compass: false,
        ..both
    };
    let no_reference = CardFaceView {
        show_reference: false,
        ..both
    };
    assert!(roles(&both).contains(&Role::Compass) && roles(&both).contains(&Role::Heading));
    assert!(!roles(&no_compass).contains(&Role::Compass));
    assert!(!roles(&no_compass).contains(&Role::CardInk));
    assert!(roles(&no_compass).contains(&Role::Heading));
    assert!(!roles(&no_reference).contains(&Role::Heading));
    assert!(!roles(&no_reference).contains(&Role::Compass));
    assert!(roles(&no_reference).contains(&Role::CardInk));

    assert_eq!(describe(&no_compass).reading, None);
    assert_eq!(describe(&no_compass).tilt, None);
    assert_eq!(describe(&no_reference).heading, None);
    assert_eq!(describe(&no_reference).difference, None);
    let figures = describe(&both);
    assert_eq!(figures.difference, Some(-23));
    assert_eq!(figures.side, Some(Side::Left));
    assert_eq!(figures.tilt, Some(0));
}

#[test]
fn error_words_stand_outside_the_bar_or_on_it_where_there_is_no_room() {
    let words_at = |size: Size, error: f64| {
        let view = CardFaceView {
            words: Words {
                error: Some("leads 40°"),
                ..Words::default()
            },
            ..view(190.0, 190.0 + error)
        };
        let shapes = card_face(&view, size);
        let text = texts(&shapes, Role::Ink)[0].clone();
        (text.place.translation().x - size.width / 2.0, text.anchor)
    };
    let (x, anchor) = words_at(STAGE, 40.0);
    assert!(x > radius() * maths::sin(f64::to_radians(40.0)) && anchor == Anchor::Start);
    let (x, anchor) = words_at(STAGE, -40.0);
    assert!(x < -radius() * maths::sin(f64::to_radians(40.0)) && anchor == Anchor::End);
    let (x, anchor) = words_at(Size::new(370.0, 240.0), 40.0);
    assert!(x > 0.0 && x < 185.0 && anchor == Anchor::Middle);
}

#[test]
fn the_rose_points_where_it_says() {
    let size = Size::new(400.0, 300.0);
    let middle = Point::new(200.0, 150.0);
    let view = RoseView {
        heading: MagneticHeading::from_degrees(90.0),
        reading: CompassHeading::from_degrees(180.0),
        show_heading: true,
        show_compass: true,
    };
    let shapes = rose(&view, size);
    let mark = compass_mark(&shapes).center();
    assert!(
        (mark.x - middle.x).abs() < CLOSE && mark.y > middle.y + 50.0,
        "{mark}"
    );
    let east = flatten(&shapes).into_iter().any(|shape| match shape {
        Shape::Stroke { path, pen } if pen.tone.role == Role::Heading => {
            let tip = path.bounding_box();
            tip.x1 > middle.x + 80.0 && tip.y0 > middle.y - 20.0 && tip.y1 < middle.y + 20.0
        }
        _ => false,
    });
    assert!(east, "the heading points east");
    assert_eq!(rose::describe(&view).difference, Some(90));
}

/// Union of the boxes of all that is filled with a role in full.
fn extent(shapes: &[Shape], role: Role) -> Option<Rect> {
    flatten(shapes)
        .into_iter()
        .filter_map(|shape| match shape {
            Shape::Fill { path, paint } if *paint == Paint::Flat(role.solid()) => {
                Some(path.bounding_box())
            }
            _ => None,
        })
        .reduce(|a, b| a.union(b))
}

fn tones(shape: &Shape) -> Vec<Tone> {
    match shape {
        Shape::Fill {
            paint: Paint::Flat(tone),
            ..
        } => vec![*tone],
        Shape::Fill {
            paint: Paint::Linear { stops, .. },
            ..
        } => stops.iter().map(|stop| stop.tone).collect(),
        Shape::Stroke { pen, .. } => vec![pen.tone],
        Shape::Text(text) => vec![text.tone],
        Shape::Group(_) => Vec::new(),
    }
}

fn points(path: &BezPath) -> Vec<Point> {
    path.iter()
        .flat_map(|element| match element {
            PathEl::MoveTo(p) | PathEl::LineTo(p) => vec![p],
            PathEl::QuadTo(a, p) => vec![a, p],
            PathEl::CurveTo(a, b, p) => vec![a, b, p],
            PathEl::ClosePath => Vec::new(),
        })
        .collect()
}

/// Every number of a shape is one that SVG and a canvas take.
fn sound(shape: &Shape) -> bool {
    let tones_sound = tones(shape)
        .iter()
        .all(|tone| (0.0..=1.0).contains(&tone.alpha));
    let finite = |path: &BezPath| points(path).iter().all(|p| p.is_finite());
    tones_sound
        && match shape {
            Shape::Fill { path, paint } => {
                finite(path)
                    && match paint {
                        Paint::Flat(_) => true,
                        Paint::Linear { from, to, stops } => {
                            from.is_finite()
                                && to.is_finite()
                                && stops.is_sorted_by(|a, b| a.offset <= b.offset)
                        }
                    }
            }
            Shape::Stroke { path, pen } => {
                finite(path)
                    && pen.width.is_finite()
                    && pen.width >= 0.0
                    && pen.dash.is_none_or(|dash| dash.iter().all(|d| *d > 0.0))
            }
            Shape::Text(text) => text.place.is_finite() && text.size.is_finite() && text.size > 0.0,
            Shape::Group(_) => true,
        }
}

fn any_finite() -> impl Strategy<Value = f64> {
    prop_oneof![
        proptest::num::f64::NORMAL | proptest::num::f64::SUBNORMAL | proptest::num::f64::ZERO,
        -1.0..1.0,
    ]
}

fn length() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => 0.0..3000.0,
        1 => 0.0..20.0,
        1 => proptest::num::f64::ANY,
    ]
}

prop_compose! {
    fn any_view()(
        q in [any_finite(), any_finite(), any_finite(), any_finite()],
        down in [any_finite(), any_finite(), any_finite()],
        heading in any_finite(),
        reading in any_finite(),
        flags in [any::<bool>(), any::<bool>(), any::<bool>()],
    ) -> CardFaceView<'static> {
        CardFaceView {
            attitude: Rotation::from_quaternion(DQuat::from_xyzw(q[0], q[1], q[2], q[3])),
            heading: MagneticHeading::from_radians(heading),
            reading: CompassHeading::from_radians(reading),
            apparent_vertical: Vector::new(down[0], down[1], down[2]),
            at_stop: flags[0],
            show_reference: flags[1],
            show_compass: flags[2],
            words: Words { error: Some("lags"), stop: Some("stop"), cover: Some("?") },
        }
    }
}

#[test]
fn the_words_of_an_error_never_hide_its_mark() {
    for size in [STAGE, Size::new(560.0, 460.0), Size::new(340.0, 260.0)] {
        for error in (-60..=60_i32).filter(|it| it.abs() > 2) {
            let words = format!("leads {}°", error.abs());
            let view = CardFaceView {
                words: Words {
                    error: Some(&words),
                    ..Words::default()
                },
                ..view(30.0, f64::from(30 + error))
            };
            let shapes = card_face(&view, size);
            let layout = Layout::for_size(size).unwrap();
            let mark = layout.middle + layout.offset(f64::from(error).to_radians());
            let placed = flatten(&shapes).into_iter().find_map(|shape| match shape {
                Shape::Text(text) if text.content == words => Some(text),
                _ => None,
            });
            let text = placed.unwrap_or_else(|| panic!("{words} in {size}"));
            // The width is the drawing's own estimate.
            let width = 0.55 * text.size * words.chars().count() as f64;
            let x = text.place.translation().x;
            let from = match text.anchor {
                Anchor::Start => x,
                Anchor::Middle => x - width / 2.0,
                Anchor::End => x - width,
            };
            let covered = from..from + width;
            assert!(!covered.contains(&mark), "{words} in {size}");
            assert!(!covered.contains(&layout.middle), "{words} in {size}");
            assert!(
                from >= 0.0 && from + width <= size.width,
                "{words} in {size}"
            );
        }
    }
}

proptest! {
    #[test]
    fn any_finite_view_of_any_size_gives_sound_shapes(
        view in any_view(),
        width in length(),
        height in length(),
    ) {
        let size = Size::new(width, height);
        let shapes = card_face(&view, size);
        let plan = rose(
            &RoseView {
                heading: view.heading,
                reading: view.reading,
                show_heading: view.show_reference,
                show_compass: view.show_compass,
            },
            size,
        );
        for shape in flatten(&shapes).into_iter().chain(flatten(&plan)) {
            prop_assert!(sound(shape), "{shape:?}");
        }
        let _ = describe(&view);
    }

    #[test]
    fn a_mirrored_situation_mirrors_the_picture(
        heading in 0.0..360.0_f64,
        error in -60.0..60.0_f64,
        bank in -0.3..0.3_f64,
        pitch in -0.3..0.3_f64,
        slip in -0.2..0.2_f64,
    ) {
        let reading = CompassHeading::from_degrees(heading + error);
        let tilt = Rotation::from_attitude(0.0, pitch, bank);
        let attitude = tilt.quaternion.mul_quat(level(reading).quaternion);
        let here = CardFaceView {
            attitude: Rotation::from_quaternion(attitude),
            apparent_vertical: Vector::new(0.1, slip, 1.0),
            ..view(heading, heading + error)
        };
        let there = CardFaceView {
            // Seen in a mirror that swaps left and right, turns about y keep their sense.
            attitude: Rotation::from_quaternion(DQuat::from_xyzw(
                -attitude.x, attitude.y, -attitude.z, attitude.w,
            )),
            apparent_vertical: Vector::new(0.1, -slip, 1.0),
            ..view(-heading, -heading - error)
        };
        let (here, there) = (card_face(&here, STAGE), card_face(&there, STAGE));
        // Angles are folded and rotations composed on the way: a few more roundings.
        let close = 1e-6;
        for role in [Role::CardInk, Role::Heading, Role::Compass, Role::Card, Role::CardTop] {
            let (a, b) = (extent(&here, role), extent(&there, role));
            prop_assert_eq!(a.is_some(), b.is_some());
            if let Some((a, b)) = a.zip(b) {
                let b = Rect::new(STAGE.width - b.x1, b.y0, STAGE.width - b.x0, b.y1);
                let apart = [a.x0 - b.x0, a.y0 - b.y0, a.x1 - b.x1, a.y1 - b.y1];
                prop_assert!(apart.iter().all(|d| d.abs() < close), "{role:?}: {a} {b}");
            }
        }
        let numerals = ["N", "3", "6", "E", "12", "15", "S", "21", "24", "W", "30", "33"];
        for role in [Role::CardInk, Role::Heading] {
            for (step, numeral) in numerals.into_iter().enumerate() {
                let mirrored = numerals[(12 - step) % 12];
                let (a, b) = (offset_of(&here, role, numeral), offset_of(&there, role, mirrored));
                prop_assert!(
                    match (a, b) {
                        (Some(a), Some(b)) => (a + b).abs() < close,
                        (None, None) => true,
                        _ => false,
                    },
                    "{numeral} at {a:?}, {mirrored} at {b:?}"
                );
            }
        }
    }
}

#[test]
fn sizes_with_no_room_draw_nothing_and_still_make_a_document() {
    for (width, height) in [
        (0.0, 0.0),
        (-5.0, 100.0),
        (f64::NAN, 50.0),
        (100.0, f64::INFINITY),
    ] {
        let size = Size::new(width, height);
        assert_eq!(card_face(&view(0.0, 0.0), size), []);
        assert_eq!(Layout::for_size(size), None);
    }
    let tiny = Size::new(8.0, 8.0);
    assert!(!card_face(&view(0.0, 0.0), tiny).is_empty());
    let svg = Picture {
        size: Size::ZERO,
        shapes: &[],
        theme: &Theme::day(),
        id: "none",
        title: "",
        description: "",
        ground: false,
    }
    .to_svg();
    assert!(svg.contains("viewBox=\"0 0 0 0\""));
}

#[test]
fn the_parts_lie_within_the_picture_one_below_the_other() {
    for (width, height) in [
        (1200.0, 520.0),
        (800.0, 360.0),
        (370.0, 240.0),
        (390.0, 700.0),
    ] {
        let size = Size::new(width, height);
        let layout = Layout::for_size(size);
        assert!(
            layout.is_some_and(|l| {
                let whole = l.window.union(l.gap).union(l.ruler);
                size.to_rect().union(whole) == size.to_rect()
                    && l.window.y1 <= l.gap.y0
                    && l.gap.y1 <= l.ruler.y0
                    && (l.window.center() - Point::new(l.middle, l.window.center().y)).hypot2()
                        < CLOSE
                    && l.window.contains(l.pivot + Vec2::new(0.0, l.drum / 2.0))
            }),
            "{layout:?}"
        );
    }
}
