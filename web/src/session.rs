//! The session: the flight under way, what the user asks of it, and what can be read off it.
//!
//! The sole caller of the simulation. It knows no browser: frame times and intents come in,
//! [`Readout`]s go out.

use crate::beside::{Beside, BesideReadout, Change};
use crate::clock::{Clock, Rate, Tick};
use crate::cover::Cover;
use crate::flown::{Flown, Origin};
use crate::intent::Intent;
use crate::setting::Setting;
use crate::stretch::Stretch;
use compass::field::Zone;
use compass::heading::{CompassHeading, MagneticHeading, TrueHeading};
use compass::heading_indicator::{GyroHeading, HeadingIndicator, MECHANICAL_DRIFT};
use compass::range::OutOfRange;
use compass::reading::Difference;
use compass::simulation::{Moment, STEP, STEPS_PER_SECOND, Simulation};
use compass::unit::KNOT;
use drawing::heading_dial::{DialView, describe};
use flights::events::Timed;
use flights::{Recorded, Scenario, ScenarioError, ScenarioFile};

/// How many steps one request for a step flies, or looks back: a tenth of a second; chosen, so
/// that a card that swings is seen to move.
const STEPS_AT_ONCE: u64 = STEPS_PER_SECOND / 10;

/// Standard rate of turn in degrees a second: two minutes for a full turn.
const STANDARD_RATE: f64 = 3.0;
/// How near to it, in degrees a second, counts as standard; chosen: what is shown as 2.9 to 3.1.
const NEARLY: f64 = 0.15;

/// Why the flight stands still.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Pause {
    /// The user asked for it.
    Asked,
    /// The page was out of sight.
    Asleep,
}

/// What can be read at one instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Readout {
    /// Seconds of flight.
    pub(crate) time: f64,
    /// Where the aircraft is heading.
    pub(crate) heading: MagneticHeading,
    /// The same from true north, where the variation is known.
    pub(crate) true_heading: Option<TrueHeading>,
    /// What stands at the lubber line.
    pub(crate) compass: CompassHeading,
    /// How the two compare.
    pub(crate) difference: Difference,
    /// Bank in degrees, right positive.
    pub(crate) bank: f64,
    /// Rate of turn in degrees a second, right positive.
    pub(crate) rate_of_turn: f64,
    /// Whether that is about standard rate.
    pub(crate) standard_rate: bool,
    /// Airspeed in knots.
    pub(crate) airspeed: f64,
    /// Climb angle in degrees.
    pub(crate) climb: f64,
    /// Rudder in per cent of its travel, right positive.
    pub(crate) rudder: f64,
    /// How far a compass can be relied on here.
    pub(crate) zone: Zone,
    /// Whether the card touches its stop.
    pub(crate) at_stop: bool,
    /// The card's tilt in the bowl, in degrees.
    pub(crate) tilt: f64,
    /// How fast the flight runs.
    pub(crate) rate: Rate,
    /// Why it stands still, if it does.
    pub(crate) pause: Option<Pause>,
    /// What it started from.
    pub(crate) setting: Setting,
    /// The heading indicator as it was last set.
    pub(crate) indicator: HeadingIndicator,
    /// The instant as the simulation gives it: what explains the card.
    pub(crate) moment: Moment,
    /// Which step of the flight this is.
    pub(crate) step: u64,
    /// Seconds flown so far.
    pub(crate) flown: f64,
    /// Whether this is an earlier moment that is looked at; without a pause it is replayed.
    pub(crate) looking: bool,
    /// The stretch that is marked to be replayed over and over.
    pub(crate) stretch: Stretch,
    /// Changes whenever another flight takes the place of this one.
    pub(crate) flight: u32,
    /// Whether there is an old flight to return to.
    pub(crate) has_old: bool,
    /// The same flight through one situation more, if two are shown.
    pub(crate) beside: Option<BesideReadout>,
    /// What of all this is not to be shown or said. The session covers nothing; the cockpit does.
    pub(crate) cover: Cover,
}

impl Readout {
    /// Whether what was flown is replayed: time runs, but nothing new is flown.
    pub(crate) fn replaying(&self) -> bool {
        self.looking && self.pause.is_none()
    }
}

impl Readout {
    /// What the heading indicator shows.
    pub(crate) fn indication(&self) -> GyroHeading {
        self.indicator.indication(self.heading, self.time)
    }

    /// What the heading indicator shows beside the heading.
    pub(crate) fn dial(&self) -> DialView {
        DialView {
            indication: self.indication(),
            heading: Some(self.heading),
            compass: Some(self.compass),
        }
    }

    /// Indication less heading in whole degrees, −179 to 180, as the figures are shown.
    pub(crate) fn indicator_error(&self) -> i16 {
        describe(&self.dial()).error.unwrap_or_default()
    }
}

/// A flight that was left: what it started from, and the clock, as what that carries belongs to
/// its flight.
struct Left {
    setting: Setting,
    flown: Flown,
    clock: Clock,
}

/// A flight under way, and the moment of it that is looked at.
pub(crate) struct Session {
    setting: Setting,
    flown: Flown,
    /// The flight that this one took the place of: by flying on from an earlier moment, or by a
    /// new start.
    old: Option<Left>,
    /// The same flight through one situation more.
    beside: Option<Beside>,
    /// An earlier moment of the flight that is looked at, meanwhile nothing new is flown. It
    /// stands still while there is a pause, and is replayed otherwise.
    looking: Option<Simulation>,
    /// The clock of the replay.
    replay: Clock,
    stretch: Stretch,
    /// Counts the flights that took each other's place.
    flights: u32,
    /// Counts how often another moment was gone to.
    jumps: u32,
    clock: Clock,
    rate: Rate,
    pause: Option<Pause>,
}

impl Session {
    /// A flight that is about to start.
    ///
    /// # Errors
    /// A float setting beyond its range.
    pub(crate) fn new(setting: Setting) -> Result<Self, OutOfRange> {
        let (flight, controls) = setting.at_start()?;
        let origin = Origin::Level(setting.start());
        Ok(Self::of(Left {
            setting,
            flown: Flown::new(origin, flight, controls, setting.indicator()?),
            clock: Clock::default(),
        }))
    }

    /// A scripted or recorded flight, flown to its end at once, and looked at from its start.
    ///
    /// # Errors
    /// A scenario that cannot be flown.
    pub(crate) fn of_script(file: &ScenarioFile) -> Result<Self, ScenarioError> {
        let mut session = Self::of(flown_to_end(file)?);
        session.look_at(0);
        Ok(session)
    }

    fn of(first: Left) -> Self {
        Self {
            setting: first.setting,
            flown: first.flown,
            old: None,
            beside: None,
            looking: None,
            replay: Clock::default(),
            stretch: Stretch::default(),
            flights: 0,
            jumps: 0,
            clock: first.clock,
            rate: Rate::REAL,
            pause: None,
        }
    }

    /// Does what is asked, as far as it concerns the flight.
    ///
    /// # Errors
    /// A flight that cannot be started; the one under way then goes on.
    pub(crate) fn ask(&mut self, intent: Intent) -> Result<(), OutOfRange> {
        if self.looking.is_some() && intent.moves_controls() {
            // What was flown is past: it can be flown on from, but not changed.
            return Ok(());
        }
        if intent.moves_controls() && matches!(self.flown.origin(), Origin::Script(_)) {
            // A script that has ended is flown on by the pilot.
            self.fly_on_from(self.flown.steps())?;
        }
        let now = self.flown.controls();
        match intent {
            // Commands stay whole, however often they change, so that a file can name them.
            Intent::Bank(degrees) => {
                let bank = now.bank().to_degrees().round() + f64::from(degrees);
                self.flown.set_controls(now.with_bank(bank.to_radians()));
            }
            Intent::LevelWings => self.flown.set_controls(now.with_bank(0.0).with_rudder(0.0)),
            Intent::Speed(knots) => {
                let airspeed = (now.airspeed() / KNOT).round() + f64::from(knots);
                self.flown.set_controls(now.with_airspeed(airspeed * KNOT));
            }
            Intent::Climb(degrees) => {
                let pitch = now.pitch().to_degrees().round() + f64::from(degrees);
                self.flown.set_controls(now.with_pitch(pitch.to_radians()));
            }
            Intent::Rudder(quarters) => self
                .flown
                .set_controls(now.with_rudder(now.rudder() + f64::from(quarters) / 4.0)),
            Intent::Pause => self.set_pause(match self.pause {
                None => Some(Pause::Asked),
                Some(_) => None,
            }),
            Intent::Replay if self.looking.is_some() => self.ask(Intent::Pause)?,
            // Of a flight that has not begun there is nothing to see.
            Intent::Replay if self.flown.steps() == 0 => {}
            Intent::Replay => {
                self.look_at(self.stretch.start());
                self.set_pause(None);
            }
            Intent::Loop => self.stretch = self.stretch.marked(self.step()),
            Intent::Step if self.looking.is_some() => self.look_at(self.step() + STEPS_AT_ONCE),
            Intent::Step => {
                self.set_pause(Some(Pause::Asked));
                self.fly(STEPS_AT_ONCE);
            }
            Intent::LookBack => self.look_at(self.step().saturating_sub(STEPS_AT_ONCE)),
            Intent::LookBy(seconds) => {
                let by = i64::from(seconds) * STEPS_PER_SECOND as i64;
                self.look_at(self.step().saturating_add_signed(by));
            }
            // What is before the start, or no number at all, is the start.
            Intent::LookAt(time) => self.look_at((time / STEP).round() as u64),
            Intent::LookAtStart => self.look_at(0),
            Intent::LookAtEnd => self.look_at(u64::MAX),
            Intent::LastEvent => {
                let here = self.step();
                let before = self
                    .events()
                    .map(|(step, _)| step)
                    .take_while(|it| *it < here);
                let to = before.last().unwrap_or(0);
                self.look_at(to);
            }
            Intent::NextEvent => {
                let here = self.step();
                let after = self
                    .events()
                    .map(|(step, _)| step)
                    .find(|step| *step > here);
                self.look_at(after.unwrap_or(u64::MAX));
            }
            Intent::FlyFromHere => {
                if let Some(here) = &self.looking {
                    self.fly_on_from(here.state().step)?;
                }
                self.set_pause(None);
            }
            Intent::ReturnToOld => {
                if let Some(old) = self.old.take() {
                    self.looking = None;
                    self.old = Some(self.change_flight(old));
                    self.set_pause(Some(Pause::Asked));
                }
            }
            Intent::SetIndicator => {
                let now = self.flown.end().moment();
                let indicator = self.flown.indicator_at(self.flown.steps());
                let (compass, heading) = (now.reading.compass, now.motion.heading);
                self.flown
                    .set_indicator(indicator.set_to(compass, heading, now.time));
            }
            Intent::MechanicalDrift(by) => {
                let (least, most) = (MECHANICAL_DRIFT.least, MECHANICAL_DRIFT.most);
                let per_hour = MECHANICAL_DRIFT.unit.in_si();
                let indicator = self.flown.indicator_at(self.flown.steps());
                let drift = indicator.mechanical_drift() / per_hour + f64::from(by);
                let drift = MECHANICAL_DRIFT.accept(drift.clamp(least, most))?;
                let time = self.flown.end().time();
                self.flown.set_indicator(indicator.drifting(drift, time)?);
            }
            Intent::SlowDown => self.rate = self.rate.slower(),
            Intent::SpeedUp => self.rate = self.rate.faster(),
            Intent::Restart => self.begin(self.setting)?,
            Intent::NextCue
            | Intent::LastCue
            | Intent::ShowKeys
            | Intent::ShowSituation
            | Intent::ShowWhy
            | Intent::Undo
            | Intent::ShowTimeline
            | Intent::ShowBeside
            | Intent::ShowFilm
            | Intent::ChangeView
            | Intent::ChangeAside
            | Intent::ChangeChart
            | Intent::ChangeLight
            | Intent::Tell
            | Intent::Present
            | Intent::StopPresenting
            | Intent::Advance
            | Intent::AskClass
            | Intent::Curtain
            | Intent::ChangeCover
            | Intent::ToggleCover(_) => {}
        }
        Ok(())
    }

    /// Puts the controls where a stick stands: bank in radians, right positive, and airspeed in
    /// m/s, each if it is given. A moment that is past is not changed.
    pub(crate) fn fly_to(&mut self, bank: Option<f64>, airspeed: Option<f64>) {
        if self.looking.is_some() {
            return;
        }
        let mut controls = self.flown.controls();
        if let Some(bank) = bank {
            controls = controls.with_bank(bank);
        }
        if let Some(airspeed) = airspeed {
            controls = controls.with_airspeed(airspeed);
        }
        self.flown.set_controls(controls);
    }

    /// A frame at `now` seconds. Says whether there is anything new to see.
    pub(crate) fn frame(&mut self, now: f64) -> bool {
        if self.pause.is_some() {
            return false;
        }
        if self.looking.is_some() {
            match self.replay.frame(now, self.rate) {
                Tick::Steps(steps) => self.fly_again(steps),
                Tick::Slept => self.set_pause(Some(Pause::Asleep)),
            }
            return true;
        }
        match self.clock.frame(now, self.rate) {
            Tick::Steps(steps) => self.fly(steps),
            Tick::Slept => self.set_pause(Some(Pause::Asleep)),
        }
        true
    }

    /// The page goes out of sight: a flight that is not paused already pauses.
    pub(crate) fn sleep(&mut self) {
        if self.pause.is_none() {
            self.set_pause(Some(Pause::Asleep));
        }
    }

    /// What can be read now.
    pub(crate) fn readout(&self) -> Readout {
        let (step, carried) = match &self.looking {
            Some(earlier) => (earlier, self.replay.carried()),
            None => (self.flown.end(), self.clock.carried()),
        };
        let now = if carried > 0.0 {
            step.moment_after(carried)
        } else {
            step.moment()
        };
        let controls = match &self.looking {
            Some(earlier) => self.flown.controls_at(earlier.state().step),
            None => self.flown.controls(),
        };
        let (motion, reading) = (&now.motion, &now.reading);
        let rate_of_turn = motion.rate_of_turn.to_degrees();
        Readout {
            time: now.time,
            heading: motion.heading,
            true_heading: self
                .setting
                .has_variation()
                .then(|| motion.heading.to_true(self.setting.field().variation())),
            compass: reading.compass,
            difference: now.difference(),
            bank: motion.bank.to_degrees(),
            rate_of_turn,
            standard_rate: (rate_of_turn.abs() - STANDARD_RATE).abs() < NEARLY,
            airspeed: motion.airspeed / KNOT,
            climb: motion.pitch.to_degrees(),
            rudder: 100.0 * controls.rudder(),
            zone: reading.zone,
            at_stop: reading.at_stop,
            tilt: reading.tilt.to_degrees(),
            rate: self.rate,
            pause: self.pause,
            setting: self.setting,
            indicator: self.flown.indicator_at(self.step()),
            moment: now,
            step: self.step(),
            flown: self.flown.steps() as f64 * STEP,
            looking: self.looking.is_some(),
            stretch: self.stretch,
            flight: self.flights,
            has_old: self.old.is_some(),
            beside: (self.beside.as_ref())
                .map(|it| it.readout(self.step(), carried, reading.compass)),
            cover: Cover::Nothing,
        }
    }

    /// Changes whenever a user goes to another moment, and never as time runs.
    pub(crate) fn jumps(&self) -> u32 {
        self.jumps
    }

    /// The flight from its start to its end, whatever is looked at.
    pub(crate) fn flown(&self) -> &Flown {
        &self.flown
    }

    /// The stretch that is marked.
    pub(crate) fn stretch(&self) -> Stretch {
        self.stretch
    }

    /// The flight so far as a scenario file, which gives it again to the bit; none for a flight
    /// that went on from the middle of a script.
    pub(crate) fn to_scenario(&self) -> Option<ScenarioFile> {
        let record = self.flown.record();
        let start = match self.flown.origin() {
            Origin::Level(start) => *start,
            Origin::Script(file) => return Some((**file).clone()),
            Origin::MidAir => return None,
        };
        let recorded = Recorded {
            source: self.setting.source,
            situation: *record.start().situation(),
            air: self.flown.air(),
            start,
            inputs: record.inputs(),
            steps: record.steps(),
        };
        Some(recorded.to_file())
    }

    /// Opens a scripted or recorded flight: flown to its end at once, and looked at from its
    /// start. The flight under way is kept as the old one, unless nothing of it was flown yet.
    ///
    /// # Errors
    /// A scenario that cannot be flown; the flight under way then goes on.
    pub(crate) fn open(&mut self, file: &ScenarioFile) -> Result<(), ScenarioError> {
        let left = self.change_flight(flown_to_end(file)?);
        if left.flown.steps() > 0 {
            self.old = Some(left);
        }
        self.set_pause(Some(Pause::Asked));
        self.look_at(0);
        Ok(())
    }

    /// The flight ends at a time in seconds, if it went on beyond it.
    pub(crate) fn end_at(&mut self, time: f64) {
        let step = (time / STEP).round() as u64;
        if step < self.flown.steps() {
            self.flown = self.flown.until(step);
            self.look_at(0);
        }
    }

    /// The pilot flies on from the moment that is read, be it the end of a script.
    ///
    /// # Errors
    /// A float that is too fast for free flight.
    pub(crate) fn take_controls(&mut self) -> Result<(), OutOfRange> {
        self.fly_on_from(self.step())?;
        self.set_pause(None);
        Ok(())
    }

    /// The heading indicator is set to what the compass reads at these times of the flight, in
    /// seconds and in order.
    pub(crate) fn set_indicator_at(&mut self, times: impl Iterator<Item = f64>) {
        for time in times {
            self.flown.set_indicator_at((time / STEP).round() as u64);
        }
    }

    /// The same in the place of `other`: its flight counts as a new one.
    #[must_use]
    pub(crate) fn after(mut self, other: &Self) -> Self {
        self.flights = self.flights.max(other.flights).wrapping_add(1);
        self
    }

    /// Keeps the flight of another session as the old one, if anything of it was flown.
    pub(crate) fn keep_as_old(&mut self, other: Self) {
        if other.flown.steps() > 0 {
            self.old = Some(Left {
                setting: other.setting,
                flown: other.flown,
                clock: other.clock,
            });
        }
    }

    /// Plays or flies so fast from now on.
    pub(crate) fn set_rate(&mut self, rate: Rate) {
        self.rate = rate;
    }

    /// What happens at the very step that is read, if anything does.
    pub(crate) fn event_here(&self) -> Option<Timed> {
        let here = self.step();
        self.events()
            .find_map(|(step, it)| (step == here).then_some(it))
    }

    /// Starts a flight from another setting. The one under way is kept as the old one, unless
    /// nothing of it was flown yet.
    ///
    /// # Errors
    /// A flight that cannot be started; the one under way then goes on.
    pub(crate) fn begin(&mut self, setting: Setting) -> Result<(), OutOfRange> {
        let (flight, controls) = setting.at_start()?;
        let drift = self.flown.indicator_at(self.flown.steps());
        // The instrument goes along as it is.
        let indicator = setting
            .indicator()?
            .drifting(drift.mechanical_drift(), 0.0)?;
        let left = self.change_flight(Left {
            setting,
            flown: Flown::new(Origin::Level(setting.start()), flight, controls, indicator),
            clock: Clock::default(),
        });
        if left.flown.steps() > 0 {
            self.old = Some(left);
        }
        self.looking = None;
        self.set_pause(None);
        Ok(())
    }

    /// Flies on from a step; the flight so far is kept as the old one.
    fn fly_on_from(&mut self, step: u64) -> Result<(), OutOfRange> {
        let cut = Left {
            setting: self.setting,
            flown: self.flown.to_fly_on(step)?,
            clock: Clock::default(),
        };
        self.looking = None;
        self.old = Some(self.change_flight(cut));
        Ok(())
    }

    fn set_pause(&mut self, pause: Option<Pause>) {
        self.pause = pause;
        self.clock.stop();
        self.replay.stop();
    }

    /// Flies and records so many steps.
    pub(crate) fn fly(&mut self, steps: u64) {
        self.flown.fly(steps);
        if let Some(beside) = &mut self.beside {
            beside.follow(&self.flown, steps);
        }
    }

    /// Flies the whole flight through one situation more, and both from now on; or this alone.
    pub(crate) fn compare(&mut self, change: Option<Change>) {
        self.beside = change.and_then(|it| Beside::of(&self.flown, &self.setting, it));
    }

    /// The step that is read.
    fn step(&self) -> u64 {
        match &self.looking {
            Some(earlier) => earlier.state().step,
            None => self.flown.steps(),
        }
    }

    /// The events of the flight, each with its step.
    fn events(&self) -> impl Iterator<Item = (u64, Timed)> {
        let events = self.flown.events().into_iter();
        events.map(|it| ((it.time / STEP).round() as u64, it))
    }

    /// Looks at a step of the flight, which pauses; at the end there is nothing to look back at.
    fn look_at(&mut self, step: u64) {
        self.jumps = self.jumps.wrapping_add(1);
        self.looking = (step < self.flown.steps()).then(|| self.flown.at(step));
        self.replay = Clock::default();
        if self.pause.is_none() {
            self.set_pause(Some(Pause::Asked));
        }
    }

    /// Replays so many steps. At the end of a marked stretch it starts again; at the end of the
    /// flight it pauses.
    fn fly_again(&mut self, steps: u64) {
        let Some(earlier) = &mut self.looking else {
            return;
        };
        let here = earlier.state().step;
        if let Some(step) = self.stretch.looped(here, here.saturating_add(steps)) {
            *earlier = self.flown.at(step);
        } else {
            self.flown.fly_again(earlier, steps);
            if earlier.state().step == self.flown.steps() {
                self.looking = None;
                self.set_pause(Some(Pause::Asked));
            }
        }
    }

    /// Puts another flight in the place of this one, and gives this one.
    fn change_flight(&mut self, other: Left) -> Left {
        self.flights = self.flights.wrapping_add(1);
        self.stretch = Stretch::default();
        let left = Left {
            setting: std::mem::replace(&mut self.setting, other.setting),
            flown: std::mem::replace(&mut self.flown, other.flown),
            clock: std::mem::replace(&mut self.clock, other.clock),
        };
        self.compare(self.beside.as_ref().map(Beside::change));
        left
    }
}

/// A scripted or recorded flight, flown to its end.
fn flown_to_end(file: &ScenarioFile) -> Result<Left, ScenarioError> {
    let scenario = Scenario::from_file(file)?;
    let setting = Setting::of_scenario(&scenario);
    let indicator = setting
        .indicator()
        .map_err(|error| ScenarioError::at("", error))?;
    Ok(Left {
        setting,
        flown: Flown::of_scenario(file, &scenario, indicator)?,
        clock: Clock::default(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use earth::FieldSource;

    fn at(latitude: f64, heading: u16) -> Session {
        let latitude = f64::to_radians(latitude);
        let mut setting = Setting::new(FieldSource::Latitude { latitude }).unwrap();
        setting.heading = heading;
        Session::new(setting).unwrap()
    }

    /// Watches for so many seconds at 60 frames a second.
    fn watch(session: &mut Session, from: f64, seconds: f64) {
        for frame in 0..=(60.0 * seconds) as u32 {
            session.frame(from + f64::from(frame) / 60.0);
        }
    }

    fn ask(session: &mut Session, intent: Intent) {
        session.ask(intent).unwrap();
    }

    #[test]
    fn a_right_turn_through_north_lags_in_the_north_and_leads_in_the_south() {
        for (latitude, lags) in [(52.0, true), (-35.0, false)] {
            let mut session = at(latitude, 330);
            for _ in 0..3 {
                ask(&mut session, Intent::Bank(5));
            }
            watch(&mut session, 0.0, 12.0);
            let difference = session.readout().difference;
            assert_eq!(matches!(difference, Difference::Lags(_)), lags);
            assert_eq!(matches!(difference, Difference::Leads(_)), !lags);
        }
    }

    const TURN: &str = r#"{"field": {"latitude_deg": 45},
        "start": {"heading_deg": 330, "speed_kt": 100},
        "legs": [{"seconds": 2, "bank_deg": 15}, {"seconds": 10}]}"#;

    fn script() -> Session {
        let file = flights::read_json(TURN).unwrap_or_else(|it| panic!("{it}"));
        Session::of_script(&file).unwrap_or_else(|it| panic!("{it}"))
    }

    #[test]
    fn only_a_user_jumps_and_a_replay_comes_to_its_end_without() {
        let mut session = script();
        let jumps = session.jumps();
        ask(&mut session, Intent::Pause);
        watch(&mut session, 0.0, 13.0);
        assert!((session.readout().time - 12.0).abs() < 1e-9);
        assert_eq!(session.jumps(), jumps);
        ask(&mut session, Intent::LookAt(3.0));
        assert_ne!(session.jumps(), jumps);
    }

    #[test]
    fn the_pilot_takes_the_controls_even_at_the_end_of_a_script() {
        let mut session = script();
        ask(&mut session, Intent::LookAtEnd);
        session.take_controls().unwrap();
        watch(&mut session, 0.0, 1.0);
        let flown = session.readout();
        assert!((flown.time - 1.0).abs() < 1e-9);
        assert!((flown.bank - 15.0).abs() < 1.0);
        assert!(flown.has_old);
    }

    #[test]
    fn an_indicator_set_in_a_turn_is_wrong_from_then_on() {
        let mut session = script();
        session.set_indicator_at([8.0].into_iter());
        let mut error = |time| {
            ask(&mut session, Intent::LookAt(time));
            session.readout().indicator_error()
        };
        assert_eq!(error(7.9), 0);
        assert!(error(8.1) < -3, "the card lags in a turn through north");
        assert_eq!(error(11.0), error(8.1));
    }

    #[test]
    fn the_flight_before_is_kept_as_the_old_one() {
        let mut before = at(52.0, 90);
        watch(&mut before, 0.0, 2.0);
        let mut session = script().after(&before);
        assert_ne!(session.readout().flight, before.readout().flight);
        session.keep_as_old(before);
        ask(&mut session, Intent::ReturnToOld);
        assert_eq!(session.readout().heading.whole_degrees(), 90);
    }

    #[test]
    fn levelled_wings_let_the_card_settle() {
        let mut session = at(52.0, 300);
        ask(&mut session, Intent::Bank(15));
        watch(&mut session, 0.0, 20.0);
        ask(&mut session, Intent::LevelWings);
        ask(&mut session, Intent::SpeedUp);
        watch(&mut session, 20.0, 60.0);
        assert_eq!(session.readout().difference, Difference::Agrees);
    }

    #[test]
    fn a_pause_stops_time_and_a_step_flies_a_tenth_of_a_second() {
        let mut session = at(52.0, 360);
        watch(&mut session, 0.0, 1.0);
        ask(&mut session, Intent::Pause);
        let paused = session.readout();
        watch(&mut session, 1.0, 5.0);
        assert_eq!(session.readout(), paused);
        ask(&mut session, Intent::Step);
        assert!((session.readout().time - paused.time - 0.1).abs() < 1e-9);
        ask(&mut session, Intent::Pause);
        watch(&mut session, 6.0, 1.0);
        assert!((session.readout().time - paused.time - 1.1).abs() < 1e-9);
    }

    #[test]
    fn a_page_that_slept_pauses_its_flight_where_it_was() {
        let mut session = at(52.0, 360);
        watch(&mut session, 0.0, 2.0);
        let before = session.readout();
        session.frame(4000.0);
        let after = session.readout();
        assert_eq!(after.pause, Some(Pause::Asleep));
        assert_eq!(after.time, before.time);

        ask(&mut session, Intent::Pause);
        session.sleep();
        assert_eq!(session.readout().pause, Some(Pause::Asleep));
        ask(&mut session, Intent::Pause);
        ask(&mut session, Intent::Pause);
        session.sleep();
        assert_eq!(session.readout().pause, Some(Pause::Asked));
    }

    #[test]
    fn slow_motion_moves_between_whole_steps() {
        let mut session = at(52.0, 360);
        ask(&mut session, Intent::Bank(20));
        watch(&mut session, 0.0, 4.0);
        for _ in 0..3 {
            ask(&mut session, Intent::SlowDown);
        }
        let mut last = session.readout();
        for frame in 1..30 {
            session.frame(4.0 + f64::from(frame) / 120.0);
            let now = session.readout();
            assert!((now.time - last.time - 1.0 / 960.0).abs() < 1e-9);
            assert_ne!(now.heading, last.heading);
            last = now;
        }
    }

    #[test]
    fn a_restart_keeps_place_and_rate_and_gives_the_same_start_again() {
        let mut session = at(-35.0, 90);
        let start = session.readout();
        ask(&mut session, Intent::Bank(-30));
        ask(&mut session, Intent::SpeedUp);
        watch(&mut session, 0.0, 3.0);
        ask(&mut session, Intent::Restart);
        let again = session.readout();
        assert_eq!(again.setting, start.setting);
        assert_eq!(
            (again.time, again.moment.reading.card),
            (0.0, start.moment.reading.card)
        );
        assert_eq!(again.rate.factor(), 2.0);
    }

    #[test]
    fn everything_read_at_the_start_is_a_number() {
        let start = at(52.0, 90).readout();
        assert!(start.moment.reading.card.quaternion.is_finite() && start.tilt.is_finite());
        assert!((start.compass.degrees() - 90.0).abs() < 1e-6);
    }

    #[test]
    fn the_record_holds_the_flight_from_its_first_step() {
        let mut session = at(52.0, 45);
        watch(&mut session, 0.0, 1.0);
        ask(&mut session, Intent::Bank(25));
        watch(&mut session, 1.0, 7.0);
        let replayed = session.flown.at(session.flown.steps());
        assert_eq!(replayed.state(), session.flown.end().state());
    }

    /// A right turn through north, then straight flight until the card has settled.
    fn turned() -> Session {
        let mut session = at(52.0, 330);
        watch(&mut session, 0.0, 1.0);
        ask(&mut session, Intent::Bank(15));
        watch(&mut session, 1.0, 14.0);
        ask(&mut session, Intent::LevelWings);
        watch(&mut session, 15.0, 30.0);
        session
    }

    #[test]
    fn looking_back_shows_what_was_flown_to_the_bit_and_loses_nothing() {
        let mut session = at(52.0, 330);
        ask(&mut session, Intent::Bank(20));
        ask(&mut session, Intent::Pause);
        let mut seen = Vec::new();
        for _ in 0..120 {
            ask(&mut session, Intent::Step);
            seen.push(session.readout());
        }
        let bits = |it: &Readout| {
            let card = it.moment.reading.card.quaternion.to_array();
            (
                it.heading.radians().to_bits(),
                it.time.to_bits(),
                card.map(f64::to_bits),
            )
        };
        for then in seen.iter().rev().skip(1) {
            ask(&mut session, Intent::LookBack);
            let now = session.readout();
            assert!(now.looking);
            assert_eq!(bits(&now), bits(then));
        }
        ask(&mut session, Intent::LookAt(seen[40].time + 0.002));
        assert_eq!(bits(&session.readout()), bits(&seen[40]));
        ask(&mut session, Intent::Step);
        assert_eq!(bits(&session.readout()), bits(&seen[41]));
        ask(&mut session, Intent::LookBy(2));
        assert_eq!(bits(&session.readout()), bits(&seen[61]));
        ask(&mut session, Intent::LookAtStart);
        assert_eq!(session.readout().time, 0.0);
        ask(&mut session, Intent::LookAtEnd);
        assert_eq!(session.readout(), seen[119]);
    }

    #[test]
    fn looking_pauses_and_time_goes_on_from_the_end() {
        let mut session = turned();
        let end = session.readout();
        ask(&mut session, Intent::LookAt(-5.0));
        let start = session.readout();
        assert_eq!((start.time, start.pause), (0.0, Some(Pause::Asked)));
        assert_eq!(start.flown, end.flown);
        watch(&mut session, 50.0, 3.0);
        ask(&mut session, Intent::Bank(30));
        ask(&mut session, Intent::LookAt(f64::NAN));
        assert_eq!(session.readout(), start);
        ask(&mut session, Intent::LookAtEnd);
        ask(&mut session, Intent::Pause);
        assert_eq!(session.readout(), Readout { pause: None, ..end });
        ask(&mut session, Intent::LookAt(1e300));
        assert!(!session.readout().looking);
    }

    #[test]
    fn a_replay_plays_what_was_flown_to_its_end_and_flies_nothing_new() {
        let mut session = turned();
        let end = session.readout();
        ask(&mut session, Intent::LookAt(20.0));
        ask(&mut session, Intent::SlowDown);
        ask(&mut session, Intent::Pause);
        assert!(session.readout().replaying());
        // Half a second at half the rate, ending a whole number of steps on.
        session.frame(100.0);
        session.frame(100.500_5);
        ask(&mut session, Intent::Bank(30));
        let here = session.readout();
        assert!(
            (here.time - 20.25).abs() < 0.001 && here.looking,
            "{}",
            here.time
        );
        assert_eq!(here.flown, end.flown);
        let exact = session.flown.at(here.step).moment().reading.card;
        let apart = exact.quaternion.dot(here.moment.reading.card.quaternion);
        assert!(apart.abs() > 1.0 - 1e-6);

        ask(&mut session, Intent::Pause);
        watch(&mut session, 101.0, 1.0);
        assert_eq!(session.readout().step, here.step, "paused");
        for _ in 0..4 {
            ask(&mut session, Intent::SpeedUp);
        }
        ask(&mut session, Intent::Replay);
        watch(&mut session, 103.0, 5.0);
        let ended = session.readout();
        let rate = ended.rate;
        let pause = Some(Pause::Asked);
        assert_eq!(ended, Readout { rate, pause, ..end });

        // Asked for at the end, it starts at the start; a page out of sight pauses it.
        ask(&mut session, Intent::Replay);
        assert_eq!(session.readout().time, 0.0);
        session.frame(200.0);
        session.frame(300.0);
        assert_eq!(session.readout().pause, Some(Pause::Asleep));
        assert!(session.readout().looking);
        ask(&mut session, Intent::Pause);
        assert!(session.readout().replaying());
        ask(&mut session, Intent::LookBy(1));
        assert!(!session.readout().replaying(), "who looks, pauses");
        ask(&mut session, Intent::FlyFromHere);
        assert!(!session.readout().looking);
    }

    #[test]
    fn a_replay_of_every_step_is_the_flight_to_the_bit() {
        let mut session = turned();
        ask(&mut session, Intent::LookAtStart);
        for _ in 0..400 {
            session.fly_again(7);
            let here = session.looking.as_ref().unwrap();
            assert_eq!(here.state(), session.flown.at(here.state().step).state());
        }
    }

    #[test]
    fn of_a_flight_that_has_not_begun_there_is_no_replay() {
        let mut session = at(52.0, 360);
        ask(&mut session, Intent::Replay);
        let now = session.readout();
        assert_eq!((now.looking, now.pause), (false, None));
    }

    #[test]
    fn a_marked_stretch_is_replayed_over_and_over_until_it_is_cleared() {
        let mut session = turned();
        ask(&mut session, Intent::LookAt(12.0));
        ask(&mut session, Intent::Loop);
        ask(&mut session, Intent::LookAt(10.0));
        ask(&mut session, Intent::Loop);
        assert_eq!(session.readout().stretch.seconds(), Some([10.0, 12.0]));
        ask(&mut session, Intent::LookAtEnd);
        ask(&mut session, Intent::Replay);
        let mut times = Vec::new();
        for frame in 0..300 {
            session.frame(f64::from(frame) / 50.0);
            times.push(session.readout().time);
        }
        assert!(times.iter().all(|time| (10.0..=12.0).contains(time)));
        let again = times.windows(2).filter(|two| two[1] < two[0]).count();
        assert_eq!(again, 2, "six seconds are three turns of two");
        assert!(session.readout().replaying());
        ask(&mut session, Intent::Loop);
        watch(&mut session, 6.0, 4.0);
        assert!(session.readout().time > 13.0);

        // Another flight has no stretch.
        ask(&mut session, Intent::Loop);
        ask(&mut session, Intent::FlyFromHere);
        assert_eq!(session.readout().stretch, Stretch::None);
    }

    #[test]
    fn a_flight_taken_home_is_flown_again_to_the_bit() {
        let place = earth::Place::new(f64::to_radians(-33.9), f64::to_radians(151.2), 600.0);
        let date = earth::Date::parse("2026-05-01").unwrap();
        for (source, air) in [
            (
                FieldSource::Place {
                    place: place.unwrap(),
                    date,
                },
                compass::gust::RoughAir::Moderate,
            ),
            (
                FieldSource::ByHand {
                    horizontal: 18_470e-9,
                    dip: f64::to_radians(66.6),
                },
                compass::gust::RoughAir::Still,
            ),
        ] {
            let mut setting = Setting::new(source).unwrap();
            setting.air = air;
            setting.heading = 360;
            setting.float = crate::setting::FloatChoice::Sluggish.settings();
            setting.iron = compass::deviation::AircraftIron::new(
                [1200e-9, -300e-9, 55e-9],
                [[0.01, 0.0, 0.0], [0.0, -0.02, 0.003], [0.0, 0.0, 0.0]],
            )
            .unwrap();
            let mut session = Session::new(setting).unwrap();
            watch(&mut session, 0.0, 1.3);
            for intent in [
                Intent::Bank(5),
                Intent::Bank(-1),
                Intent::Speed(-5),
                Intent::Climb(1),
                Intent::Rudder(-1),
            ] {
                ask(&mut session, intent);
                ask(&mut session, intent);
                watch(&mut session, 10.0, 2.7);
            }
            // What was flown another way is a flight like any.
            ask(&mut session, Intent::LookAt(9.0));
            ask(&mut session, Intent::FlyFromHere);
            ask(&mut session, Intent::Bank(-5));
            watch(&mut session, 100.0, 5.0);
            let file = session.to_scenario().unwrap();
            let again = Scenario::from_file(&file).unwrap().record().unwrap();
            let record = session.flown.record();
            assert_eq!(again.steps(), record.steps());
            assert_eq!(again.digest(), record.digest(), "{file:?}");
        }
    }

    const SCRIPT: &str = r#"{"field": {"latitude_deg": 52}, "start": {"heading_deg": 330,
        "speed_kt": 100}, "legs": [{"seconds": 2}, {"seconds": 3, "bank_deg": 15}, {"seconds": 10}],
        "rough_air": {"intensity": "light", "seed": 9}}"#;

    #[test]
    fn a_script_opens_at_its_start_and_is_the_scenarios_flight_to_the_bit() {
        let file: ScenarioFile = flights::read_json(SCRIPT).unwrap();
        let mut session = at(10.0, 90);
        watch(&mut session, 0.0, 2.0);
        let before = session.readout();
        session.open(&file).unwrap();
        let start = session.readout();
        assert_eq!((start.time, start.pause), (0.0, Some(Pause::Asked)));
        assert!(start.looking && start.has_old && start.heading.whole_degrees() == 330);
        let record = Scenario::from_file(&file).unwrap().record().unwrap();
        assert_eq!(session.flown.record().digest(), record.digest());
        assert_eq!(session.to_scenario(), Some(file));
        ask(&mut session, Intent::ReturnToOld);
        assert_eq!(session.readout().setting, before.setting);
    }

    #[test]
    fn a_file_that_cannot_be_flown_leaves_the_flight_as_it_is() {
        let file = SCRIPT.replace("\"latitude_deg\": 52", "\"latitude_deg\": 92");
        let file: ScenarioFile = flights::read_json(&file).unwrap();
        let mut session = at(10.0, 90);
        watch(&mut session, 0.0, 2.0);
        let before = session.readout();
        let error = session.open(&file).unwrap_err().to_string();
        assert!(
            error.contains("latitude") && error.contains("92"),
            "{error}"
        );
        assert_eq!(session.readout(), before);
    }

    #[test]
    fn a_pilot_takes_over_from_a_script_where_it_is_and_can_return_to_it() {
        let file: ScenarioFile = flights::read_json(SCRIPT).unwrap();
        let mut session = at(10.0, 90);
        session.open(&file).unwrap();
        ask(&mut session, Intent::LookAt(8.0));
        let before = session.readout();
        ask(&mut session, Intent::FlyFromHere);
        let after = session.readout();
        assert_eq!(after.time, 0.0);
        assert_eq!(after.moment.reading.card, before.moment.reading.card);
        assert!((after.bank - before.bank).abs() < 1e-9);
        assert!((after.rate_of_turn - before.rate_of_turn).abs() < 1e-9);
        assert_eq!(after.indication(), before.indication());
        assert_eq!(session.to_scenario(), None);
        ask(&mut session, Intent::LevelWings);
        watch(&mut session, 10.0, 5.0);
        assert!(session.readout().bank.abs() < 1.0);
        ask(&mut session, Intent::ReturnToOld);
        assert_eq!(session.to_scenario(), Some(file));
    }

    #[test]
    fn commands_stay_whole_degrees_and_knots() {
        let mut session = at(52.0, 360);
        for _ in 0..7 {
            ask(&mut session, Intent::Bank(-1));
            ask(&mut session, Intent::Bank(5));
            ask(&mut session, Intent::Speed(5));
            ask(&mut session, Intent::Climb(1));
        }
        let controls = session.flown.controls();
        assert_eq!(controls.bank(), f64::to_radians(28.0));
        assert_eq!(controls.airspeed(), 135.0 * KNOT);
        assert_eq!(controls.pitch(), f64::to_radians(7.0));
    }

    #[test]
    fn jumps_go_from_event_to_event_and_end_at_the_ends() {
        use flights::events::Event;
        let mut session = turned();
        let mut met = Vec::new();
        ask(&mut session, Intent::LookAtStart);
        loop {
            ask(&mut session, Intent::NextEvent);
            if !session.readout().looking {
                break;
            }
            let here = session.event_here().unwrap();
            assert!((here.time - session.readout().time).abs() < 1e-9);
            if let Event::GreatestLag(by) = here.event {
                let shown = session.readout().difference;
                assert_eq!(shown, Difference::Lags(by.to_degrees().round() as u16));
            }
            met.push(here);
        }
        assert!(matches!(met[0].event, Event::TurnBegins(_)));
        assert!(
            met.iter()
                .any(|it| matches!(it.event, Event::GreatestLag(_)))
        );
        assert_eq!(met.last().map(|it| it.event), Some(Event::Settled));
        for expected in met.iter().rev() {
            ask(&mut session, Intent::LastEvent);
            assert_eq!(session.readout().time, expected.time);
        }
        ask(&mut session, Intent::LastEvent);
        assert_eq!(session.readout().time, 0.0);
    }

    #[test]
    fn flying_on_from_an_earlier_moment_keeps_the_old_flight() {
        let mut session = turned();
        let (end, steps) = (session.readout(), session.flown.steps());
        let samples = session.flown.table().len();
        ask(&mut session, Intent::LookAt(10.0));
        let here = session.readout();
        ask(&mut session, Intent::FlyFromHere);
        let branch = session.readout();
        assert_eq!(branch.moment.reading.card, here.moment.reading.card);
        assert_eq!((branch.flown, branch.pause), (here.time, None));
        assert!(branch.has_old && !branch.looking && branch.flight != end.flight);
        assert_eq!(session.flown.table().len(), 101);

        // Flown on alike it is the same flight; flown otherwise it is another one.
        session.flown.fly(200);
        let old = &session.old.as_ref().unwrap().flown;
        assert_eq!(session.flown.end().state(), old.at(2200).state());
        ask(&mut session, Intent::Bank(-30));
        session.flown.fly(400);
        let old = &session.old.as_ref().unwrap().flown;
        assert_ne!(session.flown.end().state(), old.at(2600).state());
        assert_eq!(session.flown.at(2600).state(), session.flown.end().state());
        let other = session.flown.end().state().clone();

        ask(&mut session, Intent::ReturnToOld);
        assert_eq!(
            (session.flown.steps(), session.flown.table().len()),
            (steps, samples)
        );
        let back = session.readout();
        let as_left = Readout {
            pause: back.pause,
            flight: back.flight,
            has_old: true,
            ..end
        };
        assert_eq!(back, as_left);
        assert_eq!(session.readout().pause, Some(Pause::Asked));
        ask(&mut session, Intent::ReturnToOld);
        assert_eq!(session.flown.end().state(), &other);
    }

    #[test]
    fn an_indicator_set_while_the_card_swings_keeps_the_error_it_took_over() {
        let mut session = at(52.0, 330);
        ask(&mut session, Intent::Bank(15));
        watch(&mut session, 0.0, 12.0);
        let error = |it: &Readout| it.indicator.error(it.time).to_degrees();
        let before = session.readout();
        assert!(error(&before).abs() < 0.1 && before.difference != Difference::Agrees);
        ask(&mut session, Intent::SetIndicator);
        let set = session.readout();
        let taken = set.indicator.error_when_set();
        assert!((error(&set).to_radians() - set.compass.error_from(set.heading)).abs() < 1e-2);
        ask(&mut session, Intent::LevelWings);
        watch(&mut session, 12.0, 60.0);
        let settled = session.readout();
        assert_eq!(settled.difference, Difference::Agrees);
        let drifted = settled.indicator.drifted(settled.time);
        assert!((settled.indicator.error(settled.time) - taken - drifted).abs() < 1e-9);
        // 15.04° an hour by the sine of 52°: 0.0033° a second, falling.
        let drift = drifted.to_degrees() / (settled.time - settled.indicator.set_at());
        assert!((drift + 0.003_292).abs() < 1e-6, "{drift}");

        // Looked back, it shows what it showed; flown on from there, it never was set.
        ask(&mut session, Intent::LookAt(before.time - 1.0));
        assert!(error(&session.readout()).abs() < 0.1);
        ask(&mut session, Intent::SetIndicator);
        assert!(error(&session.readout()).abs() < 0.1, "what is past stays");
        ask(&mut session, Intent::FlyFromHere);
        session.flown.fly(2000);
        assert!(error(&session.readout()).abs() < 0.1);
        ask(&mut session, Intent::ReturnToOld);
        assert_eq!(session.readout().indicator, settled.indicator);
        ask(&mut session, Intent::LookAt(set.time + 1.0));
        assert_eq!(session.readout().indicator, set.indicator);
    }

    #[test]
    fn the_indicators_own_drift_stops_at_its_range_and_goes_along_to_the_next_flight() {
        let mut session = at(52.0, 330);
        for _ in 0..40 {
            ask(&mut session, Intent::MechanicalDrift(-5));
        }
        let drift = |session: &Session| {
            let drift = session.readout().indicator.mechanical_drift();
            (drift / MECHANICAL_DRIFT.unit.in_si()).round()
        };
        assert_eq!(drift(&session), -60.0);
        ask(&mut session, Intent::Restart);
        assert_eq!(drift(&session), -60.0);
        assert_eq!(session.readout().indicator.error(0.0), 0.0);
    }

    #[test]
    fn the_track_goes_to_what_is_seen_and_the_rest_comes_later() {
        let mut session = at(52.0, 90);
        watch(&mut session, 0.0, 10.0);
        let now = session.readout();
        let (track, later) = session.flown.track(&now.moment);
        let here = track.last().unwrap();
        // Straight on magnetic east at 100 kt.
        assert!(
            (here.east - 100.0 * KNOT * now.time).abs() < 0.5,
            "{here:?}"
        );
        assert!(here.north.abs() < 0.5 && later.is_empty());
        ask(&mut session, Intent::LookAt(4.0));
        let back = session.readout();
        let (track, later) = session.flown.track(&back.moment);
        assert!((track.last().unwrap().east - 400.0 * KNOT).abs() < 0.5);
        assert!((later.last().unwrap().east - here.east).abs() < 6.0);
        ask(&mut session, Intent::FlyFromHere);
        let branch = session.readout();
        let (track, later) = session.flown.track(&branch.moment);
        assert!((track.last().unwrap().east - 400.0 * KNOT).abs() < 0.5 && later.is_empty());
    }

    #[test]
    fn a_new_start_keeps_the_flight_it_replaces_and_its_setting() {
        let mut session = turned();
        let end = session.readout();
        let south = Setting::new(FieldSource::Latitude { latitude: -0.6 }).unwrap();
        session.begin(south).unwrap();
        // A second start, with nothing flown between, must not push it out.
        session.begin(south).unwrap();
        let start = session.readout();
        assert_eq!((start.setting, start.time), (south, 0.0));
        assert!(start.has_old && start.flight != end.flight);

        ask(&mut session, Intent::ReturnToOld);
        let back = session.readout();
        assert_eq!(
            (back.setting, back.moment, back.flown),
            (end.setting, end.moment, end.flown)
        );
        ask(&mut session, Intent::Restart);
        ask(&mut session, Intent::ReturnToOld);
        assert_eq!(session.readout().moment, end.moment);
    }

    #[test]
    fn samples_come_ten_a_second_whatever_the_rate_and_pauses() {
        let mut session = at(52.0, 330);
        ask(&mut session, Intent::SpeedUp);
        watch(&mut session, 0.0, 5.0);
        ask(&mut session, Intent::Pause);
        watch(&mut session, 5.0, 5.0);
        ask(&mut session, Intent::Step);
        ask(&mut session, Intent::Restart);
        assert_eq!(session.flown.table().len(), 1);
        ask(&mut session, Intent::Step);
        ask(&mut session, Intent::SlowDown);
        ask(&mut session, Intent::Pause);
        watch(&mut session, 20.0, 7.0);
        let samples = session.flown.table();
        assert_eq!(samples.len() as u64, session.flown.steps() / 20 + 1);
        for (tenths, sample) in samples.iter().enumerate() {
            assert!((sample.time - tenths as f64 / 10.0).abs() < 1e-9);
        }
    }

    #[test]
    fn controls_stop_at_their_ranges() {
        let mut session = at(52.0, 360);
        for _ in 0..100 {
            ask(&mut session, Intent::Bank(5));
            ask(&mut session, Intent::Speed(-5));
            ask(&mut session, Intent::Climb(1));
            ask(&mut session, Intent::Rudder(-1));
        }
        watch(&mut session, 0.0, 30.0);
        let now = session.readout();
        assert!(now.bank <= 60.01 && now.airspeed > 39.0 && now.climb <= 10.01);
        assert_eq!(now.rudder, -100.0);
    }

    #[test]
    fn true_heading_is_known_only_where_the_variation_is() {
        let mut session = at(52.0, 90);
        assert_eq!(session.readout().true_heading, None);
        let place = earth::Place::new(0.65, -1.3, 0.0).unwrap();
        let date = earth::Date::parse("2026-05-01").unwrap();
        let setting = Setting::new(FieldSource::Place { place, date }).unwrap();
        session.begin(setting).unwrap();
        let now = session.readout();
        let variation = setting.field().variation();
        let true_heading = now.true_heading.unwrap();
        assert!((true_heading.to_magnetic(variation).right_of(now.heading)).abs() < 1e-12);
    }
}
