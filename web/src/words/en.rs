//! English.

use super::{Button, FlightWords, Words, en_links, en_numbers, en_views, en_why};
use crate::session::Readout;
use crate::setting::FloatChoice;
use crate::situation_form::feet;
use compass::field::Zone;
use compass::gust::RoughAir;
use compass::reading::Difference;
use drawing::strip_chart::{self, Peak, StripFigures};
use earth::FieldSource;
use flights::events::{Event, Side};

/// What every page may say.
pub(super) static ENGLISH: Words = Words {
    tag: "en",
    name: "Dipwise",
    caution: "For training only, never for navigation. The aircraft’s own manual, local rules and a licensed instructor come first.",
    heading: "Magnetic heading",
    compass: "Compass",
    difference: |difference| match difference {
        Difference::Agrees => "agrees".to_owned(),
        Difference::Lags(by) => format!("lags by {by}°"),
        Difference::Leads(by) => format!("leads by {by}°"),
        Difference::ReadsMore(by) => format!("reads {by}° more"),
        Difference::ReadsLess(by) => format!("reads {by}° less"),
    },
    error: |difference| match difference {
        Difference::Agrees => String::new(),
        Difference::Lags(by) => format!("lags {by}°"),
        Difference::Leads(by) => format!("leads {by}°"),
        Difference::ReadsMore(by) => format!("{by}° more"),
        Difference::ReadsLess(by) => format!("{by}° less"),
    },
    at_stop: "The card touches its stop",
    bank: "Bank",
    bank_value: |degrees| sided(degrees, "right", "left", "level"),
    rate_of_turn: "Rate of turn",
    rate_value: |tenths| format!("{:.1}°/s", f64::from(tenths.abs()) / 10.0),
    airspeed: "Airspeed",
    airspeed_value: |knots| format!("{knots} kt"),
    by_night: "Night",
    by_day: "Day",
    links: en_links::LINKS,
    why: en_why::WHY,
    views: en_views::VIEWS,
    pages: en_numbers::PAGES,
    place: |setting| match setting.source {
        FieldSource::Latitude { latitude } => latitude_text(latitude),
        FieldSource::Place { place, date } => {
            let above = match feet(place.altitude()) {
                0 => String::new(),
                feet => format!(", {feet} ft"),
            };
            format!(
                "{} {}{above}, {date}",
                latitude_text(place.latitude()),
                longitude_text(place.longitude())
            )
        }
        FieldSource::ByHand { .. } => "Field by hand".to_owned(),
    },
    dip_line: |degrees| {
        let side = if degrees < 0.0 { "up" } else { "down" };
        format!("Dip {:.1}° {side}", degrees.abs())
    },
    variation_line: |degrees| {
        let side = if degrees < 0.0 { "W" } else { "E" };
        format!("Variation {:.1}° {side}", degrees.abs())
    },
    horizontal_line: |nanotesla| format!("Horizontal {} nT", thousands(nanotesla)),
};

/// What the page of the flight says.
pub(super) static FLIGHT: FlightWords = FlightWords {
    of_all: &ENGLISH,

    failed: "The flight could not be started.",

    readings: "Compass and heading",
    true_heading: |degrees| format!("True {degrees:03}°"),
    zone_caution: "Weak field: use with caution",
    zone_unreliable: "Field too weak: unreliable",
    situation,
    card_face: |readout| {
        if !readout.cover.shows_compass() {
            return format!("The window is covered. {}", readings(readout));
        }
        let stop = if readout.at_stop {
            " It touches its stop."
        } else {
            ""
        };
        format!(
            "Floating card in its window above the heading ruler. {} The card is tilted {}°.{stop}",
            readings(readout),
            readout.tilt.round()
        )
    },
    rose: |readout| format!("Rose from above with two pointers. {}", readings(readout)),
    tell: "Tell the situation",

    controls: "Controls",
    standard_rate: "standard rate",
    climb: "Climb",
    climb_value: |degrees| sided(degrees, "up", "down", "level"),
    rudder: "Rudder",
    rudder_value: |percent| match percent {
        0 => "centred".to_owned(),
        1.. => format!("{percent} % right"),
        _ => format!("{} % left", -percent),
    },
    motion: "Motion",
    motion_value: factor,
    slow_motion: |rate| format!("{} motion", factor(rate)),
    paused: "Paused",
    asleep: "Paused: out of sight",
    bank_left: Button {
        label: "Left",
        name: "Left: bank 5° further left",
    },
    level_wings: Button {
        label: "Level",
        name: "Level the wings",
    },
    bank_right: Button {
        label: "Right",
        name: "Right: bank 5° further right",
    },
    slower: Button {
        label: "Slower",
        name: "Slower by 5 knots",
    },
    faster: Button {
        label: "Faster",
        name: "Faster by 5 knots",
    },
    descend: Button {
        label: "Down",
        name: "Down: descend by 1° more",
    },
    climb_more: Button {
        label: "Up",
        name: "Up: climb by 1° more",
    },
    rudder_left: Button {
        label: "Left",
        name: "Left rudder, a quarter more",
    },
    rudder_right: Button {
        label: "Right",
        name: "Right rudder, a quarter more",
    },
    pause: Button {
        label: "Pause",
        name: "Pause the flight",
    },
    fly_on: Button {
        label: "Fly on",
        name: "Fly on",
    },
    step: Button {
        label: "Step",
        name: "Step a tenth of a second",
    },
    slow_down: Button {
        label: "½×",
        name: "½× motion: half as fast",
    },
    speed_up: Button {
        label: "2×",
        name: "2× motion: twice as fast",
    },
    restart: Button {
        label: "Restart",
        name: "Restart the flight from its start",
    },

    show_why: Button {
        label: "Why",
        name: "Why: the bowl and the torques on the card",
    },
    timeline: "Timeline",
    playhead: "Time of flight",
    moment: |readout| {
        let (heading, compass) = figures(readout);
        let mut said = format!(
            "{}: heading {heading}, compass {compass}",
            clock(readout.time)
        );
        if readout.cover.shows_both() {
            said.push_str(&format!(", {}", (ENGLISH.difference)(readout.difference)));
        }
        said
    },
    flight,
    event: |event| match *event {
        Event::TurnBegins(Side::Left) => "left turn".to_owned(),
        Event::TurnBegins(Side::Right) => "right turn".to_owned(),
        Event::GreatestLag(by) => format!("lags {}°", by.to_degrees().round()),
        Event::GreatestLead(by) => format!("leads {}°", by.to_degrees().round()),
        Event::RolledOut => "rolled out".to_owned(),
        Event::SpeedsUp => "gains speed".to_owned(),
        Event::SlowsDown => "loses speed".to_owned(),
        Event::SpeedSteady => "speed steady".to_owned(),
        Event::Settled => "settled".to_owned(),
    },
    event_told: |event, moment| {
        let what = match event {
            Event::TurnBegins(Side::Left) => "A left turn begins",
            Event::TurnBegins(Side::Right) => "A right turn begins",
            Event::GreatestLag(_) => "The greatest lag of the turn",
            Event::GreatestLead(_) => "The greatest lead of the turn",
            Event::RolledOut => "Rolled out of the turn",
            Event::SpeedsUp => "Speed begins to grow",
            Event::SlowsDown => "Speed begins to fall",
            Event::SpeedSteady => "Speed is steady",
            Event::Settled => "The card has settled",
        };
        format!("{what}. {moment}.")
    },
    strips: strip_chart::Words {
        heading: "heading",
        compass: "compass",
        error: "error",
        lags: "lags",
        leads: "leads",
        bank: "bank",
        right: "right",
        left: "left",
        airspeed: "knots",
        stretch: "loop",
        empty: "The flight is drawn here as it is flown.",
    },
    looking_back: "Looking back",
    looking_hint: "This moment is past: fly on from here, or return to the end, to move the controls.",
    last_event: Button {
        label: "Event",
        name: "Event before this: look at it",
    },
    next_event: Button {
        label: "Event",
        name: "Event after this: look at it",
    },
    look_at_end: Button {
        label: "End",
        name: "End of the flight: return to it",
    },
    fly_from_here: Button {
        label: "Fly on from here",
        name: "Fly on from here and keep the old flight",
    },
    return_to_old: Button {
        label: "Return to the old flight",
        name: "Return to the old flight and keep this one",
    },
    save_csv: Button {
        label: "CSV",
        name: "CSV: save the flight as a table",
    },
    save_svg: Button {
        label: "SVG",
        name: "SVG: save the chart as a picture",
    },

    show_card: Button {
        label: "Card",
        name: "Card: show it large",
    },
    keys: "Keys",
    keys_fly: "Keys fly the aircraft",
    key_bank: "Bank left, right by 5°",
    key_speed: "Faster, slower by 5 kt",
    key_fine: "The same by 1",
    key_level: "Level the wings",
    key_climb: "Climb, descend by 1°",
    key_rudder: "Left, right rudder",
    key_pause: "Pause, go on",
    key_step: "Back, step 0.1 s",
    key_events: "Event before, after",
    key_ends: "Start, end of the flight",
    key_branch: "Fly from here; old flight",
    key_rate: "Slow, fast motion",
    key_restart: "Restart",
    key_why: "Why, timeline",
    key_situation: "Situation, undo in it",
    key_look: "Card large; day, night",
    key_tell: "Tell situation; this list",

    set_situation: "Situation",
    no_variation: "No variation",
    way: "Set the field by",
    way_latitude: "Latitude",
    way_place: "Place, date",
    way_by_hand: "By hand",
    gives: "This gives",
    gives_nothing: "No field yet: mend what is marked above.",
    start_heading: "On heading",
    float: "Float",
    float_choice: |float| match float {
        Some(FloatChoice::Standard) => "Standard float",
        Some(FloatChoice::Brisk) => "Brisk float",
        Some(FloatChoice::Sluggish) => "Sluggish float",
        Some(FloatChoice::LightlyDamped) => "Lightly damped float",
        Some(FloatChoice::StickyPivot) => "Float on a sticky pivot",
        None => "Float of your own",
    },
    float_option: |float| match float {
        FloatChoice::Standard => "Standard",
        FloatChoice::Brisk => "Brisk",
        FloatChoice::Sluggish => "Sluggish",
        FloatChoice::LightlyDamped => "Lightly damped",
        FloatChoice::StickyPivot => "Sticky pivot",
    },
    air: "Air",
    air_choice: |air| match air {
        RoughAir::Still => "Still air",
        RoughAir::Light => "Light turbulence",
        RoughAir::Moderate => "Moderate turbulence",
        RoughAir::Severe => "Severe turbulence",
    },
    air_option: |air| match air {
        RoughAir::Still => "Still",
        RoughAir::Light => "Light turbulence",
        RoughAir::Moderate => "Moderate turbulence",
        RoughAir::Severe => "Severe turbulence",
    },
};

fn readings(readout: &Readout) -> String {
    let (heading, compass) = figures(readout);
    let mut said = format!("Magnetic heading {heading}, compass {compass}");
    if readout.cover.shows_both() {
        said.push_str(&format!(
            ": the compass {}",
            (ENGLISH.difference)(readout.difference)
        ));
    }
    said.push('.');
    said
}

/// Heading and compass in three digits; covered where they are.
fn figures(readout: &Readout) -> (String, String) {
    let figure = |shown: bool, degrees: u16| {
        if shown {
            format!("{degrees:03}°")
        } else {
            "covered".to_owned()
        }
    };
    (
        figure(
            readout.cover.shows_heading(),
            readout.heading.whole_degrees(),
        ),
        figure(
            readout.cover.shows_compass(),
            readout.compass.whole_degrees(),
        ),
    )
}

fn situation(readout: &Readout) -> String {
    let mut said = readings(readout);
    let bank = readout.bank.round() as i32;
    said.push_str(&match bank {
        0 => " Wings level".to_owned(),
        _ => format!(" Bank {}", sided(bank, "right", "left", "")),
    });
    let tenths = (10.0 * readout.rate_of_turn).round() as i32;
    if tenths != 0 {
        let side = if tenths > 0 { "right" } else { "left" };
        let rate = f64::from(tenths.abs()) / 10.0;
        said.push_str(&format!(", turning {side} at {rate:.1}° a second"));
    }
    said.push_str(&format!(
        ", airspeed {} knots.",
        readout.airspeed.round() as i32
    ));
    if readout.at_stop && readout.cover.shows_compass() {
        said.push_str(&format!(" {}.", ENGLISH.at_stop));
    }
    match readout.zone {
        Zone::Reliable => {}
        Zone::Caution => said.push_str(&format!(" {}.", FLIGHT.zone_caution)),
        Zone::Unreliable => said.push_str(&format!(" {}.", FLIGHT.zone_unreliable)),
    }
    if readout.pause.is_some() {
        said.push_str(" Paused.");
    }
    said
}

fn flight(figures: &StripFigures) -> String {
    let Some([from, to]) = figures.time else {
        return FLIGHT.strips.empty.to_owned();
    };
    let mut said = format!("Strip chart of {} of flight.", clock(to - from));
    let peak = |peak: Peak, what: &str| {
        format!(
            " Greatest {what} {}° at {} on heading {:03}°.",
            peak.degrees,
            clock(peak.time),
            peak.heading
        )
    };
    if let Some(lag) = figures.greatest_lag {
        said.push_str(&peak(lag, "lag"));
    }
    if let Some(lead) = figures.greatest_lead {
        said.push_str(&peak(lead, "lead"));
    }
    said
}

/// Minutes, seconds and tenths.
pub(super) fn clock(seconds: f64) -> String {
    let tenths = (10.0 * seconds).round() as u64;
    format!("{}:{:02}.{}", tenths / 600, tenths / 10 % 60, tenths % 10)
}

/// Whole degrees with their side.
pub(super) fn sided(degrees: i32, positive: &str, negative: &str, none: &str) -> String {
    match degrees {
        0 => none.to_owned(),
        1.. => format!("{degrees}° {positive}"),
        _ => format!("{}° {negative}", -degrees),
    }
}

pub(super) fn factor(rate: f64) -> String {
    if rate == 0.125 {
        "⅛×".to_owned()
    } else if rate == 0.25 {
        "¼×".to_owned()
    } else if rate == 0.5 {
        "½×".to_owned()
    } else {
        format!("{rate}×")
    }
}

pub(super) fn latitude_text(radians: f64) -> String {
    let side = if radians < 0.0 { "S" } else { "N" };
    format!("{}° {side}", hundredths(radians.to_degrees().abs()))
}

pub(super) fn longitude_text(radians: f64) -> String {
    let side = if radians < 0.0 { "W" } else { "E" };
    format!("{}° {side}", hundredths(radians.to_degrees().abs()))
}

fn hundredths(value: f64) -> f64 {
    (value * 100.0).round() / 100.0
}

/// A whole number with a narrow space at the thousands.
fn thousands(value: i64) -> String {
    if value < 1000 {
        value.to_string()
    } else {
        format!("{}\u{202f}{:03}", value / 1000, value % 1000)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::session::Session;
    use crate::setting::Setting;

    #[test]
    fn differences_are_named_in_words() {
        let said = ENGLISH.difference;
        assert_eq!(said(Difference::Lags(23)), "lags by 23°");
        assert_eq!(said(Difference::Leads(12)), "leads by 12°");
        assert_eq!(said(Difference::ReadsMore(8)), "reads 8° more");
        assert_eq!(said(Difference::Agrees), "agrees");
    }

    #[test]
    fn the_situation_is_told_in_whole_sentences() {
        let session = Session::new(Setting::home().unwrap()).unwrap();
        assert_eq!(
            (FLIGHT.situation)(&session.readout()),
            "Magnetic heading 360°, compass 360°: the compass agrees. \
             Wings level, airspeed 100 knots."
        );
    }

    #[test]
    fn a_moment_and_a_flight_are_told_with_their_times() {
        let session = Session::new(Setting::home().unwrap()).unwrap();
        assert_eq!(
            (FLIGHT.moment)(&session.readout()),
            "0:00.0: heading 360°, compass 360°, agrees"
        );
        assert_eq!(clock(83.449), "1:23.4");
        assert_eq!(clock(59.96), "1:00.0");
        let figures = StripFigures {
            time: Some([0.0, 61.0]),
            greatest_lag: Some(Peak {
                degrees: 23,
                time: 12.3,
                heading: 7,
            }),
            ..StripFigures::default()
        };
        assert_eq!(
            (FLIGHT.flight)(&figures),
            "Strip chart of 1:01.0 of flight. Greatest lag 23° at 0:12.3 on heading 007°."
        );
    }

    #[test]
    fn values_carry_their_side_and_unit() {
        assert_eq!((ENGLISH.bank_value)(17), "17° right");
        assert_eq!((ENGLISH.bank_value)(-5), "5° left");
        assert_eq!((ENGLISH.bank_value)(0), "level");
        assert_eq!((ENGLISH.rate_value)(-31), "3.1°/s");
        assert_eq!((FLIGHT.motion_value)(0.125), "⅛×");
        assert_eq!((FLIGHT.motion_value)(8.0), "8×");
        assert_eq!(
            (ENGLISH.horizontal_line)(18_470),
            "Horizontal 18\u{202f}470 nT"
        );
        assert_eq!((ENGLISH.dip_line)(-55.04), "Dip 55.0° up");
    }
}
