//! Predict and read: the right answer again from the rows of the flight, from the closed form and
//! from the mirrored flight.

use crate::{flight, folded, mirrored, number_after, right, rows, tasks};
use compass::heading::MagneticHeading;
use compass::rule_of_thumb::{self, Turn};
use flights::Row;
use lessons::drill::{Kind, Manoeuvre, Task};

/// No error under this is asked as a lag, a lead or a shown turn, degrees.
const BORDER: f64 = 2.0;

fn side(task: &Task) -> f64 {
    match task.class.manoeuvre {
        Manoeuvre::LeftTurn => -1.0,
        _ => 1.0,
    }
}

/// What a task's answer rests on, out of a flight's rows; `round` is by how much the flight is
/// turned round.
fn evidence(task: &Task, rows: &[Row], round: f64) -> f64 {
    let watch = task.flight.as_ref().unwrap();
    let question = &task.question;
    if question.contains("passes") {
        let target = number_after(question, "passes") + round;
        let past = |row: &Row| side(task) * folded(row.heading_deg - target);
        // The turn passes it once, and never comes within a quarter of the far side.
        let at = rows
            .iter()
            .position(|row| (0.0..90.0).contains(&past(row)))
            .unwrap();
        assert!(past(&rows[at - 1]) < 0.0);
        side(task) * rows[at].error_deg
    } else if question.contains("roll into") {
        folded(rows[rows.len() - 1].reading_deg - rows[0].reading_deg)
    } else {
        assert!(question.contains("throttle"));
        let watched = rows.iter().filter(|row| row.time_s >= watch.watch_from_s);
        let greatest = watched.max_by(|a, b| a.error_deg.abs().total_cmp(&b.error_deg.abs()));
        greatest.unwrap().error_deg
    }
}

/// The answer that the evidence supports: lag −1, lead 1 and so on; none within the border.
fn sign(evidence: f64) -> f64 {
    if evidence.abs() < BORDER {
        0.0
    } else {
        evidence.signum()
    }
}

#[test]
fn what_is_predicted_is_what_the_flight_shows_and_nothing_at_the_border_is_asked() {
    for task in tasks(Kind::Predict, 50) {
        let flown = rows(flight(&task));
        let found = evidence(&task, &flown, 0.0);
        // Half of what is asked as an error, and all of what is asked as none.
        assert!(
            found.abs() <= 1.01 || found.abs() >= 3.99,
            "{found}: {task:?}"
        );
        let answer = right(&task);
        let heading = flown[0].heading_deg;
        let says = match answer {
            lag if lag.starts_with("It lags") => -1.0,
            lead if lead.starts_with("It leads") => 1.0,
            "A turn to the right" => 1.0,
            "A turn to the left" => -1.0,
            "It shows a turn toward north" => toward_north(heading),
            "It shows a turn toward south" => -toward_north(heading),
            _ => {
                assert!(answer.contains("within 2°"), "{answer}");
                0.0
            }
        };
        assert_eq!(sign(found), says, "{task:?}");

        // Half a turn round in the other hemisphere lags lag and shown turns stay; north and
        // south, which are directions, change places with the heading.
        let there = evidence(&task, &rows(&mirrored(flight(&task))), 180.0);
        assert!(
            (there - found).abs() < 1e-3,
            "{found} against {there}: {task:?}"
        );
    }
}

/// Which sign of reading less heading is toward north from a heading.
fn toward_north(heading: f64) -> f64 {
    if folded(heading) > 0.0 { -1.0 } else { 1.0 }
}

#[test]
fn accelerate_north_decelerate_south_and_the_other_way_round_in_the_south() {
    let mut asked = 0;
    for task in tasks(Kind::Predict, 60) {
        let north = match right(&task) {
            "It shows a turn toward north" => true,
            "It shows a turn toward south" => false,
            _ => continue,
        };
        let speeding_up = task.class.manoeuvre == Manoeuvre::SpeedingUp;
        assert_eq!(
            north,
            speeding_up == (task.at_latitude_deg > 0.0),
            "{task:?}"
        );
        asked += 1;
    }
    assert!(asked > 8, "{asked}");
}

#[test]
fn the_right_heading_is_the_flown_one_and_the_wrong_ones_are_far_from_it() {
    for task in tasks(Kind::Read, 40) {
        let watch = task.flight.as_ref().unwrap();
        let flown = rows(&watch.scenario);
        // The moment that is asked about, two seconds before the end.
        let asked = &flown[((watch.watch_to_s - 2.0) * 10.0).round() as usize];
        let reading = number_after(&task.question, "compass reads");
        assert!(
            folded(asked.reading_deg - reading).abs() <= 0.51,
            "{task:?}"
        );
        let answer = number_after(right(&task), "");
        assert!(folded(asked.heading_deg - answer).abs() <= 0.51, "{task:?}");
        assert!(folded(reading - answer).abs() >= 5.0);
        for wrong in task.choices.iter().filter(|it| !it.right) {
            let off = folded(number_after(&wrong.text, "") - asked.heading_deg).abs();
            assert!(off >= 5.0, "{off}: {task:?}");
        }
        let turns = matches!(
            task.class.manoeuvre,
            Manoeuvre::LeftTurn | Manoeuvre::RightTurn
        );
        if turns {
            by_the_rule(&task, answer, reading);
        }
        // The mirrored flight reads the same half a turn round.
        let there = rows(&mirrored(&watch.scenario));
        let there = &there[((watch.watch_to_s - 2.0) * 10.0).round() as usize];
        assert!((there.error_deg - asked.error_deg).abs() < 1e-3);
    }
}

/// Of all choices the right one's reading by the rule comes nearest to the reading shown.
fn by_the_rule(task: &Task, answer: f64, reading: f64) {
    let turn = if side(task) < 0.0 {
        Turn::Left
    } else {
        Turn::Right
    };
    let missed = |heading: f64| {
        let latitude = task.at_latitude_deg.to_radians();
        let heading = MagneticHeading::from_degrees(heading);
        let by_rule =
            heading.degrees() + rule_of_thumb::in_turn(heading, turn, latitude).to_degrees();
        folded(by_rule - reading).abs()
    };
    let nearest = task
        .choices
        .iter()
        .map(|it| number_after(&it.text, ""))
        .min_by(|a, b| missed(*a).total_cmp(&missed(*b)));
    assert_eq!(nearest, Some(answer), "{task:?}");
}
