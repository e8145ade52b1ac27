//! The ideal end of a turn: when to begin to roll out so as to come out on the target.

use super::super::course::Course;
use super::super::identity::DrillError;
use super::super::turning::ROLL_IN_S;
use compass::heading::{CompassHeading, MagneticHeading};
use compass::simulation::{STEPS_PER_SECOND, Simulation};

/// In so many seconds a bank is established or taken out to a thousandth of a degree.
const ROLLED_S: u64 = 12;
/// The longest turn that is followed, s; chosen: five times round at half of standard rate.
const LONGEST_S: u64 = 1200;

/// How long after the reading is first shown it may be due, s; chosen: the difference between the
/// two is then below what anyone can fly.
const FIRST_SHOWN_S: f64 = 0.5;

/// The end of a turn.
pub(in crate::drill) struct Ideal {
    /// Seconds since the start of the flight.
    pub(in crate::drill) time: f64,
    /// The compass reading then.
    pub(super) reading: CompassHeading,
    /// When the card first showed that reading in the turn, seconds.
    pub(super) first_shown: f64,
}

impl Ideal {
    /// Whether the card shows the reading before it is due.
    pub(super) fn is_shown_before(&self) -> bool {
        self.time - self.first_shown > FIRST_SHOWN_S
    }
}

/// The ideal end of the turn that a course enters at [`ROLL_IN_S`] and holds, to `side`; none
/// where the bank is not established before it, or the turn does not get there.
pub(super) fn ideal(
    course: &Course,
    target_deg: f64,
    side: f64,
) -> Result<Option<Ideal>, DrillError> {
    let scenario = course.flight(ROLL_IN_S + 1.0, [0.0, 0.0]).read()?;
    let start = scenario.simulation()?;
    let level = scenario.controls();
    let fly = |flight: &mut Simulation, turning: bool| {
        let step = flight.state().step;
        let held = scenario.controls_at(step);
        flight.step(if turning { &held } else { &level }, [0.0; 4]);
    };
    let roll_in = (ROLL_IN_S * STEPS_PER_SECOND as f64) as u64;
    let established = roll_in + ROLLED_S * STEPS_PER_SECOND;

    // What the heading gains while rolling out does not depend on the heading.
    let mut rolling = start.clone();
    for _ in 0..established {
        fly(&mut rolling, true);
    }
    let mut gained = 0.0;
    for _ in 0..ROLLED_S * STEPS_PER_SECOND {
        let before = rolling.motion().heading;
        fly(&mut rolling, false);
        gained += side * rolling.motion().heading.right_of(before);
    }

    let begin = MagneticHeading::from_degrees(target_deg).turned_by(-side * gained);
    let mut flight = start;
    let mut shown: Vec<(f64, CompassHeading)> = Vec::new();
    for _ in 0..LONGEST_S * STEPS_PER_SECOND {
        let before = flight.motion().heading;
        fly(&mut flight, true);
        let reading = flight.reading().compass;
        shown.push((flight.time(), reading));
        let [was, is] = [before, flight.motion().heading].map(|it| side * it.right_of(begin));
        if was < 0.0 && (0.0..1.0).contains(&is) {
            if flight.state().step < roll_in + 5 * STEPS_PER_SECOND {
                return Ok(None);
            }
            let past = |at: usize| side * shown[at].1.right_of(reading);
            let first = (1..shown.len())
                .find(|at| past(at - 1) < 0.0 && past(*at) >= 0.0 && past(*at) < 1.0)
                .unwrap_or(shown.len() - 1);
            return Ok(Some(Ideal {
                time: flight.time(),
                reading,
                first_shown: shown[first].0,
            }));
        }
    }
    Ok(None)
}
