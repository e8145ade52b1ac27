//! English, for one turn by the clock and by the compass.

use super::turns::{CameOut, RollOutAt, TurnWay, TurnsWords};

pub(super) const TURNS: TurnsWords = TurnsWords {
    title: "The same turn by the compass",
    counts_not: "The turn by the compass is marked so that you can compare. It counts neither for \
                 what is due next nor in a set.",
    heading: "By the clock and by the compass",
    fly: "Now by the compass",
    columns: ["Flown", "Rolled out", "Came out", "Off the target"],
    way,
    rolled_out: |at| match at {
        RollOutAt::Seconds(seconds) => format!("after {seconds:.1} s"),
        RollOutAt::Reading(reading) => format!("at {reading:03}°"),
        RollOutAt::Nothing => "never".to_owned(),
    },
    never,
    off,
    lines: ["heading", "compass"],
    target: |tolerance| format!("target ±{tolerance}°"),
    seconds: "seconds from the roll-in",
    picture: |[from, onto], turns| {
        let turns = turns.join(" ");
        format!("The turn from {from:03}° onto {onto:03}° against time. {turns}")
    },
    told: |number, by, end| match end {
        Some(end) => {
            let (heading, off) = (end.heading, off(end));
            format!("{number}, {}: comes out on {heading:03}°, {off}.", way(by))
        }
        None => format!("{number}, {}: {}.", way(by), never(by)),
    },
};

fn way(way: TurnWay) -> &'static str {
    match way {
        TurnWay::OwnByClock => "You, by the clock",
        TurnWay::OwnByCompass => "You, by the compass",
        TurnWay::Clock => "Clock: a second for every 3°",
        TurnWay::Rule => "Compass, by the rule of thumb",
        TurnWay::Bare => "Compass, as if it did not err",
    }
}

fn never(way: TurnWay) -> &'static str {
    match way {
        TurnWay::OwnByClock | TurnWay::OwnByCompass => "did not come to an end",
        TurnWay::Clock | TurnWay::Rule | TurnWay::Bare => "the card never shows that reading",
    }
}

fn off(end: CameOut) -> String {
    let by = (10.0 * end.past_deg.abs()).round() / 10.0;
    match end.past_deg {
        _ if by == 0.0 => "0°".to_owned(),
        short if short < 0.0 => format!("{by}° short"),
        _ => format!("{by}° past"),
    }
}
