//! The Earth's field at the aircraft.

use crate::frame::{Earth, Vector};
use crate::maths;
use crate::range::{OutOfRange, Range};
use crate::unit::{NANOTESLA, Unit};

/// Horizontal intensity that can be set. The Earth's own stays below 43 000 nT; the upper limit
/// is chosen well above it, so that stronger fields can be tried.
pub const HORIZONTAL: Range = Range::new("horizontal intensity", Unit::Nanotesla, 0.0, 100_000.0);
/// Vertical intensity that can be set, down positive. Chosen as for [`HORIZONTAL`]; the Earth's
/// own stays within ±68 000 nT.
pub const VERTICAL: Range =
    Range::new("vertical intensity", Unit::Nanotesla, -100_000.0, 100_000.0);
/// The same where it follows from a dip, so that the sentence says so.
const VERTICAL_BY_DIP: Range = Range {
    quantity: "vertical intensity that follows from dip and horizontal intensity",
    ..VERTICAL
};
/// Dip that can be set, down positive.
pub const DIP: Range = Range::new("dip", Unit::Degree, -90.0, 90.0);
/// Variation that can be set, east positive.
pub const VARIATION: Range = Range::new("variation", Unit::Degree, -180.0, 180.0);

/// Horizontal intensity, in tesla, at or below which a compass is not to be relied on:
/// 2000 nT (MIL-PRF-89500B, blackout zone).
pub const UNRELIABLE_BELOW: f64 = 2000.0 * NANOTESLA;
/// Horizontal intensity, in tesla, at or below which a compass is to be used with caution:
/// 6000 nT (MIL-PRF-89500B, caution zone).
pub const CAUTION_BELOW: f64 = 6000.0 * NANOTESLA;

/// How far a compass can be relied on where the horizontal intensity is what it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Zone {
    /// The horizontal intensity steadies a card.
    Reliable,
    /// At or below 6000 nT: use with caution.
    Caution,
    /// At or below 2000 nT: unreliable.
    Unreliable,
}

impl Zone {
    /// The zone for a horizontal intensity in tesla.
    pub fn of(horizontal: f64) -> Self {
        if horizontal <= UNRELIABLE_BELOW {
            Self::Unreliable
        } else if horizontal <= CAUTION_BELOW {
            Self::Caution
        } else {
            Self::Reliable
        }
    }
}

/// The Earth's field: horizontal and vertical intensity, and variation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MagneticField {
    horizontal: f64,
    vertical: f64,
    variation: f64,
}

impl MagneticField {
    /// From horizontal and vertical intensity in tesla (vertical positive down) and variation in
    /// radians (east positive).
    ///
    /// # Errors
    /// A value beyond [`HORIZONTAL`], [`VERTICAL`] or [`VARIATION`].
    pub fn new(horizontal: f64, vertical: f64, variation: f64) -> Result<Self, OutOfRange> {
        Ok(Self {
            horizontal: HORIZONTAL.check(horizontal)?,
            vertical: VERTICAL.check(vertical)?,
            variation: VARIATION.check(variation)?,
        })
    }

    /// From horizontal intensity in tesla and dip in radians (positive down), without variation.
    ///
    /// # Errors
    /// A value beyond its range; a dip so steep that the vertical intensity is beyond [`VERTICAL`].
    pub fn from_dip(horizontal: f64, dip: f64) -> Result<Self, OutOfRange> {
        let horizontal = HORIZONTAL.check(horizontal)?;
        let vertical = horizontal * maths::tan(DIP.check(dip)?);
        Self::new(horizontal, VERTICAL_BY_DIP.check(vertical)?, 0.0)
    }

    /// Horizontal intensity H in tesla, never negative.
    pub fn horizontal(self) -> f64 {
        self.horizontal
    }

    /// Vertical intensity Z in tesla, positive down.
    pub fn vertical(self) -> f64 {
        self.vertical
    }

    /// Total intensity F in tesla.
    pub fn total(self) -> f64 {
        (self.horizontal * self.horizontal + self.vertical * self.vertical).sqrt()
    }

    /// Dip in radians, in [−π/2, π/2], positive down; zero where there is no field.
    pub fn dip(self) -> f64 {
        maths::atan2(self.vertical, self.horizontal)
    }

    /// Variation in radians, east positive.
    pub fn variation(self) -> f64 {
        self.variation
    }

    /// How far a compass can be relied on here.
    pub fn zone(self) -> Zone {
        Zone::of(self.horizontal)
    }

    /// The horizontal part alone, in Earth axes.
    pub fn horizontal_part(self) -> Vector<Earth> {
        Vector::new(self.horizontal, 0.0, 0.0)
    }

    /// The vertical part alone, in Earth axes.
    pub fn vertical_part(self) -> Vector<Earth> {
        Vector::new(0.0, 0.0, self.vertical)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dip_is_the_angle_of_the_field_below_the_horizon() {
        let field = MagneticField::new(20e-6, -20e-6, 0.0).unwrap();
        assert!((field.dip().to_degrees() + 45.0).abs() < 1e-12);
        let again = MagneticField::from_dip(20e-6, field.dip()).unwrap();
        assert!((again.vertical() - field.vertical()).abs() < 1e-18);
    }

    #[test]
    fn a_dip_of_ninety_with_some_horizontal_is_refused() {
        assert!(MagneticField::from_dip(20e-6, 90_f64.to_radians()).is_err());
    }

    #[test]
    fn zones_end_on_their_own_limits() {
        assert_eq!(Zone::of(2000.0 * NANOTESLA), Zone::Unreliable);
        assert_eq!(Zone::of(6000.0 * NANOTESLA), Zone::Caution);
        assert_eq!(Zone::of(6000.1 * NANOTESLA), Zone::Reliable);
    }
}
