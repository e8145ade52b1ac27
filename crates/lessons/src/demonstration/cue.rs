//! What happens at a moment of a demonstration.

use serde::{Deserialize, Serialize};

/// Something that happens at a moment.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct Cue {
    /// Seconds from the start of the flight, to its end at most.
    pub at_s: f64,
    /// What happens.
    #[serde(rename = "do")]
    pub act: Act,
}

/// What a cue does.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Act {
    /// A chapter begins, called so.
    Chapter(String),
    /// A caption from now on, until the next; an empty one takes it away.
    Caption(String),
    /// The flight plays so fast from now on.
    Speed(Speed),
    /// The flight stands still until the instructor goes on.
    Freeze,
    /// A part of the screen is pointed at until the next highlight.
    Highlight(Part),
    /// The flight stands still, and the class is asked.
    Ask(Question),
    /// Something is covered, or all is seen again.
    Cover(Cover),
    /// The question asked last is answered, and all is seen again.
    Reveal,
    /// From now on the same flight is shown in a second situation beside the first.
    Compare(Compare),
    /// The heading indicator is set to what the compass reads.
    SetIndicator,
}

/// How fast a flight plays, of real time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Speed {
    /// An eighth.
    Eighth,
    /// A quarter.
    Quarter,
    /// Half.
    Half,
    /// Real time.
    Real,
    /// Twice.
    Double,
    /// Four times.
    Fourfold,
    /// Eight times.
    Eightfold,
}

impl Speed {
    /// Every speed, from slow to fast.
    pub const ALL: [Self; 7] = [
        Self::Eighth,
        Self::Quarter,
        Self::Half,
        Self::Real,
        Self::Double,
        Self::Fourfold,
        Self::Eightfold,
    ];

    /// Seconds of flight in a second.
    pub fn factor(self) -> f64 {
        match self {
            Self::Eighth => 0.125,
            Self::Quarter => 0.25,
            Self::Half => 0.5,
            Self::Real => 1.0,
            Self::Double => 2.0,
            Self::Fourfold => 4.0,
            Self::Eightfold => 8.0,
        }
    }
}

/// A part of the screen that can be pointed at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// Nothing.
    Nothing,
    /// The card and the compass reading.
    Compass,
    /// The real heading.
    Heading,
    /// What stands beside the card.
    Beside,
    /// The reasons.
    Reasons,
    /// The chart.
    Chart,
}

/// What is hidden from the class.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Cover {
    /// Nothing.
    Nothing,
    /// What the compass says.
    Compass,
    /// The real heading.
    Heading,
}

/// The second situation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Compare {
    /// None: one is shown alone.
    Alone,
    /// The same latitude in the other hemisphere.
    OtherHemisphere,
    /// A latitude in whole degrees, north positive, −90 to 90.
    LatitudeDeg(i8),
    /// The horizontal field alone.
    NoVerticalField,
    /// A liquid that never drags the card round.
    NoSwirl,
    /// With iron if there is none, without if there is.
    OtherIron,
}

/// A question to the class.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct Question {
    /// The question.
    pub question: String,
    /// What can be answered.
    pub answer: Answer,
}

/// What can be answered, and what is right.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Answer {
    /// The ways that a figure can come out; which is right is measured on the flight.
    Figure(String),
    /// Choices of the instructor's own.
    Typed {
        /// Two to six of them.
        choices: Vec<String>,
        /// Which is right, from 0.
        right: usize,
    },
}
