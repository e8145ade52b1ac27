//! The words of the page of sets.

use crate::sets::{Fault, Field, Part};
use lessons::drill::Kind;
use lessons::drill::record::Help;

/// The words of the page of sets.
pub(crate) struct SetWords {
    pub(crate) parts: &'static str,
    pub(crate) part: fn(Part) -> &'static str,
    /// What a kind of task is called.
    pub(crate) kind: fn(Kind) -> &'static str,
    pub(crate) compose: ComposeWords,
    pub(crate) hand_out: HandOutWords,
    pub(crate) preview: PreviewWords,
    pub(crate) class: ClassWords,
}

impl SetWords {
    /// The words that come nearest to a BCP 47 tag. They stand apart from [`super::Words`], so
    /// that other pages do not load them.
    pub(crate) fn for_tag(_tag: &str) -> &'static Self {
        &super::en_sets::SETS
    }
}

/// The words for composing a set.
pub(crate) struct ComposeWords {
    pub(crate) form: &'static str,
    pub(crate) label: fn(Field) -> &'static str,
    pub(crate) hint: fn(Field) -> &'static str,
    pub(crate) order: &'static str,
    pub(crate) as_given: &'static str,
    pub(crate) mixed: &'static str,
    pub(crate) allowed: &'static str,
    pub(crate) help: fn(Help) -> &'static str,
    pub(crate) tasks: &'static str,
    /// A part's group, by its place from 0.
    pub(crate) nth: fn(usize) -> String,
    pub(crate) kind: &'static str,
    pub(crate) level: &'static str,
    pub(crate) how_hard: fn(u8) -> &'static str,
    pub(crate) earlier: &'static str,
    pub(crate) later: &'static str,
    pub(crate) remove: &'static str,
    pub(crate) add: &'static str,
    pub(crate) undo: &'static str,
    pub(crate) redo: &'static str,
    pub(crate) open: &'static str,
    pub(crate) new: &'static str,
    pub(crate) fault: fn(Field, &Fault) -> String,
    pub(crate) mend: &'static str,
    /// Why a file was not opened.
    pub(crate) refused: fn(&str) -> String,
    pub(crate) unread: &'static str,
}

/// The words for handing a set out.
pub(crate) struct HandOutWords {
    pub(crate) title: &'static str,
    pub(crate) hint: &'static str,
    pub(crate) save: &'static str,
    pub(crate) open: &'static str,
    pub(crate) qti: &'static str,
    /// Takes how many tasks the package has and how many it leaves out.
    pub(crate) qti_note: fn(usize, usize) -> String,
    pub(crate) qti_failed: &'static str,
}

/// The words for looking at a set's tasks.
pub(crate) struct PreviewWords {
    pub(crate) title: &'static str,
    pub(crate) hint: &'static str,
    pub(crate) one: &'static str,
    pub(crate) all: &'static str,
    pub(crate) right: &'static str,
    pub(crate) flown: &'static str,
    pub(crate) why: &'static str,
    /// Takes how many are made, and how many there are to be.
    pub(crate) progress: fn(usize, usize) -> String,
    pub(crate) cancel: &'static str,
    pub(crate) list: &'static str,
}

/// The words for a class's results.
pub(crate) struct ClassWords {
    pub(crate) title: &'static str,
    pub(crate) about: &'static str,
    pub(crate) choose: &'static str,
    pub(crate) drop: &'static str,
    /// Takes the file, and how many answers of it are marked again.
    pub(crate) progress: fn(&str, usize) -> String,
    /// Takes how many files are left.
    pub(crate) left: fn(usize) -> String,
    pub(crate) cancel: &'static str,
    pub(crate) cancelled: &'static str,
    pub(crate) refused: &'static str,
    pub(crate) kept: &'static str,
    /// Takes how many answers a file has, and how many of its marks were changed.
    pub(crate) file: fn(usize, usize) -> String,
    pub(crate) remove: fn(&str) -> String,
    pub(crate) unread: &'static str,
    pub(crate) too_long: &'static str,
    /// Takes the file that is the same.
    pub(crate) same: fn(&str) -> String,
    /// Takes of how many sets the results are.
    pub(crate) sets: fn(usize) -> String,
    pub(crate) table: &'static str,
    pub(crate) student: &'static str,
    pub(crate) total: &'static str,
    pub(crate) unanswered: &'static str,
    pub(crate) everyone: &'static str,
    pub(crate) score: fn(usize, usize) -> String,
    pub(crate) mistakes: &'static str,
    pub(crate) no_mistakes: &'static str,
    /// Takes a mistake, how often it was made and by how many.
    pub(crate) mistake: fn(&str, usize, usize) -> String,
    pub(crate) csv: &'static str,
    pub(crate) json: &'static str,
    pub(crate) xapi: &'static str,
    pub(crate) xapi_note: &'static str,
    pub(crate) clear: &'static str,
}
