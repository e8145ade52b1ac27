//! Name the cause: taken out of the scenario file, it takes the error with it; nothing else does.

use crate::{flight, right, rows, tasks};
use lessons::drill::{Kind, Task};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// Root mean square of the error over the stretch that is watched, degrees; `variation` is what
/// the reference lies off magnetic north.
fn error(task: &Task, scenario: &Value, variation: f64) -> f64 {
    let watch = task.flight.as_ref().unwrap();
    let within = watch.watch_from_s - 1e-6..=watch.watch_to_s + 1e-6;
    let watched: Vec<f64> = rows(scenario)
        .iter()
        .filter(|row| within.contains(&row.time_s))
        .map(|row| row.error_deg - variation)
        .collect();
    (watched.iter().map(|it| it * it).sum::<f64>() / watched.len() as f64).sqrt()
}

/// The scenario file without a cause, by its answer's first word.
fn without(scenario: &Value, cause: &str) -> Value {
    let mut left = scenario.clone();
    let controls = |left: &mut Value, name: &str, value: Value| {
        for control in left["controls"].as_array_mut().unwrap() {
            control[name] = value.clone();
        }
    };
    match cause {
        "The turn" => controls(&mut left, "bank_deg", json!(0)),
        "The change of speed" => {
            let speed = left["start"]["speed_kt"].clone();
            controls(&mut left, "airspeed_kt", speed);
        }
        "Swirl" => left["float"]["liquid_spin_up_s"] = json!(0),
        "Rough air" => {
            left.as_object_mut().unwrap().remove("rough_air");
        }
        "The aircraft's iron" => {
            left.as_object_mut().unwrap().remove("iron");
        }
        _ => panic!("{cause}"),
    }
    left
}

/// Variation at the scenario's place by the model, degrees.
fn variation(scenario: &Value) -> f64 {
    let file = scenario.to_string();
    let field = flights::Scenario::from_json(&file)
        .unwrap()
        .situation()
        .field;
    field.variation().to_degrees()
}

#[test]
fn the_named_cause_takes_the_error_with_it_and_no_other_does() {
    let mut asked: BTreeMap<String, u32> = BTreeMap::new();
    for task in tasks(Kind::NameTheCause, 25) {
        let named = right(&task).split(':').next().unwrap();
        let scenario = flight(&task);
        *asked.entry(named.to_owned()).or_default() += 1;
        let refers_to_true = task.question.contains("true heading");
        let off = if refers_to_true {
            variation(scenario)
        } else {
            0.0
        };
        let whole = error(&task, scenario, off);
        match named {
            "Nothing" => {
                assert!(whole <= 1.01, "{task:?}");
                continue;
            }
            "Variation" => {
                assert!(refers_to_true && whole >= 3.99, "{task:?}");
                assert!(error(&task, scenario, 0.0) < whole / 2.0);
            }
            cause => {
                assert!(!refers_to_true && whole >= 3.99, "{task:?}");
                let left = error(&task, &without(scenario, cause), 0.0);
                assert!(left < whole / 2.0, "{left} of {whole}: {task:?}");
            }
        }
        // What else goes on takes less than half of it away.
        for cause in ["The change of speed", "Rough air", "The aircraft's iron"] {
            if cause != named {
                let left = error(&task, &without(scenario, cause), off);
                assert!(left > whole / 2.0, "{cause} {left} of {whole}: {task:?}");
            }
        }
        let in_turn =
            task.question.contains("in a turn to the") && !task.question.contains("straight again");
        if named != "The turn" && in_turn {
            panic!("a stretch in a turn is asked for the turn: {task:?}");
        }
    }
    assert_eq!(asked.len(), 7, "every cause comes up: {asked:?}");
}
