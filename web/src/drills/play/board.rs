//! The attempt as signals: the components read, and ask.

use super::ask::Ask;
use super::attempt::{Attempt, Shown, Stage};
use crate::drills::put::{Given, Put};
use crate::preferences::Preferences;
use crate::words::Words;
use crate::words::play::{PlayWords, Seen};
use compass::heading_indicator::GyroHeading;
use leptos::prelude::*;

/// Seconds between two updates of texts that only screen readers meet; chosen.
const BEAT: f64 = 1.0;

/// What is called as a task is answered.
#[derive(Clone, Copy)]
pub(super) struct Calls {
    /// Whether the task was begun before, here or in another tab.
    pub(super) was_begun: Callback<(), bool>,
    pub(super) begun: Callback<()>,
    pub(super) given: Callback<Given>,
    pub(super) next: Callback<()>,
}

/// A task that is put; a copy reads and asks the same.
#[derive(Clone, Copy)]
pub(super) struct Board {
    attempt: StoredValue<Option<Attempt>, LocalStorage>,
    shown: RwSignal<Option<Shown>>,
    fault: RwSignal<Option<String>>,
    beat: RwSignal<f64>,
    told: RwSignal<String>,
    calls: Calls,
    moves: Signal<bool>,
    pub(super) words: &'static PlayWords,
    pub(super) page: &'static Words,
    pub(super) preferences: Preferences,
}

impl Board {
    /// An empty one; `moves` says whether things may move without being asked to.
    pub(super) fn new(
        calls: Calls,
        moves: Signal<bool>,
        words: &'static PlayWords,
        page: &'static Words,
    ) -> Self {
        Self {
            attempt: StoredValue::new_local(None),
            shown: RwSignal::new(None),
            fault: RwSignal::new(None),
            beat: RwSignal::new(0.0),
            told: RwSignal::default(),
            calls,
            moves,
            words,
            page,
            preferences: expect_context(),
        }
    }

    /// Prepares the task. A board that is gone by then stays empty.
    pub(super) fn prepare(self, put: Put) {
        match Attempt::new(put) {
            Ok(attempt) => {
                let shown = attempt.shown();
                if self.attempt.try_set_value(Some(attempt)).is_none() {
                    let _ = self.shown.try_set(Some(shown));
                }
            }
            Err(reason) => {
                let _ = self.fault.try_set(Some(reason));
            }
        }
    }

    /// Why there is no task.
    pub(super) fn fault(self) -> Option<String> {
        self.fault.get()
    }

    /// How far it is; none while it is prepared.
    pub(super) fn stage(self) -> Memo<Option<(Stage, u32)>> {
        Memo::new(move |_| self.shown.with(|it| it.map(|it| (it.stage, it.turn_of))))
    }

    /// What can be seen now.
    pub(super) fn shown(self) -> Option<Shown> {
        self.shown.get()
    }

    /// A part of what can be seen; its readers run only when that part changes.
    pub(super) fn part<T>(self, of: impl Fn(&Shown) -> T + Send + Sync + 'static) -> Memo<Option<T>>
    where
        T: PartialEq + Send + Sync + 'static,
    {
        Memo::new(move |_| self.shown.with(|shown| shown.as_ref().map(&of)))
    }

    /// Something of the attempt that does not change while it is shown.
    pub(super) fn of<T>(self, of: impl FnOnce(&Attempt) -> T) -> Option<T> {
        self.attempt
            .try_with_value(|it| it.as_ref().map(of))
            .flatten()
    }

    /// What is seen, in words; new at most once a second.
    pub(super) fn seen(self) -> Signal<String> {
        Memo::new(move |_| {
            self.beat.track();
            let shown = self.shown.get_untracked();
            shown.map_or(String::new(), |it| (self.words.seen)(seen(&it)))
        })
        .into()
    }

    /// What is to be read out.
    pub(super) fn told(self) -> String {
        self.told.get()
    }

    /// Reads something out.
    pub(super) fn tell(self, text: String) {
        // What is said twice is to be read out twice.
        let again = self.told.with_untracked(|it| *it == text);
        self.told.set(if again { format!("{text} ") } else { text });
    }

    /// A frame of the browser at `now` seconds.
    pub(super) fn frame(self, now: f64) {
        self.change(|attempt| attempt.frame(now));
        if now - self.beat.get_untracked() >= BEAT {
            self.beat.set(now);
        }
    }

    /// The page went out of sight.
    pub(super) fn sleep(self) {
        self.change(|attempt| {
            attempt.sleep();
            true
        });
    }

    /// Whether the task was begun before it was put, or by another tab since.
    pub(super) fn was_begun(self) -> bool {
        let put = self.of(|it| it.put().begun_before) == Some(true);
        // Another try is begun here.
        let first = (self.shown).with(|it| it.is_some_and(|it| it.turn_of == 0));
        put || first && self.calls.was_begun.run(())
    }

    /// Does what is asked for.
    pub(super) fn ask(self, ask: Ask) {
        match ask {
            Ask::Next => {
                if self.stage_now() == Some(Stage::Explained) {
                    self.calls.next.run(());
                }
            }
            Ask::Tell => {
                let shown = self.shown.get_untracked();
                self.tell(shown.map_or(String::new(), |it| (self.words.seen)(seen(&it))));
            }
            _ => {
                let was_begun = untrack(|| self.was_begun());
                self.change(|attempt| {
                    if was_begun {
                        attempt.was_begun();
                    }
                    attempt.ask(ask);
                    true
                });
                self.beat.update(|_| ());
            }
        }
    }

    fn stage_now(self) -> Option<Stage> {
        self.shown.with_untracked(|it| it.map(|it| it.stage))
    }

    /// Changes the attempt, shows what came of it, and calls who waits for it.
    fn change(self, by: impl FnOnce(&mut Attempt) -> bool) {
        let before = self.stage_now();
        let moves = self.moves.get_untracked();
        let came = self.attempt.try_update_value(|it| {
            let attempt = it.as_mut()?;
            if !by(attempt) {
                return None;
            }
            let given = attempt.give();
            if given.is_some() && !moves {
                attempt.rest();
            }
            Some((attempt.shown(), given, attempt.counts()))
        });
        let Some((shown, given, counts)) = came.flatten() else {
            return;
        };
        if counts && before == Some(Stage::Asked) && shown.stage != Stage::Asked {
            self.calls.begun.run(());
        }
        if let Some(given) = given {
            self.calls.given.run(given);
        }
        self.shown.set(Some(shown));
    }
}

/// What is seen, as far as it is shown.
pub(super) fn seen(shown: &Shown) -> Seen {
    let Some(moment) = &shown.moment else {
        return Seen::default();
    };
    let has_card = shown.has_card;
    Seen {
        compass: (has_card && shown.cover.shows_compass())
            .then(|| moment.reading.compass.whole_degrees()),
        heading: (has_card && shown.cover.shows_heading())
            .then(|| moment.motion.heading.whole_degrees()),
        indicator: indication(shown).map(|it| it.whole_degrees()),
        bank: Some(moment.motion.bank.to_degrees().round() as i32),
        rate_of_turn: (!has_card)
            .then(|| (10.0 * moment.motion.rate_of_turn.to_degrees()).round() as i32),
        time: (shown.stage == Stage::Flown).then_some(moment.time as u32),
    }
}

/// What the heading indicator shows.
pub(super) fn indication(shown: &Shown) -> Option<GyroHeading> {
    let (indicator, moment) = (shown.indicator?, shown.moment?);
    Some(indicator.indication(moment.motion.heading, moment.time))
}

/// The board of the task that this component stands in.
pub(super) fn use_board() -> Board {
    expect_context()
}
