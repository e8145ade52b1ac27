//! Marking a heading indicator by the error that it carried.

use super::super::course::rms;
use super::super::gyro::{Settings, indicator};
use super::super::record::{Record, RecordError};
use super::super::task::{Aim, Task};
use super::super::words;
use super::{Found, Off, ended_too_soon, figure};
use compass::simulation::Moment;

/// A setting of the indicator by a compass that is off by more is a bad one, degrees; chosen.
const SET_WELL_DEG: f64 = 3.0;

/// The error that a heading indicator carried.
pub(super) fn carried(
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
    let settings = Settings::of(aim, task.at_latitude_deg)
        .ok_or_else(|| RecordError::at("task", "it has no heading indicator"))?;
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
                mistake: if badly > 0 {
                    "set the indicator by a compass that erred"
                } else {
                    "set the indicator too late or not at all"
                },
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
        happened: happened(found.set.len(), badly, (end > from_s).then_some(root)),
    })
}

/// How often it was set, how often badly, and what that came to where it came to count.
fn happened(times: usize, badly: usize, root_deg: Option<f64>) -> String {
    let set = match (times, badly) {
        (0, _) => "The indicator was never set".to_owned(),
        (1, 0) => "The indicator was set once, by a compass that could be trusted".to_owned(),
        (1, _) => {
            format!("The indicator was set once, by a compass off by more than {SET_WELL_DEG}°")
        }
        _ => format!(
            "The indicator was set {times} times, {badly} of them by a compass off by more than \
             {SET_WELL_DEG}°"
        ),
    };
    match root_deg {
        Some(root) => format!("{set}; it was off by {}° on the whole.", words::tidy(root)),
        None => format!("{set}, and the flight ended before it counted."),
    }
}
