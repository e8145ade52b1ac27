//! Roll out: a turn by the compass alone.

use super::super::course::Course;
use super::super::dice::Dice;
use super::super::identity::{DrillError, TaskId};
use super::super::task::{Aim, Explanation, Task};
use super::super::turning::{ROLL_IN_S, Turned, heading};
use super::super::words::{self, why};
use super::ideal::{Shown, ideal_end, seconds, shown};
use crate::roll_out::{Plan, Planner};
use compass::heading::{CompassHeading, MagneticHeading};
use compass::unit::KNOT;

pub(super) fn draw(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    let turned = Turned::draw(id, dice, true)?;
    let target = heading(id, dice);
    let angle = f64::from(match id.level {
        1 => 90,
        2 => dice.stepped(90, 180, 30),
        _ => dice.stepped(90, 270, 15),
    });
    let from = (target - turned.side * angle).rem_euclid(360.0);
    let course = turned.course(from)?;
    let Some(end) = ideal_end(&course, target, turned.side)? else {
        return Ok(None);
    };
    let shown = shown(&course, end, turned.side)?;
    if shown.is_shown_before() {
        return Ok(None);
    }
    let plan = plan(&turned, &course, target)?;
    by_the_compass(id, &turned, &course, [from, target], (end, &shown), &plan).map(Some)
}

/// When to begin to roll out, by rule and by closed form.
pub(super) fn plan(turned: &Turned, course: &Course, target: f64) -> Result<Plan, DrillError> {
    let latitude = turned.latitude_deg.to_radians();
    let bank = turned.bank_deg.to_radians();
    let speed = turned.speed_kt * KNOT;
    let planner = Planner::new(course.situation(), latitude, bank, speed)?;
    Ok(planner.plan(MagneticHeading::from_degrees(target), turned.turn())?)
}

/// The task to fly a turn by the compass, from one heading to another, whose ideal end is known.
pub(super) fn by_the_compass(
    id: &TaskId,
    turned: &Turned,
    course: &Course,
    [from, target]: [f64; 2],
    (end, shown): (u64, &Shown),
    plan: &Plan,
) -> Result<Task, DrillError> {
    let situation = course.situation();
    let end_s = seconds(end);
    let simulated = shown.reading;
    // As both are shown, in whole degrees.
    let whole = |it: CompassHeading| f64::from(it.whole_degrees());
    let off =
        |reading: CompassHeading| words::apart(whole(reading), whole(simulated)).abs().round();
    // Where it is shown too early it is no trick: it is said.
    let too_soon = if shown.is_shown_before() {
        let seconds = (end_s - shown.since_s - ROLL_IN_S).round();
        format!(" It reads that {seconds} seconds after the roll-in too: that is too soon.")
    } else {
        String::new()
    };
    Ok(Task {
        id: *id,
        at_latitude_deg: turned.latitude_deg,
        class: turned.class(id, target),
        question: format!(
            "At {} you fly {} at {} kt. By the compass alone, turn {} at {}° of bank onto {} and \
             fly on level: within ±{}° of it. The first heading held level for 10 s counts.",
            words::latitude(turned.latitude_deg),
            words::heading(from),
            turned.speed_kt,
            words::way(turned.side),
            words::tidy(turned.bank_deg),
            words::heading(target),
            words::tidy(id.tolerance_deg),
        ),
        choices: Vec::new(),
        aim: Some(Aim::RollOut {
            target_deg: target,
            bank_deg: turned.side * turned.bank_deg,
            rule_deg: plan.rule.degrees(),
            half_rule_deg: plan.half_rule.degrees(),
            steady_deg: plan.steady.degrees(),
            simulated_deg: simulated.degrees(),
        }),
        paper: None,
        flight: Some(turned.piloted(from, end_s)?),
        explanation: Explanation {
            happened: format!(
                "To come out on {} the roll-out has to begin as the compass reads {}, {} seconds \
                 after the roll-in.{too_soon}",
                words::heading(target),
                words::heading(simulated.degrees()),
                (end_s - ROLL_IN_S).round()
            ),
            why: why(&shown.seen, &situation.field),
            rule: format!(
                "Rule of thumb: the latitude in proportion, and half the bank as lead: {}, off by \
                 {}°. By 15° and half the latitude: {}, off by {}°. By the closed form: {}, off by \
                 {}°.{}",
                words::heading(plan.rule.degrees()),
                off(plan.rule),
                words::heading(plan.half_rule.degrees()),
                off(plan.half_rule),
                words::heading(plan.steady.degrees()),
                off(plan.steady),
                plan.bare_overshoot.map_or(String::new(), |by| format!(
                    " Flown as if the compass did not err, the turn ends {}.",
                    match by.to_degrees().round() {
                        0.0 => "on the target".to_owned(),
                        short if short < 0.0 => format!("{}° short of the target", -short),
                        past => format!("{past}° past the target"),
                    }
                ))
            ),
        },
    })
}
