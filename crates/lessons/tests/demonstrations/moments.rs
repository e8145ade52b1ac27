//! Captions against the moments at which they stand.

use crate::independent::{EVERY, Rows, here, wrap};
use crate::{CATALOGUE, first_command};
use lessons::demonstration::{Act, Demonstration, Figure};

/// The headings that captions speak of in the present.
const ON: [(&str, f64); 9] = [
    ("On north ", 0.0),
    ("On north-west ", 315.0),
    ("On west ", 270.0),
    ("On south-west ", 225.0),
    ("On south ", 180.0),
    ("On east ", 90.0),
    ("The nose is on north", 0.0),
    ("The nose is on south", 180.0),
    ("Now the nose is on south", 180.0),
];

#[test]
fn captions_stand_at_the_moment_that_they_speak_of() {
    let mut seen = 0;
    for flown in CATALOGUE.iter() {
        let demonstration = flown.demonstration();
        let rows = Rows::of(demonstration);
        let name = &demonstration.name;
        for cue in &demonstration.cues {
            let Act::Caption(text) = &cue.act else {
                continue;
            };
            let at = format!("{name}, {} s: {text}", cue.at_s);
            for (opening, heading) in ON {
                if text.starts_with(opening) && !text.contains("the compass there") {
                    // Half a second of a turn, at most 2.5°: nobody sees the difference.
                    let off = wrap(rows.heading(cue.at_s) - heading);
                    assert!(off.abs() < 2.5, "{at}: {off}");
                    seen += 1;
                }
            }
            // A reading that is said to agree agrees on the screen too, within a degree.
            for rest in ["At rest", "Steady on", "Level and steady"] {
                if text.starts_with(rest) && flown.said(text).contains("agrees") {
                    assert!(rows.error(cue.at_s).abs() < 1.15, "{at}");
                    seen += 1;
                }
            }
            if text.starts_with("Wings level") {
                assert!(rolled_out(demonstration, cue.at_s), "{at}");
                seen += 1;
            }
        }
    }
    assert!(seen >= 50, "{seen}");
}

/// Whether the pilot has levelled the wings within the last five seconds.
fn rolled_out(demonstration: &Demonstration, time: f64) -> bool {
    let file = serde_json::to_value(&demonstration.scenario).unwrap();
    let controls = file["controls"].as_array().unwrap();
    controls.iter().any(|it| {
        let since = time - it["time_s"].as_f64().unwrap();
        it["bank_deg"] == 0.0 && (-EVERY..=5.0).contains(&since)
    })
}

#[test]
fn what_is_measured_at_a_moment_is_said_at_that_moment() {
    // "The nose is on {nose}, the compass reads {reading}": a figure that is measured at one time
    // is never said before it, but for a heading that is held until then.
    for flown in CATALOGUE.iter() {
        let demonstration = flown.demonstration();
        let rows = Rows::of(demonstration);
        for cue in &demonstration.cues {
            let Act::Caption(text) = &cue.act else {
                continue;
            };
            for (key, figure) in &demonstration.figures {
                let (Figure::HeadingAt(time)
                | Figure::ReadingAt(time)
                | Figure::ErrorAt(time)
                | Figure::LagAt(time)
                | Figure::IndicatorErrorAt(time)) = here(figure)
                else {
                    continue;
                };
                // What does not change before the controls are moved can be said at any time.
                let still = first_command(demonstration).min(6.0);
                if text.contains(&format!("{{{key}}}")) && *time > still {
                    let at = format!("{}, {} s: {text}", demonstration.name, cue.at_s);
                    let held = matches!(here(figure), Figure::HeadingAt(_))
                        && (rows.heading(cue.at_s) - rows.heading(*time)).abs() < 0.5;
                    assert!(
                        held || cue.at_s >= *time - 1.0,
                        "{at}: {key} is of {time} s"
                    );
                }
            }
        }
    }
}

#[test]
fn what_belongs_to_a_stop_is_there_before_the_flight_stands() {
    // The flight stands at the cue that stops it; what comes after that cue waits until the
    // instructor goes on.
    for flown in CATALOGUE.iter() {
        let demonstration = flown.demonstration();
        for two in demonstration.cues.windows(2) {
            let stops = matches!(two[0].act, Act::Freeze);
            let at = format!("{}, {} s", demonstration.name, two[0].at_s);
            assert!(
                !stops || two[1].at_s > two[0].at_s,
                "{at}: {:?}",
                two[1].act
            );
        }
    }
}
