//! Drills: tasks generated from the simulation by a seed, explained, and marked from the record
//! of what was flown.
//!
//! A [`TaskId`] says which task: the same gives the same one, natively and in the browser.
//! [`generate`] makes it: a situation, a flight as a scenario file, a question, and either
//! answers to choose from or what the flight is marked against. [`mark`](mark::mark) marks a
//! [`Record`](record::Record) by nothing but itself.
//!
//! An instructor's [`PracticeSet`](set::PracticeSet) names tasks; a student's
//! [`Results`](results::Results) come back with records and marks, and a
//! [`ClassTable`](class_table::ClassTable) gathers them. For course platforms results become
//! [`xapi`] statements, and tasks that are asked in words a [`qti`] package.
//!
//! The turn of a timed turn can be flown by the compass too, as a roll-out that says so in its
//! [`TaskId::of_timed_turn`]; [`ways`] sets both side by side.
//!
//! [`Practice`](practice::Practice) says when to practise which class of situations, [`queue`] what
//! that comes to on a day; [`Kept`](kept::Kept) is all of it as one file.
//!
//! # No tricks at the borders
//! A task is drawn, computed, and drawn again unless it is clear:
//!
//! - an error is asked about as lag, lead or a shown turn from 4° on, and as agreement up to 1°;
//!   between the two nothing is asked;
//! - the simulated float and the closed form of [`compass::steady`], which share no code, must
//!   give the same answer;
//! - a wrong answer differs from the right one by as much as the error itself, at least 6°, and
//!   the rule of thumb comes nearest to the right one;
//! - a reading to roll out at is one that the card shows for the first time when it is due.
//!
//! The hardest to ask fairly is [`NameTheCause`](Kind::NameTheCause), since several causes act in
//! one flight. There every cause that acts in the stretch is taken away in turn and the flight
//! flown again: the one that is named must take at least two thirds of the error with it, and
//! none of the others more than a third. See the `cause` module.

mod class;
pub mod class_table;
mod course;
mod dice;
mod gyro;
mod identifier;
mod identity;
pub mod kept;
mod kind;
mod kinds;
pub mod mark;
pub mod practice;
pub mod progress;
pub mod qti;
pub mod queue;
pub mod record;
pub mod results;
pub mod set;
mod task;
mod turning;
pub mod ways;
mod words;
pub mod xapi;

pub use class::{Class, Hemisphere, Manoeuvre, Octant};
pub use identity::{DrillError, LATITUDE, LEVEL, TOLERANCE, TaskId};
pub use kind::Kind;
pub use task::{Aim, Choice, Explanation, Flight, North, Paper, Task};

use compass::range::Range;
use compass::unit::Unit;
use dice::Dice;

/// How many tasks can be asked for at once; chosen: computing that many takes some seconds.
pub const COUNT: Range = Range::new("number of tasks", Unit::Number, 1.0, 500.0);

/// How often a task is drawn again before it is given up. Chosen: the kind that is drawn again
/// most takes some twenty draws on the average.
const DRAWS: u32 = 400;

/// How many numbers are looked through for each task wanted, where some give one that was had
/// before; chosen.
const LOOKED_THROUGH: u32 = 8;

/// An error from which on it is asked as one, degrees.
const CLEAR_DEG: f64 = 4.0;
/// An error up to which it is asked as none, degrees.
const NONE_DEG: f64 = 1.0;

/// The task that an identity stands for.
///
/// # Errors
/// A value beyond its range, or no fair task among many draws.
pub fn generate(id: &TaskId) -> Result<Task, DrillError> {
    id.check()?;
    let mut dice = Dice::of(id);
    for _ in 0..DRAWS {
        if let Some(task) = kinds::draw(id, &mut dice)? {
            return Ok(task);
        }
    }
    Err(DrillError::NoneFair {
        kind: id.kind,
        seed: id.seed,
        number: id.number,
    })
}

/// So many tasks, from this one's number on, no two alike: a number that gives one that was had
/// before is left out.
///
/// # Errors
/// As of [`generate`]; a count beyond [`COUNT`], or more than there are.
pub fn generate_some(first: &TaskId, count: u32) -> Result<Vec<Task>, DrillError> {
    COUNT
        .accept(f64::from(count))
        .map_err(|reason| DrillError::OutOfRange {
            field: "count",
            reason,
        })?;
    let mut tasks: Vec<Task> = Vec::with_capacity(count as usize);
    for number in (0..LOOKED_THROUGH * count).map(|it| first.number.wrapping_add(it)) {
        let task = generate(&TaskId { number, ..*first })?;
        if tasks.iter().all(|had| had.differs_from(&task)) {
            tasks.push(task);
        }
        if tasks.len() == count as usize {
            return Ok(tasks);
        }
    }
    Err(DrillError::TooFew {
        kind: first.kind,
        found: tasks.len(),
        wanted: count,
    })
}
