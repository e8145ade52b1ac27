//! The form as it is filled in: what stands in it, what it means, and the way back.

use super::entry::{Entry, Fault};
use super::{SituationForm, Step, Way};
use crate::setting::Setting;
use leptos::prelude::*;
use lessons::making::History;

/// The form under a user's hands.
#[derive(Clone, Copy)]
pub(crate) struct Draft {
    form: RwSignal<SituationForm>,
    history: RwSignal<History<SituationForm, Entry>>,
    meant: Memo<Result<Setting, Vec<Fault>>>,
    at_first: StoredValue<SituationForm>,
}

impl Draft {
    /// A form that opens as this one.
    pub(crate) fn new(at_first: SituationForm) -> Self {
        let form = RwSignal::new(at_first.clone());
        Self {
            form,
            history: RwSignal::new(History::default()),
            meant: Memo::new(move |_| form.with(SituationForm::setting)),
            at_first: StoredValue::new(at_first),
        }
    }

    /// A part of the form; its readers run only when that part changes.
    pub(crate) fn part<T>(self, of: impl Fn(&SituationForm) -> T + Send + Sync + 'static) -> Memo<T>
    where
        T: PartialEq + Send + Sync + 'static,
    {
        Memo::new(move |_| self.form.with(&of))
    }

    /// What the form means, or what is wrong with it.
    pub(crate) fn meant(self) -> Memo<Result<Setting, Vec<Fault>>> {
        self.meant
    }

    /// The way in which the field is set.
    pub(crate) fn way(self) -> Memo<Way> {
        self.part(|form| form.way)
    }

    /// Changes the form, so that it can be undone.
    pub(crate) fn change(self, step: Step, by: impl FnOnce(&mut SituationForm)) {
        let before = self.form.get_untracked();
        let mut after = before.clone();
        by(&mut after);
        if after != before {
            self.history.update(|history| history.keep(before, step));
            self.form.set(after);
        }
    }

    /// What was typed is done with.
    pub(crate) fn end_step(self) {
        self.history.update(History::end_step);
    }

    /// Whether there is a change to undo.
    pub(crate) fn can_undo(self) -> bool {
        self.history.with(History::can_undo)
    }

    /// Undoes the last change, and says whether there was one.
    pub(crate) fn undo(self) -> bool {
        let mut form = self.form.get_untracked();
        let undone = self.history.try_update(|history| history.undo(&mut form));
        if undone == Some(true) {
            self.form.set(form);
        }
        undone == Some(true)
    }

    /// Puts the form as it was at first; this too can be undone.
    pub(crate) fn reset(self) {
        let at_first = self.at_first.get_value();
        self.change(Step::New, |form| *form = at_first);
    }
}
