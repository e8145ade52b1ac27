//! A flight's headings and readings along its time, and what is measured on them.

use super::{Figure, Measured, On};
use compass::angle::half_turn;
use compass::heading::{CompassHeading, MagneticHeading};
use compass::heading_indicator::HeadingIndicator;
use compass::reading::TURNING_FROM;
use compass::record::Record;
use compass::rule_of_thumb::{self, Turn};
use compass::simulation::STEPS_PER_SECOND;
use compass::steady;
use compass::unit::KNOT;
use earth::FieldSource;
use flights::air::SeededAir;
use flights::samples::Sample;

/// Steps between two samples: a fiftieth of a second; chosen: nothing measured moves by a tenth
/// of a degree between two of them, and between them it is interpolated.
const EVERY: u64 = STEPS_PER_SECOND / 50;

/// A reading within this many degrees of where it comes to rest has settled; chosen.
const SETTLED_WITHIN: f64 = 2.0;

/// A flight, sampled; angles in degrees, heading and reading not folded.
pub(crate) struct Trace {
    samples: Vec<Sample>,
    heading: Vec<f64>,
    error: Vec<f64>,
    source: FieldSource,
    dip: f64,
    /// When the heading indicator is set to the compass.
    set: Vec<f64>,
}

/// Where a quantity is in the samples: between one and the next.
#[derive(Clone, Copy)]
struct At {
    index: usize,
    share: f64,
}

impl Trace {
    /// Samples a flight whose field is set so, and in which the heading indicator is set at these
    /// times, in order.
    pub(crate) fn new(record: &Record<SeededAir>, source: FieldSource, set: Vec<f64>) -> Self {
        let samples: Vec<Sample> = record
            .moments(EVERY)
            .map(|flight| Sample::from(&flight.moment()))
            .collect();
        let unfolded = |of: &dyn Fn(&Sample) -> f64| {
            let mut last = samples.first().map_or(0.0, of);
            let angles = samples.iter().map(|sample| {
                last += half_turn(of(sample) - last);
                last.to_degrees()
            });
            angles.collect::<Vec<f64>>()
        };
        Self {
            heading: unfolded(&|it| it.heading),
            error: unfolded(&|it| it.error),
            dip: record.start().situation().field.dip(),
            samples,
            source,
            set,
        }
    }

    /// Measures a figure.
    pub(crate) fn measure(&self, figure: &Figure) -> Measured {
        match *figure {
            Figure::LagOn(on) => self.on(on, |at, _| Measured::Lag(self.lag(at))),
            Figure::RuleOn(on) => self.on(on, |at, heading| {
                let Some(latitude) = self.source.latitude() else {
                    return Measured::Never;
                };
                let turn = Turn::of(self.side(at));
                let error = rule_of_thumb::in_turn(heading, turn, latitude);
                Measured::Lag(-self.side(at) * error.to_degrees())
            }),
            Figure::RollOutOn(on) => self.on(on, |at, heading| {
                let Some(latitude) = self.source.latitude() else {
                    return Measured::Never;
                };
                let bank = self.between(at, |it| it.bank);
                let turn = Turn::of(self.side(at));
                let reading = rule_of_thumb::roll_out(heading, turn, latitude, bank);
                Measured::Heading(reading.degrees())
            }),
            Figure::ClosedFormOn(on) => self.on(on, |at, heading| {
                let bank = self.between(at, |it| it.bank);
                let error = steady::in_turn(heading, bank, self.dip).error_from(heading);
                Measured::Lag(-self.side(at) * error.to_degrees())
            }),
            Figure::LagAt(time) => Measured::Lag(self.lag(self.at(time))),
            Figure::GreatestLag(stretch) => {
                Measured::Lag(self.greatest(stretch, |index| self.turning_lag(index)))
            }
            Figure::GreatestLead(stretch) => {
                Measured::Lag(-self.greatest(stretch, |index| -self.turning_lag(index)))
            }
            Figure::ErrorAt(time) => Measured::Error(folded(self.error_at(self.at(time)))),
            Figure::GreatestError(stretch) => {
                Measured::Angle(self.greatest(stretch, |index| folded(self.error[index]).abs()))
            }
            Figure::AverageError([from, to]) => {
                let within = self.within([from, to]);
                let count = within.len().max(1) as f64;
                Measured::Error(folded(self.error[within].iter().sum::<f64>() / count))
            }
            Figure::Swing(stretch) => {
                let high = self.greatest(stretch, |index| self.error[index]);
                let low = -self.greatest(stretch, |index| -self.error[index]);
                Measured::Angle(high - low)
            }
            Figure::TowardNorth(stretch) => {
                let drawn = |index: usize| {
                    let (heading, error) = (self.heading[index], self.error[index]);
                    folded(heading).abs() - folded(heading + error).abs()
                };
                let most = self.greatest(stretch, drawn);
                let least = -self.greatest(stretch, |index| -drawn(index));
                Measured::TowardNorth(if most >= -least { most } else { least })
            }
            Figure::FirstWay(stretch) => {
                let side = self.side_within(stretch);
                let start = self.reading_at(self.at(stretch[0]));
                let against =
                    |index: usize| side * (start - self.heading[index] - self.error[index]);
                Measured::WrongWay(self.greatest(stretch, against).max(0.0))
            }
            Figure::ShortOf(on) => {
                let reading = |index: usize| self.heading[index] + self.error[index];
                match self.passes(on, reading) {
                    Some(at) => {
                        let short = folded(on.heading_deg - self.heading_at(at));
                        Measured::Short(self.side(at) * short)
                    }
                    None => Measured::Never,
                }
            }
            Figure::ReadingTravel(stretch) => Measured::Angle(self.reading_travel(stretch)),
            Figure::Round(stretch) => Measured::Round(self.reading_travel(stretch)),
            Figure::HeadingTravel([from, to]) => {
                let travel = self.heading_at(self.at(to)) - self.heading_at(self.at(from));
                Measured::Angle(self.side_within([from, to]) * travel)
            }
            Figure::SettlesAfter(from) => {
                let last = self.error.last().copied().unwrap_or_default();
                let away = self
                    .samples
                    .iter()
                    .zip(&self.error)
                    .rev()
                    .find(|(_, error)| (*error - last).abs() > SETTLED_WITHIN);
                Measured::Seconds(away.map_or(0.0, |(it, _)| (it.time - from).max(0.0)))
            }
            Figure::HeadingAt(time) => {
                Measured::Heading(self.heading_at(self.at(time)).rem_euclid(360.0))
            }
            Figure::ReadingAt(time) => {
                Measured::Heading(self.reading_at(self.at(time)).rem_euclid(360.0))
            }
            Figure::BankAt(time) => {
                let bank = self.between(self.at(time), |it| it.bank);
                Measured::Angle(bank.to_degrees().abs())
            }
            Figure::RateOfTurnAt(time) => {
                let rate = self.between(self.at(time), |it| it.rate_of_turn);
                Measured::RateOfTurn(rate.to_degrees().abs())
            }
            Figure::SpeedAt(time) => {
                Measured::Knots(self.between(self.at(time), |it| it.airspeed) / KNOT)
            }
            Figure::IndicatorErrorAt(time) => self.indicator_error(time),
            Figure::Latitude => match self.source.latitude() {
                Some(latitude) => Measured::Latitude(latitude.to_degrees()),
                None => Measured::Never,
            },
            Figure::Dip => Measured::Angle(self.dip.to_degrees().abs()),
            Figure::BankWithoutRevolution => {
                Measured::Angle(steady::bank_without_revolution(self.dip).to_degrees())
            }
            Figure::Aid(aid) => {
                let hemisphere = (self.dip.to_degrees().abs() >= 1.0).then_some(self.dip > 0.0);
                Measured::Aid(aid, hemisphere)
            }
            // Measured on the trace of its own situation.
            Figure::Beside(_) => Measured::Never,
        }
    }

    fn indicator_error(&self, time: f64) -> Measured {
        let latitude = self.source.latitude().unwrap_or(0.0);
        // Without a drift of its own it is always within its range.
        let Ok(mut indicator) = HeadingIndicator::agreeing(latitude, 0.0) else {
            return Measured::Never;
        };
        let now = |time: f64| {
            let at = self.at(time);
            let heading = MagneticHeading::from_degrees(self.heading_at(at));
            (heading, CompassHeading::from_degrees(self.reading_at(at)))
        };
        for set in self.set.iter().take_while(|set| **set <= time) {
            let (heading, compass) = now(*set);
            indicator = indicator.set_to(compass, heading, *set);
        }
        let (heading, _) = now(time);
        let shown = indicator.indication(heading, time).degrees();
        Measured::Error(folded(shown - heading.degrees()))
    }

    /// What is measured where the nose first passes a heading, if it does.
    fn on(&self, on: On, of: impl Fn(At, MagneticHeading) -> Measured) -> Measured {
        match self.passes(on, |index| self.heading[index]) {
            Some(at) => of(at, MagneticHeading::from_degrees(on.heading_deg)),
            None => Measured::Never,
        }
    }

    /// Where an angle in degrees first passes a heading.
    fn passes(&self, on: On, angle: impl Fn(usize) -> f64) -> Option<At> {
        let left = |index: usize| folded(angle(index) - on.heading_deg);
        let first = self.samples.partition_point(|it| it.time < on.after_s);
        (first..self.samples.len().saturating_sub(1)).find_map(|index| {
            let (before, after) = (left(index), left(index + 1));
            // Where the angle is opposite, its sign changes too.
            let near = before.abs() < 90.0 && after.abs() < 90.0;
            let passed = near && before * after <= 0.0 && before != after;
            passed.then(|| At {
                index,
                share: before / (before - after),
            })
        })
    }

    fn at(&self, time: f64) -> At {
        let last = self.samples.len().saturating_sub(2);
        let after = self.samples.partition_point(|it| it.time <= time);
        let index = after.saturating_sub(1).min(last);
        let (Some(one), Some(next)) = (self.samples.get(index), self.samples.get(index + 1)) else {
            return At {
                index: 0,
                share: 0.0,
            };
        };
        let share = (time - one.time) / (next.time - one.time);
        At {
            index,
            share: share.clamp(0.0, 1.0),
        }
    }

    fn between(&self, at: At, of: impl Fn(&Sample) -> f64) -> f64 {
        let next = (at.index + 1).min(self.samples.len() - 1);
        let (one, other) = (of(&self.samples[at.index]), of(&self.samples[next]));
        one + at.share * (other - one)
    }

    fn reading_travel(&self, [from, to]: [f64; 2]) -> f64 {
        let travel = self.reading_at(self.at(to)) - self.reading_at(self.at(from));
        self.side_within([from, to]) * travel
    }

    fn heading_at(&self, at: At) -> f64 {
        let next = (at.index + 1).min(self.heading.len() - 1);
        self.heading[at.index] + at.share * (self.heading[next] - self.heading[at.index])
    }

    fn error_at(&self, at: At) -> f64 {
        let next = (at.index + 1).min(self.error.len() - 1);
        self.error[at.index] + at.share * (self.error[next] - self.error[at.index])
    }

    fn reading_at(&self, at: At) -> f64 {
        self.heading_at(at) + self.error_at(at)
    }

    /// 1 for a right turn, −1 for a left; in straight flight that of the turn before it, and
    /// right before any.
    fn side(&self, at: At) -> f64 {
        let turning = |it: &&Sample| it.rate_of_turn.abs() >= TURNING_FROM;
        let before = self.samples[..=at.index].iter().rev().find(turning);
        before.map_or(1.0, |it| it.rate_of_turn.signum())
    }

    /// The way of the first turn of a stretch.
    fn side_within(&self, stretch: [f64; 2]) -> f64 {
        let mut within = self.samples[self.within(stretch)].iter();
        let turn = within.find(|it| it.rate_of_turn.abs() >= TURNING_FROM);
        turn.map_or(1.0, |it| it.rate_of_turn.signum())
    }

    fn lag(&self, at: At) -> f64 {
        -self.side(at) * folded(self.error_at(at))
    }

    /// The lag at a sample, none in straight flight.
    fn turning_lag(&self, index: usize) -> f64 {
        let rate = self.samples[index].rate_of_turn;
        if rate.abs() < TURNING_FROM {
            0.0
        } else {
            -rate.signum() * folded(self.error[index])
        }
    }

    fn within(&self, [from, to]: [f64; 2]) -> std::ops::Range<usize> {
        let first = self.samples.partition_point(|it| it.time < from);
        let after = self.samples.partition_point(|it| it.time <= to);
        // A stretch between two samples has the one before it.
        first.min(after.saturating_sub(1))..after
    }

    fn greatest(&self, stretch: [f64; 2], of: impl Fn(usize) -> f64) -> f64 {
        self.within(stretch)
            .map(of)
            .fold(f64::NEG_INFINITY, f64::max)
    }
}

/// An angle in degrees folded into (−180, 180].
fn folded(degrees: f64) -> f64 {
    half_turn(degrees.to_radians()).to_degrees()
}
