//! Turns as tasks ask for them: how steep, and when the aircraft passes a heading.

use super::class::{Class, Hemisphere, Manoeuvre, Octant};
use super::course::Course;
use super::dice::Dice;
use super::identity::{DrillError, TaskId};
use super::task::Flight;
use compass::field::MagneticField;
use compass::heading::MagneticHeading;
use compass::rule_of_thumb::{self, Turn};
use compass::simulation::Moment;
use compass::steady::{bank_without_revolution, in_turn};

/// When the roll-in of a task's turn begins, s; chosen: time to see the card at rest.
pub(super) const ROLL_IN_S: f64 = 5.0;

/// Standard rate, degrees a second.
pub(super) const STANDARD_RATE_DEG_S: f64 = 3.0;

/// How far the bank of a turn stays below that at which a card never comes round, degrees;
/// chosen: nearer to it the card hardly moves for most of the turn.
const BELOW_NO_REVOLUTION_DEG: f64 = 6.0;

/// A turn drawn for a task.
#[derive(Clone, Copy)]
pub(super) struct Turned {
    pub(super) latitude_deg: f64,
    pub(super) speed_kt: f64,
    /// −1 to the left, 1 to the right.
    pub(super) side: f64,
    /// Positive.
    pub(super) bank_deg: f64,
}

impl Turned {
    pub(super) fn draw(
        id: &TaskId,
        dice: &mut Dice,
        comes_round: bool,
    ) -> Result<Self, DrillError> {
        let latitude_deg = latitude(id, dice);
        let speed_kt = f64::from(dice.whole(80, 140));
        let [least, most] = match id.level {
            1 => [12, 18],
            2 => [10, 25],
            _ => [15, 45],
        };
        let most = if comes_round {
            let dip = Course::at_latitude(latitude_deg, 0.0, speed_kt)?
                .situation()
                .field
                .dip();
            let round = bank_without_revolution(dip).to_degrees() - BELOW_NO_REVOLUTION_DEG;
            most.min(round.floor().max(3.0) as i32)
        } else {
            most
        };
        Ok(Self {
            latitude_deg,
            speed_kt,
            side: dice.side(),
            bank_deg: f64::from(dice.whole(least.min(most), most)),
        })
    }

    pub(super) fn turn(&self) -> Turn {
        Turn::of(self.side)
    }

    /// The flight that turns so from a heading on.
    pub(super) fn course(&self, from_deg: f64) -> Result<Course, DrillError> {
        let level = Course::at_latitude(self.latitude_deg, from_deg, self.speed_kt)?;
        Ok(level.bank(ROLL_IN_S, self.side * self.bank_deg))
    }

    /// The class of a turn onto a target.
    pub(super) fn class(&self, id: &TaskId, target_deg: f64) -> Class {
        Class {
            kind: id.kind,
            octant: Octant::of(target_deg),
            manoeuvre: if self.side < 0.0 {
                Manoeuvre::LeftTurn
            } else {
                Manoeuvre::RightTurn
            },
            hemisphere: Hemisphere::of(self.latitude_deg),
        }
    }

    /// The flight that a pilot makes such a turn in: level on a heading, and time enough for the
    /// turn whose ideal end is at `end_s` three times over, and to settle.
    pub(super) fn piloted(&self, from_deg: f64, end_s: f64) -> Result<Flight, DrillError> {
        let most = (3.0 * end_s + 90.0).ceil();
        let level = Course::at_latitude(self.latitude_deg, from_deg, self.speed_kt)?;
        Ok(level.flight(most, [0.0, most]))
    }

    /// Ahead of the heading (positive) or behind it on a heading, degrees, by the rule of thumb.
    pub(super) fn rule_ahead_deg(&self, heading_deg: f64) -> f64 {
        let heading = MagneticHeading::from_degrees(heading_deg);
        let latitude = self.latitude_deg.to_radians();
        self.side * rule_of_thumb::in_turn(heading, self.turn(), latitude).to_degrees()
    }

    /// The same by the closed form.
    pub(super) fn closed_ahead_deg(&self, heading_deg: f64, field: &MagneticField) -> f64 {
        let heading = MagneticHeading::from_degrees(heading_deg);
        let bank = self.side * self.bank_deg.to_radians();
        self.side
            * in_turn(heading, bank, field.dip())
                .error_from(heading)
                .to_degrees()
    }

    /// "turn right at 15° of bank and 100 kt"
    pub(super) fn words(&self) -> String {
        format!(
            "turn {} at {}° of bank and {} kt",
            super::words::way(self.side),
            self.bank_deg,
            self.speed_kt
        )
    }
}

/// The latitude that is asked for, or one drawn for the level, north or south.
pub(super) fn latitude(id: &TaskId, dice: &mut Dice) -> f64 {
    let [least, most] = match id.level {
        1 => [30, 55],
        2 => [20, 60],
        _ => [5, 65],
    };
    let least = least.max(id.kind.least_latitude_deg() as i32);
    let drawn = dice.side() * f64::from(dice.whole(least, most));
    id.latitude_deg.unwrap_or(drawn)
}

/// A heading drawn for the level: cardinal, every 30°, every 5°.
pub(super) fn heading(id: &TaskId, dice: &mut Dice) -> f64 {
    let step = match id.level {
        1 => 90,
        2 => 30,
        _ => 5,
    };
    f64::from(dice.stepped(0, 360 - step, step))
}

/// The first moment at which the aircraft, turning to `side`, has passed a heading.
pub(super) fn passing(moments: &[Moment], heading_deg: f64, side: f64) -> Option<usize> {
    let mark = MagneticHeading::from_degrees(heading_deg);
    let past: Vec<f64> = moments
        .iter()
        .map(|it| side * it.motion.heading.right_of(mark))
        .collect();
    // What jumps from one end of the circle to the other is no passing.
    (1..past.len()).find(|at| past[at - 1] < 0.0 && past[*at] >= 0.0 && past[*at] < 1.0)
}
