//! Pilots for the marks: each flies a task as a page would record it.

use compass::free_flight::Controls;
use compass::gust::GustNumbers;
use compass::simulation::{Moment, STEPS_PER_SECOND};
use flights::Scenario;
use lessons::drill::Task;
use lessons::drill::mark::{Mark, mark};
use lessons::drill::record::{Record, VERSION};
use serde_json::{Value, json};

/// The record of an answer to a task.
pub(crate) fn record(task: &Task, flight: Value, gyro_set_s: Vec<f64>) -> Record {
    let record = Record {
        version: VERSION,
        task: task.id,
        chosen: None,
        flight: Some(flight),
        gyro_set_s,
        used: Vec::new(),
        allowed: Vec::new(),
    };
    // There and back through a file.
    Record::from_json(&record.to_json()).unwrap()
}

/// Flies a task's situation for so many seconds: a pilot looks at a moment every tenth of a
/// second and says where the bank is to be, degrees. Gives the record.
pub(crate) fn fly(task: &Task, seconds: f64, mut pilot: impl FnMut(&Moment) -> f64) -> Record {
    let mut flight = task.flight.as_ref().unwrap().scenario.clone();
    let scenario = Scenario::from_json(&flight.to_string()).unwrap();
    let mut simulation = scenario.simulation().unwrap();
    let level = scenario.controls();
    let mut now: Controls = level;
    let mut banked = 0.0;
    let mut controls = Vec::new();
    for step in 0..(seconds * STEPS_PER_SECOND as f64) as u64 {
        if step.is_multiple_of(STEPS_PER_SECOND / 10) {
            let bank = pilot(&simulation.moment());
            if bank != banked {
                banked = bank;
                now = level.with_bank(bank.to_radians());
                let time = step as f64 / STEPS_PER_SECOND as f64;
                controls.push(json!({"time_s": time, "bank_deg": bank}));
            }
        }
        simulation.step(&now, scenario.air().at(step));
    }
    flight["controls"] = controls.into();
    flight["duration_s"] = seconds.into();
    record(task, flight, Vec::new())
}

/// The mark of a flown task.
pub(crate) fn marked(record: &Record) -> Mark {
    mark(record).unwrap_or_else(|error| panic!("{error}"))
}
