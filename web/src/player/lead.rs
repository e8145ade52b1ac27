//! How the instructor leads a demonstration: play and stand, from cue to cue, take the controls
//! and come back.

use super::{Player, cues, session_of};
use crate::clock::Rate;
use crate::cockpit::{Cockpit, Shown};
use crate::cover::Cover;
use crate::intent::Intent;
use compass::simulation::STEP;
use leptos::prelude::*;
use lessons::demonstration::Speed;

/// Whoever goes back within this many seconds after a cue means the one before it; chosen: about
/// as long as it takes to press twice.
const JUST_PASSED: f64 = 1.0;

impl Player {
    /// Takes what is asked upon itself, if it means something else while a demonstration is open.
    pub(crate) fn takes(self, cockpit: Cockpit, intent: Intent) -> bool {
        if untrack(|| self.open.with(Option::is_none)) {
            return false;
        }
        let is_away = untrack(|| self.is_away());
        if is_away && intent == Intent::ReturnToOld {
            self.come_back(cockpit);
            return true;
        }
        if is_away {
            return matches!(intent, Intent::NextCue | Intent::LastCue);
        }
        let stands = cockpit.now().pause.is_some();
        match intent {
            Intent::Pause | Intent::Replay if stands => self.go_on(cockpit),
            Intent::Restart => self.again(cockpit),
            Intent::SlowDown => self.change_tempo(cockpit, -1),
            Intent::SpeedUp => self.change_tempo(cockpit, 1),
            Intent::FlyFromHere => self.take_controls(cockpit),
            Intent::Advance if untrack(|| cockpit.presenter.curtain()) => return false,
            Intent::Advance if stands => self.go_on(cockpit),
            Intent::Advance | Intent::NextCue => self.next_cue(cockpit),
            Intent::LastCue => self.last_cue(cockpit),
            it if it.moves_controls() && !cockpit.now().looking => {
                // A flight that has ended is flown on by the pilot.
                self.take_controls(cockpit);
                return false;
            }
            _ => return false,
        }
        true
    }

    /// Goes to a moment, and plays on from there if it played.
    pub(crate) fn jump(self, cockpit: Cockpit, time: f64) {
        let played = cockpit.now().pause.is_none();
        self.come_to(cockpit, time);
        if played && !untrack(|| self.waits()) {
            self.go_on(cockpit);
        }
    }

    /// Goes to a moment and stands there.
    pub(super) fn come_to(self, cockpit: Cockpit, time: f64) {
        cockpit.ask_session(Intent::LookAt(time));
        if let Some(flown) = self.open.get_untracked() {
            self.arrive(cockpit, &flown);
        }
    }

    /// Plays on: from the end, from the start again.
    fn go_on(self, cockpit: Cockpit) {
        if !self.at_end.get_untracked() {
            cockpit.ask_session(Intent::Pause);
        } else if untrack(|| self.finished()) {
            self.again(cockpit);
        } else if let Some(flown) = self.open.get_untracked() {
            self.pass(cockpit, &flown);
        }
    }

    /// Plays from the start again, the class's answers forgotten.
    pub(super) fn again(self, cockpit: Cockpit) {
        self.answers.clear();
        let open = self.open.get_untracked();
        let start = open.map_or(0.0, |it| it.plays()[0]);
        self.followed.update_value(|it| it.seen = start);
        self.come_to(cockpit, start);
        if !untrack(|| self.waits()) {
            self.go_on(cockpit);
        }
    }

    fn next_cue(self, cockpit: Cockpit) {
        let now = cockpit.now();
        if now.pause.is_some() && untrack(|| self.waits()) {
            self.go_on(cockpit);
            return;
        }
        let Some(flown) = self.open.get_untracked() else {
            return;
        };
        let mut later = cues(&flown).iter().map(|cue| cue.at_s);
        match later.find(|at| *at > now.time + 0.5 * STEP) {
            Some(time) => self.jump(cockpit, time),
            None => self.come_to(cockpit, f64::MAX),
        }
    }

    fn last_cue(self, cockpit: Cockpit) {
        let now = cockpit.now();
        let grace = match now.pause {
            Some(_) => 0.5 * STEP,
            None => JUST_PASSED * now.rate.factor(),
        };
        let time = self.open.with_untracked(|it| {
            let cues = it.as_ref().map(|it| cues(it)).unwrap_or_default();
            let mut earlier = cues.iter().map(|cue| cue.at_s).rev();
            earlier.find(|at| *at < now.time - grace)
        });
        self.come_to(cockpit, time.unwrap_or(0.0));
    }

    fn change_tempo(self, cockpit: Cockpit, by: i8) {
        let most = Rate::FASTEST.power() - Rate::SLOWEST.power();
        self.followed
            .update_value(|it| it.tempo = (it.tempo + by).clamp(-most, most));
        self.keep_tempo(cockpit);
    }

    /// Plays as fast as the cues say, and by so much faster or slower as the user wants.
    pub(super) fn keep_tempo(self, cockpit: Cockpit) {
        let speed = self.standing.with_untracked(|it| it.speed);
        let index = Speed::ALL.iter().position(|it| *it == speed);
        let real = Speed::ALL.iter().position(|it| *it == Speed::Real);
        let power = index.unwrap_or_default() as i8 - real.unwrap_or_default() as i8;
        cockpit.set_rate(Rate::nearest(power + self.followed.get_value().tempo));
    }

    fn take_controls(self, cockpit: Cockpit) {
        // The moment to return to is that of this instant, not of the last frame.
        self.frame(cockpit);
        cockpit.change_session(|session| {
            session.take_controls()?;
            // At the speed of real flight: it is flown now.
            session.set_rate(Rate::REAL);
            Ok(())
        });
        cockpit.show(Shown {
            cover: Cover::Nothing,
            ..cockpit.shown()
        });
        self.frame(cockpit);
    }

    /// Returns to the moment at which the pilot took the controls.
    pub(crate) fn come_back(self, cockpit: Cockpit) {
        let (Some(time), Some(flown)) = (self.away.get_untracked(), self.open.get_untracked())
        else {
            return;
        };
        // What was flown once can be flown again.
        if let Ok(session) = session_of(&flown) {
            let alone = Shown {
                beside: None,
                ..cockpit.shown()
            };
            cockpit.show(alone);
            cockpit.exchange(session);
            self.away.set(None);
            self.come_to(cockpit, time);
        }
    }
}
