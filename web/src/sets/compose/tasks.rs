//! The tasks of a set, made between frames.

use crate::between_frames::between_frames;
use leptos::prelude::*;
use lessons::drill::set::PracticeSet;
use lessons::drill::{Task, TaskId, generate};

/// The seed of the tasks that are shown where a set has none; chosen.
pub(super) const EXAMPLE_SEED: u64 = 1;

/// Tasks that are being made.
#[derive(Clone, Copy)]
pub(super) struct Making {
    made: RwSignal<Vec<Task>>,
    waiting: StoredValue<Vec<TaskId>>,
    whole: RwSignal<usize>,
    fault: RwSignal<Option<String>>,
    /// Counts what was asked for, so that what is no longer wanted stops.
    turn: StoredValue<u32>,
}

impl Making {
    pub(super) fn new() -> Self {
        Self {
            made: RwSignal::new(Vec::new()),
            waiting: StoredValue::new(Vec::new()),
            whole: RwSignal::new(0),
            fault: RwSignal::new(None),
            turn: StoredValue::new(0),
        }
    }

    /// The tasks that are made, in their order.
    pub(super) fn made(self) -> RwSignal<Vec<Task>> {
        self.made
    }

    /// How many there are to be; none where nothing is being made.
    pub(super) fn whole(self) -> usize {
        self.whole.get()
    }

    /// Whether some are still to be made.
    pub(super) fn is_at_work(self) -> bool {
        self.made.with(Vec::len) < self.whole.get()
    }

    /// Why it ended before all were made.
    pub(super) fn fault(self) -> Option<String> {
        self.fault.get()
    }

    /// Makes these tasks in place of any before, then does what is given with all of them.
    pub(super) fn make(self, tasks: Vec<TaskId>, done: impl FnOnce(&[Task]) + 'static) {
        self.stop();
        self.made.set(Vec::new());
        self.whole.set(tasks.len());
        self.waiting.set_value(tasks.into_iter().rev().collect());
        let turn = self.turn.get_value();
        let mut done = Some(done);
        between_frames(move || {
            // Something else was asked for, or the page has gone on.
            if self.turn.try_get_value() != Some(turn) {
                return false;
            }
            let Some(next) = self.waiting.try_update_value(Vec::pop).flatten() else {
                if let Some(done) = done.take() {
                    self.made.with_untracked(|it| done(it));
                }
                return false;
            };
            match generate(&next) {
                Ok(task) => self.made.update(|it| it.push(task)),
                Err(error) => {
                    self.fault.set(Some(error.to_string()));
                    self.whole.set(self.made.with_untracked(Vec::len));
                    return false;
                }
            }
            true
        });
    }

    /// Makes no more.
    pub(super) fn stop(self) {
        self.turn.update_value(|it| *it = it.wrapping_add(1));
        self.fault.set(None);
        self.whole.set(self.made.with_untracked(Vec::len));
    }

    /// Puts away what was made.
    pub(super) fn clear(self) {
        self.stop();
        self.made.set(Vec::new());
        self.whole.set(0);
    }
}

/// The tasks of a set as they are shown.
pub(super) fn shown(set: &PracticeSet) -> Vec<TaskId> {
    set.tasks(EXAMPLE_SEED)
}
