//! The heading indicator: a flat dial whose card turns under a fixed index.
//!
//! All of it is in neutral ink, as it is neither the heading nor the compass. Where they are
//! shown, both stand at the rim with their own marks, and a hatched band from the index to the
//! heading is the indicator's error.

use crate::layout::fits;
use crate::lettering::{NUMERALS, label};
use crate::outline::{add_arc, add_segment, diamond, ellipse, hatch, polygon, segment};
use crate::round::Round;
use crate::shape::{Anchor, CAP_HEIGHT, Pen, Shape, Text};
use crate::theme::Role;
use compass::angle::half_turn;
use compass::heading::{CompassHeading, MagneticHeading};
use compass::heading_indicator::GyroHeading;
use kurbo::{Affine, BezPath, Point, Rect, Size};
use std::f64::consts::FRAC_PI_2;

/// What the dial shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DialView {
    /// What stands under the index.
    pub indication: GyroHeading,
    /// Where the aircraft is heading, where that is shown.
    pub heading: Option<MagneticHeading>,
    /// What the compass says, where that is shown.
    pub compass: Option<CompassHeading>,
}

/// What the dial shows, in whole degrees: what its text equivalent is made from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DialFigures {
    /// The indication, 1 to 360.
    pub indication: u16,
    /// Indication less heading, −179 to 180, where the heading is shown: the difference of the
    /// two whole numbers.
    pub error: Option<i16>,
}

/// What the dial shows, in whole degrees.
pub fn describe(view: &DialView) -> DialFigures {
    let indication = view.indication.whole_degrees();
    let error = view.heading.map(|heading| {
        // Both lie in 1 to 360, so this lies in −359 to 359.
        let difference = i32::from(indication) - i32::from(heading.whole_degrees());
        let folded = (difference + 179).rem_euclid(360) - 179;
        folded as i16
    });
    DialFigures { indication, error }
}

/// Errors below this, in radians, have no band: half a degree.
const SLIGHT: f64 = 0.5 * std::f64::consts::PI / 180.0;

/// Draws the dial as large as the size allows; nothing under 8 or over 100,000 either way.
pub fn heading_dial(view: &DialView, size: Size) -> Vec<Shape> {
    if !fits(size) {
        return Vec::new();
    }
    let dial = Round {
        middle: Point::new(size.width / 2.0, size.height / 2.0),
        radius: 0.4 * size.width.min(size.height),
    };
    let mut shapes = Vec::with_capacity(40);
    let indication = view.indication.radians();
    card(&mut shapes, &dial, indication);
    if let Some(heading) = view.heading {
        let direction = half_turn(heading.radians() - indication);
        band(&mut shapes, &dial, direction);
        heading_mark(&mut shapes, &dial, direction);
    }
    if let Some(compass) = view.compass {
        compass_mark(&mut shapes, &dial, compass.radians() - indication);
    }
    index(&mut shapes, &dial);
    let figures = format!("{:03}°", view.indication.whole_degrees());
    // The degree sign hangs to the right of the three digits.
    let type_size = 0.36 * dial.radius;
    let at = dial.middle + (0.12 * type_size, 0.0);
    let ink = Role::Ink.solid();
    shapes.push(label(figures, at, Anchor::Middle, type_size, 700, ink));
    shapes
}

/// The card, turned so that `indication` is up; its numerals are read from the rim inward.
fn card(shapes: &mut Vec<Shape>, dial: &Round, indication: f64) {
    let face = ellipse(dial.along(0.0));
    shapes.push(Shape::flat(face.clone(), Role::Card.solid()));
    let (mut long, mut short) = (BezPath::new(), BezPath::new());
    for step in 0..72_u32 {
        let direction = f64::from(5 * step).to_radians() - indication;
        let (path, inner) = match step {
            _ if step % 6 == 0 => (&mut long, 0.86),
            _ if step % 2 == 0 => (&mut short, 0.9),
            _ => (&mut short, 0.95),
        };
        add_segment(path, dial.at(direction, inner), dial.at(direction, 1.0));
    }
    let faint = Pen::solid(Role::FaintInk, dial.line(1.6));
    shapes.push(Shape::line(short, faint));
    shapes.push(Shape::line(long, Pen::solid(Role::Ink, dial.line(3.0))));
    shapes.push(Shape::line(face, Pen::solid(Role::Ink, dial.line(2.4))));
    for (numeral, step) in NUMERALS.into_iter().zip(0_u32..) {
        let cardinal = step % 3 == 0;
        let size = if cardinal { 0.22 } else { 0.17 };
        let direction = f64::from(30 * step).to_radians() - indication;
        let place = dial.along(direction)
            * Affine::translate((0.0, -0.7 + CAP_HEIGHT * size / 2.0))
            // The text is set in the picture's units, the plane is in radii.
            * Affine::scale(1.0 / dial.radius);
        shapes.push(Shape::Text(Text {
            content: numeral.into(),
            place,
            anchor: Anchor::Middle,
            size: size * dial.radius,
            weight: if cardinal { 700 } else { 500 },
            tone: if cardinal { Role::Ink } else { Role::FaintInk }.solid(),
        }));
    }
}

/// The fixed index: a line across the marks under a wedge.
fn index(shapes: &mut Vec<Shape>, dial: &Round) {
    let line = segment(dial.at(0.0, 0.8), dial.at(0.0, 1.06));
    shapes.push(Shape::line(
        line.clone(),
        Pen::solid(Role::Halo, dial.line(8.0)),
    ));
    shapes.push(Shape::line(line, Pen::solid(Role::Ink, dial.line(4.0))));
    let mut wedge = polygon(&[
        Point::new(0.0, -1.02),
        Point::new(0.075, -1.17),
        Point::new(-0.075, -1.17),
    ]);
    wedge.apply_affine(dial.along(0.0));
    shapes.push(Shape::flat(wedge, Role::Ink.solid()));
}

/// The error as a hatched band outside the card, from the index to the heading.
fn band(shapes: &mut Vec<Shape>, dial: &Round, to: f64) {
    if to.abs() < SLIGHT {
        return;
    }
    let mut path = BezPath::new();
    for (share, from, to) in [(1.14, 0.0, to), (1.04, to, 0.0)] {
        let place = dial.along(0.0) * Affine::scale(share);
        add_arc(&mut path, place, from - FRAC_PI_2, to - FRAC_PI_2);
    }
    path.close_path();
    let extent = 2.4 * dial.radius;
    let area = Rect::from_center_size(dial.middle, (extent, extent));
    // Leaning as the errors on the other pictures do: the indication's side of the heading.
    let lean = if to > 0.0 { -1.0 } else { 1.0 };
    let pen = Pen::solid(Role::FaintInk, dial.line(1.6));
    let lines = hatch(area, 0.07 * dial.radius, lean);
    shapes.push(Shape::clipped(path.clone(), vec![Shape::line(lines, pen)]));
    shapes.push(Shape::line(path, pen));
}

/// The open triangle at the rim.
fn heading_mark(shapes: &mut Vec<Shape>, dial: &Round, direction: f64) {
    let mut head = polygon(&[
        Point::new(0.0, -1.2),
        Point::new(0.085, -1.04),
        Point::new(-0.085, -1.04),
    ]);
    head.apply_affine(dial.along(direction));
    shapes.push(Shape::flat(head.clone(), Role::Paper.solid()));
    shapes.push(Shape::line(head, Pen::solid(Role::Heading, dial.line(4.0))));
}

/// The filled diamond at the rim.
fn compass_mark(shapes: &mut Vec<Shape>, dial: &Round, direction: f64) {
    let mut mark = diamond(Point::new(0.0, -1.1), 0.065);
    mark.apply_affine(dial.along(direction));
    shapes.push(Shape::line(
        mark.clone(),
        Pen::solid(Role::Halo, dial.line(4.0)),
    ));
    shapes.push(Shape::flat(mark, Role::Compass.solid()));
}
