//! A flight as samples: what charts show and events are found in.

use compass::simulation::Moment;

/// What a chart needs of one moment; seconds, radians and m/s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// Seconds since the start.
    pub time: f64,
    /// Magnetic heading in [0, 2π).
    pub heading: f64,
    /// Compass reading in [0, 2π).
    pub reading: f64,
    /// Reading less heading in (−π, π].
    pub error: f64,
    /// Bank, right positive.
    pub bank: f64,
    /// Rate of turn, right positive.
    pub rate_of_turn: f64,
    /// Airspeed.
    pub airspeed: f64,
    /// Rate of change of airspeed, m/s².
    pub airspeed_rate: f64,
}

impl From<&Moment> for Sample {
    fn from(moment: &Moment) -> Self {
        let motion = &moment.motion;
        let compass = moment.reading.compass;
        Self {
            time: moment.time,
            heading: motion.heading.radians(),
            reading: compass.radians(),
            error: compass.error_from(motion.heading),
            bank: motion.bank,
            rate_of_turn: motion.rate_of_turn,
            airspeed: motion.airspeed,
            airspeed_rate: motion.airspeed_rate,
        }
    }
}
