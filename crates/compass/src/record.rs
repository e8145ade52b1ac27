//! The record of a flight: its start, its inputs and keyframes, from which every moment of it
//! can be had again.

use crate::free_flight::Controls;
use crate::gust::GustNumbers;
use crate::simulation::{STEPS_PER_SECOND, Simulation, State};
use siphasher::sip::SipHasher13;
use std::hash::Hasher;

/// Steps between two keyframes: five seconds; chosen, so that going back costs at most as much
/// as five seconds of flight.
pub const KEYFRAME_EVERY: u64 = 5 * STEPS_PER_SECOND;

/// A flight recorded from its first step.
#[derive(Clone, Debug)]
pub struct Record<G> {
    start: Simulation,
    air: G,
    /// The controls from a step on, in order; the first from step 0.
    inputs: Vec<(u64, Controls)>,
    keyframes: Vec<State>,
    steps: u64,
}

impl<G: GustNumbers> Record<G> {
    /// An empty record of a flight that starts so; `air` gives the white numbers of its gusts.
    pub fn new(start: Simulation, air: G) -> Self {
        Self {
            inputs: Vec::new(),
            keyframes: vec![start.state().clone()],
            steps: 0,
            start,
            air,
        }
    }

    /// Flies `simulation`, which must stand at this record's end, one step on, and records it.
    pub fn fly(&mut self, simulation: &mut Simulation, controls: &Controls) {
        if self.inputs.last().is_none_or(|(_, last)| last != controls) {
            self.inputs.push((self.steps, *controls));
        }
        simulation.step(controls, self.air.at(self.steps));
        self.steps += 1;
        if self.steps.is_multiple_of(KEYFRAME_EVERY) {
            self.keyframes.push(simulation.state().clone());
        }
    }

    /// How many steps are recorded.
    pub fn steps(&self) -> u64 {
        self.steps
    }

    /// The flight at the start.
    pub fn start(&self) -> &Simulation {
        &self.start
    }

    /// The flight at a step, or at its end for a later one.
    pub fn at(&self, step: u64) -> Simulation {
        let step = step.min(self.steps);
        let keyframe = (step / KEYFRAME_EVERY) as usize;
        let mut simulation = self.start.clone();
        simulation.restore(self.keyframes[keyframe].clone());
        while simulation.state().step < step {
            self.replay(&mut simulation);
        }
        simulation
    }

    /// Flies `simulation`, which must stand at a step of this record, again by so many recorded
    /// steps, or up to the end: what is asked moment by moment costs no more than it did in
    /// flight.
    pub fn fly_again(&self, simulation: &mut Simulation, steps: u64) {
        let end = simulation
            .state()
            .step
            .saturating_add(steps)
            .min(self.steps);
        while simulation.state().step < end {
            self.replay(simulation);
        }
    }

    /// The controls, each with the step from which on they were held, in order; the first from
    /// step 0, and none before the first step.
    pub fn inputs(&self) -> &[(u64, Controls)] {
        &self.inputs
    }

    /// The controls that fly the step after this one; none from the end on.
    pub fn controls_at(&self, step: u64) -> Option<Controls> {
        (step < self.steps).then(|| self.input(step))
    }

    /// The record of the same flight up to a step: all of it for a later one.
    #[must_use]
    pub fn until(&self, step: u64) -> Self
    where
        G: Clone,
    {
        let steps = step.min(self.steps);
        let inputs = self.inputs.partition_point(|(from, _)| *from < steps);
        let keyframes = (steps / KEYFRAME_EVERY) as usize + 1;
        Self {
            start: self.start.clone(),
            air: self.air.clone(),
            inputs: self.inputs[..inputs].to_vec(),
            keyframes: self.keyframes[..keyframes].to_vec(),
            steps,
        }
    }

    /// Every `every`-th step from the start to the end, each as the flight was then.
    pub fn moments(&self, every: u64) -> impl Iterator<Item = Simulation> + '_ {
        let every = every.max(1);
        let mut simulation = Some(self.start.clone());
        std::iter::from_fn(move || {
            let now = simulation.take()?;
            let next = now.state().step + every;
            if next <= self.steps {
                let mut later = now.clone();
                while later.state().step < next {
                    self.replay(&mut later);
                }
                simulation = Some(later);
            }
            Some(now)
        })
    }

    /// A digest of the whole flight, replayed from its start: of the bits of heading, bank,
    /// airspeed, card and liquid after each step. Equal flights have equal digests, natively and
    /// in WebAssembly.
    pub fn digest(&self) -> u64 {
        let mut hasher = SipHasher13::new();
        let mut simulation = self.start.clone();
        loop {
            let motion = simulation.motion();
            let float = simulation.state().float;
            let card = float.attitude.quaternion;
            for number in [motion.heading.radians(), motion.bank, motion.airspeed]
                .into_iter()
                .chain(card.to_array())
                .chain(float.rate.xyz.to_array())
                .chain([float.liquid_spin])
            {
                hasher.write_u64(number.to_bits());
            }
            if simulation.state().step == self.steps {
                return hasher.finish();
            }
            self.replay(&mut simulation);
        }
    }

    fn replay(&self, simulation: &mut Simulation) {
        let step = simulation.state().step;
        simulation.step(&self.input(step), self.air.at(step));
    }

    /// The controls that fly the step after this one, which is recorded.
    fn input(&self, step: u64) -> Controls {
        let after = self.inputs.partition_point(|(from, _)| *from <= step);
        // The first input stands at step 0, so there is one at or before any recorded step.
        self.inputs[after - 1].1
    }
}
