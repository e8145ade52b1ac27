//! Roll-outs, planned in slices between frames, so that the page stays at hand meanwhile.

use super::meant::Plans;
use compass::heading::MagneticHeading;
use compass::range::OutOfRange;
use leptos::prelude::*;
use lessons::roll_out::{Plan, Planner};
use lessons::sheet::roll_outs::{RollOut, targets};
use web_sys::js_sys::Date;

/// How long one slice goes on planning, in milliseconds; chosen: half a frame.
const SLICE: f64 = 8.0;

/// How far the work is.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Progress {
    /// The plan for the target that is asked for.
    pub(crate) answer: Option<Plan>,
    /// The plans all round, place by place.
    pub(crate) rounds: Vec<Vec<RollOut>>,
    /// How many plans all round there are to be.
    pub(crate) whole: usize,
    /// Whether it was cancelled.
    pub(crate) cancelled: bool,
    /// What refused to be simulated.
    pub(crate) refused: Option<OutOfRange>,
}

impl Progress {
    /// How many plans all round are made.
    pub(crate) fn made(&self) -> usize {
        self.rounds.iter().map(Vec::len).sum()
    }

    /// Whether all are made.
    pub(crate) fn is_whole(&self) -> bool {
        self.whole > 0 && self.made() == self.whole
    }
}

/// The planner at work.
#[derive(Clone, Copy)]
pub(crate) struct Work {
    plans: StoredValue<Option<Plans>>,
    planners: StoredValue<Vec<Planner>>,
    progress: RwSignal<Progress>,
    /// Whether a slice waits for its frame.
    waits: StoredValue<bool>,
}

impl Work {
    /// Nothing to do yet.
    pub(crate) fn new() -> Self {
        Self {
            plans: StoredValue::new(None),
            planners: StoredValue::new(Vec::new()),
            progress: RwSignal::new(Progress::default()),
            waits: StoredValue::new(false),
        }
    }

    /// How far it is.
    pub(crate) fn progress(self) -> RwSignal<Progress> {
        self.progress
    }

    /// Begins anew where something else is asked; what is still valid is kept.
    pub(crate) fn ask(self, plans: Option<Plans>) {
        let same_sites = self.plans.with_value(|before| match (before, &plans) {
            (Some(before), Some(now)) => before.sites == now.sites,
            _ => false,
        });
        if self.plans.with_value(|before| *before == plans) {
            return;
        }
        let places = plans.as_ref().map_or(0, |plans| plans.sites.len());
        self.plans.set_value(plans);
        if same_sites {
            self.progress.update(|progress| progress.answer = None);
        } else {
            self.planners.set_value(Vec::new());
            self.progress.set(Progress {
                rounds: vec![Vec::new(); places],
                whole: places * targets().count(),
                ..Progress::default()
            });
        }
        self.wait();
    }

    /// Stops planning all round.
    pub(crate) fn cancel(self) {
        self.progress.update(|progress| progress.cancelled = true);
    }

    /// Goes on after that.
    pub(crate) fn resume(self) {
        self.progress.update(|progress| progress.cancelled = false);
        self.wait();
    }

    /// Plans on in the next frame.
    fn wait(self) {
        if !self.waits.get_value() {
            self.waits.set_value(true);
            request_animation_frame(move || self.slice());
        }
    }

    fn slice(self) {
        self.waits.set_value(false);
        let begun = Date::now();
        let mut progress = self.progress.get_untracked();
        let mut goes_on = true;
        while goes_on && Date::now() - begun < SLICE {
            goes_on = self.plans.with_value(|plans| match plans {
                Some(plans) => self.step(plans, &mut progress).unwrap_or_else(|refused| {
                    progress.refused = Some(refused);
                    false
                }),
                None => false,
            });
        }
        self.progress.set(progress);
        if goes_on {
            self.wait();
        }
    }

    /// Makes one plan more, and says whether there is another to make.
    fn step(self, plans: &Plans, progress: &mut Progress) -> Result<bool, OutOfRange> {
        let ready = self.planners.with_value(Vec::len);
        if let Some(site) = plans.sites.get(ready) {
            let planner = site.planner()?;
            self.planners
                .update_value(|planners| planners.push(planner));
            return Ok(true);
        }
        self.planners.with_value(|planners| {
            let Some(first) = planners.first() else {
                return Ok(false);
            };
            if progress.answer.is_none() {
                progress.answer = Some(first.plan(plans.target, plans.turn)?);
                return Ok(!progress.cancelled);
            }
            if progress.cancelled {
                return Ok(false);
            }
            for (planner, round) in planners.iter().zip(&mut progress.rounds) {
                let next: Option<MagneticHeading> = targets().nth(round.len());
                if let Some(target) = next {
                    round.push(RollOut::planned(planner, target)?);
                    return Ok(true);
                }
            }
            Ok(false)
        })
    }
}
