//! When to practise what: spaced repetition over classes of situations.
//!
//! The memory model is FSRS 6 of the `fsrs` crate with its default parameters: nothing is fitted
//! to one student. A task that passed counts as recalled, one that failed as forgotten, one that
//! was not marked as nothing. There are no streaks and nothing is ever overdue: what is due is
//! only put first.

use super::class::Class;
use super::mark::Outcome;
use super::record::{RecordError, read};
use super::set::check_version;
use compass::range::Range;
use compass::unit::Unit;
use fsrs::{FSRS, FSRS6_DEFAULT_DECAY, MemoryState, current_retrievability};
use serde::{Deserialize, Serialize};

/// The version of this shape.
pub const VERSION: u32 = 1;

/// The share of tasks that is to be recalled when they come due: the model's usual choice.
const RECALLED: f32 = 0.9;

/// Stability that a file can hold, days: the model's own limits.
const STABILITY: Range = Range::new("stability (days)", Unit::Number, 0.001, 36_500.0);
/// Difficulty that a file can hold: the model's own limits.
const DIFFICULTY: Range = Range::new("difficulty", Unit::Number, 1.0, 10.0);
/// The last day that can be counted; chosen: some 2700 years on.
pub(super) const DAY: Range = Range::new("day", Unit::Number, 0.0, 1_000_000.0);

/// What a student has practised, class by class.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Practice {
    /// [`VERSION`].
    pub version: u32,
    /// The classes, in the order in which they were first practised.
    pub classes: Vec<Practised>,
}

/// How well a class is remembered.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Practised {
    /// The class.
    pub class: Class,
    /// In how many days the chance of recalling it falls to nine tenths.
    pub stability_days: f32,
    /// How hard it is, 1 to 10.
    pub difficulty: f32,
    /// The day on which it was practised last, counted from any fixed day.
    pub last_day: u32,
    /// How often it was answered.
    pub answered: u32,
    /// How many of the answers passed.
    pub passed: u32,
    /// How long the answers took together, seconds.
    pub seconds: f64,
}

impl Default for Practice {
    fn default() -> Self {
        Self {
            version: VERSION,
            classes: Vec::new(),
        }
    }
}

impl Practice {
    /// Reads it from JSON text.
    ///
    /// # Errors
    /// Text that is not JSON, another version, a class twice, a field unknown, missing or beyond
    /// its range: in one sentence that names the field.
    pub fn from_json(json: &str) -> Result<Self, RecordError> {
        let practice: Self = read(json)?;
        check_version("practice", VERSION, practice.version)?;
        for (index, it) in practice.classes.iter().enumerate() {
            for (field, range, value) in [
                ("stability_days", STABILITY, f64::from(it.stability_days)),
                ("difficulty", DIFFICULTY, f64::from(it.difficulty)),
                ("last_day", DAY, f64::from(it.last_day)),
            ] {
                range.accept(value).map_err(|error| {
                    RecordError::at(&format!("classes[{index}].{field}"), error)
                })?;
            }
            if practice.classes[..index]
                .iter()
                .any(|had| had.class == it.class)
            {
                let path = format!("classes[{index}].class");
                return Err(RecordError::at(&path, "this class stands there twice"));
            }
        }
        Ok(practice)
    }

    /// It as JSON text.
    pub fn to_json(&self) -> String {
        // Numbers and names alone: there is nothing that cannot be written.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }

    /// Takes in an answer of a class, given on a day and after so many seconds. A day before the
    /// last one, as of a clock that was put back, counts as the last one.
    pub fn answered(&mut self, class: &Class, outcome: Outcome, seconds: f64, day: u32) {
        if outcome == Outcome::NotMarked {
            return;
        }
        let at = self.classes.iter().position(|it| it.class == *class);
        let known = at.map(|at| &self.classes[at]);
        let passed = outcome == Outcome::Passed;
        let day = day
            .min(DAY.most as u32)
            .max(known.map_or(0, |it| it.last_day));
        let memory = remembered(known, passed, day);
        let before = known.map_or((0, 0, 0.0), |it| (it.answered, it.passed, it.seconds));
        let now = Practised {
            class: class.clone(),
            stability_days: memory.stability,
            difficulty: memory.difficulty,
            last_day: day,
            answered: before.0.saturating_add(1),
            passed: before.1.saturating_add(u32::from(passed)),
            seconds: before.2 + seconds.max(0.0),
        };
        match at {
            Some(at) => self.classes[at] = now,
            None => self.classes.push(now),
        }
    }

    /// The classes to practise on a day, the least remembered first, at most so many. What is
    /// remembered well enough is left out.
    pub fn due(&self, day: u32, most: usize) -> Vec<&Practised> {
        let mut due: Vec<&Practised> = self
            .classes
            .iter()
            .filter(|it| it.due_on() <= f64::from(day))
            .collect();
        due.sort_by(|a, b| a.recall(day).total_cmp(&b.recall(day)));
        due.truncate(most);
        due
    }
}

impl Practised {
    /// The chance of recalling it on a day, 0 to 1: its forgetting curve.
    pub fn recall(&self, day: u32) -> f64 {
        self.recall_after(f64::from(day.saturating_sub(self.last_day)))
    }

    /// The day from which on it is due, at least a day after the last one.
    pub fn due_on(&self) -> f64 {
        // At a recall of nine tenths the interval is the stability, by its definition.
        f64::from(self.last_day) + f64::from(self.stability_days).round().max(1.0)
    }

    /// The chance of recalling it so many days after it was practised last, 0 to 1.
    pub fn recall_after(&self, days: f64) -> f64 {
        let days = days.max(0.0) as f32;
        f64::from(current_retrievability(
            self.memory(),
            days,
            FSRS6_DEFAULT_DECAY,
        ))
    }

    fn memory(&self) -> MemoryState {
        MemoryState {
            stability: self.stability_days,
            difficulty: self.difficulty,
        }
    }
}

/// The memory after an answer.
fn remembered(known: Option<&Practised>, passed: bool, day: u32) -> MemoryState {
    let since = known.map_or(0, |it| day - it.last_day);
    let memory = known.map(Practised::memory);
    match FSRS::default().next_states(memory, RECALLED, since) {
        Ok(next) if passed => next.good.memory,
        Ok(next) => next.again.memory,
        // A state that the model refuses is begun anew; none that it gave itself is.
        Err(_) => memory.unwrap_or(MemoryState {
            stability: 1.0,
            difficulty: 5.0,
        }),
    }
}
