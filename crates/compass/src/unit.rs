//! Units at the edges. Inside, everything is SI and radians.

/// Metres per second in one knot: one nautical mile (1852 m exactly) an hour.
pub const KNOT: f64 = 1852.0 / 3600.0;
/// Metres in one foot: the international foot, exact.
pub const FOOT: f64 = 0.3048;
/// Tesla in one nanotesla.
pub const NANOTESLA: f64 = 1e-9;
/// Standard acceleration of gravity, m/s²: the exact conventional value (CGPM 1901).
pub const STANDARD_GRAVITY: f64 = 9.806_65;

/// A unit that people read and type.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// A plain number.
    Number,
    /// Degrees of angle; radians inside.
    Degree,
    /// Degrees a second; radians a second inside.
    DegreePerSecond,
    /// Degrees an hour; radians a second inside.
    DegreePerHour,
    /// Knots; metres a second inside.
    Knot,
    /// Feet; metres inside.
    Foot,
    /// Nanotesla; tesla inside.
    Nanotesla,
    /// Seconds.
    Second,
    /// Multiples of standard gravity; m/s² inside.
    Gravity,
}

impl Unit {
    /// How many SI units (or radians) one of these is.
    pub const fn in_si(self) -> f64 {
        match self {
            Self::Number | Self::Second => 1.0,
            Self::Degree | Self::DegreePerSecond => std::f64::consts::PI / 180.0,
            Self::DegreePerHour => std::f64::consts::PI / 180.0 / 3600.0,
            Self::Knot => KNOT,
            Self::Foot => FOOT,
            Self::Nanotesla => NANOTESLA,
            Self::Gravity => STANDARD_GRAVITY,
        }
    }

    /// The unit's sign, with the space that goes before it; empty for a plain number.
    pub const fn suffix(self) -> &'static str {
        match self {
            Self::Number => "",
            Self::Degree => "°",
            Self::DegreePerSecond => "°/s",
            Self::DegreePerHour => "°/h",
            Self::Knot => " kt",
            Self::Foot => " ft",
            Self::Nanotesla => " nT",
            Self::Second => " s",
            Self::Gravity => " g",
        }
    }
}
