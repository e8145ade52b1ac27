//! The aircraft: pilot's inputs in, motion of the bowl out.

use crate::free_flight::{Controls, FreeFlight, Handling};
use crate::heading::MagneticHeading;
use crate::legs::Legs;
use crate::motion::Motion;
use crate::unit::STANDARD_GRAVITY;
use std::sync::Arc;

/// An aircraft under way, flown freely or along prescribed legs.
#[derive(Clone, Debug, PartialEq)]
pub enum Aircraft {
    /// The pilot's controls move it.
    Free(FreeFlight),
    /// Bank and airspeed are prescribed; only the heading has to be integrated.
    Prescribed {
        /// The legs flown.
        legs: Arc<Legs>,
        /// Magnetic heading in radians, not folded.
        heading: f64,
    },
}

impl Aircraft {
    /// Straight and level on a heading at the controls' airspeed, free to be flown.
    pub fn free(heading: MagneticHeading, controls: &Controls) -> Self {
        Self::Free(FreeFlight::level(
            Handling::default(),
            heading.radians(),
            controls,
        ))
    }

    /// At the start of prescribed legs, on a heading.
    pub fn prescribed(heading: MagneticHeading, legs: Legs) -> Self {
        Self::Prescribed {
            legs: Arc::new(legs),
            heading: heading.radians(),
        }
    }

    /// The same aircraft at `time` seconds, free to be flown on.
    #[must_use]
    pub fn freed(&self, time: f64) -> Self {
        Self::Free(match self {
            Self::Free(flight) => *flight,
            Self::Prescribed { legs, heading } => {
                FreeFlight::under_way(Handling::default(), &legs.kinematics(time, *heading))
            }
        })
    }

    /// The motion at `time` seconds from the start, with the controls held.
    pub fn motion(&self, controls: &Controls, time: f64) -> Motion {
        Motion::of(&match self {
            Self::Free(flight) => flight.kinematics(controls),
            Self::Prescribed { legs, heading } => legs.kinematics(time, *heading),
        })
    }

    /// The airspeed in m/s at `time` seconds from the start.
    pub fn airspeed(&self, time: f64) -> f64 {
        match self {
            Self::Free(flight) => flight.airspeed(),
            Self::Prescribed { legs, .. } => legs.airspeed(time),
        }
    }

    /// Flies from `time` for `duration` seconds. `roll_gust` is the rolling velocity of the air
    /// in rad/s; prescribed legs do not feel it.
    pub fn advance(&mut self, controls: &Controls, roll_gust: f64, time: f64, duration: f64) {
        match self {
            Self::Free(flight) => flight.advance(controls, roll_gust, duration),
            Self::Prescribed { legs, heading } => {
                // The rate of turn depends on time alone: Simpson's rule is Runge-Kutta's.
                let rate = |t: f64| legs.kinematics(t, 0.0).rate_of_turn;
                *heading += duration / 6.0
                    * (rate(time) + 4.0 * rate(time + duration / 2.0) + rate(time + duration));
            }
        }
    }

    /// Bounds on the angular velocity (rad/s) and the apparent gravity (m/s²) it can reach.
    pub fn fastest(&self) -> (f64, f64) {
        match self {
            // Steepest bank at the slowest speed turns at 0.83 rad/s and feels 2 g; gusts and a
            // pull-up add to both. Rounded up.
            Self::Free(_) => (1.5, 4.0 * STANDARD_GRAVITY),
            Self::Prescribed { legs, .. } => legs.fastest(),
        }
    }
}
