//! What the checks share: fields, situations and courses by the figures that people use.
//!
//! The checks themselves are in `tests/tests`, in four kinds: published values, independent
//! routes, invariants, and sameness of bits. Angles here are in degrees, speeds in knots,
//! intensities in nanotesla, as in the sources.

#[cfg(not(target_family = "wasm"))]
pub mod random;

use compass::{
    aircraft::Aircraft,
    deviation::AircraftIron,
    field::MagneticField,
    float_settings::FloatSettings,
    free_flight::Controls,
    gust::{GustNumbers, RoughAir, StillAir},
    heading::MagneticHeading,
    legs::{Leg, Legs},
    simulation::{STEPS_PER_SECOND, Simulation, Situation},
    unit::{KNOT, NANOTESLA},
};

/// A field by its horizontal and vertical intensity in nanotesla.
pub fn field(horizontal_nt: f64, vertical_nt: f64) -> MagneticField {
    MagneticField::new(horizontal_nt * NANOTESLA, vertical_nt * NANOTESLA, 0.0)
        .expect("a field within the allowed ranges")
}

/// The standard float in still air and an aircraft without iron.
pub fn situation(field: MagneticField) -> Situation {
    Situation {
        field,
        iron: AircraftIron::NONE,
        float: FloatSettings::default(),
        air: RoughAir::Still,
    }
}

/// A flight of prescribed legs: where it starts and where each leg leads.
#[derive(Clone, Debug)]
pub struct Course {
    /// Magnetic heading at the start, degrees.
    pub heading: f64,
    /// Airspeed at the start, knots.
    pub speed: f64,
    /// The legs, in order.
    pub legs: Vec<Leg>,
}

impl Course {
    /// Straight and level on a heading at an airspeed.
    pub fn on(heading: f64, speed: f64) -> Self {
        Self {
            heading,
            speed,
            legs: Vec::new(),
        }
    }

    /// For so many seconds, bank and airspeed stay as they are.
    #[must_use]
    pub fn hold(self, seconds: f64) -> Self {
        self.leg(seconds, None, None)
    }

    /// In so many seconds, eases to a bank.
    #[must_use]
    pub fn roll(self, seconds: f64, bank: f64) -> Self {
        self.leg(seconds, Some(bank), None)
    }

    /// In so many seconds, eases to an airspeed.
    #[must_use]
    pub fn speed_up(self, seconds: f64, speed: f64) -> Self {
        self.leg(seconds, None, Some(speed))
    }

    /// A leg with either target.
    #[must_use]
    pub fn leg(mut self, seconds: f64, bank: Option<f64>, speed: Option<f64>) -> Self {
        self.legs.push(Leg {
            duration: seconds,
            bank: bank.map(f64::to_radians),
            airspeed: speed.map(|knots| knots * KNOT),
        });
        self
    }

    /// How long all the legs last, seconds.
    pub fn duration(&self) -> f64 {
        self.legs.iter().map(|leg| leg.duration).sum()
    }

    /// The same course with left and right exchanged.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        Self {
            heading: -self.heading,
            speed: self.speed,
            legs: self
                .legs
                .iter()
                .map(|leg| Leg {
                    bank: leg.bank.map(|bank| -bank),
                    ..*leg
                })
                .collect(),
        }
    }

    /// The same course, turned by an angle.
    #[must_use]
    pub fn turned(&self, angle: f64) -> Self {
        Self {
            heading: self.heading + angle,
            ..self.clone()
        }
    }

    /// A flight at the start of this course.
    pub fn start(&self, situation: Situation) -> Simulation {
        let legs = Legs::new(self.speed * KNOT, &self.legs).expect("legs within their ranges");
        let aircraft = Aircraft::prescribed(MagneticHeading::from_degrees(self.heading), legs);
        let controls = Controls::level(self.speed * KNOT);
        Simulation::new(situation, aircraft, controls).expect("settings within their ranges")
    }
}

/// Flies on for so many seconds in still air, the controls held.
pub fn fly_on(simulation: &mut Simulation, seconds: f64) {
    let controls = simulation.state().controls;
    for step in 0..(seconds * STEPS_PER_SECOND as f64).round() as u64 {
        simulation.step(&controls, StillAir.at(step));
    }
}

/// Turns and a change of speed, with iron and a balance weight.
pub fn eventful() -> (Situation, Course) {
    let mut at = situation(field(20_000.0, 45_000.0));
    at.float.balance_vertical = 30_000.0 * NANOTESLA;
    let hard = [1500.0, -800.0, 3000.0].map(|nt| nt * NANOTESLA);
    at.iron = AircraftIron::new(hard, [[0.02, 0.0, 0.01], [0.0; 3], [0.0, 0.03, 0.0]])
        .expect("iron within its ranges");
    let course = Course::on(300.0, 100.0)
        .hold(2.0)
        .roll(4.0, 20.0)
        .hold(30.0)
        .leg(6.0, Some(-15.0), Some(110.0))
        .hold(20.0);
    (at, course)
}

/// The reading less the heading now, in (−180, 180] degrees.
pub fn error(simulation: &Simulation) -> f64 {
    simulation
        .reading()
        .compass
        .error_from(simulation.motion().heading)
        .to_degrees()
}

/// The angle in [0, 180] between two directions, all in degrees.
pub fn apart(one: f64, other: f64) -> f64 {
    let difference = (one - other).rem_euclid(360.0);
    difference.min(360.0 - difference)
}

/// The larger of the two; not a number if either is not, so that no check passes by it.
pub fn largest(one: f64, other: f64) -> f64 {
    if one.is_nan() || other.is_nan() {
        f64::NAN
    } else {
        one.max(other)
    }
}
