//! Predict: what the card shows while speed changes.

use super::super::class::{Class, Hemisphere, Manoeuvre, Octant};
use super::super::course::{Course, error_deg, fly};
use super::super::dice::Dice;
use super::super::identity::{DrillError, TaskId};
use super::super::task::{Explanation, Task};
use super::super::turning::{heading, latitude};
use super::super::words::{self, why};
use super::super::{CLEAR_DEG, NONE_DEG};
use super::choices;
use compass::heading::MagneticHeading;
use compass::maths;
use compass::simulation::Moment;
use compass::steady::in_speed_change;
use compass::unit::STANDARD_GRAVITY;

/// When the throttle is moved, s.
const THROTTLE_S: f64 = 5.0;
/// For how long the card is watched then, s; chosen: the speed changes fastest within it.
const WATCHED_S: f64 = 12.0;

const SHOWS: [[&str; 2]; 3] = [
    ["It shows a turn toward north", "a turn toward north"],
    ["It shows a turn toward south", "a turn toward south"],
    ["It stays within 2° of the heading", "no turn"],
];

pub(super) fn draw(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    let at_latitude_deg = latitude(id, dice);
    let on = heading(id, dice);
    let speed_kt = f64::from(dice.whole(80, 140));
    let gaining = dice.side();
    let change = gaining * f64::from(dice.stepped(25, 50, 5));
    let to_kt = (speed_kt + change).max(60.0);
    let course = Course::at_latitude(at_latitude_deg, on, speed_kt)?.speed(THROTTLE_S, to_kt);
    let field = course.situation().field;
    let end = THROTTLE_S + WATCHED_S;
    let flight = course.flight(end, [THROTTLE_S, end]);
    let moments = fly(&flight)?;

    let heading = MagneticHeading::from_degrees(on);
    let by_size = |a: &&Moment, b: &&Moment| error_deg(a).abs().total_cmp(&error_deg(b).abs());
    let by_rate = |a: &&Moment, b: &&Moment| {
        let rate = |it: &Moment| it.motion.airspeed_rate.abs();
        rate(a).total_cmp(&rate(b))
    };
    let (Some(greatest), Some(fastest)) = (
        moments.iter().max_by(by_size),
        moments.iter().max_by(by_rate),
    ) else {
        return Ok(None);
    };
    let error = error_deg(greatest);
    let against = moments
        .iter()
        .map(|it| -error.signum() * error_deg(it))
        .fold(0.0, f64::max);
    let acceleration = fastest.motion.airspeed_rate / STANDARD_GRAVITY;
    let closed = in_speed_change(heading, acceleration, field.dip())
        .error_from(heading)
        .to_degrees();
    // A reading closer to north has the greater cosine.
    let to_north = |error: f64| maths::cos((on + error).to_radians()) > maths::cos(on.to_radians());
    let right = if error.abs() >= CLEAR_DEG
        && closed.abs() >= CLEAR_DEG
        && closed * error > 0.0
        && against <= NONE_DEG
    {
        if to_north(error) { 0 } else { 1 }
    } else if error.abs() <= NONE_DEG && closed.abs() <= 2.0 * NONE_DEG {
        2
    } else {
        return Ok(None);
    };
    let doing = if change > 0.0 {
        ("open", "gaining")
    } else {
        ("close", "losing")
    };
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
            "At {} you fly {} straight and level at {speed_kt} kt and {} the throttle for {to_kt} kt. \
             What does the compass show while the speed changes?",
            words::latitude(at_latitude_deg),
            words::heading(on),
            doing.0,
        ),
        choices: choices(SHOWS, right),
        aim: None,
        paper: None,
        flight: Some(flight),
        explanation: Explanation {
            happened: if right == 2 {
                format!(
                    "While {} speed at up to {:.2} g the compass stayed within 1° of {}.",
                    doing.1,
                    acceleration.abs(),
                    words::heading(on)
                )
            } else {
                format!(
                    "While {} speed at up to {:.2} g the compass went to {}, {}° toward {}.",
                    doing.1,
                    acceleration.abs(),
                    words::heading(greatest.reading.compass.degrees()),
                    error.abs().round(),
                    if to_north(error) { "north" } else { "south" }
                )
            },
            why: why(if right == 2 { fastest } else { greatest }, &field),
            rule: format!(
                "Rule of thumb: north of the equator, accelerate north, decelerate south; most on \
                 east and west, nothing on north and south; south of the equator the other way \
                 round. It gives no figure: the closed form gives {}° at the greatest change of \
                 speed, the card reached {}°.",
                closed.abs().round(),
                error.abs().round()
            ),
        },
    }))
}
