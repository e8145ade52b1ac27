//! The triangle of wind: from the track over ground to the heading that holds it, and back.
//!
//! Track and heading have types of their own, so that neither is taken for the other.
//!
//! Source: the wind triangle, FAA-H-8083-25B, ch. on navigation (chapter from memory).

use compass::angle::half_turn;
use compass::free_flight::AIRSPEED_COMMAND;
use compass::heading::TrueHeading;
use compass::maths;
use compass::range::{OutOfRange, Range};
use compass::unit::{KNOT, Unit};
use thiserror::Error;

/// Wind speed; chosen: up to the strongest jet streams that are met.
pub const WIND_SPEED: Range = Range::new("wind speed", Unit::Knot, 0.0, 200.0);

/// The way over ground, true north as 0, rad in [0, 2π): what is drawn on the chart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TrueTrack(TrueHeading);

impl TrueTrack {
    /// From radians, folded.
    pub fn from_radians(radians: f64) -> Self {
        Self(TrueHeading::from_radians(radians))
    }

    /// In radians.
    pub fn radians(self) -> f64 {
        self.0.radians()
    }

    /// In degrees.
    pub fn degrees(self) -> f64 {
        self.0.degrees()
    }

    /// In whole degrees, 1 to 360.
    pub fn whole_degrees(self) -> u16 {
        self.0.whole_degrees()
    }
}

/// A steady wind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wind {
    /// Where it blows from, rad from true north, as forecasts give it.
    from: f64,
    /// Its speed, m/s.
    speed: f64,
}

/// What wind, airspeed and one of track and heading come to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Triangle {
    /// Where the nose points.
    pub heading: TrueHeading,
    /// Where the aircraft goes.
    pub track: TrueTrack,
    /// Heading less track, rad, right positive: the wind correction angle. The drift is the same
    /// the other way.
    pub correction: f64,
    /// Speed over ground, m/s.
    pub ground_speed: f64,
}

/// Why there is no triangle.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum WindError {
    /// A speed is beyond its range.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// Not every track can be held.
    #[error("wind speed must be below the airspeed of {airspeed_kt} kt, not {wind_kt} kt")]
    TooStrong {
        /// The wind's speed in whole knots.
        wind_kt: f64,
        /// The airspeed in whole knots.
        airspeed_kt: f64,
    },
}

impl Wind {
    /// A wind from a true direction in radians, at a speed in m/s.
    ///
    /// # Errors
    /// A speed beyond [`WIND_SPEED`].
    pub fn new(from: f64, speed: f64) -> Result<Self, OutOfRange> {
        let speed = WIND_SPEED.check(speed)?;
        Ok(Self { from, speed })
    }

    /// What heading holds a track at an airspeed in m/s.
    ///
    /// # Errors
    /// An airspeed that cannot be flown, or that is not above the wind's.
    pub fn holding(&self, track: TrueTrack, airspeed: f64) -> Result<Triangle, WindError> {
        let airspeed = self.below(airspeed)?;
        let (across, against) = maths::sin_cos(self.from - track.radians());
        let correction = maths::asin(self.speed / airspeed * across);
        Ok(Triangle {
            heading: TrueHeading::from_radians(track.radians() + correction),
            track,
            correction,
            ground_speed: airspeed * maths::cos(correction) - self.speed * against,
        })
    }

    /// What track comes of a heading at an airspeed in m/s.
    ///
    /// # Errors
    /// As [`Wind::holding`].
    pub fn blowing(&self, heading: TrueHeading, airspeed: f64) -> Result<Triangle, WindError> {
        let airspeed = self.below(airspeed)?;
        let (across, against) = maths::sin_cos(self.from - heading.radians());
        let (ahead, right) = (airspeed - self.speed * against, -self.speed * across);
        let drift = maths::atan2(right, ahead);
        Ok(Triangle {
            heading,
            track: TrueTrack::from_radians(heading.radians() + drift),
            correction: half_turn(-drift),
            ground_speed: (ahead * ahead + right * right).sqrt(),
        })
    }

    fn below(&self, airspeed: f64) -> Result<f64, WindError> {
        let airspeed = AIRSPEED_COMMAND.check(airspeed)?;
        if self.speed < airspeed {
            return Ok(airspeed);
        }
        let [wind_kt, airspeed_kt] = [self.speed, airspeed].map(|it| (it / KNOT).round());
        Err(WindError::TooStrong {
            wind_kt,
            airspeed_kt,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn wind(from: f64, knots: f64) -> Wind {
        Wind::new(from.to_radians(), knots * KNOT).unwrap()
    }

    fn track(degrees: f64) -> TrueTrack {
        TrueTrack::from_radians(degrees.to_radians())
    }

    #[test]
    fn triangles_drawn_by_hand() {
        // A 3–4–5 triangle: 60 kt across from the right takes asin 0.6 = 36.9° and leaves 80 kt.
        let across = wind(90.0, 60.0).holding(track(0.0), 100.0 * KNOT).unwrap();
        assert!((across.correction.to_degrees() - 36.87).abs() < 0.01);
        assert!((across.ground_speed / KNOT - 80.0).abs() < 1e-9);
        assert!((across.heading.degrees() - 36.87).abs() < 0.01);
        // Ahead and behind only the speed over ground changes.
        for (from, left) in [(210.0, 80.0), (30.0, 120.0)] {
            let along = wind(from, 20.0)
                .holding(track(210.0), 100.0 * KNOT)
                .unwrap();
            assert!(along.correction.abs() < 1e-9);
            assert!((along.ground_speed / KNOT - left).abs() < 1e-9);
        }
        // North at 100 kt, 100 kt less a little from the west: blown to the right of the nose.
        let heading = TrueHeading::from_degrees(0.0);
        let blown = wind(270.0, 99.0).blowing(heading, 100.0 * KNOT).unwrap();
        assert!((blown.track.degrees() - 44.71).abs() < 0.01);
        assert!(blown.correction < 0.0);
    }

    #[test]
    fn a_wind_that_no_track_stands_against_is_refused() {
        let refused = wind(90.0, 100.0).holding(track(5.0), 100.0 * KNOT);
        assert_eq!(
            refused.unwrap_err().to_string(),
            "wind speed must be below the airspeed of 100 kt, not 100 kt"
        );
        let refused = Wind::new(0.0, f64::NAN).unwrap_err().to_string();
        assert!(refused.starts_with("wind speed"), "{refused}");
    }

    proptest! {
        #[test]
        fn the_heading_that_holds_a_track_is_blown_onto_it(
            from in 0.0..360.0_f64,
            strength in 0.0..0.99_f64,
            over in 0.0..360.0_f64,
            knots in 60.0..200.0_f64,
        ) {
            let wind = wind(from, strength * knots);
            let held = wind.holding(track(over), knots * KNOT).unwrap();
            let blown = wind.blowing(held.heading, knots * KNOT).unwrap();
            let off = half_turn(blown.track.radians() - held.track.radians());
            prop_assert!(off.abs() < 1e-9);
            prop_assert!((blown.ground_speed - held.ground_speed).abs() < 1e-6);
            prop_assert!((blown.correction - held.correction).abs() < 1e-9);
        }
    }
}
