//! Paths that the drawings share.

use compass::maths;
use kurbo::{Affine, BezPath, Point, Rect};
use std::f64::consts::FRAC_PI_2;

/// A closed polygon.
pub(crate) fn polygon(points: &[Point]) -> BezPath {
    let mut path = BezPath::with_capacity(points.len() + 1);
    add_polygon(&mut path, points);
    path
}

/// Adds a closed polygon to a path.
pub(crate) fn add_polygon(path: &mut BezPath, points: &[Point]) {
    if let Some((&first, rest)) = points.split_first() {
        path.move_to(first);
        for &point in rest {
            path.line_to(point);
        }
        path.close_path();
    }
}

/// A straight line.
pub(crate) fn segment(from: Point, to: Point) -> BezPath {
    let mut path = BezPath::new();
    add_segment(&mut path, from, to);
    path
}

/// Adds a straight line to a path.
pub(crate) fn add_segment(path: &mut BezPath, from: Point, to: Point) {
    path.move_to(from);
    path.line_to(to);
}

/// A diamond about a centre; `half` its half width, half as high again.
pub(crate) fn diamond(centre: Point, half: f64) -> BezPath {
    let tall = 1.25 * half;
    polygon(&[
        centre + (0.0, -tall),
        centre + (half, 0.0),
        centre + (0.0, tall),
        centre + (-half, 0.0),
    ])
}

/// A rectangle with corners of a radius (kept within half of either side).
pub(crate) fn rounded(rect: Rect, radius: f64) -> BezPath {
    let r = radius
        .min(rect.width() / 2.0)
        .min(rect.height() / 2.0)
        .max(0.0);
    let mut path = BezPath::new();
    let corners = [
        (rect.x1 - r, rect.y0 + r, -FRAC_PI_2),
        (rect.x1 - r, rect.y1 - r, 0.0),
        (rect.x0 + r, rect.y1 - r, FRAC_PI_2),
        (rect.x0 + r, rect.y0 + r, 2.0 * FRAC_PI_2),
    ];
    for (x, y, from) in corners {
        let place = Affine::new([r, 0.0, 0.0, r, x, y]);
        add_arc(&mut path, place, from, from + FRAC_PI_2);
    }
    path.close_path();
    path
}

/// Adds the arc of the unit circle from one angle to another (radians, from x toward y), seen
/// through an affine; joined by a straight line to what the path holds already.
///
/// Each quarter at most is one cubic, which strays from the circle by less than 0.03 % of its
/// radius (the usual approximation by equal tangents).
pub(crate) fn add_arc(path: &mut BezPath, place: Affine, from: f64, to: f64) {
    // A hair more than a whole number of quarters must not make one piece more.
    let pieces = (((to - from).abs() / FRAC_PI_2) - 1e-9)
        .ceil()
        .clamp(1.0, 64.0);
    let step = (to - from) / pieces;
    let pull = 4.0 / 3.0 * maths::tan(step / 4.0);
    let (mut s, mut c) = maths::sin_cos(from);
    let start = place * Point::new(c, s);
    // A path that only moved somewhere counts as empty for kurbo, but is to be joined.
    if path.elements().is_empty() {
        path.move_to(start);
    } else {
        path.line_to(start);
    }
    for piece in 1..=pieces as u32 {
        let (s2, c2) = maths::sin_cos(from + step * f64::from(piece));
        path.curve_to(
            place * Point::new(c - pull * s, s + pull * c),
            place * Point::new(c2 + pull * s2, s2 - pull * c2),
            place * Point::new(c2, s2),
        );
        (s, c) = (s2, c2);
    }
}

/// A whole circle seen through an affine.
pub(crate) fn ellipse(place: Affine) -> BezPath {
    let mut path = BezPath::new();
    add_arc(&mut path, place, 0.0, 4.0 * FRAC_PI_2);
    path.close_path();
    path
}

/// Slanted parallel lines over a rectangle, `step` apart, rising toward `lean` (+1 right, −1
/// left); to be seen through a clip. At most a few hundred lines however small the step.
pub(crate) fn hatch(rect: Rect, step: f64, lean: f64) -> BezPath {
    let mut path = BezPath::new();
    let (height, width) = (rect.height(), rect.width());
    let step = step.max((width + height) / 300.0);
    if !(step > 0.0 && step.is_finite()) {
        return path;
    }
    let count = ((width + height) / step).ceil() as u32;
    for index in 0..=count {
        let along = f64::from(index) * step;
        let (low, high) = if lean > 0.0 {
            (rect.x0 + along - height, rect.x0 + along)
        } else {
            (rect.x1 - along + height, rect.x1 - along)
        };
        add_segment(
            &mut path,
            Point::new(low, rect.y1),
            Point::new(high, rect.y0),
        );
    }
    path
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::ParamCurve;

    #[test]
    fn an_arc_keeps_to_its_circle() {
        let path = ellipse(Affine::IDENTITY);
        let worst = path
            .segments()
            .flat_map(|segment| (0..=10).map(move |i| segment.eval(f64::from(i) / 10.0)))
            .map(|p| (p.to_vec2().hypot2().sqrt() - 1.0).abs())
            .fold(0.0, f64::max);
        assert!(worst < 3e-4, "{worst}");
        assert_eq!(
            path.elements().len(),
            6,
            "one move, four quarters, one close"
        );
    }

    #[test]
    fn hatch_is_mirrored_with_its_lean() {
        let right = hatch(Rect::new(0.0, 0.0, 40.0, 10.0), 7.0, 1.0);
        let left = hatch(Rect::new(-40.0, 0.0, 0.0, 10.0), 7.0, -1.0);
        assert_eq!(Affine::FLIP_X * right, left);
    }
}
