//! The way over the ground, reckoned from heading and airspeed: the air is still, so there is no
//! wind to carry the aircraft off it.

use compass::maths;
use compass::motion::Motion;

/// A distance flown, or a place by its distance from a fixed one, in metres.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Way {
    /// Toward magnetic north.
    pub north: f64,
    /// Toward magnetic east.
    pub east: f64,
}

impl Way {
    /// The way from one moment to another `seconds` later, short enough for velocity to change
    /// evenly between them; each velocity is the airspeed along heading and pitch.
    pub fn flown(before: &Motion, after: &Motion, seconds: f64) -> Self {
        let [a, b] = [before, after].map(over_ground);
        Self {
            north: 0.5 * (a.north + b.north) * seconds,
            east: 0.5 * (a.east + b.east) * seconds,
        }
    }

    /// This way and then another.
    #[must_use]
    pub fn and(self, next: Self) -> Self {
        Self {
            north: self.north + next.north,
            east: self.east + next.east,
        }
    }
}

/// What is flown in a second at one moment.
fn over_ground(motion: &Motion) -> Way {
    let speed = motion.airspeed * maths::cos(motion.pitch);
    let (sin, cos) = maths::sin_cos(motion.heading.radians());
    Way {
        north: speed * cos,
        east: speed * sin,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use compass::heading::MagneticHeading;
    use compass::motion::{Kinematics, coordinated_rate_of_turn};
    use std::f64::consts::PI;

    #[test]
    fn straight_flight_goes_along_its_heading() {
        let east = Motion::level(MagneticHeading::from_degrees(90.0), 50.0);
        let way = Way::flown(&east, &east, 10.0);
        assert!((way.east - 500.0).abs() < 1e-9 && way.north.abs() < 1e-9);
    }

    #[test]
    fn a_steady_turn_is_a_circle_of_its_radius() {
        let (airspeed, bank) = (50.0, 0.5);
        let rate = coordinated_rate_of_turn(bank, airspeed);
        let at = |time: f64| {
            Motion::of(&Kinematics {
                heading: rate * time,
                pitch: 0.0,
                bank,
                airspeed,
                rate_of_turn: rate,
                pitch_rate: 0.0,
                bank_rate: 0.0,
                airspeed_rate: 0.0,
            })
        };
        // Half a circle to the right of north, in tenths of a second or a little less.
        let steps = (PI / rate / 0.1).ceil();
        let step = PI / rate / steps;
        let mut place = Way::default();
        for i in 0..steps as u32 {
            let time = f64::from(i) * step;
            place = place.and(Way::flown(&at(time), &at(time + step), step));
        }
        let diameter = 2.0 * airspeed / rate;
        assert!((place.east / diameter - 1.0).abs() < 1e-4);
        assert!(place.north.abs() < 1e-6 * diameter);
    }
}
