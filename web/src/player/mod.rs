//! A demonstration that is played: its flight is flown at once and replayed by the session, and
//! its cues act as they are passed.

mod answers;
pub(crate) mod file;
mod follow;
pub(crate) mod headlines;
mod lead;
pub(crate) mod plan;
mod views;

use crate::cockpit::{Cockpit, Shown};
use crate::later::demonstrations;
use crate::session::Session;
use answers::Answers;
use headlines::Headlines;
use leptos::prelude::*;
use lessons::demonstration::{Act, Cue, Demonstration, DemonstrationError, Flown, Standing};
use std::sync::Arc;

/// The moment that the cues have followed to.
#[derive(Clone, Copy, Default)]
struct Followed {
    /// Which of the session's flights is the demonstration's.
    flight: u32,
    jumps: u32,
    time: f64,
    /// The latest moment that the class has seen.
    seen: f64,
    /// By how many times twice as fast the user wants it played than it says itself.
    tempo: i8,
}

/// What the user had before, to be had again.
struct Before {
    cockpit: Cockpit,
    session: Session,
    shown: Shown,
}

/// The demonstration that is open, if one is.
#[derive(Clone, Copy)]
pub(crate) struct Player {
    open: RwSignal<Option<Arc<Flown>>>,
    standing: RwSignal<Standing>,
    /// When the pilot took the controls, in seconds of the demonstration.
    away: RwSignal<Option<f64>>,
    at_end: RwSignal<bool>,
    captions: RwSignal<bool>,
    looped: RwSignal<bool>,
    /// What the class answered.
    pub(crate) answers: Answers,
    followed: StoredValue<Followed>,
    before: StoredValue<Option<Before>, LocalStorage>,
    /// The catalogue, once it was fetched.
    catalogue: RwSignal<Vec<Demonstration>>,
    /// What each of them comes to.
    pub(crate) headlines: Headlines,
    /// What kept something from being opened.
    fault: RwSignal<String>,
    plan_shown: RwSignal<bool>,
    /// A demonstration that the user wants to change, for where they are made.
    pub(crate) to_change: RwSignal<Option<Demonstration>>,
}

impl Player {
    /// A player with nothing in it.
    pub(crate) fn new() -> Self {
        Self {
            open: RwSignal::new(None),
            standing: RwSignal::new(Standing::START),
            away: RwSignal::new(None),
            at_end: RwSignal::new(false),
            captions: RwSignal::new(true),
            looped: RwSignal::new(false),
            answers: Answers::new(),
            followed: StoredValue::new(Followed::default()),
            before: StoredValue::new_local(None),
            catalogue: RwSignal::new(Vec::new()),
            headlines: Headlines::new(),
            fault: RwSignal::default(),
            plan_shown: RwSignal::new(false),
            to_change: RwSignal::new(None),
        }
    }

    /// The demonstrations of the catalogue, in order; none before they were fetched.
    pub(crate) fn catalogue(self) -> Vec<Demonstration> {
        self.catalogue.get()
    }

    /// Fetches the catalogue, unless it is there already.
    pub(crate) async fn fetch_catalogue(self) {
        if self.catalogue.with_untracked(Vec::is_empty) {
            self.catalogue.set(demonstrations().await);
        }
    }

    /// What kept something from being opened; empty if nothing did.
    pub(crate) fn fault(self) -> String {
        self.fault.get()
    }

    /// Says what kept something from being opened.
    pub(crate) fn set_fault(self, fault: String) {
        self.fault.set(fault);
    }

    /// Whether the lesson plan is shown.
    pub(crate) fn plan_shown(self) -> bool {
        self.plan_shown.get()
    }

    /// Shows the lesson plan, or puts it away.
    pub(crate) fn show_plan(self, shown: bool) {
        self.plan_shown.set(shown);
    }

    /// Measures one more demonstration of the catalogue.
    pub(crate) fn measure_next(self) {
        self.catalogue
            .with_untracked(|all| self.headlines.measure_next(all));
    }

    /// The demonstration of the catalogue that comes after the open one.
    pub(crate) fn next(self) -> Option<Demonstration> {
        let name = self.open.get()?.demonstration().name.clone();
        self.catalogue.with(|all| {
            let here = all.iter().position(|it| it.name == name)?;
            all.get(here + 1).cloned()
        })
    }

    /// The demonstration that is open, with its flight and figures.
    pub(crate) fn open_now(self) -> Option<Arc<Flown>> {
        self.open.get()
    }

    /// What the cues that were passed come to.
    pub(crate) fn standing(self) -> Standing {
        self.standing.get()
    }

    /// Whether the pilot has taken the controls of the demonstration's aircraft.
    pub(crate) fn is_away(self) -> bool {
        self.away.with(Option::is_some)
    }

    /// Whether a demonstration is on the screen: open, and not left to the pilot.
    pub(crate) fn plays(self) -> bool {
        self.open.with(Option::is_some) && !self.is_away()
    }

    /// Whether all of it was played.
    pub(crate) fn finished(self) -> bool {
        let passed = self.standing.with(|it| it.passed);
        let all = (self.open).with(|it| it.as_ref().is_some_and(|it| passed == cues(it).len()));
        all && self.at_end.get()
    }

    /// Whether it stands at a cue that waits for the instructor.
    pub(crate) fn waits(self) -> bool {
        let passed = self.standing.with(|it| it.passed);
        self.open.with(|it| {
            let last = it
                .as_ref()
                .and_then(|it| cues(it).get(passed.checked_sub(1)?));
            last.is_some_and(|it| it.act.stops())
        })
    }

    /// The latest moment that the class has seen, in seconds: what comes after it is for them to
    /// guess, so that no chart may show it. None without a demonstration.
    pub(crate) fn seen(self) -> Option<f64> {
        untrack(|| self.plays().then(|| self.followed.get_value().seen))
    }

    /// Whether captions are shown.
    pub(crate) fn captions(self) -> bool {
        self.captions.get()
    }

    /// Shows captions, or hides them.
    pub(crate) fn toggle_captions(self) {
        self.captions.update(|it| *it = !*it);
    }

    /// Whether it is played over and over.
    pub(crate) fn looped(self) -> bool {
        self.looped.get()
    }

    /// Plays it over and over, or once.
    pub(crate) fn toggle_loop(self) {
        self.looped.update(|it| *it = !*it);
    }

    /// Opens a demonstration at its start, in the place of what was flown.
    ///
    /// # Errors
    /// One that cannot be played: what was open stays.
    pub(crate) fn open(
        self,
        cockpit: Cockpit,
        demonstration: Demonstration,
    ) -> Result<(), DemonstrationError> {
        let flown = Flown::new(demonstration)?;
        let session = session_of(&flown)?;
        let shown = cockpit.shown();
        let given = cockpit.exchange(session);
        let is_first = self.before.with_value(Option::is_none);
        if let Some(session) = given.filter(|_| is_first) {
            self.before.set_value(Some(Before {
                cockpit,
                session,
                shown,
            }));
        }
        // What another demonstration put there is not what the user had.
        let before = (self.before).with_value(|it| it.as_ref().map(|it| it.shown));
        let views = &flown.demonstration().views;
        cockpit.show(views::shown(views, before.unwrap_or(shown)));
        let start = flown.plays()[0];
        self.followed.set_value(Followed {
            seen: start,
            ..Followed::default()
        });
        self.answers.clear();
        self.away.set(None);
        self.plan_shown.set(false);
        self.standing.set(Standing::START);
        let opened = cockpit.words.demonstrations().opened;
        let told = opened(
            &flown.said(&flown.demonstration().title),
            &flown.said(&flown.demonstration().look_for),
        );
        self.open.set(Some(Arc::new(flown)));
        self.come_to(cockpit, start);
        cockpit.tell(told);
        Ok(())
    }

    /// Puts it away. What the user had before is there again, but for a flight for which the
    /// controls were taken: that one stays, and the one before is the old one.
    pub(crate) fn close(self) {
        if untrack(|| self.open.with(Option::is_none)) {
            return;
        }
        let is_away = untrack(|| self.is_away());
        self.open.set(None);
        self.away.set(None);
        self.plan_shown.set(false);
        let before = self.before.try_update_value(Option::take).flatten();
        if let Some(before) = before {
            let cockpit = before.cockpit;
            if is_away {
                cockpit.change_session(|session| {
                    session.keep_as_old(before.session);
                    Ok(())
                });
            } else {
                cockpit.exchange(before.session);
            }
            cockpit.show(before.shown);
        }
    }
}

/// The cues of a demonstration.
fn cues(flown: &Flown) -> &[Cue] {
    &flown.demonstration().cues
}

/// A session that looks at the start of a demonstration's flight.
fn session_of(flown: &Flown) -> Result<Session, DemonstrationError> {
    let mut session = Session::of_script(&flown.demonstration().scenario)?;
    session.end_at(flown.plays()[1]);
    let set = cues(flown).iter().filter(|it| it.act == Act::SetIndicator);
    session.set_indicator_at(set.map(|it| it.at_s));
    Ok(session)
}
