//! What is covered, so that a class can guess it before it is shown.

/// Which of the two readings is covered. Never both: there would be nothing to guess from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Cover {
    /// Both are shown.
    #[default]
    Nothing,
    /// What the compass says.
    Compass,
    /// Where the aircraft is heading.
    Heading,
}

impl Cover {
    /// Whether the compass is shown.
    pub(crate) fn shows_compass(self) -> bool {
        self != Self::Compass
    }

    /// Whether the heading is shown.
    pub(crate) fn shows_heading(self) -> bool {
        self != Self::Heading
    }

    /// Whether both are, and so how they compare.
    pub(crate) fn shows_both(self) -> bool {
        self == Self::Nothing
    }

    /// The next in turn: compass, heading, nothing.
    #[must_use]
    pub(crate) fn next(self) -> Self {
        match self {
            Self::Nothing => Self::Compass,
            Self::Compass => Self::Heading,
            Self::Heading => Self::Nothing,
        }
    }

    /// Covered if it was not; shown if it was.
    #[must_use]
    pub(crate) fn toggled(self, other: Self) -> Self {
        if self == other { Self::Nothing } else { other }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_turns_come_back_and_one_reading_is_always_shown() {
        let mut cover = Cover::Nothing;
        for _ in 0..3 {
            cover = cover.next();
            assert!(cover.shows_compass() || cover.shows_heading());
            assert_eq!(
                cover.shows_both(),
                cover.shows_compass() && cover.shows_heading()
            );
        }
        assert_eq!(cover, Cover::Nothing);
    }

    #[test]
    fn a_second_touch_shows_and_another_moves_the_cover() {
        let compass = Cover::Nothing.toggled(Cover::Compass);
        assert_eq!(compass, Cover::Compass);
        assert_eq!(compass.toggled(Cover::Compass), Cover::Nothing);
        assert_eq!(compass.toggled(Cover::Heading), Cover::Heading);
    }
}
