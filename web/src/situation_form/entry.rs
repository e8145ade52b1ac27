//! The entries of the form, the range of each, and how what is typed becomes a number.

use super::float::FloatEntry;
use super::iron::Axis;
use compass::deviation::{HARD_IRON, SOFT_IRON};
use compass::field::{DIP, HORIZONTAL};
use compass::free_flight::AIRSPEED_COMMAND;
use compass::range::Range;
use earth::Date;
use earth::place::{ALTITUDE, LATITUDE, LONGITUDE};

/// A field of the form that is typed into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Entry {
    /// Latitude in degrees, north positive.
    Latitude,
    /// Longitude in degrees, east positive.
    Longitude,
    /// Altitude in feet.
    Altitude,
    /// Day, year-month-day.
    Date,
    /// Dip in degrees, down positive.
    Dip,
    /// Horizontal intensity in nanotesla.
    Horizontal,
    /// Airspeed at the start in knots.
    Airspeed,
    /// A number of the float.
    Float(FloatEntry),
    /// The part of the hard iron's field along an axis, in nanotesla.
    Hard(Axis),
    /// What the soft iron adds along the first axis for each part of the field along the second.
    Soft(Axis, Axis),
}

impl Entry {
    /// The values that it may take; a day has its calendar instead.
    pub(crate) fn range(self) -> Option<Range> {
        Some(match self {
            Self::Latitude => LATITUDE,
            Self::Longitude => LONGITUDE,
            Self::Altitude => ALTITUDE,
            Self::Date => return None,
            Self::Dip => DIP,
            Self::Horizontal => HORIZONTAL,
            Self::Airspeed => AIRSPEED_COMMAND,
            Self::Float(number) => number.range(),
            Self::Hard(_) => HARD_IRON,
            Self::Soft(..) => SOFT_IRON,
        })
    }
}

/// What is wrong with an entry.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Wrong {
    /// It is empty.
    Empty,
    /// It is no number.
    NotANumber(String),
    /// It is beyond its range, in the entry's own unit.
    OutOfRange {
        /// The range.
        range: Range,
        /// What was given.
        value: f64,
    },
    /// It is no day of the calendar.
    NotADate,
    /// It is a day outside the model's life.
    OutsideModel(Date),
    /// Dip and intensity together give a vertical intensity that is too strong.
    TooStrong,
    /// The model's own refusal.
    Model(String),
}

/// An entry and what is wrong with it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Fault {
    /// Where.
    pub(crate) entry: Entry,
    /// What.
    pub(crate) wrong: Wrong,
}

/// Letters that stand for a sign, as `S` for south.
pub(crate) type Sides = &'static [(char, f64)];

/// North and south.
pub(crate) const NORTH_SOUTH: Sides = &[('N', 1.0), ('S', -1.0)];
/// East and west.
pub(crate) const EAST_WEST: Sides = &[('E', 1.0), ('W', -1.0)];

/// What was typed into an entry that has a range, in SI and radians, or a fault noted.
pub(super) fn number(text: &str, entry: Entry, faults: &mut Vec<Fault>) -> Option<f64> {
    match within(text, entry.range()?, sides(entry)) {
        Ok(si) => Some(si),
        Err(wrong) => {
            faults.push(Fault { entry, wrong });
            None
        }
    }
}

/// What was typed where a range is asked for, in SI and radians.
///
/// # Errors
/// Nothing, no number, or a number beyond the range.
pub(crate) fn within(text: &str, range: Range, sides: Sides) -> Result<f64, Wrong> {
    let text = text.trim();
    match signed(text, sides) {
        Some(value) => range.accept(value).map_err(|refused| Wrong::OutOfRange {
            range,
            value: refused.value,
        }),
        None if text.is_empty() => Err(Wrong::Empty),
        None => Err(Wrong::NotANumber(text.chars().take(20).collect())),
    }
}

fn sides(entry: Entry) -> Sides {
    match entry {
        Entry::Latitude => NORTH_SOUTH,
        Entry::Longitude => EAST_WEST,
        _ => &[],
    }
}

/// A number as people type one into an entry.
pub(super) fn parse(text: &str, entry: Entry) -> Option<f64> {
    signed(text, sides(entry))
}

/// A number as people type one: a comma for a point, a true minus, a letter for the side.
fn signed(text: &str, sides: Sides) -> Option<f64> {
    let text = text.trim().replace(',', ".").replace('−', "-");
    let side = text.chars().last().and_then(|last| {
        sides
            .iter()
            .find(|side| side.0 == last.to_ascii_uppercase())
    });
    let (digits, sign) = match side {
        Some((letter, sign)) => (&text[..text.len() - letter.len_utf8()], *sign),
        None => (text.as_str(), 1.0),
    };
    let value: f64 = digits.trim().trim_end_matches('°').trim().parse().ok()?;
    value.is_finite().then_some(value * sign)
}

/// A value as it would be typed, without the last bits that a change of unit leaves.
pub(crate) fn typed(value: f64) -> String {
    let rounded = (value * 1e9).round() / 1e9;
    // No minus before a zero.
    (rounded + 0.0).to_string()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_is_typed_without_what_rounding_left() {
        assert_eq!(typed(3.000_000_000_000_000_4), "3");
        assert_eq!(typed(-0.0), "0");
        assert_eq!(typed(-51.5), "-51.5");
        assert_eq!(typed(1e300 * 1e300), "inf");
    }
}
