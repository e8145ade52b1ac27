//! A task that is put to a student, and the answer that is given to it.

use lessons::drill::record::Help;
use lessons::drill::results::Answer;
use lessons::drill::{Class, TaskId};

/// A task as it is put.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Put {
    /// The task.
    pub(crate) task: TaskId,
    /// What may help in it.
    pub(crate) allowed: Vec<Help>,
    /// Whether it was begun before and left: its answer then says so.
    pub(crate) begun_before: bool,
}

/// An answer that was given, marked.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Given {
    /// What class of situations the task belongs to.
    pub(crate) class: Class,
    /// The record, how long it took, and the mark.
    pub(crate) answer: Answer,
}
