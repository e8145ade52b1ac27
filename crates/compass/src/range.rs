//! The allowed range of every quantity that comes from outside, and the one sentence that says
//! what is wrong with a value beyond it.

use crate::unit::Unit;
use thiserror::Error;

/// What a quantity is called, its unit at the edge, and the values it may take.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// The quantity's name in plain words.
    pub quantity: &'static str,
    /// The unit in which people read and type it, and in which the limits are given.
    pub unit: Unit,
    /// The least allowed value, in that unit.
    pub least: f64,
    /// The greatest allowed value, in that unit.
    pub most: f64,
}

/// A value beyond its range, or not a number.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
#[error(
    "{} must be from {}{suffix} to {}{suffix}, not {}{suffix}",
    .range.quantity, .range.least, .range.most, .value,
    suffix = .range.unit.suffix()
)]
pub struct OutOfRange {
    /// The range that was missed.
    pub range: Range,
    /// The value, in the range's own unit.
    pub value: f64,
}

impl Range {
    /// A range from `least` to `most`, both in `unit` and both allowed.
    pub const fn new(quantity: &'static str, unit: Unit, least: f64, most: f64) -> Self {
        Self {
            quantity,
            unit,
            least,
            most,
        }
    }

    /// Takes a value in the edge unit and gives it in SI and radians.
    pub fn accept(self, value: f64) -> Result<f64, OutOfRange> {
        if value >= self.least && value <= self.most {
            Ok(value * self.unit.in_si())
        } else {
            Err(OutOfRange { range: self, value })
        }
    }

    /// Checks a value that is already in SI and radians. A last-bit overrun that comes from the
    /// change of unit is taken as the limit.
    pub fn check(self, si: f64) -> Result<f64, OutOfRange> {
        let value = si / self.unit.in_si();
        let slack = 1e-12 * (self.most - self.least);
        if value >= self.least - slack && value <= self.most + slack {
            let unit = self.unit.in_si();
            Ok(si.clamp(self.least * unit, self.most * unit))
        } else {
            // A computed value is told to a thousandth, unless that would lie within the range.
            let told = (value * 1e3).round() / 1e3;
            let is_within = told >= self.least && told <= self.most;
            let value = if is_within { value } else { told };
            Err(OutOfRange { range: self, value })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const BANK: Range = Range::new("bank", Unit::Degree, -80.0, 80.0);

    #[test]
    fn says_quantity_range_and_value_in_one_sentence() {
        let refused = BANK.accept(95.0).unwrap_err();
        assert_eq!(
            refused.to_string(),
            "bank must be from -80° to 80°, not 95°"
        );
    }

    #[test]
    fn a_computed_value_is_told_to_a_thousandth() {
        let refused = |degrees: f64| BANK.check(degrees.to_radians()).unwrap_err().value;
        assert_eq!(refused(-99.998_186_468), -99.998);
        assert!(refused(80.000_01) > 80.0);
    }

    #[test]
    fn refuses_what_is_not_a_number() {
        assert!(BANK.accept(f64::NAN).is_err());
        assert!(BANK.check(f64::INFINITY).is_err());
    }

    #[test]
    fn the_limits_themselves_are_allowed() {
        let most = BANK.accept(80.0).unwrap();
        assert_eq!(BANK.check(most), Ok(most));
    }
}
