//! The bowl, its near half cut away, and the liquid in it.
//!
//! In body axes the bowl's inside is a cylinder of radius 1 from the rim down to the pivot's
//! height, and half an ellipsoid below. It is cut along the plane through its axis and the
//! camera's right.

use super::Scene;
use crate::shape::{Pen, Shape};
use crate::stage3d::{Arc, hull};
use crate::theme::Role;
use glam::DVec3;
use kurbo::BezPath;
use std::f64::consts::{FRAC_PI_2, PI};

/// Height of the rim above the pivot.
const RIM: f64 = 0.46;
/// How deep the inside goes below the pivot.
pub(super) const DEPTH: f64 = 0.84;
/// How thick the wall is.
const WALL: f64 = 0.06;
/// Height of the liquid above the pivot, on the bowl's axis.
const LEVEL: f64 = 0.26;

/// The cut bowl's own axes, in level axes: to the camera's right, away from the camera, down.
struct Cut {
    right: DVec3,
    back: DVec3,
    down: DVec3,
}

impl Cut {
    fn of(scene: &Scene) -> Self {
        let down = scene.airframe * DVec3::Z;
        let right = scene.stage.right();
        let flat = right - down * right.dot(down);
        let right = flat
            .try_normalize()
            .unwrap_or_else(|| scene.airframe * DVec3::Y);
        Self {
            right,
            back: right.cross(down),
            down,
        }
    }

    fn at(&self, right: f64, down: f64) -> DVec3 {
        self.right * right + self.down * down
    }

    /// A level ring of the bowl: angle 0 at the right, a quarter turn on at the back.
    fn ring(&self, radius: f64, down: f64) -> Arc {
        Arc {
            centre: self.down * down,
            a: self.right * radius,
            b: self.back * radius,
        }
    }

    /// Adds the outline of the cut from its left rim down and up to its right rim, `grown`
    /// beyond the inside.
    fn add_profile(&self, path: &mut BezPath, scene: &Scene, grown: f64, [left, right]: [f64; 2]) {
        let radius = 1.0 + grown;
        let stage = &scene.stage;
        let corner = stage.seen(self.at(-radius, left));
        if path.elements().is_empty() {
            path.move_to(corner);
        } else {
            path.line_to(corner);
        }
        let bottom = Arc {
            centre: DVec3::ZERO,
            a: self.right * radius,
            b: self.down * (DEPTH + grown),
        };
        stage.add_arc(path, &bottom, PI, 0.0);
        path.line_to(stage.seen(self.at(radius, right)));
    }

    /// What is seen of a solid half: over its back edge if its top is seen, and down along the
    /// cut if that is.
    fn inside(&self, scene: &Scene, grown: f64, rim: &Arc, heights: [f64; 2]) -> BezPath {
        let mut path = BezPath::new();
        let stage = &scene.stage;
        if stage.faces(rim.centre, rim.a.cross(rim.b)) {
            stage.add_arc(&mut path, rim, 0.0, PI);
        } else {
            path.move_to(stage.seen(rim.at(0.0).0));
            path.line_to(stage.seen(rim.at(PI).0));
        }
        if self.is_seen(scene) {
            self.add_profile(&mut path, scene, grown, heights);
        }
        path.close_path();
        path
    }

    /// Whether the cut is turned to the camera.
    fn is_seen(&self, scene: &Scene) -> bool {
        scene.stage.faces(DVec3::ZERO, -self.back)
    }

    /// The whole outer half as it is seen, whatever the camera.
    fn outside(&self, scene: &Scene) -> BezPath {
        let steps = 36_u32;
        let mut points = Vec::with_capacity(40 * 8);
        let radius = 1.0 + WALL;
        let angle = |step: u32| PI * f64::from(step) / f64::from(steps);
        for step in 0..=steps {
            let rim = self.ring(radius, -RIM).at(angle(step)).0;
            points.push(scene.stage.seen(rim));
            let waist = self.ring(radius, 0.0).at(angle(step)).0;
            points.push(scene.stage.seen(waist));
            for lean in 0..=5_u32 {
                // Half rings of the ellipsoid, from the cut to straight back.
                let (s, c) = compass::maths::sin_cos(FRAC_PI_2 * f64::from(lean) / 5.0);
                let half = Arc {
                    centre: DVec3::ZERO,
                    a: self.right * radius,
                    b: self.down * ((DEPTH + WALL) * c) + self.back * (radius * s),
                };
                points.push(scene.stage.seen(half.at(angle(step)).0));
            }
        }
        crate::outline::polygon(&hull(points))
    }
}

/// The bowl: its outside, its inside, and the wall where it is cut.
pub(super) fn bowl(shapes: &mut Vec<Shape>, scene: &Scene) {
    let stage = &scene.stage;
    let cut = Cut::of(scene);
    let edge = Pen::solid(Role::Surface, stage.line(1.3));

    // The near half that is cut away, as a hint.
    let mut hint = BezPath::new();
    stage.add_arc(&mut hint, &cut.ring(1.0 + WALL, -RIM), -PI, 0.0);
    shapes.push(Shape::line(
        hint,
        edge.faded(0.55).dashed(stage.line(2.0), stage.line(6.0)),
    ));

    let rim_seen = stage.faces(cut.down * -RIM, -cut.down);
    let heights = [-RIM, -RIM];
    let outer = cut.inside(scene, WALL, &cut.ring(1.0 + WALL, -RIM), heights);
    let solid = if rim_seen && cut.is_seen(scene) {
        outer
    } else {
        cut.outside(scene)
    };
    shapes.push(Shape::flat(solid.clone(), Role::CardUnder.solid()));
    shapes.push(Shape::line(solid, edge));

    let inner = cut.inside(scene, 0.0, &cut.ring(1.0, -RIM), heights);
    shapes.push(Shape::flat(inner.clone(), Role::Air.solid()));
    shade(shapes, scene, &cut, &inner);
    shapes.push(Shape::line(inner, edge.faded(0.8)));
}

/// The shade within a hollow: darker toward its sides and its bottom.
fn shade(shapes: &mut Vec<Shape>, scene: &Scene, cut: &Cut, inside: &BezPath) {
    let stage = &scene.stage;
    shapes.push(Shape::shaded(
        inside.clone(),
        Role::Shadow,
        stage.seen(cut.at(-1.0, 0.0)),
        stage.seen(cut.at(1.0, 0.0)),
        &[
            (0.0, 0.26),
            (0.12, 0.12),
            (0.3, 0.03),
            (0.5, 0.0),
            (0.7, 0.03),
            (0.88, 0.12),
            (1.0, 0.26),
        ],
    ));
}

/// The surface as a ring in the bowl, or none where it lies too steeply to be one.
fn level(scene: &Scene, cut: &Cut) -> Option<Arc> {
    let felt = scene.felt_down?;
    let along = felt.dot(cut.down);
    // Beyond some 60° the surface would leave the bowl altogether.
    if along < 0.5 {
        return None;
    }
    let slope = |side: DVec3| side - cut.down * (felt.dot(side) / along);
    Some(Arc {
        centre: cut.down * -LEVEL,
        a: slope(cut.right),
        b: slope(cut.back),
    })
}

/// How far down in the bowl the surface meets the cut, left and right.
fn ends(cut: &Cut, level: &Arc) -> [f64; 2] {
    [PI, 0.0].map(|angle| level.at(angle).0.dot(cut.down))
}

/// The liquid behind the cut.
pub(super) fn liquid(shapes: &mut Vec<Shape>, scene: &Scene, in_bowl: bool) {
    let stage = &scene.stage;
    let cut = Cut::of(scene);
    let Some(level) = level(scene, &cut) else {
        return;
    };
    let body = cut.inside(scene, 0.0, &level, ends(&cut, &level));
    let from = stage.seen(cut.at(0.0, -LEVEL));
    let to = stage.seen(cut.at(0.0, DEPTH));
    shapes.push(Shape::shaded(
        body.clone(),
        Role::LiquidDeep,
        from,
        to,
        &[(0.0, 0.75), (1.0, 1.0)],
    ));
    shapes.push(Shape::shaded(
        body.clone(),
        Role::Shadow,
        from,
        to,
        &[(0.0, 0.05), (0.4, 0.08), (1.0, 0.24)],
    ));
    if in_bowl {
        shade(shapes, scene, &cut, &body);
    }
}

/// The liquid's surface, over what lies in the liquid.
pub(super) fn surface(shapes: &mut Vec<Shape>, scene: &Scene) {
    let stage = &scene.stage;
    let cut = Cut::of(scene);
    let Some(level) = level(scene, &cut) else {
        return;
    };
    let mut back = BezPath::new();
    stage.add_arc(&mut back, &level, 0.0, PI);
    let mut veil = back.clone();
    veil.close_path();
    shapes.push(Shape::flat(veil, Role::Glass.at(0.16)));
    let pen = Pen::solid(Role::Surface, stage.line(1.6));
    shapes.push(Shape::line(back, pen));
    // Where the surface meets the cut, and where it would go on.
    let across = stage.polyline(&[level.at(PI).0, level.at(0.0).0]);
    shapes.push(Shape::line(across, pen));
    let mut front = BezPath::new();
    stage.add_arc(&mut front, &level, -PI, 0.0);
    shapes.push(Shape::line(
        front,
        pen.faded(0.7).dashed(stage.line(2.0), stage.line(6.0)),
    ));
}
