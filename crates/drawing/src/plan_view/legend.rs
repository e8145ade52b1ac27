//! The two norths of the plan, what their marks mean, and the scale bar.

use super::{Plan, PlanView, toward};
use crate::lettering::{label, text_width};
use crate::outline::{add_arc, polygon, segment};
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use kurbo::{Affine, BezPath, Point, Vec2};
use std::f64::consts::FRAC_PI_2;

/// The marks of the two norths.
fn arrow(tip: Point, size: f64) -> BezPath {
    polygon(&[
        tip,
        tip + Vec2::new(0.42 * size, size),
        tip + Vec2::new(-0.42 * size, size),
    ])
}

/// Magnetic north, an arrow; true north beside it, where it differs, a star; and the angle.
pub(super) fn norths(shapes: &mut Vec<Shape>, plan: &Plan, view: &PlanView) {
    let length = 48.0 * plan.unit;
    let margin = plan.margin();
    let foot = Point::new(margin + 0.4 * length, margin + length);
    let head = plan.line(11.0);
    let tip = foot - Vec2::new(0.0, length);
    shapes.push(Shape::line(
        segment(foot, tip + Vec2::new(0.0, head)),
        Pen::solid(Role::Ink, plan.line(2.4)),
    ));
    shapes.push(Shape::flat(arrow(tip, head), Role::Ink.solid()));
    if !plan.has_true_north {
        return;
    }
    // East variation turns true north to the left of magnetic north.
    let direction = -view.variation;
    let out = toward(direction);
    let faint = Pen::solid(Role::FaintInk, plan.line(1.8));
    shapes.push(Shape::line(
        segment(foot, foot + out * (length - plan.line(8.0))),
        faint.dashed(plan.line(2.0), plan.line(4.0)),
    ));
    shapes.push(Shape::flat(
        star(foot + out * length, plan.line(7.0)),
        Role::FaintInk.solid(),
    ));
    let mut arc = BezPath::new();
    let place = Affine::translate(foot.to_vec2()) * Affine::scale(0.66 * length);
    add_arc(&mut arc, place, -FRAC_PI_2, direction - FRAC_PI_2);
    shapes.push(Shape::line(arc, faint));
}

/// What stands at the foot of the picture, from left to right: a mark, words, its colour.
fn legend<'a>(view: &PlanView<'a>, has_true_north: bool) -> [(Mark, Option<&'a str>); 3] {
    let words = view.words;
    let of_true_north = |words: Option<&'a str>| words.filter(|_| has_true_north);
    [
        (Mark::Arrow, words.magnetic_north),
        (Mark::Star, of_true_north(words.true_north)),
        (Mark::Angle, of_true_north(words.variation)),
    ]
}

#[derive(Clone, Copy)]
enum Mark {
    Arrow,
    Star,
    Angle,
}

/// Room for a mark before its words, and after them, in sizes of the type.
const MARK_ROOM: f64 = 1.15;
const AFTER_WORDS: f64 = 0.9;

/// How wide the legend is.
pub(super) fn width(view: &PlanView, has_true_north: bool, text: f64) -> f64 {
    legend(view, has_true_north)
        .iter()
        .filter_map(|(_, words)| *words)
        .map(|words| text_width(words, text) + (MARK_ROOM + AFTER_WORDS) * text)
        .sum()
}

/// The foot of the picture: what the norths' marks mean, and the scale bar.
pub(super) fn foot(shapes: &mut Vec<Shape>, plan: &Plan, view: &PlanView) {
    let text = plan.small_text();
    let margin = plan.margin();
    let row = plan.size.height - margin - 0.4 * text;
    let y = if plan.two_rows { row - 1.5 * text } else { row };
    let mut x = margin;
    for (mark, words) in legend(view, plan.has_true_north) {
        let Some(words) = words else { continue };
        let at = Point::new(x + 0.45 * text, y);
        match mark {
            Mark::Arrow => shapes.push(Shape::flat(
                arrow(at - Vec2::new(0.0, 0.38 * text), 0.76 * text),
                Role::Ink.solid(),
            )),
            Mark::Star => {
                shapes.push(Shape::flat(star(at, 0.45 * text), Role::FaintInk.solid()));
            }
            Mark::Angle => {
                let mut angle = segment(
                    at + Vec2::new(0.34 * text, -0.3 * text),
                    at + Vec2::new(-0.34 * text, 0.34 * text),
                );
                angle.line_to(at + Vec2::new(0.4 * text, 0.34 * text));
                let pen = Pen::solid(Role::FaintInk, plan.line(1.6));
                shapes.push(Shape::line(angle, pen));
            }
        }
        x += MARK_ROOM * text;
        shapes.push(label(
            words.to_owned(),
            Point::new(x, y),
            Anchor::Start,
            text,
            500,
            Role::Ink.solid(),
        ));
        x += text_width(words, text) + AFTER_WORDS * text;
    }

    let Some(words) = view.words.scale else {
        return;
    };
    let right = plan.size.width - margin;
    let (left, y) = (right - plan.bar_length, plan.size.height - margin);
    let tick = plan.line(5.0);
    let mut path = BezPath::new();
    path.move_to((left, y - tick));
    path.line_to((left, y));
    path.line_to((right, y));
    path.line_to((right, y - tick));
    shapes.push(Shape::line(
        path,
        Pen::solid(Role::FaintInk, plan.line(1.8)),
    ));
    shapes.push(label(
        words.to_owned(),
        Point::new(right, y - 0.8 * text),
        Anchor::End,
        text,
        500,
        Role::FaintInk.solid(),
    ));
}

/// A star of five points.
fn star(centre: Point, radius: f64) -> BezPath {
    let points: Vec<Point> = (0..10_u32)
        .map(|i| {
            let reach = if i % 2 == 0 { 1.0 } else { 0.42 };
            centre + toward(f64::from(36 * i).to_radians()) * (reach * radius)
        })
        .collect();
    polygon(&points)
}
