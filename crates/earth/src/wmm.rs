//! The World Magnetic Model 2025, of NOAA's National Centers for Environmental Information and
//! the British Geological Survey: the main field of the Earth's core to degree 12, with its yearly
//! change.
//!
//! The coefficients and the sums are those of the `kinavis-wmm` package; it meets all of NOAA's
//! hundred test values to 0.001 nT. How far the model itself can be trusted is said by
//! [`Uncertainty`].

use crate::date::Date;
use crate::error::Error;
use crate::place::Place;
use compass::angle::half_turn;
use compass::field::{MagneticField, Zone};
use compass::maths;
use compass::unit::NANOTESLA;
use kinavis_kernel::{Distance, GeodeticPoint, Height, KernelError, Position};
use kinavis_wmm::{DecimalYear, Wmm};
use std::f64::consts::FRAC_PI_2;

/// Decimal year from which the model holds.
pub const VALID_FROM: f64 = 2025.0;
/// Decimal year from which the model holds no more.
pub const VALID_UNTIL: f64 = 2030.0;

/// The field at a place and a date.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlaceField {
    field: MagneticField,
    north: f64,
    east: f64,
}

impl PlaceField {
    /// The field that the model gives.
    ///
    /// At the poles themselves north is that of the meridian asked for, so that the variation
    /// depends on the longitude.
    ///
    /// # Errors
    /// [`Error::OutsideModel`] for a date before [`VALID_FROM`] or from [`VALID_UNTIL`] on: there
    /// is no extrapolation.
    pub fn at(place: Place, date: Date) -> Result<Self, Error> {
        if !(VALID_FROM..VALID_UNTIL).contains(&date.decimal_year()) {
            return Err(Error::OutsideModel { date });
        }
        let [north, east, down] = components(place, date).map_err(|refusal| Error::Model {
            reason: refusal.to_string(),
        })?;
        let horizontal = (north * north + east * east).sqrt();
        Ok(Self {
            field: MagneticField::new(horizontal, down, maths::atan2(east, north))?,
            north,
            east,
        })
    }

    /// Horizontal and vertical intensity and variation, for the float.
    pub fn field(self) -> MagneticField {
        self.field
    }

    /// Component X in tesla, positive to true north.
    pub fn north(self) -> f64 {
        self.north
    }

    /// Component Y in tesla, positive to the east.
    pub fn east(self) -> f64 {
        self.east
    }

    /// Component Z in tesla, positive down.
    pub fn down(self) -> f64 {
        self.field.vertical()
    }

    /// Horizontal intensity H = √(X² + Y²) in tesla.
    pub fn horizontal(self) -> f64 {
        self.field.horizontal()
    }

    /// Total intensity F in tesla.
    pub fn total(self) -> f64 {
        self.field.total()
    }

    /// Dip I in radians, positive down.
    pub fn dip(self) -> f64 {
        self.field.dip()
    }

    /// Variation D in radians, positive east.
    pub fn variation(self) -> f64 {
        self.field.variation()
    }

    /// How far a compass can be relied on here.
    pub fn zone(self) -> Zone {
        self.field.zone()
    }

    /// How far the model can be trusted here.
    pub fn uncertainty(self) -> Uncertainty {
        Uncertainty::of(self.field.horizontal())
    }
}

/// One standard deviation of what is measured about what WMM2025 says, rocks and ordinary
/// magnetic disturbance included.
///
/// Source: the error model of WMM2025 (Chulliat et al., *The US/UK World Magnetic Model for
/// 2025–2030: Technical Report*, NOAA/NCEI and BGS, 2024, doi:10.25923/prbc-s316, section 3.4).
/// All are global means but the variation's, which grows where the horizontal field is weak.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Uncertainty {
    /// Of the variation, in radians: √(0.26² + (5417 nT / H)²)°, at most 180°.
    pub variation: f64,
    /// Of the dip, in radians: 0.20°.
    pub dip: f64,
    /// Of the horizontal intensity H, in tesla: 133 nT.
    pub horizontal: f64,
    /// Of the component north X, in tesla: 137 nT.
    pub north: f64,
    /// Of the component east Y, in tesla: 89 nT.
    pub east: f64,
    /// Of the component down Z, in tesla: 141 nT.
    pub down: f64,
    /// Of the total intensity F, in tesla: 138 nT.
    pub total: f64,
}

impl Uncertainty {
    fn of(horizontal: f64) -> Self {
        let at_hand = 5417.0 * NANOTESLA / horizontal;
        // Where there is no horizontal field the quotient is infinite, and the variation anything.
        let variation = (0.26 * 0.26 + at_hand * at_hand).sqrt().min(180.0);
        Self {
            variation: variation.to_radians(),
            dip: 0.20_f64.to_radians(),
            horizontal: 133.0 * NANOTESLA,
            north: 137.0 * NANOTESLA,
            east: 89.0 * NANOTESLA,
            down: 141.0 * NANOTESLA,
            total: 138.0 * NANOTESLA,
        }
    }
}

/// The place at sea level where the field stands upright on a day: the dip pole of the north, where
/// it points down, or of the south, where it points up.
///
/// # Errors
/// A date outside the model's life.
pub fn dip_pole(date: Date, north: bool) -> Result<Place, Error> {
    let horizontal = |place: Place| PlaceField::at(place, date).map(|field| field.horizontal());
    // Both lie well within forty degrees of a pole, so the search begins there, and halves its
    // stride wherever no neighbour has less horizontal field.
    let side = if north { 1.0 } else { -1.0 };
    let mut best = Place::new(side * 75_f64.to_radians(), 135_f64.to_radians(), 0.0)?;
    let mut least = horizontal(best)?;
    let mut stride = 0.2_f64;
    while stride > 1e-6 {
        let mut found = None;
        let across = stride / maths::cos(best.latitude()).max(0.01);
        for (north, east) in [(stride, 0.0), (-stride, 0.0), (0.0, across), (0.0, -across)] {
            let latitude = (best.latitude() + north).clamp(-FRAC_PI_2, FRAC_PI_2);
            let place = Place::new(latitude, half_turn(best.longitude() + east), 0.0)?;
            let here = horizontal(place)?;
            if here < least {
                (found, least) = (Some(place), here);
            }
        }
        match found {
            Some(place) => best = place,
            None => stride /= 2.0,
        }
    }
    Ok(best)
}

/// North, east and down in tesla.
fn components(place: Place, date: Date) -> Result<[f64; 3], KernelError> {
    // Ninety degrees may come back from radians a hair above.
    let latitude = place.latitude().to_degrees().clamp(-90.0, 90.0);
    let point = GeodeticPoint::new(
        Position::from_degrees(latitude, place.longitude().to_degrees())?,
        Height::above_ellipsoid(Distance::from_metres(place.altitude())?),
    );
    let field = Wmm::WMM2025.field_in(point, DecimalYear::new(date.decimal_year())?)?;
    Ok([
        field.north_nanotesla() * NANOTESLA,
        field.east_nanotesla() * NANOTESLA,
        field.down_nanotesla() * NANOTESLA,
    ])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(latitude: f64, longitude: f64, year: f64) -> Result<PlaceField, Error> {
        let place = Place::new(latitude.to_radians(), longitude.to_radians(), 0.0)?;
        PlaceField::at(place, Date::from_decimal_year(year)?)
    }

    #[test]
    fn holds_for_its_five_years_and_not_a_day_longer() {
        assert!(at(50.0, 0.0, 2025.0).is_ok());
        assert!(at(50.0, 0.0, 2029.999).is_ok());
        for (year, named) in [(2024.999, "2024-12-31"), (2030.0, "2030-01-01")] {
            assert_eq!(
                at(50.0, 0.0, year).unwrap_err().to_string(),
                format!(
                    "date must be from 2025-01-01 to 2029-12-31, the life of WMM2025, not {named}"
                )
            );
        }
    }

    #[test]
    fn at_the_dip_poles_the_field_stands_upright() {
        // NOAA/NCEI, WMM2025's dip poles at 2025.0 (from memory): 85.762° N 139.298° E and
        // 63.851° S 135.078° E. They are given to a thousandth.
        let date = Date::from_decimal_year(2025.0).unwrap();
        for (north, latitude, longitude) in [(true, 85.762, 139.298), (false, -63.851, 135.078)] {
            let pole = dip_pole(date, north).unwrap();
            let field = PlaceField::at(pole, date).unwrap();
            assert!(
                field.horizontal() < 1.0 * NANOTESLA,
                "{}",
                field.horizontal()
            );
            assert!(
                (pole.latitude().to_degrees() - latitude).abs() < 0.01,
                "{pole:?}"
            );
            assert!(
                (pole.longitude().to_degrees() - longitude).abs() < 0.05,
                "{pole:?}"
            );
        }
    }

    #[test]
    fn at_a_pole_the_meridian_turns_and_the_field_stays() {
        for (pole, sense) in [(90.0, 1.0), (-90.0, -1.0)] {
            let greenwich = at(pole, 0.0, 2026.0).unwrap();
            let east = at(pole, 40.0, 2026.0).unwrap();
            assert!((greenwich.horizontal() - east.horizontal()).abs() < 1e-6 * NANOTESLA);
            let turned = (east.variation() - greenwich.variation()).to_degrees();
            assert!((turned - sense * 40.0).abs() < 1e-9, "{turned}");
        }
    }

    #[test]
    fn without_horizontal_field_the_variation_is_anything() {
        assert_eq!(
            Uncertainty::of(0.0).variation.to_degrees().round() as i32,
            180
        );
    }
}
