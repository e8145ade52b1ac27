//! The compass swing: what the procedure promises, and the swing that is flown.

use compass::aircraft::Aircraft;
use compass::angle::half_turn;
use compass::deviation::{AircraftIron, Coefficients};
use compass::field::MagneticField;
use compass::float_settings::FloatSettings;
use compass::free_flight::Controls;
use compass::gust::{NUMBERS, RoughAir};
use compass::heading::{CompassHeading, MagneticHeading};
use compass::maths;
use compass::simulation::{STEPS_PER_SECOND, Simulation, Situation};
use compass::unit::{KNOT, NANOTESLA};
use lessons::swing::{Banked, LIMIT, Ramp, STEERS, fitted, greatest};
use proptest::prelude::*;

fn field() -> MagneticField {
    MagneticField::new(20_000.0 * NANOTESLA, 40_000.0 * NANOTESLA, 0.0).unwrap()
}

fn on(degrees: f64) -> MagneticHeading {
    MagneticHeading::from_degrees(degrees)
}

#[test]
fn hard_iron_alone_is_taken_away_whole() {
    let hard = [3000.0, -2000.0, 5000.0].map(|it| it * NANOTESLA);
    let ramp = Ramp::new(field(), hard, [[0.0; 3]; 3]).unwrap();
    assert!(greatest(&ramp.swing(30)) > 8_f64.to_radians());
    let (after, done) = ramp.adjusted();
    // Magnets against magnets: nothing is left for the second half of the procedure.
    assert!(greatest(&after.swing(30)).to_degrees() < 1e-6);
    assert!(done[2].found.abs().to_degrees() < 1e-6);
}

#[test]
fn the_half_rule_leaves_the_same_on_opposite_headings() {
    let ramp = Ramp::hidden(field(), 11);
    let (after, done) = ramp.adjusted();
    let deviation = |degrees| after.deviation(on(degrees)).unwrap().to_degrees();
    // Half of what is found on south stays on both, as the procedure means it to; the two
    // adjusters are not quite apart where soft iron is, by hundredths of these degrees.
    assert!((deviation(0.0) - deviation(180.0)).abs() < 0.1);
    assert!((deviation(90.0) - deviation(270.0)).abs() < 0.1);
    assert!((done[2].left - done[2].found / 2.0).abs() < 1e-9);
}

#[test]
fn the_worked_swing_of_the_army_manual() {
    // US Army TM 1-1500-204-23-4, fig. 4-22: deviation (there compass − heading) N +8, E −4, S −4,
    // W +8; corrections 6 for N–S and 6 for E–W, after which +2 is left on all four.
    // An aircraft with that swing: a field to the left and forward that makes 6°, and soft iron that
    // turns every reading by 2°.
    let side = -20_000.0 * NANOTESLA * maths::sin(6_f64.to_radians());
    let turn = maths::sin(2_f64.to_radians());
    let soft = [[0.0, turn, 0.0], [-turn, 0.0, 0.0], [0.0; 3]];
    let ramp = Ramp::new(field(), [-side, side, 0.0], soft).unwrap();
    let found = |ramp: &Ramp, degrees| -ramp.deviation(on(degrees)).unwrap().to_degrees();
    // The manual's figures are whole degrees, and in its arithmetic the two sixes do not feel each
    // other: here a fore-and-aft field of sin 6° strengthens or weakens what the other turns by a
    // tenth, 0.7°.
    for (heading, deviation) in [(0.0, 8.0), (90.0, -4.0), (180.0, -4.0), (270.0, 8.0)] {
        let off = found(&ramp, heading) - deviation;
        assert!(off.abs() < 1.2, "{heading}: {off}");
    }
    let (after, _) = ramp.adjusted();
    for heading in [0.0, 90.0, 180.0, 270.0] {
        let off = found(&after, heading) - 2.0;
        assert!(off.abs() < 0.2, "{heading}: {off}");
    }
}

#[test]
fn a_level_flight_deviates_as_the_ramp_does() {
    let ramp = Ramp::hidden(field(), 4).adjusted().0;
    let level = Controls::level(100.0 * KNOT);
    for degrees in (0..360).step_by(45).map(f64::from) {
        let situation = Situation {
            field: field(),
            iron: ramp.iron(),
            // The least tilt that can be set: 0.1° lets in at most 70 nT of the vertical field.
            float: FloatSettings {
                level_tilt: 0.1_f64.to_radians(),
                ..FloatSettings::default()
            },
            air: RoughAir::Still,
        };
        let flight = Simulation::new(situation, Aircraft::free(on(degrees), &level), level);
        let compass = flight.unwrap().reading().compass;
        let flown = half_turn(on(degrees).radians() - compass.radians());
        let swung = ramp.deviation(on(degrees)).unwrap();
        assert!((flown - swung).abs().to_degrees() < 0.25, "{degrees}");
    }
}

#[test]
fn iron_below_the_compass_is_felt_with_a_wing_down_and_not_in_a_turn() {
    // A magnet upright below the card. With the right wing down by φ it leans to the left, and
    // atan(R sin φ / H) is the deviation on north: by hand, of the three axes alone.
    let upright = 4000.0 * NANOTESLA;
    let ramp = Ramp::new(field(), [0.0, 0.0, upright], [[0.0; 3]; 3]).unwrap();
    for degrees in [-30.0, -15.0, 0.0, 15.0, 30.0_f64] {
        let bank = degrees.to_radians();
        let leaning = maths::sin(bank) * 4000.0 / 20_000.0;
        let found = ramp
            .deviation_in_bank(on(0.0), bank, Banked::WingDown)
            .unwrap();
        assert!(
            (found + maths::atan(leaning)).abs() < 1e-12,
            "{degrees}: {found}"
        );
        // In a coordinated turn card and magnet lean together.
        let turning = ramp
            .deviation_in_bank(on(0.0), bank, Banked::InATurn)
            .unwrap();
        assert!(turning.abs() < 1e-12, "{degrees}: {turning}");
    }
}

#[test]
fn a_level_bank_is_no_bank_and_a_turn_is_flown_as_said() {
    let ramp = Ramp::hidden(field(), 4).adjusted().0;
    for degrees in (0..360).step_by(30).map(f64::from) {
        for banked in [Banked::InATurn, Banked::WingDown] {
            let level = ramp.deviation_in_bank(on(degrees), 0.0, banked).unwrap();
            let swung = ramp.deviation(on(degrees)).unwrap();
            assert!((level - swung).abs() < 1e-12);
        }
    }
    // The float, quick and hardly tilting, in a flown turn with the iron and without. At 2° a
    // second and 2ζ/ω of 0.1 s the card runs some 0.2° behind, more where the field that is left
    // in its plane is weak, and the iron changes that field by up to a third: 0.2° is enough.
    let bank = 10_f64.to_radians();
    let flown = [ramp.iron(), AircraftIron::NONE].map(|iron| turning(iron, bank));
    for ((heading, with), (_, without)) in flown[0].iter().zip(&flown[1]) {
        let said = ramp.deviation_in_bank(*heading, bank, Banked::InATurn);
        let found = half_turn(without.radians() - with.radians());
        let off = (found - said.unwrap()).to_degrees();
        assert!(off.abs() < 0.2, "{heading:?}: {off}");
    }
    assert!(flown[0].len() > 50);
}

#[test]
fn where_little_steers_a_banked_card_there_is_no_figure() {
    let ramp = Ramp::hidden(field(), 4).adjusted().0;
    let level = field().horizontal();
    let banked = |degrees: f64, bank: f64| {
        let bank = bank.to_radians();
        ramp.deviation_in_bank(on(degrees), bank, Banked::InATurn)
    };
    let mut left_out = 0;
    for bank in -40..=40 {
        let bank = f64::from(bank);
        // By hand: on east the field in the card's plane is H cos φ − Z sin φ, on west with the
        // other sign, on north the plane holds all of H.
        let (sine, cosine) = (maths::sin(bank.to_radians()), maths::cos(bank.to_radians()));
        let across = [-1.0, 1.0].map(|side| level * cosine + side * field().vertical() * sine);
        for (heading, steers) in [(90.0, across[0]), (270.0, across[1])] {
            let none = steers.abs() < STEERS * level;
            assert_eq!(banked(heading, bank).is_none(), none, "{heading} {bank}");
            left_out += u32::from(none);
        }
        assert!(banked(0.0, bank).is_some());
    }
    assert!(left_out > 4, "{left_out}");
}

/// Headings and readings of a turn to the right, every two seconds, of a float that is as quick as
/// can be set.
fn turning(iron: AircraftIron, bank: f64) -> Vec<(MagneticHeading, CompassHeading)> {
    let situation = Situation {
        field: field(),
        iron,
        float: FloatSettings {
            level_tilt: 0.1_f64.to_radians(),
            yaw_period: 0.5,
            liquid_spin_up: 3600.0,
            ..FloatSettings::default()
        },
        air: RoughAir::Still,
    };
    let level = Controls::level(100.0 * KNOT);
    let aircraft = Aircraft::free(on(0.0), &level);
    let mut flight = Simulation::new(situation, aircraft, level).unwrap();
    let controls = level.with_bank(bank);
    let mut seen = Vec::new();
    for step in 0..180 * STEPS_PER_SECOND {
        flight.step(&controls, [0.0; NUMBERS]);
        if step > 20 * STEPS_PER_SECOND && step % (2 * STEPS_PER_SECOND) == 0 {
            seen.push((flight.motion().heading, flight.reading().compass));
        }
    }
    seen
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_swing_brings_any_hidden_iron_within_the_limit(seed in any::<u64>()) {
        let ramp = Ramp::hidden(field(), seed);
        let (after, _) = ramp.adjusted();
        let swing = after.swing(30);
        prop_assert!(greatest(&swing) < LIMIT);
        prop_assert!(greatest(&swing) <= greatest(&ramp.swing(30)) + 1e-3);

        // The five coefficients say all of a gentle curve.
        let (coefficients, residual) = fitted(&swing).unwrap();
        prop_assert!(residual.to_degrees() < 0.15, "{}", residual.to_degrees());
        // B and C are what the adjusters take away.
        let Coefficients { b, c, .. } = coefficients;
        prop_assert!(b.abs().to_degrees() < 0.15 && c.abs().to_degrees() < 0.15);
    }
}
