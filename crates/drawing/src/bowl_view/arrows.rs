//! The Earth's field, its parts and pulls, and the two verticals.

use super::{Parts, SLIGHT_ANGLE, SLIGHT_PULL, Scene, Words, card};
use crate::labels::{Labels, Lettering};
use crate::outline::{ellipse, polygon, segment};
use crate::shape::{Pen, Shape};
use crate::stage3d::Arc;
use crate::theme::Role;
use compass::maths;
use glam::DVec3;
use kurbo::{Affine, BezPath, Point, Vec2};

/// How far up the verticals reach, and at what radius their angle is drawn.
const VERTICAL: f64 = 1.36;
/// How far up they leave the bowl.
const CLEAR: f64 = 0.62;
const ANGLE_AT: f64 = 1.1;
/// At what share of the field's arrow its dip is drawn.
const DIP_AT: f64 = 0.3;

/// How an arrow is drawn.
#[derive(Clone, Copy)]
struct Style {
    pen: Pen,
    /// Length of its head.
    head: f64,
}

/// The field: one strong line. Its parts: a thin line along the horizon, dashes along the
/// vertical.
fn styles(scene: &Scene) -> [Style; 3] {
    let line = |width: f64| scene.stage.line(width);
    [
        Style {
            pen: Pen::solid(Role::Ink, line(4.4)),
            head: line(15.0),
        },
        Style {
            pen: Pen::solid(Role::Ink, line(2.2)),
            head: line(11.0),
        },
        Style {
            pen: Pen::solid(Role::Ink, line(2.8)).dashed(line(7.0), line(6.0)),
            head: line(11.0),
        },
    ]
}

/// An arrow in the picture, its head no longer than three fifths of it; a ring where it points
/// along the line of sight.
fn arrow(shapes: &mut Vec<Shape>, from: Point, to: Point, style: Style, halo: bool) {
    let along = to - from;
    let length = along.hypot2().sqrt();
    if length < 0.2 * style.head {
        return;
    }
    let head = style.head.min(0.6 * length);
    let unit = along / length;
    let across = Vec2::new(-unit.y, unit.x);
    let neck = to - unit * head;
    let shaft = segment(from, neck + unit * (0.2 * head));
    let tip = polygon(&[
        to,
        neck + across * (0.42 * head),
        neck + unit * (0.18 * head),
        neck - across * (0.42 * head),
    ]);
    if halo {
        let width = style.pen.width + 3.2;
        shapes.push(Shape::line(
            shaft.clone(),
            Pen::solid(Role::Halo, width).faded(0.7),
        ));
        shapes.push(Shape::line(
            tip.clone(),
            Pen::solid(Role::Halo, 3.2).faded(0.7),
        ));
    }
    shapes.push(Shape::line(shaft, style.pen));
    shapes.push(Shape::flat(tip, style.pen.tone));
}

/// The arrows of the field that are shown, each from its tail to its tip.
fn shown(scene: &Scene, parts: Parts) -> Vec<(DVec3, DVec3, Style)> {
    let [total, horizontal, vertical] = styles(scene);
    let (h, z) = (scene.horizontal, scene.vertical);
    let mut all = Vec::with_capacity(3);
    if parts.components {
        all.push((DVec3::ZERO, h, horizontal));
        all.push((h, h + z, vertical));
    }
    if parts.field {
        all.push((DVec3::ZERO, h + z, total));
    }
    all
}

/// The part of a line on the far side of the card's plane, if any.
fn far_part(scene: &Scene, from: DVec3, to: DVec3) -> Option<(DVec3, DVec3)> {
    let face = scene.seen_face();
    let (a, b) = (from.dot(face), to.dot(face));
    match (a > 1e-9, b > 1e-9) {
        (true, true) => None,
        (false, false) => Some((from, to)),
        (true, false) => Some((from + (to - from) * (a / (a - b)), to)),
        (false, true) => Some((from, from + (to - from) * (a / (a - b)))),
    }
}

/// What of the field lies under the card, before the card is drawn over it.
pub(super) fn under(shapes: &mut Vec<Shape>, scene: &Scene, parts: Parts) {
    for (from, to, style) in shown(scene, parts) {
        if far_part(scene, from, to).is_some() {
            let (from, to) = (scene.stage.seen(from), scene.stage.seen(to));
            arrow(shapes, from, to, style, true);
        }
    }
}

/// The field over the card; what lies under the card only faintly.
pub(super) fn field(
    shapes: &mut Vec<Shape>,
    labels: &mut Labels,
    scene: &Scene,
    parts: Parts,
    words: &Words,
) {
    let stage = &scene.stage;
    let (h, z) = (scene.horizontal, scene.vertical);
    let total = h + z;
    if total.length() < 1e-9 {
        return;
    }
    let covered = parts.card || parts.magnet;
    if parts.field && parts.components {
        let triangle = stage.polygon(&[DVec3::ZERO, h, total]);
        shapes.push(Shape::flat(triangle, Role::Ink.at(0.07)));
    }
    if parts.components && h.length() > 0.12 && z.length() > 0.12 {
        let (a, b) = (h.normalize() * -0.07, z.normalize() * 0.07);
        let corner = stage.polyline(&[h + a, h + a + b, h + b]);
        shapes.push(Shape::line(
            corner,
            Pen::solid(Role::FaintInk, stage.line(1.3)),
        ));
    }
    if parts.field && h.length() > 0.05 && z.length() > 0.02 {
        dip(shapes, labels, scene, words);
    }
    for (from, to, mut style) in shown(scene, parts) {
        if covered {
            match far_part(scene, from, to) {
                // Seen through the card, so that it can be followed.
                Some((a, b)) if (a, b) == (from, to) => {
                    style.pen = style.pen.faded(0.3);
                    arrow(shapes, stage.seen(from), stage.seen(to), style, false);
                    continue;
                }
                Some((a, b)) if b == to => {
                    // From over the card to under it.
                    let near = segment(stage.seen(from), stage.seen(a));
                    shapes.push(Shape::line(near, style.pen));
                    style.pen = style.pen.faded(0.3);
                    arrow(shapes, stage.seen(a), stage.seen(to), style, false);
                    continue;
                }
                Some((a, b)) => {
                    let hidden = segment(stage.seen(a), stage.seen(b));
                    shapes.push(Shape::line(hidden, style.pen.faded(0.3)));
                    arrow(shapes, stage.seen(b), stage.seen(to), style, true);
                    continue;
                }
                None => {}
            }
        }
        arrow(shapes, stage.seen(from), stage.seen(to), style, true);
    }
    let gap = stage.line(5.0);
    // Seen along the vertical, the three arrows lie on each other.
    let seen = |from: DVec3, to: DVec3| stage.distance(from, to);
    if parts.field {
        let (tip, tail) = (stage.seen(total), stage.seen(total * 0.5));
        let mut set = Lettering::of(1.15 * stage.text(), 700);
        if parts.components {
            set = set.shown(seen(h, total), 1.5);
        }
        labels.beside(words.total, tip, tip - tail, gap, set);
    }
    if parts.components {
        let set = Lettering::of(1.05 * stage.text(), 600);
        let at = stage.seen(h * 0.6);
        let shown = set.shown(seen(DVec3::ZERO, h), 1.2);
        // On the outer side of the triangle.
        let inner = stage.seen(total * 0.5);
        labels.beside(words.horizontal, at, at - inner, 0.6 * gap, shown);
        let at = stage.seen(h + z * 0.55);
        let shown = set.shown(seen(h, total), 1.5);
        labels.beside(words.vertical, at, at - inner, gap, shown);
    }
}

/// The angle of dip, between the field's horizontal part and the field.
fn dip(shapes: &mut Vec<Shape>, labels: &mut Labels, scene: &Scene, words: &Words) {
    let stage = &scene.stage;
    let (h, z) = (scene.horizontal, scene.vertical);
    let reach = DIP_AT * (h + z).length();
    let (along, down) = (h.normalize(), z.normalize());
    let angle = maths::atan2(z.length(), h.length());
    let arc = Arc {
        centre: DVec3::ZERO,
        a: along * reach,
        b: down * reach,
    };
    let mut path = BezPath::new();
    stage.add_arc(&mut path, &arc, 0.0, angle);
    shapes.push(Shape::line(
        path,
        Pen::solid(Role::FaintInk, stage.line(1.5)),
    ));
    let at = stage.seen(arc.at(0.5 * angle).0);
    // How open the triangle is seen: from above it is seen on its edge.
    let pivot = stage.seen(DVec3::ZERO);
    let (a, b) = (stage.seen(h) - pivot, stage.seen(h + z) - pivot);
    let across = a.cross(b).abs() / a.hypot2().sqrt().max(b.hypot2().sqrt()).max(1.0);
    labels.beside(
        words.dip,
        at,
        at - pivot,
        stage.line(4.0),
        Lettering::of(0.92 * stage.text(), 500).shown(across, 1.6),
    );
}

/// At the north mark: the shares of the horizontal and the vertical part that lie across the
/// magnet.
pub(super) fn pulls(shapes: &mut Vec<Shape>, labels: &mut Labels, scene: &Scene, words: &Words) {
    let stage = &scene.stage;
    let [_, horizontal, vertical] = styles(scene);
    let end = card::north_mark(scene);
    let clear = stage.line(4.0);
    let texts = [words.horizontal_pull, words.vertical_pull];
    for ((pull, style), text) in scene
        .pulls()
        .into_iter()
        .zip([horizontal, vertical])
        .zip(texts)
    {
        if pull.abs() < SLIGHT_PULL {
            continue;
        }
        let style = Style {
            pen: Pen {
                width: 1.35 * style.pen.width,
                ..style.pen
            },
            head: 1.15 * style.head,
        };
        let (mark, to) = (stage.seen(end), stage.seen(end + scene.card[1] * pull));
        // Clear of the mark itself.
        let along = to - mark;
        let from = mark + along * (clear / along.hypot2().sqrt().max(2.0 * clear));
        arrow(shapes, from, to, style, true);
        labels.beside(
            text,
            to,
            to - from,
            stage.line(5.0),
            Lettering::of(stage.text(), 600).shown((to - from).hypot2().sqrt(), 0.8),
        );
    }
}

/// The true vertical, a thin line with a level bar; the apparent one, dotted, with a ring; and
/// the angle between them.
pub(super) fn verticals(
    shapes: &mut Vec<Shape>,
    labels: &mut Labels,
    scene: &Scene,
    words: &Words,
) {
    let stage = &scene.stage;
    let Some(felt) = scene.felt_down else {
        return;
    };
    let (up, felt) = (-DVec3::Z, -felt);
    let top = stage.seen(up * VERTICAL);
    let apparent = stage.seen(felt * VERTICAL);
    // From straight above they point at the camera and fade.
    let set = Lettering::of(0.92 * stage.text(), 500)
        .shown(stage.distance(up * VERTICAL, DVec3::ZERO), 4.0);
    let alpha = set.alpha();
    if alpha < 0.02 {
        return;
    }
    let pens = [
        Pen::solid(Role::FaintInk, stage.line(1.7)),
        Pen::solid(Role::Ink, stage.line(2.6)).dashed(0.1, stage.line(6.0)),
    ];
    for (end, pen) in [(up, pens[0]), (felt, pens[1])] {
        // Faint between pivot and rim, where much else is to be seen.
        let [foot, clear, tip] =
            [card::HALF_HEIGHT, CLEAR, VERTICAL].map(|at| stage.seen(end * at));
        shapes.push(Shape::line(segment(foot, clear), pen.faded(0.35 * alpha)));
        let line = segment(clear, tip);
        let halo = Pen::solid(Role::Halo, stage.line(5.0)).faded(0.6 * alpha);
        shapes.push(Shape::line(line.clone(), halo));
        shapes.push(Shape::line(line, pen.faded(alpha)));
    }
    let bar = stage.line(7.0);
    shapes.push(Shape::line(
        segment(top + (-bar, 0.0), top + (bar, 0.0)),
        Pen::solid(Role::FaintInk, stage.line(2.2)).faded(alpha),
    ));
    let ring = ellipse(Affine::translate(apparent.to_vec2()) * Affine::scale(stage.line(4.6)));
    shapes.push(Shape::flat(ring.clone(), Role::Paper.at(alpha)));
    let pen = Pen::solid(Role::Ink, stage.line(2.2)).faded(alpha);
    shapes.push(Shape::line(ring, pen));

    let angle = maths::atan2(up.cross(felt).length(), up.dot(felt));
    let toward = felt - up * felt.dot(up);
    if let (true, Some(toward)) = (angle > SLIGHT_ANGLE, toward.try_normalize()) {
        let arc = Arc {
            centre: DVec3::ZERO,
            a: up * ANGLE_AT,
            b: toward * ANGLE_AT,
        };
        let mut path = BezPath::new();
        stage.add_arc(&mut path, &arc, 0.0, angle);
        let pen = Pen::solid(Role::FaintInk, stage.line(1.5)).faded(alpha);
        shapes.push(Shape::line(path, pen));
    }
    // Apart from each other, and above where they meet.
    let apart = apparent.x - top.x;
    let side = Vec2::new(apart / (apart.abs() + stage.line(14.0)), -0.75);
    let gap = stage.line(11.0);
    let left = Vec2::new(-side.x, side.y);
    labels.beside(
        words.true_vertical,
        top,
        left,
        gap,
        set.in_role(Role::FaintInk),
    );
    labels.beside(words.apparent_vertical, apparent, side, gap, set);
}
