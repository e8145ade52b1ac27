//! Marking a turn: the first heading that is held level after it.
//!
//! The first one, so that nobody rolls out anywhere, waits for the card to settle, and turns the
//! rest; what is flown later does not count.

use super::super::task::Aim;
use super::super::words;
use super::{Figure, Found, Off, figure};
use compass::heading::{CompassHeading, MagneticHeading};
use compass::reading::TURNING_FROM;
use compass::simulation::{Moment, STEPS_PER_SECOND};
use flights::Scenario;

/// A turn has begun when the heading has changed by so much, degrees; chosen.
const BEGUN_DEG: f64 = 5.0;
/// Level is a bank below this, degrees; chosen.
const LEVEL_DEG: f64 = 2.0;
/// It is over when the aircraft has been level for so long, s; chosen: the standard float has
/// then settled but for the swirl.
const LEVEL_FOR_S: f64 = 10.0;
/// A bank that is asked for and steeper than this is part of the turn, degrees; chosen.
pub const ASKED_DEG: f64 = 4.0;

/// The turn that a task asks for.
pub(super) struct Asked {
    target_deg: f64,
    /// −1 to the left, 1 to the right.
    side: f64,
}

impl Asked {
    pub(super) fn of(aim: &Aim, target_deg: f64) -> Self {
        let side = match aim {
            Aim::RollOut { bank_deg, .. } | Aim::TimedTurn { bank_deg, .. } => bank_deg.signum(),
            Aim::HoldHeading { .. } | Aim::SetGyro { .. } => 1.0,
        };
        Self { target_deg, side }
    }
}

/// What a turn came to.
pub(super) fn found(
    scenario: &Scenario,
    moments: &[Moment],
    Asked { target_deg, side }: Asked,
    tolerance: f64,
) -> Found {
    let target = MagneticHeading::from_degrees(target_deg);
    let off = |moment: &Moment| moment.motion.heading.right_of(target).to_degrees();
    let (Some(first), Some(last)) = (moments.first(), moments.last()) else {
        return unmarked("the flight has no moment".to_owned());
    };
    let mut turn = TurnFollowed::from(first);
    let end = moments.iter().position(|it| turn.is_over(it));
    if !turn.begun {
        let error_deg = off(last);
        return Found {
            result: Ok(Off {
                error_deg,
                passed: error_deg.abs() <= tolerance,
                mistake: "did not turn",
            }),
            figures: Vec::new(),
            happened: "The aircraft never turned.".to_owned(),
        };
    }
    let Some(end) = end else {
        return unmarked(format!(
            "after the turn the aircraft was never level for {LEVEL_FOR_S} s"
        ));
    };
    let error_deg = off(&moments[end]);
    let (figures, began) = rolled_out(scenario, moments, moments[end].time);
    let missed = match error_deg.abs().round() {
        0.0 => "on it".to_owned(),
        by => format!("{by}° to the {} of it", words::way(error_deg)),
    };
    Found {
        result: Ok(Off {
            error_deg,
            passed: error_deg.abs() <= tolerance,
            mistake: if error_deg * side > 0.0 {
                "rolled out too late"
            } else {
                "rolled out too early"
            },
        }),
        figures,
        happened: format!(
            "The turn came out on {} for {}: {missed}.{began}",
            words::heading(moments[end].motion.heading.degrees()),
            words::heading(target_deg),
        ),
    }
}

fn unmarked(reason: String) -> Found {
    Found {
        result: Err(reason),
        figures: Vec::new(),
        happened: "The turn did not come to an end.".to_owned(),
    }
}

/// A turn, followed a tenth of a second at a time, to know when it counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TurnFollowed {
    from: MagneticHeading,
    begun: bool,
    level_since: Option<f64>,
}

impl TurnFollowed {
    /// A flight that starts so.
    pub fn from(start: &Moment) -> Self {
        Self {
            from: start.motion.heading,
            begun: false,
            level_since: None,
        }
    }

    /// The next moment; whether a turn has been made and then level flight held for so long that
    /// its heading counts.
    pub fn is_over(&mut self, moment: &Moment) -> bool {
        let motion = &moment.motion;
        self.begun |= motion.heading.right_of(self.from).to_degrees().abs() >= BEGUN_DEG;
        let is_level = motion.bank.to_degrees().abs() <= LEVEL_DEG
            && motion.rate_of_turn.abs() <= TURNING_FROM;
        if !(self.begun && is_level) {
            self.level_since = None;
            return false;
        }
        let since = *self.level_since.get_or_insert(moment.time);
        moment.time - since >= LEVEL_FOR_S - 1e-6
    }
}

/// When a turn was rolled into and out of.
#[derive(Clone, Copy)]
pub(in crate::drill) struct Rolled {
    pub(in crate::drill) roll_in_s: f64,
    pub(in crate::drill) roll_out_s: f64,
    /// What the compass read as the roll-out began.
    pub(in crate::drill) reading: CompassHeading,
}

/// When the roll-in and the last roll-out before a time were asked for; nothing where bank was not.
pub(in crate::drill) fn rolled(
    scenario: &Scenario,
    moments: &[Moment],
    until_s: f64,
) -> Option<Rolled> {
    let banks = |step: &u64| scenario.controls_at(*step).bank().to_degrees().abs() >= ASKED_DEG;
    let until = (until_s * STEPS_PER_SECOND as f64) as u64;
    let (first, last) = ((0..until).find(banks)?, (0..until).rev().find(banks)?);
    let time = |step: u64| step as f64 / STEPS_PER_SECOND as f64;
    let [roll_in_s, roll_out_s] = [time(first), time(last + 1)];
    let at = moments.partition_point(|it| it.time < roll_out_s - 1e-6);
    Some(Rolled {
        roll_in_s,
        roll_out_s,
        reading: moments.get(at)?.reading.compass,
    })
}

fn rolled_out(scenario: &Scenario, moments: &[Moment], until_s: f64) -> (Vec<Figure>, String) {
    let Some(rolled) = rolled(scenario, moments, until_s) else {
        return (Vec::new(), String::new());
    };
    let seconds = rolled.roll_out_s - rolled.roll_in_s;
    let reading = rolled.reading.degrees();
    (
        vec![
            figure("seconds from roll-in to roll-out", seconds, "s"),
            figure("compass reading at the roll-out", reading, "°"),
        ],
        format!(
            " The roll-out began after {} seconds, as the compass read {}.",
            words::tidy(seconds),
            words::heading(reading)
        ),
    )
}
