//! The turn or the change of speed that a flight is in, or was in last: what its errors against
//! heading are to be laid beside.

use crate::events::Phase;
use crate::samples::Sample;
use compass::heading::MagneticHeading;
use compass::rule_of_thumb::{self, Turn};
use compass::steady;
use compass::unit::STANDARD_GRAVITY;
use std::ops::{Index, Range};

/// What is flown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// A turn at a bank in radians, right positive: as it was last held.
    Turn {
        /// Bank, right positive.
        bank: f64,
    },
    /// A change of speed in straight flight: the greatest there was.
    SpeedChange {
        /// In multiples of standard gravity, gaining speed positive.
        acceleration: f64,
    },
}

impl Kind {
    /// The error (reading − heading, radians) on a heading while this is flown steadily, where
    /// the dip is `dip` radians, by [`steady::in_turn`] or [`steady::in_speed_change`].
    pub fn closed_form(self, heading: MagneticHeading, dip: f64) -> f64 {
        let reading = match self {
            Self::Turn { bank } => steady::in_turn(heading, bank, dip),
            Self::SpeedChange { acceleration } => {
                steady::in_speed_change(heading, acceleration, dip)
            }
        };
        reading.error_from(heading)
    }

    /// The error on a heading that the rule of thumb gives at `latitude` radians, where it has
    /// one: for a change of speed it names the side, but no figure.
    pub fn rule_of_thumb(self, heading: MagneticHeading, latitude: f64) -> Option<f64> {
        match self {
            Self::Turn { bank } => Some(rule_of_thumb::in_turn(heading, Turn::of(bank), latitude)),
            Self::SpeedChange { .. } => None,
        }
    }

    /// The same with its figure in whole steps, tenths of a degree or thousandths of g: what
    /// changes by less is drawn alike.
    #[must_use]
    pub fn rounded(self) -> Self {
        match self {
            Self::Turn { bank } => Self::Turn {
                bank: ((10.0 * bank.to_degrees()).round() / 10.0).to_radians(),
            },
            Self::SpeedChange { acceleration } => Self::SpeedChange {
                acceleration: (1000.0 * acceleration).round() / 1000.0,
            },
        }
    }
}

/// A turn or a change of speed, and what followed it until the next.
#[derive(Clone, Debug, PartialEq)]
pub struct Manoeuvre {
    /// What was flown.
    pub kind: Kind,
    /// Its samples: from its first to the last, or to the first of the next manoeuvre.
    pub samples: Range<usize>,
}

/// Bank that changes more slowly than this, in rad/s, is held; chosen: a tenth of the rate at
/// which a light aircraft is rolled.
const HELD_BELOW: f64 = 1.5 * std::f64::consts::PI / 180.0;

/// The last manoeuvre of a flight's first `count` samples, if it had any; they are in order of
/// time, and need not stand in one piece.
pub fn last<S>(samples: &S, count: usize) -> Option<Manoeuvre>
where
    S: Index<usize, Output = Sample> + ?Sized,
{
    let phase_of = |index: usize| Phase::of(&samples[index]);
    // Back over what followed it, then over itself.
    let end = (0..count).rposition(|it| phase_of(it) != Phase::Steady)?;
    let phase = phase_of(end);
    let start = (0..end).rposition(|it| phase_of(it) != phase);
    let start = start.map_or(0, |before| before + 1);
    let flown = start..=end;
    let kind = match phase {
        Phase::SpeedChange { .. } => Kind::SpeedChange {
            acceleration: flown
                .map(|it| samples[it].airspeed_rate / STANDARD_GRAVITY)
                .max_by(|a, b| a.abs().total_cmp(&b.abs()))?,
        },
        Phase::Turn(_) | Phase::Steady => Kind::Turn {
            bank: last_held(flown.map(|it| &samples[it]))?,
        },
    };
    Some(Manoeuvre {
        kind,
        samples: start..count,
    })
}

/// The bank as it was last held in a turn, or where it never was, the greatest.
fn last_held<'a>(turn: impl DoubleEndedIterator<Item = &'a Sample> + Clone) -> Option<f64> {
    let ends = turn.clone().rev();
    let held = ends.clone().skip(1).zip(ends).find_map(|(from, to)| {
        let rate = (to.bank - from.bank) / (to.time - from.time);
        (rate.abs() < HELD_BELOW).then_some(to.bank)
    });
    held.or_else(|| {
        let banks = turn.map(|sample| sample.bank);
        banks.max_by(|a, b| a.abs().total_cmp(&b.abs()))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sample(time: f64, bank: f64, airspeed_rate: f64) -> Sample {
        Sample {
            time,
            heading: 1.0,
            reading: 1.0,
            error: 0.0,
            bank,
            rate_of_turn: 0.2 * bank,
            airspeed: 50.0,
            airspeed_rate,
        }
    }

    /// Rolls into 0.3 rad of bank, holds it, rolls out and flies on; a sample a second.
    fn turned() -> Vec<Sample> {
        [0.0, 0.0, 0.15, 0.3, 0.3, 0.3, 0.15, 0.0, 0.0]
            .into_iter()
            .zip(0_u8..)
            .map(|(bank, second)| sample(f64::from(second), bank, 0.0))
            .collect()
    }

    #[test]
    fn straight_flight_has_none() {
        assert_eq!(last::<[Sample]>(&[], 0), None);
        assert_eq!(last(&turned(), 2), None);
    }

    #[test]
    fn a_turn_keeps_the_bank_that_was_held_and_goes_on_after_the_roll_out() {
        for end in 5..=9 {
            let found = last(&turned(), end).unwrap();
            assert_eq!(found.kind, Kind::Turn { bank: 0.3 });
            assert_eq!(found.samples, 2..end);
        }
        let rolling_in = last(&turned(), 3).unwrap();
        assert_eq!(rolling_in.kind, Kind::Turn { bank: 0.15 });
    }

    #[test]
    fn what_comes_later_takes_its_place() {
        let mut samples = turned();
        samples.push(sample(9.0, 0.0, -0.5));
        samples.push(sample(10.0, 0.0, -1.0));
        samples.push(sample(11.0, 0.0, 0.0));
        let found = last(&samples, samples.len()).unwrap();
        let acceleration = -1.0 / STANDARD_GRAVITY;
        assert_eq!(found.kind, Kind::SpeedChange { acceleration });
        assert_eq!(found.samples, 9..12);
        samples.push(sample(12.0, -0.2, 0.0));
        assert_eq!(
            last(&samples, samples.len()).unwrap().kind,
            Kind::Turn { bank: -0.2 }
        );
    }
}
