//! The words of what stands beside the card, and of the chart against heading.

use super::Button;
use crate::preferences::Aside;
use crate::session::Readout;
use drawing::error_chart::ErrorFigures;
use drawing::plan_view::Description;
use flights::manoeuvre::Kind;

/// The words of the track, the heading indicator and the chart of errors.
pub(crate) struct ViewWords {
    /// In the key list: beside the card, the indicator, the chart.
    pub(crate) keys: &'static str,
    pub(crate) beside: &'static str,
    pub(crate) aside: fn(Aside) -> &'static str,
    pub(crate) show: fn(Aside) -> Button,
    /// What stands beside the card now.
    pub(crate) put_aside: fn(Aside) -> String,

    // The track.
    pub(crate) track: fn(&Readout, &Description) -> String,
    pub(crate) magnetic_north: &'static str,
    pub(crate) true_north: &'static str,
    /// Takes degrees, east positive.
    pub(crate) variation: fn(f64) -> String,
    pub(crate) heading_ray: fn(u16) -> String,
    pub(crate) compass_ray: fn(u16) -> String,
    /// Takes metres.
    pub(crate) scale: fn(f64) -> String,

    // The heading indicator.
    pub(crate) dial: fn(&Readout) -> String,
    /// Takes whole degrees, indication less heading.
    pub(crate) indicator_error: fn(i16) -> String,
    /// Takes tenths of a degree drifted, and whole seconds, since it was set.
    pub(crate) drifted: fn(i32, u32) -> String,
    /// Takes tenths of a degree an hour; none where no latitude is known.
    pub(crate) earth_drift: fn(Option<i32>) -> String,
    /// Takes degrees an hour.
    pub(crate) mechanical_drift: fn(i32) -> String,
    pub(crate) mechanical: &'static str,
    pub(crate) set_indicator: Button,
    /// Takes the indication.
    pub(crate) indicator_set: fn(u16) -> String,
    pub(crate) drift_less: Button,
    pub(crate) drift_more: Button,

    // The chart of errors.
    pub(crate) against: &'static str,
    pub(crate) against_time: Button,
    pub(crate) against_heading: Button,
    pub(crate) errors_title: &'static str,
    pub(crate) read_at: &'static str,
    pub(crate) closed_form: &'static str,
    pub(crate) rule: &'static str,
    pub(crate) this_flight: &'static str,
    pub(crate) cardinals: [&'static str; 4],
    pub(crate) no_errors: &'static str,
    /// The two sides of zero: above and below.
    pub(crate) sides: fn(Kind) -> [&'static str; 2],
    /// What the lines are drawn for.
    pub(crate) errors_of: fn(&Errors) -> String,
    /// The lines read off on a heading.
    pub(crate) read_off: fn(&ReadOff) -> String,
    /// The whole chart in sentences.
    pub(crate) errors: fn(&Errors, &ErrorFigures) -> String,
}

/// What the chart of errors is drawn for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Errors {
    /// The manoeuvre; none before the first.
    pub(crate) kind: Option<Kind>,
    /// Dip in degrees, down positive.
    pub(crate) dip: f64,
    /// Whether there is a latitude for the rule of thumb.
    pub(crate) has_latitude: bool,
}

/// What the lines say on one heading, in whole degrees, reading less heading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct ReadOff {
    /// 1 to 360.
    pub(crate) heading: u16,
    /// The manoeuvre that they are drawn for.
    pub(crate) kind: Option<Kind>,
    /// Of the closed form.
    pub(crate) closed_form: Option<i16>,
    /// Of the rule of thumb.
    pub(crate) rule: Option<i16>,
    /// Of this flight.
    pub(crate) float: Option<i16>,
}
