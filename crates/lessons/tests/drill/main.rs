//! Drills: every generator over many seeds, recomputed by independent routes; marks of good, bad,
//! clumsy and idle flights; files there and back.
//!
//! `DRILL_SEEDS=1000 cargo test --release -p lessons --test drill` looks at that many seeds of each
//! kind and level in place of the few that fit into everyday checking.

mod aims;
mod causes;
mod chosen;
mod flown;
mod kept;
mod paper;
mod pilot;
mod practices;
mod progress;
mod qti;
mod qti_schema;
mod queue;
mod sets;
mod xapi;

use flights::{Row, Scenario};
use lessons::drill::{Kind, Task, TaskId, generate};
use serde_json::Value;
use std::num::NonZero;
use std::sync::atomic::{AtomicU64, Ordering};

/// How many seeds of each kind and level are looked at.
fn seeds(usual: u64) -> u64 {
    std::env::var("DRILL_SEEDS").map_or(usual, |text| text.parse().unwrap())
}

/// Tasks of a kind at all levels, over so many seeds each, half of them by number.
fn tasks(kind: Kind, count: u64) -> impl Iterator<Item = Task> {
    (0..3 * seeds(count)).map(move |index| task(kind, index))
}

/// One of them.
fn task(kind: Kind, index: u64) -> Task {
    let id = TaskId {
        level: 1 + (index % 3) as u8,
        number: (index / 3 % 2) as u32,
        ..TaskId::new(kind, index / 6)
    };
    generate(&id).unwrap_or_else(|error| panic!("{id:?}: {error}"))
}

/// Looks at tasks of a kind at all levels, over so many seeds each, on all cores.
fn each(kind: Kind, count: u64, check: impl Fn(&Task) + Sync) {
    let count = 3 * seeds(count);
    let next = AtomicU64::new(0);
    let cores = std::thread::available_parallelism().map_or(1, NonZero::get);
    std::thread::scope(|scope| {
        for _ in 0..cores {
            scope.spawn(|| {
                loop {
                    let index = next.fetch_add(1, Ordering::Relaxed);
                    if index >= count {
                        return;
                    }
                    check(&task(kind, index));
                }
            });
        }
    });
}

/// The text of the right choice, after checking that there is one, and that all differ.
fn right(task: &Task) -> &str {
    let right: Vec<&str> = task
        .choices
        .iter()
        .filter(|it| it.right)
        .map(|it| it.text.as_str())
        .collect();
    assert_eq!(right.len(), 1, "{task:?}");
    assert!(task.choices.len() >= 3);
    for (index, choice) in task.choices.iter().enumerate() {
        assert!(
            task.choices[..index]
                .iter()
                .all(|it| it.text != choice.text)
        );
    }
    right[0]
}

/// A flight as the table has it, ten rows a second: the route that `dipwise fly` goes.
fn rows(scenario: &Value) -> Vec<Row> {
    let scenario = Scenario::from_json(&scenario.to_string()).unwrap();
    scenario.rows(0.1).unwrap().collect()
}

/// A task's flight.
fn flight(task: &Task) -> &Value {
    &task.flight.as_ref().unwrap().scenario
}

/// The same flight in the other hemisphere, half a turn round: its lags stay lags, and the card
/// shows the same half a turn round.
fn mirrored(scenario: &Value) -> Value {
    let mut other = scenario.clone();
    let latitude = other["field"]["latitude_deg"].as_f64().unwrap();
    other["field"]["latitude_deg"] = (-latitude).into();
    let heading = other["start"]["heading_deg"].as_f64().unwrap();
    other["start"]["heading_deg"] = ((heading + 180.0) % 360.0).into();
    other
}

/// An angle in degrees folded to within half a turn.
fn folded(degrees: f64) -> f64 {
    let folded = degrees.rem_euclid(360.0);
    if folded > 180.0 {
        folded - 360.0
    } else {
        folded
    }
}

/// The number that follows a word in a text.
fn number_after(text: &str, word: &str) -> f64 {
    let (_, rest) = text
        .split_once(word)
        .unwrap_or_else(|| panic!("{word:?} in {text:?}"));
    let digits = rest
        .trim_start()
        .find(|it: char| !it.is_ascii_digit() && it != '.');
    let rest = rest.trim_start();
    rest[..digits.unwrap_or(rest.len())]
        .trim_end_matches('.')
        .parse()
        .unwrap()
}

#[test]
fn the_same_identity_gives_the_same_task_and_numbers_differ() {
    use lessons::drill::generate_some;
    for kind in Kind::ALL {
        let first = TaskId::new(kind, 11);
        let some = generate_some(&first, 6).unwrap();
        for (index, task) in some.iter().enumerate() {
            assert_eq!(&generate(&task.id).unwrap(), task, "again");
            assert_eq!(task.id.kind, kind);
            assert_eq!(task.aim.is_some(), kind.is_flown());
            assert_eq!(task.choices.is_empty(), kind.is_flown());
            assert!(some[..index].iter().all(|it| it.differs_from(task)));
            for said in [
                &task.question,
                &task.explanation.happened,
                &task.explanation.why,
                &task.explanation.rule,
            ] {
                assert!(said.len() > 20, "{said}");
                assert!(!said.contains("NaN") && !said.contains("-0°"), "{said}");
            }
        }
    }
}

#[test]
fn a_chosen_latitude_is_kept_and_one_beyond_reach_is_refused_in_a_sentence() {
    for kind in Kind::ALL {
        for latitude in [-70.0, -45.5, 20.0, 70.0] {
            let id = TaskId {
                latitude_deg: Some(latitude),
                ..TaskId::new(kind, 5)
            };
            let task = generate(&id).unwrap();
            assert_eq!(task.at_latitude_deg, latitude);
        }
    }
    let refused = |id: TaskId| generate(&id).unwrap_err().to_string();
    let read = TaskId::new(Kind::Read, 5);
    let at = |latitude| TaskId {
        latitude_deg: Some(latitude),
        ..read
    };
    assert_eq!(
        refused(at(3.0)),
        "latitude_deg: read tasks need a latitude at least 20° from the equator, not 3°"
    );
    assert_eq!(
        refused(at(f64::NAN)),
        "latitude_deg: latitude of a task must be from -70° to 70°, not NaN°"
    );
    assert_eq!(
        refused(TaskId { level: 9, ..read }),
        "level: level must be from 1 to 3, not 9"
    );
    let lax = TaskId {
        tolerance_deg: 90.0,
        ..read
    };
    assert_eq!(
        refused(lax),
        "tolerance_deg: tolerance must be from 1° to 30°, not 90°"
    );
}

#[test]
fn on_the_magnetic_equator_every_kind_that_is_asked_there_has_its_tasks() {
    for kind in Kind::ALL
        .into_iter()
        .filter(|it| it.least_latitude_deg() == 0.0)
    {
        for level in 1..=3 {
            let id = TaskId {
                latitude_deg: Some(0.0),
                level,
                ..TaskId::new(kind, 2)
            };
            generate(&id).unwrap_or_else(|error| panic!("{id:?}: {error}"));
        }
    }
}

#[test]
fn both_hemispheres_both_sides_and_all_headings_come_up() {
    use lessons::drill::{Hemisphere, Manoeuvre, Octant};
    // By number of one seed, as a set has them.
    let tasks = (0..120).map(|number| TaskId {
        number,
        level: 2 + (number % 2) as u8,
        ..TaskId::new(Kind::Predict, 3)
    });
    let tasks: Vec<Task> = tasks.map(|id| generate(&id).unwrap()).collect();
    let asked = |test: &dyn Fn(&Task) -> bool| tasks.iter().filter(|it| test(it)).count();
    for hemisphere in [Hemisphere::Northern, Hemisphere::Southern] {
        assert!(asked(&|it| it.class.hemisphere == hemisphere) > tasks.len() / 4);
    }
    for manoeuvre in [
        Manoeuvre::LeftTurn,
        Manoeuvre::RightTurn,
        Manoeuvre::SpeedingUp,
        Manoeuvre::SlowingDown,
    ] {
        assert!(asked(&|it| it.class.manoeuvre == manoeuvre) > tasks.len() / 20);
    }
    for heading in (0..360).step_by(45) {
        let octant = Octant::of(f64::from(heading));
        assert!(asked(&|it| it.class.octant == octant) > 0, "{octant:?}");
    }
}
