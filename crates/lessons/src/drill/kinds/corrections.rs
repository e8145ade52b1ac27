//! Corrections: from one north to another, and coefficients out of a swing, on paper.

use super::super::class::{Class, Hemisphere, Manoeuvre, Octant};
use super::super::dice::Dice;
use super::super::identity::{DrillError, TaskId};
use super::super::task::{Choice, Explanation, North, Paper, Task};
use super::super::turning::latitude;
use super::super::words::{self, east_west};
use crate::corrections::{DeviationCard, Working};
use compass::heading::{CompassHeading, MagneticHeading, TrueHeading};
use compass::maths;

/// Answers lie at least so far apart, degrees; chosen: more than any rounding on the way.
const APART_DEG: f64 = 3.0;

pub(super) fn draw(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    let at_latitude_deg = latitude(id, dice);
    if id.level > 1 && dice.whole(0, 3) == 0 {
        Ok(coefficient(id, at_latitude_deg, dice))
    } else {
        Ok(correction(id, at_latitude_deg, dice))
    }
}

fn correction(id: &TaskId, at_latitude_deg: f64, dice: &mut Dice) -> Option<Task> {
    let variation = dice.side() * f64::from(dice.whole(4, 25));
    let card_deg = card(dice, id.level);
    let entries = card_deg
        .iter()
        .map(|[on, deviation]| (CompassHeading::from_degrees(*on), deviation.to_radians()));
    let card = DeviationCard::new(entries.collect()).ok()?;
    let (from, to) = dice.one_of(&[
        (North::True, North::Compass),
        (North::Compass, North::True),
        (North::Magnetic, North::Compass),
        (North::Compass, North::Magnetic),
        (North::True, North::Magnetic),
        (North::Magnetic, North::True),
    ]);
    // Level 1 asks on a line of the card, the others between lines too.
    let step = match id.level {
        1 => 90,
        2 => 5,
        _ => 1,
    };
    let on = f64::from(dice.stepped(0, 360 - step, step));
    let variation_rad = variation.to_radians();
    let working = match from {
        North::Compass => {
            Working::from_compass(CompassHeading::from_degrees(on), variation_rad, &card)
        }
        North::True => Working::from_true(TrueHeading::from_degrees(on), variation_rad, &card),
        North::Magnetic => Working::from_true(
            MagneticHeading::from_degrees(on).to_true(variation_rad),
            variation_rad,
            &card,
        ),
    };
    let deviation = working.deviation.to_degrees();
    let right = match to {
        North::True => working.true_heading.degrees(),
        North::Magnetic => working.magnetic.degrees(),
        North::Compass => working.compass.degrees(),
    };
    let slips = slips([from, to], on, [variation, deviation]);
    let choices = numbers(right, &dice.shuffled(slips), dice, words::heading)?;
    let name = |north: North| match north {
        North::True => "true",
        North::Magnetic => "magnetic",
        North::Compass => "compass",
    };
    let lines = card_deg
        .iter()
        .map(|[on, deviation]| format!("{} {}", words::heading(*on), east_west(*deviation)));
    let lines = lines.collect::<Vec<_>>().join(", ");
    Some(Task {
        id: *id,
        at_latitude_deg,
        class: class(id, on, at_latitude_deg),
        question: format!(
            "Variation is {}. The deviation card, by compass heading: {lines}; between its lines \
             in proportion. The {} heading is {}. What is the {} heading?",
            east_west(variation),
            name(from),
            words::heading(on),
            name(to),
        ),
        choices,
        aim: None,
        paper: Some(Paper::Correction {
            from,
            to,
            heading_deg: on,
            variation_deg: variation,
            card_deg,
        }),
        flight: None,
        explanation: Explanation {
            happened: format!(
                "True {}, variation {}, magnetic {}, deviation {}, compass {}.",
                words::heading(working.true_heading.degrees()),
                east_west(variation),
                words::heading(working.magnetic.degrees()),
                east_west(deviation),
                words::heading(working.compass.degrees()),
            ),
            why: "Variation is how far magnetic north lies east of true north, deviation how far \
                  the card's north lies east of magnetic north."
                .to_owned(),
            rule: "Rule of thumb: from true to compass, east is least and west is best; the other \
                   way round on the way back. It is exact: only the card's deviations are measured."
                .to_owned(),
        },
    })
}

/// What comes out where a correction has the wrong sign, is left out, or is not called for.
fn slips([from, to]: [North; 2], on: f64, corrections: [f64; 2]) -> Vec<(f64, &'static str)> {
    // East is added on the way to true.
    let toward_true = from == North::Compass || to == North::True;
    let sign = if toward_true { 1.0 } else { -1.0 };
    let [variation, deviation] = corrections.map(|it| sign * it);
    let goes_between = |a: North, b: North| [[a, b], [b, a]].contains(&[from, to]);
    if goes_between(North::Magnetic, North::Compass) {
        vec![
            (on - deviation, "deviation the wrong way"),
            (on, "left deviation out"),
            (on + variation + deviation, "took variation in too"),
            (on + variation, "took variation for deviation"),
        ]
    } else if goes_between(North::True, North::Magnetic) {
        vec![
            (on - variation, "variation the wrong way"),
            (on, "left variation out"),
            (on + variation + deviation, "took deviation in too"),
            (on + deviation, "took deviation for variation"),
        ]
    } else {
        vec![
            (on - variation + deviation, "variation the wrong way"),
            (on + variation - deviation, "deviation the wrong way"),
            (on - variation - deviation, "all corrections the wrong way"),
            (on + variation, "left deviation out"),
            (on + deviation, "left variation out"),
            (on, "left all corrections out"),
        ]
    }
}

fn coefficient(id: &TaskId, at_latitude_deg: f64, dice: &mut Dice) -> Option<Task> {
    let [north, east, south, west] = [0; 4].map(|_| f64::from(dice.whole(-12, 12)));
    let deviations_deg = [north, east, south, west];
    let letter = match id.level {
        3 => dice.one_of(&['A', 'B', 'C', 'E']),
        _ => dice.one_of(&['A', 'B', 'C']),
    };
    let (right, slips, formula) = match letter {
        'A' => (
            (north + east + south + west) / 4.0,
            vec![
                ((north + south) / 2.0, "took half of the headings"),
                ((east + west) / 2.0, "took half of the headings"),
                (-(north + east + south + west) / 4.0, "the wrong sign"),
                (north + east + south + west, "did not divide"),
            ],
            "A is the mean of all: (N + E + S + W) / 4",
        ),
        'B' => (
            (east - west) / 2.0,
            vec![
                ((east + west) / 2.0, "took the sum for the difference"),
                (east - west, "did not divide"),
                ((west - east) / 2.0, "the wrong sign"),
                ((north - south) / 2.0, "took another coefficient"),
            ],
            "B is half of east less west: (E − W) / 2",
        ),
        // E by the eight-point means, of which it needs four (NGA *Handbook of Magnetic Compass
        // Adjustment*, 2004).
        'E' => (
            (north + south - east - west) / 4.0,
            vec![
                (
                    (north + south + east + west) / 4.0,
                    "took another coefficient",
                ),
                (north + south - east - west, "did not divide"),
                ((east + west - north - south) / 4.0, "the wrong sign"),
                (
                    (north + south - east - west) / 2.0,
                    "divided by two for four",
                ),
            ],
            "E is a quarter of north and south less east and west: (N + S − E − W) / 4",
        ),
        _ => (
            (north - south) / 2.0,
            vec![
                ((north + south) / 2.0, "took the sum for the difference"),
                (north - south, "did not divide"),
                ((south - north) / 2.0, "the wrong sign"),
                ((east - west) / 2.0, "took another coefficient"),
            ],
            "C is half of north less south: (N − S) / 2",
        ),
    };
    let put = |it: f64| match it {
        0.0 => "0°".to_owned(),
        _ => format!("{it:+}°"),
    };
    let slips = dice.shuffled(slips);
    let choices = numbers(right, &slips, dice, put)?;
    Some(Task {
        id: *id,
        at_latitude_deg,
        class: class(
            id,
            match letter {
                'B' => 90.0,
                _ => 0.0,
            },
            at_latitude_deg,
        ),
        question: format!(
            "A swing found these deviations, east positive: on north {}, on east {}, on south {}, \
             on west {}. What is coefficient {letter}?",
            put(north),
            put(east),
            put(south),
            put(west)
        ),
        choices,
        aim: None,
        paper: Some(Paper::Coefficient {
            letter,
            deviations_deg,
        }),
        flight: None,
        explanation: Explanation {
            happened: format!("{formula} = {}.", put(right)),
            why: "A stays the same on every heading; B goes with the sine of the heading, most on \
                  east and west with opposite signs; C with its cosine, most on north and south; E \
                  with the cosine of twice the heading, alike on opposite headings."
                .to_owned(),
            rule: taken_out(letter).to_owned(),
        },
    })
}

/// How a coefficient is taken out of a compass, as is common practice.
fn taken_out(letter: char) -> &'static str {
    match letter {
        'A' => {
            "Rule of thumb: the compensator does not reach it. The compass is turned in its mounting \
             by as much, and all headings are then right at once."
        }
        'E' => {
            "Rule of thumb: the compensator does not reach it. It is small, and what is left of it \
             stands on the deviation card."
        }
        'B' => {
            "Rule of thumb: on east all of the deviation is taken out by the compensator, on west \
             half of what is found there. That takes out just this coefficient."
        }
        _ => {
            "Rule of thumb: on north all of the deviation is taken out by the compensator, on south \
             half of what is found there. That takes out just this coefficient."
        }
    }
}

/// A card of so many lines as the level asks for: a gentle curve, a steeper one at the hardest, in
/// whole degrees.
fn card(dice: &mut Dice, level: u8) -> Vec<[f64; 2]> {
    let every = if level == 1 { 90 } else { 45 };
    let [most, most_d] = if level < 3 { [6, 2] } else { [9, 4] };
    let mut upto = |most: i32| f64::from(dice.whole(-most, most));
    let [b, c, d] = [upto(most), upto(most), upto(most_d)];
    let lines = (0..360).step_by(every as usize).map(|on| {
        let angle = f64::from(on).to_radians();
        let (sin, cos) = maths::sin_cos(angle);
        let deviation = b * sin + c * cos + d * maths::sin(2.0 * angle);
        // Adding nought turns −0 into 0.
        [f64::from(on), deviation.round() + 0.0]
    });
    lines.collect()
}

/// The right number and three slips, each well apart from all others; none where there are not
/// three.
fn numbers(
    right: f64,
    slips: &[(f64, &'static str)],
    dice: &mut Dice,
    put: impl Fn(f64) -> String,
) -> Option<Vec<Choice>> {
    let mut kept = vec![(right, "")];
    for (number, slip) in slips {
        let apart = |it: &(f64, &str)| {
            let between = (number - it.0).rem_euclid(360.0);
            between.min(360.0 - between) >= APART_DEG
        };
        if kept.len() < 4 && kept.iter().all(apart) {
            kept.push((*number, *slip));
        }
    }
    let choices = kept.iter().map(|(number, slip)| Choice {
        text: put(*number),
        right: slip.is_empty(),
        slip: (*slip).to_owned(),
    });
    (kept.len() == 4).then(|| dice.shuffled(choices.collect()))
}

fn class(id: &TaskId, on: f64, latitude_deg: f64) -> Class {
    Class {
        kind: id.kind,
        octant: Octant::of(on),
        manoeuvre: Manoeuvre::Level,
        hemisphere: Hemisphere::of(latitude_deg),
    }
}
