//! What the cues that were passed come to: a function of how many of them were, so that whoever
//! jumps to a moment finds there what they would have found by playing up to it.

use super::{Act, Compare, Cover, Cue, Part, Speed};

impl Act {
    /// Whether the flight stands still there until the instructor goes on.
    pub fn stops(&self) -> bool {
        matches!(self, Self::Freeze | Self::Ask(_))
    }
}

/// What stands after some cues were passed. Cues are named by their index.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Standing {
    /// How many cues were passed.
    pub passed: usize,
    /// The cue that began the chapter.
    pub chapter: Option<usize>,
    /// The cue whose caption stands.
    pub caption: Option<usize>,
    /// How fast the flight plays.
    pub speed: Speed,
    /// What is pointed at.
    pub highlight: Part,
    /// What is hidden.
    pub cover: Cover,
    /// The second situation.
    pub compare: Compare,
    /// The cue whose question was asked last. Once it is answered, the next chapter that begins
    /// later puts it away.
    pub question: Option<usize>,
    /// When that question was answered, in seconds from the start; none while it is open.
    pub revealed_at: Option<f64>,
}

impl Standing {
    /// Before any cue.
    pub const START: Self = Self {
        passed: 0,
        chapter: None,
        caption: None,
        speed: Speed::Real,
        highlight: Part::Nothing,
        cover: Cover::Nothing,
        compare: Compare::Alone,
        question: None,
        revealed_at: None,
    };

    /// After the first `passed` of the cues.
    pub fn after(cues: &[Cue], passed: usize) -> Self {
        let mut standing = Self::START;
        for (index, cue) in cues.iter().enumerate().take(passed) {
            standing.pass(index, cue);
        }
        standing
    }

    fn pass(&mut self, index: usize, cue: &Cue) {
        self.passed = index + 1;
        match &cue.act {
            Act::Chapter(_) => {
                self.chapter = Some(index);
                if self.revealed_at.is_some_and(|at| at < cue.at_s) {
                    self.question = None;
                    self.revealed_at = None;
                }
            }
            Act::Caption(text) => self.caption = (!text.is_empty()).then_some(index),
            Act::Speed(speed) => self.speed = *speed,
            Act::Highlight(part) => self.highlight = *part,
            Act::Ask(_) => {
                self.question = Some(index);
                self.revealed_at = None;
            }
            Act::Cover(cover) => self.cover = *cover,
            Act::Reveal => {
                self.revealed_at = self.question.map(|_| cue.at_s);
                self.cover = Cover::Nothing;
            }
            Act::Compare(compare) => self.compare = *compare,
            Act::Freeze | Act::SetIndicator => {}
        }
    }
}

/// How many cues are passed by whoever comes to a time otherwise than by playing: those before
/// it, and of those at it as many as come up to the first that stops. Times in seconds; a cue
/// within half a `step` of the time is at it.
pub fn passed_on_arrival(cues: &[Cue], time: f64, step: f64) -> usize {
    let before = cues.partition_point(|cue| cue.at_s < time - 0.5 * step);
    let until = cues.partition_point(|cue| cue.at_s <= time + 0.5 * step);
    passed_by(&cues[..until], before)
}

/// How many cues are passed by playing on, when `passed` were and those up to `until` are due:
/// all of them, or as many as come up to the first that stops.
pub fn passed_by(due: &[Cue], passed: usize) -> usize {
    let mut on = due.iter().enumerate().skip(passed);
    on.find(|(_, cue)| cue.act.stops())
        .map_or(due.len().max(passed), |(index, _)| index + 1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demonstration::{Answer, Question};

    const STEP: f64 = 0.005;

    fn cues() -> Vec<Cue> {
        let ask = Question {
            question: "Which way?".to_owned(),
            answer: Answer::Figure("way".to_owned()),
        };
        [
            (0.0, Act::Chapter("One".to_owned())),
            (0.0, Act::Caption("Look".to_owned())),
            (2.0, Act::Cover(Cover::Compass)),
            (2.0, Act::Ask(ask)),
            (2.0, Act::Speed(Speed::Quarter)),
            (5.0, Act::Chapter("Meanwhile".to_owned())),
            (6.0, Act::Reveal),
            (6.0, Act::Chapter("Seen".to_owned())),
            (6.0, Act::Freeze),
            (8.0, Act::Caption(String::new())),
            (8.0, Act::Chapter("Two".to_owned())),
            (9.0, Act::Compare(Compare::OtherHemisphere)),
        ]
        .map(|(at_s, act)| Cue { at_s, act })
        .to_vec()
    }

    #[test]
    fn a_question_stands_until_it_is_revealed_and_then_until_a_later_chapter() {
        let cues = cues();
        let asked = Standing::after(&cues, 4);
        assert_eq!((asked.question, asked.revealed_at), (Some(3), None));
        assert_eq!((asked.cover, asked.speed), (Cover::Compass, Speed::Real));
        let revealed = Standing::after(&cues, 8);
        assert_eq!(
            (revealed.question, revealed.revealed_at),
            (Some(3), Some(6.0))
        );
        assert_eq!(
            (revealed.cover, revealed.speed),
            (Cover::Nothing, Speed::Quarter)
        );
        assert_eq!(revealed.caption, Some(1));
        let end = Standing::after(&cues, usize::MAX);
        assert_eq!(
            (end.question, end.caption, end.chapter),
            (None, None, Some(10))
        );
        assert_eq!(end.compare, Compare::OtherHemisphere);
        assert_eq!(end.passed, cues.len());
    }

    #[test]
    fn what_stands_does_not_depend_on_the_way_there() {
        let cues = cues();
        let mut played = Standing::START;
        for (index, cue) in cues.iter().enumerate() {
            played.pass(index, cue);
            assert_eq!(played, Standing::after(&cues, index + 1));
        }
    }

    #[test]
    fn playing_stands_at_each_stop_and_goes_on_from_it() {
        let cues = cues();
        let due = |time: f64| &cues[..cues.partition_point(|cue| cue.at_s <= time)];
        assert_eq!(passed_by(due(0.0), 0), 2);
        assert_eq!(passed_by(due(7.0), 2), 4, "at the question");
        assert_eq!(passed_by(due(7.0), 4), 9, "at the freeze");
        assert_eq!(passed_by(due(7.0), 9), 9);
        assert_eq!(passed_by(due(20.0), 9), cues.len());
    }

    #[test]
    fn who_arrives_at_a_time_has_passed_what_is_before_it_and_stands_at_its_first_stop() {
        let cues = cues();
        for (time, passed) in [
            (0.0, 2),
            (1.9, 2),
            (2.0, 4),
            (2.004, 5),
            (6.0, 9),
            (60.0, 12),
        ] {
            assert_eq!(passed_on_arrival(&cues, time, STEP), passed, "{time}");
        }
        assert_eq!(passed_on_arrival(&[], 3.0, STEP), 0);
    }
}
