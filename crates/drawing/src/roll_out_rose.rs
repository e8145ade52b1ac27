//! The roll-out rose: by how much to undershoot or overshoot, by target, all round the compass.
//!
//! A circle stands for rolling out as if the compass did not err. What lies inside it is
//! undershoot, what lies outside is overshoot, on a scale in degrees. Right turns are a solid line
//! with open circles, left turns a dashed line with filled squares; a second place is drawn
//! thinner. All of it is in ink, so that a copier loses nothing.
//!
//! ```
//! use compass::heading::MagneticHeading;
//! use drawing::roll_out_rose::{Allowance, PlaceView, RollOutRoseView, Words, roll_out_rose};
//!
//! let allowances: Vec<Allowance> = (0..36)
//!     .map(|step| {
//!         let target = MagneticHeading::from_degrees(10.0 * f64::from(step));
//!         let allowance = -0.4 * compass::maths::cos(target.radians());
//!         Allowance { target, left: allowance, right: allowance }
//!     })
//!     .collect();
//! let view = RollOutRoseView {
//!     places: &[PlaceView { name: "30° N", allowances: &allowances }],
//!     words: Words { left: "left turn", right: "right turn", ..Words::default() },
//! };
//! assert!(!roll_out_rose(&view, kurbo::Size::new(500.0, 320.0)).is_empty());
//! ```

use crate::layout::fits;
use crate::lettering::{NUMERALS, label, text_width};
use crate::outline::{add_segment, ellipse, polygon, segment};
use crate::round::Round;
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use compass::heading::MagneticHeading;
use kurbo::{Affine, BezPath, Point, Rect, Size};
use std::f64::consts::FRAC_PI_2;

/// How far past the target, in the turn's direction, the compass should read when the roll-out
/// begins, beyond the usual lead for rolling out; rad, negative for short of it (undershoot). One
/// that is not finite is left out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowance {
    /// The heading to come out on.
    pub target: MagneticHeading,
    /// In a left turn.
    pub left: f64,
    /// In a right turn.
    pub right: f64,
}

/// One place.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PlaceView<'a> {
    /// What it is called.
    pub name: &'a str,
    /// Its allowances, from north round.
    pub allowances: &'a [Allowance],
}

/// Words to place.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Words<'a> {
    /// Left turns.
    pub left: &'a str,
    /// Right turns.
    pub right: &'a str,
    /// What lies inside the circle.
    pub inside: &'a str,
    /// What lies on the circle.
    pub on: &'a str,
    /// What lies outside it.
    pub outside: &'a str,
}

/// What the rose shows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct RollOutRoseView<'a> {
    /// One place or two; more are not drawn.
    pub places: &'a [PlaceView<'a>],
    /// Words to place.
    pub words: Words<'a>,
}

/// The extremes of one place in whole degrees: what the text equivalent is made from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Extremes {
    /// The greatest undershoot, 0 or less, and the target where it is needed, 1 to 360.
    pub undershoot: (i16, u16),
    /// The greatest overshoot, 0 or more, and the target where it is needed, 1 to 360.
    pub overshoot: (i16, u16),
}

/// The extremes of a place; none without allowances.
pub fn describe(place: &PlaceView) -> Option<Extremes> {
    let mut both: Vec<(f64, u16)> = (place.allowances.iter())
        .flat_map(|it| [it.left, it.right].map(|allowance| (allowance, it.target.whole_degrees())))
        .filter(|(allowance, _)| allowance.is_finite())
        .collect();
    both.sort_by(|a, b| a.0.total_cmp(&b.0));
    let whole = |(allowance, target): (f64, u16)| (allowance.to_degrees().round() as i16, target);
    let (least, most) = (whole(*both.first()?), whole(*both.last()?));
    Some(Extremes {
        undershoot: (least.0.min(0), least.1),
        overshoot: (most.0.max(0), most.1),
    })
}

/// The circle of no allowance, as a share of the ring's radius; chosen, so that as much room is
/// left inside for undershoot as outside for overshoot.
const ZERO: f64 = 0.57;
/// How far the greatest value of the scale lies from that circle, as a share of the radius.
const REACH: f64 = 0.4;
/// The scales: the greatest value and the step of its circles, degrees; chosen for round steps.
const SCALES: [(f64, f64); 6] = [
    (10.0, 5.0),
    (20.0, 10.0),
    (40.0, 20.0),
    (60.0, 30.0),
    (90.0, 30.0),
    (180.0, 90.0),
];

/// Draws the rose with its legend, below it in a tall picture and beside it in a wide one; nothing
/// under 8 or over 100,000 either way.
pub fn roll_out_rose(view: &RollOutRoseView, size: Size) -> Vec<Shape> {
    if !fits(size) {
        return Vec::new();
    }
    let places = &view.places[..view.places.len().min(2)];
    let wide = size.width > 1.25 * size.height;
    let rows = 3.4 + 2.0 * places.len() as f64;
    let (room, type_size) = if wide {
        let across = size.height.min(0.62 * size.width);
        (Size::new(across, size.height), 0.034 * across)
    } else {
        let type_size = 0.034 * size.width.min(0.75 * size.height);
        let below = size.height - 1.6 * type_size * rows;
        (Size::new(size.width, below), type_size)
    };
    let rose = Round {
        middle: Point::new(room.width / 2.0, room.height / 2.0),
        radius: 0.43 * room.width.min(room.height),
    };
    let greatest = (places.iter().flat_map(|place| place.allowances))
        .flat_map(|it| [it.left, it.right])
        .filter(|it| it.is_finite())
        .fold(0.0, |most: f64, it| most.max(it.abs()))
        .to_degrees();
    let scale = SCALES.into_iter().find(|scale| greatest <= scale.0);
    let (most, step) = scale.unwrap_or(SCALES[SCALES.len() - 1]);
    let share = |allowance: f64| ZERO + REACH * allowance.to_degrees() / most;

    let mut shapes = Vec::with_capacity(64);
    ring(&mut shapes, &rose);
    circles(&mut shapes, &rose, most, step, type_size);
    for (place, strength) in places.iter().zip(STRENGTHS) {
        for style in [Style::Left, Style::Right] {
            let points: Vec<(u16, Point)> = (place.allowances.iter())
                .map(|it| (it.target, style.of(it)))
                .filter(|(_, allowance)| allowance.is_finite())
                .map(|(target, it)| (target.whole_degrees(), rose.at(target.radians(), share(it))))
                .collect();
            curve(&mut shapes, &rose, &points, style, strength);
        }
    }
    let corner = if wide {
        Point::new(
            room.width + type_size,
            (size.height - 1.6 * type_size * rows) / 2.0,
        )
    } else {
        let widest = widest_words(view, places) * type_size;
        Point::new(((size.width - widest) / 2.0).max(0.0), room.height)
    };
    legend(&mut shapes, view, places, &rose, corner, type_size);
    shapes
}

/// How strongly the first place and the second are drawn.
const STRENGTHS: [f64; 2] = [2.6, 1.2];

/// A turn's line.
#[derive(Clone, Copy, PartialEq)]
enum Style {
    Left,
    Right,
}

impl Style {
    fn of(self, it: &Allowance) -> f64 {
        match self {
            Self::Left => it.left,
            Self::Right => it.right,
        }
    }

    fn pen(self, width: f64) -> Pen {
        let pen = Pen::solid(Role::Ink, width);
        match self {
            Self::Left => pen.dashed(2.2 * width, 2.6 * width),
            Self::Right => pen,
        }
    }

    fn mark(self, shapes: &mut Vec<Shape>, at: Point, half: f64, width: f64) {
        match self {
            Self::Left => {
                let square = Rect::from_center_size(at, (1.8 * half, 1.8 * half));
                let corners = [
                    Point::new(square.x0, square.y0),
                    Point::new(square.x1, square.y0),
                    Point::new(square.x1, square.y1),
                    Point::new(square.x0, square.y1),
                ];
                shapes.push(Shape::flat(polygon(&corners), Role::Ink.solid()));
            }
            Self::Right => {
                let place = Affine::new([half, 0.0, 0.0, half, at.x, at.y]);
                shapes.push(Shape::flat(ellipse(place), Role::Paper.solid()));
                shapes.push(Shape::line(ellipse(place), Pen::solid(Role::Ink, width)));
            }
        }
    }
}

/// The compass round it: marks every 10° and numerals.
fn ring(shapes: &mut Vec<Shape>, rose: &Round) {
    let (mut long, mut short) = (BezPath::new(), BezPath::new());
    for step in 0..36_u32 {
        let direction = f64::from(10 * step).to_radians();
        let (path, outer) = if step % 3 == 0 {
            (&mut long, 1.05)
        } else {
            (&mut short, 1.03)
        };
        add_segment(path, rose.at(direction, 1.0), rose.at(direction, outer));
    }
    let ring = ellipse(rose.along(0.0));
    shapes.push(Shape::line(ring, Pen::solid(Role::Ink, rose.line(1.2))));
    shapes.push(Shape::line(short, Pen::solid(Role::Ink, rose.line(1.2))));
    shapes.push(Shape::line(long, Pen::solid(Role::Ink, rose.line(2.2))));
    for (words, step) in NUMERALS.into_iter().zip(0_u32..) {
        let cardinal = step % 3 == 0;
        let size = if cardinal { 0.11 } else { 0.085 } * rose.radius;
        let weight = if cardinal { 700 } else { 400 };
        let at = rose.at(f64::from(30 * step).to_radians(), 1.115);
        let ink = Role::Ink.solid();
        shapes.push(label(words, at, Anchor::Middle, size, weight, ink));
    }
}

/// The circles of the scale, hairlines, and the one of no allowance, dotted and strong; their
/// figures stand on east, where the lines pass through the dotted one.
fn circles(shapes: &mut Vec<Shape>, rose: &Round, most: f64, step: f64, type_size: f64) {
    let circle = |share: f64| ellipse(rose.along(0.0) * Affine::scale(share));
    let steps = (most / step).round() as i32;
    for index in (-steps..=steps).filter(|index| *index != 0) {
        let share = ZERO + REACH * f64::from(index) / f64::from(steps);
        let hair = Pen::solid(Role::Rule, rose.line(0.8));
        shapes.push(Shape::line(circle(share), hair));
    }
    let width = rose.line(2.4);
    let dots = Pen::solid(Role::Ink, width).dashed(0.01, 2.4 * width);
    shapes.push(Shape::line(circle(ZERO), dots));
    for index in -steps..=steps {
        let share = ZERO + REACH * f64::from(index) / f64::from(steps);
        let value = f64::from(index) * step;
        let words = match index {
            0 => "0".to_owned(),
            _ if value < 0.0 => format!("−{}", -value),
            _ => format!("+{value}"),
        };
        let at = rose.at(FRAC_PI_2, share);
        let half = Size::new(
            text_width(&words, type_size) / 2.0 + 0.15 * type_size,
            0.5 * type_size,
        );
        let plate = Rect::from_center_size(at, half * 2.0);
        let corners = [
            Point::new(plate.x0, plate.y0),
            Point::new(plate.x1, plate.y0),
            Point::new(plate.x1, plate.y1),
            Point::new(plate.x0, plate.y1),
        ];
        shapes.push(Shape::flat(polygon(&corners), Role::Paper.solid()));
        let ink = Role::FaintInk.solid();
        shapes.push(label(words, at, Anchor::Middle, type_size, 400, ink));
    }
}

/// A closed line through the points, rounded, with a mark every 30°.
fn curve(
    shapes: &mut Vec<Shape>,
    rose: &Round,
    points: &[(u16, Point)],
    style: Style,
    strength: f64,
) {
    let count = points.len();
    if count < 3 {
        return;
    }
    let at = |index: usize| points[index % count].1;
    let mut path = BezPath::new();
    path.move_to(at(0));
    for index in 0..count {
        // Each stretch leaves and enters its ends along the line between their neighbours
        // (Catmull and Rom's curve).
        let [before, from, to, after] = [count - 1, 0, 1, 2].map(|step| at(index + step));
        path.curve_to(from + (to - before) / 6.0, to - (after - from) / 6.0, to);
    }
    path.close_path();
    let width = rose.line(strength);
    shapes.push(Shape::line(path, style.pen(width)));
    for (_, at) in points.iter().filter(|(target, _)| target % 30 == 0) {
        let half = rose.line(2.2 + 0.8 * strength);
        style.mark(shapes, *at, half, rose.line(0.6 + 0.5 * strength));
    }
}

/// The width of the legend for letters of size 1.
fn widest_words(view: &RollOutRoseView, places: &[PlaceView]) -> f64 {
    let Words {
        left,
        right,
        inside,
        on,
        outside,
    } = view.words;
    let turns = (places.iter()).flat_map(|place| [left, right].map(|turn| entry(place.name, turn)));
    (turns.chain([inside, on, outside].map(str::to_owned)))
        .fold(0.0, |most: f64, words| most.max(text_width(&words, 1.0)))
        + SAMPLE
}

/// The length of a sample of a line and the gap after it, in letters' sizes.
const SAMPLE: f64 = 4.2;

fn entry(name: &str, turn: &str) -> String {
    match name {
        "" => turn.to_owned(),
        name => format!("{name}, {turn}"),
    }
}

/// What each line is, and what inside and outside mean.
fn legend(
    shapes: &mut Vec<Shape>,
    view: &RollOutRoseView,
    places: &[PlaceView],
    rose: &Round,
    corner: Point,
    type_size: f64,
) {
    let mut y = corner.y + 0.8 * type_size;
    let ink = Role::Ink.solid();
    let length = (SAMPLE - 1.0) * type_size;
    for (place, strength) in places.iter().zip(STRENGTHS) {
        for (style, turn) in [
            (Style::Right, view.words.right),
            (Style::Left, view.words.left),
        ] {
            let from = Point::new(corner.x, y);
            let width = rose.line(strength);
            shapes.push(Shape::line(
                segment(from, from + (length, 0.0)),
                style.pen(width),
            ));
            let half = rose.line(2.2 + 0.8 * strength);
            let thin = rose.line(0.6 + 0.5 * strength);
            style.mark(shapes, from + (length / 2.0, 0.0), half, thin);
            let at = Point::new(corner.x + SAMPLE * type_size, y);
            let words = entry(place.name, turn);
            shapes.push(label(words, at, Anchor::Start, type_size, 400, ink));
            y += 1.6 * type_size;
        }
    }
    let Words {
        inside,
        on,
        outside,
        ..
    } = view.words;
    for (words, dotted) in [(outside, false), (on, true), (inside, false)] {
        if words.is_empty() {
            continue;
        }
        let from = Point::new(corner.x, y);
        if dotted {
            let width = rose.line(2.4);
            let dots = Pen::solid(Role::Ink, width).dashed(0.01, 2.4 * width);
            shapes.push(Shape::line(segment(from, from + (length, 0.0)), dots));
        } else {
            let sign = if words == inside { "−" } else { "+" };
            let middle = from + (length / 2.0, 0.0);
            shapes.push(label(sign, middle, Anchor::Middle, type_size, 700, ink));
        }
        let at = Point::new(corner.x + SAMPLE * type_size, y);
        shapes.push(label(
            words.to_owned(),
            at,
            Anchor::Start,
            type_size,
            400,
            ink,
        ));
        y += 1.6 * type_size;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_extremes_are_told_with_their_targets() {
        let allowances = [(0.0, -22.6, -31.4), (90.0, 1.0, -2.0), (180.0, 25.5, 19.0)].map(
            |(target, left, right)| Allowance {
                target: MagneticHeading::from_degrees(target),
                left: f64::to_radians(left),
                right: f64::to_radians(right),
            },
        );
        let place = PlaceView {
            name: "",
            allowances: &allowances,
        };
        let told = describe(&place).unwrap();
        assert_eq!(told.undershoot, (-31, 360));
        assert_eq!(told.overshoot, (26, 180));
        assert_eq!(describe(&PlaceView::default()), None);
    }
}
