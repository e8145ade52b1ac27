//! A worksheet and its key: turns, changes of speed and corrections, computed for a place.

use super::tasks::half_latitude;
pub use super::tasks::{Answer, Question, Tasks, WATCHED};
use super::{CAUTION, Column, Part, Sheet, Site, Table, signs};
use compass::heading::MagneticHeading;
use compass::range::OutOfRange;
use compass::rule_of_thumb::{self, Turn};

/// The worksheet of a seed, and its key.
///
/// # Errors
/// Bank or airspeed beyond what can be flown, or a float that cannot be simulated there.
pub fn sheets(site: &Site, seed: u64) -> Result<[Sheet; 2], OutOfRange> {
    let tasks = Tasks::new(site, seed)?;
    let under = format!("{} Seed {seed}.", site.conditions());
    let number = |index: usize| format!("{}", index + 1);
    let to_answer = (tasks.all.iter().enumerate())
        .map(|(index, (question, _))| vec![number(index), asked(question), String::new()]);
    let answered = (tasks.all.iter().enumerate()).map(|(index, (question, answer))| {
        vec![
            number(index),
            asked(question),
            given(answer, question),
            why(site, question, answer),
        ]
    });
    let worksheet = Sheet {
        title: "Compass worksheet".to_owned(),
        under: under.clone(),
        parts: vec![
            Part::Paragraph(
                "Name: ______________________________    Date: ________________".to_owned(),
            ),
            Part::Paragraph(format!(
                "Take half the bank, {}, as lead in every roll-out. For tasks on the simulated \
                 compass, predict the side and about how much; the key tells what it does. For \
                 the corrections: variation {}, and this card (compass heading, deviation):",
                signs::degrees(site.bank() / 2.0),
                signs::east_west(tasks.variation),
            )),
            card(&tasks),
            Part::Table(Table {
                columns: vec![
                    Column::figures("", 0.05),
                    Column::words("Task", 0.67),
                    Column::words("Your answer", 0.28),
                ],
                groups: vec![(String::new(), 2), (String::new(), 1)],
                rows: to_answer.collect(),
                to_write_in: true,
            }),
        ],
        caution: CAUTION.to_owned(),
    };
    let key = Sheet {
        title: "Key to the compass worksheet".to_owned(),
        under,
        parts: vec![Part::Table(Table {
            columns: vec![
                Column::figures("", 0.05),
                Column::words("Task", 0.41),
                Column::words("Answer", 0.15),
                Column::words("How it comes about", 0.39),
            ],
            rows: answered.collect(),
            ..Table::default()
        })],
        caution: CAUTION.to_owned(),
    };
    Ok([worksheet, key])
}

fn card(tasks: &Tasks) -> Part {
    let entries = tasks.card.entries();
    let cells = entries
        .iter()
        .map(|(_, deviation)| signs::east_west(*deviation));
    let columns = entries
        .iter()
        .map(|(compass, _)| Column::figures(&signs::heading(compass.whole_degrees()), 1.0));
    Part::Table(Table {
        columns: columns.collect(),
        rows: vec![cells.collect()],
        ..Table::default()
    })
}

fn side(turn: Turn) -> &'static str {
    match turn {
        Turn::Left => "left",
        Turn::Right => "right",
    }
}

fn asked(question: &Question) -> String {
    let heading = signs::heading;
    match *question {
        Question::ByLatitude { target, turn } => format!(
            "You turn {} onto {}. By the rule of thumb (latitude, in proportion), at which \
             reading do you begin to roll out?",
            side(turn),
            heading(target)
        ),
        Question::ByHalfLatitude { target, turn } => format!(
            "You turn {} onto {}. By 15° and half the latitude, in proportion, at which reading \
             do you begin to roll out?",
            side(turn),
            heading(target)
        ),
        Question::BareReading { target, turn } => format!(
            "Simulated: from a quarter turn away you turn {} onto {} and roll out as if the \
             compass did not err. On which heading do you come out?",
            side(turn),
            heading(target)
        ),
        Question::TimedTurn { from, to, turn } => format!(
            "You turn {} from {} onto {} at standard rate, by the clock. For how many seconds?",
            side(turn),
            heading(from),
            heading(to)
        ),
        Question::StandardBank { knots } => {
            format!("Which bank gives standard rate at {knots} kt true airspeed?")
        }
        Question::SpeedChange {
            heading: on,
            hundredths_g,
        } => format!(
            "On {} you {} speed at a steady {:.2}\u{a0}g. By the closed form, how much does the \
             compass read too much (+) or too little (−)?",
            heading(on),
            if hundredths_g < 0 { "lose" } else { "gain" },
            f64::from(hundredths_g.abs()) / 100.0
        ),
        Question::Throttle {
            heading: on,
            from_knots,
            to_knots,
        } => format!(
            "Simulated: on {} you go from {from_knots} kt to {to_knots} kt. How much too much \
             (+) or too little (−) does the compass read at the most?",
            heading(on)
        ),
        Question::ToCompass { true_heading } => {
            format!(
                "Which compass heading do you steer for {} true?",
                heading(true_heading)
            )
        }
        Question::ToTrue { compass } => {
            format!(
                "The compass reads {}. Which true heading is it?",
                heading(compass)
            )
        }
    }
}

fn given(answer: &Answer, question: &Question) -> String {
    match answer {
        Answer::Reading(reading) => signs::reading(*reading),
        Answer::ComesOutOn(heading) => signs::heading(heading.whole_degrees()),
        Answer::Time(seconds) => format!("{} s", signs::plain(*seconds)),
        Answer::Bank(bank) => signs::degrees(*bank),
        Answer::Error(error) => signs::signed(*error),
        Answer::Correction(working) => match question {
            Question::ToTrue { .. } => {
                format!(
                    "{} true",
                    signs::heading(working.true_heading.whole_degrees())
                )
            }
            _ => format!(
                "{} compass",
                signs::heading(working.compass.whole_degrees())
            ),
        },
    }
}

fn why(site: &Site, question: &Question, answer: &Answer) -> String {
    match (*question, answer) {
        (Question::ByLatitude { target, turn }, _) => by_rule(site, target, turn, site.latitude),
        (Question::ByHalfLatitude { target, turn }, _) => {
            by_rule(site, target, turn, half_latitude(site.latitude))
        }
        (Question::BareReading { target, turn }, Answer::ComesOutOn(heading)) => {
            let target = MagneticHeading::from_degrees(f64::from(target));
            let past_right = heading.right_of(target);
            let is_past = (past_right > 0.0) == (turn == Turn::Right);
            format!(
                "Flown by the simulation: {} {} the target.",
                signs::degrees(past_right.abs()),
                if is_past { "past" } else { "short of" }
            )
        }
        (Question::TimedTurn { .. }, Answer::Time(seconds)) => {
            format!("{}° at 3° a second.", signs::plain(3.0 * seconds))
        }
        (Question::StandardBank { knots }, _) => format!(
            "From the rate of turn, g tan(bank) / speed. By 15\u{a0}% of the speed: {}°; by a \
             tenth of it and 7: {}° (common practice).",
            signs::plain(0.15 * f64::from(knots)),
            signs::plain(0.1 * f64::from(knots) + 7.0)
        ),
        (
            Question::SpeedChange {
                hundredths_g,
                heading,
            },
            Answer::Error(error),
        ) => format!(
            "{}. {}",
            toward(*error, heading),
            aid_for_speed(site, hundredths_g > 0)
        ),
        (
            Question::Throttle {
                heading,
                from_knots,
                to_knots,
            },
            Answer::Error(error),
        ) => format!(
            "Flown by the simulation for {WATCHED} s. {}. {}",
            toward(*error, heading),
            aid_for_speed(site, to_knots > from_knots)
        ),
        (_, Answer::Correction(it)) => format!(
            "{} true, variation {}, {} magnetic, deviation {}, {} compass.",
            signs::heading(it.true_heading.whole_degrees()),
            signs::east_west(it.variation),
            signs::heading(it.magnetic.whole_degrees()),
            signs::east_west(it.deviation),
            signs::heading(it.compass.whole_degrees()),
        ),
        _ => String::new(),
    }
}

fn by_rule(site: &Site, target: u16, turn: Turn, whole: f64) -> String {
    let target = MagneticHeading::from_degrees(f64::from(target));
    let error = rule_of_thumb::in_turn(target, turn, whole);
    let in_turn = match turn {
        Turn::Left => -error,
        Turn::Right => error,
    };
    let share = if whole == 0.0 {
        0.0
    } else {
        (error / whole).abs()
    };
    let what = if in_turn < 0.0 {
        "undershoot"
    } else {
        "overshoot"
    };
    format!(
        "{:.2} of {} is {} {what}; then {} of lead.",
        share,
        signs::degrees(whole.abs()),
        signs::degrees(error.abs()),
        signs::degrees(site.bank() / 2.0),
    )
}

/// Which way the card swung: on an easterly heading a reading too small is one too far north.
fn toward(error: f64, heading: u16) -> &'static str {
    let eastern = heading < 180;
    if error.abs().to_degrees() < 0.5 {
        "The card stays"
    } else if (error < 0.0) == eastern {
        "The card shows a swing to the north"
    } else {
        "The card shows a swing to the south"
    }
}

fn aid_for_speed(site: &Site, gains: bool) -> &'static str {
    match (site.is_northern(), gains) {
        (true, true) => "Accelerate: north.",
        (true, false) => "Decelerate: south.",
        (false, true) => "South of the magnetic equator, accelerate: south.",
        (false, false) => "South of the magnetic equator, decelerate: north.",
    }
}
