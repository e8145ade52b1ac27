//! The same inputs give the same bits natively and in WebAssembly. A digest shows sameness, not
//! truth; the other checks show that. When the physics changes, these constants change with it,
//! on both sides at once.

use checks::{Course, situation};
use compass::{
    aircraft::Aircraft,
    deviation::AircraftIron,
    field::MagneticField,
    float_settings::FloatSettings,
    free_flight::Controls,
    gust::{GustNumbers, RoughAir, StillAir},
    heading::MagneticHeading,
    maths,
    record::Record,
    simulation::{STEPS_PER_SECOND, Simulation, Situation},
    unit::NANOTESLA,
};
use flights::air::SeededAir;

#[cfg(target_family = "wasm")]
use wasm_bindgen_test::wasm_bindgen_test;

#[cfg(target_family = "wasm")]
wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);

const TEN_MINUTES: u64 = 600 * STEPS_PER_SECOND;

/// Records ten minutes with these controls at each second, and gives the digest.
fn digest(
    start: Simulation,
    air: impl GustNumbers + Clone,
    controls: impl Fn(u64) -> Controls,
) -> u64 {
    let mut flight = start.clone();
    let mut record = Record::new(start, air);
    for step in 0..TEN_MINUTES {
        record.fly(&mut flight, &controls(step / STEPS_PER_SECOND));
    }
    record.digest()
}

/// Free flight in moderate air: turns both ways, changes of speed, climbs and slips.
#[cfg_attr(not(target_family = "wasm"), test)]
#[cfg_attr(target_family = "wasm", wasm_bindgen_test)]
fn ten_minutes_of_free_flight_in_rough_air() {
    let at = Situation {
        air: RoughAir::Moderate,
        ..situation(checks::field(19_500.0, 44_200.0))
    };
    let level = Controls::level(55.0);
    let aircraft = Aircraft::free(MagneticHeading::from_degrees(285.0), &level);
    let start = Simulation::new(at, aircraft, level).expect("within the ranges");
    let controls = |second: u64| {
        let banks = [0.0, 0.3, 0.3, 0.0, -0.45, 0.0, 0.15, -0.15, 1.0];
        let speeds = [55.0, 55.0, 70.0, 45.0];
        let climbs = [0.0, 0.08, 0.0, -0.1, 0.0];
        let rudders = [0.0, 0.0, 0.5, 0.0, -0.5, 0.0, 0.0];
        level
            .with_bank(banks[second as usize / 11 % banks.len()])
            .with_airspeed(speeds[second as usize / 37 % speeds.len()])
            .with_pitch(climbs[second as usize / 23 % climbs.len()])
            .with_rudder(rudders[second as usize / 17 % rudders.len()])
    };
    let found = digest(start, SeededAir { seed: 2026 }, controls);
    assert_eq!(found, FREE_FLIGHT, "{found:#018x}");
}

/// Prescribed legs with iron, a balance weight and a sticky pivot, in a southern field.
#[cfg_attr(not(target_family = "wasm"), test)]
#[cfg_attr(target_family = "wasm", wasm_bindgen_test)]
fn ten_minutes_of_prescribed_legs_with_iron_and_friction() {
    let hard = [1500.0, -800.0, 3000.0].map(|nt| nt * NANOTESLA);
    let soft = [[0.02, 0.0, 0.01], [0.005, -0.01, 0.0], [0.0, 0.03, 0.02]];
    let at = Situation {
        iron: AircraftIron::new(hard, soft).expect("within the ranges"),
        float: FloatSettings {
            balance_vertical: -40_000.0 * NANOTESLA,
            vibration: 0.25,
            ..FloatSettings::lightly_damped().with_sticky_pivot()
        },
        ..situation(MagneticField::new(24e-6, -51e-6, 0.2).expect("within the ranges"))
    };
    let mut course = Course::on(10.0, 95.0);
    for round in 0..8 {
        let side = if round % 2 == 0 { 1.0 } else { -1.0 };
        course = course
            .roll(3.0, side * (12.0 + 4.0 * f64::from(round)))
            .hold(25.0)
            .roll(3.5, 0.0)
            .hold(9.25)
            .speed_up(24.0, 95.0 + 20.0 * side)
            .hold(10.0);
    }
    let start = course.start(at);
    let controls = start.state().controls;
    let found = digest(start, StillAir, |_| controls);
    assert_eq!(found, PRESCRIBED_LEGS, "{found:#018x}");
}

/// Each function on both sides of the ways in which it is worked out.
#[cfg_attr(not(target_family = "wasm"), test)]
#[cfg_attr(target_family = "wasm", wasm_bindgen_test)]
fn transcendental_functions() {
    let found = [
        maths::sin(0.5),
        maths::sin(1e6),
        maths::cos(2.0),
        maths::cos(-1e10),
        maths::tan(1.2),
        maths::asin(0.3),
        maths::acos(-0.99),
        maths::atan(0.1),
        maths::atan2(1.0, -3.0),
        maths::atan2(-2e-9, 1e-3),
        maths::exp(-0.1),
        maths::exp(20.5),
        maths::cbrt(21.7),
        maths::pow(1.7, -0.4),
    ]
    .map(f64::to_bits);
    assert_eq!(found, FUNCTIONS, "{found:#018x?}");
}

const FREE_FLIGHT: u64 = 0xb3c2_a16f_92fc_59bf;
const PRESCRIBED_LEGS: u64 = 0x22a8_fb22_23d9_e59d;
const FUNCTIONS: [u64; 14] = [
    0x3fde_aee8_744b_05f0,
    0xbfd6_664b_2568_d867,
    0xbfda_a226_5753_7205,
    0x3feb_f098_901c_931a,
    0x4004_93c4_3acb_164d,
    0x3fd3_8015_9e14_f6ff,
    0x4008_001b_e1bc_011b,
    0x3fb9_83e2_82e2_cc4d,
    0x4006_8f09_5fdf_593c,
    0xbec0_c6f7_a0b5_d4f5,
    0x3fec_f46d_99d5_2b3a,
    0x41c7_d6c4_f0bc_dd5c,
    0x4006_505f_6537_e175,
    0x3fe9_e15f_a67a_eba9,
];
