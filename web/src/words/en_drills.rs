//! English, for the page of drills.

use super::drills::DrillWords;
use super::en_play::PLAY;
use crate::drills::Part;

/// The page of drills.
pub(super) static DRILLS: DrillWords = DrillWords {
    parts: "Parts of this page",
    part: |part| match part {
        Part::Today => "Today",
        Part::Practise => "Practise",
        Part::Progress => "Progress",
        Part::Kept => "Kept here",
    },
    play: &PLAY,
};
