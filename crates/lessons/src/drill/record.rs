//! The record of an answer: which task, and what was chosen or flown. Marks come from it alone.
//!
//! ```
//! # use lessons::drill::record::Record;
//! # let json =
//! r#"{"version": 1,
//!     "task": {"kind": "set-gyro", "seed": 7, "number": 0, "level": 1, "tolerance_deg": 5},
//!     "flight": {"field": {"latitude_deg": 52}, "start": {"heading_deg": 90, "speed_kt": 100},
//!                "controls": [{"time_s": 40, "bank_deg": 15}], "duration_s": 60},
//!     "gyro_set_s": [31.5, 52], "used": ["pause"], "allowed": []}"#
//! # ; Record::from_json(json).unwrap();
//! ```
//!
//! `flight` is a scenario file as [`flights::Recorded`] writes it; an answer that was chosen has
//! `chosen` in its place, the place of the choice from 0.

use super::identity::TaskId;
use super::set::check_version;
use flights::Recorded;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use thiserror::Error;

/// The version of this shape.
pub const VERSION: u32 = 1;
/// How often a heading indicator can have been set; chosen, to bound what a file can ask for.
pub const MOST_SETTINGS: usize = 10_000;

/// An answer as it was given.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Record {
    /// [`VERSION`].
    pub version: u32,
    /// The task.
    pub task: TaskId,
    /// Which of the task's choices, from 0.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chosen: Option<usize>,
    /// What was flown, as a scenario file.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub flight: Option<Value>,
    /// When the heading indicator was set by the compass, seconds from the start.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub gyro_set_s: Vec<f64>,
    /// What helped.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub used: Vec<Help>,
    /// What may help in this task.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub allowed: Vec<Help>,
}

/// What makes a flown task easier than it is in the air.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Help {
    /// The flight was paused.
    Pause,
    /// Time ran slower.
    SlowMotion,
    /// The flight was taken back and flown on from there.
    GoBack,
    /// The task was begun again.
    Reload,
    /// The real heading was uncovered.
    Uncover,
}

impl Help {
    /// What was done, of a task that is flown or of one that is chosen.
    pub(super) fn done(self, is_flown: bool) -> &'static str {
        match self {
            Self::Pause => "the flight was paused",
            Self::SlowMotion => "the flight was slowed down",
            Self::GoBack if is_flown => "the flight was taken back",
            Self::GoBack => "the task was answered before",
            Self::Reload => "the task was begun before",
            Self::Uncover => "the flight was flown with the real heading in view",
        }
    }
}

/// What is wrong with a record: where, and a sentence.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{}{reason}", if path.is_empty() { String::new() } else { format!("{path}: ") })]
pub struct RecordError {
    /// The field, such as `flight.start.speed_kt`; empty for the record as a whole.
    pub path: String,
    /// What is wrong with it.
    pub reason: String,
}

impl RecordError {
    pub(super) fn at(path: &str, reason: impl ToString) -> Self {
        Self {
            path: path.to_owned(),
            reason: reason.to_string(),
        }
    }

    /// The same of a part of something larger.
    pub(super) fn within(self, place: &str) -> Self {
        let path = match self.path.as_str() {
            "" => place.to_owned(),
            path => format!("{place}.{path}"),
        };
        Self { path, ..self }
    }
}

impl Record {
    /// Of the choice at a place, from 0.
    pub fn of_choice(task: TaskId, chosen: usize) -> Self {
        Self {
            version: VERSION,
            task,
            chosen: Some(chosen),
            flight: None,
            gyro_set_s: Vec::new(),
            used: Vec::new(),
            allowed: Vec::new(),
        }
    }

    /// Of a flight, and of when the heading indicator was set in it, seconds.
    pub fn of_flight(task: TaskId, flight: &Recorded, gyro_set_s: Vec<f64>) -> Self {
        Self {
            chosen: None,
            // What was just written as JSON is JSON.
            flight: serde_json::from_str(&flight.to_json()).ok(),
            gyro_set_s,
            ..Self::of_choice(task, 0)
        }
    }

    /// Reads a record from JSON text. Whether task and flight are possible is found by
    /// [`mark`](super::mark::mark).
    ///
    /// # Errors
    /// Text that is not JSON, another version, a field unknown or missing, or a time that is not
    /// one: in one sentence that names the field.
    pub fn from_json(json: &str) -> Result<Self, RecordError> {
        let record: Self = read(json)?;
        record.check()?;
        Ok(record)
    }

    /// Whether it is of the version that can be read, and its settings are not too many.
    pub(super) fn check(&self) -> Result<(), RecordError> {
        check_version("records", VERSION, self.version)?;
        if self.gyro_set_s.len() > MOST_SETTINGS {
            let count = self.gyro_set_s.len();
            return Err(RecordError::at(
                "gyro_set_s",
                format!("the indicator can be set at most {MOST_SETTINGS} times, not {count}"),
            ));
        }
        Ok(())
    }

    /// The record as JSON text.
    pub fn to_json(&self) -> String {
        // Numbers, names and what was JSON before: there is nothing that cannot be written.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}

/// What a reader expected, said without the names of its types.
fn plain(reason: &str) -> String {
    let Some((found, expected)) = reason.split_once(", expected ") else {
        return reason.to_owned();
    };
    let (expected, place) = expected.split_once(" at line ").unwrap_or((expected, ""));
    let whole = |most: u64| format!("a whole number from 0 to {most}");
    let said = match expected {
        "u8" => whole(u8::MAX.into()),
        "u32" => whole(u32::MAX.into()),
        "u64" | "usize" => whole(u64::MAX),
        "f32" | "f64" => "a number".to_owned(),
        it if it.starts_with("struct ") => "an object with named fields".to_owned(),
        it => it.to_owned(),
    };
    format!("{found}, expected {said} at line {place}")
}

/// Reads JSON text of a known shape; what is not of it is said with its place.
pub(super) fn read<T: serde::de::DeserializeOwned>(json: &str) -> Result<T, RecordError> {
    let mut reader = serde_json::Deserializer::from_str(json);
    let value = serde_path_to_error::deserialize(&mut reader).map_err(|error| {
        let path = error.path().to_string();
        let inner = error.inner();
        if inner.is_eof() {
            let (line, column) = (inner.line(), inner.column());
            let reason = format!("it was cut short: it ends in line {line}, column {column}");
            return RecordError::at("", reason);
        }
        if inner.is_syntax() {
            return RecordError::at("", format!("it is no JSON: {inner}"));
        }
        RecordError::at(
            if path == "." { "" } else { &path },
            plain(&inner.to_string()),
        )
    })?;
    reader.end().map_err(|error| RecordError::at("", error))?;
    Ok(value)
}
