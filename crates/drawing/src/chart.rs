//! What all charts share: axes, series, the places of labels, and text for export.
//!
//! A chart is drawn in the picture's own units. Values stay in their own until an [`Axis`] places
//! them, so that a chart can be asked the other way round too: which value stands at a point.
//!
//! - [`axis`]: from values to places and back; round steps for ticks, and their figures.
//! - [`series`]: gaps, turns of a heading past north, thinning, values between samples.
//! - [`placing`]: labels that keep out of each other's way.
//! - [`csv`]: the same series as text.

pub mod axis;
pub mod csv;
pub mod placing;
pub mod series;

use crate::outline::{diamond, polygon};
use crate::shape::{Pen, Shape, Tone};
use crate::theme::Role;
use axis::Axis;
use kurbo::{BezPath, Point, Rect, Size, Vec2};

/// How wide and how high a picture can be: smaller ones show nothing, larger ones are no pictures.
const LENGTHS: std::ops::RangeInclusive<f64> = 8.0..=1e5;

/// Whether something can be drawn in a size.
pub(crate) fn fits(size: Size) -> bool {
    let fits = |length: f64| LENGTHS.contains(&length);
    fits(size.width) && fits(size.height)
}

/// The size of a chart's figures and words: 13 in a picture as large as `natural`, larger in
/// larger ones, and in smaller ones not below 11 until they are tiny.
pub(crate) fn type_size(size: Size, natural: Size) -> f64 {
    let share = (size.width / natural.width).min(size.height / natural.height);
    let least = 11.0_f64.min(size.width.min(size.height) / 6.0);
    (13.0 * share).max(least)
}

/// Two axes on one rectangle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// The rectangle.
    pub area: Rect,
    /// Left to right.
    pub x: Axis,
    /// Bottom to top.
    pub y: Axis,
}

impl Frame {
    /// Values from `x[0]` at the left to `x[1]` at the right, and from `y[0]` at the bottom to
    /// `y[1]` at the top.
    pub fn new(area: Rect, x: [f64; 2], y: [f64; 2]) -> Self {
        Self {
            area,
            x: Axis::new(x, [area.x0, area.x1]),
            y: Axis::new(y, [area.y1, area.y0]),
        }
    }

    /// Where a pair of values stands.
    pub fn place(&self, values: Point) -> Point {
        Point::new(self.x.place(values.x), self.y.place(values.y))
    }

    /// The frame's rectangle with room for the width of a line that lies on its edge.
    pub(crate) fn clip(&self, width: f64) -> BezPath {
        use kurbo::Shape as _;
        self.area.inflate(width, width).to_path(0.1)
    }
}

/// How the two directions that the whole product is about look on a chart.
pub(crate) fn heading_pen(width: f64) -> Pen {
    Pen::solid(Role::Heading, width)
}

/// The compass's dashes. Round ends lengthen each dash by the width of the line.
pub(crate) fn compass_pen(width: f64) -> Pen {
    Pen::solid(Role::Compass, width).dashed(2.6 * width, 2.4 * width)
}

/// A mark that stands for what a line shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Mark {
    /// The heading's open triangle.
    Heading,
    /// The compass's filled diamond.
    Compass,
    /// An open ring.
    Ring,
    /// An open square.
    Square,
}

impl Mark {
    /// Draws it about a point, `half` its half width, on a quiet band.
    pub(crate) fn draw(self, shapes: &mut Vec<Shape>, at: Point, half: f64) {
        let line = 0.45 * half;
        let (path, role) = match self {
            Self::Heading => {
                let corners = [(0.0, -1.15), (1.05, 0.8), (-1.05, 0.8)];
                let corners = corners.map(|(x, y)| at + Vec2::new(x, y) * half);
                (polygon(&corners), Role::Heading)
            }
            Self::Compass => (diamond(at, half), Role::Compass),
            Self::Ring => {
                let radius = 0.85 * half;
                let place = kurbo::Affine::new([radius, 0.0, 0.0, radius, at.x, at.y]);
                (crate::outline::ellipse(place), Role::Ink)
            }
            Self::Square => {
                let corners = [(-0.8, -0.8), (0.8, -0.8), (0.8, 0.8), (-0.8, 0.8)];
                let corners = corners.map(|(x, y)| at + Vec2::new(x, y) * half);
                (polygon(&corners), Role::FaintInk)
            }
        };
        let halo = Pen::solid(Role::Paper, 2.4 * line);
        shapes.push(Shape::line(path.clone(), halo));
        if self == Self::Compass {
            shapes.push(Shape::flat(path, role.solid()));
        } else {
            shapes.push(Shape::flat(path.clone(), Role::Paper.solid()));
            shapes.push(Shape::line(path, Pen::solid(role, line)));
        }
    }
}

/// How far a line may stray from what it shows, in the picture's units; not to be seen.
const STRAY: f64 = 0.1;

/// A line of values in the picture's units, with no more points than can be seen.
pub(crate) fn drawn(points: &[Point]) -> Vec<Point> {
    series::straightened(&series::thin(points), STRAY)
}

/// A line through points, several unbroken runs of it; a run of one point is a dot.
pub(crate) fn polylines(runs: &[Vec<Point>]) -> BezPath {
    // A run of one point has one more.
    let mut path = BezPath::with_capacity(runs.iter().map(|run| run.len() + 1).sum());
    for run in runs {
        if let Some((&first, rest)) = run.split_first() {
            path.move_to(first);
            if rest.is_empty() {
                path.line_to(first);
            }
            for &point in rest {
                path.line_to(point);
            }
        }
    }
    path
}

/// What marks the two ways to err: hatches that differ in direction and spacing, so that they
/// are told apart without colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Hatch {
    /// Sparse strokes that lean back.
    Lag,
    /// Close strokes that stand upright.
    Lead,
}

impl Hatch {
    /// Fills a path with the hatch, as seen over `rect`.
    pub(crate) fn draw(self, shapes: &mut Vec<Shape>, path: BezPath, rect: Rect, unit: f64) {
        if path.elements().is_empty() {
            return;
        }
        let lines = match self {
            Self::Lag => crate::outline::hatch(rect, 9.0 * unit, -1.0),
            Self::Lead => uprights(rect, 3.6 * unit),
        };
        let pen = Pen::solid(Role::Compass, 1.1 * unit).faded(0.75);
        shapes.push(Shape::flat(path.clone(), Role::Compass.at(0.12)));
        shapes.push(Shape::clipped(path, vec![Shape::line(lines, pen)]));
    }
}

/// Upright lines over a rectangle, `step` apart; at most a few hundred.
pub(crate) fn uprights(rect: Rect, step: f64) -> BezPath {
    let mut path = BezPath::new();
    let step = step.max(rect.width() / 600.0);
    if step > 0.0 && step.is_finite() {
        let count = (rect.width() / step) as u32;
        for index in 0..=count {
            let x = rect.x0 + (f64::from(index) + 0.5) * step;
            crate::outline::add_segment(&mut path, Point::new(x, rect.y0), Point::new(x, rect.y1));
        }
    }
    path
}

/// Secondary words.
pub(crate) const FAINT: Tone = Role::FaintInk.solid();
