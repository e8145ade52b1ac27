//! The field all over the world at one date: what maps are drawn from.
//!
//! A 2° mesh has some sixteen thousand nodes, so a [`Survey`] hands them out row by row: a page
//! takes as many rows at a time as it can without holding up anything else.
//!
//! ```
//! use earth::Date;
//! use earth::contours::lines;
//! use earth::grid::{FieldGrid, Mesh, Quantity, Survey};
//!
//! let survey = Survey::new(Mesh::every(10.0)?, Date::parse("2026-05-01")?, 0.0)?;
//! let grid = FieldGrid::gather(survey)?;
//! let equator = lines(&grid.of(Quantity::Dip), 0.0);
//! let (latitude, longitude) = equator[0].points()[0];
//! assert!(latitude.abs() < 0.3 && longitude.abs() <= 3.15);
//! # Ok::<(), earth::Error>(())
//! ```

use crate::date::Date;
use crate::error::Error;
use crate::place::Place;
use crate::wmm::PlaceField;
use compass::field::MagneticField;
use compass::maths;
use compass::range::{OutOfRange, Range};
use compass::unit::Unit;
use std::f64::consts::{FRAC_PI_2, PI};

/// Distance between two nodes that can be asked for; the limits are chosen.
pub const SPACING: Range = Range::new("spacing of the grid", Unit::Degree, 0.25, 30.0);

/// Nodes on even parallels from pole to pole and even meridians all round, both poles and both
/// sides of the antimeridian included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mesh {
    /// Spaces from pole to pole; half of those all round.
    spaces: u16,
}

impl Mesh {
    /// With a node every so many degrees, or the nearest to it that divides 180.
    ///
    /// # Errors
    /// A spacing beyond [`SPACING`].
    pub fn every(degrees: f64) -> Result<Self, OutOfRange> {
        SPACING.accept(degrees)?;
        Ok(Self {
            spaces: (180.0 / degrees).round() as u16,
        })
    }

    /// How many parallels.
    pub fn rows(self) -> usize {
        usize::from(self.spaces) + 1
    }

    /// How many meridians; the first and the last are the same.
    pub fn columns(self) -> usize {
        2 * usize::from(self.spaces) + 1
    }

    /// Latitude in radians at a row counted from the south pole; it may lie between two.
    pub fn latitude(self, row: f64) -> f64 {
        (row / f64::from(self.spaces) * PI - FRAC_PI_2).clamp(-FRAC_PI_2, FRAC_PI_2)
    }

    /// Longitude in radians at a column counted from the antimeridian eastward; it may lie between
    /// two.
    pub fn longitude(self, column: f64) -> f64 {
        (column / f64::from(self.spaces) * PI - PI).clamp(-PI, PI)
    }
}

/// What a map shows of the field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// Dip in radians, down positive.
    Dip,
    /// Variation in radians, east positive.
    Variation,
    /// Horizontal intensity in tesla.
    Horizontal,
}

/// The field at one node.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Node {
    /// Dip in radians, down positive.
    pub dip: f64,
    /// Variation in radians, east positive.
    pub variation: f64,
    /// Horizontal intensity in tesla.
    pub horizontal: f64,
}

impl Node {
    /// The field itself; none where a number of the node is none.
    pub fn field(&self) -> Option<MagneticField> {
        let vertical = self.horizontal * maths::tan(self.dip);
        MagneticField::new(self.horizontal, vertical, self.variation).ok()
    }
}

/// The rows of a mesh from south to north, each computed when it is asked for.
#[derive(Clone, Debug)]
pub struct Survey {
    mesh: Mesh,
    date: Date,
    altitude: f64,
    next: usize,
}

impl Survey {
    /// At a date and an altitude above the ellipsoid in metres.
    ///
    /// # Errors
    /// A date outside the model's life, an altitude beyond its range.
    pub fn new(mesh: Mesh, date: Date, altitude: f64) -> Result<Self, Error> {
        let survey = Self {
            mesh,
            date,
            altitude,
            next: 0,
        };
        survey.node(0, 0).map(|_| survey)
    }

    /// The mesh that is surveyed.
    pub fn mesh(&self) -> Mesh {
        self.mesh
    }

    /// The same, to go on at a row counted from the south pole: for several who share the work.
    #[must_use]
    pub fn skip_to(mut self, row: usize) -> Self {
        self.next = row.min(self.mesh.rows());
        self
    }

    fn node(&self, row: usize, column: usize) -> Result<Node, Error> {
        let latitude = self.mesh.latitude(row as f64);
        let longitude = self.mesh.longitude(column as f64);
        let field = PlaceField::at(Place::new(latitude, longitude, self.altitude)?, self.date)?;
        Ok(Node {
            dip: field.dip(),
            variation: field.variation(),
            horizontal: field.horizontal(),
        })
    }
}

impl Iterator for Survey {
    type Item = Result<Vec<Node>, Error>;

    fn next(&mut self) -> Option<Self::Item> {
        let row = self.next;
        if row >= self.mesh.rows() {
            return None;
        }
        self.next += 1;
        let meridians = 0..self.mesh.columns() - 1;
        let nodes: Result<Vec<Node>, Error> = meridians.map(|c| self.node(row, c)).collect();
        Some(nodes.map(|mut nodes| {
            // The last meridian is the first one again.
            nodes.extend(nodes.first().copied());
            nodes
        }))
    }

    fn size_hint(&self) -> (usize, Option<usize>) {
        let left = self.mesh.rows() - self.next;
        (left, Some(left))
    }
}

impl ExactSizeIterator for Survey {}

/// The field at every node of a mesh.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldGrid {
    mesh: Mesh,
    nodes: Vec<Node>,
}

impl FieldGrid {
    /// A whole survey at once.
    ///
    /// # Errors
    /// What the survey meets.
    pub fn gather(mut survey: Survey) -> Result<Self, Error> {
        let mesh = survey.mesh();
        survey.next = 0;
        let rows: Result<Vec<Vec<Node>>, Error> = survey.collect();
        Ok(Self {
            mesh,
            nodes: rows?.concat(),
        })
    }

    /// From the rows of a mesh, from south to north; none unless all are there.
    pub fn from_rows(mesh: Mesh, rows: &[Vec<Node>]) -> Option<Self> {
        let whole = rows.len() == mesh.rows() && rows.iter().all(|r| r.len() == mesh.columns());
        whole.then(|| Self {
            mesh,
            nodes: rows.concat(),
        })
    }

    /// Its nodes, row by row from the south, each from the antimeridian eastward.
    pub fn nodes(&self) -> &[Node] {
        &self.nodes
    }

    /// One quantity at every node.
    pub fn of(&self, quantity: Quantity) -> Grid {
        let value = |node: &Node| match quantity {
            Quantity::Dip => node.dip,
            Quantity::Variation => node.variation,
            Quantity::Horizontal => node.horizontal,
        };
        Grid {
            mesh: self.mesh,
            values: self.nodes.iter().map(value).collect(),
            turns: quantity == Quantity::Variation,
        }
    }
}

/// One number at every node of a mesh.
#[derive(Clone, Debug, PartialEq)]
pub struct Grid {
    mesh: Mesh,
    values: Vec<f64>,
    turns: bool,
}

impl Grid {
    /// From what `value` gives at each latitude and longitude in radians; it need not be finite.
    pub fn sampled(mesh: Mesh, mut value: impl FnMut(f64, f64) -> f64) -> Self {
        let mut values = Vec::with_capacity(mesh.rows() * mesh.columns());
        for row in 0..mesh.rows() {
            for column in 0..mesh.columns() {
                let latitude = mesh.latitude(row as f64);
                values.push(value(latitude, mesh.longitude(column as f64)));
            }
        }
        Self {
            mesh,
            values,
            turns: false,
        }
    }

    /// From a number for each node, row by row from the south, each from the antimeridian
    /// eastward; none unless there are as many as nodes.
    pub fn from_values(mesh: Mesh, values: Vec<f64>) -> Option<Self> {
        let whole = values.len() == mesh.rows() * mesh.columns();
        whole.then_some(Self {
            mesh,
            values,
            turns: false,
        })
    }

    /// The same with each number changed; what comes of it are numbers, not directions.
    #[must_use]
    pub fn map(&self, change: impl FnMut(f64) -> f64) -> Self {
        Self {
            mesh: self.mesh,
            values: self.values.iter().copied().map(change).collect(),
            turns: false,
        }
    }

    /// Its mesh.
    pub fn mesh(&self) -> Mesh {
        self.mesh
    }

    /// Its numbers, row by row from the south, each from the antimeridian eastward.
    pub fn values(&self) -> &[f64] {
        &self.values
    }

    /// Whether its numbers are directions, so that −π and π are the same.
    pub fn turns(&self) -> bool {
        self.turns
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn survey(degrees: f64) -> Survey {
        let date = Date::parse("2026-05-01").unwrap();
        Survey::new(Mesh::every(degrees).unwrap(), date, 0.0).unwrap()
    }

    #[test]
    fn a_mesh_reaches_from_pole_to_pole_and_all_round() {
        let mesh = Mesh::every(2.0).unwrap();
        assert_eq!((mesh.rows(), mesh.columns()), (91, 181));
        assert_eq!(mesh.latitude(0.0), -FRAC_PI_2);
        assert_eq!(mesh.latitude(90.0), FRAC_PI_2);
        assert_eq!(mesh.longitude(90.0), 0.0);
        assert_eq!(mesh.longitude(180.0), PI);
        assert_eq!(Mesh::every(7.0).unwrap().rows(), 27, "every 6.92°");
        assert_eq!(
            Mesh::every(0.1).unwrap_err().to_string(),
            "spacing of the grid must be from 0.25° to 30°, not 0.1°"
        );
    }

    #[test]
    fn rows_taken_in_slices_make_the_same_grid() {
        let whole = FieldGrid::gather(survey(15.0)).unwrap();
        let mut slices = survey(15.0);
        assert_eq!(slices.len(), 13);
        let mut rows: Vec<_> = slices.by_ref().take(5).map(Result::unwrap).collect();
        assert_eq!(slices.len(), 8);
        assert_eq!(FieldGrid::from_rows(slices.mesh(), &rows), None);
        rows.extend(slices.by_ref().map(Result::unwrap));
        let grid = FieldGrid::from_rows(slices.mesh(), &rows).unwrap();
        assert_eq!(grid, whole);
    }

    #[test]
    fn a_node_holds_what_the_model_says_there() {
        let grid = FieldGrid::gather(survey(10.0)).unwrap();
        let place = Place::new(50_f64.to_radians(), 20_f64.to_radians(), 0.0).unwrap();
        let field = PlaceField::at(place, Date::parse("2026-05-01").unwrap()).unwrap();
        let index = 14 * 37 + 20;
        // The place differs by the rounding of degrees to radians.
        let near = |a: f64, b: f64| (a - b).abs() < 1e-12;
        assert!(near(grid.of(Quantity::Dip).values()[index], field.dip()));
        assert!(near(
            grid.of(Quantity::Variation).values()[index],
            field.variation()
        ));
        assert!(near(
            grid.of(Quantity::Horizontal).values()[index],
            field.horizontal()
        ));
    }

    #[test]
    fn a_date_outside_the_model_is_refused_before_the_first_row() {
        let date = Date::parse("2031-01-01").unwrap();
        let refused = Survey::new(Mesh::every(30.0).unwrap(), date, 0.0);
        assert!(matches!(refused, Err(Error::OutsideModel { .. })));
    }
}
