//! How the airframe, and with it the bowl and the pivot, moves at one instant.

use crate::frame::{Body, Earth, Rotation, Vector};
use crate::heading::MagneticHeading;
use crate::maths;
use crate::unit::STANDARD_GRAVITY;
use glam::DVec3;

/// The rate of turn, in radians a second (right positive), of a coordinated level turn at `bank`
/// radians (right positive) and `airspeed` m/s: g tan(bank) / V.
///
/// Source: the balance of forces in a coordinated turn; FAA-H-8083-15B, ch. on aerodynamics.
pub fn coordinated_rate_of_turn(bank: f64, airspeed: f64) -> f64 {
    STANDARD_GRAVITY * maths::tan(bank) / airspeed
}

/// The bank in radians that turns at `rate_of_turn` rad/s with `airspeed` m/s, coordinated and
/// level: atan(ω V / g). The inverse of [`coordinated_rate_of_turn`].
pub fn coordinated_bank(rate_of_turn: f64, airspeed: f64) -> f64 {
    maths::atan(rate_of_turn * airspeed / STANDARD_GRAVITY)
}

/// Attitude, airspeed and how fast each of them changes, in radians, m/s and seconds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kinematics {
    /// Magnetic heading, radians; need not be folded.
    pub heading: f64,
    /// Pitch and flight-path angle, nose up positive. The two are taken as one: the angle of
    /// attack hardly changes, and the bowl is mounted level in cruise.
    pub pitch: f64,
    /// Bank, right positive.
    pub bank: f64,
    /// True airspeed, m/s; still air, so it is the speed over the ground too.
    pub airspeed: f64,
    /// Rate of change of heading, right positive.
    pub rate_of_turn: f64,
    /// Rate of change of pitch.
    pub pitch_rate: f64,
    /// Rate of change of bank.
    pub bank_rate: f64,
    /// Rate of change of airspeed, m/s².
    pub airspeed_rate: f64,
}

/// What the float needs to know of the airframe at one instant, and what the views show of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Motion {
    /// Magnetic heading.
    pub heading: MagneticHeading,
    /// Pitch in radians, nose up positive.
    pub pitch: f64,
    /// Bank in radians, right positive.
    pub bank: f64,
    /// True airspeed in m/s.
    pub airspeed: f64,
    /// Rate of turn in rad/s, right positive.
    pub rate_of_turn: f64,
    /// Rate of change of airspeed in m/s².
    pub airspeed_rate: f64,
    /// Attitude of the airframe and the bowl.
    pub attitude: Rotation<Body, Earth>,
    /// Angular velocity of the airframe and the bowl, rad/s.
    pub angular_velocity: Vector<Body>,
    /// Inertial acceleration of the pivot, m/s².
    pub acceleration: Vector<Earth>,
}

impl Motion {
    /// The motion that these kinematics are: acceleration is the time derivative of
    /// V (cos θ cos ψ, cos θ sin ψ, −sin θ), angular velocity that of the heading, pitch and
    /// bank turned in this order.
    pub fn of(k: &Kinematics) -> Self {
        let (sin_heading, cos_heading) = maths::sin_cos(k.heading);
        let (sin_pitch, cos_pitch) = maths::sin_cos(k.pitch);
        let (sin_bank, cos_bank) = maths::sin_cos(k.bank);
        let along = DVec3::new(cos_pitch * cos_heading, cos_pitch * sin_heading, -sin_pitch);
        let upward = DVec3::new(
            -sin_pitch * cos_heading,
            -sin_pitch * sin_heading,
            -cos_pitch,
        );
        let right = DVec3::new(-sin_heading, cos_heading, 0.0);
        Self {
            heading: MagneticHeading::from_radians(k.heading),
            pitch: k.pitch,
            bank: k.bank,
            airspeed: k.airspeed,
            rate_of_turn: k.rate_of_turn,
            airspeed_rate: k.airspeed_rate,
            attitude: Rotation::from_attitude(k.heading, k.pitch, k.bank),
            angular_velocity: Vector::new(
                k.bank_rate - k.rate_of_turn * sin_pitch,
                k.pitch_rate * cos_bank + k.rate_of_turn * cos_pitch * sin_bank,
                k.rate_of_turn * cos_pitch * cos_bank - k.pitch_rate * sin_bank,
            ),
            acceleration: Vector::from_xyz(
                along * k.airspeed_rate
                    + upward * (k.airspeed * k.pitch_rate)
                    + right * (k.airspeed * cos_pitch * k.rate_of_turn),
            ),
        }
    }

    /// Steady, straight and level.
    pub fn level(heading: MagneticHeading, airspeed: f64) -> Self {
        Self::of(&Kinematics {
            heading: heading.radians(),
            pitch: 0.0,
            bank: 0.0,
            airspeed,
            rate_of_turn: 0.0,
            pitch_rate: 0.0,
            bank_rate: 0.0,
            airspeed_rate: 0.0,
        })
    }

    /// Apparent gravity: (0, 0, g) less the acceleration of the pivot, m/s².
    pub fn apparent_gravity(&self) -> Vector<Earth> {
        Vector::new(0.0, 0.0, STANDARD_GRAVITY) - self.acceleration
    }

    /// Apparent gravity in the axes of airframe and bowl, m/s²: what a ball and a liquid follow.
    pub fn apparent_gravity_in_bowl(&self) -> Vector<Body> {
        self.attitude.inverse().apply(self.apparent_gravity())
    }

    /// The same with an acceleration added, given in body axes, m/s².
    #[must_use]
    pub fn shaken(mut self, extra: Vector<Body>) -> Self {
        self.acceleration = self.acceleration + self.attitude.apply(extra);
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::unit::KNOT;

    #[test]
    fn apparent_gravity_stays_on_the_bowls_axis_in_a_coordinated_turn() {
        let (bank, airspeed) = (0.35, 100.0 * KNOT);
        let motion = Motion::of(&Kinematics {
            heading: 2.0,
            pitch: 0.0,
            bank,
            airspeed,
            rate_of_turn: coordinated_rate_of_turn(bank, airspeed),
            pitch_rate: 0.0,
            bank_rate: 0.0,
            airspeed_rate: 0.0,
        });
        let felt = motion.apparent_gravity_in_bowl();
        assert!(felt.x().abs() < 1e-12 && felt.y().abs() < 1e-12);
        assert!((felt.z() - STANDARD_GRAVITY / maths::cos(bank)).abs() < 1e-12);
    }

    #[test]
    fn angular_velocity_is_that_of_the_attitude() {
        let at = |t: f64| Kinematics {
            heading: 0.4 + 0.05 * t,
            pitch: 0.1 - 0.02 * t,
            bank: 0.3 + 0.2 * t,
            airspeed: 50.0,
            rate_of_turn: 0.05,
            pitch_rate: -0.02,
            bank_rate: 0.2,
            airspeed_rate: 0.0,
        };
        let h = 1e-5;
        let (before, after) = (Motion::of(&at(-h)), Motion::of(&at(h)));
        let turned = before.attitude.quaternion.conjugate() * after.attitude.quaternion;
        let rate = DVec3::new(turned.x, turned.y, turned.z) * (2.0 / (2.0 * h));
        assert!((rate - Motion::of(&at(0.0)).angular_velocity.xyz).length() < 1e-9);
    }
}
