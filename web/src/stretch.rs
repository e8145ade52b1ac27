//! A stretch of the flight that is replayed over and over, as it is marked.

use compass::simulation::{STEP, STEPS_PER_SECOND};

/// The shortest stretch, in steps: half a second; chosen, as less than that is no motion to watch.
const SHORTEST: u64 = STEPS_PER_SECOND / 2;

/// What is marked; in steps of the flight.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Stretch {
    /// Nothing.
    #[default]
    None,
    /// One end.
    Begun(u64),
    /// A stretch from one step to a later one.
    Whole(u64, u64),
}

impl Stretch {
    /// With a mark at a step: the first begins a stretch, the second ends it, before or after the
    /// first, and the third clears it. A second one too near to the first is none.
    #[must_use]
    pub(crate) fn marked(self, step: u64) -> Self {
        match self {
            Self::None => Self::Begun(step),
            Self::Begun(first) if first.abs_diff(step) < SHORTEST => self,
            Self::Begun(first) => Self::Whole(first.min(step), first.max(step)),
            Self::Whole(..) => Self::None,
        }
    }

    /// From when to when, in seconds; while it has no end, its start twice.
    pub(crate) fn seconds(self) -> Option<[f64; 2]> {
        let steps = match self {
            Self::None => return None,
            Self::Begun(step) => [step, step],
            Self::Whole(from, to) => [from, to],
        };
        Some(steps.map(|step| step as f64 * STEP))
    }

    /// Where a replay that starts nowhere else starts.
    pub(crate) fn start(self) -> u64 {
        match self {
            Self::Whole(from, _) => from,
            _ => 0,
        }
    }

    /// The step that a replay comes to which goes from one step to another: within the stretch
    /// again if it would pass the end.
    pub(crate) fn looped(self, here: u64, to: u64) -> Option<u64> {
        match self {
            Self::Whole(from, end) if here <= end && to >= end => {
                Some(from + (to - end) % (end - from))
            }
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_marks_begin_end_and_clear() {
        let begun = Stretch::default().marked(700);
        assert_eq!(begun, Stretch::Begun(700));
        assert_eq!(begun.seconds(), Some([3.5, 3.5]));
        assert_eq!(begun.marked(750), begun, "too short to watch");
        let whole = begun.marked(300);
        assert_eq!(whole, Stretch::Whole(300, 700));
        assert_eq!(whole, Stretch::Begun(300).marked(700));
        assert_eq!(whole.marked(5), Stretch::None);
    }

    #[test]
    fn a_replay_that_passes_the_end_begins_again_and_one_beyond_it_goes_on() {
        let whole = Stretch::Whole(300, 700);
        assert_eq!(whole.looped(690, 699), None);
        assert_eq!(whole.looped(690, 700), Some(300));
        assert_eq!(whole.looped(690, 705), Some(305));
        assert_eq!(whole.looped(700, 1705), Some(505));
        assert_eq!(whole.looped(701, 720), None);
        assert_eq!(Stretch::Begun(300).looped(0, 900), None);
    }
}
