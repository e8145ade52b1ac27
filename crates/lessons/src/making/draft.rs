//! A demonstration that is being made.

use super::entry::Entry;
use crate::demonstration::{
    Act, Answer, Claim, Cue, Demonstration, DemonstrationError, Figure, LONGEST_FILE, Note,
    VERSION, View,
};
use flights::{Scenario, ScenarioFile, read_json};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Cues are placed to a hundredth of a second; chosen: nobody sees a finer one.
const FINEST: f64 = 100.0;

/// A cue, and what tells it from the others however they are moved.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// Its own number in this draft.
    pub id: u32,
    /// The cue.
    pub cue: Cue,
}

/// A demonstration that is being made: it need not be one that can be played yet.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// The flight; shared, as a flight by a stick is long and every change keeps what stood before.
    pub(super) scenario: Arc<ScenarioFile>,
    /// Seconds from the flight's start to its end.
    length: f64,
    pub(super) name: String,
    pub(super) title: String,
    aircraft: String,
    place: String,
    pub(super) from_s: f64,
    pub(super) to_s: Option<f64>,
    pub(super) views: Vec<View>,
    pub(super) figures: BTreeMap<String, Figure>,
    headline: Option<String>,
    pub(super) look_for: String,
    pub(super) rule: String,
    pub(super) cues: Vec<Placed>,
    pub(super) notes: Vec<Note>,
    pub(super) claims: Vec<Claim>,
    /// What was typed and means nothing in its entry; what the entry meant before still holds.
    pub(super) unread: Vec<(Entry, String)>,
    next: u32,
}

impl Draft {
    /// A demonstration to be changed.
    ///
    /// # Errors
    /// A version that is not [`VERSION`] and a flight that cannot be flown; all else can be mended
    /// in the draft.
    pub fn of(demonstration: Demonstration) -> Result<Self, DemonstrationError> {
        if demonstration.demonstration != VERSION {
            demonstration.check_shape()?;
        }
        let scenario = Scenario::from_file(&demonstration.scenario).map_err(|error| {
            let error = DemonstrationError::from(error);
            DemonstrationError {
                path: format!("scenario.{}", error.path),
                ..error
            }
        })?;
        let mut draft = Self {
            scenario: Arc::new(demonstration.scenario),
            length: scenario.duration(),
            name: demonstration.name,
            title: demonstration.title,
            aircraft: demonstration.aircraft,
            place: demonstration.place,
            from_s: demonstration.from_s,
            to_s: demonstration.to_s,
            views: demonstration.views,
            figures: demonstration.figures,
            headline: demonstration.headline,
            look_for: demonstration.look_for,
            rule: demonstration.rule,
            cues: Vec::new(),
            notes: demonstration.notes,
            claims: demonstration.claims,
            unread: Vec::new(),
            next: 0,
        };
        for cue in demonstration.cues {
            let id = draft.next;
            draft.next += 1;
            draft.place(Placed { id, cue });
        }
        Ok(draft)
    }

    /// A demonstration of a flight, with nothing but a title.
    ///
    /// # Errors
    /// A flight that cannot be flown.
    pub fn of_flight(flight: ScenarioFile, title: &str) -> Result<Self, DemonstrationError> {
        Self::of(Demonstration {
            demonstration: VERSION,
            name: name_for(title),
            title: title.to_owned(),
            aircraft: String::new(),
            place: String::new(),
            scenario: flight,
            from_s: 0.0,
            to_s: None,
            views: Vec::new(),
            figures: BTreeMap::new(),
            headline: None,
            look_for: String::new(),
            rule: String::new(),
            cues: Vec::new(),
            notes: Vec::new(),
            claims: Vec::new(),
        })
    }

    /// Reads a demonstration's file, or a flight's, which is called `title` then.
    ///
    /// # Errors
    /// Text of neither shape, and a flight that cannot be flown, in one sentence that names the
    /// field.
    pub fn from_json(json: &str, title: &str) -> Result<Self, DemonstrationError> {
        if json.len() > LONGEST_FILE {
            return Err(DemonstrationError {
                path: String::new(),
                reason: format!("the file may have {LONGEST_FILE} bytes, not {}", json.len()),
            });
        }
        match read_json::<Demonstration>(json) {
            Ok(demonstration) => Self::of(demonstration),
            Err(error) => match read_json::<ScenarioFile>(json) {
                Ok(flight) => Self::of_flight(flight, title),
                Err(_) => Err(error.into()),
            },
        }
    }

    /// The demonstration as it stands, whether or not it can be played.
    pub fn demonstration(&self) -> Demonstration {
        Demonstration {
            demonstration: VERSION,
            name: self.name.clone(),
            title: self.title.clone(),
            aircraft: self.aircraft.clone(),
            place: self.place.clone(),
            scenario: (*self.scenario).clone(),
            from_s: self.from_s,
            to_s: self.to_s,
            views: self.views.clone(),
            figures: self.figures.clone(),
            headline: self.headline.clone(),
            look_for: self.look_for.clone(),
            rule: self.rule.clone(),
            cues: self.cues.iter().map(|it| it.cue.clone()).collect(),
            notes: self.notes.clone(),
            claims: self.claims.clone(),
        }
    }

    /// The flight.
    pub fn scenario(&self) -> &Arc<ScenarioFile> {
        &self.scenario
    }

    /// What it is called on the screen.
    pub fn title(&self) -> &str {
        &self.title
    }

    /// What it is called in links and files.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Seconds from the flight's start to its end.
    pub fn length(&self) -> f64 {
        self.length
    }

    /// From when to when it plays, in seconds.
    pub fn plays(&self) -> [f64; 2] {
        [self.from_s, self.to_s.unwrap_or(self.length)]
    }

    /// What is shown.
    pub fn views(&self) -> &[View] {
        &self.views
    }

    /// Shows something, or no longer.
    pub fn toggle_view(&mut self, view: View) {
        let before = self.views.len();
        self.views.retain(|it| *it != view);
        if self.views.len() == before {
            self.views.push(view);
        }
    }

    /// What is measured, by name.
    pub fn figures(&self) -> &BTreeMap<String, Figure> {
        &self.figures
    }

    /// Has the lag measured at a time, to be told by texts and asked about, and gives the name of
    /// that figure.
    pub fn measure_lag_at(&mut self, at_s: f64) -> String {
        let figure = Figure::LagAt(self.on_flight(at_s));
        if let Some((name, _)) = self.figures.iter().find(|(_, it)| **it == figure) {
            return name.clone();
        }
        // One more than there are figures: at least one of the names is free.
        let free = (1..=self.figures.len() + 1)
            .map(|number| format!("lag_{number}"))
            .find(|name| !self.figures.contains_key(name))
            .unwrap_or_default();
        self.figures.insert(free.clone(), figure);
        free
    }

    /// What the instructor says.
    pub fn notes(&self) -> &[Note] {
        &self.notes
    }

    /// One note more, of a minute, with nothing in it.
    pub fn add_note(&mut self) {
        self.notes.push(Note {
            minutes: 1.0,
            say: String::new(),
        });
    }

    /// One note less; one that is none stays so.
    pub fn remove_note(&mut self, index: usize) {
        if index < self.notes.len() {
            self.notes.remove(index);
            // The notes after it have other places now.
            self.unread
                .retain(|(entry, _)| !matches!(entry, Entry::NoteMinutes(_)));
        }
    }

    /// The cues, in order of time.
    pub fn cues(&self) -> &[Placed] {
        &self.cues
    }

    /// A cue by its number.
    pub fn cue(&self, id: u32) -> Option<&Cue> {
        self.cues.iter().find(|it| it.id == id).map(|it| &it.cue)
    }

    /// Puts a cue at a time, after those that are there already, and gives its number.
    pub fn put(&mut self, at_s: f64, act: Act) -> u32 {
        let id = self.next;
        self.next += 1;
        let at_s = self.on_flight(at_s);
        self.place(Placed {
            id,
            cue: Cue { at_s, act },
        });
        id
    }

    /// Moves a cue to a time, or as near as the flight goes.
    pub fn move_cue(&mut self, id: u32, at_s: f64) {
        let at_s = self.on_flight(at_s);
        self.understand(Entry::CueTime(id));
        if let Some(mut placed) = self.take(id) {
            placed.cue.at_s = at_s;
            self.place(placed);
        }
    }

    /// Takes a cue away.
    pub fn remove_cue(&mut self, id: u32) {
        self.take(id);
        self.unread.retain(|(entry, _)| entry.cue() != Some(id));
    }

    /// The same cue once more, a second later, and its number; none for a cue that is none.
    pub fn duplicate_cue(&mut self, id: u32) -> Option<u32> {
        let Cue { at_s, act } = self.cue(id)?.clone();
        Some(self.put(at_s + 1.0, act))
    }

    /// Lets a cue do something else.
    pub fn set_act(&mut self, id: u32, act: Act) {
        if let Some(placed) = self.cues.iter_mut().find(|it| it.id == id) {
            placed.cue.act = act;
        }
    }

    /// One choice more for a question with choices of its own.
    pub fn add_choice(&mut self, id: u32) {
        if let Some((choices, _)) = self.choices_mut(id) {
            choices.push(String::new());
        }
    }

    /// One choice less; what was right stays right, if it is still there.
    pub fn remove_choice(&mut self, id: u32, index: usize) {
        if let Some((choices, right)) = self.choices_mut(id)
            && index < choices.len()
        {
            choices.remove(index);
            if *right > index || *right == choices.len() {
                *right = right.saturating_sub(1);
            }
        }
    }

    /// Says which choice is right.
    pub fn set_right(&mut self, id: u32, index: usize) {
        if let Some((choices, right)) = self.choices_mut(id)
            && index < choices.len()
        {
            *right = index;
        }
    }

    /// It plays from a time on.
    pub fn start_at(&mut self, at_s: f64) {
        self.from_s = self.on_flight(at_s);
        self.understand(Entry::From);
    }

    /// It plays until a time; the flight's end is no end of its own.
    pub fn end_at(&mut self, at_s: f64) {
        let at_s = self.on_flight(at_s);
        self.to_s = (at_s < self.length).then_some(at_s);
        self.understand(Entry::To);
    }

    /// Moves the flight to where the field is that of a latitude, in degrees north. Claims belong
    /// to the place they were written for.
    pub(super) fn move_to_latitude(&mut self, latitude_deg: f64) {
        let here = (*self.scenario).clone();
        self.scenario = Arc::new(here.at_latitude_deg(latitude_deg));
        self.claims.clear();
    }

    pub(super) fn choices_mut(&mut self, id: u32) -> Option<(&mut Vec<String>, &mut usize)> {
        match &mut self.cues.iter_mut().find(|it| it.id == id)?.cue.act {
            Act::Ask(question) => match &mut question.answer {
                Answer::Typed { choices, right } => Some((choices, right)),
                Answer::Figure(_) => None,
            },
            _ => None,
        }
    }

    /// Nothing stands in an entry that means nothing.
    pub(super) fn understand(&mut self, entry: Entry) {
        self.unread.retain(|(it, _)| *it != entry);
    }

    /// The nearest time of the flight, to the finest that is placed.
    fn on_flight(&self, at_s: f64) -> f64 {
        let rounded = (FINEST * at_s).round() / FINEST;
        // What is no number is the start.
        rounded.min(self.length).max(0.0)
    }

    fn take(&mut self, id: u32) -> Option<Placed> {
        let index = self.cues.iter().position(|it| it.id == id)?;
        Some(self.cues.remove(index))
    }

    fn place(&mut self, placed: Placed) {
        let after = self
            .cues
            .partition_point(|it| it.cue.at_s <= placed.cue.at_s);
        self.cues.insert(after, placed);
    }
}

/// The name that goes with a title: its letters and figures, in lower case, hyphens between.
pub(super) fn name_for(title: &str) -> String {
    let plain = |c: char| c.is_ascii_alphanumeric();
    let words: Vec<String> = title
        .split(|c| !plain(c))
        .filter(|word| !word.is_empty())
        .map(str::to_ascii_lowercase)
        .collect();
    if words.is_empty() {
        return "demonstration".to_owned();
    }
    words.join("-")
}
