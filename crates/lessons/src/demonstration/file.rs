//! Reading and writing a demonstration's file, and everything that can be wrong with one.

use super::text::{Piece, pieces};
use super::{Act, Answer, Compare, Demonstration, Figure};
use crate::drill::record::RecordError;
use flights::{Scenario, ScenarioError, read_json};
use thiserror::Error;

/// The version of the file's shape.
pub const VERSION: u32 = 1;
/// The longest file, in bytes; chosen: a recorded flight of an hour is shorter.
pub const LONGEST_FILE: usize = 16 * 1024 * 1024;
/// The longest title or name, in characters; chosen, for one line on a phone or two.
pub const LONGEST_TITLE: usize = 100;
/// The longest text, in characters; chosen: a minute's reading.
pub const LONGEST_TEXT: usize = 1000;
/// The most cues, and the most claims; chosen.
pub const MOST_CUES: usize = 200;
/// The most figures; chosen.
pub const MOST_FIGURES: usize = 60;
/// The most speaking notes; chosen, for a page.
pub const MOST_NOTES: usize = 40;

/// What is wrong with a demonstration: where in the file, and a sentence.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{}{reason}", if path.is_empty() { String::new() } else { format!("{path}: ") })]
pub struct DemonstrationError {
    /// The field, such as `cues[1].at_s`; empty for the file as a whole.
    pub path: String,
    /// What is wrong with it, with the value and what it may be.
    pub reason: String,
}

impl From<RecordError> for DemonstrationError {
    fn from(error: RecordError) -> Self {
        let RecordError { path, reason } = error;
        Self { path, reason }
    }
}

impl From<ScenarioError> for DemonstrationError {
    fn from(error: ScenarioError) -> Self {
        let ScenarioError { path, reason } = error;
        Self { path, reason }
    }
}

fn wrong(path: impl Into<String>, reason: impl Into<String>) -> DemonstrationError {
    DemonstrationError {
        path: path.into(),
        reason: reason.into(),
    }
}

impl Demonstration {
    /// Reads a demonstration and checks that it can be played.
    ///
    /// # Errors
    /// Text that is not JSON, a field that is unknown, missing or beyond its range, a version
    /// that is not [`VERSION`]: each in one sentence that names the field.
    pub fn from_json(json: &str) -> Result<Self, DemonstrationError> {
        if json.len() > LONGEST_FILE {
            let length = json.len();
            let reason = format!("the file may have {LONGEST_FILE} bytes, not {length}");
            return Err(wrong("", reason));
        }
        let demonstration: Self = read_json(json)?;
        demonstration.check_shape()?;
        Ok(demonstration)
    }

    /// The demonstration as its file's text.
    pub fn to_json(&self) -> String {
        // Numbers and names alone: there is nothing that cannot be written.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }

    /// Whether it can be played: every field within its range and of one piece with the others.
    ///
    /// # Errors
    /// The first thing that is wrong, in one sentence that names the field.
    pub fn check_shape(&self) -> Result<(), DemonstrationError> {
        self.faults().into_iter().next().map_or(Ok(()), Err)
    }

    /// Everything that keeps it from being played, in the order in which it is looked for; nothing
    /// if it can be played.
    pub fn faults(&self) -> Vec<DemonstrationError> {
        let mut faults = Vec::new();
        if self.demonstration != VERSION {
            let reason = format!(
                "this file is of version {}, and only version {VERSION} can be read here",
                self.demonstration
            );
            faults.push(wrong("demonstration", reason));
        }
        let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        let length = self.name.chars().count();
        if length == 0 || length > LONGEST_TITLE || !self.name.chars().all(plain) {
            let reason = format!(
                "a name has 1 to {LONGEST_TITLE} lower-case letters, figures and hyphens, not {:?}",
                self.name
            );
            faults.push(wrong("name", reason));
        }
        let length = self.title.trim().chars().count();
        if length == 0 || length > LONGEST_TITLE {
            let reason = format!("a title has 1 to {LONGEST_TITLE} characters, not {length}");
            faults.push(wrong("title", reason));
        }
        for (path, text) in [("aircraft", &self.aircraft), ("place", &self.place)] {
            let length = text.chars().count();
            if length > LONGEST_TITLE {
                let reason = format!("a name has at most {LONGEST_TITLE} characters, not {length}");
                faults.push(wrong(path, reason));
            }
        }
        for (path, count, most) in [
            ("cues", self.cues.len(), MOST_CUES),
            ("figures", self.figures.len(), MOST_FIGURES),
            ("notes", self.notes.len(), MOST_NOTES),
            ("claims", self.claims.len(), MOST_CUES),
        ] {
            if count > most {
                faults.push(wrong(path, format!("there may be {most}, not {count}")));
            }
        }
        match Scenario::from_file(&self.scenario) {
            Ok(scenario) => self.check_times(scenario.duration(), &mut faults),
            Err(error) => {
                let dot = if error.path.is_empty() { "" } else { "." };
                faults.push(wrong(format!("scenario{dot}{}", error.path), error.reason));
            }
        }
        self.check_texts(&mut faults);
        self.check_names(&mut faults);
        faults
    }

    fn check_times(&self, duration: f64, faults: &mut Vec<DemonstrationError>) {
        let mut within = |path: String, time: f64| {
            if !(0.0..=duration).contains(&time) {
                let reason = format!(
                    "the time must be from 0 to {duration} s, the flight's end, not {time}"
                );
                faults.push(wrong(path, reason));
            }
        };
        within("from_s".to_owned(), self.from_s);
        within("to_s".to_owned(), self.to_s.unwrap_or(duration));
        for (index, cue) in self.cues.iter().enumerate() {
            within(format!("cues[{index}].at_s"), cue.at_s);
        }
        for (name, figure) in &self.figures {
            for time in figure.times() {
                within(format!("figures.{name}"), time);
            }
        }
        if self.to_s.is_some_and(|to| to <= self.from_s) {
            let (from, to) = (self.from_s, self.to_s.unwrap_or_default());
            let reason = format!("the end must be after the start at {from} s, not at {to} s");
            faults.push(wrong("to_s", reason));
        }
        let mut last = 0.0;
        for (index, cue) in self.cues.iter().enumerate() {
            if cue.at_s < last {
                let reason = format!(
                    "cues stand in order of time, so it must be {last} s or later, not {} s",
                    cue.at_s
                );
                faults.push(wrong(format!("cues[{index}].at_s"), reason));
            }
            last = cue.at_s;
        }
        for (name, figure) in &self.figures {
            if !figure.times().is_sorted() {
                let reason = "the first of two times must not be after the second";
                faults.push(wrong(format!("figures.{name}"), reason));
            }
            if let Figure::Beside(beside) = figure {
                let path = format!("figures.{name}.beside");
                check_compare(&path, beside.situation, faults);
                if matches!(*beside.measure, Figure::Beside(_)) {
                    let reason = "what is measured beside must not be beside once more";
                    faults.push(wrong(format!("{path}.measure"), reason));
                }
            }
        }
    }

    fn check_texts(&self, faults: &mut Vec<DemonstrationError>) {
        for (path, text) in self.texts() {
            let length = text.chars().count();
            if length > LONGEST_TEXT {
                let reason = format!("a text has at most {LONGEST_TEXT} characters, not {length}");
                faults.push(wrong(path.clone(), reason));
            }
            for piece in pieces(text) {
                if let Piece::Figure { name, .. } = piece {
                    self.check_figure(path.clone(), name, faults);
                }
            }
        }
    }

    fn check_names(&self, faults: &mut Vec<DemonstrationError>) {
        if let Some(name) = &self.headline {
            self.check_figure("headline".to_owned(), name, faults);
        }
        for (index, claim) in self.claims.iter().enumerate() {
            self.check_figure(format!("claims[{index}].figure"), &claim.figure, faults);
        }
        for (index, note) in self.notes.iter().enumerate() {
            if !(0.5..=60.0).contains(&note.minutes) {
                let reason = format!("minutes must be from 0.5 to 60, not {}", note.minutes);
                faults.push(wrong(format!("notes[{index}].minutes"), reason));
            }
        }
        for (index, cue) in self.cues.iter().enumerate() {
            let path = format!("cues[{index}].do");
            match &cue.act {
                Act::Ask(question) => match &question.answer {
                    Answer::Figure(name) => {
                        self.check_figure(format!("{path}.ask.answer"), name, faults);
                    }
                    Answer::Typed { choices, right } => {
                        let count = choices.len();
                        if !(2..=6).contains(&count) {
                            let reason = format!("there must be 2 to 6 choices, not {count}");
                            faults.push(wrong(format!("{path}.ask.answer.typed"), reason));
                        } else if *right >= count {
                            let reason = format!(
                                "the right choice must be from 0 to {}, not {right}",
                                count - 1
                            );
                            faults.push(wrong(format!("{path}.ask.answer.typed.right"), reason));
                        }
                    }
                },
                Act::Compare(compare) => {
                    check_compare(&format!("{path}.compare"), *compare, faults);
                }
                _ => {}
            }
        }
    }

    fn check_figure(&self, path: String, name: &str, faults: &mut Vec<DemonstrationError>) {
        if self.figures.contains_key(name) {
            return;
        }
        let known: Vec<&str> = self.figures.keys().map(String::as_str).collect();
        let known = if known.is_empty() {
            "there are none".to_owned()
        } else {
            format!("there are: {}", known.join(", "))
        };
        let reason = format!("{name:?} is none of the figures ({known})");
        faults.push(wrong(path, reason));
    }
}

fn check_compare(path: &str, compare: Compare, faults: &mut Vec<DemonstrationError>) {
    if let Compare::LatitudeDeg(degrees) = compare
        && !(-90..=90).contains(&degrees)
    {
        let reason = format!("latitude must be from -90 to 90 degrees, not {degrees}");
        faults.push(wrong(format!("{path}.latitude_deg"), reason));
    }
}
