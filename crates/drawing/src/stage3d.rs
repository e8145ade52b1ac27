//! A camera that circles the bowl, and the projection through it.
//!
//! The scene's own axes are *level* axes: x forward along the heading, y to the right, z down,
//! the origin at the card's pivot; the bowl's inside has a radius of 1. A point `p` is seen, to
//! the right of the picture's middle and above it, at
//!
//! ```text
//! f (p·r, p·u) / (D + p·d)
//! ```
//!
//! with r, u and d the camera's right, up and line of sight, D its distance from the pivot and f
//! the focal length.

use compass::maths;
use glam::{DQuat, DVec3};
use kurbo::{BezPath, Point, Size, Vec2};
use std::f64::consts::{FRAC_PI_2, PI};

/// The lowest and the highest elevation that orbiting leads to, in radians: a little below the
/// horizon, and straight above.
pub const ELEVATION: [f64; 2] = [-10.0 * PI / 180.0, FRAC_PI_2];
/// The nearest and the furthest that orbiting leads to, in radii of the bowl.
pub const DISTANCE: [f64; 2] = [4.5, 20.0];
/// The distance of the presets, in radii of the bowl: the whole scene fills the picture.
pub const USUAL_DISTANCE: f64 = 7.0;

/// What the camera is fixed to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mount {
    /// It turns with the heading and stays level: the bowl is seen to bank.
    Level,
    /// It rides in the airframe: the bowl keeps still and the horizon banks.
    Airframe,
}

/// Where the scene is seen from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Camera {
    /// Where it stands about the vertical, in radians: 0 behind the aircraft, π/2 off its right
    /// wing, −π/2 off its left.
    pub azimuth: f64,
    /// How far it looks down, in radians: 0 from the side, π/2 from straight above.
    pub elevation: f64,
    /// Its distance from the pivot, in radii of the bowl.
    pub distance: f64,
    /// What it is fixed to.
    pub mount: Mount,
}

impl Default for Camera {
    /// From behind, a little to the left and above: what shows most at once.
    fn default() -> Self {
        Self::at(-26.0, 36.0, Mount::Level)
    }
}

impl Camera {
    fn at(azimuth: f64, elevation: f64, mount: Mount) -> Self {
        Self {
            azimuth: azimuth.to_radians(),
            elevation: elevation.to_radians(),
            distance: USUAL_DISTANCE,
            mount,
        }
    }

    /// From the pilot's seat: the camera banks with the aircraft, as the pilot does.
    pub fn pilots_seat() -> Self {
        Self::at(0.0, 30.0, Mount::Airframe)
    }

    /// From behind, level with the horizon: shows the bank.
    pub fn behind() -> Self {
        Self::at(0.0, 30.0, Mount::Level)
    }

    /// From off the right wing: shows what a change of speed does.
    pub fn side() -> Self {
        Self::at(90.0, 24.0, Mount::Level)
    }

    /// From straight above, the nose up in the picture.
    pub fn above() -> Self {
        Self::at(0.0, 90.0, Mount::Level)
    }

    /// Moved about the pivot by angles in radians: `azimuth` toward the right wing from behind,
    /// `elevation` upward within [`ELEVATION`]. An angle that is no number moves nothing.
    #[must_use]
    pub fn orbited(self, azimuth: f64, elevation: f64) -> Self {
        let by = |angle: f64| if angle.is_finite() { angle } else { 0.0 };
        let [lowest, highest] = ELEVATION;
        Self {
            azimuth: compass::angle::half_turn(self.azimuth + by(azimuth)),
            elevation: (self.elevation + by(elevation)).clamp(lowest, highest),
            ..self
        }
    }

    /// Nearer (a factor below 1) or further, within [`DISTANCE`].
    #[must_use]
    pub fn moved_away(self, factor: f64) -> Self {
        let [nearest, furthest] = DISTANCE;
        let wanted = self.distance * factor;
        Self {
            distance: if wanted.is_finite() {
                wanted.clamp(nearest, furthest)
            } else {
                self.distance
            },
            ..self
        }
    }
}

/// Sizes below this (in either direction) are too small to show anything.
const SMALLEST: f64 = 8.0;
/// How far the scene reaches to either side of the pivot, and above and below it, at the usual
/// distance, in radii of the bowl.
const REACH: [f64; 2] = [1.76, 1.5];

/// Where the pivot stands between the top of the picture and its bottom: more rises above the
/// bowl than hangs below it.
const MIDDLE: f64 = 0.525;

/// The scene as the camera sees it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Stage {
    /// Where the pivot is seen.
    middle: Point,
    right: DVec3,
    up: DVec3,
    /// The line of sight.
    sight: DVec3,
    distance: f64,
    /// Pixels to one radius of the bowl at the pivot, at the usual distance.
    pub(crate) scale: f64,
}

impl Stage {
    /// The scene for a size; `None` if it is too small or not finite. `airframe` takes body axes
    /// to level axes.
    pub(crate) fn new(camera: &Camera, airframe: DQuat, size: Size) -> Option<Self> {
        let fits = |length: f64| length.is_finite() && length >= SMALLEST;
        if !(fits(size.width) && fits(size.height)) {
            return None;
        }
        let or = |value: f64, other: f64| if value.is_finite() { value } else { other };
        let [nearest, furthest] = DISTANCE;
        let (sa, ca) = maths::sin_cos(or(camera.azimuth, 0.0));
        let (se, ce) = maths::sin_cos(or(camera.elevation, 0.0));
        let turned = |v: DVec3| match camera.mount {
            Mount::Level => v,
            Mount::Airframe => airframe * v,
        };
        let scale = (size.width / 2.0 / REACH[0]).min(size.height / 2.0 / REACH[1]);
        Some(Self {
            middle: Point::new(size.width / 2.0, MIDDLE * size.height),
            right: turned(DVec3::new(sa, ca, 0.0)),
            up: turned(DVec3::new(ca * se, -sa * se, -ce)),
            sight: turned(DVec3::new(ca * ce, -sa * ce, se)),
            distance: or(camera.distance, USUAL_DISTANCE).clamp(nearest, furthest),
            scale,
        })
    }

    /// The camera's right.
    pub(crate) fn right(&self) -> DVec3 {
        self.right
    }

    /// Where the camera stands.
    pub(crate) fn eye(&self) -> DVec3 {
        self.sight * -self.distance
    }

    /// How far beyond the pivot a point lies along the line of sight.
    pub(crate) fn depth(&self, p: DVec3) -> f64 {
        p.dot(self.sight)
    }

    /// Whether a face through `p` with the outward normal `n` is turned to the camera.
    pub(crate) fn faces(&self, p: DVec3, n: DVec3) -> bool {
        (self.eye() - p).dot(n) > 0.0
    }

    /// Pixels to one radius of the bowl at the depth of a point.
    fn zoom(&self, p: DVec3) -> f64 {
        self.scale * USUAL_DISTANCE / (self.distance + self.depth(p)).max(0.5)
    }

    /// Where a point is seen.
    pub(crate) fn seen(&self, p: DVec3) -> Point {
        let zoom = self.zoom(p);
        self.middle + Vec2::new(zoom * p.dot(self.right), -zoom * p.dot(self.up))
    }

    /// How far apart two points are seen.
    pub(crate) fn distance(&self, a: DVec3, b: DVec3) -> f64 {
        (self.seen(b) - self.seen(a)).hypot2().sqrt()
    }

    /// How fast the seen place of a point moves that moves with `v`.
    fn slope(&self, p: DVec3, v: DVec3) -> Vec2 {
        let zoom = self.zoom(p);
        let away = v.dot(self.sight) / (self.distance + self.depth(p)).max(0.5);
        zoom * Vec2::new(
            v.dot(self.right) - p.dot(self.right) * away,
            p.dot(self.up) * away - v.dot(self.up),
        )
    }

    /// Adds the arc `centre + a cos θ + b sin θ` from one angle to another; joined by a straight
    /// line to what the path holds already.
    ///
    /// Each piece of a tenth of a turn at most is one cubic that has the seen arc's own tangents.
    pub(crate) fn add_arc(&self, path: &mut BezPath, arc: &Arc, from: f64, to: f64) {
        let pieces = ((to - from).abs() / (0.2 * PI) - 1e-9)
            .ceil()
            .clamp(1.0, 40.0);
        let step = (to - from) / pieces;
        let pull = 4.0 / 3.0 * maths::tan(step / 4.0);
        let (mut at, mut slope) = arc.at(from);
        let start = self.seen(at);
        if path.elements().is_empty() {
            path.move_to(start);
        } else {
            path.line_to(start);
        }
        for piece in 1..=pieces as u32 {
            let (next, next_slope) = arc.at(from + step * f64::from(piece));
            let end = self.seen(next);
            path.curve_to(
                self.seen(at) + self.slope(at, slope) * pull,
                end - self.slope(next, next_slope) * pull,
                end,
            );
            (at, slope) = (next, next_slope);
        }
    }

    /// The whole of an ellipse.
    pub(crate) fn ellipse(&self, arc: &Arc) -> BezPath {
        let mut path = BezPath::new();
        self.add_arc(&mut path, arc, -PI, PI);
        path.close_path();
        path
    }

    /// A closed polygon.
    pub(crate) fn polygon(&self, points: &[DVec3]) -> BezPath {
        let mut path = self.polyline(points);
        path.close_path();
        path
    }

    /// A line through points; no points make an empty path.
    pub(crate) fn polyline(&self, points: &[DVec3]) -> BezPath {
        let mut path = BezPath::new();
        for (index, &p) in points.iter().enumerate() {
            if index == 0 {
                path.move_to(self.seen(p));
            } else {
                path.line_to(self.seen(p));
            }
        }
        path
    }

    /// A width for lines and small gaps, given for a bowl seen 110 wide from its axis; small
    /// pictures keep stronger lines.
    pub(crate) fn line(&self, width: f64) -> f64 {
        let unit = self.scale / 110.0;
        width * (0.45 + 0.55 * unit).min(2.0 * unit)
    }

    /// The size of labels.
    pub(crate) fn text(&self) -> f64 {
        (0.128 * self.scale).clamp(11.5, 26.0).min(0.3 * self.scale)
    }
}

/// An ellipse in space by its centre and two half axes (or any two conjugate ones).
#[derive(Clone, Copy, Debug)]
pub(crate) struct Arc {
    pub(crate) centre: DVec3,
    pub(crate) a: DVec3,
    pub(crate) b: DVec3,
}

impl Arc {
    /// The point at an angle and how it moves with the angle.
    pub(crate) fn at(&self, angle: f64) -> (DVec3, DVec3) {
        let (s, c) = maths::sin_cos(angle);
        (
            self.centre + self.a * c + self.b * s,
            self.b * c - self.a * s,
        )
    }
}

/// The convex hull of points in a picture, by A. M. Andrew's monotone chain (1979).
pub(crate) fn hull(mut points: Vec<Point>) -> Vec<Point> {
    points.sort_unstable_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    points.dedup();
    let mut chain: Vec<Point> = Vec::with_capacity(points.len() + 1);
    for pass in 0..2 {
        let least = chain.len() + 1;
        let ordered: &mut dyn Iterator<Item = &Point> = if pass == 0 {
            &mut points.iter()
        } else {
            &mut points.iter().rev().skip(1)
        };
        for &p in ordered {
            while chain.len() > least.max(1)
                && let [.., a, b] = chain[..]
                && (b - a).cross(p - a) <= 0.0
            {
                chain.pop();
            }
            chain.push(p);
        }
    }
    chain
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::ParamCurve;

    const SIZE: Size = Size::new(420.0, 420.0);

    fn stage(camera: &Camera) -> Stage {
        Stage::new(camera, DQuat::IDENTITY, SIZE).unwrap()
    }

    #[test]
    fn presets_show_right_and_up_where_they_are() {
        let middle = stage(&Camera::behind()).seen(DVec3::ZERO);
        assert_eq!(middle, Point::new(210.0, MIDDLE * 420.0));
        let from = |camera: Camera, p: DVec3| stage(&camera).seen(p) - middle;
        assert!(
            from(Camera::behind(), DVec3::Y).x > 0.0,
            "right wing, right"
        );
        assert!(from(Camera::behind(), DVec3::Z).y > 0.0, "down, down");
        assert!(from(Camera::side(), DVec3::X).x > 0.0, "nose, right");
        assert!(from(Camera::above(), DVec3::X).y < 0.0, "nose, up");
        assert!(from(Camera::above(), DVec3::Y).x > 0.0, "right wing, right");
    }

    #[test]
    fn an_airframe_camera_sees_the_airframe_stand_still() {
        let banked = DQuat::from_rotation_x(0.4);
        let camera = Camera::pilots_seat();
        let stage = Stage::new(&camera, banked, SIZE).unwrap();
        let level = Stage::new(&camera, DQuat::IDENTITY, SIZE).unwrap();
        let p = DVec3::new(0.3, 1.0, -0.2);
        assert!((stage.seen(banked * p) - level.seen(p)).hypot2().sqrt() < 1e-9);
    }

    #[test]
    fn orbiting_keeps_within_its_limits_and_ignores_what_is_no_number() {
        let up = Camera::behind().orbited(7.0, 9.0);
        assert_eq!(up.elevation, ELEVATION[1]);
        assert!(up.azimuth.abs() <= PI);
        assert_eq!(Camera::side().orbited(f64::NAN, f64::NAN), Camera::side());
        assert_eq!(Camera::side().moved_away(0.0).distance, DISTANCE[0]);
        assert_eq!(Camera::side().moved_away(f64::NAN), Camera::side());
    }

    #[test]
    fn a_seen_arc_keeps_to_the_seen_circle() {
        let stage = stage(&Camera::default());
        let arc = Arc {
            centre: DVec3::new(0.1, 0.2, -0.3),
            a: DVec3::new(0.9, 0.1, 0.0),
            b: DVec3::new(-0.1, 0.9, 0.3),
        };
        // Dense points of the true curve; the cubics must pass within a tenth of a pixel.
        let truth: Vec<Point> = (0..7200)
            .map(|i| stage.seen(arc.at(f64::from(i) * PI / 3600.0).0))
            .collect();
        for segment in stage.ellipse(&arc).segments() {
            for i in 0..=8 {
                let p = segment.eval(f64::from(i) / 8.0);
                let off = truth
                    .iter()
                    .map(|q| (p - *q).hypot2().sqrt())
                    .fold(f64::INFINITY, f64::min);
                assert!(off < 0.1, "{off}");
            }
        }
    }

    #[test]
    fn a_hull_leaves_out_what_lies_inside() {
        let square = [(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0), (1.0, 1.0)];
        let around = hull(square.map(Point::from).to_vec());
        assert!(!around.contains(&Point::new(1.0, 1.0)));
        assert!(
            square[..4]
                .iter()
                .all(|&p| around.contains(&Point::from(p)))
        );
    }
}
