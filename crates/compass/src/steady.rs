//! Closed forms for steady flight: where a card would come to rest that stood square to the
//! apparent vertical. An independent route beside the simulated float, and instant tables.

use crate::angle::half_turn;
use crate::deviation::AircraftIron;
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
    square_card_with_iron(field, &AircraftIron::NONE, motion)
}

/// The same with what the aircraft's iron adds to the field, wherever the airframe points.
pub fn square_card_with_iron(
    field: &MagneticField,
    iron: &AircraftIron,
    motion: &Motion,
) -> Option<CompassHeading> {
    let down = apparent_down(motion);
    let earth = field.horizontal_part() + field.vertical_part();
    let earth = motion.attitude.inverse().apply(earth);
    let field = earth + iron.added_to(earth);
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

/// How much of the Earth's field lies in the plane of a card square to the apparent vertical, T:
/// what steers it there. Level it is the horizontal intensity.
pub fn square_card_intensity(field: &MagneticField, motion: &Motion) -> f64 {
    let down = apparent_down(motion);
    let earth = field.horizontal_part() + field.vertical_part();
    let earth = motion.attitude.inverse().apply(earth);
    (earth - down * earth.dot(down)).length()
}

/// The apparent vertical in bowl axes, of length 1.
fn apparent_down(motion: &Motion) -> crate::frame::Vector<crate::frame::Body> {
    let down = motion.apparent_gravity_in_bowl();
    down * (1.0 / down.length())
}

/// The deviation (magnetic − compass, radians, east positive) on a heading in straight level
/// flight, of a card that stands level: the field and what the aircraft's iron adds to it, laid
/// into the horizontal. None where nothing is left of it there.
pub fn level_deviation(
    field: &MagneticField,
    iron: &AircraftIron,
    heading: MagneticHeading,
) -> Option<f64> {
    // No airspeed is needed: nothing of it acts on a card in unaccelerated flight.
    let level = Motion::level(heading, 0.0).attitude.inverse();
    let earth = level.apply(field.horizontal_part() + field.vertical_part());
    let felt = earth + iron.added_to(earth);
    let left = (felt.x() * felt.x() + felt.y() * felt.y()).sqrt();
    if left <= 1e-12 * felt.length() {
        return None;
    }
    let compass = maths::atan2(-felt.y(), felt.x());
    Some(half_turn(heading.radians() - compass))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::aircraft::Aircraft;
    use crate::float_settings::FloatSettings;
    use crate::free_flight::Controls;
    use crate::gust::RoughAir;
    use crate::simulation::{Simulation, Situation};
    use crate::unit::{KNOT, NANOTESLA};

    #[test]
    fn a_card_that_hardly_tilts_deviates_as_the_closed_form_says() {
        let field = MagneticField::new(20e-6, 40e-6, 0.0).unwrap();
        let hard = [1500.0, -700.0, 2500.0].map(|it| it * NANOTESLA);
        let soft = [[0.05, 0.02, 0.01], [-0.01, -0.04, 0.0], [0.0, 0.03, 0.02]];
        let iron = AircraftIron::new(hard, soft).unwrap();
        let controls = Controls::level(100.0 * KNOT);
        for degrees in (0..360).step_by(30) {
            let heading = MagneticHeading::from_degrees(f64::from(degrees));
            let situation = Situation {
                field,
                iron,
                // The least that can be set. What is left of the vertical field is then at most
                // Z sin 0.1°, 70 nT in 20 000: 0.2°.
                float: FloatSettings {
                    level_tilt: 0.1_f64.to_radians(),
                    ..FloatSettings::default()
                },
                air: RoughAir::Still,
            };
            let start = Aircraft::free(heading, &controls);
            let flight = Simulation::new(situation, start, controls).unwrap();
            let shown = half_turn(heading.radians() - flight.reading().compass.radians());
            let closed = level_deviation(&field, &iron, heading).unwrap();
            assert!((shown - closed).abs().to_degrees() < 0.2, "{degrees}");
            assert!(closed.abs().to_degrees() > 0.5 || degrees % 180 == 0);
        }
    }

    #[test]
    fn without_iron_there_is_no_deviation_and_without_a_field_no_direction() {
        let heading = MagneticHeading::from_degrees(77.0);
        let field = MagneticField::new(20e-6, 40e-6, 0.0).unwrap();
        let none = level_deviation(&field, &AircraftIron::NONE, heading).unwrap();
        assert!(none.abs() < 1e-12);
        let pole = MagneticField::new(0.0, 60e-6, 0.0).unwrap();
        assert_eq!(level_deviation(&pole, &AircraftIron::NONE, heading), None);
    }
}
