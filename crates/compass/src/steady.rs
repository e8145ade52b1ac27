//! Closed forms for steady flight: where a card would come to rest that stood square to the
//! apparent vertical. An independent route beside the simulated float, and instant tables.

use crate::field::MagneticField;
use crate::heading::{CompassHeading, MagneticHeading};
use crate::maths;
use crate::motion::Motion;
use crate::range::Range;
use crate::unit::Unit;
use std::f64::consts::FRAC_PI_2;

/// Straight acceleration that can be asked for.
pub const ACCELERATION: Range = Range::new("acceleration", Unit::Gravity, -10.0, 10.0);

/// The reading in a coordinated level turn at `bank` radians (right positive) where the dip is
/// `dip` radians: atan2(sin H cos φ − tan δ sin φ, cos H).
///
/// Source: E. Williams, *Compass Errors* (2001), eq. 2.
pub fn in_turn(heading: MagneticHeading, bank: f64, dip: f64) -> CompassHeading {
    let (sin, cos) = maths::sin_cos(heading.radians());
    let (sin_bank, cos_bank) = maths::sin_cos(bank);
    CompassHeading::from_radians(maths::atan2(
        sin * cos_bank - maths::tan(dip) * sin_bank,
        cos,
    ))
}

/// The reading in straight level flight that gains speed at `acceleration` g (negative: loses),
/// where the dip is `dip` radians: atan2(sin H, cos H cos λ + tan δ sin λ), λ = atan a.
///
/// Source: E. Williams, *Compass Errors* (2001), eqs. 3 and 4.
pub fn in_speed_change(heading: MagneticHeading, acceleration: f64, dip: f64) -> CompassHeading {
    let (sin, cos) = maths::sin_cos(heading.radians());
    let (sin_tilt, cos_tilt) = maths::sin_cos(maths::atan(acceleration));
    CompassHeading::from_radians(maths::atan2(
        sin,
        cos * cos_tilt + maths::tan(dip) * sin_tilt,
    ))
}

/// The bank in radians beyond which a card never comes round in a steady turn: 90° − |dip|.
pub fn bank_without_revolution(dip: f64) -> f64 {
    FRAC_PI_2 - dip.abs()
}

/// The same for any motion: the field, laid into the plane square to the apparent vertical,
/// against the aircraft's forward axis laid into that plane. None where the field stands along
/// the apparent vertical and leaves the card no direction.
pub fn square_card(field: &MagneticField, motion: &Motion) -> Option<CompassHeading> {
    let down = motion.apparent_gravity_in_bowl();
    let down = down * (1.0 / down.length());
    let earth = field.horizontal_part() + field.vertical_part();
    let field = motion.attitude.inverse().apply(earth);
    let north = field - down * field.dot(down);
    if north.length() <= 1e-12 * field.length() {
        return None;
    }
    let forward = crate::frame::Vector::x_axis();
    let east = down.cross(north);
    Some(CompassHeading::from_radians(maths::atan2(
        forward.dot(east),
        forward.dot(north),
    )))
}
