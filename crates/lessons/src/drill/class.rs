//! Classes of situations: what is learnt together and practised again together.

use super::kind::Kind;
use serde::{Deserialize, Serialize};

/// A class of situations that are learnt together.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Class {
    /// The kind of task.
    pub kind: Kind,
    /// The octant of the heading: N, NE, E … NW.
    pub octant: Octant,
    /// What is flown.
    pub manoeuvre: Manoeuvre,
    /// The hemisphere.
    pub hemisphere: Hemisphere,
}

/// An eighth of the circle, its middle on the point it is named after.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Octant {
    /// About north.
    N,
    /// About north-east.
    NE,
    /// About east.
    E,
    /// About south-east.
    SE,
    /// About south.
    S,
    /// About south-west.
    SW,
    /// About west.
    W,
    /// About north-west.
    NW,
}

impl Octant {
    /// Of a heading in degrees.
    pub fn of(heading_deg: f64) -> Self {
        let all = [
            Self::N,
            Self::NE,
            Self::E,
            Self::SE,
            Self::S,
            Self::SW,
            Self::W,
            Self::NW,
        ];
        all[(heading_deg.rem_euclid(360.0) / 45.0).round() as usize % 8]
    }
}

/// What is flown, as far as a class of situations goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Manoeuvre {
    /// A turn to the left.
    LeftTurn,
    /// A turn to the right.
    RightTurn,
    /// Gaining speed.
    SpeedingUp,
    /// Losing speed.
    SlowingDown,
    /// Straight and level.
    Level,
}

/// A hemisphere.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Hemisphere {
    /// The equator too.
    Northern,
    /// South of the equator.
    Southern,
}

impl Hemisphere {
    /// Of a latitude in degrees, north positive.
    pub fn of(latitude_deg: f64) -> Self {
        if latitude_deg < 0.0 {
            Self::Southern
        } else {
            Self::Northern
        }
    }
}
