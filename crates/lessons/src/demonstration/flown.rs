//! A demonstration with its flight flown and its figures measured.

use super::beside::changed;
use super::text::{Piece, filled, pieces};
use super::trace::Trace;
use super::{
    Act, Answer, Beside, Claim, Compare, Demonstration, DemonstrationError, Figure, Measured,
    Question, Unproved,
};
use compass::record::Record;
use flights::Scenario;
use flights::air::SeededAir;
use std::collections::{BTreeMap, BTreeSet};

/// A caption and when it stands, in seconds from the start.
#[derive(Clone, Debug, PartialEq)]
pub struct Caption {
    /// From when on.
    pub from: f64,
    /// Until when.
    pub to: f64,
    /// Its text, figures said.
    pub text: String,
}

/// A chapter and when it begins, in seconds from the start.
#[derive(Clone, Debug, PartialEq)]
pub struct Chapter {
    /// When it begins.
    pub from: f64,
    /// What it is called.
    pub title: String,
}

/// A question as it is put to the class.
#[derive(Clone, Debug, PartialEq)]
pub struct Posed {
    /// The question, figures said.
    pub question: String,
    /// What can be answered.
    pub choices: Vec<String>,
    /// Which of them is right, by what was measured.
    pub right: usize,
    /// What was measured, in words; none for choices of the instructor's own.
    pub measured: Option<String>,
}

/// A demonstration, its flight flown once.
pub struct Flown {
    demonstration: Demonstration,
    scenario: Scenario,
    record: Record<SeededAir>,
    figures: BTreeMap<String, Measured>,
    plays: [f64; 2],
}

impl Flown {
    /// Flies a demonstration and measures its figures. Cues beyond what plays are left out.
    ///
    /// # Errors
    /// What [`Demonstration::check_shape`] refuses, and a float that is too fast for the flight.
    pub fn new(mut demonstration: Demonstration) -> Result<Self, DemonstrationError> {
        demonstration.check_shape()?;
        let scenario = Scenario::from_file(&demonstration.scenario)?;
        let record = scenario.record()?;
        let plays = [
            demonstration.from_s,
            demonstration.to_s.unwrap_or(scenario.duration()),
        ];
        demonstration
            .cues
            .retain(|cue| (plays[0]..=plays[1]).contains(&cue.at_s));
        let set = demonstration.cues.iter();
        let set = set.filter(|cue| cue.act == Act::SetIndicator);
        let set: Vec<f64> = set.map(|cue| cue.at_s).collect();
        let trace = Trace::new(&record, scenario.source(), set.clone());
        let mut beside: Vec<(Compare, Trace)> = Vec::new();
        let mut figures = BTreeMap::new();
        for (name, figure) in &demonstration.figures {
            let measured = match figure {
                Figure::Beside(Beside { situation, measure }) => {
                    if !beside.iter().any(|(known, _)| known == situation) {
                        let other = changed(&scenario, *situation)?;
                        let trace = Trace::new(&other.record()?, other.source(), set.clone());
                        beside.push((*situation, trace));
                    }
                    let of = beside.iter().find(|(known, _)| known == situation);
                    of.map_or(Measured::Never, |(_, trace)| trace.measure(measure))
                }
                _ => trace.measure(figure),
            };
            figures.insert(name.clone(), measured);
        }
        Ok(Self {
            demonstration,
            scenario,
            record,
            figures,
            plays,
        })
    }

    /// The demonstration.
    pub fn demonstration(&self) -> &Demonstration {
        &self.demonstration
    }

    /// Its flight's scenario.
    pub fn scenario(&self) -> &Scenario {
        &self.scenario
    }

    /// From when to when it plays, in seconds from the start of the flight.
    pub fn plays(&self) -> [f64; 2] {
        self.plays
    }

    /// Its flight, whole.
    pub fn record(&self) -> &Record<SeededAir> {
        &self.record
    }

    /// What was measured, by name.
    pub fn figures(&self) -> &BTreeMap<String, Measured> {
        &self.figures
    }

    /// A text with its figures said.
    pub fn said(&self, text: &str) -> String {
        filled(text, &self.figures)
    }

    /// The figure that says most, in words.
    pub fn headline(&self) -> Option<String> {
        let name = self.demonstration.headline.as_ref()?;
        Some(self.figures.get(name)?.words())
    }

    /// The captions in order, each until the next or the end of what plays.
    pub fn captions(&self) -> Vec<Caption> {
        let mut captions: Vec<Caption> = Vec::new();
        let end = self.plays[1];
        for cue in &self.demonstration.cues {
            if let Act::Caption(text) = &cue.act {
                if let Some(last) = captions.last_mut() {
                    last.to = cue.at_s;
                }
                captions.push(Caption {
                    from: cue.at_s,
                    to: end,
                    text: self.said(text),
                });
            }
        }
        captions.retain(|it| !it.text.is_empty() && it.to > it.from);
        captions
    }

    /// The chapters in order.
    pub fn chapters(&self) -> Vec<Chapter> {
        let cues = self.demonstration.cues.iter();
        let chapters = cues.filter_map(|cue| match &cue.act {
            Act::Chapter(title) => Some(Chapter {
                from: cue.at_s,
                title: self.said(title),
            }),
            _ => None,
        });
        chapters.collect()
    }

    /// A question as it is put, with the answer that the flight gives. A figure that has no ways
    /// to come out, or never came to be, leaves nothing to ask.
    pub fn posed(&self, question: &Question) -> Option<Posed> {
        let text = self.said(&question.question);
        match &question.answer {
            Answer::Typed { choices, right } => Some(Posed {
                question: text,
                choices: choices.iter().map(|it| self.said(it)).collect(),
                right: *right,
                measured: None,
            }),
            Answer::Figure(name) => {
                let measured = self.figures.get(name)?;
                Some(Posed {
                    question: text,
                    choices: measured.choices().iter().map(|&it| it.to_owned()).collect(),
                    right: measured.right_choice()?,
                    measured: Some(measured.words()),
                })
            }
        }
    }

    /// What was measured for a question; none for choices of the instructor's own.
    pub fn measured_of(&self, question: &Question) -> Option<Measured> {
        match &question.answer {
            Answer::Figure(name) => self.figures.get(name).copied(),
            Answer::Typed { .. } => None,
        }
    }

    /// Everything in it that its flight does not bear out; nothing if all is proved.
    pub fn check(&self) -> Vec<Unproved> {
        let mut unproved = self.unproved_claims();
        let mut spoken_of: BTreeSet<&str> = BTreeSet::new();
        let mut told: BTreeSet<&str> = BTreeSet::new();
        let texts = self.demonstration.texts();
        for (path, text) in &texts {
            for piece in pieces(text) {
                match piece {
                    Piece::Plain(plain) if plain.contains(|c: char| c.is_ascii_digit()) => {
                        unproved.push(Unproved::FixedNumber(path.clone(), (*text).to_owned()));
                    }
                    Piece::Plain(_) => {}
                    Piece::Figure { name, .. } => {
                        told.insert(name);
                    }
                }
            }
        }
        for cue in &self.demonstration.cues {
            if let Act::Ask(Question {
                answer: Answer::Figure(name),
                ..
            }) = &cue.act
            {
                told.insert(name);
                if self.figures.get(name).is_none_or(|it| it.is_arguable()) {
                    unproved.push(Unproved::TooClose(name.clone()));
                }
            }
        }
        told.extend(self.demonstration.headline.as_deref());
        spoken_of.extend(&told);
        let claims = self.demonstration.claims.iter();
        let claimed: BTreeSet<&str> = claims.map(|it| it.figure.as_str()).collect();
        spoken_of.extend(&claimed);
        for (name, measured) in &self.figures {
            let name = name.as_str();
            if !spoken_of.contains(name) {
                unproved.push(Unproved::Unused(name.to_owned()));
            }
            let is_aid = matches!(measured, Measured::Aid(..));
            if told.contains(name) && !claimed.contains(name) && !is_aid {
                unproved.push(Unproved::Unclaimed(name.to_owned()));
            }
        }
        unproved
    }

    fn unproved_claims(&self) -> Vec<Unproved> {
        let number = |claim: &Claim| self.figures.get(&claim.figure).and_then(|it| it.number());
        let claims = self.demonstration.claims.iter();
        let unproved = claims.filter_map(|claim| {
            let measured = number(claim);
            let within = |number: f64| (claim.least..=claim.most).contains(&number);
            let is_heading = matches!(self.figures.get(&claim.figure), Some(Measured::Heading(_)));
            // About north, a heading is claimed to be from −1 to 1.
            let holds = measured.is_some_and(|it| within(it) || is_heading && within(it - 360.0));
            (!holds).then(|| Unproved::Claim(claim.clone(), measured))
        });
        unproved.collect()
    }
}
