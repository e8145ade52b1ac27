//! What workers compute: the field over the mesh, and lags at the nodes of the table. Numbers in,
//! numbers out, since nothing else goes from worker to page.

use super::key::float_named;
use earth::Date;
use earth::grid::{FieldGrid, Mesh, Node, Survey};
use lessons::rule_map::{LagTable, OntoNorth};

/// Degrees between two nodes of the maps.
const SPACING: f64 = 2.0;
/// Numbers for a node.
const NUMBERS: usize = 3;

/// The mesh of the maps; none never, since its spacing is one that can be asked for.
pub(crate) fn mesh() -> Option<Mesh> {
    Mesh::every(SPACING).ok()
}

/// The field at every node on some rows of the mesh, at sea level: dip, variation and horizontal
/// intensity in turn. Nothing for what is no day of the model's life.
pub fn surveyed_rows(date: &str, from: usize, rows: usize) -> Vec<f64> {
    let survey = || {
        let survey = Survey::new(mesh()?, Date::parse(date).ok()?, 0.0).ok()?;
        let rows = survey.skip_to(from).take(rows);
        rows.collect::<Result<Vec<Vec<Node>>, _>>().ok()
    };
    let numbers = |node: &Node| [node.dip, node.variation, node.horizontal];
    (survey().unwrap_or_default().iter().flatten())
        .flat_map(numbers)
        .collect()
}

/// The nodes back from their numbers, all rows in order; none unless all are there.
pub(crate) fn field_grid(parts: &[Vec<f64>]) -> Option<FieldGrid> {
    let mesh = mesh()?;
    let numbers = parts.concat();
    let nodes: Vec<Node> = (numbers.chunks_exact(NUMBERS))
        .map(|it| Node {
            dip: it[0],
            variation: it[1],
            horizontal: it[2],
        })
        .collect();
    let rows: Vec<Vec<Node>> = nodes.chunks(mesh.columns()).map(<[Node]>::to_vec).collect();
    FieldGrid::from_rows(mesh, &rows)
}

/// The lags at some nodes of the table; not numbers where they cannot be flown.
pub fn lags_of_nodes(bank: f64, airspeed: f64, float: &str, nodes: &[u32]) -> Vec<f64> {
    let turn = OntoNorth {
        bank,
        airspeed,
        float: float_named(float).settings(),
    };
    let can_be_flown = bank.is_finite() && airspeed.is_finite();
    let lag = |&node: &u32| {
        let node = can_be_flown.then_some(node)?;
        let field = LagTable::field(node as usize).ok()?;
        turn.lag(field).ok()
    };
    nodes
        .iter()
        .map(|node| lag(node).unwrap_or(f64::NAN))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_computed_apart_make_one_grid() {
        let rows = mesh().unwrap().rows();
        let parts: Vec<Vec<f64>> = (0..rows)
            .step_by(20)
            .map(|from| surveyed_rows("2026-05-01", from, 20))
            .collect();
        let grid = field_grid(&parts).unwrap();
        let date = Date::parse("2026-05-01").unwrap();
        let whole = FieldGrid::gather(Survey::new(mesh().unwrap(), date, 0.0).unwrap()).unwrap();
        assert_eq!(grid, whole);
        assert_eq!(field_grid(&parts[1..]), None);
        assert!(surveyed_rows("2031-01-01", 0, 91).is_empty());
        assert!(surveyed_rows("today", 0, 91).is_empty());
        assert!(surveyed_rows("2026-05-01", 500, 3).is_empty());
    }

    #[test]
    fn a_node_that_is_none_has_no_lag() {
        let lags = lags_of_nodes(0.26, 51.0, "standard", &[400, u32::MAX]);
        assert!(lags[0].is_finite() && lags[1].is_nan());
        assert!(lags_of_nodes(f64::NAN, 51.0, "?", &[400])[0].is_nan());
    }
}
