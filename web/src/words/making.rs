//! The words for making demonstrations.

use super::Button;
use crate::making::{Refused, Saved};
use lessons::demonstration::{Act, Cue, View};
use lessons::making::{Entry, Fault, Kind};

/// The words for making demonstrations.
pub(crate) struct MakingWords {
    pub(crate) title: &'static str,
    /// Opens the bench, from anywhere.
    pub(crate) make: Button,
    /// From the timeline, of the flight so far.
    pub(crate) make_of_flight: Button,
    /// The same, on the bench.
    pub(crate) of_flight: Button,
    pub(crate) close: Button,
    pub(crate) saved: fn(Saved) -> &'static str,
    pub(crate) not_kept: fn(Refused) -> &'static str,

    // What is kept.
    /// Takes how many there are.
    pub(crate) mine: fn(usize) -> String,
    pub(crate) none_yet: &'static str,
    pub(crate) untitled: &'static str,
    pub(crate) unreadable: &'static str,
    /// Takes the reason.
    pub(crate) unreadable_told: fn(&str) -> String,
    pub(crate) gone: &'static str,
    pub(crate) both_kept: &'static str,
    pub(crate) open_file: &'static str,
    pub(crate) file_too_long: &'static str,
    pub(crate) file_unread: &'static str,
    /// Takes a title.
    pub(crate) delete: fn(&str) -> String,
    /// Takes a title.
    pub(crate) deleted: fn(&str) -> String,
    pub(crate) put_back: Button,
    pub(crate) first_title: &'static str,
    /// Takes a title.
    pub(crate) copy_of: fn(&str) -> String,
    pub(crate) no_file_of_flight: &'static str,

    // What is done with the one that is open.
    /// Takes whether it plays.
    pub(crate) play: fn(bool) -> Button,
    pub(crate) preview: fn(bool) -> Button,
    pub(crate) undo: Button,
    pub(crate) redo: Button,
    pub(crate) undone: &'static str,
    pub(crate) redone: &'static str,
    pub(crate) save_file: Button,
    pub(crate) duplicate: Button,
    /// Takes how many faults there are, and the first.
    pub(crate) not_yet: fn(usize, &Fault) -> String,

    // Cues.
    pub(crate) cues: &'static str,
    pub(crate) keys_hint: &'static str,
    pub(crate) kind: fn(Kind) -> &'static str,
    /// On its handle.
    pub(crate) sign: fn(&Act) -> &'static str,
    /// A cue in a line.
    pub(crate) cue: fn(&Cue) -> String,
    /// Takes the kind and the time that it was put at.
    pub(crate) put: fn(Kind, f64) -> String,
    /// What a cue can be set to.
    pub(crate) offer: fn(&Act) -> String,
    /// What is set there.
    pub(crate) offered: fn(Kind) -> &'static str,
    pub(crate) lane: &'static str,
    /// Takes seconds.
    pub(crate) time: fn(f64) -> String,
    pub(crate) duplicate_cue: Button,
    pub(crate) delete_cue: Button,
    /// Takes the choice, counted from one.
    pub(crate) right: fn(usize) -> String,
    pub(crate) remove_choice: fn(usize) -> String,
    pub(crate) add_choice: Button,

    // The rest.
    pub(crate) label: fn(Entry) -> String,
    pub(crate) hint: fn(Entry) -> &'static str,
    pub(crate) trim: &'static str,
    pub(crate) start_here: Button,
    pub(crate) end_here: Button,
    pub(crate) shown: &'static str,
    pub(crate) view: fn(View) -> &'static str,
    pub(crate) told: &'static str,
    /// Takes the names of the figures, each in its braces.
    pub(crate) figures: fn(&str) -> String,
    pub(crate) measure: Button,
    /// Takes how many there are.
    pub(crate) notes: fn(usize) -> String,
    pub(crate) add_note: Button,
    /// Takes the note, counted from one.
    pub(crate) remove_note: fn(usize) -> String,
}
