//! Headings, kept apart by the north they are measured from.
//!
//! A true heading is not a magnetic heading is not a compass heading; mixing them does not
//! compile:
//!
//! ```compile_fail
//! use compass::heading::{MagneticHeading, TrueHeading};
//! let magnetic = MagneticHeading::from_degrees(10.0);
//! let shown: TrueHeading = magnetic;
//! ```

use crate::angle::{full_turn, half_turn};
use std::marker::PhantomData;

/// Geographic north.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum True {}

/// The direction of the horizontal part of the Earth's field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Magnetic {}

/// The north that the card shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Compass {}

/// A direction clockwise from the north `N`, in [0, 2π) radians.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heading<N> {
    radians: f64,
    north: PhantomData<N>,
}

/// A heading from true north.
pub type TrueHeading = Heading<True>;
/// A heading from magnetic north.
pub type MagneticHeading = Heading<Magnetic>;
/// A heading as the card shows it.
pub type CompassHeading = Heading<Compass>;

impl<N: Copy> Heading<N> {
    /// From any finite angle in radians, folded into one turn.
    pub fn from_radians(radians: f64) -> Self {
        Self {
            radians: full_turn(radians),
            north: PhantomData,
        }
    }

    /// From any finite angle in degrees, folded into one turn.
    pub fn from_degrees(degrees: f64) -> Self {
        Self::from_radians(degrees.to_radians())
    }

    /// In radians, in [0, 2π).
    pub fn radians(self) -> f64 {
        self.radians
    }

    /// In degrees, in [0, 360).
    pub fn degrees(self) -> f64 {
        let degrees = self.radians.to_degrees();
        if degrees < 360.0 { degrees } else { 0.0 }
    }

    /// In whole degrees from 1 to 360, the way headings are spoken: north is 360.
    pub fn whole_degrees(self) -> u16 {
        match self.degrees().round() as u16 {
            0 => 360,
            degrees => degrees,
        }
    }

    /// The heading `angle` radians to the right of this one.
    #[must_use]
    pub fn turned_by(self, angle: f64) -> Self {
        Self::from_radians(self.radians + angle)
    }

    /// The angle in (−π, π] by which this heading lies to the right of `other`.
    pub fn right_of(self, other: Self) -> f64 {
        half_turn(self.radians - other.radians)
    }
}

impl TrueHeading {
    /// The same direction from magnetic north; `variation` in radians, east positive.
    pub fn to_magnetic(self, variation: f64) -> MagneticHeading {
        MagneticHeading::from_radians(self.radians - variation)
    }
}

impl MagneticHeading {
    /// The same direction from true north; `variation` in radians, east positive.
    pub fn to_true(self, variation: f64) -> TrueHeading {
        TrueHeading::from_radians(self.radians + variation)
    }

    /// What a compass shows that errs by `error` radians: reading − magnetic heading.
    pub fn to_compass(self, error: f64) -> CompassHeading {
        CompassHeading::from_radians(self.radians + error)
    }
}

impl CompassHeading {
    /// The magnetic heading; `deviation` in radians is magnetic − compass, east positive.
    pub fn to_magnetic(self, deviation: f64) -> MagneticHeading {
        MagneticHeading::from_radians(self.radians + deviation)
    }

    /// Reading − magnetic heading, in (−π, π] radians.
    pub fn error_from(self, heading: MagneticHeading) -> f64 {
        half_turn(self.radians - heading.radians)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stays_inside_one_turn_and_speaks_north_as_360() {
        let nearly = MagneticHeading::from_radians(-1e-18);
        assert!(nearly.degrees() < 360.0);
        assert_eq!(MagneticHeading::from_degrees(359.7).whole_degrees(), 360);
        assert_eq!(MagneticHeading::from_degrees(7.2).whole_degrees(), 7);
    }

    #[test]
    fn variation_west_least_magnetic_best() {
        let magnetic = TrueHeading::from_degrees(90.0).to_magnetic((-10.0_f64).to_radians());
        assert!((magnetic.degrees() - 100.0).abs() < 1e-12);
        assert!((magnetic.to_true((-10.0_f64).to_radians()).degrees() - 90.0).abs() < 1e-12);
    }
}
