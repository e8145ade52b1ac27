//! How tasks and explanations put things.

use compass::cause::{Cause, Effect, End, Turns, Way, Wing, explain};
use compass::field::MagneticField;
use compass::heading::MagneticHeading;
use compass::simulation::Moment;

/// A heading as it is spoken: 001 to 360.
pub(super) fn heading(degrees: f64) -> String {
    format!("{:03}°", whole_heading(degrees))
}

/// A heading in whole degrees, 1 to 360.
pub(super) fn whole_heading(degrees: f64) -> i32 {
    match (degrees.round() as i32).rem_euclid(360) {
        0 => 360,
        it => it,
    }
}

/// How far one heading lies to the right of another, degrees.
pub(super) fn apart(heading: f64, from: f64) -> f64 {
    MagneticHeading::from_degrees(heading)
        .right_of(MagneticHeading::from_degrees(from))
        .to_degrees()
}

/// A latitude: "latitude 52° south".
pub(super) fn latitude(degrees: f64) -> String {
    let side = match degrees {
        0.0 => return "the equator".to_owned(),
        south if south < 0.0 => "south",
        _ => "north",
    };
    format!("latitude {}° {side}", tidy(degrees.abs()))
}

/// A number without needless decimals.
pub(super) fn tidy(value: f64) -> String {
    let tenths = (10.0 * value).round() / 10.0 + 0.0;
    format!("{tenths}")
}

/// Left or right, by a sign.
pub(super) fn way(side: f64) -> &'static str {
    if side < 0.0 { "left" } else { "right" }
}

/// An angle with its sign in words: "7° east".
pub(super) fn east_west(degrees: f64) -> String {
    match degrees {
        0.0 => "0°".to_owned(),
        west if west < 0.0 => format!("{}° west", tidy(-degrees)),
        _ => format!("{}° east", tidy(degrees)),
    }
}

/// How far the reading is behind or ahead in a turn, degrees, ahead positive.
pub(super) fn lag_or_lead(ahead: f64) -> String {
    match ahead.round() {
        0.0 => "neither lag nor lead".to_owned(),
        lag if lag < 0.0 => format!("a lag of {}°", -lag),
        lead => format!("a lead of {lead}°"),
    }
}

/// How good a figure by a rule was, degrees.
pub(super) fn how_good(by_rule: f64, was: f64) -> String {
    let off = (by_rule - was).abs().round();
    let worth = match off {
        ..=3.0 => "good",
        ..=8.0 => "fair",
        _ => "poor",
    };
    format!("the rule was off by {off}°: {worth} here")
}

/// What turns the card at a moment, and the torques about its axis.
pub(super) fn why(moment: &Moment, field: &MagneticField) -> String {
    format!("{} {}", cause(explain(moment, field).cause), ledger(moment))
}

/// The torques about the card's axis at a moment.
pub(super) fn ledger(moment: &Moment) -> String {
    let torques = &moment.torques;
    let parts: Vec<String> = [
        ("vertical field", torques.vertical_field),
        ("horizontal field", torques.horizontal_field),
        ("liquid", torques.liquid_drag),
        ("iron", torques.iron),
    ]
    .into_iter()
    // What would be written as nought is left out.
    .filter(|(_, torque)| torque.abs() >= 0.005)
    .map(|(name, torque)| format!("{name} {torque:+.2}"))
    .collect();
    if parts.is_empty() {
        return "No torque about the card's axis reaches 0.01 rad/s².".to_owned();
    }
    format!(
        "Torques on the card then, clockwise positive, in rad/s²: {}.",
        parts.join(", ")
    )
}

fn cause(cause: Cause) -> String {
    let turned = |turns: Turns| match turns {
        Turns::Clockwise => "clockwise, so that it reads less",
        Turns::Anticlockwise => "anticlockwise, so that it reads more",
    };
    let (what, pull) = match cause {
        Cause::Steady => return "Nothing to speak of turns the card.".to_owned(),
        Cause::AtStop { .. } => {
            return "The card touches its stop and shows nothing that counts.".to_owned();
        }
        Cause::WeakField { .. } => {
            return "The horizontal field is too weak to steady a card.".to_owned();
        }
        Cause::LeaningCard { lean, .. } => {
            return format!(
                "The card leans by {}°, and a leaning card shows another direction than a level one.",
                tidy(lean.to_degrees().round())
            );
        }
        Cause::VerticalFieldThroughBank { toward, pull, .. } => (
            format!(
                "The card banks with the aircraft, and the vertical part of the Earth's field \
                 pulls its north mark toward the {} wing",
                match toward {
                    Wing::Low => "low",
                    Wing::High => "high",
                }
            ),
            pull,
        ),
        Cause::VerticalFieldThroughSpeedChange {
            airspeed_rate,
            toward,
            pull,
            ..
        } => (
            format!(
                "{} speed tips the card, and the vertical part of the Earth's field pulls its \
                 north mark toward the {}",
                if airspeed_rate > 0.0 {
                    "Gaining"
                } else {
                    "Losing"
                },
                match toward {
                    End::Nose => "nose",
                    End::Tail => "tail",
                }
            ),
            pull,
        ),
        Cause::VerticalFieldThroughTilt { toward, pull, .. } => (
            format!(
                "The card has been tipped, and the vertical part of the Earth's field pulls its \
                 north mark {}",
                match toward {
                    Way::Left => "to the left",
                    Way::Right => "to the right",
                    Way::Nose => "forward",
                    Way::Tail => "back",
                }
            ),
            pull,
        ),
        Cause::BalanceWeight(pull) => {
            ("Apparent gravity pulls the balance weight".to_owned(), pull)
        }
        Cause::Iron(pull) => ("The aircraft's iron pulls the card".to_owned(), pull),
        Cause::HorizontalField(pull) => {
            ("The horizontal field brings the card back".to_owned(), pull)
        }
        Cause::LiquidCarries(pull) => (
            "The liquid, turning with the aircraft, drags at the card".to_owned(),
            pull,
        ),
        Cause::LiquidBrakes(pull) => ("The liquid brakes the card".to_owned(), pull),
        Cause::Friction(pull) => ("The pivot's friction holds the card".to_owned(), pull),
    };
    let effect = match pull.effect {
        Effect::Makes => "this makes the error",
        Effect::Lessens => "this lessens the error",
        Effect::NoError => "there is no error to speak of yet",
    };
    format!("{what} and turns it {}; {effect}.", turned(pull.turns))
}
