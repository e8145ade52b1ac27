//! What this browser keeps of a student's practice.
//!
//! All of it is in memory too, so that practice goes on whatever the storage does; what could not
//! be stored waits, and is tried again with every change.

mod base;
mod fault;
mod tabs;

use super::put::Given;
use base::Change;
pub(crate) use fault::Fault;
use idb::Database;
use leptos::prelude::*;
use leptos::task::spawn_local;
use lessons::drill::TaskId;
use lessons::drill::kept::{Kept, Logged, Settings};
use lessons::drill::practice::Practice;
use lessons::drill::results::Results;
use std::rc::Rc;
use tabs::Tabs;
use web_sys::js_sys::Date;

/// What is kept; a copy reads and writes the same.
#[derive(Clone, Copy)]
pub(crate) struct Keep {
    whole: RwSignal<Kept>,
    practice: RwSignal<Practice>,
    fault: RwSignal<Option<Fault>>,
    ready: RwSignal<bool>,
    base: StoredValue<Option<Rc<Database>>, LocalStorage>,
    tabs: StoredValue<Tabs, LocalStorage>,
    /// Changes that are not stored yet, in their order.
    waiting: StoredValue<Vec<Change>>,
    /// Whether they are being stored, or all is being read.
    busy: StoredValue<bool>,
    /// Whether all is to be read anew.
    stale: StoredValue<bool>,
}

impl Keep {
    /// What this browser kept, as soon as it is read.
    pub(crate) fn open() -> Self {
        let keep = Self {
            whole: RwSignal::new(Kept::default()),
            practice: RwSignal::new(Practice::default()),
            fault: RwSignal::new(None),
            ready: RwSignal::new(false),
            base: StoredValue::new_local(None),
            tabs: StoredValue::new_local(Tabs::default()),
            waiting: StoredValue::new(Vec::new()),
            busy: StoredValue::new(false),
            stale: StoredValue::new(true),
        };
        let tabs = Tabs::new(move || {
            keep.stale.set_value(true);
            keep.settle();
        });
        keep.tabs.set_value(tabs);
        keep.settle();
        keep
    }

    /// Whether what was kept is read, as far as it can be.
    pub(crate) fn ready(self) -> Signal<bool> {
        self.ready.into()
    }

    /// What was practised, class by class.
    pub(crate) fn practice(self) -> Signal<Practice> {
        self.practice.into()
    }

    /// All of it.
    pub(crate) fn whole(self) -> Signal<Kept> {
        self.whole.into()
    }

    /// What the student chose.
    pub(crate) fn settings(self) -> Memo<Settings> {
        Memo::new(move |_| self.whole.with(|it| it.settings))
    }

    /// Chooses.
    pub(crate) fn set_settings(self, settings: Settings) {
        self.whole.update(|it| it.settings = settings);
        self.store([Change::Settings(settings)]);
    }

    /// What is wrong with the storage; practice goes on without it.
    pub(crate) fn fault(self) -> Signal<Option<Fault>> {
        self.fault.into()
    }

    /// Takes in an answer, given on a day that is counted from any fixed one.
    pub(crate) fn answered(self, given: &Given, day: u32) {
        let (outcome, seconds) = (given.answer.outcome, given.answer.seconds);
        let logged = Logged {
            task: given.answer.record.task,
            class: given.class.clone(),
            outcome,
            seconds,
            day,
            at_ms: Date::now().max(0.0) as u64,
        };
        self.practice
            .update(|it| it.answered(&given.class, outcome, seconds, day));
        self.whole.update(|it| it.answers.push(logged.clone()));
        self.store([Change::Answer(logged)]);
    }

    /// Notes that a task was begun, so that one that is begun again says so.
    pub(crate) fn begin(self, task: TaskId) {
        if !self.was_begun(&task) {
            self.whole.update(|it| it.begun.push(task));
            self.store([Change::Begun(task)]);
        }
    }

    /// Whether a task was begun before.
    pub(crate) fn was_begun(self, task: &TaskId) -> bool {
        self.whole.with(|it| it.begun.contains(task))
    }

    /// Whether a task was begun or answered before.
    pub(crate) fn was_had(self, task: &TaskId) -> bool {
        self.whole.with_untracked(|it| {
            it.begun.contains(task) || it.answers.iter().any(|had| had.task == *task)
        })
    }

    /// The results of sets that were handed out, under way and done.
    pub(crate) fn handed(self) -> Signal<Vec<Results>> {
        Memo::new(move |_| self.whole.with(|it| it.handed.clone())).into()
    }

    /// Takes in the results of a set, together with those of the same set and seed.
    pub(crate) fn put_handed(self, results: Results) {
        self.whole.update(|it| it.put_handed(results.clone()));
        self.store([Change::Handed(results)]);
    }

    /// Keeps all of this too, but for its settings.
    pub(crate) fn add(self, kept: Kept) {
        self.show(self.whole.get_untracked().with(kept.clone()));
        self.stale.set_value(true);
        self.store([Change::Add(Box::new(kept))]);
    }

    /// Keeps this and nothing else.
    pub(crate) fn replace(self, kept: Kept) {
        let settings = kept.settings;
        self.show(kept.clone());
        // All or none of them: what is stored in one go is one transaction.
        self.store([
            Change::Clear,
            Change::Add(Box::new(kept)),
            Change::Settings(settings),
        ]);
    }

    /// Goes back from what was kept after a change to what was kept before it; what came later,
    /// here or in another tab, stays.
    pub(crate) fn go_back(self, before: Kept, after: Kept) {
        let settings = before.settings;
        let added = after.without(&before);
        let mut now = self.whole.get_untracked().without(&added);
        now = now.with(before.clone());
        now.settings = settings;
        self.show(now);
        self.stale.set_value(true);
        self.store([
            Change::Remove(Box::new(added)),
            Change::Add(Box::new(before)),
            Change::Settings(settings),
        ]);
    }

    fn show(self, kept: Kept) {
        self.practice.set(kept.practice());
        self.whole.set(kept);
    }

    fn store(self, changes: impl IntoIterator<Item = Change>) {
        self.waiting.update_value(|it| it.extend(changes));
        self.settle();
    }

    /// Reads and stores until there is nothing left to do, or nothing more that can be done.
    fn settle(self) {
        if self.busy.try_update_value(|it| std::mem::replace(it, true)) != Some(false) {
            return;
        }
        spawn_local(async move {
            let done = self.work().await;
            if let Err(fault) = done {
                self.fault.set(Some(fault));
            }
            self.now_ready();
            self.busy.set_value(false);
        });
    }

    /// Once, so that no part is shown anew.
    fn now_ready(self) {
        if !self.ready.get_untracked() {
            self.ready.set(true);
        }
    }

    async fn work(self) -> Result<(), Fault> {
        loop {
            let base = self.opened().await?;
            let changes = self.waiting.get_value();
            if !changes.is_empty() {
                base::write(&base, &changes).await?;
                // Others may have come meanwhile.
                self.waiting.update_value(|it| {
                    it.drain(..changes.len());
                });
                self.tabs.with_value(Tabs::tell);
            } else if self.stale.get_value() {
                let (kept, damaged) = base::read(&base).await?;
                self.stale.set_value(false);
                // What came meanwhile is in memory alone: it is stored and read again.
                if self.waiting.with_value(Vec::is_empty) {
                    self.show(kept);
                } else {
                    self.stale.set_value(true);
                }
                self.fault
                    .set((damaged > 0).then_some(Fault::Damaged(damaged)));
            } else {
                let stored_again = |it: &mut Option<Fault>| {
                    if !matches!(it, Some(Fault::Damaged(_))) {
                        *it = None;
                    }
                };
                self.fault.update(stored_again);
                return Ok(());
            }
        }
    }

    async fn opened(self) -> Result<Rc<Database>, Fault> {
        if let Some(base) = self.base.get_value() {
            return Ok(base);
        }
        let blocked = move || {
            self.fault.set(Some(Fault::Blocked));
            // The page need not wait for the other tab.
            self.now_ready();
        };
        let lost = move |fault| {
            self.base.set_value(None);
            self.fault.set(Some(fault));
        };
        let base = Rc::new(base::open(blocked, lost).await?);
        self.base.set_value(Some(Rc::clone(&base)));
        Ok(base)
    }
}

/// What is kept, for every part of the page.
pub(crate) fn use_keep() -> Keep {
    expect_context()
}
