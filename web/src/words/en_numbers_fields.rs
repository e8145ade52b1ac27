//! English, for the fields of the page of numbers.

use super::en_situation;
use crate::numbers::Key;
use crate::situation_form::{Entry, Wrong};

/// Poisson's letters, row by row.
const SOFT: [&str; 9] = ["a", "b", "c", "d", "e", "f", "g", "h", "k"];
const SOFT_SLIDERS: [&str; 9] = [
    "a, slider",
    "b, slider",
    "c, slider",
    "d, slider",
    "e, slider",
    "f, slider",
    "g, slider",
    "h, slider",
    "k, slider",
];

/// What a field is called.
pub(super) fn label(key: Key) -> &'static str {
    match key {
        Key::Way => "Set the field by",
        Key::Latitude => "Latitude",
        Key::Longitude => "Longitude",
        Key::Date => "Date",
        Key::Turning => "Turn by",
        Key::Bank => "Bank",
        Key::Rate => "Rate of turn",
        Key::Lead => "Lead by",
        Key::RollRate => "Rate of roll",
        Key::Airspeed => "Airspeed",
        Key::Side => "Turn",
        Key::Target => "Roll out on",
        Key::Float => "Float",
        Key::Every => "Table for every",
        Key::Beside => "Second latitude",
        Key::Sheet => "Sheet",
        Key::Paper => "Paper",
        Key::Seed => "Number",
        Key::From => "Given",
        Key::Heading => "Heading",
        Key::Track => "True track",
        Key::VariationBy => "Variation",
        Key::Variation => "Variation",
        Key::Deviation(0) => "On 360°",
        Key::Deviation(1) => "On 045°",
        Key::Deviation(2) => "On 090°",
        Key::Deviation(3) => "On 135°",
        Key::Deviation(4) => "On 180°",
        Key::Deviation(5) => "On 225°",
        Key::Deviation(6) => "On 270°",
        Key::Deviation(_) => "On 315°",
        Key::Ramp => "Turn it to",
        Key::Step => "Step",
        Key::NorthSouth => "N–S adjuster",
        Key::EastWest => "E–W adjuster",
        Key::Electric => "Radios and lights",
        Key::Swing => "Headings every",
        Key::Swung => "Swung",
        Key::Iron => "Iron",
        Key::Hard(0) => "P",
        Key::Hard(1) => "Q",
        Key::Hard(_) => "R",
        Key::Soft(part) => SOFT[usize::from(part.min(8))],
        Key::Banked => "Banked",
        Key::Wind => "Wind",
        Key::WindFrom => "Wind from",
        Key::WindSpeed => "Wind speed",
        Key::Lesson => "Demonstration",
    }
}

/// What a field's slider is called: it stands beside the field of the same name.
pub(super) fn slider(key: Key) -> &'static str {
    match key {
        Key::Latitude => "Latitude, slider",
        Key::Bank => "Bank, slider",
        Key::NorthSouth => "N–S adjuster, slider",
        Key::EastWest => "E–W adjuster, slider",
        Key::Hard(0) => "P, slider",
        Key::Hard(1) => "Q, slider",
        Key::Hard(_) => "R, slider",
        Key::Soft(part) => SOFT_SLIDERS[usize::from(part.min(8))],
        key => label(key),
    }
}

/// Its unit, and what else is to be known before typing.
pub(super) fn hint(key: Key) -> &'static str {
    match key {
        Key::Latitude => "degrees, N or S",
        Key::Longitude => "degrees, E or W",
        Key::Date => "2025 to 2029",
        Key::Bank => "degrees",
        Key::Rate => "degrees a second",
        Key::RollRate => "degrees a second",
        Key::Airspeed | Key::WindSpeed => "knots",
        Key::WindFrom => "degrees true",
        Key::Target | Key::Heading | Key::Track | Key::Ramp => "degrees",
        Key::Beside => "on the rose; may be empty",
        Key::Seed => "same number, same again",
        Key::Variation => "degrees, E or W",
        Key::NorthSouth | Key::EastWest | Key::Hard(_) => "nT",
        _ => "",
    }
}

/// One of a field's choices.
pub(super) fn choice(key: Key, choice: &'static str) -> &'static str {
    match (key, choice) {
        (Key::Way, "place") => "Place, date",
        (Key::Way, _) => "Latitude",
        (Key::Turning, "rate") => "Rate",
        (Key::Turning, _) => "Bank",
        (Key::Lead, "roll") => "Roll rate",
        (Key::Lead, _) => "½ bank",
        (Key::Side, "left") => "Left",
        (Key::Side, _) => "Right",
        (Key::Float, "brisk") => "Brisk",
        (Key::Float, "sluggish") => "Sluggish",
        (Key::Float, "lightly-damped") => "Lightly damped",
        (Key::Float, "sticky-pivot") => "Sticky pivot",
        (Key::Float, _) => "Standard",
        (Key::Every | Key::Swing, "10") => "10°",
        (Key::Every | Key::Swing, "45") => "45°",
        (Key::Every | Key::Swing, _) => "30°",
        (Key::Sheet, "aids") => "Memory aids",
        (Key::Sheet, "worksheet") => "Worksheet",
        (Key::Sheet, "deviation") => "Deviation card",
        (Key::Sheet, "plan") => "Lesson plan",
        (Key::Sheet, _) => "Roll-outs",
        (Key::Paper, "letter") => "Letter",
        (Key::Paper, _) => "A4",
        (Key::From, "magnetic") => "Magnetic",
        (Key::From, "compass") => "Compass",
        (Key::From, "track") => "Track",
        (Key::From, _) => "True",
        (Key::Iron, "set") => "Set by hand",
        (Key::Iron, _) => "Hidden",
        (Key::Banked, "wing-down") => "Wing down, straight",
        (Key::Banked, _) => "In a turn",
        (Key::Wind, "typed") => "Typed",
        (Key::Wind, _) => "Left out",
        (Key::VariationBy, "place") => "Place, date",
        (Key::VariationBy, _) => "Typed",
        (Key::Electric, "on") => "On",
        (Key::Electric, _) => "Off",
        (_, other) => other,
    }
}

/// What is wrong with a field, and how to mend it.
pub(super) fn refusal(key: Key, wrong: &Wrong) -> String {
    if key == Key::Rate
        && let Wrong::OutOfRange { range, value } = wrong
        && range.quantity == "bank"
    {
        return format!(
            "Rate of turn at this airspeed takes {}° of bank; the planner goes from {}° to {}°.",
            value.round(),
            range.least,
            range.most
        );
    }
    let entry = match key {
        Key::Latitude => Some(Entry::Latitude),
        Key::Longitude => Some(Entry::Longitude),
        Key::Date => Some(Entry::Date),
        _ => None,
    };
    en_situation::refusal(entry, label(key), such(key), wrong)
}

/// What may stand in a field.
fn such(key: Key) -> &'static str {
    match key {
        Key::Way => "“latitude” or “place”",
        Key::Turning => "“bank” or “rate”",
        Key::Lead => "“half” or “roll”",
        Key::Side => "“left” or “right”",
        Key::Float => "one of the floats listed",
        Key::Every => "10 or 30",
        Key::Sheet => "one of the sheets listed",
        Key::Paper => "“a4” or “letter”",
        Key::From => "“true”, “magnetic”, “compass” or “track”",
        Key::Iron => "“hidden” or “set”",
        Key::Banked => "“turn” or “wing-down”",
        Key::Wind => "“out” or “typed”",
        Key::Soft(_) => "a number, such as 0.05",
        Key::WindSpeed => "a number of knots, such as 20",
        Key::VariationBy => "“typed” or “place”",
        Key::Step => "0 to 4",
        Key::Electric => "“on” or “off”",
        Key::Swing => "30 or 45",
        Key::Swung => "“yes” or “no”",
        Key::Seed => "a whole number, such as 7",
        Key::Airspeed => "a number of knots, such as 100",
        Key::Rate | Key::RollRate => "a number of degrees a second, such as 3",
        Key::Beside => "a number of degrees, such as 52 or 33 S, or empty",
        Key::Variation => "a number of degrees, such as 10 W or 2.5 E",
        Key::Deviation(_) => "a number of degrees, such as 2 E or 3 W",
        Key::NorthSouth | Key::EastWest | Key::Hard(_) => "a number of nT, such as 1500",
        _ => "a number of degrees, such as 15",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use lessons::roll_out::BANK;

    #[test]
    fn a_refusal_names_the_field_the_value_and_what_is_allowed() {
        let beyond = Wrong::OutOfRange {
            range: BANK,
            value: 75.0,
        };
        assert_eq!(
            refusal(Key::Bank, &beyond),
            "Bank must be from 3° to 60°, not 75°."
        );
        assert_eq!(
            refusal(Key::Side, &Wrong::NotANumber("up".to_owned())),
            "Turn must be “left” or “right”, not “up”."
        );
        assert_eq!(
            refusal(Key::Rate, &beyond),
            "Rate of turn at this airspeed takes 75° of bank; the planner goes from 3° to 60°."
        );
    }
}
