//! What is said: proved by the demonstration's own check, and found again on the second route.

use crate::independent::{ANGLE_TOLERANCE, TIME_TOLERANCE, here, numbers, wrap};
use crate::{CATALOGUE, first_command};
use flights::Scenario;
use lessons::demonstration::{Act, Answer, Demonstration, Figure, Flown, Measured};

#[test]
fn every_claim_of_every_item_is_proved() {
    for flown in CATALOGUE.iter() {
        let (unproved, demonstration) = (flown.check(), flown.demonstration());
        assert!(unproved.is_empty(), "{}: {unproved:?}", demonstration.name);
        assert!(!demonstration.claims.is_empty());
    }
}

#[test]
fn every_item_has_what_a_class_needs() {
    for flown in CATALOGUE.iter() {
        let demonstration = flown.demonstration();
        let name = &demonstration.name;
        let duration = flown.scenario().duration();
        assert!((25.0..=90.0).contains(&duration), "{name}: {duration} s");
        assert!(
            !flown.scenario().is_prescribed(),
            "{name}: a pilot can take over"
        );
        assert!(flown.headline().is_some(), "{name}");
        for text in [
            &demonstration.aircraft,
            &demonstration.place,
            &demonstration.look_for,
            &demonstration.rule,
        ] {
            assert!(!text.is_empty(), "{name}");
        }
        assert!((3..=6).contains(&demonstration.notes.len()), "{name}");
        assert!(
            !flown.chapters().is_empty() && !demonstration.views.is_empty(),
            "{name}"
        );
        // A list shows titles without flying.
        assert!(!demonstration.title.contains("{"), "{name}");
        let act = |wanted: fn(&Act) -> bool| demonstration.cues.iter().any(|it| wanted(&it.act));
        assert!(act(|act| matches!(act, Act::Freeze)), "{name}");
        assert!(
            act(|act| matches!(act, Act::Speed(_))) || name == "rough-air",
            "{name}"
        );
        assert!(act(|act| matches!(act, Act::Highlight(_))), "{name}");
        assert!(act(|act| matches!(act, Act::Reveal)), "{name}");
        let asks = demonstration
            .cues
            .iter()
            .find(|it| matches!(it.act, Act::Ask(_)));
        let first = first_command(demonstration);
        assert!(
            asks.unwrap().at_s < first,
            "{name}: asked before anything moves"
        );
    }
}

/// By how much the numbers of two routes differ, and by how much they may.
fn apart(figure: &Figure, one: f64, other: f64) -> (f64, f64) {
    match here(figure) {
        Figure::SettlesAfter(_) => ((one - other).abs(), TIME_TOLERANCE),
        Figure::HeadingAt(_) | Figure::ReadingAt(_) | Figure::RollOutOn(_) => {
            (wrap(one - other).abs(), ANGLE_TOLERANCE)
        }
        _ => ((one - other).abs(), ANGLE_TOLERANCE),
    }
}

#[test]
fn every_figure_is_the_same_by_a_second_route_and_so_is_every_number_told() {
    let mut told = 0;
    for flown in CATALOGUE.iter() {
        let demonstration = flown.demonstration();
        let name = &demonstration.name;
        let again = numbers(demonstration);
        for (key, figure) in &demonstration.figures {
            let (number, again) = (flown.figures()[key].number(), again[key]);
            assert_eq!(number.is_some(), again.is_some(), "{name}: {key}");
            if let (Some(number), Some(again)) = (number, again) {
                let (apart, allowed) = apart(figure, number, again);
                assert!(apart <= allowed, "{name}: {key} is {number} and {again}");
            }
        }
        for text in templates(demonstration) {
            for (key, plain, said) in placeholders(&text, &flown.said(&text)) {
                match again[&key] {
                    Some(number) => says(&demonstration.figures[&key], number, plain, &said, name),
                    None => assert!(matches!(flown.figures()[&key], Measured::Aid(..))),
                }
                told += 1;
            }
        }
    }
    // Were nothing found in the texts, nothing would be checked.
    assert!(told > 500, "{told}");
}

/// Every text that is shown or spoken.
fn templates(it: &Demonstration) -> Vec<String> {
    let mut texts = vec![it.title.clone(), it.look_for.clone(), it.rule.clone()];
    texts.extend(it.notes.iter().map(|note| note.say.clone()));
    texts.extend(it.cues.iter().filter_map(|cue| match &cue.act {
        Act::Chapter(text) | Act::Caption(text) => Some(text.clone()),
        Act::Ask(question) => Some(question.question.clone()),
        _ => None,
    }));
    texts
}

/// What stands in a text where it names a figure: its name, whether as a number alone, and what
/// is said.
fn placeholders(template: &str, said: &str) -> Vec<(String, bool, String)> {
    let mut found = Vec::new();
    let mut parts = template.split('{');
    let mut rest = said.strip_prefix(parts.next().unwrap()).unwrap();
    let mut parts = parts.peekable();
    while let Some(part) = parts.next() {
        let (name, plain) = part.split_once('}').unwrap();
        // What follows the figure, so far as it is plain text.
        let end = match (plain, parts.peek()) {
            (_, None) => rest.len() - plain.len(),
            ("", Some(_)) => panic!("two figures touch in {template:?}"),
            _ => rest.find(plain).unwrap(),
        };
        assert!(rest[end..].starts_with(plain), "{said:?}");
        let name_alone = name.trim_end_matches(":n");
        found.push((
            name_alone.to_owned(),
            name != name_alone,
            rest[..end].to_owned(),
        ));
        rest = &rest[end + plain.len()..];
    }
    found
}

/// The first number in words.
fn number_in(said: &str) -> Option<f64> {
    let start = said.find(|c: char| c.is_ascii_digit())?;
    let digits = said[start..].chars();
    let digits: String = digits
        .take_while(|c| c.is_ascii_digit() || *c == '.')
        .collect();
    digits.parse().ok()
}

/// Whether what is said is the number, rounded as it is shown, and its way the right one.
fn says(figure: &Figure, number: f64, plain: bool, said: &str, name: &str) {
    let at = format!("{name}: {said:?} for {number}");
    let figure = here(figure);
    let ways = match figure {
        Figure::LagOn(_)
        | Figure::RuleOn(_)
        | Figure::ClosedFormOn(_)
        | Figure::LagAt(_)
        | Figure::GreatestLag(_)
        | Figure::GreatestLead(_) => Some(["lags", "leads"]),
        Figure::ErrorAt(_) | Figure::AverageError(_) | Figure::IndicatorErrorAt(_) => {
            Some(["more", "less"])
        }
        Figure::TowardNorth(_) => Some(["towards north", "towards south"]),
        Figure::FirstWay(_) => Some(["the wrong way", "nothing else"]),
        Figure::ShortOf(_) => Some(["short", "past"]),
        Figure::Latitude => Some(["N", "S"]),
        _ => None,
    };
    if let Figure::Round(_) = figure {
        assert_eq!(said.starts_with("comes round"), number > 180.0, "{at}");
        return;
    }
    if let (Some([more, less]), false) = (ways, plain) {
        if number.abs() < 1.5 - ANGLE_TOLERANCE {
            assert_eq!(number_in(said), None, "{at}");
            return;
        }
        assert!(
            said.contains(if number > 0.0 { more } else { less }),
            "{at}"
        );
    }
    let shown = number_in(said).expect(&at);
    let off = match figure {
        Figure::HeadingAt(_) | Figure::ReadingAt(_) | Figure::RollOutOn(_) => {
            assert!((1.0..=360.0).contains(&shown), "{at}");
            wrap(shown - number).abs()
        }
        Figure::RateOfTurnAt(_) => 10.0 * (shown - number.abs()).abs(),
        _ => (shown - number.abs()).abs(),
    };
    assert!(off <= 0.5 + TIME_TOLERANCE, "{at}");
}

#[test]
fn questions_have_the_right_answer() {
    // By what is taught: in turns north lags and south leads, in the northern hemisphere; gaining
    // speed swings to north, losing it to south; both mirrored south of the equator.
    let answers: &[(&str, &[&str])] = &[
        ("steady-flight", &["It agrees"]),
        ("equator-turn", &["It agrees"]),
        ("north-from-west", &["It lags"]),
        ("north-from-east", &["Past it"]),
        ("south-from-east", &["It leads"]),
        ("south-from-west", &["It leads"]),
        ("part-way-north", &["It lags"]),
        ("part-way-south", &["It leads"]),
        ("off-north-right", &["First the wrong way"]),
        ("off-north-left", &["First the wrong way"]),
        ("off-south-right", &["It leads"]),
        ("full-circle-right", &["It lags", "It leads"]),
        ("full-circle-left", &["It lags", "It leads"]),
        (
            "speed-east",
            &["It swings towards north", "It swings towards south"],
        ),
        (
            "speed-west",
            &["It swings towards south", "It swings towards north"],
        ),
        ("speed-north", &["It agrees"]),
        ("speed-south", &["It agrees"]),
        ("climb-descent", &["It swings towards south"]),
        ("middle-latitudes", &["It lags"]),
        ("high-latitude", &["It lags"]),
        ("near-pole", &["It lags"]),
        ("southern-onto-north", &["It leads"]),
        ("southern-onto-south", &["It lags"]),
        ("southern-off-south", &["First the wrong way"]),
        (
            "southern-speed",
            &["It swings towards south", "It swings towards north"],
        ),
        ("steep-bank", &["It swings out and back"]),
        ("swirl", &["It reads less"]),
        ("rough-air", &["It agrees"]),
        ("indicator-in-turn", &["It reads less"]),
        ("iron", &["It reads more"]),
    ];
    let names: Vec<&str> = CATALOGUE
        .iter()
        .map(|it| it.demonstration().name.as_str())
        .collect();
    let known: Vec<&str> = answers.iter().map(|(name, _)| *name).collect();
    assert_eq!(names, known, "every item's questions are known");
    for (flown, (name, right)) in CATALOGUE.iter().zip(answers) {
        assert_eq!(&given(flown), right, "{name}");
    }
}

/// The right answers of the questions, in order.
fn given(flown: &Flown) -> Vec<String> {
    let cues = flown.demonstration().cues.iter();
    let asked = cues.filter_map(|cue| match &cue.act {
        Act::Ask(question) => Some(question),
        _ => None,
    });
    let right = asked.map(|question| {
        assert!(
            matches!(question.answer, Answer::Figure(_)),
            "true at any latitude"
        );
        let posed = flown.posed(question).unwrap();
        posed.choices[posed.right].clone()
    });
    right.collect()
}

#[test]
fn texts_are_whole_at_other_latitudes_too() {
    for latitude in [-60.0, 0.0] {
        for flown in CATALOGUE.iter() {
            let moved = flown.demonstration().clone().at_latitude_deg(latitude);
            let moved = Flown::new(moved).unwrap();
            for text in templates(moved.demonstration()) {
                let said = moved.said(&text);
                let name = &moved.demonstration().name;
                assert!(!said.contains(['{', '}']), "{name}: {said}");
            }
            let scenario: &Scenario = moved.scenario();
            assert_eq!(scenario.source().latitude(), Some(latitude.to_radians()));
            for cue in &moved.demonstration().cues {
                if let Act::Ask(question) = &cue.act {
                    // Something can be asked wherever it is flown, or plainly nothing.
                    let posed = moved.posed(question);
                    assert!(posed.is_none_or(|it| it.right < it.choices.len()));
                }
            }
        }
    }
}
