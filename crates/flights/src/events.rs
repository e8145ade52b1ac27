//! The moments of a flight worth jumping to, found in its samples.

use crate::samples::Sample;
use compass::reading::TURNING_FROM;
use compass::unit::STANDARD_GRAVITY;

/// Faster than this, in m/s², airspeed counts as changing; chosen: a hundredth of g, which
/// swings a card by about a degree at mid-latitudes.
const CHANGING_FROM: f64 = 0.01 * STANDARD_GRAVITY;
/// A lag or lead below this, in radians, is not worth a mark; chosen: two degrees.
const WORTH_A_MARK: f64 = 2.0 * std::f64::consts::PI / 180.0;
/// A card within this of where it comes to rest, in radians, has settled: one degree.
const SETTLED_WITHIN: f64 = std::f64::consts::PI / 180.0;
/// For how many seconds it must stay there; chosen: half the standard float's period.
const SETTLED_FOR: f64 = 3.0;

/// Which way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// To the left.
    Left,
    /// To the right.
    Right,
}

/// What happens.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Event {
    /// The aircraft begins to turn.
    TurnBegins(Side),
    /// The greatest lag of a turn, radians, positive.
    GreatestLag(f64),
    /// The greatest lead of a turn, radians, positive.
    GreatestLead(f64),
    /// The turn has ended.
    RolledOut,
    /// The aircraft begins to gain speed in straight flight.
    SpeedsUp,
    /// The aircraft begins to lose speed in straight flight.
    SlowsDown,
    /// The speed is steady again.
    SpeedSteady,
    /// The card has come to rest, within a degree of where it stays.
    Settled,
}

/// An event and when it happens.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Timed {
    /// Seconds since the start.
    pub time: f64,
    /// What happens.
    pub event: Event,
}

/// What an aircraft does at one moment, as far as its compass is concerned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Phase {
    /// It flies straight at a steady speed.
    Steady,
    /// It turns.
    Turn(Side),
    /// It changes speed in straight flight.
    SpeedChange {
        /// Whether it gains it.
        gaining: bool,
    },
}

impl Phase {
    /// Of a sample.
    pub(crate) fn of(sample: &Sample) -> Self {
        if sample.rate_of_turn.abs() >= TURNING_FROM {
            Self::Turn(if sample.rate_of_turn > 0.0 {
                Side::Right
            } else {
                Side::Left
            })
        } else if sample.airspeed_rate.abs() >= CHANGING_FROM {
            Self::SpeedChange {
                gaining: sample.airspeed_rate > 0.0,
            }
        } else {
            Self::Steady
        }
    }
}

/// The events of a flight, in order of time. Samples are in order of time and close enough
/// together (a tenth of a second is) for a turn not to slip between two.
pub fn events(samples: &[Sample]) -> Vec<Timed> {
    let mut found = Vec::new();
    let mut before = Phase::Steady;
    for stretch in samples.chunk_by(|a, b| Phase::of(a) == Phase::of(b)) {
        // A chunk is never empty.
        let phase = Phase::of(&stretch[0]);
        let time = stretch[0].time;
        match before {
            Phase::Turn(_) => found.push(Timed {
                time,
                event: Event::RolledOut,
            }),
            Phase::SpeedChange { .. } if phase == Phase::Steady => found.push(Timed {
                time,
                event: Event::SpeedSteady,
            }),
            _ => {}
        }
        match phase {
            Phase::Turn(side) => {
                found.push(Timed {
                    time,
                    event: Event::TurnBegins(side),
                });
                found.extend(extremes(stretch, side));
            }
            Phase::SpeedChange { gaining } => found.push(Timed {
                time,
                event: if gaining {
                    Event::SpeedsUp
                } else {
                    Event::SlowsDown
                },
            }),
            Phase::Steady => found.extend(settled(stretch).filter(|_| before != Phase::Steady)),
        }
        before = phase;
    }
    found.sort_by(|a, b| a.time.total_cmp(&b.time));
    found
}

/// The greatest lag and the greatest lead of one turn, where they are worth a mark.
fn extremes(turn: &[Sample], side: Side) -> impl Iterator<Item = Timed> {
    let ahead = move |sample: &Sample| match side {
        Side::Right => sample.error,
        Side::Left => -sample.error,
    };
    let lag = turn.iter().min_by(|a, b| ahead(a).total_cmp(&ahead(b)));
    let lead = turn.iter().max_by(|a, b| ahead(a).total_cmp(&ahead(b)));
    let lag = lag.filter(|s| -ahead(s) >= WORTH_A_MARK).map(|s| Timed {
        time: s.time,
        event: Event::GreatestLag(-ahead(s)),
    });
    let lead = lead.filter(|s| ahead(s) >= WORTH_A_MARK).map(|s| Timed {
        time: s.time,
        event: Event::GreatestLead(ahead(s)),
    });
    lag.into_iter().chain(lead)
}

/// When the card came to rest in a steady stretch, if it did.
fn settled(stretch: &[Sample]) -> impl Iterator<Item = Timed> {
    let rested = stretch.last().and_then(|last| {
        let away = |s: &Sample| (s.error - last.error).abs() > SETTLED_WITHIN;
        let from = stretch.iter().rposition(away).map_or(0, |index| index + 1);
        let first = stretch[from].time;
        (last.time - first >= SETTLED_FOR).then_some(first)
    });
    rested.into_iter().map(|time| Timed {
        time,
        event: Event::Settled,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Scenario;
    use compass::gust::GustNumbers;

    fn flown(json: &str) -> Vec<Sample> {
        let scenario = Scenario::from_json(json).unwrap();
        let mut flight = scenario.simulation().unwrap();
        let mut samples = Vec::new();
        while flight.time() < scenario.duration() {
            if flight.state().step.is_multiple_of(20) {
                samples.push(Sample::from(&flight.moment()));
            }
            let numbers = scenario.air().at(flight.state().step);
            flight.step(&scenario.controls(), numbers);
        }
        samples
    }

    fn names(samples: &[Sample]) -> Vec<&'static str> {
        events(samples)
            .iter()
            .map(|timed| match timed.event {
                Event::TurnBegins(Side::Left) => "left turn",
                Event::TurnBegins(Side::Right) => "right turn",
                Event::GreatestLag(_) => "lag",
                Event::GreatestLead(_) => "lead",
                Event::RolledOut => "rolled out",
                Event::SpeedsUp => "speeds up",
                Event::SlowsDown => "slows down",
                Event::SpeedSteady => "speed steady",
                Event::Settled => "settled",
            })
            .collect()
    }

    #[test]
    fn a_right_turn_through_north_lags_ends_and_settles() {
        let samples = flown(
            r#"{"field": {"horizontal_nt": 19500, "vertical_nt": 44200},
            "start": {"heading_deg": 300, "speed_kt": 100},
            "legs": [{"seconds": 3}, {"seconds": 2.5, "bank_deg": 15}, {"seconds": 15},
                     {"seconds": 2.5, "bank_deg": 0}, {"seconds": 40}]}"#,
        );
        let found = names(&samples);
        assert_eq!(found.first(), Some(&"right turn"));
        assert!(found.contains(&"lag") && found.contains(&"rolled out"));
        assert_eq!(found.last(), Some(&"settled"));
        let times: Vec<f64> = events(&samples).iter().map(|e| e.time).collect();
        assert!(times.is_sorted());
    }

    #[test]
    fn speeding_up_and_slowing_down_are_told_apart() {
        let samples = flown(
            r#"{"field": {"horizontal_nt": 18500, "vertical_nt": 46500},
            "start": {"heading_deg": 90, "speed_kt": 80},
            "legs": [{"seconds": 3}, {"seconds": 25, "speed_kt": 125}, {"seconds": 20},
                     {"seconds": 20, "speed_kt": 85}, {"seconds": 25}]}"#,
        );
        assert_eq!(
            names(&samples),
            [
                "speeds up",
                "speed steady",
                "settled",
                "slows down",
                "speed steady",
                "settled"
            ]
        );
    }

    #[test]
    fn no_flight_has_no_events() {
        assert!(events(&[]).is_empty());
    }
}
