//! A demonstration's lesson plan: what the instructor says and asks, and when.

use lessons::demonstration::{Act, Flown, Posed};

/// What happens in the lesson at a moment of the flight.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Item {
    /// A chapter begins.
    Chapter(String),
    /// The caption that comes.
    Caption(String),
    /// The class is asked.
    Question(Posed),
    /// The flight stands until the instructor goes on.
    Stop,
    /// The answer is shown.
    Answer,
}

/// A lesson plan, figures said.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Plan {
    /// What the demonstration is called.
    pub(crate) title: String,
    /// Where and in what it is flown.
    pub(crate) flown: String,
    /// What to look for.
    pub(crate) look_for: String,
    /// Minutes, and what is said in them.
    pub(crate) notes: Vec<(f64, String)>,
    /// Minutes in all.
    pub(crate) minutes: f64,
    /// Seconds of flight, and what happens then.
    pub(crate) course: Vec<(f64, Item)>,
    /// The rule of thumb.
    pub(crate) rule: String,
    /// What was measured, by name.
    pub(crate) figures: Vec<(String, String)>,
}

impl Plan {
    /// The plan of a demonstration.
    pub(crate) fn of(flown: &Flown) -> Self {
        let it = flown.demonstration();
        let notes = it.notes.iter();
        let course = it.cues.iter().filter_map(|cue| {
            let item = match &cue.act {
                Act::Chapter(title) => Item::Chapter(flown.said(title)),
                Act::Caption(text) if !text.is_empty() => Item::Caption(flown.said(text)),
                Act::Ask(question) => Item::Question(flown.posed(question)?),
                Act::Freeze => Item::Stop,
                Act::Reveal => Item::Answer,
                _ => return None,
            };
            Some((cue.at_s, item))
        });
        let figures = flown.figures().iter();
        Self {
            title: flown.said(&it.title),
            flown: [it.place.as_str(), &it.aircraft]
                .into_iter()
                .filter(|it| !it.is_empty())
                .collect::<Vec<_>>()
                .join(" · "),
            look_for: flown.said(&it.look_for),
            notes: notes
                .clone()
                .map(|it| (it.minutes, flown.said(&it.say)))
                .collect(),
            minutes: notes.map(|it| it.minutes).sum(),
            course: course.collect(),
            rule: flown.said(&it.rule),
            figures: figures
                .map(|(name, measured)| (name.replace('_', " "), measured.words()))
                .collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use lessons::demonstration::Demonstration;

    #[test]
    fn a_plan_has_every_note_and_question_with_the_answer_of_its_flight() {
        let flown = Demonstration::from_json(
            r#"{
            "demonstration": 1, "name": "still", "title": "Straight and level",
            "scenario": {
                "field": {"latitude_deg": 45}, "start": {"heading_deg": 90, "speed_kt": 100},
                "legs": [{"seconds": 10}]
            },
            "figures": {"at_last": {"error_at": 9}},
            "rule": "The compass {at_last}.",
            "cues": [
                {"at_s": 1, "do": {"ask": {"question": "Well?", "answer": {"figure": "at_last"}}}},
                {"at_s": 2, "do": {"cover": "compass"}},
                {"at_s": 9, "do": "reveal"}
            ],
            "notes": [{"minutes": 1.5, "say": "Ask."}, {"minutes": 2, "say": "It {at_last}."}]
        }"#,
        )
        .and_then(Flown::new)
        .unwrap_or_else(|error| panic!("{error}"));
        let plan = Plan::of(&flown);
        assert_eq!(plan.minutes, 3.5);
        assert_eq!(plan.notes[1].1, "It agrees.");
        assert_eq!(plan.rule, "The compass agrees.");
        assert_eq!(plan.figures, [("at last".to_owned(), "agrees".to_owned())]);
        let [(1.0, Item::Question(posed)), (9.0, Item::Answer)] = plan.course.as_slice() else {
            panic!("{:?}", plan.course)
        };
        assert_eq!(posed.choices[posed.right], "It agrees");
    }
}
