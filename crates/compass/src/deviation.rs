//! Deviation: what the aircraft's own iron does to the field at the compass, its approximate
//! coefficients, and the chain of corrections between true, magnetic and compass headings.
//!
//! Deviation here is magnetic − compass, east positive: going from compass to magnetic, add it.

use crate::frame::{Body, Vector};
use crate::heading::{CompassHeading, MagneticHeading};
use crate::maths;
use crate::range::{OutOfRange, Range};
use crate::unit::Unit;
use glam::{DMat3, DVec3};
use nalgebra::{SMatrix, SVector};
use std::f64::consts::{FRAC_PI_4, TAU};
use thiserror::Error;

/// Each component of the hard iron's field; chosen: up to about the Earth's own.
pub const HARD_IRON: Range = Range::new("hard iron", Unit::Nanotesla, -50_000.0, 50_000.0);
/// Each element of the soft iron's matrix; chosen, far above any aircraft's.
pub const SOFT_IRON: Range = Range::new("soft iron", Unit::Number, -0.5, 0.5);
/// Each coefficient of deviation; chosen, far above what may be flown with.
pub const COEFFICIENT: Range = Range::new("coefficient of deviation", Unit::Degree, -45.0, 45.0);

/// The aircraft's iron: a fixed field, and one that the field itself induces (Poisson):
/// B′ = (I + K) B + P in body axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AircraftIron {
    hard: Vector<Body>,
    soft: DMat3,
}

impl AircraftIron {
    /// No iron at all.
    pub const NONE: Self = Self {
        hard: Vector::zero(),
        soft: DMat3::ZERO,
    };

    /// From the hard iron's field P in tesla and the soft iron's matrix K, row by row, without
    /// unit, both in body axes.
    ///
    /// # Errors
    /// A component beyond [`HARD_IRON`] or [`SOFT_IRON`].
    pub fn new(hard: [f64; 3], soft: [[f64; 3]; 3]) -> Result<Self, OutOfRange> {
        for component in hard {
            HARD_IRON.check(component)?;
        }
        for element in soft.as_flattened() {
            SOFT_IRON.check(*element)?;
        }
        Ok(Self {
            hard: Vector::from_xyz(DVec3::from_array(hard)),
            soft: DMat3::from_cols_array_2d(&soft).transpose(),
        })
    }

    /// The hard iron's field P in tesla, body axes.
    pub fn hard(&self) -> [f64; 3] {
        self.hard.xyz.to_array()
    }

    /// The soft iron's matrix K, row by row, body axes.
    pub fn soft(&self) -> [[f64; 3]; 3] {
        self.soft.transpose().to_cols_array_2d()
    }

    /// What the iron adds to a field, in tesla.
    pub fn added_to(&self, field: Vector<Body>) -> Vector<Body> {
        Vector::from_xyz(self.soft.mul_vec3(field.xyz)) + self.hard
    }

    /// A bound on what the iron adds to a field of `field` tesla, T.
    pub fn greatest_added_to(&self, field: f64) -> f64 {
        let columns = [self.soft.x_axis, self.soft.y_axis, self.soft.z_axis];
        let soft = columns
            .iter()
            .map(|column| column.length_squared())
            .sum::<f64>();
        self.hard.length() + soft.sqrt() * field
    }

    /// Whether there is any iron.
    pub fn is_none(&self) -> bool {
        *self == Self::NONE
    }
}

/// The approximate form: δ(ζ) = A + B sin ζ + C cos ζ + D sin 2ζ + E cos 2ζ, ζ the compass
/// heading; A to E in radians.
///
/// Source: NGA, *Handbook of Magnetic Compass Adjustment* (2004), ch. V.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Coefficients {
    /// Constant part.
    pub a: f64,
    /// Semicircular, as the sine.
    pub b: f64,
    /// Semicircular, as the cosine.
    pub c: f64,
    /// Quadrantal, as the sine of twice the heading.
    pub d: f64,
    /// Quadrantal, as the cosine of twice the heading.
    pub e: f64,
}

/// Why a deviation curve cannot be made.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum DeviationError {
    /// A coefficient is beyond its range.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// The curve is so steep that one magnetic heading would have several compass headings.
    #[error(
        "coefficients B to E are too large together: |B| + |C| + 2|D| + 2|E| must be below 57°, not {0:.1}°"
    )]
    TooSteep(f64),
    /// The readings do not determine five coefficients.
    #[error("a swing needs readings on at least five headings spread around the circle")]
    TooFewHeadings,
}

impl Coefficients {
    /// By the handbook's means of deviations on the eight points N, NE, E … NW by compass, each
    /// in radians, east positive.
    pub fn from_eight_points(n: [f64; 8]) -> Self {
        let [north, ne, east, se, south, sw, west, nw] = n;
        Self {
            a: n.iter().sum::<f64>() / 8.0,
            b: (east - west) / 2.0,
            c: (north - south) / 2.0,
            d: (ne + sw - se - nw) / 4.0,
            e: (north + south - east - west) / 4.0,
        }
    }

    /// By least squares from any swing: pairs of compass heading and deviation in radians.
    ///
    /// # Errors
    /// [`DeviationError::TooFewHeadings`] when the readings leave a coefficient open.
    pub fn from_least_squares(swing: &[(CompassHeading, f64)]) -> Result<Self, DeviationError> {
        let mut normal = SMatrix::<f64, 5, 5>::zeros();
        let mut right = SVector::<f64, 5>::zeros();
        for (heading, deviation) in swing {
            let row = SVector::from(terms(*heading));
            normal += row * row.transpose();
            right += row * *deviation;
        }
        // Evenly spread headings make every pivot about half their number; a tiny one means that
        // two coefficients cannot be told apart.
        let factored = normal
            .cholesky()
            .filter(|f| f.l().diagonal().iter().all(|pivot| *pivot > 1e-3))
            .ok_or(DeviationError::TooFewHeadings)?;
        let [a, b, c, d, e] = factored.solve(&right).into();
        Ok(Self { a, b, c, d, e })
    }

    /// The deviation in radians on a compass heading.
    pub fn on(&self, heading: CompassHeading) -> f64 {
        let [one, sin, cos, sin2, cos2] = terms(heading);
        self.a * one + self.b * sin + self.c * cos + self.d * sin2 + self.e * cos2
    }
}

fn terms(heading: CompassHeading) -> [f64; 5] {
    let (sin, cos) = maths::sin_cos(heading.radians());
    let (sin2, cos2) = maths::sin_cos(2.0 * heading.radians());
    [1.0, sin, cos, sin2, cos2]
}

/// A deviation curve that can be used both ways: checked to be so gentle that each magnetic
/// heading has one compass heading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DeviationCurve {
    coefficients: Coefficients,
}

impl DeviationCurve {
    /// From coefficients in radians.
    ///
    /// # Errors
    /// A coefficient beyond [`COEFFICIENT`], or coefficients too steep together.
    pub fn new(coefficients: Coefficients) -> Result<Self, DeviationError> {
        let Coefficients { a, b, c, d, e } = coefficients;
        for coefficient in [a, b, c, d, e] {
            COEFFICIENT.check(coefficient)?;
        }
        let steepness = b.abs() + c.abs() + 2.0 * (d.abs() + e.abs());
        if steepness >= 57.0_f64.to_radians() {
            return Err(DeviationError::TooSteep(steepness.to_degrees()));
        }
        Ok(Self { coefficients })
    }

    /// From compass to magnetic: add the deviation on that compass heading.
    pub fn to_magnetic(&self, compass: CompassHeading) -> MagneticHeading {
        compass.to_magnetic(self.coefficients.on(compass))
    }

    /// From magnetic to compass: the compass heading whose deviation leads back to it. The curve
    /// is gentle, so halving an interval that holds it finds the only one.
    pub fn to_compass(&self, magnetic: MagneticHeading) -> CompassHeading {
        // Deviation stays within half a turn, so the answer lies within half a turn either way.
        let (mut low, mut high) = (-TAU / 2.0, TAU / 2.0);
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            let deviation = self.coefficients.on(magnetic.to_compass(middle));
            if middle + deviation < 0.0 {
                low = middle;
            } else {
                high = middle;
            }
        }
        magnetic.to_compass(0.5 * (low + high))
    }
}

/// The eight points N, NE, E … NW as compass headings.
pub fn eight_points() -> [CompassHeading; 8] {
    std::array::from_fn(|i| CompassHeading::from_radians(i as f64 * FRAC_PI_4))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_swing_on_two_headings_is_refused() {
        let swing = [(CompassHeading::from_degrees(0.0), 0.1); 6];
        assert_eq!(
            Coefficients::from_least_squares(&swing),
            Err(DeviationError::TooFewHeadings)
        );
    }

    #[test]
    fn there_and_back_through_the_curve() {
        let curve = DeviationCurve::new(Coefficients {
            a: 0.02,
            b: 0.2,
            c: -0.1,
            d: 0.08,
            e: 0.03,
        })
        .unwrap();
        for degrees in 0..360 {
            let magnetic = MagneticHeading::from_degrees(f64::from(degrees));
            let back = curve.to_magnetic(curve.to_compass(magnetic));
            assert!(back.right_of(magnetic).abs() < 1e-12);
        }
    }

    #[test]
    fn coefficients_too_steep_are_refused_in_a_sentence() {
        let steep = Coefficients {
            a: 0.0,
            b: 0.5,
            c: 0.5,
            d: 0.0,
            e: 0.0,
        };
        assert!(matches!(
            DeviationCurve::new(steep),
            Err(DeviationError::TooSteep(_))
        ));
    }
}
