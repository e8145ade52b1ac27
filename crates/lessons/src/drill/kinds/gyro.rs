//! Set the gyro: a heading indicator that drifts, over a flight that is flown for the pilot.

use super::super::class::{Class, Hemisphere, Manoeuvre, Octant};
use super::super::course::{Course, between, error_deg, fly, rms};
use super::super::dice::Dice;
use super::super::gyro::{Settings, indicator};
use super::super::identity::{DrillError, TaskId};
use super::super::task::{Aim, Explanation, Task};
use super::super::turning::{heading, latitude};
use super::super::words;
use compass::gust::RoughAir;
use compass::simulation::Moment;

/// A compass within this of the heading is good to set by, degrees; chosen.
const GOOD_DEG: f64 = 2.0;
/// For so many seconds at least; chosen: time to see that it rests and to set.
const GOOD_FOR_S: usize = 10;

pub(super) fn draw(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    let at_latitude_deg = latitude(id, dice);
    let on = heading(id, dice);
    let speed_kt = f64::from(dice.whole(90, 130));
    let drift_deg_h = dice.side() * f64::from(dice.stepped(20, 60, 5));
    // More than may be carried: who does nothing is not within it.
    let error_at_start_deg =
        dice.side() * (id.tolerance_deg + f64::from(dice.whole(5, 15))).round();
    let seed = u64::from(dice.whole(0, i32::MAX - 1) as u32);
    let mut course = Course::at_latitude(at_latitude_deg, on, speed_kt)?;
    if id.level > 1 {
        course = course.rough(RoughAir::Light, seed);
    }
    let mut time = f64::from(dice.whole(25, 45));
    let mut speed = speed_kt;
    for _ in 0..2 + 2 * usize::from(id.level) {
        if dice.whole(0, 2) < 2 {
            let most = if id.level > 2 { 30 } else { 20 };
            let bank = dice.side() * f64::from(dice.whole(12, most));
            course = course.bank(time, bank);
            time += f64::from(dice.whole(15, 40));
            course = course.bank(time, 0.0);
        } else {
            speed = if speed > 110.0 {
                speed - 35.0
            } else {
                speed + 35.0
            };
            course = course.speed(time, speed);
            time += 20.0;
        }
        time += f64::from(dice.whole(20, 50));
    }
    let flight = course.flight(time, [0.0, time]);
    let moments = fly(&flight)?;
    let good_s = good(&moments, time);
    let share: f64 = good_s.iter().map(|[from, to]| to - from).sum::<f64>() / time;
    let (Some([_, from_s]), true) = (good_s.first().copied(), good_s.len() >= 3) else {
        return Ok(None);
    };
    // The last chance comes well before the end, the first soon, and most moments are bad ones.
    if from_s > 90.0 || share > 0.7 {
        return Ok(None);
    }
    let settings = Settings {
        latitude_deg: at_latitude_deg,
        drift_deg_h,
        error_at_start_deg,
    };
    let middles: Vec<f64> = good_s.iter().map(|[from, to]| 0.5 * (from + to)).collect();
    let carried = indicator(&settings, &moments, &middles)?;
    let ideal_deg = rms(between_errors(&carried.errors, from_s));
    let idle = indicator(&settings, &moments, &[])?;
    let idle_deg = rms(between_errors(&idle.errors, from_s));
    if ideal_deg > 0.5 * id.tolerance_deg || idle_deg < 1.2 * id.tolerance_deg {
        return Ok(None);
    }
    let by_size = |a: &&Moment, b: &&Moment| error_deg(a).abs().total_cmp(&error_deg(b).abs());
    let Some(worst) = moments.iter().max_by(by_size) else {
        return Ok(None);
    };
    let why = words::why(worst, &course.situation().field);
    let drift = carried.drift_deg_h;
    Ok(Some(Task {
        id: *id,
        at_latitude_deg,
        class: Class {
            kind: id.kind,
            octant: Octant::of(on),
            manoeuvre: Manoeuvre::Level,
            hemisphere: Hemisphere::of(at_latitude_deg),
        },
        question: format!(
            "At {} the aircraft is flown for you for {} s. The heading indicator drifts and was not \
             set before take-off. Set it by the compass when the compass can be trusted: from \
             {} s on it may be off by {}° on the whole (root mean square).",
            words::latitude(at_latitude_deg),
            time,
            words::tidy(from_s),
            words::tidy(id.tolerance_deg),
        ),
        choices: Vec::new(),
        aim: Some(Aim::SetGyro {
            error_at_start_deg,
            drift_deg_h,
            from_s,
            good_s: good_s.clone(),
            ideal_deg,
        }),
        paper: None,
        flight: Some(flight),
        explanation: Explanation {
            happened: format!(
                "The compass could be trusted in {} stretches, {} of the time. Set in the middle of \
                 each, the indicator is off by {}° on the whole; never set, by {}°.",
                good_s.len(),
                percent(share),
                words::tidy(ideal_deg),
                words::tidy(idle_deg)
            ),
            why: format!(
                "Left alone, the indicator shows {}° {} every hour: its own drift and the Earth's \
                 rotation together. The compass was furthest off at {} s, by {}°. {why}",
                words::tidy(drift.abs()),
                if drift < 0.0 { "less" } else { "more" },
                worst.time.round(),
                error_deg(worst).abs().round()
            ),
            rule: format!(
                "Rule of thumb: set it in steady straight and level flight only, every ten to \
                 fifteen minutes. In fifteen minutes this one drifts by {}°.",
                words::tidy((drift / 4.0).abs())
            ),
        },
    }))
}

/// When the compass is good to set by: seconds, of which each has its error within [`GOOD_DEG`]
/// in root mean square.
fn good(moments: &[Moment], end: f64) -> Vec<[f64; 2]> {
    let mut found: Vec<[f64; 2]> = Vec::new();
    for second in 0..end as u32 {
        let from = f64::from(second);
        if rms(between(moments, from, from + 1.0).iter().map(error_deg)) > GOOD_DEG {
            continue;
        }
        match found.last_mut() {
            Some(last) if last[1] == from => last[1] = from + 1.0,
            _ => found.push([from, from + 1.0]),
        }
    }
    found.retain(|[from, to]| to - from >= GOOD_FOR_S as f64);
    found
}

fn between_errors(errors: &[(f64, f64)], from_s: f64) -> impl Iterator<Item = f64> + '_ {
    errors
        .iter()
        .filter(move |(time, _)| *time >= from_s)
        .map(|(_, error)| *error)
}

fn percent(share: f64) -> String {
    // Not to be parted at the end of a line.
    format!("{:.0}\u{a0}%", 100.0 * share)
}
