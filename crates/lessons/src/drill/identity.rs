//! Which task: all that one is generated from, and why there may be none.

use super::kind::Kind;
use compass::range::{OutOfRange, Range};
use compass::unit::Unit;
use flights::ScenarioError;
use serde::{Deserialize, Serialize};

/// Latitude at which tasks can be asked. Beyond it a compass is of little use; chosen.
pub const LATITUDE: Range = Range::new("latitude of a task", Unit::Degree, -70.0, 70.0);
/// How far off a flown task may end; chosen. 10° and 5° are what examiners set (common practice,
/// no source).
pub const TOLERANCE: Range = Range::new("tolerance", Unit::Degree, 1.0, 30.0);
/// How hard a task is.
pub const LEVEL: Range = Range::new("level", Unit::Number, 1.0, 3.0);

/// All that a task is generated from: the same gives the same task.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TaskId {
    /// Its kind.
    pub kind: Kind,
    /// The seed.
    pub seed: u64,
    /// Which task of that seed, from 0.
    #[serde(default)]
    pub number: u32,
    /// The latitude, north positive; without it the seed draws one, north or south.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub latitude_deg: Option<f64>,
    /// How hard: 1 cardinal headings and gentle banks, 2 headings between, 3 steep banks and
    /// errors that mix.
    #[serde(default = "usual_level")]
    pub level: u8,
    /// How far off a flown task may end.
    #[serde(default = "usual_tolerance")]
    pub tolerance_deg: f64,
    /// Whether it is the turn of the timed turn of that seed, flown by the compass in place of the
    /// clock; of a roll-out alone. It is for comparing, so no one is to count it as practice.
    #[serde(default, skip_serializing_if = "is_not")]
    pub of_timed_turn: bool,
}

#[allow(clippy::trivially_copy_pass_by_ref, reason = "how serde calls it")]
fn is_not(it: &bool) -> bool {
    !it
}

pub(super) fn usual_level() -> u8 {
    2
}

pub(super) fn usual_tolerance() -> f64 {
    10.0
}

impl TaskId {
    /// The first task of a kind from a seed, at the middle level, any latitude and ±10°.
    pub fn new(kind: Kind, seed: u64) -> Self {
        Self {
            kind,
            seed,
            number: 0,
            latitude_deg: None,
            level: usual_level(),
            tolerance_deg: usual_tolerance(),
            of_timed_turn: false,
        }
    }

    /// The same turn by the compass, where this is one by the clock.
    pub fn by_the_compass(&self) -> Option<Self> {
        (self.kind == Kind::TimedTurn).then_some(Self {
            kind: Kind::RollOut,
            of_timed_turn: true,
            ..*self
        })
    }

    /// The kind whose draws it is made of.
    pub(super) fn drawn_as(&self) -> Kind {
        if self.of_timed_turn {
            Kind::TimedTurn
        } else {
            self.kind
        }
    }

    /// The identity as JSON text.
    pub fn to_json(&self) -> String {
        // Numbers and a name alone: there is nothing that cannot be written.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// Whether every value is within its range.
    ///
    /// # Errors
    /// The first that is not, by the name of its field.
    pub fn check(&self) -> Result<(), DrillError> {
        let at = |field: &'static str| move |reason| DrillError::OutOfRange { field, reason };
        if self.of_timed_turn && self.kind != Kind::RollOut {
            return Err(DrillError::NoTurnByTheCompass(self.kind));
        }
        if let Some(latitude) = self.latitude_deg {
            let least = self.kind.least_latitude_deg();
            LATITUDE.accept(latitude).map_err(at("latitude_deg"))?;
            if latitude.abs() < least {
                return Err(DrillError::TooNearTheEquator {
                    kind: self.kind,
                    latitude,
                    least,
                });
            }
        }
        LEVEL
            .accept(f64::from(self.level))
            .map_err(at("level"))
            .and_then(|_| {
                TOLERANCE
                    .accept(self.tolerance_deg)
                    .map_err(at("tolerance_deg"))
            })
            .map(|_| ())
    }
}

/// Why there is no such task.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum DrillError {
    /// A value is beyond its range.
    #[error("{field}: {reason}")]
    OutOfRange {
        /// Which field.
        field: &'static str,
        /// The range, and the value.
        reason: OutOfRange,
    },
    /// No error is large enough there to be asked about.
    #[error(
        "latitude_deg: {} tasks need a latitude at least {least}° from the equator, not {latitude}°",
        .kind.name()
    )]
    TooNearTheEquator {
        /// The kind.
        kind: Kind,
        /// The latitude that was asked for, degrees.
        latitude: f64,
        /// The least either way, degrees.
        least: f64,
    },
    /// Only a roll-out is the turn of a timed turn.
    #[error("of_timed_turn: only a roll-out task can be that of a timed turn, not a {} task", .0.name())]
    NoTurnByTheCompass(Kind),
    /// Nothing fair was found among many draws.
    #[error("no fair {} task was found for seed {seed}, number {number}: try another seed", .kind.name())]
    NoneFair {
        /// The kind.
        kind: Kind,
        /// The seed.
        seed: u64,
        /// The number.
        number: u32,
    },
    /// A count beyond its range, or more than there are different tasks.
    #[error("only {found} different {} tasks were found, not {wanted}", .kind.name())]
    TooFew {
        /// The kind.
        kind: Kind,
        /// How many there are.
        found: usize,
        /// How many were asked for.
        wanted: u32,
    },
    /// A flight that cannot be simulated.
    #[error("flight: {0}")]
    Flight(#[from] ScenarioError),
    /// A roll-out that cannot be planned.
    #[error(transparent)]
    Plan(#[from] OutOfRange),
}
