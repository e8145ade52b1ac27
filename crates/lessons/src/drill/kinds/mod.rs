//! How each kind of task is drawn: a task, or nothing where the draw is not clear.

mod cause;
mod corrections;
mod gyro;
mod hold;
mod ideal;
mod predict;
mod predict_speed;
mod read;
mod roll_out;
mod timed_turn;

use super::dice::Dice;
use super::identity::{DrillError, TaskId};
use super::kind::Kind;
use super::task::{Choice, Task};

pub(super) fn draw(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    match id.drawn_as() {
        Kind::Predict => predict::draw(id, dice),
        Kind::Read => read::draw(id, dice),
        Kind::RollOut => roll_out::draw(id, dice),
        Kind::TimedTurn => timed_turn::draw(id, dice),
        Kind::HoldHeading => hold::draw(id, dice),
        Kind::SetGyro => gyro::draw(id, dice),
        Kind::NameTheCause => cause::draw(id, dice),
        Kind::Corrections => corrections::draw(id, dice),
    }
}

/// Choices in the order given, each with a short name, of which the one at an index is right.
fn choices<const N: usize>(texts: [[&str; 2]; N], right: usize) -> Vec<Choice> {
    let [_, truth] = texts[right];
    let of = |(index, [text, name]): (usize, [&str; 2])| Choice {
        text: text.to_owned(),
        right: index == right,
        slip: slip(name, truth),
    };
    texts.into_iter().enumerate().map(of).collect()
}

/// The mistake of taking one thing for another; nothing where they are the same.
fn slip(taken: &str, truth: &str) -> String {
    if taken == truth {
        String::new()
    } else {
        format!("took {truth} for {taken}")
    }
}
