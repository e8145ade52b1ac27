//! Lines along which a quantity is the same, and the areas between them.
//!
//! The `contour` package finds, by marching squares, between which nodes a line passes; where it
//! crosses from one node to the next is then interpolated here, linearly. A place on a line is
//! therefore wrong by at most an eighth of the second difference between nodes: on a 2° mesh
//! by less than 0.08° of dip within 50° of the equator, and by more only toward the magnetic
//! poles.

use crate::grid::Grid;
use compass::angle::half_turn;
use std::f64::consts::PI;

/// A stretch of one level: at least two places, closed when the first and last are the same.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    points: Vec<(f64, f64)>,
}

impl Line {
    /// Latitude and longitude in radians; longitude within ±π, and never a jump across the
    /// antimeridian: a line ends there, and another begins on the other side.
    pub fn points(&self) -> &[(f64, f64)] {
        &self.points
    }

    /// Whether the line closes on itself.
    pub fn is_closed(&self) -> bool {
        self.points.len() > 2 && self.points.first() == self.points.last()
    }
}

/// The outlines of where a grid's numbers are `level` or more, closed, along the edges of the map
/// where they come to them; all the same way around, and holes the other way. Latitude and
/// longitude in radians. Nodes that are not numbers count as less. It is for numbers, not for
/// directions.
pub fn areas(grid: &Grid, level: f64) -> Vec<Vec<(f64, f64)>> {
    let above: Vec<f64> = grid.values().iter().map(|value| value - level).collect();
    let mesh = grid.mesh();
    let rings = contour::contour_rings(&above, 0.0, mesh.columns(), mesh.rows());
    let place = |x: f64, y: f64| {
        crossing(grid, &above, x, y)
            .unwrap_or_else(|| (mesh.latitude(y - 0.5), mesh.longitude(x - 0.5)))
    };
    let rings = rings.unwrap_or_default();
    let outlines = (rings.iter()).map(|ring| ring.iter().map(|p| place(p.x, p.y)).collect());
    outlines.collect()
}

/// The place deepest inside where a grid's numbers are `level` or more, in steps of the mesh and
/// counted on the map, between two latitudes in radians: where words stand. None where there is no
/// place at least `least` steps from what is outside.
pub fn deepest(grid: &Grid, level: f64, latitudes: [f64; 2], least: u16) -> Option<(f64, f64)> {
    let mesh = grid.mesh();
    let (rows, columns) = (mesh.rows(), mesh.columns());
    let within = |row: usize, column: usize| {
        let latitude = mesh.latitude(row as f64);
        grid.values()[row * columns + column] >= level
            && (latitudes[0]..=latitudes[1]).contains(&latitude)
    };
    // Steps to the nearest node outside, as a king walks: forward, then backward.
    let mut steps = vec![0_u16; rows * columns];
    for row in 1..rows - 1 {
        for column in 1..columns - 1 {
            if within(row, column) {
                let around = [(0, -1), (-1, -1), (-1, 0), (-1, 1)];
                steps[row * columns + column] = 1 + nearest(&steps, columns, row, column, around);
            }
        }
    }
    for row in (1..rows - 1).rev() {
        for column in (1..columns - 1).rev() {
            let around = [(0, 1), (1, 1), (1, 0), (1, -1)];
            let by_here = 1 + nearest(&steps, columns, row, column, around);
            let here = &mut steps[row * columns + column];
            *here = by_here.min(*here);
        }
    }
    let best = (0..steps.len()).max_by_key(|&index| steps[index])?;
    (steps[best] >= least).then(|| {
        let (row, column) = (best / columns, best % columns);
        (mesh.latitude(row as f64), mesh.longitude(column as f64))
    })
}

/// The least of some nodes about another.
fn nearest(
    steps: &[u16],
    columns: usize,
    row: usize,
    column: usize,
    around: [(isize, isize); 4],
) -> u16 {
    let at = |(up, right): (isize, isize)| {
        let index = row.wrapping_add_signed(up) * columns + column.wrapping_add_signed(right);
        steps.get(index).copied().unwrap_or(0)
    };
    around.into_iter().map(at).min().unwrap_or(0)
}

/// The lines along which a grid's numbers are `level`, the greater numbers always on the same
/// side. Where its numbers are directions, so is the level. Nodes that are not numbers have no
/// lines near them.
pub fn lines(grid: &Grid, level: f64) -> Vec<Line> {
    let above: Vec<f64> = grid
        .values()
        .iter()
        .map(|value| {
            if grid.turns() {
                half_turn(value - level)
            } else {
                value - level
            }
        })
        .collect();
    let mesh = grid.mesh();
    // It fails only for a grid that does not fill its rows and columns, which none does.
    let rings = contour::contour_rings(&above, 0.0, mesh.columns(), mesh.rows());
    rings
        .unwrap_or_default()
        .iter()
        .flat_map(|ring| {
            let points = ring.iter().map(|p| crossing(grid, &above, p.x, p.y));
            pieces(&points.collect::<Vec<_>>())
        })
        .collect()
}

/// Where a line crosses from one node to the next, given the half-way point between the two. The
/// package counts the node in row 0, column 0 as (0.5, 0.5), so that of the two parts of a
/// half-way point one is whole. None on the outer edge, which is no line but only closes a ring,
/// and none where a direction jumps from −π to π.
fn crossing(grid: &Grid, above: &[f64], x: f64, y: f64) -> Option<(f64, f64)> {
    let mesh = grid.mesh();
    let (column, row) = (x - 0.5, y - 0.5);
    let along_row = column.fract() != 0.0;
    let step = if along_row { (0.5, 0.0) } else { (0.0, 0.5) };
    let (from, to) = (
        (column - step.0, row - step.1),
        (column + step.0, row + step.1),
    );
    let last = ((mesh.columns() - 1) as f64, (mesh.rows() - 1) as f64);
    if from.0 < 0.0 || from.1 < 0.0 || to.0 > last.0 || to.1 > last.1 {
        return None;
    }
    let value =
        |(column, row): (f64, f64)| above.get(row as usize * mesh.columns() + column as usize);
    let (before, after) = (*value(from)?, *value(to)?);
    let share = before / (before - after);
    if grid.turns() && (after - before).abs() > PI || !share.is_finite() {
        return None;
    }
    let between = |from: f64, to: f64| from + share * (to - from);
    Some((
        mesh.latitude(between(from.1, to.1)),
        mesh.longitude(between(from.0, to.0)),
    ))
}

/// The unbroken pieces of a ring whose last point is its first.
fn pieces(ring: &[Option<(f64, f64)>]) -> Vec<Line> {
    let once = &ring[..ring.len().saturating_sub(1)];
    let Some(gap) = once.iter().position(Option::is_none) else {
        return line(ring.iter().flatten().copied().collect())
            .into_iter()
            .collect();
    };
    // From one gap right round to the same one.
    let (before, after) = once.split_at(gap);
    let turned = [after, before].concat();
    turned
        .split(Option::is_none)
        .filter_map(|piece| line(piece.iter().flatten().copied().collect()))
        .collect()
}

fn line(mut points: Vec<(f64, f64)>) -> Option<Line> {
    // A level that passes exactly through a node crosses each of its sides there.
    points.dedup();
    (points.len() >= 2).then_some(Line { points })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grid::{FieldGrid, Mesh, Quantity, Survey};
    use crate::{Date, Place, PlaceField};
    use compass::maths;

    fn date() -> Date {
        Date::parse("2026-05-01").unwrap()
    }

    fn world(degrees: f64) -> FieldGrid {
        FieldGrid::gather(Survey::new(Mesh::every(degrees).unwrap(), date(), 0.0).unwrap()).unwrap()
    }

    fn there((latitude, longitude): (f64, f64)) -> PlaceField {
        PlaceField::at(Place::new(latitude, longitude, 0.0).unwrap(), date()).unwrap()
    }

    /// The error of linear interpolation is at most an eighth of the second derivative times the
    /// spacing squared, which is the second difference. One that falls between three nodes
    /// may exceed those at the nodes a little: half as much again is allowed.
    fn bound(grid: &Grid, rows: std::ops::Range<usize>) -> f64 {
        let columns = grid.mesh().columns();
        let at = |row: usize, column: usize| grid.values()[row * columns + column];
        let mut most = 0.0_f64;
        for row in rows {
            for column in 1..columns - 1 {
                let middle = 2.0 * at(row, column);
                let along = at(row, column - 1) + at(row, column + 1) - middle;
                let across = at(row - 1, column) + at(row + 1, column) - middle;
                most = most.max(along.abs()).max(across.abs());
            }
        }
        1.5 * most / 8.0
    }

    #[test]
    fn the_dip_computed_on_a_line_is_its_level() {
        let grid = world(2.0).of(Quantity::Dip);
        // Rows within 50° of the equator: the southern magnetic pole lies at 64° S.
        let bound = bound(&grid, 20..71);
        // Far below the 0.20° that the model itself may be wrong by (`Uncertainty`).
        assert!(bound.to_degrees() < 0.08, "{}", bound.to_degrees());
        let mut checked = 0;
        for level in [-60.0_f64, -30.0, 0.0, 20.0, 50.0, 70.0] {
            for line in lines(&grid, level.to_radians()) {
                for &point in line.points() {
                    if point.0.abs() < 49_f64.to_radians() {
                        let error = there(point).dip() - level.to_radians();
                        assert!(error.abs() < bound, "{point:?}: {}", error.to_degrees());
                        checked += 1;
                    }
                }
            }
        }
        assert!(checked > 1000, "{checked}");
    }

    #[test]
    fn variation_has_no_line_where_it_jumps() {
        let grid = world(2.0).of(Quantity::Variation);
        for level in [-180.0_f64, -90.0, -10.0, 0.0, 10.0, 90.0] {
            let level = level.to_radians();
            let found = lines(&grid, level);
            assert!(!found.is_empty());
            for &(latitude, longitude) in found.iter().flat_map(Line::points) {
                // Further south, near the magnetic pole, the variation bends sharply.
                if latitude.abs() < 49_f64.to_radians() {
                    let error = half_turn(there((latitude, longitude)).variation() - level);
                    assert!(error.abs().to_degrees() < 0.1, "{latitude} {longitude}");
                }
            }
        }
    }

    #[test]
    fn horizontal_intensity_closes_around_each_magnetic_pole() {
        // 2000 nT lies within a few degrees of each magnetic pole and nowhere else.
        let found = lines(&world(1.0).of(Quantity::Horizontal), 2e-6);
        let (north, south): (Vec<_>, Vec<_>) = found.iter().partition(|l| l.points()[0].0 > 0.0);
        assert!(!north.is_empty() && !south.is_empty());
        for line in &found {
            for &point in line.points() {
                // A cone's tip is no parabola: within a mesh of the pole lines are a mesh coarse.
                assert!((there(point).horizontal() - 2e-6).abs() < 2e-7);
            }
        }
        assert!(south.iter().all(|line| line.is_closed()));
    }

    #[test]
    fn an_area_holds_the_nodes_at_its_level_and_no_others() {
        let mesh = Mesh::every(5.0).unwrap();
        // An island, a ring with a hole, and all south of 60°.
        let grid = Grid::sampled(mesh, |latitude, longitude| {
            let far = (latitude * latitude + longitude * longitude).sqrt();
            let ring = 1.0 - (far - 0.8).abs() / 0.3;
            let south = (-latitude - 60_f64.to_radians()) * 10.0;
            ring.max(south)
        });
        let outlines = areas(&grid, 0.01);
        let around = |latitude: f64, longitude: f64| -> i32 {
            let sides = outlines
                .iter()
                .flat_map(|it| it.iter().zip(it.iter().cycle().skip(1)));
            sides
                .map(|(a, b)| {
                    let right = |y: f64| a.1 + (y - a.0) / (b.0 - a.0) * (b.1 - a.1) > longitude;
                    match (a.0 <= latitude, b.0 <= latitude) {
                        (true, false) if right(latitude) => 1,
                        (false, true) if right(latitude) => -1,
                        _ => 0,
                    }
                })
                .sum()
        };
        let mut sense = 0;
        for row in 1..mesh.rows() - 1 {
            for column in 1..mesh.columns() - 1 {
                let (latitude, longitude) =
                    (mesh.latitude(row as f64), mesh.longitude(column as f64));
                let within = grid.values()[row * mesh.columns() + column] >= 0.01;
                let turns = around(latitude, longitude);
                assert_eq!(turns != 0, within, "{latitude} {longitude}");
                sense = if within { turns } else { sense };
                assert!(!within || turns == sense, "all the same way around");
            }
        }
        assert_eq!(sense.abs(), 1);
        let deep = deepest(&grid, 0.01, [-1.5, -1.1], 2).unwrap();
        assert!((-1.4..-1.2).contains(&deep.0), "{deep:?}");
        assert_eq!(deepest(&grid, 5.0, [-1.6, 1.6], 1), None);
    }

    #[test]
    fn lines_end_at_the_edge_of_the_map_and_never_run_along_it() {
        let mesh = Mesh::every(10.0).unwrap();
        let grid = Grid::sampled(mesh, |latitude, longitude| {
            latitude - 0.02 * maths::sin(longitude)
        });
        let found = lines(&grid, 0.3);
        assert_eq!(found.len(), 1);
        let points = found[0].points();
        assert_eq!(points.len(), 37, "one crossing on every meridian");
        let ends = [points[0].1.abs(), points[36].1.abs()];
        assert_eq!(ends, [PI, PI]);
        assert!(!found[0].is_closed());
    }

    #[test]
    fn nothing_breaks_where_there_is_no_number() {
        let mesh = Mesh::every(30.0).unwrap();
        for hole in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            let grid = Grid::sampled(
                mesh,
                |latitude, longitude| {
                    if longitude > 0.0 { hole } else { latitude }
                },
            );
            for level in [0.2, f64::NAN, f64::INFINITY] {
                let found = lines(&grid, level);
                let points = found.iter().flat_map(Line::points);
                assert!(points.clone().all(|p| p.0.is_finite() && p.1.is_finite()));
            }
        }
    }

    #[test]
    fn a_level_through_nodes_and_one_past_all_of_them() {
        let mesh = Mesh::every(10.0).unwrap();
        let grid = Grid::sampled(mesh, |latitude, _| latitude);
        assert_eq!(lines(&grid, mesh.latitude(12.0)).len(), 1);
        assert_eq!(lines(&grid, 2.0).len(), 0);
        assert_eq!(lines(&grid, -2.0).len(), 0);
    }
}
