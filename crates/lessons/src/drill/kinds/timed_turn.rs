//! Timed turn: the clock and the rate of turn, no compass.

use super::super::class::{Class, Hemisphere, Manoeuvre, Octant};
use super::super::course::Course;
use super::super::dice::Dice;
use super::super::identity::{DrillError, TaskId};
use super::super::task::{Aim, Explanation, Task};
use super::super::turning::{ROLL_IN_S, Turned, heading, latitude};
use super::super::words;
use super::ideal::{ideal_end, seconds};
use crate::roll_out::Planner;
use compass::heading::MagneticHeading;
use compass::motion::coordinated_bank;
use compass::unit::{KNOT, Unit};

/// Standard rate, degrees a second.
const STANDARD_RATE_DEG_S: f64 = 3.0;

pub(super) fn draw(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    let at_latitude_deg = latitude(id, dice);
    let speed_kt = f64::from(dice.whole(80, 140));
    let side = dice.side();
    let target = heading(id, dice);
    let angle = f64::from(match id.level {
        1 => dice.stepped(90, 180, 90),
        2 => dice.stepped(60, 240, 30),
        _ => dice.stepped(45, 300, 5),
    });
    let rate = STANDARD_RATE_DEG_S * Unit::DegreePerSecond.in_si();
    // To a tenth of a degree, as it is written in a file.
    let bank = coordinated_bank(rate, speed_kt * KNOT).to_degrees();
    let turned = Turned {
        latitude_deg: at_latitude_deg,
        speed_kt,
        side,
        bank_deg: (10.0 * bank).round() / 10.0,
    };
    let from = (target - side * angle).rem_euclid(360.0);
    let course = turned.course(from)?;
    let Some(end) = ideal_end(&course, target, side)? else {
        return Ok(None);
    };
    let rule_s = angle / STANDARD_RATE_DEG_S;
    let end_s = seconds(end);
    let simulated_s = end_s - ROLL_IN_S;
    let planner = Planner::new(
        course.situation(),
        at_latitude_deg.to_radians(),
        turned.bank_deg.to_radians(),
        speed_kt * KNOT,
    )?;
    let plan = planner.plan(MagneticHeading::from_degrees(target), turned.turn())?;
    let bare = plan.bare_overshoot.map(f64::to_degrees);
    let most = (3.0 * end_s + 90.0).ceil();
    let pilot = Course::at_latitude(at_latitude_deg, from, speed_kt)?;
    Ok(Some(Task {
        id: *id,
        at_latitude_deg,
        class: Class {
            kind: id.kind,
            octant: Octant::of(target),
            manoeuvre: if side < 0.0 {
                Manoeuvre::LeftTurn
            } else {
                Manoeuvre::RightTurn
            },
            hemisphere: Hemisphere::of(at_latitude_deg),
        },
        question: format!(
            "At {} you fly {} at {speed_kt} kt, the compass covered. By the clock alone, turn {} at \
             standard rate ({}° of bank) onto {} and fly on level: within ±{}° of it. The first \
             heading held level for 10 s counts.",
            words::latitude(at_latitude_deg),
            words::heading(from),
            words::way(side),
            words::tidy(turned.bank_deg),
            words::heading(target),
            words::tidy(id.tolerance_deg),
        ),
        choices: Vec::new(),
        aim: Some(Aim::TimedTurn {
            target_deg: target,
            bank_deg: side * turned.bank_deg,
            rule_s,
            simulated_s,
            bare_compass_overshoot_deg: bare,
        }),
        paper: None,
        flight: Some(pilot.flight(most, [0.0, most])),
        explanation: Explanation {
            happened: format!(
                "From {} to {} are {angle}° to the {}: {} seconds from the beginning of the \
                 roll-in to that of the roll-out.",
                words::heading(from),
                words::heading(target),
                words::way(side),
                words::tidy(simulated_s)
            ),
            why:
                "At a steady rate the turn depends on time alone: what the aircraft does not turn \
                  while it rolls in, it turns while it rolls out."
                    .to_owned(),
            rule: format!(
                "Rule of thumb: a second for every 3°, {} seconds; {} seconds off here. {}",
                words::tidy(rule_s),
                words::tidy((rule_s - simulated_s).abs()),
                match bare {
                    Some(by) => format!(
                        "By the compass, as if it did not err, the same turn ends {}° {} the target.",
                        by.abs().round(),
                        if by < 0.0 { "short of" } else { "past" }
                    ),
                    None =>
                        "The compass would never have shown the reading to wait for.".to_owned(),
                }
            ),
        },
    }))
}
