//! Flies two minutes and writes stills of the charts and the world map, to be looked at:
//! `cargo run -p drawing --example charts -- FOLDER`.

use compass::aircraft::Aircraft;
use compass::deviation::AircraftIron;
use compass::field::MagneticField;
use compass::float_settings::FloatSettings;
use compass::free_flight::Controls;
use compass::gust::{GustNumbers, RoughAir, StillAir};
use compass::heading::MagneticHeading;
use compass::simulation::{STEPS_PER_SECOND, Simulation, Situation};
use compass::steady::in_turn;
use compass::unit::KNOT;
use drawing::error_chart::{self, ErrorAt, ErrorChartView, error_chart, sampled};
use drawing::shape::Shape;
use drawing::strip_chart::{self, Event, Sample, StripChartView, strip_chart};
use drawing::svg::Picture;
use drawing::theme::Theme;
use drawing::world_map::{Line, Place, Weight, WorldMapView, world_map};
use earth::Date;
use earth::contours::lines;
use earth::grid::{FieldGrid, Mesh, Quantity, Survey};
use kurbo::Size;
use std::error::Error;
use std::path::{Path, PathBuf};
use std::time::Instant;

const DIP: f64 = 65.0;
const BANK: f64 = 15.0;

/// Ten samples a second of a flight whose commands are given from a second on.
fn fly(
    start: f64,
    seconds: u64,
    commands: &[(u64, Controls)],
) -> Result<Vec<Sample>, Box<dyn Error>> {
    let situation = Situation {
        field: MagneticField::from_dip(20e-6, DIP.to_radians())?,
        iron: AircraftIron::NONE,
        float: FloatSettings::default(),
        air: RoughAir::Still,
    };
    let mut controls = Controls::level(100.0 * KNOT);
    let aircraft = Aircraft::free(MagneticHeading::from_degrees(start), &controls);
    let mut flight = Simulation::new(situation, aircraft, controls)?;
    let mut samples = Vec::new();
    for step in 0..=seconds * STEPS_PER_SECOND {
        if step.is_multiple_of(STEPS_PER_SECOND / 10) {
            samples.push(Sample::from(&flight.moment()));
        }
        if step.is_multiple_of(STEPS_PER_SECOND) {
            let now = commands
                .iter()
                .find(|(at, _)| at * STEPS_PER_SECOND == step);
            controls = now.map_or(controls, |(_, controls)| *controls);
        }
        flight.step(&controls, StillAir.at(step));
    }
    Ok(samples)
}

fn main() -> Result<(), Box<dyn Error>> {
    let folder = PathBuf::from(
        std::env::args_os()
            .nth(1)
            .unwrap_or_else(|| "charts".into()),
    );
    std::fs::create_dir_all(&folder)?;
    strips(&folder)?;
    errors(&folder)?;
    maps(&folder)
}

fn save(folder: &Path, name: &str, size: Size, shapes: &[Shape]) -> std::io::Result<()> {
    for (suffix, theme) in [("", Theme::day()), ("-night", Theme::night())] {
        let name = format!("{name}{suffix}");
        let svg = Picture {
            size,
            shapes,
            theme: &theme,
            id: &name,
            title: &name,
            description: &name,
            ground: true,
        }
        .to_svg();
        std::fs::write(folder.join(format!("{name}.svg")), svg)?;
    }
    Ok(())
}

const STRIP_WORDS: strip_chart::Words = strip_chart::Words {
    heading: "heading",
    compass: "compass",
    error: "error",
    lags: "lags",
    leads: "leads",
    bank: "bank",
    right: "right",
    left: "left",
    airspeed: "kt",
    stretch: "loop",
    empty: "Fly, and the flight is drawn here",
};

fn strips(folder: &Path) -> Result<(), Box<dyn Error>> {
    let level = Controls::level(100.0 * KNOT);
    let right = level.with_bank(BANK.to_radians());
    let left = level.with_bank(-20_f64.to_radians());
    let north = fly(300.0, 40, &[(5, right), (25, level)])?;
    let north_events = [
        Event {
            time: 5.3,
            words: "right turn",
        },
        Event {
            time: 17.0,
            words: "greatest lag",
        },
        Event {
            time: 25.8,
            words: "rolled out",
        },
        Event {
            time: 34.0,
            words: "settled",
        },
    ];
    let fast = Controls::level(130.0 * KNOT);
    let south = fly(
        90.0,
        120,
        &[(5, right), (45, level), (60, left), (80, level), (90, fast)],
    )?;
    let south_events = [
        Event {
            time: 5.3,
            words: "right turn",
        },
        Event {
            time: 31.0,
            words: "greatest lead",
        },
        Event {
            time: 46.0,
            words: "rolled out",
        },
        Event {
            time: 57.0,
            words: "settled",
        },
        Event {
            time: 60.3,
            words: "left turn",
        },
        Event {
            time: 74.0,
            words: "greatest lead",
        },
        Event {
            time: 81.0,
            words: "rolled out",
        },
        Event {
            time: 90.0,
            words: "speeds up",
        },
    ];
    let around = fly(20.0, 600, &[(5, right)])?;
    let views = [
        (
            "north",
            StripChartView {
                samples: &north,
                window: [0.0, 40.0],
                playhead: Some(20.0),
                events: &north_events,
                words: STRIP_WORDS,
                ..StripChartView::default()
            },
        ),
        (
            "south",
            StripChartView {
                samples: &south,
                window: [0.0, 120.0],
                cursor: Some(36.0),
                stretch: Some([20.0, 46.0]),
                events: &south_events,
                words: STRIP_WORDS,
                ..StripChartView::default()
            },
        ),
        (
            "around",
            StripChartView {
                samples: &around,
                window: [0.0, 600.0],
                playhead: Some(599.0),
                words: STRIP_WORDS,
                ..StripChartView::default()
            },
        ),
        (
            "empty",
            StripChartView {
                words: STRIP_WORDS,
                ..StripChartView::default()
            },
        ),
    ];
    for (name, view) in views {
        for (width, height) in [(1180.0, 260.0), (800.0, 220.0), (370.0, 220.0)] {
            let size = Size::new(width, height);
            save(
                folder,
                &format!("strip-{name}-{width}"),
                size,
                &strip_chart(&view, size),
            )?;
        }
    }
    Ok(())
}

fn errors(folder: &Path) -> Result<(), Box<dyn Error>> {
    let latitude = 47.0_f64;
    let closed = sampled(|heading| {
        in_turn(heading, BANK.to_radians(), DIP.to_radians()).error_from(heading)
    });
    let rule = sampled(|heading| {
        let from_north = heading.right_of(MagneticHeading::from_degrees(0.0)).abs();
        -latitude.to_radians() * (1.0 - from_north.to_degrees() / 90.0)
    });
    let right = Controls::level(100.0 * KNOT).with_bank(BANK.to_radians());
    let points = |samples: &[Sample]| -> Vec<ErrorAt> {
        samples
            .iter()
            .map(|sample| ErrorAt {
                heading: sample.heading,
                error: sample.error(),
            })
            .collect()
    };
    let whole = points(&fly(20.0, 150, &[(5, right)])?);
    let part = points(&fly(
        300.0,
        40,
        &[(5, right), (25, Controls::level(100.0 * KNOT))],
    )?);
    let words = error_chart::Words {
        above: "leads",
        below: "lags",
        lag_above: false,
        cardinals: ["N", "E", "S", "W"],
        empty: "Turn, and the error is drawn here",
    };
    let view = |float| ErrorChartView {
        closed_form: error_chart::Line {
            points: &closed,
            words: "closed form",
        },
        rule: error_chart::Line {
            points: &rule,
            words: "rule of thumb",
        },
        float: error_chart::Line {
            points: float,
            words: "simulated float",
        },
        now: None,
        cursor: None,
        words,
    };
    let views = [
        (
            "whole",
            ErrorChartView {
                cursor: Some(MagneticHeading::from_degrees(135.0)),
                ..view(&whole)
            },
        ),
        (
            "part",
            ErrorChartView {
                now: part.get(200).copied(),
                ..view(&part)
            },
        ),
        (
            "empty",
            ErrorChartView {
                words,
                ..ErrorChartView::default()
            },
        ),
    ];
    for (name, view) in views {
        for (width, height) in [(1180.0, 260.0), (800.0, 320.0), (370.0, 220.0)] {
            let size = Size::new(width, height);
            save(
                folder,
                &format!("error-{name}-{width}"),
                size,
                &error_chart(&view, size),
            )?;
        }
    }
    Ok(())
}

fn maps(folder: &Path) -> Result<(), Box<dyn Error>> {
    let start = Instant::now();
    let survey = Survey::new(Mesh::every(2.0)?, Date::parse("2026-05-01")?, 0.0)?;
    let grid = FieldGrid::gather(survey)?;
    println!("survey every 2°: {:?}", start.elapsed());
    let start = Instant::now();
    let land: Vec<Vec<Place>> = earth::land::outlines().iter().map(|o| o.closed()).collect();
    println!("land: {:?}", start.elapsed());

    type Drawn = (Vec<Place>, String, Weight);
    let drawn = |quantity, levels: &[(f64, String)]| -> Vec<Drawn> {
        let grid = grid.of(quantity);
        let of_level = |(level, words): &(f64, String)| -> Vec<Drawn> {
            let weight = match *level {
                0.0 => Weight::Strong,
                below if below < 0.0 => Weight::Below,
                _ => Weight::Plain,
            };
            let found = lines(&grid, *level);
            found
                .iter()
                .map(|line| (line.points().to_vec(), words.clone(), weight))
                .collect()
        };
        levels.iter().flat_map(of_level).collect()
    };
    let degrees = |from: i32, to: i32, step: usize| -> Vec<(f64, String)> {
        (from..=to)
            .step_by(step)
            .map(|d| (f64::from(d).to_radians(), format!("{d}°").replace('-', "−")))
            .collect()
    };
    let start = Instant::now();
    let dip = drawn(Quantity::Dip, &degrees(-80, 80, 10));
    println!("17 levels of dip: {:?}", start.elapsed());
    let coarse = drawn(Quantity::Dip, &degrees(-80, 80, 20));
    let variation = drawn(Quantity::Variation, &degrees(-180, 170, 10));
    let intensity: Vec<(f64, String)> = (1..=8_u8)
        .map(|i| (f64::from(i) * 5e-6, format!("{} µT", 5 * i)))
        .collect();
    let intensity = drawn(Quantity::Horizontal, &intensity);

    let place = Some((51.5_f64.to_radians(), -0.5_f64.to_radians()));
    let sets = [
        ("dip", &dip, 1000.0),
        ("dip", &coarse, 360.0),
        ("dip", &dip, 600.0),
        ("variation", &variation, 1000.0),
        ("intensity", &intensity, 1000.0),
    ];
    for (name, drawn, width) in sets {
        let lines: Vec<Line> = drawn
            .iter()
            .map(|(points, words, weight)| Line {
                points,
                words,
                weight: *weight,
            })
            .collect();
        let view = WorldMapView {
            land: &land,
            lines: &lines,
            place,
            pointer: Some((-34.0_f64.to_radians(), 151_f64.to_radians())),
            ..WorldMapView::default()
        };
        let size = Size::new(width, width / 2.0);
        let start = Instant::now();
        let shapes = world_map(&view, size);
        println!("map {name} {width}: {:?}", start.elapsed());
        save(folder, &format!("map-{name}-{width}"), size, &shapes)?;
    }
    Ok(())
}
