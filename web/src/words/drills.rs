//! The words of the page of drills.

use super::play::PlayWords;
use crate::drills::Part;

/// The words of the page of drills.
pub(crate) struct DrillWords {
    pub(crate) parts: &'static str,
    pub(crate) part: fn(Part) -> &'static str,
    /// A task that is put, and the form that chooses one.
    pub(crate) play: &'static PlayWords,
}

impl DrillWords {
    /// The words that come nearest to a BCP 47 tag. They stand apart from [`super::Words`], so
    /// that other pages do not load them.
    pub(crate) fn for_tag(_tag: &str) -> &'static Self {
        &super::en_drills::DRILLS
    }
}
