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

/// The day that `--date` names: year-month-day, or a decimal year.
pub(crate) fn date(text: &str) -> Result<Date, Failure> {
    let date = match text.parse::<f64>() {
        Ok(year) => Date::from_decimal_year(year).map_err(earth::Error::from),
        Err(_) => Date::parse(text),
    };
    date.map_err(|error| Failure::at("--date", error))
}
