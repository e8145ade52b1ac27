//! The words of a task from its question to its explanation, and of the form that chooses one.

use super::turns::TurnsWords;
use crate::drills::{Unread, Verdict};
use lessons::drill::record::Help;
use lessons::drill::{Kind, North};

/// The words of a task that is put.
pub(crate) struct PlayWords {
    pub(crate) kind: fn(Kind) -> &'static str,
    /// How hard a task is, by its level.
    pub(crate) hard: fn(u8) -> &'static str,
    pub(crate) preparing: &'static str,
    /// Takes whether a task may be begun again.
    pub(crate) begun_before: fn(bool) -> &'static str,
    pub(crate) choices: &'static str,
    pub(crate) watch: &'static str,
    pub(crate) watch_again: &'static str,
    pub(crate) begin: &'static str,
    pub(crate) fly_on: &'static str,
    pub(crate) pause: &'static str,
    pub(crate) finish: &'static str,
    pub(crate) set_indicator: &'static str,
    pub(crate) slow_down: &'static str,
    pub(crate) speed_up: &'static str,
    pub(crate) tell: &'static str,
    pub(crate) again: &'static str,
    /// Takes whether the end of the flight is seen.
    pub(crate) again_from_here: fn(Kind, bool) -> &'static str,
    pub(crate) next: &'static str,
    pub(crate) how: fn(Kind) -> &'static str,
    pub(crate) keys: fn(Kind) -> &'static str,
    /// The keys after an answer.
    pub(crate) keys_after: fn(Kind) -> &'static str,
    pub(crate) controls: &'static str,
    /// A change of the bank, degrees, right positive.
    pub(crate) bank_by: fn(i8) -> String,
    pub(crate) level: &'static str,
    pub(crate) clock: &'static str,
    /// Seconds.
    pub(crate) clock_value: fn(f64) -> String,
    pub(crate) bank_asked: fn(i32) -> String,
    pub(crate) settings: fn(usize) -> String,
    pub(crate) helps: &'static str,
    /// What a help costs; whether this one is allowed.
    pub(crate) help: fn(Help, bool) -> &'static str,
    pub(crate) paused: &'static str,
    pub(crate) asleep: &'static str,
    pub(crate) rate: fn(f64) -> String,
    /// Compass, heading and indicator in whole degrees, as far as they are shown; bank.
    pub(crate) seen: fn(Seen) -> String,
    pub(crate) from_above: &'static str,
    pub(crate) verdict: fn(&Verdict) -> String,
    pub(crate) not_counted: fn(&str) -> String,
    /// Takes the choice that was taken, and the mistake that leads to it.
    pub(crate) yours_is: fn(&str, &str) -> String,
    pub(crate) right_is: fn(&str) -> String,
    /// Degrees off, right positive where it has a side.
    pub(crate) off: fn(f64, bool) -> String,
    pub(crate) within: fn(f64) -> String,
    pub(crate) mark: fn(f64, f64, bool) -> String,
    pub(crate) happened: &'static str,
    pub(crate) why: &'static str,
    pub(crate) rule: &'static str,
    pub(crate) turns: TurnsWords,
    pub(crate) ideals: &'static str,
    pub(crate) ideal: IdealWords,
    pub(crate) replay: &'static str,
    pub(crate) moment: &'static str,
    pub(crate) moment_value: fn(f64) -> String,
    pub(crate) play: &'static str,
    pub(crate) beside: &'static str,
    pub(crate) bowl: &'static str,
    pub(crate) torques: &'static str,
    pub(crate) card_lines: &'static str,
    pub(crate) card_columns: [&'static str; 2],
    pub(crate) swing_columns: [&'static str; 2],
    pub(crate) given: &'static str,
    pub(crate) variation: &'static str,
    pub(crate) north: fn(North) -> &'static str,
    pub(crate) east_west: fn(f64) -> String,
    pub(crate) cardinals: [&'static str; 4],
    /// From above, bowl, torques.
    pub(crate) views: [&'static str; 3],
    pub(crate) practise: PractiseWords,
}

/// What is seen, in whole degrees, as far as it is shown.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Seen {
    pub(crate) compass: Option<u16>,
    pub(crate) heading: Option<u16>,
    pub(crate) indicator: Option<u16>,
    /// Right positive.
    pub(crate) bank: Option<i32>,
    /// Tenths of a degree a second, right positive.
    pub(crate) rate_of_turn: Option<i32>,
    /// Seconds.
    pub(crate) time: Option<u32>,
}

/// What an ideal flight would have had.
pub(crate) struct IdealWords {
    pub(crate) by_rule: &'static str,
    pub(crate) by_half_rule: &'static str,
    pub(crate) by_time_rule: &'static str,
    pub(crate) closed_form: &'static str,
    pub(crate) simulation: &'static str,
    pub(crate) yours: &'static str,
    pub(crate) seconds: fn(f64) -> String,
}

/// The words of the form that chooses a task.
pub(crate) struct PractiseWords {
    pub(crate) title: &'static str,
    pub(crate) hint: &'static str,
    pub(crate) kind: &'static str,
    pub(crate) level: &'static str,
    pub(crate) levels: [&'static str; 3],
    pub(crate) tolerance: &'static str,
    pub(crate) place: &'static str,
    pub(crate) hemispheres: [&'static str; 3],
    pub(crate) latitude: &'static str,
    pub(crate) latitude_hint: &'static str,
    pub(crate) seed: &'static str,
    pub(crate) seed_hint: &'static str,
    pub(crate) start: &'static str,
    pub(crate) change: &'static str,
    /// Takes the seed.
    pub(crate) had_again: fn(u64) -> String,
    /// What of an address or of the form cannot be read.
    pub(crate) unread: fn(&Unread) -> String,
}
