//! Sets, results and the table of a class: there and back, refused in a sentence, and added up.

use lessons::drill::class_table::{ClassTable, Row};
use lessons::drill::mark::Outcome;
use lessons::drill::record::{Record, VERSION};
use lessons::drill::results::{Answer, Checking, Results};
use lessons::drill::set::PracticeSet;
use lessons::drill::{Kind, TaskId, generate};

const SET: &str = r#"{"version": 1, "title": "First week", "seed": 12, "order": "mixed",
    "time_limit_s": 1800, "allowed": ["pause"],
    "parts": [{"kind": "predict", "count": 6, "level": 1},
              {"kind": "corrections", "count": 4, "tolerance_deg": 5},
              {"kind": "predict", "count": 2, "latitude_deg": -34}]}"#;

fn set() -> PracticeSet {
    PracticeSet::from_json(SET).unwrap()
}

/// The answer to a task that is chosen by a rule from its choices' being right.
pub(crate) fn answer(task: TaskId, right: bool) -> Answer {
    let choices = generate(&task).unwrap().choices;
    let chosen = choices.iter().position(|it| it.right == right);
    let record = Record {
        version: VERSION,
        task,
        chosen,
        flight: None,
        gyro_set_s: Vec::new(),
        used: Vec::new(),
        allowed: Vec::new(),
    };
    Answer::marked(record, 12.5).unwrap().0
}

/// A student who gets every so manieth wrong.
fn results(student: &str, wrong_every: usize) -> Results {
    let answers = set().tasks(0).into_iter().enumerate();
    Results {
        version: lessons::drill::results::VERSION,
        student: student.to_owned(),
        set: set(),
        seed: 12,
        answers: answers
            .map(|(index, task)| answer(task, (index + 1) % wrong_every != 0))
            .collect(),
    }
}

#[test]
fn a_set_gives_its_tasks_each_once_in_the_same_order_to_all_who_have_the_seed() {
    let tasks = set().tasks(0);
    assert_eq!(tasks.len(), 12);
    assert_eq!(tasks, set().tasks(99), "the set has a seed of its own");
    let count = |kind: Kind| tasks.iter().filter(|it| it.kind == kind).count();
    assert_eq!((count(Kind::Predict), count(Kind::Corrections)), (8, 4));
    let mut numbers: Vec<u32> = tasks.iter().map(|it| it.number).collect();
    assert!(!numbers.is_sorted(), "mixed");
    numbers.sort_unstable();
    assert_eq!(numbers, (0..12).collect::<Vec<_>>());

    let fresh = PracticeSet {
        seed: None,
        ..set()
    };
    assert_ne!(fresh.tasks(1), fresh.tasks(2));
    assert_eq!(PracticeSet::from_json(&set().to_json()).unwrap(), set());
}

#[test]
fn what_is_wrong_with_a_set_is_said_in_a_sentence() {
    for (from, to, sentence) in [
        (
            "\"version\": 1",
            "\"version\": 3",
            "version: sets of version 1 can be read, not 3",
        ),
        (
            "1800",
            "1",
            "time_limit_s: time limit must be from 10 s to 86400 s, not 1 s",
        ),
        (
            "\"count\": 6",
            "\"count\": 0",
            "parts[0].count: number of tasks must be from 1 to 500, not 0",
        ),
        (
            "\"count\": 6",
            "\"count\": 500",
            "parts: number of tasks must be from 1 to 500, not 506",
        ),
        (
            "\"level\": 1",
            "\"level\": 7",
            "parts[0].level: level must be from 1 to 3, not 7",
        ),
        (
            "-34",
            "-91",
            "parts[2].latitude_deg: latitude of a task must be from -70° to 70°, not -91°",
        ),
        (
            "First week",
            "a\\u0000b",
            "title: it must be one line of text",
        ),
    ] {
        assert!(SET.contains(from), "{from}");
        let refused = PracticeSet::from_json(&SET.replace(from, to)).unwrap_err();
        assert_eq!(refused.to_string(), sentence);
    }
    let odd = SET.replace("\"order\": \"mixed\"", "\"order\": \"random\"");
    let refused = PracticeSet::from_json(&odd).unwrap_err().to_string();
    assert!(
        refused.starts_with("order: unknown variant `random`"),
        "{refused}"
    );
    let long = SET.replace("First week", &"x".repeat(121));
    let refused = PracticeSet::from_json(&long).unwrap_err().to_string();
    assert_eq!(
        refused,
        "title: it can have at most 120 characters, not 121"
    );
}

#[test]
fn results_go_there_and_back_and_are_marked_again_from_their_records() {
    let honest = results("A. Student", 3);
    let back = Results::from_json(&honest.to_json()).unwrap();
    assert_eq!(back, honest);
    assert_eq!(back.clone().checked().unwrap().answers.len(), 12);

    // Marks that somebody has improved in the file.
    let mut improved = back.clone();
    for answer in &mut improved.answers {
        answer.outcome = Outcome::Passed;
        answer.mistake = None;
    }
    let again = improved.checked().unwrap();
    let outcomes = |of: &Results| of.answers.iter().map(|it| it.outcome).collect::<Vec<_>>();
    assert_eq!(outcomes(&again), outcomes(&honest));

    // An answer twice, and one to another task.
    let mut twice = back.clone();
    twice.answers.push(twice.answers[0].clone());
    let refused = twice.checked().unwrap_err().to_string();
    assert!(
        refused.starts_with("answers[12].record.task: the set does not ask"),
        "{refused}"
    );
    let mut other = back;
    other.answers[1].record.task.seed = 5;
    let refused = other.checked().unwrap_err().to_string();
    assert!(
        refused.starts_with("answers[1].record.task: the set does not ask"),
        "{refused}"
    );
}

#[test]
fn a_file_that_was_cut_short_or_is_something_else_is_said_to_be() {
    let json = results("A", 3).to_json();
    let cut = Results::from_json(&json[..300]).unwrap_err().to_string();
    assert!(
        cut.starts_with("it was cut short: it ends in line "),
        "{cut}"
    );
    let other = Results::from_json("student,set,kind\n")
        .unwrap_err()
        .to_string();
    assert!(
        other.starts_with("it is no JSON: expected value"),
        "{other}"
    );
}

#[test]
fn a_time_that_no_answer_can_take_is_refused() {
    let json = results("A", 3).to_json();
    let refused = Results::from_json(&json.replacen("12.5", "-1", 1)).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "answers[0].seconds: time taken must be from 0 s to 1000000 s, not -1 s"
    );
}

#[test]
fn checking_goes_an_answer_at_a_time_and_counts_the_marks_that_were_changed() {
    let honest = results("A", 3);
    let mut improved = honest.clone();
    for answer in &mut improved.answers {
        answer.outcome = Outcome::Passed;
    }
    let mut checking = Checking::of(improved);
    let mut steps = 0;
    while checking.step().unwrap() {
        steps += 1;
        assert_eq!(checking.done(), steps);
    }
    assert_eq!((steps, checking.changed()), (12, 4), "every third is wrong");
    let outcomes = |of: &Results| of.answers.iter().map(|it| it.outcome).collect::<Vec<_>>();
    assert_eq!(outcomes(checking.results()), outcomes(&honest));
}

#[test]
fn results_are_written_as_csv_that_no_spreadsheet_takes_for_a_formula() {
    let csv = results("=1+1, \"x\"", 3).to_csv();
    let lines: Vec<&str> = csv.lines().collect();
    assert_eq!(lines.len(), 13);
    assert!(lines[0].starts_with("student,set,kind,seed,number,level,latitude_deg"));
    assert!(
        lines[1].starts_with("\"'=1+1, \"\"x\"\"\",First week,"),
        "{}",
        lines[1]
    );
    assert!(
        lines[3].contains(",failed,"),
        "every third is wrong: {}",
        lines[3]
    );
}

#[test]
fn a_class_is_added_up_and_its_commonest_mistake_comes_first() {
    let class = [results("A", 2), results("B", 3), results("C", 100)];
    let table = ClassTable::of(&class);
    assert_eq!(table.kinds, [Kind::Predict, Kind::Corrections]);
    let totals: Vec<_> = table
        .students
        .iter()
        .map(|it| (it.total.passed, it.total.answered))
        .collect();
    assert_eq!(totals, [(6, 12), (8, 12), (12, 12)]);
    assert_eq!((table.all.total.passed, table.all.total.answered), (26, 36));
    let mut short = results("D", 100);
    short.answers.truncate(5);
    let with_less = ClassTable::of(&[results("A", 2), short]);
    let unanswered = |row: &Row| row.asked - row.total.answered;
    assert_eq!(
        with_less
            .students
            .iter()
            .map(unanswered)
            .collect::<Vec<_>>(),
        [0, 7]
    );
    assert_eq!(unanswered(&with_less.all), 7);
    for row in &table.students {
        let passed: usize = row.scores.iter().map(|it| it.passed).sum();
        assert_eq!(passed, row.total.passed);
    }
    assert!(table.mistakes.is_sorted_by(|a, b| a.times >= b.times));
    let times: usize = table.mistakes.iter().map(|it| it.times).sum();
    assert_eq!(times, 10, "six of A's and four of B's");
    assert!(
        table
            .mistakes
            .iter()
            .all(|it| (1..=2).contains(&it.students) && !it.mistake.is_empty())
    );
    let csv = table.to_csv();
    assert!(csv.starts_with("student,predict passed,predict answered,corrections passed"));
    assert!(csv.lines().nth(1).unwrap().ends_with(",6,12,12"));
    let json: serde_json::Value = serde_json::from_str(&table.to_json()).unwrap();
    assert_eq!(json["kinds"], serde_json::json!(["predict", "corrections"]));
    assert_eq!(json["students"][0]["total"]["passed"], 6);
    assert_eq!(json["students"][0]["student"], "A");
}
