//! English, for what was flown, replayed or taken home.

use super::en::{ENGLISH, clock, factor};
use super::{Button, TimeWords};
use crate::stretch::Stretch;

/// The words for what was flown, replayed or taken home.
pub(super) const TIME: TimeWords = TimeWords {
    replaying: |rate| {
        if rate == 1.0 {
            "Replay".to_owned()
        } else {
            format!("Replay, {}", factor(rate))
        }
    },
    replay: Button {
        label: "Replay",
        name: "Replay what was flown from here, or from the start",
    },
    pause_replay: Button {
        label: "Pause",
        name: "Pause the replay",
    },
    loops: |stretch| match stretch {
        Stretch::None => Button {
            label: "Loop from",
            name: "Loop from here: mark the start of a stretch to replay over and over",
        },
        Stretch::Begun(_) => Button {
            label: "Loop to",
            name: "Loop to here: mark the end of the stretch",
        },
        Stretch::Whole(..) => Button {
            label: "No loop",
            name: "No loop: clear the marked stretch",
        },
    },
    loop_told: |stretch| match (stretch, stretch.seconds()) {
        (Stretch::Whole(..), Some([from, to])) => format!(
            "Loop from {} to {}. Replay plays it over and over.",
            clock(from),
            clock(to)
        ),
        (Stretch::Begun(_), Some([from, _])) => format!(
            "Loop from {}. Go to another moment and mark the end, at least half a second away.",
            clock(from)
        ),
        _ => "Loop cleared.".to_owned(),
    },
    read_off: |sample| {
        format!(
            "{}: heading {:03}°, compass {:03}°, {}",
            clock(sample.time),
            sample.heading.whole_degrees(),
            sample.reading.whole_degrees(),
            (ENGLISH.difference)(sample.difference())
        )
    },
    save_png: Button {
        label: "PNG",
        name: "PNG: save the chart as a picture of dots",
    },
    save_flight: Button {
        label: "Flight",
        name: "Flight: save it as a file that can be flown again",
    },
    not_saved: "This flight began in the middle of a script, so no file can hold it.",
    key_replay: "Replay; loop a stretch",
};
