//! One fixed step, in order: inputs → aircraft → acceleration → float.

use crate::aircraft::Aircraft;
use crate::compass_float::{CompassFloat, FloatState, Surroundings};
use crate::deviation::AircraftIron;
use crate::field::MagneticField;
use crate::float_settings::FloatSettings;
use crate::frame::{Body, Rotation, Vector};
use crate::free_flight::Controls;
use crate::gust::{Gust, GustState, NUMBERS, RoughAir};
use crate::motion::Motion;
use crate::range::{OutOfRange, Range};
use crate::reading::{Difference, Reading, Torques};
use crate::unit::Unit;

/// Steps in one second.
pub const STEPS_PER_SECOND: u64 = 200;
/// The fixed step in seconds. Chosen: the standard float's fastest rate, 12 a second, is then
/// followed to better than a ten-thousandth of a degree; a faster float takes sub-steps.
pub const STEP: f64 = 1.0 / STEPS_PER_SECOND as f64;

/// How long a flight's float settles before time zero, in level flight, in seconds.
const SETTLING: f64 = 300.0;
/// Settling may end sooner, once rates (rad/s) and the change per step are below this.
const SETTLED: f64 = 1e-13;
/// The greatest product of a sub-step and the fastest rate within it; chosen, so that one
/// Runge-Kutta sub-step errs by a millionth of a turn at most.
const FINEST: f64 = 0.2;

/// The fastest rate, 1/s, at which float and aircraft may change together. Chosen: 200 times the
/// standard float's; it takes 64 sub-steps a step, and settles in a second or two of computing.
pub const FASTEST: Range = Range::new(
    "fastest rate of change of float and flight together (per second)",
    Unit::Number,
    0.0,
    64.0 * FINEST * STEPS_PER_SECOND as f64,
);

/// All that a flight takes place in: the field, the aircraft's iron, the float and the air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Situation {
    /// The Earth's field.
    pub field: MagneticField,
    /// The aircraft's iron.
    pub iron: AircraftIron,
    /// The float.
    pub float: FloatSettings,
    /// The air.
    pub air: RoughAir,
}

/// What changes from step to step.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// Steps since the start.
    pub step: u64,
    /// The aircraft.
    pub aircraft: Aircraft,
    /// The float.
    pub float: FloatState,
    /// The shaped gusts.
    pub gusts: GustState,
    /// The controls held over the last step.
    pub controls: Controls,
    gust: Gust,
}

/// All that can be seen of a flight at one instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// Seconds since the start.
    pub time: f64,
    /// How the airframe moves, without the gusts' shaking.
    pub motion: Motion,
    /// Apparent gravity in the bowl, the gusts' shaking included, m/s².
    pub apparent_gravity: Vector<Body>,
    /// What the compass shows.
    pub reading: Reading,
    /// The torques about the card's axis.
    pub torques: Torques,
}

impl Moment {
    /// How the reading compares with the heading.
    pub fn difference(&self) -> Difference {
        let motion = &self.motion;
        Difference::between(self.reading.compass, motion.heading, motion.rate_of_turn)
    }
}

/// A flight under way.
#[derive(Clone, Debug, PartialEq)]
pub struct Simulation {
    situation: Situation,
    compass_float: CompassFloat,
    substeps: u32,
    state: State,
    /// Follows from the state; kept, since each step starts with it and so do all who look.
    motion: Motion,
}

impl Simulation {
    /// At the start of a flight, the float settled in level flight on the aircraft's heading.
    ///
    /// # Errors
    /// A float setting beyond its range, or settings that are too fast together ([`FASTEST`]).
    pub fn new(
        situation: Situation,
        aircraft: Aircraft,
        controls: Controls,
    ) -> Result<Self, OutOfRange> {
        let compass_float = CompassFloat::new(situation.float)?;
        let start = aircraft.motion(&controls, 0.0);
        let level = Motion::level(start.heading, start.airspeed);
        let mut simulation = Self {
            situation,
            compass_float,
            substeps: substeps(&situation, &compass_float, &aircraft)?,
            state: State {
                step: 0,
                aircraft,
                float: CompassFloat::at_rest(&level),
                gusts: GustState::default(),
                controls,
                gust: Gust::NONE,
            },
            motion: start,
        };
        simulation.settle(&level);
        Ok(simulation)
    }

    /// The same flight, each step divided `times` as finely: for checks of accuracy.
    #[must_use]
    pub fn refined(mut self, times: u32) -> Self {
        self.substeps *= times.max(1);
        self
    }

    /// A new flight that goes on from this moment at time zero, free to be flown: aircraft, card
    /// and gusts as they are, and the controls that hold bank and airspeed, or the nearest allowed.
    ///
    /// # Errors
    /// A float that is too fast for free flight ([`FASTEST`]).
    pub fn taken_over(&self) -> Result<(Self, Controls), OutOfRange> {
        let motion = self.motion();
        let controls = Controls::level(motion.airspeed)
            .with_bank(motion.bank)
            .with_pitch(motion.pitch);
        let aircraft = self.state.aircraft.freed(self.time());
        let taken = Self {
            substeps: substeps(&self.situation, &self.compass_float, &aircraft)?,
            motion: aircraft.motion(&controls, 0.0),
            state: State {
                step: 0,
                aircraft,
                controls,
                ..self.state.clone()
            },
            ..self.clone()
        };
        Ok((taken, controls))
    }

    /// Flies one step with the controls held; `numbers` shape the gusts.
    pub fn step(&mut self, controls: &Controls, numbers: [f64; NUMBERS]) {
        let airspeed = self.state.aircraft.airspeed(self.time());
        if self.state.controls != *controls {
            self.motion = self.state.aircraft.motion(controls, self.time());
        }
        self.state.controls = *controls;
        self.state.gust = self
            .state
            .gusts
            .advance(self.situation.air, airspeed, STEP, numbers);
        let end = self.advance(STEP);
        self.state.step += 1;
        self.motion = match self.state.aircraft {
            Aircraft::Free(_) => end,
            // The end's time was added up: rounded otherwise than the time of the next step.
            Aircraft::Prescribed { .. } => self.motion_at(self.time()),
        };
    }

    /// What is true `seconds` after this step, the controls held; at most one step.
    pub fn moment_after(&self, seconds: f64) -> Moment {
        let seconds = seconds.clamp(0.0, STEP);
        let mut later = self.clone();
        // Rates are differences over the step, and no time has none.
        if seconds > 0.0 {
            later.advance(seconds);
        }
        let time = self.time() + seconds;
        later.moment_of(&later.motion_at(time), time)
    }

    /// What is true now.
    pub fn moment(&self) -> Moment {
        self.moment_of(&self.motion, self.time())
    }

    /// Seconds since the start, at whole steps.
    pub fn time(&self) -> f64 {
        self.state.step as f64 / STEPS_PER_SECOND as f64
    }

    /// What the flight takes place in.
    pub fn situation(&self) -> &Situation {
        &self.situation
    }

    /// The state now: with the situation, all there is to know.
    pub fn state(&self) -> &State {
        &self.state
    }

    /// Goes back, or on, to a state of this same flight.
    pub fn restore(&mut self, state: State) {
        self.state = state;
        self.motion = self.motion_at(self.time());
    }

    /// How the airframe moves now, without the gusts' shaking.
    pub fn motion(&self) -> Motion {
        self.motion
    }

    /// What the compass shows now.
    pub fn reading(&self) -> Reading {
        self.reading_in(&self.motion)
    }

    /// How the reading compares with the heading now.
    pub fn difference(&self) -> Difference {
        self.moment().difference()
    }

    /// The torques about the card's axis now.
    pub fn torques(&self) -> Torques {
        self.moment().torques
    }

    /// The float's energy over its polar inertia now, rad²/s².
    pub fn energy(&self) -> f64 {
        self.compass_float
            .energy(&self.state.float, &self.around(&self.motion))
    }

    /// Replaces the float's state: to start from a card out of place.
    pub fn disturb(&mut self, float: FloatState) {
        self.state.float = float;
    }

    fn motion_at(&self, time: f64) -> Motion {
        self.state.aircraft.motion(&self.state.controls, time)
    }

    fn moment_of(&self, motion: &Motion, time: f64) -> Moment {
        let shaken = motion.shaken(self.state.gust.acceleration);
        Moment {
            time,
            motion: *motion,
            apparent_gravity: shaken.apparent_gravity_in_bowl(),
            reading: self.reading_in(motion),
            torques: self
                .compass_float
                .torques(&self.state.float, &self.around(&shaken)),
        }
    }

    fn reading_in(&self, motion: &Motion) -> Reading {
        let float = &self.state.float;
        let card: Rotation<_, _> = float.attitude.then(motion.attitude.inverse());
        Reading::of(card, float.at_stop, self.situation.field.zone())
    }

    fn around(&self, motion: &Motion) -> Surroundings {
        Surroundings::of(motion, &self.situation.field, &self.situation.iron)
    }

    /// Advances aircraft and float from the motion now; the motion at the end.
    fn advance(&mut self, duration: f64) -> Motion {
        let gust = self.state.gust;
        let h = duration / f64::from(self.substeps);
        let mut time = self.time();
        let around = |simulation: &Self, motion: &Motion| {
            simulation.around(&motion.shaken(gust.acceleration))
        };
        let mut motion = self.motion;
        let mut start = around(self, &motion);
        for _ in 0..self.substeps {
            let middle_time = time + 0.5 * h;
            self.fly(gust.roll_rate, time, 0.5 * h);
            let middle = around(self, &self.motion_at(middle_time));
            self.fly(gust.roll_rate, middle_time, 0.5 * h);
            time += h;
            motion = self.motion_at(time);
            let end = around(self, &motion);
            self.compass_float
                .advance(&mut self.state.float, &[start, middle, end], h);
            start = end;
        }
        motion
    }

    fn fly(&mut self, roll_gust: f64, time: f64, duration: f64) {
        self.state
            .aircraft
            .advance(&self.state.controls, roll_gust, time, duration);
    }

    /// Lets the float come to rest in level flight, the pivot's friction tapped away.
    fn settle(&mut self, level: &Motion) {
        let compass_float = self.compass_float.without_friction();
        let around = [self.around(level); 3];
        let h = STEP / f64::from(self.substeps);
        let steps = (SETTLING / h) as u64;
        for _ in 0..steps {
            let before = self.state.float.rate;
            compass_float.advance(&mut self.state.float, &around, h);
            let rate = self.state.float.rate;
            if rate.length() < SETTLED && (rate - before).length() < SETTLED {
                break;
            }
        }
    }
}

/// Sub-steps in one step, short enough for the fastest that float, field and aircraft can do.
fn substeps(
    situation: &Situation,
    compass_float: &CompassFloat,
    aircraft: &Aircraft,
) -> Result<u32, OutOfRange> {
    let (angular_rate, gravity) = aircraft.fastest();
    let field = situation.field.total();
    let field = field + situation.iron.greatest_added_to(field);
    let fastest = compass_float.fastest(field, gravity).max(angular_rate);
    Ok((FASTEST.check(fastest)? * STEP / FINEST).ceil().max(1.0) as u32)
}
