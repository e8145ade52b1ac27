//! What a picture shows, in whole numbers: what its sentence is made from.

use compass::heading::{CompassHeading, MagneticHeading};

/// A side of the lubber line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Left of it.
    Left,
    /// Right of it.
    Right,
    /// On it.
    Middle,
}

/// What a picture shows, in whole degrees; nothing that it hides.
///
/// The words are the caller's: this crate knows no language.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Figures {
    /// The magnetic heading, 1 to 360, where it is shown.
    pub heading: Option<u16>,
    /// The compass reading, 1 to 360, where it is shown.
    pub reading: Option<u16>,
    /// Reading less heading, −179 to 180, where both are shown: the difference of the two whole
    /// numbers above, so that whoever subtracts them agrees.
    pub difference: Option<i16>,
    /// On which side of the lubber line the heading's numeral stands on the card, where both
    /// are shown.
    pub side: Option<Side>,
    /// The angle between the card's axis and the bowl's, 0 to 180, where the card is shown.
    pub tilt: Option<u16>,
    /// Whether the card is shown and touches its stop.
    pub at_stop: bool,
}

impl Figures {
    /// The figures of a heading and a reading, either of them perhaps hidden.
    pub(crate) fn of(heading: Option<MagneticHeading>, reading: Option<CompassHeading>) -> Self {
        let heading = heading.map(MagneticHeading::whole_degrees);
        let reading = reading.map(CompassHeading::whole_degrees);
        let difference = heading.zip(reading).map(|(heading, reading)| {
            // Both lie in 1 to 360, so this lies in −359 to 359.
            let difference = i32::from(reading) - i32::from(heading);
            let folded = (difference + 179).rem_euclid(360) - 179;
            folded as i16
        });
        let side = difference.map(|difference| match difference {
            0 => Side::Middle,
            1.. => Side::Right,
            _ => Side::Left,
        });
        Self {
            heading,
            reading,
            difference,
            side,
            tilt: None,
            at_stop: false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn difference(heading: f64, reading: f64) -> Option<i16> {
        Figures::of(
            Some(MagneticHeading::from_degrees(heading)),
            Some(CompassHeading::from_degrees(reading)),
        )
        .difference
    }

    #[test]
    fn the_difference_is_that_of_the_figures_shown() {
        assert_eq!(difference(7.4, 344.6), Some(-22), "345 less 007");
        assert_eq!(difference(350.0, 2.0), Some(12));
        assert_eq!(difference(90.0, 270.0), Some(180));
        assert_eq!(difference(270.0, 90.0), Some(180));
        assert_eq!(difference(359.8, 0.2), Some(0));
    }

    #[test]
    fn what_is_hidden_is_not_told() {
        let figures = Figures::of(None, Some(CompassHeading::from_degrees(10.0)));
        assert_eq!(figures.heading, None);
        assert_eq!(figures.difference, None);
        assert_eq!(figures.side, None);
    }
}
