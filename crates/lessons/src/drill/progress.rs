//! How practice goes, as figures to be drawn.

use super::class::{Class, Manoeuvre, Octant};
use super::identity::LEVEL;
use super::kept::{Logged, Settings};
use super::kind::Kind;
use super::mark::Outcome;
use super::practice::{Practice, Practised};
use super::queue::level_of;

/// How well something is remembered.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Skill {
    /// The mean chance of recalling it on the day, 0 to 1; none where it was never practised.
    pub recall: Option<f64>,
    /// How many classes it is the mean of.
    pub classes: usize,
}

/// The octants from north round.
pub const OCTANTS: [Octant; 8] = [
    Octant::N,
    Octant::NE,
    Octant::E,
    Octant::SE,
    Octant::S,
    Octant::SW,
    Octant::W,
    Octant::NW,
];

/// How well turns about each octant, from north round, are remembered on a day: left, then right;
/// of one kind or of all.
pub fn skill_in_turns(practice: &Practice, kind: Option<Kind>, day: u32) -> [[Skill; 2]; 8] {
    OCTANTS.map(|octant| {
        [Manoeuvre::LeftTurn, Manoeuvre::RightTurn].map(|manoeuvre| {
            skill(practice, day, |it| {
                it.octant == octant
                    && it.manoeuvre == manoeuvre
                    && kind.is_none_or(|kind| kind == it.kind)
            })
        })
    })
}

fn skill(practice: &Practice, day: u32, of: impl Fn(&Class) -> bool) -> Skill {
    let recalls: Vec<f64> = (practice.classes.iter())
        .filter(|it| of(&it.class))
        .map(|it| it.recall(day))
        .collect();
    Skill {
        recall: mean(&recalls),
        classes: recalls.len(),
    }
}

/// The chance of recalling a class, or the mean over all that were practised, on each day from
/// today on, if nothing more is practised; nothing where nothing was.
pub fn forgetting(practice: &Practice, class: Option<&Class>, today: u32, days: u32) -> Vec<f64> {
    let of = |it: &&Practised| class.is_none_or(|class| it.class == *class);
    let chosen: Vec<&Practised> = practice.classes.iter().filter(of).collect();
    let on = |day: u32| {
        let recalls: Vec<f64> = chosen.iter().map(|it| it.recall(day)).collect();
        mean(&recalls)
    };
    (0..=days)
        .map_while(|ahead| on(today.saturating_add(ahead)))
        .collect()
}

/// How long was practised on each of so many days up to today, the earliest first; seconds.
pub fn seconds_by_day(answers: &[Logged], today: u32, days: u32) -> Vec<(u32, f64)> {
    let first = today.saturating_sub(days.saturating_sub(1));
    (first..=today)
        .map(|day| (day, seconds(answers, |it| it.day == day)))
        .collect()
}

/// How long each kind was practised on so many days up to today; seconds.
pub fn seconds_by_kind(answers: &[Logged], today: u32, days: u32) -> [(Kind, f64); 8] {
    let first = today.saturating_sub(days.saturating_sub(1));
    let lately = |it: &Logged| (first..=today).contains(&it.day);
    Kind::ALL.map(|kind| {
        let of_kind = seconds(answers, |it| lately(it) && it.task.kind == kind);
        (kind, of_kind)
    })
}

fn seconds(answers: &[Logged], of: impl Fn(&Logged) -> bool) -> f64 {
    let those = answers.iter().filter(|it| of(it));
    those.map(|it| it.seconds).sum()
}

/// How many answers of a kind it takes to say how it goes; chosen.
const TELLING: usize = 3;
/// A share of passed answers from which on a kind goes well; chosen, near what is to be recalled.
const GOES_WELL: f64 = 0.8;

/// The kind that goes least well on so many days up to today, with how many of its answers passed
/// and how many were marked; none where all that was answered often enough goes well.
pub fn weakest(answers: &[Logged], today: u32, days: u32) -> Option<(Kind, usize, usize)> {
    let first = today.saturating_sub(days.saturating_sub(1));
    let lately = |it: &&Logged| (first..=today).contains(&it.day);
    let marked = |kind: Kind, outcome: Outcome| {
        let of_kind = answers.iter().filter(lately);
        of_kind
            .filter(|it| it.task.kind == kind && it.outcome == outcome)
            .count()
    };
    let kinds = Kind::ALL.map(|kind| {
        let passed = marked(kind, Outcome::Passed);
        (kind, passed, passed + marked(kind, Outcome::Failed))
    });
    let share = |it: &(Kind, usize, usize)| it.1 as f64 / it.2 as f64;
    let telling = kinds.into_iter().filter(|it| it.2 >= TELLING);
    telling
        .filter(|it| share(it) < GOES_WELL)
        .min_by(|a, b| share(a).total_cmp(&share(b)))
}

/// How many classes were answered for the first time on a day.
pub fn new_on(answers: &[Logged], day: u32) -> usize {
    let on_it = answers.iter().filter(|it| it.day == day);
    let mut first: Vec<&Class> = Vec::new();
    for it in on_it {
        let before = (answers.iter()).any(|had| had.class == it.class && had.day < day);
        if !before && !first.contains(&&it.class) {
            first.push(&it.class);
        }
    }
    first.len()
}

/// In how many days the next class is due, of those that are not due today.
pub fn next_due_in(practice: &Practice, today: u32) -> Option<u32> {
    let later = practice.classes.iter().map(Practised::due_on);
    let later = later.filter(|it| *it > f64::from(today));
    let next = later.min_by(f64::total_cmp)?;
    Some((next - f64::from(today)) as u32)
}

fn mean(of: &[f64]) -> Option<f64> {
    (!of.is_empty()).then(|| of.iter().sum::<f64>() / of.len() as f64)
}

/// How many of the classes that were practised have grown to the hardest level.
pub fn grown(practice: &Practice, settings: &Settings) -> usize {
    let classes = practice.classes.iter().map(|it| &it.class);
    classes
        .filter(|it| level_of(it, settings, practice) == LEVEL.most as u8)
        .count()
}

/// The class that is least surely recalled on a day; none where nothing was practised.
pub fn least_remembered(practice: &Practice, day: u32) -> Option<&Practised> {
    let all = practice.classes.iter();
    all.min_by(|a, b| a.recall(day).total_cmp(&b.recall(day)))
}
