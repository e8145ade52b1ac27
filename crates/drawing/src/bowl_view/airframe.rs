//! The airframe around the bowl, the horizon, and the bank between them.

use super::{SLIGHT_ANGLE, Scene, Words};
use crate::labels::{Labels, Lettering};
use crate::outline::polygon;
use crate::shape::{Pen, Shape};
use crate::stage3d::Arc;
use crate::theme::Role;
use compass::maths;
use glam::DVec3;
use kurbo::{BezPath, Point, Vec2};

/// Where wings and tail begin, clear of the bowl, and where wings and horizon end.
const ROOT: f64 = 1.14;
const WING_TIP: f64 = 1.66;
const HORIZON_TIP: f64 = 1.76;
/// At what radius the bank's angle is drawn.
const ANGLE_AT: f64 = 1.46;
/// The nose: where its line begins, where its triangle begins and ends; and its height above the
/// pivot, so that the bowl's rim does not hide it.
const NOSE: [f64; 3] = [1.04, 1.18, 1.46];
const NOSE_HEIGHT: f64 = 0.48;
const TAIL_TIP: f64 = 1.42;

/// The flat pieces of the airframe, in body axes.
const PIECES: [&[DVec3]; 3] = [
    &[
        DVec3::new(0.2, ROOT, 0.0),
        DVec3::new(0.08, WING_TIP, 0.0),
        DVec3::new(-0.1, WING_TIP, 0.0),
        DVec3::new(-0.2, ROOT, 0.0),
    ],
    &[
        DVec3::new(0.2, -ROOT, 0.0),
        DVec3::new(0.08, -WING_TIP, 0.0),
        DVec3::new(-0.1, -WING_TIP, 0.0),
        DVec3::new(-0.2, -ROOT, 0.0),
    ],
    &[
        DVec3::new(-ROOT, 0.06, 0.0),
        DVec3::new(-1.28, 0.05, 0.0),
        DVec3::new(-1.34, 0.32, 0.0),
        DVec3::new(-TAIL_TIP, 0.32, 0.0),
        DVec3::new(-TAIL_TIP, -0.32, 0.0),
        DVec3::new(-1.34, -0.32, 0.0),
        DVec3::new(-1.28, -0.05, 0.0),
        DVec3::new(-ROOT, -0.06, 0.0),
    ],
];

/// Whether a piece whose middle lies at `p` belongs behind the bowl.
fn is_beyond(scene: &Scene, p: DVec3) -> bool {
    scene.stage.depth(p) > 0.0
}

fn middle(piece: &[DVec3]) -> DVec3 {
    piece.iter().copied().sum::<DVec3>() / piece.len().max(1) as f64
}

fn pieces(shapes: &mut Vec<Shape>, scene: &Scene, beyond: bool) {
    let stage = &scene.stage;
    for piece in PIECES {
        if is_beyond(scene, scene.airframe * middle(piece)) != beyond {
            continue;
        }
        let points: Vec<DVec3> = piece.iter().map(|&p| scene.airframe * p).collect();
        let path = stage.polygon(&points);
        // Thin enough that a wing on this side hides nothing.
        shapes.push(Shape::flat(path.clone(), Role::Rule.at(0.42)));
        shapes.push(Shape::line(
            path,
            Pen::solid(Role::FaintInk, stage.line(1.5)),
        ));
    }
    if is_beyond(scene, scene.airframe * DVec3::X) == beyond {
        nose(shapes, scene);
    }
    let horizon = Pen::solid(Role::FaintInk, stage.line(1.7)).dashed(0.1, stage.line(4.5));
    for side in [1.0, -1.0] {
        if is_beyond(scene, DVec3::Y * side) == beyond {
            let line = stage.polyline(&[DVec3::Y * (side * ROOT), DVec3::Y * (side * HORIZON_TIP)]);
            shapes.push(Shape::line(line, horizon));
        }
    }
}

/// The nose: the real heading's solid line and open triangle.
fn nose(shapes: &mut Vec<Shape>, scene: &Scene) {
    let stage = &scene.stage;
    let at = |x: f64, y: f64| stage.seen(scene.airframe * DVec3::new(x, y, -NOSE_HEIGHT));
    let [from, base, tip] = NOSE;
    shapes.push(Shape::line(
        crate::outline::segment(at(from, 0.0), at(base, 0.0)),
        Pen::solid(Role::Heading, stage.line(3.6)),
    ));
    let head = polygon(&[at(tip, 0.0), at(base, 0.16), at(base, -0.16)]);
    shapes.push(Shape::flat(head.clone(), Role::Paper.solid()));
    shapes.push(Shape::line(
        head,
        Pen::solid(Role::Heading, stage.line(2.8)),
    ));
}

/// What lies beyond the bowl.
pub(super) fn beyond(shapes: &mut Vec<Shape>, scene: &Scene) {
    pieces(shapes, scene, true);
}

/// What lies this side of the bowl, and the angle of bank.
pub(super) fn near(shapes: &mut Vec<Shape>, labels: &mut Labels, scene: &Scene, words: &Words) {
    pieces(shapes, scene, false);
    let stage = &scene.stage;
    // On the side of the low wing, between it and the horizon.
    let side = if scene.bank < 0.0 { -1.0 } else { 1.0 };
    let horizon = DVec3::Y * side;
    let wing = scene.airframe * horizon;
    let angle = maths::atan2(horizon.cross(wing).length(), horizon.dot(wing));
    let toward = wing - horizon * wing.dot(horizon);
    let mut at: Point = stage.seen(horizon * ANGLE_AT);
    if let (true, Some(toward)) = (angle > SLIGHT_ANGLE, toward.try_normalize()) {
        let arc = Arc {
            centre: DVec3::ZERO,
            a: horizon * ANGLE_AT,
            b: toward * ANGLE_AT,
        };
        let mut path = BezPath::new();
        stage.add_arc(&mut path, &arc, 0.0, angle);
        shapes.push(Shape::line(path, Pen::solid(Role::Ink, stage.line(2.0))));
        at = stage.seen(wing * WING_TIP);
    }
    // A wing that points at the camera shows no bank.
    let across = (stage.seen(wing).x - stage.seen(DVec3::ZERO).x).abs();
    labels.beside(
        words.bank,
        at,
        Vec2::new(0.0, 1.0),
        stage.line(12.0),
        Lettering::of(stage.text(), 600).shown(across, 4.0),
    );
}
