//! Rules of thumb for turns, as pilots are taught them: never tuned to what the float does, so
//! that the two can be laid beside each other.

use crate::heading::{CompassHeading, MagneticHeading};
use std::f64::consts::{FRAC_PI_2, PI};

/// Which way an aircraft turns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// To the left.
    Left,
    /// To the right.
    Right,
}

impl Turn {
    /// The way of a bank in radians, right positive.
    pub fn of(bank: f64) -> Self {
        if bank < 0.0 { Self::Left } else { Self::Right }
    }

    fn sign(self) -> f64 {
        match self {
            Self::Left => -1.0,
            Self::Right => 1.0,
        }
    }
}

/// The error (reading − magnetic heading, radians) that the rule gives on a heading in a turn at
/// `latitude` radians, north positive, whatever the bank: a lag of the latitude on north, a lead
/// of as much on south, none on east and west, and in between in proportion to how far the
/// heading lies from east or west. South of the magnetic equator lag and lead change places.
///
/// Source: the greatest lag and lead, for 15° to 18° of bank: FAA-H-8083-15B, ch. on compass
/// turns. The proportion: common practice, no source.
pub fn in_turn(heading: MagneticHeading, turn: Turn, latitude: f64) -> f64 {
    let from_north = heading.radians().min(2.0 * PI - heading.radians());
    let share = 1.0 - from_north / FRAC_PI_2;
    -turn.sign() * share * latitude
}

/// The reading at which to begin to roll out of a turn at `bank` radians (its side does not
/// matter) to come out on `target`: the rule's error there, and half the bank to stop in.
///
/// Source: FAA-H-8083-15B, ch. on compass turns.
pub fn roll_out(target: MagneticHeading, turn: Turn, latitude: f64, bank: f64) -> CompassHeading {
    target.to_compass(in_turn(target, turn, latitude) - 0.5 * turn.sign() * bank.abs())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn on(heading: f64, turn: Turn, latitude: f64) -> f64 {
        let heading = MagneticHeading::from_degrees(heading);
        in_turn(heading, turn, latitude.to_radians()).to_degrees()
    }

    #[test]
    fn roll_outs_are_those_of_the_worked_example() {
        // FAA-H-8083-15B, ch. on compass turns: latitude 30°, 15° of bank; from east to north,
        // west to north, east to south and west to south. The readings are whole degrees.
        for (target, turn, reading) in [
            (360.0, Turn::Left, 37.0),
            (360.0, Turn::Right, 323.0),
            (180.0, Turn::Right, 203.0),
            (180.0, Turn::Left, 157.0),
        ] {
            let target = MagneticHeading::from_degrees(target);
            let at = roll_out(target, turn, 30_f64.to_radians(), 15_f64.to_radians());
            let off = at.right_of(CompassHeading::from_degrees(reading));
            assert!(off.to_degrees().abs() < 0.5 + 1e-9, "{reading}: {off}");
        }
    }

    #[test]
    fn lags_on_north_leads_on_south_and_errs_in_proportion_between() {
        assert!((on(0.0, Turn::Right, 50.0) + 50.0).abs() < 1e-9);
        assert!((on(180.0, Turn::Right, 50.0) - 50.0).abs() < 1e-9);
        assert!((on(330.0, Turn::Right, 45.0) + 30.0).abs() < 1e-9);
        assert!((on(120.0, Turn::Right, 45.0) - 15.0).abs() < 1e-9);
        for level in [90.0, 270.0] {
            assert!(on(level, Turn::Left, 50.0).abs() < 1e-9);
        }
    }

    #[test]
    fn the_other_side_and_the_other_hemisphere_are_mirrored() {
        for heading in [0.0, 33.0, 200.0, 271.0] {
            let right = on(heading, Turn::Right, 40.0);
            assert_eq!(on(heading, Turn::Left, 40.0), -right);
            assert_eq!(on(heading, Turn::Right, -40.0), -right);
        }
    }
}
