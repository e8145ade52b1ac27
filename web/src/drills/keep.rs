//! What this browser keeps of a student's practice.

use super::put::Given;
use leptos::prelude::*;
use lessons::drill::TaskId;
use lessons::drill::practice::Practice;
use lessons::drill::results::Results;

/// What is kept; a copy reads and writes the same.
#[derive(Clone, Copy)]
pub(crate) struct Keep {
    practice: RwSignal<Practice>,
    handed: RwSignal<Vec<Results>>,
    begun: RwSignal<Vec<TaskId>>,
    fault: RwSignal<Option<String>>,
}

impl Keep {
    /// What this browser kept, as soon as it is read.
    pub(crate) fn open() -> Self {
        Self {
            practice: RwSignal::new(Practice::default()),
            handed: RwSignal::new(Vec::new()),
            begun: RwSignal::new(Vec::new()),
            fault: RwSignal::new(None),
        }
    }

    /// What was practised, class by class.
    pub(crate) fn practice(self) -> Signal<Practice> {
        self.practice.into()
    }

    /// What is wrong with the storage, in a sentence for the user; practice goes on without it.
    pub(crate) fn fault(self) -> Signal<Option<String>> {
        self.fault.into()
    }

    /// Takes in an answer, given on a day that is counted from any fixed one.
    pub(crate) fn answered(self, given: &Given, day: u32) {
        let (outcome, seconds) = (given.answer.outcome, given.answer.seconds);
        self.practice
            .update(|it| it.answered(&given.class, outcome, seconds, day));
    }

    /// Notes that a task was begun, so that one that is begun again says so.
    pub(crate) fn begin(self, task: TaskId) {
        self.begun.update(|it| it.push(task));
    }

    /// Whether a task was begun before.
    pub(crate) fn was_begun(self, task: &TaskId) -> bool {
        self.begun.with(|it| it.contains(task))
    }

    /// The results of sets that were handed out, under way and done.
    pub(crate) fn handed(self) -> Signal<Vec<Results>> {
        self.handed.into()
    }

    /// Takes in the results of a set, in place of those of the same set and seed.
    pub(crate) fn put_handed(self, results: Results) {
        self.handed.update(|all| {
            let same = |it: &&mut Results| it.set == results.set && it.seed == results.seed;
            match all.iter_mut().find(same) {
                Some(it) => *it = results,
                None => all.push(results),
            }
        });
    }
}

/// What is kept, for every part of the page.
pub(crate) fn use_keep() -> Keep {
    expect_context()
}
