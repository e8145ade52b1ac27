//! A flight as rows at even times.

use crate::scenario::{Scenario, ScenarioError};
use compass::gust::GustNumbers;
use compass::range::Range;
use compass::simulation::{Moment, STEPS_PER_SECOND, Simulation};
use compass::unit::{KNOT, Unit};

/// Interval between two rows that can be asked for; the least is chosen.
pub const INTERVAL: Range = Range::new("interval between rows", Unit::Second, 0.001, 86_400.0);

/// Closer than this, in seconds, two times are one; chosen far below the least interval.
const SAME: f64 = 1e-9;

/// One instant of a flight, in the units that people read.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize)]
pub struct Row {
    /// Seconds since the start.
    pub time_s: f64,
    /// Magnetic heading in [0, 360).
    pub heading_deg: f64,
    /// Compass reading in [0, 360).
    pub reading_deg: f64,
    /// Angle between card and bowl.
    pub tilt_deg: f64,
    /// Bank, right positive.
    pub bank_deg: f64,
    /// Reading less heading, in (−180, 180].
    pub error_deg: f64,
    /// Airspeed.
    pub airspeed_kt: f64,
    /// Rate of turn, right positive.
    pub rate_of_turn_deg_s: f64,
    /// Whether the card touches the bowl's stop.
    pub at_stop: bool,
}

impl Row {
    /// The row of one moment, its numbers rounded to six decimals.
    pub fn of(moment: &Moment) -> Self {
        let motion = &moment.motion;
        let reading = &moment.reading;
        Self {
            time_s: six_decimals(moment.time),
            heading_deg: heading_to_six_decimals(motion.heading.degrees()),
            reading_deg: heading_to_six_decimals(reading.compass.degrees()),
            tilt_deg: six_decimals(reading.tilt.to_degrees()),
            bank_deg: six_decimals(motion.bank.to_degrees()),
            error_deg: six_decimals(reading.compass.error_from(motion.heading).to_degrees()),
            airspeed_kt: six_decimals(motion.airspeed / KNOT),
            rate_of_turn_deg_s: six_decimals(motion.rate_of_turn.to_degrees()),
            at_stop: reading.at_stop,
        }
    }
}

/// A number rounded to six decimals, without a negative nought.
pub fn six_decimals(value: f64) -> f64 {
    // Adding nought turns −0 into 0.
    (value * 1e6).round() / 1e6 + 0.0
}

/// A heading in degrees rounded to six decimals and kept within [0, 360).
pub fn heading_to_six_decimals(degrees: f64) -> f64 {
    let degrees = six_decimals(degrees);
    if degrees < 360.0 { degrees } else { 0.0 }
}

impl Scenario {
    /// The flight as rows from time 0 to its end, both included, every `every` seconds.
    ///
    /// # Errors
    /// An interval beyond [`INTERVAL`].
    pub fn rows(&self, every: f64) -> Result<impl Iterator<Item = Row> + use<>, ScenarioError> {
        let every = INTERVAL
            .accept(every)
            .map_err(|error| ScenarioError::at("", error))?;
        let mut simulation = self.simulation()?;
        let scenario = self.clone();
        let (air, end) = (self.air(), self.duration());
        let mut count = 0_u64;
        let mut ended = false;
        Ok(std::iter::from_fn(move || {
            if ended {
                return None;
            }
            let due = count as f64 * every;
            let time = if due >= end - SAME { end } else { due };
            ended = time == end;
            count += 1;
            let step = ((time + SAME) * STEPS_PER_SECOND as f64) as u64;
            while simulation.state().step < step {
                let now = simulation.state().step;
                simulation.step(&scenario.controls_at(now), air.at(now));
            }
            Some(Row::of(&moment_within_step(&simulation, time)))
        }))
    }
}

/// The moment at `time`, in seconds, which lies within the step that `simulation` stands at.
pub fn moment_within_step(simulation: &Simulation, time: f64) -> Moment {
    let past = time - simulation.time();
    if past > SAME {
        simulation.moment_after(past)
    } else {
        simulation.moment()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TURN: &str = r#"{"field": {"horizontal_nt": 20000, "vertical_nt": 40000},
        "start": {"heading_deg": 350, "speed_kt": 100},
        "legs": [{"seconds": 2, "bank_deg": 15}, {"seconds": 8.1}]}"#;

    fn rows(every: f64) -> Vec<Row> {
        let scenario = Scenario::from_json(TURN).unwrap();
        scenario.rows(every).unwrap().collect()
    }

    #[test]
    fn rows_run_from_nought_to_the_end_inclusive() {
        let times: Vec<f64> = rows(2.5).iter().map(|row| row.time_s).collect();
        assert_eq!(times, [0.0, 2.5, 5.0, 7.5, 10.0, 10.1]);
        assert_eq!(rows(10.1).len(), 2);
        assert_eq!(rows(86_400.0).len(), 2);
    }

    #[test]
    fn a_row_between_two_steps_lies_between_theirs() {
        let fine = rows(0.001);
        // 4.002 s is two fifths of the way from one step to the next.
        let (before, within, after) = (fine[4000], fine[4002], fine[4005]);
        assert_eq!(within.time_s, 4.002);
        for (a, b, c) in [
            (before.heading_deg, within.heading_deg, after.heading_deg),
            (before.reading_deg, within.reading_deg, after.reading_deg),
        ] {
            // A card that gathers way by 20° a second each second bows by 6e-5° in a step.
            assert!((b - (a + 0.4 * (c - a))).abs() < 6e-5, "{a} {b} {c}");
        }
    }

    #[test]
    fn no_time_after_a_step_is_the_step_itself() {
        let simulation = Scenario::from_json(TURN).unwrap().simulation().unwrap();
        assert_eq!(simulation.moment_after(0.0), simulation.moment());
    }

    #[test]
    fn a_heading_never_rounds_up_to_360() {
        assert_eq!(heading_to_six_decimals(359.999_999_9), 0.0);
    }

    #[test]
    fn an_interval_of_nought_is_refused() {
        let scenario = Scenario::from_json(TURN).unwrap();
        assert!(scenario.rows(0.0).is_err());
        assert!(scenario.rows(f64::NAN).is_err());
    }
}
