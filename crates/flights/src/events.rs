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
    let mut found = Events::default();
    for sample in samples {
        found.follow(sample);
    }
    found.so_far()
}

/// The events of a flight, found as it is flown: each sample costs the same, however long the
/// flight has lasted.
#[derive(Clone, Debug, Default)]
pub struct Events {
    /// Those that nothing to come can change.
    over: Vec<Timed>,
    /// What the flight is doing.
    stretch: Option<Stretch>,
}

impl Events {
    /// Takes the next sample; samples come as [`events`] takes them.
    pub fn follow(&mut self, sample: &Sample) {
        let phase = Phase::of(sample);
        if self.stretch.as_ref().is_none_or(|it| it.phase != phase) {
            let before = self.stretch.take();
            let was = before.as_ref().map_or(Phase::Steady, |it| it.phase);
            if let Some(before) = before {
                self.over.extend(before.events());
            }
            self.stretch = Some(Stretch::new(phase, was, sample.time));
        }
        if let Some(stretch) = &mut self.stretch {
            stretch.follow(sample);
        }
    }

    /// The events so far, in order of time. The last ones may still change: a lag may grow, and a
    /// card that seems settled may be set swinging.
    pub fn so_far(&self) -> Vec<Timed> {
        let mut events = self.over.clone();
        events.extend(self.stretch.iter().flat_map(Stretch::events));
        events
    }
}

/// A stretch of one phase.
#[derive(Clone, Debug)]
struct Stretch {
    phase: Phase,
    before: Phase,
    start: f64,
    /// In a turn, the sample furthest behind and the one furthest ahead, positive ahead.
    extremes: Option<[Peak; 2]>,
    /// In steady flight, when the card came within reach of where it is now.
    rest: Rest,
}

/// How far the reading is ahead of the heading in a turn, and when.
#[derive(Clone, Copy, Debug)]
struct Peak {
    ahead: f64,
    time: f64,
}

impl Stretch {
    fn new(phase: Phase, before: Phase, start: f64) -> Self {
        Self {
            phase,
            before,
            start,
            extremes: None,
            rest: Rest::new(start),
        }
    }

    fn follow(&mut self, sample: &Sample) {
        match self.phase {
            Phase::Turn(side) => {
                let ahead = match side {
                    Side::Right => sample.error,
                    Side::Left => -sample.error,
                };
                let time = sample.time;
                let peak = Peak { ahead, time };
                let [lag, lead] = self.extremes.get_or_insert([peak; 2]);
                if ahead < lag.ahead {
                    *lag = peak;
                }
                if ahead > lead.ahead {
                    *lead = peak;
                }
            }
            Phase::Steady => self.rest.follow(sample),
            Phase::SpeedChange { .. } => {}
        }
    }

    /// Its events so far, in order of time.
    fn events(&self) -> Vec<Timed> {
        let mut found: Vec<Timed> = Vec::new();
        let mut add = |time, event| {
            let after = found.partition_point(|it| it.time <= time);
            found.insert(after, Timed { time, event });
        };
        match self.before {
            Phase::Turn(_) => add(self.start, Event::RolledOut),
            Phase::SpeedChange { .. } if self.phase == Phase::Steady => {
                add(self.start, Event::SpeedSteady);
            }
            _ => {}
        }
        match self.phase {
            Phase::Turn(side) => {
                add(self.start, Event::TurnBegins(side));
                if let Some([lag, lead]) = self.extremes {
                    if -lag.ahead >= WORTH_A_MARK {
                        add(lag.time, Event::GreatestLag(-lag.ahead));
                    }
                    if lead.ahead >= WORTH_A_MARK {
                        add(lead.time, Event::GreatestLead(lead.ahead));
                    }
                }
            }
            Phase::SpeedChange { gaining: true } => add(self.start, Event::SpeedsUp),
            Phase::SpeedChange { gaining: false } => add(self.start, Event::SlowsDown),
            Phase::Steady if self.before != Phase::Steady => {
                if let Some(since) = self.rest.since() {
                    add(since, Event::Settled);
                }
            }
            Phase::Steady => {}
        }
        found
    }
}

/// Since when the card has stayed where it is.
///
/// The last sample further than [`SETTLED_WITHIN`] to either side of the newest is one that no
/// later sample exceeds on that side; only those are kept.
#[derive(Clone, Debug)]
struct Rest {
    start: f64,
    now: f64,
    error: f64,
    /// Errors that no later one exceeds, so they fall.
    high: Vec<Bound>,
    /// Errors that no later one undercuts, so they rise.
    low: Vec<Bound>,
}

/// An error that bounds all later ones, and the time of the sample after it.
#[derive(Clone, Copy, Debug)]
struct Bound {
    error: f64,
    after: f64,
}

impl Rest {
    fn new(start: f64) -> Self {
        Self {
            start,
            now: start,
            error: 0.0,
            high: Vec::new(),
            low: Vec::new(),
        }
    }

    fn follow(&mut self, sample: &Sample) {
        let (error, now) = (sample.error, sample.time);
        (self.error, self.now) = (error, now);
        // The newest sample always ends both lists.
        for (bounds, sign) in [(&mut self.high, 1.0), (&mut self.low, -1.0)] {
            if let Some(newest) = bounds.last_mut() {
                newest.after = now;
            }
            while bounds
                .pop_if(|it| sign * it.error <= sign * error)
                .is_some()
            {}
            bounds.push(Bound { error, after: now });
        }
    }

    /// Since when it has rested, if that is long enough.
    fn since(&self) -> Option<f64> {
        let after = |bounds: &[Bound], away: &dyn Fn(f64) -> bool| {
            let count = bounds.partition_point(|it| away(it.error));
            count.checked_sub(1).map(|last| bounds[last].after)
        };
        let high = after(&self.high, &|error| error - self.error > SETTLED_WITHIN);
        let low = after(&self.low, &|error| self.error - error > SETTLED_WITHIN);
        let since = [high, low].into_iter().flatten().fold(self.start, f64::max);
        (self.now - since >= SETTLED_FOR).then_some(since)
    }
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

    /// The definition of a settled card, looked for in the whole stretch again.
    fn rested(stretch: &[Sample]) -> Option<f64> {
        let last = stretch.last()?;
        let away = |s: &Sample| (s.error - last.error).abs() > SETTLED_WITHIN;
        let from = stretch.iter().rposition(away).map_or(0, |index| index + 1);
        (last.time - stretch[from].time >= SETTLED_FOR).then_some(stretch[from].time)
    }

    #[test]
    fn found_along_the_way_is_what_is_found_in_the_whole() {
        let samples = flown(
            r#"{"field": {"horizontal_nt": 18500, "vertical_nt": 46500},
            "rough_air": {"intensity": "moderate", "seed": 3},
            "start": {"heading_deg": 30, "speed_kt": 100},
            "legs": [{"seconds": 3}, {"seconds": 3, "bank_deg": -20}, {"seconds": 60},
                     {"seconds": 3, "bank_deg": 0}, {"seconds": 60}]}"#,
        );
        let mut along = Events::default();
        let mut settled_at_times = 0;
        for (index, sample) in samples.iter().enumerate() {
            along.follow(sample);
            let so_far = along.so_far();
            let stretch = samples[..=index]
                .chunk_by(|a, b| Phase::of(a) == Phase::of(b))
                .next_back()
                .unwrap();
            if Phase::of(sample) == Phase::Steady && stretch.len() <= index {
                let settled = so_far.last().filter(|it| it.event == Event::Settled);
                settled_at_times += settled.iter().count();
                assert_eq!(settled.map(|it| it.time), rested(stretch), "at {index}");
            }
            if let Phase::Turn(side) = Phase::of(sample) {
                let behind = |s: &Sample| match side {
                    Side::Right => -s.error,
                    Side::Left => s.error,
                };
                let greatest = stretch.iter().map(behind).fold(f64::MIN, f64::max);
                let lag = so_far.iter().rev().find_map(|it| match it.event {
                    Event::GreatestLag(by) if it.time >= stretch[0].time => Some(by),
                    _ => None,
                });
                let worth = (greatest >= WORTH_A_MARK).then_some(greatest);
                assert_eq!(lag, worth, "at {index}");
            }
            assert!(so_far.is_sorted_by(|a, b| a.time <= b.time));
        }
        assert!(names(&samples).contains(&"lag") && settled_at_times > 0);
    }

    #[test]
    fn no_flight_has_no_events() {
        assert!(events(&[]).is_empty());
    }
}
