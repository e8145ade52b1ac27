//! How the cues of a demonstration follow its flight: what they come to is put on the screen and
//! told, however the moment that is seen was come to.

use super::{Player, cues, views};
use crate::cockpit::Cockpit;
use crate::intent::Intent;
use crate::session::Session;
use compass::simulation::STEP;
use leptos::prelude::*;
use lessons::demonstration::{Act, Flown, Standing, passed_by, passed_on_arrival};

impl Player {
    /// Follows the flight: whatever cues it passed act.
    pub(crate) fn frame(self, cockpit: Cockpit) {
        let Some(flown) = self.open.get_untracked() else {
            return;
        };
        let (now, was) = (cockpit.now(), self.followed.get_value());
        if now.flight != was.flight {
            if self.away.get_untracked().is_none() {
                self.away.set(Some(was.time));
                cockpit.tell(cockpit.words.demonstrations().flying.to_owned());
            }
        } else if cockpit.with_session(Session::jumps) != was.jumps || now.time < was.time {
            self.arrive(cockpit, &flown);
        } else if now.time > was.time {
            self.pass(cockpit, &flown);
        }
    }

    /// Has passed by playing whatever lies before this moment, or as far as the first cue that
    /// stops: there the flight then stands.
    pub(super) fn pass(self, cockpit: Cockpit, flown: &Flown) {
        let cues = cues(flown);
        let passed = self.standing.with_untracked(|it| it.passed);
        let at_end = self.note(cockpit);
        let time = cockpit.now().time + 0.5 * STEP;
        // A cue may lie between the last step and the flight's end.
        let until = if at_end {
            cues.len()
        } else {
            cues.partition_point(|cue| cue.at_s <= time)
        };
        let on = passed_by(&cues[..until], passed);
        self.stand(cockpit, flown, Standing::after(cues, on), false);
        let last = cues[..on]
            .last()
            .filter(|cue| cue.act.stops() && on > passed);
        if let Some(stop) = last {
            cockpit.ask_session(Intent::LookAt(stop.at_s));
            self.note(cockpit);
        } else if at_end && on == cues.len() && self.looped.get_untracked() {
            self.again(cockpit);
        }
    }

    /// Has come to this moment otherwise than by playing.
    pub(super) fn arrive(self, cockpit: Cockpit, flown: &Flown) {
        let at_end = self.note(cockpit);
        let cues = cues(flown);
        let passed = if at_end {
            // Past whatever stops there: who goes to the end means the end.
            cues.len()
        } else {
            passed_on_arrival(cues, cockpit.now().time, STEP)
        };
        self.stand(cockpit, flown, Standing::after(cues, passed), true);
    }

    /// Notes the moment that is seen, and says whether it is the end.
    fn note(self, cockpit: Cockpit) -> bool {
        let now = cockpit.now();
        self.followed.update_value(|it| {
            it.flight = now.flight;
            it.jumps = cockpit.with_session(Session::jumps);
            it.time = now.time;
            it.seen = it.seen.max(now.time);
        });
        let at_end = !now.looking;
        if self.at_end.get_untracked() != at_end {
            self.at_end.set(at_end);
        }
        at_end
    }

    /// Puts on the screen what stands now: all of it, or as much as differs from what stood.
    fn stand(self, cockpit: Cockpit, flown: &Flown, new: Standing, all: bool) {
        let old = self.standing.get_untracked();
        if new != old {
            self.standing.set(new);
        }
        if all || new.speed != old.speed {
            self.keep_tempo(cockpit);
        }
        let mut shown = cockpit.shown();
        // What no cue touches is the user's own.
        let touched = |by: fn(&Act) -> bool| all && cues(flown).iter().any(|it| by(&it.act));
        if new.cover != old.cover || touched(|it| matches!(it, Act::Cover(_) | Act::Reveal)) {
            shown.cover = views::cover(new.cover);
        }
        if new.compare != old.compare || touched(|it| matches!(it, Act::Compare(_))) {
            shown.beside = views::change(new.compare);
        }
        cockpit.show(shown);
        let told = self.told(cockpit, flown, &old, &new);
        if !told.is_empty() {
            cockpit.tell(told);
        }
    }

    /// What a screen reader is told of what is new.
    fn told(self, cockpit: Cockpit, flown: &Flown, old: &Standing, new: &Standing) -> String {
        let words = cockpit.words.demonstrations();
        let act = |index: Option<usize>| Some(&cues(flown).get(index?)?.act);
        let mut told = Vec::new();
        if new.chapter != old.chapter
            && let Some(Act::Chapter(title)) = act(new.chapter)
        {
            told.push(format!("{}.", flown.said(title)));
        }
        if new.caption != old.caption
            && self.captions.get_untracked()
            && let Some(Act::Caption(text)) = act(new.caption)
        {
            told.push(flown.said(text));
        }
        if (new.question, new.revealed_at) != (old.question, old.revealed_at)
            && let Some(Act::Ask(question)) = act(new.question)
            && let Some(posed) = flown.posed(question)
        {
            told.push(if new.revealed_at.is_some() {
                (words.answered)(&posed)
            } else {
                (words.asked)(&posed)
            });
        }
        told.join(" ")
    }
}
