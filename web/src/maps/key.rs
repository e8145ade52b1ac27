//! The fields of the page: what the address calls each, and what can stand in it.

use crate::setting::FloatChoice;

/// A field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Key {
    /// What the map shows.
    Show,
    /// Flat or a globe.
    View,
    /// Year-month-day.
    Date,
    /// Latitude of the point, in degrees.
    Latitude,
    /// Longitude of the point, in degrees.
    Longitude,
    /// Bank in degrees.
    Bank,
    /// Airspeed in knots.
    Airspeed,
    /// The float.
    Float,
    /// Latitude in the middle of the globe, in degrees.
    MiddleLatitude,
    /// Longitude in the middle of the globe, in degrees.
    MiddleLongitude,
}

impl Key {
    /// Every field once.
    pub(crate) const ALL: [Self; 10] = [
        Self::Show,
        Self::View,
        Self::Date,
        Self::Latitude,
        Self::Longitude,
        Self::Bank,
        Self::Airspeed,
        Self::Float,
        Self::MiddleLatitude,
        Self::MiddleLongitude,
    ];

    /// What the address and the page's own names call it.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Show => "show",
            Self::View => "view",
            Self::Date => "date",
            Self::Latitude => "lat",
            Self::Longitude => "lon",
            Self::Bank => "bank",
            Self::Airspeed => "kt",
            Self::Float => "float",
            Self::MiddleLatitude => "over",
            Self::MiddleLongitude => "by",
        }
    }

    /// The words that it can hold, the usual one first; none where it is typed freely.
    pub(crate) fn choices(self) -> &'static [&'static str] {
        match self {
            Self::Show => &["dip", "variation", "horizontal", "steady", "simulated"],
            Self::View => &["flat", "globe"],
            Self::Float => &[
                "standard",
                "brisk",
                "sluggish",
                "lightly-damped",
                "sticky-pivot",
            ],
            _ => &[],
        }
    }

    /// What stands in it at first.
    pub(crate) fn at_first(self) -> &'static str {
        match self {
            Self::Latitude => "52",
            Self::Bank => "15",
            Self::Airspeed => "100",
            Self::MiddleLatitude => "30",
            _ => self.choices().first().copied().unwrap_or("0"),
        }
    }
}

/// The float of a name; the standard one where it is no float's.
pub(crate) fn float_named(name: &str) -> FloatChoice {
    match name {
        "brisk" => FloatChoice::Brisk,
        "sluggish" => FloatChoice::Sluggish,
        "lightly-damped" => FloatChoice::LightlyDamped,
        "sticky-pivot" => FloatChoice::StickyPivot,
        _ => FloatChoice::Standard,
    }
}
