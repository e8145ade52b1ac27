//! What the catalogue has to cover, each topic with the figure that shows it and which way it
//! comes out.

use crate::named;
use lessons::demonstration::{Aid, Measured, catalogue};

/// Which way a figure comes out.
#[derive(Debug, PartialEq)]
enum Way {
    /// Lags, swings north, first the wrong way, short, reads more.
    More,
    /// Leads, swings south, past, reads less.
    Less,
    /// Agrees.
    Nothing,
}
use Way::{Less, More, Nothing};

const TOPICS: &[(&str, &str, &str, Way)] = &[
    (
        "steady flight agrees",
        "steady-flight",
        "second_error",
        Nothing,
    ),
    (
        "on another heading too",
        "steady-flight",
        "third_error",
        Nothing,
    ),
    (
        "no error on the dip equator",
        "equator-turn",
        "on_north",
        Nothing,
    ),
    (
        "the same turn where it dips",
        "equator-turn",
        "elsewhere",
        More,
    ),
    (
        "onto north from west lags",
        "north-from-west",
        "on_north",
        More,
    ),
    (
        "onto north from east lags",
        "north-from-east",
        "on_north",
        More,
    ),
    (
        "so who believes it goes past",
        "north-from-east",
        "short",
        Less,
    ),
    (
        "part of the way, north-west",
        "part-way-north",
        "on_north_west",
        More,
    ),
    (
        "part of the way, south-west",
        "part-way-south",
        "on_south_west",
        Less,
    ),
    (
        "off north right, the wrong way",
        "off-north-right",
        "first_way",
        More,
    ),
    (
        "caught up past east",
        "off-north-right",
        "caught_up",
        Nothing,
    ),
    (
        "off north left, the wrong way",
        "off-north-left",
        "first_way",
        More,
    ),
    (
        "caught up past west",
        "off-north-left",
        "caught_up",
        Nothing,
    ),
    (
        "onto south from east leads",
        "south-from-east",
        "on_south",
        Less,
    ),
    (
        "onto south from west leads",
        "south-from-west",
        "on_south",
        Less,
    ),
    (
        "so who believes it stops short",
        "south-from-east",
        "short",
        More,
    ),
    (
        "off south, never the wrong way",
        "off-south-right",
        "first_way",
        Nothing,
    ),
    ("off south runs ahead", "off-south-right", "early", Less),
    (
        "a circle to the right, north",
        "full-circle-right",
        "on_north",
        More,
    ),
    (
        "a circle to the right, south",
        "full-circle-right",
        "on_south",
        Less,
    ),
    (
        "a circle to the left, north",
        "full-circle-left",
        "on_north",
        More,
    ),
    (
        "a circle to the left, south",
        "full-circle-left",
        "on_south",
        Less,
    ),
    ("faster on east", "speed-east", "faster", More),
    ("slower on east", "speed-east", "slower", Less),
    ("faster on west", "speed-west", "faster", More),
    ("slower on west", "speed-west", "slower", Less),
    ("faster on north", "speed-north", "faster", Nothing),
    ("slower on north", "speed-north", "slower", Nothing),
    ("faster on south", "speed-south", "faster", Nothing),
    ("slower on south", "speed-south", "slower", Nothing),
    (
        "into a climb, losing speed",
        "climb-descent",
        "raising",
        Less,
    ),
    ("in the climb", "climb-descent", "climb", Nothing),
    (
        "into a descent, gaining speed",
        "climb-descent",
        "lowering",
        More,
    ),
    ("in the descent", "climb-descent", "descent", Nothing),
    ("a middle latitude", "middle-latitudes", "on_north", More),
    ("a high latitude", "high-latitude", "on_north", More),
    ("near the pole", "near-pole", "on_north", More),
    (
        "south: onto north leads",
        "southern-onto-north",
        "on_north",
        Less,
    ),
    (
        "south: onto south lags",
        "southern-onto-south",
        "on_south",
        More,
    ),
    (
        "south: off south, wrong way",
        "southern-off-south",
        "first_way",
        More,
    ),
    ("south: faster on east", "southern-speed", "faster", Less),
    ("south: slower on east", "southern-speed", "slower", More),
    ("swirl after a long turn", "swirl", "after", Less),
    ("which is the liquid's", "swirl", "still_liquid", Nothing),
    ("rough air, averaged", "rough-air", "average", Nothing),
    ("rough air, one glance", "rough-air", "glance", More),
    ("rough air, another", "rough-air", "second_glance", Less),
    (
        "an indicator set in a turn",
        "indicator-in-turn",
        "wrong",
        Less,
    ),
    (
        "an indicator set at rest",
        "indicator-in-turn",
        "right",
        Nothing,
    ),
    ("iron, on north", "iron", "on_north", Less),
    ("iron, on south", "iron", "on_south", More),
    ("no iron", "iron", "clean_north", Nothing),
];

/// Which way a number comes out: within a degree and a half it shows as none.
fn way(number: f64) -> Way {
    match number {
        _ if number.abs() < 1.5 => Nothing,
        _ if number > 0.0 => More,
        _ => Less,
    }
}

#[test]
fn every_topic_is_shown_and_its_claim_allows_no_other_way() {
    assert!(catalogue::FILES.len() >= 18);
    for (topic, name, key, expected) in TOPICS {
        let flown = named(name);
        let number = flown.figures()[*key].number().unwrap();
        assert_eq!(&way(number), expected, "{topic}: {number}");
        let claims = &flown.demonstration().claims;
        let claim = claims.iter().find(|claim| claim.figure == *key).unwrap();
        assert_eq!(&way(claim.least), expected, "{topic}: {claim:?}");
        assert_eq!(&way(claim.most), expected, "{topic}: {claim:?}");
    }
    for (name, _) in catalogue::FILES {
        let shown = TOPICS.iter().any(|(_, of, _, _)| of == name);
        assert!(shown || *name == "steep-bank", "{name} shows no topic");
    }
}

#[test]
fn a_steep_bank_keeps_the_card_from_coming_round() {
    let flown = named("steep-bank");
    let number = |key: &str| flown.figures()[key].number().unwrap();
    assert!(number("bank") > number("limit") && number("bank") < number("limit_there"));
    // The nose goes once round; the card goes nowhere here, and once round there.
    assert!((number("nose") - 360.0).abs() < 2.0);
    assert!(number("round").abs() < 30.0);
    assert!((number("round_there") - 360.0).abs() < 30.0);
}

#[test]
fn the_errors_grow_with_latitude() {
    let on_north = |name: &str| named(name).figures()["on_north"].number().unwrap();
    let names = [
        "equator-turn",
        "middle-latitudes",
        "north-from-west",
        "high-latitude",
        "near-pole",
    ];
    let lags = names.map(on_north);
    assert!(lags.is_sorted(), "{lags:?}");
}

#[test]
fn each_hemisphere_has_its_own_memory_aids() {
    for (name, aid, north, said) in [
        (
            "north-from-west",
            Aid::Turn,
            true,
            "Undershoot North, Overshoot South",
        ),
        (
            "speed-east",
            Aid::Speed,
            true,
            "Accelerate North, Decelerate South",
        ),
        (
            "southern-onto-north",
            Aid::Turn,
            false,
            "Overshoot North, Undershoot South",
        ),
        (
            "southern-speed",
            Aid::Speed,
            false,
            "Accelerate South, Decelerate North",
        ),
    ] {
        let flown = named(name);
        assert_eq!(flown.figures()["aid"], Measured::Aid(aid, Some(north)));
        assert!(
            flown.said(&flown.demonstration().rule).contains(said),
            "{name}"
        );
    }
}
