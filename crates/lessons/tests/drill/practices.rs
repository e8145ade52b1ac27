//! When to practise what: against the values that the model's own package publishes.

use lessons::drill::mark::Outcome;
use lessons::drill::practice::{Practice, Practised};
use lessons::drill::{Class, Hemisphere, Kind, Manoeuvre, Octant};

fn class(octant: Octant) -> Class {
    Class {
        kind: Kind::RollOut,
        octant,
        manoeuvre: Manoeuvre::RightTurn,
        hemisphere: Hemisphere::Southern,
    }
}

/// A class answered on days: passed or not.
fn practised(answers: &[(u32, bool)]) -> Practice {
    let mut practice = Practice::default();
    for (day, passed) in answers {
        let outcome = if *passed {
            Outcome::Passed
        } else {
            Outcome::Failed
        };
        practice.answered(&class(Octant::N), outcome, 20.0, *day);
    }
    practice
}

fn memory(of: &Practised) -> [f32; 2] {
    [of.stability_days, of.difficulty]
}

fn near(found: [f32; 2], published: [f32; 2]) {
    for (found, published) in found.into_iter().zip(published) {
        // Seven figures are printed, in single precision.
        assert!(
            (found / published - 1.0).abs() < 2e-6,
            "{found} {published}"
        );
    }
}

#[test]
fn the_first_answer_gives_the_published_states() {
    // fsrs 6.6.2, documentation of `FSRS::next_states`: states after the first answer.
    near(
        memory(&practised(&[(7, false)]).classes[0]),
        [0.212, 6.4133],
    );
    near(
        memory(&practised(&[(7, true)]).classes[0]),
        [2.3065, 2.118_104],
    );
}

#[test]
fn a_history_gives_the_published_state() {
    // fsrs 6.6.2, `test_memory_state` with the default parameters: forgotten, recalled on the same
    // day, then after 1, 3, 8 and 21 days.
    let days = [
        (0, false),
        (0, true),
        (1, true),
        (4, true),
        (12, true),
        (33, true),
    ];
    near(
        memory(&practised(&days).classes[0]),
        [53.626_91, 6.357_486_7],
    );
}

#[test]
fn what_is_least_remembered_comes_first_and_what_is_not_due_not_at_all() {
    let mut practice = practised(&[(0, false), (1, false), (2, false)]);
    practice.answered(&class(Octant::E), Outcome::Passed, 5.0, 0);
    for day in [0, 3, 12] {
        practice.answered(&class(Octant::S), Outcome::Passed, 5.0, day);
    }
    practice.answered(&class(Octant::W), Outcome::NotMarked, 5.0, 0);
    assert_eq!(
        practice.classes.len(),
        3,
        "what was not marked was not practised"
    );
    let due: Vec<Octant> = practice
        .due(14, 10)
        .iter()
        .map(|it| it.class.octant)
        .collect();
    assert_eq!(due, [Octant::N, Octant::E]);
    assert_eq!(practice.due(14, 1).len(), 1);
    assert!(practice.due(2, 10).is_empty() || practice.due(2, 10)[0].class.octant != Octant::N);
    for it in &practice.classes {
        assert_eq!(it.recall(it.last_day), 1.0);
        let stable = it.last_day + 1000;
        assert!(it.recall(stable) < it.recall(it.last_day + 10) && it.recall(stable) > 0.0);
    }
    // By the meaning of stability; a whole number of days is nearest to it.
    let east = &practice.classes[1];
    assert!((east.recall(2) - 0.9).abs() < 0.02);
}

#[test]
fn a_clock_put_back_loses_nothing() {
    let practice = practised(&[(10, true), (3, true)]);
    assert_eq!(practice.classes[0].last_day, 10);
    assert_eq!(practice.classes[0].answered, 2);
    assert_eq!(practice.classes[0].recall(0), 1.0);
}

#[test]
fn practice_goes_there_and_back_and_a_broken_file_is_refused_in_a_sentence() {
    let json = practised(&[(0, true), (3, false)]).to_json();
    assert_eq!(Practice::from_json(&json).unwrap().to_json(), json);
    let refused = |from: &str, to: &str| {
        assert!(json.contains(from), "{json}");
        Practice::from_json(&json.replace(from, to))
            .unwrap_err()
            .to_string()
    };
    assert_eq!(
        refused("\"version\": 1", "\"version\": 2"),
        "version: practice of version 1 can be read, not 2"
    );
    assert_eq!(
        refused("\"last_day\": 3", "\"last_day\": 4000000000"),
        "classes[0].last_day: day must be from 0 to 1000000, not 4000000000"
    );
    assert!(
        refused("\"stability_days\": ", "\"stability_days\": -")
            .starts_with("classes[0].stability_days: ")
    );
    let class = practised(&[(0, true)]);
    let twice = Practice {
        classes: [class.classes.clone(), class.classes].concat(),
        ..Practice::default()
    };
    let refused = Practice::from_json(&twice.to_json())
        .unwrap_err()
        .to_string();
    assert_eq!(refused, "classes[1].class: this class stands there twice");
}
