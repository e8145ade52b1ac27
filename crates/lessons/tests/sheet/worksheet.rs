//! Every answer of a worksheet, found again by another route.

use super::{apart, sites, table};
use compass::aircraft::Aircraft;
use compass::free_flight::Controls;
use compass::gust::NUMBERS;
use compass::heading::MagneticHeading;
use compass::motion::{Kinematics, Motion, coordinated_rate_of_turn};
use compass::rule_of_thumb::Turn;
use compass::simulation::{STEPS_PER_SECOND, Simulation};
use compass::steady::square_card;
use compass::unit::{KNOT, STANDARD_GRAVITY};
use lessons::sheet::Site;
use lessons::sheet::worksheet::{self, Answer, Question, Tasks};
use std::f64::consts::FRAC_PI_2;

fn side(turn: Turn) -> f64 {
    match turn {
        Turn::Left => -1.0,
        Turn::Right => 1.0,
    }
}

/// The rule as it is said: how far the target lies from east or west toward north or south, in
/// ninetieths of the whole; short of north, past south, in the north.
fn by_rule(site: &Site, target: u16, turn: Turn, whole: f64) -> f64 {
    let target = f64::from(target);
    let toward_north = [90.0, 270.0]
        .map(|level| apart(target, level))
        .into_iter()
        .fold(f64::INFINITY, f64::min);
    let northerly = apart(target, 0.0) < 90.0;
    let past = toward_north / 90.0 * whole.abs();
    let past = if northerly == (whole > 0.0) {
        -past
    } else {
        past
    };
    target + side(turn) * (past - site.bank.to_degrees() / 2.0)
}

/// The turn flown in half the step, and rolled out when the card shows the lead heading.
fn flown_by_the_bare_reading(site: &Site, target: u16, turn: Turn) -> f64 {
    let side = side(turn);
    let target = MagneticHeading::from_degrees(f64::from(target));
    let lead = target.turned_by(-side * site.bank / 2.0);
    let level = Controls::level(site.airspeed);
    let start = Aircraft::free(target.turned_by(-side * FRAC_PI_2), &level);
    let mut flight = Simulation::new(site.situation, start, level)
        .unwrap()
        .refined(2);
    let mut controls = level.with_bank(side * site.bank);
    let mut rolled_out = 0;
    for _ in 0..300 * STEPS_PER_SECOND {
        let off = side * flight.reading().compass.error_from(lead);
        flight.step(&controls, [0.0; NUMBERS]);
        let next = side * flight.reading().compass.error_from(lead);
        if off < 0.0 && next >= 0.0 && next - off < 1.0 {
            controls = level;
        }
        if controls == level {
            rolled_out += 1;
        }
        if rolled_out > 60 * STEPS_PER_SECOND {
            break;
        }
    }
    flight.motion().heading.degrees()
}

/// The card with its eight points, in degrees, straight between them.
fn on_card(tasks: &Tasks, compass: f64) -> f64 {
    let entries = tasks.card.entries();
    let index = (compass / 45.0).floor() as usize % 8;
    let [here, next] = [index, (index + 1) % 8].map(|it| entries[it].1.to_degrees());
    here + (next - here) * (compass / 45.0 - (compass / 45.0).floor())
}

#[test]
fn every_answer_is_found_again_by_another_route() {
    let mut kinds = std::collections::HashSet::new();
    for (site, seed) in sites().iter().zip([1, 7, 20]) {
        let tasks = Tasks::new(site, seed).unwrap();
        assert_eq!(tasks.all.len(), 12);
        for (question, answer) in &tasks.all {
            kinds.insert(std::mem::discriminant(question));
            check(site, &tasks, question, answer);
        }
    }
    assert_eq!(kinds.len(), 9, "every kind of task is asked");
}

fn check(site: &Site, tasks: &Tasks, question: &Question, answer: &Answer) {
    let latitude = site.latitude.to_degrees();
    let said = format!("{question:?}: {answer:?}");
    match (*question, *answer) {
        (Question::ByLatitude { target, turn }, Answer::Reading(reading)) => {
            let again = by_rule(site, target, turn, latitude);
            assert!(apart(reading.degrees(), again) < 1e-9, "{said} {again}");
        }
        (Question::ByHalfLatitude { target, turn }, Answer::Reading(reading)) => {
            let whole = (15.0 + latitude.abs() / 2.0) * latitude.signum();
            let again = by_rule(site, target, turn, whole);
            assert!(apart(reading.degrees(), again) < 1e-9, "{said} {again}");
        }
        (Question::BareReading { target, turn }, Answer::ComesOutOn(heading)) => {
            let again = flown_by_the_bare_reading(site, target, turn);
            // A step of 1/200 s is at most 0.02° of turn here; the roll back is that of the plan.
            assert!(apart(heading.degrees(), again) < 0.1, "{said} {again}");
        }
        (Question::TimedTurn { from, to, turn }, Answer::Time(seconds)) => {
            let mut degrees = 0;
            let mut at = i32::from(from) % 360;
            while at != i32::from(to) % 360 {
                at = (at + side(turn) as i32).rem_euclid(360);
                degrees += 1;
            }
            assert!((seconds - f64::from(degrees) / 3.0).abs() < 1e-9, "{said}");
        }
        (Question::StandardBank { knots }, Answer::Bank(bank)) => {
            let rate = coordinated_rate_of_turn(bank, f64::from(knots) * KNOT);
            assert!((rate.to_degrees() - 3.0).abs() < 1e-9, "{said}");
        }
        (
            Question::SpeedChange {
                heading,
                hundredths_g,
            },
            Answer::Error(error),
        ) => {
            let heading = MagneticHeading::from_degrees(f64::from(heading));
            let motion = Motion::of(&Kinematics {
                heading: heading.radians(),
                pitch: 0.0,
                bank: 0.0,
                airspeed: 50.0,
                rate_of_turn: 0.0,
                pitch_rate: 0.0,
                bank_rate: 0.0,
                airspeed_rate: f64::from(hundredths_g) / 100.0 * STANDARD_GRAVITY,
            });
            let reading = square_card(&site.situation.field, &motion).unwrap();
            assert!((reading.error_from(heading) - error).abs() < 1e-9, "{said}");
        }
        (
            Question::Throttle {
                heading,
                from_knots,
                to_knots,
            },
            Answer::Error(error),
        ) => {
            // Looked at every tenth of a second of a flight in half the step.
            let heading = MagneticHeading::from_degrees(f64::from(heading));
            let level = Controls::level(f64::from(from_knots) * KNOT);
            let start = Aircraft::free(heading, &level);
            let mut flight = Simulation::new(site.situation, start, level)
                .unwrap()
                .refined(2);
            let controls = level.with_airspeed(f64::from(to_knots) * KNOT);
            let [mut least, mut most] = [0.0_f64; 2];
            for step in 0..60 * STEPS_PER_SECOND {
                flight.step(&controls, [0.0; NUMBERS]);
                if step % 20 == 0 {
                    let error = flight.reading().compass.error_from(heading);
                    (least, most) = (least.min(error), most.max(error));
                }
            }
            let again = if -least > most { least } else { most };
            assert!((again - error).to_degrees().abs() < 0.05, "{said} {again}");
        }
        (Question::ToCompass { .. } | Question::ToTrue { .. }, Answer::Correction(working)) => {
            let variation = tasks.variation.to_degrees();
            let true_on = |compass: f64| compass + on_card(tasks, compass) + variation;
            let compass = match *question {
                Question::ToTrue { compass } => f64::from(compass),
                Question::ToCompass { true_heading } => {
                    // The hundredth of a degree that comes nearest, of all there are.
                    let all = (0..36_000).map(|it| f64::from(it) / 100.0);
                    let off = |compass: f64| apart(true_on(compass), f64::from(true_heading));
                    all.min_by(|a, b| off(*a).total_cmp(&off(*b))).unwrap()
                }
                _ => unreachable!(),
            };
            assert!(
                apart(working.compass.degrees(), compass) < 0.02,
                "{said} {compass}"
            );
            let again = true_on(compass);
            assert!(
                apart(working.true_heading.degrees(), again) < 0.03,
                "{said} {again}"
            );
        }
        _ => panic!("an answer of another kind: {said}"),
    }
}

#[test]
fn the_same_seed_gives_the_same_worksheet_and_its_key_answers_each_task() {
    let [site, ..] = sites();
    let sheets = worksheet::sheets(&site, 5).unwrap();
    assert_eq!(sheets, worksheet::sheets(&site, 5).unwrap());
    assert_ne!(sheets, worksheet::sheets(&site, 6).unwrap());
    let [asked, answered] = [&sheets[0], &sheets[1]].map(table);
    assert_eq!(asked.rows.len(), answered.rows.len());
    for (task, key) in asked.rows.iter().zip(&answered.rows) {
        assert_eq!(task[..2], key[..2]);
        assert!(task[2].is_empty() && !key[2].is_empty() && !key[3].is_empty());
    }
}
