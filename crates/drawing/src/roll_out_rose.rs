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

mod legend;
mod scale;

use crate::layout::fits;
use crate::lettering::{NUMERALS, label};
use crate::outline::{add_segment, ellipse, polygon};
use crate::round::Round;
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use compass::heading::MagneticHeading;
use kurbo::{Affine, BezPath, Point, Size};
use legend::{legend, widest_words};
use scale::Scale;

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
        radius: 0.42 * room.width.min(room.height),
    };
    let scale = Scale::of(places);
    let mut shapes = Vec::with_capacity(64);
    ring(&mut shapes, &rose);
    scale.circles(&mut shapes, &rose);
    scale.figures(&mut shapes, &rose, places, type_size);
    for (place, strength) in places.iter().zip(STRENGTHS) {
        for style in [Style::Left, Style::Right] {
            let points: Vec<(u16, Point)> = (place.allowances.iter())
                .map(|it| (it.target, style.of(it)))
                .filter(|(_, allowance)| allowance.is_finite())
                .map(|(target, it)| {
                    let at = rose.at(target.radians(), scale.share(it));
                    (target.whole_degrees(), at)
                })
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
                let side = 0.9 * half;
                let corners = [(-side, -side), (side, -side), (side, side), (-side, side)];
                let square = polygon(&corners.map(|corner| at + corner));
                shapes.push(Shape::flat(square, Role::Ink.solid()));
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
            (&mut long, 1.045)
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
        let at = rose.at(f64::from(30 * step).to_radians(), 1.13);
        let ink = Role::Ink.solid();
        shapes.push(label(words, at, Anchor::Middle, size, weight, ink));
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
