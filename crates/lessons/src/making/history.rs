//! What stood before each change, to go back to, and forward again.

use std::collections::VecDeque;

/// How many changes can be undone; chosen: more than anyone steps back through.
pub const KEPT: usize = 200;

/// How a change joins those before it; `K` names what is typed into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step<K> {
    /// It can be undone by itself.
    New,
    /// It belongs to the change before: a drag that goes on, a key that is held down.
    GoesOn,
    /// Typing: it belongs to what was typed just before in the same entry.
    In(K),
}

/// States of something, the latest last.
#[derive(Clone, Debug)]
pub struct History<T, K> {
    past: VecDeque<T>,
    undone: Vec<T>,
    last: Option<Step<K>>,
}

impl<T, K> Default for History<T, K> {
    fn default() -> Self {
        Self {
            past: VecDeque::new(),
            undone: Vec::new(),
            last: None,
        }
    }
}

impl<T, K: Copy + PartialEq> History<T, K> {
    /// Keeps what stood before a change. What was undone cannot be done again after it.
    pub fn keep(&mut self, before: T, step: Step<K>) {
        let joins = match step {
            Step::New => false,
            Step::GoesOn => self.last.is_some(),
            Step::In(_) => self.last == Some(step),
        };
        self.undone.clear();
        if !joins {
            self.past.push_back(before);
            if self.past.len() > KEPT {
                self.past.pop_front();
            }
            self.last = Some(step);
        }
    }

    /// The next change is one by itself, whatever it is.
    pub fn end_step(&mut self) {
        self.last = None;
    }

    /// Puts what stood before the last change in the place of what stands now, and says whether
    /// there was a change.
    pub fn undo(&mut self, now: &mut T) -> bool {
        self.last = None;
        let before = self.past.pop_back();
        before.is_some_and(|before| {
            self.undone.push(std::mem::replace(now, before));
            true
        })
    }

    /// Puts what stood before the last undoing in the place of what stands now, and says whether
    /// anything was undone.
    pub fn redo(&mut self, now: &mut T) -> bool {
        self.last = None;
        let after = self.undone.pop();
        after.is_some_and(|after| {
            self.past.push_back(std::mem::replace(now, after));
            true
        })
    }

    /// Whether there is a change to undo.
    pub fn can_undo(&self) -> bool {
        !self.past.is_empty()
    }

    /// Whether there is one to do again.
    pub fn can_redo(&self) -> bool {
        !self.undone.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn undone(history: &mut History<i32, char>) -> Vec<i32> {
        let mut now = -1;
        std::iter::from_fn(|| history.undo(&mut now).then_some(now)).collect()
    }

    #[test]
    fn typing_in_one_entry_is_one_step_and_in_another_another() {
        let mut history = History::default();
        for (before, entry) in [(0, 'a'), (1, 'a'), (2, 'b'), (3, 'a')] {
            history.keep(before, Step::In(entry));
        }
        history.end_step();
        history.keep(4, Step::In('a'));
        assert_eq!(undone(&mut history), [4, 3, 2, 0]);
    }

    #[test]
    fn a_drag_is_one_step() {
        let mut history = History::<i32, char>::default();
        history.keep(0, Step::New);
        history.keep(1, Step::GoesOn);
        history.keep(2, Step::GoesOn);
        history.keep(3, Step::New);
        assert_eq!(undone(&mut history), [3, 0]);
        history.keep(5, Step::GoesOn);
        assert_eq!(undone(&mut history), [5]);
    }

    #[test]
    fn what_is_undone_is_done_again_until_something_else_is_done() {
        let mut history = History::<i32, char>::default();
        history.keep(0, Step::New);
        history.keep(1, Step::New);
        let mut now = 2;
        assert!(history.undo(&mut now) && now == 1);
        assert!(history.undo(&mut now) && now == 0);
        assert!(history.redo(&mut now) && now == 1);
        assert!(history.undo(&mut now) && now == 0);
        assert!(!history.undo(&mut now) && now == 0);
        assert!(history.can_redo());
        history.keep(0, Step::New);
        now = 7;
        assert!(!history.redo(&mut now) && now == 7);
        assert!(history.can_undo() && !history.can_redo());
    }

    #[test]
    fn only_so_many_are_kept() {
        let mut history = History::<usize, char>::default();
        for before in 0..3 * KEPT {
            history.keep(before, Step::New);
        }
        assert_eq!(history.past.len(), KEPT);
        let mut now = 9;
        assert!(history.undo(&mut now) && now == 3 * KEPT - 1);
    }
}
