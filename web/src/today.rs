//! The day, by the browser's clock.

use web_sys::js_sys::Date;

/// Milliseconds of a day.
const DAY: f64 = 86_400_000.0;

/// Today as year-month-day.
pub(crate) fn today() -> String {
    let iso = String::from(Date::new_0().to_iso_string());
    iso.split('T').next().unwrap_or_default().to_owned()
}

/// Today by the calendar where the user is, counted in days from 1 January 1970.
pub(crate) fn local_day() -> u32 {
    let now = Date::new_0();
    day_of(now.get_time(), now.get_timezone_offset())
}

/// The calendar day of a moment (milliseconds since 1970 in UTC) where UTC is so many minutes
/// ahead of the clock.
fn day_of(moment_ms: f64, behind_min: f64) -> u32 {
    // What is not a number counts as 0.
    ((moment_ms - 60_000.0 * behind_min) / DAY).floor() as u32
}

/// The day of the week, 0 for Monday.
pub(crate) fn weekday(day: u32) -> usize {
    // 1 January 1970 was a Thursday.
    (day as usize + 3) % 7
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_begins_at_midnight_where_the_user_is() {
        // 1 June 2026, 22:30 in UTC; 20605 days by `date -u -d 2026-06-01 +%s` over 86400.
        let late = 20_605.0 * DAY + 22.5 * 3_600_000.0;
        assert_eq!(day_of(late, 0.0), 20_605);
        // Two hours east it is tomorrow, in Houston it is not.
        assert_eq!(day_of(late, -120.0), 20_606);
        assert_eq!(day_of(late, 300.0), 20_605);
        assert_eq!(day_of(f64::NAN, 0.0), 0);
        // A Monday.
        assert_eq!(weekday(20_605), 0);
    }
}
