//! Lines of equal dip all over the world, computed a little at a time.
//!
//! A whole survey would hold up the page for many frames, so each [`Survey::advance`] does one
//! small part of it: the caller asks again as long as it has time.

use earth::contours::lines;
use earth::grid::{self, FieldGrid, Grid, Mesh, Node, Quantity};
use earth::{Date, Error};
use std::ops::ControlFlow;

/// Degrees between two nodes; chosen: two pixels or so of a map as wide as the panel.
const MESH: f64 = 2.0;
/// The dips that lines are drawn for, degrees.
const LEVELS: [i16; 9] = [-80, -60, -40, -20, 0, 20, 40, 60, 80];

/// A line of equal dip.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct DipLine {
    /// Latitude and longitude in radians.
    pub(crate) points: Vec<(f64, f64)>,
    /// The dip along it in degrees, down positive.
    pub(crate) dip: i16,
}

/// The work under way.
pub(crate) struct Survey {
    rows: grid::Survey,
    nodes: Vec<Vec<Node>>,
    dips: Option<Grid>,
    levels: std::slice::Iter<'static, i16>,
    found: Vec<DipLine>,
}

impl Survey {
    /// For the middle of a year, at sea level: neither a day nor an altitude moves a line by
    /// what can be seen on a small map.
    ///
    /// # Errors
    /// A year outside the model's life.
    pub(crate) fn of_year(year: u16) -> Result<Self, Error> {
        let date = Date::from_decimal_year(f64::from(year) + 0.5)?;
        Ok(Self {
            rows: grid::Survey::new(Mesh::every(MESH)?, date, 0.0)?,
            nodes: Vec::new(),
            dips: None,
            levels: LEVELS.iter(),
            found: Vec::new(),
        })
    }

    /// Surveys one parallel or draws the lines of one dip; breaks with all lines when there is
    /// nothing left to do.
    pub(crate) fn advance(&mut self) -> ControlFlow<Vec<DipLine>> {
        let Some(dips) = &self.dips else {
            match self.rows.next() {
                Some(Ok(row)) => self.nodes.push(row),
                // A parallel without a field leaves a map without lines.
                Some(Err(_)) => return ControlFlow::Break(Vec::new()),
                None => match FieldGrid::from_rows(self.rows.mesh(), &self.nodes) {
                    Some(grid) => self.dips = Some(grid.of(Quantity::Dip)),
                    None => return ControlFlow::Break(Vec::new()),
                },
            }
            return ControlFlow::Continue(());
        };
        let Some(&dip) = self.levels.next() else {
            return ControlFlow::Break(std::mem::take(&mut self.found));
        };
        let level = f64::from(dip).to_radians();
        let lines = lines(dips, level).into_iter().map(|line| DipLine {
            points: line.points().to_vec(),
            dip,
        });
        self.found.extend(lines);
        ControlFlow::Continue(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use earth::{Place, PlaceField};

    #[test]
    fn a_survey_ends_with_lines_along_which_the_dip_is_theirs() {
        let mut survey = Survey::of_year(2026).unwrap();
        let mut parts = 1;
        let lines = loop {
            match survey.advance() {
                ControlFlow::Continue(()) => parts += 1,
                ControlFlow::Break(lines) => break lines,
            }
        };
        // Ninety-one parallels, their grid, nine levels, the end.
        assert_eq!(parts, 91 + 1 + 9 + 1);
        let date = Date::from_decimal_year(2026.5).unwrap();
        for level in LEVELS {
            let line = lines.iter().find(|line| line.dip == level).unwrap();
            let (latitude, longitude) = line.points[line.points.len() / 2];
            let there = Place::new(latitude, longitude, 0.0).unwrap();
            let dip = PlaceField::at(there, date).unwrap().dip().to_degrees();
            // Linear between nodes of 2°: see `earth::contours`.
            assert!((dip - f64::from(level)).abs() < 0.3, "{level}: {dip}");
        }
    }

    #[test]
    fn a_year_outside_the_models_life_is_refused() {
        assert!(Survey::of_year(2019).is_err());
        assert!(Survey::of_year(2031).is_err());
    }
}
