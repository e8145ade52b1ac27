//! The rose from above: north up, the heading and the compass as two pointers.

use crate::figures::Figures;
use crate::layout::fits;
use crate::lettering::NUMERALS;
use crate::outline::{add_arc, add_segment, diamond, ellipse, hatch, polygon, segment};
use crate::round::Round;
use crate::shape::{Anchor, CAP_HEIGHT, Pen, Shape, Text};
use crate::theme::Role;
use compass::heading::{CompassHeading, MagneticHeading};
use kurbo::{Affine, BezPath, Point, Rect, Size};
use std::f64::consts::FRAC_PI_2;

/// What the rose shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoseView {
    /// Where the aircraft is heading.
    pub heading: MagneticHeading,
    /// What the card reads at the lubber line.
    pub reading: CompassHeading,
    /// Whether the heading's pointer is shown.
    pub show_heading: bool,
    /// Whether the compass's pointer is shown.
    pub show_compass: bool,
}

/// What the rose shows, in whole numbers: what its text equivalent is made from.
pub fn describe(view: &RoseView) -> Figures {
    Figures::of(
        view.show_heading.then_some(view.heading),
        view.show_compass.then_some(view.reading),
    )
}

/// How far out the compass's line reaches, as a share of the ring's radius.
const COMPASS_REACH: f64 = 0.6;

/// Draws the rose as large as the size allows; nothing under 8 or over 100,000
/// either way.
pub fn rose(view: &RoseView, size: Size) -> Vec<Shape> {
    if !fits(size) {
        return Vec::new();
    }
    let rose = Round {
        middle: Point::new(size.width / 2.0, size.height / 2.0),
        radius: 0.385 * size.width.min(size.height),
    };
    let mut shapes = Vec::with_capacity(40);
    ring(&mut shapes, &rose);
    let (heading, reading) = (view.heading.radians(), view.reading.radians());
    if view.show_heading && view.show_compass {
        sector(
            &mut shapes,
            &rose,
            heading,
            view.reading.error_from(view.heading),
        );
    }
    if view.show_compass {
        // Under the heading's line, so that both lines are seen where they agree.
        let path = segment(rose.middle, rose.at(reading, COMPASS_REACH));
        let pen = Pen::solid(Role::Halo, rose.line(11.0));
        shapes.push(Shape::line(path, pen));
    }
    if view.show_heading {
        heading_pointer(&mut shapes, &rose, heading);
    }
    if view.show_compass {
        compass_pointer(&mut shapes, &rose, reading);
    }
    let hub = ellipse(rose.along(0.0) * Affine::scale(0.035));
    shapes.push(Shape::flat(hub, Role::Ink.solid()));
    shapes
}

/// The ring with its marks and labels.
fn ring(shapes: &mut Vec<Shape>, rose: &Round) {
    let face = ellipse(rose.along(0.0));
    shapes.push(Shape::flat(face.clone(), Role::Card.solid()));
    shapes.push(Shape::line(face, Pen::solid(Role::Rule, rose.line(2.0))));
    let (mut long, mut short) = (BezPath::new(), BezPath::new());
    for step in 0..36_u32 {
        let direction = f64::from(10 * step).to_radians();
        let (path, inner) = if step % 3 == 0 {
            (&mut long, 0.91)
        } else {
            (&mut short, 0.95)
        };
        add_segment(path, rose.at(direction, inner), rose.at(direction, 1.0));
    }
    shapes.push(Shape::line(
        short,
        Pen::solid(Role::FaintInk, rose.line(1.4)),
    ));
    shapes.push(Shape::line(long, Pen::solid(Role::Ink, rose.line(2.6))));
    for (label, step) in NUMERALS.into_iter().zip(0_u32..) {
        let cardinal = step % 3 == 0;
        let size = if cardinal { 0.25 } else { 0.19 } * rose.radius;
        let at = rose.at(f64::from(30 * step).to_radians(), 1.16);
        shapes.push(Shape::Text(Text {
            content: label.into(),
            place: Affine::translate((at.x, at.y + CAP_HEIGHT * size / 2.0)),
            anchor: Anchor::Middle,
            size,
            weight: if cardinal { 700 } else { 500 },
            tone: if cardinal { Role::Ink } else { Role::FaintInk }.solid(),
        }));
    }
}

/// The error as a hatched sector from the heading to the reading, `error` radians to its right.
fn sector(shapes: &mut Vec<Shape>, rose: &Round, heading: f64, error: f64) {
    if error == 0.0 {
        return;
    }
    let reach = 0.58;
    let mut path = BezPath::new();
    path.move_to(rose.middle);
    let place = rose.along(heading) * Affine::scale(reach);
    add_arc(&mut path, place, -FRAC_PI_2, error - FRAC_PI_2);
    path.close_path();
    let extent = 2.0 * reach * rose.radius;
    let area = Rect::from_center_size(rose.middle, (extent, extent));
    let lean = if error < 0.0 { -1.0 } else { 1.0 };
    let lines = hatch(area, 0.07 * rose.radius, lean);
    shapes.push(Shape::flat(path.clone(), Role::Compass.at(0.14)));
    shapes.push(Shape::clipped(
        path.clone(),
        vec![Shape::line(
            lines,
            Pen::solid(Role::Compass, rose.line(1.8)),
        )],
    ));
    shapes.push(Shape::line(path, Pen::solid(Role::Compass, rose.line(1.8))));
}

/// Solid line, open triangle.
fn heading_pointer(shapes: &mut Vec<Shape>, rose: &Round, heading: f64) {
    let base = 0.74;
    shapes.push(Shape::line(
        segment(rose.middle, rose.at(heading, base)),
        Pen::solid(Role::Heading, rose.line(8.0)),
    ));
    let mut head = polygon(&[
        Point::new(0.0, -0.9),
        Point::new(0.1, -base),
        Point::new(-0.1, -base),
    ]);
    head.apply_affine(rose.along(heading));
    shapes.push(Shape::flat(head.clone(), Role::Card.solid()));
    shapes.push(Shape::line(head, Pen::solid(Role::Heading, rose.line(4.5))));
}

/// Dashed line, filled diamond.
fn compass_pointer(shapes: &mut Vec<Shape>, rose: &Round, reading: f64) {
    let path = segment(rose.middle, rose.at(reading, COMPASS_REACH));
    let dash = rose.line(9.0);
    shapes.push(Shape::line(
        path,
        Pen::solid(Role::Compass, rose.line(5.0)).dashed(dash, dash),
    ));
    let mut mark = diamond(Point::new(0.0, -0.64), 0.08);
    mark.apply_affine(rose.along(reading));
    shapes.push(Shape::line(
        mark.clone(),
        Pen::solid(Role::Halo, rose.line(4.0)),
    ));
    shapes.push(Shape::flat(mark, Role::Compass.solid()));
}
