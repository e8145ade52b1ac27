//! What flown tasks ask for, over many seeds of each kind, by plain arithmetic.
//!
//! Checked of every task that is looked at here: that words, scenario and aim say the same; that
//! the numbers are finite and within what the level allows; that who does nothing fails; and what
//! can be had in another way than by flying: how long the turn takes, the readings of both rules
//! and of the closed form, whether the card comes round at all, what an indicator that is never
//! set carries.
//!
//! Not checked of every one, since it takes flights of its own: the marks of a good pilot and of
//! an idle one. `flown` flies those for the first few tasks of each kind.
//!
//! How many are looked at every day follows from what a task costs to draw: the flight of a
//! hold-heading task lasts two minutes, that of a set-gyro task up to thirteen. `DRILL_SEEDS=700`
//! looks at 2100 of each kind.

use crate::{each, flight, folded, number_after};
use compass::maths;
use lessons::drill::{Aim, Hemisphere, Kind, Manoeuvre, Octant, Task};

/// Standard gravity, m/s², and a knot, m/s.
const GRAVITY: f64 = 9.80665;
const KNOT: f64 = 1852.0 / 3600.0;
/// When a turn is rolled into, s.
const ROLL_IN_S: f64 = 5.0;

/// How a task's flight starts, out of its scenario.
struct Start {
    latitude: f64,
    heading: f64,
    speed: f64,
}

/// The start, after checking what holds of every flown task.
fn start(task: &Task) -> Start {
    assert!(task.choices.is_empty() && task.paper.is_none(), "{task:?}");
    let watch = task.flight.as_ref().unwrap();
    let number = |part: &str, name: &str| watch.scenario[part][name].as_f64().unwrap();
    let start = Start {
        latitude: number("field", "latitude_deg"),
        heading: number("start", "heading_deg"),
        speed: number("start", "speed_kt"),
    };
    assert_eq!(start.latitude, task.at_latitude_deg);
    assert!((0.0..360.0).contains(&start.heading) && (80.0..=140.0).contains(&start.speed));
    assert!(0.0 <= watch.watch_from_s && watch.watch_from_s < watch.watch_to_s);
    assert_eq!(flight(task)["duration_s"].as_f64(), Some(watch.watch_to_s));

    let question = &task.question;
    assert_eq!(number_after(question, "latitude "), start.latitude.abs());
    let southern = task.class.hemisphere == Hemisphere::Southern;
    assert_eq!(question.contains("° south"), southern, "{question}");
    assert_eq!(start.latitude < 0.0, southern);
    // Within a mark, or off by so much on the whole.
    let word = ["±", "off by "]
        .into_iter()
        .find(|it| question.contains(it));
    let told = number_after(question, word.unwrap());
    assert_eq!(told, task.id.tolerance_deg, "{question}");
    let said = &task.explanation;
    for text in [question, &said.happened, &said.why, &said.rule] {
        assert!(
            !text.is_empty() && !text.contains("NaN") && !text.contains("inf"),
            "{task:?}"
        );
    }
    start
}

/// The start of a flight that is flown onto a heading, and the way to turn.
fn onto(task: &Task, target: f64, side: f64) -> Start {
    let start = start(task);
    let step = [90.0, 30.0, 5.0][usize::from(task.id.level) - 1];
    assert!(
        (0.0..360.0).contains(&target) && target % step == 0.0,
        "{task:?}"
    );
    assert_eq!(task.class.octant, Octant::of(target));
    let question = &task.question;
    assert_eq!(
        folded(number_after(question, "onto ") - target),
        0.0,
        "{question}"
    );
    let off = folded(number_after(question, "you fly ") - start.heading);
    assert!(off.abs() <= 0.5, "{question}");
    assert_eq!(number_after(question, "° at "), start.speed, "{question}");
    let way = if side < 0.0 {
        "turn left"
    } else {
        "turn right"
    };
    assert!(question.contains(way), "{question}");
    let controls = flight(task)["controls"].as_array().unwrap();
    assert!(controls.is_empty(), "the pilot flies it: {task:?}");
    start
}

/// How many degrees lie between two headings the way that is turned.
fn angle(from: f64, target: f64, side: f64) -> f64 {
    (side * (target - from)).rem_euclid(360.0)
}

/// From the beginning of the roll-in to that of the roll-out, s: the least and the most.
///
/// A turn at an even bank goes at g tan(bank) / V. Roll-in and roll-out are each other's mirror
/// image, so that what is `e` short of the bank in the one is a bank of `e` in the other; together
/// they fall short of the even turn by tan(bank) − tan(bank − e) − tan(e), which is not below
/// nought and greatest half-way. Rolling takes bank / 15° a second, and three times the 1/1.2 s
/// with which the rest dies away, and the lag.
fn turning_s(angle: f64, bank: f64, speed: f64) -> [f64; 2] {
    let tan = |degrees: f64| maths::tan(degrees.to_radians());
    let rate = (GRAVITY * tan(bank) / (speed * KNOT)).to_degrees();
    let even = angle / rate;
    let short = 1.0 - 2.0 * tan(bank / 2.0) / tan(bank);
    // The flight is looked at 200 times a second, and its bank is a hundredth off in the shortest
    // turns.
    [
        even - 0.02,
        even + short * (bank / 15.0 + 3.0 / 1.2 + 0.15) + 0.02,
    ]
}

#[test]
fn a_roll_out_s_turn_takes_what_it_must_and_its_readings_are_those_of_the_formulas() {
    each(Kind::RollOut, 150, |task| {
        let Some(Aim::RollOut {
            target_deg: target,
            bank_deg,
            rule_deg,
            half_rule_deg,
            steady_deg,
            simulated_deg,
        }) = task.aim
        else {
            panic!("{task:?}");
        };
        let (side, bank) = (bank_deg.signum(), bank_deg.abs());
        let Start {
            latitude,
            heading,
            speed,
        } = onto(task, target, side);
        assert_eq!(task.class.manoeuvre, manoeuvre(side));
        assert!(task.question.contains(&format!(" at {bank}° of bank ")));
        // The dipole: tan(dip) = 2 tan(latitude). Steeper than 90° less the dip a card goes round
        // no more; 6° are kept from it.
        let dip = maths::atan(2.0 * maths::tan(latitude.to_radians()));
        let dip = dip.to_degrees().abs();
        let steepest = [18.0, 25.0, 45.0][usize::from(task.id.level) - 1];
        assert!((3.0..=steepest).contains(&bank), "{task:?}");
        assert!(bank <= (90.0 - dip - 6.0).max(3.0), "dip {dip}: {task:?}");

        let to_turn = angle(heading, target, side);
        let most = [90.0, 180.0, 270.0][usize::from(task.id.level) - 1];
        assert!((90.0..=most).contains(&to_turn), "{to_turn}: {task:?}");
        // The task may take three times as long and 90 s, in whole seconds rounded up.
        let [least, most] = turning_s(to_turn, bank, speed).map(|it| 3.0 * (ROLL_IN_S + it) + 90.0);
        let may_take = task.flight.as_ref().unwrap().watch_to_s;
        assert!(
            least <= may_take && may_take < most + 1.0,
            "{least} {most}: {task:?}"
        );

        // By both rules: as much as the latitude on north and south, none on east and west, in
        // proportion between; and half the bank as lead.
        let share = 1.0 - folded(target).abs() / 90.0;
        let by_rule = |whole: f64| target - side * (share * whole + bank / 2.0);
        assert!(
            folded(rule_deg - by_rule(latitude)).abs() < 1e-6,
            "{task:?}"
        );
        let half = latitude.signum() * (15.0 + latitude.abs() / 2.0);
        assert!(
            folded(half_rule_deg - by_rule(half)).abs() < 1e-6,
            "{task:?}"
        );
        // The field in the axes of a card that stands square to the bank: yawed, then rolled.
        let begin = (target - side * bank / 2.0).to_radians();
        let (level, down) = (
            maths::cos(latitude.to_radians()),
            2.0 * maths::sin(latitude.to_radians()),
        );
        let (sin_bank, cos_bank) = maths::sin_cos(bank_deg.to_radians());
        let across = down * sin_bank - level * maths::sin(begin) * cos_bank;
        let steady = maths::atan2(-across, level * maths::cos(begin)).to_degrees();
        assert!(
            folded(steady_deg - steady).abs() < 1e-6,
            "{steady}: {task:?}"
        );
        assert!((0.0..360.0).contains(&simulated_deg), "{task:?}");
    });
}

fn manoeuvre(side: f64) -> Manoeuvre {
    if side < 0.0 {
        Manoeuvre::LeftTurn
    } else {
        Manoeuvre::RightTurn
    }
}

#[test]
fn a_timed_turn_takes_a_second_for_every_three_degrees() {
    each(Kind::TimedTurn, 150, |task| {
        let Some(Aim::TimedTurn {
            target_deg: target,
            bank_deg,
            rule_s,
            simulated_s,
            rule_compass_overshoot_deg,
            bare_compass_overshoot_deg,
        }) = task.aim
        else {
            panic!("{task:?}");
        };
        let (side, bank) = (bank_deg.signum(), bank_deg.abs());
        let Start { heading, speed, .. } = onto(task, target, side);
        assert_eq!(task.class.manoeuvre, manoeuvre(side));
        // Standard rate by tan(bank) = ω V / g, to the tenth of a degree as it is written.
        let even = maths::atan(3.0_f64.to_radians() * speed * KNOT / GRAVITY).to_degrees();
        assert!((bank - even).abs() <= 0.05 + 1e-9, "{even}: {task:?}");

        let to_turn = angle(heading, target, side);
        let within = [90.0..=180.0, 60.0..=240.0, 45.0..=300.0];
        assert!(
            within[usize::from(task.id.level) - 1].contains(&to_turn),
            "{task:?}"
        );
        assert_eq!(rule_s, to_turn / 3.0, "{task:?}");
        let [least, most] = turning_s(to_turn, bank, speed);
        assert!(
            least <= simulated_s && simulated_s <= most,
            "{least} {most}: {task:?}"
        );
        for overshoot in [rule_compass_overshoot_deg, bare_compass_overshoot_deg] {
            assert!(overshoot.is_none_or(|it| it.abs() <= 180.0));
        }
        let may_take = (3.0 * (ROLL_IN_S + simulated_s) + 90.0).ceil();
        assert_eq!(task.flight.as_ref().unwrap().watch_to_s, may_take);
    });
}

#[test]
fn a_heading_to_hold_lies_off_the_start_and_the_card_swings_about_it() {
    each(Kind::HoldHeading, 60, |task| {
        let Some(Aim::HoldHeading {
            target_deg: target,
            from_s,
            to_s,
            swing_deg,
        }) = task.aim
        else {
            panic!("{task:?}");
        };
        let off = folded(target - flight(task)["start"]["heading_deg"].as_f64().unwrap());
        onto(task, target, off.signum());
        // Who does nothing is off by more than may be, for all of the time.
        let beyond = off.abs() - task.id.tolerance_deg;
        assert!((10.0..=30.0).contains(&beyond), "{off}: {task:?}");
        let (counted, name) = [(60.0, "moderate"), (90.0, "moderate"), (120.0, "severe")]
            [usize::from(task.id.level) - 1];
        assert_eq!((from_s, to_s), (45.0, 45.0 + counted));
        let air = flight(task)["rough_air"]["intensity"].as_str();
        assert_eq!(air, Some(name), "{task:?}");
        assert!(task.question.contains(&format!("in {name} turbulence")));
        assert!((2.0..90.0).contains(&swing_deg), "{task:?}");
        let watch = task.flight.as_ref().unwrap();
        assert_eq!((watch.watch_from_s, watch.watch_to_s), (from_s, to_s));
    });
}

#[test]
fn a_gyro_has_good_moments_and_never_set_it_carries_too_much() {
    each(Kind::SetGyro, 25, |task| {
        let Some(Aim::SetGyro {
            error_at_start_deg,
            drift_deg_h,
            from_s,
            good_s,
            ideal_deg,
        }) = &task.aim
        else {
            panic!("{task:?}");
        };
        let Start { latitude, .. } = start(task);
        let (end, tolerance) = (
            task.flight.as_ref().unwrap().watch_to_s,
            task.id.tolerance_deg,
        );
        // Good moments: in order, apart, of ten seconds at least, and not most of the time.
        assert!(good_s.len() >= 3, "{task:?}");
        assert_eq!(good_s[0][1], *from_s);
        assert!(*from_s <= 90.0 && good_s[0][0] >= 0.0 && good_s.last().unwrap()[1] <= end);
        assert!(
            good_s.iter().all(|[from, to]| to - from >= 10.0),
            "{task:?}"
        );
        assert!(good_s.windows(2).all(|it| it[0][1] < it[1][0]), "{task:?}");
        let share = good_s.iter().map(|[from, to]| to - from).sum::<f64>() / end;
        assert!(share <= 0.7, "{share}: {task:?}");

        assert!((20.0..=60.0).contains(&drift_deg_h.abs()));
        let beyond = error_at_start_deg.abs() - tolerance;
        assert!((5.0..=15.0).contains(&beyond), "{task:?}");
        assert!((0.0..=tolerance / 2.0).contains(ideal_deg), "{task:?}");
        // Never set, its error is a straight line in time: its own drift, and the Earth's turning,
        // by which the indication falls north of the equator. The root of the mean of its square.
        let a_second = (drift_deg_h - 15.04 * maths::sin(latitude.to_radians())) / 3600.0;
        let [first, last] = [*from_s, end].map(|time| error_at_start_deg + a_second * time);
        let never_set = ((first * first + first * last + last * last) / 3.0).sqrt();
        assert!(never_set >= 1.2 * tolerance - 0.01, "{never_set}: {task:?}");
        let said = number_after(&task.explanation.happened, "never set, by ");
        assert!((said - never_set).abs() < 0.06, "{never_set}: {task:?}");
    });
}
