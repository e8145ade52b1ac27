//! The same turn by the clock and by the compass: where each comes out.
//!
//! [`ways`] flies the turn of a task without a mistake, by the clock, by the compass with its rule
//! of thumb, and by the compass as if it did not err; [`flown`] follows what a student flew. All
//! of them end where a mark looks: at the first heading that is held level for 10 s.

mod asked;

use super::generate;
use super::identity::DrillError;
use super::mark::{TurnFollowed, of_record, rolled};
use super::record::{Record, RecordError};
use super::task::{Aim, Task};
pub(super) use asked::AskedTurn;
use compass::angle::half_turn;
use compass::heading::{CompassHeading, MagneticHeading};
use compass::simulation::Moment;

/// A turn that was flown.
#[derive(Clone, Debug, PartialEq)]
pub struct FlownTurn {
    /// Its end; none where the reading that is waited for is never shown, or no heading was held.
    pub end: Option<TurnEnd>,
    /// The flight, ten times a second; of a turn that never ends, as long as the task may take.
    pub track: Vec<TrackPoint>,
}

/// The end of a turn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TurnEnd {
    /// Seconds from the beginning of the roll-in to that of the roll-out.
    pub roll_out_s: f64,
    /// What the compass read as the roll-out began, degrees.
    pub reading_deg: f64,
    /// The magnetic heading that it came out on, degrees.
    pub came_out_deg: f64,
    /// That less the target, degrees, right positive.
    pub off_deg: f64,
    /// The same in the turn's direction: negative for short of the target.
    pub past_deg: f64,
}

/// A moment of a turn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TrackPoint {
    /// Seconds since the roll-in began; negative before.
    pub time_s: f64,
    /// How far the aircraft has turned since the flight began, degrees, right positive, whole
    /// circles counted.
    pub turned_deg: f64,
    /// The compass reading less the heading, degrees, right positive, within half a circle.
    pub error_deg: f64,
}

/// The same turn in three ways, each without a mistake.
#[derive(Clone, Debug, PartialEq)]
pub struct Ways {
    /// By the clock: a second for every 3°.
    pub by_clock: FlownTurn,
    /// By the compass: rolled out on [`Ways::rule_deg`].
    pub by_rule: FlownTurn,
    /// By the compass as if it did not err: rolled out on [`Ways::bare_deg`].
    pub bare: FlownTurn,
    /// How far the turn goes, degrees, right positive.
    pub turned_to_deg: f64,
    /// The clock's time, seconds.
    pub clock_s: f64,
    /// The reading to roll out on by the rule of thumb, degrees: the latitude in proportion, and
    /// half the bank as lead.
    pub rule_deg: f64,
    /// The target less half the bank as lead, degrees.
    pub bare_deg: f64,
}

/// The ways of a timed turn, or of a roll-out that is one by the compass; none of other tasks.
///
/// # Errors
/// A flight that cannot be simulated.
pub fn ways(task: &Task) -> Result<Option<Ways>, DrillError> {
    let (target_deg, bank_deg) = match task.aim {
        Some(Aim::TimedTurn {
            target_deg,
            bank_deg,
            ..
        }) => (target_deg, bank_deg),
        Some(Aim::RollOut {
            target_deg,
            bank_deg,
            ..
        }) if task.id.of_timed_turn => (target_deg, bank_deg),
        _ => return Ok(None),
    };
    let Some(flight) = &task.flight else {
        return Ok(None);
    };
    let asked = AskedTurn {
        target: MagneticHeading::from_degrees(target_deg),
        bank: bank_deg.to_radians(),
        latitude: task.at_latitude_deg.to_radians(),
    };
    Ok(Some(asked.ways(&flight.read()?)?))
}

/// What a student flew of a turn.
///
/// # Errors
/// As of [`mark`](super::mark::mark); a task that is no turn.
pub fn flown(record: &Record) -> Result<FlownTurn, RecordError> {
    let task = generate(&record.task).map_err(|error| RecordError::at("task", error))?;
    let onto = task.aim.as_ref().and_then(Onto::of);
    let (Some(flight), Some(onto)) = (&task.flight, onto) else {
        return Err(RecordError::at("task", "it is no turn that is flown"));
    };
    let (scenario, moments) = of_record(record, flight)?;
    let Some(first) = moments.first() else {
        return Err(RecordError::at("flight", "it has no moment"));
    };
    let mut turn = TurnFollowed::from(first);
    let end = moments.iter().position(|it| turn.is_over(it));
    let seen = &moments[..end.map_or(moments.len(), |it| it + 1)];
    let until = seen.last().map_or(0.0, |it| it.time);
    let rolled = rolled(&scenario, &moments, until);
    let roll_in = rolled.map_or(0.0, |it| it.roll_in_s);
    let mut track = Track::from(first, roll_in);
    for moment in seen {
        track.see(moment);
    }
    Ok(FlownTurn {
        end: end.zip(rolled).map(|(end, rolled)| {
            let roll_out_s = rolled.roll_out_s - rolled.roll_in_s;
            TurnEnd::of(&moments[end], onto, roll_out_s, rolled.reading)
        }),
        track: track.points,
    })
}

impl TurnEnd {
    fn of(end: &Moment, onto: Onto, roll_out_s: f64, reading: CompassHeading) -> Self {
        let heading = end.motion.heading;
        let off_deg = heading.right_of(onto.target).to_degrees();
        Self {
            roll_out_s,
            reading_deg: reading.degrees(),
            came_out_deg: heading.degrees(),
            off_deg,
            past_deg: onto.side * off_deg,
        }
    }

    /// Whether it is within a tolerance, as a mark has it.
    pub fn is_within(&self, tolerance_deg: f64) -> bool {
        self.off_deg.abs() <= tolerance_deg
    }
}

/// What a turn is to come out on.
#[derive(Clone, Copy)]
struct Onto {
    target: MagneticHeading,
    /// −1 to the left, 1 to the right.
    side: f64,
}

impl Onto {
    fn of(aim: &Aim) -> Option<Self> {
        match aim {
            Aim::TimedTurn {
                target_deg,
                bank_deg,
                ..
            }
            | Aim::RollOut {
                target_deg,
                bank_deg,
                ..
            } => Some(Self {
                target: MagneticHeading::from_degrees(*target_deg),
                side: bank_deg.signum(),
            }),
            Aim::HoldHeading { .. } | Aim::SetGyro { .. } => None,
        }
    }
}

/// A flight's track as it grows.
#[derive(Clone)]
struct Track {
    points: Vec<TrackPoint>,
    roll_in_s: f64,
    last: MagneticHeading,
    turned: f64,
}

impl Track {
    fn from(start: &Moment, roll_in_s: f64) -> Self {
        Self {
            points: Vec::new(),
            roll_in_s,
            last: start.motion.heading,
            turned: 0.0,
        }
    }

    fn see(&mut self, moment: &Moment) {
        let heading = moment.motion.heading;
        self.turned += heading.right_of(self.last);
        self.last = heading;
        let error = half_turn(moment.reading.compass.error_from(heading));
        self.points.push(TrackPoint {
            time_s: moment.time - self.roll_in_s,
            turned_deg: self.turned.to_degrees(),
            error_deg: error.to_degrees(),
        });
    }
}
