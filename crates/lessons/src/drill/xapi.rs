//! Results as statements of the Experience API, for course platforms.
//!
//! Source: *Experience API* 1.0.3, part two, *Statements* (ADL, 2016), the numbers of whose clauses
//! stand in the checks; IEEE 9274.1.1-2023 keeps the shapes that are used here. The verbs and the
//! types of activities are ADL's own. A statement here has no `version` and no `timestamp`: the
//! first is the sender's to say (2.4.10), the second is not in a file of results (2.4.7).
//!
//! # Nobody's name
//! The actor is an account (2.4.2.4) whose name is made from the answers alone, so that nothing in
//! a statement says who gave them: what a student typed to be known by is left out. The same file
//! always gives the same account and the same statements, so that a platform which gets them twice
//! keeps them once (2.4.1). Its home page, and every name that has to be an address, is below
//! `dipwise.invalid`: that ending belongs to nobody (RFC 2606, section 2), so no name here can
//! become somebody's site.

use super::identifier::of_text as name;
use super::mark::Outcome;
use super::record::Record;
use super::results::{Answer, Results};
use super::set::PracticeSet;
use super::{Kind, Task, TaskId, generate};
use serde_json::{Value, json};

/// What every address here begins with.
const HERE: &str = "https://dipwise.invalid/xapi";
/// The language of questions and answers, BCP 47.
const LANGUAGE: &str = "en";

/// The statements of a student's results: one for each answer, and one for the set.
///
/// The answers are taken as they are marked: see [`Results::checked`].
pub fn statements(results: &Results) -> Vec<Value> {
    let attempt = name(&attempt_of(results));
    let statement = |index: usize, verb: &str, object: Value, result: Value| {
        json!({
            "id": name(&format!("{attempt} {index}")),
            "actor": {
                "objectType": "Agent",
                "account": {"homePage": format!("{HERE}/anonymous"), "name": attempt},
            },
            "verb": {
                "id": format!("http://adlnet.gov/expapi/verbs/{verb}"),
                "display": {LANGUAGE: verb},
            },
            "object": object,
            "result": result,
            "context": {
                "registration": attempt,
                "platform": "Dipwise",
                "language": LANGUAGE,
            },
        })
    };
    let set = set_activity(&results.set);
    let mut all: Vec<Value> = results
        .answers
        .iter()
        .enumerate()
        .map(|(index, answer)| {
            let task = generate(&answer.record.task).ok();
            let mut one = statement(
                index,
                verb(answer),
                task_activity(&answer.record.task, task.as_ref()),
                result(answer),
            );
            one["context"]["contextActivities"] =
                json!({"parent": [{"objectType": "Activity", "id": set["id"]}]});
            one
        })
        .collect();
    let verb = if is_whole(results) {
        "completed"
    } else {
        "attempted"
    };
    all.push(statement(all.len(), verb, set, sum(results)));
    all
}

/// The statements of many students' results as JSON text: a list, as a platform takes it (part
/// three, 2.1.2).
pub fn to_json(results: &[Results]) -> String {
    let all: Vec<Value> = results.iter().flat_map(statements).collect();
    // What was made of names and numbers is JSON.
    serde_json::to_string_pretty(&all).unwrap_or_default()
}

/// What an attempt is told by: the set, its seed, and the records with their times; no name of a
/// student, no mark and nothing that marking again changes.
fn attempt_of(results: &Results) -> String {
    let mut text = format!("{}\n{}", results.set.to_json(), results.seed);
    for answer in &results.answers {
        let record = Record {
            allowed: Vec::new(),
            ..answer.record.clone()
        };
        text += &format!("\n{} {}", record.to_json(), answer.seconds);
    }
    text
}

/// What is done to a task: a choice is answered, a flight passes its tolerance or fails.
fn verb(answer: &Answer) -> &'static str {
    match answer.outcome {
        _ if !answer.record.task.kind.is_flown() => "answered",
        Outcome::Passed => "passed",
        Outcome::Failed => "failed",
        Outcome::NotMarked => "attempted",
    }
}

fn result(answer: &Answer) -> Value {
    let marked = answer.outcome != Outcome::NotMarked;
    let mut result = json!({
        "completion": marked,
        "duration": duration(answer.seconds),
    });
    if marked {
        result["success"] = json!(answer.outcome == Outcome::Passed);
    }
    if let Some(chosen) = answer.record.chosen {
        result["response"] = json!(choice(chosen));
    }
    let mut more = json!({});
    if let Some(error) = answer.error_deg {
        more[format!("{HERE}/extensions/error-deg")] = json!(flights::six_decimals(error));
    }
    if let Some(mistake) = &answer.mistake {
        more[format!("{HERE}/extensions/mistake")] = json!(mistake);
    }
    if more.as_object().is_some_and(|it| !it.is_empty()) {
        result["extensions"] = more;
    }
    result
}

/// The set's own result: how many of its tasks were passed.
fn sum(results: &Results) -> Value {
    let asked = results.set.tasks(results.seed).len();
    let passed = |it: &&Answer| it.outcome == Outcome::Passed;
    let passed = results.answers.iter().filter(passed).count();
    let seconds = results.answers.iter().map(|it| it.seconds).sum();
    json!({
        "score": {
            "raw": passed,
            "min": 0,
            "max": asked,
            "scaled": flights::six_decimals(passed as f64 / asked.max(1) as f64),
        },
        "completion": is_whole(results),
        "duration": duration(seconds),
    })
}

fn is_whole(results: &Results) -> bool {
    results.answers.len() >= results.set.tasks(results.seed).len()
}

/// A task as an activity: a choice with its choices (2.4.4.1, interaction activities), a flight as
/// a simulation.
fn task_activity(id: &TaskId, task: Option<&Task>) -> Value {
    let mut definition = json!({
        "type": activity(if id.kind.is_flown() { "simulation" } else { "cmi.interaction" }),
        "name": {LANGUAGE: id.kind.name()},
    });
    if let Some(task) = task {
        definition["description"] = json!({LANGUAGE: task.question});
        if !task.choices.is_empty() {
            let choices = task.choices.iter().enumerate();
            let right = task.choices.iter().position(|it| it.right);
            definition["interactionType"] = json!("choice");
            definition["correctResponsesPattern"] = right.map(choice).into_iter().collect();
            definition["choices"] = choices
                .map(|(at, it)| json!({"id": choice(at), "description": {LANGUAGE: it.text}}))
                .collect();
        }
    } else {
        definition["description"] = json!({LANGUAGE: id.kind.description()});
        if !id.kind.is_flown() {
            definition["interactionType"] = json!("other");
        }
    }
    json!({"objectType": "Activity", "id": task_address(id), "definition": definition})
}

fn set_activity(set: &PracticeSet) -> Value {
    let mut definition = json!({
        "type": activity("assessment"),
        "description": {LANGUAGE: format!("A set of tasks: {}", kinds(set))},
    });
    if !set.title.is_empty() {
        definition["name"] = json!({LANGUAGE: set.title});
    }
    json!({
        "objectType": "Activity",
        "id": format!("{HERE}/sets/{}", name(&set.to_json())),
        "definition": definition,
    })
}

fn kinds(set: &PracticeSet) -> String {
    let asked = |kind: &Kind| set.parts.iter().any(|it| it.kind == *kind);
    let names: Vec<&str> = Kind::ALL
        .iter()
        .filter(|it| asked(it))
        .map(|it| it.name())
        .collect();
    names.join(", ")
}

/// The address of a task holds all that it is generated from.
fn task_address(id: &TaskId) -> String {
    let latitude = id
        .latitude_deg
        .map_or(String::new(), |it| format!("&latitude_deg={it}"));
    format!(
        "{HERE}/tasks/{}?seed={}&number={}&level={}&tolerance_deg={}{latitude}",
        id.kind.name(),
        id.seed,
        id.number,
        id.level,
        id.tolerance_deg
    )
}

fn activity(kind: &str) -> String {
    format!("http://adlnet.gov/expapi/activities/{kind}")
}

/// A choice's name among its task's: letters and figures alone, as the separators of patterns ask.
fn choice(at: usize) -> String {
    format!("choice-{}", at + 1)
}

/// ISO 8601, to hundredths of a second, as platforms compare them (4.6).
fn duration(seconds: f64) -> String {
    format!("PT{}S", (100.0 * seconds).round() / 100.0)
}
