//! What is kept of practice as one file: whole, put together without loss, refused in a sentence.

use lessons::drill::kept::{Kept, Logged, Settings, VERSION, joined};
use lessons::drill::mark::Outcome;
use lessons::drill::record::{Help, Record};
use lessons::drill::results::{Answer, Results};
use lessons::drill::set::PracticeSet;
use lessons::drill::{Class, Hemisphere, Kind, Manoeuvre, Octant, TaskId};

fn logged(number: u32, day: u32) -> Logged {
    Logged {
        task: TaskId {
            number,
            ..TaskId::new(Kind::Predict, 4)
        },
        class: Class {
            kind: Kind::Predict,
            octant: Octant::N,
            manoeuvre: Manoeuvre::LeftTurn,
            hemisphere: Hemisphere::Northern,
        },
        outcome: Outcome::Passed,
        seconds: 12.5,
        day,
        at_ms: 1_700_000_000_000 + u64::from(day),
    }
}

fn results(numbers: &[u32]) -> Results {
    let set = r#"{"version": 1, "title": "Two", "parts": [{"kind": "predict", "count": 2}]}"#;
    let answer = |number: &u32| Answer {
        record: Record {
            version: 1,
            task: logged(*number, 0).task,
            chosen: Some(0),
            flight: None,
            gyro_set_s: Vec::new(),
            used: Vec::new(),
            allowed: Vec::new(),
        },
        seconds: 3.0,
        outcome: Outcome::Failed,
        error_deg: None,
        mistake: None,
    };
    Results {
        version: 1,
        student: String::new(),
        set: PracticeSet::from_json(set).unwrap(),
        seed: 4,
        answers: numbers.iter().map(answer).collect(),
    }
}

fn kept() -> Kept {
    Kept {
        answers: vec![logged(0, 20_000), logged(1, 20_003)],
        handed: vec![results(&[0])],
        begun: vec![logged(0, 0).task],
        ..Kept::default()
    }
}

#[test]
fn it_goes_there_and_back_and_an_empty_file_is_one() {
    let json = kept().to_json();
    assert_eq!(Kept::from_json(&json).unwrap(), kept());
    let empty = Kept::from_json(&format!("{{\"version\": {VERSION}}}")).unwrap();
    assert!(empty.is_empty() && !kept().is_empty());
    let practice = kept().practice();
    assert_eq!(practice.classes.len(), 1);
    assert_eq!(
        (practice.classes[0].answered, practice.classes[0].last_day),
        (2, 20_003)
    );
}

#[test]
fn two_that_are_put_together_lose_nothing_and_count_nothing_twice() {
    let other = Kept {
        settings: Settings {
            level: Some(3),
            ..Settings::default()
        },
        answers: vec![logged(2, 20_001), logged(1, 20_003)],
        handed: vec![results(&[1])],
        begun: vec![logged(0, 0).task, logged(5, 0).task],
        ..Kept::default()
    };
    let (one, two) = (kept().with(other.clone()), other.with(kept()));
    assert_eq!(one.answers, two.answers);
    let days: Vec<u32> = one.answers.iter().map(|it| it.day).collect();
    assert_eq!(days, [20_000, 20_001, 20_003]);
    assert_eq!(one.practice(), two.practice());
    assert_eq!(one.begun.len(), 2);
    assert_eq!((one.handed.len(), one.handed[0].answers.len()), (1, 2));
    assert_eq!((one.settings.level, two.settings.level), (None, Some(3)));
    // What both answered counts once.
    let mut again = kept();
    again.put_handed(results(&[0]));
    assert_eq!(again, kept());
}

#[test]
fn of_two_answers_to_a_task_the_first_counts_unless_the_set_allows_another_try() {
    for (allowed, counts) in [
        (vec![], Outcome::Failed),
        (vec![Help::Pause], Outcome::Failed),
        (vec![Help::GoBack], Outcome::Passed),
        (vec![Help::Reload], Outcome::Passed),
    ] {
        let with = |outcome| {
            let mut results = results(&[0, 1]);
            results.set.allowed.clone_from(&allowed);
            results.answers[1].outcome = outcome;
            results
        };
        let both = joined(&with(Outcome::Failed), with(Outcome::Passed));
        assert_eq!(both.answers.len(), 2, "{allowed:?}");
        assert_eq!(both.answers[1].outcome, counts, "{allowed:?}");
    }
}

#[test]
fn what_was_added_can_be_taken_out_again() {
    let file = Kept {
        answers: vec![logged(1, 20_003), logged(2, 20_001)],
        begun: vec![logged(5, 0).task],
        ..Kept::default()
    };
    let both = kept().with(file);
    let added = both.clone().without(&kept());
    assert_eq!(added.answers, [logged(2, 20_001)]);
    assert_eq!((added.begun.len(), added.handed.len()), (1, 0));
    assert_eq!(both.without(&added), kept());
}

#[test]
fn a_broken_file_is_refused_in_a_sentence_that_names_the_field() {
    let json = kept().to_json();
    for (from, to, said) in [
        (
            "{\"version\":1",
            "{\"version\":7",
            "version: practice files of version 1 can be read, not 7",
        ),
        (
            "\"seconds\":12.5",
            "\"seconds\":-1",
            "answers[0].seconds: time taken must be from 0 s to 86400 s, not -1 s",
        ),
        (
            "\"tolerance_deg\":10.0},\"answers\"",
            "\"tolerance_deg\":99},\"answers\"",
            "settings.tolerance_deg: tolerance must be from 1° to 30°, not 99°",
        ),
        ("\"level\":2", "\"level\":9", "answers[0].task.level: "),
        ("\"day\":20000", "\"day\":4000000000", "answers[0].day: "),
        (
            "\"title\":\"Two\"",
            "\"title\":\"Two\\u0007\"",
            "handed[0].set.title: it must be one line of text",
        ),
        (
            "\"outcome\":\"passed\"",
            "\"outcome\":\"won\"",
            "answers[0].outcome: ",
        ),
        ("\"begun\":", "\"gone\":", "gone: unknown field"),
    ] {
        assert!(json.contains(from), "{from} in {json}");
        let refused = Kept::from_json(&json.replacen(from, to, 1)).unwrap_err();
        assert!(refused.to_string().starts_with(said), "{refused}");
    }
    for text in ["", "null", "[]", "{}", "{\"version\":1}x", "\u{0}"] {
        assert!(Kept::from_json(text).is_err(), "{text:?}");
    }
}
