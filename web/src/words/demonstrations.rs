//! The words of the demonstrations: their player, their list, their lesson plans.

use super::Button;
use lessons::demonstration::{Demonstration, Posed};

/// A group of the list: what it is called, and the places of its demonstrations.
pub(crate) type Group = (&'static str, Vec<usize>);

/// The words of the demonstrations.
pub(crate) struct DemonstrationWords {
    /// The list, and the way to it.
    pub(crate) title: &'static str,
    /// For the list of keys: page down and page up.
    pub(crate) keys: &'static str,

    // The player.
    pub(crate) player: &'static str,
    pub(crate) play: Button,
    pub(crate) pause: Button,
    pub(crate) last_cue: Button,
    pub(crate) next_cue: Button,
    pub(crate) again: Button,
    pub(crate) chapter: &'static str,
    pub(crate) captions: Button,
    pub(crate) loops: Button,
    pub(crate) take_controls: Button,
    pub(crate) flying: &'static str,
    pub(crate) come_back: Button,
    pub(crate) leave: Button,
    pub(crate) change: Button,
    /// The opening of a demonstration, told: its title and what to look for.
    pub(crate) opened: fn(&str, &str) -> String,
    /// It stands still at a cue.
    pub(crate) stands: &'static str,

    // The question.
    pub(crate) hands: &'static str,
    /// Takes the choice.
    pub(crate) hands_for: fn(&str) -> String,
    /// Takes what was typed.
    pub(crate) hands_wrong: fn(&str) -> String,
    /// Takes how many raised their hands.
    pub(crate) counted: fn(u16) -> String,
    pub(crate) right: &'static str,
    pub(crate) not_right: &'static str,
    /// Takes what was measured.
    pub(crate) measured: fn(&str) -> String,
    /// Told when it is asked, and when it is answered.
    pub(crate) asked: fn(&Posed) -> String,
    pub(crate) answered: fn(&Posed) -> String,

    // The end.
    pub(crate) rule: &'static str,
    /// Takes a title.
    pub(crate) next: fn(&str) -> String,

    // The list.
    pub(crate) about: &'static str,
    pub(crate) latitude: &'static str,
    pub(crate) as_made: &'static str,
    pub(crate) to_as_made: &'static str,
    /// Takes how many are measured, and how many there are.
    pub(crate) measuring: fn(usize, usize) -> String,
    /// Takes the figure that says most.
    pub(crate) headline: fn(&str) -> String,
    /// The groups of the list.
    pub(crate) groups: fn(&[Demonstration]) -> Vec<Group>,
    pub(crate) open_file: &'static str,
    /// Takes the file's length and the longest there may be, in bytes.
    pub(crate) too_long: fn(f64, f64) -> String,
    pub(crate) unreadable: &'static str,
    /// An address that names none: takes the name.
    pub(crate) not_found: fn(&str) -> String,
    /// An address with such a latitude.
    pub(crate) no_latitude: fn(&str) -> String,

    // The lesson plan.
    pub(crate) plan: Button,
    pub(crate) print: Button,
    pub(crate) close_plan: Button,
    /// Takes minutes in all.
    pub(crate) notes: fn(f64) -> String,
    pub(crate) minutes: fn(f64) -> String,
    pub(crate) course: &'static str,
    /// Takes seconds of flight.
    pub(crate) clock: fn(f64) -> String,
    pub(crate) plan_stop: &'static str,
    pub(crate) plan_answer: &'static str,
    /// The question, its choices and which is right.
    pub(crate) plan_question: fn(&Posed) -> String,
    /// Takes a figure's name and what it says.
    pub(crate) figure: fn(&str, &str) -> String,
    pub(crate) figures: &'static str,
}
