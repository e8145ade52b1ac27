//! The world: land, areas, lines of one value, a place; flat or as a globe.
//!
//! Flat (equirectangular), latitude and longitude are plain angles, so that a point of the picture
//! is a place ([`locate`]) and a place is a point ([`point_of`]). A globe is seen by parallel rays
//! (orthographic). The caller brings land, areas, lines and their words; there are no names.
//!
//! ```
//! use drawing::world_map::{Line, Weight, WorldMapView, locate, point_of, world_map};
//! use std::f64::consts::PI;
//!
//! let equator: Vec<(f64, f64)> = (-18..=18).map(|i| (0.0, f64::from(i) * PI / 18.0)).collect();
//! let size = kurbo::Size::new(1000.0, 500.0);
//! let view = WorldMapView {
//!     lines: &[Line { points: &equator, words: "0°", weight: Weight::Strong }],
//!     place: Some((0.9, -0.1)),
//!     ..WorldMapView::default()
//! };
//! assert!(!world_map(&view, size).is_empty());
//! let (latitude, longitude) = locate(point_of((0.9, -0.1), size).unwrap(), size).unwrap();
//! assert!((latitude - 0.9).abs() < 1e-12 && (longitude + 0.1).abs() < 1e-12);
//! ```

mod areas;
mod draw;
mod globe;
mod words;

use crate::chart::fits;
use crate::shape::Shape;
use globe::Globe;
use kurbo::{Point, Rect, Size};
use std::f64::consts::{FRAC_PI_2, PI};

/// A place: latitude and longitude in radians, north and east positive.
pub type Place = (f64, f64);

/// How strongly a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weight {
    /// A line among others.
    Plain,
    /// The same for values below zero: short dashes.
    Below,
    /// The one that stands out, such as the magnetic equator.
    Strong,
}

/// A line along which some quantity is the same.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line<'a> {
    /// Its places.
    pub points: &'a [Place],
    /// What stands on it, as in “60°”; may be empty.
    pub words: &'a str,
    /// How strongly it is drawn.
    pub weight: Weight,
}

/// How an area looks; each differs from the others by its strokes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// A shade, deeper where several lie over each other.
    Shade,
    /// Sparse strokes that rise to the right.
    Rising,
    /// Close strokes that stand upright.
    Upright,
    /// Small crosses of strokes: to be taken with caution.
    Caution,
    /// Close crossed strokes on a dark ground: not to be relied on.
    Unreliable,
}

/// An area of the map.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area<'a> {
    /// Its closed outlines, all the same way around it, and holes the other way.
    pub outlines: &'a [Vec<Place>],
    /// How it looks.
    pub look: Look,
    /// What stands in it, where there is room; may be empty.
    pub words: &'a str,
    /// Where the words stand.
    pub at: &'a [Place],
}

/// How the round Earth lies in the picture.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Projection {
    /// Equirectangular.
    #[default]
    Flat,
    /// A globe, from above this place.
    Globe(Place),
}

impl Projection {
    /// The place at a point of the picture, none beside the map.
    pub fn locate(self, point: Point, size: Size) -> Option<Place> {
        match self {
            Self::Flat => locate(point, size),
            Self::Globe(centre) => globe(centre, size)?.locate(point),
        }
    }

    /// Where a place stands in the picture, if it is in sight; longitude may run past ±π.
    pub fn point_of(self, place: Place, size: Size) -> Option<Point> {
        match self {
            Self::Flat => point_of(place, size),
            Self::Globe(centre) => globe(centre, size)?.point_of(place),
        }
    }
}

/// A globe as large as can be, in the middle, clear of the edge by a line's width.
fn globe(centre: Place, size: Size) -> Option<Globe> {
    let middle = Point::new(size.width / 2.0, size.height / 2.0);
    let radius = size.width.min(size.height) / 2.0 - 2.0;
    fits(size).then(|| Globe::new(centre, middle, radius))
}

/// What the map shows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct WorldMapView<'a> {
    /// Flat or a globe.
    pub projection: Projection,
    /// Areas over the land, the later over the earlier.
    pub areas: &'a [Area<'a>],
    /// Polygons of land, longitude running on past ±π where they cross the antimeridian. Lakes
    /// go the other way round.
    pub land: &'a [Vec<Place>],
    /// Lines, the later over the earlier.
    pub lines: &'a [Line<'a>],
    /// Places with a word of their own, such as the magnetic poles.
    pub spots: &'a [(Place, &'a str)],
    /// The place that is marked.
    pub place: Option<Place>,
    /// A place that is only pointed at.
    pub pointer: Option<Place>,
}

/// Where the map stands in a picture: as large as can be at twice as wide as high, in the
/// middle. None if the size is under 8 or over 100 000
/// either way.
pub fn area(size: Size) -> Option<Rect> {
    fits(size).then(|| {
        let height = size.height.min(size.width / 2.0);
        let middle = Point::new(size.width / 2.0, size.height / 2.0);
        Rect::from_center_size(middle, (2.0 * height, height))
    })
}

/// The place at a point of the picture, none beside the map.
pub fn locate(point: Point, size: Size) -> Option<Place> {
    let area = area(size)?;
    let (x, y) = (
        (point.x - area.x0) / area.width(),
        (point.y - area.y0) / area.height(),
    );
    let on = (0.0..=1.0).contains(&x) && (0.0..=1.0).contains(&y);
    on.then_some((FRAC_PI_2 - y * PI, (2.0 * x - 1.0) * PI))
}

/// Where a place stands in the picture; longitude may run past ±π.
pub fn point_of((latitude, longitude): Place, size: Size) -> Option<Point> {
    let area = area(size)?;
    let folded = (longitude + PI).rem_euclid(2.0 * PI) - PI;
    // The antimeridian itself is on both edges; that of the east is kept.
    let longitude = if longitude == PI { PI } else { folded };
    let latitude = latitude.clamp(-FRAC_PI_2, FRAC_PI_2);
    let point = place_on(area, (latitude, longitude));
    point.is_finite().then_some(point)
}

/// Where a place stands on a map, without folding.
fn place_on(area: Rect, (latitude, longitude): Place) -> Point {
    Point::new(
        area.x0 + (longitude / PI + 1.0) / 2.0 * area.width(),
        area.y0 + (0.5 - latitude / PI) * area.height(),
    )
}

/// What the map shows, in whole degrees: what its text equivalent is made from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct MapFigures {
    /// Latitude (north positive) and longitude (east positive, −179 to 180) of the place.
    pub place: Option<(i16, i16)>,
    /// The same of what is pointed at.
    pub pointer: Option<(i16, i16)>,
    /// How many lines are drawn.
    pub lines: usize,
}

/// What the map shows.
pub fn describe(view: &WorldMapView) -> MapFigures {
    let whole = |(latitude, longitude): Place| {
        let longitude = longitude.to_degrees().round().rem_euclid(360.0) as i16;
        let longitude = if longitude > 180 {
            longitude - 360
        } else {
            longitude
        };
        (latitude.to_degrees().round() as i16, longitude)
    };
    MapFigures {
        place: view.place.map(whole),
        pointer: view.pointer.map(whole),
        lines: view.lines.len(),
    }
}

/// Draws the map; nothing in a picture under 8 either way.
pub fn world_map(view: &WorldMapView, size: Size) -> Vec<Shape> {
    match view.projection {
        Projection::Flat => area(size).map(|area| draw::draw(view, draw::Map::flat(area))),
        Projection::Globe(centre) => {
            globe(centre, size).map(|globe| draw::draw(view, draw::Map::round(globe, size)))
        }
    }
    .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    const WIDE: Size = Size::new(1000.0, 400.0);

    #[test]
    fn the_map_keeps_its_proportions_in_the_middle_of_any_picture() {
        assert_eq!(area(WIDE), Some(Rect::new(100.0, 0.0, 900.0, 400.0)));
        let tall = area(Size::new(360.0, 500.0));
        assert_eq!(tall, Some(Rect::new(0.0, 160.0, 360.0, 340.0)));
        assert_eq!(area(Size::new(5.0, 500.0)), None);
    }

    #[test]
    fn a_point_is_a_place_and_back() {
        for (x, y, latitude, longitude) in [
            (500.0, 200.0, 0.0, 0.0),
            (100.0, 0.0, 90.0, -180.0),
            (900.0, 400.0, -90.0, 180.0),
            (700.0, 100.0, 45.0, 90.0),
        ] {
            let (lat, lon) = locate(Point::new(x, y), WIDE).unwrap();
            assert!((lat.to_degrees() - latitude).abs() < 1e-9);
            assert!((lon.to_degrees() - longitude).abs() < 1e-9);
            let back = point_of((lat, lon), WIDE).unwrap();
            assert!((back - Point::new(x, y)).hypot2() < 1e-18, "{back:?}");
        }
        assert_eq!(locate(Point::new(99.0, 200.0), WIDE), None);
        assert_eq!(locate(Point::new(f64::NAN, 200.0), WIDE), None);
    }

    #[test]
    fn longitude_past_the_antimeridian_is_folded() {
        let east = point_of((0.0, 190_f64.to_radians()), WIDE).unwrap();
        let west = point_of((0.0, -170_f64.to_radians()), WIDE).unwrap();
        assert!((east - west).hypot2() < 1e-18);
        assert_eq!(point_of((f64::NAN, 0.0), WIDE), None);
    }

    #[test]
    fn figures_are_whole_degrees() {
        let view = WorldMapView {
            place: Some((51.4_f64.to_radians(), -179.8_f64.to_radians())),
            ..WorldMapView::default()
        };
        assert_eq!(describe(&view).place, Some((51, 180)));
    }
}
