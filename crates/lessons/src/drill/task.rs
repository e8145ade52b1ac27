//! A task as data: what is asked, what is right, what is flown, and the explanation.
//!
//! These are for people and for files, so angles are degrees, speeds knots and times seconds, in
//! names that say so.

use super::kind::Kind;
use compass::range::{OutOfRange, Range};
use compass::unit::Unit;
use flights::{Scenario, ScenarioError};
use serde::{Deserialize, Serialize};
use serde_json::Value;

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
}

fn usual_level() -> u8 {
    2
}

fn usual_tolerance() -> f64 {
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
        }
    }

    /// Whether every value is within its range.
    ///
    /// # Errors
    /// The first that is not, by the name of its field.
    pub fn check(&self) -> Result<(), DrillError> {
        let at = |field: &'static str| move |reason| DrillError::OutOfRange { field, reason };
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

/// A task, ready to be put.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Task {
    /// What it was generated from.
    #[serde(flatten)]
    pub id: TaskId,
    /// The latitude that it is set at, north positive.
    pub at_latitude_deg: f64,
    /// What class of situation it belongs to, for practice at the right time.
    pub class: Class,
    /// What is asked.
    pub question: String,
    /// The answers to choose from, exactly one of them right; none for what is flown.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub choices: Vec<Choice>,
    /// What is marked; none for what is chosen.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub aim: Option<Aim>,
    /// The figures of a task on paper.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub paper: Option<Paper>,
    /// What is flown; none for a task on paper.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub flight: Option<Flight>,
    /// What is said after an answer. Of a flown task it says what an ideal flight would have
    /// done; [`mark`](super::mark::mark) adds what this one did.
    pub explanation: Explanation,
}

/// An answer to choose.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Choice {
    /// What it says.
    pub text: String,
    /// Whether it is right.
    pub right: bool,
}

/// A flight, as a scenario file has it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Flight {
    /// The scenario file. Of a task that the pilot flies, only its start and its air count; it
    /// lasts as long as the pilot may take.
    pub scenario: Value,
    /// From when on it is to be watched, seconds.
    pub watch_from_s: f64,
    /// Until when, seconds.
    pub watch_to_s: f64,
}

impl Flight {
    /// The scenario, read.
    ///
    /// # Errors
    /// As of [`Scenario::from_json`].
    pub fn read(&self) -> Result<Scenario, ScenarioError> {
        Scenario::from_json(&self.scenario.to_string())
    }
}

/// What is said after an answer, each in a sentence or two.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Explanation {
    /// What happened.
    pub happened: String,
    /// Why: from the torques about the card's axis.
    pub why: String,
    /// The rule of thumb for it, and how good it was here.
    pub rule: String,
}

/// What a flown task is marked against.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "marked", rename_all = "kebab-case")]
pub enum Aim {
    /// The heading after a turn by the compass.
    RollOut {
        /// The magnetic heading to come out on.
        target_deg: f64,
        /// The bank to turn with, right positive.
        bank_deg: f64,
        /// The compass reading at which to begin to roll out, by the rule of thumb.
        rule_deg: f64,
        /// The same by the other rule, 15° and half the latitude.
        half_rule_deg: f64,
        /// The same by the closed form.
        steady_deg: f64,
        /// The same by the simulation: it comes out on the target.
        simulated_deg: f64,
    },
    /// The heading after a turn by the clock.
    TimedTurn {
        /// The magnetic heading to come out on.
        target_deg: f64,
        /// The bank to turn with, right positive.
        bank_deg: f64,
        /// Seconds from the beginning of the roll-in to that of the roll-out, at 3° a second.
        rule_s: f64,
        /// The same by the simulation: it comes out on the target.
        simulated_s: f64,
        /// How far past the target, in the turn's direction, the same turn ends that is flown by
        /// the compass as if it did not err; none where the card never shows that.
        bare_compass_overshoot_deg: Option<f64>,
    },
    /// A heading held for a while.
    HoldHeading {
        /// The magnetic heading to hold.
        target_deg: f64,
        /// From when on it counts, seconds.
        from_s: f64,
        /// Until when, seconds.
        to_s: f64,
        /// Root mean square of the card's swing about the heading in level flight.
        swing_deg: f64,
    },
    /// A heading indicator over a flight that is flown for the pilot.
    SetGyro {
        /// What it shows too much at the start.
        error_at_start_deg: f64,
        /// Its own drift, degrees an hour; the Earth's rotation adds to it.
        drift_deg_h: f64,
        /// From when on its error counts, seconds: the end of the first good moment.
        from_s: f64,
        /// When the compass is good to set it by: from and to, seconds.
        good_s: Vec<[f64; 2]>,
        /// Root mean square of the error that is carried when it is set in the middle of each.
        ideal_deg: f64,
    },
}

/// The figures of a task on paper.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "sheet", rename_all = "kebab-case")]
pub enum Paper {
    /// One heading into another.
    Correction {
        /// From which north the heading is given: true, magnetic or compass.
        from: North,
        /// From which north it is asked for.
        to: North,
        /// The heading that is given.
        heading_deg: f64,
        /// Variation, east positive.
        variation_deg: f64,
        /// Compass heading and deviation (east positive) of each line of the card.
        card_deg: Vec<[f64; 2]>,
    },
    /// A coefficient out of a swing.
    Coefficient {
        /// Which: A, B or C.
        letter: char,
        /// Deviation (east positive) on north, east, south and west.
        deviations_deg: [f64; 4],
    },
}

/// A north that headings are measured from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum North {
    /// Geographic.
    True,
    /// Of the field.
    Magnetic,
    /// Of the card.
    Compass,
}

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
#[allow(missing_docs, reason = "the points of the compass")]
pub enum Octant {
    N,
    NE,
    E,
    SE,
    S,
    SW,
    W,
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

impl Task {
    /// Whether it asks something else.
    pub fn differs_from(&self, other: &Self) -> bool {
        self.question != other.question
            || self.flight != other.flight
            || self.paper != other.paper
            || self.choices != other.choices
    }
}
