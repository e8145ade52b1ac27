//! Results as xAPI statements, against the clauses of *Experience API* 1.0.3, part two.

use crate::sets::answer;
use lessons::drill::mark::Outcome;
use lessons::drill::record::{Help, Record, VERSION};
use lessons::drill::results::{Answer, Results};
use lessons::drill::set::PracticeSet;
use lessons::drill::{TaskId, generate, xapi};
use serde_json::{Value, json};

const SET: &str = r#"{"version": 1, "title": "Turns & more", "seed": 3,
    "parts": [{"kind": "predict", "count": 2, "level": 1},
              {"kind": "corrections", "count": 1},
              {"kind": "roll-out", "count": 1, "latitude_deg": 50}]}"#;

/// A flown task to which the pilot does nothing.
fn idle(task: TaskId) -> Answer {
    let record = Record {
        version: VERSION,
        task,
        chosen: None,
        flight: generate(&task).unwrap().flight.map(|it| it.scenario),
        gyro_set_s: Vec::new(),
        used: Vec::new(),
        allowed: Vec::new(),
    };
    Answer::marked(record, 61.256).unwrap().0
}

fn results() -> Results {
    let set = PracticeSet::from_json(SET).unwrap();
    let tasks = set.tasks(0);
    Results {
        version: lessons::drill::results::VERSION,
        student: "Ada Example".to_owned(),
        seed: 3,
        answers: vec![
            answer(tasks[0], true),
            answer(tasks[1], false),
            answer(tasks[2], true),
            idle(tasks[3]),
        ],
        set,
    }
}

/// An address as RFC 3987 has them, as far as is needed here: a scheme, and no space.
fn is_address(value: &Value) -> bool {
    let text = value.as_str().unwrap();
    text.starts_with("https://dipwise.invalid/") && !text.contains([' ', '"', '<', '>'])
        || text.starts_with("http://adlnet.gov/expapi/")
}

/// 4.4: RFC 4122, and 2.4.1 asks for it of `id`.
fn is_uuid(value: &Value) -> bool {
    let text = value.as_str().unwrap();
    let hyphens: Vec<usize> = text.match_indices('-').map(|(at, _)| at).collect();
    text.len() == 36
        && hyphens == [8, 13, 18, 23]
        && text.bytes().all(|it| it == b'-' || it.is_ascii_hexdigit())
        && text.as_bytes()[14] == b'5'
        && b"89ab".contains(&text.as_bytes()[19])
}

/// 4.2: tags of RFC 5646 to text.
fn is_language_map(value: &Value) -> bool {
    let map = value.as_object().unwrap();
    !map.is_empty()
        && map
            .iter()
            .all(|(tag, text)| tag == "en" && text.is_string())
}

fn keys(value: &Value) -> Vec<&str> {
    value
        .as_object()
        .unwrap()
        .keys()
        .map(String::as_str)
        .collect()
}

#[test]
fn every_statement_has_the_shape_that_the_standard_asks_for() {
    let statements = xapi::statements(&results());
    assert_eq!(statements.len(), 5, "an answer each, and the set");
    for it in &statements {
        // 2.4: no other properties; 2.2: none that is null.
        assert_eq!(
            keys(it),
            ["actor", "context", "id", "object", "result", "verb"]
        );
        assert!(!it.to_string().contains("null"));
        assert!(is_uuid(&it["id"]), "2.4.1");
        // 2.4.2.1: one identifier; 2.4.2.4: an account has a home page and a name.
        assert_eq!(keys(&it["actor"]), ["account", "objectType"]);
        assert_eq!(it["actor"]["objectType"], "Agent");
        assert_eq!(keys(&it["actor"]["account"]), ["homePage", "name"]);
        assert!(is_address(&it["actor"]["account"]["homePage"]));
        assert!(is_address(&it["verb"]["id"]), "2.4.3");
        assert!(is_language_map(&it["verb"]["display"]), "2.4.3");
        assert_eq!(it["object"]["objectType"], "Activity", "2.4.4");
        assert!(is_address(&it["object"]["id"]), "2.4.4.1");
        assert!(is_address(&it["object"]["definition"]["type"]), "2.4.4.1");
        assert!(is_language_map(&it["object"]["definition"]["description"]));
        assert!(is_uuid(&it["context"]["registration"]), "2.4.6.1");
        assert_eq!(it["context"]["language"], "en", "2.4.6");
        assert!(it["result"]["completion"].is_boolean(), "2.4.5");
        // 4.6: ISO 8601, no finer than a hundredth of a second.
        let duration = it["result"]["duration"].as_str().unwrap();
        let seconds = duration
            .strip_prefix("PT")
            .unwrap()
            .strip_suffix('S')
            .unwrap();
        assert!(seconds.parse::<f64>().is_ok());
        assert!(
            seconds
                .split_once('.')
                .is_none_or(|(_, places)| places.len() <= 2)
        );
    }
    let mut ids: Vec<&str> = statements
        .iter()
        .map(|it| it["id"].as_str().unwrap())
        .collect();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), 5);
}

#[test]
fn a_choice_is_an_interaction_with_its_choices_and_the_right_one() {
    let results = results();
    let statements = xapi::statements(&results);
    for (statement, answer) in statements.iter().zip(&results.answers).take(3) {
        let task = generate(&answer.record.task).unwrap();
        let definition = &statement["object"]["definition"];
        // 2.4.4.1, interaction activities: a type of ADL's, choices with ids of their own, and the
        // response one of them. The separators `[,]`, `[.]` and `[:]` stand in none.
        assert_eq!(
            definition["type"],
            "http://adlnet.gov/expapi/activities/cmi.interaction"
        );
        assert_eq!(definition["interactionType"], "choice");
        assert_eq!(definition["description"]["en"], task.question.as_str());
        let choices = definition["choices"].as_array().unwrap();
        assert_eq!(choices.len(), task.choices.len());
        for (given, choice) in choices.iter().zip(&task.choices) {
            assert_eq!(keys(given), ["description", "id"]);
            assert_eq!(given["description"]["en"], choice.text.as_str());
        }
        let right = task.choices.iter().position(|it| it.right).unwrap();
        assert_eq!(
            definition["correctResponsesPattern"],
            json!([choices[right]["id"]])
        );
        let chosen = answer.record.chosen.unwrap();
        assert_eq!(statement["result"]["response"], choices[chosen]["id"]);
        assert_eq!(statement["result"]["success"], chosen == right);
        assert_eq!(
            statement["verb"]["id"],
            "http://adlnet.gov/expapi/verbs/answered"
        );
        // 2.4.6.2: the parent is the set, which the last statement is about.
        let parents = &statement["context"]["contextActivities"]["parent"];
        assert_eq!(parents[0]["id"], statements[4]["object"]["id"]);
    }
    let wrong = &statements[1]["result"]["extensions"];
    assert!(
        wrong
            .as_object()
            .unwrap()
            .keys()
            .all(|it| is_address(&json!(it))),
        "4.1"
    );
}

#[test]
fn a_flight_is_a_simulation_and_the_set_has_a_score_within_its_limits() {
    let results = results();
    assert_eq!(results.answers[3].outcome, Outcome::Failed);
    let statements = xapi::statements(&results);
    let flown = &statements[3];
    assert_eq!(
        flown["object"]["definition"]["type"],
        "http://adlnet.gov/expapi/activities/simulation"
    );
    assert_eq!(flown["verb"]["id"], "http://adlnet.gov/expapi/verbs/failed");
    assert_eq!(flown["result"]["success"], false);
    assert_eq!(flown["result"]["duration"], "PT61.26S");
    assert!(flown["object"]["definition"]["interactionType"].is_null());
    let set = &statements[4];
    // 2.4.5.1: scaled from −1 to 1, raw between min and max.
    assert_eq!(
        set["result"]["score"],
        json!({"raw": 2, "min": 0, "max": 4, "scaled": 0.5})
    );
    assert_eq!(set["result"]["completion"], true);
    assert_eq!(
        set["verb"]["id"],
        "http://adlnet.gov/expapi/verbs/completed"
    );
    assert_eq!(set["object"]["definition"]["name"]["en"], "Turns & more");

    let mut fewer = results.clone();
    fewer.answers.pop();
    let statements = xapi::statements(&fewer);
    assert_eq!(statements[3]["result"]["completion"], false);
    assert_eq!(
        statements[3]["verb"]["id"],
        "http://adlnet.gov/expapi/verbs/attempted"
    );
}

#[test]
fn scores_durations_and_choices_keep_within_what_each_may_be() {
    for (count, seconds, says) in [
        (1, 0.0, "PT0S"),
        (1, 0.004, "PT0S"),
        (2, 59.999, "PT60S"),
        (3, 3600.125, "PT3600.13S"),
    ] {
        let parts = format!(
            r#"{{"version": 1, "title": "", "seed": 9, "parts":
               [{{"kind": "corrections", "count": {count}, "level": 3}}]}}"#
        );
        let set = PracticeSet::from_json(&parts).unwrap();
        let tasks = set.tasks(0);
        let all = Results {
            version: lessons::drill::results::VERSION,
            student: String::new(),
            seed: 9,
            answers: tasks
                .iter()
                .map(|id| {
                    Answer::marked(Record::of_choice(*id, 1), seconds)
                        .unwrap()
                        .0
                })
                .collect(),
            set,
        };
        for it in xapi::statements(&all) {
            // 4.6: a duration of ISO 8601, no finer than a hundredth of a second.
            if it["result"]["score"].is_null() {
                assert_eq!(it["result"]["duration"], says);
            } else {
                // 2.4.5.1: min less than max, raw between them, scaled from −1 to 1.
                let of = |name: &str| it["result"]["score"][name].as_f64().unwrap();
                assert!(of("min") < of("max"));
                assert!((of("min")..=of("max")).contains(&of("raw")));
                let scaled = (of("raw") - of("min")) / (of("max") - of("min"));
                assert!((of("scaled") - scaled).abs() < 1e-6);
                assert_eq!(of("max"), f64::from(count));
            }
            // 2.4.4.1: the names of choices differ, and have no blank; what was answered and what
            // is right are among them.
            let Some(choices) = it["object"]["definition"]["choices"].as_array() else {
                continue;
            };
            let mut names: Vec<&str> = choices
                .iter()
                .map(|it| it["id"].as_str().unwrap())
                .collect();
            let right = &it["object"]["definition"]["correctResponsesPattern"];
            assert_eq!(right.as_array().unwrap().len(), 1);
            assert!(names.contains(&right[0].as_str().unwrap()));
            assert!(names.contains(&it["result"]["response"].as_str().unwrap()));
            assert!(names.iter().all(|it| !it.contains(char::is_whitespace)));
            names.sort_unstable();
            names.dedup();
            assert_eq!(names.len(), choices.len());
            // 2.4.6.2: a list under a key of the four.
            assert_eq!(keys(&it["context"]["contextActivities"]), ["parent"]);
            assert_eq!(
                it["context"]["contextActivities"]["parent"]
                    .as_array()
                    .map(Vec::len),
                Some(1)
            );
        }
    }
}

#[test]
fn nobody_is_named_and_the_same_answers_are_the_same_statements() {
    let results = results();
    let json = xapi::to_json(std::slice::from_ref(&results));
    assert!(!json.contains("Ada") && !json.contains("Example"));
    let mut other = results.clone();
    other.student = "Somebody Else".to_owned();
    assert_eq!(
        xapi::to_json(&[other.clone()]),
        json,
        "the name is no part of it"
    );
    // Marked again, the statements keep their names; other answers are another account.
    let ids = |of: &Results| -> Vec<Value> {
        xapi::statements(of)
            .into_iter()
            .map(|it| it["id"].clone())
            .collect()
    };
    other.answers[1].outcome = Outcome::Passed;
    other.answers[1].record.allowed.push(Help::Pause);
    assert_eq!(ids(&other), ids(&results));
    other.answers[1].seconds += 1.0;
    let account = |of: &Results| xapi::statements(of)[0]["actor"]["account"]["name"].clone();
    assert_ne!(account(&other), account(&results));
    let both: Vec<Value> = serde_json::from_str(&xapi::to_json(&[results, other])).unwrap();
    assert_eq!(both.len(), 10);
}
