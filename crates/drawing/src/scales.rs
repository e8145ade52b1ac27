//! The flat scales under the window: the gap scale and the heading ruler.

use crate::card_face::CardFaceView;
use crate::layout::{Layout, VISIBLE};
use crate::lettering::{NUMERALS, label, mark_half_width, plate, text_width};
use crate::outline::{add_polygon, add_segment, diamond, hatch, polygon, segment};
use crate::shape::{Anchor, CAP_HEIGHT, Pen, Shape};
use crate::theme::Role;
use compass::heading::MagneticHeading;
use compass::maths;
use kurbo::{BezPath, Point, Rect, Shape as _};

/// The scale between drum and ruler, and the error on it.
pub(crate) fn gap_scale(shapes: &mut Vec<Shape>, view: &CardFaceView, layout: &Layout) {
    let gap = layout.gap;
    let axis = gap.y0 + 0.56 * gap.height();

    // The scale: ticks hang from its axis, with their degrees below.
    let mut ticks = segment(
        Point::new(gap.x0 + 0.02 * gap.width(), axis),
        Point::new(gap.x1 - 0.02 * gap.width(), axis),
    );
    let type_size = 0.31 * gap.height();
    for step in 1..=12_u8 {
        let x = layout.offset((5.0 * f64::from(step)).to_radians());
        let tall = if step % 2 == 0 { 0.12 } else { 0.07 } * gap.height();
        for x in [layout.middle - x, layout.middle + x] {
            add_segment(&mut ticks, Point::new(x, axis), Point::new(x, axis + tall));
        }
    }
    let y = axis + 0.16 * gap.height() + CAP_HEIGHT * type_size / 2.0;
    for (figures, ten) in DEGREES.into_iter().zip(1_u8..) {
        let x = layout.offset((10.0 * f64::from(ten)).to_radians());
        for x in [layout.middle - x, layout.middle + x] {
            let tone = Role::FaintInk.solid();
            shapes.push(label(
                figures,
                Point::new(x, y),
                Anchor::Middle,
                type_size,
                500,
                tone,
            ));
        }
    }
    shapes.push(Shape::line(
        ticks,
        Pen::solid(Role::FaintInk, layout.line(1.6)),
    ));

    // The lubber line comes down to the heading's open triangle, whose tip is the scale's zero.
    let tip = Point::new(layout.middle, axis);
    shapes.push(Shape::line(
        segment(Point::new(layout.middle, gap.y0), tip),
        Pen::solid(Role::Lubber, layout.line(3.2)),
    ));
    if view.show_compass {
        error_bar(shapes, view, layout);
    }
    let half = 0.17 * gap.height();
    let triangle = polygon(&[
        tip,
        tip + (half, 0.34 * gap.height()),
        tip + (-half, 0.34 * gap.height()),
    ]);
    shapes.push(Shape::flat(triangle.clone(), Role::Paper.solid()));
    shapes.push(Shape::line(
        triangle,
        Pen::solid(Role::Heading, layout.line(4.5)),
    ));
}

/// The figures of the gap scale; at 60 there is no room.
const DEGREES: [&str; 5] = ["10", "20", "30", "40", "50"];

/// The error as a hatched bar from the lubber line, its end marked as the compass's.
fn error_bar(shapes: &mut Vec<Shape>, view: &CardFaceView, layout: &Layout) {
    let gap = layout.gap;
    let error = view.reading.error_from(view.heading);
    let sign = if error < 0.0 { -1.0 } else { 1.0 };
    let beyond = error.abs() > VISIBLE;
    let x = layout.middle + layout.offset(error.clamp(-VISIBLE, VISIBLE));
    let mark = 0.2 * gap.height();
    let height = 0.3 * gap.height();
    let y = gap.y0 + 0.28 * gap.height();
    let bar = Rect::new(layout.middle, y - height / 2.0, x, y + height / 2.0).abs();
    if bar.width() > 0.0 {
        let outline = bar.to_path(0.1);
        shapes.push(Shape::flat(outline.clone(), Role::Compass.at(0.16)));
        let lines = hatch(bar, 0.5 * height, sign);
        shapes.push(Shape::clipped(
            outline.clone(),
            vec![Shape::line(
                lines,
                Pen::solid(Role::Compass, layout.line(2.2)),
            )],
        ));
        shapes.push(Shape::line(
            outline,
            Pen::solid(Role::Compass, layout.line(2.2)),
        ));
    }
    if beyond {
        let head = polygon(&[
            Point::new(x, y),
            Point::new(x - sign * 1.7 * mark, y - 1.3 * mark),
            Point::new(x - sign * 1.7 * mark, y + 1.3 * mark),
        ]);
        shapes.push(Shape::flat(head, Role::Compass.solid()));
    } else {
        // The dashed line crosses from the sill to the diamond.
        shapes.push(Shape::line(
            segment(Point::new(x, gap.y0), Point::new(x, y)),
            compass_pen(layout),
        ));
        let shape = diamond(Point::new(x, y), mark);
        shapes.push(Shape::line(
            shape.clone(),
            Pen::solid(Role::Halo, layout.line(5.0)),
        ));
        shapes.push(Shape::flat(shape, Role::Compass.solid()));
    }

    if let Some(words) = view.words.error {
        let size = 0.42 * gap.height();
        let width = text_width(words, size);
        let start = x + sign * (mark + 0.35 * size);
        let room = layout.size.width / 2.0 - (start - layout.middle).abs();
        let tone = Role::Ink.solid();
        let mut outwards = |from: f64, side: f64| {
            let anchor = if side < 0.0 {
                Anchor::End
            } else {
                Anchor::Start
            };
            let at = Point::new(from, y);
            shapes.push(label(words.to_owned(), at, anchor, size, 700, tone));
        };
        // Beyond the bar's end if there is room, else in the bar, else on the lubber line's
        // empty side: the bar and its mark stay whole.
        if !beyond && width < room {
            outwards(start, sign);
        } else if width + 1.2 * size + 2.0 * mark < bar.width() {
            let middle = (layout.middle + x) / 2.0;
            plate(shapes, words, Point::new(middle, y), size, Role::Paper);
        } else {
            outwards(layout.middle - sign * 0.5 * size, -sign);
        }
    }
}

/// The heading ruler: flat, to the drum's scale and in the direction of its numerals.
pub(crate) fn ruler(shapes: &mut Vec<Shape>, view: &CardFaceView, layout: &Layout) {
    let strip = layout.ruler;
    let heading = view.heading.radians();
    let mut path = BezPath::new();
    let mut numerals = Vec::with_capacity(6);
    let size = 0.7 * strip.height();
    let y = strip.y0 + 0.36 * strip.height() + CAP_HEIGHT * size / 2.0;
    for step in 0..72_u32 {
        let mark = f64::from(5 * step).to_radians();
        let angle =
            MagneticHeading::from_radians(heading).right_of(MagneticHeading::from_radians(mark));
        if angle.abs() > VISIBLE {
            continue;
        }
        let x = layout.middle + layout.offset(angle);
        let long = step % 2 == 0;
        let tall = if long { 0.27 } else { 0.16 } * strip.height();
        let wide = mark_half_width(layout, long) * maths::cos(angle);
        add_polygon(
            &mut path,
            &[
                Point::new(x - wide, strip.y0),
                Point::new(x + wide, strip.y0),
                Point::new(x + wide, strip.y0 + tall),
                Point::new(x - wide, strip.y0 + tall),
            ],
        );
        if step % 6 == 0 {
            // Whole or not at all, left and right alike: a numeral cut in half would be
            // another numeral.
            let numeral = NUMERALS[step as usize / 6];
            let half = text_width("00", size) / 2.0;
            let end = (strip.width() / 2.0 + 0.7 * half).min(layout.size.width / 2.0);
            let room = end - (x - layout.middle).abs() - half;
            let alpha = (1.0 + room / (0.3 * half)).clamp(0.0, 1.0);
            if alpha > 0.0 {
                let at = Point::new(x, y);
                let tone = Role::Heading.at(alpha);
                numerals.push(label(numeral, at, Anchor::Middle, size, 700, tone));
            }
        }
    }
    shapes.push(Shape::flat(path, Role::Heading.solid()));
    shapes.push(Shape::line(
        segment(
            Point::new(strip.x0, strip.y0),
            Point::new(strip.x1, strip.y0),
        ),
        Pen::solid(Role::Heading, layout.line(3.0)),
    ));
    shapes.append(&mut numerals);
    // The heading's own solid line, from the triangle through the marks.
    shapes.push(Shape::line(
        segment(
            Point::new(layout.middle, strip.y0 - 0.1 * layout.gap.height()),
            Point::new(layout.middle, strip.y0 + 0.3 * strip.height()),
        ),
        Pen::solid(Role::Heading, layout.line(5.0)),
    ));
}

/// The compass's own line.
pub(crate) fn compass_pen(layout: &Layout) -> Pen {
    Pen::solid(Role::Compass, layout.line(5.0)).dashed(layout.line(9.0), layout.line(9.0))
}
