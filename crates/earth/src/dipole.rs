//! The class-room Earth: a centred dipole along the spin axis, so that latitude alone gives the
//! field and there is no variation.

use crate::place::LATITUDE;
use compass::field::MagneticField;
use compass::maths;
use compass::range::OutOfRange;

/// Horizontal intensity on the equator, in tesla: 30 µT. Chosen: it is close to the 29.7 µT of
/// WMM2025's own centred dipole at 2025.0, √(g₁₀² + g₁₁² + h₁₁²), and easy to remember.
pub const EQUATORIAL_INTENSITY: f64 = 30e-6;

/// The dipole's field at a latitude in radians, north positive: H = B₀ cos(latitude),
/// Z = 2 B₀ sin(latitude), and so tan(dip) = 2 tan(latitude) (the field of a point dipole; any
/// textbook of geomagnetism).
///
/// # Errors
/// A latitude beyond [`LATITUDE`].
pub fn field(latitude: f64) -> Result<MagneticField, OutOfRange> {
    let (sin, cos) = maths::sin_cos(LATITUDE.check(latitude)?);
    // At the pole the cosine of a rounded angle may be a hair below zero.
    MagneticField::new(
        EQUATORIAL_INTENSITY * cos.max(0.0),
        2.0 * EQUATORIAL_INTENSITY * sin,
        0.0,
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use compass::field::Zone;

    #[test]
    fn at_the_pole_the_field_stands_upright() {
        for (pole, down) in [(90.0_f64, 60e-6), (-90.0, -60e-6)] {
            let field = field(pole.to_radians()).unwrap();
            assert!((0.0..1e-20).contains(&field.horizontal()));
            assert_eq!(field.vertical(), down);
            assert_eq!(field.dip().to_degrees(), pole);
            assert_eq!(field.zone(), Zone::Unreliable);
        }
    }

    #[test]
    fn the_last_latitude_that_passes_as_the_pole_has_no_backward_field() {
        let just_past = (90.0 + 1e-10_f64).to_radians();
        let horizontal = field(just_past).unwrap().horizontal();
        // The cosine of a rounded right angle: 6e-17.
        assert!((0.0..1e-16 * EQUATORIAL_INTENSITY).contains(&horizontal));
    }

    #[test]
    fn on_the_equator_the_field_lies_flat() {
        let field = field(0.0).unwrap();
        assert_eq!(field.horizontal(), EQUATORIAL_INTENSITY);
        assert_eq!(field.dip(), 0.0);
    }
}
