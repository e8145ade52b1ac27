//! The day, by the browser's clock.

use web_sys::js_sys::Date;

/// Today as year-month-day.
pub(crate) fn today() -> String {
    let iso = String::from(Date::new_0().to_iso_string());
    iso.split('T').next().unwrap_or_default().to_owned()
}
