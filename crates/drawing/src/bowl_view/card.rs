//! Card, float, magnet and pivot.

use super::{Scene, Words, shell};
use crate::lettering::label;
use crate::outline::diamond;
use crate::shape::{Anchor, Pen, Shape};
use crate::stage3d::Arc;
use crate::theme::Role;
use compass::maths;
use glam::DVec3;
use kurbo::BezPath;

/// Radius of the card, in radii of the bowl.
pub(super) const RADIUS: f64 = 0.74;
/// Half the height of its side.
pub(super) const HALF_HEIGHT: f64 = 0.07;
/// How far the card's north is drawn out beyond its rim.
const NORTH_REACH: f64 = 1.04;
/// The magnet: half its length and width, its height.
const MAGNET: [f64; 3] = [0.3, 0.065, 0.05];

/// A ring on the card, `up` along the normal of the face that is seen.
fn ring(scene: &Scene, radius: f64, up: DVec3) -> Arc {
    Arc {
        centre: up,
        a: scene.card[0] * radius,
        b: scene.card[1] * radius,
    }
}

/// The direction of a bearing on the card, as the card itself counts them.
fn direction(scene: &Scene, bearing: f64) -> DVec3 {
    let (s, c) = maths::sin_cos(bearing);
    scene.card[0] * c + scene.card[1] * s
}

/// The card: its side, the face that is seen, marks and letters.
pub(super) fn card(shapes: &mut Vec<Shape>, scene: &Scene, at_stop: bool, words: &Words) {
    let stage = &scene.stage;
    let face = scene.seen_face();
    let top = face * HALF_HEIGHT;
    let edge = Pen::solid(Role::CardShade, stage.line(1.2));

    side(shapes, scene, face);

    let outline = stage.ellipse(&ring(scene, RADIUS, top));
    let seen_from_above = face.dot(scene.card[2]) < 0.0;
    let role = if seen_from_above {
        Role::Card
    } else {
        Role::CardUnder
    };
    shapes.push(Shape::flat(outline.clone(), role.solid()));
    // Light from above: the side of the card that is low lies in the shade.
    let low = DVec3::Z - face * DVec3::Z.dot(face);
    let lean = low.length();
    if let Some(low) = low.try_normalize() {
        shapes.push(Shape::shaded(
            outline.clone(),
            Role::Shadow,
            stage.seen(top - low * RADIUS),
            stage.seen(top + low * RADIUS),
            &[(0.0, 0.0), (1.0, (0.5 * lean).min(0.3))],
        ));
    }
    let rim = if at_stop {
        Pen::solid(Role::Ink, stage.line(3.6))
    } else {
        edge
    };
    shapes.push(Shape::line(outline, rim));

    let (mut long, mut short) = (BezPath::new(), BezPath::new());
    for step in 0..36_u32 {
        let outward = direction(scene, f64::from(10 * step).to_radians());
        let (path, inner) = if step % 3 == 0 {
            (&mut long, 0.91)
        } else {
            (&mut short, 0.94)
        };
        path.move_to(stage.seen(top + outward * (inner * RADIUS)));
        path.line_to(stage.seen(top + outward * (0.985 * RADIUS)));
    }
    shapes.push(Shape::line(
        short,
        Pen::solid(Role::CardInk, stage.line(1.0)).faded(0.7),
    ));
    shapes.push(Shape::line(
        long,
        Pen::solid(Role::CardInk, stage.line(1.8)),
    ));
    if seen_from_above {
        letters(shapes, scene, top, words);
    }
}

/// The side of the card, as far as it is turned to the camera.
fn side(shapes: &mut Vec<Shape>, scene: &Scene, face: DVec3) {
    let stage = &scene.stage;
    let down = scene.card[2];
    let eye = stage.eye();
    let flat = eye - down * eye.dot(down);
    let distance = flat.length();
    let Some(near) = flat.try_normalize() else {
        return;
    };
    // Tangents from the camera to the rim touch it this far from its nearest point.
    if distance <= RADIUS {
        return;
    }
    let half = maths::acos(RADIUS / distance);
    let arc = |up: DVec3| Arc {
        centre: up,
        a: near * RADIUS,
        b: near.cross(down) * RADIUS,
    };
    let (upper, lower) = (arc(face * HALF_HEIGHT), arc(face * -HALF_HEIGHT));
    let mut band = BezPath::new();
    stage.add_arc(&mut band, &upper, -half, half);
    stage.add_arc(&mut band, &lower, half, -half);
    band.close_path();
    let [from, to] = [-half, half].map(|angle| {
        let (a, b) = (upper.at(angle).0, lower.at(angle).0);
        stage.seen((a + b) * 0.5)
    });
    shapes.push(Shape::flat(band.clone(), Role::Card.solid()));
    shapes.push(Shape::shaded(
        band.clone(),
        Role::CardShade,
        from,
        to,
        &[
            (0.0, 1.0),
            (0.15, 0.7),
            (0.35, 0.42),
            (0.5, 0.36),
            (0.65, 0.42),
            (0.85, 0.7),
            (1.0, 1.0),
        ],
    ));
    shapes.push(Shape::line(
        band,
        Pen::solid(Role::CardShade, stage.line(1.2)),
    ));
    let mut marks = BezPath::new();
    for step in 0..36_u32 {
        let outward = direction(scene, f64::from(10 * step).to_radians());
        let p = outward * RADIUS;
        if stage.faces(p, outward) {
            let short = if step % 3 == 0 { 0.75 } else { 0.4 };
            marks.move_to(stage.seen(p + down * (0.85 * HALF_HEIGHT)));
            marks.line_to(stage.seen(p + down * ((0.85 - 2.0 * short) * HALF_HEIGHT)));
        }
    }
    shapes.push(Shape::line(
        marks,
        Pen::solid(Role::CardInk, stage.line(1.1)).faded(0.75),
    ));
}

/// The cardinal letters, upright, squeezed a little as the card is seen from the side.
fn letters(shapes: &mut Vec<Shape>, scene: &Scene, top: DVec3, words: &Words) {
    let stage = &scene.stage;
    let size = (0.16 * stage.scale).max(1.05 * stage.text());
    for (letter, quarter) in words.cardinals.into_iter().zip(0_u32..) {
        let outward = direction(scene, f64::from(90 * quarter).to_radians());
        let at = stage.seen(top + outward * (0.775 * RADIUS));
        shapes.push(label(
            letter.to_owned(),
            at,
            Anchor::Middle,
            if quarter == 0 { 1.12 * size } else { size },
            700,
            Role::CardInk.solid(),
        ));
    }
}

/// The magnet: a bar on the face that is seen, its north end dark and pointed.
pub(super) fn magnet(shapes: &mut Vec<Shape>, scene: &Scene) {
    let stage = &scene.stage;
    let face = scene.seen_face();
    let [length, width, height] = MAGNET;
    let [north, east, _] = scene.card;
    let at = |x: f64, y: f64, up: f64| north * x + east * y + face * (HALF_HEIGHT + up);
    let shoulder = length - 0.1;
    let outlines: [(&[(f64, f64)], Role); 2] = [
        (
            &[
                (0.0, -width),
                (shoulder, -width),
                (length, 0.0),
                (shoulder, width),
                (0.0, width),
            ],
            Role::CardInk,
        ),
        (
            &[
                (0.0, width),
                (-length, width),
                (-length, -width),
                (0.0, -width),
            ],
            Role::Card,
        ),
    ];
    let pen = Pen::solid(Role::CardInk, stage.line(1.3));
    for (outline, role) in outlines {
        // The sides, all in one: whatever is not turned to the camera the top hides.
        let mut sides = BezPath::new();
        for pair in outline.windows(2) {
            let [(ax, ay), (bx, by)] = [pair[0], pair[1]];
            let middle = at(0.5 * (ax + bx), 0.5 * (ay + by), 0.5 * height);
            let outward = north * (by - ay) - east * (bx - ax);
            if stage.faces(middle, outward) {
                let wall = [
                    at(ax, ay, 0.0),
                    at(bx, by, 0.0),
                    at(bx, by, height),
                    at(ax, ay, height),
                ];
                sides.extend(stage.polygon(&wall));
            }
        }
        shapes.push(Shape::flat(sides.clone(), Role::CardShade.solid()));
        shapes.push(Shape::line(sides, pen));
        let points: Vec<DVec3> = outline.iter().map(|&(x, y)| at(x, y, height)).collect();
        let top = stage.polygon(&points);
        shapes.push(Shape::flat(top.clone(), role.solid()));
        shapes.push(Shape::line(top, pen));
    }
}

/// The pin, from the bowl's bottom to the card.
pub(super) fn pin(shapes: &mut Vec<Shape>, scene: &Scene) {
    let stage = &scene.stage;
    let down = scene.airframe * DVec3::Z;
    let (foot, tip) = (
        stage.seen(down * shell::DEPTH),
        stage.seen(down * HALF_HEIGHT),
    );
    let along = tip - foot;
    let length = along.hypot2().sqrt();
    if length > 1e-6 {
        let across = kurbo::Vec2::new(-along.y, along.x) / length * (0.05 * stage.scale);
        let path = crate::outline::polygon(&[
            foot + across,
            tip + across * 0.25,
            tip - across * 0.25,
            foot - across,
        ]);
        shapes.push(Shape::flat(path.clone(), Role::CardShade.solid()));
        shapes.push(Shape::line(
            path,
            Pen::solid(Role::Surface, stage.line(1.0)),
        ));
    }
}

/// The jewel over the pin, in the middle of the card.
pub(super) fn cap(shapes: &mut Vec<Shape>, scene: &Scene) {
    let up = scene.seen_face() * (HALF_HEIGHT + MAGNET[2]);
    let path = scene.stage.ellipse(&ring(scene, 0.04, up));
    shapes.push(Shape::flat(path.clone(), Role::Glass.solid()));
    shapes.push(Shape::line(
        path,
        Pen::solid(Role::CardInk, scene.stage.line(1.2)),
    ));
}

/// The card's north, drawn out beyond its rim: what the compass says. Dashed, with a filled
/// diamond.
pub(super) fn north(shapes: &mut Vec<Shape>, scene: &Scene) {
    let stage = &scene.stage;
    let top = scene.seen_face() * HALF_HEIGHT;
    let north = scene.card[0];
    let [from, to] = [1.02 * RADIUS, NORTH_REACH].map(|reach| stage.seen(top + north * reach));
    let path = crate::outline::segment(from, to);
    let dash = stage.line(5.0);
    shapes.push(Shape::line(
        path.clone(),
        Pen::solid(Role::Halo, stage.line(6.0)).faded(0.8),
    ));
    shapes.push(Shape::line(
        path,
        Pen::solid(Role::Compass, stage.line(3.2)).dashed(dash, 1.4 * dash),
    ));
    let shape = diamond(to, stage.line(6.0));
    shapes.push(Shape::line(
        shape.clone(),
        Pen::solid(Role::Halo, stage.line(3.0)),
    ));
    shapes.push(Shape::flat(shape, Role::Compass.solid()));
}

/// Where the north mark is.
pub(super) fn north_mark(scene: &Scene) -> DVec3 {
    scene.card[0] * NORTH_REACH + scene.seen_face() * HALF_HEIGHT
}
