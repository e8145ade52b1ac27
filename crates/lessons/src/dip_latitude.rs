//! From dip to latitude: what the rule takes for granted, what a dipole gives, and what the Earth
//! does along a meridian.

use compass::aircraft::Aircraft;
use compass::deviation::AircraftIron;
use compass::field::MagneticField;
use compass::float_settings::FloatSettings;
use compass::free_flight::Controls;
use compass::gust::RoughAir;
use compass::heading::MagneticHeading;
use compass::maths;
use compass::range::OutOfRange;
use compass::simulation::{Simulation, Situation};
use compass::unit::KNOT;
use earth::{Date, Error, Place, PlaceField, dipole};
use std::f64::consts::PI;

/// Parallels from pole to pole at which a meridian's dip is given: every 2°.
const PARALLELS: i32 = 90;

/// The dip of the rule, dip ≈ latitude, both in radians: common practice, no source.
pub fn by_rule(latitude: f64) -> f64 {
    latitude
}

/// The latitude at which a dipole has a dip, both in radians: tan(dip) = 2 tan(latitude) the other
/// way round; see [`earth::dipole`].
pub fn latitude_by_dipole(dip: f64) -> f64 {
    let (sin, cos) = maths::sin_cos(dip);
    maths::atan2(sin, 2.0 * cos.max(0.0))
}

/// Latitude and dip of the dipole from pole to pole, rad.
pub fn dipole_curve() -> Vec<(f64, f64)> {
    latitudes()
        .filter_map(|latitude| Some((latitude, dipole::field(latitude).ok()?.dip())))
        .collect()
}

/// Latitude and dip along a meridian at sea level on a day, from pole to pole, rad.
///
/// # Errors
/// A date outside the model's life, a longitude beyond its range.
pub fn along_meridian(longitude: f64, date: Date) -> Result<Vec<(f64, f64)>, Error> {
    latitudes()
        .map(|latitude| {
            let place = Place::new(latitude, longitude, 0.0)?;
            Ok((latitude, PlaceField::at(place, date)?.dip()))
        })
        .collect()
}

/// By how much the standard float's card tilts in level flight on north, rad, north end down
/// positive: the vertical field pulls at it, its weight rights it.
///
/// # Errors
/// A field in which the float cannot be simulated.
pub fn card_tilt(field: MagneticField) -> Result<f64, OutOfRange> {
    let level = Controls::level(100.0 * KNOT);
    let situation = Situation {
        field,
        iron: AircraftIron::NONE,
        float: FloatSettings::default(),
        air: RoughAir::Still,
    };
    let north = Aircraft::free(MagneticHeading::from_radians(0.0), &level);
    let tilt = Simulation::new(situation, north, level)?.reading().tilt;
    Ok(if field.vertical() < 0.0 { -tilt } else { tilt })
}

fn latitudes() -> impl Iterator<Item = f64> {
    (0..=PARALLELS).map(|i| PI * (f64::from(i) / f64::from(PARALLELS) - 0.5))
}

#[cfg(test)]
mod tests {
    use super::*;
    use earth::FieldSource;

    #[test]
    fn a_dipole_goes_from_latitude_to_dip_and_back() {
        // physics.md: 10 → 19.43, 45 → 63.43, 70 → 79.69; two decimals are given.
        for (latitude, dip) in [
            (10.0_f64, 19.43_f64),
            (45.0, 63.43),
            (70.0, 79.69),
            (-30.0, -49.11),
        ] {
            let back = latitude_by_dipole(dip.to_radians()).to_degrees();
            assert!((back - latitude).abs() < 0.01, "{dip}: {back}");
        }
        for (latitude, dip) in dipole_curve() {
            assert!((latitude_by_dipole(dip) - latitude).abs() < 1e-12);
        }
    }

    #[test]
    fn a_meridian_is_the_model_at_its_places() {
        let date = Date::parse("2026-05-01").unwrap();
        let line = along_meridian(0.3, date).unwrap();
        assert_eq!(line.len(), 91);
        let place = Place::new(line[70].0, 0.3, 0.0).unwrap();
        assert_eq!(PlaceField::at(place, date).unwrap().dip(), line[70].1);
        assert!(along_meridian(0.3, Date::parse("2031-05-01").unwrap()).is_err());
    }

    #[test]
    fn the_card_tilts_to_the_pull_of_the_vertical_field() {
        // The float's own setting: 3° where the vertical intensity is 40 µT (a card held level by
        // its pendulosity alone; the magnets in the horizontal field right it a little more).
        let field = MagneticField::new(20e-6, 40e-6, 0.0).unwrap();
        let tilt = card_tilt(field).unwrap().to_degrees();
        assert!((tilt - 3.0).abs() < 0.2, "{tilt}");
        let south = FieldSource::Latitude { latitude: -0.9 }.field().unwrap();
        let north = FieldSource::Latitude { latitude: 0.9 }.field().unwrap();
        let (south, north) = (card_tilt(south).unwrap(), card_tilt(north).unwrap());
        assert!(south < -0.02 && (south + north).abs() < 1e-9);
    }
}
