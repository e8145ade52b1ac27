//! English, for the page of maps.

use super::en_situation;
use super::maps::{DipWords, MapWords};
use crate::maps::{Key, Part, Show};
use crate::situation_form::{Entry, Wrong, nanotesla};
use compass::field::Zone;
use lessons::rule_map::Verdict;

/// The page of maps.
pub(super) static MAPS: MapWords = MapWords {
    parts: "Parts of this page",
    part: |part| match part {
        Part::Maps => "World maps",
        Part::Dip => "Dip and latitude",
    },
    form: "What the map shows",
    results: "The map",
    label,
    slider: |key| match key {
        Key::Date => "Date, slider",
        Key::Bank => "Bank, slider",
        Key::Latitude => "Latitude, slider",
        _ => "Slider",
    },
    hint: |key| match key {
        Key::Date => "2025 to 2029",
        Key::Bank => "degrees",
        Key::Airspeed => "knots",
        Key::Latitude => "such as 33 S",
        Key::Longitude => "such as 71 W",
        _ => "",
    },
    choice,
    refusal,
    title: |show| match show {
        Show::Dip => "Dip",
        Show::Variation => "Variation",
        Show::Horizontal => "Horizontal intensity",
        Show::Steady => "How good the rule is: closed form",
        Show::Simulated => "How good the rule is: simulated float",
    },
    about: |show| match show {
        Show::Dip => {
            "How steeply the field points into the ground: what makes a card lag and lead."
        }
        Show::Variation => "How far magnetic north lies east or west of true north.",
        Show::Horizontal => {
            "The part of the field that steers the card, in nanotesla. Where it is weak a compass cannot be trusted."
        }
        Show::Steady => {
            "The lag of a card square to the apparent vertical, turning through north, less the rule’s (the latitude)."
        }
        Show::Simulated => {
            "The lag of the simulated float after a quarter turn onto north, less the rule’s (the latitude)."
        }
    },
    map: "Map of the world: arrow keys move the point",
    map_hint: |show, globe| {
        let lines = match show {
            Show::Dip => "Dashed lines: the field points up.",
            Show::Variation => "Dashed lines: west.",
            Show::Horizontal => "Lines in nanotesla.",
            Show::Steady | Show::Simulated => {
                "Slanted strokes, below −5°: the rule over-leads, you stop short of north. Upright strokes, above 5°: it under-leads, you fly past. Between: good."
            }
        };
        let way = if globe {
            "Drag to turn, click to point"
        } else {
            "Click or drag to point"
        };
        format!("{lines} {way}, or use the arrow keys (5°; with Shift 1°).")
    },
    turn_globe: "Turn the globe",
    turn_west: "Turn to the west",
    turn_north: "Turn to the north",
    turn_south: "Turn to the south",
    turn_east: "Turn to the east",
    progress: |flies| {
        if flies {
            "Flying turns onto north"
        } else {
            "Computing the field"
        }
    },
    cancel: "Cancel",
    go_on: "Go on",
    failed: "The map could not be computed: this browser started no worker.",
    took: |surveyed, flown| {
        let field =
            surveyed.map(|seconds| format!("Field at 16 471 places, every 2°, in {seconds:.1} s."));
        let turns = flown.map(|(turns, seconds)| {
            format!(" {turns} turns flown in {seconds:.1} s, and read off between them (where a compass is reliable, within 0.1°; with the lightly damped float, within 0.25°).")
        });
        format!("{}{}", field.unwrap_or_default(), turns.unwrap_or_default())
    },

    dip_equator: "0° magnetic equator",
    north_pole: "dip pole",
    south_pole: "dip pole",
    caution: "caution",
    unreliable: "unreliable",
    over_leads: "over-leads",
    under_leads: "under-leads",
    good: "good",
    degrees: |value| format!("{}°", plain(value)),
    signed: |value| {
        if value > 0.0 {
            format!("+{value}°")
        } else {
            format!("{}°", plain(value))
        }
    },
    variation: |east| match east {
        0.0 => "0°".to_owned(),
        _ => format!("{}° {}", east.abs(), if east > 0.0 { "E" } else { "W" }),
    },
    nanotesla: |value| thousands(i64::from(value)),

    in_figures: "The map in figures",
    latitude: "latitude",
    longitude: |value| match value {
        0.0 => "0°".to_owned(),
        _ => format!("{}° {}", value.abs(), if value > 0.0 { "E" } else { "W" }),
    },
    on_latitude: |value| match value {
        0.0 => "0°".to_owned(),
        _ => format!("{}° {}", value.abs(), if value > 0.0 { "N" } else { "S" }),
    },
    figure: |show, value| match show {
        _ if !value.is_finite() => "–".to_owned(),
        Show::Horizontal => nanotesla(value).to_string(),
        _ => format!("{}°", plain(tenths(value.to_degrees()))),
    },
    take_home: "Take this home",
    copy_text: "Copy as text",
    copy_csv: "Copy as CSV",
    copy_image: "Copy image",
    copy_link: "Copy link",
    save_csv: "Save CSV, every 2°",
    save_svg: "Save SVG",
    save_png: "Save PNG",
    copied: "Copied.",
    not_copied: "This browser did not let the page copy.",

    point: "At the point",
    dip: "Dip",
    dip_of: |field| {
        let dip = tenths(field.dip().to_degrees());
        let way = if dip > 0.0 {
            " down"
        } else if dip < 0.0 {
            " up"
        } else {
            ""
        };
        format!("{:.1}°{way}", dip.abs())
    },
    variation_name: "Variation",
    variation_of: |field| side(field.variation().to_degrees()),
    horizontal: "Horizontal",
    horizontal_of: |field| format!("{} nT", thousands(nanotesla(field.horizontal()))),
    zone: "A compass is",
    zone_of: |field| zone(field.zone()).to_owned(),
    lags: |bank| match bank {
        Some(bank) => format!(
            "Lag at north, turning right at {}° of bank",
            tenths(bank.to_degrees())
        ),
        None => "Lag at north, turning right".to_owned(),
    },
    by_rule: "Rule: the latitude",
    by_steady: "Closed form",
    by_simulated: "Simulated float",
    lag,
    off: |off| {
        let degrees = format!("{:.1}°", tenths(off.to_degrees()).abs());
        match Verdict::of(off) {
            Verdict::OverLeads => format!("rule over-leads by {degrees}"),
            Verdict::UnderLeads => format!("rule under-leads by {degrees}"),
            Verdict::Good => format!("rule good, within {degrees}"),
        }
    },
    said: |field, rule, steady| {
        let lags = rule.zip(steady).map(|(rule, steady)| {
            format!(
                " At north: rule {}, closed form {}.",
                lag(rule),
                lag(steady)
            )
        });
        format!(
            "Dip {:.1}°, variation {}, horizontal {} nT, {}.{}",
            tenths(field.dip().to_degrees()),
            side(field.variation().to_degrees()),
            nanotesla(field.horizontal()),
            zone(field.zone()),
            lags.unwrap_or_default()
        )
    },
    dip_part: DipWords {
        form: "Where the aircraft is",
        results: "Dip and latitude",
        title: "From dip to latitude",
        about: "The Earth is nearly a bar magnet: its field lies flat at the magnetic equator and stands upright at the dip poles. The steeper it stands, the harder it pulls the card down.",
        here: "At the aircraft",
        in_figures: "The curves in figures",
        rule_curve: "rule",
        dipole_curve: "dipole",
        model_curve: "WMM2025",
        field: "field",
        horizontal: "horizontal",
        vertical: "vertical",
        latitude_axis: "latitude",
        dip_axis: "dip",
        by_rule: "Dip by the rule: the latitude",
        by_dipole: "Dip of the dipole: tan dip = 2 tan latitude",
        by_model: "Dip by WMM2025, on this meridian",
        tilt: "Tilt of the card, level on north",
        tilt_note: "standard float, in the dipole’s field",
        back_rule: "Latitude from that dip, by the rule",
        back_dipole: "Latitude from that dip, by the dipole",
    },
};

fn zone(zone: Zone) -> &'static str {
    match zone {
        Zone::Reliable => "reliable",
        Zone::Caution => "to be used with caution",
        Zone::Unreliable => "unreliable",
    }
}

fn lag(lag: f64) -> String {
    let degrees = tenths(lag.to_degrees());
    match degrees {
        0.0 => "0.0°".to_owned(),
        _ if degrees < 0.0 => format!("leads {:.1}°", -degrees),
        _ => format!("lags {degrees:.1}°"),
    }
}

fn side(east: f64) -> String {
    let east = tenths(east);
    match east {
        0.0 => "0.0°".to_owned(),
        _ => format!("{:.1}° {}", east.abs(), if east > 0.0 { "E" } else { "W" }),
    }
}

/// Rounded to a tenth, never −0.
fn tenths(value: f64) -> f64 {
    (value * 10.0).round() / 10.0 + 0.0
}

/// With a true minus.
fn plain(value: f64) -> String {
    value.to_string().replace('-', "−")
}

/// With a thin space before the thousands.
fn thousands(value: i64) -> String {
    match (value / 1000, value % 1000) {
        (0, rest) => rest.to_string(),
        (whole, rest) => format!("{whole}\u{202f}{rest:03}"),
    }
}

fn label(key: Key) -> &'static str {
    match key {
        Key::Show => "Map",
        Key::View => "View",
        Key::Date => "Date",
        Key::Latitude => "Latitude",
        Key::Longitude => "Longitude",
        Key::Bank => "Bank",
        Key::Airspeed => "Airspeed",
        Key::Float => "Float",
        Key::MiddleLatitude | Key::MiddleLongitude => "Middle of the globe",
    }
}

fn choice(key: Key, choice: &'static str) -> &'static str {
    match (key, choice) {
        (Key::Show, "dip") => "Dip",
        (Key::Show, "variation") => "Variation",
        (Key::Show, "horizontal") => "Horizontal intensity",
        (Key::Show, "steady") => "Rule, closed form",
        (Key::Show, "simulated") => "Rule, simulated float",
        (Key::View, "flat") => "Flat",
        (Key::View, "globe") => "Globe",
        (Key::Float, "standard") => "Standard",
        (Key::Float, "brisk") => "Brisk",
        (Key::Float, "sluggish") => "Sluggish",
        (Key::Float, "lightly-damped") => "Lightly damped",
        (Key::Float, "sticky-pivot") => "Sticky pivot",
        _ => choice,
    }
}

fn refusal(key: Key, wrong: &Wrong) -> String {
    let entry = match key {
        Key::Latitude => Some(Entry::Latitude),
        Key::Longitude => Some(Entry::Longitude),
        Key::Date => Some(Entry::Date),
        _ => None,
    };
    let such = match key {
        Key::Airspeed => "a number of knots, such as 100",
        Key::Bank => "a number of degrees, such as 15",
        Key::View => "“flat” or “globe”",
        _ => "one of those listed",
    };
    en_situation::refusal(entry, label(key), such, wrong)
}
