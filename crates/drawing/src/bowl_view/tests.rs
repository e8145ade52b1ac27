use super::*;
use crate::shape::{Pen, Text};
use compass::field::Zone;
use compass::frame::{Body, Card, Rotation, Vector};
use compass::heading::MagneticHeading;
use compass::motion::{Kinematics, Motion, coordinated_rate_of_turn};
use compass::reading::{Reading, Torques};
use kurbo::{BezPath, PathEl, Point, Vec2};

const SIZE: Size = Size::new(420.0, 420.0);

/// A coordinated turn, the card leaning in its bowl and turned off the heading. Degrees.
fn moment(heading: f64, bank: f64, reading: f64, lean: [f64; 2]) -> Moment {
    let airspeed = 50.0;
    let bank = bank.to_radians();
    let motion = Motion::of(&Kinematics {
        heading: heading.to_radians(),
        pitch: 0.0,
        bank,
        airspeed,
        rate_of_turn: coordinated_rate_of_turn(bank, airspeed),
        pitch_rate: 0.0,
        bank_rate: 0.0,
        airspeed_rate: 0.0,
    });
    let [forward, right] = lean.map(f64::to_radians);
    let card = DQuat::from_rotation_x(right)
        * DQuat::from_rotation_y(-forward)
        * DQuat::from_rotation_z(-reading.to_radians());
    Moment {
        time: 0.0,
        motion,
        apparent_gravity: motion.apparent_gravity_in_bowl(),
        reading: Reading::of(Rotation::from_quaternion(card), false, Zone::Reliable),
        torques: Torques {
            horizontal_field: 0.0,
            vertical_field: 0.0,
            iron: 0.0,
            balance_weight: 0.0,
            liquid_drag: 0.0,
            friction: 0.0,
        },
    }
}

fn field(dip: f64) -> MagneticField {
    let (s, c) = maths::sin_cos(dip.to_radians());
    MagneticField::new(48e-6 * c, 48e-6 * s, 0.0).unwrap()
}

fn view<'a>(moment: &'a Moment, field: &'a MagneticField) -> BowlView<'a> {
    BowlView {
        moment,
        field,
        camera: Camera::default(),
        parts: Parts::ALL,
        words: Words {
            dip: Some("dip"),
            vertical_pull: Some("Z pulls"),
            true_vertical: Some("true"),
            apparent_vertical: Some("apparent"),
            bank: Some("bank"),
            ..Words::default()
        },
    }
}

/// The scene's parts one by one.
fn one_by_one() -> Vec<(&'static str, Parts)> {
    let none = Parts::NONE;
    vec![
        ("bowl", Parts { bowl: true, ..none }),
        (
            "liquid",
            Parts {
                liquid: true,
                ..none
            },
        ),
        (
            "pivot",
            Parts {
                pivot: true,
                ..none
            },
        ),
        ("card", Parts { card: true, ..none }),
        (
            "magnet",
            Parts {
                magnet: true,
                ..none
            },
        ),
        (
            "field",
            Parts {
                field: true,
                ..none
            },
        ),
        (
            "components",
            Parts {
                components: true,
                ..none
            },
        ),
        (
            "pulls",
            Parts {
                pulls: true,
                ..none
            },
        ),
        (
            "verticals",
            Parts {
                verticals: true,
                ..none
            },
        ),
        ("bank", Parts { bank: true, ..none }),
    ]
}

fn points(path: &BezPath) -> impl Iterator<Item = Point> {
    path.elements().iter().flat_map(|element| match *element {
        PathEl::MoveTo(p) | PathEl::LineTo(p) => vec![p],
        PathEl::QuadTo(a, p) => vec![a, p],
        PathEl::CurveTo(a, b, p) => vec![a, b, p],
        PathEl::ClosePath => vec![],
    })
}

/// Strokes of two points, with their pens, in the order of painting.
fn lines(shapes: &[Shape]) -> Vec<(Point, Point, Pen)> {
    shapes
        .iter()
        .filter_map(|shape| match shape {
            Shape::Stroke { path, pen } => {
                let ends: Vec<Point> = points(path).collect();
                match ends[..] {
                    [from, to] => Some((from, to, *pen)),
                    _ => None,
                }
            }
            _ => None,
        })
        .collect()
}

#[test]
fn from_above_the_horizontal_part_points_north_and_from_behind_the_arrow_dips() {
    for heading in [0.0, 37.0, 151.0, 288.0] {
        let moment = moment(heading, 0.0, heading, [0.0, 0.0]);
        let field = field(65.0);
        let parts = Parts {
            components: true,
            ..Parts::NONE
        };
        let above = BowlView {
            camera: Camera::above(),
            parts,
            ..view(&moment, &field)
        };
        let shapes = bowl_view(&above, SIZE);
        let (from, to, _) = lines(&shapes)[1];
        let (s, c) = maths::sin_cos(-heading.to_radians());
        let along = (to - from).normalize();
        assert!(
            (along - Vec2::new(s, -c)).hypot2().sqrt() < 1e-9,
            "{heading}"
        );
    }
    // North across the picture: the arrow is seen at its true dip, and twice as steep in
    // neither hemisphere.
    for dip in [65.0, -40.0] {
        let moment = moment(270.0, 0.0, 270.0, [0.0, 0.0]);
        let field = field(dip);
        let level = BowlView {
            camera: Camera {
                elevation: 0.0,
                ..Camera::behind()
            },
            parts: Parts {
                field: true,
                ..Parts::NONE
            },
            ..view(&moment, &field)
        };
        let shapes = bowl_view(&level, SIZE);
        let (from, to, _) = lines(&shapes)[1];
        let along = to - from;
        let seen = maths::atan2(along.y, along.x).to_degrees();
        assert!((seen - dip).abs() < 1e-9, "{seen}");
    }
}

#[test]
fn the_liquid_lies_square_to_the_apparent_vertical_whatever_the_bank() {
    for (bank, sideways) in [(18.0, 0.0), (18.0, 1.6), (-30.0, -0.7), (0.0, 1.2)] {
        let mut moment = moment(40.0, bank, 40.0, [0.0, 0.0]);
        moment.apparent_gravity = moment.apparent_gravity + Vector::new(0.0, sideways, 0.0);
        let field = field(65.0);
        let parts = Parts {
            liquid: true,
            ..Parts::NONE
        };
        let behind = BowlView {
            camera: Camera {
                elevation: 0.0,
                ..Camera::behind()
            },
            parts,
            ..view(&moment, &field)
        };
        // Seen along the aircraft, the cut through the surface lies in the picture's plane.
        let (from, to, _) = *lines(&bowl_view(&behind, SIZE)).last().unwrap();
        let felt = moment.motion.attitude.apply(moment.apparent_gravity);
        let (s, c) = maths::sin_cos(moment.motion.heading.radians());
        let right = felt.y() * c - felt.x() * s;
        let down = Vec2::new(right, felt.z()).normalize();
        let along = (to - from).normalize();
        assert!(along.dot(down).abs() < 1e-9, "{bank} {sideways}");
    }
}

#[test]
fn the_pulls_have_the_torques_signs_and_lie_across_the_magnet() {
    let field = field(65.0);
    // Through north in a right turn, the card still square to the bowl and not yet turned.
    let through_north = moment(0.0, 18.0, 0.0, [0.0, 0.0]);
    let described = describe(&view(&through_north, &field));
    assert_eq!(described.vertical_pull, Some(Side::Right));
    assert_eq!(described.horizontal_pull, Some(Side::Middle));
    // The card has followed: the horizontal part pulls it back.
    let lagging = moment(0.0, 18.0, 336.0, [0.0, 0.0]);
    let described = describe(&view(&lagging, &field));
    assert_eq!(described.horizontal_pull, Some(Side::Left));
    assert_eq!(described.figures.difference, Some(-24));
    let scene = Scene::new(&view(&lagging, &field), SIZE).unwrap();
    let [horizontal, vertical] = scene.pulls();
    // By hand: the card's east leans down by sin 18° cos 24°, at 1.2/50 of a radius to the
    // microtesla.
    let east_down = maths::sin(18_f64.to_radians()) * maths::cos(24_f64.to_radians());
    assert!((vertical - east_down * 1.2 * field.vertical() / 50e-6).abs() < 1e-9);
    let east_north = -maths::sin(24_f64.to_radians());
    assert!((horizontal - east_north * 1.2 * field.horizontal() / 50e-6).abs() < 1e-9);
}

#[test]
fn each_part_can_be_switched_off_and_nothing_else_goes_with_it() {
    let moment = moment(6.0, 18.0, 330.0, [1.0, 2.0]);
    let field = field(65.0);
    let drawn = |parts: Parts| {
        let view = BowlView {
            parts,
            ..view(&moment, &field)
        };
        (bowl_view(&view, SIZE), describe(&view))
    };
    let (nothing, described) = drawn(Parts::NONE);
    assert!(nothing.is_empty());
    assert_eq!(described.figures.heading, None);
    assert_eq!(described.figures.reading, None);
    assert_eq!(
        (described.bank, described.field, described.components),
        (None, None, None)
    );
    assert_eq!(
        (described.vertical_pull, described.apparent_vertical),
        (None, None)
    );
    let (all, described) = drawn(Parts::ALL);
    assert!(all.len() < 300, "{} shapes", all.len());
    assert_eq!(described.bank, Some((18, Side::Right)));
    assert_eq!(described.apparent_vertical, Some(18));
    assert_eq!(described.field, Some((48000, 65)));
    for (name, parts) in one_by_one() {
        let (alone, _) = drawn(parts);
        assert!(!alone.is_empty(), "{name}");
        assert!(alone.len() < all.len(), "{name}");
    }
}

#[test]
fn a_mirrored_situation_is_drawn_mirrored() {
    let mirror = |moment: &Moment| {
        let flip = |v: Vector<Body>| Vector::new(v.x(), -v.y(), v.z());
        let q = moment.reading.card.quaternion;
        let card: Rotation<Card, Body> =
            Rotation::from_quaternion(DQuat::from_xyzw(-q.x, q.y, -q.z, q.w));
        let motion = &moment.motion;
        let motion = Motion::of(&Kinematics {
            heading: -motion.heading.radians(),
            pitch: motion.pitch,
            bank: -motion.bank,
            airspeed: motion.airspeed,
            rate_of_turn: -motion.rate_of_turn,
            pitch_rate: 0.0,
            bank_rate: 0.0,
            airspeed_rate: motion.airspeed_rate,
        });
        Moment {
            motion,
            apparent_gravity: flip(moment.apparent_gravity),
            reading: Reading::of(card, false, Zone::Reliable),
            ..*moment
        }
    };
    let all_points = |shapes: &[Shape], mirrored: bool| {
        let mut all: Vec<(i64, i64)> = shapes
            .iter()
            .flat_map(|shape| match shape {
                Shape::Fill { path, .. } | Shape::Stroke { path, .. } => {
                    points(path).collect::<Vec<_>>()
                }
                Shape::Text(Text { place, .. }) => vec![*place * Point::ORIGIN],
                Shape::Group(_) => vec![],
            })
            .map(|p| {
                let x = p.x - SIZE.width / 2.0;
                let x = if mirrored { -x } else { x };
                ((x * 1e3).round() as i64, (p.y * 1e3).round() as i64)
            })
            .collect();
        all.sort_unstable();
        all
    };
    for dip in [65.0, -50.0] {
        let field = field(dip);
        for (heading, bank, reading) in [(6.0, 18.0, 330.0), (170.0, 18.0, 201.0)] {
            let right = moment(heading, bank, reading, [1.5, -2.0]);
            let left = mirror(&right);
            for azimuth in [0.0, -0.4, 1.9] {
                let camera = |azimuth| Camera {
                    azimuth,
                    ..Camera::default()
                };
                // Letters and what is painted left first may change places; outlines may not.
                let of = |moment: &Moment, azimuth: f64| {
                    bowl_view(
                        &BowlView {
                            camera: camera(azimuth),
                            parts: Parts {
                                magnet: false,
                                ..Parts::ALL
                            },
                            ..view(moment, &field)
                        },
                        SIZE,
                    )
                };
                let (a, b) = (of(&right, azimuth), of(&left, -azimuth));
                assert_eq!(a.len(), b.len());
                let (a, b) = (all_points(&a, true), all_points(&b, false));
                let apart = a
                    .iter()
                    .filter(|p| {
                        let near =
                            |q: &(i64, i64)| (q.0 - p.0).abs() <= 2 && (q.1 - p.1).abs() <= 2;
                        !b.iter().any(near)
                    })
                    .count();
                assert_eq!(apart, 0, "dip {dip}, heading {heading}, azimuth {azimuth}");
            }
        }
    }
}

#[test]
fn labels_do_not_jump_as_the_camera_circles() {
    let moment = moment(6.0, 18.0, 330.0, [1.0, 2.0]);
    let field = field(65.0);
    let steps = 1440_u32;
    let at = |step: u32| {
        let camera =
            Camera::default().orbited(std::f64::consts::TAU * f64::from(step) / 1440.0, 0.0);
        let view = BowlView {
            camera,
            ..view(&moment, &field)
        };
        bowl_view(&view, SIZE)
            .into_iter()
            .filter_map(|shape| match shape {
                Shape::Text(Text {
                    content,
                    place,
                    tone,
                    ..
                }) => Some((content, place * Point::ORIGIN, tone.alpha)),
                _ => None,
            })
            .collect::<Vec<_>>()
    };
    let mut before = at(0);
    for step in 1..=steps {
        let now = at(step);
        for (words, place, alpha) in &now {
            let Some((_, was, _)) = before.iter().find(|(other, ..)| other == words) else {
                assert!(*alpha < 0.2, "{words} appears at once at {step}");
                continue;
            };
            let moved = place.distance(*was);
            // Two that pass each other change places, by no more than a label's height.
            assert!(moved < 20.0, "{words} moves by {moved} at {step}");
        }
        before = now;
    }
}

#[test]
fn letters_stay_upright_and_inside_the_picture() {
    let moment = moment(200.0, -40.0, 185.0, [3.0, -6.0]);
    let field = field(-70.0);
    for size in [SIZE, Size::new(340.0, 300.0), Size::new(900.0, 700.0)] {
        for camera in [
            Camera::default(),
            Camera::pilots_seat(),
            Camera::behind(),
            Camera::side(),
            Camera::above(),
        ] {
            let view = BowlView {
                camera,
                ..view(&moment, &field)
            };
            for shape in bowl_view(&view, size) {
                let Shape::Text(Text { place, .. }) = shape else {
                    continue;
                };
                let [a, b, c, d, x, y] = place.as_coeffs();
                assert_eq!([a, b, c, d], [1.0, 0.0, 0.0, 1.0]);
                assert!((0.0..=size.width).contains(&x) && (0.0..=size.height).contains(&y));
            }
        }
    }
}

#[test]
fn a_card_at_its_limits_is_still_drawn() {
    let field = MagneticField::new(0.0, 0.0, 0.0).unwrap();
    let mut upside_down = moment(10.0, 0.0, 10.0, [180.0, 0.0]);
    upside_down.apparent_gravity = Vector::zero();
    upside_down.reading.at_stop = true;
    let shapes = bowl_view(&view(&upside_down, &field), SIZE);
    assert!(!shapes.is_empty());
    let mut none = upside_down;
    none.reading.card = Rotation::from_quaternion(DQuat::from_xyzw(0.0, 0.0, 0.0, 0.0));
    none.motion.attitude = Rotation::from_quaternion(DQuat::from_xyzw(f64::NAN, 0.0, 0.0, 0.0));
    none.motion.heading = MagneticHeading::from_degrees(90.0);
    assert!(!bowl_view(&view(&none, &field), SIZE).is_empty());
}
