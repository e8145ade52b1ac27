//! What a student asks of an attempt, and what comes of it.

use super::{Attempt, LOOK_EVERY, Stage, Still};
use crate::clock::Rate;
use crate::drills::play::ask::Ask;
use crate::flown::start_of;
use compass::simulation::STEP;
use flights::Recorded;
use lessons::drill::mark::ASKED_DEG;
use lessons::drill::record::{Help, Record};
use lessons::drill::results::Answer;
use lessons::drill::{Aim, Kind};

/// How long before a roll-out another try begins, s; chosen: time to see where the turn is.
const BEFORE_S: f64 = 8.0;

impl Attempt {
    /// Does what the student asks for, where it can be done now.
    pub(in crate::drills::play) fn ask(&mut self, ask: Ask) {
        match (ask, self.stage) {
            (Ask::Choose(index), Stage::Asked) => self.choose(index),
            (Ask::GoOn, _) => self.go_on_or_stand(),
            (Ask::Bank(degrees), Stage::Flown) => self.bank(|bank| bank + f64::from(degrees)),
            (Ask::Level, Stage::Flown) => self.bank(|_| 0.0),
            (Ask::SetIndicator, Stage::Flown) => self.set_indicator(),
            (Ask::Finish, Stage::Flown) => self.finish(),
            (Ask::Uncover, Stage::Flown) => {
                self.uncovered = true;
                self.note(Help::Uncover);
            }
            (Ask::SlowDown, _) => self.set_rate(self.rate.slower()),
            (Ask::SpeedUp, _) => self.set_rate(self.rate.faster()),
            (Ask::LookAt(step), Stage::Explained) => {
                self.look_at(step);
                self.stand(Still::Paused);
            }
            (Ask::ByTheCompass, Stage::Explained) => self.by_the_compass(),
            (Ask::Again, Stage::Explained) => self.again(0),
            (Ask::AgainFromHere, Stage::Explained) if self.task.id.kind.is_flown() => {
                let here = self.scene.as_ref().map_or(0, |it| it.state().step);
                let [_, end] = self.span();
                // From its very end there is nothing to fly.
                self.again(if here < end {
                    here
                } else {
                    self.deciding_step()
                });
            }
            _ => {}
        }
    }

    fn bank(&mut self, to: impl FnOnce(f64) -> f64) {
        // What was flown for the student is not his to change.
        if let Some(flown) = self.flown.as_mut().filter(|_| self.scene.is_none()) {
            let now = flown.controls();
            let bank = to(now.bank().to_degrees().round());
            flown.set_controls(now.with_bank(bank.to_radians()));
        }
    }

    fn set_rate(&mut self, rate: Rate) {
        // What is to count begins at real time.
        if self.stage == Stage::Asked && self.task.id.kind.is_flown() {
            return;
        }
        // A flight that counts runs faster only where nobody flies it, for that helps nobody.
        if self.stage == Stage::Flown && self.is_piloted() {
            self.rate = rate.min(Rate::REAL);
        } else {
            self.rate = rate;
        }
        if self.stage == Stage::Flown && self.rate < Rate::REAL {
            self.note(Help::SlowMotion);
        }
    }

    /// Begins, goes on, or stands still.
    fn go_on_or_stand(&mut self) {
        let [from, to] = self.span();
        match (self.stage, self.still) {
            (Stage::Asked, _) if self.task.id.kind.is_flown() => {
                self.stage = Stage::Flown;
                if self.is_piloted() {
                    self.scene = None;
                }
                self.still = None;
            }
            (Stage::Flown, None) => {
                self.stand(Still::Paused);
                self.note(Help::Pause);
            }
            (Stage::Flown, Some(_)) => self.still = None,
            (Stage::Asked, _) if !self.is_watched() => {}
            (_, None) => self.stand(Still::Paused),
            (_, Some(_)) if from == to => {}
            (_, Some(still)) => {
                // From its end it is watched again from its start.
                let seen = self.scene.as_ref().map_or(0, |it| it.state().step);
                if still != Still::Paused && still != Still::Asleep || seen >= to {
                    self.look_at(from);
                }
                self.still = None;
            }
        }
    }

    fn set_indicator(&mut self) {
        let Some((flown, scene)) = self.flown.as_mut().zip(self.scene.as_ref()) else {
            return;
        };
        if self.task.id.kind != Kind::SetGyro {
            return;
        }
        // At a moment that the mark looks at too, so that both set it by the same reading.
        let step = scene.state().step / LOOK_EVERY * LOOK_EVERY;
        flown.set_indicator_at(step);
        if self.settings.last() != Some(&step) {
            self.settings.push(step);
        }
    }

    fn choose(&mut self, index: usize) {
        if index >= self.task.choices.len() {
            return;
        }
        self.chosen = Some(index);
        self.explain(Record::of_choice(self.task.id, index));
        let [from, to] = self.span();
        self.look_at(from);
        self.still = if from == to { Some(Still::End) } else { None };
    }

    pub(super) fn finish(&mut self) {
        let Some((flown, scenario)) = self.flown.as_ref().zip(self.scenario.as_ref()) else {
            return;
        };
        let seen = self
            .scene
            .as_ref()
            .map_or(flown.steps(), |it| it.state().step);
        let until = flown.record().until(seen);
        let recorded = Recorded {
            source: scenario.source(),
            situation: *scenario.situation(),
            air: flown.air(),
            start: start_of(scenario),
            inputs: until.inputs(),
            steps: until.steps(),
        };
        let set = self.settings.iter().map(|it| *it as f64 * STEP).collect();
        let record = Record::of_flight(self.task.id, &recorded, set);
        self.explain(record);
        self.look_at(seen);
        self.stand(Still::End);
    }

    fn explain(&mut self, record: Record) {
        let record = Record {
            used: self.used.clone(),
            allowed: self.put.allowed.clone(),
            ..record
        };
        match Answer::marked(record, self.seconds.round()) {
            Ok(marked) => self.marked = Some(marked),
            Err(error) => self.fault = Some(error.to_string()),
        }
        self.stage = Stage::Explained;
        self.rate = Rate::REAL;
        self.turn_of += 1;
    }

    /// The step from which on another try is worth while: shortly before the roll-out of a turn, or
    /// where it begins to count.
    fn deciding_step(&self) -> u64 {
        let Some(flown) = &self.flown else { return 0 };
        if let Some(Aim::HoldHeading { from_s, .. } | Aim::SetGyro { from_s, .. }) = self.task.aim {
            return ((from_s / STEP).round() as u64).min(flown.steps());
        }
        let banks = |step: &u64| flown.controls_at(*step).bank().to_degrees().abs() >= ASKED_DEG;
        let mut looks = (0..flown.steps()).rev().step_by(LOOK_EVERY as usize);
        let roll_out = looks.find(banks).unwrap_or(0);
        roll_out.saturating_sub((BEFORE_S / STEP) as u64)
    }

    /// Another try: from the question, or from a step of what was flown.
    fn again(&mut self, step: u64) {
        self.note(Help::GoBack);
        self.turn_of += 1;
        self.chosen = None;
        self.marked = None;
        self.fault = None;
        self.uncovered = false;
        self.rate = Rate::REAL;
        self.stand(Still::Ready);
        self.stage = if step == 0 {
            Stage::Asked
        } else {
            Stage::Flown
        };
        let settings = std::mem::take(&mut self.settings);
        let flown = self.flown.take();
        // It was built from the same before, so it can be again.
        if self.start_over().is_err() || step == 0 {
            return;
        }
        if !self.is_piloted() {
            if let Some(flown) = &mut self.flown {
                self.settings = settings.into_iter().filter(|it| *it <= step).collect();
                for set in &self.settings {
                    flown.set_indicator_at(*set);
                }
            }
            self.look_at(step);
        } else if let Some(flown) = flown {
            let cut = flown.until(step);
            if let Some(turn) = &mut self.turn {
                for it in cut.record().moments(LOOK_EVERY).skip(1) {
                    turn.is_over(&it.moment());
                }
            }
            self.flown = Some(cut);
            self.scene = None;
        }
    }
}
