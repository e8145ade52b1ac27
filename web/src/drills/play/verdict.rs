//! What a mark comes to, in a word.

use lessons::drill::Task;
use lessons::drill::mark::{Mark, Outcome};

/// What a mark comes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Verdict {
    /// The right choice.
    Right,
    /// Another one.
    Wrong,
    /// A flight within the tolerance.
    Within,
    /// A flight beyond it.
    Beyond,
    /// A flight that does not answer the task.
    Unmarked,
}

impl Verdict {
    /// Of an answer, whether it counts or not: one had with help is told what it came to too.
    pub(crate) fn of(task: &Task, mark: &Mark, chosen: Option<usize>) -> Self {
        if let Some(choice) = chosen.and_then(|it| task.choices.get(it)) {
            return if choice.right {
                Self::Right
            } else {
                Self::Wrong
            };
        }
        match (mark.outcome, mark.error_deg) {
            (Outcome::Passed, _) => Self::Within,
            (Outcome::Failed, _) => Self::Beyond,
            (Outcome::NotMarked, Some(off)) if off.abs() <= task.id.tolerance_deg => Self::Within,
            (Outcome::NotMarked, Some(_)) => Self::Beyond,
            (Outcome::NotMarked, None) => Self::Unmarked,
        }
    }

    /// Whether it is as it should be.
    pub(crate) fn is_good(self) -> bool {
        matches!(self, Self::Right | Self::Within)
    }
}
