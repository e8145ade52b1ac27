//! Hold a heading: rough air, and a card whose swing has to be averaged.

use super::super::class::{Class, Hemisphere, Manoeuvre, Octant};
use super::super::course::{Course, between, error_deg, fly, rms};
use super::super::dice::Dice;
use super::super::identity::{DrillError, TaskId};
use super::super::task::{Aim, Explanation, Task};
use super::super::turning::{heading, latitude};
use super::super::words::{self, why};
use compass::gust::RoughAir;
use compass::simulation::Moment;

/// From when on the heading counts, s; chosen: time to turn to it and let the card settle.
const FROM_S: f64 = 45.0;
/// The least swing that is worth averaging, degrees, root mean square; chosen.
const LEAST_SWING_DEG: f64 = 2.0;

pub(super) fn draw(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    let at_latitude_deg = latitude(id, dice);
    let speed_kt = f64::from(dice.whole(80, 140));
    let target = heading(id, dice);
    let side = dice.side();
    // Further than may be missed: who does nothing is not within it.
    let off = (id.tolerance_deg + f64::from(dice.whole(10, 30))).round();
    let from = (target - side * off).rem_euclid(360.0);
    let (air, name, counted) = match id.level {
        1 => (RoughAir::Moderate, "moderate turbulence", 60.0),
        2 => (RoughAir::Moderate, "moderate turbulence", 90.0),
        _ => (RoughAir::Severe, "severe turbulence", 120.0),
    };
    let seed = u64::from(dice.whole(0, i32::MAX - 1) as u32);
    let to = FROM_S + counted;

    let level = Course::at_latitude(at_latitude_deg, target, speed_kt)?.rough(air, seed);
    let field = level.situation().field;
    let moments = fly(&level.flight(to, [0.0, to]))?;
    let watched = between(&moments, FROM_S, to);
    let swing = rms(watched.iter().map(error_deg));
    let by_size = |a: &&Moment, b: &&Moment| error_deg(a).abs().total_cmp(&error_deg(b).abs());
    let Some(greatest) = watched.iter().max_by(by_size) else {
        return Ok(None);
    };
    if swing < LEAST_SWING_DEG {
        return Ok(None);
    }
    let mean = watched.iter().map(error_deg).sum::<f64>() / watched.len() as f64;
    let pilot = Course::at_latitude(at_latitude_deg, from, speed_kt)?.rough(air, seed);
    Ok(Some(Task {
        id: *id,
        at_latitude_deg,
        class: Class {
            kind: id.kind,
            octant: Octant::of(target),
            manoeuvre: Manoeuvre::Level,
            hemisphere: Hemisphere::of(at_latitude_deg),
        },
        question: format!(
            "At {} you fly {} at {speed_kt} kt in {name}. By the compass alone, turn {} onto {} and \
             hold it: from {FROM_S} s to {to} s you may be off by {}° on the whole (root mean \
             square).",
            words::latitude(at_latitude_deg),
            words::heading(from),
            words::way(side),
            words::heading(target),
            words::tidy(id.tolerance_deg),
        ),
        choices: Vec::new(),
        aim: Some(Aim::HoldHeading {
            target_deg: target,
            from_s: FROM_S,
            to_s: to,
            swing_deg: swing,
        }),
        paper: None,
        flight: Some(pilot.flight(to, [FROM_S, to])),
        explanation: Explanation {
            happened: format!(
                "With wings held level in this very air the card swings by {}° on the whole and up to \
                 {}°, yet its middle is only {}° off.",
                words::tidy(swing),
                error_deg(greatest).abs().round(),
                words::tidy(mean.abs())
            ),
            why: format!(
                "Gusts tip the card, the vertical part of the Earth's field pulls at a tipped card, \
                 and the horizontal field brings it back: so it swings. It was furthest off at {} \
                 s. {}",
                words::tidy(greatest.time),
                why(greatest, &field)
            ),
            rule: format!(
                "Rule of thumb: look for the middle of the swing over some ten seconds, turn \
                 gently, and wait. Here the middle was good to {}°, the bare reading to {}°.",
                words::tidy(mean.abs()),
                words::tidy(swing)
            ),
        },
    }))
}
