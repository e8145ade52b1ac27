//! All that is kept of a student's practice, as one file: to move it, to mend it, to keep a copy.
//!
//! The answers are the truth. What is remembered of a class is computed from them by
//! [`Kept::practice`], so that the answers of two tabs, or of two files, can be put together in any
//! order and nothing is counted twice.

use super::class::{Class, Hemisphere};
use super::identity::{DrillError, LEVEL, TOLERANCE, TaskId, usual_tolerance};
use super::mark::Outcome;
use super::practice::{DAY, Practice};
use super::record::{Help, RecordError, read};
use super::results::{Answer, Results};
use super::set::check_version;
use compass::range::Range;
use compass::unit::Unit;
use serde::{Deserialize, Serialize};
use std::collections::HashSet;

/// The version of this shape.
pub const VERSION: u32 = 1;
/// How many answers a file can hold; chosen: fifty a day for ten years.
pub const MOST_ANSWERS: usize = 200_000;
/// How many handed-out sets, or begun tasks, a file can hold; chosen.
pub const MOST_OTHERS: usize = 50_000;

/// How far from the equator a student can say to fly. The most is that of [`super::LATITUDE`];
/// the least is that of [`Kind::least_latitude_deg`](super::Kind::least_latitude_deg) over all kinds.
pub const AWAY: Range = Range::new("latitude", Unit::Degree, 20.0, 70.0);
/// How long an answer can have taken; chosen: a day.
const SECONDS: Range = Range::new("time taken", Unit::Second, 0.0, 86_400.0);
/// Milliseconds since 1970 that a clock of a browser can show.
const MOMENT: Range = Range::new("milliseconds since 1970", Unit::Number, 0.0, 8.64e15);

/// All that is kept.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Kept {
    /// [`VERSION`].
    pub version: u32,
    /// What the student chose.
    #[serde(default)]
    pub settings: Settings,
    /// Every answer of practice, in any order.
    #[serde(default)]
    pub answers: Vec<Logged>,
    /// Results of sets that were handed out.
    #[serde(default)]
    pub handed: Vec<Results>,
    /// Tasks that were begun, answered or not.
    #[serde(default)]
    pub begun: Vec<TaskId>,
}

/// An answer, as far as practice needs it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Logged {
    /// The task.
    pub task: TaskId,
    /// What class of situations it belongs to.
    pub class: Class,
    /// Whether it was done.
    pub outcome: Outcome,
    /// How long it took, seconds.
    pub seconds: f64,
    /// The day where the student was, counted from any fixed one.
    pub day: u32,
    /// When it was given, milliseconds since 1970, which tells it from others.
    pub at_ms: u64,
}

/// What a student chose for the tasks of a day.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Settings {
    /// The hemisphere to fly in; none for both.
    #[serde(default = "usual_hemisphere")]
    pub hemisphere: Option<Hemisphere>,
    /// How far from the equator, degrees either way; none for anywhere.
    #[serde(default)]
    pub away_deg: Option<f64>,
    /// How hard, 1 to 3; none for what grows with the student.
    #[serde(default)]
    pub level: Option<u8>,
    /// How far off a flown task may end, degrees.
    #[serde(default = "usual_tolerance")]
    pub tolerance_deg: f64,
}

#[allow(clippy::unnecessary_wraps, reason = "the field's type")]
fn usual_hemisphere() -> Option<Hemisphere> {
    Some(Hemisphere::Northern)
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            hemisphere: usual_hemisphere(),
            away_deg: None,
            level: None,
            tolerance_deg: usual_tolerance(),
        }
    }
}

impl Settings {
    /// Reads settings from JSON text.
    ///
    /// # Errors
    /// As of [`Kept::from_json`].
    pub fn from_json(json: &str) -> Result<Self, RecordError> {
        let settings: Self = read(json)?;
        settings.check()?;
        Ok(settings)
    }

    /// Whether every value is within its range.
    ///
    /// # Errors
    /// The first that is not, by its field.
    pub fn check(&self) -> Result<(), RecordError> {
        for (field, range, value) in [
            ("away_deg", AWAY, self.away_deg),
            ("level", LEVEL, self.level.map(f64::from)),
            ("tolerance_deg", TOLERANCE, Some(self.tolerance_deg)),
        ] {
            if let Some(value) = value {
                within(field, range, value)?;
            }
        }
        Ok(())
    }
}

impl Logged {
    /// Reads an answer from JSON text.
    ///
    /// # Errors
    /// As of [`Kept::from_json`].
    pub fn from_json(json: &str) -> Result<Self, RecordError> {
        let logged: Self = read(json)?;
        logged.check()?;
        Ok(logged)
    }

    /// What it is stored under: no two answers share it.
    pub fn key(&self) -> String {
        format!("{:016}/{}", self.at_ms, begun_key(&self.task))
    }

    /// Whether every value is within its range.
    fn check(&self) -> Result<(), RecordError> {
        check_task(&self.task)?;
        within("seconds", SECONDS, self.seconds)?;
        within("day", DAY, f64::from(self.day))?;
        within("at_ms", MOMENT, self.at_ms as f64)
    }
}

/// Reads a task that was begun from JSON text.
///
/// # Errors
/// As of [`Kept::from_json`].
pub fn begun_from_json(json: &str) -> Result<TaskId, RecordError> {
    let task: TaskId = read(json)?;
    check_task(&task)?;
    Ok(task)
}

/// What a begun task is stored under.
pub fn begun_key(task: &TaskId) -> String {
    text(task)
}

/// What the results of a set are stored under: those of the same set and seed belong together.
pub fn handed_key(results: &Results) -> String {
    format!("{}/{}", results.seed, text(&results.set))
}

/// The results of a set as two tabs have them, put together. Of two answers to a task the first
/// counts, or the newer one where the set allows another try.
#[must_use]
pub fn joined(had: &Results, newer: Results) -> Results {
    let allowed = &newer.set.allowed;
    let may_again = allowed.contains(&Help::GoBack) || allowed.contains(&Help::Reload);
    let mut answers = had.answers.clone();
    for it in newer.answers {
        let same = |had: &&mut Answer| had.record.task == it.record.task;
        match answers.iter_mut().find(same) {
            Some(had) if may_again => *had = it,
            Some(_) => {}
            None => answers.push(it),
        }
    }
    Results { answers, ..newer }
}

impl Default for Kept {
    fn default() -> Self {
        Self {
            version: VERSION,
            settings: Settings::default(),
            answers: Vec::new(),
            handed: Vec::new(),
            begun: Vec::new(),
        }
    }
}

impl Kept {
    /// Reads a file.
    ///
    /// # Errors
    /// Text that is not JSON, another version, a field unknown, missing or beyond its range: in one
    /// sentence that names the field.
    pub fn from_json(json: &str) -> Result<Self, RecordError> {
        let mut kept: Self = read(json)?;
        check_version("practice files", VERSION, kept.version)?;
        kept.settings
            .check()
            .map_err(|error| error.within("settings"))?;
        for (field, count, most) in [
            ("answers", kept.answers.len(), MOST_ANSWERS),
            ("handed", kept.handed.len(), MOST_OTHERS),
            ("begun", kept.begun.len(), MOST_OTHERS),
        ] {
            if count > most {
                let reason = format!("there can be at most {most}, not {count}");
                return Err(RecordError::at(field, reason));
            }
        }
        for (index, it) in kept.answers.iter().enumerate() {
            let place = || format!("answers[{index}]");
            it.check().map_err(|error| error.within(&place()))?;
        }
        for (index, it) in kept.handed.iter().enumerate() {
            let place = || format!("handed[{index}]");
            it.check().map_err(|error| error.within(&place()))?;
        }
        for (index, it) in kept.begun.iter().enumerate() {
            let place = || format!("begun[{index}]");
            check_task(it).map_err(|error| error.within(&place()))?;
        }
        kept.tidy();
        Ok(kept)
    }

    /// It as JSON text.
    pub fn to_json(&self) -> String {
        text(self)
    }

    /// Whether nothing was practised.
    pub fn is_empty(&self) -> bool {
        self.answers.is_empty() && self.handed.is_empty() && self.begun.is_empty()
    }

    /// What is remembered, class by class, after the answers in the order in which they were given.
    pub fn practice(&self) -> Practice {
        let mut practice = Practice::default();
        for it in &self.answers {
            practice.answered(&it.class, it.outcome, it.seconds, it.day);
        }
        practice
    }

    /// What both hold; the settings are this one's.
    #[must_use]
    pub fn with(mut self, other: Self) -> Self {
        self.answers.extend(other.answers);
        self.begun.extend(other.begun);
        for results in other.handed {
            self.put_handed(results);
        }
        self.tidy();
        self
    }

    /// What this holds and the other does not; the settings are this one's. Results of a set that
    /// both hold are left out, whatever their answers.
    #[must_use]
    pub fn without(mut self, other: &Self) -> Self {
        let answers: HashSet<String> = other.answers.iter().map(Logged::key).collect();
        let begun: HashSet<String> = other.begun.iter().map(begun_key).collect();
        let handed: HashSet<String> = other.handed.iter().map(handed_key).collect();
        self.answers.retain(|it| !answers.contains(&it.key()));
        self.begun.retain(|it| !begun.contains(&begun_key(it)));
        self.handed.retain(|it| !handed.contains(&handed_key(it)));
        self
    }

    /// Takes in the results of a set, together with those of the same set and seed.
    pub fn put_handed(&mut self, results: Results) {
        let same = |it: &&mut Results| it.set == results.set && it.seed == results.seed;
        match self.handed.iter_mut().find(same) {
            Some(it) => *it = joined(it, results),
            None => self.handed.push(results),
        }
    }

    /// Answers in the order in which they were given, nothing twice.
    pub fn tidy(&mut self) {
        self.answers
            .sort_by_cached_key(|it| (it.day, it.at_ms, it.key()));
        self.answers.dedup_by(|a, b| a.key() == b.key());
        self.begun.sort_by_cached_key(begun_key);
        self.begun.dedup();
    }
}

fn within(field: &str, range: Range, value: f64) -> Result<(), RecordError> {
    range
        .accept(value)
        .map(|_| ())
        .map_err(|error| RecordError::at(field, error))
}

fn check_task(task: &TaskId) -> Result<(), RecordError> {
    task.check().map_err(|error| match error {
        DrillError::OutOfRange { field, reason } => {
            RecordError::at(&format!("task.{field}"), reason)
        }
        other => RecordError::at("task", other),
    })
}

/// A record as the JSON text that its own `from_json` reads.
pub fn text<T: Serialize>(of: &T) -> String {
    // Numbers, names and what was JSON before: there is nothing that cannot be written.
    serde_json::to_string(of).unwrap_or_default()
}
