//! English, for what stands beside the card and for the chart against heading.

use super::Button;
use super::views::{Errors, ReadOff, ViewWords};
use crate::preferences::Aside;
use drawing::error_chart::LineFigures;
use flights::manoeuvre::Kind;

/// The words of the track, the heading indicator and the chart of errors.
pub(super) const VIEWS: ViewWords = ViewWords {
    keys: "Beside; set indicator; errors",
    beside: "Beside the card",
    aside: |aside| match aside {
        Aside::Rose => "Rose",
        Aside::Track => "Track",
        Aside::Indicator => "Indicator",
    },
    show: |aside| match aside {
        Aside::Rose => Button {
            label: "Rose",
            name: "Rose: show it large",
        },
        Aside::Track => Button {
            label: "Track",
            name: "Track: show it large",
        },
        Aside::Indicator => Button {
            label: "Indicator",
            name: "Indicator: show it large",
        },
    },
    put_aside: |aside| match aside {
        Aside::Rose => "Beside the card: the rose.".to_owned(),
        Aside::Track => "Beside the card: the track.".to_owned(),
        Aside::Indicator => "Beside the card: the heading indicator.".to_owned(),
    },

    track: |readout, shown| {
        let variation = shown.variation.map_or_else(String::new, |degrees| {
            format!(
                " True north lies {} of magnetic north.",
                // East variation turns true north to the left.
                sided(-degrees, "right", "left")
            )
        });
        format!(
            "Track from above, magnetic north up: {} flown in still air. Ray of the heading {:03}°, ray of the compass {:03}°: the compass {}.{variation}",
            distance(f64::from(shown.flown)),
            readout.heading.whole_degrees(),
            readout.compass.whole_degrees(),
            (super::en::ENGLISH.difference)(readout.difference)
        )
    },
    magnetic_north: "magnetic north",
    true_north: "true north",
    variation: |degrees| {
        let side = if degrees < 0.0 { "west" } else { "east" };
        format!("{:.0}° {side}", degrees.abs())
    },
    heading_ray: |degrees| format!("heading {degrees:03}°"),
    compass_ray: |degrees| format!("compass {degrees:03}°"),
    scale: distance,

    dial: |readout| {
        let indication = readout.indication();
        format!(
            "Heading indicator, a card under a fixed index: {:03}°. {}",
            indication.whole_degrees(),
            (VIEWS.indicator_error)(readout.indicator_error())
        )
    },
    indicator_error: |degrees| match degrees {
        0 => "Shows the real heading.".to_owned(),
        1.. => format!("Shows {degrees}° more than the real heading."),
        _ => format!("Shows {}° less than the real heading.", -degrees),
    },
    drifted: |tenths, seconds| {
        format!(
            "Drift {} since set {} ago.",
            tenths_of_degrees(tenths),
            match seconds {
                0..60 => format!("{seconds} s"),
                _ => format!("{} min", seconds / 60),
            }
        )
    },
    earth_drift: |tenths| match tenths {
        Some(tenths) => format!("Earth’s rotation {}/h", tenths_of_degrees(tenths)),
        None => "Field by hand, no latitude: no drift by the Earth’s rotation".to_owned(),
    },
    mechanical_drift: |degrees| match degrees {
        0 => "0°/h".to_owned(),
        1.. => format!("+{degrees}°/h"),
        _ => format!("−{}°/h", -degrees),
    },
    mechanical: "Own drift",
    set_indicator: Button {
        label: "Set to compass",
        name: "Set to compass: turn the indicator to what the compass reads now",
    },
    indicator_set: |degrees| format!("Indicator set to the compass: {degrees:03}°."),
    drift_less: Button {
        label: "Less",
        name: "Less: 5° an hour less drift of its own",
    },
    drift_more: Button {
        label: "More",
        name: "More: 5° an hour more drift of its own",
    },

    against: "Drawn against",
    against_time: Button {
        label: "Time",
        name: "Time: draw the flight against it",
    },
    against_heading: Button {
        label: "Heading",
        name: "Heading: draw the errors against it",
    },
    errors_title: "Error against heading",
    read_at: "Heading to read the errors on",
    closed_form: "closed form",
    rule: "rule of thumb",
    this_flight: "this flight",
    cardinals: ["N", "E", "S", "W"],
    no_errors: "Turn, or change speed: the errors are drawn here.",
    sides: |kind| match kind {
        Kind::Turn { bank } if bank < 0.0 => ["lags", "leads"],
        Kind::Turn { .. } => ["leads", "lags"],
        Kind::SpeedChange { .. } => ["reads more", "reads less"],
    },
    errors_of,
    read_off,
    errors: |errors, figures| {
        if errors.kind.is_none() {
            return VIEWS.no_errors.to_owned();
        }
        let mut said = format!("{}.", errors_of(errors));
        for (name, line) in [
            ("Closed form", figures.closed_form),
            ("Rule of thumb", figures.rule),
            ("This flight", figures.float),
        ] {
            if let Some(line) = line {
                said.push_str(&format!(" {name}: {}.", span(errors.kind, &line)));
            }
        }
        said
    },
};

fn errors_of(errors: &Errors) -> String {
    let dip = errors.dip.round();
    let Some(kind) = errors.kind else {
        return VIEWS.no_errors.to_owned();
    };
    let what = match kind {
        Kind::Turn { bank } => {
            let side = if bank < 0.0 { "Left" } else { "Right" };
            format!("{side} turn, {}° of bank", bank.to_degrees().abs().round())
        }
        Kind::SpeedChange { acceleration } => {
            let does = if acceleration < 0.0 {
                "Losing"
            } else {
                "Gaining"
            };
            format!("{does} speed at {:.2} g", acceleration.abs())
        }
    };
    let rule = match kind {
        Kind::Turn { .. } if !errors.has_latitude => "; no latitude, so no rule of thumb",
        Kind::Turn { .. } => "",
        Kind::SpeedChange { .. } => "; the rule of thumb has no figure for it",
    };
    format!("{what}, dip {dip}°{rule}")
}

fn read_off(read: &ReadOff) -> String {
    let Some(kind) = read.kind else {
        return format!("Heading {:03}°: nothing flown yet", read.heading);
    };
    let lines = [
        (VIEWS.closed_form, read.closed_form),
        (VIEWS.rule, read.rule),
        (VIEWS.this_flight, read.float),
    ];
    let said: Vec<String> = lines
        .iter()
        .filter_map(|(name, error)| error.map(|error| format!("{name} {}", by(kind, error))))
        .collect();
    format!("Heading {:03}°: {}", read.heading, said.join(", "))
}

/// What an error in whole degrees is in a manoeuvre.
fn by(kind: Kind, error: i16) -> String {
    let size = error.unsigned_abs();
    match (error, (VIEWS.sides)(kind)) {
        (0, _) => "agrees".to_owned(),
        (1.., [above, _]) => format!("{above} {size}°"),
        (_, [_, below]) => format!("{below} {size}°"),
    }
}

fn span(kind: Option<Kind>, line: &LineFigures) -> String {
    kind.map_or_else(String::new, |kind| {
        format!(
            "{} on {:03}°, {} on {:03}°",
            by(kind, line.least),
            line.least_at,
            by(kind, line.greatest),
            line.greatest_at
        )
    })
}

/// Whole degrees with their side.
fn sided(degrees: i16, positive: &str, negative: &str) -> String {
    let side = if degrees < 0 { negative } else { positive };
    format!("{}° {side}", degrees.unsigned_abs())
}

fn tenths_of_degrees(tenths: i32) -> String {
    let sign = if tenths < 0 { "−" } else { "" };
    format!("{sign}{:.1}°", f64::from(tenths.abs()) / 10.0)
}

/// Metres below a kilometre, and kilometres from there on.
fn distance(metres: f64) -> String {
    if metres < 1000.0 {
        format!("{metres:.0} m")
    } else if metres < 10_000.0 {
        format!("{} km", (metres / 100.0).round() / 10.0)
    } else {
        format!("{:.0} km", metres / 1000.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use drawing::error_chart::ErrorFigures;

    #[test]
    fn errors_are_lags_and_leads_by_the_side_of_the_turn() {
        let read = |kind| {
            read_off(&ReadOff {
                heading: 5,
                kind: Some(kind),
                closed_form: Some(-22),
                rule: Some(0),
                float: None,
            })
        };
        assert_eq!(
            read(Kind::Turn { bank: 0.3 }),
            "Heading 005°: closed form lags 22°, rule of thumb agrees"
        );
        assert!(read(Kind::Turn { bank: -0.3 }).contains("closed form leads 22°"));
        let slowing = Kind::SpeedChange { acceleration: -0.1 };
        assert!(read(slowing).contains("closed form reads less 22°"));
    }

    #[test]
    fn what_was_flown_is_named() {
        let errors = Errors {
            kind: Some(Kind::Turn { bank: -0.35 }),
            dip: 67.3,
            has_latitude: false,
        };
        assert_eq!(
            errors_of(&errors),
            "Left turn, 20° of bank, dip 67°; no latitude, so no rule of thumb"
        );
        let none = Errors {
            kind: None,
            ..errors
        };
        let nothing = ErrorFigures::default();
        assert_eq!((VIEWS.errors)(&none, &nothing), VIEWS.no_errors);
    }

    #[test]
    fn drift_and_distance_carry_their_units() {
        assert_eq!((VIEWS.drifted)(-2, 75), "Drift −0.2° since set 1 min ago.");
        assert_eq!((VIEWS.drifted)(0, 4), "Drift 0.0° since set 4 s ago.");
        assert_eq!((VIEWS.earth_drift)(Some(-119)), "Earth’s rotation −11.9°/h");
        assert_eq!((VIEWS.mechanical_drift)(5), "+5°/h");
        assert_eq!(distance(500.0), "500 m");
        assert_eq!(distance(2000.0), "2 km");
        assert_eq!(
            (VIEWS.indicator_error)(12),
            "Shows 12° more than the real heading."
        );
    }
}
