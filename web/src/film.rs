//! A film of a flight, or of a marked stretch of it: which moment each of its frames shows.
//!
//! Frames come from the record, so a film is the same on a slow machine and a fast one.

pub(crate) mod captions;
pub(crate) mod frame;
pub(crate) mod kit;

use crate::flown::Flown;
use crate::stretch::Stretch;
use compass::simulation::{Moment, STEP, STEPS_PER_SECOND, Simulation};

/// Closer than this, in seconds, a frame shows a step itself; chosen, far below a step.
const SAME: f64 = 1e-9;

/// A film: a flight cut off at the film's end, and the frames it is shown in.
pub(crate) struct Film {
    flown: Flown,
    from: u64,
    /// Frames in a second of the film, times how much slower it runs than the flight.
    frames_a_second: u32,
    here: Simulation,
}

impl Film {
    /// A film of the marked stretch, or else of the whole flight, with `fps` frames a second, run so
    /// many times slower than the flight; neither is nought.
    pub(crate) fn of(flown: &Flown, stretch: Stretch, fps: u32, slower: u32) -> Self {
        let [from, to] = ends(flown, stretch);
        let flown = flown.until(to);
        Self {
            here: flown.at(from),
            flown,
            from,
            frames_a_second: (fps * slower).max(1),
        }
    }

    /// How many frames it has: at least one.
    pub(crate) fn frames(&self) -> u32 {
        let seconds = (self.flown.steps() - self.from) as f64 * STEP;
        ((seconds * f64::from(self.frames_a_second)).round() as u32).max(1)
    }

    /// What a frame shows, counted from nought; the last moment for one beyond the end.
    pub(crate) fn moment(&mut self, frame: u32) -> Moment {
        let after = f64::from(frame) / f64::from(self.frames_a_second);
        let due = self.from as f64 * STEP + after;
        let step = ((due + SAME) * STEPS_PER_SECOND as f64) as u64;
        let step = step.min(self.flown.steps());
        let here = self.here.state().step;
        if here > step {
            self.here = self.flown.at(step);
        } else {
            self.flown.fly_again(&mut self.here, step - here);
        }
        let past = due - self.here.time();
        if past > SAME && step < self.flown.steps() {
            self.here.moment_after(past)
        } else {
            self.here.moment()
        }
    }

    /// The flight up to the film's end.
    pub(crate) fn flown(&self) -> &Flown {
        &self.flown
    }

    /// From when to when of the flight, in seconds.
    pub(crate) fn span(&self) -> [f64; 2] {
        [self.from, self.flown.steps()].map(|step| step as f64 * STEP)
    }
}

/// The steps between which a film would run.
pub(crate) fn ends(flown: &Flown, stretch: Stretch) -> [u64; 2] {
    match stretch {
        Stretch::Whole(from, to) => [from.min(flown.steps()), to.min(flown.steps())],
        _ => [0, flown.steps()],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::intent::Intent;
    use crate::session::Session;
    use crate::setting::Setting;

    /// Four seconds, three of them in a turn.
    fn turned() -> Session {
        let mut session = Session::new(Setting::home().unwrap()).unwrap();
        session.fly(STEPS_PER_SECOND);
        session.ask(Intent::Bank(20)).unwrap();
        session.fly(3 * STEPS_PER_SECOND);
        session
    }

    #[test]
    fn a_film_has_its_frames_for_each_second_and_more_when_it_runs_slower() {
        let session = turned();
        let frames =
            |stretch, fps, slower| Film::of(session.flown(), stretch, fps, slower).frames();
        assert_eq!(frames(Stretch::None, 30, 1), 120);
        assert_eq!(frames(Stretch::Begun(300), 60, 1), 240);
        assert_eq!(frames(Stretch::Whole(200, 500), 60, 4), 360);
        let unflown = Session::new(Setting::home().unwrap()).unwrap();
        assert_eq!(Film::of(unflown.flown(), Stretch::None, 30, 1).frames(), 1);
    }

    #[test]
    fn a_frame_is_the_flight_at_its_time_whatever_was_asked_before() {
        let session = turned();
        let mut film = Film::of(session.flown(), Stretch::Whole(200, 800), 60, 1);
        assert_eq!(film.span(), [1.0, 4.0]);
        let all: Vec<Moment> = (0..film.frames()).map(|frame| film.moment(frame)).collect();
        for frame in [179, 0, 60, 61, 59] {
            assert_eq!(film.moment(frame), all[frame as usize], "{frame}");
        }
        // On a step it is that step to the bit; between two it lies between them.
        assert_eq!(all[60], session.flown().at(400).moment());
        let banks: Vec<f64> = all.iter().map(|moment| moment.motion.bank).collect();
        assert!(
            banks.windows(2).take(30).all(|two| two[1] > two[0]),
            "{banks:?}"
        );
        assert!((all[61].time - 2.0 - 1.0 / 60.0).abs() < 1e-9);
        // Beyond the end nothing more happens.
        assert_eq!(film.moment(9999), session.flown().at(800).moment());
    }
}
