//! A demonstration: a flight, what is shown of it, and cues along its time.
//!
//! It is data, a JSON file of the project or of an instructor's own. No text of it states a
//! figure: texts name [`figures`](Demonstration::figures), which are measured on the flight when
//! it is flown, so that they are true at any latitude. What a demonstration promises is written
//! down as [`Claim`]s, which [`Flown::check`] proves on the flight.
//!
//! ```
//! use lessons::demonstration::{Demonstration, Flown};
//!
//! let demonstration = Demonstration::from_json(r#"{
//!     "demonstration": 1, "name": "onto-north", "title": "A right turn onto north",
//!     "scenario": {
//!         "field": {"latitude_deg": 45}, "start": {"heading_deg": 270, "speed_kt": 100},
//!         "legs": [{"seconds": 3}, {"seconds": 3, "bank_deg": 15}, {"seconds": 40}]
//!     },
//!     "figures": {"on_north": {"lag_on": {"heading_deg": 360}}},
//!     "headline": "on_north",
//!     "cues": [{"at_s": 2, "do": {"caption": "On north the compass {on_north}."}}],
//!     "claims": [{"figure": "on_north", "least": 10, "most": 60}]
//! }"#)?;
//! let flown = Flown::new(demonstration)?;
//! assert!(flown.check().is_empty());
//! let captions = flown.captions();
//! assert!(captions[0].text.starts_with("On north the compass lags by "));
//! # Ok::<(), lessons::demonstration::DemonstrationError>(())
//! ```

mod beside;
pub mod catalogue;
mod claim;
mod cue;
mod figure;
mod file;
mod flown;
mod measured;
mod standing;
mod text;
mod trace;

pub use beside::STRAY_IRON_NT;
pub use claim::{Claim, Unproved};
pub use cue::{Act, Answer, Compare, Cover, Cue, Part, Question, Speed};
pub use figure::{Aid, Beside, Figure, On};
pub use file::{
    DemonstrationError, LONGEST_FILE, LONGEST_TEXT, LONGEST_TITLE, MOST_CUES, MOST_FIGURES,
    MOST_NOTES, VERSION,
};
pub use flown::{Caption, Chapter, Flown, Posed};
pub use measured::Measured;
pub use standing::{Standing, passed_by, passed_on_arrival};

use flights::ScenarioFile;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What stands on the screen while a demonstration plays; the card and the headings always do.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum View {
    /// The rose of both headings beside the card.
    Rose,
    /// The track over ground beside the card.
    Track,
    /// The heading indicator beside the card.
    Indicator,
    /// Why the card does what it does.
    Reasons,
    /// The chart against time.
    Timeline,
    /// The error against heading.
    ErrorChart,
}

/// A speaking note: what to say, and for how long.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct Note {
    /// Minutes that it takes in class, 0.5 to 60.
    pub minutes: f64,
    /// What to say; names figures in braces.
    pub say: String,
}

/// A demonstration as its file has it. What [`check_shape`](Self::check_shape) accepts can be
/// played.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct Demonstration {
    /// The version of the file's shape: [`VERSION`].
    pub demonstration: u32,
    /// Lower-case letters, figures and hyphens: what it is called in links and commands.
    pub name: String,
    /// What it is called on the screen.
    pub title: String,
    /// What is flown, in a few words: an aircraft of our own invention.
    #[serde(default)]
    pub aircraft: String,
    /// Where it is flown, in a few words: a place of our own invention.
    #[serde(default)]
    pub place: String,
    /// The flight.
    pub scenario: ScenarioFile,
    /// From when on it plays, in seconds from the start of the flight, which is flown from there
    /// all the same. Cues before it are left out.
    #[serde(default)]
    pub from_s: f64,
    /// Until when it plays, likewise; to the flight's end if it is left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to_s: Option<f64>,
    /// What is shown.
    #[serde(default)]
    pub views: Vec<View>,
    /// What is measured on the flight, by name.
    #[serde(default)]
    pub figures: BTreeMap<String, Figure>,
    /// The name of the figure that says most, if there is one.
    #[serde(default)]
    pub headline: Option<String>,
    /// What to look for; names figures in braces, as all texts do.
    #[serde(default)]
    pub look_for: String,
    /// The rule of thumb, told after.
    #[serde(default)]
    pub rule: String,
    /// What happens when, in order of time.
    #[serde(default)]
    pub cues: Vec<Cue>,
    /// What the instructor says.
    #[serde(default)]
    pub notes: Vec<Note>,
    /// What is promised of the flight.
    #[serde(default)]
    pub claims: Vec<Claim>,
}

impl Demonstration {
    /// The same demonstration where the field is that of a latitude alone, in degrees north.
    /// Claims belong to the place they were written for, and are left behind.
    #[must_use]
    pub fn at_latitude_deg(mut self, latitude_deg: f64) -> Self {
        self.scenario = self.scenario.at_latitude_deg(latitude_deg);
        self.claims.clear();
        self
    }

    /// Every text with the place where it stands in the file.
    pub(crate) fn texts(&self) -> Vec<(String, &str)> {
        let mut texts = vec![
            ("title".to_owned(), self.title.as_str()),
            ("aircraft".to_owned(), &self.aircraft),
            ("place".to_owned(), &self.place),
            ("look_for".to_owned(), &self.look_for),
            ("rule".to_owned(), &self.rule),
        ];
        for (index, cue) in self.cues.iter().enumerate() {
            let path = |name: &str| format!("cues[{index}].do.{name}");
            match &cue.act {
                Act::Chapter(text) => texts.push((path("chapter"), text)),
                Act::Caption(text) => texts.push((path("caption"), text)),
                Act::Ask(question) => {
                    texts.push((path("ask.question"), &question.question));
                    if let Answer::Typed { choices, .. } = &question.answer {
                        texts.extend(choices.iter().map(|it| (path("ask.choices"), it.as_str())));
                    }
                }
                _ => {}
            }
        }
        let notes = self.notes.iter().enumerate();
        texts.extend(notes.map(|(index, it)| (format!("notes[{index}].say"), it.say.as_str())));
        texts
    }
}
