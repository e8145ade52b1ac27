//! Deviation by compass heading, as a swing found it, between the lines of what is allowed.

use crate::chart::axis::{Steps, degrees, heading, round_span};
use crate::chart::{Frame, fits, type_size};
use crate::lettering::label;
use crate::outline::{add_segment, polygon, rounded, segment};
use crate::shape::{Anchor, Pen, Shape};
use crate::sheet::width;
use crate::theme::Role;
use compass::heading::CompassHeading;
use kurbo::{BezPath, Point, Rect, Size};

/// What the curve shows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct DeviationCurveView<'a> {
    /// Deviation (rad, east positive) by compass heading; what is not finite is left out.
    pub found: &'a [(CompassHeading, f64)],
    /// The greatest deviation allowed, rad; not drawn where it is not finite.
    pub limit: f64,
    /// What stands at the limit.
    pub limit_words: &'a str,
    /// What stands at the upper end: deviation to the east.
    pub east: &'a str,
    /// What stands at the lower end.
    pub west: &'a str,
}

/// The picture for which figures and words are 13 high.
const NATURAL: Size = Size::new(760.0, 300.0);

/// The least span without a limit, degrees; chosen: a compass is read to a tenth at the best.
const LEAST: f64 = 0.2;

/// Draws the curve, in ink; nothing under 8 or over 100,000 either way.
pub fn deviation_curve(view: &DeviationCurveView, size: Size) -> Vec<Shape> {
    if !fits(size) {
        return Vec::new();
    }
    let letters = type_size(size, NATURAL);
    let area = Rect::new(
        3.4 * letters,
        1.2 * letters,
        size.width - 1.5 * letters,
        size.height - 1.8 * letters,
    );
    let found: Vec<(f64, f64)> = (view.found.iter())
        .map(|(compass, deviation)| (compass.degrees(), deviation.to_degrees()))
        .filter(|(_, deviation)| deviation.is_finite())
        .collect();
    let limit = Some(view.limit.to_degrees()).filter(|limit| limit.is_finite());
    let limits = limit.map(|limit| [(limit, view.limit_words), (-limit, "")]);
    let limits = limits.into_iter().flatten();
    let values = found.iter().map(|(_, deviation)| *deviation);
    let limited = values.clone().chain(limits.clone().map(|(limit, _)| limit));
    let span = match limit {
        Some(_) => round_span(limited, 1.0, Steps::Degrees),
        // What is small either way stands about the middle.
        None => round_span(values.flat_map(|it| [it, -it]), LEAST, Steps::Degrees),
    };
    let frame = Frame::new(area, [0.0, 360.0], span);
    let line = letters / 13.0;

    let mut shapes = Vec::new();
    scales(&mut shapes, &frame, span, letters);
    for (side, words) in limits {
        let ends = [0.0, 360.0].map(|x| frame.place(Point::new(x, side)));
        let dashes = Pen::solid(Role::Ink, 1.6 * line).dashed(7.0 * line, 5.0 * line);
        shapes.push(Shape::line(segment(ends[0], ends[1]), dashes));
        let at = ends[1] + (-0.3 * letters, -0.75 * letters);
        words_on_paper(&mut shapes, words, at, Anchor::End, 0.9 * letters);
    }
    for (words, y, down) in [(view.east, span[1], 0.85), (view.west, span[0], -0.85)] {
        let at = frame.place(Point::new(0.0, y)) + (0.5 * letters, down * letters);
        words_on_paper(&mut shapes, words, at, Anchor::Start, 0.9 * letters);
    }
    curve(&mut shapes, &frame, found, line);
    shapes
}

/// Words at the height of their middle, on a ground that parts them from hairlines.
fn words_on_paper(shapes: &mut Vec<Shape>, words: &str, at: Point, anchor: Anchor, size: f64) {
    if words.is_empty() {
        return;
    }
    let wide = width(words, size, 400) + 0.3 * size;
    let left = match anchor {
        Anchor::Start => at.x,
        Anchor::Middle => at.x - wide / 2.0,
        Anchor::End => at.x - wide,
    };
    let ground = Rect::new(left, at.y - 0.6 * size, left + wide, at.y + 0.6 * size);
    shapes.push(Shape::flat(
        rounded(ground, 0.1 * size),
        Role::Paper.solid(),
    ));
    let ink = Role::Ink.solid();
    shapes.push(label(words.to_owned(), at, anchor, size, 400, ink));
}

/// Hairlines with their figures, and the line of no deviation.
fn scales(shapes: &mut Vec<Shape>, frame: &Frame, span: [f64; 2], letters: f64) {
    let line = letters / 13.0;
    let ink = Role::Ink.solid();
    let mut hairs = BezPath::new();
    for value in (0..=12).map(|step| 30.0 * f64::from(step)) {
        let [low, high] = span.map(|y| frame.place(Point::new(value, y)));
        add_segment(&mut hairs, low, high);
        let at = low + (0.0, 0.95 * letters);
        let words = heading(value);
        shapes.push(label(words, at, Anchor::Middle, 0.9 * letters, 400, ink));
    }
    let room = frame.area.height() / (1.8 * letters);
    let step = Steps::Degrees.step(span[1] - span[0], room);
    for value in Steps::Degrees.ticks(span, room) {
        let [left, right] = [0.0, 360.0].map(|x| frame.place(Point::new(x, value)));
        add_segment(&mut hairs, left, right);
        let at = left - (0.4 * letters, 0.0);
        let words = degrees(value, step);
        shapes.push(label(words, at, Anchor::End, 0.9 * letters, 400, ink));
    }
    shapes.push(Shape::line(hairs, Pen::solid(Role::Rule, 0.7 * line)));
    let ends = [0.0, 360.0].map(|x| frame.place(Point::new(x, 0.0)));
    let zero = Pen::solid(Role::Ink, 1.4 * line);
    shapes.push(Shape::line(segment(ends[0], ends[1]), zero));
}

/// A line from point to point, carried on to both edges, with a mark on each.
fn curve(shapes: &mut Vec<Shape>, frame: &Frame, mut found: Vec<(f64, f64)>, line: f64) {
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (Some(&first), Some(&last)) = (found.first(), found.last()) else {
        return;
    };
    let round = [(last.0 - 360.0, last.1)];
    let again = [(first.0 + 360.0, first.1)];
    let mut path = BezPath::new();
    for (x, y) in (round.iter()).chain(&found).chain(&again) {
        let at = frame.place(Point::new(*x, *y));
        if path.elements().is_empty() {
            path.move_to(at);
        } else {
            path.line_to(at);
        }
    }
    let pen = Pen::solid(Role::Ink, 2.0 * line);
    shapes.push(Shape::clipped(
        frame.clip(line),
        vec![Shape::line(path, pen)],
    ));
    for (x, y) in found {
        let at = frame.place(Point::new(x, y));
        let half = 3.4 * line;
        let corners = [(-half, -half), (half, -half), (half, half), (-half, half)];
        shapes.push(Shape::flat(
            polygon(&corners.map(|corner| at + corner)),
            Role::Ink.solid(),
        ));
    }
}
