//! `dipwise show`: the catalogue, its proofs, its texts and its flights.

use serde_json::Value;
use std::process::{Command, Output};

const ITEM: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../lessons/demonstrations/north-from-west.json"
);

fn show(arguments: &[&str]) -> Output {
    let mut dipwise = Command::new(env!("CARGO_BIN_EXE_dipwise"));
    dipwise.arg("show").args(arguments).output().unwrap()
}

fn done(arguments: &[&str]) -> String {
    let output = show(arguments);
    assert!(output.status.success(), "{output:?}");
    assert!(output.stderr.is_empty());
    String::from_utf8(output.stdout).unwrap()
}

fn refused(arguments: &[&str]) -> String {
    let output = show(arguments);
    assert_eq!(output.status.code(), Some(2), "{output:?}");
    assert!(output.stdout.is_empty(), "nothing on standard output");
    let said = String::from_utf8(output.stderr).unwrap();
    assert_eq!(said.lines().count(), 1, "one sentence: {said}");
    said.trim_end().to_string()
}

/// A file of this test's own, the item changed in one place.
fn file(name: &str, from: &str, to: &str) -> String {
    let text = std::fs::read_to_string(ITEM).unwrap();
    assert!(text.contains(from), "{from}");
    let path = format!("{}/{name}.json", env!("CARGO_TARGET_TMPDIR"));
    std::fs::write(&path, text.replacen(from, to, 1)).unwrap();
    path
}

#[test]
fn the_catalogue_is_listed_one_a_line_in_columns() {
    let list = done(&[]);
    let lines: Vec<&str> = list.lines().collect();
    assert!(lines.len() >= 18);
    let title = |line: &str, title: &str| line.find(title).unwrap();
    assert!(lines[0].starts_with("steady-flight "));
    let column = title(lines[0], "Straight and steady");
    for line in &lines {
        assert!(
            line.as_bytes()[column - 1] == b' ' && line.as_bytes()[column] != b' ',
            "{line}"
        );
    }
    let north = |list: &str| {
        let line = list
            .lines()
            .find(|line| line.starts_with("north-from-west "));
        line.unwrap().to_owned()
    };
    assert!(north(&list).contains("  lags by "), "{}", north(&list));
    let south = north(&done(&["--latitude", "-45"]));
    assert!(south.contains("  leads by "), "{south}");
}

#[test]
fn every_claim_is_proved_a_line_an_item() {
    let proved = done(&["--check", "all"]);
    let order = include_str!("../../lessons/demonstrations/order.json");
    let order: Vec<String> = serde_json::from_str(order).unwrap();
    let names = proved.lines().filter_map(|line| line.split(' ').next());
    assert_eq!(names.collect::<Vec<_>>(), order);
    for line in proved.lines() {
        let words: Vec<&str> = line.split_whitespace().collect();
        assert!(words[1].parse::<u32>().unwrap() >= 5, "{line}");
        assert_eq!(words[2..], ["claims", "proved"], "{line}");
    }
    assert_eq!(done(&["--check", "iron"]).lines().count(), 1);
}

#[test]
fn what_is_not_borne_out_is_said_with_another_exit_code() {
    let claim = r#"{"figure": "on_north", "least": 27, "most": 31}"#;
    let path = file("claims-too-much", claim, &claim.replace("27", "30"));
    let output = show(&["--check", &path]);
    assert_eq!(output.status.code(), Some(1), "{output:?}");
    let lines = String::from_utf8(output.stdout).unwrap();
    assert!(
        lines.ends_with(" claims of 11 proved\n") && lines.contains(" 10 "),
        "{lines}"
    );
    let said = String::from_utf8(output.stderr).unwrap();
    assert_eq!(said.lines().count(), 1);
    let sentence = "on_north is claimed to be from 30 to 31, but is 29.14";
    assert!(said.trim_end().ends_with(sentence), "{said}");
    assert!(said.starts_with(&path), "{said}");
}

#[test]
fn one_is_played_to_rows_as_a_scenario_is_flown() {
    let csv = done(&["north-from-west"]);
    let lines: Vec<&str> = csv.lines().collect();
    assert!(lines[0].starts_with("time_s,heading_deg,reading_deg"));
    assert_eq!(lines.len(), 1 + 165, "82 s, a row every half second");
    assert_eq!(csv, done(&[ITEM]), "by its file, too");
    let json = done(&["north-from-west", "--every", "5", "--format", "json"]);
    let rows: Vec<Value> = serde_json::from_str(&json).unwrap();
    assert_eq!(rows.len(), 18, "and one for the end");
    let number = |line: &str, column: usize| -> f64 {
        line.split(',').nth(column).unwrap().parse().unwrap()
    };
    for (row, line) in rows.iter().zip(lines[1..].iter().step_by(10)) {
        assert_eq!(row["reading_deg"].as_f64().unwrap(), number(line, 2));
    }
    // Elsewhere the same turn is flown, and the compass does something else.
    let south = done(&["north-from-west", "--latitude", "-45"]);
    for (here, there) in lines.iter().zip(south.lines()).skip(1) {
        assert!((number(here, 1) - number(there, 1)).abs() < 1e-6);
    }
    assert!(number(lines[81], 5) < 0.0 && number(south.lines().nth(81).unwrap(), 5) > 0.0);
}

#[test]
fn texts_and_figures_are_told_filled_in() {
    let told = done(&["--figures", "north-from-west"]);
    for part in [
        "north-from-west  Right turn from west onto north\n",
        "  37.6 s  caption: The nose is on north: the compass lags by 29°.\n",
        "          * It lags\n            It leads\n",
        "rule of thumb: At 45° N the rule says that the compass lags by 45° on north",
        "  on_north         lags by 29° (29.14, claimed 27 to 31)\n",
        "notes, 7 min in all\n",
    ] {
        assert!(told.contains(part), "{part:?} is not in\n{told}");
    }
    assert!(!told.contains('{') && told.lines().all(|line| line.chars().count() <= 100));
    let south = done(&["--figures", "north-from-west", "--latitude=-45"]);
    assert!(
        south.contains("            It lags\n          * It leads\n"),
        "{south}"
    );
    assert!(
        !south.contains("claimed"),
        "claims stay where they were made"
    );
}

#[test]
fn what_cannot_be_shown_is_refused_in_a_sentence() {
    for (arguments, sentence) in [
        (
            &["north-form-west"][..],
            "\"north-form-west\" is no demonstration; the nearest is \"north-from-west\" \
             (dipwise show lists them all)",
        ),
        (
            &["iron", "--latitude", "91"],
            "--latitude: latitude must be from -90° to 90°, not 91°",
        ),
        (
            &["iron", "--every", "0"],
            "--every: interval between rows must be from 0.001 s to 86400 s, not 0 s",
        ),
    ] {
        assert_eq!(refused(arguments), sentence);
    }
    let missing = refused(&["nowhere.json"]);
    assert!(
        missing.starts_with("nowhere.json: cannot be read"),
        "{missing}"
    );
    let both = refused(&["--check", "all", "--latitude", "20"]);
    assert!(both.contains("--latitude"), "{both}");
    let path = file("late", "\"at_s\": 78", "\"at_s\": 83");
    let late = refused(&[&path]);
    let sentence = ".at_s: the time must be from 0 to 82 s, the flight's end, not 83";
    assert!(
        late.starts_with(&path) && late.ends_with(sentence),
        "{late}"
    );
    let path = file("misspelt", "\"duration_s\"", "\"duration\"");
    let misspelt = refused(&["--figures", &path]);
    assert!(
        misspelt.contains("the nearest is \"duration_s\""),
        "{misspelt}"
    );
}
