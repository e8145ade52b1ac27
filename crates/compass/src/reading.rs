//! What the card shows at the lubber line, and how that compares with the real heading.

use crate::field::Zone;
use crate::frame::{Body, Card, Rotation, Vector};
use crate::heading::{CompassHeading, MagneticHeading};
use crate::maths;

/// What can be read off the compass at one instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// What stands at the lubber line.
    pub compass: CompassHeading,
    /// The card's attitude in its bowl.
    pub card: Rotation<Card, Body>,
    /// The angle between the card's axis and the bowl's, in radians.
    pub tilt: f64,
    /// Whether the card touches the bowl's stop.
    pub at_stop: bool,
    /// How far the field here lets a card be relied on.
    pub zone: Zone,
}

impl Reading {
    /// Reads a card in its bowl: the aircraft's forward axis, laid into the card's plane.
    pub fn of(card: Rotation<Card, Body>, at_stop: bool, zone: Zone) -> Self {
        let forward = card.inverse().apply(Vector::x_axis());
        Self {
            compass: CompassHeading::from_radians(maths::atan2(forward.y(), forward.x())),
            card,
            tilt: card.apply(Vector::z_axis()).angle_to(Vector::z_axis()),
            at_stop,
            zone,
        }
    }
}

/// How the reading compares with the heading, in whole degrees as both are shown, so that the
/// words never contradict the figures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Difference {
    /// Within a degree.
    Agrees,
    /// In a turn, the reading is behind the heading by so many degrees.
    Lags(u16),
    /// In a turn, the reading is ahead of the heading by so many degrees.
    Leads(u16),
    /// In straight flight, the reading is greater (further right) by so many degrees.
    ReadsMore(u16),
    /// In straight flight, the reading is less (further left) by so many degrees.
    ReadsLess(u16),
}

/// Slower than this, in rad/s, an aircraft does not count as turning: half a degree a second,
/// a sixth of standard rate; chosen.
pub const TURNING_FROM: f64 = 0.5 * std::f64::consts::PI / 180.0;

impl Difference {
    /// From the reading, the magnetic heading and the rate of turn (rad/s, right positive).
    pub fn between(compass: CompassHeading, heading: MagneticHeading, rate_of_turn: f64) -> Self {
        let more = i32::from(compass.whole_degrees()) - i32::from(heading.whole_degrees());
        let more = (more + 180).rem_euclid(360) - 180;
        let size = more.unsigned_abs() as u16;
        let ahead = f64::from(more) * rate_of_turn > 0.0;
        if size <= 1 {
            Self::Agrees
        } else if rate_of_turn.abs() < TURNING_FROM {
            if more > 0 {
                Self::ReadsMore(size)
            } else {
                Self::ReadsLess(size)
            }
        } else if ahead {
            Self::Leads(size)
        } else {
            Self::Lags(size)
        }
    }
}

/// The torques about the card's own axis, divided by the card's moment of inertia about it:
/// rad/s², positive toward a greater card azimuth (clockwise from above). They sum to the whole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Torques {
    /// The horizontal field's pull on the magnets.
    pub horizontal_field: f64,
    /// The vertical field's pull, through the tilt of the card.
    pub vertical_field: f64,
    /// The pull of the aircraft's iron.
    pub iron: f64,
    /// Apparent gravity on the balance weight.
    pub balance_weight: f64,
    /// The liquid's drag.
    pub liquid_drag: f64,
    /// The pivot's friction.
    pub friction: f64,
}

impl Torques {
    /// The net torque: the sum of the parts.
    pub fn net(&self) -> f64 {
        self.horizontal_field
            + self.vertical_field
            + self.iron
            + self.balance_weight
            + self.liquid_drag
            + self.friction
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use glam::DQuat;

    fn between(compass: f64, heading: f64, rate: f64) -> Difference {
        Difference::between(
            CompassHeading::from_degrees(compass),
            MagneticHeading::from_degrees(heading),
            rate,
        )
    }

    #[test]
    fn behind_a_turn_lags_and_ahead_of_it_leads_either_way() {
        assert_eq!(between(337.0, 0.0, 0.05), Difference::Lags(23));
        assert_eq!(between(23.0, 0.0, -0.05), Difference::Lags(23));
        assert_eq!(between(192.0, 180.0, 0.05), Difference::Leads(12));
        assert_eq!(between(98.0, 90.0, 0.0), Difference::ReadsMore(8));
        assert_eq!(between(359.6, 0.4, 0.05), Difference::Agrees);
    }

    #[test]
    fn a_level_card_north_up_reads_the_heading() {
        let heading = 0.6_f64;
        // The card lies north while the airframe has turned right by `heading`.
        let card = Rotation::from_quaternion(DQuat::from_rotation_z(-heading));
        let reading = Reading::of(card, false, Zone::Reliable);
        assert!((reading.compass.radians() - heading).abs() < 1e-12);
        assert!(reading.tilt < 1e-12);
    }
}
