//! Name the cause: which error a stretch of flight shows.
//!
//! Several causes act in one flight, so this is the hardest to ask fairly. What decides is not
//! how the flight was laid out but what the card does when a cause is taken away: the flight is
//! flown again without each cause that acts in the stretch. The one that is named takes at least
//! [`MOST_OF_IT`] of the error with it, every other at most [`LITTLE_OF_IT`], either way. Where
//! one torque goes with a cause, the ledger's largest besides the horizontal field's must be it
//! too. All else is drawn again.

mod laid_out;
mod telling;

use super::super::class::{Class, Hemisphere, Manoeuvre, Octant};
use super::super::course::{Course, between, error_deg, fly, rms};
use super::super::dice::Dice;
use super::super::identity::{DrillError, TaskId};
use super::super::task::{Choice, Explanation, Task};
use super::super::words::{self, why};
use super::super::{CLEAR_DEG, NONE_DEG};
use super::slip;
use compass::field::MagneticField;
use compass::gust::RoughAir;
use compass::reading::TURNING_FROM;
use compass::simulation::Moment;
use laid_out::{LaidOut, lay_out};
use telling::{happened, question, rule};

/// The share of the error that goes when the cause that is named is taken away.
const MOST_OF_IT: f64 = 2.0 / 3.0;
/// The share that may go, or come, when any other cause is.
const LITTLE_OF_IT: f64 = 1.0 / 3.0;

/// A larger error is not asked about, degrees: the card then hangs or goes round, and its torques
/// say little; chosen.
const MOST_DEG: f64 = 60.0;

/// What can be named.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Named {
    Turn,
    SpeedChange,
    Swirl,
    RoughAir,
    Iron,
    Variation,
    Nothing,
}

impl Named {
    const ALL: [Self; 7] = [
        Self::Turn,
        Self::SpeedChange,
        Self::Swirl,
        Self::RoughAir,
        Self::Iron,
        Self::Variation,
        Self::Nothing,
    ];

    fn name(self) -> &'static str {
        match self {
            Self::Turn => "turn error",
            Self::SpeedChange => "acceleration error",
            Self::Swirl => "swirl",
            Self::RoughAir => "rough air",
            Self::Iron => "deviation",
            Self::Variation => "variation",
            Self::Nothing => "no error",
        }
    }

    fn answer(self) -> &'static str {
        match self {
            Self::Turn => "The turn: the vertical field through the bank",
            Self::SpeedChange => "The change of speed: the vertical field through the card's tip",
            Self::Swirl => "Swirl: the liquid still turns after a turn",
            Self::RoughAir => "Rough air: gusts set the card swinging",
            Self::Iron => "The aircraft's iron: deviation",
            Self::Variation => "Variation: true and magnetic north differ",
            Self::Nothing => "Nothing: the compass can be trusted here",
        }
    }
}

/// How often a flight is laid out for one cause before the next one has its turn; chosen: most
/// show within twenty, and some cannot show at a latitude.
const LAID_OUT: u32 = 60;

pub(super) fn draw(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    // One cause at a time, so that those which are hard to show are asked as often.
    for meant in dice.shuffled(Named::ALL.to_vec()) {
        for _ in 0..LAID_OUT {
            if let Some(task) = draw_for(id, meant, dice)? {
                return Ok(Some(task));
            }
        }
    }
    Ok(None)
}

fn draw_for(id: &TaskId, meant: Named, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    let Some(laid_out) = lay_out(id, meant, dice)? else {
        return Ok(None);
    };
    let [from, to] = laid_out.watch_s;
    let course = laid_out.course(None)?;
    let flight = course.flight(to, [from, to]);
    let moments = fly(&flight)?;
    let watched = between(&moments, from, to);
    let (Some(first), Some(last)) = (watched.first(), watched.last()) else {
        return Ok(None);
    };
    let field = course.situation().field;
    let error = laid_out.error(watched, &field);
    if !is_so(&laid_out, meant, watched, error)? {
        return Ok(None);
    }
    let by_size = |a: &&Moment, b: &&Moment| error_deg(a).abs().total_cmp(&error_deg(b).abs());
    let greatest = watched.iter().max_by(by_size).unwrap_or(last);
    let without = match meant {
        Named::Nothing => 0.0,
        _ => laid_out.error_without(meant)?,
    };
    Ok(Some(Task {
        id: *id,
        at_latitude_deg: laid_out.latitude_deg,
        class: class(id, &laid_out, first),
        question: question(&laid_out, [first, last], error),
        choices: Named::ALL
            .into_iter()
            .map(|it| Choice {
                text: it.answer().to_owned(),
                right: it == meant,
                slip: slip(it.name(), meant.name()),
            })
            .collect(),
        aim: None,
        paper: None,
        flight: Some(flight),
        explanation: Explanation {
            happened: happened(meant, error, without),
            why: match meant {
                Named::Variation => format!(
                    "The card stands along the magnetic field, and magnetic north lies {} of true \
                     north here. {}",
                    words::east_west(field.variation().to_degrees()),
                    words::ledger(last)
                ),
                Named::Swirl => format!(
                    "The liquid still turns from the turn and drags the card off the horizontal \
                     field, which holds against it. {}",
                    words::ledger(greatest)
                ),
                _ => why(greatest, &field),
            },
            rule: rule(&laid_out, meant, error, &field),
        },
    }))
}

/// Whether the stretch shows what is meant and nothing else to speak of.
fn is_so(
    laid_out: &LaidOut,
    meant: Named,
    watched: &[Moment],
    error: f64,
) -> Result<bool, DrillError> {
    if meant == Named::Nothing {
        return Ok(error <= NONE_DEG);
    }
    if !(CLEAR_DEG..MOST_DEG).contains(&error) || !ledger_agrees(meant, watched) {
        return Ok(false);
    }
    for acting in laid_out.acting(watched) {
        let gone = 1.0 - laid_out.error_without(acting)? / error;
        let fits = if acting == meant {
            gone >= MOST_OF_IT
        } else {
            gone.abs() <= LITTLE_OF_IT
        };
        if !fits {
            return Ok(false);
        }
    }
    Ok(true)
}

/// Whether the largest torque besides the horizontal field's is the one that goes with a cause.
fn ledger_agrees(meant: Named, watched: &[Moment]) -> bool {
    let size = |part: fn(&Moment) -> f64| watched.iter().map(|it| part(it).abs()).sum::<f64>();
    let vertical = size(|it| it.torques.vertical_field);
    let liquid = size(|it| it.torques.liquid_drag);
    let iron = size(|it| it.torques.iron);
    match meant {
        Named::Turn | Named::SpeedChange => vertical > liquid && vertical > iron,
        Named::Swirl => liquid > vertical && liquid > iron,
        Named::Iron => iron > vertical && iron > liquid,
        // Gusts tip the card and the liquid damps its swing, about as strongly; variation and
        // nothing turn no card.
        Named::RoughAir | Named::Variation | Named::Nothing => true,
    }
}

impl LaidOut {
    /// Root mean square of the reading less the heading by the north that is referred to, degrees.
    fn error(&self, watched: &[Moment], field: &MagneticField) -> f64 {
        let variation = if self.refers_to_true {
            field.variation().to_degrees()
        } else {
            0.0
        };
        rms(watched.iter().map(|it| error_deg(it) - variation))
    }

    /// The same of the flight without a cause.
    fn error_without(&self, cause: Named) -> Result<f64, DrillError> {
        let [from, to] = self.watch_s;
        let course: Course = self.course(Some(cause))?;
        let moments = fly(&course.flight(to, [from, to]))?;
        let without = Self {
            refers_to_true: self.refers_to_true && cause != Named::Variation,
            ..self.clone()
        };
        Ok(without.error(between(&moments, from, to), &course.situation().field))
    }

    /// The causes that act in the stretch.
    fn acting(&self, watched: &[Moment]) -> Vec<Named> {
        let turns = watched
            .iter()
            .any(|it| it.motion.rate_of_turn.abs() > TURNING_FROM);
        let mut found = Vec::new();
        if self.turn.is_some() {
            found.push(Named::Swirl);
            if turns && self.turn_lasts_into_stretch() {
                found.push(Named::Turn);
            }
        }
        if self.speed.is_some() {
            found.push(Named::SpeedChange);
        }
        if self.air != RoughAir::Still {
            found.push(Named::RoughAir);
        }
        if self.hard_iron_nt != [0.0; 3] {
            found.push(Named::Iron);
        }
        if self.refers_to_true {
            found.push(Named::Variation);
        }
        found
    }
}

fn class(id: &TaskId, laid_out: &LaidOut, first: &Moment) -> Class {
    let turning = laid_out.turn.filter(|_| laid_out.turn_lasts_into_stretch());
    let manoeuvre = match (turning, laid_out.speed) {
        (Some(turn), _) if turn.bank_deg < 0.0 => Manoeuvre::LeftTurn,
        (Some(_), _) => Manoeuvre::RightTurn,
        (None, Some((_, to_kt))) if to_kt > laid_out.speed_kt => Manoeuvre::SpeedingUp,
        (None, Some(_)) => Manoeuvre::SlowingDown,
        (None, None) => Manoeuvre::Level,
    };
    Class {
        kind: id.kind,
        octant: Octant::of(first.motion.heading.degrees()),
        manoeuvre,
        hemisphere: Hemisphere::of(laid_out.latitude_deg),
    }
}
