//! A timed turn and the same turn by the compass: the same task but for what it is flown by, and
//! where each way comes out, by other routes.

use crate::pilot::{fly, marked, record};
use crate::{flight, folded, rows, tasks};
use compass::heading::MagneticHeading;
use compass::motion::coordinated_rate_of_turn;
use compass::rule_of_thumb::{self, Turn};
use compass::unit::KNOT;
use lessons::drill::kept::{Kept, Logged};
use lessons::drill::mark::Outcome;
use lessons::drill::record::Record;
use lessons::drill::results::{Answer, Results};
use lessons::drill::set::PracticeSet;
use lessons::drill::ways::{FlownTurn, Ways, flown, ways};
use lessons::drill::{Aim, Kind, Task, TaskId, generate};
use serde_json::{Value, json};

/// When a turn without a mistake is rolled into, seconds.
const ROLL_IN_S: f64 = 5.0;

fn both(task: &Task) -> [Task; 2] {
    let id = task.id.by_the_compass().unwrap();
    [task.clone(), generate(&id).unwrap()]
}

/// Target and bank.
fn turn(task: &Task) -> (f64, f64) {
    match task.aim.as_ref().unwrap() {
        Aim::RollOut {
            target_deg,
            bank_deg,
            ..
        }
        | Aim::TimedTurn {
            target_deg,
            bank_deg,
            ..
        } => (*target_deg, *bank_deg),
        other => panic!("{other:?}"),
    }
}

fn ways_of(task: &Task) -> Ways {
    ways(task).unwrap().unwrap()
}

fn all(ways: &Ways) -> [&FlownTurn; 3] {
    [&ways.by_clock, &ways.by_rule, &ways.bare]
}

/// The turn as a scenario: banked from the roll-in on for so many seconds.
fn laid_out(task: &Task, banked_s: f64, lasts_s: f64) -> Value {
    let (_, bank) = turn(task);
    let mut scenario = flight(task).clone();
    scenario["controls"] = json!([
        {"time_s": ROLL_IN_S, "bank_deg": bank},
        {"time_s": ROLL_IN_S + banked_s, "bank_deg": 0.0},
    ]);
    scenario["duration_s"] = lasts_s.into();
    scenario
}

#[test]
fn the_same_turn_is_asked_for_by_the_compass_and_is_no_other_timed_turn() {
    for task in tasks(Kind::TimedTurn, 8) {
        let [clock, compass] = both(&task);
        assert_eq!(clock.flight, compass.flight, "start, speed, place and time");
        assert_eq!(turn(&clock), turn(&compass));
        assert_eq!(clock.at_latitude_deg, compass.at_latitude_deg);
        assert!(matches!(compass.aim, Some(Aim::RollOut { .. })));
        assert!(compass.question.contains("By the compass alone"));
        assert_ne!(clock.id, compass.id);
        assert_eq!(compass.class.kind, Kind::RollOut);
        assert_eq!(compass.class.octant, clock.class.octant);
        assert_eq!(compass.class.manoeuvre, clock.class.manoeuvre);
        // Not the roll-out of that seed, either.
        let own = TaskId {
            of_timed_turn: false,
            ..compass.id
        };
        assert_ne!(generate(&own).unwrap().question, compass.question);
        assert_eq!(compass.id.by_the_compass(), None);
        assert_eq!(ways_of(&clock), ways_of(&compass));
        assert_eq!(ways(&generate(&own).unwrap()), Ok(None));
    }
}

#[test]
fn each_way_comes_out_where_its_mark_says_and_began_when_the_table_says() {
    let (mut by_compass, mut never) = (0, 0);
    // Near the pole a card does not come round in a turn as steep as that.
    let near_the_pole = (0..4).map(|seed| TaskId {
        latitude_deg: Some(if seed % 2 == 0 { 70.0 } else { -70.0 }),
        ..TaskId::new(Kind::TimedTurn, seed)
    });
    let near_the_pole = near_the_pole.map(|id| generate(&id).unwrap());
    for task in tasks(Kind::TimedTurn, 3).chain(near_the_pole) {
        let [clock, compass] = both(&task);
        let (target, bank) = turn(&task);
        let found = ways_of(&task);
        let from = flight(&task)["start"]["heading_deg"].as_f64().unwrap();
        let speed = flight(&task)["start"]["speed_kt"].as_f64().unwrap();
        for (turn, reading) in
            all(&found)
                .into_iter()
                .zip([None, Some(found.rule_deg), Some(found.bare_deg)])
        {
            let most = clock.flight.as_ref().unwrap().watch_to_s;
            let shown_at = |lasts: f64| {
                // The table of `dipwise fly`, a tenth of a second apart.
                let seconds = lasts.min(most - ROLL_IN_S);
                let rows = rows(&laid_out(&task, seconds, ROLL_IN_S + seconds));
                let past: Vec<(f64, f64)> = rows
                    .iter()
                    .filter(|row| row.time_s >= ROLL_IN_S)
                    .map(|row| {
                        let off = folded(row.reading_deg - reading.unwrap_or_default());
                        (row.time_s, bank.signum() * off)
                    })
                    .collect();
                past.windows(2)
                    .find(|two| two[0].1 < 0.0 && (0.0..45.0).contains(&two[1].1))
                    .map(|two| two[1].0 - ROLL_IN_S)
            };
            let Some(end) = turn.end else {
                assert_eq!(shown_at(most), None, "never shown: {:?}", task.id);
                never += 1;
                continue;
            };
            if reading.is_some() {
                let shown = shown_at(end.roll_out_s + 1.0).unwrap();
                assert!(
                    (-1e-6..=0.1 + 1e-6).contains(&(shown - end.roll_out_s)),
                    "{shown} {end:?}"
                );
                by_compass += 1;
            }
            // A heading that is gained evenly but for roll-in and roll-out, which sum to one:
            // what they differ by is under half a degree.
            let rate = coordinated_rate_of_turn(bank.to_radians(), speed * KNOT);
            let by_hand = from + (rate * end.roll_out_s).to_degrees();
            assert!(
                folded(end.came_out_deg - by_hand).abs() < 0.5,
                "{end:?}: {by_hand}"
            );
            assert!((folded(end.came_out_deg - target) - end.off_deg).abs() < 1e-9);

            // The mark of the same flight, by the clock's task and by the compass's.
            let lasts = ROLL_IN_S + end.roll_out_s + 30.0;
            let scenario = laid_out(&task, end.roll_out_s, lasts.min(most));
            for task in [&clock, &compass] {
                let answer = record(task, scenario.clone(), Vec::new());
                let mark = marked(&answer);
                // Times are written to a step: two hundredths of a degree.
                let off = mark.error_deg.unwrap();
                assert!((off - end.off_deg).abs() < 0.03, "{off}: {end:?}");
                let passed = mark.outcome == Outcome::Passed;
                assert_eq!(passed, off.abs() <= task.id.tolerance_deg);
                let followed = flown(&answer).unwrap();
                let own = followed.end.unwrap();
                assert!((own.off_deg - off).abs() < 1e-9);
                assert!((own.roll_out_s - end.roll_out_s).abs() < 0.01);
                assert_eq!(followed.track.len(), turn.track.len());
            }
        }
        let Some(Aim::TimedTurn {
            rule_s,
            rule_compass_overshoot_deg,
            bare_compass_overshoot_deg,
            ..
        }) = task.aim
        else {
            panic!("{task:?}");
        };
        // The one from the angle drawn, the other from two headings in radians.
        assert!((rule_s - found.clock_s).abs() < 1e-9);
        for (past, way) in [
            (rule_compass_overshoot_deg, &found.by_rule),
            (bare_compass_overshoot_deg, &found.bare),
        ] {
            assert_eq!(past, way.end.map(|it| bank.signum() * it.off_deg));
        }
        assert!(
            found.by_clock.end.unwrap().off_deg.abs() < 1.0,
            "the clock is good"
        );
    }
    assert!(by_compass >= 12 && never > 0, "{by_compass} {never}");
}

#[test]
fn the_rule_s_reading_is_the_latitude_in_proportion_and_half_the_bank() {
    for task in tasks(Kind::TimedTurn, 6) {
        let (target, bank) = turn(&task);
        let found = ways_of(&task);
        let heading = MagneticHeading::from_degrees(target);
        let latitude = task.at_latitude_deg.to_radians();
        let error = rule_of_thumb::in_turn(heading, Turn::of(bank), latitude).to_degrees();
        assert!(folded(found.bare_deg - (target - bank / 2.0)).abs() < 1e-9);
        assert!(folded(found.rule_deg - found.bare_deg - error).abs() < 1e-9);
        let angle =
            bank.signum() * (target - flight(&task)["start"]["heading_deg"].as_f64().unwrap());
        assert!((found.clock_s - angle.rem_euclid(360.0) / 3.0).abs() < 1e-9);
    }
}

/// The same turn with another latitude, its headings changed by a rule, and its bank by a sign.
fn otherwise(task: &Task, latitude: f64, heading: impl Fn(f64) -> f64, side: f64) -> Task {
    let mut other = task.clone();
    let (target, bank) = turn(task);
    other.at_latitude_deg = latitude * task.at_latitude_deg;
    if let Some(Aim::TimedTurn {
        target_deg,
        bank_deg,
        ..
    }) = &mut other.aim
    {
        (*target_deg, *bank_deg) = (heading(target).rem_euclid(360.0), side * bank);
    }
    let scenario = &mut other.flight.as_mut().unwrap().scenario;
    scenario["field"]["latitude_deg"] = other.at_latitude_deg.into();
    let from = scenario["start"]["heading_deg"].as_f64().unwrap();
    scenario["start"]["heading_deg"] = heading(from).rem_euclid(360.0).into();
    other
}

#[test]
fn left_and_right_are_mirrors_and_the_other_hemisphere_swaps_lag_and_lead() {
    let (mut swapped, mut clear) = (0, 0);
    for task in tasks(Kind::TimedTurn, 8) {
        let found = ways_of(&task);
        let left_for_right = ways_of(&otherwise(&task, 1.0, |it| -it, -1.0));
        let half_a_turn_round = ways_of(&otherwise(&task, -1.0, |it| it + 180.0, 1.0));
        for (other, sign) in [(&left_for_right, -1.0), (&half_a_turn_round, 1.0)] {
            for (one, two) in all(&found).into_iter().zip(all(other)) {
                assert_eq!(one.end.is_some(), two.end.is_some());
                let Some((one, two)) = one.end.zip(two.end) else {
                    continue;
                };
                // A reading is come to within one step, and a mirror may be a step later.
                assert!(
                    (one.off_deg - sign * two.off_deg).abs() < 0.05,
                    "{one:?} {two:?}"
                );
                assert!((one.roll_out_s - two.roll_out_s).abs() < 0.011);
            }
        }
        // The same headings in the other hemisphere: what came out past now comes out short.
        let (target, _) = turn(&task);
        let about_north_or_south = (90.0 - folded(target).abs()).abs() > 55.0;
        let other = ways_of(&otherwise(&task, -1.0, |it| it, 1.0));
        if let Some((one, two)) = found.bare.end.zip(other.bare.end)
            && about_north_or_south
            && one.off_deg.abs().min(two.off_deg.abs()) > 4.0
            && one.off_deg.abs().max(two.off_deg.abs()) < 90.0
        {
            clear += 1;
            swapped += u32::from(one.off_deg * two.off_deg < 0.0);
        }
    }
    assert!(clear >= 3, "{clear}");
    assert_eq!(swapped, clear);
}

#[test]
fn a_turn_by_the_compass_is_marked_by_its_record_alone() {
    let clock = generate(&TaskId::new(Kind::TimedTurn, 9)).unwrap();
    let [_, compass] = both(&clock);
    let Some(Aim::RollOut {
        bank_deg,
        simulated_deg,
        ..
    }) = compass.aim
    else {
        panic!("{compass:?}");
    };
    let (mut over, mut before) = (false, 0.0);
    let most = compass.flight.as_ref().unwrap().watch_to_s;
    let good = fly(&compass, most, |moment| {
        let past = bank_deg.signum() * folded(moment.reading.compass.degrees() - simulated_deg);
        over |= moment.time > ROLL_IN_S && before < 0.0 && (0.0..45.0).contains(&past);
        before = past;
        if moment.time >= ROLL_IN_S && !over {
            bank_deg
        } else {
            0.0
        }
    });
    let json = good.to_json();
    assert!(json.contains(r#""of_timed_turn": true"#));
    assert_eq!(Record::from_json(&json).unwrap(), good);
    let mark = marked(&good);
    assert_eq!(mark.outcome, Outcome::Passed, "{mark:?}");
    assert_eq!(mark.task, compass.id);

    // What is not flown to its end has a track and no end.
    let begun = fly(
        &compass,
        12.0,
        |it| if it.time > 5.0 { bank_deg } else { 0.0 },
    );
    assert_eq!(marked(&begun).outcome, Outcome::NotMarked);
    let begun = flown(&begun).unwrap();
    assert_eq!((begun.end, begun.track.len()), (None, 121));
    let other = generate(&TaskId::new(Kind::Predict, 1)).unwrap();
    let no_turn = flown(&Record::of_choice(other.id, 0)).unwrap_err();
    assert_eq!(no_turn.to_string(), "task: it is no turn that is flown");
}

#[test]
fn what_was_kept_before_is_read_and_the_compass_s_turn_is_no_timed_turn() {
    // As the first version wrote them.
    let old = r#"{"kind":"timed-turn","seed":9,"number":0,"level":2,"tolerance_deg":10.0}"#;
    let id: TaskId = serde_json::from_str(old).unwrap();
    assert_eq!(id, TaskId::new(Kind::TimedTurn, 9));
    assert_eq!(id.to_json(), old, "and it is stored under the same name");
    let logged = format!(
        r#"{{"task":{old},"class":{{"kind":"timed-turn","octant":"N","manoeuvre":"left-turn",
            "hemisphere":"northern"}},"outcome":"passed","seconds":60.0,"day":20000,"at_ms":1}}"#
    );
    assert_eq!(Logged::from_json(&logged).unwrap().task, id);
    let kept = format!(r#"{{"version":1,"answers":[{logged}],"begun":[{old}]}}"#);
    assert_eq!(Kept::from_json(&kept).unwrap().begun, [id]);

    let other = id.by_the_compass().unwrap();
    let set = r#"{"version": 1, "title": "One", "seed": 9,
        "parts": [{"kind": "timed-turn", "count": 1}]}"#;
    let answer = Answer {
        record: Record::of_choice(other, 0),
        seconds: 60.0,
        outcome: Outcome::Passed,
        error_deg: None,
        mistake: None,
    };
    let results = Results {
        version: 1,
        student: String::new(),
        set: PracticeSet::from_json(set).unwrap(),
        seed: 9,
        answers: vec![answer],
    };
    assert_eq!(
        results.checked().unwrap_err().to_string(),
        "answers[0].record.task: the set does not ask for this task, or not twice"
    );
    assert_eq!(
        serde_json::from_str::<TaskId>(&other.to_json()).unwrap(),
        other
    );
    let wrong = TaskId {
        of_timed_turn: true,
        ..id
    };
    assert_eq!(
        generate(&wrong).unwrap_err().to_string(),
        "of_timed_turn: only a roll-out task can be that of a timed turn, not a timed-turn task"
    );
}
