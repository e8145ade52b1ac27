//! A student's results of a set, as a file that goes back to the instructor.

use super::mark::{Mark, Outcome, mark};
use super::record::{Record, RecordError, read};
use super::set::{PracticeSet, check_text, check_version};
use super::{Kind, TaskId};
use compass::range::Range;
use compass::unit::Unit;
use serde::{Deserialize, Serialize};

/// The version of this shape.
pub const VERSION: u32 = 1;
/// How many answers a file can hold; chosen, twice the most tasks of a set.
pub const MOST_ANSWERS: usize = 1000;
/// How long an answer can have taken; chosen: eleven days, as a page may be left open.
pub const TIME_TAKEN: Range = Range::new("time taken", Unit::Second, 0.0, 1_000_000.0);

/// What a student answered to a set.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Results {
    /// [`VERSION`].
    pub version: u32,
    /// What the student typed to be known by; empty for nothing.
    #[serde(default)]
    pub student: String,
    /// The set.
    pub set: PracticeSet,
    /// The seed that the tasks were had from.
    pub seed: u64,
    /// The answers, in the order in which they were given.
    pub answers: Vec<Answer>,
}

/// One answer with its mark.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Answer {
    /// What was chosen or flown.
    pub record: Record,
    /// How long it took, seconds.
    pub seconds: f64,
    /// Whether it was done.
    pub outcome: Outcome,
    /// How far off a flown task ended.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub error_deg: Option<f64>,
    /// The mistake, where there was one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mistake: Option<String>,
}

impl Answer {
    /// An answer, marked by its record.
    ///
    /// # Errors
    /// As of [`mark`].
    pub fn marked(record: Record, seconds: f64) -> Result<(Self, Mark), RecordError> {
        let mark = mark(&record)?;
        let answer = Self {
            seconds,
            outcome: mark.outcome,
            error_deg: mark.error_deg,
            mistake: mark.mistake.clone(),
            record,
        };
        Ok((answer, mark))
    }
}

impl Results {
    /// Reads results from JSON text. They are taken as they are written; [`checked`](Self::checked)
    /// marks them again.
    ///
    /// # Errors
    /// Text that is not JSON, another version, a field unknown, missing or beyond its range: in one
    /// sentence that names the field.
    pub fn from_json(json: &str) -> Result<Self, RecordError> {
        let results: Self = read(json)?;
        results.check()?;
        Ok(results)
    }

    /// Whether all of it is within its ranges.
    pub(super) fn check(&self) -> Result<(), RecordError> {
        check_version("results", VERSION, self.version)?;
        check_text("student", &self.student)?;
        self.set.check().map_err(|error| error.within("set"))?;
        if self.answers.len() > MOST_ANSWERS {
            let count = self.answers.len();
            let reason = format!("there can be at most {MOST_ANSWERS} answers, not {count}");
            return Err(RecordError::at("answers", reason));
        }
        for (index, answer) in self.answers.iter().enumerate() {
            let at = |error: RecordError| error.within(&format!("answers[{index}].record"));
            answer.record.check().map_err(at)?;
            TIME_TAKEN
                .accept(answer.seconds)
                .map_err(|error| RecordError::at(&format!("answers[{index}].seconds"), error))?;
            if let Some(mistake) = &answer.mistake {
                check_text(&format!("answers[{index}].mistake"), mistake)?;
            }
        }
        Ok(())
    }

    /// The results as JSON text.
    pub fn to_json(&self) -> String {
        // Numbers, names and what was JSON before: there is nothing that cannot be written.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }

    /// The results as marked again from their records, whatever the file says; tasks that the set
    /// does not ask for are none of its results, and nor is a second answer to a task.
    ///
    /// # Errors
    /// A record that cannot be marked, by its place.
    pub fn checked(self) -> Result<Self, RecordError> {
        let mut checking = Checking::of(self);
        while checking.step()? {}
        Ok(checking.results)
    }

    /// The results as CSV text, a line an answer, after a line of names.
    pub fn to_csv(&self) -> String {
        let mut text = String::from(
            "student,set,kind,seed,number,level,latitude_deg,tolerance_deg,outcome,error_deg,\
             seconds,mistake\n",
        );
        for answer in &self.answers {
            let task = &answer.record.task;
            let figure = |it: Option<f64>| it.map_or(String::new(), |it| it.to_string());
            let cells = [
                cell(&self.student),
                cell(&self.set.title),
                task.kind.name().to_owned(),
                task.seed.to_string(),
                task.number.to_string(),
                task.level.to_string(),
                figure(task.latitude_deg),
                task.tolerance_deg.to_string(),
                outcome(answer.outcome).to_owned(),
                figure(answer.error_deg.map(flights::six_decimals)),
                answer.seconds.to_string(),
                cell(answer.mistake.as_deref().unwrap_or_default()),
            ];
            text.push_str(&cells.join(","));
            text.push('\n');
        }
        text
    }

    /// How many answers of a kind there are, and how many of them passed.
    pub fn of_kind(&self, kind: Kind) -> Score {
        let answers = self.answers.iter().filter(|it| it.record.task.kind == kind);
        answers.fold(Score::default(), |score, answer| Score {
            answered: score.answered + 1,
            passed: score.passed + usize::from(answer.outcome == Outcome::Passed),
        })
    }
}

/// Results that are marked again, an answer at a time: a flight takes a while to be flown again.
#[derive(Clone, Debug)]
pub struct Checking {
    /// The results; the marks of the answers so far are made again.
    results: Results,
    /// The tasks of the set that no answer so far was to.
    asked: Vec<TaskId>,
    done: usize,
    changed: usize,
}

impl Checking {
    /// Nothing is marked again yet.
    pub fn of(results: Results) -> Self {
        Self {
            asked: results.set.tasks(results.seed),
            results,
            done: 0,
            changed: 0,
        }
    }

    /// Marks one answer more, and says whether there was one.
    ///
    /// # Errors
    /// A record that cannot be marked, by its place.
    pub fn step(&mut self) -> Result<bool, RecordError> {
        let Some(answer) = self.results.answers.get_mut(self.done) else {
            return Ok(false);
        };
        let path = format!("answers[{}].record", self.done);
        let Some(at) = self.asked.iter().position(|it| *it == answer.record.task) else {
            let reason = "the set does not ask for this task, or not twice";
            return Err(RecordError::at(&format!("{path}.task"), reason));
        };
        self.asked.remove(at);
        let record = Record {
            // The set says what may help, not the record.
            allowed: self.results.set.allowed.clone(),
            ..answer.record.clone()
        };
        let (again, _) =
            Answer::marked(record, answer.seconds).map_err(|error| error.within(&path))?;
        self.changed += usize::from(again.outcome != answer.outcome);
        *answer = again;
        self.done += 1;
        Ok(true)
    }

    /// How many answers are marked again.
    pub fn done(&self) -> usize {
        self.done
    }

    /// How many of them had another outcome in the file than their record gives.
    pub fn changed(&self) -> usize {
        self.changed
    }

    /// The results as far as they are marked again.
    pub fn results(&self) -> &Results {
        &self.results
    }
}

/// How many were answered and how many passed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Score {
    /// Answers.
    pub answered: usize,
    /// Those that passed.
    pub passed: usize,
}

/// An outcome by its name in files.
pub(super) fn outcome(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Passed => "passed",
        Outcome::Failed => "failed",
        Outcome::NotMarked => "not-marked",
    }
}

/// A text as a cell of CSV: in quotes where it needs them, and never taken for a formula by what
/// reads it.
pub(super) fn cell(text: &str) -> String {
    let guard = if text.starts_with(['=', '+', '-', '@']) {
        "'"
    } else {
        ""
    };
    if text.contains([',', '"', '\n', '\r']) {
        format!("\"{guard}{}\"", text.replace('"', "\"\""))
    } else {
        format!("{guard}{text}")
    }
}
