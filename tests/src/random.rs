//! Random flights: what a property is tried on.

use crate::{Course, field};
use compass::{
    deviation::AircraftIron,
    field::MagneticField,
    float_settings::FloatSettings,
    frame::{Rotation, Vector},
    maths,
    range::Range,
    simulation::Simulation,
    unit::NANOTESLA,
};
use glam::{DQuat, DVec3};
use proptest::{prelude::*, test_runner::RngSeed};

/// So many random cases, from a fixed seed, so that a run is the same everywhere;
/// `PROPTEST_RNG_SEED` tries others.
pub fn cases(cases: u32) -> ProptestConfig {
    let given = ProptestConfig::default();
    ProptestConfig {
        cases,
        failure_persistence: None,
        rng_seed: match given.rng_seed {
            RngSeed::Random => RngSeed::Fixed(18),
            fixed => fixed,
        },
        ..given
    }
}

/// A field by horizontal intensity and dip, at which a card keeps its direction: above the zone
/// of caution, where a reading does not hang on the last bit.
pub fn steady_field() -> impl Strategy<Value = MagneticField> {
    (6_500.0..42_000.0, -75.0..75.0_f64).prop_filter_map(
        "within the Earth's range",
        |(h, dip): (f64, f64)| {
            let z = h * maths::tan(dip.to_radians());
            (z.abs() < 65_000.0).then(|| field(h, z))
        },
    )
}

/// One of the presets, with or without a balance weight.
pub fn preset() -> impl Strategy<Value = FloatSettings> {
    (0..4, prop_oneof![Just(0.0), -60_000.0..60_000.0]).prop_map(|(preset, balance)| {
        let float = match preset {
            0 => FloatSettings::default(),
            1 => FloatSettings::brisk(),
            2 => FloatSettings::sluggish(),
            _ => FloatSettings::lightly_damped(),
        };
        FloatSettings {
            balance_vertical: balance * NANOTESLA,
            ..float
        }
    })
}

/// Iron as it is found in aircraft: hard and soft, row by row.
pub type Iron = ([f64; 3], [[f64; 3]; 3]);

/// No iron, or such as is found in aircraft.
pub fn iron() -> impl Strategy<Value = Iron> {
    let hard = prop::array::uniform3(-2_000.0 * NANOTESLA..2_000.0 * NANOTESLA);
    let soft = prop::array::uniform3(prop::array::uniform3(-0.04..0.04));
    prop_oneof![Just(([0.0; 3], [[0.0; 3]; 3])), (hard, soft)]
}

/// The iron of these numbers.
pub fn iron_of((hard, soft): Iron) -> AircraftIron {
    AircraftIron::new(hard, soft).expect("iron within its ranges")
}

/// Legs as an aircraft flies them, bank within a limit, of about so many seconds in all.
pub fn course(bank: f64, seconds: f64) -> impl Strategy<Value = Course> {
    let speeds = prop_oneof![Just(None), (70.0..200.0_f64).prop_map(Some)];
    // At least 5 s for a roll from one limit to the other, and 20 s for a change of speed.
    let leg = (0.0..1.0, -bank..bank, speeds);
    (
        0.0..360.0,
        70.0..200.0_f64,
        prop::collection::vec(leg, 1..60),
    )
        .prop_map(move |(heading, speed, legs)| {
            let mut course = Course::on(heading, speed).hold(1.0);
            for (share, bank, speed) in legs {
                let least = if speed.is_some() { 20.0 } else { 5.0 };
                course = course.leg(least + share * 15.0, Some(bank), speed);
                if course.duration() > seconds {
                    break;
                }
            }
            let rest = seconds - course.duration();
            if rest > 0.0 {
                course.hold(rest)
            } else {
                course
            }
        })
}

/// A card put out of place in its bowl: turned, tipped by an angle in a direction, turning.
#[derive(Clone, Copy, Debug)]
pub struct Displaced {
    /// Angle by which the card is turned in its own plane, rad.
    pub turned: f64,
    /// Angle by which it is tipped, rad.
    pub tipped: f64,
    /// The axis about which it is tipped, rad from its north mark.
    pub toward: f64,
    /// Angular velocity in card axes, rad/s.
    pub rate: [f64; 3],
}

/// Anywhere within the stop, turning any way.
pub fn displaced() -> impl Strategy<Value = Displaced> {
    (
        -180.0..180.0_f64,
        0.0..18.0_f64,
        0.0..360.0_f64,
        prop::array::uniform3(-4.0..4.0),
    )
        .prop_map(|(turned, tipped, toward, rate)| Displaced {
            turned: turned.to_radians(),
            tipped: tipped.to_radians(),
            toward: toward.to_radians(),
            rate,
        })
}

/// Puts the card of a flight on north out of place.
pub fn displace(flight: &mut Simulation, to: Displaced) {
    let mut float = flight.state().float;
    let (sin, cos) = maths::sin_cos(to.toward);
    let tip = DQuat::from_axis_angle(DVec3::new(cos, sin, 0.0), to.tipped);
    let attitude = tip * DQuat::from_rotation_z(to.turned);
    float.attitude = Rotation::from_quaternion(attitude.normalize());
    let [x, y, z] = to.rate;
    float.rate = Vector::new(x, y, z);
    flight.disturb(float);
}

/// Anything within a range, its limits often; in SI.
pub fn within(range: Range) -> impl Strategy<Value = f64> {
    let unit = range.unit.in_si();
    prop_oneof![
        Just(range.least * unit),
        Just(range.most * unit),
        (range.least..range.most).prop_map(move |value| value * unit),
    ]
}
