//! `dipwise drill` and `dipwise mark`: output, sentences and exit codes.

use serde_json::{Value, json};
use std::io::Write;
use std::process::{Command, Output, Stdio};

fn dipwise(arguments: &[&str], input: &str) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_dipwise"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // A command that refuses its options does not read.
    let _ = child.stdin.take().unwrap().write_all(input.as_bytes());
    child.wait_with_output().unwrap()
}

fn done(arguments: &[&str], input: &str) -> String {
    let output = dipwise(arguments, input);
    assert!(output.status.success(), "{output:?}");
    assert!(output.stderr.is_empty());
    String::from_utf8(output.stdout).unwrap()
}

fn refused(arguments: &[&str], input: &str) -> String {
    let output = dipwise(arguments, input);
    assert_eq!(output.status.code(), Some(2), "{output:?}");
    assert!(output.stdout.is_empty(), "nothing on standard output");
    let said = String::from_utf8(output.stderr).unwrap();
    assert_eq!(said.lines().count(), 1, "one sentence: {said}");
    said.trim_end().to_string()
}

fn kinds() -> Vec<String> {
    let text = done(&["drill", "--kinds"], "");
    let name = |line: &str| line.split_whitespace().next().unwrap().to_owned();
    text.lines().map(name).collect()
}

fn tasks(kind: &str, options: &[&str]) -> Vec<Value> {
    let arguments = [&["drill", "--kind", kind, "--format", "json"], options].concat();
    serde_json::from_str(&done(&arguments, "")).unwrap()
}

#[test]
fn kinds_are_listed_name_first_one_a_line() {
    assert_eq!(
        kinds(),
        [
            "predict",
            "read",
            "roll-out",
            "timed-turn",
            "hold-heading",
            "set-gyro",
            "name-the-cause",
            "corrections"
        ]
    );
    let text = done(&["drill", "--kinds"], "");
    assert!(text.lines().all(|line| line.split_whitespace().count() > 3));
}

#[test]
fn tasks_of_every_kind_differ_and_have_one_right_choice_or_a_flight_to_mark() {
    for kind in kinds() {
        let some = tasks(&kind, &["--seed", "7", "--count", "3"]);
        assert_eq!(some.len(), 3);
        for (index, task) in some.iter().enumerate() {
            assert_eq!(task["kind"], kind.as_str());
            assert_eq!(task["seed"], 7);
            assert!(
                some[..index]
                    .iter()
                    .all(|it| it["question"] != task["question"])
            );
            match task["choices"].as_array() {
                Some(choices) => {
                    let right = choices.iter().filter(|it| it["right"] == true).count();
                    assert_eq!(right, 1, "{task}");
                    assert!(choices.iter().all(|it| it["text"].is_string()));
                    assert!(choices.iter().all(|it| it["right"].is_boolean()));
                }
                None => assert!(task["aim"]["marked"].is_string(), "{task}"),
            }
            // What is flown can be flown by the command as well.
            if let Some(flight) = task.get("flight") {
                let scenario = flight["scenario"].to_string();
                let rows = done(&["fly", "-", "--every", "20"], &scenario);
                assert!(rows.lines().count() > 1);
            }
            for part in ["happened", "why", "rule"] {
                assert!(task["explanation"][part].as_str().unwrap().len() > 20);
            }
        }
        assert_eq!(
            some,
            tasks(&kind, &["--seed", "7", "--count", "3"]),
            "again"
        );
        assert_ne!(some, tasks(&kind, &["--seed", "8", "--count", "3"]));
    }
}

#[test]
fn options_set_latitude_level_and_tolerance() {
    let options = [
        "--lat",
        "-52",
        "--level",
        "1",
        "--tolerance",
        "5",
        "--seed",
        "3",
    ];
    let task = &tasks("roll-out", &options)[0];
    assert_eq!(task["at_latitude_deg"], -52.0);
    assert_eq!(task["level"], 1);
    assert_eq!(task["tolerance_deg"], 5.0);
    assert_eq!(task["flight"]["scenario"]["field"]["latitude_deg"], -52.0);
    assert!(task["question"].as_str().unwrap().contains("within ±5°"));
    let target = task["aim"]["target_deg"].as_f64().unwrap();
    assert_eq!(target % 90.0, 0.0, "cardinal at level 1");
}

#[test]
fn text_marks_the_right_choice() {
    let text = done(
        &["drill", "--kind", "read", "--seed", "2", "--count", "3"],
        "",
    );
    assert_eq!(text.matches("← right").count(), 3);
    assert!(text.starts_with("1. At latitude ") && text.contains("\n3. "));
}

#[test]
fn bad_options_are_refused_in_a_sentence() {
    let said = |options: &[&str]| refused(&[&["drill"], options].concat(), "");
    assert!(said(&[]).contains("--kind"));
    assert!(said(&["--kind", "guess"]).starts_with("invalid value 'guess' for '--kind <KIND>'"));
    assert_eq!(
        said(&["--kind", "predict", "--count", "0"]),
        "--count: number of tasks must be from 1 to 500, not 0"
    );
    assert_eq!(
        said(&["--kind", "predict", "--level", "4"]),
        "--level: level must be from 1 to 3, not 4"
    );
    assert_eq!(
        said(&["--kind", "predict", "--lat", "89"]),
        "--lat: latitude of a task must be from -70° to 70°, not 89°"
    );
    assert_eq!(
        said(&["--kind", "read", "--lat", "5"]),
        "--lat: read tasks need a latitude at least 20° from the equator, not 5°"
    );
    assert_eq!(
        said(&["--kind", "roll-out", "--tolerance", "0"]),
        "--tolerance: tolerance must be from 1° to 30°, not 0°"
    );
    assert_eq!(
        said(&["--kind", "read", "--of-timed-turn"]),
        "--of-timed-turn: only a roll-out task can be that of a timed turn, not a read task"
    );
    assert!(said(&["--kinds", "--kind", "read"]).contains("cannot be used with"));
    for (option, value) in [
        ("--seed", "-1"),
        ("--seed", "99999999999999999999"),
        ("--count", "x"),
        ("--count", "-3"),
        ("--level", "2.5"),
    ] {
        let said = said(&["--kind", "predict", option, value]);
        let begins = format!("invalid value '{value}' for '{option} <");
        assert!(said.starts_with(&begins), "{said}");
        assert!(
            said.contains("a whole number from 0 to 18446744073709551615"),
            "{said}"
        );
    }
}

/// A record of a task flown by given controls.
fn record(task: &Value, controls: Value, seconds: f64) -> Value {
    let mut flight = task["flight"]["scenario"].clone();
    flight["controls"] = controls;
    flight["duration_s"] = seconds.into();
    let id = ["kind", "seed", "number", "level", "tolerance_deg"];
    let id: serde_json::Map<String, Value> = id
        .iter()
        .map(|name| ((*name).to_owned(), task[name].clone()))
        .collect();
    json!({"version": 1, "task": id, "flight": flight})
}

#[test]
fn a_timed_turn_is_marked_by_its_record() {
    let task = &tasks("timed-turn", &["--seed", "9"])[0];
    let aim = &task["aim"];
    let end = 5.0 + aim["simulated_s"].as_f64().unwrap();
    let turn = json!([{"time_s": 5, "bank_deg": aim["bank_deg"]}, {"time_s": end, "bank_deg": 0}]);
    let good = record(task, turn, end + 30.0).to_string();
    let marked: Value =
        serde_json::from_str(&done(&["mark", "-", "--format", "json"], &good)).unwrap();
    assert_eq!(marked["outcome"], "passed");
    assert!(
        marked["error_deg"].as_f64().unwrap().abs() < 0.3,
        "{marked}"
    );
    let text = done(&["mark", "-"], &good);
    assert!(text.starts_with("timed-turn: passed, 0."), "{text}");

    let idle = record(task, json!([]), 60.0).to_string();
    let text = done(&["mark", "-"], &idle);
    assert!(text.starts_with("timed-turn: not passed, "), "{text}");
    assert!(text.contains("The aircraft never turned."));

    // The same flight, as the answer to the same turn by the compass.
    let compass = &tasks("roll-out", &["--seed", "9", "--of-timed-turn"])[0];
    assert_eq!(compass["flight"], task["flight"]);
    assert_eq!(compass["aim"]["target_deg"], aim["target_deg"]);
    let mut same: Value = serde_json::from_str(&good).unwrap();
    same["task"]["kind"] = "roll-out".into();
    same["task"]["of_timed_turn"] = true.into();
    let text = done(&["mark", "-"], &same.to_string());
    assert!(text.starts_with("roll-out: passed, 0."), "{text}");
}

#[test]
fn what_cannot_be_marked_is_refused_in_a_sentence() {
    let task = &tasks("roll-out", &["--seed", "9"])[0];
    let good = record(task, json!([]), 30.0);
    let said = |change: &dyn Fn(&mut Value)| {
        let mut record = good.clone();
        change(&mut record);
        refused(&["mark", "-"], &record.to_string())
    };
    assert_eq!(
        said(&|it| it["version"] = 2.into()),
        "standard input: version: records of version 1 can be read, not 2"
    );
    let banked = said(&|it| it["flight"]["controls"] = json!([{"time_s": 1, "bank_deg": 99}]));
    assert_eq!(
        banked,
        "standard input: flight.controls[0].bank_deg: bank must be from -60° to 60°, not 99°"
    );
    let other = said(&|it| it["task"]["seed"] = 10.into());
    assert!(other.starts_with("standard input: flight."), "{other}");
    assert!(said(&|it| it["task"]["kind"] = "fly".into()).contains("unknown variant `fly`"));
    let negative = said(&|it| it["task"]["seed"] = (-1).into());
    let expected = "standard input: task.seed: invalid value: integer `-1`, expected a whole number \
                    from 0 to 18446744073709551615 at line 1 column ";
    assert!(negative.starts_with(expected), "{negative}");
    let listed = refused(&["class", "-"], "[]");
    assert!(
        listed.contains("expected an object with named fields"),
        "{listed}"
    );
    assert!(refused(&["mark", "-"], "{").starts_with("standard input: "));
    assert!(refused(&["mark", "no-such-file.json"], "").contains("cannot be read"));
}

#[test]
fn a_class_is_gathered_and_every_answer_marked_again() {
    let tasks = tasks(
        "corrections",
        &["--seed", "5", "--count", "2", "--level", "1"],
    );
    let set = json!({"version": 1, "title": "Paper", "seed": 5,
        "parts": [{"kind": "corrections", "count": 2, "level": 1}]});
    let answers: Vec<Value> = (tasks.iter().enumerate())
        .map(|(at, task)| {
            let choices = task["choices"].as_array().unwrap();
            let wanted = at == 0;
            let chosen = choices.iter().position(|it| it["right"] == wanted);
            let id = json!({"kind": "corrections", "seed": 5, "number": task["number"], "level": 1,
                "tolerance_deg": 10});
            // Both say that they passed; the second did not.
            json!({"record": {"version": 1, "task": id, "chosen": chosen}, "seconds": 9,
                "outcome": "passed"})
        })
        .collect();
    let results =
        json!({"version": 1, "student": "Ada", "set": set, "seed": 5, "answers": answers});
    let text = done(&["class", "-"], &results.to_string());
    assert!(
        text.starts_with(
            "     corrections  all  asked\nAda          1/2  1/2  2\nall          1/2  1/2  2\n"
        ),
        "{text}"
    );
    assert!(
        text.contains("corrections: ") && text.ends_with(", once\n"),
        "{text}"
    );
    let csv = done(&["class", "-", "--format", "csv"], &results.to_string());
    assert!(csv.ends_with("\nAda,1,2,1,2,2\n"), "{csv}");
    let nameless = results.to_string().replace("Ada", "");
    let csv = done(&["class", "-", "--format", "csv"], &nameless);
    assert!(csv.contains("\nstandard input,1,2,"), "{csv}");
    let xapi = done(&["class", "-", "--format", "xapi"], &results.to_string());
    let statements: Vec<Value> = serde_json::from_str(&xapi).unwrap();
    assert_eq!(statements.len(), 3);
    assert!(!xapi.contains("Ada"));
    let old = results.to_string().replace("\"student\"", "\"pupil\"");
    let said = refused(&["class", "-"], &old);
    assert!(
        said.starts_with("standard input: pupil: unknown field `pupil`"),
        "{said}"
    );
}
