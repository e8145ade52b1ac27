//! Roll out: a turn by the compass alone.

use super::super::class::{Class, Hemisphere, Manoeuvre, Octant};
use super::super::course::Course;
use super::super::dice::Dice;
use super::super::identity::{DrillError, TaskId};
use super::super::task::{Aim, Explanation, Task};
use super::super::turning::{ROLL_IN_S, Turned, heading};
use super::super::words::{self, why};
use super::ideal::{ideal_end, seconds, shown};
use crate::roll_out::Planner;
use compass::heading::{CompassHeading, MagneticHeading};
use compass::unit::KNOT;

/// How long after the reading is first shown it may be due, s; chosen: the difference between the
/// two is then below what anyone can fly.
const FIRST_SHOWN_S: f64 = 0.5;

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
    if shown.since_s > FIRST_SHOWN_S {
        return Ok(None);
    }
    let end_s = seconds(end);
    let situation = course.situation();
    let latitude = turned.latitude_deg.to_radians();
    let bank = turned.bank_deg.to_radians();
    let planner = Planner::new(situation, latitude, bank, turned.speed_kt * KNOT)?;
    let plan = planner.plan(MagneticHeading::from_degrees(target), turned.turn())?;
    let simulated = shown.reading;
    // As both are shown, in whole degrees.
    let whole = |it: CompassHeading| f64::from(it.whole_degrees());
    let off =
        |reading: CompassHeading| words::apart(whole(reading), whole(simulated)).abs().round();
    // Enough for the turn three times over, and to settle.
    let most = (3.0 * end_s + 90.0).ceil();
    let pilot = Course::at_latitude(turned.latitude_deg, from, turned.speed_kt)?;
    Ok(Some(Task {
        id: *id,
        at_latitude_deg: turned.latitude_deg,
        class: Class {
            kind: id.kind,
            octant: Octant::of(target),
            manoeuvre: if turned.side < 0.0 {
                Manoeuvre::LeftTurn
            } else {
                Manoeuvre::RightTurn
            },
            hemisphere: Hemisphere::of(turned.latitude_deg),
        },
        question: format!(
            "At {} you fly {} at {} kt. By the compass alone, turn {} at {}° of bank onto {} and \
             fly on level: within ±{}° of it. The first heading held level for 10 s counts.",
            words::latitude(turned.latitude_deg),
            words::heading(from),
            turned.speed_kt,
            words::way(turned.side),
            turned.bank_deg,
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
        flight: Some(pilot.flight(most, [0.0, most])),
        explanation: Explanation {
            happened: format!(
                "To come out on {} the roll-out has to begin as the compass reads {}, {} seconds \
                 after the roll-in.",
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
    }))
}
