//! What `dipwise draw` writes: the figures of its picture against the rows of the same flight, and
//! its sentences.

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

const TURN: &str = r#"{"field": {"latitude_deg": 52},
    "start": {"heading_deg": 350, "speed_kt": 100},
    "legs": [{"seconds": 3, "bank_deg": 15}, {"seconds": 7}]}"#;

fn dipwise(arguments: &[&str]) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_dipwise"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // One that refuses its options reads nothing.
    let _ = child.stdin.take().unwrap().write_all(TURN.as_bytes());
    child.wait_with_output().unwrap()
}

/// Where a test writes: a folder of its own.
fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::create_dir_all(&folder).unwrap();
    folder
}

fn draw(output: &Path, more: &[&str]) -> Output {
    let path = output.to_str().unwrap();
    dipwise(&[&["draw", "-", "-o", path], more].concat())
}

fn done(output: &Path, more: &[&str]) {
    let said = draw(output, more);
    assert!(said.status.success() && said.stdout.is_empty(), "{said:?}");
}

#[test]
fn the_figures_are_those_of_the_flight_at_that_second() {
    let file = folder("figures").join("turn.svg");
    let rows = dipwise(&["fly", "-", "--every", "0.25"]);
    let rows = String::from_utf8(rows.stdout).unwrap();
    let row = rows
        .lines()
        .find(|row| row.starts_with("7.250000,"))
        .unwrap();
    let number = |column: usize| -> f64 { row.split(',').nth(column).unwrap().parse().unwrap() };
    let [heading, reading] = [1, 2].map(|column| match number(column).round() as u16 {
        0 => 360,
        degrees => degrees,
    });
    done(
        &file,
        &[
            "--at",
            "7.25",
            "--title",
            "Past north",
            "--caption",
            "Still behind.",
        ],
    );
    let svg = fs::read_to_string(&file).unwrap();
    for said in [
        format!(">{heading:03}<"),
        format!(">{reading:03}<"),
        ">Past north<".to_owned(),
        ">Still behind.<".to_owned(),
        ">0:07.3<".to_owned(),
        ">15° right<".to_owned(),
        format!("magnetic heading {heading:03}°, compass {reading:03}°"),
    ] {
        assert!(svg.contains(&said), "{said} in {svg}");
    }
    assert!(svg.starts_with("<svg") && svg.contains("width=\"1920\" height=\"1080\""));
}

#[test]
fn a_demonstration_brings_its_title_chapter_and_caption() {
    let folder = folder("demonstration");
    let catalogue = concat!(env!("CARGO_MANIFEST_DIR"), "/../lessons/demonstrations");
    let file = format!("{catalogue}/north-from-west.json");
    for (name, which) in [("name", "north-from-west"), ("file", file.as_str())] {
        let output = folder.join(format!("{name}.svg"));
        let path = output.to_str().unwrap();
        let done = dipwise(&["draw", which, "--at", "37.7", "-o", path]);
        assert!(done.status.success(), "{done:?}");
        let drawn = fs::read_to_string(&output).unwrap();
        for words in [
            "Right turn from west onto north",
            ">The turn<",
            "The nose is on north",
        ] {
            assert!(drawn.contains(words), "{name}: {words}");
        }
    }
}

#[test]
fn a_png_has_the_size_that_was_asked_for_and_the_colours_of_the_light() {
    let folder = folder("png");
    let ground = |light: &str| {
        let file = folder.join(format!("{light}.png"));
        let more = [
            "--at",
            "5",
            "--size",
            "640x360",
            "--light",
            light,
            "--torques",
            "--strips",
        ];
        done(&file, &more);
        let packed = fs::read(&file).unwrap();
        let mut reader = png::Decoder::new(std::io::Cursor::new(packed))
            .read_info()
            .unwrap();
        let mut pixels = vec![0; reader.output_buffer_size().unwrap()];
        let frame = reader.next_frame(&mut pixels).unwrap();
        assert_eq!((frame.width, frame.height), (640, 360));
        let first = [pixels[0], pixels[1], pixels[2]];
        // Words and figures: there are pixels that are far from the ground.
        let inked = pixels
            .chunks(4)
            .filter(|pixel| pixel[0].abs_diff(first[0]) > 120);
        assert!(inked.count() > 2000);
        first
    };
    assert_eq!(ground("day"), [0xFA, 0xF6, 0xEE]);
    assert_eq!(ground("night"), [0x1B, 0x20, 0x26]);
}

#[test]
fn what_cannot_be_drawn_is_said_in_one_sentence() {
    let folder = folder("refused");
    let refused = |name: &str, more: &[&str]| {
        let file = folder.join(name);
        let output = draw(&file, more);
        assert_eq!(output.status.code(), Some(2), "{output:?}");
        assert!(!file.exists());
        let said = String::from_utf8(output.stderr).unwrap();
        assert_eq!(said.lines().count(), 1, "{said}");
        said.trim_end().to_owned()
    };
    assert_eq!(
        refused("a.svg", &["--at", "10.5"]),
        "standard input: --at must be from 0 s to 10 s, the end of this flight, not 10.5 s"
    );
    assert!(refused("a.svg", &["--at", "-1"]).contains("not -1 s"));
    assert!(refused("a.svg", &["--at", "NaN"]).contains("not NaN s"));
    assert!(refused("a.gif", &["--at", "1"]).contains("must end in .svg or .png"));
    let size = refused("a.svg", &["--at", "1", "--size", "20x10"]);
    assert_eq!(
        size,
        "--size: width and height must be from 160 to 7680 pixels, as in 1920x1080, not \"20x10\""
    );
    let nowhere = refused("no/such/folder/a.svg", &["--at", "1"]);
    assert!(nowhere.contains("cannot be written"), "{nowhere}");
}
