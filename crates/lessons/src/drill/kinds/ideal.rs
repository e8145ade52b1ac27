//! The ideal end of a turn: when to begin to roll out so as to come out on the target.

use super::super::course::{Course, LOOK_EVERY};
use super::super::identity::DrillError;
use super::super::turning::ROLL_IN_S;
use crate::roll_out::{fly_alone, gained_alone};
use compass::free_flight::{FreeFlight, Handling};
use compass::gust::NUMBERS;
use compass::heading::{CompassHeading, MagneticHeading};
use compass::simulation::{Moment, STEPS_PER_SECOND};
use flights::Scenario;

/// In so many seconds a bank is established or taken out to a thousandth of a degree.
const ROLLED_S: u64 = 12;
/// A turn that is over sooner after its roll-in is no turn at a bank, s; chosen.
const LEAST_S: u64 = 5;
/// The longest turn that is followed, s; chosen: five times round at half of standard rate.
const LONGEST_S: u64 = 1200;
/// Steps before the roll-in.
const ROLL_IN: u64 = ROLL_IN_S as u64 * STEPS_PER_SECOND;

/// How long after the reading is first shown it may be due, s; chosen: the difference between the
/// two is then below what anyone can fly.
const FIRST_SHOWN_S: f64 = 0.5;

/// The ideal end of the turn that a course enters at [`ROLL_IN_S`] and holds, to `side`, in steps
/// since the start of the flight; none where the bank is not established before it, or the turn
/// does not get there. It depends on the aircraft alone.
pub(super) fn ideal_end(
    course: &Course,
    target_deg: f64,
    side: f64,
) -> Result<Option<u64>, DrillError> {
    let scenario = entered(course)?;
    let (level, turning) = (scenario.controls(), scenario.controls_at(ROLL_IN));
    let mut flight = FreeFlight::level(Handling::default(), scenario.heading().radians(), &level);
    fly_alone(&mut flight, &level, ROLL_IN);

    // What the heading gains while rolling out does not depend on the heading.
    let mut rolling = flight;
    fly_alone(&mut rolling, &turning, ROLLED_S * STEPS_PER_SECOND);
    let gained = gained_alone(&mut rolling, &level, ROLLED_S * STEPS_PER_SECOND);

    let begin = MagneticHeading::from_degrees(target_deg).turned_by(-gained);
    for step in ROLL_IN..LONGEST_S * STEPS_PER_SECOND {
        let before = flight.heading();
        fly_alone(&mut flight, &turning, 1);
        let [was, is] = [before, flight.heading()].map(|it| side * it.right_of(begin));
        if was < 0.0 && (0.0..1.0).contains(&is) {
            let end = step + 1;
            return Ok((end >= ROLL_IN + LEAST_S * STEPS_PER_SECOND).then_some(end));
        }
    }
    Ok(None)
}

/// The turn as a scenario.
fn entered(course: &Course) -> Result<Scenario, DrillError> {
    Ok(course.flight(ROLL_IN_S + 1.0, [0.0, 0.0]).read()?)
}

/// What the compass shows at the end of a turn.
pub(super) struct Shown {
    /// The reading.
    pub(super) reading: CompassHeading,
    /// How long ago the card first showed that reading in the turn, seconds.
    pub(super) since_s: f64,
    /// The last tenth of a second before.
    pub(super) seen: Moment,
}

impl Shown {
    /// Whether the card shows the reading before it is due.
    pub(super) fn is_shown_before(&self) -> bool {
        self.since_s > FIRST_SHOWN_S
    }
}

/// What the compass shows so many steps after the start of the flight in which a course enters
/// a turn to `side`.
pub(super) fn shown(course: &Course, end: u64, side: f64) -> Result<Shown, DrillError> {
    let scenario = entered(course)?;
    let mut flight = scenario.simulation()?;
    let mut seen = flight.moment();
    let mut readings = Vec::with_capacity(end as usize);
    for step in 0..end {
        flight.step(&scenario.controls_at(step), [0.0; NUMBERS]);
        readings.push(flight.reading().compass);
        if (step + 1).is_multiple_of(LOOK_EVERY) {
            seen = flight.moment();
        }
    }
    let reading = flight.reading().compass;
    let past = |at: usize| side * readings[at].right_of(reading);
    let last = readings.len() - 1;
    let first = (1..=last)
        .find(|at| past(at - 1) < 0.0 && past(*at) >= 0.0 && past(*at) < 1.0)
        .unwrap_or(last);
    Ok(Shown {
        reading,
        since_s: seconds(end) - seconds(first as u64 + 1),
        seen,
    })
}

/// So many steps in seconds.
pub(super) fn seconds(steps: u64) -> f64 {
    steps as f64 / STEPS_PER_SECOND as f64
}
