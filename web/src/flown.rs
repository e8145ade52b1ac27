//! A flight as it was flown: its record, and samples of it for charts and events.
//!
//! Any step of it can be had again, and a flight can be cut at any step, to be flown on from
//! there another way.

use compass::free_flight::Controls;
use compass::record::Record;
use compass::simulation::{STEPS_PER_SECOND, Simulation};
use drawing::strip_chart;
use flights::air::SeededAir;
use flights::events::{Timed, events};
use flights::samples::Sample;

/// The seed of the rough air; chosen: each flight meets the same gusts, so that two flights can
/// be compared.
const AIR: SeededAir = SeededAir { seed: 1 };

/// Steps between two samples: a tenth of a second.
const SAMPLE_EVERY: u64 = STEPS_PER_SECOND / 10;

/// A flight from its first step to its end so far.
pub(crate) struct Flown {
    record: Record<SeededAir>,
    end: Simulation,
    controls: Controls,
    samples: Vec<Sample>,
    chart: Vec<strip_chart::Sample>,
}

impl Flown {
    /// A flight about to start, with the controls so.
    pub(crate) fn new(start: Simulation, controls: Controls) -> Self {
        let mut flown = Self {
            record: Record::new(start.clone(), AIR),
            end: start,
            controls,
            samples: Vec::new(),
            chart: Vec::new(),
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

    /// The part of this flight up to a step, as a flight of its own.
    pub(crate) fn until(&self, step: u64) -> Self {
        let record = self.record.until(step);
        let count = (record.steps() / SAMPLE_EVERY) as usize + 1;
        Self {
            end: record.at(record.steps()),
            controls: self.controls_at(step),
            samples: self.samples.iter().take(count).copied().collect(),
            chart: self.chart.iter().take(count).copied().collect(),
            record,
        }
    }

    /// Ten samples for each second, for the chart.
    pub(crate) fn chart(&self) -> &[strip_chart::Sample] {
        &self.chart
    }

    /// The moments worth jumping to.
    pub(crate) fn events(&self) -> Vec<Timed> {
        events(&self.samples)
    }

    fn sample(&mut self) {
        let moment = self.end.moment();
        self.samples.push(Sample::from(&moment));
        self.chart.push(strip_chart::Sample::from(&moment));
    }
}
