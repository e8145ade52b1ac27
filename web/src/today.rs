//! The day, by the browser's clock.

use web_sys::js_sys::Date;

/// Today as year-month-day.
pub(crate) fn today() -> String {
    let iso = String::from(Date::new_0().to_iso_string());
    iso.split('T').next().unwrap_or_default().to_owned()
}

/// Today as a number of days, counted from a fixed one at midnight where the user is.
pub(crate) fn day() -> u32 {
    let now = Date::new_0();
    let minutes = now.get_time() / 60_000.0 - now.get_timezone_offset();
    // Negative before 1970: a clock that is set so far back counts as that day.
    (minutes / (24.0 * 60.0)).floor() as u32
}
