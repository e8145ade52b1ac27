//! Marks, from the record alone: the same in the browser and on the command line.

mod gyro;
mod held;
mod turn;

pub(super) use turn::rolled;
pub use turn::{ASKED_DEG, TurnFollowed};

use super::course::moments;
use super::generate;
use super::identity::{DrillError, TaskId};
use super::record::{Record, RecordError};
use super::task::{Aim, Explanation, Flight, Task};
use super::words;
use compass::simulation::{Moment, STEPS_PER_SECOND};
use flights::Scenario;
use serde::Serialize;

/// How far the start of a flight may be from the task's, degrees and knots; chosen: what rounding
/// on the way through a file leaves is far below.
const SAME: f64 = 1e-6;

/// A mark.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Mark {
    /// The task.
    pub task: TaskId,
    /// Whether it was done.
    pub outcome: Outcome,
    /// Why it was not marked, where it was not.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reason: Option<String>,
    /// How far off a flown task ended, degrees: what is held against the tolerance. Of a turn it is
    /// the heading less the target, right positive.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub error_deg: Option<f64>,
    /// The mistake, in a few words that gather with others'; none where it was passed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mistake: Option<String>,
    /// What else was found.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub figures: Vec<Figure>,
    /// What happened, why, and the rule of thumb.
    pub explanation: Explanation,
}

/// Whether a task was done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Outcome {
    /// The right choice, or within the tolerance.
    Passed,
    /// A wrong choice, or beyond the tolerance.
    Failed,
    /// What is recorded does not answer the task, or was had with help that it does not allow.
    NotMarked,
}

/// A figure found in a record.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Figure {
    /// What it is.
    pub name: &'static str,
    /// How much.
    pub value: f64,
    /// In what unit.
    pub unit: &'static str,
}

/// What a flown record amounts to, before the explanation is put together.
struct Found {
    /// How far off, and what is held against the tolerance; or why there is no mark.
    result: Result<Off, String>,
    figures: Vec<Figure>,
    /// What this flight did, a sentence or two.
    happened: String,
}

/// An error and whether it is within the tolerance.
struct Off {
    error_deg: f64,
    passed: bool,
    /// What is wrong with it where it is not passed.
    mistake: &'static str,
}

/// Marks a record.
///
/// # Errors
/// A task that does not exist, a choice it does not have, a flight that cannot be flown or starts
/// otherwise than the task.
pub fn mark(record: &Record) -> Result<Mark, RecordError> {
    let task = generate(&record.task).map_err(|error| match error {
        DrillError::OutOfRange { field, reason } => {
            RecordError::at(&format!("task.{field}"), reason)
        }
        other => RecordError::at("task", other),
    })?;
    let mut mark = match (&task.aim, &task.flight) {
        (Some(aim), Some(flight)) => flown(record, &task, aim, flight)?,
        _ => chosen(record, &task)?,
    };
    let helped = record.used.iter().find(|it| !record.allowed.contains(it));
    if let Some(help) = helped {
        mark.outcome = Outcome::NotMarked;
        mark.mistake = Some("used help that the task does not allow".to_owned());
        mark.reason = Some(format!(
            "{}, which this task does not allow",
            help.done(task.aim.is_some())
        ));
    }
    Ok(mark)
}

fn chosen(record: &Record, task: &Task) -> Result<Mark, RecordError> {
    let count = task.choices.len();
    let chosen = record
        .chosen
        .ok_or_else(|| RecordError::at("chosen", "this task needs a choice, and there is none"))?;
    let choice = task.choices.get(chosen).ok_or_else(|| {
        RecordError::at(
            "chosen",
            format!("choice must be from 0 to {}, not {chosen}", count - 1),
        )
    })?;
    Ok(Mark {
        task: task.id,
        outcome: if choice.right {
            Outcome::Passed
        } else {
            Outcome::Failed
        },
        reason: None,
        error_deg: None,
        mistake: (!choice.right).then(|| choice.slip.clone()),
        figures: Vec::new(),
        explanation: task.explanation.clone(),
    })
}

fn flown(record: &Record, task: &Task, aim: &Aim, flight: &Flight) -> Result<Mark, RecordError> {
    let in_task = |error| RecordError::at("task", error);
    let asked = flight.read().map_err(in_task)?;
    let (scenario, moments) = of_record(record, flight)?;
    let tolerance = task.id.tolerance_deg;
    let found = match aim {
        Aim::RollOut { target_deg, .. } | Aim::TimedTurn { target_deg, .. } => turn::found(
            &scenario,
            &moments,
            turn::Asked::of(aim, *target_deg),
            tolerance,
        ),
        Aim::HoldHeading {
            target_deg,
            from_s,
            to_s,
            ..
        } => held::held(
            &scenario,
            &moments,
            *target_deg,
            [*from_s, *to_s],
            tolerance,
        ),
        Aim::SetGyro { from_s, .. } => {
            check_same_flight(&scenario, &asked)?;
            gyro::carried(record, task, aim, &moments, [*from_s, asked.duration()])?
        }
    };
    let mistake = match &found.result {
        Ok(result) if result.passed => None,
        Ok(result) => Some(result.mistake),
        Err(_) => Some("was not finished"),
    };
    let (outcome, error_deg, reason) = match found.result {
        Ok(result) if result.passed => (Outcome::Passed, Some(result.error_deg), None),
        Ok(result) => (Outcome::Failed, Some(result.error_deg), None),
        Err(reason) => (Outcome::NotMarked, None, Some(reason)),
    };
    Ok(Mark {
        task: task.id,
        outcome,
        reason,
        error_deg,
        mistake: mistake.map(str::to_owned),
        figures: found.figures,
        explanation: Explanation {
            happened: format!("{} {}", found.happened, task.explanation.happened),
            ..task.explanation.clone()
        },
    })
}

/// The recorded flight and its moments, checked to be one of the task's flight.
pub(super) fn of_record(
    record: &Record,
    flight: &Flight,
) -> Result<(Scenario, Vec<Moment>), RecordError> {
    let asked = flight
        .read()
        .map_err(|error| RecordError::at("task", error))?;
    let scenario = scenario(record, &asked)?;
    let moments = moments(&scenario).map_err(|error| in_flight(&error))?;
    check_start(&moments, &asked)?;
    Ok((scenario, moments))
}

fn in_flight(error: &flights::ScenarioError) -> RecordError {
    let path = match error.path.as_str() {
        "" => "flight".to_owned(),
        path => format!("flight.{path}"),
    };
    RecordError::at(&path, &error.reason)
}

/// The recorded flight, checked to take place in what the task's does and to last no longer.
fn scenario(record: &Record, asked: &Scenario) -> Result<Scenario, RecordError> {
    let flight = record
        .flight
        .as_ref()
        .ok_or_else(|| RecordError::at("flight", "this task needs a flight, and there is none"))?;
    let scenario = Scenario::from_json(&flight.to_string()).map_err(|error| in_flight(&error))?;
    if scenario.duration() > asked.duration() + 1.0 {
        return Err(RecordError::at(
            "flight.duration_s",
            format!(
                "a flight for this task lasts at most {} s, not {} s",
                asked.duration(),
                scenario.duration()
            ),
        ));
    }
    let [here, there] = [&scenario, asked].map(Scenario::situation);
    let differs = if here.field != there.field {
        Some("field")
    } else if here.iron != there.iron {
        Some("iron")
    } else if here.float != there.float {
        Some("float")
    } else if here.air != there.air || scenario.air() != asked.air() {
        Some("rough_air")
    } else {
        None
    };
    match differs {
        Some(what) => Err(RecordError::at(
            &format!("flight.{what}"),
            "it is not the task's: this is the record of another task",
        )),
        None => Ok(scenario),
    }
}

fn check_start(moments: &[Moment], asked: &Scenario) -> Result<(), RecordError> {
    let there = asked
        .simulation()
        .map_err(|error| in_flight(&error))?
        .motion();
    let Some(here) = moments.first().map(|it| it.motion) else {
        return Err(RecordError::at("flight", "it has no moment"));
    };
    let heading = here.heading.right_of(there.heading).to_degrees();
    if heading.abs() > SAME {
        return Err(RecordError::at(
            "flight.start.heading_deg",
            format!(
                "the task starts on {}, not on {}",
                words::heading(there.heading.degrees()),
                words::heading(here.heading.degrees())
            ),
        ));
    }
    if (here.airspeed - there.airspeed).abs() > SAME {
        return Err(RecordError::at(
            "flight.start.speed_kt",
            "the task starts at another speed",
        ));
    }
    Ok(())
}

/// A flight that is flown for the pilot has the task's controls, as far as it goes.
fn check_same_flight(scenario: &Scenario, asked: &Scenario) -> Result<(), RecordError> {
    let shorter = scenario.duration().min(asked.duration());
    let steps = (shorter * STEPS_PER_SECOND as f64) as u64;
    match (0..steps).find(|step| scenario.controls_at(*step) != asked.controls_at(*step)) {
        Some(step) => Err(RecordError::at(
            "flight.controls",
            format!(
                "this flight is flown for the pilot, but at {} s the controls are not the task's",
                step as f64 / STEPS_PER_SECOND as f64
            ),
        )),
        None => Ok(()),
    }
}

fn figure(name: &'static str, value: f64, unit: &'static str) -> Figure {
    Figure {
        name,
        value: flights::six_decimals(value),
        unit,
    }
}

fn ended_too_soon(moments: &[Moment], to_s: f64) -> Option<String> {
    let end = moments.last().map_or(0.0, |it| it.time);
    (end < to_s - 0.5).then(|| format!("the flight ended at {end} s, before {to_s} s"))
}
