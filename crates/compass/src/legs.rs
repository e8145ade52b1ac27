//! Prescribed legs: bank and airspeed as functions of time alone.
//!
//! Each leg lasts T seconds and eases bank and airspeed from their present values to its targets
//! by a half cosine, x(t) = x₀ + (x₁ − x₀)(½ − ½ cos(π t/T)); a target left out stays as it is.
//! Flight is level and every turn coordinated.

use crate::maths;
use crate::motion::{Kinematics, coordinated_rate_of_turn};
use crate::range::{OutOfRange, Range};
use crate::unit::{STANDARD_GRAVITY, Unit};
use std::f64::consts::PI;
use thiserror::Error;

/// Bank that can be flown, right positive.
pub const BANK: Range = Range::new("bank", Unit::Degree, -80.0, 80.0);
/// Airspeed that can be flown. The limits are chosen: far beyond what carries a floating compass.
pub const AIRSPEED: Range = Range::new("airspeed", Unit::Knot, 1.0, 2000.0);
/// How long one leg can last; the least is chosen, the greatest is the whole flight.
pub const LEG_DURATION: Range = Range::new("duration of a leg", Unit::Second, 0.001, 86_400.0);
/// How long all legs together can last: 24 hours.
pub const FLIGHT_DURATION: Range =
    Range::new("duration of the flight", Unit::Second, 0.0, 86_400.0);
/// The greatest rate of roll within a leg; chosen, above any aircraft's.
pub const ROLL_RATE: Range =
    Range::new("greatest rate of roll", Unit::DegreePerSecond, 0.0, 1000.0);
/// The greatest change of speed within a leg; chosen, above any aircraft's.
pub const SPEED_CHANGE: Range = Range::new("greatest acceleration", Unit::Gravity, 0.0, 10.0);
/// How many legs one flight can have; chosen, to bound the memory that a file can ask for.
pub const MOST_LEGS: usize = 10_000;

/// One leg: how long it lasts and where it leads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leg {
    /// Seconds.
    pub duration: f64,
    /// Bank at its end in radians, right positive; none: as it is.
    pub bank: Option<f64>,
    /// Airspeed at its end in m/s; none: as it is.
    pub airspeed: Option<f64>,
}

/// What is wrong with a list of legs.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum LegsError {
    /// A value of one leg is beyond its range.
    #[error("leg {number}: {reason}")]
    Leg {
        /// The leg, counted from one.
        number: usize,
        /// Which value, and its range.
        reason: OutOfRange,
    },
    /// The airspeed at the start, or the whole duration, is beyond its range.
    #[error(transparent)]
    Flight(#[from] OutOfRange),
    /// More legs than [`MOST_LEGS`].
    #[error("a flight can have at most {MOST_LEGS} legs, not {0}")]
    TooMany(usize),
}

#[derive(Clone, Copy, Debug, PartialEq)]
struct Segment {
    start: f64,
    duration: f64,
    bank: [f64; 2],
    airspeed: [f64; 2],
}

/// A flight of prescribed legs, checked.
#[derive(Clone, Debug, PartialEq)]
pub struct Legs {
    airspeed_at_start: f64,
    segments: Vec<Segment>,
    duration: f64,
}

impl Legs {
    /// From the airspeed at the start, in m/s, wings level, and the legs in order.
    ///
    /// # Errors
    /// A value beyond [`BANK`], [`AIRSPEED`], [`LEG_DURATION`], [`FLIGHT_DURATION`],
    /// [`ROLL_RATE`] or [`SPEED_CHANGE`], or more than [`MOST_LEGS`] legs.
    pub fn new(airspeed_at_start: f64, legs: &[Leg]) -> Result<Self, LegsError> {
        if legs.len() > MOST_LEGS {
            return Err(LegsError::TooMany(legs.len()));
        }
        let airspeed_at_start = AIRSPEED.check(airspeed_at_start)?;
        let mut segments = Vec::with_capacity(legs.len());
        let (mut bank, mut airspeed, mut start) = (0.0, airspeed_at_start, 0.0);
        for (index, leg) in legs.iter().enumerate() {
            let segment =
                Segment::new(start, bank, airspeed, leg).map_err(|reason| LegsError::Leg {
                    number: index + 1,
                    reason,
                })?;
            [_, bank] = segment.bank;
            [_, airspeed] = segment.airspeed;
            start += segment.duration;
            segments.push(segment);
        }
        Ok(Self {
            airspeed_at_start,
            segments,
            duration: FLIGHT_DURATION.check(start)?,
        })
    }

    /// Seconds from the first leg's start to the last one's end.
    pub fn duration(&self) -> f64 {
        self.duration
    }

    /// Airspeed at the start in m/s.
    pub fn airspeed_at_start(&self) -> f64 {
        self.airspeed_at_start
    }

    /// Bank, airspeed and their rates at `time` seconds, with the heading given. Before the first
    /// leg and after the last one, bank and airspeed stay as they are.
    pub fn kinematics(&self, time: f64, heading: f64) -> Kinematics {
        let [bank, bank_rate, airspeed, airspeed_rate] = self.at(time);
        Kinematics {
            heading,
            pitch: 0.0,
            bank,
            airspeed,
            rate_of_turn: coordinated_rate_of_turn(bank, airspeed),
            pitch_rate: 0.0,
            bank_rate,
            airspeed_rate,
        }
    }

    /// Airspeed in m/s at `time` seconds.
    pub fn airspeed(&self, time: f64) -> f64 {
        let [_, _, airspeed, _] = self.at(time);
        airspeed
    }

    /// Bank, its rate, airspeed and its rate.
    fn at(&self, time: f64) -> [f64; 4] {
        let after = self.segments.partition_point(|s| s.start <= time);
        match after.checked_sub(1) {
            None => [0.0, 0.0, self.airspeed_at_start, 0.0],
            Some(index) => self.segments[index].at(time),
        }
    }

    /// The greatest angular velocity (rad/s) and apparent gravity (m/s²) that these legs can
    /// reach: bounds, from which a step short enough is chosen.
    pub fn fastest(&self) -> (f64, f64) {
        let mut fastest = (0.0_f64, STANDARD_GRAVITY);
        for s in &self.segments {
            let bank = s.bank[0].abs().max(s.bank[1].abs());
            let slowest = s.airspeed[0].min(s.airspeed[1]);
            let turn = coordinated_rate_of_turn(bank, slowest);
            let level = STANDARD_GRAVITY / maths::cos(bank);
            fastest.0 = fastest.0.max(turn + s.peak_roll_rate());
            fastest.1 = fastest.1.max(level + s.peak_acceleration());
        }
        fastest
    }
}

impl Segment {
    fn new(start: f64, bank: f64, airspeed: f64, leg: &Leg) -> Result<Self, OutOfRange> {
        let segment = Self {
            start,
            duration: LEG_DURATION.check(leg.duration)?,
            bank: [bank, BANK.check(leg.bank.unwrap_or(bank))?],
            airspeed: [airspeed, AIRSPEED.check(leg.airspeed.unwrap_or(airspeed))?],
        };
        ROLL_RATE.check(segment.peak_roll_rate())?;
        SPEED_CHANGE.check(segment.peak_acceleration())?;
        Ok(segment)
    }

    /// The half cosine is steepest in its middle: π/2 times the mean slope.
    fn peak_roll_rate(&self) -> f64 {
        PI / 2.0 * (self.bank[1] - self.bank[0]).abs() / self.duration
    }

    fn peak_acceleration(&self) -> f64 {
        PI / 2.0 * (self.airspeed[1] - self.airspeed[0]).abs() / self.duration
    }

    fn at(&self, time: f64) -> [f64; 4] {
        let fraction = ((time - self.start) / self.duration).min(1.0);
        let (sin, cos) = maths::sin_cos(PI * fraction);
        let eased = 0.5 - 0.5 * cos;
        let slope = if fraction < 1.0 {
            0.5 * PI * sin / self.duration
        } else {
            0.0
        };
        let (bank, airspeed) = (
            self.bank[1] - self.bank[0],
            self.airspeed[1] - self.airspeed[0],
        );
        [
            self.bank[0] + bank * eased,
            bank * slope,
            self.airspeed[0] + airspeed * eased,
            airspeed * slope,
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn leg(duration: f64, bank: Option<f64>) -> Leg {
        Leg {
            duration,
            bank,
            airspeed: None,
        }
    }

    #[test]
    fn eases_and_then_holds() {
        let legs = Legs::new(50.0, &[leg(2.0, None), leg(4.0, Some(0.3))]).unwrap();
        assert_eq!(legs.duration(), 6.0);
        assert_eq!(legs.kinematics(1.0, 0.0).bank, 0.0);
        assert!((legs.kinematics(4.0, 0.0).bank - 0.15).abs() < 1e-15);
        assert_eq!(legs.kinematics(100.0, 0.0).bank, 0.3);
        assert_eq!(legs.kinematics(100.0, 0.0).bank_rate, 0.0);
    }

    #[test]
    fn names_the_leg_that_is_wrong() {
        let refused = Legs::new(50.0, &[leg(2.0, None), leg(0.0, None)]).unwrap_err();
        assert_eq!(
            refused.to_string(),
            "leg 2: duration of a leg must be from 0.001 s to 86400 s, not 0 s"
        );
        assert!(Legs::new(0.0, &[]).is_err(), "zero airspeed");
        assert!(
            Legs::new(50.0, &[leg(0.01, Some(1.0))]).is_err(),
            "a snap roll"
        );
        assert!(Legs::new(50.0, &[leg(80_000.0, None), leg(80_000.0, None)]).is_err());
    }
}
