//! A set of tasks as an instructor hands it out.
//!
//! ```
//! # use lessons::drill::set::PracticeSet;
//! # let json =
//! r#"{"version": 1, "title": "Compass turns, first week", "seed": 12, "order": "mixed",
//!     "time_limit_s": 1800, "allowed": ["pause"],
//!     "parts": [{"kind": "predict", "count": 8, "level": 1},
//!               {"kind": "roll-out", "count": 4, "latitude_deg": -34, "tolerance_deg": 5}]}"#
//! # ; assert_eq!(PracticeSet::from_json(json).unwrap().tasks(0).len(), 12);
//! ```
//!
//! Without a seed every student gets tasks of a fresh one.

use super::COUNT;
use super::dice::Dice;
use super::identity::{DrillError, TaskId, usual_level, usual_tolerance};
use super::kind::Kind;
use super::record::{Help, RecordError, read};
use compass::range::Range;
use compass::unit::Unit;
use serde::{Deserialize, Serialize};

/// The version of this shape.
pub const VERSION: u32 = 1;
/// How many parts a set can have; chosen.
pub const PARTS: Range = Range::new("number of parts", Unit::Number, 1.0, 50.0);
/// How long a student may take; chosen.
pub const TIME_LIMIT: Range = Range::new("time limit", Unit::Second, 10.0, 86_400.0);
/// How many characters a title, or a name that a student types, can have; chosen.
pub const MOST_CHARACTERS: usize = 120;

/// PCG's stream for the order of a set; chosen.
const ORDER: u64 = 0x6f72_6465_7200;

/// A set of tasks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PracticeSet {
    /// [`VERSION`].
    pub version: u32,
    /// What it is called.
    pub title: String,
    /// The seed that all students get; none for a fresh one each.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seed: Option<u64>,
    /// In which order the tasks come.
    #[serde(default)]
    pub order: Order,
    /// How long a student may take, seconds; none for as long as it takes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub time_limit_s: Option<f64>,
    /// What may help.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub allowed: Vec<Help>,
    /// The tasks, kind by kind.
    pub parts: Vec<Part>,
}

/// In which order a set's tasks come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Order {
    /// Part after part.
    #[default]
    AsGiven,
    /// Mixed, by the seed.
    Mixed,
}

/// So many tasks of a kind.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Part {
    /// The kind.
    pub kind: Kind,
    /// How many.
    pub count: u32,
    /// The latitude, north positive; none for any.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub latitude_deg: Option<f64>,
    /// How hard, 1 to 3.
    #[serde(default = "usual_level")]
    pub level: u8,
    /// How far off a flown task may end.
    #[serde(default = "usual_tolerance")]
    pub tolerance_deg: f64,
}

impl PracticeSet {
    /// Reads a set from JSON text.
    ///
    /// # Errors
    /// Text that is not JSON, another version, a field unknown, missing or beyond its range: in one
    /// sentence that names the field.
    pub fn from_json(json: &str) -> Result<Self, RecordError> {
        let set: Self = read(json)?;
        set.check()?;
        Ok(set)
    }

    /// The set as JSON text.
    pub fn to_json(&self) -> String {
        // Numbers and names alone: there is nothing that cannot be written.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }

    /// Whether all of it is within its ranges.
    ///
    /// # Errors
    /// The first value that is not, by its field.
    pub fn check(&self) -> Result<(), RecordError> {
        let within = |path: &str, range: Range, value: f64| {
            range
                .accept(value)
                .map_err(|error| RecordError::at(path, error))
        };
        check_version("sets", VERSION, self.version)?;
        check_text("title", &self.title)?;
        if let Some(limit) = self.time_limit_s {
            within("time_limit_s", TIME_LIMIT, limit)?;
        }
        within("parts", PARTS, self.parts.len() as f64)?;
        for (index, part) in self.parts.iter().enumerate() {
            let path = |name: &str| format!("parts[{index}].{name}");
            within(&path("count"), COUNT, f64::from(part.count))?;
            part.task(0, 0).check().map_err(|error| match error {
                DrillError::OutOfRange { field, reason } => RecordError::at(&path(field), reason),
                other => RecordError::at(&format!("parts[{index}]"), other),
            })?;
        }
        let all: u64 = self.parts.iter().map(|part| u64::from(part.count)).sum();
        within("parts", COUNT, all as f64)?;
        Ok(())
    }

    /// The tasks in their order; `fresh` is the seed where the set has none. Every task has a
    /// number of its own, so that parts of one kind do not ask the same.
    pub fn tasks(&self, fresh: u64) -> Vec<TaskId> {
        let seed = self.seed.unwrap_or(fresh);
        let parts = self
            .parts
            .iter()
            .flat_map(|part| (0..part.count).map(move |_| part));
        let tasks = parts
            .zip(0_u32..)
            .map(|(part, number)| part.task(seed, number))
            .collect();
        match self.order {
            Order::AsGiven => tasks,
            Order::Mixed => Dice::new(seed, ORDER).shuffled(tasks),
        }
    }
}

impl Part {
    fn task(&self, seed: u64, number: u32) -> TaskId {
        TaskId {
            kind: self.kind,
            seed,
            number,
            latitude_deg: self.latitude_deg,
            level: self.level,
            tolerance_deg: self.tolerance_deg,
            of_timed_turn: false,
        }
    }
}

/// Whether a file is of the version that can be read.
pub(super) fn check_version(what: &str, can: u32, is: u32) -> Result<(), RecordError> {
    if is == can {
        return Ok(());
    }
    let reason = format!("{what} of version {can} can be read, not {is}");
    Err(RecordError::at("version", reason))
}

/// Whether a text that is typed in is short and of one line.
pub(super) fn check_text(path: &str, text: &str) -> Result<(), RecordError> {
    let count = text.chars().count();
    if count > MOST_CHARACTERS {
        let reason = format!("it can have at most {MOST_CHARACTERS} characters, not {count}");
        return Err(RecordError::at(path, reason));
    }
    if text.chars().any(char::is_control) {
        return Err(RecordError::at(path, "it must be one line of text"));
    }
    Ok(())
}
