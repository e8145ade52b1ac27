//! Tasks for a worksheet: drawn by a seed, answered by computing.

use super::Site;
use super::lot::Lot;
use crate::corrections::{DeviationCard, Working};
use compass::aircraft::Aircraft;
use compass::deviation::Coefficients;
use compass::free_flight::Controls;
use compass::gust::{NUMBERS, RoughAir};
use compass::heading::{CompassHeading, MagneticHeading, TrueHeading};
use compass::motion::coordinated_bank;
use compass::range::OutOfRange;
use compass::rule_of_thumb::{self, Turn};
use compass::simulation::{STEPS_PER_SECOND, Simulation, Situation};
use compass::steady::in_speed_change;
use compass::unit::KNOT;

/// Standard rate, rad/s: 3° a second.
const STANDARD_RATE: f64 = 3.0 * std::f64::consts::PI / 180.0;

/// How long the card is watched after the throttle is moved, s; chosen: the speed is there by
/// then and the card at rest again.
pub const WATCHED: u64 = 90;

/// What is asked, in the whole degrees and knots that stand on the paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Question {
    /// By the rule of thumb, the latitude in proportion: the reading at which to begin.
    ByLatitude {
        /// The heading to come out on, 1 to 360.
        target: u16,
        /// Which way.
        turn: Turn,
    },
    /// By the other rule, 15° and half the latitude: the reading at which to begin.
    ByHalfLatitude {
        /// The heading to come out on, 1 to 360.
        target: u16,
        /// Which way.
        turn: Turn,
    },
    /// Rolled out as if the compass did not err: the heading the aircraft comes out on.
    BareReading {
        /// The heading to come out on, 1 to 360.
        target: u16,
        /// Which way.
        turn: Turn,
    },
    /// A turn by the clock at standard rate: the time.
    TimedTurn {
        /// The heading at the start, 1 to 360.
        from: u16,
        /// The heading to come out on, 1 to 360.
        to: u16,
        /// Which way.
        turn: Turn,
    },
    /// The bank of a standard-rate turn.
    StandardBank {
        /// True airspeed, kt.
        knots: u16,
    },
    /// The steady error while the speed changes.
    SpeedChange {
        /// The heading, 1 to 360.
        heading: u16,
        /// Hundredths of g, gaining speed positive.
        hundredths_g: i16,
    },
    /// The greatest error after the throttle is moved.
    Throttle {
        /// The heading, 1 to 360.
        heading: u16,
        /// Airspeed before, kt.
        from_knots: u16,
        /// Airspeed commanded, kt.
        to_knots: u16,
    },
    /// The compass heading to steer for a true heading.
    ToCompass {
        /// The true heading, 1 to 360.
        true_heading: u16,
    },
    /// The true heading that a compass heading stands for.
    ToTrue {
        /// The compass heading, 1 to 360.
        compass: u16,
    },
}

/// What the key says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Answer {
    /// A compass reading.
    Reading(CompassHeading),
    /// The magnetic heading come out on.
    ComesOutOn(MagneticHeading),
    /// A time, s.
    Time(f64),
    /// A bank, rad.
    Bank(f64),
    /// An error, reading less heading, rad.
    Error(f64),
    /// A correction with its working.
    Correction(Working),
}

/// The tasks of a worksheet, with what they need.
#[derive(Clone, Debug, PartialEq)]
pub struct Tasks {
    /// Variation for the corrections, rad: whole degrees.
    pub variation: f64,
    /// Deviation for the corrections: an invented aircraft's, in whole degrees.
    pub card: DeviationCard,
    /// What is asked and answered.
    pub all: Vec<(Question, Answer)>,
}

impl Tasks {
    /// Twelve tasks: the same site and seed give the same.
    ///
    /// # Errors
    /// Bank or airspeed beyond what can be flown, or a float that cannot be simulated there.
    pub fn new(site: &Site, seed: u64) -> Result<Self, OutOfRange> {
        let mut lot = Lot::of(seed);
        // Where the latitude alone sets the field there is none, and a lesson needs one.
        let whole = site.situation.field.variation().to_degrees().round();
        let variation = match whole {
            0.0 => lot.either(1.0, -1.0) * f64::from(lot.among(2, 15, 1)),
            whole => whole,
        };
        let mut tasks = Self {
            variation: variation.to_radians(),
            card: invented_card(&mut lot),
            all: Vec::new(),
        };
        let mut questions = Vec::new();
        for _ in 0..2 {
            questions.push(Question::ByLatitude {
                target: lot.off_east_and_west(),
                turn: lot.turn(),
            });
        }
        questions.push(Question::ByHalfLatitude {
            target: lot.off_east_and_west(),
            turn: lot.turn(),
        });
        for _ in 0..2 {
            questions.push(Question::BareReading {
                target: lot.off_east_and_west(),
                turn: lot.turn(),
            });
        }
        let (from, angle, turn) = (lot.among(10, 360, 10), lot.among(40, 240, 10), lot.turn());
        let to = match turn {
            Turn::Left => from + 360 - angle,
            Turn::Right => from + angle,
        };
        questions.push(Question::TimedTurn {
            from,
            to: (to + 359) % 360 + 1,
            turn,
        });
        questions.push(Question::StandardBank {
            knots: lot.among(80, 150, 10),
        });
        questions.push(Question::SpeedChange {
            heading: lot.near_east_or_west(),
            hundredths_g: lot.either(1, -1) * lot.among(5, 15, 5) as i16,
        });
        let (slow, fast) = (lot.among(80, 90, 5), lot.among(110, 130, 5));
        let (from_knots, to_knots) = lot.either((slow, fast), (fast, slow));
        questions.push(Question::Throttle {
            heading: lot.near_east_or_west(),
            from_knots,
            to_knots,
        });
        for _ in 0..2 {
            let true_heading = lot.among(5, 360, 5);
            questions.push(Question::ToCompass { true_heading });
        }
        questions.push(Question::ToTrue {
            compass: lot.among(5, 360, 5),
        });
        for question in questions {
            let (question, answer) = tasks.answered(site, question)?;
            tasks.all.push((question, answer));
        }
        Ok(tasks)
    }

    /// A question with its answer. One about a reading that the card never shows becomes one about
    /// the rule.
    fn answered(&self, site: &Site, question: Question) -> Result<(Question, Answer), OutOfRange> {
        let bank = site.bank();
        let magnetic = |degrees: u16| MagneticHeading::from_degrees(f64::from(degrees));
        let by_rule = |target: u16, turn, latitude| {
            Answer::Reading(rule_of_thumb::roll_out(
                magnetic(target),
                turn,
                latitude,
                bank,
            ))
        };
        let answer = match question {
            Question::ByLatitude { target, turn } => by_rule(target, turn, site.latitude),
            Question::ByHalfLatitude { target, turn } => {
                by_rule(target, turn, half_latitude(site.latitude))
            }
            Question::BareReading { target, turn } => {
                let plan = site.planner_at(site.bank)?.plan(magnetic(target), turn)?;
                let Some(past) = plan.bare_overshoot else {
                    let rule = Question::ByLatitude { target, turn };
                    return Ok((rule, by_rule(target, turn, site.latitude)));
                };
                let past = match turn {
                    Turn::Left => -past,
                    Turn::Right => past,
                };
                Answer::ComesOutOn(magnetic(target).turned_by(past))
            }
            Question::TimedTurn { from, to, turn } => {
                let right = f64::from((to + 360 - from) % 360);
                let angle = match turn {
                    Turn::Left => (360.0 - right) % 360.0,
                    Turn::Right => right,
                };
                Answer::Time(angle.to_radians() / STANDARD_RATE)
            }
            Question::StandardBank { knots } => {
                Answer::Bank(coordinated_bank(STANDARD_RATE, f64::from(knots) * KNOT))
            }
            Question::SpeedChange {
                heading,
                hundredths_g,
            } => {
                let heading = magnetic(heading);
                let acceleration = f64::from(hundredths_g) / 100.0;
                let dip = site.situation.field.dip();
                Answer::Error(in_speed_change(heading, acceleration, dip).error_from(heading))
            }
            Question::Throttle {
                heading,
                from_knots,
                to_knots,
            } => {
                let [from, to] = [from_knots, to_knots].map(|it| f64::from(it) * KNOT);
                Answer::Error(greatest_error(site, magnetic(heading), from, to)?)
            }
            Question::ToCompass { true_heading } => Answer::Correction(Working::from_true(
                TrueHeading::from_degrees(f64::from(true_heading)),
                self.variation,
                &self.card,
            )),
            Question::ToTrue { compass } => Answer::Correction(Working::from_compass(
                CompassHeading::from_degrees(f64::from(compass)),
                self.variation,
                &self.card,
            )),
        };
        Ok((question, answer))
    }
}

/// 15° and half the latitude (rad), with the latitude's sign; nothing on the equator.
pub(super) fn half_latitude(latitude: f64) -> f64 {
    let sign = if latitude == 0.0 {
        0.0
    } else {
        latitude.signum()
    };
    sign * (15_f64.to_radians() + latitude.abs() / 2.0)
}

/// The error that is greatest without its sign, while the simulated aircraft goes from one speed
/// (m/s) to another on a heading.
fn greatest_error(
    site: &Site,
    heading: MagneticHeading,
    from: f64,
    to: f64,
) -> Result<f64, OutOfRange> {
    let situation = Situation {
        air: RoughAir::Still,
        ..site.situation
    };
    let level = Controls::level(from);
    let mut flight = Simulation::new(situation, Aircraft::free(heading, &level), level)?;
    let controls = level.with_airspeed(to);
    let mut greatest = 0.0_f64;
    for _ in 0..WATCHED * STEPS_PER_SECOND {
        flight.step(&controls, [0.0; NUMBERS]);
        let error = flight.reading().compass.error_from(heading);
        if error.abs() > greatest.abs() {
            greatest = error;
        }
    }
    Ok(greatest)
}

/// A card in whole degrees for the eight points, of an aircraft that does not exist.
fn invented_card(lot: &mut Lot) -> DeviationCard {
    let mut part = |most: u16| {
        let size = f64::from(lot.among(0, most, 1));
        lot.either(1.0, -1.0) * size.to_radians()
    };
    let coefficients = Coefficients {
        a: part(1),
        b: part(4),
        c: part(3),
        d: part(1),
        e: 0.0,
    };
    let entries = (0..8_u16).map(|eighth| {
        let compass = CompassHeading::from_degrees(45.0 * f64::from(eighth));
        let whole = coefficients.on(compass).to_degrees().round();
        (compass, whole.to_radians())
    });
    // At most 9° on one point, so never steeper than 18° in 45°.
    DeviationCard::new(entries.collect()).unwrap_or_else(|_| DeviationCard::none())
}
