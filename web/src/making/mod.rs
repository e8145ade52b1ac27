//! Where demonstrations are made: the draft that is open, where it is kept, and its flight in the
//! session.

mod browser;
mod shelf;

pub(crate) use shelf::{Kept, Refused};

use crate::cockpit::Cockpit;
use crate::intent::Intent;
use crate::route::Route;
use crate::session::Session;
use browser::{Browser, fresh_id};
use flights::{ScenarioError, ScenarioFile};
use leptos::ev;
use leptos::prelude::*;
use leptos_use_event_listener::use_event_listener;
use lessons::demonstration::{Demonstration, DemonstrationError};
use lessons::making::{Draft, Entry, Fault, Kind, Making, Step};
use shelf::Document;
use std::sync::Arc;
use std::time::Duration;
use web_sys::KeyboardEvent;

/// How long after a change it is saved, at most; chosen: less than it takes to close a page.
const SOON: Duration = Duration::from_millis(200);

/// Whether what was made is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Saved {
    /// As it stands.
    Yes,
    /// Not yet.
    Soon,
    /// It cannot be.
    No(Refused),
}

/// A demonstration that was deleted, to be put back.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Deleted {
    id: String,
    /// What it was called.
    pub(crate) title: String,
    raw: String,
}

/// What is kept, and what became of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Shelf {
    /// All that is kept, by title.
    pub(crate) kept: Vec<Kept>,
    /// Which of it is open.
    pub(crate) open: Option<String>,
    /// What was deleted last.
    pub(crate) deleted: Option<Deleted>,
    /// What could not be opened, and why.
    pub(crate) refused: Option<String>,
}

/// The bench on which demonstrations are made.
#[derive(Clone, Copy)]
pub(crate) struct Maker {
    cockpit: Cockpit,
    shown: Memo<bool>,
    making: RwSignal<Option<Making>>,
    document: StoredValue<Option<Document>>,
    saved: RwSignal<Saved>,
    shelf: RwSignal<Shelf>,
    selected: RwSignal<Option<u32>>,
    /// What was under way when the first demonstration was opened, to return to.
    own: StoredValue<Option<Session>, LocalStorage>,
    /// The flight of a demonstration that was brought into the session, and which of the
    /// session's flights that is.
    flight: StoredValue<Option<(Arc<ScenarioFile>, u32)>>,
    faults: Memo<Vec<Fault>>,
}

impl Maker {
    /// An empty bench.
    pub(crate) fn new(cockpit: Cockpit, route: Signal<Route>) -> Self {
        let making = RwSignal::new(None::<Making>);
        let maker = Self {
            cockpit,
            shown: Memo::new(move |_| route.get() == Route::Make),
            making,
            document: StoredValue::new(None),
            saved: RwSignal::new(Saved::Yes),
            shelf: RwSignal::new(Shelf::default()),
            selected: RwSignal::new(None),
            own: StoredValue::new_local(None),
            flight: StoredValue::new(None),
            faults: Memo::new(move |_| {
                making
                    .with(|making| making.as_ref().map(|it| it.draft().faults()))
                    .unwrap_or_default()
            }),
        };
        Effect::new(move |was: Option<bool>| {
            let shown = maker.shown.get();
            untrack(|| match (was.unwrap_or_default(), shown) {
                (false, true) => maker.enter(),
                (true, false) => maker.leave(),
                _ => {}
            });
            shown
        });
        Effect::new(move || {
            let to_change = cockpit.player.to_change.get();
            if maker.shown()
                && let Some(other) = to_change
            {
                cockpit.player.to_change.set(None);
                untrack(|| maker.change_it(other));
            }
        });
        // A page that goes saves at once.
        let _ = use_event_listener(window(), ev::pagehide, move |_| maker.save());
        maker
    }

    /// Whether the bench is seen.
    pub(crate) fn shown(self) -> bool {
        self.shown.get()
    }

    /// Whether a draft is open on it.
    pub(crate) fn is_open(self) -> bool {
        self.making.with(Option::is_some)
    }

    /// A part of the draft, or what stands for it where none is open. It is had anew with every
    /// change: a memo of each would be code more to load.
    pub(crate) fn part<T: Default>(
        self,
        of: impl Fn(&Draft) -> T + Copy + Send + Sync + 'static,
    ) -> impl Fn() -> T + Copy + Send + Sync + 'static {
        move || {
            self.making
                .with(|making| making.as_ref().map(|it| of(it.draft())))
                .unwrap_or_default()
        }
    }

    /// Numbers of the draft; their readers run only when these change.
    pub(crate) fn numbers(
        self,
        of: impl Fn(&Draft) -> Vec<u32> + Copy + Send + Sync + 'static,
    ) -> Memo<Vec<u32>> {
        let part = self.part(of);
        Memo::new(move |_| part())
    }

    /// Whether there is something to undo, and to do again.
    pub(crate) fn ways_back(self) -> [bool; 2] {
        self.making.with(|making| {
            let making = making.as_ref();
            making.map_or([false; 2], |it| [it.can_undo(), it.can_redo()])
        })
    }

    /// Whether what was made is kept.
    pub(crate) fn saved(self) -> Saved {
        self.saved.get()
    }

    /// What is kept, and what became of it.
    pub(crate) fn shelf(self) -> Shelf {
        self.shelf.get()
    }

    fn change_shelf(self, by: impl FnOnce(&mut Shelf)) {
        let before = self.shelf.get_untracked();
        let mut shelf = before.clone();
        by(&mut shelf);
        shelf.open = self
            .document
            .with_value(|it| it.as_ref().map(|it| it.id().to_owned()));
        // What is drawn anew loses the keyboard's place.
        if shelf != before {
            self.shelf.set(shelf);
        }
    }

    /// Everything that keeps it from being played.
    pub(crate) fn faults(self) -> Memo<Vec<Fault>> {
        self.faults
    }

    /// The cue that is being changed.
    pub(crate) fn selected(self) -> Option<u32> {
        self.selected.get()
    }

    /// Changes this cue from now on.
    pub(crate) fn select(self, id: u32) {
        self.selected.set(Some(id));
    }

    /// Changes the draft, and gives what the change gives; nothing where none is open.
    pub(crate) fn change<T>(
        self,
        step: Step<Entry>,
        by: impl FnOnce(&mut Draft) -> T,
    ) -> Option<T> {
        let given = self
            .making
            .try_update(|making| making.as_mut().map(|it| it.change(step, by)))
            .flatten();
        self.save_soon();
        given
    }

    /// A word was typed: the next is a step of its own.
    pub(crate) fn end_word(self) {
        self.making.update_untracked(|making| {
            if let Some(making) = making {
                making.end_step();
            }
        });
    }

    /// What was typed or dragged is done with.
    pub(crate) fn end_step(self) {
        self.end_word();
        self.show_flight(true);
    }

    /// Undoes the last change.
    pub(crate) fn undo(self) {
        self.step_back(Making::undo, self.cockpit.words.making().undone);
    }

    /// Does again what was undone last.
    pub(crate) fn redo(self) {
        self.step_back(Making::redo, self.cockpit.words.making().redone);
    }

    fn step_back(self, by: fn(&mut Making) -> bool, words: &'static str) {
        let done = self
            .making
            .try_update(|making| making.as_mut().is_some_and(by));
        if done == Some(true) {
            self.cockpit.tell(words.to_owned());
            self.save_soon();
            self.show_flight(true);
        }
    }

    /// Puts a cue of a kind at the moment that is seen.
    pub(crate) fn put(self, kind: Kind) {
        let time = self.cockpit.now().time;
        if let Some(id) = self.change(Step::New, |draft| draft.put(time, kind.act())) {
            self.selected.set(Some(id));
            let words = self.cockpit.words.making();
            self.cockpit
                .tell((words.put)(kind, time.min(self.length())));
        }
    }

    /// It plays from the moment that is seen on, or until it.
    pub(crate) fn trim(self, by: fn(&mut Draft, f64)) {
        let time = self.cockpit.now().time;
        self.change(Step::New, |draft| by(draft, time));
    }

    fn length(self) -> f64 {
        self.with_draft(Draft::length).unwrap_or_default()
    }

    /// Reads the draft once.
    pub(crate) fn with_draft<T>(self, of: impl FnOnce(&Draft) -> T) -> Option<T> {
        self.making
            .with_untracked(|making| making.as_ref().map(|it| of(it.draft())))
    }

    /// Plays what is made without its cues, or stands still.
    pub(crate) fn play(self) {
        self.show_flight(true);
        let now = self.cockpit.now();
        let [from, to] = self.with_draft(Draft::plays).unwrap_or_default();
        let outside = !now.looking || now.time < from || now.time >= to;
        if now.pause.is_some() && outside {
            self.cockpit.ask(Intent::LookAt(from));
        }
        self.cockpit.ask(Intent::Pause);
    }

    /// Whether it is played with its cues.
    pub(crate) fn previews(self) -> bool {
        self.cockpit.player.open_now().is_some()
    }

    /// Plays it with its cues, or says what is missing; or no longer plays it.
    pub(crate) fn preview(self) {
        if untrack(|| self.previews()) {
            self.cockpit.player.close();
            self.show_flight(true);
            return;
        }
        self.show_flight(true);
        let Some((draft, faults)) = self.with_draft(|it| (it.demonstration(), it.faults())) else {
            return;
        };
        if let Some(fault) = faults.first() {
            let words = self.cockpit.words.making();
            self.cockpit.tell((words.not_yet)(faults.len(), fault));
            return;
        }
        if let Err(error) = self.cockpit.player.open(self.cockpit, draft) {
            self.cockpit.tell(error.to_string());
        }
    }

    /// A key was pressed on the page while nothing is typed into; says whether it was the bench's.
    pub(crate) fn press(self, event: &KeyboardEvent, typing: bool) -> bool {
        // Its player has keys of its own.
        let here = untrack(|| self.shown() && self.is_open() && !self.previews());
        if !here || event.alt_key() || event.is_composing() {
            return false;
        }
        let key = event.key().to_lowercase();
        let command = event.ctrl_key() || event.meta_key();
        match (key.as_str(), command, typing) {
            ("z", true, _) if !event.shift_key() => self.undo(),
            ("z" | "y", true, _) => self.redo(),
            ("u", false, false) if event.shift_key() => self.redo(),
            ("u", false, false) => self.undo(),
            (" ", false, false) => self.play(),
            ("j", false, false) => self.trim(Draft::start_at),
            ("k", false, false) => self.trim(Draft::end_at),
            (digit, false, false) => match kind_of_key(digit) {
                Some(kind) if !event.repeat() => self.put(kind),
                _ => return false,
            },
            _ => return false,
        }
        event.prevent_default();
        true
    }

    /// Begins a demonstration of the flight in the session.
    pub(crate) fn begin_of_flight(self) {
        let words = self.cockpit.words.making();
        // The flight of the draft is no flight of the user's, as long as nothing else was flown.
        let own = self.shows_flight().then(|| {
            let of = |own: &Option<Session>| own.as_ref().map(Session::to_scenario);
            self.own.with_value(of)
        });
        let flight = own
            .flatten()
            .unwrap_or_else(|| self.cockpit.with_session(Session::to_scenario));
        let Some(flight) = flight else {
            self.refuse(words.no_file_of_flight.to_owned());
            return;
        };
        self.begin(Draft::of_flight(flight, words.first_title));
    }

    /// Changes a demonstration that was chosen elsewhere: a copy of it, or the draft that is
    /// previewed.
    fn change_it(self, other: Demonstration) {
        if self.previews() {
            self.preview();
        } else {
            self.begin_like(other);
        }
    }

    /// Begins a demonstration that is like another.
    pub(crate) fn begin_like(self, other: Demonstration) {
        let words = self.cockpit.words.making();
        let draft = Draft::of(other).map(|mut draft| {
            let title = (words.copy_of)(draft.title());
            draft.type_in(Entry::Title, &title);
            draft
        });
        self.begin(draft);
    }

    /// Opens the text of a file.
    pub(crate) fn begin_of_file(self, file: &str) {
        let words = self.cockpit.words.making();
        self.begin(Draft::from_json(file, words.first_title));
    }

    /// Says why a file could not be opened.
    pub(crate) fn refuse(self, why: String) {
        self.change_shelf(|shelf| shelf.refused = Some(why));
    }

    fn begin(self, draft: Result<Draft, DemonstrationError>) {
        match draft {
            Ok(draft) => {
                self.put_on_bench(Document::new(fresh_id()), draft);
                self.save();
            }
            Err(error) => self.refuse(error.to_string()),
        }
    }

    /// Opens what is kept under an id.
    pub(crate) fn open(self, id: &str) {
        let words = self.cockpit.words.making();
        match shelf::take_out(&Browser, id) {
            Ok(Some((document, file))) => match Draft::from_json(&file, words.first_title) {
                Ok(draft) => self.put_on_bench(document, draft),
                Err(error) => self.refuse((words.unreadable_told)(&error.to_string())),
            },
            Ok(None) => self.refuse(words.gone.to_owned()),
            Err(why) => self.refuse((words.not_kept)(why).to_owned()),
        }
        self.read_shelf();
    }

    fn put_on_bench(self, document: Document, draft: Draft) {
        // What was open is saved before it goes.
        self.save();
        let _ = shelf::set_last(&mut Browser, document.id());
        self.document.set_value(Some(document));
        self.change_shelf(|shelf| shelf.refused = None);
        self.selected.set(None);
        self.saved.set(Saved::Yes);
        self.making.set(Some(Making::new(draft)));
        if untrack(|| self.shown()) {
            self.show_flight(false);
        }
    }

    /// Deletes what is kept under an id; it can be put back.
    pub(crate) fn delete(self, id: &str) {
        let Shelf { kept, open, .. } = self.shelf.get_untracked();
        if open.as_deref() == Some(id) {
            self.save();
            self.document.set_value(None);
            self.making.set(None);
            self.saved.set(Saved::Yes);
        }
        let kept = kept.into_iter().find(|it| it.id == id);
        if let (Some(kept), Ok(Some(raw))) = (kept, shelf::raw(&Browser, id))
            && shelf::forget(&mut Browser, id).is_ok()
        {
            let deleted = Deleted {
                id: kept.id,
                title: kept.title.unwrap_or_default(),
                raw,
            };
            self.change_shelf(|shelf| shelf.deleted = Some(deleted));
        }
        self.read_shelf();
    }

    /// Puts back what was deleted last.
    pub(crate) fn undelete(self) {
        if let Some(deleted) = self.shelf.get_untracked().deleted {
            match shelf::put_back(&mut Browser, &deleted.id, &deleted.raw) {
                Ok(()) => self.change_shelf(|shelf| shelf.deleted = None),
                Err(why) => self.refuse((self.cockpit.words.making().not_kept)(why).to_owned()),
            }
        }
        self.read_shelf();
    }

    /// What is kept under an id, as it is kept.
    pub(crate) fn raw(self, id: &str) -> String {
        shelf::raw(&Browser, id).ok().flatten().unwrap_or_default()
    }

    fn save_soon(self) {
        if self.saved.get_untracked() != Saved::Soon {
            self.saved.set(Saved::Soon);
            set_timeout(move || self.save(), SOON);
        }
    }

    /// Saves what is not saved yet.
    fn save(self) {
        // A draft that was never saved has to be, and so has one whose saving failed.
        let is_new = self
            .document
            .with_value(|it| it.as_ref().is_some_and(Document::is_new));
        if self.saved.try_get_untracked() == Some(Saved::Yes) && !is_new {
            return;
        }
        let Some(mut document) = self.document.get_value() else {
            return;
        };
        if document.is_changed_elsewhere(&Browser) == Ok(true) {
            // Both are kept: this one under a key of its own from now on.
            document = Document::new(fresh_id());
            let words = self.cockpit.words.making();
            self.making.update(|making| {
                if let Some(making) = making {
                    making.change(Step::New, |draft| {
                        let title = (words.copy_of)(draft.title());
                        draft.type_in(Entry::Title, &title);
                    });
                }
            });
            let _ = shelf::set_last(&mut Browser, document.id());
            self.cockpit.tell(words.both_kept.to_owned());
        }
        let kept = self.with_draft(|draft| {
            let file = draft.demonstration().to_json();
            document.save(&mut Browser, draft.title(), &file)
        });
        self.document.set_value(Some(document));
        match kept {
            Some(Err(why)) => self.saved.set(Saved::No(why)),
            _ => self.saved.set(Saved::Yes),
        }
        self.read_shelf();
    }

    fn read_shelf(self) {
        match shelf::list(&Browser) {
            Ok(kept) => self.change_shelf(|shelf| shelf.kept = kept),
            Err(why) => self.saved.set(Saved::No(why)),
        }
    }

    fn enter(self) {
        // What was played gives way, and what was flown before it is what is kept.
        self.cockpit.player.close();
        self.read_shelf();
        if !untrack(|| self.cockpit.timeline_shown()) {
            self.cockpit.ask(Intent::ShowTimeline);
        }
        if untrack(|| self.is_open()) {
            self.show_flight(false);
        } else if let Some(last) = shelf::last(&Browser)
            && self
                .shelf
                .get_untracked()
                .kept
                .iter()
                .any(|it| it.id == last)
        {
            self.open(&last);
        }
    }

    fn leave(self) {
        self.save();
        self.cockpit.player.close();
        let as_brought = self.shows_flight();
        self.flight.set_value(None);
        if let Some(own) = self.own.try_update_value(Option::take).flatten() {
            let given = self.cockpit.exchange(own);
            // What was flown on the bench is not thrown away either.
            if let Some(flown) = given.filter(|_| !as_brought) {
                self.cockpit.change_session(|session| {
                    session.keep_as_old(flown);
                    Ok(())
                });
            }
        }
    }

    /// Whether the session's flight is the draft's, as it was brought there.
    fn shows_flight(self) -> bool {
        let number = self.cockpit.now().flight;
        self.flight
            .with_value(|it| it.as_ref().is_some_and(|it| it.1 == number))
    }

    /// Brings the draft's flight into the session where it is not there already; at the moment
    /// that is seen, or at its start.
    fn show_flight(self, same_moment: bool) {
        let Some(flight) = self.with_draft(|draft| draft.scenario().clone()) else {
            return;
        };
        let is_it = |it: &Option<(Arc<ScenarioFile>, u32)>| {
            it.as_ref().is_some_and(|it| Arc::ptr_eq(&it.0, &flight))
        };
        if self.shows_flight() && self.flight.with_value(is_it) {
            return;
        }
        let time = self.cockpit.now().time;
        if let Err(error) = self.bring(&flight) {
            self.cockpit.tell(error.to_string());
            return;
        }
        let from = self.with_draft(|it| it.plays()[0]).unwrap_or_default();
        let at = if same_moment { time } else { from };
        self.cockpit.ask(Intent::LookAt(at));
        let number = self.cockpit.now().flight;
        self.flight.set_value(Some((flight, number)));
    }

    /// Puts a flight in the place of what is flown; what was under way before the first is kept.
    fn bring(self, flight: &ScenarioFile) -> Result<(), ScenarioError> {
        let given = self.cockpit.exchange(Session::of_script(flight)?);
        if self.own.with_value(Option::is_none) {
            self.own.set_value(given);
        }
        Ok(())
    }
}

/// The kind of cue that a key puts: the digits in the order in which the kinds are offered.
pub(crate) fn kind_of_key(key: &str) -> Option<Kind> {
    let kinds = Kind::ALL.into_iter();
    kinds
        .enumerate()
        .find_map(|(index, kind)| (key_of(index) == key).then_some(kind))
}

/// The key that puts the kind at this place of the offer.
pub(crate) fn key_of(index: usize) -> String {
    ((index + 1) % 10).to_string()
}

/// The bench of the page that this component stands in.
pub(crate) fn use_maker() -> Maker {
    expect_context()
}
