//! Results that are read and marked again, file after file, between frames.

use crate::between_frames::between_frames;
use crate::chosen_file::{Unread, text};
use leptos::prelude::*;
use leptos::task::spawn_local;
use lessons::drill::results::{Checking, Results};
use web_sys::File;

/// Results that were taken in.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Taken {
    /// The name of their file.
    pub(super) file: String,
    /// As marked again.
    pub(super) results: Results,
    /// How many marks were not what their records give.
    pub(super) changed: usize,
    /// The file's text, by which the same file is known again.
    text: String,
}

/// Why a file was not taken in.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Refusal {
    /// It was not read.
    Unread(Unread),
    /// It holds the same as another file.
    Same(String),
    /// What it holds is no results, or cannot be marked: the field, and a sentence.
    Wrong(String),
}

/// The file that is being marked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Now {
    pub(super) file: String,
    /// How many answers of it are marked again, and how many it has.
    pub(super) done: usize,
    pub(super) all: usize,
}

/// The gathering.
#[derive(Clone, Copy)]
pub(super) struct Gather {
    waiting: RwSignal<Vec<File>, LocalStorage>,
    now: RwSignal<Option<Now>>,
    taken: RwSignal<Vec<Taken>>,
    refused: RwSignal<Vec<(String, Refusal)>>,
    cancelled: RwSignal<bool>,
    /// Whether files are being worked through.
    works: StoredValue<bool>,
}

impl Gather {
    pub(super) fn new() -> Self {
        Self {
            waiting: RwSignal::new_local(Vec::new()),
            now: RwSignal::new(None),
            taken: RwSignal::new(Vec::new()),
            refused: RwSignal::new(Vec::new()),
            cancelled: RwSignal::new(false),
            works: StoredValue::new(false),
        }
    }

    /// What was taken in, in the order of the files.
    pub(super) fn taken(self) -> RwSignal<Vec<Taken>> {
        self.taken
    }

    /// What was not.
    pub(super) fn refused(self) -> RwSignal<Vec<(String, Refusal)>> {
        self.refused
    }

    /// What is being marked.
    pub(super) fn now(self) -> RwSignal<Option<Now>> {
        self.now
    }

    /// How many files wait.
    pub(super) fn left(self) -> usize {
        self.waiting.with(Vec::len)
    }

    /// Whether files were left unfinished.
    pub(super) fn is_cancelled(self) -> bool {
        self.cancelled.get()
    }

    /// Takes in files, after those that wait.
    pub(super) fn add(self, files: Vec<File>) {
        if files.is_empty() {
            return;
        }
        self.cancelled.set(false);
        self.refused.set(Vec::new());
        // Taken from the end.
        self.waiting.update(|it| {
            it.splice(0..0, files.into_iter().rev());
        });
        if !self.works.get_value() {
            self.works.set_value(true);
            spawn_local(self.next());
        }
    }

    /// Leaves what is not finished.
    pub(super) fn cancel(self) {
        self.cancelled.set(true);
        self.waiting.set(Vec::new());
        self.now.set(None);
    }

    /// Takes a file out of the table.
    pub(super) fn remove(self, file: &str) {
        self.taken.update(|it| it.retain(|it| it.file != file));
    }

    /// Empties the table.
    pub(super) fn clear(self) {
        self.taken.set(Vec::new());
        self.refused.set(Vec::new());
        self.cancelled.set(false);
    }

    async fn next(self) {
        let file = self.waiting.try_update(Vec::pop).flatten();
        let Some(file) = file else {
            // The page may have gone to another part, and all of this with it.
            let _ = self.works.try_update_value(|it| *it = false);
            return;
        };
        let name = file.name();
        let read = text(&file).await;
        if self.cancelled.try_get_untracked() != Some(false) {
            let _ = self.works.try_update_value(|it| *it = false);
            return;
        }
        let begun = read
            .map_err(Refusal::Unread)
            .and_then(|text| self.begin(&text).map(|it| (text, it)));
        match begun {
            Ok((text, checking)) => self.mark(name, text, checking),
            Err(refusal) => {
                self.refuse(name, refusal);
                self.go_on();
            }
        }
    }

    fn begin(self, text: &str) -> Result<Checking, Refusal> {
        let same = self.taken.with_untracked(|taken| {
            let found = taken.iter().find(|it| it.text == *text);
            found.map(|it| it.file.clone())
        });
        match same {
            Some(file) => Err(Refusal::Same(file)),
            None => Results::from_json(text)
                .map(Checking::of)
                .map_err(|error| Refusal::Wrong(error.to_string())),
        }
    }

    fn mark(self, file: String, text: String, mut checking: Checking) {
        let all = checking.results().answers.len();
        between_frames(move || {
            if self.cancelled.try_get_untracked() != Some(false) {
                let _ = self.works.try_update_value(|it| *it = false);
                return false;
            }
            self.now.set(Some(Now {
                file: file.clone(),
                done: checking.done(),
                all,
            }));
            match checking.step() {
                Ok(true) => return true,
                Ok(false) => {
                    let taken = Taken {
                        file: self.own_name(&file),
                        results: checking.results().clone(),
                        changed: checking.changed(),
                        text: text.clone(),
                    };
                    self.taken.update(|it| it.push(taken));
                }
                Err(error) => self.refuse(file.clone(), Refusal::Wrong(error.to_string())),
            }
            self.go_on();
            false
        });
    }

    fn go_on(self) {
        self.now.set(None);
        spawn_local(self.next());
    }

    fn refuse(self, file: String, refusal: Refusal) {
        self.refused.update(|it| it.push((file, refusal)));
    }

    /// Files of one name can hold different results, from different folders.
    fn own_name(self, file: &str) -> String {
        let had = |name: &str| {
            self.taken
                .with_untracked(|it| it.iter().any(|it| it.file == name))
        };
        let mut name = file.to_owned();
        let mut count = 1;
        while had(&name) {
            count += 1;
            name = format!("{file} ({count})");
        }
        name
    }
}
