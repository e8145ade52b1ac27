//! The map's shapes.

use super::{Line, Place, Weight, WorldMapView, place_on};
use crate::chart::placing::overlap;
use crate::chart::series::spaced;
use crate::lettering::{label, text_width};
use crate::outline::{add_polygon, add_segment, ellipse};
use crate::shape::{Anchor, Group, Pen, Shape};
use crate::theme::Role;
use compass::maths;
use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Size, Vec2};
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// Everything, from the ground up.
pub(super) fn draw(view: &WorldMapView, area: Rect) -> Vec<Shape> {
    let map = Map::new(area);
    let mut inside = Vec::with_capacity(64);
    inside.push(Shape::flat(area.to_path(0.1), Role::Halo.solid()));
    let land = map.land(view.land);
    inside.push(Shape::flat(land, Role::Rule.at(0.75)));
    map.graticule(&mut inside);
    let labels = map.lines(&mut inside, view.lines);
    let marked =
        |place: Place| Some(super::point_of(place, area.size())? + area.origin().to_vec2());
    let place = view.place.and_then(marked);
    if let Some(at) = place {
        map.cross(&mut inside, at);
    }
    for label in labels {
        label.draw(&mut inside);
    }
    if let Some(at) = view.pointer.and_then(marked) {
        map.ring(&mut inside, at, 5.0, 1.4);
    }
    if let Some(at) = place {
        map.ring(&mut inside, at, 7.0, 2.6);
        let dot = circle(at, 2.2 * map.unit);
        inside.push(Shape::flat(dot, Role::Ink.solid()));
    }
    let frame = area.inset(-0.5 * map.unit).to_path(0.1);
    let edge = area.inset(0.5 * map.unit).to_path(0.1);
    vec![
        Shape::clipped(frame, inside),
        Shape::line(edge, Pen::solid(Role::FaintInk, map.unit)),
    ]
}

struct Map {
    area: Rect,
    /// The unit that line widths are made from: 1 on a map 1000 wide, and not much less on
    /// small ones.
    unit: f64,
    type_size: f64,
}

impl Map {
    fn new(area: Rect) -> Self {
        let share = area.width() / 1000.0;
        Self {
            area,
            unit: share.max((0.5 + 0.5 * share).min(3.0 * share)),
            type_size: (14.0 * share).max(10.0_f64.min(30.0 * share)),
        }
    }

    fn place(&self, place: Place) -> Point {
        // Nothing of the Earth lies further out; land may run on for a turn or two.
        let (latitude, longitude) = place;
        let latitude = latitude.clamp(-FRAC_PI_2, FRAC_PI_2);
        place_on(
            self.area,
            (latitude, longitude.clamp(-3.0 * TAU, 3.0 * TAU)),
        )
    }

    /// All polygons, and again a whole turn to either side where they reach past the edge.
    fn land(&self, polygons: &[Vec<Place>]) -> BezPath {
        let mut path = BezPath::new();
        for polygon in polygons {
            let places = || {
                polygon
                    .iter()
                    .filter(|p| p.0.is_finite() && p.1.is_finite())
            };
            let west = places().map(|p| p.1).fold(f64::INFINITY, f64::min);
            let east = places().map(|p| p.1).fold(f64::NEG_INFINITY, f64::max);
            for turn in [-TAU, 0.0, TAU] {
                if west + turn >= PI || east + turn <= -PI {
                    continue;
                }
                let points: Vec<Point> = places().map(|p| self.place((p.0, p.1 + turn))).collect();
                // What is smaller than half a unit of the picture is not seen.
                let shore = spaced(&points, 0.5);
                if shore.len() > 3 {
                    add_polygon(&mut path, &shore);
                }
            }
        }
        path
    }

    /// Hairlines every thirty degrees, the equator among them.
    fn graticule(&self, shapes: &mut Vec<Shape>) {
        let mut path = BezPath::new();
        for step in 1..12_i32 {
            let angle = f64::from(step - 6) * PI / 6.0;
            let meridian = self.place((0.0, angle)).x;
            add_segment(
                &mut path,
                Point::new(meridian, self.area.y0),
                Point::new(meridian, self.area.y1),
            );
            if angle.abs() < FRAC_PI_2 - 0.1 {
                let parallel = self.place((angle, 0.0)).y;
                add_segment(
                    &mut path,
                    Point::new(self.area.x0, parallel),
                    Point::new(self.area.x1, parallel),
                );
            }
        }
        shapes.push(Shape::line(
            path,
            Pen::solid(Role::FaintInk, 0.6 * self.unit).faded(0.35),
        ));
    }

    /// The lines; and their words, to be drawn over what else crosses them.
    fn lines<'a>(&self, shapes: &mut Vec<Shape>, lines: &[Line<'a>]) -> Vec<Label<'a>> {
        let placed: Vec<Vec<Point>> = lines
            .iter()
            .map(|line| {
                let finite = line
                    .points
                    .iter()
                    .filter(|p| p.0.is_finite() && p.1.is_finite());
                let points: Vec<Point> = finite.map(|&p| self.place(p)).collect();
                spaced(&points, 0.5)
            })
            .collect();
        for (line, points) in lines.iter().zip(&placed) {
            let path = crate::chart::polylines(std::slice::from_ref(points));
            let pen = match line.weight {
                Weight::Plain => Pen::solid(Role::Ink, 1.1 * self.unit).faded(0.75),
                Weight::Below => Pen::solid(Role::Ink, 1.1 * self.unit)
                    .faded(0.75)
                    .dashed(3.0 * self.unit, 3.4 * self.unit),
                Weight::Strong => Pen::solid(Role::Ink, 2.8 * self.unit),
            };
            if line.weight == Weight::Strong {
                shapes.push(Shape::line(
                    path.clone(),
                    Pen::solid(Role::Halo, 5.6 * self.unit).faded(0.8),
                ));
            }
            shapes.push(Shape::line(path, pen));
        }
        self.labels(lines, &placed)
    }

    /// Where the lines' words stand: once or a few times on each line, upright as read, on the
    /// same few meridians where they can be, and clear of each other.
    fn labels<'a>(&self, lines: &[Line<'a>], placed: &[Vec<Point>]) -> Vec<Label<'a>> {
        let mut taken: Vec<Label> = Vec::new();
        let mut named = vec![false; lines.len()];
        // Middle of the Atlantic, of the Pacific and of the Indian Ocean, as shares of the width.
        let columns: &[f64] = if self.area.width() > 600.0 {
            &[0.415, 0.1, 0.72]
        } else {
            &[0.415]
        };
        let order = |weight: Weight| usize::from(weight != Weight::Strong);
        let mut by_weight: Vec<usize> = (0..lines.len()).collect();
        by_weight.sort_by_key(|&i| order(lines[i].weight));
        for &column in columns {
            let x = self.area.x0 + column * self.area.width();
            for &index in &by_weight {
                let candidates = crossings(&placed[index], x);
                named[index] |= self.settle(&mut taken, &lines[index], &placed[index], candidates);
            }
        }
        // A long line with no words yet has them as near to its middle as there is room.
        for &index in &by_weight {
            let points = &placed[index];
            let steps = points
                .windows(2)
                .map(|two| (two[1] - two[0]).hypot2().sqrt());
            let enough = 5.0 * text_width(lines[index].words, self.type_size);
            if !named[index] && steps.sum::<f64>() > enough {
                let tries = 25;
                let outward = (0..tries).map(|i: usize| {
                    let half = tries / 2;
                    let share = if i.is_multiple_of(2) {
                        half + i / 2
                    } else {
                        half - i.div_ceil(2)
                    };
                    share * (points.len() - 1) / (tries - 1)
                });
                let candidates = outward.map(|i| (i, points[i])).collect();
                self.settle(&mut taken, &lines[index], points, candidates);
            }
        }
        taken
    }

    /// Puts a line's words at the first of some places that is clear; whether there is one.
    fn settle<'a>(
        &self,
        taken: &mut Vec<Label<'a>>,
        line: &Line<'a>,
        points: &[Point],
        candidates: Vec<(usize, Point)>,
    ) -> bool {
        if line.words.is_empty() {
            return false;
        }
        let size = if line.weight == Weight::Strong {
            1.1
        } else {
            1.0
        } * self.type_size;
        let width = text_width(line.words, size);
        for (index, at) in candidates {
            let along = direction(points, index, 0.5 * width + size);
            let label = Label {
                words: line.words,
                at,
                along,
                size: Size::new(width + 0.5 * size, 1.15 * size),
                type_size: size,
                strong: line.weight == Weight::Strong,
            };
            let rect = label.bounds();
            let room = self.area.inset(-0.2 * size);
            let inside = room.x0 <= rect.x0
                && rect.x1 <= room.x1
                && room.y0 <= rect.y0
                && rect.y1 <= room.y1;
            if inside && taken.iter().all(|other| !overlap(other.bounds(), rect)) {
                taken.push(label);
                return true;
            }
        }
        false
    }

    /// Hairlines from a place to all four edges.
    fn cross(&self, shapes: &mut Vec<Shape>, at: Point) {
        let mut arms = BezPath::new();
        add_segment(
            &mut arms,
            Point::new(self.area.x0, at.y),
            Point::new(self.area.x1, at.y),
        );
        add_segment(
            &mut arms,
            Point::new(at.x, self.area.y0),
            Point::new(at.x, self.area.y1),
        );
        let halo = Pen::solid(Role::Halo, 3.4 * self.unit).faded(0.75);
        shapes.push(Shape::line(arms.clone(), halo));
        let pen = Pen::solid(Role::Ink, 0.8 * self.unit).faded(0.7);
        shapes.push(Shape::line(arms, pen));
    }

    /// A ring about a place, radius and width in this map's unit.
    fn ring(&self, shapes: &mut Vec<Shape>, at: Point, radius: f64, width: f64) {
        let ring = circle(at, radius * self.unit);
        shapes.push(Shape::flat(ring.clone(), Role::Halo.at(0.6)));
        let halo = Pen::solid(Role::Halo, (width + 3.6) * self.unit);
        shapes.push(Shape::line(ring.clone(), halo));
        shapes.push(Shape::line(ring, Pen::solid(Role::Ink, width * self.unit)));
    }
}

fn circle(at: Point, radius: f64) -> BezPath {
    ellipse(Affine::new([radius, 0.0, 0.0, radius, at.x, at.y]))
}

/// Words on a line.
#[derive(Clone, Debug)]
struct Label<'a> {
    words: &'a str,
    at: Point,
    /// The way of the line, a unit vector to the right.
    along: Vec2,
    size: Size,
    type_size: f64,
    strong: bool,
}

impl Label<'_> {
    fn turned(&self) -> Affine {
        let Vec2 { x, y } = self.along;
        Affine::new([x, y, -y, x, self.at.x, self.at.y])
    }

    fn plate(&self) -> BezPath {
        let rect = Rect::from_center_size(Point::ZERO, self.size);
        self.turned() * crate::outline::rounded(rect, 0.3 * self.type_size)
    }

    fn bounds(&self) -> Rect {
        let Vec2 { x, y } = self.along;
        let wide = self.size.width * x.abs() + self.size.height * y.abs();
        let tall = self.size.width * y.abs() + self.size.height * x.abs();
        Rect::from_center_size(self.at, (wide, tall))
    }

    fn draw(&self, shapes: &mut Vec<Shape>) {
        shapes.push(Shape::flat(self.plate(), Role::Halo.at(0.86)));
        let words = label(
            self.words.to_owned(),
            Point::ZERO,
            Anchor::Middle,
            self.type_size,
            if self.strong { 700 } else { 500 },
            Role::Ink.solid(),
        );
        shapes.push(Shape::Group(Group {
            transform: self.turned(),
            clip: None,
            opacity: 1.0,
            shapes: vec![words],
        }));
    }
}

/// Where a line crosses an upright, with the index of the point before.
fn crossings(points: &[Point], x: f64) -> Vec<(usize, Point)> {
    let pairs = points.iter().zip(points.iter().skip(1)).enumerate();
    pairs
        .filter_map(|(index, (a, b))| {
            let share = (x - a.x) / (b.x - a.x);
            (0.0..=1.0)
                .contains(&share)
                .then(|| (index, a.lerp(*b, share)))
        })
        .collect()
}

/// The way a line takes about one of its points, seen over a length to either side; to the right.
fn direction(points: &[Point], index: usize, length: f64) -> Vec2 {
    let here = points[index];
    let far = |p: &&Point| (**p - here).hypot2() > length * length;
    let after = points[index..].iter().find(far).or(points.last());
    let before = points[..=index].iter().rev().find(far).or(points.first());
    let way = after
        .zip(before)
        .map_or(Vec2::new(1.0, 0.0), |(a, b)| *a - *b);
    let angle = maths::atan2(way.y, way.x);
    // Read from the left, or from below where it stands upright.
    let upright = if angle > FRAC_PI_2 {
        angle - PI
    } else if angle <= -FRAC_PI_2 {
        angle + PI
    } else {
        angle
    };
    let (sin, cos) = maths::sin_cos(upright);
    Vec2::new(cos, sin)
}
