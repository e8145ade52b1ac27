//! A turn, flown without a mistake in each way from one pass: the turn goes on, and where a way
//! rolls out, a copy of it does.

use super::super::course::LOOK_EVERY;
use super::super::mark::TurnFollowed;
use super::super::turning::{ROLL_IN_S, STANDARD_RATE_DEG_S};
use super::{FlownTurn, Onto, Track, TurnEnd, Ways};
use crate::roll_out::{Crossing, Lead, reading_by_rule};
use compass::free_flight::Controls;
use compass::gust::NUMBERS;
use compass::heading::{CompassHeading, MagneticHeading};
use compass::rule_of_thumb::Turn;
use compass::simulation::{STEPS_PER_SECOND, Simulation};
use flights::{Scenario, ScenarioError};

/// The longest that is waited for a heading to be held level, s; chosen: rolling out and the ten
/// seconds that count take half of it.
const LEVELLED_S: u64 = 40;

/// A turn that is asked for.
pub(in crate::drill) struct AskedTurn {
    pub(in crate::drill) target: MagneticHeading,
    /// Right positive, rad.
    pub(in crate::drill) bank: f64,
    /// North positive, rad.
    pub(in crate::drill) latitude: f64,
}

/// A turn that is waited for to end.
struct Waiting {
    end: Option<FlownTurn>,
    /// What is waited for.
    sign: Sign,
}

/// What tells a pilot to roll out.
enum Sign {
    /// A step of the simulation.
    Step(u64),
    /// A reading, come to from where the turn comes from.
    Reading(Crossing),
}

impl AskedTurn {
    /// The ways of it, from the start of a scenario, of which only that, its field and its time
    /// count.
    pub(in crate::drill) fn ways(&self, scenario: &Scenario) -> Result<Ways, ScenarioError> {
        let mut flight = scenario.simulation()?;
        let level = scenario.controls();
        let turning = level.with_bank(self.bank);
        let side = self.bank.signum();
        let turn = Turn::of(side);
        let lead = Lead::HalfBank.of(self.bank.abs(), level.airspeed());
        let angle = side * self.target.right_of(flight.motion().heading);
        let angle_deg = angle.to_degrees().rem_euclid(360.0);
        let clock_s = angle_deg / STANDARD_RATE_DEG_S;
        let rule = reading_by_rule(self.target, turn, self.latitude, lead);
        let bare = self.target.turned_by(-side * lead).to_compass(0.0);

        let roll_in = step_of(ROLL_IN_S);
        let reading = |it: CompassHeading| Sign::Reading(Crossing::of(it.radians()));
        let mut waiting = [
            Sign::Step(step_of(ROLL_IN_S + clock_s)),
            reading(rule),
            reading(bare),
        ]
        .map(|sign| Waiting { end: None, sign });
        let mut followed = TurnFollowed::from(&flight.moment());
        let mut track = Track::from(&flight.moment(), ROLL_IN_S);
        track.see(&flight.moment());
        while flight.state().step < step_of(scenario.duration()) {
            if flight.state().step >= roll_in {
                let now = flight.reading().compass;
                for it in &mut waiting {
                    if it.end.is_none() && it.sign.is_given(flight.state().step, now, side) {
                        it.end =
                            Some(self.levelled(flight.clone(), &level, followed, track.clone()));
                    }
                }
                if waiting.iter().all(|it| it.end.is_some()) {
                    break;
                }
            }
            let banked = flight.state().step >= roll_in;
            flight.step(if banked { &turning } else { &level }, [0.0; NUMBERS]);
            look(&flight, &mut followed, &mut track);
        }
        let [by_clock, by_rule, bare_turn] = waiting.map(|it| {
            // What never ended went on turning to the end of its time.
            it.end.unwrap_or_else(|| FlownTurn {
                end: None,
                track: track.points.clone(),
            })
        });
        Ok(Ways {
            by_clock,
            by_rule,
            bare: bare_turn,
            turned_to_deg: side * angle_deg,
            clock_s,
            rule_deg: rule.degrees(),
            bare_deg: bare.degrees(),
        })
    }

    /// Rolls out, and flies level until the heading counts.
    fn levelled(
        &self,
        mut flight: Simulation,
        level: &Controls,
        mut followed: TurnFollowed,
        mut track: Track,
    ) -> FlownTurn {
        let roll_out_s = flight.time() - ROLL_IN_S;
        let reading = flight.reading().compass;
        for _ in 0..LEVELLED_S * STEPS_PER_SECOND {
            flight.step(level, [0.0; NUMBERS]);
            if look(&flight, &mut followed, &mut track) {
                let moment = flight.moment();
                let onto = Onto {
                    target: self.target,
                    side: self.bank.signum(),
                };
                return FlownTurn {
                    end: Some(TurnEnd::of(&moment, onto, roll_out_s, reading)),
                    track: track.points,
                };
            }
        }
        FlownTurn {
            end: None,
            track: track.points,
        }
    }
}

impl Sign {
    fn is_given(&mut self, step: u64, reading: CompassHeading, side: f64) -> bool {
        match self {
            Self::Step(due) => step >= *due,
            Self::Reading(crossing) => crossing.passed(reading.radians(), 0.0, side).is_some(),
        }
    }
}

/// Looks at a flight ten times a second, as a mark does; whether its heading counts.
fn look(flight: &Simulation, followed: &mut TurnFollowed, track: &mut Track) -> bool {
    if !flight.state().step.is_multiple_of(LOOK_EVERY) {
        return false;
    }
    let moment = flight.moment();
    track.see(&moment);
    followed.is_over(&moment)
}

fn step_of(time_s: f64) -> u64 {
    (time_s * STEPS_PER_SECOND as f64).round() as u64
}
