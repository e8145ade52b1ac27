//! Flights whose stills are looked at, and snapshots checked.

use compass::aircraft::Aircraft;
use compass::deviation::AircraftIron;
use compass::field::MagneticField;
use compass::float_settings::FloatSettings;
use compass::free_flight::Controls;
use compass::gust::{GustNumbers, RoughAir, StillAir};
use compass::heading::MagneticHeading;
use compass::legs::{Leg, Legs};
use compass::simulation::{Moment, STEPS_PER_SECOND, Simulation, Situation};
use compass::unit::KNOT;
use drawing::plan_view::Position;

/// A flight: where it starts, how it is flown, and when the still is taken.
pub(crate) struct Course {
    pub(crate) name: &'static str,
    pub(crate) dip: f64,
    pub(crate) heading: f64,
    /// Degrees, right positive.
    pub(crate) bank: f64,
    /// Knots, at the start and asked for.
    pub(crate) airspeed: [f64; 2],
    /// Seconds in which the airspeed is forced to change, if it is.
    pub(crate) forced: Option<f64>,
    pub(crate) seconds: f64,
}

pub(crate) const LEVEL: Course = Course {
    name: "level",
    dip: 65.0,
    heading: 30.0,
    bank: 0.0,
    airspeed: [100.0, 100.0],
    forced: None,
    seconds: 1.0,
};

/// The flights, and which instant of each is shown.
pub(crate) const COURSES: [Course; 7] = [
    LEVEL,
    Course {
        name: "right-through-north",
        heading: 325.0,
        bank: 18.0,
        seconds: 12.6,
        ..LEVEL
    },
    Course {
        name: "left-off-south",
        heading: 180.0,
        bank: -18.0,
        seconds: 5.0,
        ..LEVEL
    },
    Course {
        name: "southern-right-through-north",
        dip: -65.0,
        heading: 325.0,
        bank: 18.0,
        seconds: 12.6,
        ..LEVEL
    },
    Course {
        name: "accelerating-on-east",
        heading: 90.0,
        airspeed: [80.0, 180.0],
        seconds: 6.0,
        ..LEVEL
    },
    Course {
        name: "at-the-stop",
        heading: 60.0,
        airspeed: [60.0, 180.0],
        forced: Some(12.0),
        seconds: 6.0,
        ..LEVEL
    },
    Course {
        name: "left-through-east",
        heading: 125.0,
        bank: -18.0,
        seconds: 12.6,
        ..LEVEL
    },
];

/// What a course comes to.
pub(crate) struct Flown {
    pub(crate) moment: Moment,
    pub(crate) field: MagneticField,
    /// Places flown over, four a second.
    pub(crate) track: Vec<Position>,
}

pub(crate) fn fly(course: &Course, variation: f64) -> Flown {
    let dip = course.dip.to_radians();
    // The whole field is 48 microtesla, whatever the dip.
    let (s, c) = compass::maths::sin_cos(dip);
    let field = MagneticField::new(48e-6 * c, 48e-6 * s, variation.to_radians())
        .expect("a field within the allowed ranges");
    let situation = Situation {
        field,
        iron: AircraftIron::NONE,
        float: FloatSettings::default(),
        air: RoughAir::Still,
    };
    let [from, to] = course.airspeed;
    let level = Controls::level(from * KNOT);
    let heading = MagneticHeading::from_degrees(course.heading);
    let aircraft = match course.forced {
        None => Aircraft::free(heading, &level),
        Some(duration) => {
            let leg = Leg {
                duration,
                bank: None,
                airspeed: Some(to * KNOT),
            };
            let legs = Legs::new(from * KNOT, &[leg]).expect("a leg within the allowed ranges");
            Aircraft::prescribed(heading, legs)
        }
    };
    let mut flight =
        Simulation::new(situation, aircraft, level).expect("a float within the allowed ranges");
    let controls = level
        .with_bank(course.bank.to_radians())
        .with_airspeed(to * KNOT);
    let mut at = Position::default();
    let mut track = vec![at];
    let steps = (course.seconds * STEPS_PER_SECOND as f64) as u64;
    for step in 0..steps {
        flight.step(&controls, StillAir.at(step));
        let motion = flight.motion();
        let (s, c) = compass::maths::sin_cos(motion.heading.radians());
        let way = motion.airspeed / STEPS_PER_SECOND as f64;
        at.north += way * c;
        at.east += way * s;
        if step % (STEPS_PER_SECOND / 4) == 0 {
            track.push(at);
        }
    }
    track.push(at);
    Flown {
        moment: flight.moment(),
        field,
        track,
    }
}
