//! What is wrong is found: in copies of the catalogue's items, and in files.

use crate::{CATALOGUE, flown, named};
use lessons::demonstration::{Claim, Demonstration, Figure, Unproved};
use serde_json::{Value, json};

#[test]
fn every_claim_that_does_not_hold_is_found() {
    // A few stand for all, as claims are compared with figures alike.
    for name in [
        "north-from-west",
        "steep-bank",
        "rough-air",
        "indicator-in-turn",
    ] {
        let mut broken = named(name).demonstration().clone();
        for claim in &mut broken.claims {
            let beyond = claim.most - claim.least + 1.0;
            claim.least += beyond;
            claim.most += beyond;
        }
        assert_eq!(prove(&broken), broken.claims, "{}", broken.name);
    }
}

/// The claims that fail.
fn prove(demonstration: &Demonstration) -> Vec<Claim> {
    let unproved = flown(demonstration).check();
    let claims = unproved.into_iter().filter_map(|it| match it {
        Unproved::Claim(claim, _) => Some(claim),
        _ => None,
    });
    claims.collect()
}

#[test]
fn an_altered_figure_text_or_question_is_found() {
    let whole = named("north-from-west").demonstration();
    let found = |change: &dyn Fn(&mut Demonstration)| {
        let mut broken = whole.clone();
        change(&mut broken);
        let unproved = flown(&broken).check();
        let said: Vec<String> = unproved.iter().map(ToString::to_string).collect();
        said.join("; ")
    };
    assert_eq!(found(&|_| {}), "");
    let said = found(&|it| {
        it.figures.insert("on_north".into(), Figure::LagAt(3.0));
    });
    assert!(
        said.contains("on_north is claimed to be from 27 to 31, but is"),
        "{said}"
    );
    assert!(!said.contains("no number"), "{said}");
    let said = found(&|it| it.rule.push_str(" About 30 degrees."));
    assert!(
        said.starts_with("rule states a number that no figure stands for"),
        "{said}"
    );
    let said = found(&|it| {
        it.figures.insert("spare".into(), Figure::Dip);
    });
    assert_eq!(said, "no text, question or claim speaks of spare");
    let said = found(&|it| it.claims.retain(|claim| claim.figure != "on_north"));
    assert_eq!(said, "on_north is told but nothing is claimed of it");
    let said = found(&|it| {
        let never = json!({"lag_on": {"heading_deg": 200}});
        it.figures
            .insert("on_north".into(), serde_json::from_value(never).unwrap());
    });
    assert!(
        said.contains("on_north is claimed to be from 27 to 31, but has no number"),
        "{said}"
    );
    assert!(
        said.contains("on_north is too near to a border to be asked about"),
        "{said}"
    );
}

#[test]
fn a_heading_about_north_can_be_claimed() {
    let mut demonstration = named("off-north-right").demonstration().clone();
    for (least, most, holds) in [(-1.0, 1.0, true), (359.0, 361.0, false), (1.0, 5.0, false)] {
        demonstration
            .figures
            .insert("before".into(), Figure::HeadingAt(3.0));
        let claim = demonstration
            .claims
            .iter_mut()
            .find(|it| it.figure == "before")
            .unwrap();
        (claim.least, claim.most) = (least, most);
        assert_eq!(prove(&demonstration).is_empty(), holds, "{least} to {most}");
    }
}

/// A file with one value changed by its JSON pointer; null takes it away.
fn changed(pointer: &str, value: Value) -> String {
    let mut file = serde_json::to_value(named("north-from-west").demonstration()).unwrap();
    let (parent, key) = pointer.rsplit_once('/').unwrap();
    let parent = file.pointer_mut(parent).unwrap();
    match parent {
        Value::Array(list) => list[key.parse::<usize>().unwrap()] = value,
        Value::Object(of) if value.is_null() => {
            of.remove(key);
        }
        Value::Object(of) => {
            of.insert(key.to_owned(), value);
        }
        _ => panic!("{pointer} leads nowhere"),
    }
    file.to_string()
}

#[test]
fn a_file_that_cannot_be_played_is_refused_with_a_sentence_that_names_the_field() {
    let long = "x".repeat(1001);
    for (pointer, value, sentence) in [
        (
            "/demonstration",
            json!(2),
            "demonstration: this file is of version 2, and only version 1 can be read here",
        ),
        (
            "/name",
            json!("North from west"),
            "name: a name has 1 to 100 lower-case letters, figures and hyphens, \
             not \"North from west\"",
        ),
        (
            "/title",
            json!("  "),
            "title: a title has 1 to 100 characters, not 0",
        ),
        (
            "/place",
            json!("x".repeat(101)),
            "place: a name has at most 100 characters, not 101",
        ),
        (
            "/rule",
            json!(long),
            "rule: a text has at most 1000 characters, not 1001",
        ),
        (
            "/cues/1/at_s",
            json!(-1),
            "cues[1].at_s: the time must be from 0 to 82 s, the flight's end, not -1",
        ),
        (
            "/cues/5/at_s",
            json!(1),
            "cues[5].at_s: cues stand in order of time, so it must be 3 s or later, not 1 s",
        ),
        (
            "/figures/bank",
            json!({"bank_at": 99}),
            "figures.bank: the time must be from 0 to 82 s, the flight's end, not 99",
        ),
        (
            "/figures/bank",
            json!({"greatest_lag": [9, 3]}),
            "figures.bank: the first of two times must not be after the second",
        ),
        (
            "/figures/bank",
            json!({"beside": {"situation": {"latitude_deg": 91}, "measure": "dip"}}),
            "figures.bank.beside.latitude_deg: latitude must be from -90 to 90 degrees, not 91",
        ),
        (
            "/figures/bank",
            json!({"beside": {"situation": "no_swirl", "measure":
                {"beside": {"situation": "no_swirl", "measure": "dip"}}}}),
            "figures.bank.beside.measure: what is measured beside must not be beside once more",
        ),
        (
            "/notes/0/minutes",
            json!(0),
            "notes[0].minutes: minutes must be from 0.5 to 60, not 0",
        ),
        (
            "/cues/0/do",
            json!({"compare": {"latitude_deg": -91}}),
            "cues[0].do.compare.latitude_deg: latitude must be from -90 to 90 degrees, not -91",
        ),
        (
            "/cues/0/do",
            json!({"ask": {"question": "?", "answer": {"typed": {"choices": ["a"], "right": 0}}}}),
            "cues[0].do.ask.answer.typed: there must be 2 to 6 choices, not 1",
        ),
        (
            "/cues/0/do",
            json!({"ask": {"question": "?", "answer":
                {"typed": {"choices": ["a", "b"], "right": 2}}}}),
            "cues[0].do.ask.answer.typed.right: the right choice must be from 0 to 1, not 2",
        ),
        (
            "/scenario/controls/0/bank_deg",
            json!(75),
            "scenario.controls[0].bank_deg: bank must be from -60° to 60°, not 75°",
        ),
    ] {
        let refused = Demonstration::from_json(&changed(pointer, value)).unwrap_err();
        assert_eq!(refused.to_string(), sentence);
    }
}

#[test]
fn a_name_that_is_unknown_or_a_field_that_is_missing_is_named() {
    let refused = |pointer: &str, value: Value| {
        let refused = Demonstration::from_json(&changed(pointer, value));
        refused.unwrap_err().to_string()
    };
    for (pointer, value, beginning) in [
        (
            "/headline",
            json!("on_south"),
            "headline: \"on_south\" is none of the figures",
        ),
        (
            "/look_for",
            json!("It {lags}."),
            "look_for: \"lags\" is none of the figures (there are: aid, ",
        ),
        (
            "/claims/0/figure",
            json!("x"),
            "claims[0].figure: \"x\" is none of the figures",
        ),
        (
            "/scenario",
            Value::Null,
            "the field \"scenario\" is missing",
        ),
        (
            "/views/0",
            json!("roses"),
            "views[0]: \"roses\" is no known value; the nearest is \"rose\"",
        ),
        ("/colour", json!(1), "colour: \"colour\" is no known field"),
        (
            "/cues/0/do",
            json!({"capton": ""}),
            "cues[0].do: \"capton\" is no known value",
        ),
        (
            "/cues/0/do",
            json!({"speed": "fast"}),
            "cues[0].do.speed: \"fast\" is no known value",
        ),
    ] {
        let said = refused(pointer, value);
        assert!(said.starts_with(beginning), "{said}");
        assert_eq!(said.lines().count(), 1);
    }
    for text in ["", "{", "[]", "null", "{\"demonstration\": 1}"] {
        assert!(Demonstration::from_json(text).is_err(), "{text}");
    }
}

#[test]
fn every_item_is_written_and_read_back_as_it_was() {
    for flown in CATALOGUE.iter() {
        let again = Demonstration::from_json(&flown.demonstration().to_json()).unwrap();
        assert_eq!(&again, flown.demonstration());
    }
}
