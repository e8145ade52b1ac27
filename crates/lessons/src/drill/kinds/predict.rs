//! Predict: lag, lead or agreement in a turn, and what the card shows as a turn begins.

use super::super::course::{error_deg, fly};
use super::super::dice::Dice;
use super::super::identity::{DrillError, TaskId};
use super::super::task::{Explanation, Task};
use super::super::turning::{ROLL_IN_S, Turned, heading, passing};
use super::super::words::{self, how_good, lag_or_lead, why};
use super::super::{CLEAR_DEG, NONE_DEG};
use super::{choices, predict_speed};
use compass::steady::square_card;
use flights::ScenarioError;

/// For how long the beginning of a turn is watched, s; chosen: the card has then shown which way
/// it goes, and a student has seen it.
const WATCHED_S: f64 = 4.0;

/// A lag or lead beyond this is not asked, degrees: which of the two it is becomes a matter of
/// words.
const MOST_DEG: f64 = 80.0;

const LAGS: [[&str; 2]; 3] = [
    [
        "It lags: it shows a heading that the aircraft has passed",
        "a lag",
    ],
    [
        "It leads: it shows a heading that is still to come",
        "a lead",
    ],
    ["It agrees with the heading to within 2°", "agreement"],
];
const SHOWS: [[&str; 2]; 3] = [
    ["A turn to the right", "a turn to the right"],
    ["A turn to the left", "a turn to the left"],
    ["No turn: it stays within 2°", "no turn"],
];

pub(super) fn draw(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    match (dice.whole(0, 5), id.level) {
        (0 | 1, _) => in_turn(id, dice, false),
        (2, 3) => in_turn(id, dice, true),
        (2 | 3, _) => roll_in(id, dice),
        _ => predict_speed::draw(id, dice),
    }
}

/// Lag or lead as a heading is passed; `mixed` with the throttle moved as well.
fn in_turn(id: &TaskId, dice: &mut Dice, mixed: bool) -> Result<Option<Task>, DrillError> {
    let turned = Turned::draw(id, dice, false)?;
    let target = heading(id, dice);
    let before = f64::from(dice.stepped(20, 100, 5));
    let mut course = turned.course(target - turned.side * before)?;
    let field = course.situation().field;
    let closed = turned.closed_ahead_deg(target, &field);
    let to_kt = turned.speed_kt + f64::from(dice.stepped(30, 45, 5)) * dice.side();
    // Cheap before dear: without a clear answer by the closed form there is no need to fly.
    let is_clear = |ahead: f64| (CLEAR_DEG..MOST_DEG).contains(&ahead.abs());
    if !mixed && !is_clear(closed) && closed.abs() > NONE_DEG {
        return Ok(None);
    }
    if mixed {
        course = course.speed(ROLL_IN_S + 1.0, to_kt);
    }
    // Time to pass the heading at half of standard rate.
    let flight = course.flight(ROLL_IN_S + before / 1.5, [0.0, ROLL_IN_S + before / 1.5]);
    let moments = fly(&flight)?;
    let Some(at) = passing(&moments, target, turned.side) else {
        return Ok(None);
    };
    let moment = &moments[at];
    let ahead = turned.side * error_deg(moment);
    let closed = match square_card(&field, &moment.motion) {
        Some(reading) if mixed => {
            turned.side * reading.error_from(moment.motion.heading).to_degrees()
        }
        _ => closed,
    };
    let clear = if mixed { CLEAR_DEG + 2.0 } else { CLEAR_DEG };
    let verdict = |ahead: f64| match ahead {
        _ if ahead.abs() > MOST_DEG => None,
        _ if ahead <= -clear => Some(0),
        _ if ahead >= clear => Some(1),
        _ if ahead.abs() <= NONE_DEG => Some(2),
        _ => None,
    };
    let (Some(right), Some(by_form)) = (verdict(ahead), verdict(closed)) else {
        return Ok(None);
    };
    if right != by_form {
        return Ok(None);
    }
    let throttle = if mixed {
        let change = if to_kt > turned.speed_kt {
            "open"
        } else {
            "close"
        };
        format!(", and a second later you {change} the throttle for {to_kt} kt")
    } else {
        String::new()
    };
    let rule = turned.rule_ahead_deg(target);
    // As both are shown, in whole degrees.
    let shown = f64::from(moment.reading.compass.whole_degrees());
    let ahead = turned.side * words::apart(shown, target);
    let end = moment.time + 2.0;
    Ok(Some(Task {
        id: *id,
        at_latitude_deg: turned.latitude_deg,
        class: turned.class(id, target),
        question: format!(
            "At {} you fly {} and {}{throttle}. What does the compass do as the aircraft passes {}?",
            words::latitude(turned.latitude_deg),
            words::heading(target - turned.side * before),
            turned.words(),
            words::heading(target),
        ),
        choices: choices(LAGS, right),
        aim: None,
        paper: None,
        flight: Some(course.flight(end, [0.0, end]).asked_at(moment.time)),
        explanation: Explanation {
            happened: format!(
                "As the aircraft passed {} the compass read {}: {}.",
                words::heading(target),
                words::heading(moment.reading.compass.degrees()),
                lag_or_lead(ahead)
            ),
            why: why(moment, &field),
            rule: format!(
                "Rule of thumb: north of the equator the compass lags on north and leads on south by \
                 the latitude, on east and west not at all, between them in proportion; south of it \
                 the other way round. That gives {}; {}.",
                lag_or_lead(rule),
                how_good(rule, ahead)
            ),
        },
    }))
}

/// What the card shows as a turn begins.
fn roll_in(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    let turned = Turned::draw(id, dice, false)?;
    let from = heading(id, dice);
    let course = turned.course(from)?;
    let field = course.situation().field;
    let end = ROLL_IN_S + WATCHED_S;
    let flight = course.flight(end, [ROLL_IN_S, end]);
    let moments = fly(&flight)?;
    let (Some(first), Some(last)) = (moments.first(), moments.last()) else {
        return Err(DrillError::Flight(ScenarioError {
            path: String::new(),
            reason: "the flight has no moment".to_owned(),
        }));
    };
    let start = first.reading.compass;
    let moved = |it: &compass::simulation::Moment| it.reading.compass.right_of(start).to_degrees();
    let [least, most] = moments
        .iter()
        .map(moved)
        .fold([0.0_f64, 0.0], |[a, b], it| [a.min(it), b.max(it)]);
    let shown = moved(last);
    let closed = square_card(&field, &last.motion)
        .map_or(0.0, |reading| reading.right_of(start).to_degrees());
    let right = if shown >= CLEAR_DEG && least >= -NONE_DEG && closed >= CLEAR_DEG {
        0
    } else if shown <= -CLEAR_DEG && most <= NONE_DEG && closed <= -CLEAR_DEG {
        1
    } else if most - least <= NONE_DEG && closed.abs() <= 2.0 * NONE_DEG {
        2
    } else {
        return Ok(None);
    };
    let turned_by = turned.side
        * last
            .motion
            .heading
            .right_of(first.motion.heading)
            .to_degrees();
    let rule = turned.rule_ahead_deg(from);
    Ok(Some(Task {
        id: *id,
        at_latitude_deg: turned.latitude_deg,
        class: turned.class(id, from),
        question: format!(
            "At {} you fly {} and roll into a {} turn at {}° of bank and {} kt. What does the \
             compass show in the first {WATCHED_S} seconds?",
            words::latitude(turned.latitude_deg),
            words::heading(from),
            words::way(turned.side),
            turned.bank_deg,
            turned.speed_kt,
        ),
        choices: choices(SHOWS, right),
        aim: None,
        paper: None,
        flight: Some(flight),
        explanation: Explanation {
            happened: format!(
                "In {WATCHED_S} seconds the aircraft turned {}° to the {}, and the compass moved {}.",
                words::tidy(turned_by.round()),
                words::way(turned.side),
                if right == 2 {
                    "by less than 2°".to_owned()
                } else {
                    format!("{}° to the {}", shown.abs().round(), words::way(shown))
                }
            ),
            why: why(last, &field),
            rule: format!(
                "Rule of thumb: off north the card first shows a turn the wrong way, off south one \
                 that is too fast, off east and west about the right one; south of the equator \
                 north and south change places. By latitude and proportion the turn soon has {} \
                 here; after {WATCHED_S} seconds it was {}.",
                lag_or_lead(rule),
                lag_or_lead(turned.side * error_deg(last)),
            ),
        },
    }))
}
