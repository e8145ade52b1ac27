//! What `dipwise sheet` writes: the words of its PDFs read back and held against the other
//! commands, its pictures, and its sentences.

mod pdf_text;

use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

const PLACE: [&str; 6] = [
    "--lat",
    "30",
    "--lon=-95",
    "--date",
    "2026-06-01",
    "--float=brisk",
];

fn dipwise(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_dipwise"))
        .args(arguments)
        .output()
        .unwrap()
}

/// Where this test writes.
fn file(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("sheets");
    fs::create_dir_all(&folder).unwrap();
    folder.join(name)
}

fn written(name: &str, arguments: &[&str]) -> Vec<u8> {
    let path = file(name);
    let output = path.to_str().unwrap();
    let said = dipwise(&[&["sheet"], arguments, &["-o", output]].concat());
    assert!(said.status.success() && said.stdout.is_empty(), "{said:?}");
    fs::read(path).unwrap()
}

fn refused(arguments: &[&str]) -> String {
    let output = dipwise(&[&["sheet"], arguments].concat());
    assert_eq!(output.status.code(), Some(2), "{output:?}");
    let said = String::from_utf8(output.stderr).unwrap();
    assert_eq!(said.lines().count(), 1, "one sentence: {said}");
    said.trim_end().to_owned()
}

#[test]
fn the_figures_of_the_roll_out_sheet_are_those_of_the_table() {
    // Half of this bank is half a degree, which must be rounded the same way.
    let turn = ["--bank", "15", "--airspeed-kt", "110"];
    let pdf = written("rollout.pdf", &[&["rollout"], &PLACE[..], &turn].concat());
    let [page] = &pdf_text::pages(&pdf)[..] else {
        panic!("one page");
    };
    assert_eq!(pdf_text::embedded_fonts(&pdf), 2, "plain and bold");
    assert!(page.contains("When to begin to roll out\n"), "{page}");
    assert!(page.contains("For training, not for navigation."), "{page}");

    let table = dipwise(&[&["table", "--format", "json"], &PLACE[..], &turn].concat());
    let rows: Vec<Value> = serde_json::from_slice(&table.stdout).unwrap();
    assert_eq!(rows.len(), 24);
    for both in rows.chunks(2) {
        let whole = |value: &Value| {
            let degrees = value.as_f64().unwrap().round() as u16;
            format!("{:03}°", if degrees == 0 { 360 } else { degrees })
        };
        let target = whole(&both[0]["target_deg"]);
        let line = page
            .lines()
            .find(|line| line.starts_with(&format!("{target}\t")));
        let cells: Vec<&str> = line.unwrap().split('\t').collect();
        assert_eq!(cells.len(), 11, "{cells:?}");
        for (row, first) in both.iter().zip([1, 6]) {
            let names = ["rule_deg", "half_rule_deg", "steady_deg", "float_deg"];
            let expected = names.map(|name| whole(&row[name]));
            assert_eq!(cells[first..first + 4], expected, "{target}");
        }
    }
}

#[test]
fn a_worksheet_has_its_key_on_a_second_page() {
    let arguments = [&["worksheet", "--seed", "4"], &PLACE[..]].concat();
    let pdf = written("worksheet.pdf", &arguments);
    let pages = pdf_text::pages(&pdf);
    assert_eq!(pages.len(), 2);
    assert!(pages[0].starts_with("Compass worksheet\n") && !pages[0].contains("Flown by"));
    assert!(pages[1].starts_with("Key to the compass worksheet\n"));
    for page in &pages {
        assert!(
            page.contains("Seed 4.") && page.contains("licensed instructor"),
            "{page}"
        );
    }
    assert_eq!(
        pdf,
        written("worksheet-again.pdf", &arguments),
        "the same seed, the same bytes"
    );

    // One picture, the pages one below the other.
    let svg = String::from_utf8(written("worksheet.svg", &arguments)).unwrap();
    let document = usvg::Tree::from_str(&svg, &usvg::Options::default()).unwrap();
    assert!((document.size().height() - 2.0 * 841.89).abs() < 0.1);
    assert!(svg.contains("Key to the compass worksheet"));
}

#[test]
fn a_plan_says_what_its_demonstration_says() {
    let pdf = written("plan.pdf", &["plan", "north-from-west", "--latitude=-35"]);
    let [page] = &pdf_text::pages(&pdf)[..] else {
        panic!("one page");
    };
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    let told = dipwise(&["show", "north-from-west", "--figures", "--latitude=-35"]);
    let told = String::from_utf8(told.stdout).unwrap();
    let told = told.split_whitespace().collect::<Vec<_>>().join(" ");
    let rule = told.split("rule of thumb: ").nth(1).unwrap();
    let rule = rule.split(" notes,").next().unwrap();
    assert!(page.contains(rule), "{page}\n{rule}");
    for heading in [
        "Look for",
        "Time plan",
        "Speaking notes",
        "Answer",
        "Figures",
    ] {
        assert!(page.contains(heading), "{heading}: {page}");
    }
    let unknown = refused(&["plan", "nothing", "-o", "plan.pdf"]);
    assert!(unknown.contains("is no demonstration"), "{unknown}");
}

#[test]
fn the_lead_is_reckoned_by_the_rate_of_roll_where_it_is_asked() {
    let turn = ["--bank", "20", "--roll-rate", "5"];
    let pdf = written(
        "rollout-roll.pdf",
        &[&["rollout"], &PLACE[..], &turn].concat(),
    );
    let page = pdf_text::pages(&pdf).join(" ").replace('\n', " ");
    // By hand: g tan 20° / 51.44 m/s is 3.98°/s; half of it over 4 s, less 2 % for the bend of the
    // tangent, is 7.8°.
    assert!(page.contains("7.8°, what the heading gains"), "{page}");
    let rule = |arguments: &[&str]| {
        let all = [
            &["table", "--format", "json", "--every", "360"],
            &PLACE[..],
            arguments,
        ];
        let rows: Vec<Value> = serde_json::from_slice(&dipwise(&all.concat()).stdout).unwrap();
        rows[1]["rule_deg"].as_f64().unwrap()
    };
    let less = rule(&turn) - rule(&turn[..2]);
    assert!((less - (10.0 - 7.79)).abs() < 0.03, "{less}");
    assert!(
        refused(&["rollout", "--lat", "5", "--roll-rate", "0", "-o", "a.pdf"])
            .contains("rate of roll must be from 1°/s to 60°/s")
    );
}

#[test]
fn every_kind_fits_its_page_on_both_papers() {
    for paper in ["a4", "letter"] {
        for (kind, caution) in [
            ("aids", "a licensed instructor come first"),
            ("deviation", "A real swing is the work of licensed people"),
        ] {
            let name = format!("{kind}-{paper}.pdf");
            let pdf = written(&name, &[kind, "--lat", "-41", "--paper", paper]);
            let pages = pdf_text::pages(&pdf);
            assert_eq!(pages.len(), 1, "{name}");
            assert!(
                pages[0].replace('\n', " ").contains(caution),
                "{name}: {}",
                pages[0]
            );
        }
    }
    let png = written("aids.png", &["aids", "--lat", "52", "--paper", "letter"]);
    let reader = png::Decoder::new(std::io::Cursor::new(png))
        .read_info()
        .unwrap();
    // 8½ in by 11 in at 200 to an inch.
    assert_eq!(reader.info().size(), (1700, 2200));
}

#[test]
fn what_cannot_be_written_is_refused_in_a_sentence() {
    let nowhere = file("no-such-folder").join("a.pdf");
    let nowhere = nowhere.to_str().unwrap();
    assert!(refused(&["aids", "--lat", "52", "-o", nowhere]).contains("cannot be written"));
    for (arguments, sentence) in [
        (
            &["aids", "--lat", "52", "-o", "aids.txt"][..],
            "--output: the name must end in .svg, .pdf or .png, which aids.txt does not",
        ),
        (
            &["rollout", "--lat", "95", "-o", "a.pdf"],
            "--lat: latitude must be from -90° to 90°, not 95°",
        ),
        (
            &["rollout", "--lat", "52", "--bank", "70", "-o", "a.pdf"],
            "--bank: bank must be from 3° to 60°, not 70°",
        ),
        (
            &["rollout", "--lat", "52", "--beside-lat=-91", "-o", "a.pdf"],
            "--beside-lat: latitude must be from -90° to 90°, not -91°",
        ),
        (
            &["deviation", "--lat", "52", "--every", "50", "-o", "a.pdf"],
            "--every: must divide 360° into whole degrees, which 50° does not",
        ),
        (
            &["deviation", "--lat", "90", "-o", "a.pdf"],
            "Latitude 90° N: deviation must be from -40° to 40°, not -59.998°",
        ),
        (
            &["rollout", "--lat", "abc", "-o", "a.pdf"],
            "invalid value 'abc' for '--lat <DEGREES>': it must be a number",
        ),
        (
            &["worksheet", "--lat", "52", "--seed", "-1", "-o", "a.pdf"],
            "invalid value '-1' for '--seed <NUMBER>': it must be a whole number, 0 or above",
        ),
    ] {
        assert_eq!(refused(arguments), sentence);
    }
}
