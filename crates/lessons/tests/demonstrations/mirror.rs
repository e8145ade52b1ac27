//! The laws that hold for every flight: left and right are mirrors, and so are the hemispheres.

use crate::{CATALOGUE, flown, named};
use lessons::demonstration::{Demonstration, Figure, Flown, Measured};
use serde_json::{Value, json};

/// The mirrored flights are the same to the rounding of sines and of the crossings found.
const SAME: f64 = 1e-3;

/// A demonstration with its flight mirrored: headings by `heading`, banks to the other side, the
/// latitude times `latitude`, and the headings that figures are about as the flight's. None where
/// iron or rough air makes left and right differ.
fn mirrored(
    demonstration: &Demonstration,
    heading: fn(f64) -> f64,
    latitude: f64,
) -> Option<Demonstration> {
    let mut file = serde_json::to_value(demonstration).unwrap();
    let scenario = &mut file["scenario"];
    if scenario.get("iron").is_some() || scenario.get("rough_air").is_some() {
        return None;
    }
    let turn = |value: &mut Value, by: &dyn Fn(f64) -> f64| {
        if let Some(number) = value.as_f64() {
            *value = json!(by(number));
        }
    };
    turn(&mut scenario["start"]["heading_deg"], &heading);
    turn(&mut scenario["field"]["latitude_deg"], &|it| it * latitude);
    for control in scenario["controls"].as_array_mut().unwrap() {
        if control.get("bank_deg").is_some() {
            turn(&mut control["bank_deg"], &|it| -it);
        }
    }
    let figures = file["figures"].as_object_mut().unwrap();
    // What is measured beside is of another latitude.
    figures.retain(|_, figure| figure.get("beside").is_none());
    for figure in figures.values_mut() {
        if let Some(of) = figure.as_object_mut() {
            for on in of.values_mut() {
                if on.get("heading_deg").is_some() {
                    turn(&mut on["heading_deg"], &|it| heading(it));
                }
            }
        }
    }
    file["cues"] = json!([]);
    file["notes"] = json!([]);
    for text in ["title", "look_for", "rule"] {
        file[text] = json!("-");
    }
    file["claims"] = json!([]);
    Some(serde_json::from_value(file).unwrap())
}

/// What must become of a figure: the same, or its opposite; none where there is no such law.
fn law(figure: &Figure, measured: Measured) -> Option<f64> {
    if matches!(figure, Figure::Beside(_) | Figure::IndicatorErrorAt(_)) {
        return None;
    }
    match measured {
        Measured::Error(_) => Some(-1.0),
        Measured::Lag(_)
        | Measured::WrongWay(_)
        | Measured::Short(_)
        | Measured::Round(_)
        | Measured::Angle(_)
        | Measured::Seconds(_)
        | Measured::Knots(_)
        | Measured::RateOfTurn(_) => Some(1.0),
        _ => None,
    }
}

fn compared(one: &Flown, other: &Flown) -> usize {
    let figures = one.demonstration().figures.iter();
    let laws = figures.filter_map(|(key, figure)| {
        let measured = one.figures()[key];
        Some((key, measured.number()?, law(figure, measured)?))
    });
    let mut count = 0;
    for (key, number, sign) in laws {
        let name = &one.demonstration().name;
        let mirror = other.figures()[key].number().unwrap();
        let off = (mirror - sign * number).abs();
        assert!(off < SAME, "{name}: {key} is {number}, mirrored {mirror}");
        count += 1;
    }
    count
}

#[test]
fn left_is_the_mirror_of_right() {
    let mut count = 0;
    for one in CATALOGUE.iter() {
        if let Some(other) = mirrored(one.demonstration(), |it| -it, 1.0) {
            count += compared(one, &flown(&other));
        }
    }
    assert!(count > 150, "{count}");
}

#[test]
fn the_other_hemisphere_is_the_mirror_of_this_one_with_north_and_south_exchanged() {
    let mut count = 0;
    for one in CATALOGUE.iter() {
        let exchanged = |it: f64| if it > 180.0 { 540.0 - it } else { 180.0 - it };
        if let Some(other) = mirrored(one.demonstration(), exchanged, -1.0) {
            count += compared(one, &flown(&other));
        }
    }
    assert!(count > 150, "{count}");
}

#[test]
fn the_same_turn_in_the_other_hemisphere_leads_where_it_lagged() {
    for (name, key) in [
        ("north-from-west", "on_north"),
        ("north-from-east", "on_north"),
        ("south-from-east", "on_south"),
        ("south-from-west", "on_south"),
        ("part-way-north", "on_north_west"),
        ("off-south-right", "early"),
        ("speed-east", "faster"),
        ("speed-west", "slower"),
        ("southern-onto-north", "on_north"),
        ("southern-speed", "faster"),
    ] {
        let here = named(name);
        let latitude = here.scenario().source().latitude().unwrap().to_degrees();
        let there = flown(&here.demonstration().clone().at_latitude_deg(-latitude));
        let [one, other] = [here, &there].map(|it| it.figures()[key]);
        let (one, other) = (one.number().unwrap(), other.number().unwrap());
        assert!(one * other < 0.0, "{name}: {one} and {other}");
        // The liquid's drag lags in both, so they are not quite opposite.
        assert!(
            one.abs().min(other.abs()) > 5.0,
            "{name}: {one} and {other}"
        );
    }
}
