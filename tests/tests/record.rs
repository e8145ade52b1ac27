//! The record of a flight gives it again: any moment of it, in any order, bit for bit.
#![cfg(not(target_family = "wasm"))]

use checks::{field, situation};
use compass::{
    aircraft::Aircraft,
    free_flight::Controls,
    gust::RoughAir,
    heading::MagneticHeading,
    record::Record,
    simulation::{STEPS_PER_SECOND, Simulation, Situation},
};
use flights::air::SeededAir;

/// A minute in moderate air, with the controls changed every few seconds, recorded; and every
/// state that it went through.
fn recorded(seed: u64) -> (Record<SeededAir>, Vec<Simulation>) {
    let at = Situation {
        air: RoughAir::Moderate,
        ..situation(field(19_500.0, 44_000.0))
    };
    let level = Controls::level(55.0);
    let aircraft = Aircraft::free(MagneticHeading::from_degrees(290.0), &level);
    let start = Simulation::new(at, aircraft, level).expect("within the ranges");
    let mut flight = start.clone();
    let mut record = Record::new(start, SeededAir { seed });
    let mut states = vec![flight.clone()];
    for step in 0..60 * STEPS_PER_SECOND {
        let bank = match step / (7 * STEPS_PER_SECOND) % 4 {
            0 => 0.0,
            1 => 0.35,
            2 => -0.2,
            _ => 0.1,
        };
        record.fly(
            &mut flight,
            &level.with_bank(bank).with_pitch(0.05 - bank / 10.0),
        );
        states.push(flight.clone());
    }
    (record, states)
}

/// Any step, asked for in any order, is exactly what was flown; so are the moments along the way.
#[test]
fn the_record_gives_every_step_as_it_was_flown() {
    let (record, flown) = recorded(4);
    assert_eq!(record.steps() as usize + 1, flown.len());
    let forward = (0..flown.len()).step_by(331);
    let backward = (0..flown.len()).rev().step_by(477);
    for step in forward.chain(backward).chain([999, 1000, 1001, 0]) {
        assert_eq!(record.at(step as u64), flown[step], "step {step}");
    }
    assert_eq!(record.at(u64::MAX), flown[flown.len() - 1]);
    let mut count = 0;
    for (moment, flown) in record.moments(137).zip(flown.iter().step_by(137)) {
        assert_eq!(moment, *flown);
        count += 1;
    }
    assert_eq!(count, flown.len().div_ceil(137));
}

/// Flown again from any step on, by a few steps at a time, it is what was flown, and it ends where
/// the flight did.
#[test]
fn flown_again_it_goes_on_as_it_did_and_ends() {
    let (record, flown) = recorded(4);
    for start in [0, 1, 999, 1000, 7341] {
        let mut again = record.at(start);
        for steps in [0, 1, 3, 200, 1501] {
            record.fly_again(&mut again, steps);
            assert_eq!(again, flown[again.state().step as usize]);
        }
        assert_eq!(again.state().step, start + 1705);
    }
    let mut end = record.at(11_990);
    record.fly_again(&mut end, u64::MAX);
    assert_eq!(end, flown[flown.len() - 1]);
    record.fly_again(&mut end, 5);
    assert_eq!(end, flown[flown.len() - 1]);
    assert_eq!(record.inputs()[0].0, 0);
    assert!(record.inputs().is_sorted_by(|a, b| a.0 < b.0));
}

/// The same flight has the same digest, and one with other gusts has another.
#[test]
fn the_digest_tells_flights_apart() {
    let digests = [4, 4, 5].map(|seed| recorded(seed).0.digest());
    assert_eq!(digests[0], digests[1]);
    assert_ne!(digests[0], digests[2]);
}
