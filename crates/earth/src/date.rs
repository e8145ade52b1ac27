//! Calendar dates and decimal years.

use crate::error::Error;
use compass::range::{OutOfRange, Range};
use compass::unit::Unit;
use std::fmt;
use time::format_description::well_known::Iso8601;
use time::util::days_in_year;

/// Decimal years that can be named: those of the calendar with four figures.
pub const DECIMAL_YEAR: Range = Range::new("decimal year", Unit::Number, 0.0, 9999.0);

/// Longest piece of a wrong text that is shown again.
const SHOWN: usize = 40;

/// A day, or a moment of one, on the proleptic Gregorian calendar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Date {
    day: time::Date,
    decimal_year: f64,
}

impl Date {
    /// From a day written year-month-day, such as `2026-05-01`. The other forms of ISO 8601
    /// (weeks, ordinal days, hours) are refused.
    ///
    /// # Errors
    /// [`Error::NotADate`].
    pub fn parse(text: &str) -> Result<Self, Error> {
        time::Date::parse(text, &Iso8601::DATE)
            .ok()
            // The parser takes every form of ISO 8601, and drops an hour in silence.
            .filter(|day| day.to_string() == text)
            .map(Self::at_start_of)
            .ok_or_else(|| Error::NotADate {
                given: text.chars().take(SHOWN).collect(),
            })
    }

    /// From a decimal year, such as 2027.5: half-way through 2027.
    ///
    /// # Errors
    /// A value beyond [`DECIMAL_YEAR`].
    pub fn from_decimal_year(decimal_year: f64) -> Result<Self, OutOfRange> {
        let missed = OutOfRange {
            range: DECIMAL_YEAR,
            value: decimal_year,
        };
        DECIMAL_YEAR.accept(decimal_year)?;
        let year = decimal_year.floor() as i32;
        let days = days_in_year(year);
        // A start of day that went through a decimal year must not fall back into the day before:
        // a millionth of a day is far above the rounding and far below what anyone means.
        let elapsed = (decimal_year - f64::from(year)) * f64::from(days) + 1e-6;
        let ordinal = (elapsed.floor() as u16 + 1).min(days);
        match time::Date::from_ordinal_date(year, ordinal) {
            Ok(day) => Ok(Self { day, decimal_year }),
            Err(_) => Err(missed),
        }
    }

    /// The year and the part of it that has passed: year + (day of the year − 1) / (days in the
    /// year), for a day taken at its start. This is the convention of NOAA's own WMM software
    /// (`MAG_DateToYear`).
    pub fn decimal_year(self) -> f64 {
        self.decimal_year
    }

    fn at_start_of(day: time::Date) -> Self {
        let passed = f64::from(day.ordinal() - 1) / f64::from(days_in_year(day.year()));
        Self {
            day,
            decimal_year: f64::from(day.year()) + passed,
        }
    }
}

impl fmt::Display for Date {
    /// The day, written year-month-day.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.day.fmt(f)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn decimal_year(text: &str) -> f64 {
        Date::parse(text).unwrap().decimal_year()
    }

    #[test]
    fn counts_the_days_that_have_passed() {
        assert_eq!(decimal_year("2025-01-01"), 2025.0);
        assert_eq!(decimal_year("2026-12-31"), 2026.0 + 364.0 / 365.0);
        // 2028 is a leap year: 31 + 29 days before the first of March.
        assert_eq!(decimal_year("2028-03-01"), 2028.0 + 60.0 / 366.0);
    }

    #[test]
    fn a_decimal_year_names_its_day() {
        let named = |year| Date::from_decimal_year(year).unwrap().to_string();
        assert_eq!(named(2025.0), "2025-01-01");
        assert_eq!(named(2027.5), "2027-07-02");
        assert_eq!(named(2028.9999), "2028-12-31");
        assert_eq!(named(0.0), "0000-01-01");
    }

    #[test]
    fn every_day_of_the_model_survives_the_decimal_year() {
        let mut day = time::Date::from_ordinal_date(2025, 1).unwrap();
        while day.year() < 2030 {
            let date = Date::parse(&day.to_string()).unwrap();
            let again = Date::from_decimal_year(date.decimal_year()).unwrap();
            assert_eq!(date, again);
            day = day.next_day().unwrap();
        }
    }

    #[test]
    fn refuses_what_is_not_year_month_day() {
        for text in [
            "",
            "2026",
            "2026-05",
            "2026-5-1",
            "2026-02-29",
            "2026-13-01",
            "20260501",
            "2026-121",
            "2026-W18-5",
            "2026-05-01T12:00",
            " 2026-05-01",
            "2026-05-01\n",
            "+002026-05-01",
            "-0001-01-01",
            "01/05/2026",
            "２０２６-05-01",
        ] {
            let refused = Date::parse(text).unwrap_err();
            assert_eq!(
                refused.to_string(),
                format!(
                    "date must be a day of the calendar written year-month-day, \
                     such as 2026-05-01, not {text:?}"
                )
            );
        }
    }

    #[test]
    fn a_long_wrong_text_is_cut_short() {
        let refused = Date::parse(&"é".repeat(1000)).unwrap_err().to_string();
        assert!(refused.ends_with(&format!("not \"{}\"", "é".repeat(SHOWN))));
    }

    #[test]
    fn refuses_a_decimal_year_that_is_none() {
        for year in [f64::NAN, f64::INFINITY, -0.1, 9999.1, 1e300] {
            assert!(Date::from_decimal_year(year).is_err());
        }
    }
}
