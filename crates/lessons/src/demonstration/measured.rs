//! What a figure comes to, as a number and in words.

use super::Aid;

/// A figure, measured. Angles in degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Measured {
    /// Behind the turn; ahead of it where negative.
    Lag(f64),
    /// Reading less heading.
    Error(f64),
    /// The reading drawn towards north; away from it where negative.
    TowardNorth(f64),
    /// The reading running against the turn before it follows it.
    WrongWay(f64),
    /// The nose still short of a heading; past it where negative.
    Short(f64),
    /// The reading's travel, in the way of the turn, while the nose makes a whole circle.
    Round(f64),
    /// An angle without a side.
    Angle(f64),
    /// A heading or a reading in [0, 360).
    Heading(f64),
    /// Seconds.
    Seconds(f64),
    /// Knots.
    Knots(f64),
    /// Degrees a second.
    RateOfTurn(f64),
    /// North positive.
    Latitude(f64),
    /// The memory aid for a hemisphere, north where true; none on the magnetic equator.
    Aid(Aid, Option<bool>),
    /// The nose or the reading never came there.
    Never,
}

/// An angle that shows as less than two whole degrees counts as none, as on the page.
const NONE_BELOW: f64 = 1.5;

/// A card that has travelled this far when the nose has made a whole circle has come round: half
/// of it, as it travels all of it or none.
const ROUND_FROM: f64 = 180.0;

impl Measured {
    /// The number that claims are about: an angle in degrees with its sign, seconds, knots. None
    /// of words, and of what never happened.
    pub fn number(self) -> Option<f64> {
        match self {
            Self::Lag(it)
            | Self::Error(it)
            | Self::TowardNorth(it)
            | Self::WrongWay(it)
            | Self::Short(it)
            | Self::Round(it)
            | Self::Angle(it)
            | Self::Heading(it)
            | Self::Seconds(it)
            | Self::Knots(it)
            | Self::RateOfTurn(it)
            | Self::Latitude(it) => Some(it),
            Self::Aid(..) | Self::Never => None,
        }
    }

    /// What it says, to stand in a sentence after its subject: "lags by 23°".
    pub fn words(self) -> String {
        let either = |value: f64, more: &str, less: &str, none: &str| {
            let by = if value > 0.0 { more } else { less };
            if value.abs() < NONE_BELOW {
                none.to_owned()
            } else {
                by.replace('*', &whole(value))
            }
        };
        match self {
            Self::Lag(it) => either(it, "lags by *", "leads by *", "agrees"),
            Self::Error(it) => either(
                it,
                "reads * more than the heading",
                "reads * less than the heading",
                "agrees",
            ),
            Self::TowardNorth(it) => either(
                it,
                "swings * towards north",
                "swings * towards south",
                "stays where it is",
            ),
            Self::WrongWay(it) => either(
                it.max(0.0),
                "first swings * the wrong way",
                "",
                "turns the right way from the start",
            ),
            Self::Short(it) => either(it, "* short", "* past", "there"),
            Self::Round(it) if it >= ROUND_FROM => "comes round with the nose".to_owned(),
            Self::Round(_) => "swings out and back, and does not come round".to_owned(),
            Self::Aid(aid, hemisphere) => aid_words(aid, hemisphere).to_owned(),
            Self::Never => "never comes there".to_owned(),
            _ => self.figure(),
        }
    }

    /// The number alone with its unit, without a side: "23°".
    pub fn figure(self) -> String {
        match self {
            Self::Heading(it) => {
                let degrees = it.round().rem_euclid(360.0);
                let degrees = if degrees == 0.0 { 360.0 } else { degrees };
                format!("{degrees:03.0}°")
            }
            Self::Seconds(it) => format!("{it:.0} s"),
            Self::Knots(it) => format!("{it:.0} kt"),
            Self::RateOfTurn(it) => format!("{it:.1}° a second"),
            Self::Latitude(it) if it.round() == 0.0 => "the equator".to_owned(),
            Self::Latitude(it) => format!("{} {}", whole(it), if it < 0.0 { 'S' } else { 'N' }),
            Self::Aid(..) | Self::Never => self.words(),
            Self::Lag(it)
            | Self::Error(it)
            | Self::TowardNorth(it)
            | Self::WrongWay(it)
            | Self::Short(it)
            | Self::Round(it)
            | Self::Angle(it) => whole(it),
        }
    }

    /// The ways that a question about it can be answered; empty if it has no ways.
    pub fn choices(self) -> &'static [&'static str] {
        match self {
            Self::Lag(_) => &["It lags", "It leads", "It agrees"],
            Self::Error(_) => &["It reads more", "It reads less", "It agrees"],
            Self::TowardNorth(_) => &[
                "It swings towards north",
                "It swings towards south",
                "It stays where it is",
            ],
            Self::WrongWay(_) => &["First the wrong way", "The right way from the start"],
            Self::Short(_) => &["Short of it", "Past it", "On it"],
            Self::Round(_) => &["It comes round with the nose", "It swings out and back"],
            _ => &[],
        }
    }

    /// Which of the [`choices`](Self::choices) is right.
    pub fn right_choice(self) -> Option<usize> {
        match self {
            Self::Lag(it) | Self::Error(it) | Self::TowardNorth(it) | Self::Short(it) => {
                Some(match it {
                    _ if it.abs() < NONE_BELOW => 2,
                    _ if it > 0.0 => 0,
                    _ => 1,
                })
            }
            Self::WrongWay(it) => Some(usize::from(it < NONE_BELOW)),
            Self::Round(it) => Some(usize::from(it < ROUND_FROM)),
            _ => None,
        }
    }

    /// Whether a question about it could be argued about: it shows as a degree or two, or a card
    /// is left between coming round and not.
    pub(crate) fn is_arguable(self) -> bool {
        match self {
            Self::Round(it) => (90.0..270.0).contains(&it),
            _ => match (self.right_choice(), self.number()) {
                (Some(_), Some(number)) => (1.0..2.5).contains(&number.abs()),
                _ => true,
            },
        }
    }
}

fn whole(degrees: f64) -> String {
    format!("{:.0}°", degrees.abs().round())
}

/// The memory aids as they are taught, for one hemisphere and mirrored for the other: common
/// practice, no source.
fn aid_words(aid: Aid, north: Option<bool>) -> &'static str {
    match (aid, north) {
        (Aid::Turn, Some(true)) => "Undershoot North, Overshoot South",
        (Aid::Turn, Some(false)) => "Overshoot North, Undershoot South",
        (Aid::Speed, Some(true)) => "Accelerate North, Decelerate South",
        (Aid::Speed, Some(false)) => "Accelerate South, Decelerate North",
        (_, None) => "no rule is needed here",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_and_the_right_choice_agree_at_the_borders() {
        for (degrees, words, choice) in [
            (1.4, "agrees", 2),
            (-1.4, "agrees", 2),
            (1.6, "lags by 2°", 0),
            (-1.6, "leads by 2°", 1),
            (23.4, "lags by 23°", 0),
        ] {
            assert_eq!(Measured::Lag(degrees).words(), words);
            assert_eq!(Measured::Lag(degrees).right_choice(), Some(choice));
        }
    }

    #[test]
    fn headings_have_three_figures_and_north_is_360() {
        assert_eq!(Measured::Heading(0.2).words(), "360°");
        assert_eq!(Measured::Heading(359.8).words(), "360°");
        assert_eq!(Measured::Heading(44.6).words(), "045°");
    }
}
