//! Timed turn: the clock and the rate of turn, no compass.

use super::super::dice::Dice;
use super::super::identity::{DrillError, TaskId};
use super::super::task::{Aim, Explanation, Task};
use super::super::turning::{ROLL_IN_S, STANDARD_RATE_DEG_S, Turned, heading, latitude};
use super::super::ways::{AskedTurn, FlownTurn};
use super::super::words;
use super::ideal::{ideal_end, seconds, shown};
use super::roll_out;
use crate::roll_out::Plan;
use compass::heading::MagneticHeading;
use compass::motion::coordinated_bank;
use compass::unit::{KNOT, Unit};

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
    let end_s = seconds(end);
    let flight = turned.piloted(from, end_s)?;
    let asked = AskedTurn {
        target: MagneticHeading::from_degrees(target),
        bank: (side * turned.bank_deg).to_radians(),
        latitude: at_latitude_deg.to_radians(),
    };
    let ways = asked.ways(&flight.read()?)?;
    let past = |turn: &FlownTurn| turn.end.map(|it| it.past_deg);
    let (by_rule, bare) = (past(&ways.by_rule), past(&ways.bare));
    if id.of_timed_turn {
        let plan = Plan {
            // Of this turn, and not of a quarter of a circle.
            bare_overshoot: bare.map(f64::to_radians),
            ..roll_out::plan(&turned, &course, target)?
        };
        let shown = shown(&course, end, side)?;
        let task =
            roll_out::by_the_compass(id, &turned, &course, [from, target], (end, &shown), &plan)?;
        return Ok(Some(task));
    }
    let rule_s = angle / STANDARD_RATE_DEG_S;
    let simulated_s = end_s - ROLL_IN_S;
    Ok(Some(Task {
        id: *id,
        at_latitude_deg,
        class: turned.class(id, target),
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
            rule_compass_overshoot_deg: by_rule,
            bare_compass_overshoot_deg: bare,
        }),
        paper: None,
        flight: Some(flight),
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
                "Rule of thumb: a second for every 3°, {} seconds; {} seconds off here. The same turn \
                 by the compass and its rule of thumb {}; as if the compass did not err, it {}.",
                words::tidy(rule_s),
                words::tidy((rule_s - simulated_s).abs()),
                ended(by_rule),
                ended(bare),
            ),
        },
    }))
}

/// How a turn by the compass ends, degrees past the target.
fn ended(past: Option<f64>) -> String {
    match past.map(f64::round) {
        None => "never ends, for the card does not show the reading to wait for".to_owned(),
        Some(0.0) => "ends on the target".to_owned(),
        Some(by) if by < 0.0 => format!("ends {}° short of the target", -by),
        Some(by) => format!("ends {by}° past the target"),
    }
}
