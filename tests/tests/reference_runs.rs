//! The six reference runs: scenario files with an independent integration of the equations of the
//! float beside each (see the first line of each CSV). Reading and tilt must match within 0.01° at
//! every row, with the shipped step; heading and bank, which no float touches, much closer.
#![cfg(not(target_family = "wasm"))]

use checks::{apart, largest};
use compass::{
    gust::GustNumbers,
    simulation::{STEP, STEPS_PER_SECOND, Simulation},
};
use flights::Scenario;
use std::{fs, path::Path};

/// The demand on reading and tilt, degrees: what nobody can read off a card.
const DEMANDED: f64 = 0.01;
/// The rows' own precision: six decimals, so half of the last one, and a little for rounding on
/// that edge.
const SIX_DECIMALS: f64 = 0.6e-6;

/// Time, heading, reading, tilt and bank.
type Row = [f64; 5];

fn read_rows(csv: &str) -> Vec<Row> {
    let mut lines = csv.lines();
    let says = lines.next().expect("a line that says what this is");
    assert!(says.starts_with("# "), "{says}");
    assert_eq!(
        lines.next(),
        Some("time_s,heading_deg,reading_deg,tilt_deg,bank_deg")
    );
    lines
        .map(|line| {
            let numbers: Vec<f64> = line
                .split(',')
                .map(|number| number.parse().expect("a number"))
                .collect();
            numbers.try_into().expect("five columns")
        })
        .collect()
}

/// The differences in heading, reading, tilt and bank at one row.
fn differences(flight: &Simulation, [time, heading, reading, tilt, bank]: Row) -> [f64; 4] {
    assert!((flight.time() - time).abs() < 0.5 * STEP);
    let (motion, seen) = (flight.motion(), flight.reading());
    [
        apart(motion.heading.degrees(), heading),
        apart(seen.compass.degrees(), reading),
        (seen.tilt.to_degrees() - tilt).abs(),
        (motion.bank.to_degrees() - bank).abs(),
    ]
}

/// Flies one run and gives the largest differences over all its rows.
fn largest_differences(name: &str) -> [f64; 4] {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/reference-runs");
    let read = |extension: &str| {
        let file = folder.join(name).with_extension(extension);
        fs::read_to_string(&file).unwrap_or_else(|error| panic!("{}: {error}", file.display()))
    };
    let scenario = Scenario::from_json(&read("json")).expect("a scenario");
    let rows = read_rows(&read("csv"));
    let last = rows.last().expect("rows")[0];
    assert!((last - scenario.duration()).abs() < 0.5 + STEP, "{name}");

    let mut flight = scenario.simulation().expect("a float within its ranges");
    let (controls, air) = (scenario.controls(), scenario.air());
    let mut worst = [0.0; 4];
    for row in rows {
        let step = (row[0] * STEPS_PER_SECOND as f64).round() as u64;
        while flight.state().step < step {
            flight.step(&controls, air.at(flight.state().step));
        }
        let now = differences(&flight, row);
        worst = std::array::from_fn(|i| largest(worst[i], now[i]));
    }
    worst
}

#[test]
fn all_six_match_at_every_row() {
    let mut worst = [0.0; 4];
    for name in [
        "balance-weight-liquid-with-bowl",
        "left-turn-off-south",
        "no-vertical-field",
        "right-turn-through-north",
        "southern-left-turn-off-north",
        "speed-change-on-east",
    ] {
        let run = largest_differences(name);
        let [heading, reading, tilt, bank] = run;
        println!(
            "{name}: largest difference in reading {reading:.1e}°, tilt {tilt:.1e}°, \
             heading {heading:.1e}°, bank {bank:.1e}°"
        );
        assert!(reading < DEMANDED && tilt < DEMANDED, "{name}: {run:?}");
        assert!(
            heading < SIX_DECIMALS && bank < SIX_DECIMALS,
            "{name}: {run:?}"
        );
        worst = std::array::from_fn(|i| largest(worst[i], run[i]));
    }
    let [heading, reading, tilt, bank] = worst;
    println!(
        "all: largest difference in reading {reading:.1e}°, tilt {tilt:.1e}°, \
         heading {heading:.1e}°, bank {bank:.1e}°"
    );
}
