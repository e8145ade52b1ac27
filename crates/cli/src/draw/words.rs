//! The words of a frame.

use compass::reading::Difference;
use compass::simulation::Moment;
use compass::unit::KNOT;
use drawing::{strip_chart, torque_ledger};

pub(super) const TITLE: &str = "Compass and heading";
pub(super) const HEADING: &str = "Magnetic heading";
pub(super) const COMPASS: &str = "Compass";
pub(super) const AT_STOP: &str = "The card touches its stop";
pub(super) const CAUTION: &str = "For training only, never for navigation. The aircraft’s own manual, \
     local rules and a licensed instructor come first.";

pub(super) const LEDGER: torque_ledger::Words<'static> = torque_ledger::Words {
    parts: [
        "vertical field",
        "balance weight",
        "aircraft’s iron",
        "liquid’s drag",
        "friction",
        "horizontal field",
    ],
    net: "net torque",
    anticlockwise: "turns the card anticlockwise",
    clockwise: "turns the card clockwise",
};

pub(super) const STRIPS: strip_chart::Words<'static> = strip_chart::Words {
    heading: "heading",
    compass: "compass",
    error: "error",
    lags: "lags",
    leads: "leads",
    bank: "bank",
    right: "right",
    left: "left",
    airspeed: "knots",
    stretch: "",
    empty: "",
};

/// Takes the dip in radians, down positive.
pub(super) fn place(dip: f64) -> String {
    let degrees = dip.to_degrees();
    let side = if degrees < 0.0 { "up" } else { "down" };
    format!("dip {:.1}° {side}", degrees.abs())
}

pub(super) fn difference(difference: Difference) -> String {
    match difference {
        Difference::Agrees => "agrees".to_owned(),
        Difference::Lags(by) => format!("lags by {by}°"),
        Difference::Leads(by) => format!("leads by {by}°"),
        Difference::ReadsMore(by) => format!("reads {by}° more"),
        Difference::ReadsLess(by) => format!("reads {by}° less"),
    }
}

/// The same, short, for beside the error's bar.
pub(super) fn error(difference: Difference) -> String {
    match difference {
        Difference::Agrees => String::new(),
        Difference::Lags(by) => format!("lags {by}°"),
        Difference::Leads(by) => format!("leads {by}°"),
        Difference::ReadsMore(by) => format!("{by}° more"),
        Difference::ReadsLess(by) => format!("{by}° less"),
    }
}

pub(super) fn figures(moment: &Moment) -> [(&'static str, String); 3] {
    let tenths = (10.0 * moment.time).round() as u64;
    let time = format!("{}:{:02}.{}", tenths / 600, tenths / 10 % 60, tenths % 10);
    let bank = moment.motion.bank.to_degrees().round() as i32;
    let bank = match bank {
        0 => "level".to_owned(),
        1.. => format!("{bank}° right"),
        _ => format!("{}° left", -bank),
    };
    let airspeed = format!("{:.0} kt", moment.motion.airspeed / KNOT);
    [("Time", time), ("Bank", bank), ("Airspeed", airspeed)]
}

/// The frame in a sentence, for those who do not see it.
pub(super) fn sentence(moment: &Moment) -> String {
    let [(_, time), (_, bank), (_, airspeed)] = figures(moment);
    format!(
        "At {time}: magnetic heading {:03}°, compass {:03}°: the compass {}. Bank {bank}, airspeed \
         {airspeed}.",
        moment.motion.heading.whole_degrees(),
        moment.reading.compass.whole_degrees(),
        difference(moment.difference()),
    )
}
