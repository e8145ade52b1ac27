//! The words of one turn by the clock and by the compass.

/// How a turn was flown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum TurnWay {
    /// By the student, by the clock.
    OwnByClock,
    /// By the student, by the compass.
    OwnByCompass,
    /// By the clock, without a mistake.
    Clock,
    /// By the compass with its rule of thumb.
    Rule,
    /// By the compass as if it did not err.
    Bare,
}

/// What told the pilot to roll out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum RollOutAt {
    /// Seconds since the roll-in.
    Seconds(f64),
    /// A compass reading in whole degrees.
    Reading(u16),
    /// Nothing: the turn has no end.
    Nothing,
}

/// Where a turn came out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct CameOut {
    /// Whole degrees.
    pub(crate) heading: u16,
    /// Degrees past the target, negative for short of it.
    pub(crate) past_deg: f64,
    /// Whether that is within the tolerance.
    pub(crate) is_within: bool,
}

/// The words.
pub(crate) struct TurnsWords {
    /// Over the turn as it is put by the compass, and its address.
    pub(crate) title: &'static str,
    /// That it does not count.
    pub(crate) counts_not: &'static str,
    pub(crate) heading: &'static str,
    pub(crate) fly: &'static str,
    pub(crate) columns: [&'static str; 4],
    pub(crate) way: fn(TurnWay) -> &'static str,
    pub(crate) rolled_out: fn(RollOutAt) -> String,
    /// In place of where it came out, of a turn that has no end.
    pub(crate) never: fn(TurnWay) -> &'static str,
    pub(crate) off: fn(CameOut) -> String,
    /// The solid line and the dashed one.
    pub(crate) lines: [&'static str; 2],
    /// Takes the tolerance, degrees.
    pub(crate) target: fn(f64) -> String,
    pub(crate) seconds: &'static str,
    /// The picture in words: from which heading onto which, and a sentence for each turn.
    pub(crate) picture: fn([u16; 2], &[String]) -> String,
    /// The sentence of a turn: its number, how it was flown, where it came out.
    pub(crate) told: fn(u8, TurnWay, Option<CameOut>) -> String,
}
