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
use super::kind::Kind;
use super::task::{Choice, DrillError, Task, TaskId};

pub(super) fn draw(id: &TaskId, dice: &mut Dice) -> Result<Option<Task>, DrillError> {
    match id.kind {
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

/// Choices in the order given, of which the one at an index is right.
fn choices<const N: usize>(texts: [&str; N], right: usize) -> Vec<Choice> {
    let of = |(index, text): (usize, &str)| Choice {
        text: text.to_owned(),
        right: index == right,
    };
    texts.into_iter().enumerate().map(of).collect()
}
