//! Lags at north over dip and intensity, solved once and then read off.
//!
//! A lag depends on dip and total intensity alone, and smoothly; so a few hundred flights do for
//! the whole world. Between the nodes four by four of them are joined by cubics. What that errs
//! by is measured in `crates/lessons/tests/rule_map.rs`: where a compass is reliable, from 5° to
//! 45° of bank, at most 0.1°, or 0.25° with the lightly damped float; in the caution zone 0.5°.

use compass::field::{MagneticField, UNRELIABLE_BELOW};
use compass::maths;
use compass::range::OutOfRange;

/// Degrees of dip between two nodes.
const DIP_STEP: f64 = 2.0;
/// The steepest node, degrees. Where the horizontal field is above what is unreliable, and the
/// whole no stronger than the strongest node, the dip stays within a degree of it.
const STEEPEST: f64 = 88.0;
/// Nodes from the steepest upward dip to the steepest downward one.
const DIPS: usize = (2.0 * STEEPEST / DIP_STEP) as usize + 1;

/// √T between two nodes of intensity. They are spread evenly over its root, with which the float's
/// own rates go; in a weak field, where the lag changes most, they lie closest.
const ROOT_STEP: f64 = 0.5e-3;
/// The root of the weakest node, 14 µT: below the 22 µT that is the least on Earth.
const WEAKEST: f64 = 3.8e-3;
/// Nodes from the weakest up; the strongest, 77 µT, is above the 67 µT that is the most on Earth.
const TOTALS: usize = 11;

/// Lags at north for one way to fly onto it; those that are not solved are not numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct LagTable {
    lags: Vec<f64>,
}

impl Default for LagTable {
    fn default() -> Self {
        Self {
            lags: vec![f64::NAN; DIPS * TOTALS],
        }
    }
}

impl LagTable {
    /// The field at a node.
    ///
    /// # Errors
    /// Never for a node of [`Self::needed`]; a number that is no node's may be refused.
    pub fn field(node: usize) -> Result<MagneticField, OutOfRange> {
        let dip = (DIP_STEP * (node % DIPS) as f64 - STEEPEST).to_radians();
        let root = WEAKEST + ROOT_STEP * (node / DIPS) as f64;
        let total = root * root;
        let (sin, cos) = maths::sin_cos(dip);
        MagneticField::new(total * cos, total * sin, 0.0)
    }

    /// The nodes that must be solved so that a lag can be read off in each of these fields, in
    /// order, each once.
    pub fn needed(fields: impl IntoIterator<Item = MagneticField>) -> Vec<usize> {
        let mut wanted = vec![false; DIPS * TOTALS];
        for at in fields.into_iter().filter_map(Between::of) {
            for node in at.nodes().into_iter().flatten() {
                wanted[node] = true;
            }
        }
        (0..wanted.len()).filter(|&node| wanted[node]).collect()
    }

    /// Whether a node is solved.
    pub fn is_solved(&self, node: usize) -> bool {
        self.lags.get(node).is_some_and(|lag| lag.is_finite())
    }

    /// Takes the lag of a node, rad; what is no node's is left out.
    pub fn put(&mut self, node: usize, lag: f64) {
        if let Some(into) = self.lags.get_mut(node) {
            *into = lag;
        }
    }

    /// The lag at north in a field, rad. None where a compass is unreliable, where the field is
    /// none of the Earth's, and before the nodes around it are solved.
    pub fn lag(&self, field: MagneticField) -> Option<f64> {
        let at = Between::of(field)?;
        let by_total = at
            .nodes()
            .map(|row| cubic(at.dip.1, row.map(|n| self.lags[n])));
        let lag = cubic(at.total.1, by_total);
        lag.is_finite().then_some(lag)
    }
}

/// Where a field lies among the nodes: on either axis the first of four nodes, and how far it is
/// from the second, in steps.
struct Between {
    dip: (usize, f64),
    total: (usize, f64),
}

impl Between {
    fn of(field: MagneticField) -> Option<Self> {
        if field.horizontal() <= UNRELIABLE_BELOW {
            return None;
        }
        let dip = (field.dip().to_degrees() + STEEPEST) / DIP_STEP;
        let total = (field.total().sqrt() - WEAKEST) / ROOT_STEP;
        Some(Self {
            dip: among(dip, DIPS)?,
            total: among(total, TOTALS)?,
        })
    }

    /// The nodes around it: a row of dips for each intensity.
    fn nodes(&self) -> [[usize; 4]; 4] {
        [0, 1, 2, 3].map(|row| [0, 1, 2, 3].map(|i| (self.total.0 + row) * DIPS + self.dip.0 + i))
    }
}

/// The first of the four nodes about a place on an axis, and the place from the second one. None
/// further than a step outside.
fn among(place: f64, nodes: usize) -> Option<(usize, f64)> {
    let last = (nodes - 1) as f64;
    if !(-1.0..=last + 1.0).contains(&place) {
        return None;
    }
    let first = (place.floor() - 1.0).clamp(0.0, last - 3.0);
    Some((first as usize, place - first - 1.0))
}

/// The cubic through four values at −1, 0, 1 and 2, at `x`.
fn cubic(x: f64, [a, b, c, d]: [f64; 4]) -> f64 {
    -a * x * (x - 1.0) * (x - 2.0) / 6.0 + b * (x + 1.0) * (x - 1.0) * (x - 2.0) / 2.0
        - c * (x + 1.0) * x * (x - 2.0) / 2.0
        + d * (x + 1.0) * x * (x - 1.0) / 6.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cubic_is_read_off_exactly_and_nothing_beyond_the_earth() {
        let mut table = LagTable::default();
        let law = |field: MagneticField| {
            let (dip, root) = (field.dip(), field.total().sqrt() * 1e3);
            dip * dip * dip - 0.3 * dip + 0.01 * root * root * dip
        };
        let field = |dip: f64, total: f64| {
            let (sin, cos) = maths::sin_cos(dip.to_radians());
            MagneticField::new(total * cos, total * sin, 0.0).unwrap()
        };
        let asked = [field(61.3, 48e-6), field(-88.1, 66e-6), field(0.0, 22e-6)];
        assert_eq!(table.lag(asked[0]), None, "not solved yet");
        let needed = LagTable::needed(asked);
        assert_eq!(needed.len(), 48);
        for node in needed {
            table.put(node, law(LagTable::field(node).unwrap()));
        }
        for field in asked {
            let lag = table.lag(field).unwrap();
            assert!((lag - law(field)).abs() < 1e-12, "{lag} {}", law(field));
        }
        assert_eq!(table.lag(field(89.5, 60e-6)), None, "unreliable");
        assert!(LagTable::needed([field(0.0, 99e-6)]).is_empty());
        assert_eq!(table.lag(field(0.0, 99e-6)), None);
        table.put(usize::MAX, 1.0);
    }
}
