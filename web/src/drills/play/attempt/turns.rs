//! A turn by the clock, and the same one by the compass after it.

use super::Attempt;
use crate::drills::put::Put;
use lessons::drill::ways::{FlownTurn, Ways, flown, ways};

/// One turn in several ways.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::drills::play) struct Turns {
    /// Without a mistake.
    pub(in crate::drills::play) ways: Ways,
    /// The student's by the clock.
    pub(in crate::drills::play) by_clock: Option<FlownTurn>,
    /// The student's by the compass.
    pub(in crate::drills::play) by_compass: Option<FlownTurn>,
}

impl Attempt {
    /// Whether its answer is one of what is practised; a turn that is flown again by the compass
    /// is for comparing alone.
    pub(in crate::drills::play) fn counts(&self) -> bool {
        !self.task.id.of_timed_turn
    }

    /// Puts the same turn by the compass, after one by the clock.
    pub(super) fn by_the_compass(&mut self) {
        let answer = self.marked.as_ref().map(|(answer, _)| answer);
        let Some((task, answer)) = self.task.id.by_the_compass().zip(answer) else {
            return;
        };
        let by_clock = Some(answer.record.clone());
        let next = Self::new(Put {
            task,
            allowed: self.put.allowed.clone(),
            begun_before: false,
        });
        match next {
            Ok(next) => {
                *self = Self {
                    by_clock,
                    turn_of: self.turn_of + 1,
                    last_frame: self.last_frame,
                    ..next
                };
            }
            Err(reason) => self.fault = Some(reason),
        }
    }

    /// The turn in several ways, once it is marked; none of what is no such turn.
    pub(in crate::drills::play) fn turns(&self) -> Option<Turns> {
        let (answer, _) = self.marked.as_ref()?;
        let ways = ways(&self.task).ok()??;
        let own = flown(&answer.record).ok();
        let before = self.by_clock.as_ref().and_then(|it| flown(it).ok());
        let (by_clock, by_compass) = if self.task.id.of_timed_turn {
            (before, own)
        } else {
            (own, None)
        };
        Some(Turns {
            ways,
            by_clock,
            by_compass,
        })
    }
}
