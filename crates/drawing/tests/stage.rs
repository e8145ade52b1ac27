//! Bowl, torque ledger and plan: what they look like in flights of the simulation itself, and
//! that no input and no size breaks them.
//! What changes here was meant to change, and was looked at
//! (`cargo run -p drawing --example stage -- FOLDER`).
#![cfg(not(target_family = "wasm"))]

#[allow(dead_code, reason = "the example flies more of them")]
#[path = "../examples/stage/flights.rs"]
mod flights;

use compass::field::{MagneticField, Zone};
use compass::frame::{Rotation, Vector};
use compass::heading::{CompassHeading, MagneticHeading};
use compass::motion::{Kinematics, Motion};
use compass::reading::{Reading, Torques};
use compass::simulation::Moment;
use drawing::bowl_view::{self, BowlView, Camera, Mount, Parts, bowl_view};
use drawing::figures::Side;
use drawing::plan_view::{self, Fit, PlanView, Position, plan_view};
use drawing::shape::{Paint, Shape};
use drawing::svg::Picture;
use drawing::theme::{Role, Theme};
use drawing::torque_ledger::{self, LedgerView, torque_ledger};
use flights::{COURSES, Flown, fly};
use kurbo::{BezPath, Point, Rect, Shape as _, Size};
use proptest::num::f64::ANY;
use proptest::prelude::*;

const SQUARE: Size = Size::new(420.0, 420.0);
const SMALL: Size = Size::new(340.0, 300.0);

fn flown(name: &str) -> Flown {
    let course = COURSES.iter().find(|course| course.name == name).unwrap();
    fly(course, 8.0)
}

fn check(name: &str, theme: &Theme, size: Size, shapes: &[Shape]) {
    let svg = Picture {
        size,
        shapes,
        theme,
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

fn bowl(flown: &Flown) -> BowlView<'_> {
    BowlView {
        moment: &flown.moment,
        field: &flown.field,
        camera: Camera::default(),
        parts: Parts::ALL,
        words: bowl_view::Words {
            dip: Some("dip 65°"),
            vertical_pull: Some("Z pulls"),
            true_vertical: Some("true vertical"),
            apparent_vertical: Some("apparent vertical"),
            bank: Some("bank 18°"),
            ..bowl_view::Words::default()
        },
    }
}

const LEDGER_WORDS: torque_ledger::Words = torque_ledger::Words {
    parts: [
        "vertical",
        "weight",
        "iron",
        "drag",
        "friction",
        "horizontal",
    ],
    net: "net",
    anticlockwise: "anticlockwise",
    clockwise: "clockwise",
};

fn ledger(torques: Torques) -> LedgerView<'static> {
    LedgerView {
        torques,
        scale: 1.0,
        words: LEDGER_WORDS,
    }
}

fn plan(flown: &Flown) -> PlanView<'_> {
    PlanView {
        heading: flown.moment.motion.heading,
        reading: flown.moment.reading.compass,
        variation: flown.field.variation(),
        track: &flown.track,
        later: &[],
        fit: Fit::Whole,
        show_heading: true,
        show_compass: true,
        words: plan_view::Words {
            magnetic_north: Some("magnetic north"),
            true_north: Some("true north"),
            variation: Some("8° east"),
            heading: Some("heading"),
            compass: Some("compass"),
            error: Some("error"),
            scale: Some("500 m"),
        },
    }
}

#[test]
fn the_bowl_in_several_situations() {
    for name in [
        "level",
        "left-off-south",
        "southern-right-through-north",
        "accelerating-on-east",
        "at-the-stop",
    ] {
        let flown = flown(name);
        assert_eq!(flown.moment.reading.at_stop, name == "at-the-stop");
        let shapes = bowl_view(&bowl(&flown), SQUARE);
        check(&format!("bowl-{name}"), &Theme::day(), SQUARE, &shapes);
    }
}

#[test]
fn the_bowl_from_every_preset_and_by_night() {
    let flown = flown("right-through-north");
    let view = bowl(&flown);
    for (name, camera) in [
        ("seat", Camera::pilots_seat()),
        ("behind", Camera::behind()),
        ("side", Camera::side()),
        ("above", Camera::above()),
    ] {
        let shapes = bowl_view(&BowlView { camera, ..view }, SQUARE);
        check(&format!("bowl-{name}"), &Theme::day(), SQUARE, &shapes);
    }
    let shapes = bowl_view(&view, SMALL);
    check("bowl-small-night", &Theme::night(), SMALL, &shapes);
}

#[test]
fn the_bowl_tells_why_the_card_lags() {
    let flown = flown("right-through-north");
    let told = bowl_view::describe(&bowl(&flown));
    assert_eq!(told.bank, Some((18, Side::Right)));
    assert_eq!(told.vertical_pull, Some(Side::Right));
    assert_eq!(told.horizontal_pull, Some(Side::Left));
    assert!(told.figures.difference.unwrap() < -20);
    assert_eq!(told.field, Some((48000, 65)));
    // The pulls have the signs of the torques that the ledger shows.
    assert!(flown.moment.torques.vertical_field > 0.0);
    assert!(flown.moment.torques.horizontal_field < 0.0);
}

#[test]
fn the_ledger_and_the_plan_in_a_turn() {
    let flown = flown("right-through-north");
    let size = Size::new(640.0, 300.0);
    let shapes = torque_ledger(&ledger(flown.moment.torques), size);
    check("ledger", &Theme::day(), size, &shapes);
    check(
        "plan",
        &Theme::day(),
        SQUARE,
        &plan_view(&plan(&flown), SQUARE),
    );
    let follow = PlanView {
        fit: Fit::Follow(1500.0),
        show_compass: false,
        variation: 0.0,
        ..plan(&flown)
    };
    check(
        "plan-follow-night",
        &Theme::night(),
        SMALL,
        &plan_view(&follow, SMALL),
    );
    let half = flown.track.len() / 2;
    let back = PlanView {
        track: &flown.track[..half],
        later: &flown.track[half..],
        ..plan(&flown)
    };
    check(
        "plan-looking-back",
        &Theme::day(),
        SQUARE,
        &plan_view(&back, SQUARE),
    );
    let told = plan_view::describe(&follow);
    assert_eq!((told.variation, told.figures.reading), (None, None));
    // 12.6 s at 100 knots (51.4 m/s).
    assert!((640..656).contains(&told.flown), "{}", told.flown);
}

/// The right or left ends of the bars, from the top to the net, without the hatch.
fn bar_outlines(shapes: &[Shape]) -> Vec<Rect> {
    shapes
        .iter()
        .filter_map(|shape| match shape {
            // A bar's outline: a closed polygon of five corners.
            Shape::Stroke { path, pen } if pen.dash.is_none() && path.elements().len() == 6 => {
                Some(path.bounding_box())
            }
            _ => None,
        })
        .collect()
}

#[test]
fn each_bar_begins_where_the_last_one_ended_and_the_net_ends_with_them() {
    let torques = Torques {
        horizontal_field: -0.31,
        vertical_field: 0.62,
        iron: 0.1,
        balance_weight: -0.05,
        liquid_drag: -0.22,
        friction: 0.03,
    };
    let bars = bar_outlines(&torque_ledger(&ledger(torques), Size::new(640.0, 300.0)));
    assert_eq!(bars.len(), torque_ledger::PARTS + 1);
    let centre = bars[0].x0;
    let unit = bars[0].width() / torques.vertical_field;
    let parts = torque_ledger::parts(&torques);
    let mut sum = centre;
    for (bar, part) in bars.iter().zip(parts) {
        let to = sum + part * unit;
        assert!((bar.x0 - sum.min(to)).abs() < 1e-6 && (bar.x1 - sum.max(to)).abs() < 1e-6);
        sum = to;
    }
    let net = bars[torque_ledger::PARTS];
    assert!((net.x0 - centre).abs() < 1e-6 && (net.x1 - sum).abs() < 1e-6);
    assert!((sum - centre - torques.net() * unit).abs() < 1e-6);
}

#[test]
fn a_bar_beyond_the_scale_ends_with_it_and_is_told() {
    let view = LedgerView {
        scale: 0.1,
        ..ledger(Torques {
            horizontal_field: -0.31,
            vertical_field: 0.62,
            iron: 0.0,
            balance_weight: 0.0,
            liquid_drag: 0.0,
            friction: 0.0,
        })
    };
    assert!(!torque_ledger::describe(&view).fits);
    let size = Size::new(640.0, 300.0);
    let whole = Rect::from_origin_size(Point::ORIGIN, size);
    for bar in bar_outlines(&torque_ledger(&view, size)) {
        assert!(whole.contains_rect(bar));
    }
}

/// The middles of the ends of a role's solid or dashed ray: where it begins and ends.
fn ray(shapes: &[Shape], role: Role) -> (Point, Point) {
    shapes
        .iter()
        .find_map(|shape| match shape {
            Shape::Stroke { path, pen } if pen.tone.role == role => {
                let ends: Vec<Point> = path
                    .elements()
                    .iter()
                    .filter_map(kurbo::PathEl::end_point)
                    .collect();
                (ends.len() == 2 && pen.width > 3.0).then(|| (ends[0], ends[1]))
            }
            _ => None,
        })
        .unwrap()
}

#[test]
fn both_rays_of_the_plan_point_where_they_should() {
    let flown = flown("left-off-south");
    for (heading, reading) in [(0.0, 340.0), (95.0, 130.0), (359.0, 3.0)] {
        let view = PlanView {
            heading: MagneticHeading::from_degrees(heading),
            reading: CompassHeading::from_degrees(reading),
            ..plan(&flown)
        };
        let shapes = plan_view(&view, SQUARE);
        for (role, direction) in [(Role::Heading, heading), (Role::Compass, reading)] {
            let (from, to) = ray(&shapes, role);
            let along = to - from;
            let seen = compass::maths::atan2(along.x, -along.y).to_degrees();
            let off = (seen - direction + 540.0).rem_euclid(360.0) - 180.0;
            assert!(off.abs() < 1e-6, "{role:?} {direction}: {seen}");
        }
    }
}

#[test]
fn a_followed_aircraft_keeps_its_place() {
    let flown = flown("right-through-north");
    let start = |track| {
        let view = PlanView {
            fit: Fit::Follow(3000.0),
            track,
            ..plan(&flown)
        };
        ray(&plan_view(&view, SQUARE), Role::Heading).0
    };
    let [short, whole] = [&flown.track[..9], &flown.track[..]].map(start);
    assert!(short.distance(whole) < 1e-9);
}

#[test]
fn what_is_hidden_gives_nothing_away() {
    let flown = flown("right-through-north");
    let none = PlanView {
        show_heading: false,
        show_compass: false,
        ..plan(&flown)
    };
    let roles = |shapes: &[Shape]| {
        let paints = |role| {
            shapes.iter().any(|shape| match shape {
                Shape::Fill {
                    paint: Paint::Flat(tone),
                    ..
                } => tone.role == role,
                Shape::Stroke { pen, .. } => pen.tone.role == role,
                _ => false,
            })
        };
        [Role::Heading, Role::Compass].map(paints)
    };
    assert_eq!(roles(&plan_view(&none, SQUARE)), [false, false]);
    let no_card = BowlView {
        parts: Parts {
            card: false,
            bank: false,
            ..Parts::ALL
        },
        ..bowl(&flown)
    };
    assert_eq!(roles(&bowl_view(&no_card, SQUARE)), [false, false]);
    let told = bowl_view::describe(&no_card);
    assert_eq!((told.figures.heading, told.figures.reading), (None, None));
}

/// Every coordinate and every size of what was drawn is finite.
fn check_finite(shapes: &[Shape]) {
    let path_is_finite = |path: &BezPath| path.is_finite();
    for shape in shapes {
        match shape {
            Shape::Fill { path, paint } => {
                assert!(path_is_finite(path));
                if let Paint::Linear { from, to, .. } = paint {
                    assert!(from.is_finite() && to.is_finite());
                }
            }
            Shape::Stroke { path, pen } => {
                assert!(path_is_finite(path));
                assert!(pen.width.is_finite() && pen.width >= 0.0);
                if let Some(dash) = pen.dash {
                    assert!(dash.iter().all(|part| part.is_finite() && *part > 0.0));
                }
                assert!((0.0..=1.0).contains(&pen.tone.alpha));
            }
            Shape::Text(text) => {
                assert!(text.place.is_finite());
                assert!(text.size.is_finite() && text.size > 0.0);
                assert!((0.0..=1.0).contains(&text.tone.alpha));
            }
            Shape::Group(group) => check_finite(&group.shapes),
        }
    }
}

const SIZES: [(f64, f64); 9] = [
    (0.0, 0.0),
    (8.0, 8.0),
    (1.0, 1e6),
    (20.0, 2000.0),
    (2000.0, 20.0),
    (-5.0, 400.0),
    (f64::NAN, 400.0),
    (f64::INFINITY, 400.0),
    (420.0, 420.0),
];

#[test]
fn no_size_breaks_a_picture() {
    let flown = flown("right-through-north");
    for size in SIZES.map(|(width, height)| Size::new(width, height)) {
        check_finite(&bowl_view(&bowl(&flown), size));
        check_finite(&torque_ledger(&ledger(flown.moment.torques), size));
        check_finite(&plan_view(&plan(&flown), size));
        let empty = PlanView {
            track: &[],
            later: &[],
            words: plan_view::Words::default(),
            ..plan(&flown)
        };
        check_finite(&plan_view(&empty, size));
        assert_eq!(
            plan_view::scale_bar(&empty, size).is_some(),
            !plan_view(&empty, size).is_empty()
        );
    }
}

fn size() -> impl Strategy<Value = Size> {
    (5.0..1500.0, 5.0..1500.0).prop_map(|(width, height)| Size::new(width, height))
}

proptest! {
    #[test]
    fn no_situation_and_no_camera_breaks_the_bowl(
        attitude in [-4.0..4.0, -1.6..1.6, -1.6..1.6],
        card in [-1.0..1.0, -1.0..1.0, -1.0..1.0, -1.0..1.0],
        felt in [-20.0..20.0, -20.0..20.0, -20.0..20.0],
        horizontal in 0.0..1e-4,
        vertical in -1e-4..1e-4,
        camera in [ANY, ANY, ANY],
        orbit in [-7.0..7.0, -2.0..2.0],
        rides in any::<bool>(),
        size in size(),
    ) {
        let [heading, pitch, bank] = attitude;
        let motion = Motion::of(&Kinematics {
            heading,
            pitch,
            bank,
            airspeed: 50.0,
            rate_of_turn: 0.05,
            pitch_rate: 0.0,
            bank_rate: 0.0,
            airspeed_rate: 0.0,
        });
        let quaternion = glam::DQuat::from_array(card).normalize();
        let reading = Reading::of(Rotation::from_quaternion(quaternion), false, Zone::Reliable);
        let moment = Moment {
            time: 0.0,
            motion,
            apparent_gravity: Vector::new(felt[0], felt[1], felt[2]),
            reading,
            torques: Torques {
                horizontal_field: 0.0,
                vertical_field: 0.0,
                iron: 0.0,
                balance_weight: 0.0,
                liquid_drag: 0.0,
                friction: 0.0,
            },
        };
        let field = MagneticField::new(horizontal, vertical, 0.0).unwrap();
        let mount = if rides { Mount::Airframe } else { Mount::Level };
        let wild = Camera { azimuth: camera[0], elevation: camera[1], distance: camera[2], mount };
        let usual = Camera { mount, ..Camera::default() }.orbited(orbit[0], orbit[1]);
        for camera in [wild, usual] {
            let view = BowlView {
                moment: &moment,
                field: &field,
                camera,
                parts: Parts::ALL,
                words: bowl_view::Words {
                    dip: Some("dip"),
                    bank: Some("bank"),
                    ..bowl_view::Words::default()
                },
            };
            let shapes = bowl_view(&view, size);
            prop_assert!(shapes.len() < 300);
            check_finite(&shapes);
            let _ = bowl_view::describe(&view);
        }
    }

    #[test]
    fn no_torques_break_the_ledger(
        parts in [ANY, ANY, ANY, ANY, ANY, ANY],
        scale in ANY,
        size in size(),
    ) {
        let torques = Torques {
            horizontal_field: parts[0],
            vertical_field: parts[1],
            iron: parts[2],
            balance_weight: parts[3],
            liquid_drag: parts[4],
            friction: parts[5],
        };
        let view = LedgerView { scale, ..ledger(torques) };
        check_finite(&torque_ledger(&view, size));
        let _ = torque_ledger::describe(&view);
        let _ = torque_ledger::steady_scale(&torques, scale);
    }

    #[test]
    fn no_track_breaks_the_plan(
        track in proptest::collection::vec((ANY, ANY), 0..20),
        near in proptest::collection::vec((-1e5..1e5, -1e5..1e5), 0..20),
        angles in [-7.0..7.0, -7.0..7.0, -3.2..3.2],
        across in ANY,
        size in size(),
    ) {
        let positions = |points: Vec<(f64, f64)>| -> Vec<Position> {
            points.into_iter().map(|(north, east)| Position { north, east }).collect()
        };
        for track in [positions(track), positions(near)] {
            for fit in [Fit::Whole, Fit::Follow(across)] {
                let view = PlanView {
                    heading: MagneticHeading::from_radians(angles[0]),
                    reading: CompassHeading::from_radians(angles[1]),
                    variation: angles[2],
                    track: &track,
                    later: &[],
                    fit,
                    show_heading: true,
                    show_compass: true,
                    words: plan_view::Words {
                        magnetic_north: Some("magnetic north"),
                        true_north: Some("true north"),
                        heading: Some("heading"),
                        error: Some("error"),
                        scale: Some("scale"),
                        ..plan_view::Words::default()
                    },
                };
                check_finite(&plan_view(&view, size));
                let _ = plan_view::describe(&view);
            }
        }
    }
}
