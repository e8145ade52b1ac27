//! The session as the page sees it: signals to read, intents to send.

use crate::beside::Change;
use crate::clock::Rate;
use crate::cover::Cover;
use crate::intent::Intent;
use crate::player::Player;
use crate::preferences::{Aside, Preferences};
use crate::presenter::Presenter;
use crate::route::Route;
use crate::session::{Readout, Session};
use crate::setting::Setting;
use crate::situation_form::Draft;
use crate::teaching::{Teaching, leave};
use crate::words::FlightWords;
use compass::range::OutOfRange;
use flights::{ScenarioError, ScenarioFile};
use leptos::prelude::*;

/// Seconds between two updates of texts that only screen readers meet; chosen.
const BEAT: f64 = 1.0;
/// Seconds between two paintings of the chart while it grows; chosen: it gains a sample in each.
const CHART_BEAT: f64 = 0.1;

/// What the chart is drawn against.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Against {
    /// Time.
    Time,
    /// Heading.
    Heading,
}

/// What stands on the screen, and what of it is covered.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Shown {
    /// What stands beside the card.
    pub(crate) aside: Aside,
    /// The key list.
    pub(crate) keys: bool,
    /// The reasons.
    pub(crate) why: bool,
    /// The situation, unfolded.
    pub(crate) situation: bool,
    /// The timeline, and what it is drawn against.
    pub(crate) timeline: Option<Against>,
    /// The second situation.
    pub(crate) beside: Option<Change>,
    /// What is covered.
    pub(crate) cover: Cover,
}

/// What every component is given.
#[derive(Clone, Copy)]
pub(crate) struct Cockpit {
    session: StoredValue<Session, LocalStorage>,
    readout: RwSignal<Readout>,
    beat: RwSignal<f64>,
    chart_beat: RwSignal<f64>,
    told: RwSignal<String>,
    keys_shown: RwSignal<bool>,
    situation_shown: RwSignal<bool>,
    why_shown: RwSignal<bool>,
    timeline_shown: RwSignal<bool>,
    beside_shown: RwSignal<bool>,
    film_shown: RwSignal<bool>,
    /// What is taught with the flight, if this program has it.
    teaching: Option<Teaching>,
    change: RwSignal<Change>,
    cover: RwSignal<Cover>,
    /// Presenter mode.
    pub(crate) presenter: Presenter,
    /// The demonstration that is open, if one is.
    pub(crate) player: Player,
    against: RwSignal<Against>,
    /// The form that sets the next flight.
    pub(crate) draft: Draft,
    /// What the browser remembers.
    pub(crate) preferences: Preferences,
    /// The words of the page.
    pub(crate) words: &'static FlightWords,
}

impl Cockpit {
    /// A cockpit for a session and a form for the next; `wide` says whether there is room for the
    /// key list and the timeline.
    pub(crate) fn new(
        session: Session,
        draft: Draft,
        words: &'static FlightWords,
        wide: bool,
        teaching: Option<Teaching>,
    ) -> Self {
        Self {
            readout: RwSignal::new(session.readout()),
            session: StoredValue::new_local(session),
            beat: RwSignal::new(0.0),
            chart_beat: RwSignal::new(0.0),
            told: RwSignal::default(),
            keys_shown: RwSignal::new(wide),
            situation_shown: RwSignal::new(false),
            why_shown: RwSignal::new(false),
            timeline_shown: RwSignal::new(false),
            beside_shown: RwSignal::new(false),
            film_shown: RwSignal::new(false),
            teaching,
            change: RwSignal::default(),
            cover: RwSignal::new(Cover::Nothing),
            presenter: Presenter::new(),
            player: Player::new(),
            against: RwSignal::new(Against::Time),
            draft,
            preferences: Preferences::load(),
            words,
        }
    }

    /// What can be read now; the reader runs again whenever it changes.
    pub(crate) fn readout(self) -> Readout {
        self.readout.get()
    }

    /// A part of what can be read; its readers run only when that part changes.
    pub(crate) fn part<T>(self, of: impl Fn(&Readout) -> T + Send + Sync + 'static) -> Memo<T>
    where
        T: PartialEq + Send + Sync + 'static,
    {
        Memo::new(move |_| self.readout.with(&of))
    }

    /// A text made from what can be read, new at most once a second.
    pub(crate) fn slowly(
        self,
        of: impl Fn(&Readout) -> String + Send + Sync + 'static,
    ) -> Memo<String> {
        Memo::new(move |_| {
            self.beat.track();
            // What is covered must not be told for another second.
            self.cover.track();
            self.readout.with_untracked(&of)
        })
    }

    /// What can be read now, for readers that know by themselves when to run again.
    pub(crate) fn now(self) -> Readout {
        self.readout.get_untracked()
    }

    /// A text made from what can be read: new at most once a second in flight, and at once while
    /// the flight stands still.
    pub(crate) fn at_leisure(
        self,
        of: impl Fn(&Readout) -> String + Send + Sync + 'static,
    ) -> Memo<String> {
        let still = self.still();
        Memo::new(move |_| {
            self.beat.track();
            still.track();
            self.cover.track();
            self.readout.with_untracked(&of)
        })
    }

    /// The reader runs again whenever the chart is to be painted anew.
    pub(crate) fn track_chart(self, still: Memo<(u32, Option<u64>)>) {
        self.chart_beat.track();
        still.track();
    }

    /// The reader runs again once a second.
    pub(crate) fn track_beat(self) {
        self.beat.track();
    }

    /// Which flight this is and, while it stands still, the step that is read: changes at once
    /// with what a user does to the time, and seldom otherwise.
    pub(crate) fn still(self) -> Memo<(u32, Option<u64>)> {
        self.part(|readout| (readout.flight, readout.pause.map(|_| readout.step)))
    }

    /// Reads the session itself: the flight from its start.
    pub(crate) fn with_session<T>(self, of: impl FnOnce(&Session) -> T) -> T {
        self.session.with_value(of)
    }

    /// What was last told on demand.
    pub(crate) fn told(self) -> String {
        self.told.get()
    }

    /// Whether the key list is shown.
    pub(crate) fn keys_shown(self) -> bool {
        self.keys_shown.get()
    }

    /// Whether the situation is unfolded.
    pub(crate) fn situation_shown(self) -> bool {
        self.situation_shown.get()
    }

    /// Whether the page shows why the card does what it does.
    pub(crate) fn why_shown(self) -> bool {
        self.why_shown.get()
    }

    /// Whether the timeline is shown.
    pub(crate) fn timeline_shown(self) -> bool {
        self.timeline_shown.get()
    }

    /// Whether two are shown at once.
    pub(crate) fn beside_shown(self) -> bool {
        self.beside_shown.get()
    }

    /// Whether what makes films is shown.
    pub(crate) fn film_shown(self) -> bool {
        self.film_shown.get()
    }

    /// The parts that are shown or folded, for another program to show likewise.
    fn parts(self) -> [(&'static str, RwSignal<bool>); 4] {
        [
            ("keys", self.keys_shown),
            ("situation", self.situation_shown),
            ("timeline", self.timeline_shown),
            ("why", self.why_shown),
        ]
    }

    /// The names of the parts that are shown.
    pub(crate) fn shown_parts(self) -> String {
        let parts = self.parts().into_iter();
        let shown = parts.filter(|(_, shown)| shown.get_untracked());
        shown.map(|(name, _)| name).collect::<Vec<_>>().join(" ")
    }

    /// Shows the parts of these names, and no other.
    pub(crate) fn show_parts(self, names: &str) {
        for (name, shown) in self.parts() {
            shown.set(names.split(' ').any(|it| it == name));
        }
    }

    /// What is changed for the other one.
    pub(crate) fn change(self) -> Change {
        self.change.get()
    }

    /// Shows the same flight with this changed beside the first.
    pub(crate) fn compare(self, change: Change) {
        self.change.set(change);
        self.beside_shown.set(true);
        self.change_session(|session| {
            session.compare(Some(change));
            Ok(())
        });
    }

    /// Shows one situation alone.
    pub(crate) fn show_alone(self) {
        self.beside_shown.set(false);
        self.change_session(|session| {
            session.compare(None);
            Ok(())
        });
    }

    /// What stands on the screen now.
    pub(crate) fn shown(self) -> Shown {
        untrack(|| Shown {
            aside: self.preferences.aside(),
            keys: self.keys_shown(),
            why: self.why_shown(),
            situation: self.situation_shown(),
            timeline: self.timeline_shown().then(|| self.against()),
            beside: self.beside_shown().then(|| self.change()),
            cover: self.cover(),
        })
    }

    /// Puts this on the screen; what is there already is not touched.
    pub(crate) fn show(self, shown: Shown) {
        let now = self.shown();
        if shown.aside != now.aside {
            self.preferences.set_aside(shown.aside);
        }
        self.keys_shown.set(shown.keys);
        self.why_shown.set(shown.why);
        self.situation_shown.set(shown.situation);
        self.timeline_shown.set(shown.timeline.is_some());
        if let Some(against) = shown.timeline {
            self.against.set(against);
        }
        match shown.beside {
            Some(change) if shown.beside != now.beside => self.compare(change),
            None if now.beside.is_some() => self.show_alone(),
            _ => {}
        }
        if shown.cover != now.cover {
            self.set_cover(shown.cover);
        }
    }

    /// What is covered.
    pub(crate) fn cover(self) -> Cover {
        self.cover.get()
    }

    /// Covers so much, and shows the rest.
    fn set_cover(self, cover: Cover) {
        // First what is read: a text that is made anew must find it covered already.
        self.readout.update(|readout| readout.cover = cover);
        self.cover.set(cover);
        self.tell((self.words.presenter().covers)(cover).to_owned());
    }

    fn set_presenting(self, presenting: bool) {
        self.presenter.set_presenting(presenting);
        let words = self.words.presenter();
        self.tell(if presenting { words.begun } else { words.ended }.to_owned());
    }

    /// The next step of a lesson: see [`Intent::Advance`].
    fn advance(self) {
        if untrack(|| self.presenter.curtain()) {
            self.presenter.move_curtain();
        } else if self.cover.get_untracked().shows_both() {
            self.ask(Intent::Pause);
        } else {
            self.set_cover(Cover::Nothing);
        }
    }

    /// Puts the controls where a stick stands; see [`Session::fly_to`].
    pub(crate) fn fly_to(self, bank: Option<f64>, airspeed: Option<f64>) {
        self.session
            .update_value(|session| session.fly_to(bank, airspeed));
        self.look();
    }

    /// What the chart is drawn against.
    pub(crate) fn against(self) -> Against {
        self.against.get()
    }

    /// Draws the chart against something else.
    pub(crate) fn draw_against(self, against: Against) {
        self.against.set(against);
    }

    /// Puts something beside the card; the reasons, which may stand there, make room.
    pub(crate) fn put_aside(self, aside: Aside) {
        self.preferences.set_aside(aside);
        self.why_shown.set(false);
        self.tell((self.words.views.put_aside)(aside));
    }

    /// Does what is asked.
    pub(crate) fn ask(self, intent: Intent) {
        if self.teaching.is_some_and(|it| (it.takes)(self, intent)) {
            return;
        }
        let presenting = untrack(|| self.presenter.presenting());
        match intent {
            Intent::Present => self.set_presenting(!presenting),
            Intent::StopPresenting => self.set_presenting(false),
            Intent::Advance => self.advance(),
            Intent::AskClass => self.set_cover(Cover::Compass),
            Intent::Curtain => {
                self.presenter.move_curtain();
                let down = untrack(|| self.presenter.curtain());
                self.tell((self.words.presenter().curtain_told)(down).to_owned());
            }
            Intent::ChangeCover => self.set_cover(self.cover.get_untracked().next()),
            Intent::ToggleCover(cover) => {
                self.set_cover(self.cover.get_untracked().toggled(cover));
            }
            Intent::ShowKeys if presenting => self.presenter.show_keys(),
            // These have no place on a screen that shows only the middle.
            Intent::ShowWhy | Intent::ShowSituation | Intent::ShowFilm if presenting => {}
            // The list of keys and the reasons stand in the same place.
            Intent::ShowKeys => {
                self.keys_shown.update(|shown| *shown = !*shown);
                self.why_shown.set(false);
            }
            Intent::ShowWhy => {
                self.why_shown.update(|shown| *shown = !*shown);
                self.keys_shown.set(false);
            }
            Intent::ShowSituation => self.situation_shown.update(|shown| *shown = !*shown),
            // What is folded away is not changed unseen.
            Intent::Undo if self.situation_shown.get_untracked() => {
                let undone = self.draft.undo();
                let words = self.words.form();
                let told = if undone {
                    words.undone
                } else {
                    words.none_undone
                };
                self.tell(told.to_owned());
            }
            Intent::ShowFilm if self.teaching.is_none() => leave(self, &Route::Film),
            Intent::ShowFilm => self.film_shown.update(|shown| *shown = !*shown),
            Intent::ShowTimeline => self.timeline_shown.update(|shown| *shown = !*shown),
            Intent::ShowBeside if self.beside_shown.get_untracked() => self.show_alone(),
            Intent::ShowBeside => self.compare(self.change.get_untracked()),
            Intent::ChangeAside => self.put_aside(self.preferences.next_aside()),
            Intent::ChangeChart => self.change_chart(),
            Intent::ChangeView => self.preferences.change_view(),
            Intent::ChangeLight => self.preferences.change_light(),
            Intent::Tell => self.tell(self.readout.with_untracked(self.words.situation)),
            _ => {
                self.ask_session(intent);
                if intent == Intent::Loop {
                    self.tell((self.words.time().loop_told)(self.now().stretch));
                }
                if intent.moves_controls() && self.now().looking {
                    self.tell(self.words.looking_hint.to_owned());
                }
                if intent == Intent::SetIndicator && !self.now().looking {
                    // What was set is to be seen.
                    self.preferences.set_aside(Aside::Indicator);
                    let shown = self.now().indication().whole_degrees();
                    self.tell((self.words.views.indicator_set)(shown));
                }
                if matches!(intent, Intent::LastEvent | Intent::NextEvent)
                    && let Some(event) = self.with_session(Session::event_here)
                {
                    let moment = self.readout.with_untracked(self.words.moment);
                    // The name of an event says how the card errs.
                    self.tell(if self.cover.get_untracked().shows_both() {
                        (self.words.event_told)(&event.event, &moment)
                    } else {
                        moment
                    });
                }
            }
        }
    }

    /// Does what is asked of the flight alone.
    pub(crate) fn ask_session(self, intent: Intent) {
        self.change_session(|session| session.ask(intent));
    }

    /// Starts a flight from another setting.
    ///
    /// # Errors
    /// A flight that cannot be started; the one under way then goes on.
    pub(crate) fn begin(self, setting: Setting) -> Result<(), OutOfRange> {
        let begun = self
            .session
            .try_update_value(|session| session.begin(setting));
        self.look();
        begun.unwrap_or(Ok(()))
    }

    /// Opens a scripted or recorded flight, at its start; see [`Session::open`].
    ///
    /// # Errors
    /// A scenario that cannot be flown; the flight under way then goes on.
    pub(crate) fn open(self, file: &ScenarioFile) -> Result<(), ScenarioError> {
        let opened = self
            .session
            .try_update_value(|session| session.open(file))
            .unwrap_or(Ok(()));
        self.look();
        opened
    }

    /// Puts another session in the place of this one, and gives this one.
    pub(crate) fn exchange(self, other: Session) -> Option<Session> {
        let given = self.session.try_update_value(|session| {
            let next = other.after(session);
            std::mem::replace(session, next)
        });
        self.look();
        given
    }

    /// Plays or flies so fast from now on.
    pub(crate) fn set_rate(self, rate: Rate) {
        self.session.update_value(|session| session.set_rate(rate));
        self.look();
    }

    /// A frame of the browser at `now` seconds.
    pub(crate) fn frame(self, now: f64) {
        if self.session.try_update_value(|session| session.frame(now)) == Some(true) {
            self.look();
            let beat = (now / CHART_BEAT).floor();
            if self.chart_beat.get_untracked() != beat {
                self.chart_beat.set(beat);
            }
        }
        if let Some(teaching) = self.teaching {
            (teaching.frame)(self);
        }
        let beat = (now / BEAT).floor();
        if self.beat.get_untracked() != beat {
            self.beat.set(beat);
        }
    }

    /// The page goes out of sight.
    pub(crate) fn sleep(self) {
        self.session.update_value(Session::sleep);
        self.look();
    }

    /// Changes the session; what fails is told, and the flight goes on.
    pub(crate) fn change_session(self, by: impl FnOnce(&mut Session) -> Result<(), OutOfRange>) {
        if let Some(Err(_)) = self.session.try_update_value(by) {
            self.tell(self.words.failed.to_owned());
        }
        self.look();
    }

    /// Draws the chart against heading, or if that is seen already, against time.
    fn change_chart(self) {
        let shown = self.timeline_shown.get_untracked();
        self.timeline_shown.set(true);
        self.against
            .set(match (shown, self.against.get_untracked()) {
                (true, Against::Heading) => Against::Time,
                _ => Against::Heading,
            });
    }

    fn look(self) {
        let Some(read) = self.session.try_with_value(Session::readout) else {
            return;
        };
        let readout = Readout {
            cover: self.cover.get_untracked(),
            ..read
        };
        if readout != self.readout.get_untracked() {
            self.readout.set(readout);
        }
    }

    /// A screen reader says only what changes, so the same words twice differ by a space.
    pub(crate) fn tell(self, text: String) {
        self.told.update(|told| {
            *told = if *told == text { text + "\u{a0}" } else { text };
        });
    }
}

/// The cockpit of the page that this component stands in.
pub(crate) fn use_cockpit() -> Cockpit {
    expect_context()
}
