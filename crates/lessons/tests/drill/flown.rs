//! Marks of good, bad, clumsy and idle flights.

use crate::pilot::{fly, marked, record};
use crate::{folded, tasks};
use compass::motion::coordinated_rate_of_turn;
use compass::simulation::Moment;
use lessons::drill::mark::{Mark, Outcome, mark};
use lessons::drill::record::{Help, Record};
use lessons::drill::{Aim, Kind, Task, TaskId, generate};

/// Turns with a bank from 5 s on until something is seen, then flies level.
fn turns_until(bank: f64, mut seen: impl FnMut(&Moment) -> bool) -> impl FnMut(&Moment) -> f64 {
    let mut over = false;
    move |moment| {
        over = over || (moment.time > 5.0 && seen(moment));
        if moment.time >= 5.0 && !over {
            bank
        } else {
            0.0
        }
    }
}

/// Sees the card come to a reading from the side from which the turn goes.
fn shows(reading: f64, bank: f64) -> impl FnMut(&Moment) -> bool {
    let mut before: Option<f64> = None;
    move |moment| {
        let past = bank.signum() * folded(moment.reading.compass.degrees() - reading);
        let was = before.replace(past);
        was.is_some_and(|was| was < 0.0) && (0.0..45.0).contains(&past)
    }
}

fn roll_out(task: &Task) -> (f64, f64, f64, f64) {
    match task.aim.as_ref().unwrap() {
        Aim::RollOut {
            target_deg,
            bank_deg,
            rule_deg,
            simulated_deg,
            ..
        } => (*target_deg, *bank_deg, *rule_deg, *simulated_deg),
        other => panic!("{other:?}"),
    }
}

fn most(task: &Task) -> f64 {
    task.flight.as_ref().unwrap().watch_to_s
}

fn error(mark: &Mark) -> f64 {
    mark.error_deg.unwrap_or_else(|| panic!("{mark:?}"))
}

#[test]
fn rolling_out_on_the_simulated_reading_comes_out_on_the_target() {
    for task in tasks(Kind::RollOut, 6) {
        let (_, bank, _, simulated) = roll_out(&task);
        let good = marked(&fly(
            &task,
            most(&task),
            turns_until(bank, shows(simulated, bank)),
        ));
        assert_eq!(good.outcome, Outcome::Passed, "{task:?}");
        // The pilot looks ten times a second: at 45° of bank and 80 kt a tenth is 1.4°. Where the
        // card goes faster than the aircraft it is more by as much.
        assert!(error(&good).abs() < 3.0, "{}: {task:?}", error(&good));
    }
}

#[test]
fn idle_bad_and_clumsy_roll_outs_are_told_apart() {
    // The first that is onto north: there a compass errs most.
    let task = (0..50).map(|number| TaskId {
        latitude_deg: Some(45.0),
        level: 1,
        number,
        ..TaskId::new(Kind::RollOut, 3)
    });
    let task = task
        .map(|id| generate(&id).unwrap())
        .find(|task| roll_out(task).0 == 0.0)
        .unwrap();
    let (target, bank, _, simulated) = roll_out(&task);
    let idle = marked(&fly(&task, most(&task), |_| 0.0));
    assert_eq!(idle.outcome, Outcome::Failed);
    assert!(
        (error(&idle).abs() - 90.0).abs() < 1e-6,
        "a quarter turn left undone"
    );
    assert!(
        idle.explanation
            .happened
            .starts_with("The aircraft never turned.")
    );

    // As if the compass did not err: off by as much as it lags or leads.
    let bare = target - bank / 2.0;
    let bad = marked(&fly(
        &task,
        most(&task),
        turns_until(bank, shows(bare, bank)),
    ));
    assert_eq!(bad.outcome, Outcome::Failed, "{bad:?}");

    // Comes out wrong, waits for the card to settle, and turns the rest: the first one counts.
    let mut second = turns_until(bank, shows(bare, bank));
    let off = folded(target - bare_heading(&bad, target));
    let clumsy = fly(&task, most(&task), |moment| {
        let begin = most(&task) - 40.0;
        if (begin..begin + off.abs() / 3.0).contains(&moment.time) {
            off.signum() * 15.0
        } else {
            second(moment)
        }
    });
    assert_eq!(error(&marked(&clumsy)), error(&bad));

    // Still in the turn as the flight ends.
    let begun = marked(&fly(&task, 20.0, |moment| {
        if moment.time > 5.0 { bank } else { 0.0 }
    }));
    assert_eq!(begun.outcome, Outcome::NotMarked);
    let reason = begun.reason.unwrap();
    assert_eq!(
        reason,
        "after the turn the aircraft was never level for 10 s"
    );

    // Bank in and out by fits and starts, but rolled out in time.
    let mut good = turns_until(bank, shows(simulated, bank));
    let jerky = marked(&fly(&task, most(&task), |moment| {
        let held = good(moment);
        if moment.time % 4.0 < 1.0 {
            0.7 * held
        } else {
            held
        }
    }));
    assert_eq!(jerky.outcome, Outcome::Passed, "{jerky:?}");
    let reading = jerky
        .figures
        .iter()
        .find(|it| it.name.contains("reading"))
        .unwrap();
    assert!(folded(reading.value - simulated).abs() < 6.0);
}

fn bare_heading(mark: &Mark, target: f64) -> f64 {
    target + error(mark)
}

#[test]
fn a_turn_of_the_right_time_comes_out_and_one_of_half_the_time_does_not() {
    for task in tasks(Kind::TimedTurn, 4) {
        let Some(Aim::TimedTurn {
            bank_deg,
            rule_s,
            simulated_s,
            ..
        }) = task.aim
        else {
            panic!("{task:?}");
        };
        assert!(
            (rule_s - simulated_s).abs() < 1.0,
            "the rule is good at standard rate"
        );
        let flown = |seconds: f64| {
            let pilot = turns_until(bank_deg, move |it| it.time > 5.0 + seconds - 1e-6);
            marked(&fly(&task, most(&task), pilot))
        };
        let good = flown((10.0 * simulated_s).round() / 10.0);
        // To the nearest tenth of a second: 0.15°.
        assert!(error(&good).abs() < 0.3, "{}: {task:?}", error(&good));
        let half = flown(simulated_s / 2.0);
        assert_eq!(half.outcome, Outcome::Failed);
        let timed = half.figures.iter().find(|it| it.unit == "s").unwrap();
        assert!(
            (timed.value - simulated_s / 2.0).abs() < 0.11,
            "{}",
            timed.value
        );
    }
}

#[test]
fn a_heading_is_held_by_averaging_and_not_by_doing_nothing() {
    for task in tasks(Kind::HoldHeading, 3) {
        let Some(Aim::HoldHeading { target_deg, .. }) = task.aim else {
            panic!("{task:?}");
        };
        let seconds = most(&task);
        let idle = marked(&fly(&task, seconds, |_| 0.0));
        assert_eq!(idle.outcome, Outcome::Failed, "{task:?}");

        // Turns at once, then every 12 s looks at the mean of the last 8 and turns gently.
        let mut seen: Vec<f64> = Vec::new();
        let (mut bank, mut until) = (0.0, 0.0);
        let averaging = fly(&task, seconds, |moment| {
            seen.push(folded(moment.reading.compass.degrees() - target_deg));
            let correct = |off: f64, steep: f64| {
                let rate = coordinated_rate_of_turn(steep.to_radians(), moment.motion.airspeed);
                (-off.signum() * steep, off.abs().to_radians() / rate)
            };
            let tenth = seen.len();
            if tenth == 1 {
                let (steep, lasts) = correct(seen[0], 12.0);
                (bank, until) = (steep, lasts);
            } else if moment.time > 20.0 && tenth.is_multiple_of(120) {
                let last = &seen[tenth - 80..];
                let (steep, lasts) = correct(last.iter().sum::<f64>() / 80.0, 4.0);
                (bank, until) = (steep, moment.time + lasts.min(4.0));
            }
            if moment.time < until { bank } else { 0.0 }
        });
        let good = marked(&averaging);
        assert_eq!(good.outcome, Outcome::Passed, "{good:?}");

        let short = marked(&fly(&task, 60.0, |_| 0.0));
        assert_eq!(short.outcome, Outcome::NotMarked);
        assert!(
            short
                .reason
                .unwrap()
                .starts_with("the flight ended at 60 s, before")
        );
    }
}

#[test]
fn a_gyro_set_at_good_moments_is_carried_well_and_otherwise_it_is_not() {
    for task in tasks(Kind::SetGyro, 2) {
        let Some(Aim::SetGyro {
            good_s, ideal_deg, ..
        }) = &task.aim
        else {
            panic!("{task:?}");
        };
        let flight = || task.flight.as_ref().unwrap().scenario.clone();
        let middles: Vec<f64> = good_s.iter().map(|[from, to]| 0.5 * (from + to)).collect();
        let good = marked(&record(&task, flight(), middles));
        assert_eq!(good.outcome, Outcome::Passed, "{task:?}");
        assert!((error(&good) - ideal_deg).abs() < 1e-6);
        let idle = marked(&record(&task, flight(), Vec::new()));
        assert_eq!(idle.outcome, Outcome::Failed, "{task:?}");

        // Every second of the flight: whatever the compass shows is carried on.
        let end = most(&task);
        let always: Vec<f64> = (0..end as u32).map(f64::from).collect();
        let always = marked(&record(&task, flight(), always));
        assert!(error(&always) > 2.0 * ideal_deg, "{task:?}");

        let early = vec![end + 5.0];
        let refused = mark(&record(&task, flight(), early))
            .unwrap_err()
            .to_string();
        assert!(refused.starts_with("gyro_set_s[0]: time of a setting must be from 0 s to"));
    }
}

#[test]
fn set_in_the_middle_of_a_turn_the_gyro_takes_the_lag_over() {
    let id = TaskId {
        latitude_deg: Some(50.0),
        tolerance_deg: 5.0,
        ..TaskId::new(Kind::SetGyro, 1)
    };
    let task = generate(&id).unwrap();
    let rows = crate::rows(crate::flight(&task));
    let worst = rows
        .iter()
        .max_by(|a, b| a.error_deg.abs().total_cmp(&b.error_deg.abs()));
    let worst = worst.unwrap();
    let bad = marked(&record(
        &task,
        crate::flight(&task).clone(),
        vec![worst.time_s],
    ));
    assert_eq!(bad.outcome, Outcome::Failed);
    let badly = bad
        .figures
        .iter()
        .find(|it| it.name.starts_with("settings by"))
        .unwrap();
    assert_eq!(badly.value, 1.0);
}

#[test]
fn a_record_of_another_flight_is_refused_in_a_sentence() {
    let task = generate(&TaskId::new(Kind::RollOut, 1)).unwrap();
    let flown = fly(&task, 30.0, |_| 0.0);
    let refused = |change: &dyn Fn(&mut Record)| {
        let mut record = flown.clone();
        change(&mut record);
        mark(&record).unwrap_err().to_string()
    };
    let with = |path: [&'static str; 2], value: f64| {
        refused(&move |it| it.flight.as_mut().unwrap()[path[0]][path[1]] = value.into())
    };
    assert!(with(["start", "heading_deg"], 1.25).starts_with("flight.start.heading_deg: the task"));
    assert!(with(["start", "speed_kt"], 61.0).starts_with("flight.start.speed_kt: the task"));
    assert!(with(["field", "latitude_deg"], 1.0).starts_with("flight.field: it is not the task's"));
    assert!(with(["float", "yaw_period_s"], 9.0).starts_with("flight.float: it is not the task's"));
    assert!(with(["start", "speed_kt"], 1.0).starts_with("flight.start.speed_kt: airspeed must"));
    assert!(refused(&|it| it.flight = None).starts_with("flight: this task needs a flight"));
    let long = refused(&|it| it.flight.as_mut().unwrap()["duration_s"] = 80_000.into());
    assert!(
        long.starts_with("flight.duration_s: a flight for this task lasts at most"),
        "{long}"
    );
    assert_eq!(
        refused(&|it| it.task.level = 0),
        "task.level: level must be from 1 to 3, not 0"
    );
}

#[test]
fn help_that_a_task_does_not_allow_is_no_mark() {
    let task = generate(&TaskId::new(Kind::TimedTurn, 1)).unwrap();
    let mut flown = fly(&task, 60.0, |_| 0.0);
    flown.used = vec![Help::SlowMotion];
    let refused = marked(&flown);
    assert_eq!(refused.outcome, Outcome::NotMarked);
    assert_eq!(
        refused.reason.unwrap(),
        "the flight was slowed down, which this task does not allow"
    );
    flown.allowed = vec![Help::SlowMotion, Help::Pause];
    assert_eq!(marked(&flown).outcome, Outcome::Failed);
}

#[test]
fn a_choice_is_right_or_wrong_and_one_that_is_not_there_is_refused() {
    for kind in [
        Kind::Predict,
        Kind::Read,
        Kind::NameTheCause,
        Kind::Corrections,
    ] {
        let task = generate(&TaskId::new(kind, 4)).unwrap();
        let mut answer = record(&task, serde_json::Value::Null, Vec::new());
        answer.flight = None;
        for (index, choice) in task.choices.iter().enumerate() {
            answer.chosen = Some(index);
            let passed = marked(&answer).outcome == Outcome::Passed;
            assert_eq!(passed, choice.right);
        }
        answer.chosen = Some(99);
        let refused = mark(&answer).unwrap_err().to_string();
        assert!(
            refused.starts_with("chosen: choice must be from 0 to"),
            "{refused}"
        );
        answer.chosen = None;
        let refused = mark(&answer).unwrap_err().to_string();
        assert_eq!(
            refused,
            "chosen: this task needs a choice, and there is none"
        );
    }
}

#[test]
fn a_record_that_is_not_one_is_refused_in_a_sentence() {
    let said = |json: &str| Record::from_json(json).unwrap_err().to_string();
    let task = r#""task": {"kind": "predict", "seed": 1}"#;
    assert_eq!(
        said(&format!(r#"{{"version": 7, {task}}}"#)),
        "version: records of version 1 can be read, not 7"
    );
    assert!(
        said(&format!(r#"{{"version": 1, {task}, "choosen": 1}}"#))
            .contains("unknown field `choosen`")
    );
    assert!(
        said(r#"{"version": 1, "task": {"kind": "fly", "seed": 1}}"#)
            .starts_with("task.kind: unknown variant `fly`")
    );
    assert!(said(r#"{"version": 1}"#).contains("missing field `task`"));
    assert!(
        said(&format!(r#"{{"version": 1, {task}, "chosen": -1}}"#))
            .starts_with("chosen: invalid value")
    );
    assert!(said("").starts_with("it was cut short: it ends in line 1"));
    assert!(said(&format!(r#"{{"version": 1, {task}}} x"#)).contains("trailing characters"));
}
