//! A task as data: what is asked, what is right, what is flown, and the explanation.
//!
//! These are for people and for files, so angles are degrees, speeds knots and times seconds, in
//! names that say so.

use super::class::Class;
use super::gyro::Settings;
use super::identity::TaskId;
use compass::heading::MagneticHeading;
use compass::heading_indicator::HeadingIndicator;
use flights::{Scenario, ScenarioError};
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// A task, ready to be put.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Task {
    /// What it was generated from.
    #[serde(flatten)]
    pub id: TaskId,
    /// The latitude that it is set at, north positive.
    pub at_latitude_deg: f64,
    /// What class of situation it belongs to, for practice at the right time.
    pub class: Class,
    /// What is asked.
    pub question: String,
    /// The answers to choose from, exactly one of them right; none for what is flown.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub choices: Vec<Choice>,
    /// What is marked; none for what is chosen.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub aim: Option<Aim>,
    /// The figures of a task on paper.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub paper: Option<Paper>,
    /// What is flown; none for a task on paper.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub flight: Option<Flight>,
    /// What is said after an answer. Of a flown task it says what an ideal flight would have
    /// done; [`mark`](super::mark::mark) adds what this one did.
    pub explanation: Explanation,
}

/// An answer to choose.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Choice {
    /// What it says.
    pub text: String,
    /// Whether it is right.
    pub right: bool,
    /// The mistake that leads to it, for the table of a class; empty for the right one. It is
    /// no part of what is put.
    #[serde(skip)]
    pub slip: String,
}

/// A flight, as a scenario file has it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Flight {
    /// The scenario file. Of a task that the pilot flies, only its start and its air count; it
    /// lasts as long as the pilot may take.
    pub scenario: Value,
    /// From when on it is to be watched, seconds.
    pub watch_from_s: f64,
    /// Until when, seconds.
    pub watch_to_s: f64,
    /// The moment that the question is about, seconds, where it is about one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub asked_at_s: Option<f64>,
}

impl Flight {
    /// The scenario, read.
    ///
    /// # Errors
    /// As of [`Scenario::from_json`].
    pub fn read(&self) -> Result<Scenario, ScenarioError> {
        Scenario::from_json(&self.scenario.to_string())
    }

    /// The same, and a question about one moment of it.
    pub(super) fn asked_at(self, time_s: f64) -> Self {
        Self {
            asked_at_s: Some(time_s),
            ..self
        }
    }
}

/// What is said after an answer, each in a sentence or two.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Explanation {
    /// What happened.
    pub happened: String,
    /// Why: from the torques about the card's axis.
    pub why: String,
    /// The rule of thumb for it, and how good it was here.
    pub rule: String,
}

/// What a flown task is marked against.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "marked", rename_all = "kebab-case")]
pub enum Aim {
    /// The heading after a turn by the compass.
    RollOut {
        /// The magnetic heading to come out on.
        target_deg: f64,
        /// The bank to turn with, right positive.
        bank_deg: f64,
        /// The compass reading at which to begin to roll out, by the rule of thumb.
        rule_deg: f64,
        /// The same by the other rule, 15° and half the latitude.
        half_rule_deg: f64,
        /// The same by the closed form.
        steady_deg: f64,
        /// The same by the simulation: it comes out on the target.
        simulated_deg: f64,
    },
    /// The heading after a turn by the clock.
    TimedTurn {
        /// The magnetic heading to come out on.
        target_deg: f64,
        /// The bank to turn with, right positive.
        bank_deg: f64,
        /// Seconds from the beginning of the roll-in to that of the roll-out, at 3° a second.
        rule_s: f64,
        /// The same by the simulation: it comes out on the target.
        simulated_s: f64,
        /// How far past the target, in the turn's direction, the same turn ends that is flown by
        /// the compass with its rule of thumb; none where the card never shows that reading.
        rule_compass_overshoot_deg: Option<f64>,
        /// The same by the compass as if it did not err.
        bare_compass_overshoot_deg: Option<f64>,
    },
    /// A heading held for a while.
    HoldHeading {
        /// The magnetic heading to hold.
        target_deg: f64,
        /// From when on it counts, seconds.
        from_s: f64,
        /// Until when, seconds.
        to_s: f64,
        /// Root mean square of the card's swing about the heading in level flight.
        swing_deg: f64,
    },
    /// A heading indicator over a flight that is flown for the pilot.
    SetGyro {
        /// What it shows too much at the start.
        error_at_start_deg: f64,
        /// Its own drift, degrees an hour; the Earth's rotation adds to it.
        drift_deg_h: f64,
        /// From when on its error counts, seconds: the end of the first good moment.
        from_s: f64,
        /// When the compass is good to set it by: from and to, seconds.
        good_s: Vec<[f64; 2]>,
        /// Root mean square of the error that is carried when it is set in the middle of each.
        ideal_deg: f64,
    },
}

/// The figures of a task on paper.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "sheet", rename_all = "kebab-case")]
pub enum Paper {
    /// One heading into another.
    Correction {
        /// From which north the heading is given: true, magnetic or compass.
        from: North,
        /// From which north it is asked for.
        to: North,
        /// The heading that is given.
        heading_deg: f64,
        /// Variation, east positive.
        variation_deg: f64,
        /// Compass heading and deviation (east positive) of each line of the card.
        card_deg: Vec<[f64; 2]>,
    },
    /// A coefficient out of a swing.
    Coefficient {
        /// Which: A, B, C or, at the hardest level, E.
        letter: char,
        /// Deviation (east positive) on north, east, south and west.
        deviations_deg: [f64; 4],
    },
}

/// A north that headings are measured from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum North {
    /// Geographic.
    True,
    /// Of the field.
    Magnetic,
    /// Of the card.
    Compass,
}

impl Task {
    /// The heading indicator as the flight starts on a heading; none where the task has none.
    pub fn indicator(&self, heading: MagneticHeading) -> Option<HeadingIndicator> {
        let settings = Settings::of(self.aim.as_ref()?, self.at_latitude_deg)?;
        settings.at_start(heading).ok()
    }

    /// Whether it asks something else.
    pub fn differs_from(&self, other: &Self) -> bool {
        self.question != other.question
            || self.flight != other.flight
            || self.paper != other.paper
            || self.choices != other.choices
    }
}
