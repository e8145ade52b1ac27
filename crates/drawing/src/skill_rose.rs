//! The rose of skill: how well turns about each heading are remembered, left and right.
//!
//! Each eighth of the circle is two petals: left turns on the left of its heading, right turns on
//! the right, hatched. A petal that reaches the outer ring is surely remembered; one that was
//! never practised is an empty outline. All of it is in ink.
//!
//! ```
//! use drawing::skill_rose::{SkillRoseView, Words, skill_rose};
//!
//! let mut view = SkillRoseView { words: Words { left: "left", right: "right" }, ..Default::default() };
//! view.octants[0] = [Some(0.9), Some(0.4)];
//! assert!(!skill_rose(&view, kurbo::Size::new(320.0, 340.0)).is_empty());
//! ```

use crate::layout::fits;
use crate::lettering::label;
use crate::outline::{ellipse, hatch, polygon};
use crate::round::Round;
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Size};

/// Words to place.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Words<'a> {
    /// Left turns.
    pub left: &'a str,
    /// Right turns.
    pub right: &'a str,
}

/// What the rose shows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SkillRoseView<'a> {
    /// By octant from north round, left turns and right turns: the chance of recall, 0 to 1; none
    /// where there was no practice.
    pub octants: [[Option<f64>; 2]; 8],
    /// Words to place.
    pub words: Words<'a>,
}

/// The points that the octants are named after.
const POINTS: [&str; 8] = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"];
/// Where petals begin, in radii; chosen: the middle stays open, so that low ones are told apart.
const CORE: f64 = 0.14;
/// The rings, as chances of recall; the outer one is where refreshing begins.
const RINGS: [(f64, &str); 2] = [(0.5, "50 %"), (0.9, "90 %")];

/// Draws the rose above its legend; nothing under 8 or over 100,000 either way.
pub fn skill_rose(view: &SkillRoseView, size: Size) -> Vec<Shape> {
    if !fits(size) {
        return Vec::new();
    }
    let letters = 0.042 * size.width.min(0.93 * size.height);
    let room = Size::new(size.width, size.height - 2.4 * letters);
    let rose = Round {
        middle: Point::new(room.width / 2.0, room.height / 2.0),
        radius: 0.41 * room.width.min(room.height),
    };
    let mut shapes = Vec::with_capacity(80);
    for (octant, sides) in view.octants.iter().enumerate() {
        for (side, recall) in sides.iter().enumerate() {
            petal(&mut shapes, &rose, [octant, side], *recall);
        }
    }
    rings(&mut shapes, &rose, letters);
    for (octant, point) in POINTS.into_iter().enumerate() {
        let at = rose.at(45_f64.to_radians() * octant as f64, 1.12);
        let weight = if octant % 2 == 0 { 700 } else { 400 };
        let ink = Role::Ink.solid();
        shapes.push(label(point, at, Anchor::Middle, 1.1 * letters, weight, ink));
    }
    legend(&mut shapes, view, &rose, size, letters);
    shapes
}

/// How far out a chance of recall lies, in radii.
fn share(recall: f64) -> f64 {
    CORE + (1.0 - CORE) * recall.clamp(0.0, 1.0)
}

fn rings(shapes: &mut Vec<Shape>, rose: &Round, letters: f64) {
    for (recall, words) in RINGS {
        let radius = share(recall) * rose.radius;
        let place = Affine::new([radius, 0.0, 0.0, radius, rose.middle.x, rose.middle.y]);
        let pen = Pen::solid(Role::Ink, rose.line(0.9)).dashed(rose.line(1.0), rose.line(4.0));
        shapes.push(Shape::line(ellipse(place), pen));
        let at = rose.at(22.5_f64.to_radians(), share(recall));
        let half = Size::new(1.35 * letters, 0.6 * letters);
        let ground = Rect::from_center_size(at, half * 2.0);
        shapes.push(Shape::flat(ground.to_path(0.1), Role::Paper.solid()));
        let ink = Role::Ink.solid();
        shapes.push(label(words, at, Anchor::Middle, 0.85 * letters, 400, ink));
    }
}

/// One petal: the outline of what there is to be had, and what is had.
fn petal(shapes: &mut Vec<Shape>, rose: &Round, [octant, side]: [usize; 2], recall: Option<f64>) {
    let middle = 45.0 * octant as f64;
    // A gap on each side parts it from its neighbours.
    let (from, to) = if side == 0 {
        (middle - 21.5, middle - 0.7)
    } else {
        (middle + 0.7, middle + 21.5)
    };
    let whole = sector(rose, from, to, 1.0);
    let Some(recall) = recall.filter(|it| it.is_finite()) else {
        let pen = Pen::solid(Role::Rule, rose.line(1.0));
        shapes.push(Shape::line(whole, pen));
        return;
    };
    shapes.push(Shape::line(
        whole,
        Pen::solid(Role::FaintInk, rose.line(1.0)),
    ));
    let had = sector(rose, from, to, share(recall));
    fill(shapes, rose, had, side == 1);
}

/// Fills with what stands for left turns, or for right turns.
fn fill(shapes: &mut Vec<Shape>, rose: &Round, path: BezPath, hatched: bool) {
    let line = rose.line(1.4);
    if hatched {
        let lines = hatch(path.bounding_box(), rose.line(5.0), 1.0);
        let pen = Pen::solid(Role::Ink, rose.line(1.1));
        let ground = Shape::flat(path.clone(), Role::Paper.solid());
        shapes.push(ground);
        shapes.push(Shape::clipped(path.clone(), vec![Shape::line(lines, pen)]));
    } else {
        shapes.push(Shape::flat(path.clone(), Role::FaintInk.at(0.55)));
    }
    shapes.push(Shape::line(path, Pen::solid(Role::Ink, line)));
}

/// A part of the ring between two directions in degrees, from the core to a share of the radius.
fn sector(rose: &Round, from: f64, to: f64, out: f64) -> BezPath {
    // Steps this small stray less than a thousandth of the radius from the arc.
    let steps = 8;
    let at = |step: i32, share: f64| {
        let direction = from + (to - from) * f64::from(step) / f64::from(steps);
        rose.at(direction.to_radians(), share)
    };
    let inner = (0..=steps).map(|step| at(step, CORE));
    let outer = (0..=steps).rev().map(|step| at(step, out));
    polygon(&inner.chain(outer).collect::<Vec<_>>())
}

fn legend(shapes: &mut Vec<Shape>, view: &SkillRoseView, rose: &Round, size: Size, letters: f64) {
    let y = size.height - 1.3 * letters;
    for (words, hatched, x) in [
        (view.words.left, false, 0.12 * size.width),
        (view.words.right, true, 0.55 * size.width),
    ] {
        let swatch = Rect::new(x, y - 0.6 * letters, x + 2.0 * letters, y + 0.6 * letters);
        fill(shapes, rose, swatch.to_path(0.1), hatched);
        let at = Point::new(x + 2.6 * letters, y);
        let ink = Role::Ink.solid();
        shapes.push(label(
            words.to_owned(),
            at,
            Anchor::Start,
            letters,
            400,
            ink,
        ));
    }
}
