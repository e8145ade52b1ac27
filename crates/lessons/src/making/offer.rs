//! What a cue can do: what stands in it at first, and what else it can be set to.

use super::draft::Draft;
use crate::demonstration::{Act, Answer, Compare, Cover, Cue, Part, Question, Speed};

/// The kinds of cue.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A chapter begins.
    Chapter,
    /// A caption.
    Caption,
    /// So fast from now on.
    Speed,
    /// A stop.
    Freeze,
    /// A part of the screen is pointed at.
    Highlight,
    /// The class is asked.
    Ask,
    /// Something is covered.
    Cover,
    /// The answer is shown.
    Reveal,
    /// A second situation beside the first.
    Compare,
    /// The heading indicator is set.
    SetIndicator,
}

impl Kind {
    /// Every kind, in the order in which they are offered.
    pub const ALL: [Self; 10] = [
        Self::Chapter,
        Self::Caption,
        Self::Speed,
        Self::Freeze,
        Self::Highlight,
        Self::Ask,
        Self::Cover,
        Self::Reveal,
        Self::Compare,
        Self::SetIndicator,
    ];

    /// The kind of an act.
    pub fn of(act: &Act) -> Self {
        match act {
            Act::Chapter(_) => Self::Chapter,
            Act::Caption(_) => Self::Caption,
            Act::Speed(_) => Self::Speed,
            Act::Freeze => Self::Freeze,
            Act::Highlight(_) => Self::Highlight,
            Act::Ask(_) => Self::Ask,
            Act::Cover(_) => Self::Cover,
            Act::Reveal => Self::Reveal,
            Act::Compare(_) => Self::Compare,
            Act::SetIndicator => Self::SetIndicator,
        }
    }

    /// What a new cue of this kind does: what is wanted most often, its words still to come.
    pub fn act(self) -> Act {
        match self {
            Self::Chapter => Act::Chapter(String::new()),
            Self::Caption => Act::Caption(String::new()),
            Self::Speed => Act::Speed(Speed::Half),
            Self::Freeze => Act::Freeze,
            Self::Highlight => Act::Highlight(Part::Compass),
            Self::Ask => Act::Ask(Question {
                question: String::new(),
                answer: typed(),
            }),
            Self::Cover => Act::Cover(Cover::Compass),
            Self::Reveal => Act::Reveal,
            Self::Compare => Act::Compare(Compare::OtherHemisphere),
            Self::SetIndicator => Act::SetIndicator,
        }
    }
}

fn typed() -> Answer {
    Answer::Typed {
        choices: vec![String::new(), String::new()],
        right: 0,
    }
}

impl Draft {
    /// What a cue can be set to by one choice, in order: what it is now stands among it. Nothing
    /// for a cue that has nothing to choose.
    pub fn offers(&self, cue: &Cue) -> Vec<Act> {
        match &cue.act {
            Act::Speed(_) => Speed::ALL.map(Act::Speed).to_vec(),
            Act::Highlight(_) => [
                Part::Compass,
                Part::Heading,
                Part::Beside,
                Part::Reasons,
                Part::Chart,
                Part::Nothing,
            ]
            .map(Act::Highlight)
            .to_vec(),
            Act::Cover(_) => [Cover::Compass, Cover::Heading, Cover::Nothing]
                .map(Act::Cover)
                .to_vec(),
            Act::Compare(now) => {
                let latitude = match now {
                    Compare::LatitudeDeg(degrees) => *degrees,
                    _ => 0,
                };
                [
                    Compare::OtherHemisphere,
                    Compare::LatitudeDeg(latitude),
                    Compare::NoVerticalField,
                    Compare::NoSwirl,
                    Compare::OtherIron,
                    Compare::Alone,
                ]
                .map(Act::Compare)
                .to_vec()
            }
            Act::Ask(question) => {
                let own = match &question.answer {
                    Answer::Typed { .. } => question.answer.clone(),
                    Answer::Figure(_) => typed(),
                };
                let figures = self.figures().keys().cloned().map(Answer::Figure);
                let answers = std::iter::once(own).chain(figures);
                let asked = |answer| {
                    Act::Ask(Question {
                        question: question.question.clone(),
                        answer,
                    })
                };
                answers.map(asked).collect()
            }
            Act::Chapter(_) | Act::Caption(_) | Act::Freeze | Act::Reveal | Act::SetIndicator => {
                Vec::new()
            }
        }
    }
}
