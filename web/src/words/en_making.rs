//! English, for making demonstrations.

use super::en::clock;
use super::{Button, MakingWords};
use crate::making::{Refused, Saved};
use lessons::demonstration::{Act, Answer, Compare, Cover, Cue, Part, Speed, View};
use lessons::making::{Entry, Kind};

/// The words for making demonstrations.
pub(super) const MAKING: MakingWords = MakingWords {
    title: "Make a demonstration",
    make: Button {
        label: "Make",
        name: "Make a demonstration",
    },
    make_of_flight: Button {
        label: "Demonstration",
        name: "Demonstration: make one of this flight",
    },
    of_flight: Button {
        label: "Of this flight",
        name: "Of this flight: make a demonstration of the flight so far",
    },
    close: Button {
        label: "Close",
        name: "Close: back to your own flight",
    },
    saved: |saved| match saved {
        Saved::Yes => "Saved in this browser",
        Saved::Soon => "Saving…",
        Saved::No(why) => not_kept(why),
    },
    not_kept,

    mine: |count| format!("My demonstrations ({count})"),
    none_yet: "None yet. Fly something and make one of it, or open a file.",
    untitled: "Without a title",
    unreadable: "Cannot be read, and is kept: save it as a file",
    unreadable_told: |reason| {
        format!("This demonstration cannot be read, and is kept as it is: {reason}.")
    },
    gone: "This demonstration is no longer there: another tab may have deleted it.",
    both_kept: "Another tab changed this demonstration too. Both are kept: this one is a copy now.",
    open_file: "Open a file",
    file_too_long: "This file is too long for a demonstration: it may have 16 MB.",
    file_unread: "This file could not be read.",
    delete: |title| format!("Delete {title}"),
    deleted: |title| format!("Deleted: {title}"),
    put_back: Button {
        label: "Put back",
        name: "Put back what was deleted",
    },
    first_title: "My demonstration",
    copy_of: |title| format!("{title} (copy)"),
    no_file_of_flight: "This flight began in the middle of a script, so no demonstration can be made of it.",

    play: |plays| {
        if plays {
            Button {
                label: "Pause",
                name: "Pause",
            }
        } else {
            Button {
                label: "Play",
                name: "Play the flight, to put cues while it plays",
            }
        }
    },
    preview: |previews| {
        if previews {
            Button {
                label: "End preview",
                name: "End preview",
            }
        } else {
            Button {
                label: "Preview",
                name: "Preview: play it with its cues, as a class sees it",
            }
        }
    },
    undo: Button {
        label: "Undo",
        name: "Undo the last change",
    },
    redo: Button {
        label: "Redo",
        name: "Redo what was undone",
    },
    undone: "Undone.",
    redone: "Done again.",
    save_file: Button {
        label: "Save file",
        name: "Save file: take it home",
    },
    duplicate: Button {
        label: "Duplicate",
        name: "Duplicate: go on with a copy",
    },
    not_yet: |count, first| {
        let more = match count - 1 {
            0 => String::new(),
            1 => " One thing more is to be mended.".to_owned(),
            more => format!(" {more} things more are to be mended."),
        };
        format!("It cannot be played yet: {}.{more}", first.said)
    },

    cues: "Cues",
    keys_hint: "Space plays; a figure puts a cue. J starts it here, K ends it here, U undoes.",
    kind,
    sign: |act| match act {
        Act::Chapter(_) => "Part",
        Act::Caption(_) => "Text",
        Act::Speed(speed) => factor(*speed),
        Act::Freeze => "Stop",
        Act::Highlight(_) => "Point",
        Act::Ask(_) => "Ask",
        Act::Cover(_) => "Hide",
        Act::Reveal => "Show",
        Act::Compare(_) => "Two",
        Act::SetIndicator => "Set",
    },
    cue: |cue: &Cue| {
        let name = kind(Kind::of(&cue.act));
        let says = match &cue.act {
            Act::Chapter(text) | Act::Caption(text) => text.clone(),
            Act::Ask(question) => question.question.clone(),
            Act::Freeze | Act::Reveal | Act::SetIndicator => String::new(),
            act => offer(act),
        };
        if says.is_empty() {
            name.to_owned()
        } else {
            format!("{name}: {says}")
        }
    },
    put: |name, time| format!("{} at {}.", kind(name), clock(time)),
    offer,
    offered: |kind| match kind {
        Kind::Speed => "From now on",
        Kind::Highlight => "Pointed at",
        Kind::Cover => "Covered",
        Kind::Compare => "Second situation",
        Kind::Ask => "Answered by",
        _ => "",
    },
    lane: "Cues along the flight",
    time: clock,
    duplicate_cue: Button {
        label: "Duplicate",
        name: "Duplicate this cue, a second later",
    },
    delete_cue: Button {
        label: "Delete",
        name: "Delete this cue",
    },
    right: |number| format!("Choice {number} is right"),
    remove_choice: |number| format!("Remove choice {number}"),
    add_choice: Button {
        label: "Add a choice",
        name: "Add a choice",
    },

    label,
    hint: |entry| match entry {
        Entry::Name => "For links and files: lower-case letters, figures, hyphens.",
        Entry::Latitude => "Degrees, north positive. The same flight, flown there.",
        Entry::From => "Seconds. The flight before it is flown, but not shown.",
        Entry::To => "Seconds; empty for the flight’s end.",
        Entry::CueTime(_) => "Seconds.",
        Entry::LookFor => "What the class is to watch.",
        Entry::Rule => "The rule of thumb, told after.",
        _ => "",
    },
    trim: "Start, end and place",
    start_here: Button {
        label: "Start here",
        name: "Start here: play from this moment on",
    },
    end_here: Button {
        label: "End here",
        name: "End here: play until this moment",
    },
    shown: "What is shown",
    view: |view| match view {
        View::Rose => "Rose",
        View::Track => "Track",
        View::Indicator => "Heading indicator",
        View::Reasons => "Why",
        View::Timeline => "Timeline",
        View::ErrorChart => "Error against heading",
    },
    told: "What is told",
    figures: |names| {
        if names.is_empty() {
            "A figure measured on the flight can be told in any text.".to_owned()
        } else {
            format!("Texts can tell what was measured: {names}.")
        }
    },
    measure: Button {
        label: "Measure here",
        name: "Measure here: the lag or lead at this moment, to be told and asked about",
    },
    notes: |count| format!("Speaking notes ({count})"),
    add_note: Button {
        label: "Add a note",
        name: "Add a note",
    },
    remove_note: |number| format!("Remove note {number}"),
};

fn not_kept(why: Refused) -> &'static str {
    match why {
        Refused::Blocked => {
            "Not saved: this browser keeps nothing for this page. Save it as a file before you leave."
        }
        Refused::Full => {
            "Not saved: there is no room left in this browser. Save it as a file, or delete another."
        }
    }
}

fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Chapter => "Chapter",
        Kind::Caption => "Caption",
        Kind::Speed => "Speed",
        Kind::Freeze => "Freeze",
        Kind::Highlight => "Highlight",
        Kind::Ask => "Question",
        Kind::Cover => "Cover",
        Kind::Reveal => "Reveal",
        Kind::Compare => "Compare",
        Kind::SetIndicator => "Set indicator",
    }
}

fn factor(speed: Speed) -> &'static str {
    match speed {
        Speed::Eighth => "⅛×",
        Speed::Quarter => "¼×",
        Speed::Half => "½×",
        Speed::Real => "1×",
        Speed::Double => "2×",
        Speed::Fourfold => "4×",
        Speed::Eightfold => "8×",
    }
}

fn offer(act: &Act) -> String {
    let said = match act {
        Act::Speed(speed) => factor(*speed),
        Act::Highlight(part) => match part {
            Part::Nothing => "nothing",
            Part::Compass => "the compass",
            Part::Heading => "the heading",
            Part::Beside => "what stands beside the card",
            Part::Reasons => "the reasons",
            Part::Chart => "the chart",
        },
        Act::Cover(cover) => match cover {
            Cover::Nothing => "nothing",
            Cover::Compass => "the compass",
            Cover::Heading => "the heading",
        },
        Act::Compare(compare) => match compare {
            Compare::Alone => "none",
            Compare::OtherHemisphere => "the other hemisphere",
            Compare::LatitudeDeg(_) => "another latitude",
            Compare::NoVerticalField => "no vertical field",
            Compare::NoSwirl => "no swirl",
            Compare::OtherIron => "iron the other way",
        },
        Act::Ask(question) => match &question.answer {
            Answer::Typed { .. } => "choices of your own",
            Answer::Figure(name) => return format!("the flight: {{{name}}}"),
        },
        _ => "",
    };
    said.to_owned()
}

fn label(entry: Entry) -> String {
    let said = match entry {
        Entry::Title => "Title",
        Entry::Name => "Name",
        Entry::From => "Starts at",
        Entry::To => "Ends at",
        Entry::Latitude => "Latitude",
        Entry::LookFor => "Look for",
        Entry::Rule => "Rule",
        Entry::CueTime(_) => "At",
        Entry::CueText(_) => "Words",
        Entry::CueChoice(_, index) => return format!("Choice {}", index + 1),
        Entry::CueLatitude(_) => "Other latitude",
        Entry::NoteMinutes(index) => return format!("Note {}, minutes", index + 1),
        Entry::NoteSay(index) => return format!("Note {}, say", index + 1),
    };
    said.to_owned()
}
