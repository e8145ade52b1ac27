//! What is typed: what each entry says, what it takes, and what is wrong with it.

use super::draft::{Draft, name_for};
use crate::demonstration::{Act, Answer, Compare};

/// Something that is typed into. Cues go by their number, notes and choices by their place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Entry {
    /// What it is called on the screen.
    Title,
    /// What it is called in links and files.
    Name,
    /// From when on it plays, in seconds.
    From,
    /// Until when, in seconds; the flight's end where nothing stands.
    To,
    /// Where the flight takes place, in degrees north.
    Latitude,
    /// What to look for.
    LookFor,
    /// The rule of thumb.
    Rule,
    /// When a cue happens, in seconds.
    CueTime(u32),
    /// What a chapter, a caption or a question says.
    CueText(u32),
    /// A choice of a question.
    CueChoice(u32, usize),
    /// The latitude of a second situation, in whole degrees north.
    CueLatitude(u32),
    /// How long a note takes, in minutes.
    NoteMinutes(usize),
    /// What to say.
    NoteSay(usize),
}

impl Entry {
    /// The cue that it belongs to.
    pub fn cue(self) -> Option<u32> {
        match self {
            Self::CueTime(id)
            | Self::CueText(id)
            | Self::CueChoice(id, _)
            | Self::CueLatitude(id) => Some(id),
            _ => None,
        }
    }
}

/// What is wrong, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The entry; none for what no entry can mend.
    pub entry: Option<Entry>,
    /// A sentence.
    pub said: String,
}

impl Draft {
    /// What stands in an entry, as it was typed.
    pub fn text(&self, entry: Entry) -> String {
        if let Some((_, unread)) = self.unread.iter().find(|it| it.0 == entry) {
            return unread.clone();
        }
        let text = match entry {
            Entry::Title => Some(self.title.clone()),
            Entry::Name => Some(self.name.clone()),
            Entry::From => Some(self.from_s.to_string()),
            Entry::To => self.to_s.map(|it| it.to_string()),
            Entry::Latitude => self.scenario.latitude_deg().map(|it| it.to_string()),
            Entry::LookFor => Some(self.look_for.clone()),
            Entry::Rule => Some(self.rule.clone()),
            Entry::CueTime(id) => self.cue(id).map(|it| it.at_s.to_string()),
            Entry::CueText(id) => self.cue(id).and_then(|it| match &it.act {
                Act::Chapter(text) | Act::Caption(text) => Some(text.clone()),
                Act::Ask(question) => Some(question.question.clone()),
                _ => None,
            }),
            Entry::CueChoice(id, index) => self.cue(id).and_then(|it| match &it.act {
                Act::Ask(question) => match &question.answer {
                    Answer::Typed { choices, .. } => choices.get(index).cloned(),
                    Answer::Figure(_) => None,
                },
                _ => None,
            }),
            Entry::CueLatitude(id) => self.cue(id).and_then(|it| match it.act {
                Act::Compare(Compare::LatitudeDeg(degrees)) => Some(degrees.to_string()),
                _ => None,
            }),
            Entry::NoteMinutes(index) => self.notes.get(index).map(|it| it.minutes.to_string()),
            Entry::NoteSay(index) => self.notes.get(index).map(|it| it.say.clone()),
        };
        text.unwrap_or_default()
    }

    /// Types into an entry. What is not a number where one belongs stands there, is told by
    /// [`faults`](Self::faults), and changes nothing else.
    pub fn type_in(&mut self, entry: Entry, text: &str) {
        let understood = self.take_in(entry, text);
        self.understand(entry);
        if !understood {
            self.unread.push((entry, text.to_owned()));
        }
    }

    /// Takes what was typed, and says whether it means something.
    fn take_in(&mut self, entry: Entry, text: &str) -> bool {
        let number = || text.trim().parse().ok().filter(|it: &f64| it.is_finite());
        match entry {
            Entry::Title => {
                // The name goes along until it is given by hand.
                if self.name == name_for(&self.title) {
                    self.name = name_for(text);
                }
                self.title = text.to_owned();
            }
            Entry::Name => self.name = text.to_owned(),
            Entry::LookFor => self.look_for = text.to_owned(),
            Entry::Rule => self.rule = text.to_owned(),
            Entry::From => match number() {
                Some(from) => self.from_s = from,
                None => return false,
            },
            Entry::To if text.trim().is_empty() => self.to_s = None,
            Entry::To => match number() {
                Some(to) => self.to_s = Some(to),
                None => return false,
            },
            Entry::Latitude => match number() {
                Some(degrees) if (-90.0..=90.0).contains(&degrees) => {
                    self.move_to_latitude(degrees);
                }
                _ => return false,
            },
            Entry::CueTime(id) => match number() {
                Some(at) if (0.0..=self.length()).contains(&at) => self.move_cue(id, at),
                _ => return false,
            },
            Entry::CueText(id) => {
                if let Some(placed) = self.cues.iter_mut().find(|it| it.id == id) {
                    match &mut placed.cue.act {
                        Act::Chapter(into) | Act::Caption(into) => *into = text.to_owned(),
                        Act::Ask(question) => question.question = text.to_owned(),
                        _ => {}
                    }
                }
            }
            Entry::CueChoice(id, index) => {
                if let Some((choices, _)) = self.choices_mut(id)
                    && let Some(choice) = choices.get_mut(index)
                {
                    *choice = text.to_owned();
                }
            }
            Entry::CueLatitude(id) => match text.trim().parse() {
                Ok(degrees) => self.set_act(id, Act::Compare(Compare::LatitudeDeg(degrees))),
                Err(_) => return false,
            },
            Entry::NoteMinutes(index) => match (number(), self.notes.get_mut(index)) {
                (Some(minutes), Some(note)) => note.minutes = minutes,
                _ => return false,
            },
            Entry::NoteSay(index) => {
                if let Some(note) = self.notes.get_mut(index) {
                    note.say = text.to_owned();
                }
            }
        }
        true
    }

    /// Everything that keeps it from being played; nothing if it can be.
    pub fn faults(&self) -> Vec<Fault> {
        let unread = self.unread.iter().map(|(entry, text)| Fault {
            entry: Some(*entry),
            said: self.said_of_unread(*entry, text),
        });
        let found = self.demonstration().faults().into_iter();
        let found = found.map(|error| {
            let entry = self.entry_at(&error.path);
            let said = if entry.is_some() {
                error.reason
            } else {
                error.to_string()
            };
            Fault { entry, said }
        });
        let unworded = self.unworded().map(|(entry, said)| Fault {
            entry: Some(entry),
            said: said.to_owned(),
        });
        unread.chain(found).chain(unworded).collect()
    }

    fn said_of_unread(&self, entry: Entry, text: &str) -> String {
        let takes = match entry {
            Entry::Latitude => {
                "the latitude must be a number from -90 to 90, such as 52".to_owned()
            }
            Entry::CueLatitude(_) => {
                "the latitude must be a whole number from -90 to 90, such as -35".to_owned()
            }
            Entry::NoteMinutes(_) => "minutes must be a number from 0.5 to 60".to_owned(),
            _ => format!(
                "the time must be a number of seconds from 0 to {}, the flight's end",
                self.length()
            ),
        };
        format!("{takes}, not {text:?}")
    }

    /// What is asked or offered without a word.
    fn unworded(&self) -> impl Iterator<Item = (Entry, &'static str)> {
        let mut unworded = Vec::new();
        for placed in &self.cues {
            match &placed.cue.act {
                Act::Chapter(text) if text.trim().is_empty() => {
                    unworded.push((Entry::CueText(placed.id), "the chapter has no title yet"));
                }
                Act::Ask(question) => {
                    if question.question.trim().is_empty() {
                        unworded.push((Entry::CueText(placed.id), "the question has no words yet"));
                    }
                    if let Answer::Typed { choices, .. } = &question.answer {
                        for (index, _) in choices
                            .iter()
                            .enumerate()
                            .filter(|(_, it)| it.trim().is_empty())
                        {
                            let entry = Entry::CueChoice(placed.id, index);
                            unworded.push((entry, "the choice has no words yet"));
                        }
                    }
                }
                _ => {}
            }
        }
        unworded.into_iter()
    }

    /// The entry for a field of the file.
    fn entry_at(&self, path: &str) -> Option<Entry> {
        let (field, rest) = path.split_once(['[', '.']).unwrap_or((path, ""));
        let (index, rest) = rest.split_once(']').unwrap_or(("", ""));
        let index = index.parse::<usize>().ok();
        match field {
            "title" => Some(Entry::Title),
            "name" => Some(Entry::Name),
            "from_s" => Some(Entry::From),
            "to_s" => Some(Entry::To),
            "look_for" => Some(Entry::LookFor),
            "rule" => Some(Entry::Rule),
            "scenario" => Some(Entry::Latitude),
            "notes" if rest == ".minutes" => Some(Entry::NoteMinutes(index?)),
            "notes" => Some(Entry::NoteSay(index?)),
            "cues" => {
                let id = self.cues.get(index?)?.id;
                Some(match rest {
                    ".at_s" => Entry::CueTime(id),
                    ".do.compare.latitude_deg" => Entry::CueLatitude(id),
                    _ => Entry::CueText(id),
                })
            }
            _ => None,
        }
    }
}
