//! When to begin to roll out of a turn that is flown by the compass alone.
//!
//! Four answers stand side by side: two rules of thumb, the closed form, and the float of the
//! simulation, found by flying the turn. What comes of rolling out on the bare reading, as if the
//! compass did not err, is flown too.

use compass::aircraft::Aircraft;
use compass::angle::half_turn;
use compass::free_flight::{AIRSPEED_COMMAND, Controls, FreeFlight, Handling};
use compass::gust::{NUMBERS, RoughAir};
use compass::heading::{CompassHeading, MagneticHeading};
use compass::motion::coordinated_rate_of_turn;
use compass::range::{OutOfRange, Range};
use compass::rule_of_thumb::{self, Turn};
use compass::simulation::{STEP, STEPS_PER_SECOND, Simulation, Situation};
use compass::steady::in_turn;
use compass::unit::Unit;
use std::f64::consts::FRAC_PI_2;

/// Bank of a turn that can be planned. The greatest is the greatest that can be flown; the least
/// is chosen, below a fifth of what a light aircraft banks for standard rate.
pub const BANK: Range = Range::new("bank", Unit::Degree, 3.0, 60.0);

/// Rate of roll by which a lead can be reckoned; chosen: from a slow roll by hand to more than any
/// aircraft of the class rolls.
pub const ROLL_RATE: Range = Range::new("rate of roll", Unit::DegreePerSecond, 1.0, 60.0);

/// How the lead is reckoned that stops a turn on its target.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Lead {
    /// Half the bank, whatever the speed. Source: FAA-H-8083-15B, ch. on compass turns.
    #[default]
    HalfBank,
    /// What the heading gains while the bank comes off evenly at so many rad/s.
    RollRate(f64),
}

impl Lead {
    /// The lead out of a coordinated turn at `bank` (rad, without its side) and `airspeed` (m/s),
    /// rad.
    pub fn of(self, bank: f64, airspeed: f64) -> f64 {
        match self {
            Self::HalfBank => 0.5 * bank,
            Self::RollRate(rate) => {
                // The rate of turn over the time that the bank takes, by Simpson's rule: within
                // 2 % of g / (V p) · −ln cos(bank) up to 60°.
                let turning = |part: f64| coordinated_rate_of_turn(part * bank, airspeed);
                bank / rate * (4.0 * turning(0.5) + turning(1.0)) / 6.0
            }
        }
    }
}

/// How far before the target the turn begins, rad. Chosen: a quarter, as from east or west onto
/// north or south in the usual worked examples.
const TURNED: f64 = FRAC_PI_2;

/// The longest that a turn is flown in search of a reading; chosen: five times round at standard
/// rate, and enough for a quarter at the least bank and the greatest speed. A card that has not
/// shown the reading by then is taken never to show it.
const LONGEST: u64 = 600 * STEPS_PER_SECOND;

/// Rolling out takes less: within this the aircraft is level to a millionth of a degree.
const ROLLED_OUT: u64 = 30 * STEPS_PER_SECOND;

/// What plans roll-outs: one aircraft and compass in one field, at one bank and speed.
#[derive(Clone, Debug)]
pub struct Planner {
    situation: Situation,
    latitude: f64,
    bank: f64,
    airspeed: f64,
    /// The lead that the answers leave, rad.
    lead: f64,
    /// What the heading still gains, in the turn's direction, from the moment at which the
    /// controls go to level, rad.
    rolling_out: f64,
}

/// The compass readings at which to begin a roll-out, and what comes of the bare reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plan {
    /// The rule of thumb: the latitude, in proportion, and the lead.
    pub rule: CompassHeading,
    /// The other rule: 15° and half the latitude, in proportion, and the lead.
    pub half_rule: CompassHeading,
    /// The closed form's reading where the heading is the lead short of the target.
    pub steady: CompassHeading,
    /// The reading of the simulated float there, after a quarter turn.
    pub float: CompassHeading,
    /// The reading of the simulated float from which the simulated aircraft comes out on the
    /// target exactly, after a quarter turn.
    pub exact: CompassHeading,
    /// How far past the target, in the turn's direction, the aircraft comes out when it begins to
    /// roll out as the compass reads the lead short of the target, rad: negative for too early; `None` where
    /// the card never shows that.
    pub bare_overshoot: Option<f64>,
}

impl Planner {
    /// A planner for turns at `bank` (rad, its side does not matter) and `airspeed` (m/s), with
    /// half the bank as lead. The rules of thumb take `latitude` (rad, north positive). Still air, whatever the situation
    /// says: a plan that depended on gusts would be none.
    ///
    /// # Errors
    /// Bank or airspeed beyond what can be flown.
    pub fn new(
        situation: Situation,
        latitude: f64,
        bank: f64,
        airspeed: f64,
    ) -> Result<Self, OutOfRange> {
        let bank = BANK.check(bank.abs())?;
        let airspeed = AIRSPEED_COMMAND.check(airspeed)?;
        Ok(Self {
            situation: Situation {
                air: RoughAir::Still,
                ..situation
            },
            latitude,
            bank,
            airspeed,
            lead: Lead::HalfBank.of(bank, airspeed),
            rolling_out: heading_while_rolling_out(bank, airspeed),
        })
    }

    /// The same with a lead that is reckoned otherwise.
    ///
    /// # Errors
    /// A rate of roll beyond [`ROLL_RATE`].
    pub fn with_lead(self, lead: Lead) -> Result<Self, OutOfRange> {
        if let Lead::RollRate(rate) = lead {
            ROLL_RATE.check(rate)?;
        }
        Ok(Self {
            lead: lead.of(self.bank, self.airspeed),
            ..self
        })
    }

    /// The lead that the answers leave, rad.
    pub fn lead(&self) -> f64 {
        self.lead
    }

    /// When to begin to roll out of a turn onto `target`.
    ///
    /// # Errors
    /// A float that cannot be simulated there.
    pub fn plan(&self, target: MagneticHeading, turn: Turn) -> Result<Plan, OutOfRange> {
        let side = sign(turn);
        let half_rule = (15_f64.to_radians() + self.latitude.abs() / 2.0) * signum(self.latitude);
        let lead = target.turned_by(-side * self.lead);
        let mut begins = [
            Crossing::of(target.turned_by(-side * self.rolling_out).radians()),
            Crossing::of(lead.radians()),
        ];
        let mut bare = Crossing::of(lead.radians());
        let [mut exact, mut float] = [None, None];
        let mut overshoot = None;

        let (mut flight, controls) = self.turning(target.turned_by(-side * TURNED), turn)?;
        for _ in 0..LONGEST {
            let (heading, reading) = (flight.motion().heading, flight.reading().compass);
            let readings = [&mut exact, &mut float];
            for (crossing, found) in begins.iter_mut().zip(readings) {
                if found.is_none() {
                    *found = crossing.passed(heading.radians(), reading.radians(), side);
                }
            }
            if overshoot.is_none() {
                overshoot = (bare.passed(reading.radians(), heading.radians(), side))
                    .map(|at| half_turn(at + side * self.rolling_out - target.radians()) * side);
            }
            if exact.is_some() && float.is_some() && overshoot.is_some() {
                break;
            }
            flight.step(&controls, [0.0; NUMBERS]);
        }
        let by_rule = |whole: f64| reading_by_rule(target, turn, whole, self.lead);
        // A turn always comes to a heading within its time, so both readings are found.
        let found = |reading: Option<f64>| {
            CompassHeading::from_radians(reading.unwrap_or_else(|| lead.radians()))
        };
        Ok(Plan {
            rule: by_rule(self.latitude),
            half_rule: by_rule(half_rule),
            steady: in_turn(lead, side * self.bank, self.situation.field.dip()),
            float: found(float),
            exact: found(exact),
            bare_overshoot: overshoot,
        })
    }

    /// A flight level on a heading, and the controls that turn it.
    fn turning(
        &self,
        heading: MagneticHeading,
        turn: Turn,
    ) -> Result<(Simulation, Controls), OutOfRange> {
        let level = Controls::level(self.airspeed);
        let start = Simulation::new(self.situation, Aircraft::free(heading, &level), level)?;
        Ok((start, level.with_bank(sign(turn) * self.bank)))
    }
}

fn heading_while_rolling_out(bank: f64, airspeed: f64) -> f64 {
    let level = Controls::level(airspeed);
    let mut aircraft = FreeFlight::level(Handling::default(), 0.0, &level);
    // Into the turn takes as long as out of it.
    fly_alone(&mut aircraft, &level.with_bank(bank), ROLLED_OUT);
    gained_alone(&mut aircraft, &level, ROLLED_OUT)
}

/// Flies an aircraft without its compass for so many steps, as the simulation does around a float
/// that needs no sub-steps: what depends on the aircraft alone is found in a third of the time.
pub(crate) fn fly_alone(aircraft: &mut FreeFlight, controls: &Controls, steps: u64) {
    for _ in 0..2 * steps {
        aircraft.advance(controls, 0.0, 0.5 * STEP);
    }
}

/// The same; gives what the heading gains meanwhile, right positive, rad.
pub(crate) fn gained_alone(aircraft: &mut FreeFlight, controls: &Controls, steps: u64) -> f64 {
    let mut gained = 0.0;
    for _ in 0..steps {
        let last = aircraft.heading();
        fly_alone(aircraft, controls, 1);
        gained += aircraft.heading().right_of(last);
    }
    gained
}

/// The compass reading at which the rule of thumb of a whole error (the latitude, rad, north
/// positive) begins to roll out onto `target`, a lead (rad) short of it.
pub(crate) fn reading_by_rule(
    target: MagneticHeading,
    turn: Turn,
    whole: f64,
    lead: f64,
) -> CompassHeading {
    let error = rule_of_thumb::in_turn(target, turn, whole);
    target.to_compass(error - sign(turn) * lead)
}

/// Watches one angle come to a mark, and gives another angle at that instant.
pub(crate) struct Crossing {
    mark: f64,
    last: Option<[f64; 2]>,
}

impl Crossing {
    /// A watch for `mark`, rad.
    pub(crate) fn of(mark: f64) -> Self {
        Self { mark, last: None }
    }

    /// `watched` and `other` now, rad; `side` is the direction that counts. Where `watched` has
    /// passed the mark since the last look, `other` then, in between in proportion.
    pub(crate) fn passed(&mut self, watched: f64, other: f64, side: f64) -> Option<f64> {
        let before = self.last.replace([watched, other])?;
        let [from, to] = [before[0], watched].map(|it| side * half_turn(it - self.mark));
        // A step is small: what jumps from one end of the circle to the other is no crossing.
        let crossed = from < 0.0 && to >= 0.0 && to - from < FRAC_PI_2;
        crossed.then(|| before[1] + half_turn(other - before[1]) * from / (from - to))
    }
}

fn sign(turn: Turn) -> f64 {
    match turn {
        Turn::Left => -1.0,
        Turn::Right => 1.0,
    }
}

/// Unlike `f64::signum`, nothing at 0: on the equator no rule gives an error.
fn signum(value: f64) -> f64 {
    if value == 0.0 { 0.0 } else { value.signum() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_crossing_counts_one_way_and_over_north() {
        let degrees = |it: f64| it.to_radians();
        let mut right = Crossing::of(0.0);
        assert_eq!(right.passed(degrees(358.0), 1.0, 1.0), None);
        assert_eq!(
            right.passed(degrees(1.0), 4.0, 1.0).map(f64::round),
            Some(3.0)
        );
        let mut wrong_way = Crossing::of(0.0);
        assert_eq!(wrong_way.passed(degrees(1.0), 1.0, 1.0), None);
        assert_eq!(wrong_way.passed(degrees(358.0), 1.0, 1.0), None);
        let mut far = Crossing::of(0.0);
        assert_eq!(far.passed(degrees(179.0), 1.0, 1.0), None);
        assert_eq!(far.passed(degrees(181.0), 1.0, 1.0), None);
    }
}
