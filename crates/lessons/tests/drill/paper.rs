//! Corrections: by plain arithmetic in degrees.

use crate::{folded, number_after, right, tasks};
use lessons::drill::{Kind, North, Paper};

/// Deviation in proportion between the lines of a card, degrees.
fn deviation(card: &[[f64; 2]], compass: f64) -> f64 {
    let every = 360.0 / card.len() as f64;
    let compass = compass.rem_euclid(360.0);
    let line = (compass / every).floor();
    let along = (compass - line * every) / every;
    let [here, next] = [0, 1].map(|it| card[(line as usize + it) % card.len()][1]);
    here + along * (next - here)
}

/// The compass heading for a magnetic one, by trying and correcting.
fn compass_for(card: &[[f64; 2]], magnetic: f64) -> f64 {
    let mut compass = magnetic;
    for _ in 0..200 {
        let missed = folded(magnetic - compass - deviation(card, compass));
        compass += 0.5 * missed;
    }
    compass
}

#[test]
fn every_way_between_two_norths_is_asked_about_as_often() {
    let norths = [North::True, North::Magnetic, North::Compass];
    let ways = tasks(Kind::Corrections, 300).filter_map(|task| match task.paper {
        Some(Paper::Correction { from, to, .. }) => Some((from, to)),
        _ => None,
    });
    let ways: Vec<(North, North)> = ways.collect();
    for from in norths {
        for to in norths.into_iter().filter(|to| *to != from) {
            let asked = ways.iter().filter(|it| **it == (from, to)).count();
            assert!(asked > ways.len() / 15, "{from:?} to {to:?}: {asked}");
        }
    }
}

#[test]
fn each_level_asks_more_than_the_one_before() {
    let all: Vec<_> = tasks(Kind::Corrections, 200).collect();
    let of = |level: u8| all.iter().filter(move |it| it.id.level == level);
    let is_even = |level: u8, step: f64| {
        of(level).all(|it| match it.paper {
            Some(Paper::Correction { heading_deg, .. }) => heading_deg % step == 0.0,
            _ => true,
        })
    };
    assert!(is_even(1, 90.0) && is_even(2, 5.0));
    assert!(!is_even(2, 90.0) && !is_even(3, 5.0));
    let lettered = |level: u8, asked: char| {
        of(level).any(
            |it| matches!(it.paper, Some(Paper::Coefficient { letter, .. }) if letter == asked),
        )
    };
    assert!(!lettered(1, 'A'));
    assert!(lettered(2, 'A') && lettered(2, 'B') && lettered(2, 'C') && !lettered(2, 'E'));
    assert!(lettered(3, 'E'));
}

#[test]
fn the_sums_come_out_and_every_slip_is_wrong() {
    for task in tasks(Kind::Corrections, 1000) {
        let (answer, apart): (f64, fn(f64) -> f64) = match task.paper.as_ref().unwrap() {
            Paper::Correction {
                from,
                to,
                heading_deg,
                variation_deg,
                card_deg,
            } => {
                let magnetic = match from {
                    North::True => heading_deg - variation_deg,
                    North::Magnetic => *heading_deg,
                    North::Compass => heading_deg + deviation(card_deg, *heading_deg),
                };
                let answer = match to {
                    North::True => magnetic + variation_deg,
                    North::Magnetic => magnetic,
                    North::Compass => compass_for(card_deg, magnetic),
                };
                (answer, folded)
            }
            Paper::Coefficient {
                letter,
                deviations_deg: [n, e, s, w],
            } => {
                let answer = match letter {
                    'A' => (n + e + s + w) / 4.0,
                    'B' => (e - w) / 2.0,
                    'C' => (n - s) / 2.0,
                    'E' => (n + s - e - w) / 4.0,
                    other => panic!("{other}"),
                };
                (answer, |it| it)
            }
        };
        let number = |text: &str| {
            let value = number_after(text.trim_start_matches(['+', '-']), "");
            if text.starts_with('-') { -value } else { value }
        };
        assert!(
            apart(number(right(&task)) - answer).abs() <= 0.51,
            "{answer}: {task:?}"
        );
        for wrong in task.choices.iter().filter(|it| !it.right) {
            assert!(apart(number(&wrong.text) - answer).abs() >= 2.0, "{task:?}");
        }
    }
}
