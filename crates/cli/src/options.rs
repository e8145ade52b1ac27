//! Reading options that several commands share.

use crate::failure::Failure;
use compass::range::Range;
use earth::Date;

/// An option's value in SI and radians.
pub(crate) fn accept(option: &str, range: Range, value: f64) -> Result<f64, Failure> {
    range
        .accept(value)
        .map_err(|error| Failure::at(option, error))
}

/// A whole number from 0 on, as an option has it.
///
/// # Errors
/// What is none, as a sentence goes on after the option's name.
pub(crate) fn whole(text: &str) -> Result<u64, String> {
    let most = u64::MAX;
    (text.parse()).map_err(|_| format!("it must be a whole number from 0 to {most}"))
}

/// The day that `--date` names: year-month-day, or a decimal year.
pub(crate) fn date(text: &str) -> Result<Date, Failure> {
    let date = match text.parse::<f64>() {
        Ok(year) => Date::from_decimal_year(year).map_err(earth::Error::from),
        Err(_) => Date::parse(text),
    };
    date.map_err(|error| Failure::at("--date", error))
}
