//! The attempt without a browser: every kind from its question to its explanation.

use super::ask::Ask;
use super::attempt::{Attempt, Shown, Stage, Still};
use crate::clock::Rate;
use crate::cover::Cover;
use crate::drills::put::Put;
use lessons::drill::mark::Outcome;
use lessons::drill::record::Help;
use lessons::drill::{Aim, Kind, TaskId};

/// The task of a kind, at the first level.
fn attempt(kind: Kind, allowed: &[Help]) -> Attempt {
    Attempt::new(Put {
        task: TaskId {
            level: 1,
            ..TaskId::new(kind, 7)
        },
        allowed: allowed.to_vec(),
        begun_before: false,
    })
    .unwrap()
}

/// Frames, a tenth of a second apart, until something is seen.
struct Frames(f64);

impl Frames {
    fn until(&mut self, attempt: &mut Attempt, mut seen: impl FnMut(&Shown) -> bool) {
        for _ in 0..20_000 {
            if seen(&attempt.shown()) {
                return;
            }
            self.0 += 0.1;
            attempt.frame(self.0);
        }
        panic!("never seen: {:?}", attempt.shown());
    }
}

fn is_explained(shown: &Shown) -> bool {
    shown.stage == Stage::Explained
}

/// Whether it is time for something.
type When = dyn Fn(&Shown) -> bool;
/// What is done besides, after so many frames.
type Does = dyn Fn(&mut Attempt, u32);

fn time(shown: &Shown) -> f64 {
    shown.moment.unwrap().time
}

#[test]
fn a_choice_is_marked_given_once_and_flown_with_nothing_covered() {
    for kind in [
        Kind::Predict,
        Kind::Read,
        Kind::NameTheCause,
        Kind::Corrections,
    ] {
        let mut it = attempt(kind, &[]);
        let right = it.task().choices.iter().position(|it| it.right).unwrap();
        assert_eq!(it.give(), None);
        it.ask(Ask::Choose(99));
        assert_eq!(it.shown().stage, Stage::Asked, "there is no such choice");
        it.ask(Ask::Choose(right));
        let given = it.give().unwrap();
        assert_eq!(given.answer.outcome, Outcome::Passed);
        assert_eq!(it.give(), None, "once");
        assert_eq!(it.shown().cover, Cover::Nothing);
        let mut frames = Frames(0.0);
        if kind != Kind::Corrections {
            frames.until(&mut it, |it| it.still == Some(Still::End));
            let [_, last] = it.shown().span;
            assert_eq!(it.shown().step, last);
        }

        // Another try is told what it is, and given to nobody.
        it.ask(Ask::Again);
        assert_eq!(it.shown().stage, Stage::Asked);
        it.ask(Ask::Choose(right));
        let (answer, mark) = it.marked().unwrap().unwrap();
        assert_eq!(answer.outcome, Outcome::NotMarked);
        assert_eq!(answer.record.used, [Help::GoBack]);
        assert!(mark.reason.as_ref().unwrap().contains("answered before"));
        assert_eq!(it.give(), None);

        // There is no flight of the student's to go on with.
        it.ask(Ask::AgainFromHere);
        assert_eq!(it.shown().stage, Stage::Explained);
    }
}

#[test]
fn a_stretch_is_watched_to_the_moment_of_the_question_with_the_heading_covered() {
    let mut it = attempt(Kind::Read, &[]);
    let asked = it.task().flight.as_ref().unwrap().asked_at_s.unwrap();
    let mut frames = Frames(0.0);
    for _ in 0..2 {
        it.ask(Ask::GoOn);
        frames.until(&mut it, |it| it.still == Some(Still::End));
        assert!((time(&it.shown()) - asked).abs() < 0.01);
        let reading = it.shown().moment.unwrap().reading.compass.whole_degrees();
        assert!(it.task().question.contains(&format!("reads {reading:03}°")));
    }
    assert_eq!(it.shown().cover, Cover::Heading);
    it.ask(Ask::Uncover);
    assert_eq!(
        it.shown().cover,
        Cover::Heading,
        "nothing uncovers before the answer"
    );
}

/// Turns by the simulation's own reading or time, and gives the mark.
fn flown_well(mut it: Attempt, also: impl Fn(&mut Attempt, u32)) -> Attempt {
    let aim = it.task().aim.clone().unwrap();
    it.ask(Ask::GoOn);
    let mut frames = Frames(0.0);
    let (bank, out): (f64, Box<When>) = match aim {
        Aim::RollOut {
            bank_deg,
            simulated_deg,
            ..
        } => (
            bank_deg,
            Box::new(move |it| {
                let reading = it.moment.unwrap().reading.compass.degrees();
                let past = bank_deg.signum() * (reading - simulated_deg + 540.0).rem_euclid(360.0)
                    - bank_deg.signum() * 180.0;
                time(it) > 8.0 && (0.0..20.0).contains(&past)
            }),
        ),
        Aim::TimedTurn {
            bank_deg,
            simulated_s,
            ..
        } => (bank_deg, Box::new(move |it| time(it) > 1.0 + simulated_s)),
        other => panic!("{other:?}"),
    };
    frames.until(&mut it, |it| time(it) >= 1.0);
    also(&mut it, 0);
    for _ in 0..bank.abs().round() as u32 {
        it.ask(Ask::Bank(if bank < 0.0 { -1 } else { 1 }));
    }
    assert_eq!(it.shown().bank_asked, bank.round() as i32);
    frames.until(&mut it, &out);
    it.ask(Ask::Level);
    // It ends by itself.
    frames.until(&mut it, is_explained);
    it
}

#[test]
fn turns_end_by_themselves_and_are_marked_by_what_was_flown() {
    for kind in [Kind::RollOut, Kind::TimedTurn] {
        let mut it = flown_well(attempt(kind, &[]), |_, _| ());
        let (_, mark) = it.marked().unwrap().unwrap();
        assert_eq!(mark.outcome, Outcome::Passed, "{mark:?}");
        assert!(it.shown().has_card && it.shown().cover == Cover::Nothing);
        assert!(it.give().is_some());
    }
}

#[test]
fn a_timed_turn_is_flown_again_by_the_compass_marked_compared_and_never_given() {
    for allowed in [&[][..], &[Help::GoBack]] {
        let mut it = flown_well(attempt(Kind::TimedTurn, allowed), |_, _| ());
        assert!(it.give().is_some() && it.counts());
        let clock = it.task().clone();
        let found = it.turns().unwrap();
        assert!(found.by_clock.unwrap().end.unwrap().off_deg.abs() < 10.0);
        assert_eq!(found.by_compass, None);
        let (stage, turn_of) = (it.shown().stage, it.shown().turn_of);
        assert_eq!(stage, Stage::Explained);

        it.ask(Ask::ByTheCompass);
        let shown = it.shown();
        assert_eq!(
            (shown.stage, shown.still),
            (Stage::Asked, Some(Still::Ready))
        );
        assert!(shown.turn_of > turn_of, "it is put anew");
        assert!(shown.has_card && shown.cover == Cover::Heading);
        assert_eq!(it.task().flight, clock.flight);
        assert_eq!(it.give(), None);

        let mut it = flown_well(it, |_, _| ());
        let (answer, mark) = it.marked().unwrap().unwrap();
        assert_eq!(answer.record.task, clock.id.by_the_compass().unwrap());
        assert!(answer.record.used.is_empty(), "it is no going back");
        assert_eq!(mark.outcome, Outcome::Passed, "{mark:?}");
        let error = mark.error_deg.unwrap();
        let found = it.turns().unwrap();
        assert!(found.by_clock.is_some());
        assert!((found.by_compass.unwrap().end.unwrap().off_deg - error).abs() < 1e-9);
        assert!(it.give().is_none() && !it.counts());

        // There is no third way, and another try is one by the compass.
        it.ask(Ask::ByTheCompass);
        assert!(is_explained(&it.shown()));
        it.ask(Ask::Again);
        let it = flown_well(it, |_, _| ());
        assert!(it.turns().unwrap().by_clock.is_some());
    }
    let mut other = flown_well(attempt(Kind::RollOut, &[]), |_, _| ());
    assert_eq!(other.turns(), None);
    other.ask(Ask::ByTheCompass);
    assert!(is_explained(&other.shown()));
}

#[test]
fn help_without_leave_gives_no_mark_and_with_leave_it_does() {
    let pause = |it: &mut Attempt, _: u32| {
        it.ask(Ask::GoOn);
        assert_eq!(it.shown().still, Some(Still::Paused));
        it.ask(Ask::GoOn);
    };
    let sleep = |it: &mut Attempt, _: u32| {
        it.sleep();
        assert_eq!(it.shown().still, Some(Still::Asleep));
        it.ask(Ask::GoOn);
    };
    let slow = |it: &mut Attempt, _: u32| it.ask(Ask::SlowDown);
    let uncover = |it: &mut Attempt, _: u32| it.ask(Ask::Uncover);
    let helps: [(Help, &Does); 4] = [
        (Help::Pause, &pause),
        (Help::Pause, &sleep),
        (Help::SlowMotion, &slow),
        (Help::Uncover, &uncover),
    ];
    for (help, does) in helps {
        for allowed in [&[][..], &[help]] {
            let it = flown_well(attempt(Kind::TimedTurn, allowed), does);
            let (answer, _) = it.marked().unwrap().unwrap();
            assert_eq!(answer.record.used, [help]);
            let marked = answer.outcome != Outcome::NotMarked;
            assert_eq!(marked, !allowed.is_empty(), "{help:?}");
        }
    }
}

#[test]
fn where_a_flight_may_be_taken_back_the_last_try_counts() {
    for allowed in [&[][..], &[Help::GoBack]] {
        let mut it = flown_well(attempt(Kind::TimedTurn, allowed), |_, _| {});
        assert!(it.give().is_some());
        it.ask(Ask::Again);
        let mut it = flown_well(it, |_, _| {});
        let given = it.give().map(|it| it.answer.outcome);
        assert_eq!(given, (!allowed.is_empty()).then_some(Outcome::Passed));
        assert_eq!(it.give(), None);
    }
}

#[test]
fn a_task_that_was_begun_before_says_so() {
    let mut it = Attempt::new(Put {
        task: TaskId::new(Kind::Predict, 1),
        allowed: Vec::new(),
        begun_before: true,
    })
    .unwrap();
    it.ask(Ask::Choose(0));
    let given = it.give().unwrap();
    assert_eq!(given.answer.record.used, [Help::Reload]);
    assert_eq!(given.answer.outcome, Outcome::NotMarked);
}

#[test]
fn a_task_that_another_tab_began_meanwhile_says_so_and_another_try_here_does_not() {
    let mut it = attempt(Kind::Predict, &[]);
    it.was_begun();
    it.ask(Ask::Choose(0));
    let given = it.give().unwrap();
    assert_eq!(given.answer.record.used, [Help::Reload]);

    let mut it = attempt(Kind::Predict, &[Help::GoBack]);
    it.ask(Ask::Choose(0));
    it.ask(Ask::Again);
    it.was_begun();
    it.ask(Ask::Choose(1));
    let (answer, _) = it.marked().unwrap().unwrap();
    assert_eq!(answer.record.used, [Help::GoBack]);
}

#[test]
fn a_flight_that_counts_begins_at_real_time_whatever_was_asked_for_before() {
    for kind in Kind::ALL.into_iter().filter(|it| it.is_flown()) {
        let mut it = attempt(kind, &[]);
        it.ask(Ask::SlowDown);
        it.ask(Ask::SlowDown);
        it.ask(Ask::GoOn);
        assert_eq!(it.shown().rate, Rate::REAL, "{kind:?}");
    }
}

#[test]
fn a_flight_that_counts_never_runs_faster_under_the_hands_and_an_idle_one_is_marked() {
    let mut it = attempt(Kind::HoldHeading, &[]);
    it.ask(Ask::GoOn);
    it.ask(Ask::SpeedUp);
    assert_eq!(it.shown().rate, Rate::REAL);
    Frames(0.0).until(&mut it, is_explained);
    let (answer, _) = it.marked().unwrap().unwrap();
    assert_eq!(answer.outcome, Outcome::Failed);
    assert!(answer.record.used.is_empty());
}

#[test]
fn the_indicator_is_set_by_what_is_seen_and_may_be_watched_faster() {
    let mut it = attempt(Kind::SetGyro, &[]);
    let Some(Aim::SetGyro {
        good_s, ideal_deg, ..
    }) = it.task().aim.clone()
    else {
        panic!("{:?}", it.task());
    };
    it.ask(Ask::GoOn);
    it.ask(Ask::SpeedUp);
    it.ask(Ask::SpeedUp);
    it.ask(Ask::Bank(5));
    let mut frames = Frames(0.0);
    for [from, to] in &good_s {
        frames.until(&mut it, |it| time(it) >= 0.5 * (from + to));
        it.ask(Ask::SetIndicator);
        // It shows what the compass read a tenth of a second ago at the most.
        let shown = it.shown();
        let moment = shown.moment.unwrap();
        let off = moment.reading.compass.error_from(moment.motion.heading);
        assert!((shown.indicator.unwrap().error_when_set() - off).abs() < 0.05);
    }
    frames.until(&mut it, is_explained);
    let (answer, mark) = it.marked().unwrap().unwrap();
    assert_eq!(answer.outcome, Outcome::Passed, "{mark:?}");
    assert!(mark.error_deg.unwrap() < ideal_deg + 1.0);
    assert_eq!(answer.record.gyro_set_s.len(), good_s.len());
    assert!(answer.record.used.is_empty(), "faster helps nobody");
    let json = answer.record.to_json();
    assert_eq!(
        lessons::drill::record::Record::from_json(&json).unwrap(),
        answer.record
    );

    // From the middle on: what was set before stays set.
    let half = it.shown().span[1] / 2;
    it.ask(Ask::LookAt(half));
    it.ask(Ask::AgainFromHere);
    assert_eq!(it.shown().stage, Stage::Flown);
    let before = it.shown().settings;
    assert!(before > 0 && before < good_s.len());
}

#[test]
fn another_try_from_a_moment_flies_on_from_there_and_does_not_count() {
    let mut it = flown_well(attempt(Kind::RollOut, &[]), |_, _| ());
    assert!(it.give().is_some());
    let end = it.shown().span[1];
    it.ask(Ask::LookAt(end / 2));
    let here = it.shown().moment.unwrap().motion.heading;
    it.ask(Ask::AgainFromHere);
    assert_eq!(it.shown().stage, Stage::Flown);
    assert_eq!(it.shown().moment.unwrap().motion.heading, here);
    it.ask(Ask::GoOn);
    it.ask(Ask::Level);
    Frames(0.0).until(&mut it, is_explained);
    let (answer, _) = it.marked().unwrap().unwrap();
    assert_eq!(answer.record.used, [Help::GoBack]);
    assert_eq!(answer.outcome, Outcome::NotMarked);
    assert_eq!(it.give(), None);
}

#[test]
fn another_try_from_the_end_begins_shortly_before_the_roll_out() {
    let mut it = flown_well(attempt(Kind::RollOut, &[]), |_, _| ());
    let [_, end] = it.shown().span;
    assert_eq!(it.shown().step, end);
    it.ask(Ask::AgainFromHere);
    let shown = it.shown();
    assert_eq!(shown.stage, Stage::Flown);
    assert!(shown.bank_asked.abs() > 10, "still in the turn");
    // Level for ten seconds it took, and eight before.
    let back_s = (end - shown.step) as f64 * compass::simulation::STEP;
    assert!((18.0..40.0).contains(&back_s), "{back_s}");
    it.ask(Ask::GoOn);
    let mut frames = Frames(0.0);
    frames.until(&mut it, |it| it.step > shown.step + 400);
    assert_eq!(it.shown().stage, Stage::Flown, "it is flown on");
}

#[test]
fn a_flight_that_is_ended_at_once_is_told_what_it_lacks() {
    for kind in Kind::ALL.into_iter().filter(|it| it.is_flown()) {
        let mut it = attempt(kind, &[]);
        it.ask(Ask::GoOn);
        it.ask(Ask::Finish);
        assert!(is_explained(&it.shown()), "{kind:?}");
        let (answer, _) = it.marked().unwrap().unwrap();
        assert_ne!(answer.outcome, Outcome::Passed, "{kind:?}");
    }
}

#[test]
fn time_spent_leaves_out_what_nobody_watched() {
    let mut it = attempt(Kind::Predict, &[]);
    for now in [0.0, 0.5, 1.0, 500.0, 500.5] {
        it.frame(now);
    }
    it.ask(Ask::Choose(0));
    // Half a second thrice and no more than one for the long gap: 2.5, rounded.
    assert_eq!(it.give().unwrap().answer.seconds, 3.0);
}
