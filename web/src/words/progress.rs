//! The words for what is due, how practice goes, and what is kept.

use crate::drills::Fault;
use lessons::drill::practice::Practised;
use lessons::drill::progress::Skill;
use lessons::drill::queue::Queue;
use lessons::drill::record::RecordError;
use lessons::drill::{Class, Kind};

/// The words for what is due, how practice goes, and what is kept.
pub(crate) struct ProgressWords {
    /// What is wrong with the storage.
    pub(crate) fault: fn(Fault) -> String,
    pub(crate) reading: &'static str,
    pub(crate) kind: fn(Kind) -> &'static str,
    /// A class of situations in a few words.
    pub(crate) class: fn(&Class) -> String,
    /// How hard a task is, by its level.
    pub(crate) hard: fn(u8) -> &'static str,
    pub(crate) today: TodayWords,
    pub(crate) going: GoingWords,
    pub(crate) kept: KeptWords,
}

/// The words for the tasks of a day.
pub(crate) struct TodayWords {
    pub(crate) title: &'static str,
    /// Takes the day's tasks and how long they take, in seconds.
    pub(crate) next: fn(&Queue, f64) -> String,
    /// Takes in how many days the next is due, and whether anything was practised today.
    pub(crate) done: fn(Option<u32>, bool) -> String,
    pub(crate) begin: &'static str,
    pub(crate) more: &'static str,
    pub(crate) list: &'static str,
    pub(crate) is_new: &'static str,
    pub(crate) to_refresh: &'static str,
    pub(crate) looking: &'static str,
    pub(crate) take: &'static str,
    /// Takes how many are left with this one.
    pub(crate) left: fn(usize) -> String,
    pub(crate) stop: &'static str,
    /// Takes why there is no task.
    pub(crate) none: fn(&str) -> String,
    pub(crate) settings: SettingsWords,
}

/// The words for what a student chooses.
pub(crate) struct SettingsWords {
    pub(crate) title: &'static str,
    pub(crate) hemisphere: &'static str,
    pub(crate) northern: &'static str,
    pub(crate) southern: &'static str,
    pub(crate) both: &'static str,
    pub(crate) away: &'static str,
    pub(crate) away_hint: &'static str,
    pub(crate) level: &'static str,
    pub(crate) grows: &'static str,
    pub(crate) levels: [&'static str; 3],
    pub(crate) tolerance: &'static str,
    pub(crate) tolerance_hint: &'static str,
    /// Takes what was typed and the allowed least and most, in degrees.
    pub(crate) refused: fn(&str, [f64; 2]) -> String,
}

/// Where a student stands.
pub(crate) struct Standing<'a> {
    /// How many answers there are.
    pub(crate) answers: usize,
    /// On how many days they were given.
    pub(crate) days: usize,
    /// How many classes they were of.
    pub(crate) classes: usize,
    /// How many of those are asked at the hardest level by now; none where the level does not grow.
    pub(crate) grown: Option<usize>,
    /// The class that is remembered least.
    pub(crate) least: Option<&'a Practised>,
    /// The chance of recalling it today, 0 to 1.
    pub(crate) recall: f64,
    /// Whether it is due.
    pub(crate) is_due: bool,
}

/// The words for how practice goes.
pub(crate) struct GoingWords {
    pub(crate) title: &'static str,
    pub(crate) empty: &'static str,
    pub(crate) to_today: &'static str,
    pub(crate) next: fn(&Standing) -> String,
    /// The kind that goes least well: how many passed, and of how many.
    pub(crate) weakest: fn(Kind, usize, usize) -> String,
    pub(crate) practise_it: &'static str,
    pub(crate) which: &'static str,
    pub(crate) all_kinds: &'static str,
    pub(crate) all_classes: &'static str,
    pub(crate) rose: &'static str,
    pub(crate) rose_note: &'static str,
    pub(crate) left: &'static str,
    pub(crate) right: &'static str,
    pub(crate) octants: [&'static str; 8],
    /// Takes a skill: as a percentage, or that there was no practice.
    pub(crate) skill: fn(Skill) -> String,
    pub(crate) rose_said: fn(&[[Skill; 2]; 8]) -> String,
    pub(crate) curve: &'static str,
    pub(crate) curve_note: &'static str,
    pub(crate) now: &'static str,
    pub(crate) days: &'static str,
    pub(crate) refresh: &'static str,
    /// Takes how many days ahead.
    pub(crate) in_days: fn(usize) -> String,
    pub(crate) percent: fn(f64) -> String,
    pub(crate) by_day: &'static str,
    pub(crate) by_kind: &'static str,
    pub(crate) time: &'static str,
    /// Takes a day of the week, 0 for Monday, and how many days ago it is.
    pub(crate) day: fn(usize, u32) -> String,
    pub(crate) spent: fn(f64) -> String,
    pub(crate) figures: &'static str,
    pub(crate) heading: &'static str,
    pub(crate) when: &'static str,
    pub(crate) chance: &'static str,
    pub(crate) kinds: &'static str,
}

/// The words for what is kept.
pub(crate) struct KeptWords {
    pub(crate) title: &'static str,
    pub(crate) private: &'static str,
    /// Takes how many answers, handed-out sets, and begun tasks.
    pub(crate) holds: fn(usize, usize, usize) -> String,
    pub(crate) save: &'static str,
    pub(crate) save_note: &'static str,
    pub(crate) open: &'static str,
    pub(crate) open_note: &'static str,
    pub(crate) delete: &'static str,
    pub(crate) delete_note: &'static str,
    /// Takes the file's answers and those that are here.
    pub(crate) ask_import: fn(usize, usize) -> String,
    pub(crate) add: &'static str,
    pub(crate) replace: &'static str,
    pub(crate) leave: &'static str,
    /// Takes how many answers are here.
    pub(crate) ask_delete: fn(usize) -> String,
    pub(crate) delete_all: &'static str,
    pub(crate) deleted: &'static str,
    pub(crate) imported: fn(usize) -> String,
    pub(crate) undo: &'static str,
    pub(crate) undone: &'static str,
    pub(crate) unread: &'static str,
    pub(crate) too_long: &'static str,
    /// Takes the file's name and what is wrong with it.
    pub(crate) refused: fn(&str, &RecordError) -> String,
}

impl ProgressWords {
    /// The words that come nearest to a BCP 47 tag. They stand apart from [`super::Words`], so
    /// that other pages do not load them.
    pub(crate) fn for_tag(_tag: &str) -> &'static Self {
        &super::en_progress::PROGRESS
    }
}
