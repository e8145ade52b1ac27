//! From dip to latitude: the Earth as a dipole with an aircraft on it, and dip against latitude.
//!
//! The Earth is cut along the meridian of the aircraft, north up. The aircraft heads north; the
//! field there stands as an arrow, and as its horizontal and vertical parts.

use crate::chart::{Frame, fits, polylines};
use crate::lettering::label;
use crate::outline::{add_segment, ellipse, polygon, segment};
use crate::shape::{Anchor, Pen, Shape};
use crate::theme::Role;
use compass::maths;
use kurbo::{Affine, BezPath, Point, Rect, Size, Vec2};
use std::f64::consts::FRAC_PI_2;

/// How a curve is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stroke {
    /// Solid.
    Solid,
    /// In dashes.
    Dashed,
    /// Heavy.
    Heavy,
}

/// Dip against latitude.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curve<'a> {
    /// Latitude and dip, rad, from south to north.
    pub points: &'a [(f64, f64)],
    /// What it is called.
    pub words: &'a str,
    /// How it is drawn.
    pub stroke: Stroke,
    /// The latitude at which its name stands, rad.
    pub named_at: f64,
}

/// What is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DipoleEarthView<'a> {
    /// Where the aircraft is, rad, north positive.
    pub latitude: f64,
    /// The dipole's dip there, rad.
    pub dip: f64,
    /// By how much the card tilts, rad, north end down positive; drawn as much.
    pub tilt: f64,
    /// The curves.
    pub curves: &'a [Curve<'a>],
    /// Words to place.
    pub words: Words<'a>,
}

/// Words to place in the picture.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Words<'a> {
    /// At the poles.
    pub poles: [&'a str; 2],
    /// At the field's arrow.
    pub field: &'a str,
    /// At its horizontal part.
    pub horizontal: &'a str,
    /// At its vertical part.
    pub vertical: &'a str,
    /// Under the graph.
    pub latitude: &'a str,
    /// Over the graph.
    pub dip: &'a str,
}

/// Draws it: side by side in a wide picture, one over the other in a tall one.
pub fn dipole_earth(view: &DipoleEarthView, size: Size) -> Vec<Shape> {
    if !fits(size)
        || ![view.latitude, view.dip, view.tilt]
            .iter()
            .all(|it| it.is_finite())
    {
        return Vec::new();
    }
    let wide = size.width > 1.2 * size.height;
    let (earth, graph) = if wide {
        let half = size.width / 2.0;
        (
            Rect::new(0.0, 0.0, half, size.height),
            Rect::new(half, 0.0, size.width, size.height),
        )
    } else {
        let half = size.height / 2.0;
        (
            Rect::new(0.0, 0.0, size.width, half),
            Rect::new(0.0, half, size.width, size.height),
        )
    };
    let mut shapes = Vec::new();
    draw_earth(&mut shapes, view, earth);
    draw_graph(&mut shapes, view, graph);
    shapes
}

fn unit(side: f64) -> f64 {
    side / 480.0
}

fn draw_earth(shapes: &mut Vec<Shape>, view: &DipoleEarthView, area: Rect) {
    let side = area.width().min(area.height());
    let unit = unit(side);
    let radius = 0.28 * side;
    let centre = area.center() - Vec2::new(0.1 * side, 0.0);
    let mut lines = BezPath::new();
    let mut heads = Vec::new();
    for reach in [1.3, 1.7, 2.4, 3.8_f64] {
        // r = L cos²(latitude), a field line of a dipole, from where it leaves the Earth.
        let leaves = maths::acos((1.0 / reach).sqrt());
        for east in [1.0, -1.0] {
            let at = |latitude: f64| {
                let (sin, cos) = maths::sin_cos(latitude);
                let far = radius * reach * cos * cos;
                centre + Vec2::new(east * far * cos, -far * sin)
            };
            let points: Vec<Point> = (-30..=30)
                .map(|i| at(leaves * f64::from(i) / 30.0))
                .collect();
            lines.extend(polylines(&[points]));
            heads.push(head(at(0.02), Vec2::new(0.0, -1.0), 6.0 * unit));
        }
    }
    let faint = Pen::solid(Role::FaintInk, 1.1 * unit).faded(0.7);
    let mut inside = vec![Shape::line(lines, faint)];
    inside.extend(
        heads
            .into_iter()
            .map(|it| Shape::flat(it, Role::FaintInk.solid())),
    );
    shapes.push(Shape::clipped(rect_path(area), inside));

    let disc = ellipse(Affine::new([radius, 0.0, 0.0, radius, centre.x, centre.y]));
    shapes.push(Shape::flat(disc.clone(), Role::Halo.solid()));
    shapes.push(Shape::flat(disc.clone(), Role::Rule.at(0.5)));
    shapes.push(Shape::line(disc, Pen::solid(Role::Ink, 1.4 * unit)));
    let mut cross = BezPath::new();
    add_segment(
        &mut cross,
        centre - Vec2::new(radius, 0.0),
        centre + Vec2::new(radius, 0.0),
    );
    add_segment(
        &mut cross,
        centre - Vec2::new(0.0, radius),
        centre + Vec2::new(0.0, radius),
    );
    shapes.push(Shape::line(cross, faint.dashed(4.0 * unit, 4.0 * unit)));
    let poles = [(view.words.poles[0], -1.0), (view.words.poles[1], 1.0)];
    for (words, down) in poles {
        let at = centre + Vec2::new(0.0, down * (radius - 14.0 * unit));
        shapes.push(label(
            words.to_owned(),
            at,
            Anchor::Middle,
            15.0 * unit,
            700,
            Role::Ink.solid(),
        ));
    }
    aircraft(shapes, view, centre, radius, unit);
}

/// The aircraft on its horizon, its card, and the field in its parts.
fn aircraft(
    shapes: &mut Vec<Shape>,
    view: &DipoleEarthView,
    centre: Point,
    radius: f64,
    unit: f64,
) {
    let (sin, cos) = maths::sin_cos(view.latitude.clamp(-FRAC_PI_2, FRAC_PI_2));
    let (up, north) = (Vec2::new(cos, -sin), Vec2::new(-sin, -cos));
    let ground = centre + up * radius;
    let middle = ground + up * (0.2 * radius);
    let horizon = segment(
        ground - north * (1.1 * radius),
        ground + north * (1.1 * radius),
    );
    shapes.push(Shape::line(horizon, Pen::solid(Role::FaintInk, 1.2 * unit)));

    let place = |along: f64, high: f64| middle + north * (along * unit) + up * (high * unit);
    let body = [
        place(30.0, 0.0),
        place(18.0, 5.0),
        place(-22.0, 3.0),
        place(-30.0, 14.0),
        place(-35.0, 14.0),
        place(-32.0, -1.0),
        place(14.0, -6.0),
    ];
    shapes.push(Shape::flat(polygon(&body), Role::FaintInk.solid()));
    // The card, seen from its edge, above the aircraft: its north end dips as the field pulls.
    let (tilt_sin, tilt_cos) = maths::sin_cos(view.tilt);
    let card = middle + up * (26.0 * unit);
    let edge = (north * tilt_cos - up * tilt_sin) * (20.0 * unit);
    shapes.push(Shape::line(
        segment(card - edge, card + edge),
        Pen::solid(Role::Ink, 4.5 * unit),
    ));
    shapes.push(Shape::line(
        segment(card, card + up * (7.0 * unit)),
        Pen::solid(Role::Ink, 1.5 * unit),
    ));

    let length = 0.85 * radius;
    let (dip_sin, dip_cos) = maths::sin_cos(view.dip);
    let across = north * (length * dip_cos);
    let down = up * (-length * dip_sin);
    let plain = Pen::solid(Role::Ink, 1.8 * unit).dashed(4.0 * unit, 4.0 * unit);
    arrow(shapes, middle, across, plain, unit);
    arrow(shapes, middle, down, plain, unit);
    arrow(
        shapes,
        middle,
        across + down,
        Pen::solid(Role::Ink, 3.2 * unit),
        unit,
    );
    for (words, to, weight) in [
        (view.words.horizontal, across, 500),
        (view.words.vertical, down, 500),
        (view.words.field, across + down, 700),
    ] {
        let far = to.hypot2().sqrt();
        if far > 18.0 * unit {
            let at = middle + to * (1.0 + 17.0 * unit / far);
            plate(shapes, words, at, 17.0 * unit, weight);
        }
    }
}

fn plate(shapes: &mut Vec<Shape>, words: &str, at: Point, size: f64, weight: u16) {
    let half = Size::new(
        0.5 * crate::lettering::text_width(words, size) + 0.3 * size,
        0.62 * size,
    );
    let rect = Rect::from_center_size(at, half * 2.0);
    let path = crate::outline::rounded(rect, 0.3 * size);
    shapes.push(Shape::flat(path, Role::Paper.at(0.85)));
    shapes.push(label(
        words.to_owned(),
        at,
        Anchor::Middle,
        size,
        weight,
        Role::Ink.solid(),
    ));
}

fn arrow(shapes: &mut Vec<Shape>, from: Point, to: Vec2, pen: Pen, unit: f64) {
    let far = to.hypot2().sqrt();
    if far < 6.0 * unit {
        return;
    }
    let way = to / far;
    shapes.push(Shape::line(
        segment(from, from + way * (far - 6.0 * unit)),
        pen,
    ));
    shapes.push(Shape::flat(head(from + to, way, 8.0 * unit), pen.tone));
}

/// A head of an arrow with its tip at a point.
fn head(tip: Point, way: Vec2, size: f64) -> BezPath {
    let side = Vec2::new(-way.y, way.x);
    polygon(&[
        tip,
        tip - way * (1.4 * size) + side * (0.6 * size),
        tip - way * (1.4 * size) - side * (0.6 * size),
    ])
}

fn rect_path(rect: Rect) -> BezPath {
    use kurbo::Shape as _;
    rect.to_path(0.1)
}

fn draw_graph(shapes: &mut Vec<Shape>, view: &DipoleEarthView, area: Rect) {
    let side = area.width().min(area.height());
    let unit = unit(side);
    let plot = Rect::from_center_size(area.center(), (0.8 * side, 0.8 * side));
    let frame = Frame::new(plot, [-90.0, 90.0], [-90.0, 90.0]);
    let words = |shapes: &mut Vec<Shape>, text: String, at: Point, anchor: Anchor, weight: u16| {
        shapes.push(label(
            text,
            at,
            anchor,
            13.0 * unit,
            weight,
            Role::Ink.solid(),
        ));
    };
    let mut grid = BezPath::new();
    for step in -3..=3_i32 {
        let at = f64::from(30 * step);
        add_segment(
            &mut grid,
            frame.place(Point::new(at, -90.0)),
            frame.place(Point::new(at, 90.0)),
        );
        add_segment(
            &mut grid,
            frame.place(Point::new(-90.0, at)),
            frame.place(Point::new(90.0, at)),
        );
        let text = format!("{}°", (30 * step).to_string().replace('-', "−"));
        let below = frame.place(Point::new(at, -90.0)) + Vec2::new(0.0, 15.0 * unit);
        words(shapes, text.clone(), below, Anchor::Middle, 400);
        let left = frame.place(Point::new(-90.0, at)) - Vec2::new(6.0 * unit, 0.0);
        words(shapes, text, left, Anchor::End, 400);
    }
    shapes.push(Shape::line(
        grid,
        Pen::solid(Role::FaintInk, 0.7 * unit).faded(0.45),
    ));
    let below = Point::new(plot.center().x, plot.y1 + 36.0 * unit);
    words(
        shapes,
        view.words.latitude.to_owned(),
        below,
        Anchor::Middle,
        600,
    );
    let above = Point::new(plot.x0, plot.y0 - 14.0 * unit);
    words(shapes, view.words.dip.to_owned(), above, Anchor::Start, 600);

    let latitude = view.latitude.to_degrees();
    let upright = segment(
        frame.place(Point::new(latitude, -90.0)),
        frame.place(Point::new(latitude, 90.0)),
    );
    shapes.push(Shape::line(upright, Pen::solid(Role::Ink, 1.2 * unit)));
    for curve in view.curves {
        let degrees =
            |&(latitude, dip): &(f64, f64)| Point::new(latitude.to_degrees(), dip.to_degrees());
        let points: Vec<Point> = curve
            .points
            .iter()
            .map(|it| frame.place(degrees(it)))
            .collect();
        let pen = match curve.stroke {
            Stroke::Solid => Pen::solid(Role::Ink, 1.6 * unit),
            Stroke::Dashed => Pen::solid(Role::Ink, 1.6 * unit).dashed(5.0 * unit, 4.0 * unit),
            Stroke::Heavy => Pen::solid(Role::Ink, 3.2 * unit),
        };
        shapes.push(Shape::line(polylines(&[points]), pen));
        let at = |wanted: f64| dip_at(curve.points, wanted);
        if let Some(dip) = at(curve.named_at) {
            let at = frame.place(degrees(&(curve.named_at, dip)));
            plate(shapes, curve.words, at, 16.0 * unit, 600);
        }
        if let Some(dip) = at(view.latitude) {
            let at = frame.place(degrees(&(view.latitude, dip)));
            let dot = ellipse(Affine::new([4.5 * unit, 0.0, 0.0, 4.5 * unit, at.x, at.y]));
            shapes.push(Shape::line(
                dot.clone(),
                Pen::solid(Role::Paper, 3.0 * unit),
            ));
            shapes.push(Shape::flat(dot, Role::Ink.solid()));
        }
    }
}

/// The dip of a curve at a latitude, between its points in proportion.
fn dip_at(points: &[(f64, f64)], latitude: f64) -> Option<f64> {
    let pairs = points.iter().zip(points.iter().skip(1));
    let (a, b) = pairs
        .into_iter()
        .find(|(a, b)| (a.0..=b.0).contains(&latitude))?;
    let share = (latitude - a.0) / (b.0 - a.0);
    Some(a.1 + share * (b.1 - a.1))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn view(latitude: f64) -> DipoleEarthView<'static> {
        DipoleEarthView {
            latitude,
            dip: maths::atan2(2.0 * maths::sin(latitude), maths::cos(latitude)),
            tilt: 0.05,
            curves: &[Curve {
                points: &[(-FRAC_PI_2, -FRAC_PI_2), (FRAC_PI_2, FRAC_PI_2)],
                words: "rule",
                stroke: Stroke::Dashed,
                named_at: 0.5,
            }],
            words: Words::default(),
        }
    }

    #[test]
    fn it_draws_at_every_latitude_and_nothing_in_no_room() {
        for size in [Size::new(1000.0, 480.0), Size::new(360.0, 720.0)] {
            for latitude in [-FRAC_PI_2, -0.4, 0.0, 0.9, FRAC_PI_2] {
                assert!(dipole_earth(&view(latitude), size).len() > 20);
            }
            assert!(dipole_earth(&view(f64::NAN), size).is_empty());
        }
        assert!(dipole_earth(&view(0.5), Size::new(3.0, 3.0)).is_empty());
    }

    #[test]
    fn a_dip_between_points_is_in_proportion() {
        let points = [(-1.0, -2.0), (0.0, 0.0), (1.0, 1.0)];
        assert_eq!(dip_at(&points, 0.5), Some(0.5));
        assert_eq!(dip_at(&points, -0.5), Some(-1.0));
        assert_eq!(dip_at(&points, 1.5), None);
    }
}
