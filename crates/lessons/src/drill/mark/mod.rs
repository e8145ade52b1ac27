//! Marks, from the record alone: the same in the browser and on the command line.

mod turn;

use super::course::{between, moments, rms};
use super::generate;
use super::gyro::{Settings, indicator};
use super::record::{Record, RecordError};
use super::task::{Aim, DrillError, Explanation, Flight, Task, TaskId};
use super::words;
use compass::heading::MagneticHeading;
use compass::simulation::{Moment, STEPS_PER_SECOND};
use flights::Scenario;
use serde::Serialize;

/// How far the start of a flight may be from the task's, degrees and knots; chosen: what rounding
/// on the way through a file leaves is far below.
const SAME: f64 = 1e-6;

/// A setting of the indicator by a compass that is off by more is a bad one, degrees; chosen.
const SET_WELL_DEG: f64 = 3.0;

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
        mark.reason = Some(format!(
            "the flight was {}, which this task does not allow",
            help.done()
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
        figures: Vec::new(),
        explanation: task.explanation.clone(),
    })
}

fn flown(record: &Record, task: &Task, aim: &Aim, flight: &Flight) -> Result<Mark, RecordError> {
    let in_task = |error| RecordError::at("task", error);
    let asked = flight.read().map_err(in_task)?;
    let scenario = scenario(record, &asked)?;
    let moments = moments(&scenario).map_err(|error| in_flight(&error))?;
    check_start(&moments, &asked)?;
    let tolerance = task.id.tolerance_deg;
    let found = match aim {
        Aim::RollOut { target_deg, .. } | Aim::TimedTurn { target_deg, .. } => {
            turn::found(&scenario, &moments, *target_deg, tolerance)
        }
        Aim::HoldHeading {
            target_deg,
            from_s,
            to_s,
            ..
        } => held(
            &scenario,
            &moments,
            *target_deg,
            [*from_s, *to_s],
            tolerance,
        ),
        Aim::SetGyro { from_s, .. } => {
            check_same_flight(&scenario, &asked)?;
            carried(record, task, aim, &moments, [*from_s, asked.duration()])?
        }
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
        figures: found.figures,
        explanation: Explanation {
            happened: format!("{} {}", found.happened, task.explanation.happened),
            ..task.explanation.clone()
        },
    })
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

/// A heading held: mean and root mean square of what it was off.
fn held(
    scenario: &Scenario,
    moments: &[Moment],
    target_deg: f64,
    [from_s, to_s]: [f64; 2],
    tolerance: f64,
) -> Found {
    if let Some(reason) = ended_too_soon(moments, to_s) {
        return Found {
            result: Err(reason),
            figures: Vec::new(),
            happened: "The heading was not held to the end.".to_owned(),
        };
    }
    let target = MagneticHeading::from_degrees(target_deg);
    let off: Vec<f64> = between(moments, from_s, to_s)
        .iter()
        .map(|it| it.motion.heading.right_of(target).to_degrees())
        .collect();
    let mean = off.iter().sum::<f64>() / off.len().max(1) as f64;
    let root = rms(off.iter().copied());
    let greatest = off.iter().fold(0.0_f64, |a, b| a.max(b.abs()));
    let turns = reversals(scenario, [from_s, to_s]);
    Found {
        // The root mean square is never below the mean.
        result: Ok(Off {
            error_deg: root,
            passed: root <= tolerance,
        }),
        figures: vec![
            figure("mean off the heading", mean, "°"),
            figure("greatest off the heading", greatest, "°"),
            figure("turns from one side to the other", f64::from(turns), ""),
        ],
        happened: format!(
            "The heading was off by {}° in root mean square, {}° on the average and {}° at the \
             most, with {turns} turns from one side to the other.",
            words::tidy(root),
            words::tidy(mean.abs()),
            greatest.round()
        ),
    }
}

/// How often the bank that is asked for changes from one side to the other: the mark of chasing.
fn reversals(scenario: &Scenario, [from_s, to_s]: [f64; 2]) -> u32 {
    let [from, to] = [from_s, to_s].map(|it| (it * STEPS_PER_SECOND as f64) as u64);
    let (mut side, mut count) = (0.0, 0);
    for step in from..to {
        let bank = scenario.controls_at(step).bank();
        if bank != 0.0 && bank.signum() != side {
            count += u32::from(side != 0.0);
            side = bank.signum();
        }
    }
    count
}

/// The error that a heading indicator carried.
fn carried(
    record: &Record,
    task: &Task,
    aim: &Aim,
    moments: &[Moment],
    [from_s, to_s]: [f64; 2],
) -> Result<Found, RecordError> {
    let end = moments.last().map_or(0.0, |it| it.time);
    for (index, time) in record.gyro_set_s.iter().enumerate() {
        if !(0.0..=end + 0.1).contains(time) {
            return Err(RecordError::at(
                &format!("gyro_set_s[{index}]"),
                format!("time of a setting must be from 0 s to {end} s, not {time} s"),
            ));
        }
    }
    let Aim::SetGyro {
        error_at_start_deg,
        drift_deg_h,
        ..
    } = aim
    else {
        return Err(RecordError::at("task", "it has no heading indicator"));
    };
    let settings = Settings {
        latitude_deg: task.at_latitude_deg,
        drift_deg_h: *drift_deg_h,
        error_at_start_deg: *error_at_start_deg,
    };
    let found = indicator(&settings, moments, &record.gyro_set_s)
        .map_err(|error| RecordError::at("task", error))?;
    let counted = found.errors.iter().filter(|(time, _)| *time >= from_s);
    let root = rms(counted.map(|(_, error)| *error));
    let badly = found
        .set
        .iter()
        .filter(|(_, wrong)| wrong.abs() > SET_WELL_DEG)
        .count();
    let left = found.errors.last().map_or(0.0, |(_, error)| *error);
    let tolerance = task.id.tolerance_deg;
    Ok(Found {
        result: match ended_too_soon(moments, to_s) {
            Some(reason) => Err(reason),
            None => Ok(Off {
                error_deg: root,
                passed: root <= tolerance,
            }),
        },
        figures: vec![
            figure("error at the end", left, "°"),
            figure("settings", found.set.len() as f64, ""),
            figure(
                "settings by a compass off by more than 3°",
                badly as f64,
                "",
            ),
        ],
        happened: format!(
            "The indicator was set {} times, {badly} of them by a compass off by more than \
             {SET_WELL_DEG}°; it carried {}° in root mean square.",
            found.set.len(),
            words::tidy(root)
        ),
    })
}
