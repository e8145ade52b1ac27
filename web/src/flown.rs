//! A flight as it was flown: its record, and samples of it for charts, track and events.
//!
//! Any step of it can be had again, and a flight can be cut at any step, to be flown on from
//! there another way.

use crate::blocks::Blocks;
use compass::free_flight::Controls;
use compass::heading::{CompassHeading, MagneticHeading};
use compass::heading_indicator::HeadingIndicator;
use compass::motion::Motion;
use compass::range::OutOfRange;
use compass::record::{KEYFRAME_EVERY, Record};
use compass::simulation::{Moment, STEP, STEPS_PER_SECOND, Simulation, Situation, State};
use compass::unit::KNOT;
use drawing::plan_view::Position;
use drawing::strip_chart::{self, Thinned};
use flights::air::SeededAir;
use flights::events::{Events, Timed};
use flights::manoeuvre::{self, Manoeuvre};
use flights::samples::Sample;
use flights::track::Way;
use flights::{Scenario, ScenarioError, ScenarioFile, Start};
use std::ops::Range;
use std::sync::Arc;

/// The seed of the rough air of flights that the user begins; chosen: each meets the same gusts,
/// so that two flights can be compared.
const AIR: SeededAir = SeededAir { seed: 1 };

/// Steps between two samples: a tenth of a second.
const SAMPLE_EVERY: u64 = STEPS_PER_SECOND / 10;

/// About the most positions of a track that are drawn; chosen: finer than its bends are seen.
const MOST_OF_TRACK: usize = 1000;

/// The bytes by which a flight grows in a minute, changes of the controls aside.
pub(crate) const RECORD_BYTES_A_MINUTE: usize = (60 * STEPS_PER_SECOND / SAMPLE_EVERY) as usize
    * (size_of::<Sample>() + size_of::<Position>())
    + (60 * STEPS_PER_SECOND / KEYFRAME_EVERY) as usize * size_of::<State>();

/// What a flight began from, as far as a file can say.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Origin {
    /// Straight and level flight, the card at rest.
    Level(Start),
    /// The legs of a script, which prescribe it to its end.
    Script(Arc<ScenarioFile>),
    /// A moment of a scripted flight, which a file cannot say.
    MidAir,
}

/// A flight from its first step to its end so far.
pub(crate) struct Flown {
    origin: Origin,
    air: SeededAir,
    record: Record<SeededAir>,
    end: Simulation,
    controls: Controls,
    /// The heading indicator from a step on, in order; the first from step 0.
    indicators: Vec<(u64, HeadingIndicator)>,
    samples: Blocks<Sample>,
    chart: Thinned,
    events: Events,
    track: Blocks<Position>,
    /// How the airframe moved at the last sample.
    sampled: Motion,
}

impl Flown {
    /// A flight about to start, with the controls and the heading indicator so.
    pub(crate) fn new(
        origin: Origin,
        start: Simulation,
        controls: Controls,
        indicator: HeadingIndicator,
    ) -> Self {
        Self::in_air(AIR, origin, start, controls, indicator)
    }

    /// A scenario, flown to its end.
    ///
    /// # Errors
    /// A float that is too fast for the flight.
    pub(crate) fn of_scenario(
        file: &ScenarioFile,
        scenario: &Scenario,
        indicator: HeadingIndicator,
    ) -> Result<Self, ScenarioError> {
        let origin = if scenario.is_prescribed() {
            Origin::Script(Arc::new(file.clone()))
        } else {
            Origin::Level(start_of(scenario))
        };
        let mut flown = Self::starting(origin, scenario, indicator)?;
        flown.fly_out(scenario);
        Ok(flown)
    }

    /// A free flight about to start as a scenario does, whatever that does later.
    ///
    /// # Errors
    /// A float that is too fast for the flight.
    pub(crate) fn about_to_start(
        scenario: &Scenario,
        indicator: HeadingIndicator,
    ) -> Result<Self, ScenarioError> {
        Self::starting(Origin::Level(start_of(scenario)), scenario, indicator)
    }

    fn starting(
        origin: Origin,
        scenario: &Scenario,
        indicator: HeadingIndicator,
    ) -> Result<Self, ScenarioError> {
        let (start, air) = (scenario.simulation()?, scenario.air());
        let controls = scenario.controls();
        Ok(Self::in_air(air, origin, start, controls, indicator))
    }

    /// Flies on to the end of the scenario that it started as.
    pub(crate) fn fly_out(&mut self, scenario: &Scenario) {
        while (self.steps() + 1) as f64 * STEP <= scenario.duration() + 1e-9 {
            self.controls = scenario.controls_at(self.steps());
            self.fly(1);
        }
    }

    /// The same inputs from the same start, flown in another situation, the card at rest at first.
    ///
    /// # Errors
    /// A float setting beyond its range.
    pub(crate) fn flown_in(
        &self,
        situation: Situation,
        indicator: HeadingIndicator,
    ) -> Result<Self, OutOfRange> {
        let aircraft = self.record.start().state().aircraft.clone();
        let controls = self.controls_at(0);
        let start = Simulation::new(situation, aircraft, controls)?;
        let mut other = Self::in_air(self.air, self.origin.clone(), start, controls, indicator);
        for step in 0..self.steps() {
            other.controls = self.controls_at(step);
            other.fly(1);
        }
        other.controls = self.controls;
        Ok(other)
    }

    fn in_air(
        air: SeededAir,
        origin: Origin,
        start: Simulation,
        controls: Controls,
        indicator: HeadingIndicator,
    ) -> Self {
        let mut flown = Self {
            origin,
            air,
            sampled: start.motion(),
            record: Record::new(start.clone(), air),
            end: start,
            controls,
            indicators: vec![(0, indicator)],
            track: Blocks::default(),
            samples: Blocks::default(),
            chart: Thinned::default(),
            events: Events::default(),
        };
        flown.sample();
        flown
    }

    /// Flies on by so many steps.
    pub(crate) fn fly(&mut self, steps: u64) {
        for _ in 0..steps {
            self.record.fly(&mut self.end, &self.controls);
            if self.record.steps().is_multiple_of(SAMPLE_EVERY) {
                self.sample();
            }
        }
    }

    /// How many steps were flown.
    pub(crate) fn steps(&self) -> u64 {
        self.record.steps()
    }

    /// The flight at its end.
    pub(crate) fn end(&self) -> &Simulation {
        &self.end
    }

    /// The flight at a step.
    pub(crate) fn at(&self, step: u64) -> Simulation {
        self.record.at(step)
    }

    /// Flies a moment of this flight again by so many steps, or up to the end.
    pub(crate) fn fly_again(&self, moment: &mut Simulation, steps: u64) {
        self.record.fly_again(moment, steps);
    }

    /// The record itself: start, air and every change of the controls.
    pub(crate) fn record(&self) -> &Record<SeededAir> {
        &self.record
    }

    /// The air that it is flown in.
    pub(crate) fn air(&self) -> SeededAir {
        self.air
    }

    /// What it began from.
    pub(crate) fn origin(&self) -> &Origin {
        &self.origin
    }

    /// The flight up to a step, to be flown on from there; of a script, a new flight that begins
    /// at that moment.
    ///
    /// # Errors
    /// A float that is too fast for free flight.
    pub(crate) fn to_fly_on(&self, step: u64) -> Result<Self, OutOfRange> {
        if !matches!(self.origin, Origin::Script(_)) {
            return Ok(self.until(step));
        }
        let (start, controls) = self.at(step).taken_over()?;
        // The new flight's time begins here.
        let indicator = self.indicator_at(step);
        let here = self.at(step).moment();
        let shown = indicator.indication(here.motion.heading, here.time);
        let shown = CompassHeading::from_radians(shown.radians());
        let indicator = indicator.set_to(shown, here.motion.heading, 0.0);
        Ok(Self::in_air(
            self.air,
            Origin::MidAir,
            start,
            controls,
            indicator,
        ))
    }

    /// Where the controls stand at the end.
    pub(crate) fn controls(&self) -> Controls {
        self.controls
    }

    /// Where the controls stood at a step.
    pub(crate) fn controls_at(&self, step: u64) -> Controls {
        self.record.controls_at(step).unwrap_or(self.controls)
    }

    /// Moves the controls.
    pub(crate) fn set_controls(&mut self, controls: Controls) {
        self.controls = controls;
    }

    /// The heading indicator as it was last set, or as it drifts, at a step.
    pub(crate) fn indicator_at(&self, step: u64) -> HeadingIndicator {
        let after = self.indicators.partition_point(|(from, _)| *from <= step);
        // The first stands from step 0.
        self.indicators[after.saturating_sub(1)].1
    }

    /// Sets the heading indicator, or its drift, at the end of the flight.
    pub(crate) fn set_indicator(&mut self, indicator: HeadingIndicator) {
        let now = self.steps();
        self.indicators.retain(|(from, _)| *from < now);
        self.indicators.push((now, indicator));
    }

    /// Sets the heading indicator to what the compass reads at a step of a flight that was flown,
    /// after those at which it was set before.
    pub(crate) fn set_indicator_at(&mut self, step: u64) {
        let step = step.min(self.steps());
        let now = self.at(step).moment();
        let (compass, heading) = (now.reading.compass, now.motion.heading);
        let set = self.indicator_at(step).set_to(compass, heading, now.time);
        self.indicators.retain(|(from, _)| *from < step);
        self.indicators.push((step, set));
    }

    /// The part of this flight up to a step, as a flight of its own.
    pub(crate) fn until(&self, step: u64) -> Self {
        let record = self.record.until(step);
        let count = (record.steps() / SAMPLE_EVERY) as usize + 1;
        let indicators = self.indicators.iter();
        let mut cut = Self {
            origin: self.origin.clone(),
            air: self.air,
            end: record.at(record.steps()),
            controls: self.controls_at(step),
            indicators: indicators
                .take_while(|(from, _)| *from <= record.steps())
                .copied()
                .collect(),
            track: self.track.iter().take(count).copied().collect(),
            sampled: record.at((count as u64 - 1) * SAMPLE_EVERY).motion(),
            samples: Blocks::default(),
            chart: Thinned::default(),
            events: Events::default(),
            record,
        };
        for sample in self.samples.iter().take(count) {
            cut.keep(*sample);
        }
        cut
    }

    /// Samples for the chart: ten for each second of a short flight, no more than can be seen of
    /// a long one.
    pub(crate) fn chart(&self) -> &[strip_chart::Sample] {
        self.chart.samples()
    }

    /// Ten samples for each second, for a table.
    pub(crate) fn table(&self) -> Vec<strip_chart::Sample> {
        self.samples.iter().map(charted).collect()
    }

    /// The flight at a time, interpolated between samples; none beyond its ends.
    pub(crate) fn read_at(&self, time: f64) -> Option<strip_chart::Sample> {
        let before = self.samples_until(time).checked_sub(1)?;
        let two = self.samples.some(before..before + 2, 1);
        let two: Vec<_> = two.map(charted).collect();
        strip_chart::read_at(&two, time)
    }

    /// Where the aircraft was, ten times a second or as often as can be seen of a long flight: up
    /// to a moment, the moment itself last, and after it.
    pub(crate) fn track(&self, moment: &Moment) -> (Vec<Position>, Vec<Position>) {
        let last = self.samples_until(moment.time).saturating_sub(1);
        let count = self.track.len();
        let seldom = count / MOST_OF_TRACK + 1;
        let thinned = |all: Range<usize>| self.track.some(all, seldom).copied().collect();
        let mut track: Vec<Position> = thinned(0..last + 1);
        if let (Some(from), Some(sample)) = (self.track.get(last), self.samples.get(last)) {
            let motion = &moment.motion;
            track.push(further(from, motion, motion, moment.time - sample.time));
        }
        (track, thinned(last + 1..count))
    }

    /// How many samples there are up to a time.
    fn samples_until(&self, time: f64) -> usize {
        self.samples.partition_point(|it| it.time <= time)
    }

    /// The samples of a manoeuvre of this flight.
    pub(crate) fn samples_of(&self, manoeuvre: &Manoeuvre) -> impl Iterator<Item = &Sample> {
        self.samples.some(manoeuvre.samples.clone(), 1)
    }

    /// The turn or change of speed under way at a time, or the last one before it.
    pub(crate) fn manoeuvre(&self, time: f64) -> Option<Manoeuvre> {
        manoeuvre::last(&self.samples, self.samples_until(time))
    }

    /// The moments worth jumping to.
    pub(crate) fn events(&self) -> Vec<Timed> {
        self.events.so_far()
    }

    fn sample(&mut self) {
        let moment = self.end.moment();
        let place = self.track.last().map_or_else(Position::default, |from| {
            let seconds = SAMPLE_EVERY as f64 * STEP;
            further(from, &self.sampled, &moment.motion, seconds)
        });
        self.track.push(place);
        self.sampled = moment.motion;
        self.keep(Sample::from(&moment));
    }

    fn keep(&mut self, sample: Sample) {
        self.events.follow(&sample);
        self.chart.push(charted(&sample));
        self.samples.push(sample);
    }
}

/// Where a free flight starts, as a file says it.
pub(crate) fn start_of(scenario: &Scenario) -> Start {
    Start {
        heading_deg: scenario.heading().degrees(),
        speed_kt: scenario.controls().airspeed() / KNOT,
    }
}

/// A sample as the chart takes it.
fn charted(sample: &Sample) -> strip_chart::Sample {
    strip_chart::Sample {
        time: sample.time,
        heading: MagneticHeading::from_radians(sample.heading),
        reading: CompassHeading::from_radians(sample.reading),
        rate_of_turn: sample.rate_of_turn,
        bank: sample.bank,
        airspeed: sample.airspeed,
    }
}

/// Where the aircraft is after a way from a position.
fn further(from: &Position, before: &Motion, after: &Motion, seconds: f64) -> Position {
    let start = Way {
        north: from.north,
        east: from.east,
    };
    let Way { north, east } = start.and(Way::flown(before, after, seconds));
    Position { north, east }
}
