//! English, for the form that sets a flight.

use super::en::{latitude_text, longitude_text};
use super::{Button, FormWords};
use crate::setting::IronChoice;
use crate::situation_form::{Axis, Entry, Fault, FloatEntry, Mark, Wrong};
use compass::range::Range;
use compass::unit::Unit;

/// The words of the form.
pub(super) const FORM: FormWords = FormWords {
    label,
    hint: |entry| match entry {
        Entry::Latitude => "°, south −",
        Entry::Longitude => "°, west −",
        Entry::Altitude => "feet",
        Entry::Date => "2025 to 2029",
        Entry::Dip => "°, up −",
        Entry::Horizontal => "nT",
        Entry::Airspeed => "knots, 60 to 250",
        Entry::Hard(Axis::Fore) => "nT, aft −, within ±50 000",
        Entry::Hard(Axis::Right) => "nT, left −, within ±50 000",
        Entry::Hard(Axis::Down) => "nT, up −, within ±50 000",
        Entry::Soft(..) | Entry::Float(_) => "",
    },
    float_hint: |range, mark| {
        let mark = match mark {
            Mark::Chosen => "chosen",
            Mark::CommonPractice => "common practice",
            Mark::Standard => "chosen, twice ISO 25862’s bound",
            Mark::Own => "your own",
        };
        let unit = range.unit.suffix();
        format!(
            "{} to {}{unit} · {mark}",
            number(range.least),
            number(range.most)
        )
    },
    hemisphere: "Hemisphere",
    north: "North",
    south: "South",
    map: "Map of the world: arrow keys move the place",
    map_hint: "Click, drag or use the arrow keys (5°; with Shift 1°). Lines: equal dip every 20°, dashed where it points up; the heavy one is the magnetic equator.",
    map_place: |position, dip| {
        let Some((latitude, longitude)) = position else {
            return "No place yet".to_owned();
        };
        let place = format!(
            "{} {}",
            latitude_text(latitude.to_radians()),
            longitude_text(longitude.to_radians())
        );
        match dip {
            Some(dip) => {
                let side = if dip < 0.0 { "up" } else { "down" };
                format!("{place}: dip {:.0}° {side}", dip.abs())
            }
            None => place,
        }
    },
    dip_mark: |degrees| format!("{}°", number(f64::from(degrees))),
    iron: "Iron",
    iron_choice: |iron| match iron {
        Some(IronChoice::None) => "No iron",
        Some(IronChoice::MagnetAhead) => "Magnet ahead of the compass",
        Some(IronChoice::SoftFrame) => "Soft iron frame",
        None => "Iron of your own",
    },
    iron_option: |iron| match iron {
        IronChoice::None => "None",
        IronChoice::MagnetAhead => "Magnet ahead",
        IronChoice::SoftFrame => "Soft iron frame",
    },
    own: "Your own",
    float_numbers: "Float, number by number",
    float_note: "No published figures for an aircraft’s float were found, so most are chosen.",
    iron_numbers: "Iron and deviation",
    iron_note: "All of it is invented, to be tried.",
    axes: ["Fore", "Right", "Down"],
    soft: "Soft iron",
    soft_hint: " What it adds along each row for a field of 1 along each column; within ±0.5",
    deviation: "Deviation in level flight on",
    cardinals: ["360°", "090°", "180°", "270°"],
    deviation_value: |degrees| {
        let Some(degrees) = degrees else {
            return "–".to_owned();
        };
        let tenths = (10.0 * degrees).round() / 10.0;
        if tenths == 0.0 {
            "0°".to_owned()
        } else if tenths > 0.0 {
            format!("{tenths:.1}° E")
        } else {
            format!("{:.1}° W", -tenths)
        }
    },
    undo: Button {
        label: "Undo",
        name: "Undo the last change here",
    },
    undone: "Undone",
    none_undone: "Nothing to undo",
    reset: Button {
        label: "Reset",
        name: "Reset everything here",
    },
    old_flight: Button {
        label: "Flight before",
        name: "Flight before: return to it",
    },
    begin: "Start a new flight",
    fault,
    refused: |refused| {
        format!(
            "Float, field and speed together change too fast to be followed: {} times a second, at most {}. Lengthen the yaw period or lower a damping ratio.",
            number(refused.value.round()),
            number(refused.range.most.round())
        )
    },
};

fn label(entry: Entry) -> &'static str {
    match entry {
        Entry::Latitude => "Latitude",
        Entry::Longitude => "Longitude",
        Entry::Altitude => "Altitude",
        Entry::Date => "Date",
        Entry::Dip => "Dip",
        Entry::Horizontal => "Horizontal intensity",
        Entry::Airspeed => "Starting speed",
        Entry::Float(FloatEntry::YawPeriod) => "Yaw period",
        Entry::Float(FloatEntry::YawDamping) => "Yaw damping ratio",
        Entry::Float(FloatEntry::LevelTilt) => "Tilt in level flight",
        Entry::Float(FloatEntry::TiltDamping) => "Tilt damping ratio",
        Entry::Float(FloatEntry::InertiaRatio) => "Inertia ratio",
        Entry::Float(FloatEntry::LiquidSpinUp) => "Liquid’s spin-up time",
        Entry::Float(FloatEntry::Balance) => "Balanced for vertical field",
        Entry::Float(FloatEntry::Friction) => "Friction angle",
        Entry::Float(FloatEntry::Vibration) => "Vibration",
        Entry::Float(FloatEntry::ReferenceHorizontal) => "Reference, horizontal",
        Entry::Float(FloatEntry::ReferenceVertical) => "Reference, vertical",
        Entry::Hard(Axis::Fore) => "Hard iron, fore",
        Entry::Hard(Axis::Right) => "Hard iron, right",
        Entry::Hard(Axis::Down) => "Hard iron, down",
        Entry::Soft(Axis::Fore, Axis::Fore) => "Soft iron, fore by fore",
        Entry::Soft(Axis::Fore, Axis::Right) => "Soft iron, fore by right",
        Entry::Soft(Axis::Fore, Axis::Down) => "Soft iron, fore by down",
        Entry::Soft(Axis::Right, Axis::Fore) => "Soft iron, right by fore",
        Entry::Soft(Axis::Right, Axis::Right) => "Soft iron, right by right",
        Entry::Soft(Axis::Right, Axis::Down) => "Soft iron, right by down",
        Entry::Soft(Axis::Down, Axis::Fore) => "Soft iron, down by fore",
        Entry::Soft(Axis::Down, Axis::Right) => "Soft iron, down by right",
        Entry::Soft(Axis::Down, Axis::Down) => "Soft iron, down by down",
    }
}

fn fault(fault: &Fault) -> String {
    let name = label(fault.entry);
    let such = match fault.entry {
        Entry::Latitude => "a number of degrees, such as 52 or 33 S",
        Entry::Longitude => "a number of degrees, such as 13.4 or 71 W",
        Entry::Altitude => "a number of feet, such as 3000",
        Entry::Date => "a day, such as 2026-05-01",
        Entry::Dip => "a number of degrees, such as 65",
        Entry::Horizontal => "a number of nT, such as 20000",
        Entry::Airspeed => "a number of knots, such as 100",
        Entry::Hard(_) => "a number of nT, such as 1500",
        Entry::Soft(..) => "a number, such as 0.05",
        Entry::Float(entry) => match entry.range().unit {
            Unit::Second => "a number of seconds, such as 6",
            Unit::Degree => "a number of degrees, such as 3",
            Unit::Nanotesla => "a number of nT, such as 20000",
            _ => "a number, such as 0.7",
        },
    };
    match &fault.wrong {
        Wrong::Empty | Wrong::NotADate => format!("{name} must be {such}."),
        Wrong::NotANumber(text) => format!("{name} must be {such}, not “{text}”."),
        Wrong::OutOfRange { range, value } => out_of_range(name, *range, *value),
        Wrong::OutsideModel(date) => format!(
            "Date must be from 2025-01-01 to 2029-12-31, the life of the magnetic model, not {date}."
        ),
        Wrong::TooStrong => {
            "Dip and horizontal intensity together give a vertical field beyond 100\u{202f}000 nT: lower one of them.".to_owned()
        }
        Wrong::Model(reason) => format!("The magnetic model gives no field here: {reason}."),
    }
}

/// What is wrong with a field of a form, and how to mend it: of a place or a day as everywhere,
/// and else by its name and what may stand in it.
pub(super) fn refusal(entry: Option<Entry>, name: &str, such: &str, wrong: &Wrong) -> String {
    if let Some(entry) = entry {
        let wrong = wrong.clone();
        return (FORM.fault)(&Fault { entry, wrong });
    }
    match wrong {
        Wrong::OutOfRange { range, value } => out_of_range(name, *range, *value),
        Wrong::NotANumber(text) => format!("{name} must be {such}, not “{text}”."),
        _ => format!("{name} must be {such}."),
    }
}

pub(super) fn out_of_range(name: &str, range: Range, value: f64) -> String {
    let unit = range.unit.suffix();
    format!(
        "{name} must be from {}{unit} to {}{unit}, not {}{unit}.",
        number(range.least),
        number(range.most),
        number(value)
    )
}

/// A number with a true minus.
fn number(value: f64) -> String {
    value.to_string().replace('-', "−")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::situation_form::{SituationForm, Way};

    #[test]
    fn a_fault_says_what_where_and_how_to_mend_it() {
        let said = |form: SituationForm| (FORM.fault)(&form.setting().unwrap_err()[0]);
        let form = || SituationForm {
            way: Way::Place,
            ..SituationForm::new("2026-05-01".to_owned())
        };
        assert_eq!(
            said(SituationForm {
                latitude: "-95.5".to_owned(),
                ..form()
            }),
            "Latitude must be from −90° to 90°, not −95.5°."
        );
        assert_eq!(
            said(SituationForm {
                longitude: "west".to_owned(),
                ..form()
            }),
            "Longitude must be a number of degrees, such as 13.4 or 71 W, not “west”."
        );
        assert_eq!(
            said(SituationForm {
                date: "2031-01-01".to_owned(),
                ..form()
            }),
            "Date must be from 2025-01-01 to 2029-12-31, the life of the magnetic model, \
             not 2031-01-01."
        );
    }

    #[test]
    fn a_number_of_the_float_says_its_range_and_where_it_comes_from() {
        let said = FORM.float_hint;
        assert_eq!(
            said(FloatEntry::YawPeriod.range(), Mark::Chosen),
            "0.5 to 120 s · chosen"
        );
        assert_eq!(
            said(FloatEntry::LevelTilt.range(), Mark::Own),
            "0.1 to 15° · your own"
        );
    }

    #[test]
    fn deviation_has_its_side_unless_there_is_none() {
        let said = FORM.deviation_value;
        assert_eq!(said(Some(-4.61)), "4.6° W");
        assert_eq!(said(Some(0.04)), "0°");
        assert_eq!(said(None), "–");
    }
}
