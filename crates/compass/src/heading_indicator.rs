//! A heading indicator: a directional gyro that the pilot sets by the compass, and that drifts.

use crate::heading::{CompassHeading, Heading, MagneticHeading};
use crate::maths;
use crate::range::{OutOfRange, Range};
use crate::unit::Unit;

/// Mechanical drift that can be set, as the change of the indication; chosen.
pub const MECHANICAL_DRIFT: Range = Range::new("gyro drift", Unit::DegreePerHour, -60.0, 60.0);

/// The Earth's rate of rotation in rad/s: 15.04° an hour, one turn in a sidereal day.
pub const EARTH_RATE: f64 = 15.04 / 3600.0 * std::f64::consts::PI / 180.0;

/// What a heading indicator points to: the north it was last set to, drifted since.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gyro {}

/// A heading as the heading indicator shows it.
pub type GyroHeading = Heading<Gyro>;

/// A heading indicator, as it was last set. Between settings its error grows evenly, so nothing
/// has to be stepped. Gimbal error in steep banks is left out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeadingIndicator {
    /// Seconds from the start of the flight to the last setting.
    set_at: f64,
    /// Indication − magnetic heading just after it, radians.
    error_when_set: f64,
    /// Change of the error, rad/s.
    drift: f64,
}

impl HeadingIndicator {
    /// An indicator that agrees with the heading at the start, at `latitude` radians (north
    /// positive), with a mechanical drift in rad/s.
    ///
    /// By the Earth's rotation the indication falls in the northern hemisphere and grows in the
    /// southern, by Earth rate × sin latitude; drift by flying east or west is left out (common
    /// practice, no source).
    ///
    /// # Errors
    /// A mechanical drift beyond [`MECHANICAL_DRIFT`].
    pub fn agreeing(latitude: f64, mechanical_drift: f64) -> Result<Self, OutOfRange> {
        Ok(Self {
            set_at: 0.0,
            error_when_set: 0.0,
            drift: MECHANICAL_DRIFT.check(mechanical_drift)? - EARTH_RATE * maths::sin(latitude),
        })
    }

    /// Turned so that at `time` seconds it shows what the compass shows, whatever that is worth.
    #[must_use]
    pub fn set_to(self, compass: CompassHeading, heading: MagneticHeading, time: f64) -> Self {
        Self {
            set_at: time,
            error_when_set: compass.error_from(heading),
            ..self
        }
    }

    /// Its error at `time`: indication − magnetic heading, radians, not folded.
    pub fn error(&self, time: f64) -> f64 {
        self.error_when_set + self.drift * (time - self.set_at)
    }

    /// What it shows at `time`.
    pub fn indication(&self, heading: MagneticHeading, time: f64) -> GyroHeading {
        GyroHeading::from_radians(heading.radians() + self.error(time))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const HOUR: f64 = 3600.0;

    fn drift_in_an_hour(latitude_deg: f64) -> f64 {
        let gyro = HeadingIndicator::agreeing(latitude_deg.to_radians(), 0.0).unwrap();
        gyro.error(HOUR).to_degrees()
    }

    #[test]
    fn earth_rate_is_one_turn_in_a_sidereal_day() {
        // IERS: 86 164.0905 s; the contract's 15.04 is rounded to four figures.
        let exact = 360.0 / 86_164.090_5;
        assert!((EARTH_RATE.to_degrees() / exact - 1.0).abs() < 1e-4);
    }

    #[test]
    fn drifts_with_the_sine_of_latitude_and_the_other_way_in_the_south() {
        assert!((drift_in_an_hour(90.0) + 15.04).abs() < 1e-9);
        assert!((drift_in_an_hour(30.0) + 7.52).abs() < 1e-9);
        assert_eq!(drift_in_an_hour(0.0), 0.0);
        assert_eq!(drift_in_an_hour(-40.0), -drift_in_an_hour(40.0));
    }

    #[test]
    fn set_in_a_turn_it_takes_over_the_compass_error() {
        let heading = MagneticHeading::from_degrees(10.0);
        let lagging = CompassHeading::from_degrees(347.0);
        let gyro = HeadingIndicator::agreeing(0.0, 0.0)
            .unwrap()
            .set_to(lagging, heading, 100.0);
        assert!((gyro.indication(heading, 100.0).degrees() - 347.0).abs() < 1e-9);
        let later = MagneticHeading::from_degrees(90.0);
        assert!((gyro.indication(later, 500.0).degrees() - 67.0).abs() < 1e-9);
    }
}
