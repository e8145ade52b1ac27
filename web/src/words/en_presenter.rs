//! English, before a class.

use super::{Button, PresenterWords};
use crate::cover::Cover;

/// The words before a class.
pub(super) const PRESENTER: PresenterWords = PresenterWords {
    present: Button {
        label: "Present",
        name: "Present: fill the screen with card and figures",
    },
    leave: Button {
        label: "Leave",
        name: "Leave presenter mode",
    },
    reveal: Button {
        label: "Reveal",
        name: "Reveal what is covered",
    },
    begun: "Presenter mode. Escape leaves it.",
    ended: "Presenter mode has ended.",
    may_go_dark: "This browser does not keep the screen awake: it may go dark.",
    covered: "Covered",
    question: "What does the card show?",
    cover_compass: "Cover the compass",
    cover_heading: "Cover the magnetic heading",
    covers: |cover| match cover {
        Cover::Nothing => "Both readings are shown.",
        Cover::Compass => "The compass is covered.",
        Cover::Heading => "The magnetic heading is covered.",
    },
    curtain: "The screen is covered: touch it or press . to go on",
    curtain_told: |down| {
        if down {
            "The screen is covered."
        } else {
            "The screen is shown again."
        }
    },
    time: |seconds| {
        let whole = seconds.max(0.0) as u64;
        format!("Time {}:{:02}", whole / 60, whole % 60)
    },
    keys: "While presenting",
    key_present: "Present; cover, reveal",
    key_advance: "Reveal; else pause, fly on",
    key_ask: "Cover the compass: ask",
    key_curtain: "Cover all, show again",
    key_leave: "Leave",
    orbit: "Bowl: arrow keys go round it, Home returns",
};
