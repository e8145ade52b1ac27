//! What a user of the command sees: output, sentences and exit codes.

use serde_json::Value;
use std::io::Write;
use std::process::{Command, Output, Stdio};

const TURN: &str = r#"{"field": {"latitude_deg": 52},
    "start": {"heading_deg": 350, "speed_kt": 100},
    "legs": [{"seconds": 3, "bank_deg": 15}, {"seconds": 7}]}"#;

fn dipwise(arguments: &[&str], input: &str) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_dipwise"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // One that refuses its options ends before it has read anything.
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

#[test]
fn fly_prints_a_row_every_half_second_with_six_decimals() {
    let csv = done(&["fly", "-"], TURN);
    let lines: Vec<&str> = csv.lines().collect();
    assert!(lines[0].starts_with("time_s,heading_deg,reading_deg,tilt_deg,bank_deg"));
    assert_eq!(lines.len(), 1 + 21);
    assert!(lines[1].starts_with("0.000000,350.000000,"));
    assert!(lines[21].starts_with("10.000000,"));
}

#[test]
fn fly_flies_a_flight_by_its_controls() {
    let controls = r#"{"field": {"latitude_deg": 52},
        "start": {"heading_deg": 350, "speed_kt": 100},
        "controls": [{"time_s": 1, "bank_deg": 15}, {"time_s": 8, "bank_deg": 0}],
        "duration_s": 10.25}"#;
    let csv = done(&["fly", "-", "--every", "1"], controls);
    let rows: Vec<Vec<&str>> = csv.lines().map(|line| line.split(',').collect()).collect();
    let bank = |row: usize| -> f64 { rows[row][4].parse().unwrap() };
    assert_eq!((rows.len(), rows[12][0]), (1 + 12, "10.250000"));
    assert_eq!(bank(2), 0.0, "held from its step on");
    assert!((bank(8) - 15.0).abs() < 0.1 && bank(12) < 8.0);

    for (from, to, sentence) in [
        (
            "15}",
            "61}",
            "standard input: controls[0].bank_deg: bank must be from -60° to 60°, not 61°",
        ),
        (
            "\"time_s\": 8",
            "\"time_s\": 1",
            "standard input: controls[1].time_s: each time must be at least 0.005 s after the one \
             before, which is 1 s, not 1 s",
        ),
    ] {
        assert_eq!(
            refused(&["fly", "-"], &controls.replace(from, to)),
            sentence
        );
    }
    let unknown = refused(&["fly", "-"], &controls.replace("bank_deg", "bnk_deg"));
    assert!(unknown.contains("the nearest is \"bank_deg\""), "{unknown}");
}

#[test]
fn fly_writes_the_same_flight_as_json() {
    let csv = done(&["fly", "-", "--every", "2.5"], TURN);
    let json = done(&["fly", "-", "--every", "2.5", "--format", "json"], TURN);
    let rows: Vec<Value> = serde_json::from_str(&json).unwrap();
    assert_eq!(rows.len(), 5);
    for (line, row) in csv.lines().skip(1).zip(&rows) {
        let reading = format!("{:.6}", row["reading_deg"].as_f64().unwrap());
        assert_eq!(line.split(',').nth(2).unwrap(), reading);
    }
}

#[test]
fn fly_refuses_with_file_field_value_and_range() {
    let said = refused(
        &["fly", "-"],
        &TURN.replace("\"bank_deg\": 15", "\"bank_deg\": 85"),
    );
    assert_eq!(
        said,
        "standard input: legs[0].bank_deg: bank must be from -80° to 80°, not 85°"
    );
    let said = refused(&["fly", "no-such-file.json"], "");
    assert!(
        said.starts_with("no-such-file.json: cannot be read"),
        "{said}"
    );
    let said = refused(&["fly", "-", "--every", "0"], TURN);
    assert!(
        said.starts_with("--every: interval between rows must be from"),
        "{said}"
    );
    let said = refused(
        &["fly", "-"],
        &TURN.replace("\"seconds\": 7", "\"seconds\": 90000"),
    );
    assert!(said.contains("legs[1].seconds"), "{said}");
    for broken in ["", "{", "[]", "null", "{\"field\": NaN}", "\u{feff}{}"] {
        assert!(refused(&["fly", "-"], broken).starts_with("standard input: "));
    }
}

#[test]
fn field_gives_the_published_row_as_json() {
    // NOAA/NCEI WMM2025 test values: 2025.0, 0 km, 80° N 0° E.
    let json = done(
        &[
            "field",
            "--lat",
            "80",
            "--lon",
            "0",
            "--date",
            "2025-01-01",
            "--format",
            "json",
        ],
        "",
    );
    let field: Value = serde_json::from_str(&json).unwrap();
    // Printed to 0.1 nT and 0.01°: half a last place.
    for (key, published, tolerance) in [
        ("north_nt", 6521.6, 0.05),
        ("east_nt", 145.9, 0.05),
        ("down_nt", 54791.5, 0.05),
        ("horizontal_nt", 6523.2, 0.05),
        ("total_nt", 55178.5, 0.05),
        ("dip_deg", 83.21, 0.005),
        ("variation_deg", 1.28, 0.005),
    ] {
        let computed = field[key].as_f64().unwrap();
        assert!(
            (computed - published).abs() <= tolerance,
            "{key} {computed}"
        );
    }
    assert_eq!(field["zone"], "reliable");
    assert_eq!(field["dip_uncertainty_deg"], 0.2);
}

#[test]
fn field_takes_western_longitudes_and_refuses_other_years() {
    let west = [
        "field", "--lat", "-33.5", "--lon", "-70", "--date", "2027.5",
    ];
    assert!(done(&west, "").contains("horizontal intensity"));
    let said = refused(
        &["field", "--lat", "0", "--lon", "0", "--date", "2030-01-01"],
        "",
    );
    assert!(said.contains("2029-12-31"), "{said}");
    let said = refused(
        &["field", "--lat", "91", "--lon", "0", "--date", "2026-01-01"],
        "",
    );
    assert_eq!(said, "--lat: latitude must be from -90° to 90°, not 91°");
}

#[test]
fn steady_gives_the_published_lag_at_north() {
    // E. Williams, Compass Errors (2001), eq. 2, at dip 55° and 15° of bank; to 0.01°.
    let arguments = [
        "steady",
        "--dip",
        "55",
        "--bank",
        "15",
        "--heading",
        "0",
        "--format",
        "json",
    ];
    let rows: Vec<Value> = serde_json::from_str(&done(&arguments, "")).unwrap();
    assert_eq!(rows.len(), 1);
    assert!((rows[0]["error_deg"].as_f64().unwrap() + 20.29).abs() <= 0.005);
    assert_eq!(rows[0]["heading_deg"], 0.0);
}

#[test]
fn steady_takes_negative_dip_and_acceleration() {
    let mirrored = [
        "steady",
        "--dip=-60",
        "--accel-g",
        "-0.1",
        "--every",
        "90",
        "--format",
        "json",
    ];
    let rows: Vec<Value> = serde_json::from_str(&done(&mirrored, "")).unwrap();
    assert_eq!(rows.len(), 4);
    let plain = [
        "steady",
        "--dip",
        "60",
        "--accel-g",
        "0.1",
        "--every",
        "90",
        "--format",
        "json",
    ];
    assert_eq!(
        rows,
        serde_json::from_str::<Vec<Value>>(&done(&plain, "")).unwrap()
    );
}

#[test]
fn options_that_do_not_go_together_are_refused() {
    for arguments in [
        &["steady", "--dip", "55"][..],
        &["steady", "--dip", "55", "--bank", "1", "--accel-g", "1"],
        &["steady", "--dip", "nan", "--bank", "1"],
        &["steady", "--dip", "inf", "--bank", "1"],
        &["steady", "--dip", "55", "--bank", "81"],
        &["field", "--lat", "1"],
        &["flie"],
        &[],
    ] {
        refused(arguments, "");
    }
    assert!(done(&["--help"], "").contains("For training, not for navigation"));
}

#[test]
fn table_gives_four_ways_for_both_turns_onto_each_target() {
    let place = ["table", "--lat", "30", "--lon=-95", "--date", "2026-06-01"];
    let json = done(
        &[
            &place[..],
            &["--bank", "15", "--every", "90", "--format", "json"],
        ]
        .concat(),
        "",
    );
    let rows: Vec<Value> = serde_json::from_str(&json).unwrap();
    assert_eq!(rows.len(), 8);
    let row = |target: f64, turn: &str| {
        rows.iter()
            .find(|row| row["target_deg"] == target && row["turn"] == turn)
            .unwrap()
    };
    // FAA-H-8083-15B, ch. on compass turns: roll-out at 037, 323, 203 and 157, in whole degrees.
    for (target, turn, rule) in [
        (0.0, "left", 37.5),
        (0.0, "right", 322.5),
        (180.0, "right", 202.5),
        (180.0, "left", 157.5),
    ] {
        let row = row(target, turn);
        assert_eq!(row["rule_deg"], rule, "{target} {turn}");
        // At 30° both rules are the same.
        assert_eq!(row["half_rule_deg"], rule);
    }
    // The closed form's lag at north is 22.9° (physics.md); half the bank before, about as much.
    let steady = row(0.0, "right")["steady_deg"].as_f64().unwrap();
    assert!((steady - (360.0 - 7.5 - 22.0)).abs() < 1.0, "{steady}");
    let float = row(0.0, "right")["float_deg"].as_f64().unwrap();
    assert!((float - steady).abs() < 5.0, "{float}");
    let names: Vec<&String> = rows[0].as_object().unwrap().keys().collect();
    assert_eq!(
        names,
        [
            "float_deg",
            "half_rule_deg",
            "rule_deg",
            "steady_deg",
            "target_deg",
            "turn"
        ]
    );
}

#[test]
fn table_is_the_same_as_csv_and_readable_as_text() {
    let ask = |format| {
        done(
            &["table", "--lat=-41", "--every", "30", "--format", format],
            "",
        )
    };
    let rows: Vec<Value> = serde_json::from_str(&ask("json")).unwrap();
    let csv = ask("csv");
    assert_eq!(csv.lines().count(), 1 + rows.len());
    for (line, row) in csv.lines().skip(1).zip(&rows) {
        let float: f64 = line.rsplit(',').next().unwrap().parse().unwrap();
        assert_eq!(row["float_deg"], float);
    }
    let text = ask("text");
    assert!(text.contains("  360°  left "), "{text}");
    assert!(text.contains("For training, not for navigation."));
}

#[test]
fn table_refuses_what_cannot_be_flown() {
    assert_eq!(
        refused(&["table", "--lat", "30", "--bank", "75"], ""),
        "--bank: bank must be from 3° to 60°, not 75°"
    );
    assert_eq!(
        refused(&["table", "--lat", "30", "--every", "0"], ""),
        "--every: interval between targets must be from 1° to 360°, not 0°"
    );
    assert!(refused(&["table", "--lat", "30", "--lon", "5"], "").contains("--date"));
    assert!(refused(&["table", "--lat", "91"], "").starts_with("--lat: latitude must be"));
}
