//! What stood in the form before each change, to go back to.

use super::entry::Entry;
use std::collections::VecDeque;

/// How many changes can be undone; chosen: more than anyone steps back through.
const KEPT: usize = 100;

/// How a change joins those before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Step {
    /// It can be undone by itself.
    New,
    /// It belongs to the change before: a drag that goes on, a key that is held down.
    GoesOn,
    /// Typing: it belongs to what was typed just before in the same entry.
    In(Entry),
}

/// States of something, the latest last.
#[derive(Clone, Debug)]
pub(crate) struct History<T> {
    past: VecDeque<T>,
    last: Option<Step>,
}

impl<T> Default for History<T> {
    fn default() -> Self {
        Self {
            past: VecDeque::new(),
            last: None,
        }
    }
}

impl<T> History<T> {
    /// Keeps what stood before a change.
    pub(crate) fn keep(&mut self, before: T, step: Step) {
        let joins = match step {
            Step::New => false,
            Step::GoesOn => self.last.is_some(),
            Step::In(_) => self.last == Some(step),
        };
        if !joins {
            self.past.push_back(before);
            if self.past.len() > KEPT {
                self.past.pop_front();
            }
            self.last = Some(step);
        }
    }

    /// The next change is one by itself, whatever it is.
    pub(crate) fn end_step(&mut self) {
        self.last = None;
    }

    /// Gives what stood before the last change, which is forgotten.
    pub(crate) fn undo(&mut self) -> Option<T> {
        self.last = None;
        self.past.pop_back()
    }

    /// Whether there is nothing to undo.
    pub(crate) fn is_empty(&self) -> bool {
        self.past.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn typing_in_one_entry_is_one_step_and_in_another_another() {
        let mut history = History::default();
        for (before, entry) in [
            (0, Entry::Dip),
            (1, Entry::Dip),
            (2, Entry::Date),
            (3, Entry::Dip),
        ] {
            history.keep(before, Step::In(entry));
        }
        history.end_step();
        history.keep(4, Step::In(Entry::Dip));
        let mut undone = Vec::new();
        while let Some(it) = history.undo() {
            undone.push(it);
        }
        assert_eq!(undone, [4, 3, 2, 0]);
    }

    #[test]
    fn a_drag_is_one_step() {
        let mut history = History::default();
        history.keep(0, Step::New);
        history.keep(1, Step::GoesOn);
        history.keep(2, Step::GoesOn);
        history.keep(3, Step::New);
        assert_eq!((history.undo(), history.undo()), (Some(3), Some(0)));
        history.keep(5, Step::GoesOn);
        assert_eq!((history.undo(), history.undo()), (Some(5), None));
    }

    #[test]
    fn only_so_many_are_kept() {
        let mut history = History::default();
        for before in 0..3 * KEPT {
            history.keep(before, Step::New);
        }
        assert_eq!(history.past.len(), KEPT);
        assert_eq!(history.undo(), Some(3 * KEPT - 1));
    }
}
