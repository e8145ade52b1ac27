//! How practice goes: means over what was practised, and nothing of what was not.

use lessons::drill::kept::{Kept, Logged, Settings};
use lessons::drill::mark::Outcome;
use lessons::drill::progress::{
    forgetting, grown, new_on, next_due_in, seconds_by_day, seconds_by_kind, skill_in_turns,
    weakest,
};
use lessons::drill::queue::level_of;
use lessons::drill::{Class, Hemisphere, Kind, Manoeuvre, Octant, TaskId};

fn answer(kind: Kind, octant: Octant, manoeuvre: Manoeuvre, day: u32, passed: bool) -> Logged {
    Logged {
        task: TaskId::new(kind, u64::from(day)),
        class: Class {
            kind,
            octant,
            manoeuvre,
            hemisphere: Hemisphere::Northern,
        },
        outcome: if passed {
            Outcome::Passed
        } else {
            Outcome::Failed
        },
        seconds: 30.0,
        day,
        at_ms: u64::from(day),
    }
}

#[test]
fn what_is_recalled_again_and_again_grows_to_the_hardest_level() {
    let settings = Settings::default();
    let mut kept = Kept::default();
    let onto = |octant, day| answer(Kind::Predict, octant, Manoeuvre::LeftTurn, day, true);
    let mut levels = Vec::new();
    for day in [100, 102, 110, 140] {
        kept.answers.push(onto(Octant::N, day));
        let practice = kept.practice();
        let class = &practice.classes[0].class;
        levels.push(level_of(class, &settings, &practice));
        let hardest = usize::from(levels.ends_with(&[3]));
        assert_eq!(grown(&practice, &settings), hardest);
    }
    assert_eq!((levels.first(), levels.last()), (Some(&1), Some(&3)));
    assert!(levels.is_sorted());
    // Another heading is begun easily, and a level that was chosen stays.
    kept.answers.push(onto(Octant::S, 140));
    assert_eq!(grown(&kept.practice(), &settings), 1);
    let gentle = Settings {
        level: Some(1),
        ..settings
    };
    assert_eq!(grown(&kept.practice(), &gentle), 0);
}

fn kept() -> Kept {
    let mut kept = Kept {
        answers: vec![
            answer(Kind::Predict, Octant::N, Manoeuvre::LeftTurn, 100, true),
            answer(Kind::RollOut, Octant::N, Manoeuvre::LeftTurn, 104, false),
            answer(Kind::Predict, Octant::W, Manoeuvre::RightTurn, 110, true),
            answer(Kind::SetGyro, Octant::W, Manoeuvre::Level, 110, true),
        ],
        ..Kept::default()
    };
    kept.tidy();
    kept
}

#[test]
fn skill_is_a_mean_and_what_was_never_practised_has_none() {
    let practice = kept().practice();
    let recall = |index: usize| practice.classes[index].recall(110);
    let rose = skill_in_turns(&practice, None, 110);
    let north = rose[0][0];
    assert_eq!(north.classes, 2);
    assert!((north.recall.unwrap() - (recall(0) + recall(1)) / 2.0).abs() < 1e-12);
    assert_eq!(rose[0][1].recall, None);
    assert_eq!(rose[6][1].recall, Some(1.0));
    let rolled = skill_in_turns(&practice, Some(Kind::RollOut), 110);
    assert_eq!(rolled[0][0].recall, Some(recall(1)));
    assert_eq!(rolled[6][1].recall, None);
}

#[test]
fn the_weakest_kind_is_the_one_that_passes_least_of_enough_answers_lately() {
    let of = |kind, day, passed| answer(kind, Octant::N, Manoeuvre::LeftTurn, day, passed);
    let some = |kind, passes: &[bool]| -> Vec<Logged> {
        passes.iter().map(|it| of(kind, 120, *it)).collect()
    };
    let mut answers = some(Kind::Predict, &[true, true, false, true]);
    assert_eq!(weakest(&answers, 120, 28), Some((Kind::Predict, 3, 4)));
    answers.extend(some(Kind::RollOut, &[true, false, false]));
    assert_eq!(weakest(&answers, 120, 28), Some((Kind::RollOut, 1, 3)));
    // Two tell nothing, and nor does what was long ago or was not marked.
    answers.extend(some(Kind::Read, &[false, false]));
    answers.extend((0..9).map(|_| of(Kind::SetGyro, 90, false)));
    answers.extend((0..9).map(|_| Logged {
        outcome: Outcome::NotMarked,
        ..of(Kind::TimedTurn, 120, false)
    }));
    assert_eq!(weakest(&answers, 120, 28), Some((Kind::RollOut, 1, 3)));
    assert_eq!(weakest(&some(Kind::Read, &[true; 9]), 120, 28), None);
    assert_eq!(weakest(&[], 120, 28), None);
}

#[test]
fn a_curve_falls_from_today_on_and_there_is_none_of_nothing() {
    let practice = kept().practice();
    for class in [None, Some(&practice.classes[0].class)] {
        let curve = forgetting(&practice, class, 110, 60);
        assert_eq!(curve.len(), 61);
        assert!(curve.windows(2).all(|pair| pair[1] < pair[0]));
        assert!(curve[60] > 0.0);
    }
    let first = forgetting(&practice, Some(&practice.classes[0].class), 110, 0);
    assert_eq!(first, [practice.classes[0].recall(110)]);
    assert!(forgetting(&Kept::default().practice(), None, 110, 60).is_empty());
}

#[test]
fn time_and_days_are_counted_where_they_belong() {
    let answers = kept().answers;
    assert_eq!(
        seconds_by_day(&answers, 111, 3),
        [(109, 0.0), (110, 60.0), (111, 0.0)]
    );
    let kinds = seconds_by_kind(&answers, 110, 7);
    assert_eq!((kinds[0].1, kinds[2].1, kinds[5].1), (30.0, 30.0, 30.0));
    assert_eq!(seconds_by_kind(&answers, 110, 6)[2].1, 0.0);
    assert_eq!((new_on(&answers, 110), new_on(&answers, 111)), (2, 0));
    let practice = kept().practice();
    let next = next_due_in(&practice, 110).unwrap();
    assert!(practice.due(110 + next, 9).len() > practice.due(110 + next - 1, 9).len());
    assert_eq!(next_due_in(&Kept::default().practice(), 110), None);
}
