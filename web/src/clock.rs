//! The clock: from the browser's frame times to whole steps of the simulation.

use compass::simulation::STEP;

/// The longest time between two frames, in seconds, that still counts as flying. Chosen: a slow
/// machine's hiccup is shorter; after anything longer (a tab asleep, a debugger's halt) nobody
/// has been watching, so the flight pauses where it was.
pub(crate) const LONGEST_GAP: f64 = 1.0;

/// How fast the flight runs: a power of two times real time, from ⅛ to 8.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Rate(i8);

impl Rate {
    /// Real time.
    pub(crate) const REAL: Self = Self(0);
    /// The slowest motion.
    pub(crate) const SLOWEST: Self = Self(-3);
    /// The fastest motion.
    pub(crate) const FASTEST: Self = Self(3);

    /// Two to the power of this, or as near to it as is allowed.
    pub(crate) fn nearest(power: i8) -> Self {
        Self(power).clamp(Self::SLOWEST, Self::FASTEST)
    }

    /// The power of two that it is.
    pub(crate) fn power(self) -> i8 {
        self.0
    }

    /// Half as fast, if that is allowed.
    #[must_use]
    pub(crate) fn slower(self) -> Self {
        Self(self.0 - 1).max(Self::SLOWEST)
    }

    /// Twice as fast, if that is allowed.
    #[must_use]
    pub(crate) fn faster(self) -> Self {
        Self(self.0 + 1).min(Self::FASTEST)
    }

    /// Seconds of flight in a second.
    pub(crate) fn factor(self) -> f64 {
        let power = f64::from(1_u16 << self.0.unsigned_abs());
        if self.0 < 0 { 1.0 / power } else { power }
    }
}

/// What a frame asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Tick {
    /// So many whole steps.
    Steps(u64),
    /// A pause: the page was asleep since the last frame.
    Slept,
}

/// Counts steps out of frame times and carries what is left of a step to the next frame, so that
/// no time is lost.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Clock {
    last_frame: Option<f64>,
    carried: f64,
}

impl Clock {
    /// A frame at `now` seconds on any steady clock.
    pub(crate) fn frame(&mut self, now: f64, rate: Rate) -> Tick {
        let gap = self.last_frame.map_or(0.0, |last| now - last);
        self.last_frame = Some(now);
        if gap.is_nan() || gap > LONGEST_GAP {
            self.last_frame = None;
            return Tick::Slept;
        }
        let due = self.carried + gap.max(0.0) * rate.factor();
        let steps = (due / STEP).floor();
        // Rounding may put the remainder a hair outside its step.
        self.carried = (due - steps * STEP).clamp(0.0, STEP);
        Tick::Steps(steps as u64)
    }

    /// Stops; the next frame starts counting anew. What is carried stays.
    pub(crate) fn stop(&mut self) {
        self.last_frame = None;
    }

    /// Seconds of flight since the last whole step: at most one step.
    pub(crate) fn carried(&self) -> f64 {
        self.carried
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn steps(clock: &mut Clock, now: f64, rate: Rate) -> u64 {
        match clock.frame(now, rate) {
            Tick::Steps(steps) => steps,
            Tick::Slept => panic!("slept at {now}"),
        }
    }

    #[test]
    fn odd_frame_times_lose_nothing() {
        for rate in [Rate::SLOWEST, Rate::REAL, Rate::FASTEST] {
            let mut clock = Clock::default();
            let mut flown = 0;
            // 59.94 frames a second for a minute.
            for frame in 0..=3596 {
                flown += steps(&mut clock, f64::from(frame) / 59.94, rate);
            }
            let seconds = flown as f64 * STEP + clock.carried();
            let expected = 3596.0 / 59.94 * rate.factor();
            assert!((seconds - expected).abs() < 1e-9, "{rate:?}: {seconds}");
        }
    }

    #[test]
    fn the_first_frame_and_the_first_after_a_stop_ask_for_nothing() {
        let mut clock = Clock::default();
        assert_eq!(steps(&mut clock, 100.0, Rate::REAL), 0);
        // A quarter of a step more than twenty, clear of rounding.
        assert_eq!(steps(&mut clock, 100.101_25, Rate::REAL), 20);
        clock.stop();
        assert_eq!(steps(&mut clock, 500.0, Rate::REAL), 0);
    }

    #[test]
    fn a_long_gap_is_a_pause_and_is_not_flown_afterwards() {
        let mut clock = Clock::default();
        steps(&mut clock, 0.0, Rate::REAL);
        assert_eq!(clock.frame(3600.0, Rate::REAL), Tick::Slept);
        assert_eq!(steps(&mut clock, 3600.02, Rate::REAL), 0);
        assert_eq!(steps(&mut clock, 3600.041, Rate::REAL), 4);
    }

    #[test]
    fn a_clock_that_runs_backwards_or_is_none_flies_nothing() {
        let mut clock = Clock::default();
        steps(&mut clock, 10.0, Rate::REAL);
        assert_eq!(steps(&mut clock, 9.0, Rate::REAL), 0);
        assert_eq!(clock.frame(f64::NAN, Rate::REAL), Tick::Slept);
    }

    #[test]
    fn rates_are_the_powers_of_two_from_an_eighth_to_eight() {
        let mut rate = Rate::FASTEST.faster();
        let mut factors = Vec::new();
        for _ in 0..7 {
            factors.push(rate.factor());
            rate = rate.slower();
        }
        assert_eq!(factors, [8.0, 4.0, 2.0, 1.0, 0.5, 0.25, 0.125]);
        assert_eq!(rate, Rate::SLOWEST);
    }
}
