//! A task from its question to its explanation. It knows no browser: frame times and what the
//! student asks for come in (`attempt/acts.rs`), what can be seen goes out.

mod acts;
mod turns;

use crate::clock::{Clock, Rate, Tick};
use crate::cover::Cover;
use crate::drills::put::{Given, Put};
use crate::flown::Flown;
use compass::heading_indicator::HeadingIndicator;
use compass::simulation::{Moment, STEP, STEPS_PER_SECOND, Simulation};
use flights::Scenario;
use lessons::drill::mark::{Mark, TurnFollowed};
use lessons::drill::record::{Help, Record};
use lessons::drill::results::Answer;
use lessons::drill::{Kind, Task, generate};
pub(super) use turns::Turns;

/// Marks look at a flight ten times a second, and so does what must agree with them.
const LOOK_EVERY: u64 = STEPS_PER_SECOND / 10;
/// The longest time between two frames that counts as time spent, s; chosen: beyond it the page
/// was out of sight.
const LONGEST_SPENT: f64 = 1.0;

/// How far it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Stage {
    /// The question is put.
    Asked,
    /// It is flown.
    Flown,
    /// It was answered and is explained.
    Explained,
}

/// Why nothing moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Still {
    /// Nobody began yet.
    Ready,
    /// The student asked for it.
    Paused,
    /// The page was out of sight.
    Asleep,
    /// The end of what there is to see.
    End,
}

/// What can be seen at one instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Shown {
    pub(super) stage: Stage,
    pub(super) still: Option<Still>,
    pub(super) rate: Rate,
    /// The instant; none of a task on paper.
    pub(super) moment: Option<Moment>,
    /// The bank that is asked for, whole degrees, right positive.
    pub(super) bank_asked: i32,
    /// What is not to be shown of card and heading.
    pub(super) cover: Cover,
    /// Whether the card is shown at all: a turn by the clock has none until it is marked.
    pub(super) has_card: bool,
    pub(super) indicator: Option<HeadingIndicator>,
    /// How often it was set.
    pub(super) settings: usize,
    /// The step that is seen, and the first and the last that can be.
    pub(super) step: u64,
    pub(super) span: [u64; 2],
    /// Changes with every answer and every try.
    pub(super) turn_of: u32,
}

/// A task, and what became of it so far.
pub(super) struct Attempt {
    put: Put,
    task: Task,
    scenario: Option<Scenario>,
    flown: Option<Flown>,
    /// The moment that is seen of what was flown; none while the student flies on from its end.
    scene: Option<Simulation>,
    stage: Stage,
    still: Option<Still>,
    clock: Clock,
    rate: Rate,
    used: Vec<Help>,
    uncovered: bool,
    /// At which steps the indicator was set.
    settings: Vec<u64>,
    turn: Option<TurnFollowed>,
    chosen: Option<usize>,
    marked: Option<(Answer, Mark)>,
    /// Why it could not be marked at all.
    fault: Option<String>,
    /// The try whose answer was given last.
    given: Option<u32>,
    /// Seconds spent on it, and when the last frame was.
    seconds: f64,
    last_frame: Option<f64>,
    turn_of: u32,
    /// The turn by the clock that this one by the compass came after.
    by_clock: Option<Record>,
}

impl Attempt {
    /// A task as it is put.
    ///
    /// # Errors
    /// A task that there is not, in a sentence.
    pub(super) fn new(put: Put) -> Result<Self, String> {
        let task = generate(&put.task).map_err(|error| error.to_string())?;
        let mut attempt = Self {
            scenario: None,
            flown: None,
            scene: None,
            stage: Stage::Asked,
            still: Some(Still::Ready),
            clock: Clock::default(),
            rate: Rate::REAL,
            used: if put.begun_before {
                vec![Help::Reload]
            } else {
                Vec::new()
            },
            uncovered: false,
            settings: Vec::new(),
            turn: None,
            chosen: None,
            marked: None,
            fault: None,
            given: None,
            seconds: 0.0,
            last_frame: None,
            turn_of: 0,
            by_clock: None,
            put,
            task,
        };
        if let Some(flight) = &attempt.task.flight {
            let scenario = flight.read().map_err(|error| error.to_string())?;
            attempt.scenario = Some(scenario);
            attempt.start_over()?;
        }
        Ok(attempt)
    }

    /// The task.
    pub(super) fn task(&self) -> &Task {
        &self.task
    }

    /// What it is put with.
    pub(super) fn put(&self) -> &Put {
        &self.put
    }

    /// What was flown.
    pub(super) fn flown(&self) -> Option<&Flown> {
        self.flown.as_ref()
    }

    /// The scenario that it starts as.
    pub(super) fn scenario(&self) -> Option<&Scenario> {
        self.scenario.as_ref()
    }

    /// The answer and its mark, once there is one; or why there is none.
    pub(super) fn marked(&self) -> Result<Option<&(Answer, Mark)>, &str> {
        match &self.fault {
            Some(fault) => Err(fault),
            None => Ok(self.marked.as_ref()),
        }
    }

    /// Which choice was taken.
    pub(super) fn chosen(&self) -> Option<usize> {
        self.chosen
    }

    /// The answer, where it counts, the first time that there is one. Another try is marked, and
    /// given in its place only where it may be: of a flight that may be taken back.
    pub(super) fn give(&mut self) -> Option<Given> {
        let (answer, _) = self.marked.as_ref().filter(|_| self.counts())?;
        let counts = match self.given {
            None => true,
            Some(last) => {
                let may_again = self.put.allowed.contains(&Help::GoBack);
                last != self.turn_of && may_again && self.task.id.kind.is_flown()
            }
        };
        if !counts {
            return None;
        }
        self.given = Some(self.turn_of);
        Some(Given {
            class: self.task.class.clone(),
            answer: answer.clone(),
        })
    }

    /// Whether the student flies it, so that the flight grows under his hands.
    fn is_piloted(&self) -> bool {
        self.task.id.kind.is_flown() && self.task.id.kind != Kind::SetGyro
    }

    /// Whether the stretch can be watched before the answer.
    pub(super) fn is_watched(&self) -> bool {
        matches!(self.task.id.kind, Kind::Read | Kind::NameTheCause)
    }

    /// The first and the last step that can be seen now.
    fn span(&self) -> [u64; 2] {
        let Some(flight) = &self.task.flight else {
            return [0, 0];
        };
        let last = self.flown.as_ref().map_or(0, Flown::steps);
        let step = |time: f64| ((time / STEP).round() as u64).min(last);
        let to = match (self.stage, self.task.id.kind) {
            (Stage::Asked, Kind::Read) => flight.asked_at_s.unwrap_or(flight.watch_to_s),
            (Stage::Asked, Kind::NameTheCause) => flight.watch_to_s,
            (Stage::Asked, _) => 0.0,
            (_, kind) if kind.is_flown() => return [0, last],
            _ => flight.watch_to_s,
        };
        match self.task.id.kind {
            Kind::Read | Kind::NameTheCause => [step(flight.watch_from_s), step(to)],
            _ => [0, step(to)],
        }
    }

    /// Puts the flight back to where it starts.
    fn start_over(&mut self) -> Result<(), String> {
        let Some(scenario) = &self.scenario else {
            return Ok(());
        };
        let level = || HeadingIndicator::agreeing(self.task.at_latitude_deg.to_radians(), 0.0).ok();
        let indicator = self.task.indicator(scenario.heading()).or_else(level);
        let Some(indicator) = indicator else {
            return Ok(());
        };
        let mut flown =
            Flown::about_to_start(scenario, indicator).map_err(|error| error.to_string())?;
        if !self.is_piloted() {
            flown.fly_out(scenario);
        }
        self.turn = matches!(self.task.id.kind, Kind::RollOut | Kind::TimedTurn)
            .then(|| TurnFollowed::from(&flown.end().moment()));
        self.flown = Some(flown);
        self.settings.clear();
        let [from, _] = self.span();
        self.look_at(from);
        Ok(())
    }

    /// What can be seen now.
    pub(super) fn shown(&self) -> Shown {
        let scene = self.scene.as_ref().or(self.flown.as_ref().map(Flown::end));
        let carried = if self.still.is_none() {
            self.clock.carried()
        } else {
            0.0
        };
        let moment = scene.map(|it| {
            if carried > 0.0 {
                it.moment_after(carried)
            } else {
                it.moment()
            }
        });
        let step = scene.map_or(0, |it| it.state().step);
        let has_indicator = self.task.id.kind == Kind::SetGyro;
        let flown = self.flown.as_ref();
        let bank = flown.map_or(0.0, |it| match &self.scene {
            Some(scene) => it.controls_at(scene.state().step).bank(),
            None => it.controls().bank(),
        });
        Shown {
            stage: self.stage,
            still: self.still,
            rate: self.rate,
            moment,
            bank_asked: bank.to_degrees().round() as i32,
            cover: self.cover(),
            has_card: flown.is_some()
                && (self.task.id.kind != Kind::TimedTurn
                    || self.stage == Stage::Explained
                    || self.uncovered),
            indicator: flown
                .filter(|_| has_indicator)
                .map(|it| it.indicator_at(step)),
            settings: self.settings.len(),
            step,
            span: self.span(),
            turn_of: self.turn_of,
        }
    }

    fn cover(&self) -> Cover {
        let open = self.stage == Stage::Explained || self.uncovered;
        match self.task.id.kind {
            _ if open => Cover::Nothing,
            Kind::Predict | Kind::NameTheCause | Kind::Corrections => Cover::Nothing,
            _ => Cover::Heading,
        }
    }

    /// A frame at `now` seconds. Says whether there is anything new to see.
    pub(super) fn frame(&mut self, now: f64) -> bool {
        let gap = self.last_frame.map_or(0.0, |last| now - last);
        self.last_frame = Some(now);
        if self.stage != Stage::Explained && gap > 0.0 {
            self.seconds += gap.min(LONGEST_SPENT);
        }
        if self.still.is_some() {
            return false;
        }
        match self.clock.frame(now, self.rate) {
            Tick::Steps(steps) => self.go_on(steps),
            Tick::Slept => self.sleep(),
        }
        true
    }

    /// The page went out of sight: what moves stands still, and a flight that counts notes it.
    pub(super) fn sleep(&mut self) {
        if self.still.is_none() {
            self.stand(Still::Asleep);
            if self.stage == Stage::Flown {
                self.note(Help::Pause);
            }
        }
    }

    fn stand(&mut self, why: Still) {
        self.clock.stop();
        self.still = Some(why);
    }

    /// The task was begun, by another tab where not by this one.
    pub(super) fn was_begun(&mut self) {
        if self.stage == Stage::Asked && self.turn_of == 0 {
            self.note(Help::Reload);
        }
    }

    fn note(&mut self, help: Help) {
        if let Err(place) = self.used.binary_search(&help) {
            self.used.insert(place, help);
        }
    }

    /// Time goes on by so many steps.
    fn go_on(&mut self, steps: u64) {
        let [_, last] = self.span();
        let Some(flown) = &mut self.flown else {
            return;
        };
        if let Some(scene) = &mut self.scene {
            let left = last.saturating_sub(scene.state().step);
            flown.fly_again(scene, steps.min(left));
            if steps >= left {
                self.stand(Still::End);
                if self.stage == Stage::Flown {
                    self.finish();
                }
            }
            return;
        }
        let most = self.scenario.as_ref().map_or(0.0, Scenario::duration);
        let most = (most * STEPS_PER_SECOND as f64) as u64;
        for _ in 0..steps {
            flown.fly(1);
            let look = flown.steps().is_multiple_of(LOOK_EVERY);
            let moment = || flown.end().moment();
            let over = look && self.turn.as_mut().is_some_and(|it| it.is_over(&moment()));
            if over || flown.steps() >= most {
                self.finish();
                return;
            }
        }
    }

    /// Sees a step of what was flown.
    fn look_at(&mut self, step: u64) {
        let [from, to] = self.span();
        self.scene = self
            .flown
            .as_ref()
            .map(|it| it.at(step.clamp(from, to.max(from))));
    }

    /// Sees the end of what there is, at once: for who asks for less motion.
    pub(super) fn rest(&mut self) {
        if self.still.is_none() && self.scene.is_some() {
            let asked = self.task.flight.as_ref().and_then(|it| it.asked_at_s);
            let [_, to] = self.span();
            self.look_at(asked.map_or(to, |time| (time / STEP).round() as u64));
            self.stand(Still::End);
        }
    }
}
