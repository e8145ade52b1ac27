//! The map's shapes.

use super::globe::Globe;
use super::words::Label;
use super::{Line, Place, Weight, WorldMapView, place_on};
use crate::chart::series::spaced;
use crate::outline::{add_polygon, add_segment, ellipse};
use crate::shape::{Pen, Shape};
use crate::theme::Role;
use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Size};
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// Everything, from the ground up.
pub(super) fn draw(view: &WorldMapView, map: Map) -> Vec<Shape> {
    let mut inside = Vec::with_capacity(64);
    inside.push(Shape::flat(map.outline(0.0), Role::Halo.solid()));
    let land = map.land(view.land);
    inside.push(Shape::flat(land, Role::Rule.at(0.75)));
    for area in view.areas {
        map.area(&mut inside, area);
    }
    map.graticule(&mut inside);
    let words = map.words(view);
    let labels = map.lines(&mut inside, view.lines, words);
    let place = view.place.and_then(|place| map.point_of(place));
    if let (Some(at), Some(place)) = (place, view.place) {
        map.cross(&mut inside, place, at);
    }
    for at in view.spots.iter().filter_map(|spot| map.point_of(spot.0)) {
        let dot = circle(at, 3.4 * map.unit);
        inside.push(Shape::line(
            dot.clone(),
            Pen::solid(Role::Halo, 3.0 * map.unit),
        ));
        inside.push(Shape::flat(dot, Role::Ink.solid()));
    }
    for label in labels {
        label.draw(&mut inside);
    }
    if let Some(at) = view.pointer.and_then(|place| map.point_of(place)) {
        map.ring(&mut inside, at, 5.0, 1.4);
    }
    if let Some(at) = place {
        map.ring(&mut inside, at, 7.0, 2.6);
        let dot = circle(at, 2.2 * map.unit);
        inside.push(Shape::flat(dot, Role::Ink.solid()));
    }
    let edge = Pen::solid(Role::FaintInk, map.unit);
    vec![
        Shape::clipped(map.outline(-0.5 * map.unit), inside),
        Shape::line(map.outline(0.5 * map.unit), edge),
    ]
}

/// What the Earth is drawn on.
pub(super) enum Surface {
    Flat,
    Round(Globe),
}

pub(super) struct Map {
    pub(super) surface: Surface,
    pub(super) area: Rect,
    /// The unit that line widths are made from: 1 on a map 1000 wide, and not much less on
    /// small ones.
    pub(super) unit: f64,
    pub(super) type_size: f64,
}

impl Map {
    /// Flat, over a rectangle.
    pub(super) fn flat(area: Rect) -> Self {
        Self::new(Surface::Flat, area, area.width())
    }

    /// A globe in the middle of a picture; its lines are those of a flat map half as wide again.
    pub(super) fn round(globe: Globe, size: Size) -> Self {
        let side = size.width.min(size.height);
        let middle = Point::new(size.width / 2.0, size.height / 2.0);
        let area = Rect::from_center_size(middle, (side, side));
        Self::new(Surface::Round(globe), area, 1.5 * side)
    }

    fn new(surface: Surface, area: Rect, wide: f64) -> Self {
        let share = wide / 1000.0;
        Self {
            surface,
            area,
            unit: share.max((0.5 + 0.5 * share).min(3.0 * share)),
            type_size: (14.0 * share).max(10.0_f64.min(30.0 * share)),
        }
    }

    /// Its edge, moved inward.
    fn outline(&self, inward: f64) -> BezPath {
        match &self.surface {
            Surface::Flat => self.area.inset(inward).to_path(0.1),
            Surface::Round(globe) => globe.limb(),
        }
    }

    /// Where a place stands, if it is in sight.
    pub(super) fn point_of(&self, place: Place) -> Option<Point> {
        match &self.surface {
            Surface::Flat => {
                let on = super::point_of(place, self.area.size())?;
                Some(on + self.area.origin().to_vec2())
            }
            Surface::Round(globe) => globe.point_of(place),
        }
    }

    /// The inside of closed outlines, to be filled by winding.
    pub(super) fn filled(&self, outlines: &[Vec<Place>]) -> BezPath {
        match &self.surface {
            Surface::Round(globe) => globe.fill(outlines),
            Surface::Flat => {
                let mut path = BezPath::new();
                for outline in outlines {
                    let points: Vec<Point> = outline.iter().map(|&p| self.place(p)).collect();
                    add_polygon(&mut path, &points);
                }
                path
            }
        }
    }

    /// The parts of a line that are in sight.
    fn runs(&self, points: &[Place]) -> Vec<Vec<Point>> {
        let finite = (points.iter().copied()).filter(|p| p.0.is_finite() && p.1.is_finite());
        match &self.surface {
            Surface::Flat => vec![finite.map(|p| self.place(p)).collect()],
            Surface::Round(globe) => globe.line(finite),
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
        if let Surface::Round(globe) = &self.surface {
            return globe.fill(polygons);
        }
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
        let pen = Pen::solid(Role::FaintInk, 0.6 * self.unit).faded(0.35);
        if let Surface::Round(globe) = &self.surface {
            let runs: Vec<Vec<Point>> = graticule()
                .flat_map(|line| globe.line(line.into_iter()))
                .collect();
            shapes.push(Shape::line(crate::chart::polylines(&runs), pen));
            return;
        }
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
        shapes.push(Shape::line(path, pen));
    }

    /// The lines; and their words, to be drawn over what else crosses them.
    fn lines<'a>(
        &self,
        shapes: &mut Vec<Shape>,
        lines: &[Line<'a>],
        words: Vec<Label<'a>>,
    ) -> Vec<Label<'a>> {
        let runs = lines.iter().flat_map(|line| {
            let runs = self.runs(line.points).into_iter();
            runs.map(|run| (*line, spaced(&run, 0.5)))
        });
        let (lines, placed): (Vec<Line>, Vec<Vec<Point>>) = runs.unzip();
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
        self.labels(&lines, &placed, words)
    }

    /// Hairlines from a place to all four edges; on a globe, its parallel and meridian.
    fn cross(&self, shapes: &mut Vec<Shape>, place: Place, at: Point) {
        let arms = match &self.surface {
            Surface::Flat => self.straight_arms(at),
            Surface::Round(globe) => {
                let (latitude, longitude) = place;
                let around = (-60..=60).map(|i| (latitude, f64::from(i) * PI / 60.0));
                let upright = (-45..=45).map(|i| (f64::from(i) * PI / 90.0, longitude));
                let runs = [globe.line(around), globe.line(upright)].concat();
                crate::chart::polylines(&runs)
            }
        };
        let halo = Pen::solid(Role::Halo, 3.4 * self.unit).faded(0.75);
        shapes.push(Shape::line(arms.clone(), halo));
        let pen = Pen::solid(Role::Ink, 0.8 * self.unit).faded(0.7);
        shapes.push(Shape::line(arms, pen));
    }

    fn straight_arms(&self, at: Point) -> BezPath {
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
        arms
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

/// Parallels and meridians every thirty degrees.
fn graticule() -> impl Iterator<Item = Vec<Place>> {
    let parallels = (-2..=2).map(|step| {
        let latitude = f64::from(step) * PI / 6.0;
        (-60..=60)
            .map(|i| (latitude, f64::from(i) * PI / 60.0))
            .collect()
    });
    let meridians = (-6..6).map(|step| {
        let longitude = f64::from(step) * PI / 6.0;
        (-45..=45)
            .map(|i| (f64::from(i) * PI / 90.0, longitude))
            .collect()
    });
    parallels.chain(meridians)
}

fn circle(at: Point, radius: f64) -> BezPath {
    ellipse(Affine::new([radius, 0.0, 0.0, radius, at.x, at.y]))
}
