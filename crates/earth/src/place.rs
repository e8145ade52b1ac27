//! Where the aircraft is.

use compass::angle::half_turn;
use compass::range::{OutOfRange, Range};
use compass::unit::Unit;

/// Geodetic latitude, north positive.
pub const LATITUDE: Range = Range::new("latitude", Unit::Degree, -90.0, 90.0);
/// Longitude, east positive. West may be given as negative or as more than 180°.
pub const LONGITUDE: Range = Range::new("longitude", Unit::Degree, -180.0, 360.0);
/// Altitude above the WGS 84 ellipsoid: what lies within 1 km below it to 850 km above it, where
/// the WMM2025 technical report says the model holds.
pub const ALTITUDE: Range = Range::new("altitude", Unit::Foot, -3280.0, 2_788_700.0);

/// A place on or above the Earth, on WGS 84.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    latitude: f64,
    longitude: f64,
    altitude: f64,
}

impl Place {
    /// From geodetic latitude (north positive) and longitude (east positive) in radians, and
    /// altitude above the ellipsoid in metres.
    ///
    /// # Errors
    /// A value beyond [`LATITUDE`], [`LONGITUDE`] or [`ALTITUDE`].
    pub fn new(latitude: f64, longitude: f64, altitude: f64) -> Result<Self, OutOfRange> {
        Ok(Self {
            latitude: LATITUDE.check(latitude)?,
            longitude: half_turn(LONGITUDE.check(longitude)?),
            altitude: ALTITUDE.check(altitude)?,
        })
    }

    /// Geodetic latitude in radians, north positive.
    pub fn latitude(self) -> f64 {
        self.latitude
    }

    /// Longitude in radians, east positive, folded into (−π, π].
    pub fn longitude(self) -> f64 {
        self.longitude
    }

    /// Altitude above the WGS 84 ellipsoid in metres.
    pub fn altitude(self) -> f64 {
        self.altitude
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::{FRAC_PI_2, PI};

    #[test]
    fn west_may_be_written_both_ways() {
        let west = Place::new(0.0, -FRAC_PI_2, 0.0).unwrap();
        let same = Place::new(0.0, 1.5 * PI, 0.0).unwrap();
        assert_eq!(west, same);
    }

    #[test]
    fn each_refusal_names_quantity_range_and_value() {
        let said = |latitude: f64, longitude: f64, altitude| {
            Place::new(latitude.to_radians(), longitude.to_radians(), altitude)
                .unwrap_err()
                .to_string()
        };
        assert_eq!(
            said(100.0, 0.0, 0.0),
            "latitude must be from -90° to 90°, not 100°"
        );
        assert_eq!(
            said(0.0, 400.0, 0.0),
            "longitude must be from -180° to 360°, not 400°"
        );
        assert_eq!(
            said(0.0, 0.0, f64::INFINITY),
            "altitude must be from -3280 ft to 2788700 ft, not inf ft"
        );
        assert!(said(f64::NAN, 0.0, 0.0).starts_with("latitude"));
    }
}
