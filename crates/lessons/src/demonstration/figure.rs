//! What can be measured on a demonstration's flight.

use super::Compare;
use serde::{Deserialize, Serialize};

/// A heading that is passed.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct On {
    /// Magnetic heading in degrees, −360 to 360.
    pub heading_deg: f64,
    /// From when on it is looked for, in seconds from the start.
    #[serde(default)]
    pub after_s: f64,
}

/// Which memory aid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Aid {
    /// For turns.
    Turn,
    /// For speed changes.
    Speed,
}

/// Something measured on the same flight in a second situation.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct Beside {
    /// The second situation, as one that is shown beside the first.
    pub situation: Compare,
    /// What is measured there; not beside once more.
    pub measure: Box<Figure>,
}

/// Something measured on the flight. Times are seconds from the start; two of them are a stretch,
/// both ends included.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Figure {
    /// By how much the reading is behind the turn when the nose first passes a heading.
    LagOn(On),
    /// The same by the rule of thumb, for the turn as it is flown there.
    RuleOn(On),
    /// The reading at which to begin to roll out there by the rule of thumb: its lag or lead, and
    /// half the bank to stop in.
    RollOutOn(On),
    /// The same as the lag by the closed form, for the bank and the field there.
    ClosedFormOn(On),
    /// By how much the reading is behind the turn at a time.
    LagAt(f64),
    /// The greatest lag in a stretch.
    GreatestLag([f64; 2]),
    /// The greatest lead in a stretch.
    GreatestLead([f64; 2]),
    /// Reading less heading at a time.
    ErrorAt(f64),
    /// The greatest difference between reading and heading in a stretch, either way.
    GreatestError([f64; 2]),
    /// Reading less heading, averaged over a stretch.
    AverageError([f64; 2]),
    /// Between the least and the greatest of reading less heading in a stretch.
    Swing([f64; 2]),
    /// How far the reading is drawn towards north in a stretch, or away, at its greatest.
    TowardNorth([f64; 2]),
    /// How far the reading first runs against the turn in a stretch.
    FirstWay([f64; 2]),
    /// How far the heading is still short of a heading when the reading passes it.
    ShortOf(On),
    /// How far the reading travels in a stretch, in the way of the turn.
    ReadingTravel([f64; 2]),
    /// How far the nose travels in a stretch, in the way of the turn.
    HeadingTravel([f64; 2]),
    /// Whether the reading comes round with the nose in a stretch in which the nose makes a whole
    /// circle.
    Round([f64; 2]),
    /// From a time on, how long until the reading stays within 2° of where it is at the end.
    SettlesAfter(f64),
    /// The heading at a time.
    HeadingAt(f64),
    /// The reading at a time.
    ReadingAt(f64),
    /// The bank at a time, without its side.
    BankAt(f64),
    /// The rate of turn at a time, without its side.
    RateOfTurnAt(f64),
    /// The airspeed at a time.
    SpeedAt(f64),
    /// Heading indicator less heading at a time.
    IndicatorErrorAt(f64),
    /// The latitude, where the field has one.
    Latitude,
    /// The dip.
    Dip,
    /// The bank beyond which a card never comes round: 90° less the dip.
    BankWithoutRevolution,
    /// The memory aid for the hemisphere.
    Aid(Aid),
    /// Any of these in a second situation.
    Beside(Beside),
}

impl Figure {
    /// The times at which it is measured, for a check that they lie within the flight.
    pub(crate) fn times(&self) -> Vec<f64> {
        match self {
            Self::LagOn(on)
            | Self::RuleOn(on)
            | Self::RollOutOn(on)
            | Self::ClosedFormOn(on)
            | Self::ShortOf(on) => vec![on.after_s],
            Self::Beside(beside) => beside.measure.times(),
            Self::LagAt(at)
            | Self::ErrorAt(at)
            | Self::SettlesAfter(at)
            | Self::HeadingAt(at)
            | Self::ReadingAt(at)
            | Self::BankAt(at)
            | Self::RateOfTurnAt(at)
            | Self::SpeedAt(at)
            | Self::IndicatorErrorAt(at) => vec![*at],
            Self::GreatestLag(stretch)
            | Self::GreatestLead(stretch)
            | Self::GreatestError(stretch)
            | Self::AverageError(stretch)
            | Self::Swing(stretch)
            | Self::TowardNorth(stretch)
            | Self::FirstWay(stretch)
            | Self::ReadingTravel(stretch)
            | Self::Round(stretch)
            | Self::HeadingTravel(stretch) => stretch.to_vec(),
            Self::Latitude | Self::Dip | Self::BankWithoutRevolution | Self::Aid(_) => Vec::new(),
        }
    }
}
