use crate::date::Date;
use compass::range::OutOfRange;
use thiserror::Error;

/// Why there is no field.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum Error {
    /// A number beyond its range, or not a number.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
    /// A text that is not a day of the calendar.
    #[error(
        "date must be a day of the calendar written year-month-day, such as 2026-05-01, not {given:?}"
    )]
    NotADate {
        /// What was given, cut short if it is long.
        given: String,
    },
    /// A date at which WMM2025 does not hold.
    #[error("date must be from 2025-01-01 to 2029-12-31, the life of WMM2025, not {date}")]
    OutsideModel {
        /// The date that was asked for.
        date: Date,
    },
    /// The model refused a place and date that are within the ranges. No such place is known.
    #[error("WMM2025 gives no field here: {reason}")]
    Model {
        /// What the model says.
        reason: String,
    },
}
