//! Read: the heading behind a reading that errs.

use super::super::class::{Class, Hemisphere, Manoeuvre, Octant};
use super::super::course::{Course, error_deg, fly};
use super::super::dice::Dice;
use super::super::identity::{DrillError, TaskId};
use super::super::task::{Choice, Explanation, Task};
use super::super::turning::{ROLL_IN_S, Turned, heading, latitude, passing};
use super::super::words::{self, apart, how_good, lag_or_lead, why};
use compass::simulation::Moment;
use compass::steady::in_speed_change;
use compass::unit::STANDARD_GRAVITY;

/// The least error that is asked to be undone, degrees: the answers then stand at least that far
/// apart; chosen.
const LEAST_DEG: f64 = 8.0;
/// The same in a change of speed, whose errors are smaller; chosen.
const LEAST_IN_SPEED_CHANGE_DEG: f64 = 6.0;
/// The greatest, degrees: beyond it a card hardly moves and its reading says nothing; chosen.
const MOST_DEG: f64 = 45.0;

/// How far the rule's heading may be from the right one, as a share of what lies between two
/// answers; chosen: not even nearly half-way to another.
const NEAR: f64 = 0.4;

pub(super) fn draw(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    if id.level > 1 && dice.whole(0, 3) == 0 {
        while_speed_changes(id, dice)
    } else {
        in_turn(id, dice)
    }
}

fn in_turn(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    let turned = Turned::draw(id, dice, true)?;
    let target = match id.level {
        1 => heading(id, dice) + f64::from(dice.stepped(-10, 10, 5)),
        _ => heading(id, dice) + f64::from(dice.whole(-4, 4)),
    }
    .rem_euclid(360.0);
    let before = f64::from(dice.stepped(50, 110, 5));
    let course = turned.course(target - turned.side * before)?;
    let field = course.situation().field;
    let closed = turned.closed_ahead_deg(target, &field);
    let within = LEAST_DEG..=MOST_DEG;
    if !within.contains(&closed.abs()) {
        return Ok(None);
    }
    // Cheap before dear: where the rule is poor by the closed form there is no need to fly.
    let error_by_rule = |heading: f64| turned.side * turned.rule_ahead_deg(heading);
    let foreseen = undone(target + turned.side * closed, error_by_rule);
    if apart(target, foreseen).abs() > NEAR * closed.abs() {
        return Ok(None);
    }
    let long = ROLL_IN_S + before;
    let moments = fly(&course.flight(long, [0.0, long]))?;
    let Some(at) = passing(&moments, target, turned.side) else {
        return Ok(None);
    };
    let moment = &moments[at];
    let [on, reading] = figures(moment);
    let ahead = turned.side * error_deg(moment);
    if !within.contains(&ahead.abs()) || ahead * closed <= 0.0 {
        return Ok(None);
    }
    let rule = turned.rule_ahead_deg(on);
    // As both are shown, in whole degrees.
    let ahead = turned.side * apart(reading, on);
    // Worked out by the rule: the heading whose reading by the rule is the one shown.
    let by_rule = undone(reading, error_by_rule);
    let Some(choices) = choices(dice, on, reading, Some(by_rule), false) else {
        return Ok(None);
    };
    let end = moment.time + 2.0;
    Ok(Some(Task {
        id: *id,
        at_latitude_deg: turned.latitude_deg,
        class: turned.class(id, on),
        question: format!(
            "At {} you {}. The compass reads {}. What is the heading?",
            words::latitude(turned.latitude_deg),
            turned.words(),
            words::heading(reading)
        ),
        choices,
        aim: None,
        paper: None,
        flight: Some(course.flight(end, [0.0, end]).asked_at(moment.time)),
        explanation: Explanation {
            happened: format!(
                "The heading was {} while the compass read {}: {}.",
                words::heading(on),
                words::heading(reading),
                lag_or_lead(ahead)
            ),
            why: why(moment, &field),
            rule: format!(
                "Rule of thumb: the latitude on north and south, nothing on east and west, between \
                 them in proportion. On {} that is {}; {}. Worked back from the reading it gives {}.",
                words::heading(on),
                lag_or_lead(rule),
                how_good(rule, ahead),
                words::heading(by_rule)
            ),
        },
    }))
}

fn while_speed_changes(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    let at_latitude_deg = latitude(id, dice);
    let on = (heading(id, dice) + f64::from(dice.whole(-4, 4))).rem_euclid(360.0);
    let speed_kt = f64::from(dice.whole(90, 140));
    let change = dice.side() * f64::from(dice.stepped(30, 50, 5));
    let to_kt = (speed_kt + change).max(60.0);
    let course = Course::at_latitude(at_latitude_deg, on, speed_kt)?.speed(ROLL_IN_S, to_kt);
    let field = course.situation().field;
    let long = ROLL_IN_S + 12.0;
    let moments = fly(&course.flight(long, [0.0, long]))?;
    let by_size = |a: &&Moment, b: &&Moment| error_deg(a).abs().total_cmp(&error_deg(b).abs());
    let Some(moment) = moments.iter().max_by(by_size) else {
        return Ok(None);
    };
    let [on, reading] = figures(moment);
    let error = error_deg(moment);
    let acceleration = moment.motion.airspeed_rate / STANDARD_GRAVITY;
    let heading = moment.motion.heading;
    let closed = in_speed_change(heading, acceleration, field.dip())
        .error_from(heading)
        .to_degrees();
    if error.abs() < LEAST_IN_SPEED_CHANGE_DEG || error.abs() > MOST_DEG || closed * error <= 0.0 {
        return Ok(None);
    }
    let Some(choices) = choices(dice, on, reading, None, true) else {
        return Ok(None);
    };
    let end = moment.time + 2.0;
    let doing = if change > 0.0 { "gain" } else { "lose" };
    Ok(Some(Task {
        id: *id,
        at_latitude_deg,
        class: Class {
            kind: id.kind,
            octant: Octant::of(on),
            manoeuvre: if change > 0.0 {
                Manoeuvre::SpeedingUp
            } else {
                Manoeuvre::SlowingDown
            },
            hemisphere: Hemisphere::of(at_latitude_deg),
        },
        question: format!(
            "At {} you fly straight and level and {doing} speed from {speed_kt} kt to {to_kt} kt. \
             The compass reads {}. What is the heading?",
            words::latitude(at_latitude_deg),
            words::heading(reading)
        ),
        choices,
        aim: None,
        paper: None,
        flight: Some(course.flight(end, [0.0, end]).asked_at(moment.time)),
        explanation: Explanation {
            happened: format!(
                "The heading was {} while the compass read {}, {}° to the {} of it.",
                words::heading(on),
                words::heading(reading),
                words::tidy(apart(reading, on).abs()),
                words::way(error)
            ),
            why: why(moment, &field),
            rule: format!(
                "Rule of thumb: north of the equator, accelerate north, decelerate south; south of \
                 it the other way round. It gives the side and no figure; the closed form gives \
                 {}° for {:.2} g, the card showed {}°.",
                closed.abs().round(),
                acceleration.abs(),
                error.abs().round()
            ),
        },
    }))
}

/// Heading and reading of a moment in whole degrees.
fn figures(moment: &Moment) -> [f64; 2] {
    [
        f64::from(moment.motion.heading.whole_degrees()),
        f64::from(moment.reading.compass.whole_degrees()),
    ]
}

/// The heading, to a tenth of a degree, whose reading comes nearest to the one shown; `error` is
/// reading less heading on a heading, all in degrees.
fn undone(reading: f64, error: impl Fn(f64) -> f64) -> f64 {
    let missed = |tenth: i32| {
        let heading = reading + f64::from(tenth) / 10.0;
        (heading + error(heading.rem_euclid(360.0)) - reading).abs()
    };
    let nearest = (-900..=900).min_by(|a, b| missed(*a).total_cmp(&missed(*b)));
    (reading + f64::from(nearest.unwrap_or(0)) / 10.0).rem_euclid(360.0)
}

/// The right heading among wrong ones: the bare reading, the error undone the wrong way, and
/// undone twice; none where the rule's heading does not come nearest to the right one.
fn choices(
    dice: &mut Dice,
    on: f64,
    reading: f64,
    by_rule: Option<f64>,
    sides_only: bool,
) -> Option<Vec<Choice>> {
    let error = apart(reading, on);
    let mut choices = vec![
        (on, ""),
        (reading, "took the bare reading for the heading"),
        (reading + error, "undid the error the wrong way"),
    ];
    if !sides_only {
        choices.push((on - error, "undid the error twice over"));
    }
    if let Some(by_rule) = by_rule {
        let nearest = choices.iter().min_by(|a, b| {
            apart(a.0, by_rule)
                .abs()
                .total_cmp(&apart(b.0, by_rule).abs())
        })?;
        if !nearest.1.is_empty() || apart(on, by_rule).abs() > NEAR * error.abs() {
            return None;
        }
    }
    let choices = choices.into_iter().map(|(heading, slip)| Choice {
        text: words::heading(heading),
        right: slip.is_empty(),
        slip: slip.to_owned(),
    });
    Some(dice.shuffled(choices.collect()))
}
