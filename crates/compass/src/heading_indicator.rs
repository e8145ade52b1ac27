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

/// A heading indicator, as it was last set. Its drift is even between two changes of it, so
/// nothing has to be stepped. Gimbal error in steep banks is left out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeadingIndicator {
    /// Seconds from the start of the flight to the last setting.
    set_at: f64,
    /// Indication − magnetic heading just after it, radians.
    error_when_set: f64,
    /// Since when, in seconds from the start of the flight, it drifts as it does now.
    drifts_since: f64,
    /// What it had drifted by then since it was set, radians.
    drifted_before: f64,
    /// Change of the error by the Earth's rotation, rad/s.
    earth_drift: f64,
    /// Change of the error by the instrument's own drift, rad/s.
    mechanical_drift: f64,
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
            drifts_since: 0.0,
            drifted_before: 0.0,
            earth_drift: -EARTH_RATE * maths::sin(latitude),
            mechanical_drift: MECHANICAL_DRIFT.check(mechanical_drift)?,
        })
    }

    /// Turned so that at `time` seconds it shows what the compass shows, whatever that is worth.
    #[must_use]
    pub fn set_to(self, compass: CompassHeading, heading: MagneticHeading, time: f64) -> Self {
        Self {
            set_at: time,
            error_when_set: compass.error_from(heading),
            drifts_since: time,
            drifted_before: 0.0,
            ..self
        }
    }

    /// Drifting from `time` seconds on by another mechanical drift, rad/s; what it shows then is
    /// unchanged.
    ///
    /// # Errors
    /// A mechanical drift beyond [`MECHANICAL_DRIFT`].
    pub fn drifting(self, mechanical_drift: f64, time: f64) -> Result<Self, OutOfRange> {
        Ok(Self {
            drifts_since: time,
            drifted_before: self.drifted(time),
            mechanical_drift: MECHANICAL_DRIFT.check(mechanical_drift)?,
            ..self
        })
    }

    /// Seconds from the start of the flight to the last setting.
    pub fn set_at(&self) -> f64 {
        self.set_at
    }

    /// What it was set wrong by: indication − magnetic heading at the last setting, radians.
    pub fn error_when_set(&self) -> f64 {
        self.error_when_set
    }

    /// How fast the Earth's rotation changes the indication, rad/s.
    pub fn earth_drift(&self) -> f64 {
        self.earth_drift
    }

    /// How fast the instrument's own drift changes the indication, rad/s.
    pub fn mechanical_drift(&self) -> f64 {
        self.mechanical_drift
    }

    /// By how much the indication has drifted at `time` since the last setting, radians.
    pub fn drifted(&self, time: f64) -> f64 {
        let drift = self.earth_drift + self.mechanical_drift;
        self.drifted_before + drift * (time - self.drifts_since)
    }

    /// Its error at `time`: indication − magnetic heading, radians, not folded.
    pub fn error(&self, time: f64) -> f64 {
        self.error_when_set + self.drifted(time)
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

    #[test]
    fn another_drift_changes_what_comes_and_not_what_was() {
        let per_hour = Unit::DegreePerHour.in_si();
        let first = HeadingIndicator::agreeing(0.0, 6.0 * per_hour).unwrap();
        let then = first.drifting(-12.0 * per_hour, HOUR).unwrap();
        assert_eq!(then.error(HOUR), first.error(HOUR));
        assert!((then.drifted(2.0 * HOUR).to_degrees() + 6.0).abs() < 1e-9);
        assert!(first.drifting(61.0 * per_hour, HOUR).is_err());

        let heading = MagneticHeading::from_degrees(90.0);
        let set = then.set_to(heading.to_compass(0.1), heading, 2.0 * HOUR);
        assert_eq!(set.drifted(2.0 * HOUR), 0.0);
        assert!((set.error(2.0 * HOUR) - 0.1).abs() < 1e-12);
    }
}
