//! The Earth as it is seen from afar: parallel rays on to a plane (orthographic projection).
//!
//! What lies beyond the limb is not seen. An area that reaches beyond it is filled up to the limb:
//! the part of its outline that is out of sight is laid along the limb, at the nearest place.
//! That gives every place in sight its right side, unless the area holds the point opposite
//! the middle: then the limb itself is one more outline of it ([`Globe::fill`]).

use super::Place;
use crate::outline::add_arc;
use compass::maths;
use glam::DVec3;
use kurbo::{Affine, BezPath, Point};
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// The longest piece of the limb that is drawn as a straight line, rad.
const LIMB_STEP: f64 = 0.06;

/// A globe in a picture.
#[derive(Clone, Copy, Debug)]
pub(super) struct Globe {
    /// The place in the middle.
    centre: Place,
    middle: Point,
    radius: f64,
    /// East, north and outward at the middle, in axes of the Earth.
    axes: [DVec3; 3],
}

impl Globe {
    /// With a place in its middle.
    pub(super) fn new(centre: Place, middle: Point, radius: f64) -> Self {
        let finite = |angle: f64| if angle.is_finite() { angle } else { 0.0 };
        let centre = (
            finite(centre.0).clamp(-FRAC_PI_2, FRAC_PI_2),
            finite(centre.1),
        );
        let (sin_lat, cos_lat) = maths::sin_cos(centre.0);
        let (sin_lon, cos_lon) = maths::sin_cos(centre.1);
        Self {
            centre,
            middle,
            radius,
            axes: [
                DVec3::new(-sin_lon, cos_lon, 0.0),
                DVec3::new(-sin_lat * cos_lon, -sin_lat * sin_lon, cos_lat),
                DVec3::new(cos_lat * cos_lon, cos_lat * sin_lon, sin_lat),
            ],
        }
    }

    /// A place as seen: right, up and toward the eye, on a sphere of radius 1.
    fn seen(&self, (latitude, longitude): Place) -> DVec3 {
        let (sin_lat, cos_lat) = maths::sin_cos(latitude);
        let (sin_lon, cos_lon) = maths::sin_cos(longitude);
        let place = DVec3::new(cos_lat * cos_lon, cos_lat * sin_lon, sin_lat);
        let [right, up, toward] = self.axes.map(|axis| axis.dot(place));
        DVec3::new(right, up, toward)
    }

    fn on_picture(&self, right: f64, up: f64) -> Point {
        Point::new(
            self.middle.x + self.radius * right,
            self.middle.y - self.radius * up,
        )
    }

    fn on_limb(&self, angle: f64) -> Point {
        let (sin, cos) = maths::sin_cos(angle);
        self.on_picture(cos, sin)
    }

    /// Where a place stands, if it is in sight.
    pub(super) fn point_of(&self, place: Place) -> Option<Point> {
        let seen = self.seen(place);
        (seen.z >= 0.0).then(|| self.on_picture(seen.x, seen.y))
    }

    /// The place at a point, none beside the globe; longitude within ±π.
    pub(super) fn locate(&self, point: Point) -> Option<Place> {
        let right = (point.x - self.middle.x) / self.radius;
        let up = (self.middle.y - point.y) / self.radius;
        let toward = 1.0 - right * right - up * up;
        if toward.is_nan() || toward < 0.0 {
            return None;
        }
        let [x, y, z] = self.axes;
        let place = x * right + y * up + z * toward.sqrt();
        let level = (place.x * place.x + place.y * place.y).sqrt();
        Some((maths::atan2(place.z, level), maths::atan2(place.y, place.x)))
    }

    /// The limb.
    pub(super) fn limb(&self) -> BezPath {
        let mut path = BezPath::new();
        self.add_limb(&mut path, 1.0);
        path
    }

    fn add_limb(&self, path: &mut BezPath, turn: f64) {
        let Point { x, y } = self.middle;
        let place = Affine::new([self.radius, 0.0, 0.0, self.radius, x, y]);
        path.move_to(place * Point::new(1.0, 0.0));
        add_arc(path, place, 0.0, turn * TAU);
        path.close_path();
    }

    /// The parts of a line that are in sight.
    pub(super) fn line(&self, places: impl Iterator<Item = Place>) -> Vec<Vec<Point>> {
        let mut runs: Vec<Vec<Point>> = Vec::new();
        let mut last: Option<DVec3> = None;
        for place in places {
            let seen = self.seen(place);
            let before = last.replace(seen);
            let edge = before.filter(|it| (it.z < 0.0) != (seen.z < 0.0));
            let edge = edge.map(|it| self.between(it, seen));
            if seen.z >= 0.0 {
                if before.is_none_or(|it| it.z < 0.0) {
                    runs.push(edge.into_iter().collect());
                }
                let at = self.on_picture(seen.x, seen.y);
                if let Some(run) = runs.last_mut() {
                    run.push(at);
                }
            } else if let (Some(edge), Some(run)) = (edge, runs.last_mut()) {
                run.push(edge);
            }
        }
        runs
    }

    /// Where the way from one place to another crosses the limb.
    fn between(&self, from: DVec3, to: DVec3) -> Point {
        let crossing = from.lerp(to, from.z / (from.z - to.z));
        self.on_limb(maths::atan2(crossing.y, crossing.x))
    }

    /// The part in sight of the area within closed outlines, to be filled by winding. All
    /// outlines go the same way around it, and holes in it the other way.
    pub(super) fn fill(&self, outlines: &[Vec<Place>]) -> BezPath {
        let mut path = BezPath::new();
        for outline in outlines {
            self.add_outline(&mut path, outline);
        }
        let opposite = (-self.centre.0, self.centre.1 + PI);
        let around = winding(outlines, opposite);
        if around != 0 {
            self.add_limb(&mut path, f64::from(around.signum()));
        }
        path
    }

    fn add_outline(&self, path: &mut BezPath, outline: &[Place]) {
        let finite = outline
            .iter()
            .filter(|p| p.0.is_finite() && p.1.is_finite());
        let mut last: Option<DVec3> = None;
        let mut points: Vec<Point> = Vec::with_capacity(outline.len());
        let mut any_in_sight = false;
        for &place in finite {
            let seen = self.seen(place);
            let before = last.replace(seen);
            any_in_sight |= seen.z >= 0.0;
            if let Some(before) = before {
                if (before.z < 0.0) != (seen.z < 0.0) {
                    points.push(self.between(before, seen));
                } else if seen.z < 0.0 {
                    self.add_along_limb(&mut points, before, seen);
                }
            }
            let at = if seen.z >= 0.0 {
                self.on_picture(seen.x, seen.y)
            } else {
                self.on_limb(maths::atan2(seen.y, seen.x))
            };
            let near = points
                .last()
                .is_some_and(|last| (at - *last).hypot2() < 0.1);
            if !near {
                points.push(at);
            }
        }
        // What is all out of sight may still go around the limb.
        if points.len() > 2 && (any_in_sight || goes_around(&points, self.middle)) {
            crate::outline::add_polygon(path, &points);
        }
    }

    /// Along the limb between two places out of sight, the nearer way.
    fn add_along_limb(&self, points: &mut Vec<Point>, from: DVec3, to: DVec3) {
        let [from, to] = [from, to].map(|it| maths::atan2(it.y, it.x));
        let turn = compass::angle::half_turn(to - from);
        let pieces = (turn.abs() / LIMB_STEP) as u32;
        for piece in 1..=pieces {
            let share = f64::from(piece) / f64::from(pieces + 1);
            points.push(self.on_limb(from + share * turn));
        }
    }
}

/// Whether a closed line goes around a point at all.
fn goes_around(points: &[Point], middle: Point) -> bool {
    let pairs = points.iter().zip(points.iter().cycle().skip(1));
    pairs.map(|(a, b)| crossing(*a, *b, middle)).sum::<i32>() != 0
}

/// How many times outlines go around a place on an equirectangular map, from x to y positive
/// where x is east and y south. Longitude may run on past ±π.
fn winding(outlines: &[Vec<Place>], place: Place) -> i32 {
    let flat = |(latitude, longitude): Place| Point::new(longitude, -latitude);
    let middle = compass::angle::half_turn(place.1);
    let mut around = 0;
    for outline in outlines {
        let pairs = outline.iter().zip(outline.iter().cycle().skip(1));
        for (a, b) in pairs {
            for turn in [-TAU, 0.0, TAU] {
                let at = flat((place.0, middle + turn));
                around += crossing(flat(*a), flat(*b), at);
            }
        }
    }
    around
}

/// What a side from `a` to `b` adds to the winding about a point: it counts where it crosses the
/// ray from the point to the right.
fn crossing(a: Point, b: Point, about: Point) -> i32 {
    let right = |at: f64| a.x + (at - a.y) / (b.y - a.y) * (b.x - a.x) > about.x;
    if a.y <= about.y && b.y > about.y && right(about.y) {
        1
    } else if b.y <= about.y && a.y > about.y && right(about.y) {
        -1
    } else {
        0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::Shape as _;

    fn globe(latitude: f64, longitude: f64) -> Globe {
        let centre = (latitude.to_radians(), longitude.to_radians());
        Globe::new(centre, Point::new(300.0, 200.0), 150.0)
    }

    fn degrees(places: &[(f64, f64)]) -> Vec<Place> {
        let radians = |p: &(f64, f64)| (p.0.to_radians(), p.1.to_radians());
        places.iter().map(radians).collect()
    }

    #[test]
    fn the_middle_is_in_the_middle_and_its_opposite_out_of_sight() {
        let globe = globe(35.0, -80.0);
        let middle = globe.point_of(globe.centre).unwrap();
        assert!((middle - globe.middle).hypot2() < 1e-18);
        assert_eq!(globe.point_of((-globe.centre.0, globe.centre.1 + PI)), None);
        // North is up, east is to the right.
        let north = globe
            .point_of((36_f64.to_radians(), globe.centre.1))
            .unwrap();
        assert!((north.x - 300.0).abs() < 1e-9 && north.y < 200.0);
        let east = globe
            .point_of((globe.centre.0, -79_f64.to_radians()))
            .unwrap();
        assert!(east.x > 300.0);
    }

    #[test]
    fn a_place_in_sight_comes_back_from_its_point() {
        for centre in [(0.0, 0.0), (90.0, 0.0), (-62.0, 170.0), (20.0, -101.0)] {
            let globe = globe(centre.0, centre.1);
            for (latitude, longitude) in [(0.0, 10.0), (51.0, -3.0), (-33.0, 151.0), (89.0, 5.0)] {
                let place = degrees(&[(latitude, longitude)])[0];
                let Some(point) = globe.point_of(place) else {
                    continue;
                };
                let back = globe.locate(point).unwrap();
                let near = globe.point_of(back).unwrap();
                // Near the limb a hair of the picture is much of the Earth.
                assert!((near - point).hypot2() < 1e-12, "{centre:?} {place:?}");
            }
        }
        assert_eq!(globe(0.0, 0.0).locate(Point::new(500.0, 200.0)), None);
        assert_eq!(globe(0.0, 0.0).locate(Point::new(f64::NAN, 0.0)), None);
    }

    /// Every place of a coarse mesh that is in sight is filled exactly when it lies within, from
    /// wherever the globe is looked at.
    #[test]
    fn an_area_is_filled_where_it_is_in_sight_and_nowhere_else() {
        // Twice as wide as a hemisphere, all south of a parallel, and the whole with a hole.
        let band = degrees(&[
            (-20.0, -140.0),
            (40.0, -140.0),
            (40.0, 100.0),
            (-20.0, 100.0),
        ]);
        let south = degrees(&[
            (-90.0, -180.0),
            (-30.0, -180.0),
            (-30.0, 180.0),
            (-90.0, 180.0),
        ]);
        let whole = degrees(&[
            (-90.0, -180.0),
            (90.0, -180.0),
            (90.0, 180.0),
            (-90.0, 180.0),
        ]);
        let hole = degrees(&[(-10.0, -10.0), (-10.0, 30.0), (42.0, 30.0), (42.0, -10.0)]);
        let dense = |outline: &[Place]| {
            let pairs = outline.iter().zip(outline.iter().cycle().skip(1));
            let pieces = pairs.flat_map(|(a, b)| {
                (0..60).map(move |i| {
                    let share = f64::from(i) / 60.0;
                    (a.0 + share * (b.0 - a.0), a.1 + share * (b.1 - a.1))
                })
            });
            pieces.collect::<Vec<Place>>()
        };
        let within_band =
            |lat: f64, lon: f64| (-20.0..40.0).contains(&lat) && (-140.0..100.0).contains(&lon);
        let within_hole =
            |lat: f64, lon: f64| (-10.0..42.0).contains(&lat) && (-10.0..30.0).contains(&lon);
        type Within<'a> = &'a dyn Fn(f64, f64) -> bool;
        let areas: [(Vec<Vec<Place>>, Within); 3] = [
            (vec![dense(&band)], &within_band),
            (vec![dense(&south)], &|lat, _| lat < -30.0),
            (vec![dense(&whole), dense(&hole)], &|lat, lon| {
                !within_hole(lat, lon)
            }),
        ];
        let mut checked = 0;
        for (outlines, within) in &areas {
            for centre in [
                (3.0, 7.0),
                (50.0, -170.0),
                (-71.0, 20.0),
                (88.0, 1.0),
                (-5.0, 120.0),
            ] {
                let globe = globe(centre.0, centre.1);
                let path = globe.fill(outlines);
                for latitude in (-85..=85).step_by(10) {
                    for longitude in (-175..=175).step_by(10) {
                        let (lat, lon) = (f64::from(latitude), f64::from(longitude));
                        let place = (lat.to_radians(), lon.to_radians());
                        // Nearer to the limb its straight pieces show: 1 − cos(LIMB_STEP / 2) of the
                        // radius is what z = 0.03 is within.
                        if globe.seen(place).z > 0.04 {
                            let point = globe.point_of(place).unwrap();
                            let filled = path.winding(point) != 0;
                            assert_eq!(filled, within(lat, lon), "{centre:?} {lat} {lon}");
                            checked += 1;
                        }
                    }
                }
            }
        }
        assert!(checked > 3000, "{checked}");
    }

    #[test]
    fn a_line_ends_on_the_limb() {
        let globe = globe(0.0, 0.0);
        let equator = (-180..=180).map(|lon| (0.0, f64::from(lon).to_radians()));
        let runs = globe.line(equator);
        assert_eq!(runs.len(), 1);
        let ends = [runs[0][0], runs[0][runs[0].len() - 1]];
        assert!((ends[0] - Point::new(150.0, 200.0)).hypot2() < 1e-6);
        assert!((ends[1] - Point::new(450.0, 200.0)).hypot2() < 1e-6);
        let beyond = globe.line((0..10).map(|i| (0.0, 3.0 + f64::from(i) * 0.01)));
        assert!(beyond.is_empty());
    }
}
