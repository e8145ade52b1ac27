//! Links carry what they open, whole or not at all.

use flights::{ScenarioFile, read_json};
use lessons::demonstration::Demonstration;
use lessons::demonstration::catalogue::FILES;
use lessons::drill::Kind;
use lessons::drill::set::{Part, PracticeSet};
use lessons::link::{Carried, Kind as LinkKind, LONGEST_COMPACT, LinkError, Sealed, compact};
use miniz_oxide::deflate::compress_to_vec;
use proptest::prelude::*;

const DEMONSTRATION: &str = r#"{
    "demonstration": 1, "name": "onto-north", "title": "A right turn onto north",
    "scenario": {
        "field": {"latitude_deg": 45.5}, "rough_air": {"intensity": "light", "seed": 7},
        "iron": {"hard_nt": [0, 1500, 0], "soft": [[0.01, 0, 0], [0, 0, 0], [0, 0, -0.02]]},
        "start": {"heading_deg": 270, "speed_kt": 100},
        "legs": [{"seconds": 3}, {"seconds": 3, "bank_deg": 15.25}, {"seconds": 40}]
    },
    "views": ["rose", "reasons", "error-chart"],
    "figures": {
        "on_north": {"lag_on": {"heading_deg": 360, "after_s": 2.5}},
        "rule_figure": {"rule_on": {"heading_deg": 360}},
        "swing": {"swing": [20, 46]}, "dip": "dip", "aid": {"aid": "turn"}
    },
    "headline": "on_north",
    "look_for": "Der Kompaß: “lags”, naïve readers say.",
    "rule": "Undershoot by {rule_figure}.",
    "cues": [
        {"at_s": 0, "do": {"chapter": "West"}},
        {"at_s": 2, "do": {"ask": {"question": "Which way?",
            "answer": {"typed": {"choices": ["Left", "Right"], "right": 1}}}}},
        {"at_s": 2, "do": "freeze"},
        {"at_s": 2.125, "do": {"compare": {"latitude_deg": -45}}},
        {"at_s": 3, "do": {"speed": "half"}}
    ],
    "notes": [{"minutes": 2.5, "say": "Let them guess."}],
    "claims": [{"figure": "on_north", "least": 10, "most": 60.5}]
}"#;

const FLIGHT: &str = r#"{"field": {"latitude_deg": -33.75, "longitude_deg": 18, "date": "2026-05-01"},
    "start": {"heading_deg": 350, "speed_kt": 100},
    "controls": [{"time_s": 1.005, "bank_deg": 15, "rudder": -0.25}, {"time_s": 9, "bank_deg": 0}],
    "duration_s": 30.145}"#;

fn flight(json: &str) -> ScenarioFile {
    read_json(json).unwrap()
}

fn demonstration() -> Carried {
    Carried::Demonstration(Box::new(Demonstration::from_json(DEMONSTRATION).unwrap()))
}

const SET: &str = r#"{"version": 1, "title": "Onto north, “by feel”", "seed": 12, "order": "mixed",
    "time_limit_s": 1800, "allowed": ["pause", "slow-motion"],
    "parts": [{"kind": "predict", "count": 8, "level": 1},
              {"kind": "roll-out", "count": 4, "latitude_deg": -33.5, "tolerance_deg": 5}]}"#;

/// The link of [`SET`] as the first version made it.
const FIRST_SET: &str = "AQTj2iOEAVEArv8EB7ADArGyrK6nAwIEBKkHCKi2qgcBqwcKBAWpBwSouCQKAc8CqgcCqwcFOgcMrweIDk0FGU9udG8gbm9ydGgsIOKAnGJ5IGZlZWzigJ2mBwE";

fn set() -> Carried {
    Carried::Set(PracticeSet::from_json(SET).unwrap())
}

fn each() -> [Carried; 4] {
    [
        demonstration(),
        Carried::Flight(flight(FLIGHT)),
        Carried::Situation(flight(FLIGHT)),
        set(),
    ]
}

fn compact_of(carried: &Carried) -> Vec<u8> {
    compact::write(&carried.to_json().unwrap()).unwrap()
}

/// The text of a link with this compact form, sealed as a right one is.
fn sealed(kind: LinkKind, compact: &[u8]) -> String {
    let deflated = compress_to_vec(compact, 6);
    Sealed { kind, deflated }.to_text().unwrap()
}

#[test]
fn every_kind_comes_back_as_it_was() {
    for carried in each() {
        let link = carried.to_link().unwrap();
        assert!(
            link.bytes()
                .all(|it| it.is_ascii_alphanumeric() || it == b'-' || it == b'_')
        );
        assert_eq!(Carried::from_link(&link).unwrap(), carried);
    }
}

#[test]
fn every_demonstration_of_the_catalogue_fits_a_link_and_a_qr_code() {
    for (name, text) in FILES {
        let carried = Carried::Demonstration(Box::new(Demonstration::from_json(text).unwrap()));
        let link = carried.to_link().unwrap();
        assert_eq!(Carried::from_link(&link).unwrap(), carried, "{name}");
        // ISO/IEC 18004: 2953 bytes at most; an address before the link has fewer than 100.
        assert!(link.len() <= 2850, "{name}: {}", link.len());
    }
}

#[test]
fn a_set_makes_a_short_link() {
    // A code is the easier to read from the back of a room the fewer squares it has: an address
    // of 60 characters and this stay below the 271 bytes of version 10 (ISO/IEC 18004, level L).
    let link = set().to_link().unwrap();
    assert!(link.len() <= 200, "{}", link.len());
    let Carried::Set(mut longest) = set() else {
        unreachable!()
    };
    longest.parts = Kind::ALL
        .into_iter()
        .cycle()
        .take(50)
        .zip(0..)
        .map(|(kind, at)| Part {
            kind,
            count: 1 + at % 7,
            latitude_deg: Some(-60.0 + f64::from(at) / 8.0).filter(|it| it.abs() >= 20.0),
            level: 1 + (at % 3) as u8,
            tolerance_deg: 5.0,
        })
        .collect();
    let longest = Carried::Set(longest);
    let link = longest.to_link().unwrap();
    assert!(link.len() <= 2000, "{}", link.len());
    assert_eq!(Carried::from_link(&link).unwrap(), longest);
}

#[test]
fn a_set_of_another_version_or_beyond_its_ranges_is_refused_by_its_field() {
    for (from, to, said) in [
        (
            "\"version\": 1",
            "\"version\": 2",
            "version: sets of version 1 can be read, not 2",
        ),
        (
            "\"level\": 1",
            "\"level\": 4",
            "parts[0].level: level must be from 1 to 3, not 4",
        ),
        (
            "\"count\": 8",
            "\"count\": 8, \"colour\": 1",
            "unknown field `colour`",
        ),
    ] {
        let bytes = compact::write(&SET.replace(from, to)).unwrap();
        let refused = Carried::from_link(&sealed(LinkKind::Set, &bytes)).unwrap_err();
        assert!(refused.to_string().contains(said), "{refused}");
    }
    // A flight is no set.
    let bytes = compact::write(FLIGHT).unwrap();
    let refused = Carried::from_link(&sealed(LinkKind::Set, &bytes)).unwrap_err();
    assert!(matches!(refused, LinkError::Refused(_)), "{refused}");
}

#[test]
fn a_link_cut_at_any_length_is_refused() {
    for carried in each() {
        let link = carried.to_link().unwrap();
        for length in 0..link.len() {
            let cut = &link[..length];
            assert_eq!(Carried::from_link(cut), Err(LinkError::Damaged), "{length}");
        }
    }
}

#[test]
fn a_link_with_any_character_altered_is_refused() {
    // All 64 of the alphabet, so every pattern of bits at every place, and some that are none.
    let alphabet = ('A'..='Z').chain('a'..='z').chain('0'..='9');
    let others: Vec<char> = alphabet.chain(['-', '_', '=', '%', ' ', 'é']).collect();
    for link in [Carried::Flight(flight(FLIGHT)), set()].map(|it| it.to_link().unwrap()) {
        for (place, old) in link.char_indices() {
            for other in others.iter().filter(|it| **it != old) {
                let altered = format!("{}{other}{}", &link[..place], &link[place + 1..]);
                let read = Carried::from_link(&altered);
                assert_eq!(read, Err(LinkError::Damaged), "{other} at {place}");
            }
        }
    }
}

#[test]
fn what_a_right_link_must_not_carry_is_refused_by_name() {
    let refused = |json: &str| {
        let bytes = compact::write(json).unwrap();
        let error = Carried::from_link(&sealed(LinkKind::Flight, &bytes)).unwrap_err();
        assert!(matches!(error, LinkError::Refused(_)), "{error}");
        error.to_string()
    };
    assert!(refused("{}").contains("\"field\" is missing"));
    let bank = refused(&FLIGHT.replace("\"bank_deg\": 15", "\"bank_deg\": 75"));
    assert!(bank.contains("bank must be from -60° to 60°, not 75°"));
    let long = refused(&FLIGHT.replace("30.145", "3601"));
    assert!(long.contains("may last 3600 s, not 3601 s"), "{long}");
    // A demonstration is no flight.
    assert!(refused(DEMONSTRATION).contains("no known field"));
}

#[test]
fn a_small_link_cannot_ask_for_much_memory() {
    let bomb = sealed(LinkKind::Flight, &vec![0; LONGEST_COMPACT + 1]);
    assert!(bomb.len() < 1000);
    assert_eq!(Carried::from_link(&bomb), Err(LinkError::Damaged));
    // What says it is long and is not.
    let lists = sealed(
        LinkKind::Flight,
        &[3, 255, 255, 255, 255, 255, 255, 255, 255, 127],
    );
    assert_eq!(Carried::from_link(&lists), Err(LinkError::Damaged));
}

#[test]
fn what_is_too_long_is_not_made_into_a_link() {
    let long = FLIGHT.replace("30.145", "3601");
    let carried = Carried::Flight(flight(&long));
    assert_eq!(carried.to_link(), Err(LinkError::TooLong));
    let Carried::Demonstration(mut demonstration) = demonstration() else {
        unreachable!()
    };
    // Letters that do not compress: what fits as a compact form, but not as a link; then neither.
    for length in [100_000, 250_000] {
        let mut some = 1_u64;
        demonstration.look_for.clear();
        for _ in 0..length {
            some = some.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            demonstration
                .look_for
                .push(char::from(b' ' + (some >> 58) as u8));
        }
        let carried = Carried::Demonstration(demonstration.clone());
        assert_eq!(
            compact_of(&carried).len() <= LONGEST_COMPACT,
            length < 200_000
        );
        assert_eq!(carried.to_link(), Err(LinkError::TooLong));
    }
}

#[test]
fn a_link_of_this_version_is_read_for_ever() {
    let link = include_str!("first-link.txt").trim();
    assert_eq!(Carried::from_link(link).unwrap(), demonstration());
    assert_eq!(Carried::from_link(FIRST_SET).unwrap(), set());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn no_text_is_opened_or_panics(text in "\\PC{0,200}", close in "[A-Za-z0-9_-]{8,400}") {
        prop_assert!(Carried::from_link(&text).is_err());
        prop_assert!(Carried::from_link(&close).is_err());
    }

    #[test]
    fn no_sealed_bytes_panic(
        kind in prop::sample::select(LinkKind::ALL.to_vec()),
        bytes in prop::collection::vec(any::<u8>(), 0..300),
    ) {
        // Neither as a compact form nor as what is compressed.
        let _ = Carried::from_link(&sealed(kind, &bytes));
        let _ = Carried::from_link(&Sealed { kind, deflated: bytes }.to_text().unwrap());
    }

    #[test]
    fn a_changed_compact_form_opens_what_it_says_or_nothing(
        which in 0_usize..4,
        changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..4),
    ) {
        let carried = each()[which].clone();
        let mut bytes = compact_of(&carried);
        for (place, byte) in changes {
            let place = place.index(bytes.len());
            bytes[place] = byte;
        }
        if let Ok(read) = Carried::from_link(&sealed(carried.kind(), &bytes)) {
            // What is opened can be passed on.
            let again = Carried::from_link(&read.to_link().unwrap()).unwrap();
            prop_assert_eq!(compact_of(&again), compact_of(&read));
        }
    }
}
